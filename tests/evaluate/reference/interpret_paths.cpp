// Facts: paths, derived values, papers, answers.
#include "evaluate/lists.hpp"
#include "evaluate/reference/interpret.hpp"

namespace headgate::reference {

using vocabulary::Field;

namespace {

Value element(site::ElementId id) {
  Value value;
  value.presence = Presence::present;
  value.id = id;
  return value;
}

}  // namespace

bool Interpreter::computed_in(site::ElementId record, std::string_view name) const {
  if (record >= site_.elements.size() || site_.elements[record].list != site::nowhere || record == 0) return false;
  const auto& shape = book_.vocabulary->shapes[site_.elements[record].shape];
  const auto field = shape.field(name);
  return field && shape.fields[*field].holds == Field::Holds::derived;
}

Value Interpreter::path(const Node& at, Worked& out, const Frame& frame) {
  Value here = element(at.variable == expression::no_node ? 0 : frame[at.variable]);
  for (std::size_t i = 0; i < at.steps.size(); ++i) {
    const auto& step = at.steps[i];
    // A property of what is not there, or of what nobody knows.
    if (here.presence != Presence::present) return vocabulary::unknown();
    const site::ElementId of = here.id;
    const auto& shape = book_.vocabulary->shapes[site_.elements[of].shape];
    const auto field = shape.field(step.name);
    if (!field) return vocabulary::unknown();
    const site::Slot& slot = site_.slot(of, *field);
    const bool computed = shape.fields[*field].holds == Field::Holds::derived && slot.origin == site::Origin::left_out;
    here = computed ? derived(of, *field, out) : slot.value;
    const bool opens = i + 1 < at.steps.size() &&
                       evaluate::computes(site_, *book_.vocabulary, shape.fields[*field], slot, at.steps[i + 1].name);
    if (opens) here = element(slot.value.id);
  }
  return here;
}

// A stated value replaces a computed one, so only what nobody stated is computed.
Value Interpreter::derived(site::ElementId element, site::FieldId field, Worked& out) {
  const auto* formula = book_.derivation(site_.elements[element].shape, field);
  if (formula == nullptr) return vocabulary::unknown();
  if (!running_.insert({element, field}).second)
    return vocabulary::unknown();  // a site's own reference may close a circle
  const auto below = std::move(below_);
  below_.clear();
  out.kids.push_back(work(formula->tree, {element}));
  below_ = below;
  running_.erase({element, field});
  return out.kids.back().value;
}

Value Interpreter::paper(const Node& at) const {
  return vocabulary::of_truth(evaluate::find_paper(site_, *book_.vocabulary, at, rule_, elements_).truth);
}

Value Interpreter::confirmed(const Node& at) const {
  const auto answer = site_.confirmed.find(at.name);
  if (answer == site_.confirmed.end() || answer->second.value.presence != Presence::present)
    return vocabulary::of_truth(Truth::undecided);
  return vocabulary::of_truth(answer->second.value.truth);
}

}  // namespace headgate::reference
