#include "evaluate/look_up.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace headgate::evaluate {

using quantity::Interval;
using rulebook::Match;
using rulebook::Table;
using vocabulary::Value;

namespace {

constexpr double unbounded = std::numeric_limits<double>::infinity();

// Whether a key has an order, so that a value may lie before the first row or past the last.
bool ordered(const vocabulary::Type& type) {
  using Kind = vocabulary::Type::Kind;
  return type.kind == Kind::number || type.kind == Kind::date || type.kind == Kind::moment ||
         type.kind == Kind::clock || type.kind == Kind::span;
}

bool alike(const Value& a, const Value& b) {
  return a.number == b.number && a.members == b.members && a.id == b.id && a.truth == b.truth && a.ladder == b.ladder &&
         a.text == b.text;
}

// One look-up: what was asked, and what the rows it touches say together.
class Look {
 public:
  Look(const Table& table, std::span<const Value> keys, std::size_t column, const rulebook::Rulebook& book)
      : table_(table), count_(keys.size()), between_(keys.size()), column_(column), book_(book) {
    std::copy(keys.begin(), keys.end(), asked_.begin());
    for (std::size_t k = 0; k < count_; ++k) {
      if (table.match[k] == Match::next_up || table.match[k] == Match::linear) between_ = k;
    }
  }

  Found result() {
    for (std::size_t k = 0; k < count_; ++k) onto_ladder(k);
    each_member(0);
    if (outside_ || !any_) return {vocabulary::unknown(), Why::outside_table};
    if (value_.presence == vocabulary::Presence::unknown) return {value_, Why::no_value};
    return {value_, Why::known};
  }

  std::optional<TableEnd> end() {
    for (std::size_t k = 0; k < count_; ++k) onto_ladder(k);
    std::vector<const Table::Row*> left;
    for (const auto& row : table_.rows) left.push_back(&row);
    for (std::size_t i = 0; i <= count_; ++i) {
      const std::size_t k = i == count_ ? between_ : i;
      if (k == count_ || (i == between_ && i < count_)) continue;
      Interval rows{unbounded, -unbounded};
      for (const auto* row : left) rows = quantity::hull(rows, row->keys[k].number);
      const bool ends = ordered(table_.signature.keys[k].type);
      const bool inside = k == between_ && ends && !left.empty() &&
                          quantity::less(asked_[k].number, quantity::exactly(rows.lo), step(k)) == Truth::no &&
                          quantity::less(quantity::exactly(rows.hi), asked_[k].number, step(k)) == Truth::no;
      if (k != between_)
        left.erase(std::remove_if(left.begin(), left.end(), [&](const auto* row) { return !touches(*row, k); }),
                   left.end());
      if (k == between_ ? inside : !left.empty()) continue;
      return TableEnd{k, ends && rows.lo <= rows.hi ? std::make_optional(rows) : std::nullopt};
    }
    return std::nullopt;
  }

 private:
  double step(std::size_t k) const { return grid_of(table_.signature.keys[k].type); }

  // Metric sizes stand for inch sizes where the table has none of their own.
  void onto_ladder(std::size_t k) {
    if (!is_size(table_.signature.keys[k].type) || asked_[k].ladder != vocabulary::Ladder::metric) return;
    for (const auto& row : table_.rows) {
      if (row.keys[k].ladder == asked_[k].ladder && (k == between_ || touches(row, k))) return;
    }
    Value inch;
    if (!same_ladder(asked_[k], inch, book_)) outside_ = true;
  }

  // A choice or a yes-no that may be several things is each of them in turn; one without a row is outside.
  void each_member(std::size_t k) {
    if (outside_) return;
    if (k == count_) return between_ < count_ ? each_series() : touched_rows();
    const Value whole = asked_[k];
    const auto kind = table_.signature.keys[k].type.kind;
    if (kind == vocabulary::Type::Kind::choice) {
      for (std::uint64_t left = whole.members; left != 0; left &= left - 1) {
        asked_[k].members = left & (~left + 1);
        each_member(k + 1);
      }
    } else if (kind == vocabulary::Type::Kind::truth && whole.truth == Truth::undecided) {
      for (const Truth either : {Truth::no, Truth::yes}) {
        asked_[k].truth = either;
        each_member(k + 1);
      }
    } else {
      each_member(k + 1);
    }
    asked_[k] = whole;
  }

