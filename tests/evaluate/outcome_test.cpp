// Section 5 row by row: what `when` and `require` come to, by level; then stages, duties, papers, standing.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "evaluate/worlds/world.hpp"

namespace headgate::test {
namespace {

using evaluate::Truth;

// `wet` is the when, `pressure.highest-static` the require: at least 50 psi, 40 psi fails it.
std::string judged(const std::string& level, const std::string& when, const std::string& require) {
  World world({.limits = "  floor: {title: Floor, values: {code-a 1: 50 psi}}",
               .rules = rule("it", "level: " + level + "\nwhen: wet\nrequire: pressure.highest-static >= limit.floor"),
               .site = "stage: entry\nwet: " + when + "\npressure: {highest-static: " + require + "}"});
  return world.outcomes("it");
}

TEST(Outcome, TableOfMust) {
  EXPECT_EQ(judged("must", "yes", "60 psi"), "pass");
  EXPECT_EQ(judged("must", "yes", "40 psi"), "fail");
  EXPECT_EQ(judged("must", "yes", "unknown"), "undecided");
  EXPECT_EQ(judged("must", "yes", "50 psi +/- 1 psi"), "undecided");
  EXPECT_EQ(judged("must", "no", "60 psi"), "not applicable");
  EXPECT_EQ(judged("must", "no", "40 psi"), "not applicable");
  EXPECT_EQ(judged("must", "no", "unknown"), "not applicable");
  EXPECT_EQ(judged("must", "unknown", "60 psi"), "pass");
  EXPECT_EQ(judged("must", "unknown", "40 psi"), "undecided");
  EXPECT_EQ(judged("must", "unknown", "unknown"), "undecided");
}

TEST(Outcome, TableOfShould) {
  EXPECT_EQ(judged("should", "yes", "60 psi"), "pass");
  EXPECT_EQ(judged("should", "yes", "40 psi"), "advisory");
  EXPECT_EQ(judged("should", "yes", "unknown"), "undecided");
  EXPECT_EQ(judged("should", "no", "40 psi"), "not applicable");
  EXPECT_EQ(judged("should", "unknown", "60 psi"), "pass");
  EXPECT_EQ(judged("should", "unknown", "40 psi"), "undecided");
}

TEST(Outcome, NoteAppliesOrNot) {
  const auto note = [](const std::string& wet) {
    return World({.rules = rule("it", "level: note\nwhen: wet"), .site = "stage: entry\nwet: " + wet}).outcomes("it");
  };
  EXPECT_EQ(note("yes"), "advisory");
  EXPECT_EQ(note("no"), "not applicable");
  EXPECT_EQ(note("unknown"), "undecided");
}

TEST(Outcome, MetWhetherOrNotItApplies) {
  World world({.rules = rule("it", "when: wet\nrequire: pressure.highest-static is recorded"),
               .site = "pressure: {highest-static: 3 psi}"});
  EXPECT_EQ(world.outcomes("it"), "pass");
  EXPECT_EQ(world.decision("it").applies, Truth::undecided);
}

TEST(Outcome, ExceptionsTakeTheRuleAway) {
  const auto excepted = [](const std::string& wet, const std::string& pressure) {
    World world({.rules = rule("it", "unless:\n  it is wet: wet\nrequire: pressure.highest-static is recorded"),
                 .site = "stage: entry\nwet: " + wet + "\n" + pressure});
    return world.outcomes("it");
  };
  EXPECT_EQ(excepted("yes", ""), "not applicable");
  EXPECT_EQ(excepted("no", ""), "fail");
  EXPECT_EQ(excepted("unknown", ""), "undecided");
  EXPECT_EQ(excepted("unknown", "pressure: {highest-static: 50 psi}"), "pass");
}

TEST(Outcome, AnExceptionCountsOnlyWhereItsSourceIsAdopted) {
  const std::string rules =
      rule("it", "unless:\n  bored:\n    if: wet\n    source: code-b 1\nrequire: pressure.highest-static is recorded");
  EXPECT_EQ(World({.rules = rules, .site = "stage: entry\nwet: yes"}).outcomes("it"), "fail");
  EXPECT_EQ(
      World({.rules = rules, .place = "adopts: [code-a, code-b]", .site = "stage: entry\nwet: yes"}).outcomes("it"),
      "not applicable");
}

TEST(Outcome, LaterUntilItsStageIsReached) {
  const auto at = [](const std::string& stage, const std::string& wet) {
    World world({.rules = rule("it", "stage: wall\nwhen: wet\nrequire: pressure.highest-static is recorded"),
                 .site = "wet: " + wet + "\n" + stage});
    return world.outcomes("it") + (world.decision("it").stage_unknown ? ", stage unknown" : "");
  };
  EXPECT_EQ(at("stage: entry", "yes"), "later (fail)");
  EXPECT_EQ(at("stage: wall", "yes"), "fail");
  EXPECT_EQ(at("stage: in-service", "yes"), "fail");
  EXPECT_EQ(at("stage: entry", "no"), "not applicable");
  EXPECT_EQ(at("stage: entry", "unknown"), "later (undecided)");
  EXPECT_EQ(at("", "yes"), "fail, stage unknown");
  EXPECT_EQ(at("stage: unknown", "no"), "not applicable");
}

TEST(Outcome, TheStageOfTheOptionsCounts) {
  evaluate::Options options;
  options.stage = 0;
  World world({.rules = rule("it", "require: wet"), .site = "stage: in-service\nwet: yes", .options = options});
  EXPECT_EQ(world.outcomes("it"), "later (pass)");
}

TEST(Outcome, NotInForce) {
  const std::string rules = rule("it", "require: wet") + rule("other", "require: wet", "code-b 1") +
                            rule("without", "require: pressure.highest-static >= limit.nobodys");
  const std::string limits = "  nobodys: {title: Nobody's, values: {code-b 1: 5 psi}}";
  World world({.limits = limits,
               .rules = rules,
               .place = "adopts: code-a\nchanges: [{title: Drops, from: 2026-01-01, drop: {it: code-a 1}}]",
               .site = "wet: yes",
               .day = "2026-05-01"});
  EXPECT_EQ(world.outcomes("it"), "not in force");
  EXPECT_EQ(world.outcomes("other"), "not in force");
  EXPECT_EQ(world.outcomes("without"), "not in force");
}

TEST(Outcome, APlaceThatAdoptsNothingAsksNothing) {
  World world({.rules = rule("it", "require: wet"), .place = "adopts: nothing", .site = "wet: yes"});
  EXPECT_EQ(world.outcomes("it"), "not in force");
}

const char* const two_ways = "require:\n  any:\n    dry: wet is no\n    approved: approved by building-official";

TEST(Outcome, AcceptedOnlyWhereNothingElseMeetsIt) {
  const auto with = [](const std::string& site) {
    return World({.rules = rule("it", two_ways), .site = "stage: entry\n" + site}).outcomes("it");
  };
  const std::string paper = "papers: [approval: {for: it, by: building-official}]";
  EXPECT_EQ(with(paper + "\nwet: yes"), "accepted");
  EXPECT_EQ(with(paper), "accepted");
  EXPECT_EQ(with(paper + "\nwet: no"), "pass");
  EXPECT_EQ(with("wet: yes"), "fail");
  EXPECT_EQ(with("papers: unknown\nwet: yes"), "undecided");
  EXPECT_EQ(with("papers: [approval: {for: it, by: water-superintendent}]\nwet: yes"), "fail");
  EXPECT_EQ(with("papers: [approval: {for: other, by: building-official}]\nwet: yes"), "fail");
}

TEST(Outcome, ShouldAndDutyTogether) {
  const auto at = [](const std::string& day) {
    World world({.limits = "  time: {title: Time, type: span, values: {code-a 1: 30 days}}",
                 .rules = rule("it", "level: should\ndue: reached-on + limit.time\ndone: permit-applied-on"),
                 .site = "stage: entry\nreached-on: 2026-01-01\npermit-applied-on: none\nchecked-on: " + day});
    return world.outcomes("it");
  };
  EXPECT_EQ(at("2026-01-31"), "later (undecided)");
  EXPECT_EQ(at("2026-02-01"), "advisory");
}

}  // namespace
}  // namespace headgate::test
