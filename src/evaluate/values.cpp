#include "evaluate/values.hpp"

#include <limits>

namespace headgate::evaluate {

using vocabulary::Ladder;
using vocabulary::Presence;
using vocabulary::Type;
using vocabulary::Value;
using Kind = vocabulary::Type::Kind;

namespace {

// The inch size a metric one stands for, by the place's equivalence table (metric key, inch cell).
std::optional<double> inch_size(double metric, const rulebook::Rulebook& book) {
  if (!book.size_match) return std::nullopt;
  const double step = quantity::grid(quantity::dimensions::size);
  for (const auto& row : book.tables[*book.size_match].rows) {
    if (quantity::snap(row.keys[0].number.lo, step) == quantity::snap(metric, step)) return row.cells[0].number.lo;
  }
  return std::nullopt;
}

bool to_inch(Value& value, const rulebook::Rulebook& book) {
  const auto lo = inch_size(value.number.lo, book);
  const auto hi = inch_size(value.number.hi, book);
  if (!lo || !hi) return false;
  value.number = {*lo, *hi};
  value.ladder = Ladder::inch;
  return true;
}

Compared undecided_for(const Value& a, const Value& b) {
  if (a.presence == Presence::none || b.presence == Presence::none) return {Truth::undecided, Why::of_none};
  return {Truth::undecided, Why::parts};
}

}  // namespace

bool usable(const Value& value) { return value.presence == Presence::present; }

bool same_ladder(Value& a, Value& b, const rulebook::Rulebook& book) {
  if (a.ladder == b.ladder) return true;
  return a.ladder == Ladder::metric ? to_inch(a, book) : to_inch(b, book);
}

bool is_size(const vocabulary::Type& type) {
  return type.kind == vocabulary::Type::Kind::number && type.dimension == quantity::dimensions::size;
}

double grid_of(const Type& type) {
  switch (type.kind) {
    case Kind::number: return quantity::grid(type.dimension);
    case Kind::level: return quantity::grid(quantity::dimensions::length);
    case Kind::moment:
    case Kind::clock: return 1.0;
    default: return 1.0;
  }
}

Compared compare(expression::Relation relation, const Value& a_in, const Value& b_in, const Type& type,
                 const rulebook::Rulebook& book) {
  if (!usable(a_in) || !usable(b_in)) return undecided_for(a_in, b_in);
  Value a = a_in;
  Value b = b_in;
  if (type.kind == Kind::number && type.dimension == quantity::dimensions::size && !same_ladder(a, b, book)) {
    return {Truth::undecided, Why::two_ladders};
  }
  const double step = grid_of(type);
  Truth result = Truth::undecided;
  switch (relation) {
    case expression::Relation::less: result = quantity::less(a.number, b.number, step); break;
    case expression::Relation::less_or_equal: result = quantity::less_or_equal(a.number, b.number, step); break;
    case expression::Relation::greater: result = quantity::less(b.number, a.number, step); break;
    case expression::Relation::greater_or_equal: result = quantity::less_or_equal(b.number, a.number, step); break;
  }
  return {result, result == Truth::undecided ? Why::too_close : Why::known};
}

Compared same(const Value& a_in, const Value& b_in, const Type& type, const rulebook::Rulebook& book) {
  if (!usable(a_in) || !usable(b_in)) return undecided_for(a_in, b_in);
  Truth result = Truth::undecided;
  switch (type.kind) {
    case Kind::truth:
      if (a_in.truth != Truth::undecided && b_in.truth != Truth::undecided)
        result = quantity::truth(a_in.truth == b_in.truth);
      break;
    case Kind::choice:
      if ((a_in.members & b_in.members) == 0)
        result = Truth::no;
      else if (a_in.members == b_in.members && (a_in.members & (a_in.members - 1)) == 0)
        result = Truth::yes;
      break;
    case Kind::element:
    case Kind::kind: result = quantity::truth(a_in.id == b_in.id); break;
    case Kind::text: result = quantity::truth(a_in.text == b_in.text); break;
    default: {
      Value a = a_in;
      Value b = b_in;
      if (type.kind == Kind::number && type.dimension == quantity::dimensions::size && !same_ladder(a, b, book)) {
        return {Truth::undecided, Why::two_ladders};
      }
      result = quantity::same(a.number, b.number, grid_of(type));
    }
  }
  return {result, result == Truth::undecided ? Why::too_close : Why::known};
}

Value hull(const Value& a_in, const Value& b_in, const Type& type, const rulebook::Rulebook& book) {
  if (!usable(a_in) || !usable(b_in)) {
    if (a_in.presence == Presence::none && b_in.presence == Presence::none) return a_in;
    return vocabulary::unknown();
  }
  Value a = a_in;
  Value b = b_in;
  if (type.kind == Kind::number && type.dimension == quantity::dimensions::size && !same_ladder(a, b, book)) {
    return vocabulary::unknown();
  }
  // Days and months have no common count.
  if (type.kind == Kind::span && a.span_unit != b.span_unit) return vocabulary::unknown();
  a.number = quantity::hull(a.number, b.number);
  a.members |= b.members;
  if (a.truth != b.truth) a.truth = Truth::undecided;
  if (type.kind == Kind::element && a.id != b.id) return vocabulary::unknown();
  return a;
}

Compared in_season(const Value& date, const Value& season) {
  if (!usable(date) || !usable(season)) return undecided_for(date, season);
  const auto month_day = [](double packed) {
    return std::make_pair(static_cast<int>(packed) / 100, static_cast<int>(packed) % 100);
  };
  const auto from = month_day(season.number.lo);
  const auto to = month_day(season.number.hi);
  const quantity::Season days{from.first, from.second, to.first, to.second};
  constexpr double longest_days = 366;  // past a whole year both in and out occur, unless the season is all of it
  const bool begins = date.number.lo > -std::numeric_limits<double>::infinity();
  const double first = begins ? date.number.lo : date.number.hi - longest_days;
  if (date.number.everything()) return {Truth::undecided, Why::too_close};
  bool in = false;
  bool out = false;
  for (double day = first; day <= date.number.hi && day < first + longest_days; day += 1) {
    (quantity::holds(days, static_cast<quantity::Day>(day)) ? in : out) = true;
    if (in && out) return {Truth::undecided, Why::too_close};
  }
  return {quantity::truth(in), Why::known};
}

}  // namespace headgate::evaluate
