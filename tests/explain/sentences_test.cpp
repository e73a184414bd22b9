// Each kind of test, decided and undecided, in the words of the report.
#include <gtest/gtest.h>

#include "explain/world.hpp"

namespace headgate::test {
namespace {

TEST(Sentence, ComparisonStatesValueAndBound) {
  const std::string rule = "pressure.highest <= limit.most-pressure";
  EXPECT_EQ(told(rule, "pressure: {highest: 80 psi}"),
            "pass: Highest static pressure is 80 psi, at most 80 psi (highest pressure without a reducer).");
  EXPECT_EQ(told(rule, "pressure: {highest: 80.1 psi}"),
            "fail: Highest static pressure is 80.1 psi, above 80 psi (highest pressure without a reducer).");
  EXPECT_EQ(told(rule, "pressure: {highest: 79 psi +/- 2 psi}"),
            "undecided: Highest static pressure is 79 psi +/- 2 psi, too coarse to compare with 80 psi (highest "
            "pressure without a reducer).");
  EXPECT_EQ(told(rule, "name: a"), "undecided: Highest static pressure is not stated.");
  EXPECT_EQ(told(rule, "pressure: {highest: unknown}"), "undecided: Highest static pressure is stated as unknown.");
  EXPECT_EQ(told(rule, "pressure: {highest: none}"),
            "undecided: Highest static pressure is none: there is nothing to compare.");
}

TEST(Sentence, EveryRelationHasItsOwnWords) {
  const std::string site = "pressure: {highest: 60 psi, lowest: 60 psi}";
  EXPECT_EQ(told("pressure.highest < pressure.lowest", site),
            "fail: Highest static pressure is 60 psi, at least 60 psi (lowest static pressure).");
  EXPECT_EQ(told("pressure.highest > pressure.lowest", site),
            "fail: Highest static pressure is 60 psi, at most 60 psi (lowest static pressure).");
  EXPECT_EQ(told("pressure.highest >= pressure.lowest", site),
            "pass: Highest static pressure is 60 psi, at least 60 psi (lowest static pressure).");
  EXPECT_EQ(told("pressure.highest >= pressure.lowest", "pressure: {highest: 50 psi, lowest: 60 psi}"),
            "fail: Highest static pressure is 50 psi, below 60 psi (lowest static pressure).");
}

TEST(Sentence, DatesComeBeforeAndAfter) {
  const std::string rule = "pressure.read-on <= checked-on";
  EXPECT_EQ(told(rule, "checked-on: 2026-09-14\npressure: {read-on: 2026-09-14}"),
            "pass: Day of the reading is 2026-09-14, on or before 2026-09-14 (day of the check).");
  EXPECT_EQ(told(rule, "checked-on: 2026-09-14\npressure: {read-on: 2026-09-15}"),
            "fail: Day of the reading is 2026-09-15, after 2026-09-14 (day of the check).");
}

TEST(Sentence, BetweenNamesBothEnds) {
  const std::string rule =
      "    each: meter in line\n    require: limit.least-height <= meter.height above floor <= limit.most-height\n";
  EXPECT_EQ(told(rule, "line: [meter: {height: 24 in}]"),
            "pass: The meter's height is 24 in, between 12 in (lowest a meter sits) and 36 in (highest a meter sits).");
  EXPECT_EQ(
      told(rule, "line: [meter: {height: 40 in}]"),
      "fail: The meter's height is 40 in, not between 12 in (lowest a meter sits) and 36 in (highest a meter sits).");
  EXPECT_EQ(told(rule, "line: [meter: {height: 36 in +/- 1 in}]"),
            "undecided: The meter's height is 36 in +/- 1 in, too coarse to compare with 12 in (lowest a meter sits) "
            "and 36 in "
            "(highest a meter sits).");
  EXPECT_EQ(told(rule, "line: [meter]"), "undecided: The meter's height is not stated.");
  EXPECT_EQ(told(rule, "line: [meter: {height: 30 in above grade}]"),
            "undecided: The meter's height has no reading from the floor.");
}

TEST(Sentence, IsNamesTheMember) {
  const std::string is = "    each: pipe in line\n    require: pipe.material is k-copper\n";
  EXPECT_EQ(told(is, "line: [pipe: {material: k-copper}]"), "pass: The pipe's material is type K copper.");
  EXPECT_EQ(told(is, "line: [pipe: {material: hdpe}]"),
            "fail: The pipe's material is polyethylene, not type K copper.");
  EXPECT_EQ(
      told(is, "line: [{pipe: {material: \"one of (k-copper, hdpe)\"}}]"),
      "undecided: The pipe's material is one of type K copper, polyethylene, which may or may not be type K copper.");
  const std::string is_not = "    each: pipe in line\n    require: pipe.material is not hdpe\n";
  EXPECT_EQ(told(is_not, "line: [pipe: {material: hdpe}]"), "fail: The pipe's material is polyethylene.");
  EXPECT_EQ(told(is_not, "line: [pipe: {material: k-copper}]"), "pass: The pipe's material is type K copper.");
}

TEST(Sentence, OneOfAndListsNameWhatWouldDo) {
  const std::string one_of = "    each: pipe in line\n    require: pipe.material is one of (k-copper, hdpe)\n";
  EXPECT_EQ(told(one_of, "line: [pipe: {material: hdpe}]"), "pass: The pipe's material is polyethylene.");
  EXPECT_EQ(told(one_of, "line: [pipe: {material: old}]"),
            "fail: The pipe's material is unmarked pipe, not type K copper or polyethylene.");
  const std::string listed = "    each: pipe in line\n    require: pipe.material is one of limit.good-materials\n";
  EXPECT_EQ(told(listed, "line: [pipe: {material: k-copper}]"),
            "pass: The pipe's material is type K copper, among the materials for new pipe.");
  EXPECT_EQ(told(listed, "line: [pipe: {material: hdpe}]"),
            "fail: The pipe's material is polyethylene, not among the materials for new pipe: type K copper.");
  EXPECT_EQ(told(listed, "line: [pipe]"), "undecided: The pipe's material is not stated.");
}

TEST(Sentence, PropertySaysTheValueToo) {
  const std::string rule = "    each: pipe in line\n    require: pipe.material.metal\n";
  EXPECT_EQ(told(rule, "line: [pipe: {material: k-copper}]"), "pass: The pipe's material is type K copper, metal.");
  EXPECT_EQ(told(rule, "line: [pipe: {material: hdpe}]"), "fail: The pipe's material is polyethylene, not metal.");
  EXPECT_EQ(told(rule, "line: [pipe: {material: old}]"),
            "undecided: The pipe's material is unmarked pipe, which may or may not be metal.");
}

TEST(Sentence, FittedNoneAndRecorded) {
  const std::string fitted = "    each: wall in line\n    require: wall.sleeve is fitted\n";
  EXPECT_EQ(told(fitted, "line: [wall: {sleeve: 2 in}]"), "pass: The foundation wall has a sleeve.");
  EXPECT_EQ(told(fitted, "line: [wall: {sleeve: none}]"), "fail: The foundation wall has no sleeve.");
  EXPECT_EQ(told(fitted, "line: [wall]"), "undecided: The foundation wall's sleeve is not stated.");
  EXPECT_EQ(told("house.sprinklers is none", "house: {sprinklers: none}"), "pass: The house has no sprinklers.");
  EXPECT_EQ(told("checked-on is none", "checked-on: none"), "pass: Day of the check: none.");
  EXPECT_EQ(told("pressure.highest is fitted", "pressure: {highest: 60 psi}"),
            "pass: Highest static pressure is 60 psi.");
  EXPECT_EQ(told("pressure.highest is recorded", "name: a"), "fail: Highest static pressure is not on record.");
  EXPECT_EQ(told("pressure.highest is recorded", "pressure: {highest: 60 psi}"),
            "pass: Highest static pressure is on record.");
}

TEST(Sentence, PropertyOfWhatIsNotThere) {
  EXPECT_EQ(told("    each: wall in line\n    require: wall.sleeve.size >= 1 in\n", "line: [wall: {sleeve: none}]"),
            "undecided: The sleeve's size cannot be told where there is no sleeve.");
}

TEST(Sentence, ComesNamesBothElements) {
  const std::string rule = "    each: gauge in line, reducer in line\n    require: gauge comes right before reducer\n";
  EXPECT_EQ(told(rule, "line: [gauge, reducer]"),
            "pass: The pressure gauge at line[1] comes right before the pressure reducing valve at line[2].");
  EXPECT_EQ(told(rule, "line: [reducer, gauge]"),
            "fail: The pressure gauge at line[2] does not come right before the pressure reducing valve at line[1].");
}

TEST(Sentence, QuantifiersSayWhatTheListHas) {
  EXPECT_EQ(told("some gauge in line", "line: [meter]"), "fail: The line has no pressure gauge.");
  EXPECT_EQ(told("some gauge in line", "line: [gauge]"), "pass: The line has a pressure gauge.");
  EXPECT_EQ(told("some gauge in line", "line: [meter, more]"), "undecided: The line is not written down to its end.");
  EXPECT_EQ(told("some gauge in line", "name: a"), "undecided: The line is not stated.");
  EXPECT_EQ(told("no double-check in line", "line: [double-check]"), "fail: The line has a double check.");
  EXPECT_EQ(told("some pipe in line has pipe.material.metal", "line: [pipe: {material: hdpe}]"),
            "fail: The line has no pipe whose material is metal.");
  EXPECT_EQ(told("some preventer in line has preventer is breaker", "line: [double-check]"),
            "fail: The line has no backflow preventer that is a vacuum breaker.");
}

TEST(Sentence, YesNoFactInAConditionIsWhatIsSoOfTheThing) {
  const auto none = [](const std::string& condition) {
    return told("some pipe in line has " + condition, "line: [meter]");
  };
  EXPECT_EQ(none("pipe.new"), "fail: The line has no pipe that is new in this job.");
  EXPECT_EQ(none("not pipe.new"), "fail: The line has no pipe that is not new in this job.");
  EXPECT_EQ(none("pipe.owned"), "fail: The line has no pipe that is the utility's own.");
  EXPECT_EQ(none("pipe.held"), "fail: The line has no pipe that holds.");
  EXPECT_EQ(none("not pipe.held"), "fail: The line has no pipe that does not hold.");
  EXPECT_EQ(none("pipe.new is no"), "fail: The line has no pipe that is not new in this job.");
  EXPECT_EQ(none("pipe.joint"),
            "fail: The line has no pipe for which the answer to \"Is there a joint in the wall?\" is yes.");
  EXPECT_EQ(none("(pipe.new and pipe.material.metal)"),
            "fail: The line has no pipe that is new in this job and whose material is metal.");
  EXPECT_EQ(none("(pipe.new and (pipe.owned or pipe.size >= 1 in))"),
            "fail: The line has no pipe that is new in this job and (that is the utility's own or whose size is at "
            "least 1 in).");
  EXPECT_EQ(none("not (pipe.new or pipe.size >= 1 in)"),
            "fail: The line has no pipe that is not new in this job and whose size is below 1 in.");
  EXPECT_EQ(told("    each: pipe in line\n    require: pipe.long\n", "line: [pipe: {length: 3 ft}]"),
            "fail: The pipe is not a long one.");
}

TEST(Sentence, WhereTheThingStandsIsSaidOfIt) {
  EXPECT_EQ(told("    each: gauge in line\n    require: some reducer in line has gauge comes before reducer\n",
                 "line: [gauge]"),
            "fail: The line has no pressure reducing valve that comes after the pressure gauge.");
  EXPECT_EQ(told("some gauge in line has (no reducer in line has reducer comes before gauge)", "line: [meter]"),
            "fail: The line has no pressure gauge for which the line has no pressure reducing valve that comes before "
            "the pressure gauge.");
}

TEST(Sentence, ListsOfManyAndOfOneKind) {
  EXPECT_EQ(told("some permit in papers", "name: a"), "fail: The papers have no permit.");
  EXPECT_EQ(told("some permit in papers has permit.dated <= checked-on", "checked-on: 2026-01-01"),
            "fail: The papers have no permit whose date is on or before the day of the check.");
  EXPECT_EQ(told("some permit in papers has permit.until is fitted", "papers: [permit: {until: 2026-01-01}]"),
            "pass: The papers have a permit whose last day is given.");
  EXPECT_EQ(told("some test in tests has test.passed", "tests: none"), "fail: There is no test that passed.");
  EXPECT_EQ(told("some test in tests", "name: a"), "undecided: The tests are not stated.");
  EXPECT_EQ(told("    each: test in tests\n    require: test.passed\n", "tests: [more]"),
            "undecided: The tests are not written down to their end, so there may be more to judge.");
  EXPECT_EQ(told("house.units <= 1", "house: {units: 2}"), "fail: Dwelling units are 2, above 1.");
}

TEST(Sentence, CountKeepsItsCondition) {
  EXPECT_EQ(told("count(pipe in line where pipe.material is hdpe) >= 2",
                 "line: [pipe: {material: hdpe}, pipe: {material: k-copper}]"),
            "fail: The number of pipes in the line, counting each whose material is polyethylene, is 1, below 2.");
  EXPECT_EQ(told("count(pipe in line) >= 2", "line: [pipe]"), "fail: The number of pipes in the line is 1, below 2.");
}

TEST(Sentence, LimitWithRowsIsCalledByItsTitle) {
  EXPECT_EQ(told("some pipe in line has pipe.length >= limit.span[pipe.material]", "line: [meter]"),
            "fail: The line has no pipe whose length is at least longest pipe.");
  // What was looked up is said where it is one value for all.
  EXPECT_EQ(told("some pipe in line has pipe.length >= bores[k-copper].bore", "line: [pipe: {length: 0.5 in}]"),
            "fail: The line has no pipe whose length is at least 1 in.");
  EXPECT_EQ(told("some pipe in line has pipe.length >= bores[k-copper].bore", "line: [meter]"),
            "fail: The line has no pipe whose length is at least bores of pipe.");
}

TEST(Sentence, EveryBlamesTheElementThatBreaksItAndNoOther) {
  const std::string rule = "every pipe in line where pipe.material is k-copper has pipe.length >= 2 ft";
  EXPECT_EQ(told(rule, "line: [pipe: {material: k-copper, length: 3 ft}, pipe: {material: hdpe, length: 1 ft}]"),
            "pass: Every pipe in the line whose material is type K copper: the pipe's length is at least 2 ft.");
  EXPECT_EQ(told(rule, "line: [pipe: {material: hdpe, length: 1 ft}, pipe: {material: k-copper, length: 1.5 ft}]"),
            "fail: The pipe's length is 1.5 ft, below 2 ft.");
  EXPECT_EQ(told(rule, "line: [pipe: {length: 3 ft}, pipe: {material: k-copper}]"),
            "undecided: The pipe's length is not stated.");
}

TEST(Sentence, PapersAndConfirmations) {
  EXPECT_EQ(told("approved by building-official", "name: a"), "fail: No approval by the building official is on file.");
  EXPECT_EQ(told("approved by building-official", "papers: [approval: {for: tried, by: building-official}]"),
            "accepted: Met through a recorded approval: an approval by the building official is on file.");
  EXPECT_EQ(told("confirmed as drawing-12", "confirmed: {drawing-12: yes}"), "pass: Drawing 12 is confirmed.");
  EXPECT_EQ(told("confirmed as drawing-12", "confirmed: {drawing-12: no}"), "fail: Drawing 12 is not confirmed.");
  EXPECT_EQ(told("confirmed as drawing-12", "name: a"), "undecided: Nobody has confirmed drawing 12.");
}

TEST(Sentence, PapersThatRanOutOrDoNotSay) {
  const std::string rule = "approved by building-official";
  const auto paper = [&](const std::string& facts, const std::string& site = "checked-on: 2026-07-01\n") {
    return told(rule, site + "papers: [approval: {for: tried" + facts + "}]");
  };
  EXPECT_EQ(paper(", by: building official, until: 2026-06-30"),
            "fail: The approval by the building official (papers[1] approval) has run out.");
  EXPECT_EQ(paper(""), "undecided: Who gave the approval? Not stated.");
  EXPECT_EQ(paper(", by: unknown"), "undecided: Who gave the approval? Nobody knows.");
  EXPECT_EQ(paper(", by: building official, until: 2026-06-30", ""), "undecided: Day of the check is not stated.");
  EXPECT_EQ(paper(", by: building official, until: before 2026-12-01"),
            "undecided: The approval's last day is too coarse to compare with the day it is checked on.");
  EXPECT_EQ(told(rule, "papers: [more]"), "undecided: The papers are not written down to their end.");
}

TEST(Sentence, YesNoFactIsItsQuestionAnswered) {
  EXPECT_EQ(told("not pressure.running", "pressure: {running: yes}"), "fail: Was any water running? Yes.");
  EXPECT_EQ(told("not pressure.running", "pressure: {running: no}"), "pass: Was any water running? No.");
  EXPECT_EQ(told("not pressure.running", "name: a"), "undecided: Was any water running? Not stated.");
  EXPECT_EQ(told("not pressure.running and pressure.highest <= 80 psi", "pressure: {running: yes, highest: 90 psi}"),
            "fail: Was any water running? Yes. Highest static pressure is 90 psi, above 80 psi.");
}

TEST(Sentence, LimitsThatDoNotTell) {
  EXPECT_EQ(
      told("pressure.lowest >= limit.doubtful", "pressure: {lowest: 50 psi}"),
      "undecided: Least pressure is doubtful: two printings disagree; ask the authority having jurisdiction which "
      "value counts.");
  EXPECT_EQ(told("pressure.lowest >= limit.unread", "pressure: {lowest: 50 psi}"),
            "undecided: Most pressure is doubtful: a page is torn; ask City of Town which value counts.");
  EXPECT_EQ(
      told("    each: pipe in line\n    require: pipe.material is in limit.torn\n", "line: [pipe: {material: hdpe}]"),
      "undecided: Materials of the torn page is doubtful: a page is torn; ask City of Town which value counts.");
  EXPECT_EQ(told("pressure.lowest >= limit.nobody-knows", "pressure: {lowest: 50 psi}"),
            "undecided: Some pressure is not known; ask the authority having jurisdiction which value counts.");
  EXPECT_EQ(told("    each: preventer in line\n    require: preventer.height above floor >= limit.rise\n",
                 "line: [double-check: {height: 9 in above floor}]"),
            "undecided: Rise of a breaker has no value for a double check.");
  EXPECT_EQ(told("    each: pipe in line\n    require: pipe.length <= limit.span[pipe.material]\n",
                 "line: [pipe: {material: old, length: 9 ft}]"),
            "undecided: Longest pipe has no value for unmarked pipe.");
}

TEST(Sentence, AnUnknownCellBlamesTheTable) {
  const std::string rule = "pressure.lowest >= limit.by-units[house.units].least";
  EXPECT_EQ(told(rule, "pressure: {lowest: 50 psi}\nhouse: {units: 10}"),
            "pass: Lowest static pressure is 50 psi, at least 40 psi (pressure by units).");
  EXPECT_EQ(told(rule, "pressure: {lowest: 50 psi}\nhouse: {units: 100}"),
            "undecided: The table Pressure by units does not give the value for 100.");
  EXPECT_EQ(told(rule, "pressure: {lowest: 50 psi}\nhouse: {units: 7}"),
            "undecided: The table Pressure by units has no row for units 7: its rows go from 10 to 100.");
  EXPECT_EQ(told("pressure.lowest >= limit.by-units-doubtful[house.units].least",
                 "pressure: {lowest: 50 psi}\nhouse: {units: 10}"),
            "undecided: Pressure by units of the torn page is doubtful: a page is torn; ask City of Town which value "
            "counts.");
}

TEST(Sentence, ReferenceAcrossAnUnfinishedLine) {
  const std::string rule = "    each: wall in line\n    require: wall.pipe.size >= 1 in\n";
  EXPECT_EQ(told(rule, "line: [pipe: {size: 3/4\"}, wall]"), "fail: The pipe's size is 3/4\", below 1 in.");
  EXPECT_EQ(told(rule, "line: [pipe: {size: 3/4\"}, wall, more]"),
            "undecided: The pipe's size cannot be told while the line is not written down to its end.");
  const std::string before = "    each: pipe in line where pipe.new\n    require: pipe.before.size >= 1 in\n";
  EXPECT_EQ(told(before, "line: [pipe: {size: 3/4\", new: no}, pipe: {new: yes}]"),
            "fail: The size of the pipe before it is 3/4\", below 1 in.");
  EXPECT_EQ(told(before, "line: [pipe: {new: yes}, more]"),
            "undecided: The size of the pipe before it cannot be told while the line is not written down to its end.");
  EXPECT_EQ(told("    each: pipe in line where pipe.new\n    require: not pipe.before.new\n",
                 "line: [pipe: {new: yes}, more]"),
            "undecided: Whether the pipe before it is new in this job cannot be told while the line is not written "
            "down to its end.");
}

TEST(Sentence, WhatComesRightCannotBeToldOfAnUnfinishedLine) {
  EXPECT_EQ(told("some gauge in line has (some meter in line has gauge comes right after meter)",
                 "line: [meter: {}, gauge: {}, more]"),
            "undecided: The line is not written down to its end.");
}

}  // namespace
}  // namespace headgate::test
