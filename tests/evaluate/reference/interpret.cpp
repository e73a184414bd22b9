#include "evaluate/interpret.hpp"

#include <algorithm>

#include "evaluate/walk.hpp"

namespace headgate::evaluate {

using expression::Node;
using expression::NodeId;
using expression::Op;
using expression::Tree;
using quantity::Interval;
using vocabulary::Presence;
using vocabulary::Value;
using Kind = vocabulary::Type::Kind;

namespace {

void decide(Evaluated& out, Truth truth, Why why) {
  out.value = vocabulary::of_truth(truth);
  out.why = truth == Truth::undecided ? (why == Why::known ? Why::parts : why) : Why::known;
}

void not_known(Evaluated& out, Why why) {
  out.value = vocabulary::unknown();
  out.why = why == Why::known ? Why::parts : why;
}

// An operation's value from kids' values: unknown as soon as one is none.
bool all_usable(const Evaluated& out) {
  return std::all_of(out.kids.begin(), out.kids.end(), [](const Evaluated& kid) { return usable(kid.value); });
}

}  // namespace

Evaluated Interpreter::evaluate(const Tree& tree, const Frame& handed) {
  Frame frame(std::max<std::size_t>(tree.variables, handed.size()), site::nowhere);
  std::copy(handed.begin(), handed.end(), frame.begin());
  return run(tree, tree.root, frame);
}

void Interpreter::in_hand(const rulebook::Rule* rule, const std::vector<site::ElementId>& elements) {
  rule_ = rule;
  elements_ = elements;
}

void Interpreter::run_kids(const Tree& tree, const Node& node, Evaluated& out, Frame& frame) {
  for (const NodeId kid : node.kids) out.kids.push_back(run(tree, kid, frame));
}

Evaluated Interpreter::run(const Tree& tree, NodeId id, Frame& frame) {
  const Node& node = tree[id];
  Evaluated out;
  out.tree = &tree;
  out.node = id;
  out.type = node.type;
  switch (node.op) {
    case Op::literal: out.value = node.value; return out;
    case Op::both:
    case Op::either:
    case Op::opposite: return logic(tree, node, std::move(out), frame);
    case Op::compare:
    case Op::between:
    case Op::same:
    case Op::comes: return relation(tree, node, std::move(out), frame);
    case Op::is_item:
    case Op::one_of: return item(tree, node, std::move(out), frame);
    case Op::is_none:
    case Op::fitted:
    case Op::recorded: return presence(tree, node, std::move(out), frame);
    case Op::in_list: return in_list(tree, node, std::move(out), frame);
    case Op::some:
    case Op::no:
    case Op::every: return quantifier(tree, node, std::move(out), frame);
    case Op::count:
    case Op::sum:
    case Op::least_of:
    case Op::greatest_of: return fold(tree, node, std::move(out), frame);
    case Op::least:
    case Op::greatest:
    case Op::add:
    case Op::subtract:
    case Op::multiply:
    case Op::divide:
    case Op::negate: return arithmetic(tree, node, std::move(out), frame);
    case Op::path: return path(node, std::move(out), frame);
    case Op::property: return property(tree, node, std::move(out), frame);
    case Op::at_mark: return reading(tree, node, std::move(out), frame);
    case Op::limit: return limit(tree, node, std::move(out), frame);
    case Op::look_up: return table(tree, node, std::move(out), frame);
    case Op::call: return call(tree, node, std::move(out), frame);
    case Op::choose: return choose(tree, node, std::move(out), frame);
    case Op::paper: return paper(node, std::move(out));
    case Op::confirmed: return confirmed(node, std::move(out));
    case Op::base: {
      const Base base = bases_.back();
      return limit_value(base.limit, base.chain + 1, base.key, base.element, std::move(out));
    }
    case Op::word:
    case Op::error: break;
  }
  not_known(out, Why::missing);
  return out;
}

Evaluated Interpreter::logic(const Tree& tree, const Node& node, Evaluated out, Frame& frame) {
  run_kids(tree, node, out, frame);
  Truth result = out.kids[0].truth();
  if (node.op == Op::opposite) result = quantity::opposite(result);
  for (std::size_t i = 1; i < out.kids.size(); ++i) {
    result = node.op == Op::both ? quantity::both(result, out.kids[i].truth()) : quantity::either(result, out.kids[i].truth());
  }
  decide(out, result, Why::parts);
  return out;
}

Evaluated Interpreter::relation(const Tree& tree, const Node& node, Evaluated out, Frame& frame) {
  run_kids(tree, node, out, frame);
  const Value& a = out.kids[0].value;
  const Value& b = out.kids[1].value;
  const auto& type = out.kids[0].type;
  Compared result;
  if (node.op == Op::compare) {
    result = compare(node.relation, a, b, type, book_);
  } else if (node.op == Op::between) {
    const Compared first = compare(node.relation, a, b, type, book_);
    const Compared second = compare(node.second, b, out.kids[2].value, type, book_);
    result = {quantity::both(first.truth, second.truth), first.truth == Truth::undecided ? first.why : second.why};
  } else if (node.op == Op::same) {
    result = same(a, b, type, book_);
  } else if (usable(a) && usable(b)) {
    result = comes(site_, *book_.vocabulary, a.id, b.id, node.before, node.right);
  } else {
    result = {Truth::undecided, Why::parts};
  }
  decide(out, node.negated ? quantity::opposite(result.truth) : result.truth, result.why);
  return out;
}

Evaluated Interpreter::item(const Tree& tree, const Node& node, Evaluated out, Frame& frame) {
  if (node.op == Op::is_item && node.shapes.any()) {   // is pipe, is preventer
    out.kids.push_back(run(tree, node.kids[0], frame));
    const Value& subject = out.kids[0].value;
    Truth result = Truth::undecided;
    if (usable(subject)) result = quantity::truth(node.shapes.test(site_.elements[subject.id].shape));
    decide(out, node.negated ? quantity::opposite(result) : result, Why::parts);
    return out;
  }
  run_kids(tree, node, out, frame);
  Compared any{Truth::no, Why::known};
  for (std::size_t i = 1; i < out.kids.size(); ++i) {
    const Compared one = same(out.kids[0].value, out.kids[i].value, out.kids[0].type, book_);
    if (one.truth == Truth::undecided) any.why = one.why;
    any.truth = quantity::either(any.truth, one.truth);
  }
  // A choice known to be one of several, all of them in the list, is in it although no single member is certain.
  if (any.truth == Truth::undecided && out.kids[0].type.kind == Kind::choice && usable(out.kids[0].value)) {
    std::uint64_t members = 0;
    for (std::size_t i = 1; i < out.kids.size(); ++i) members |= out.kids[i].value.members;
    if ((out.kids[0].value.members & ~members) == 0) any = {Truth::yes, Why::known};
  }
  decide(out, node.negated ? quantity::opposite(any.truth) : any.truth, any.why);
  return out;
}

Evaluated Interpreter::presence(const Tree& tree, const Node& node, Evaluated out, Frame& frame) {
  run_kids(tree, node, out, frame);
  const Evaluated& subject = out.kids[0];
  Presence is = subject.value.presence;
  if (subject.type.kind == Kind::list && is == Presence::present) {
    const auto& list = site_.lists[subject.value.id];
    is = !list.items.empty() ? Presence::present : list.complete ? Presence::none : Presence::unknown;
  }
  Truth result = Truth::undecided;
  if (node.op == Op::recorded) result = quantity::truth(is != Presence::unknown);
  else if (is != Presence::unknown) result = quantity::truth((is == Presence::none) == (node.op == Op::is_none));
  decide(out, node.negated ? quantity::opposite(result) : result, subject.why);
  return out;
}

Evaluated Interpreter::arithmetic(const Tree& tree, const Node& node, Evaluated out, Frame& frame) {
  run_kids(tree, node, out, frame);
  if (!all_usable(out)) {
    not_known(out, Why::parts);
    return out;
  }
  if (node.type.kind == Kind::date) return date_step(node, std::move(out));
  if (node.type.kind == Kind::number && node.type.dimension == quantity::dimensions::size) return extreme(tree, node, std::move(out), frame);
  if (node.op == Op::divide && out.kids[0].type.dimension == quantity::dimensions::size &&
      !same_ladder(out.kids[0].value, out.kids[1].value, book_)) {
    not_known(out, Why::two_ladders);
    return out;
  }
  Interval result = out.kids[0].value.number;
  if (node.op == Op::negate) result = quantity::negate(result);
  for (std::size_t i = 1; i < out.kids.size(); ++i) {
    const Interval next = out.kids[i].value.number;
    switch (node.op) {
      case Op::add: result = quantity::add(result, next); break;
      case Op::subtract: result = quantity::subtract(result, next); break;
      case Op::multiply: result = quantity::multiply(result, next); break;
      case Op::divide: result = quantity::divide(result, next); break;
      case Op::least: result = quantity::least(result, next); break;
      default: result = quantity::greatest(result, next); break;
    }
  }
  const auto* unit = node.op == Op::multiply || node.op == Op::divide ? nullptr : out.kids[0].value.unit;
  out.value = vocabulary::of_number(result, unit);
  return out;
}

// least and greatest of sizes, which stand on two ladders; dates go this way too.
Evaluated Interpreter::extreme(const Tree&, const Node& node, Evaluated out, Frame&) {
  Value best = out.kids[0].value;
  for (std::size_t i = 1; i < out.kids.size(); ++i) {
    Value next = out.kids[i].value;
    if (!same_ladder(best, next, book_)) {
      not_known(out, Why::two_ladders);
      return out;
    }
    best.number = node.op == Op::least ? quantity::least(best.number, next.number) : quantity::greatest(best.number, next.number);
  }
  out.value = best;
  return out;
}

Evaluated Interpreter::date_step(const Node& node, Evaluated out) {
  if (node.op == Op::least || node.op == Op::greatest) {
    Frame none;
    return extreme(*out.tree, node, std::move(out), none);
  }
  Value from = out.kids[0].value;
  const Value& by = out.kids[1].value;
  const quantity::Span span{by.number.lo, by.span_unit};
  const int sign = node.op == Op::add ? 1 : -1;
  if (from.number.everything()) {
    out.value = vocabulary::of_number({});
    return out;
  }
  const auto lo = quantity::step(static_cast<quantity::Day>(from.number.lo), span, sign, &book_.closed);
  const auto hi = quantity::step(static_cast<quantity::Day>(from.number.hi), span, sign, &book_.closed);
  if (!lo || !hi) {
    not_known(out, Why::no_closed_days);
    return out;
  }
  out.value = vocabulary::of_number({static_cast<double>(*lo), static_cast<double>(*hi)});
  return out;
}

Evaluated Interpreter::property(const Tree& tree, const Node& node, Evaluated out, Frame& frame) {
  run_kids(tree, node, out, frame);
  const Value& subject = out.kids[0].value;
  if (!usable(subject)) {
    not_known(out, subject.presence == Presence::none ? Why::of_none : Why::parts);
    return out;
  }
  const auto& choice = book_.vocabulary->choices[out.kids[0].type.choice];
  bool any = false;
  for (std::size_t m = 0; m < choice.members.size(); ++m) {
    if ((subject.members >> m & 1U) == 0) continue;
    const Value& one = choice.members[m].properties[node.index];
    out.value = any ? hull(out.value, one, node.type, book_) : one;
    any = true;
  }
  if (!usable(out.value) || (node.type.kind == Kind::truth && out.value.truth == Truth::undecided)) out.why = Why::parts;
  return out;
}

Evaluated Interpreter::reading(const Tree& tree, const Node& node, Evaluated out, Frame& frame) {
  run_kids(tree, node, out, frame);
  const Value& level = out.kids[0].value;
  if (!usable(level)) {
    not_known(out, level.presence == Presence::none ? Why::of_none : out.kids[0].why);
    return out;
  }
  const std::uint32_t mark = out.kids[1].value.id;
  for (const auto& reading : site_.levels[level.id]) {
    if (reading.mark != mark) continue;
    out.value = vocabulary::of_number(node.before ? quantity::negate(reading.height_m) : reading.height_m, level.unit);
    return out;
  }
  not_known(out, Why::no_reading);
  return out;
}

Evaluated Interpreter::choose(const Tree& tree, const Node& node, Evaluated out, Frame& frame) {
  run_kids(tree, node, out, frame);
  const Truth which = out.kids[0].truth();
  if (which == Truth::undecided) out.value = hull(out.kids[1].value, out.kids[2].value, node.type, book_);
  else out.value = out.kids[which == Truth::yes ? 1 : 2].value;
  if (!usable(out.value) && out.value.presence == Presence::unknown) out.why = Why::parts;
  return out;
}

Why reason(const Evaluated& of) {
  if (of.why != Why::parts) return of.why;
  for (const auto& kid : of.kids) {
    if (kid.why == Why::known) continue;
    const Why found = reason(kid);
    if (found != Why::parts && found != Why::known) return found;
  }
  return Why::parts;
}

}  // namespace headgate::evaluate
