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

// A paper is asked four things: for what, by whom, where, until when. What it does not say of who gave it, and what is
// written as unknown, may be anything; a paper that names no subject, element or last day names none.
Truth Interpreter::counts(site::ElementId paper, const Node& at, const std::string& subject, const Frame& frame) const {
  auto elements = elements_;
  for (const auto element : frame) {
    if (element != site::nowhere) elements.push_back(element);
  }
  const auto& shape = book_.vocabulary->shapes[site_.elements[paper].shape];
  const auto slot = [&](std::string_view name) -> const site::Slot* {
    const auto field = shape.field(name);
    return field ? &site_.slot(paper, *field) : nullptr;
  };
  const auto present = [](const site::Slot* of) { return of && of->value.presence == Presence::present; };
  const auto unknown = [](const site::Slot* of) { return of && of->asked_not && !evaluate::usable(of->value); };
  Truth is_for = Truth::no;
  if (unknown(slot("for"))) is_for = Truth::undecided;
  if (present(slot("for"))) {
    const std::string named(slot("for")->value.text);
    is_for = quantity::truth(named.substr(named.find('/') == std::string::npos ? 0 : named.find('/') + 1) == subject);
  }
  Truth is_by = Truth::no;
  if (slot("by") && slot("by")->value.presence == Presence::unknown) is_by = Truth::undecided;
  if (present(slot("by"))) is_by = quantity::truth(book_.vocabulary->role(slot("by")->value.text) == at.column);
  Truth is_at = Truth::yes;
  const site::Slot* where = slot("at");
  if (where && !elements.empty() && where->origin != site::Origin::left_out) {
    is_at = where->asked_not && !present(where) ? Truth::undecided : Truth::no;
    for (const auto element : elements) {
      if (present(where) && where->value.id == element) is_at = Truth::yes;
    }
  }
  Truth in_time = Truth::yes;
  if (unknown(slot("until")) || (present(slot("until")) && !checked_on_)) in_time = Truth::undecided;
  if (present(slot("until")) && checked_on_)
    in_time = quantity::opposite(quantity::less(slot("until")->value.number, *checked_on_, 1.0));
  return quantity::both(quantity::both(is_for, is_by), quantity::both(is_at, in_time));
}

Value Interpreter::paper(const Node& at, const Frame& frame) const {
  const auto& vocabulary = *book_.vocabulary;
  const auto kind = vocabulary.shape(at.index == 0 ? "approval" : "order");
  const auto field = vocabulary.shapes[0].field("papers");
  if (!kind || !field) return vocabulary::of_truth(Truth::undecided);
  const auto id = site_.slot(0, *field).value.id;
  if (id == site::nowhere) return vocabulary::of_truth(Truth::no);
  const auto& list = site_.lists[id];
  Truth any = quantity::truth(false);
  for (const auto element : list.items) {
    const std::string subject = at.name.empty() && rule_ != nullptr ? rule_->id : at.name;
    if (site_.elements[element].shape == *kind) any = quantity::either(any, counts(element, at, subject, frame));
  }
  if (list.stated && !list.complete && !list.closed.test(*kind)) any = quantity::either(any, Truth::undecided);
  return vocabulary::of_truth(any);
}

Value Interpreter::confirmed(const Node& at) const {
  const auto answer = site_.confirmed.find(at.name);
  if (answer == site_.confirmed.end() || answer->second.value.presence != Presence::present)
    return vocabulary::of_truth(Truth::undecided);
  return vocabulary::of_truth(answer->second.value.truth);
}

}  // namespace headgate::reference