  // Whether what was asked may lie at a row's key.
  bool touches(const Table::Row& row, std::size_t k) const {
    const auto& type = table_.signature.keys[k].type;
    if (table_.match[k] == Match::exact) {
      const Compared one = same(row.keys[k], asked_[k], type, book_);
      return one.truth != Truth::no && one.why != Why::two_ladders;
    }
    const Interval range = row.keys[k].number;
    return quantity::less(asked_[k].number, quantity::exactly(range.lo), step(k)) != Truth::yes &&
           quantity::less(quantity::exactly(range.hi), asked_[k].number, step(k)) != Truth::yes;
  }
  bool touches_all(const Table::Row& row, std::size_t but) const {
    for (std::size_t k = 0; k < count_; ++k) {
      if (k != but && !touches(row, k)) return false;
    }
    return true;
  }

  void take(const Value& value) {
    value_ = any_ ? hull(value_, value, table_.signature.columns[column_].type, book_) : value;
    any_ = true;
  }
  void past_the_end() {
    if (table_.over)
      take((*table_.over)[column_]);
    else
      outside_ = true;
  }

  // Of keys that match or hold: every row touched, and what lies before the first or past the last.
  void touched_rows() {
    bool some = false;
    for (const auto& row : table_.rows) {
      if (!touches_all(row, count_)) continue;
      take(row.cells[column_]);
      some = true;
    }
    bool over = false;
    for (std::size_t k = 0; k < count_; ++k) {
      if (table_.match[k] == Match::range && some && gap_in(k)) outside_ = true;
      const auto& type = table_.signature.keys[k].type;
      if (!ordered(type) || is_size(type)) continue;
      const Interval rows = reach(k);
      if (quantity::snap(asked_[k].number.lo, step(k)) < quantity::snap(rows.lo, step(k))) outside_ = true;
      if (quantity::snap(asked_[k].number.hi, step(k)) <= quantity::snap(rows.hi, step(k))) continue;
      if (table_.match[k] == Match::range)
        over = true;
      else
        outside_ = true;
    }
    if (over)
      past_the_end();
    else if (!some)
      outside_ = true;
  }
  // Whether part of what was asked lies between two rows.
  bool gap_in(std::size_t k) const {
    std::vector<Interval> rows;
    for (const auto& row : table_.rows) {
      if (touches_all(row, count_)) rows.push_back(row.keys[k].number);
    }
    std::sort(rows.begin(), rows.end(), [](Interval a, Interval b) { return a.lo < b.lo; });
    // Of counts, 5 goes on where 4 ends.
    const bool counts =
        table_.signature.keys[k].type.dimension.plain() && std::all_of(rows.begin(), rows.end(), [](Interval row) {
          return row.lo == std::floor(row.lo) && row.hi == std::floor(row.hi);
        });
    const double reach = counts ? 1 : step(k);
    double covered = unbounded;
    for (const Interval row : rows) {
      if (covered < unbounded && quantity::snap(row.lo, step(k)) > quantity::snap(covered + reach, step(k)))
        return true;
      covered = covered == unbounded ? row.hi : std::max(covered, row.hi);
    }
    return false;
  }
  Interval reach(std::size_t k) const {
    Interval all{unbounded, -unbounded};
    for (const auto& row : table_.rows) {
      if (touches_all(row, k)) all = quantity::hull(all, row.keys[k].number);
    }
    return all;
  }

