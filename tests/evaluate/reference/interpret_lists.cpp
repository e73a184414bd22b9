// Walking finite lists: some, no, every, count, sum, least, greatest.
#include <limits>

#include "evaluate/interpret.hpp"

namespace headgate::evaluate {

using expression::Node;
using expression::no_node;
using expression::Op;
using expression::Tree;
using quantity::Interval;
using vocabulary::Presence;

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

void decide(Evaluated& out, Truth truth, Why why) {
  out.value = vocabulary::of_truth(truth);
  out.why = truth == Truth::undecided ? why : Why::known;
}

}  // namespace

Walked Interpreter::walk(const Tree& tree, const Node& node, Frame& frame) {
  Walked walked;
  Evaluated list = run(tree, node.binder.list, frame);
  if (list.value.id == site::nowhere || list.value.presence != Presence::present) {
    walked.complete = list.value.presence == Presence::none;
    walked.list = site::nowhere;
    return walked;
  }
  walked.list = list.value.id;
  const auto& items = site_.lists[walked.list];
  walked.complete = items.complete || (node.binder.shapes & ~items.closed).none();
  for (const auto element : items.items) {
    if (node.binder.shapes.test(site_.elements[element].shape)) walked.elements.push_back(element);
  }
  return walked;
}

Evaluated Interpreter::quantifier(const Tree& tree, const Node& node, Evaluated out, Frame& frame) {
  const Walked walked = walk(tree, node, frame);
  out.list = walked.list;
  const bool every = node.op == Op::every;
  Truth result = every ? Truth::yes : Truth::no;
  for (const auto element : walked.elements) {
    frame[node.binder.variable] = element;
    Truth where = Truth::yes;
    Truth has = Truth::yes;
    for (std::size_t k = 0; k < node.kids.size(); ++k) {
      if (node.kids[k] == no_node) continue;
      Evaluated kid = run(tree, node.kids[k], frame);
      kid.about = element;
      (k == 0 ? where : has) = kid.truth();
      out.kids.push_back(std::move(kid));
    }
    if (every) result = quantity::both(result, quantity::either(quantity::opposite(where), has));
    else result = quantity::either(result, quantity::both(where, has));
  }
  Why why = Why::parts;
  if (!walked.complete && result == (every ? Truth::yes : Truth::no)) {
    result = Truth::undecided;
    why = Why::unfinished;
  }
  decide(out, node.op == Op::no ? quantity::opposite(result) : result, why);
  return out;
}

// Whether an expression can never be negative, by what the vocabulary declares of its facts.
bool never_negative(const Tree& tree, expression::NodeId id, const vocabulary::Vocabulary& vocabulary) {
  const Node& node = tree[id];
  if (node.op == Op::literal) return node.value.number.lo >= 0;
  if (node.op == Op::add || node.op == Op::multiply || node.op == Op::divide || node.op == Op::greatest || node.op == Op::least) {
    for (const auto kid : node.kids) {
      if (!never_negative(tree, kid, vocabulary)) return false;
    }
    return true;
  }
  if (node.op != Op::path || node.steps.empty()) return false;
  for (const auto& shape : vocabulary.shapes) {   // every fact of this name must be declared so
    const auto field = shape.field(node.steps.back().name);
    if (field && !shape.fields[*field].never_negative) return false;
  }
  return true;
}

Evaluated Interpreter::fold(const Tree& tree, const Node& node, Evaluated out, Frame& frame) {
  const Walked walked = walk(tree, node, frame);
  out.list = walked.list;
  const bool counts = node.op == Op::count;
  const std::size_t where_kid = counts ? 0 : 1;
  const bool summing = counts || node.op == Op::sum;
  const bool least = node.op == Op::least_of;
  Interval total = quantity::exactly(0);
  Interval best = least ? Interval{infinity, infinity} : Interval{-infinity, -infinity};
  bool some_certain = false;
  Why why = Why::known;
  const quantity::Unit* unit = nullptr;
  for (const auto element : walked.elements) {
    frame[node.binder.variable] = element;
    Interval value = quantity::exactly(1);
    Truth where = Truth::yes;
    for (std::size_t k = 0; k < node.kids.size(); ++k) {
      if (node.kids[k] == no_node) continue;
      Evaluated kid = run(tree, node.kids[k], frame);
      kid.about = element;
      if (k == where_kid) where = kid.truth();
      else value = kid.value.presence == Presence::present ? kid.value.number : Interval{};
      if (k != where_kid && unit == nullptr) unit = kid.value.unit;
      out.kids.push_back(std::move(kid));
    }
    if (where == Truth::no) continue;
    const bool certain = where == Truth::yes;
    some_certain = some_certain || certain;
    if (!certain || value.everything()) why = Why::parts;
    if (summing) {
      total = quantity::add(total, certain ? value : quantity::hull(value, quantity::exactly(0)));
    } else if (least) {
      best.lo = std::min(best.lo, value.lo);
      if (certain) best.hi = std::min(best.hi, value.hi);
    } else {
      best.hi = std::max(best.hi, value.hi);
      if (certain) best.lo = std::max(best.lo, value.lo);
    }
  }
  if (!walked.complete) why = Why::unfinished;
  if (summing) {
    if (!walked.complete) {
      const bool grows = counts || never_negative(tree, node.kids[0], *book_.vocabulary);
      total = grows ? Interval{total.lo, infinity} : Interval{};
    }
    out.value = vocabulary::of_number(total, unit);
    out.why = why;
    return out;
  }
  if (walked.elements.empty() && walked.complete) {
    out.value = vocabulary::unknown();
    out.why = Why::empty;
    return out;
  }
  if (!walked.complete) (least ? best.lo : best.hi) = least ? -infinity : infinity;
  if (!some_certain) (least ? best.hi : best.lo) = least ? infinity : -infinity;
  out.value = vocabulary::of_number(best, unit);
  if (node.type.kind != vocabulary::Type::Kind::number) out.value.unit = nullptr;
  out.why = why;
  return out;
}

}  // namespace headgate::evaluate
