// Deciding: every step of a plan, group after group. Nothing here allocates.
#include <algorithm>
#include <cmath>

#include "evaluate/runner.hpp"

namespace headgate::evaluate {

using quantity::Interval;
using vocabulary::Presence;
using vocabulary::Value;
using Kind = vocabulary::Type::Kind;

Cell cell_of(const Value& value, Why why) {
  Cell cell;
  cell.lo = value.number.lo;
  cell.hi = value.number.hi;
  cell.members = value.members;
  cell.id = value.id;
  cell.presence = value.presence;
  cell.truth = value.truth;
  cell.why = why;
  cell.extra =
      static_cast<std::uint8_t>(static_cast<unsigned>(value.ladder) << 4U | static_cast<unsigned>(value.span_unit));
  return cell;
}

Value value_of(const Cell& cell) {
  Value value;
  value.number = {cell.lo, cell.hi};
  value.members = cell.members;
  value.id = cell.id;
  value.presence = cell.presence;
  value.truth = cell.truth;
  value.ladder = static_cast<vocabulary::Ladder>(cell.extra >> 4U);
  value.span_unit = static_cast<quantity::Span::Unit>(cell.extra & 15U);
  return value;
}

namespace {

// Beyond the margin no snapping can change which is less.
Truth below(double a, double b, double grid, bool or_equal) {
  const double margin = quantity::margin(std::max(std::fabs(a), std::fabs(b)), grid);
  if (a + margin < b) return Truth::yes;
  if (b + margin < a) return Truth::no;
  const double x = quantity::snap(a, grid);
  const double y = quantity::snap(b, grid);
  return quantity::truth(or_equal ? x <= y : x < y);
}

Truth compare(const Cell& a, const Cell& b, double grid, bool or_equal) {
  if (below(a.hi, b.lo, grid, or_equal) == Truth::yes) return Truth::yes;
  return below(a.lo, b.hi, grid, or_equal) == Truth::no ? Truth::no : Truth::undecided;
}

Compared settled(Truth truth) { return {truth, truth == Truth::undecided ? Why::too_close : Why::known}; }

}  // namespace

// What is too near to be told apart as it is gets looked at closely, and decided by the grid.
void Runner::comparisons() const {
  Cell* const all = cells;
  for (const Comparison& at : plan.comparisons) {
    const double below = at.right.lo - at.left.hi;
    const double above = at.left.lo - at.right.hi;
    if (std::fabs(below) > at.margin && std::fabs(above) > at.margin) {
      Cell& out = all[at.out];
      const int truth = 1 + static_cast<int>(below > 0) - static_cast<int>(above > 0);
      out.truth = static_cast<Truth>(truth);
      out.why = static_cast<Why>((truth & 1) * static_cast<int>(Why::too_close));
    } else {
      one(plan.steps[at.step]);
    }
  }
}

void Runner::junctions(const Step* at, const Step* end, bool all) const {
  for (; at != end; ++at) {
    Truth result = all ? Truth::yes : Truth::no;
    for (std::size_t i = 0; i < at->count; ++i) {
      const Truth one = in(*at, i).truth;
      result = all ? quantity::both(result, one) : quantity::either(result, one);
    }
    set_truth(cells[at->out], result, Why::parts);
  }
}

// A choice against members: known to be one of several, all of them listed, it is in the list although no single
// member is certain.
void Runner::choices(const Step* at, const Step* end) const {
  for (; at != end; ++at) {
    const Cell& subject = in(*at, 0);
    std::uint64_t listed = 0;
    for (std::size_t i = 1; i < at->count; ++i) listed |= in(*at, i).members;
    Truth result = (subject.members & ~listed) == 0 ? Truth::yes : Truth::undecided;
    if ((subject.members & listed) == 0) result = Truth::no;
    Why why = Why::too_close;
    if (!there(subject)) {
      result = Truth::undecided;
      why = subject.presence == Presence::none ? Why::of_none : Why::parts;
    }
    set_truth(cells[at->out], at->negated ? quantity::opposite(result) : result, why);
  }
}

void Runner::copies(const Step* at, const Step* end) const {
  for (; at != end; ++at) {
    Cell& out = cells[at->out];
    out = in(*at, 0);
    if (out.why != Why::known) out.why = Why::parts;
  }
}

Compared Runner::relate(const Step& step, const Cell& a, const Cell& b, bool or_equal) const {
  if (!there(a) || !there(b)) {
    const bool none = a.presence == Presence::none || b.presence == Presence::none;
    return {Truth::undecided, none ? Why::of_none : Why::parts};
  }
  if (step.sizes && a.extra >> 4U != b.extra >> 4U) {
    Value x = value_of(a);
    Value y = value_of(b);
    if (!same_ladder(x, y, book())) return {Truth::undecided, Why::two_ladders};
    return settled(compare(cell_of(x, Why::known), cell_of(y, Why::known), step.grid, or_equal));
  }
  return settled(compare(a, b, step.grid, or_equal));
}

void Runner::between(const Step& step, Cell& out) const {
  const auto& of = node(step);
  const auto side = [&](std::size_t i, expression::Relation relation) {
    const bool swaps = relation == expression::Relation::greater || relation == expression::Relation::greater_or_equal;
    const bool or_equal =
        relation == expression::Relation::less_or_equal || relation == expression::Relation::greater_or_equal;
    return swaps ? relate(step, in(step, i + 1), in(step, i), or_equal)
                 : relate(step, in(step, i), in(step, i + 1), or_equal);
  };
  const Compared first = side(0, of.relation);
  const Compared second = side(1, of.second);
  set_truth(out, quantity::both(first.truth, second.truth), first.truth == Truth::undecided ? first.why : second.why);
}

Compared Runner::alike(const Step& step, const Value& a, const Value& b) const {
  return evaluate::same(a, b, kid_type(step, 0), book());
}

void Runner::same(const Step& step, Cell& out) const {
  const Compared result = alike(step, value_of(in(step, 0)), value_of(in(step, 1)));
  set_truth(out, step.negated ? quantity::opposite(result.truth) : result.truth, result.why);
}

// A choice known to be one of several, all of them in the list, is in it although no single member is certain.
void Runner::choice_in(const Step& step, std::uint64_t listed, Compared& any) const {
  const Cell& subject = in(step, 0);
  if (any.truth != Truth::undecided || kid_type(step, 0).kind != Kind::choice || !there(subject)) return;
  if ((subject.members & ~listed) == 0) any = {Truth::yes, Why::known};
}

void Runner::one_of(const Step& step, Cell& out) const {
  const Value subject = value_of(in(step, 0));
  Compared any{Truth::no, Why::known};
  for (std::size_t i = 1; i < step.count; ++i) {
    const Compared one = alike(step, subject, value_of(in(step, i)));
    if (one.truth == Truth::undecided) any.why = one.why;
    any.truth = quantity::either(any.truth, one.truth);
  }
  set_truth(out, step.negated ? quantity::opposite(any.truth) : any.truth, any.why);
}

Compared Runner::of_kind(const Value& element, const Value& kind) const {
  if (!usable(element)) return {Truth::undecided, element.presence == Presence::none ? Why::of_none : Why::parts};
  return {quantity::truth(plan.site->elements[element.id].shape == kind.id), Why::known};
}

void Runner::in_list(const Step& step, Cell& out) const {
  const auto& list =
      book()
          .limits[static_cast<std::size_t>(plan.nodes[plan.kids[plan.nodes[step.node].first_kid + 1]].limit)]
          .chain[0]
          .list;
  const Value subject = value_of(in(step, 0));
  Compared any{Truth::no, Why::known};
  std::uint64_t listed = 0;
  for (const auto& value : list) {
    listed |= value.members;
    const Compared one =
        kid_type(step, 0).kind == Kind::element ? of_kind(subject, value) : alike(step, subject, value);
    any.truth = quantity::either(any.truth, one.truth);
    if (one.truth == Truth::undecided) any.why = one.why;
  }
  if (!list.empty()) choice_in(step, listed, any);
  set_truth(out, step.negated ? quantity::opposite(any.truth) : any.truth, any.why);
}

void Runner::in_season(const Step& step, Cell& out) const {
  const Compared result = evaluate::in_season(value_of(in(step, 0)), value_of(in(step, 1)));
  set_truth(out, step.negated ? quantity::opposite(result.truth) : result.truth, result.why);
}

void Runner::presence(const Step& step, Cell& out) const {
  const Cell& subject = in(step, 0);
  Truth result = Truth::undecided;
  if (step.code == Code::recorded)
    result = quantity::truth(subject.presence != Presence::unknown);
  else if (subject.presence != Presence::unknown)
    result = quantity::truth((subject.presence == Presence::none) == (step.code == Code::is_none));
  set_truth(out, step.negated ? quantity::opposite(result) : result, subject.why);
}

void Runner::one(const Step& step) const {
  Cell& out = cells[step.out];
  switch (step.code) {
    case Code::all_of:
    case Code::any_of: return junctions(&step, &step + 1, step.code == Code::all_of);
    case Code::invert: return set_truth(out, quantity::opposite(in(step, 0).truth), Why::parts);
    case Code::compare_less:
    case Code::compare_less_or_equal: {
      const Compared result = relate(step, in(step, 0), in(step, 1), step.code == Code::compare_less_or_equal);
      return set_truth(out, result.truth, result.why);
    }
    case Code::between: return between(step, out);
    case Code::same: return same(step, out);
    case Code::member: return choices(&step, &step + 1);
    case Code::one_of: return one_of(step, out);
    case Code::in_list: return in_list(step, out);
    case Code::in_season: return in_season(step, out);
    case Code::is_none:
    case Code::fitted:
    case Code::recorded: return presence(step, out);
    case Code::some:
    case Code::every:
    case Code::none_of: return quantifier(step, out);
    case Code::count:
    case Code::sum: return total(step, out);
    case Code::least_of:
    case Code::greatest_of: return extreme_of(step, out);
    case Code::add:
    case Code::subtract:
    case Code::multiply:
    case Code::divide:
    case Code::negate:
    case Code::least:
    case Code::greatest: return arithmetic(step, out);
    case Code::date_step: return date_step(step, out);
    case Code::property: return property(step, out);
    case Code::reading: return reading(step, out);
    case Code::choose: return choose(step, out);
    case Code::look_up: return look_up(step, out);
    case Code::call: return call(step, out);
    case Code::select_row: return select_row(step, out);
    case Code::copy: return copies(&step, &step + 1);
  }
}

void run(const Plan& plan, std::vector<Cell>& cells) {
  const Runner runner{plan, cells.data()};
  runner.comparisons();
  const Step* const steps = plan.steps.data();
  for (const auto& group : plan.groups) {
    const Step* const first = steps + group.first;
    const Step* const last = steps + group.last;
    switch (group.code) {
      case Code::all_of:
      case Code::any_of: runner.junctions(first, last, group.code == Code::all_of); break;
      case Code::member: runner.choices(first, last); break;
      case Code::copy: runner.copies(first, last); break;
      default: runner.each(first, last);
    }
  }
  runner.each(steps + plan.grouped, steps + plan.steps.size());
}

}  // namespace headgate::evaluate