  // The rows that differ in the linear or next-up key only are one curve; several are looked along one by one.
  void each_series() {
    bool some = false;
    for (const auto& row : table_.rows) {
      if (!touches_all(row, between_) || !first_of_series(row)) continue;
      some = true;
      series_ = &row;
      if (row.keys[between_].ladder != asked_[between_].ladder)
        outside_ = true;
      else if (table_.match[between_] == Match::linear)
        by_linear(asked_[between_].number);
      else
        by_next_up(asked_[between_].number);
    }
    outside_ = outside_ || !some;
  }
  bool one_series(const Table::Row& a, const Table::Row& b) const {
    for (std::size_t k = 0; k < count_; ++k) {
      if (k != between_ && !alike(a.keys[k], b.keys[k])) return false;
    }
    return a.keys[between_].ladder == b.keys[between_].ladder;
  }
  bool first_of_series(const Table::Row& row) const {
    for (const auto& earlier : table_.rows) {
      if (one_series(earlier, row)) return &earlier == &row;
    }
    return true;
  }

  double key(const Table::Row& row) const { return row.keys[between_].number.lo; }
  double snapped(const Table::Row& row) const { return quantity::snap(key(row), step(between_)); }

  // The row of the series nearest to `at` from below or above, itself included; nullptr when there is none.
  const Table::Row* nearest(double at, bool above) const {
    const double wanted = quantity::snap(at, step(between_));
    const Table::Row* best = nullptr;
    for (const auto& row : table_.rows) {
      const double here = snapped(row);
      if (above ? here < wanted : here > wanted) continue;
      if (best != nullptr && (above ? here >= snapped(*best) : here <= snapped(*best))) continue;
      if (one_series(row, *series_)) best = &row;
    }
    return best;
  }
  // All rows of the series whose key lies in [lo, hi].
  void between(double lo, double hi) {
    for (const auto& row : table_.rows) {
      if (lo <= snapped(row) && snapped(row) <= hi && one_series(row, *series_)) take(row.cells[column_]);
    }
  }

  void at_linear(double at) {
    const auto* low = nearest(at, false);
    const auto* high = nearest(at, true);
    if (high == nullptr) return past_the_end();
    if (low == nullptr) {
      outside_ = true;
      return;
    }
    if (snapped(*low) == snapped(*high)) return take(low->cells[column_]);
    Value value = low->cells[column_];
    if (table_.signature.columns[column_].type.kind != vocabulary::Type::Kind::number) {  // nothing lies between
      take(value);
      return take(high->cells[column_]);
    }
    if (!usable(value) || !usable(high->cells[column_])) return take(vocabulary::unknown());
    const Interval to = high->cells[column_].number;
    const double share = (at - key(*low)) / (key(*high) - key(*low));
    value.number.lo += share * (to.lo - value.number.lo);
    value.number.hi += share * (to.hi - value.number.hi);
    take(value);
  }
  void by_linear(Interval asked) {
    at_linear(asked.lo);
    if (asked.exact()) return;
    between(quantity::snap(asked.lo, step(between_)), quantity::snap(asked.hi, step(between_)));
    at_linear(asked.hi);
  }
  void by_next_up(Interval asked) {
    const auto* last = nearest(asked.hi, true);
    between(quantity::snap(asked.lo, step(between_)), last != nullptr ? snapped(*last) : unbounded);
    if (last == nullptr) past_the_end();
  }

  const Table& table_;
  std::array<Value, rulebook::most_table_keys> asked_;
  std::size_t count_;
  std::size_t between_;  // which key is linear or next up; count_ for none
  std::size_t column_;
  const rulebook::Rulebook& book_;
  const Table::Row* series_ = nullptr;
  Value value_;
  bool any_ = false;
  bool outside_ = false;
};

}  // namespace

Found look_up(const Table& table, std::span<const Value> keys, std::size_t column, const rulebook::Rulebook& book) {
  for (const auto& key : keys) {
    if (!usable(key))
      return {vocabulary::unknown(), key.presence == vocabulary::Presence::none ? Why::of_none : Why::parts};
  }
  return Look(table, keys, column, book).result();
}

std::optional<TableEnd> table_end(const Table& table, std::span<const Value> keys, const rulebook::Rulebook& book) {
  for (const auto& key : keys) {
    if (!usable(key)) return std::nullopt;
  }
  return Look(table, keys, 0, book).end();
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
