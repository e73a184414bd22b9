#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "site/world.hpp"

namespace headgate {
namespace {

using test::load_site;
using vocabulary::Presence;

const std::string walk = R"(format: site/1
name: Halyard Street 212
place: fennick-ferry
stage: entry
describes: built                  # or: plan
permit-applied-on: 2026-09-14
checked-on: 2026-10-02

house: {kind: one-family, full-baths: 2, kitchens: 1, laundries: 1, hose-bibbs: 2}
pressure: {highest-static: 86 psi +/- 2 psi}
old-line: {material: polybutylene, size: 3/4"}

line:                             # in the order the water meets them
  - pipe: {material: k-copper, size: 3/4", length: 24', utility: yes}
  - meter: {size: 3/4", housed: pit, one-way: yes}
  - pipe: {material: hdpe, size: 1", length: 46', least-cover: 40", laid: pulled through old pipe, near: [sewer: {beside: 7'}]}
  - wall: {material: fieldstone, hole: cored, sleeve: 1-1/2", sealed: both faces}
  - pipe: {material: l-copper, size: 1", length: 20"}
  - shutoff: {type: ball, size: 1"}
  - strainer
  - pressure-reducer: {set-to: 55 psi}
  - branch: lawn
  - more                          # not looked at yet

branches:
  lawn: {feeds: sprinklers, injects-chemicals: no, line: [pressure-vacuum-breaker: {height: 22" above ground-at-house}]}

papers:
  - approval: {for: trenchless-service, by: water-superintendent, dated: 2026-09-02, number: FF-W-0311}
)";

TEST(LoadSite, TheWalkOfTheLanguagePageLoads) {
  auto world = load_site(walk);
  ASSERT_EQ(world.said(), "");
  EXPECT_EQ(world.at("stage"), "the water entry");
  EXPECT_EQ(world.at("pressure.highest-static"), "84 psi to 88 psi");
  EXPECT_EQ(world.at("line[3].laid"), "pulled through old pipe");
  EXPECT_EQ(world.at("line[3].least-cover"), "40 in below finished grade");
  EXPECT_EQ(world.at("line[3].near[1].beside"), "7 ft");
  EXPECT_EQ(world.at("line.wall.sleeve"), "line[4].sleeve");
  EXPECT_EQ(world.at("line.wall.sleeve.size"), "1-1/2 in");
  EXPECT_EQ(world.at("branches.lawn.line[1].height"), "22 in above ground at the house");
  EXPECT_EQ(world.at("papers[1].by"), "water superintendent");
  EXPECT_EQ(world.at("house.hose-bibbs"), "2");
}

TEST(LoadSite, WarnsOfAPaperByNobodyKnown) {
  const auto said = [](const std::string& by) {
    return load_site("format: site/1\npapers: [order: {by: " + by + "}]\n").said();
  };
  EXPECT_EQ(said("water superintendant"),
            "site.yaml:2:22 paper-by-nobody: \"water superintendant\" is nobody's role here, so this order counts for "
            "nothing. (did you mean water superintendent?)\n");
  EXPECT_EQ(said("the mayor"),
            "site.yaml:2:22 paper-by-nobody: \"the mayor\" is nobody's role here, so this order counts for nothing.\n");
  EXPECT_EQ(said("Water Superintendent"), "");
  EXPECT_EQ(said("unknown"), "");
  EXPECT_EQ(said("none"), "");
}

TEST(LoadSite, SlotsKeepHowTheyWereWritten) {
  auto world = load_site(walk);
  const auto& slot = world.slot("pressure.highest-static");
  EXPECT_EQ(slot.written, "86 psi +/- 2 psi");
  EXPECT_EQ(world.sources.place(slot.range), "site.yaml:10:28");
  EXPECT_EQ(slot.origin, site::Origin::stated);
  EXPECT_EQ(world.slot("line.meter.housed").value.presence, Presence::present);
}

TEST(LoadSite, WhatIsLeftOutIsUnknownAndHasItsPlace) {
  auto world = load_site("format: site/1\n");
  ASSERT_EQ(world.said(), "");
  EXPECT_EQ(world.slot("pressure.highest-static").origin, site::Origin::left_out);
  EXPECT_EQ(world.at("pressure.highest-static"), "unknown");
  EXPECT_FALSE(world.list("line").stated);
  EXPECT_FALSE(world.list("line").complete);
  EXPECT_TRUE(world.list("papers").complete) << "none on file";
  EXPECT_EQ(world.slot("papers").value.presence, Presence::none);
}

TEST(LoadSite, NoneUnknownAndMore) {
  auto world = load_site(R"(format: site/1
pressure: {highest-static: unknown}
old-line: none
branches: none
tests: unknown
papers: [permit: {number: unknown}, more]
line:
  - wall: {sleeve: none}
  - pipe: unknown
)");
  ASSERT_EQ(world.said(), "");
  EXPECT_TRUE(world.slot("pressure.highest-static").asked_not);
  EXPECT_EQ(world.slot("old-line").value.presence, Presence::none);
  EXPECT_EQ(world.slot("branches").value.presence, Presence::none);
  EXPECT_TRUE(world.list("branches").complete);
  EXPECT_FALSE(world.list("tests").complete);
  EXPECT_TRUE(world.slot("tests").asked_not);
  EXPECT_FALSE(world.list("papers").complete);
  EXPECT_EQ(world.sources.place(world.list("papers").range), "site.yaml:6:37");
  EXPECT_TRUE(world.list("line").complete);
  EXPECT_EQ(world.list("line").items.size(), 2U);
  EXPECT_EQ(world.at("line[1].sleeve"), "none");
}

TEST(LoadSite, MoreMayLeaveOutKinds) {
  auto world =
      load_site("format: site/1\nline: [gauge, more: {except: [gauge, valve]}]\npapers: [more: {only: permit}]\n");
  ASSERT_EQ(world.said(), "");
  const auto& v = world.vocabulary;
  EXPECT_FALSE(world.list("line").complete);
  EXPECT_TRUE(world.list("line").complete_for(v.kinds("gauge") | v.kinds("shutoff")));
  EXPECT_FALSE(world.list("line").complete_for(v.kinds("pipe")));
  EXPECT_TRUE(world.list("papers").complete_for(v.kinds("approval")));
  EXPECT_FALSE(world.list("papers").complete_for(v.kinds("paper")));
}

TEST(LoadSite, ValuesInFull) {
  auto world = load_site(R"(format: site/1
pressure: {highest-static: {value: 86 psi, good-to: 2 psi, how: "bibb gauge, 07:10"}}
old-line: {size: {value: 3/4", how: assumed}}
line:
  - gauge: {value: 55 psi, how: photo 3}
  - pipe: {least-cover: {value: [40 in, 38 in below ground-at-house], good-to: 1 in}}
  - pipe: {length: {value: 44 in, good-to: 1/2 in}}
)");
  ASSERT_EQ(world.said(), "");
  EXPECT_EQ(world.at("pressure.highest-static"), "84 psi to 88 psi");
  EXPECT_EQ(world.slot("pressure.highest-static").written, "86 psi +/- 2 psi");
  EXPECT_EQ(world.slot("pressure.highest-static").how, "bibb gauge, 07:10");
  EXPECT_TRUE(world.slot("old-line.size").assumed);
  EXPECT_EQ(world.slot("line.gauge.reads").how, "photo 3");
  EXPECT_EQ(world.at("line[2].least-cover"),
            "39 in to 41 in below finished grade, 37 in to 39 in below ground at the house");
  EXPECT_EQ(world.at("line[3].length"), "43.5 in to 44.5 in");
}

TEST(LoadSite, ListsOfOneKindOmitIt) {
  auto world = load_site(R"(format: site/1
tests: [{kind: backflow-test, passed: yes}, pressure-test, test: {passed: no}]
line: [pipe: {near: [7']}]
)");
  ASSERT_EQ(world.said(), "");
  EXPECT_EQ(world.at("tests[1].kind"), "backflow-test");
  EXPECT_EQ(world.at("tests[2].kind"), "pressure-test");
  EXPECT_EQ(world.at("tests[3].passed"), "no");
  EXPECT_EQ(world.at("line.pipe.near[1].beside"), "7 ft");
}

TEST(LoadSite, Answers) {
  auto world =
      load_site("format: site/1\nconfirmed: {drawing-12: yes, as-listed: {value: no, how: letter}, other: unknown}\n");
  ASSERT_EQ(world.said(), "");
  EXPECT_EQ(world.site.confirmed.at("drawing-12").value.truth, quantity::Truth::yes);
  EXPECT_EQ(world.site.confirmed.at("as-listed").how, "letter");
  EXPECT_TRUE(world.site.confirmed.at("other").asked_not);
}

TEST(LoadSite, ABranchInTheLineIsTheOneDefined) {
  auto world = load_site(walk);
  const auto line = world.list("line");
  const auto branches = world.list("branches");
  ASSERT_EQ(branches.items.size(), 1U);
  EXPECT_EQ(line.items[8], branches.items[0]);
  const auto& branch = world.site.elements[branches.items[0]];
  EXPECT_EQ(branch.walk, world.slot("line").value.id);
  EXPECT_EQ(branch.place, 9U);
  EXPECT_EQ(branch.number, 1U);
}

TEST(LoadSite, ABranchNobodyDescribedIsThere) {
  auto world = load_site("format: site/1\nline: [branch: lawn]\n");
  ASSERT_EQ(world.said(), "");
  EXPECT_EQ(world.at("branches.lawn.feeds"), "unknown");
  EXPECT_FALSE(world.list("branches").complete);
  auto unfinished = load_site("format: site/1\nline: [branch: lawn]\nbranches: {pool: {feeds: pool}, more: yes}\n");
  EXPECT_EQ(unfinished.said(), "");
  EXPECT_EQ(unfinished.list("branches").items.size(), 2U);
}

TEST(LoadSite, UnionsAreCompleteWhenAllPartsAre) {
  auto world = load_site("format: site/1\nline: [pipe, branch: lawn]\nbranches: {lawn: {line: [shutoff, pipe]}}\n");
  EXPECT_EQ(world.list("all-lines").items.size(), 4U);
  EXPECT_TRUE(world.list("all-lines").complete);
  auto open_branch =
      load_site("format: site/1\nline: [pipe, branch: lawn]\nbranches: {lawn: {line: [shutoff, more]}}\n");
  EXPECT_FALSE(open_branch.list("all-lines").complete);
  auto open_trunk = load_site("format: site/1\nline: [pipe, more: {except: [gauge]}]\nbranches: none\n");
  EXPECT_FALSE(open_trunk.list("all-lines").complete);
  EXPECT_TRUE(open_trunk.list("all-lines").complete_for(open_trunk.vocabulary.kinds("gauge")));
  auto nobody_looked = load_site("format: site/1\nline: [pipe]\n");
  EXPECT_FALSE(nobody_looked.list("all-lines").complete);
}

struct WrongSite {
  const char* text;
  const char* said;
};

class BadSite : public testing::TestWithParam<WrongSite> {};

TEST_P(BadSite, IsSaid) {
  std::string said = load_site(std::string("format: site/1\n") + GetParam().text).said();
  for (std::size_t at; (at = said.find("site.yaml:")) != std::string::npos;) said.erase(at, 10);
  EXPECT_EQ(said, GetParam().said);
}

INSTANTIATE_TEST_SUITE_P(
    LoadSite, BadSite,
    testing::Values(
        WrongSite{"line: [pipe: {set-to: 55 psi}]",
                  "2:15 unknown-fact: \"set-to\" is not a fact of pipe. (did you mean one of material, size, length, "
                  "utility, "
                  "least-cover, laid, near, bore, weight, previous, next?)\n"},
        WrongSite{"pressure: {higest-static: 86 psi}",
                  "2:12 unknown-fact: \"higest-static\" is not a fact of pressure. (did you mean highest-static?)\n"},
        WrongSite{"lines: none", "2:1 unknown-fact: \"lines\" is not a fact of site. (did you mean line?)\n"},
        WrongSite{"pressure: 86 psi",
                  "2:11 no-short-form: \"86 psi\" does not say which fact of pressure it is. (write the "
                  "fact, a colon and the value)\n"},
        WrongSite{"pressure: [86 psi]",
                  "2:11 facts-expected: The facts of pressure are keys and values. (write: {fact: value, "
                  "…})\n"},
        WrongSite{"pressure: {highest-static: 86 psy}",
                  "2:31 unknown-unit: \"psy\" is not a unit. (did you mean psi?)\n"},
        WrongSite{
            "pressure: {highest-static: 860 psi}",
            "2:28 implausible-value: \"860 psi\" is unusual for highest static. (usual is 20 psi to 200 psi; check the "
            "number and its unit)\n"},
        WrongSite{"pressure: {highest-static: {vale: 86 psi}}",
                  "2:29 full-form-key: \"vale\" is not part of a value written in full. (did you mean value?)\n"},
        WrongSite{"pressure: {highest-static: {good-to: 2 psi}}",
                  "2:28 full-form-value: The value itself is missing. (write: {value: …, good-to: …, how: …})\n"},
        WrongSite{
            "pressure: {highest-static: {value: 86 psi, good-to: 2 ft}}",
            "2:53 wrong-dimension: \"2 ft\" is length, where pressure is asked for. (use a unit of pressure, such as "
            "psi)\n"},
        WrongSite{"pressure: {highest-static: {value: 86 psi, how: [gauge]}}",
                  "2:49 how-text: How a value was found is one line of text.\n"},
        WrongSite{"stage: {value: entry, good-to: 2 psi}",
                  "2:32 good-to-measured: Only a quantity, number, depth or height is good to so much.\n"},
        WrongSite{"house: {kind: onefamily}",
                  "2:15 unknown-member: \"onefamily\" is no house kind. (did you mean one-family?)\n"},
        WrongSite{"line: [meter: {one-way: Yes}]", "2:25 not-yes-or-no: \"Yes\" is neither yes nor no. (write yes)\n"},
        WrongSite{
            "line: {pipe: 1\"}",
            "2:7 list-expected: \"line\" is a list. (begin each item on a line of its own with - , or write none)\n"},
        WrongSite{"branches: [lawn]",
                  "2:11 named-list-expected: \"branches\" is written as names, each with its facts. (write: "
                  "branches: {a-name: {fact: value}}, or none)\n"},
        WrongSite{"all-lines: [pipe]",
                  "2:1 computed-list: \"all-lines\" cannot be written; it is made of line, branches.line. "
                  "(write it there)\n"},
        WrongSite{"line: [pip: 1\"]",
                  "2:8 unknown-kind: \"pip\" is nothing that stands in line. (did you mean pipe?)\n"},
        WrongSite{"line: [valve]",
                  "2:8 group-for-kind: \"valve\" is a group of kinds. (say which one it is: shutoff, "
                  "drain-cock)\n"},
        WrongSite{
            "line: [chimney: 7']",
            "2:8 unknown-kind: \"chimney\" is nothing that stands in line. (did you mean one of pipe, meter, wall, "
            "shutoff, "
            "drain-cock, strainer, gauge, pressure-reducer, pressure-vacuum-breaker, branch?)\n"},
        WrongSite{
            "line:\n  - pipe: 3/4\"\n    length: 24'",
            "4:5 facts-beside-kind: \"length\" stands beside pipe instead of below it. (indent it deeper than pipe, or "
            "write its facts in braces)\n"},
        WrongSite{"line: [more, pipe]",
                  "2:8 more-not-last: Only at its end can a list say that it is not finished. (move - more "
                  "to the end)\n"},
        WrongSite{"line: [more: {except: [gage]}]",
                  "2:24 unknown-kind: \"gage\" is nothing that stands in line. (did you mean gauge?)\n"},
        WrongSite{"line: [more: gauge]",
                  "2:14 more-form: This does not say what there may be more of. (write: more, or: more: "
                  "{except: [gauge]}, or: more: {only: [gauge]})\n"},
        WrongSite{"line: [none]",
                  "2:8 none-in-list: \"none\" cannot stand in the list line. (leave out what is not there; a list "
                  "that is not finished ends with - more)\n"},
        WrongSite{"line: [gauge: none]",
                  "2:15 none-in-list: \"none\" cannot stand in the list line. (leave out what is not "
                  "there; a list that is not finished ends with - more)\n"},
        WrongSite{"line: [[pipe]]",
                  "2:8 list-in-list: A list stands where one thing should. (remove one of the two dashes)\n"},
        WrongSite{"line: [strainer: yes]",
                  "2:18 no-short-form: \"yes\" does not say which fact of strainer it is. (write the "
                  "fact, a colon and the value)\n"},
        WrongSite{"line: [branch: {feeds: lawn}]",
                  "2:16 branch-name: In a walk branch has only its name. (write: branch: a-name, and its facts under "
                  "branches)\n"},
        WrongSite{"line: [branch]",
                  "2:8 branch-name: In a walk branch has only its name. (write: branch: a-name, and its facts "
                  "under branches)\n"},
        WrongSite{"line: [branch: lown]\nbranches: {lawn: {feeds: lawn}}",
                  "2:16 undefined-branch: \"lown\" is not among branches. (did you mean lawn?) [3:1: the list is "
                  "complete]\n"},
        WrongSite{"line: [branch: lawn]\nbranches: none",
                  "2:16 undefined-branch: \"lawn\" is not among branches. [3:1: the list is complete]\n"},
        WrongSite{
            "line: [branch: lawn, branch: lawn]",
            "2:30 branch-twice: \"lawn\" leaves the line in two places. (give the second one a name of its own) [2:16: "
            "it "
            "leaves here before]\n"},
        WrongSite{"branches: {lawn: {line: [branch: lawn]}}",
                  "2:12 branch-loop: \"lawn\" leaves from itself. (name it in the line it leaves from)\n"},
        WrongSite{"branches: {Lawn: {feeds: lawn}}",
                  "2:12 bad-name: \"Lawn\" cannot be a name. (lower case letters, digits and "
                  "single hyphens, beginning with a letter)\n"},
        WrongSite{"line: [pipe, wall: {pipe: \"line[3]\"}]",
                  "2:28 no-such-number: \"line\" holds 2 things. (count from 1 in written "
                  "order)\n"},
        WrongSite{"line: [meter, wall: {pipe: \"line[1]\"}]",
                  "2:29 reference-kind: \"line[1]\" cannot be pipe. (name one of these: pipe)\n"},
        WrongSite{
            "line: [wall: {pipe: the first}]",
            "2:21 address-form: \"the first\" is not the address of a fact. (write it as in pressure.highest-static, "
            "line[3].size or line.meter.size)\n"},
        WrongSite{"line: [pipe, pipe, wall: {pipe: line.pipe}]",
                  "2:38 several-of-kind: There is more than one pipe in line. (say which: line[1], line[2])\n"},
        WrongSite{"line: [pipe: {weight: 3 lb}]",
                  "2:23 fact-untyped: weight is computed, and its formula could not be read.\n"},
        WrongSite{"confirmed: yes",
                  "2:12 answers-form: Answers are names with yes or no. (write: {drawing-12: yes})\n"},
        WrongSite{"confirmed: {drawing-12: Ja}", "2:25 not-yes-or-no: \"Ja\" is neither yes nor no.\n"}));

TEST(LoadSite, FormatIsAsked) {
  EXPECT_EQ(load_site("name: x\n").said(),
            "site.yaml:1:1 site-format-missing: The file does not say that it describes a site. (begin with: format: "
            "site/1)\n");
  EXPECT_EQ(load_site("format: place/1\n").said(),
            "site.yaml:1:9 site-format: A site file of format \"place/1\" cannot be read. (write: format: site/1)\n");
}

}  // namespace
}  // namespace headgate
