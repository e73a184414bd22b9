#include "evaluate/look_up.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace headgate::evaluate {

using quantity::Interval;
using rulebook::Match;
using rulebook::Table;
using vocabulary::Value;

namespace {

// Whether a row's exact or range key may be what was asked.
Truth key_matches(const Table& table, const Table::Row& row, std::size_t k, const Value& asked, const rulebook::Rulebook& book) {
  const auto& type = table.signature.keys[k].type;
  if (table.match[k] == Match::exact) return same(row.keys[k], asked, type, book).truth;
  const double step = grid_of(type);
  const Interval range = row.keys[k].number;
  return quantity::both(quantity::less_or_equal(quantity::exactly(range.lo), asked.number, step),
                        quantity::less_or_equal(asked.number, quantity::exactly(range.hi), step));
}

class Gather {
 public:
  Gather(const vocabulary::Type& type, const rulebook::Rulebook& book) : type_(type), book_(book) {}
  void take(const Value& value) {
    value_ = any_ ? hull(value_, value, type_, book_) : value;
    any_ = true;
  }
  void silent() { outside_ = true; }
  Found result() const {
    if (outside_ || !any_) return {vocabulary::unknown(), Why::outside_table};
    return {value_, Why::known};
  }

 private:
  const vocabulary::Type& type_;
  const rulebook::Rulebook& book_;
  Value value_;
  bool any_ = false;
  bool outside_ = false;
};

// The ordered key of a row (linear or next up), among the rows whose other keys may match.
struct Rows {
  const Table& table;
  std::span<const Value> asked;
  std::size_t ordered;
  std::size_t column;
  const rulebook::Rulebook& book;
  double step;

  Truth matches(const Table::Row& row) const {
    Truth all = Truth::yes;
    for (std::size_t k = 0; k < asked.size(); ++k) {
      if (k != ordered) all = quantity::both(all, key_matches(table, row, k, asked[k], book));
    }
    return all;
  }
  double key(const Table::Row& row) const { return row.keys[ordered].number.lo; }
  double snapped(const Table::Row& row) const { return quantity::snap(key(row), step); }

  // The matching row nearest to `at` from below or above, itself included; nullptr when there is none.
  const Table::Row* nearest(double at, bool above) const {
    const double wanted = quantity::snap(at, step);
    const Table::Row* best = nullptr;
    for (const auto& row : table.rows) {
      const double here = snapped(row);
      if (above ? here < wanted : here > wanted) continue;
      if (best != nullptr && (above ? here >= snapped(*best) : here <= snapped(*best))) continue;
      if (matches(row) != Truth::no) best = &row;
    }
    return best;
  }

  // All matching rows whose key lies in [lo, hi].
  void between(double lo, double hi, Gather& gather) const {
    for (const auto& row : table.rows) {
      if (lo <= snapped(row) && snapped(row) <= hi && matches(row) != Truth::no) gather.take(row.cells[column]);
    }
  }
};

void at_linear(const Rows& rows, double at, Gather& gather) {
  const auto* low = rows.nearest(at, false);
  const auto* high = rows.nearest(at, true);
  if (low == nullptr || high == nullptr) return gather.silent();
  if (rows.snapped(*low) == rows.snapped(*high)) return gather.take(low->cells[rows.column]);
  Value value = low->cells[rows.column];
  const Interval to = high->cells[rows.column].number;
  const double share = (at - rows.key(*low)) / (rows.key(*high) - rows.key(*low));
  value.number.lo += share * (to.lo - value.number.lo);
  value.number.hi += share * (to.hi - value.number.hi);
  gather.take(value);
}

void by_linear(const Rows& rows, Interval asked, Gather& gather) {
  at_linear(rows, asked.lo, gather);
  if (asked.exact()) return;
  rows.between(quantity::snap(asked.lo, rows.step), quantity::snap(asked.hi, rows.step), gather);
  at_linear(rows, asked.hi, gather);
}

void by_next_up(const Rows& rows, Interval asked, Gather& gather) {
  const auto* last = rows.nearest(asked.hi, true);
  constexpr double infinity = std::numeric_limits<double>::infinity();
  rows.between(quantity::snap(asked.lo, rows.step), last != nullptr ? rows.snapped(*last) : infinity, gather);
  if (last != nullptr) return;
  if (rows.table.over) gather.take((*rows.table.over)[rows.column]);
  else gather.silent();
}

}  // namespace

