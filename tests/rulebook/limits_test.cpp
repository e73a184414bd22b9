#include "rulebook/limits.hpp"

#include <gtest/gtest.h>

#include "rulebook/world.hpp"

namespace headgate::test {
namespace {

using Form = rulebook::LimitValue::Form;
using Kind = vocabulary::Type::Kind;

// One limit `x` with these lines.
World limit(const std::string& lines, const std::string& more_vocabulary = "") {
  World world(more_vocabulary);
  world.rules("limits:\n  x:\n" + lines);
  return world;
}

std::string said_of_limit(const std::string& lines) {
  World world = limit(lines);
  world.resolve();
  return world.said();
}

const rulebook::Limit& first(const rulebook::Rulebook& book) { return book.limits.at(0); }

TEST(Limits, AQuantityTellsItsType) {
  World world = limit(
      "    title: A limit\n    stricter: lower\n    plausible: 40 psi to 150 psi\n"
      "    values:\n      code-18 A1: 80 psi\n");
  const auto book = world.resolve();
  EXPECT_EQ(world.said(), "");
  EXPECT_EQ(first(book).signature.type.dimension, quantity::dimensions::pressure);
  EXPECT_EQ(first(book).stricter, rulebook::Stricter::lower);
  EXPECT_NEAR(first(book).plausible->hi, 150 * 6894.757, 1);
  ASSERT_EQ(first(book).chain.size(), 1u);
  EXPECT_NEAR((*first(book).chain[0].tree)[0].value.number.lo, 80 * 6894.757, 0.1);
}

TEST(Limits, AnExpressionTellsItsTypeOnceItsPartsHaveTheirs) {
  World world;
  world.rules(
      "limits:\n  a:\n    values:\n      code-18 A1: limit.b\n  b:\n    values:\n"
      "      code-18 A1: greatest(limit.c, site.frost-depth)\n  c:\n    values: {code-18 A1: 12 in}\n");
  const auto book = world.resolve();
  EXPECT_EQ(world.said(), "");
  EXPECT_EQ(book.limits[0].signature.type.dimension, quantity::dimensions::length);
}

TEST(Limits, AListOfMembers) {
  World world = limit("    type: list of material\n    values:\n      code-18 A1: [K copper, hdpe]\n");
  const auto book = world.resolve();
  EXPECT_EQ(world.said(), "");
  ASSERT_EQ(first(book).chain[0].form, Form::list);
  EXPECT_EQ(first(book).chain[0].list[0].members, 1u);
  EXPECT_EQ(first(book).chain[0].written, "K copper, hdpe");
}

TEST(Limits, RowsByKindAndByMember) {
  World world;
  world.rules(
      "limits:\n  rise: {by: preventer, values: {code-18 A1: {breaker: 6 in, double-check: unknown}}}\n"
      "  rough: {by: material, values: {code-18 A1: {K copper: 140, hdpe: 150}}}\n");
  const auto book = world.resolve();
  EXPECT_EQ(world.said(), "");
  const auto& rise = book.limits[0].chain[0];
  ASSERT_EQ(rise.rows.size(), 2u);
  EXPECT_EQ(rise.rows[1].second[0].value.presence, vocabulary::Presence::unknown);
  EXPECT_EQ(book.limits[1].chain[0].rows[1].first, 2u);
}

TEST(Limits, OneValueForEveryRow) {
  World world = limit("    by: preventer\n    values: {code-18 A1: 6 in}\n");
  const auto book = world.resolve();
  EXPECT_EQ(world.said(), "");
  EXPECT_EQ(first(book).chain[0].rows.size(), 2u);
}

TEST(Limits, ATableInALimit) {
  World world = limit(
      "    values:\n      code-18 A1:\n        table:\n          keys: {units: {type: number, match: linear}}\n"
      "          columns: {flow: flow}\n          rows: [[1, 3 gpm], [2, 5 gpm]]\n      other 1: unknown\n");
  const auto book = world.resolve();
  EXPECT_EQ(world.said(), "");
  ASSERT_EQ(first(book).chain[0].form, Form::table);
  EXPECT_EQ(book.tables[first(book).chain[0].table].rows.size(), 2u);
  EXPECT_EQ(first(book).signature.columns, std::vector<std::string>{"flow"});
}

TEST(Limits, SpansSeasonsDatesMarksAndYesNo) {
  World world;
  world.rules(
      "limits:\n  span: {type: span, plausible: 1 months to 5 years, values: {code-18 A1: 30 days}}\n"
      "  season: {type: season, values: {code-18 A1: Nov 1 to Apr 1}}\n"
      "  date: {type: date, values: {code-18 A1: 2014-01-04}}\n"
      "  mark: {type: mark, values: {code-18 A1: finished-grade}}\n"
      "  flag: {type: yes-no, values: {code-18 A1: no}}\n"
      "  size: {type: size, values: {code-18 A1: 3/4\"}}\n");
  const auto book = world.resolve();
  EXPECT_EQ(world.said(), "");
  EXPECT_EQ(book.limits[0].plausible, (quantity::Interval{30, 1825}));
  EXPECT_EQ((*book.limits[3].chain[0].tree)[0].value.id, 0u);
  EXPECT_EQ(book.limits[3].signature.type.kind, Kind::level);
  EXPECT_EQ((*book.limits[4].chain[0].tree)[0].value.truth, quantity::Truth::no);
}

TEST(Limits, UnknownAndDoubt) {
  World world;
  world.rules(
      "limits:\n  a: {type: length, values: {code-18 A1: unknown}}\n"
      "  b: {values: {code-18 A1: {value: 3 in, doubt: two printings}}}\n  c: {values: {code-18 A3: 3 in}}\n");
  const auto book = world.resolve();
  EXPECT_EQ(world.said(), "");
  EXPECT_EQ(book.limits[0].chain[0].form, Form::unknown);
  EXPECT_EQ(book.limits[1].chain[0].doubt, "two printings");
  EXPECT_EQ(book.limits[2].chain[0].doubt, "two printings disagree");
}

TEST(Limits, NothingUsesOne) {
  World world = limit("    values: {code-18 A1: 1 in}\n");
  world.resolve();
  EXPECT_EQ(world.said(true),
            "rules:4:3 limit-unused: Nothing uses the limit \"x\". (use it in a rule, or take it out)\n");
}

TEST(Limits, TypeThatNothingTells) {
  EXPECT_EQ(said_of_limit("    values: {code-18 A1: unknown}\n"),
            "rules:4:3 limit-needs-type: The first value of the limit \"x\" does not tell its type. "
            "(state it, as in type: length, or type: list of a choice)\n");
}

TEST(Limits, AMistakeInTheFirstValueIsSaidOnceAndItsUsersStaySilent) {
  World world;
  world.rules(
      "limits:\n  x:\n    values:\n      code-18 A1: site.frost + 1 in\n  y:\n    values:\n      code-18 A1: limit.x + "
      "1 in\n");
  world.resolve();
  EXPECT_EQ(world.said().find("rules:6:24 unknown-field"), 0u) << world.said();
  EXPECT_EQ(world.said().find('\n'), world.said().size() - 1) << world.said();
}

TEST(Limits, UnknownWords) {
  EXPECT_EQ(said_of_limit("    stricter: smaller\n    type: presure\n    values: {code-18 A1: 1 psi}\n"),
            "rules:5:15 limit-stricter: \"smaller\" does not say which way is stricter. (write one of neither, lower, "
            "higher)\n"
            "rules:6:11 type-unknown: \"presure\" is no type. (did you mean pressure?)\n");
  EXPECT_EQ(said_of_limit("    of: pip\n    by: preventr\n    value: 1\n    values: {code-18 A1: 1 psi}\n"),
            "rules:5:9 limit-of: \"pip\" is no kind, group or record. (did you mean pipe?)\n"
            "rules:6:9 limit-by: \"preventr\" is no group, kind or choice. (did you mean preventer?)\n"
            "rules:6:9 limit-of-and-by: The limit \"x\" has both of: and by:. (keep one of them)\n"
            "rules:7:5 rulebook-key: A limit has no key \"value\". (write values)\n");
}

TEST(Limits, ValueOfAnotherDimension) {
  const std::string said = said_of_limit("    values:\n      code-18 A1: 80 psi\n      other 1: 3 ft\n");
  EXPECT_EQ(said.find("rules:7:16 wrong-type"), 0u) << said;
}

TEST(Limits, CoarseValuesAreNoLimit) {
  EXPECT_EQ(said_of_limit("    values: {code-18 A1: 80 psi, code-18 A2: at least 80 psi}\n"),
            "rules:5:46 limit-value-coarse: \"at least 80 psi\" is not one exact value, which a limit must be.\n");
  EXPECT_EQ(said_of_limit("    type: list of material\n    values: {code-18 A1: [unknown]}\n"),
            "rules:6:27 limit-list-item: \"unknown\" is not one exact value.\n");
}

TEST(Limits, ShapesThatDoNotFit) {
  EXPECT_EQ(
      said_of_limit("    values: {code-18 A1: 80 psi, other 1: [80 psi]}\n"),
      "rules:5:43 limit-not-list: The limit \"x\" holds one value, not a list. (state type: list of … if it should)\n");
  EXPECT_EQ(said_of_limit("    type: list of material\n    values: {code-18 A1: hdpe}\n"),
            "rules:6:26 limit-wants-list: The limit \"x\" holds a list. (write its value in [ ])\n");
  EXPECT_EQ(said_of_limit("    type: length\n    values: {code-18 A1: {breaker: 1 in}}\n"),
            "rules:6:26 limit-rows-without-by: The limit \"x\" has rows but does not say by what. "
            "(state by: and a group or choice)\n");
  EXPECT_EQ(said_of_limit("    values: {code-18 A1: {doubt: some}}\n    type: length\n"),
            "rules:5:26 limit-value-missing: A value with its doubt has no value. (write value: beside doubt:)\n");
}

TEST(Limits, RowsOfUnknownThings) {
  EXPECT_EQ(said_of_limit("    by: preventer\n    values: {code-18 A1: {beaker: 1 in, pipe: 2 in}}\n"),
            "rules:6:27 limit-row: \"beaker\" is no preventer. (write breaker)\n"
            "rules:6:41 limit-row: \"pipe\" is no preventer. (write one of breaker, double-check)\n");
}

TEST(Limits, ARowTwice) {
  EXPECT_EQ(said_of_limit("    by: material\n    values: {code-18 A1: {K copper: 1, k-copper: 2}}\n"),
            "rules:6:40 limit-row-twice: \"k-copper\" already has its row here. (keep one of them) "
            "[rules:6:37: its row before]\n");
}

TEST(Limits, TwoValuesOfOneDocument) {
  EXPECT_EQ(
      said_of_limit("    values:\n      code-18 A1: 80 psi\n      code-18 A2: 70 psi\n"),
      "rules:7:7 limit-set-twice: The limit \"x\" has two values from one layer. (keep one, or rows that do not meet) "
      "[rules:6:7: its other value]\n");
  EXPECT_EQ(said_of_limit("    by: preventer\n    values:\n      code-18 A1: {breaker: 1 in}\n      code-18 A2: "
                          "{double-check: 2 in}\n"),
            "");
}

TEST(Limits, BaseWithNothingBelow) {
  EXPECT_EQ(said_of_limit("    type: length\n    values:\n      code-18 A1: base + 6 in\n"),
            "rules:7:19 base-of-nothing: \"base\" has no value below it in the limit \"x\" here. "
            "(write the value, or adopt a document that gives one)\n");
}

TEST(Limits, DeclaredTwiceOrWithoutValues) {
  World world;
  world.rules("limits:\n  x: {values: {code-18 A1: 1 in}}\n  y: {title: t, type: length}\n");
  world.file("again", "format: rules/1\ntopic: more\nlimits:\n  x: {values: {code-18 A1: 2 in}}\n");
  world.resolve();
  EXPECT_EQ(world.said(),
            "rules:5:3 limit-without-values: The limit \"y\" has no values. (write values: and a value a source)\n"
            "again:4:3 limit-twice: The limit \"x\" is declared twice. "
            "(a place that sets it writes citation: value, without values:) [rules:4:3: declared here before]\n");
}

TEST(Limits, TablesOfOtherColumns) {
  const std::string table = "table: {keys: {n: number}, columns: {flow: flow}, rows: [[1, 1 gpm]]}";
  EXPECT_EQ(said_of_limit("    values: {code-18 A1: {" + table +
                          "}, other 1: {table: {keys: {n: number}, columns: {f: flow}, rows: []}}}\n"),
            "rules:5:108 limit-other-frame: The limit \"x\" holds a table of other keys or columns. "
            "(keep the keys and columns of its first value) [rules:4:3: the limit]\n");
  EXPECT_EQ(said_of_limit("    values: {code-18 A1: {" + table + "}, other 1: 5 gpm}\n"),
            "rules:5:108 limit-wants-table: The limit \"x\" holds a table. "
            "(write table: with its keys, columns and rows below)\n");
}

TEST(Limits, ImplausibleValues) {
  EXPECT_EQ(said_of_limit("    plausible: 40 psi to 150 psi\n    values: {code-18 A1: 40 psi, other 1: 7 psi}\n"),
            "rules:6:43 limit-implausible: \"7 psi\" is unusual for the limit x. "
            "(usual is 40 psi to 150 psi; check the number and its unit)\n");
  EXPECT_EQ(said_of_limit("    type: span\n    plausible: 1 months to 2 years\n"
                          "    values: {code-18 A1: 1 months, other 1: 3 years}\n"),
            "rules:7:45 limit-implausible: \"3 years\" is unusual for the limit x. "
            "(usual is 30 to 730 days; check the number and its unit)\n");
}

TEST(Limits, PlausibleOfWhatHasNoRange) {
  EXPECT_EQ(said_of_limit("    type: material\n    plausible: 1 to 2\n    values: {code-18 A1: hdpe}\n"),
            "rules:6:16 limit-plausible: A plausible range is written as two quantities, and the limit must hold one. "
            "(write it as 40 psi to 150 psi)\n");
}

}  // namespace
}  // namespace headgate::test
