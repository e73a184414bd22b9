#include "rulebook/tables.hpp"

#include <gtest/gtest.h>

#include "rulebook/world.hpp"

namespace headgate::test {
namespace {

using rulebook::Match;

// A table with these lines below its source.
std::string said_of_table(const std::string& lines) {
  World world;
  world.tables("  t:\n    title: t\n    source: code-18 A1\n" + lines);
  world.resolve();
  return world.said();
}

const char* const frame = "    keys: {size: size, flow: {type: flow, match: linear}}\n    columns: {loss: pressure}\n";

TEST(Tables, ReadsKeysCellsAndTheLastRow) {
  World world;
  world.tables(R"(  t:
    title: Loss
    source: code-18 A1, practice
    keys: {material: material, flow: {type: flow, match: next up}}
    columns: {loss: {type: pressure}, note: text}
    rows:
      - [K copper, 5 gpm, 1 psi, some]
      - [k-copper, 10 gpm, unknown, more]
    over: [9 psi, past the end]
)");
  const auto book = world.resolve();
  EXPECT_EQ(world.said(), "");
  const auto& table = book.tables[*book.table("t")];
  EXPECT_EQ(words(table.sources), "code-18 A1, common practice, no published source");
  EXPECT_EQ(table.match, (std::vector<Match>{Match::exact, Match::next_up}));
  ASSERT_EQ(table.rows.size(), 2u);
  EXPECT_EQ(table.rows[0].keys[0].members, 1u);
  EXPECT_NEAR(table.rows[0].cells[0].number.lo, 6894.757, 0.001);
  EXPECT_EQ(table.rows[1].cells[0].presence, vocabulary::Presence::unknown);
  EXPECT_EQ((*table.over)[1].text, "past the end");
}

TEST(Tables, RangesHoldBothEnds) {
  World world;
  world.tables(R"(  t:
    source: practice
    keys: {lots: {type: number, match: range}}
    columns: {size: size}
    rows: [[up to 0, 1/2"], [1 to 2, 3/4"], [3, 1"], [101 and up, 2"]]
)");
  const auto book = world.resolve();
  EXPECT_EQ(world.said(), "");
  const auto& rows = book.tables[*book.table("t")].rows;
  EXPECT_EQ(rows[1].keys[0].number, (quantity::Interval{1, 2}));
  EXPECT_EQ(rows[2].keys[0].number, (quantity::Interval{3, 3}));
  EXPECT_EQ(rows[0].keys[0].number.hi, 0);
  EXPECT_TRUE(rows[3].keys[0].number.hi > 1e300);
}

TEST(Tables, OneSizeOnTwoLaddersIsTwoKeys) {
  EXPECT_EQ(said_of_table("    keys: {size: size}\n    columns: {d: length}\n    rows: [[1\", 25 mm], [1 mm, 1 mm]]\n"),
            "");
}

TEST(Tables, WhatATableNeeds) {
  World world;
  world.tables("  t: {title: t}\n");
  world.resolve();
  EXPECT_EQ(world.said(),
            "tables:3:3 table-needs: The table \"t\" needs its source.\n"
            "tables:3:6 table-frame: A table has no columns. (name them, with a type each)\n"
            "tables:3:6 table-frame: A table has no keys. (name them, with a type each)\n");
}

TEST(Tables, UnknownTypeGetsTheNearest) {
  EXPECT_EQ(
      said_of_table("    keys: {size: siz}\n    columns: {a: {type: presure}, b: {}, c: list of size}\n    rows: []\n"),
      "tables:6:18 type-unknown: \"siz\" is no type. (did you mean size?)\n"
      "tables:7:25 type-unknown: \"presure\" is no type. (did you mean pressure?)\n"
      "tables:7:35 table-column-type: \"b\" has no type. (write b: and its type)\n"
      "tables:7:45 table-list: A cell holds one value, not a list. (write the type without \"list of\")\n");
}

TEST(Tables, Matching) {
  EXPECT_EQ(said_of_table("    keys: {size: {type: size, match: nextup}}\n    columns: {d: length}\n    rows: []\n"),
            "tables:6:38 table-match: \"nextup\" is no way to match a key. (write next up)\n");
  EXPECT_EQ(
      said_of_table("    keys: {m: {type: material, match: linear}}\n    columns: {d: length}\n    rows: []\n"),
      "tables:6:39 table-match-order: Only numbers, sizes and dates can be matched linear. (write match: exact)\n");
  EXPECT_EQ(
      said_of_table(
          "    keys: {a: {type: flow, match: linear}, b: {type: flow, match: next up}}\n    columns: {d: length}\n"
          "    rows: []\n"),
      "tables:6:44 table-two-ordered: A second key of the table looks between rows. "
      "(only one key may be next up or linear)\n");
}

TEST(Tables, RowOfTheWrongWidth) {
  EXPECT_EQ(said_of_table(std::string(frame) + "    rows:\n      - [1\", 5 gpm]\n"),
            "tables:9:9 table-row-width: This row needs 3 cells and has 2.\n");
}

TEST(Tables, CellOfAnotherDimension) {
  const std::string said = said_of_table(std::string(frame) + "    rows:\n      - [1\", 5 gpm, 3 ft]\n");
  EXPECT_EQ(said.find("tables:9:21 wrong-dimension"), 0u) << said;
}

TEST(Tables, KeyThatIsNotExact) {
  EXPECT_EQ(said_of_table(std::string(frame) + "    rows: [[1\", at least 5 gpm, 1 psi], [unknown, 5 gpm, 1 psi]]\n"),
            "tables:8:17 table-key-unknown: The key \"at least 5 gpm\" is not one exact value.\n"
            "tables:8:42 table-key-unknown: The key \"unknown\" is not one exact value.\n");
}

TEST(Tables, RowsThatAnswerOneKeyTwice) {
  EXPECT_EQ(
      said_of_table(std::string(frame) + "    rows:\n      - [1\", 5 gpm, 1 psi]\n      - [1 in, 5 gpm, 2 psi]\n"),
      "tables:10:9 table-row-twice: Two rows of the table \"t\" answer the same key. (keep one of them) "
      "[tables:9:9: the row it repeats]\n");
  EXPECT_EQ(said_of_table("    keys: {n: {type: number, match: range}}\n    columns: {d: length}\n"
                          "    rows: [[1 to 3, 1 ft], [3 to 5, 2 ft]]\n"),
            "tables:8:28 table-row-twice: Two rows of the table \"t\" answer the same key. (keep one of them) "
            "[tables:8:12: the row it repeats]\n");
}

TEST(Tables, RowsOutOfOrder) {
  EXPECT_EQ(said_of_table(std::string(frame) + "    rows:\n      - [1\", 9 gpm, 1 psi]\n      - [2\", 5 gpm, 1 psi]\n"
                                               "      - [1\", 5 gpm, 2 psi]\n"),
            "tables:11:9 table-order: The rows are not in rising order of flow. (put the smaller key first) "
            "[tables:9:9: the row before it]\n");
}

TEST(Tables, BackwardsRangeAndOverOfExactKeys) {
  EXPECT_EQ(said_of_table(
                "    keys: {n: {type: number, match: range}}\n    columns: {d: length}\n    rows: [[5 to 3, 1 ft]]\n"),
            "tables:8:13 table-range-backwards: The range \"5 to 3\" ends before it begins.\n");
  EXPECT_EQ(said_of_table("    keys: {n: number}\n    columns: {d: length}\n    rows: [[5, 1 ft]]\n    over: [2 ft]\n"),
            "tables:9:11 table-over-exact: \"over\" is for keys past the last row, and these keys are exact. (leave it "
            "out)\n");
}

TEST(Tables, WrittenTwice) {
  World world;
  const std::string table = "  t: {source: practice, keys: {n: number}, columns: {d: length}, rows: [[1, 1 ft]]}\n";
  world.tables(table);
  world.file("again", "format: tables/1\ntables:\n" + table);
  world.resolve();
  EXPECT_EQ(world.said(),
            "again:3:3 table-twice: The table \"t\" is written twice. (give one of them another name) "
            "[tables:3:3: written here before]\n");
}

World replacing(const std::string& columns) {
  World world;
  world.tables("  t: {source: practice, keys: {n: number}, columns: {d: length}, rows: [[1, 1 ft]]}\n");
  world.town(
      "changes:\n  - title: New table\n    from: 2026-01-01\n    tables:\n"
      "      t: {source: own 1, keys: {n: number}, columns: " +
      columns + ", rows: [[1, 2 ft], [2, 3 ft]]}\n");
  return world;
}

TEST(Tables, AChangeReplacesThemWhole) {
  World world = replacing("{d: length}");
  EXPECT_EQ(world.resolve("2025-12-31").tables[0].rows.size(), 1u);
  const auto after = world.resolve("2026-01-01");
  EXPECT_EQ(after.tables[0].rows.size(), 2u);
  EXPECT_EQ(after.tables[0].layer.title, "New table");
  EXPECT_EQ(world.said(), "");
}

TEST(Tables, AReplacementKeepsKeysAndColumns) {
  World world = replacing("{depth: length}");
  world.resolve("2026-01-01");
  EXPECT_EQ(world.said(),
            "place:10:7 table-other-frame: The table \"t\" replaces one with other keys or columns. "
            "(keep its keys and columns, or give the table another name) [tables:3:3: the table it replaces]\n");
}

}  // namespace
}  // namespace headgate::test
