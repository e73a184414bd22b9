#include "rulebook/keys.hpp"
#include "rulebook/tables.hpp"
#include "rulebook/types.hpp"

namespace headgate::rulebook {

using document::Node;
using text::Diagnostics;
using text::say;
using vocabulary::Presence;
using vocabulary::Type;
using vocabulary::Value;
using vocabulary::Vocabulary;

namespace {

constexpr std::size_t most_rows = 2000;

Value read_key(const Table& table, std::size_t k, const Node& cell, const Vocabulary& vocabulary, Diagnostics& found) {
  const Type& type = table.signature.keys[k].type;
  const std::size_t before = found.size();
  const bool range = table.match[k] == Match::range && cell.is_scalar();
  const Value value = range ? read_range(cell, type, vocabulary, found) : read_plain(cell, type, vocabulary, found);
  const bool exact = type.kind != Type::Kind::number || range || value.number.exact();
  if (found.size() == before && (value.presence != Presence::present || !exact)) {
    found.push_back(say("table-key-unknown", cell.range, {cell.scalar}));
  }
  return value;
}

bool read_row(Table& table, const Node& node, const Vocabulary& vocabulary, Diagnostics& found) {
  const std::size_t keys = table.signature.keys.size();
  const std::size_t width = keys + table.signature.columns.size();
  if (!node.is_list() || node.items.size() != width) {
    found.push_back(say("table-row-width", node.range, {std::to_string(width), std::to_string(node.items.size())}));
    return false;
  }
  Table::Row row;
  row.range = node.range;
  for (std::size_t i = 0; i < width; ++i) {
    if (i < keys)
      row.keys.push_back(read_key(table, i, node.items[i], vocabulary, found));
    else
      row.cells.push_back(read_plain(node.items[i], table.signature.columns[i - keys].type, vocabulary, found));
  }
  table.rows.push_back(std::move(row));
  return true;
}

void read_over(Table& table, const Node& over, const Vocabulary& vocabulary, Diagnostics& found) {
  const auto& columns = table.signature.columns;
  bool past = false;
  for (const Match match : table.match) past = past || match != Match::exact;
  if (!past) found.push_back(say("table-over-exact", over.range));
  const std::vector<const Node*> cells = words_of(over, found);
  if (cells.size() != columns.size()) {
    found.push_back(say("table-row-width", over.range, {std::to_string(columns.size()), std::to_string(cells.size())}));
    return;
  }
  table.over.emplace();
  for (std::size_t i = 0; i < cells.size(); ++i) {
    table.over->push_back(read_plain(*cells[i], columns[i].type, vocabulary, found));
  }
}

double step_of(const Type& type) { return type.kind == Type::Kind::number ? quantity::grid(type.dimension) : 1.0; }

bool overlap(const Value& a, const Value& b, const Type& type) {
  if (type.kind == Type::Kind::choice) return (a.members & b.members) != 0;
  if (type.kind == Type::Kind::kind || type.kind == Type::Kind::level) return a.id == b.id;
  if (type.kind == Type::Kind::truth) return a.truth == b.truth;
  if (type.kind == Type::Kind::text) return a.text == b.text;
  if (a.ladder != b.ladder) return false;
  const double step = step_of(type);
  return quantity::snap(a.number.lo, step) <= quantity::snap(b.number.hi, step) &&
         quantity::snap(b.number.lo, step) <= quantity::snap(a.number.hi, step);
}

bool all_overlap(const Table& table, const Table::Row& a, const Table::Row& b, std::optional<std::size_t> but = {}) {
  for (std::size_t k = 0; k < a.keys.size(); ++k) {
    if (k != but && !overlap(a.keys[k], b.keys[k], table.signature.keys[k].type)) return false;
  }
  return true;
}

// A key met twice has two answers; between rows out of order there is a wrong one.
void check_pair(const Table& table, const Table::Row& a, const Table::Row& b, Diagnostics& found) {
  if (all_overlap(table, a, b)) {
    found.push_back(say("table-row-twice", b.range, {table.signature.name}, a.range, "the row it repeats"));
    return;
  }
  for (std::size_t k = 0; k < a.keys.size(); ++k) {
    if (table.match[k] != Match::next_up && table.match[k] != Match::linear) continue;
    if (!all_overlap(table, a, b, k) || a.keys[k].ladder != b.keys[k].ladder) continue;
    if (b.keys[k].number.lo < a.keys[k].number.lo) {
      found.push_back(say("table-order", b.range, {table.signature.keys[k].name}, a.range, "the row before it"));
    }
  }
}

}  // namespace

void read_rows(Table& table, const Node& rows, const Node* over, const Vocabulary& vocabulary, Diagnostics& found) {
  if (!rows.is_list()) {
    found.push_back(say("table-rows", rows.range));
    return;
  }
  if (rows.items.size() > most_rows) found.push_back(say("table-too-long", rows.range, {std::to_string(most_rows)}));
  const std::size_t before = found.size();
  for (const Node& row : rows.items) read_row(table, row, vocabulary, found);
  if (over) read_over(table, *over, vocabulary, found);
  if (found.size() != before || table.rows.size() > most_rows) return;
  for (std::size_t b = 1; b < table.rows.size(); ++b) {
    const std::size_t many = found.size();
    for (std::size_t a = 0; a < b && found.size() == many; ++a) check_pair(table, table.rows[a], table.rows[b], found);
  }
}

}  // namespace headgate::rulebook
