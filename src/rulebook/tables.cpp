#include "rulebook/tables.hpp"

#include <algorithm>

#include "rulebook/keys.hpp"
#include "rulebook/types.hpp"

namespace headgate::rulebook {

using document::Entry;
using document::Node;
using expression::TableColumn;
using expression::TableKey;
using text::Diagnostics;
using text::say;
using vocabulary::Type;
using vocabulary::Vocabulary;

namespace {

// In the order of Match.
const Names matches = {"exact", "next up", "linear", "range"};

bool ordered(const Type& type) {
  return type.kind == Type::Kind::number || type.kind == Type::Kind::date || type.kind == Type::Kind::moment ||
         type.kind == Type::Kind::clock;
}

std::optional<Type> cell_type(const Node& node, const Vocabulary& vocabulary, Diagnostics& found) {
  const auto stated = read_type(node, vocabulary, found);
  if (!stated) return std::nullopt;
  if (!stated->list) return stated->type;
  found.push_back(say("table-list", node.range));
  return std::nullopt;
}

// `size`, or {type: size, match: exact}.
std::optional<Type> read_column(const Entry& entry, const Names& keys, const Vocabulary& vocabulary,
                                Diagnostics& found) {
  if (entry.value.is_scalar()) return cell_type(entry.value, vocabulary, found);
  if (!expect_map(entry.value, "A column", found)) return std::nullopt;
  expect_keys(entry.value, keys, "A column", found);
  if (const Node* type = entry.value.find("type")) return cell_type(*type, vocabulary, found);
  found.push_back(say("table-column-type", entry.key_range, {entry.key}));
  return std::nullopt;
}

Match read_match(const Entry& entry, const Type& type, Diagnostics& found) {
  const Node* node = entry.value.is_map() ? entry.value.find("match") : nullptr;
  if (!node) return Match::exact;
  const auto match = one_of(*node, matches, "table-match", found);
  if (!match) return Match::exact;
  if (static_cast<Match>(*match) != Match::exact && !ordered(type)) {
    found.push_back(say("table-match-order", node->range, {node->scalar}));
    return Match::exact;
  }
  return static_cast<Match>(*match);
}

bool read_keys(Table& table, const Node& keys, const Vocabulary& vocabulary, Diagnostics& found) {
  bool good = true;
  std::size_t between_rows = 0;
  for (const Entry& entry : keys.entries) {
    const auto type =
        expect_name(entry, found) ? read_column(entry, {"type", "match"}, vocabulary, found) : std::nullopt;
    good = good && type;
    if (!type) continue;
    table.signature.keys.push_back({entry.key, *type});
    table.match.push_back(read_match(entry, *type, found));
    const bool steps = table.match.back() == Match::next_up || table.match.back() == Match::linear;
    if (steps && ++between_rows == 2) found.push_back(say("table-two-ordered", entry.key_range));
  }
  if (table.signature.keys.size() > most_table_keys) {
    found.push_back(say("table-too-many-keys", keys.range, {std::to_string(most_table_keys)}));
    good = false;
  }
  return good && !table.signature.keys.empty();
}

bool read_columns(Table& table, const Node& columns, const Vocabulary& vocabulary, Diagnostics& found) {
  bool good = true;
  for (const Entry& entry : columns.entries) {
    const auto type = expect_name(entry, found) ? read_column(entry, {"type"}, vocabulary, found) : std::nullopt;
    good = good && type;
    if (type) table.signature.columns.push_back({entry.key, *type});
  }
  return good && !table.signature.columns.empty();
}

Table read_table(const Entry& entry, const Layer& layer, const Documents& documents, const Vocabulary& vocabulary,
                 Diagnostics& found) {
  Table table;
  table.signature.name = entry.key;
  table.layer = layer;
  table.range = entry.key_range;
  const Node& node = entry.value;
  if (!expect_map(node, "A table", found)) return table;
  expect_keys(node, {"title", "source", "keys", "columns", "rows", "over"}, "A table", found);
  table.title = text_of(node, "title", found);
  if (const Node* source = node.find("source")) {
    table.sources = documents.cite(*source, found);
  } else {
    found.push_back(say("table-needs", entry.key_range, {entry.key, "source"}));
  }
  if (!read_frame(table, node, "A table", vocabulary, found)) return table;
  if (const Node* rows = node.find("rows")) {
    read_rows(table, *rows, node.find("over"), vocabulary, found);
  } else {
    found.push_back(say("table-needs", entry.key_range, {entry.key, "rows"}));
  }
  return table;
}

}  // namespace

bool read_frame(Table& table, const Node& map, std::string_view what, const Vocabulary& vocabulary,
                Diagnostics& found) {
  bool good = true;
  for (const std::string_view key : {"keys", "columns"}) {
    if (map.find(key)) continue;
    found.push_back(say("table-frame", map.range, {std::string(what), std::string(key)}));
    good = false;
  }
  const Node* keys = map_of(map, "keys", found);
  const Node* columns = map_of(map, "columns", found);
  if (keys) good = read_keys(table, *keys, vocabulary, found) && good;
  if (columns) good = read_columns(table, *columns, vocabulary, found) && good;
  return good && keys && columns;
}

bool same_frame(const Table& a, const Table& b) {
  const auto same = [](const auto& x, const auto& y) { return x.name == y.name && x.type == y.type; };
  const auto& ka = a.signature.keys;
  const auto& kb = b.signature.keys;
  const auto& ca = a.signature.columns;
  const auto& cb = b.signature.columns;
  return std::equal(ka.begin(), ka.end(), kb.begin(), kb.end(), same) &&
         std::equal(ca.begin(), ca.end(), cb.begin(), cb.end(), same);
}

std::vector<TableFile> table_files(const Library& library, const Place* place, const std::vector<std::size_t>& in_force,
                                   Diagnostics& found) {
  std::vector<TableFile> files;
  for (const Node* file : library.tables) {
    if (!expect_map(*file, "A tables file", found)) continue;
    expect_keys(*file, {"format", "tables"}, "A tables file", found);
    Layer layer;
    layer.range = file->range;
    if (const Node* tables = file->find("tables")) files.push_back({tables, layer, true});
  }
  if (!place) return files;
  const auto take = [&](std::size_t i, bool holds) {
    const Node* tables = place->changes[i].node->find("tables");
    if (tables) files.push_back({tables, place->changes[i].layer, holds});
  };
  for (std::size_t i = 0; i < place->changes.size(); ++i) {
    if (std::find(in_force.begin(), in_force.end(), i) == in_force.end()) take(i, false);
  }
  for (const std::size_t i : in_force) take(i, true);
  return files;
}

std::vector<Table> read_tables(const std::vector<TableFile>& files, const Documents& documents,
                               const Vocabulary& vocabulary, Diagnostics& found) {
  std::vector<Table> tables;
  for (const TableFile& file : files) {
    if (!expect_map(*file.tables, "\"tables\"", found)) continue;
    for (const Entry& entry : file.tables->entries) {
      if (!expect_name(entry, found)) continue;
      Table table = read_table(entry, file.layer, documents, vocabulary, found);
      if (!file.in_force) {
        table.rows.clear();
        table.over.reset();
      }
      const auto named = [&](const Table& each) { return each.signature.name == entry.key; };
      const auto before = std::find_if(tables.begin(), tables.end(), named);
      if (before == tables.end()) {
        tables.push_back(std::move(table));
      } else if (before->layer.range == file.layer.range || file.layer.place.empty()) {
        found.push_back(say("table-twice", entry.key_range, {entry.key}, before->range, "written here before"));
      } else if (!same_frame(*before, table)) {
        found.push_back(say("table-other-frame", entry.key_range, {entry.key}, before->range, "the table it replaces"));
      } else if (file.in_force) {
        *before = std::move(table);
      }
    }
  }
  return tables;
}

}  // namespace headgate::rulebook
