// Steps that compute values.
#include <algorithm>
#include <array>
#include <cmath>

#include "evaluate/look_up.hpp"
#include "evaluate/runner.hpp"
#include "expression/functions.hpp"

namespace headgate::evaluate {

using quantity::Interval;
using vocabulary::Presence;
using Kind = vocabulary::Type::Kind;

namespace {

constexpr std::size_t most_operands =
    rulebook::most_table_keys;  // of a look-up or call: no function has as many inputs

Interval joined(Code code, Interval a, Interval b) {
  switch (code) {
    case Code::add: return quantity::add(a, b);
    case Code::subtract: return quantity::subtract(a, b);
    case Code::multiply: return quantity::multiply(a, b);
    case Code::divide: return quantity::divide(a, b);
    case Code::least: return quantity::least(a, b);
    default: return quantity::greatest(a, b);
  }
}

}  // namespace

bool Runner::all_there(const Step& step) const {
  for (std::size_t i = 0; i < step.count; ++i) {
    if (!there(in(step, i))) return false;
  }
  return true;
}

void Runner::arithmetic(const Step& step, Cell& out) const {
  if (!all_there(step)) return set_unknown(out, Why::parts);
  if (step.sizes && step.code != Code::negate) return of_sizes(step, out);
  Interval result = number(in(step, 0));
  if (step.code == Code::negate) result = quantity::negate(result);
  for (std::size_t i = 1; i < step.count; ++i) result = joined(step.code, result, number(in(step, i)));
  set_number(out, result);
  out.extra = step.code == Code::divide || step.code == Code::multiply ? 0 : in(step, 0).extra;
}

// Nominal sizes divide, and take their least and greatest, on one ladder.
void Runner::of_sizes(const Step& step, Cell& out) const {
  Value best = value_of(in(step, 0));
  for (std::size_t i = 1; i < step.count; ++i) {
    Value next = value_of(in(step, i));
    if (!same_ladder(best, next, book())) return set_unknown(out, Why::two_ladders);
    best.number = joined(step.code, best.number, next.number);
  }
  set_number(out, best.number);
  if (step.code != Code::divide) out.extra = cell_of(best, Why::known).extra;
}

// A day so many spans on; an open end stays open. Nothing past what the calendar or the closed days cover.
std::optional<double> Runner::stepped(double day, double count, quantity::Span::Unit unit, int sign) const {
  if (std::isinf(day)) return day;
  const auto there = quantity::step(static_cast<quantity::Day>(day), {count, unit}, sign, &book().closed);
  return there ? std::optional<double>(*there) : std::nullopt;
}
void Runner::date_step(const Step& step, Cell& out) const {
  if (!all_there(step)) return set_unknown(out, Why::parts);
  const Interval from = number(in(step, 0));
  const Value by = value_of(in(step, 1));
  const auto lo = stepped(from.lo, step.negated ? by.number.hi : by.number.lo, by.span_unit, step.negated ? -1 : 1);
  const auto hi = stepped(from.hi, step.negated ? by.number.lo : by.number.hi, by.span_unit, step.negated ? -1 : 1);
  if (!lo || !hi) return set_unknown(out, Why::no_closed_days);
  set_number(out, {*lo, *hi});
}

void Runner::property(const Step& step, Cell& out) const {
  const Cell& subject = in(step, 0);
  if (!there(subject)) return set_unknown(out, subject.presence == Presence::none ? Why::of_none : Why::parts);
  const auto& choice = book().vocabulary->choices[kid_type(step, 0).choice];
  const auto& type = node(step).type;
  Value value;
  bool any = false;
  for (std::size_t m = 0; m < choice.members.size(); ++m) {
    if ((subject.members >> m & 1U) == 0) continue;
    const Value& one = choice.members[m].properties[node(step).index];
    value = any ? hull(value, one, type, book()) : one;
    any = true;
  }
  out = cell_of(value, Why::known);
  if (!usable(value) || (type.kind == Kind::truth && value.truth == Truth::undecided)) out.why = Why::parts;
}

void Runner::reading(const Step& step, Cell& out) const {
  const Cell& level = in(step, 0);
  if (!there(level)) return set_unknown(out, level.presence == Presence::none ? Why::of_none : level.why);
  // Of several readings from one mark nobody knows which is right.
  std::optional<Interval> all;
  for (const auto& reading : plan.site->levels[level.id]) {
    if (reading.mark == in(step, 1).id) all = all ? quantity::hull(*all, reading.height_m) : reading.height_m;
  }
  if (!all) return set_unknown(out, Why::no_reading);
  set_number(out, step.negated ? quantity::negate(*all) : *all);
}

void Runner::choose(const Step& step, Cell& out) const {
  const Truth which = in(step, 0).truth;
  if (which != Truth::undecided) {
    out = in(step, which == Truth::yes ? 1 : 2);
    if (out.why != Why::known) out.why = Why::parts;
  } else {
    out = cell_of(hull(value_of(in(step, 1)), value_of(in(step, 2)), node(step).type, book()), Why::known);
  }
  if (out.presence == Presence::unknown) out.why = Why::parts;
}

void Runner::select_row(const Step& step, Cell& out) const {
  const Cell& key = in(step, 0);
  if (!there(key)) return set_unknown(out, key.presence == Presence::none ? Why::of_none : Why::parts);
  Value value;
  Why why = Why::no_row;
  bool any = false;
  for (std::size_t m = 0; m + 1 < step.count; ++m) {
    if ((key.members >> m & 1U) == 0) continue;
    const Cell& row = in(step, m + 1);
    value = any ? hull(value, value_of(row), node(step).type, book()) : value_of(row);
    why = any && (usable(value) || row.why == Why::known) ? why : row.why;
    any = true;
  }
  out = cell_of(any ? value : vocabulary::unknown(), why);
}

std::size_t Runner::values(const Step& step, Value* into) const {
  const std::size_t count = std::min<std::size_t>(step.count, most_operands);
  for (std::size_t i = 0; i < count; ++i) into[i] = value_of(in(step, i));
  return count;
}

void Runner::look_up(const Step& step, Cell& out) const {
  const auto& table = book().tables[static_cast<std::size_t>(plan.nodes[step.node].table)];
  std::array<Value, most_operands> keys;
  const std::size_t count = values(step, keys.data());
  const Found found = evaluate::look_up(table, std::span<const Value>(keys).first(count), node(step).column, book());
  out = cell_of(found.value, found.why);
}

void Runner::call(const Step& step, Cell& out) const {
  if (!all_there(step)) return set_unknown(out, Why::parts);
  std::array<Value, most_operands> inputs;
  const std::size_t count = values(step, inputs.data());
  const Found found = call_function(node(step).index, std::span<const Value>(inputs).first(count), book());
  out = cell_of(found.value, found.why);
}

}  // namespace headgate::evaluate
