#include "rulebook/rules.hpp"

#include <gtest/gtest.h>

#include "rulebook/world.hpp"

namespace headgate::test {
namespace {

using Mode = rulebook::Clause::Mode;
using rulebook::Level;
using rulebook::Standing;

const std::string head = "    title: t\n    source: code-18 A1\n";

World with_rule(const std::string& lines, const std::string& limits = "") {
  World world;
  world.rules("stage: wall\n" + limits + "rules:\n  r:\n" + lines);
  return world;
}

std::string said_of_rule(const std::string& lines, const std::string& limits = "", bool all = false) {
  World world = with_rule(lines, limits);
  world.resolve();
  return world.said(all);
}

TEST(Rules, ReadsEveryKey) {
  World world = with_rule(R"(    title: A reducer is fitted
    source: code-18 A1, other 1
    stage: entry
    level: should
    each: wall in line where wall.hole
    when: pressure.highest-static > limit.x
    unless:
      the hole was bored: wall.hole
    require: some pressure-reducer in line
    if-not: The {wall.material} wall at {pressure.highest-static}.
    why: w
    fix: f
    caution: c
    often-misread: o
)",
                          "limits:\n  x: {values: {code-18 A1: 80 psi}}\n");
  const auto book = world.resolve();
  EXPECT_EQ(world.said(true), "");
  const auto& r = rule(book, "r");
  EXPECT_EQ(r.title + "/" + r.topic + "/" + r.why + r.fix + r.caution + r.often_misread,
            "A reducer is fitted/topic/wfco");
  EXPECT_EQ(r.stage, 0u);
  EXPECT_EQ(r.level, Level::should);
  EXPECT_EQ(r.each.binders.size(), 1u);
  EXPECT_EQ(r.when->mode, Mode::single);
  ASSERT_EQ(r.unless.size(), 1u);
  EXPECT_EQ(r.unless[0].label, "the hole was bored");
  ASSERT_EQ(r.if_not.holes.size(), 2u);
  EXPECT_EQ(r.if_not.holes[1].first, r.if_not.written.find("{pressure"));
  EXPECT_EQ(r.limits, std::vector<std::uint32_t>{0});
  EXPECT_EQ(r.standing, Standing::in_force);
}

TEST(Rules, StageOfTheFile) {
  World world = with_rule(head + "    require: pressure is fitted\n");
  EXPECT_EQ(rule(world.resolve(), "r").stage, 1u);
}

TEST(Rules, ClausesNest) {
  World world = with_rule(head + R"(    when:
      one: pressure is fitted
      two:
        any:
          three: site.frost-depth is recorded
          four: pressure is fitted
    require:
      any:
        five: pressure is fitted
        all:
          six: pressure is fitted
          seven: pressure is fitted
)");
  const auto book = world.resolve();
  EXPECT_EQ(world.said(), "");
  const auto& r = rule(book, "r");
  EXPECT_EQ(r.when->mode, Mode::all);
  EXPECT_EQ(r.when->kids[1].label, "two");
  EXPECT_EQ(r.when->kids[1].mode, Mode::any);
  EXPECT_EQ(r.require->mode, Mode::any);
  EXPECT_EQ(r.require->kids[1].mode, Mode::all);
  EXPECT_EQ(r.require->kids[1].kids[1].label, "seven");
}

TEST(Rules, ExceptionsCountWhereTheirSourceIsAdopted) {
  World world = with_rule(head + R"(    require: pressure is fitted
    unless:
      here:
        if: pressure is fitted
        source: code-18 A2
      elsewhere:
        if: pressure is fitted
        source: other 1
      always: pressure is fitted
)");
  const auto book = world.resolve();
  EXPECT_EQ(world.said(), "");
  const auto& unless = rule(book, "r").unless;
  ASSERT_EQ(unless.size(), 2u);
  EXPECT_EQ(unless[0].label + words(unless[0].sources), "herecode-18 A2");
  EXPECT_EQ(unless[1].label, "always");
}

TEST(Rules, ALimitWithoutValueDropsAClauseOfAny) {
  World world = with_rule(
      head + "    require:\n      any:\n        a: pressure.highest-static > limit.x\n        b: pressure is fitted\n",
      "limits:\n  x: {values: {other 1: 80 psi}}\n");
  const auto book = world.resolve();
  EXPECT_EQ(world.said(), "");
  EXPECT_EQ(rule(book, "r").standing, Standing::in_force);
  ASSERT_EQ(rule(book, "r").require->kids.size(), 1u);
  EXPECT_EQ(rule(book, "r").require->kids[0].label, "b");
}

TEST(Rules, AnywhereElseItLeavesTheRuleNotInForce) {
  const std::string limits =
      "limits:\n  x: {values: {other 1: 80 psi}}\n  y:\n    values:\n      code-18 A1: limit.x + 1 psi\n";
  for (const char* const lines : {"    require: pressure.highest-static > limit.y\n",
                                  "    require:\n      any:\n        a: pressure.highest-static > limit.y\n",
                                  "    when: pressure.highest-static > limit.y\n    require: pressure is fitted\n"}) {
    World world = with_rule(head + lines, limits);
    const auto book = world.resolve();
    EXPECT_EQ(world.said(), "");
    EXPECT_EQ(rule(book, "r").standing, Standing::no_limit);
    EXPECT_EQ(rule(book, "r").standing_says, "no adopted source gives limit.y");
  }
}

TEST(Rules, NotAdopted) {
  World world = with_rule("    title: t\n    source: other 1, other 2\n    require: pressure is fitted\n");
  const auto book = world.resolve();
  EXPECT_EQ(rule(book, "r").standing, Standing::not_adopted);
  EXPECT_EQ(rule(book, "r").standing_says, "not adopted: other 1, other 2");
}

TEST(Rules, LimitsReachedThroughLimitsAndDerivedValues) {
  World world("derived:\n  pressure:\n    low: limit.b * 2\n");
  world.rules(
      "limits:\n  a: {values: {code-18 A1: 1 psi}}\n  b:\n    values:\n      code-18 A1: limit.a + 1 psi\n  c: "
      "{values: {code-18 A1: 1 psi}}\n"
      "rules:\n  r:\n" +
      head + "    require: pressure.low > 0 psi\n");
  const auto book = world.resolve();
  EXPECT_EQ(rule(book, "r").limits, (std::vector<std::uint32_t>{0, 1}));
}

TEST(Rules, WhatARuleNeeds) {
  EXPECT_EQ(said_of_rule("    why: w\n"),
            "rules:5:3 rule-needs: The rule \"r\" needs a source.\n"
            "rules:5:3 rule-needs: The rule \"r\" needs a title.\n"
            "rules:5:3 rule-needs-require: The rule \"r\" asks for nothing. "
            "(write require:, or due: of a duty, or level: note)\n");
}

TEST(Rules, Advice) {
  EXPECT_EQ(said_of_rule("    title: t\n    source: practice\n    require: pressure is fitted\n", "", true),
            "rules:5:3 rule-without-fix: The rule \"r\" does not say what puts it right. (write fix:)\n"
            "rules:5:3 rule-without-why: The rule \"r\" does not say why. (write why:, in a sentence for the plumber)\n"
            "rules:7:5 must-by-practice: The rule \"r\" is a must by common practice alone. "
            "(cite a source, or write level: should)\n");
}

TEST(Rules, UnknownKeyStageAndLevel) {
  EXPECT_EQ(
      said_of_rule(
          head +
          "    level: shall\n    stage: wal\n    requires: pressure is fitted\n    require: pressure is fitted\n"),
      "rules:8:12 rule-level: \"shall\" is no level. (write one of must, should, note)\n"
      "rules:9:12 rule-stage: \"wal\" is no stage. (write wall)\n"
      "rules:10:5 rulebook-key: A rule has no key \"requires\". (write require)\n");
}

TEST(Rules, NotesAskForNothing) {
  EXPECT_EQ(said_of_rule(head + "    level: note\n    require: pressure is fitted\n"),
            "rules:5:3 note-without: The note \"r\" does not say when it applies. (write when:)\n"
            "rules:9:5 note-with: A note has no require. (leave it out, or write level: should)\n");
}

TEST(Rules, Duties) {
  World world =
      with_rule(head + "    each: test in tests\n    due: test.done-on + limit.time\n    done: test.filed-on\n",
                "limits:\n  time: {type: span, values: {code-18 A1: 30 days}}\n");
  const auto book = world.resolve();
  EXPECT_EQ(world.said(), "");
  EXPECT_TRUE(rule(book, "r").due && rule(book, "r").done && !rule(book, "r").require);
  EXPECT_EQ(
      said_of_rule(head + "    each: test in tests\n    due: test.done-on\n    require: pressure is fitted\n"),
      "rules:9:5 require-and-due: The rule \"r\" has both require: and due:. (make the duty a rule of its own)\n");
  EXPECT_EQ(said_of_rule(head + "    each: test in tests\n    done: test.done-on\n    require: pressure is fitted\n"),
            "rules:9:5 done-without-due: The rule \"r\" has done: but no due:. (write due:)\n");
}

TEST(Rules, DueIsADate) {
  const std::string said = said_of_rule(head + "    due: pressure.highest-static\n");
  EXPECT_EQ(said.find("rules:8:10 wrong-type"), 0u) << said;
}

TEST(Rules, ThresholdsBelongInLimits) {
  EXPECT_EQ(
      said_of_rule(head + "    when: pressure.highest-static > 80 psi\n    require: count(wall in line) + 3 >= 2\n"),
      "rules:8:37 literal-threshold: \"80 psi\" is a threshold written into a rule. "
      "(give it a limit, so that a place can change it)\n"
      "rules:9:36 literal-threshold: \"3\" is a threshold written into a rule. "
      "(give it a limit, so that a place can change it)\n");
  EXPECT_EQ(said_of_rule(head + "    require: count(wall in line) <= 2\n"), "");
}

TEST(Rules, Clauses) {
  EXPECT_EQ(said_of_rule(head + "    require: {}\n"),
            "rules:8:14 clause-labels: Clauses are a map of labels, each with an expression. "
            "(write label: expression, one a line)\n");
  EXPECT_EQ(said_of_rule(head + "    require: [a, b]\n"),
            "rules:8:14 clause-labels: Clauses are a map of labels, each with an expression. "
            "(write label: expression, one a line)\n");
  EXPECT_EQ(said_of_rule(head + "    require:\n      any: pressure is fitted\n"),
            "rules:9:12 clause-labels: Clauses are a map of labels, each with an expression. "
            "(write label: expression, one a line)\n");
}

TEST(Rules, AnExceptionWithIfNeedsItsSource) {
  EXPECT_EQ(said_of_rule(head + "    require: pressure is fitted\n    unless:\n      a label:\n        if: pressure is "
                                "fitted\n        sorce: x\n"),
            "rules:11:9 exception-without-source: An exception written with if: needs its source. (write source: "
            "beside if:)\n"
            "rules:12:9 rulebook-key: An exception has no key \"sorce\". (write source)\n");
}

TEST(Rules, Braces) {
  EXPECT_EQ(said_of_rule(head + "    require: pressure is fitted\n    if-not: The {wall is.\n"),
            "rules:9:17 brace-open: This { is never closed. (braces in a text hold one path, as in {wall.material})\n");
  const std::string said = said_of_rule(head + "    require: pressure is fitted\n    if-not: The {presure} is.\n");
  EXPECT_EQ(said.find("rules:9:18 "), 0u) << said;
}

TEST(Rules, AWrongEachIsSaidOnce) {
  const std::string said =
      said_of_rule(head + "    each: wal in line\n    when: wal.hole\n    require: wal.material is recorded\n");
  EXPECT_EQ(said.find('\n'), said.size() - 1) << said;
}

TEST(Rules, WrittenTwiceAndBadNames) {
  World world;
  world.rules("rules:\n  r:\n" + head + "    require: pressure is fitted\n  R_2:\n" + head +
              "    require: pressure is fitted\n");
  world.file("again", "format: rules/1\nrules:\n  r:\n" + head + "    require: pressure is fitted\n");
  world.resolve();
  EXPECT_EQ(
      world.said(),
      "rules:8:3 rulebook-name: \"R_2\" is no name: names are lower case letters, digits and single hyphens.\n"
      "again:1:1 rules-without-topic: A rules file needs its topic. (write topic: below format:)\n"
      "again:3:3 rule-twice: The rule \"r\" is written twice. (give one another name; a place revises by change:) "
      "[rules:4:3: written here before]\n");
}

TEST(Library, FormatOfAFile) {
  World world;
  world.file("a", "topic: x\n");
  world.file("b", "format: rule/1\n");
  EXPECT_EQ(world.said(),
            "a:1:1 format-missing: The file does not say what it holds. "
            "(begin it with format: and one of vocabulary/1, sources/1, tables/1, rules/1)\n"
            "b:1:9 format-unknown: \"rule/1\" is no format of a rules folder. (write rules/1)\n");
}

}  // namespace
}  // namespace headgate::test
