#include "evaluate/reference/interpret.hpp"

#include <algorithm>

#include "evaluate/look_up.hpp"
#include "evaluate/walk.hpp"

namespace headgate::reference {

using expression::Relation;
using Kind = Type::Kind;

namespace {

const Type& type_of(const Tree& tree, const Node& at, std::size_t kid) { return tree[at.kids[kid]].type; }

bool all_present(const Worked& out) {
  return std::all_of(out.kids.begin(), out.kids.end(), [](const Worked& kid) { return evaluate::usable(kid.value); });
}

Value turned(Truth truth, bool negated) { return vocabulary::of_truth(negated ? quantity::opposite(truth) : truth); }

}  // namespace

void Interpreter::in_hand(const rulebook::Rule* rule, const std::vector<site::ElementId>& elements) {
  rule_ = rule;
  elements_ = elements;
}

Worked Interpreter::work(const Tree& tree, const Frame& handed) {
  Frame frame(std::max<std::size_t>(tree.variables, handed.size()), site::nowhere);
  std::copy(handed.begin(), handed.end(), frame.begin());
  return node(tree, tree.root, frame);
}

Worked Interpreter::node(const Tree& tree, NodeId id, Frame& frame) {
  Worked out;
  out.tree = &tree;
  out.node = id;
  const Node& at = tree[id];
  const bool walks_a_list = at.binder.list != expression::no_node;
  const bool kids_first = !walks_a_list && at.op != Op::in_list;
  const bool kind = at.op == Op::is_item && at.shapes.any();  // `is pipe`: a kind is no value
  for (std::size_t i = 0; kids_first && i < (kind ? 1 : at.kids.size()); ++i)
    out.kids.push_back(node(tree, at.kids[i], frame));
  out.value = value(tree, at, out, frame);
  return out;
}

Value Interpreter::value(const Tree& tree, const Node& at, Worked& out, Frame& frame) {
  switch (at.op) {
    case Op::literal: return at.value;
    case Op::both:
    case Op::either:
    case Op::opposite: return logic(at, out);
    case Op::compare:
    case Op::between:
    case Op::same:
    case Op::comes: return relation(tree, at, out);
    case Op::is_item:
    case Op::one_of: return is_one_of(tree, at, out);
    case Op::in_list: return in_limit(tree, at, out, frame);
    case Op::is_none:
    case Op::fitted:
    case Op::recorded: return presence(tree, at, out);
    case Op::some:
    case Op::no:
    case Op::every: return quantifier(tree, at, out, frame);
    case Op::count:
    case Op::sum:
    case Op::least_of:
    case Op::greatest_of: return fold(tree, at, out, frame);
    case Op::least:
    case Op::greatest:
    case Op::add:
    case Op::subtract:
    case Op::multiply:
    case Op::divide:
    case Op::negate: return arithmetic(tree, at, out);
    case Op::path: return path(at, out, frame);
    case Op::property: return property(tree, at, out);
    case Op::at_mark: return reading(at, out);
    case Op::limit: return limit(at, out, frame);
    case Op::look_up: return look_up(tree, at, out);
    case Op::call: return call(at, out);
    case Op::choose: return choose(at, out);
    case Op::paper: return paper(at, frame);
    case Op::confirmed: return confirmed(at);
    case Op::base: {
      const Below here = below_.back();
      return limit_row(here.limit, here.chain + 1, here.row, here.element, out, here.in_hand);
    }
    case Op::word:
    case Op::error: break;
  }
  return vocabulary::unknown();
}

// Kleene; nothing is left out because an earlier part settles it.
Value Interpreter::logic(const Node& at, const Worked& out) const {
  if (at.op == Op::opposite) return vocabulary::of_truth(quantity::opposite(out.kids[0].value.truth));
  bool yes = false;
  bool no = false;
  bool open = false;
  for (const auto& kid : out.kids) {
    yes = yes || kid.value.truth == Truth::yes;
    no = no || kid.value.truth == Truth::no;
    open = open || kid.value.truth == Truth::undecided;
  }
  if (at.op == Op::both) return vocabulary::of_truth(no ? Truth::no : open ? Truth::undecided : Truth::yes);
  return vocabulary::of_truth(yes ? Truth::yes : open ? Truth::undecided : Truth::no);
}

Value Interpreter::relation(const Tree& tree, const Node& at, const Worked& out) const {
  const Type& type = type_of(tree, at, 0);
  const Value& a = out.kids[0].value;
  const Value& b = out.kids[1].value;
  if (at.op == Op::same) return turned(evaluate::same(a, b, type, book_).truth, at.negated);
  if (at.op == Op::compare) return vocabulary::of_truth(evaluate::compare(at.relation, a, b, type, book_).truth);
  if (at.op == Op::between) {
    const Truth left = evaluate::compare(at.relation, a, b, type, book_).truth;
    const Truth right = evaluate::compare(at.second, b, out.kids[2].value, type, book_).truth;
    return vocabulary::of_truth(quantity::both(left, right));
  }
  if (!all_present(out)) return vocabulary::of_truth(Truth::undecided);
  return turned(evaluate::comes(site_, *book_.vocabulary, a.id, b.id, at.before, at.right).truth, at.negated);
}

// `is X` and `is one of (X, Y)`: of a choice it is enough that every member it may be is listed.
Value Interpreter::is_one_of(const Tree& tree, const Node& at, const Worked& out) const {
  const Value& subject = out.kids[0].value;
  if (!evaluate::usable(subject)) return vocabulary::of_truth(Truth::undecided);
  if (at.shapes.any()) return turned(quantity::truth(at.shapes.test(site_.elements[subject.id].shape)), at.negated);
  Truth any = Truth::no;
  std::uint64_t listed = 0;
  for (std::size_t i = 1; i < out.kids.size(); ++i) {
    any = quantity::either(any, evaluate::same(subject, out.kids[i].value, type_of(tree, at, 0), book_).truth);
    listed |= out.kids[i].value.members;
  }
  const bool choice = type_of(tree, at, 0).kind == Kind::choice;
  if (choice && (subject.members & ~listed) == 0) any = Truth::yes;
  return turned(any, at.negated);
}

// A list is there when it holds something, none when it is complete and empty.
Value Interpreter::presence(const Tree& tree, const Node& at, const Worked& out) const {
  Presence is = out.kids[0].value.presence;
  if (type_of(tree, at, 0).kind == Kind::list && is == Presence::present) {
    const auto& list = site_.lists[out.kids[0].value.id];
    is = !list.items.empty() ? Presence::present : list.complete ? Presence::none : Presence::unknown;
  }
  if (at.op == Op::recorded) return turned(quantity::truth(is != Presence::unknown), at.negated);
  if (is == Presence::unknown) return vocabulary::of_truth(Truth::undecided);
  const bool none = is == Presence::none;
  return turned(quantity::truth(at.op == Op::is_none ? none : !none), at.negated);
}

Value Interpreter::arithmetic(const Tree& tree, const Node& at, const Worked& out) const {
  if (!all_present(out)) return vocabulary::unknown();
  const bool steps = at.op == Op::add || at.op == Op::subtract;
  if (at.type.kind == Kind::date && steps) return step_date(at, out);
  const bool of_sizes =
      type_of(tree, at, 0).kind == Kind::number && type_of(tree, at, 0).dimension == quantity::dimensions::size;
  if (of_sizes && at.op != Op::negate) return sizes(at, out);
  Interval result = out.kids[0].value.number;
  if (at.op == Op::negate) result = quantity::negate(result);
  for (std::size_t i = 1; i < out.kids.size(); ++i) {
    const Interval next = out.kids[i].value.number;
    if (at.op == Op::add)
      result = quantity::add(result, next);
    else if (at.op == Op::subtract)
      result = quantity::subtract(result, next);
    else if (at.op == Op::multiply)
      result = quantity::multiply(result, next);
    else if (at.op == Op::divide)
      result = quantity::divide(result, next);
    else if (at.op == Op::least)
      result = quantity::least(result, next);
    else
      result = quantity::greatest(result, next);
  }
  return vocabulary::of_number(result);
}

// Two sizes are brought onto one ladder; without an equivalence nothing can be said.
Value Interpreter::sizes(const Node& at, const Worked& out) const {
  Value best = out.kids[0].value;
  for (std::size_t i = 1; i < out.kids.size(); ++i) {
    Value next = out.kids[i].value;
    if (!evaluate::same_ladder(best, next, book_)) return vocabulary::unknown();
    if (at.op == Op::divide) return vocabulary::of_number(quantity::divide(best.number, next.number));
    best.number =
        at.op == Op::least ? quantity::least(best.number, next.number) : quantity::greatest(best.number, next.number);
  }
  return best;
}

// The earliest day by the span that leads there, the latest likewise; an open end stays open.
Value Interpreter::step_date(const Node& at, const Worked& out) const {
  const Value& from = out.kids[0].value;
  const Value& by = out.kids[1].value;
  const int sign = at.op == Op::add ? 1 : -1;
  Interval result;
  const auto end = [&](double day, double count, double& into) {
    if (day <= -1e9 || day >= 1e9) return true;
    const auto there = quantity::step(static_cast<quantity::Day>(day), {count, by.span_unit}, sign, &book_.closed);
    if (there) into = *there;
    return there.has_value();
  };
  const bool first = end(from.number.lo, sign > 0 ? by.number.lo : by.number.hi, result.lo);
  const bool last = end(from.number.hi, sign > 0 ? by.number.hi : by.number.lo, result.hi);
  return first && last ? vocabulary::of_number(result) : vocabulary::unknown();
}

// Of a choice that may be several members: what all of them may be.
Value Interpreter::property(const Tree& tree, const Node& at, const Worked& out) const {
  const Value& subject = out.kids[0].value;
  if (!evaluate::usable(subject)) return vocabulary::unknown();
  const auto& members = book_.vocabulary->choices[type_of(tree, at, 0).choice].members;
  std::vector<Value> may_be;
  for (std::size_t m = 0; m < members.size(); ++m) {
    if ((subject.members >> m & 1U) != 0) may_be.push_back(members[m].properties[at.index]);
  }
  Value all = may_be.front();
  for (const auto& one : may_be) all = evaluate::hull(all, one, at.type, book_);
  return all;
}

// No reading from the asked mark is undecided.
Value Interpreter::reading(const Node& at, const Worked& out) const {
  if (!all_present(out)) return vocabulary::unknown();
  double lowest = std::numeric_limits<double>::infinity();
  double highest = -lowest;
  for (const auto& one : site_.levels[out.kids[0].value.id]) {
    if (one.mark != out.kids[1].value.id) continue;
    lowest = std::min(lowest, one.height_m.lo);
    highest = std::max(highest, one.height_m.hi);
  }
  if (lowest > highest) return vocabulary::unknown();
  return vocabulary::of_number(at.before ? Interval{-highest, -lowest} : Interval{lowest, highest});
}

Value Interpreter::choose(const Node& at, const Worked& out) const {
  const Truth which = out.kids[0].value.truth;
  if (which == Truth::yes) return out.kids[1].value;
  if (which == Truth::no) return out.kids[2].value;
  return evaluate::hull(out.kids[1].value, out.kids[2].value, at.type, book_);
}

Value Interpreter::call(const Node& at, const Worked& out) const {
  if (!all_present(out)) return vocabulary::unknown();
  std::vector<Value> inputs;
  for (const auto& kid : out.kids) inputs.push_back(kid.value);
  return evaluate::call_function(at.index, inputs, book_).value;
}

}  // namespace headgate::reference
