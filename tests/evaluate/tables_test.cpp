// Look-ups: exact, next up, linear, ranges, over, outside, and coarse keys.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "evaluate/worlds/world.hpp"

namespace headgate::test {
namespace {

const char* const tables = R"(
  curve:
    title: Curve
    source: code-a 1
    keys: {load: {type: number, match: linear}}
    columns: {flow: {type: number}, word: {type: material}}
    rows:
      - [1, 10, k-copper]
      - [3, 30, k-copper]
      - [4, 20, l-copper]
  steps:
    title: Steps
    source: code-a 1
    keys: {load: {type: number, match: next up}}
    columns: {size: {type: number}}
    rows:
      - [5, 1]
      - [10, 2]
      - [20, 3]
  steps-and-over:
    title: Steps and over
    source: code-a 1
    keys: {load: {type: number, match: next up}}
    columns: {size: {type: number}}
    rows:
      - [5, 1]
      - [10, 2]
    over: [9]
  bands:
    title: Bands
    source: code-a 1
    keys: {load: {type: number, match: range}}
    columns: {rate: {type: number}}
    rows:
      - [1 to 5, 1]
      - [6 to 10, 2]
      - [20 to 30, 3]
  bands-and-over:
    title: Bands and over
    source: code-a 1
    keys: {load: {type: number, match: range}}
    columns: {rate: {type: number}}
    rows:
      - [1 to 5, 1]
      - [6 to 10, 2]
    over: [9]
  bores:
    title: Bores
    source: code-a 1
    keys: {material: {type: material, match: exact}, size: {type: size, match: exact}}
    columns: {bore: {type: length}}
    rows:
      - [k-copper, 3/4", 0.7 in]
      - [k-copper, 1", 1 in]
      - [l-copper, 3/4", 0.8 in]
      - [l-copper, 1", 1.1 in]
      - [hdpe, 3/4", 0.9 in]
  losses:
    title: Losses
    source: code-a 1
    keys: {material: {type: material, match: exact}, load: {type: number, match: linear}}
    columns: {loss: {type: number}}
    rows:
      - [k-copper, 0, 0]
      - [k-copper, 10, 100]
      - [l-copper, 0, 0]
      - [l-copper, 20, 20]
  ratings:
    title: Ratings
    source: code-a 1
    keys: {material: {type: material, match: exact}, load: {type: number, match: next up}}
    columns: {rate: {type: number}}
    rows:
      - [k-copper, 5, 1]
      - [k-copper, 10, 2]
      - [l-copper, 20, 7]
)";

std::string look(const std::string& expression, const std::string& site = "wet: yes") {
  return World({.vocabulary = "records: {site: {facts: {load: number, what: material, bore-size: size}}}",
                .tables = tables,
                .site = site})
      .value(expression);
}

// Nothing is known at, up to and around a cell nobody knows; elsewhere the table speaks.
TEST(Tables, AnUnknownCell) {
  const auto look_in = [](const std::string& match, const std::string& key) {
    World world(
        {.tables = "\n  holes:\n    title: Holes\n    source: code-a 1\n    keys: {load: {type: number, match: " +
                   match + "}}\n    columns: {flow: {type: number}}\n" +
                   "    rows:\n      - [1, 10]\n      - [3, unknown]\n      - [4, 20]\n      - [5, 30]\n",
         .site = "wet: yes"});
    return world.value("holes[" + key + "].flow");
  };
  EXPECT_EQ(look_in("exact", "1"), "10");
  EXPECT_EQ(look_in("exact", "3"), "unknown");
  EXPECT_EQ(look_in("linear", "2"), "unknown");
  EXPECT_EQ(look_in("linear", "3"), "unknown");
  EXPECT_EQ(look_in("linear", "3.5"), "unknown");
  EXPECT_EQ(look_in("linear", "4.5"), "25");
  EXPECT_EQ(look_in("next up", "2"), "unknown");
  EXPECT_EQ(look_in("next up", "3.5"), "20");
}

TEST(Tables, AnUnknownCellIsTheTablesSilence) {
  World world({.vocabulary = "records: {site: {facts: {load: number}}}",
               .tables = "\n  holes:\n    title: Holes\n    source: code-a 1\n    keys: {load: {type: number, match: "
                         "exact}}\n    columns: {flow: {type: number}}\n    rows: [[1, 10], [3, unknown]]\n",
               .rules = rule("it", "require: holes[load].flow >= 5"),
               .site = "stage: entry\nload: 3"});
  ASSERT_EQ(world.outcomes("it"), "undecided");
  const auto trace = evaluate::explain(world.judgement(), world.decision("it"));
  ASSERT_TRUE(trace.require && trace.require->expression);
  EXPECT_EQ(trace.require->expression->kids[0].why, evaluate::Why::no_value);
}

TEST(Tables, Linear) {
  EXPECT_EQ(look("curve[1].flow"), "10");
  EXPECT_EQ(look("curve[2].flow"), "20");
  EXPECT_EQ(look("curve[3.5].flow"), "25");
  EXPECT_EQ(look("curve[4].flow"), "20");
  EXPECT_EQ(look("curve[0.9].flow"), "unknown");
  EXPECT_EQ(look("curve[4.1].flow"), "unknown");
}

TEST(Tables, LinearOfACoarseKeyIsTheHullOfWhatItTouches) {
  EXPECT_EQ(look("curve[load].flow >= 20", "load: 3 +/- 1"), "yes");
  EXPECT_EQ(look("curve[load].flow <= 30", "load: 3 +/- 1"), "yes");
  EXPECT_EQ(look("curve[load].flow < 30", "load: 3 +/- 1"), "undecided");  // the top at 3 lies between
  EXPECT_EQ(look("curve[load].flow", "load: at least 2"), "unknown");
  EXPECT_EQ(look("curve[load].flow", "load: unknown"), "unknown");
  EXPECT_EQ(look("curve[load].flow", "load: none"), "unknown");
}

TEST(Tables, NextUp) {
  EXPECT_EQ(look("steps[5].size"), "1");
  EXPECT_EQ(look("steps[5.01].size"), "2");
  EXPECT_EQ(look("steps[0].size"), "1");
  EXPECT_EQ(look("steps[20].size"), "3");
  EXPECT_EQ(look("steps[21].size"), "unknown");
  EXPECT_EQ(look("steps-and-over[11].size"), "9");
  EXPECT_EQ(look("steps[load].size >= 2", "load: 12 +/- 4"), "yes");
  EXPECT_EQ(look("steps[load].size >= 3", "load: 12 +/- 4"), "undecided");
  EXPECT_EQ(look("steps[load].size <= 3", "load: at most 8"), "yes");
  EXPECT_EQ(look("steps-and-over[load].size >= 2", "load: at least 7"), "yes");
  EXPECT_EQ(look("steps[load].size >= 2", "load: at least 7"), "undecided");
}

TEST(Tables, Ranges) {
  EXPECT_EQ(look("bands[1].rate"), "1");
  EXPECT_EQ(look("bands[5].rate"), "1");
  EXPECT_EQ(look("bands[5.5].rate"), "unknown");
  EXPECT_EQ(look("bands[15].rate"), "unknown");
  EXPECT_EQ(look("bands[load].rate <= 2", "load: 5 +/- 2"), "yes");
  EXPECT_EQ(look("bands[load].rate < 2", "load: 5 +/- 2"), "undecided");
  EXPECT_EQ(look("bands[31].rate"), "unknown");
  EXPECT_EQ(look("bands-and-over[11].rate"), "9");
  EXPECT_EQ(look("bands-and-over[0].rate"), "unknown");  // over is past the last row, not before the first
  EXPECT_EQ(look("bands-and-over[5.5].rate"), "unknown");
  EXPECT_EQ(look("bands-and-over[load].rate <= 2", "load: 10 +/- 2"), "undecided");  // may be over
  EXPECT_EQ(look("bands-and-over[load].rate >= 2", "load: 10 +/- 2"), "yes");
  EXPECT_EQ(look("bands[load].rate >= 3", "load: 29 +/- 2"), "undecided");  // may be past the end
}

TEST(Tables, SeveralKeys) {
  EXPECT_EQ(look("bores[k-copper, 3/4\"].bore is same as 0.7 in"), "yes");
  EXPECT_EQ(look("bores[k-copper, 20 mm].bore is same as 0.7 in"), "yes");
  EXPECT_EQ(look("bores[hdpe, 1\"].bore"), "unknown");
  EXPECT_EQ(look("bores[what, 3/4\"].bore >= 0.7 in", "what: one of (k-copper, l-copper)"), "yes");
  EXPECT_EQ(look("bores[what, 3/4\"].bore > 0.7 in", "what: one of (k-copper, l-copper)"), "undecided");
  EXPECT_EQ(look("bores[what, 3/4\"].bore > 0.1 in", "what: unknown"), "undecided");
}

// A member without a row is outside the table, and so may be the whole value.
TEST(Tables, AMemberWithoutARowIsOutside) {
  EXPECT_EQ(look("bores[what, 1\"].bore > 0.1 in", "what: one of (k-copper, hdpe)"), "undecided");
  EXPECT_EQ(look("bores[what, 3/4\"].bore > 0.1 in", "what: one of (k-copper, mystery)"), "undecided");
  EXPECT_EQ(look("losses[what, 15].loss >= 0", "what: one of (k-copper, l-copper)"), "undecided");
}

// Each member has its own curve; the hull is over the curves, never from one to the other.
TEST(Tables, ACoarseMemberLooksAlongEachOfItsRows) {
  EXPECT_EQ(look("losses[k-copper, 10].loss"), "100");
  EXPECT_EQ(look("losses[l-copper, 10].loss"), "10");
  EXPECT_EQ(look("losses[what, 10].loss >= 10", "what: one of (k-copper, l-copper)"), "yes");
  EXPECT_EQ(look("losses[what, 10].loss >= 11", "what: one of (k-copper, l-copper)"), "undecided");
  EXPECT_EQ(look("losses[what, 10].loss <= 100", "what: one of (k-copper, l-copper)"), "yes");
  EXPECT_EQ(look("losses[what, 5].loss <= 6", "what: one of (k-copper, l-copper)"), "undecided");
  EXPECT_EQ(look("ratings[what, 8].rate <= 2", "what: one of (k-copper, l-copper)"), "undecided");
  EXPECT_EQ(look("ratings[what, 8].rate >= 2", "what: one of (k-copper, l-copper)"), "yes");
}

TEST(Tables, SizesThroughTheEquivalence) {
  EXPECT_EQ(look("bores[l-copper, bore-size].bore is same as 1.1 in", "bore-size: 25 mm"), "yes");
  EXPECT_EQ(look("bores[l-copper, bore-size].bore", "bore-size: 50 mm"), "unknown");
}

TEST(Tables, OfALimit) {
  const std::string limits = R"(  curve-limit:
    title: Curve
    values:
      code-a 1:
        table:
          keys: {load: {type: number, match: linear}}
          columns: {flow: {type: number}}
          rows:
            - [0, 0]
            - [10, 100]
      code-b 1:
        table:
          keys: {load: {type: number, match: linear}}
          columns: {flow: {type: number}}
          rows:
            - [0, 0]
            - [10, 50]
)";
  EXPECT_EQ(World({.limits = limits, .place = "adopts: [code-a, code-b]", .site = "wet: yes"})
                .value("limit.curve-limit[5].flow"),
            "50");
  EXPECT_EQ(World({.limits = limits, .place = "adopts: code-b", .site = "wet: yes"}).value("limit.curve-limit[5].flow"),
            "25");
  EXPECT_EQ(
      World({.limits = limits, .place = "adopts: nothing", .site = "wet: yes"}).value("limit.curve-limit[5].flow"),
      "unknown");
}

TEST(Tables, WhatLiesBetweenRowsThatAreNoNumbersIsEither) {
  EXPECT_EQ(look("curve[2].word is k-copper"), "yes");  // both rows say so
  EXPECT_EQ(look("curve[3.5].word is k-copper"), "undecided");
  EXPECT_EQ(look("curve[4].word is l-copper"), "yes");
}

TEST(Tables, ACoarseKeyOverAGapIsOutside) {
  EXPECT_EQ(look("bands[load].rate <= 3", "load: 8 +/- 2"), "yes");
  EXPECT_EQ(look("bands[load].rate <= 3", "load: 12 +/- 9"), "undecided");
}

}  // namespace
}  // namespace headgate::test
