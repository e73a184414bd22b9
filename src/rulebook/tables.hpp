// Look-up tables: their keys and columns, their rows, and whether the rows can be looked up without
// doubt. Not for other layers.
#pragma once

#include <vector>

#include "rulebook/documents.hpp"
#include "rulebook/load.hpp"

namespace headgate::rulebook {

// `tables:` of one file or change.
struct TableFile {
  const document::Node* tables = nullptr;
  Layer layer;
  bool in_force = true;
};

// The project's tables, and those of a place's changes: first the changes not in force, then `in_force` in its order.
std::vector<TableFile> table_files(const Library& library, const Place* place, const std::vector<std::size_t>& in_force,
                                   text::Diagnostics& found);

// Every table in the order of the files, those a later one replaces replaced: a table's number is the same on all days.
// A replacement has the keys and columns of the table it replaces. What is not in force gives its frame, no rows.
std::vector<Table> read_tables(const std::vector<TableFile>& files, const Documents& documents,
                               const vocabulary::Vocabulary& vocabulary, text::Diagnostics& found);

// `keys:` and `columns:` of a map, into the table; `what` as in "a table". False when either is missing or wrong.
bool read_frame(Table& table, const document::Node& map, std::string_view what,
                const vocabulary::Vocabulary& vocabulary, text::Diagnostics& found);

// Rows by the table's keys and columns, and that each key has one answer.
void read_rows(Table& table, const document::Node& rows, const document::Node* over,
               const vocabulary::Vocabulary& vocabulary, text::Diagnostics& found);

bool same_frame(const Table& a, const Table& b);

}  // namespace headgate::rulebook
