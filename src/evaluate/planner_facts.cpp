// Paths, derived values, papers and answers: what a site holds is found once, when it is laid out.
#include <algorithm>
#include <iterator>
#include <utility>

#include "evaluate/papers.hpp"
#include "evaluate/planner.hpp"

namespace headgate::evaluate {

using vocabulary::Field;
using vocabulary::Presence;

void Planner::fact(Draft& draft, const site::Slot& slot) {
  draft.planned.slot = &slot;
  const auto known = facts_.find(&slot);
  if (known != facts_.end()) {
    draft.planned.cell = known->second;
    return;
  }
  Cell cell = cell_of(slot.value, Why::known);
  const bool undecided_truth = draft.node->type.kind == vocabulary::Type::Kind::truth && cell.truth == Truth::undecided;
  if (cell.presence == Presence::unknown)
    cell.why = slot.asked_not ? Why::asked_not : Why::missing;
  else if (cell.presence == Presence::present && undecided_truth)
    cell.why = Why::missing;
  draft.planned.cell = constant(cell);
  facts_.emplace(&slot, draft.planned.cell);
}

void Planner::path(Draft& draft, const Frame& frame) {
  const auto& vocabulary = *book_.vocabulary;
  const auto& steps = draft.node->steps;
  Cell at;
  at.presence = Presence::present;
  at.id = draft.node->variable == expression::no_node ? 0 : frame[draft.node->variable];
  draft.planned.element = at.id;
  draft.planned.field = 0;
  if (steps.empty()) draft.planned.cell = constant(at);
  for (std::size_t i = 0; i < steps.size(); ++i) {
    if (at.presence != Presence::present) {
      draft.planned.beyond = static_cast<std::uint32_t>(steps.size() - i);
      draft.planned.slot = nullptr;
      return not_known(draft, at.presence == Presence::none ? Why::of_none : Why::missing);
    }
    const site::ElementId element = at.id;
    const auto& shape = vocabulary.shapes[site_.elements[element].shape];
    const auto field = shape.field(steps[i].name);
    if (!field) {
      if (i == 0 && element == 0 && steps[i].name == vocabulary.shapes[0].name) {
        draft.planned.cell = constant(at);
        continue;
      }
      return not_known(draft, Why::missing);
    }
    const site::Slot& slot = site_.slot(element, *field);
    draft.planned.element = element;
    draft.planned.field = *field;
    if (shape.fields[*field].holds == Field::Holds::derived && slot.origin == site::Origin::left_out) {
      const auto* derivation = book_.derivation(site_.elements[element].shape, *field);
      if (derivation == nullptr) return not_known(draft, Why::missing);
      return derived(draft, *derivation, element);
    }
    fact(draft, slot);
    at = plan_.cells[draft.planned.cell];
    if (i + 1 < steps.size() && computes(site_, vocabulary, shape.fields[*field], slot, steps[i + 1].name)) {
      at.presence = Presence::present;
      at.id = slot.value.id;
    }
  }
}

namespace {

// Of values that need one another. Past it a value is unknown: only references a site states against the walk and limits
// written to no purpose get there.
constexpr std::size_t most_running = 200;
// A shorter walk is followed back from wherever it is asked for.
constexpr std::size_t short_walk = 64;

}  // namespace

bool Planner::too_deep() const { return running_.size() + limits_running_ >= most_running; }

// `previous` points upstream, so what stands there is laid out first: a long line would be a deep call otherwise.
void Planner::upstream_first(site::ElementId element, std::string_view name) {
  const auto& order = site_.downstream_order;
  if (order.size() <= short_walk || !running_.empty()) return;
  if (place_in_walk_.empty()) {
    place_in_walk_.assign(site_.elements.size(), 0);
    for (std::size_t i = 0; i < order.size(); ++i) place_in_walk_[order[i]] = i;
  }
  for (std::size_t& at = laid_upstream_[std::string(name)]; at < place_in_walk_[element];) {
    const site::ElementId here = order[at++];
    const auto shape = site_.elements[here].shape;
    const auto field = book_.vocabulary->shapes[shape].field(name);
    const auto* derivation = field ? book_.derivation(shape, *field) : nullptr;
    if (derivation != nullptr && site_.slot(here, *field).origin == site::Origin::left_out) formula(*derivation, here);
  }
}

// The formula laid out for one element; nothing when it is being laid out already.
std::optional<PlannedId> Planner::formula(const rulebook::Derived& derivation, site::ElementId element) {
  const auto key = std::make_pair(element, derivation.field);
  const auto known = derived_.find(key);
  if (known != derived_.end()) return known->second;
  if (too_deep() || !running_.insert(key).second) return std::nullopt;
  const auto bases = std::move(bases_);
  bases_.clear();
  const Hand* const outer = std::exchange(hand_, nullptr);
  const PlannedId planned = plan(derivation.tree, {element});
  bases_ = bases;
  hand_ = outer;
  running_.erase(key);
  derived_.emplace(key, planned);
  return planned;
}

PlannedId Planner::formula_of(const rulebook::Derived& derivation, site::ElementId element) {
  upstream_first(element, book_.vocabulary->shapes[derivation.shape].fields[derivation.field].name);
  return formula(derivation, element).value_or(not_planned);
}

void Planner::derived(Draft& draft, const rulebook::Derived& derivation, site::ElementId element) {
  upstream_first(element, book_.vocabulary->shapes[derivation.shape].fields[derivation.field].name);
  const auto planned = formula(derivation, element);
  if (!planned) return not_known(draft, Why::missing);
  draft.kids.push_back(*planned);
  step(draft, Code::copy, {cell(*planned)});
}

void Planner::confirmed(Draft& draft) {
  const auto answer = site_.confirmed.find(draft.node->name);
  const bool answered = answer != site_.confirmed.end() && answer->second.value.presence == Presence::present;
  const Truth truth = answered ? answer->second.value.truth : Truth::undecided;
  draft.planned.cell = constant(cell_of(vocabulary::of_truth(truth), answered ? Why::known : Why::missing));
}

// What a paper may be for: what the rule is judged of, and what a quantifier around it has in hand.
void Planner::paper(Draft& draft, const Frame& frame) {
  auto elements = elements_;
  std::copy_if(frame.begin(), frame.end(), std::back_inserter(elements),
               [](site::ElementId element) { return element != site::nowhere; });
  const PaperFound found = find_paper(site_, *book_.vocabulary, *draft.node, rule_, elements, plan_.checked_on);
  draft.planned.paper = found.paper;
  draft.planned.list = found.list;
  if (found.truth == Truth::undecided && found.list == site::nowhere) {
    draft.planned.element = found.element;
    draft.planned.field = found.field;
  }
  draft.planned.cell = constant(cell_of(vocabulary::of_truth(found.truth), found.why));
}

}  // namespace headgate::evaluate
