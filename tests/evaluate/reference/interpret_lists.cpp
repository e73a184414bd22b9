// Finite lists: some, no, every, count, sum, least, greatest.
#include <algorithm>
#include <limits>

#include "evaluate/reference/interpret.hpp"

namespace headgate::reference {

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

// One element of a list: whether it counts, and the fact looked at.
struct Item {
  Truth where = Truth::yes;
  Value value;
};

std::vector<Item> items(const Node& at, const Seen& seen, const Worked& out) {
  const bool counts = at.op == Op::count;
  const NodeId where = counts ? at.kids[0] : at.kids[1];
  std::vector<Item> result;
  std::size_t kid = 0;
  for (std::size_t i = 0; i < seen.elements.size(); ++i) {
    Item item;
    item.value = counts ? vocabulary::of_number(quantity::exactly(1)) : out.kids[kid++].value;
    if (where != expression::no_node) item.where = out.kids[kid++].value.truth;
    if (item.value.presence != Presence::present) item.value.number = {};
    if (item.where != Truth::no) result.push_back(item);
  }
  return result;
}

// Sizes nobody knows stand on no ladder.
bool all_metric(const std::vector<Item>& items) {
  std::size_t metric = 0;
  for (const auto& item : items) {
    if (item.value.number.everything()) continue;
    if (item.value.ladder == vocabulary::Ladder::inch) return false;
    ++metric;
  }
  return metric > 0;
}

bool of_sizes(const Type& type) {
  return type.kind == Type::Kind::number && type.dimension == quantity::dimensions::size;
}

}  // namespace

Seen Interpreter::see(const Value& list, const vocabulary::ShapeSet& kinds) const {
  Seen seen;
  seen.complete = list.presence == Presence::none;
  seen.list = list.id;
  if (list.presence != Presence::present) return seen;
  const auto& written = site_.lists[list.id];
  seen.complete = written.complete || written.complete_for(kinds);
  for (const auto element : written.items) {
    if (kinds.test(site_.elements[element].shape)) seen.elements.push_back(element);
  }
  return seen;
}

// some: one that is, and no: none that is; every: none that is not. An unfinished list may hold another.
Value Interpreter::quantifier(const Tree& tree, const Node& at, Worked& out, Frame& frame) {
  const Seen seen = see(node(tree, at.binder.list, frame).value, at.binder.shapes);
  Truth found = Truth::no;  // one that counts and has it; of `every`: one that counts and has it not
  for (const auto element : seen.elements) {
    frame[at.binder.variable] = element;
    Truth parts[] = {Truth::yes, Truth::yes};
    for (std::size_t k = 0; k < at.kids.size(); ++k) {
      if (at.kids[k] == expression::no_node) continue;
      out.kids.push_back(node(tree, at.kids[k], frame));
      out.kids.back().about = element;
      parts[k] = out.kids.back().value.truth;
    }
    const Truth has = at.op == Op::every ? quantity::opposite(parts[1]) : parts[1];
    found = quantity::either(found, quantity::both(parts[0], has));
  }
  frame[at.binder.variable] = site::nowhere;
  if (!seen.complete) found = quantity::either(found, Truth::undecided);
  return vocabulary::of_truth(at.op == Op::some ? found : quantity::opposite(found));
}

Value Interpreter::fold(const Tree& tree, const Node& at, Worked& out, Frame& frame) {
  const Seen seen = see(node(tree, at.binder.list, frame).value, at.binder.shapes);
  for (const auto element : seen.elements) {
    frame[at.binder.variable] = element;
    for (const NodeId kid : at.kids) {
      if (kid == expression::no_node) continue;
      out.kids.push_back(node(tree, kid, frame));
      out.kids.back().about = element;
    }
  }
  frame[at.binder.variable] = site::nowhere;
  const bool adds = at.op == Op::count || at.op == Op::sum;
  return adds ? count_or_sum(tree, at, seen, out) : extreme_of(at, seen, out);
}

// An element that may not count adds the hull of nothing and its value.
Value Interpreter::count_or_sum(const Tree& tree, const Node& at, const Seen& seen, const Worked& out) const {
  Interval total = quantity::exactly(0);
  for (const auto& item : items(at, seen, out)) {
    const Interval adds = item.value.number;
    total = quantity::add(total, item.where == Truth::yes ? adds : quantity::hull(adds, quantity::exactly(0)));
  }
  if (!seen.complete) {
    const bool only_grows = at.op == Op::count || never_negative(tree, at.kids[0], at.binder);
    total = only_grows ? Interval{total.lo, infinity} : Interval{};
  }
  return vocabulary::of_number(total);
}

// Of no elements there is no least; while none is certain to count there may be none. Sizes go onto one ladder.
Value Interpreter::extreme_of(const Node& at, const Seen& seen, const Worked& out) const {
  const auto all = items(at, seen, out);
  const bool least = at.op == Op::least_of;
  const bool certain = std::any_of(all.begin(), all.end(), [](const Item& item) { return item.where == Truth::yes; });
  if (!certain) return vocabulary::unknown();
  Value best;
  best.presence = Presence::present;
  best.ladder = all_metric(all) ? vocabulary::Ladder::metric : vocabulary::Ladder::inch;
  double lo = infinity;
  double hi = infinity;
  for (const auto& item : all) {
    Value value = item.value;
    if (of_sizes(at.type) && !item.value.number.everything() && !evaluate::same_ladder(value, best, book_))
      return vocabulary::unknown();
    if (!least) value.number = quantity::negate(value.number);
    lo = std::min(lo, value.number.lo);
    if (item.where == Truth::yes) hi = std::min(hi, value.number.hi);
  }
  if (!seen.complete) lo = -infinity;
  best.number = least ? Interval{lo, hi} : Interval{-hi, -lo};
  return best;
}

bool Interpreter::never_negative(const Tree& tree, NodeId id, const expression::Binder& of) const {
  const Node& at = tree[id];
  const auto kids = [&] {
    return std::all_of(at.kids.begin(), at.kids.end(), [&](NodeId kid) { return never_negative(tree, kid, of); });
  };
  switch (at.op) {
    case Op::literal: return at.value.number.lo >= 0;
    case Op::count: return true;
    case Op::add:
    case Op::multiply:
    case Op::divide:
    case Op::least:
    case Op::greatest: return kids();
    case Op::path: break;
    default: return false;
  }
  if (at.steps.empty()) return false;
  for (std::size_t kind = 0; kind < book_.vocabulary->shapes.size(); ++kind) {
    const auto& shape = book_.vocabulary->shapes[kind];
    const bool another = at.variable == of.variable && at.steps.size() == 1 && !of.shapes.test(kind);
    const auto field = shape.field(at.steps.back().name);
    if (!another && field && !shape.fields[*field].never_negative) return false;
  }
  return true;
}

}  // namespace headgate::reference