Found look_up(const Table& table, std::span<const Value> keys, std::size_t column, const rulebook::Rulebook& book) {
  for (const auto& key : keys) {
    if (!usable(key)) return {vocabulary::unknown(), key.presence == vocabulary::Presence::none ? Why::of_none : Why::parts};
  }
  Gather gather(table.signature.columns[column].type, book);
  std::size_t ordered = keys.size();
  for (std::size_t k = 0; k < keys.size(); ++k) {
    if (table.match[k] == Match::next_up || table.match[k] == Match::linear) ordered = k;
  }
  const double step = ordered < keys.size() ? grid_of(table.signature.keys[ordered].type) : 1.0;
  const Rows rows{table, keys, ordered, column, book, step};
  if (ordered < keys.size()) {
    if (table.match[ordered] == Match::linear) by_linear(rows, keys[ordered].number, gather);
    else by_next_up(rows, keys[ordered].number, gather);
    return gather.result();
  }
  Truth covered = Truth::no;
  for (const auto& row : table.rows) {
    const Truth matches = rows.matches(row);
    covered = quantity::either(covered, matches);
    if (matches != Truth::no) gather.take(row.cells[column]);
  }
  if (covered == Truth::no && table.over) gather.take((*table.over)[column]);
  return gather.result();
}

namespace {

// One step up or down the ladder of the table from a size; nothing past its end.
std::optional<double> next_size(double size, vocabulary::Ladder which, bool up, const rulebook::Rulebook& book) {
  const double step = quantity::grid(quantity::dimensions::size);
  std::optional<double> best;
  for (const auto& row : book.tables[*book.ladders].rows) {
    const double here = row.keys[0].number.lo;
    if (row.keys[0].ladder != which || quantity::snap(here, step) == quantity::snap(size, step)) continue;
    if (up ? here < size || (best && here > *best) : here > size || (best && here < *best)) continue;
    best = here;
  }
  return best;
}

bool on_ladder(double size, vocabulary::Ladder which, const rulebook::Rulebook& book) {
  if (!book.ladders) return false;
  const double step = quantity::grid(quantity::dimensions::size);
  const auto& rows = book.tables[*book.ladders].rows;
  return std::any_of(rows.begin(), rows.end(), [&](const auto& row) {
    return row.keys[0].ladder == which && quantity::snap(row.keys[0].number.lo, step) == quantity::snap(size, step);
  });
}

std::optional<double> up(double size, double steps, vocabulary::Ladder which, const rulebook::Rulebook& book) {
  if (!on_ladder(size, which, book) || !std::isfinite(steps)) return std::nullopt;
  std::optional<double> at = size;
  for (double left = std::abs(steps); left > 0 && at; --left) at = next_size(*at, which, steps > 0, book);
  return at;
}

// How many steps up from one size to another on one ladder.
std::optional<double> steps_between(double from, double to, vocabulary::Ladder which, const rulebook::Rulebook& book) {
  if (!on_ladder(from, which, book) || !on_ladder(to, which, book)) return std::nullopt;
  double steps = 0;
  const double grid = quantity::grid(quantity::dimensions::size);
  const bool rises = to > from;
  for (std::optional<double> at = from; at && quantity::snap(*at, grid) != quantity::snap(to, grid);) {
    at = next_size(*at, which, rises, book);
    steps += rises ? 1 : -1;
  }
  return steps;
}

}  // namespace

Found size_up(const Value& size, const Interval& steps, const rulebook::Rulebook& book) {
  if (!usable(size)) return {vocabulary::unknown(), Why::parts};
  const auto lo = up(size.number.lo, std::round(steps.lo), size.ladder, book);
  const auto hi = up(size.number.hi, std::round(steps.hi), size.ladder, book);
  if (!lo || !hi) return {vocabulary::unknown(), Why::outside_table};
  Value value = size;
  value.number = {*lo, *hi};
  return {value, Why::known};
}

Found size_steps(const Value& from_in, const Value& to_in, const rulebook::Rulebook& book) {
  if (!usable(from_in) || !usable(to_in)) return {vocabulary::unknown(), Why::parts};
  Value from = from_in;
  Value to = to_in;
  if (!same_ladder(from, to, book)) return {vocabulary::unknown(), Why::two_ladders};
  const auto lo = steps_between(from.number.hi, to.number.lo, from.ladder, book);
  const auto hi = steps_between(from.number.lo, to.number.hi, from.ladder, book);
  if (!lo || !hi) return {vocabulary::unknown(), Why::outside_table};
  return {vocabulary::of_number({*lo, *hi}), Why::known};
}

}  // namespace headgate::evaluate
