// A whole finding: clauses by label, blame, exceptions, questions, facts and limits.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "explain/world.hpp"

namespace headgate::test {
namespace {

using testing::ElementsAre;

std::vector<std::string> facts(const Finding& finding) {
  std::vector<std::string> lines;
  for (const auto& fact : finding.facts) {
    lines.push_back(fact.name + " = " + fact.value + (fact.how.empty() ? "" : ", " + fact.how) +
                    (fact.at.empty() ? "" : " @" + fact.at));
  }
  return lines;
}

std::vector<std::string> asks(const World& world) {
  std::vector<std::string> lines;
  for (const auto& one : explain::questions(world.context(), world.judgement, world.judgement.decisions.at(0))) {
    lines.push_back(one.fact + "|" + one.about + "|" + one.ask + "|" + one.cost);
  }
  return lines;
}

TEST(Finding, HoldsFactsLimitsAndCitation) {
  const World world(
      "    when: pressure.highest > limit.most-pressure\n    require: some reducer in line\n    caution: Drain it.\n",
      "pressure:\n  highest: {value: 86 psi, how: \"gauge, photo 3\"}\nline: [meter, pipe]");
  ASSERT_EQ(world.said, "");
  const Finding found = world.finding();
  EXPECT_EQ(found.rule, "town/tried");
  EXPECT_EQ(found.outcome, "fail");
  EXPECT_EQ(found.sentence, "The line has no pressure reducing valve.");
  EXPECT_EQ(found.because, "Highest static pressure is 86 psi, above 80 psi (highest pressure without a reducer).");
  EXPECT_EQ(found.caution, "Drain it.");
  EXPECT_THAT(facts(found),
              ElementsAre("pressure.highest = 86 psi, gauge, photo 3 @site:4:20", "line = meter, pipe @site:5:1"));
  ASSERT_EQ(found.limits.size(), 1U);
  EXPECT_EQ(found.limits[0].value, "80 psi");
  EXPECT_EQ(found.limits[0].layer, "the project's rules");
  ASSERT_EQ(found.citations.size(), 1U);
  EXPECT_EQ(found.citations[0].document + " " + found.citations[0].section, "code 1");
  EXPECT_EQ(found.citations[0].seen, "secondary");
  EXPECT_EQ(found.citations[0].where, "a forum");
  EXPECT_EQ(found.at.substr(0, 6), "rules:");
}

TEST(Finding, LongListsAreCut) {
  std::string line = "line: [";
  for (int i = 0; i < 25; ++i) line += "pipe, ";
  const World world("some gauge in line", line + "meter]");
  EXPECT_EQ(world.finding().facts.at(0).value,
            "pipe, pipe, pipe, pipe, pipe, pipe, pipe, pipe, pipe, pipe, pipe, pipe, pipe, pipe, pipe, pipe, pipe, "
            "pipe, pipe, pipe, 6 others");
}

TEST(Finding, BlamesClausesByLabel) {
  const std::string all =
      "    require:\n      all:\n        the day: pressure.read-on is recorded\n        the height: pressure.highest "
      "is recorded\n";
  EXPECT_EQ(told(all, "pressure: {highest: 60 psi}"), "fail: Not met: the day. Day of the reading is not on record.");
  const std::string any =
      "    require:\n      any:\n        a gauge: some gauge in line\n        a reducer: some reducer in line\n";
  EXPECT_EQ(told(any, "line: [meter]"), "fail: None of these holds: a gauge; a reducer.");
  EXPECT_EQ(told(any, "line: [reducer]"), "pass: A reducer.");
}

TEST(Finding, BlamesTheLabelsInsideALabel) {
  const std::string rule =
      "    require:\n      any:\n        kept: some gauge in line\n        called off in time:\n          all:\n"
      "            the day: pressure.read-on is recorded\n            a reducer: some reducer in line\n";
  EXPECT_EQ(told(rule, "line: [reducer]"), "fail: None of these holds: kept; called off in time (not met: the day).");
  EXPECT_EQ(told(rule, "line: [reducer]\npressure: {read-on: 2026-09-14}"), "pass: Called off in time.");
}

TEST(Finding, LimitWithRowsShowsTheRowUsed) {
  const auto limits = [](const std::string& pipe) {
    const World world("    each: pipe in line\n    require: pipe.length <= limit.span[pipe.material]\n",
                      "line: [pipe: {" + pipe + "}]");
    EXPECT_EQ(world.said, "");
    std::vector<std::string> shown;
    for (const auto& limit : world.finding().limits) {
      std::string line = limit.value + "|" + limit.written + "|" + limit.citation.section;
      for (const auto& replaced : limit.replaced) line += "|" + replaced;
      shown.push_back(line);
    }
    return shown;
  };
  EXPECT_THAT(limits("material: k-copper, length: 3 ft"), ElementsAre("10 ft||1|12 ft (town 7)"));
  EXPECT_THAT(limits("material: hdpe, length: 3 ft"), ElementsAre("20 ft||1"));
  EXPECT_THAT(limits("material: \"one of (k-copper, hdpe)\", length: 3 ft"),
              ElementsAre("10 ft||1|12 ft (town 7)", "20 ft||1"));
  EXPECT_THAT(limits("length: 3 ft"), ElementsAre("no value||"));
  const World breaker("    each: preventer in line\n    require: preventer.height above floor >= limit.rise\n",
                      "line: [breaker: {height: 9 in above floor}]");
  ASSERT_EQ(breaker.finding().limits.size(), 1U);
  EXPECT_EQ(breaker.finding().limits[0].value + "|" + breaker.finding().limits[0].written, "6 in|");
}

TEST(Finding, IfNotSpeaksForTheRule) {
  const std::string rule =
      "    each: pipe in line\n    require: pipe.material is k-copper\n    if-not: The pipe is {pipe.material}, "
      "{pipe.length} long.\n";
  EXPECT_EQ(told(rule, "line: [pipe: {material: hdpe, length: 3 ft}]"), "fail: The pipe is polyethylene, 3 ft long.");
  EXPECT_EQ(told(rule, "line: [pipe: {material: hdpe}]"), "fail: The pipe is polyethylene, (not stated) long.");
  EXPECT_EQ(
      told("    require:\n      all:\n        the day: pressure.read-on is recorded\n    if-not: Nobody read it.\n",
           "name: a"),
      "fail: Nobody read it. Not met: the day.");
}

TEST(Finding, NotApplicableSaysWhy) {
  const std::string rule = "    when: pressure.highest > limit.most-pressure\n    require: some reducer in line\n";
  EXPECT_EQ(told(rule, "pressure: {highest: 60 psi}"),
            "not applicable: Highest static pressure is 60 psi, at most 80 psi (highest pressure without a reducer).");
  EXPECT_EQ(told("    each: reducer in line\n    require: reducer.set-to >= 50 psi\n", "line: [meter]"),
            "not applicable: There is no pressure reducing valve.");
  EXPECT_EQ(told("    each: pipe in line where pipe.material is k-copper\n    require: pipe.length >= 1 ft\n",
                 "line: [meter]"),
            "not applicable: There is no pipe whose material is type K copper.");
  EXPECT_EQ(told("    unless:\n      nobody lives there:\n        if: house.units is 0\n        source: code 2\n    "
                 "require: some gauge in line\n",
                 "house: {units: 0}\nline: [meter]"),
            "not applicable: Excepted: nobody lives there.");
}

TEST(Finding, WhereThatHoldsIsNotBlamed) {
  const std::string rule =
      "    each: pipe in line where (pipe.material is k-copper and pipe.length >= 2 ft)\n    require: pipe.size >= 1 "
      "in\n";
  EXPECT_EQ(told(rule, "line: [pipe: {material: k-copper, length: 1 ft}]"),
            "not applicable: There is no pipe whose material is type K copper and whose length is at least 2 ft.");
  EXPECT_EQ(told(rule, "line: [pipe: {material: k-copper, size: 3/4\"}]"),
            "undecided: Fails if it applies. The pipe's length is not stated.");
}

TEST(Finding, PassesWhetherOrNotItApplies) {
  EXPECT_EQ(
      told("    when: pressure.highest > limit.most-pressure\n    require: some reducer in line\n", "line: [reducer]"),
      "pass: The line has a pressure reducing valve, whether or not it applies.");
}

TEST(Finding, UnfinishedListIsItsOwnFinding) {
  const World world("    each: pipe in line\n    require: pipe.size >= 1 in\n", "line: [pipe: {size: 1\"}, more]");
  EXPECT_EQ(world.finding(0).sentence, "The pipe's size is 1\", at least 1 in.");
  EXPECT_EQ(world.finding(1).outcome + ": " + world.finding(1).sentence,
            "undecided: The line is not written down to its end, so there may be more to judge.");
}

TEST(Question, AsksInTheVocabularysWords) {
  EXPECT_THAT(asks(World("pressure.highest <= limit.most-pressure", "name: a")),
              ElementsAre("pressure.highest||What is the highest static pressure?|measure"));
  EXPECT_THAT(asks(World("some gauge in line", "line: [meter, more]")),
              ElementsAre("line||What else is there, to the end of the line?|look"));
  EXPECT_THAT(asks(World("some gauge in line", "name: a")), ElementsAre("line||What does the water meet?|look"));
}

TEST(Question, AsksForACloserReading) {
  EXPECT_THAT(
      asks(World("pressure.highest <= limit.most-pressure", "pressure: {highest: 79 psi +/- 2 psi}")),
      ElementsAre(
          "pressure.highest||A closer reading: highest static pressure is 79 psi +/- 2 psi, too coarse to compare "
          "with 80 psi (highest pressure without a reducer).|measure"));
}

TEST(Question, NamesTheElementItIsAbout) {
  EXPECT_THAT(asks(World("    each: wall in line\n    require: wall.sleeve is fitted\n", "line: [meter, wall]")),
              ElementsAre("line[2].sleeve|line[2] wall|Is there a sleeve?|look"));
}

TEST(Question, ConfirmedAsksItsClausesLabel) {
  EXPECT_THAT(
      asks(World("    require:\n      any:\n        the detail on drawing 12: confirmed as drawing-12\n", "name: a")),
      ElementsAre("confirmed.drawing-12||Is this so: the detail on drawing 12?|"));
}

TEST(Question, DoesNotAskForWhatCannotMatter) {
  EXPECT_THAT(asks(World("every pipe in line where pipe.material is k-copper has pipe.length >= 2 ft",
                         "line: [pipe: {length: 3 ft}, pipe: {material: hdpe}, pipe: {material: k-copper}]")),
              ElementsAre("line[3].length|line[3] pipe|The pipe's length is not stated.|look"));
}

TEST(Question, AsksAboutThePaperThatMayCount) {
  const World world("approved by building-official", "papers: [approval: {for: tried}]");
  const auto questions = explain::questions(world.context(), world.judgement, world.judgement.decisions.at(0));
  ASSERT_EQ(questions.size(), 1U);
  EXPECT_EQ(questions[0].fact, "papers[1].by");
  EXPECT_EQ(questions[0].about, "papers[1] approval");
  EXPECT_EQ(questions[0].ask, "Who gave the approval?");
}

TEST(Question, AsksTheAuthorityWhereTheTextIsOpen) {
  const World world("pressure.lowest >= limit.unread", "pressure: {lowest: 50 psi}");
  const auto questions = explain::questions(world.context(), world.judgement, world.judgement.decisions.at(0));
  ASSERT_EQ(questions.size(), 1U);
  EXPECT_EQ(questions[0].fact, "");
  EXPECT_EQ(questions[0].ask, "Most pressure is doubtful: a page is torn; ask City of Town which value counts.");
}

TEST(Lines, ShowEveryNodeWithValueAndPlace) {
  const World world("    when: pressure.highest > limit.most-pressure\n    require: some reducer in line\n",
                    "pressure: {highest: 86 psi}\nline: [meter]");
  ASSERT_EQ(world.said, "");
  std::string all;
  for (const auto& line :
       explain::lines(world.context(), evaluate::explain(world.judgement, world.judgement.decisions.at(0)))) {
    all += std::string(2 * line.depth, ' ') + line.text + " = " + line.value + "\n";
  }
  EXPECT_EQ(all,
            "when = yes\n"
            "  pressure.highest > limit.most-pressure = yes\n"
            "    pressure.highest = 86 psi\n"
            "    limit.most-pressure = 80 psi (code 1, the project's rules)\n"
            "require = no\n"
            "  some reducer in line = no\n");
}

TEST(Lines, ShowListsRowsAndTables) {
  const auto lines = [](const std::string& require) {
    const World world("    each: pipe in line\n    require: " + require + "\n",
                      "line: [pipe: {material: k-copper, length: 3 ft}]");
    EXPECT_EQ(world.said, "");
    std::string all;
    for (const auto& line :
         explain::lines(world.context(), evaluate::explain(world.judgement, world.judgement.decisions.at(0)))) {
      all += std::string(2 * line.depth, ' ') + line.text + " = " + line.value + "\n";
    }
    return all;
  };
  EXPECT_EQ(lines("pipe.material is one of limit.good-materials"),
            "require = yes\n"
            "  pipe.material is one of limit.good-materials = yes\n"
            "    pipe.material = type K copper\n"
            "    limit.good-materials = type K copper (code 2, the project's rules)\n");
  EXPECT_EQ(lines("pipe.length >= limit.span[pipe.material]"),
            "require = no\n"
            "  pipe.length >= limit.span[pipe.material] = no\n"
            "    pipe.length = 3 ft\n"
            "    limit.span[pipe.material] = 10 ft (code 1, the project's rules)\n"
            "      pipe.material = type K copper\n");
  EXPECT_EQ(lines("pipe.length >= bores[pipe.material].bore"),
            "require = yes\n"
            "  pipe.length >= bores[pipe.material].bore = yes\n"
            "    pipe.length = 3 ft\n"
            "    bores[pipe.material].bore = 1 in (code 2, the project's rules)\n"
            "      pipe.material = type K copper\n");
}

TEST(Finding, ThingInBracesIsCalledByItsKind) {
  const std::string rule =
      "    each: preventer as guard in line\n    require: guard.height above floor >= 12 in\n"
      "    if-not: \"{guard} stands too low\"\n";
  EXPECT_EQ(told(rule, "line: [breaker: {height: 6 in above floor}]"), "fail: The vacuum breaker stands too low.");
}

}  // namespace
}  // namespace headgate::test
