// Lists that are finished, unfinished, empty, left out; `each` over them: decisions 2 and 14.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "evaluate/worlds/world.hpp"

namespace headgate::test {
namespace {

const char* const none = "line: none";
const char* const left_out = "wet: yes";
const char* const two = "line: [pipe: {length: 3 ft}, pipe: {length: 5 ft}]";
const char* const two_and_more = "line: [pipe: {length: 3 ft}, pipe: {length: 5 ft}, more]";
const char* const only_more = "line: [more]";

TEST(Lists, CountAndSum) {
  EXPECT_EQ(in(none, "count(pipe in line)"), "0");
  EXPECT_EQ(in(none, "sum(pipe.length for pipe in line) is same as 0 ft"), "yes");
  EXPECT_EQ(in(two, "count(pipe in line)"), "2");
  EXPECT_EQ(in(two, "sum(pipe.length for pipe in line) is same as 8 ft"), "yes");
  EXPECT_EQ(in(two_and_more, "count(pipe in line) >= 2"), "yes");
  EXPECT_EQ(in(two_and_more, "count(pipe in line) >= 3"), "undecided");
  EXPECT_EQ(in(two_and_more, "count(pipe in line) < 2"), "no");
  EXPECT_EQ(in(two_and_more, "sum(pipe.length for pipe in line) >= 8 ft"), "yes");
  EXPECT_EQ(in(two_and_more, "sum(pipe.length for pipe in line) < 9 ft"), "undecided");
  EXPECT_EQ(in(left_out, "count(pipe in line) >= 0"), "yes");
  EXPECT_EQ(in(left_out, "count(pipe in line) >= 1"), "undecided");
}

// `rise` may be negative: what is not seen may take away.
TEST(Lists, ASumOfWhatMayBeNegativeIsUnknownWhileUnfinished) {
  const std::string climbs = "line: [pipe: {rise: 3 ft}, pipe: {rise: 5 ft}, more]";
  EXPECT_EQ(in(climbs, "sum(pipe.rise for pipe in line) >= 8 ft"), "undecided");
  EXPECT_EQ(in(climbs, "sum(pipe.rise for pipe in line)"), "unknown");
  EXPECT_EQ(in("line: [pipe: {rise: 3 ft}, pipe: {}]", "sum(pipe.rise for pipe in line)"), "unknown");
  EXPECT_EQ(in(two_and_more, "sum(pipe.length * 2 for pipe in line) >= 16 ft"), "yes");
  EXPECT_EQ(in(two_and_more, "sum(pipe.length - 1 ft for pipe in line) >= 0 ft"), "undecided");
}

TEST(Lists, AnElementThatMayNotCountAddsTheHullOfNothingAndItsValue) {
  const std::string site =
      "line: [pipe: {length: 3 ft, buried: yes}, pipe: {length: 5 ft}, pipe: {length: 9 ft, buried: no}]";
  EXPECT_EQ(in(site, "count(pipe in line where pipe.buried) >= 1"), "yes");
  EXPECT_EQ(in(site, "count(pipe in line where pipe.buried) <= 2"), "yes");
  EXPECT_EQ(in(site, "count(pipe in line where pipe.buried) >= 2"), "undecided");
  EXPECT_EQ(in(site, "sum(pipe.length for pipe in line where pipe.buried) >= 3 ft"), "yes");
  EXPECT_EQ(in(site, "sum(pipe.length for pipe in line where pipe.buried) > 8 ft"), "no");
  EXPECT_EQ(in(site, "sum(pipe.length for pipe in line where pipe.buried) > 3 ft"), "undecided");
  EXPECT_EQ(in("line: [pipe: {rise: -3 ft}]", "sum(pipe.rise for pipe in line where pipe.buried) <= 0 ft"), "yes");
}

TEST(Lists, LeastAndGreatest) {
  EXPECT_EQ(in(two, "least(pipe.length for pipe in line) is same as 3 ft"), "yes");
  EXPECT_EQ(in(two, "greatest(pipe.length for pipe in line) is same as 5 ft"), "yes");
  EXPECT_EQ(in(two_and_more, "least(pipe.length for pipe in line) <= 3 ft"), "yes");
  EXPECT_EQ(in(two_and_more, "least(pipe.length for pipe in line) >= 1 ft"), "undecided");
  EXPECT_EQ(in(two_and_more, "greatest(pipe.length for pipe in line) >= 5 ft"), "yes");
  EXPECT_EQ(in(two_and_more, "greatest(pipe.length for pipe in line) <= 5 ft"), "undecided");
  EXPECT_EQ(in(none, "least(pipe.length for pipe in line)"), "unknown");
  EXPECT_EQ(in(only_more, "greatest(pipe.length for pipe in line)"), "unknown");
  EXPECT_EQ(in("line: [pipe: {length: 3 ft}, pipe: {}]", "least(pipe.length for pipe in line) <= 3 ft"), "yes");
  EXPECT_EQ(in("line: [pipe: {length: 3 ft}, pipe: {}]", "least(pipe.length for pipe in line) >= 1 ft"), "undecided");
}

TEST(Lists, OfNothingThatCountsThereIsNoLeast) {
  const std::string site = "line: [pipe: {length: 3 ft, buried: no}]";
  EXPECT_EQ(in(site, "least(pipe.length for pipe in line where pipe.buried) >= 1 ft"), "undecided");
  EXPECT_EQ(in(site, "greatest(pipe.length for pipe in line where pipe.buried) <= 1 ft"), "undecided");
  EXPECT_EQ(in(site, "least(pipe.length for pipe in line where pipe.buried)"), "unknown");
  const std::string perhaps = "line: [pipe: {length: 3 ft}]";
  EXPECT_EQ(in(perhaps, "least(pipe.length for pipe in line where pipe.buried) >= 1 ft"), "undecided");
}

TEST(Lists, LeastOfDates) {
  const std::string site = "line: [pipe: {laid-on: 1989}, pipe: {laid-on: 1975-05-04}]\nreached-on: 1980-01-01";
  EXPECT_EQ(in(site, "least(pipe.laid-on for pipe in line) < reached-on"), "yes");
  EXPECT_EQ(in(site, "greatest(pipe.laid-on for pipe in line) < reached-on"), "no");
  EXPECT_EQ(in("line: [pipe: {laid-on: before 1975}, more]\nreached-on: 1980-01-01",
               "least(pipe.laid-on for pipe in line) < reached-on"),
            "yes");
}

TEST(Lists, MoreHidesElementsAnywhere) {
  EXPECT_EQ(in("line: [gauge: {}, more]", "some gauge in line"), "yes");
  EXPECT_EQ(in("line: [gauge: {}, more]", "some strainer in line"), "undecided");
  EXPECT_EQ(in("line: [gauge: {}, more]", "no gauge in line"), "no");
  EXPECT_EQ(in("line: [gauge: {}, more]", "no strainer in line"), "undecided");
  EXPECT_EQ(in("line: [gauge: {}]", "no strainer in line"), "yes");
  EXPECT_EQ(in(only_more, "every pipe in line has pipe.buried"), "undecided");
  EXPECT_EQ(in("line: [pipe: {buried: no}, more]", "every pipe in line has pipe.buried"), "no");
  EXPECT_EQ(in(left_out, "some pipe in line"), "undecided");
  EXPECT_EQ(in(none, "every pipe in line has pipe.buried"), "yes");
  EXPECT_EQ(in(none, "some pipe in line"), "no");
}

TEST(Lists, ClosedForAKind) {
  const std::string site = "line: [pipe: {length: 2 ft}, more: {except: [gauge, valve]}]";
  EXPECT_EQ(in(site, "no gauge in line"), "yes");
  EXPECT_EQ(in(site, "some valve in line"), "no");
  EXPECT_EQ(in(site, "some pressure-reducer in line"), "no");
  EXPECT_EQ(in(site, "some strainer in line"), "undecided");
  EXPECT_EQ(in(site, "count(gauge in line)"), "0");
  const std::string only = "line: [pipe: {length: 2 ft}, more: {only: [gauge]}]";
  EXPECT_EQ(in(only, "count(pipe in line)"), "1");
  EXPECT_EQ(in(only, "no gauge in line"), "undecided");
}

TEST(Lists, UnionOfTheTrunkAndItsBranches) {
  const std::string site =
      "line: [pipe: {length: 1 ft}, branch: lawn]\nbranches: {lawn: {line: [pipe: {length: 2 ft}, more]}}";
  EXPECT_EQ(in(site, "count(pipe in line)"), "1");
  EXPECT_EQ(in(site, "count(pipe in all-lines) >= 2"), "yes");
  EXPECT_EQ(in(site, "count(pipe in all-lines) >= 3"), "undecided");
  const std::string silent = "line: [pipe: {length: 1 ft}, branch: lawn]\nbranches: {lawn: {}}";
  EXPECT_EQ(in(silent, "some gauge in all-lines"), "undecided");
  EXPECT_EQ(in("line: [pipe: {}]\nbranches: none", "some gauge in all-lines"), "no");
}

// --- each ---

TEST(Each, OneDecisionAnElement) {
  const std::string pipes = "line: [pipe: {length: 3 ft}, gauge: {}, pipe: {length: 1 in}, pipe: {}]";
  EXPECT_EQ(each("pipe in line", "pipe.length >= 1 ft", pipes), "line[1]: pass; line[3]: fail; line[4]: undecided");
  EXPECT_EQ(each("strainer in line", "strainer.size is recorded", pipes), "not applicable");
  EXPECT_EQ(each("pipe in line", "pipe.length >= 1 ft", "line: none"), "not applicable");
  EXPECT_EQ(each("pipe in line", "pipe.length >= 1 ft", "wet: yes"), "line left out: undecided");
  EXPECT_EQ(each("pipe in line", "pipe.length >= 1 ft", "line: [more]"), "line open: undecided");
  EXPECT_EQ(each("pipe in line", "pipe.length >= 1 ft", "line: [pipe: {length: 9 ft}, more]"),
            "line[1]: pass; line open: undecided");
  EXPECT_EQ(each("gauge in line", "gauge.reads is recorded", "line: [pipe: {}, more: {except: [gauge]}]"),
            "not applicable");
}

TEST(Each, WhereLeavesOut) {
  const std::string pipes = "line: [pipe: {buried: yes}, pipe: {buried: no}, pipe: {}, pipe: {length: 1 ft}]";
  EXPECT_EQ(each("pipe in line where pipe.buried", "pipe.length is recorded", pipes),
            "line[1]: fail; line[3]: undecided; line[4]: pass");
  EXPECT_EQ(each("pipe in line where pipe.buried", "pipe.length is recorded", "line: [pipe: {buried: no}]"),
            "not applicable");
}

TEST(Each, LaterListsUseEarlierElements) {
  const std::string site =
      "line:\n  - pipe: {near: [sewer: {beside: 1 ft}, gas: {beside: 9 ft}]}\n  - pipe: {near: none}\n  - pipe: {near: "
      "[gas: {beside: 3 ft}]}";
  EXPECT_EQ(each("pipe in line, gas in pipe.near", "gas.beside >= 5 ft", site),
            "line[1], line[1].near[2]: pass; line[3], line[3].near[1]: fail");
  EXPECT_EQ(each("pipe in line, pipe as other in line", "pipe comes before other or other comes before pipe",
                 "line: [pipe: {}, pipe: {}]"),
            "line[1], line[1]: fail; line[1], line[2]: pass; line[2], line[1]: pass; line[2], line[2]: fail");
}

TEST(Each, EveryOpenListIsNamedOnce) {
  const std::string site = "line: [pipe: {near: [gas: {beside: 9 ft}]}, pipe: {}, pipe: {near: [more]}]";
  EXPECT_EQ(each("pipe in line, gas in pipe.near", "gas.beside >= 5 ft", site),
            "line[1], line[1].near[1]: pass; line[2].near left out: undecided; line[3].near open: undecided");
  EXPECT_EQ(
      each("pipe in line, pipe as other in line", "pipe.buried or other.buried", "line: [pipe: {buried: yes}, more]"),
      "line[1], line[1]: pass; line open: undecided");
}

// What is not buried is not gone into: its own lists are nobody's business.
TEST(Each, AListBehindAWhereThatSaysNoIsNotOpen) {
  const std::string binders = "pipe in line where pipe.buried, gas in pipe.near";
  EXPECT_EQ(each(binders, "gas.beside >= 5 ft", "line: [pipe: {buried: no}]"), "not applicable");
  EXPECT_EQ(each(binders, "gas.beside >= 5 ft", "line: [pipe: {buried: no, near: [more]}]"), "not applicable");
  EXPECT_EQ(each(binders, "gas.beside >= 5 ft", "line: [pipe: {}]"), "line[1].near left out: undecided");
  EXPECT_EQ(each(binders, "gas.beside >= 5 ft", "line: [pipe: {buried: yes, near: [more]}, pipe: {near: none}]"),
            "line[1].near open: undecided");
}

TEST(Each, AnOpenListComesLaterWithItsRule) {
  World world({.rules = rule("it", "stage: wall\neach: pipe in line\nrequire: pipe.buried"),
               .site = "stage: entry\nline: [pipe: {buried: yes}, more]"});
  EXPECT_EQ(world.outcomes("it"), "line[1]: later (pass); line open: later (undecided)");
}

TEST(Each, KindsAndGroups) {
  const std::string site = "line: [vacuum-breaker: {}, double-check: {}, pipe: {}]";
  EXPECT_EQ(each("preventer as device in line", "device is vacuum-breaker", site), "line[1]: pass; line[2]: fail");
  EXPECT_EQ(each("preventer as device in line", "device is not vacuum-breaker", site), "line[1]: fail; line[2]: pass");
  EXPECT_EQ(each("preventer as device in line", "device is preventer", site), "line[1]: pass; line[2]: pass");
  EXPECT_EQ(each("preventer as device in line", "device is one of (vacuum-breaker, double-check)", site),
            "line[1]: pass; line[2]: pass");
  EXPECT_EQ(each("preventer as device in line", "device is not one of (double-check)", site),
            "line[1]: pass; line[2]: fail");
}

}  // namespace
}  // namespace headgate::test
