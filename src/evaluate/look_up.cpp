#include "evaluate/look_up.hpp"

#include <algorithm>
#include <cmath>

namespace headgate::evaluate {

using quantity::Interval;
using rulebook::Match;
using rulebook::Table;
using vocabulary::Value;

namespace {

constexpr Found outside() { return {}; }

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

struct Ordered {
  double key;
  const Value* cell;
};

Value between(const Ordered& low, const Ordered& high, double key) {
  Value value = *low.cell;
  const double share = (key - low.key) / (high.key - low.key);
  value.number.lo = low.cell->number.lo + share * (high.cell->number.lo - low.cell->number.lo);
  value.number.hi = low.cell->number.hi + share * (high.cell->number.hi - low.cell->number.hi);
  return value;
}

void at_linear(const std::vector<Ordered>& rows, double key, double step, Gather& gather) {
  const double snapped = quantity::snap(key, step);
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (quantity::snap(rows[i].key, step) == snapped) return gather.take(*rows[i].cell);
    if (i + 1 < rows.size() && rows[i].key < key && key < rows[i + 1].key) return gather.take(between(rows[i], rows[i + 1], key));
  }
  gather.silent();
}

void by_linear(const std::vector<Ordered>& rows, Interval key, double step, Gather& gather) {
  at_linear(rows, key.lo, step, gather);
  if (key.exact()) return;
  for (const auto& row : rows) {
    if (key.lo < row.key && row.key < key.hi) gather.take(*row.cell);
  }
  at_linear(rows, key.hi, step, gather);
}

void by_next_up(const std::vector<Ordered>& rows, const Value* over, Interval key, double step, Gather& gather) {
  const double lo = quantity::snap(key.lo, step);
  const double hi = quantity::snap(key.hi, step);
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const double row = quantity::snap(rows[i].key, step);
    const bool reached = lo <= row;
    const bool needed = i == 0 || quantity::snap(rows[i - 1].key, step) < hi;
    if (reached && needed) gather.take(*rows[i].cell);
  }
  if (rows.empty() || hi > quantity::snap(rows.back().key, step)) {
    if (over != nullptr) gather.take(*over);
    else gather.silent();
  }
}

}  // namespace

Found look_up(const Table& table, const std::vector<Value>& keys, std::size_t column, const rulebook::Rulebook& book) {
  for (const auto& key : keys) {
    if (!usable(key)) return {vocabulary::unknown(), key.presence == vocabulary::Presence::none ? Why::of_none : Why::parts};
  }
  const auto& type = table.signature.columns[column].type;
  Gather gather(type, book);
  std::optional<std::size_t> ordered;
  for (std::size_t k = 0; k < keys.size(); ++k) {
    if (table.match[k] == Match::next_up || table.match[k] == Match::linear) ordered = k;
  }
  std::vector<Ordered> rows;
  Truth covered = Truth::no;   // by a row that certainly matches
  for (const auto& row : table.rows) {
    Truth matches = Truth::yes;
    for (std::size_t k = 0; k < keys.size(); ++k) {
      if (k != ordered) matches = quantity::both(matches, key_matches(table, row, k, keys[k], book));
    }
    if (matches == Truth::no) continue;
    covered = quantity::either(covered, matches);
    if (ordered) rows.push_back({row.keys[*ordered].number.lo, &row.cells[column]});
    else gather.take(row.cells[column]);
  }
  if (!ordered) {
    if (covered == Truth::no && table.over) gather.take((*table.over)[column]);
    return gather.result();
  }
  const double step = grid_of(table.signature.keys[*ordered].type);
  const auto by_key = [](const Ordered& a, const Ordered& b) { return a.key < b.key; };
  std::stable_sort(rows.begin(), rows.end(), by_key);
  const Interval asked = keys[*ordered].number;
  if (table.match[*ordered] == Match::linear) by_linear(rows, asked, step, gather);
  else by_next_up(rows, table.over ? &(*table.over)[column] : nullptr, asked, step, gather);
  return gather.result();
}

namespace {

// The sizes of one ladder in the order of the table.
std::vector<double> ladder(vocabulary::Ladder which, const rulebook::Rulebook& book) {
  std::vector<double> sizes;
  if (!book.ladders) return sizes;
  for (const auto& row : book.tables[*book.ladders].rows) {
    if (row.keys[0].ladder == which) sizes.push_back(row.keys[0].number.lo);
  }
  std::sort(sizes.begin(), sizes.end());
  return sizes;
}

std::optional<std::size_t> rung(const std::vector<double>& sizes, double size) {
  const double step = quantity::grid(quantity::dimensions::size);
  for (std::size_t i = 0; i < sizes.size(); ++i) {
    if (quantity::snap(sizes[i], step) == quantity::snap(size, step)) return i;
  }
  return std::nullopt;
}

std::optional<double> up(const std::vector<double>& sizes, double size, double steps) {
  const auto at = rung(sizes, size);
  if (!at) return std::nullopt;
  const double to = static_cast<double>(*at) + steps;
  if (!(to >= 0) || to >= static_cast<double>(sizes.size())) return std::nullopt;
  return sizes[static_cast<std::size_t>(to)];
}

}  // namespace

Found size_up(const Value& size, const Interval& steps, const rulebook::Rulebook& book) {
  if (!usable(size)) return {vocabulary::unknown(), Why::parts};
  const auto sizes = ladder(size.ladder, book);
  const auto lo = up(sizes, size.number.lo, std::round(steps.lo));
  const auto hi = up(sizes, size.number.hi, std::round(steps.hi));
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
  const auto sizes = ladder(from.ladder, book);
  const auto a_lo = rung(sizes, from.number.lo);
  const auto a_hi = rung(sizes, from.number.hi);
  const auto b_lo = rung(sizes, to.number.lo);
  const auto b_hi = rung(sizes, to.number.hi);
  if (!a_lo || !a_hi || !b_lo || !b_hi) return {vocabulary::unknown(), Why::outside_table};
  const auto steps = [](std::size_t a, std::size_t b) { return static_cast<double>(b) - static_cast<double>(a); };
  return {vocabulary::of_number({steps(*a_hi, *b_lo), steps(*a_lo, *b_hi)}), Why::known};
}

}  // namespace headgate::evaluate
