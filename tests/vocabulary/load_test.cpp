#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "vocabulary/world.hpp"

namespace headgate {
namespace {

using test::load_vocabulary;
using testing::ElementsAre;
using vocabulary::Field;
using Kind = vocabulary::Type::Kind;

const std::string small = R"(format: vocabulary/1
stages: {entry: the water entry, wall: {title: the wall}}
stops: {hose-bibb: {title: at the hose bibb}}
roles: {building-official: {title: building official, spellings: [code official]}}
marks: {finished-grade: {title: finished grade, spellings: [grade]}}
choices:
  pipe-material:
    title: pipe material
    properties: {metal: yes-no, roughness: number, melts-at: temperature}
    members:
      k-copper: {title: type K copper, spellings: [K copper], metal: yes, roughness: 140}
      hdpe: {title: polyethylene, metal: no}
  housing: {members: [pit, indoors]}
groups: {valve: {title: valve}}
records:
  site:
    facts:
      stage: stage
      pressure: {type: record pressure}
      line: {type: list, of: [pipe, valve, branch], walk: yes}
      branches: {type: list, of: branch, named: yes}
      all-lines: {type: list, union: [line, branches.line]}
      papers: {type: list, of: [paper]}
      confirmed: answers
  pressure:
    facts:
      highest-static:
        type: pressure
        ask: What is the highest static pressure?
        hint: Read a gauge.
        plausible: 20 psi to 200 psi
        at: hose-bibb
        cost: measure
        never-negative: yes
kinds:
  pipe: {title: pipe, passive: yes, short: size, facts: {material: pipe-material, size: size, cover: {type: depth, mark: finished-grade}}}
  ball: {title: ball valve, groups: [valve], facts: {pipe: nearest pipe upstream}}
  gate: {groups: [valve]}
  branch: {defined-in: branches, facts: {line: {type: list, of: [pipe, valve], walk: yes}}}
  paper: {facts: {at: element}}
derived:
  pipe:
    bore: {type: length, title: inside diameter, is: pipe.size * 2}
    weight: pipe.size * 3
)";

const Field& field_of(const vocabulary::Vocabulary& v, std::string_view shape, std::string_view field) {
  const auto& s = v.shapes[*v.shape(shape)];
  return s.fields[*s.field(field)];
}

TEST(LoadVocabulary, ReadsEveryKindOfDeclaration) {
  const auto world = load_vocabulary({small});
  ASSERT_EQ(world.said(), "");
  const auto& v = world.vocabulary;
  EXPECT_EQ(v.shapes[0].name, "site");
  EXPECT_EQ(v.stages[1].title, "the wall");
  EXPECT_EQ(v.stage("wall"), 1U);
  EXPECT_EQ(v.stops[0].title, "at the hose bibb");
  EXPECT_EQ(v.role("Code  Official"), 0U);
  EXPECT_EQ(v.mark("grade"), v.mark("finished-grade"));
  EXPECT_EQ(v.group_titles.at("valve"), "valve");
  EXPECT_EQ(v.kinds("valve").count(), 2U);
  EXPECT_EQ(v.kinds("ball").count(), 1U);
  EXPECT_EQ(v.kinds("pressure").count(), 0U) << "a record is no kind";
}

TEST(LoadVocabulary, ReadsWhatIsSaidOfAThing) {
  const auto world = load_vocabulary(
      {"kinds: {wall: {facts: {dry: {type: yes-no, says: is dry}}}}\n"
       "choices: {soil: {properties: {loose: {type: yes-no, title: one that runs}, wet: yes-no}, members: [sand]}}\n"});
  const auto& wall = world.vocabulary.shapes[*world.vocabulary.shape("wall")];
  EXPECT_EQ(wall.fields[*wall.field("dry")].says, "is dry");
  const auto& soil = world.vocabulary.choices[*world.vocabulary.choice("soil")];
  EXPECT_EQ(soil.properties[0].title, "one that runs");
  EXPECT_EQ(soil.properties[1].title, "wet");
}

TEST(LoadVocabulary, ReadsWhatIsTriedForASize) {
  const auto world =
      load_vocabulary({"records: {site: {facts: {tests: {type: list, of: [pipe], on-file: yes}}}}\n"
                       "kinds: {pipe: {facts: {size: size, new: yes-no}}, meter: {facts: {size: size, new: yes-no}}}\n"
                       "sizing:\n"
                       "  pipe: {when: new, fact: size, sizes: dimensions}\n"
                       "  meter: {when: new, fact: size, sizes: capacity}\n"
                       "  topics: [size]\n"
                       "  where-it-differs: [pressure]\n"
                       "  left: pressure.left\n"});
  ASSERT_EQ(world.said(), "");
  EXPECT_TRUE(field_of(world.vocabulary, "site", "tests").on_file);
  const auto& sizing = *world.vocabulary.sizing;
  EXPECT_EQ(sizing.pipe.shape, *world.vocabulary.shape("pipe"));
  EXPECT_EQ(world.vocabulary.shapes[sizing.pipe.shape].fields[sizing.pipe.when].name, "new");
  EXPECT_EQ(sizing.meter.sizes, "capacity");
  EXPECT_THAT(sizing.topics, ElementsAre("size"));
  EXPECT_THAT(sizing.where_it_differs, ElementsAre("pressure"));
  EXPECT_EQ(sizing.left, "pressure.left");
}

TEST(LoadVocabulary, ReadsChoicesWithProperties) {
  const auto world = load_vocabulary({small});
  const auto& material = world.vocabulary.choices[*world.vocabulary.choice("pipe-material")];
  EXPECT_EQ(material.member("k COPPER"), material.member("k-copper"));
  ASSERT_EQ(material.members[0].properties.size(), 3U);
  EXPECT_EQ(material.members[0].properties[0].truth, quantity::Truth::yes);
  EXPECT_EQ(material.members[0].properties[1].number, quantity::exactly(140));
  EXPECT_EQ(material.members[1].properties[1].presence, vocabulary::Presence::unknown);
  EXPECT_EQ(material.properties[2].type.dimension, quantity::dimensions::temperature);
  const auto& housing = world.vocabulary.choices[*world.vocabulary.choice("housing")];
  EXPECT_EQ(housing.members[0].title, "pit");
}

TEST(LoadVocabulary, ReadsFacts) {
  const auto world = load_vocabulary({small});
  const Field& pressure = field_of(world.vocabulary, "pressure", "highest-static");
  EXPECT_EQ(pressure.title, "highest static");
  EXPECT_EQ(pressure.ask, "What is the highest static pressure?");
  EXPECT_EQ(pressure.stop, "hose-bibb");
  EXPECT_EQ(pressure.cost, vocabulary::Cost::measure);
  EXPECT_TRUE(pressure.never_negative);
  ASSERT_TRUE(pressure.plausible);
  EXPECT_NEAR(pressure.plausible->lo, 137895.1, 0.1);
  const Field& cover = field_of(world.vocabulary, "pipe", "cover");
  EXPECT_TRUE(cover.depth);
  EXPECT_EQ(cover.mark, 0);
  EXPECT_EQ(field_of(world.vocabulary, "site", "stage").type.kind, Kind::choice);
  EXPECT_EQ(field_of(world.vocabulary, "site", "confirmed").holds, Field::Holds::answers);
  EXPECT_EQ(field_of(world.vocabulary, "paper", "at").direction, vocabulary::Direction::stated);
}

TEST(LoadVocabulary, ReadsListsReferencesAndShortForms) {
  const auto world = load_vocabulary({small});
  const auto& v = world.vocabulary;
  EXPECT_TRUE(field_of(v, "site", "line").walk);
  EXPECT_EQ(field_of(v, "site", "line").type.shapes.count(), 4U);
  EXPECT_TRUE(field_of(v, "site", "papers").left_out_none);
  EXPECT_THAT(field_of(v, "site", "all-lines").union_of, ElementsAre("line", "branches.line"));
  EXPECT_EQ(field_of(v, "site", "all-lines").type.shapes.count(), 4U);
  const auto& pipe = v.shapes[*v.shape("pipe")];
  EXPECT_EQ(pipe.fields[pipe.short_field].name, "size");
  EXPECT_TRUE(pipe.passive);
  EXPECT_EQ(v.shapes[0].fields[v.shapes[*v.shape("branch")].defined_in].name, "branches");
  const Field& upstream = field_of(v, "ball", "pipe");
  EXPECT_EQ(upstream.holds, Field::Holds::reference);
  EXPECT_EQ(upstream.type.shapes, v.kinds("pipe"));
}

TEST(LoadVocabulary, WhatStandsInAWalkHasNeighbours) {
  const auto world = load_vocabulary({small});
  const auto& v = world.vocabulary;
  EXPECT_EQ(field_of(v, "pipe", "previous").direction, vocabulary::Direction::upstream);
  EXPECT_EQ(field_of(v, "branch", "next").direction, vocabulary::Direction::downstream);
  EXPECT_FALSE(v.shapes[*v.shape("paper")].field("previous"));
  EXPECT_NE(v.common_field(v.kinds("valve"), "previous"), nullptr);
  EXPECT_EQ(v.common_field(v.kinds("valve"), "pipe"), nullptr) << "a gate has none";
}

TEST(LoadVocabulary, KeepsFormulas) {
  const auto world = load_vocabulary({small});
  const Field& bore = field_of(world.vocabulary, "pipe", "bore");
  EXPECT_EQ(bore.holds, Field::Holds::derived);
  EXPECT_EQ(bore.formula->scalar, "pipe.size * 2");
  EXPECT_EQ(bore.title, "inside diameter");
  EXPECT_EQ(field_of(world.vocabulary, "pipe", "weight").type.kind, Kind::nothing);
}

TEST(LoadVocabulary, AGroupsFactsAreThoseOfEachOfItsKinds) {
  const auto world = load_vocabulary({R"(
format: vocabulary/1
groups: {all: {of: [near, tree]}, near: {title: neighbour, facts: {beside: {type: length, ask: "How far aside?"}}}}
records: {site: {facts: {line: {type: list, of: [near], walk: yes}}}}
kinds: {tree: {}, sewer: {groups: [near]}, gas: {groups: [near], facts: {beside: {type: length, ask: "How far from the gas pipe?"}}}}
)",
                                      "groups: {near: {facts: {crosses: yes-no}}}"});
  ASSERT_EQ(world.said(), "");
  const auto& v = world.vocabulary;
  EXPECT_EQ(field_of(v, "sewer", "beside").ask, "How far aside?");
  EXPECT_EQ(field_of(v, "gas", "beside").ask, "How far from the gas pipe?") << "its own word counts";
  EXPECT_EQ(field_of(v, "gas", "crosses").type.kind, Kind::truth) << "a later file gives a group more";
  EXPECT_EQ(v.group_titles.at("near"), "neighbour");
  EXPECT_EQ(v.kinds("all").count(), 3U);
}

TEST(LoadVocabulary, AGroupsMistakeIsSaidOnce) {
  const auto world = load_vocabulary({R"(
format: vocabulary/1
groups: {near: {facts: {beside: lenght}}}
records: {site: {facts: {name: text}}}
kinds: {sewer: {groups: [near]}, gas: {groups: [near]}}
)"});
  const std::string said = world.said();
  EXPECT_NE(said.find("lenght"), std::string::npos);
  EXPECT_EQ(said.find("error", said.find("error") + 1), std::string::npos) << said;
}

TEST(LoadVocabulary, LaterFilesAdd) {
  const auto world = load_vocabulary({small, R"(
choices: {housing: {members: {vault: {title: a vault}}}}
groups: {metered: metered things}
kinds: {pipe: {groups: [metered], facts: {utility: yes-no}}, meter: {groups: [metered]}}
derived: {pipe: {cover: pipe.size * 1}}
)"});
  ASSERT_EQ(world.said(), "");
  const auto& v = world.vocabulary;
  EXPECT_EQ(v.choices[*v.choice("housing")].members.size(), 3U);
  EXPECT_EQ(v.kinds("metered").count(), 2U);
  EXPECT_EQ(field_of(v, "pipe", "utility").type.kind, Kind::truth);
  EXPECT_EQ(field_of(v, "pipe", "cover").type.kind, Kind::level) << "a formula joins the fact that was declared";
  EXPECT_NE(field_of(v, "pipe", "cover").formula, nullptr);
}

struct WrongVocabulary {
  const char* text;
  const char* said;
};

class BadVocabulary : public testing::TestWithParam<WrongVocabulary> {};

TEST_P(BadVocabulary, IsSaid) {
  const std::string site = "format: vocabulary/1\nrecords: {site: {facts: {}}}\n";
  EXPECT_EQ(load_vocabulary({site + GetParam().text}).said(), GetParam().said);
}

INSTANTIATE_TEST_SUITE_P(
    Load, BadVocabulary,
    testing::Values(
        WrongVocabulary{"kind: {pipe: {}}",
                        "3:1 vocabulary-key: \"kind\" is not a key of a vocabulary file. (did you mean kinds?)\n"},
        WrongVocabulary{"kinds: {pipe: {facts: {pressure: presure}}}",
                        "3:34 unknown-type: \"presure\" is not a type. (did you mean pressure?)\n"},
        WrongVocabulary{
            "kinds: {pipe: {facts: {size: {typ: size}}}}",
            "3:24 fact-without-type: The fact \"size\" has no type. (write: type: yes-no, or whatever it is)\n"},
        WrongVocabulary{"kinds: {pipe: {facts: {size: {type: size, aks: Which}}}}",
                        "3:43 vocabulary-key: \"aks\" is not a key of a fact. (did you mean ask?)\n"},
        WrongVocabulary{
            "kinds: {Pipe: {}}",
            "3:9 bad-name: \"Pipe\" cannot be a name. (lower case letters, digits and single hyphens, beginning with a "
            "letter)\n"},
        WrongVocabulary{
            "kinds: {limit: {}}",
            "3:9 grammar-word-name: \"limit\" is a word of the expressions and cannot be a name. (choose another)\n"},
        WrongVocabulary{
            "kinds: {pipe: {}}\ngroups: {pipe: {title: pipes}}",
            "3:9 declared-twice: \"pipe\" is declared twice. (keep one of the two, or give one another name) [4:10: "
            "declared here before]\n"},
        WrongVocabulary{
            "kinds: {site: {}}",
            "3:9 declared-twice: \"site\" is declared twice. (keep one of the two, or give one another name) [2:11: "
            "declared here before]\n"},
        WrongVocabulary{"kinds: {pipe: {groups: [valves]}}\ngroups: {valve: valve}",
                        "3:25 no-such-group: There is no group \"valves\". (did you mean valve?)\n"},
        WrongVocabulary{"kinds: {pipe: {short: sise, facts: {size: size}}}",
                        "3:23 short-no-fact: \"sise\" is not a fact of pipe. (did you mean size?)\n"},
        WrongVocabulary{"kinds: {pipe: {short: near, facts: {near: {type: list, of: [pipe]}}}}",
                        "3:23 short-not-scalar: \"near\" cannot be a short form, because it is not one value.\n"},
        WrongVocabulary{"kinds: {wall: {facts: {pipe: nearest pip upstream}}, pipe: {}}",
                        "3:30 no-such-kind: There is no kind or group \"pip\". (did you mean pipe?)\n"},
        WrongVocabulary{
            "kinds: {wall: {facts: {pipe: nearest pipe up}}, pipe: {}}",
            "3:30 nearest-direction: \"up\" is no direction to look in. (write: nearest pipe upstream, or: nearest "
            "pipe "
            "downstream)\n"},
        WrongVocabulary{"kinds: {wall: {facts: {sleeve: record sitte}}}",
                        "3:32 no-such-record: There is no record \"sitte\". (did you mean site?)\n"},
        WrongVocabulary{
            "kinds: {wall: {facts: {near: list}}}",
            "3:24 list-of-nothing: The list \"near\" says what stands in it, by `of` or by `union`. (write: of: [pipe, "
            "valve], or for a computed list: union: [line, branches.line])\n"},
        WrongVocabulary{"kinds: {wall: {facts: {near: {type: list, of: [walls]}}}}",
                        "3:48 no-such-kind: There is no kind or group \"walls\". (did you mean wall?)\n"},
        WrongVocabulary{
            "kinds: {wall: {facts: {near: {type: list, union: [line]}}}}",
            "3:24 union-no-list: \"line\" is not a list that \"near\" could join. (name stated lists, as in "
            "branches.line)\n"},
        WrongVocabulary{"kinds: {wall: {facts: {thick: {type: length, of: [wall]}}}}",
                        "3:46 fact-key-misplaced: \"of\" belongs to a list only.\n"},
        WrongVocabulary{"kinds: {wall: {facts: {thick: {type: length, on-file: yes}}}}",
                        "3:46 fact-key-misplaced: \"on-file\" belongs to a list only.\n"},
        WrongVocabulary{"kinds: {pipe: {facts: {size: size}}, meter: {facts: {size: size, new: yes-no}}}\n"
                        "sizing: {pipe: {when: size, fact: sise, sizes: a}, meter: {when: new, fact: size, sizes: b}}",
                        "4:35 unknown-fact: \"sise\" is not a fact of pipe. (did you mean size?)\n"},
        WrongVocabulary{"kinds: {pipe: {facts: {size: size}}}\n"
                        "sizing: {pipe: {when: size, fact: size, sizes: a}}",
                        "4:9 no-such-shape: There is no kind or record \"meter\". (did you mean one of site, pipe?)\n"},
        WrongVocabulary{"kinds: {wall: {facts: {thick: {type: length, says: is thick}}}}",
                        "3:46 fact-key-misplaced: \"says\" belongs to a yes or no only.\n"},
        WrongVocabulary{
            "choices: {soil: {properties: {loose: {type: yes-no, ask: what}}, members: [sand]}}",
            "3:53 vocabulary-key: \"ask\" is not a key of a property. (did you mean one of type, title?)\n"},
        WrongVocabulary{"kinds: {wall: {facts: {thick: {type: length, mark: grade}}}}",
                        "3:46 fact-key-misplaced: \"mark\" belongs to a depth or height only.\n"},
        WrongVocabulary{"kinds: {wall: {facts: {floor: {type: height, mark: grad}}}}\nmarks: {grade: grade}",
                        "3:52 unknown-mark: \"grad\" is not a mark to measure from. (did you mean grade?)\n"},
        WrongVocabulary{
            "kinds: {wall: {facts: {thick: {type: length, plausible: 4 in}}}}",
            "3:57 plausible-form: A plausible range is written from the lower to the higher value. (write: 20 psi to "
            "200 "
            "psi)\n"},
        WrongVocabulary{
            "kinds: {wall: {facts: {thick: {type: length, plausible: 4 in to 8 psi}}}}",
            "3:65 wrong-dimension: \"8 psi\" is pressure, where length is asked for. (use a unit of length, such as "
            "in)\n"},
        WrongVocabulary{"kinds: {wall: {facts: {thick: {type: length, at: truk}}}}\nstops: {truck: truck}",
                        "3:50 no-such-stop: There is no stop \"truk\". (did you mean truck?)\n"},
        WrongVocabulary{
            "kinds: {wall: {facts: {thick: {type: length, cost: hard}}}}",
            "3:52 unknown-cost: \"hard\" is not an effort. (did you mean one of know, look, measure, dig?)\n"},
        WrongVocabulary{"kinds: {wall: {passive: maybe}}", "3:25 vocabulary-flag: \"passive\" is yes or no.\n"},
        WrongVocabulary{
            "kinds: {wall: {facts: {next: yes-no}}}\nrecords2: {}",
            "4:1 vocabulary-key: \"records2\" is not a key of a vocabulary file. (did you mean records?)\n"},
        WrongVocabulary{
            "choices: {pressure: {members: [a]}}",
            "3:11 choice-name-taken: \"pressure\" already is a type, so no choice may be called so. (choose another "
            "name)\n"},
        WrongVocabulary{
            "choices: {soil: {members: {clay: {title: clay, spellings: [mud]}, silt: {title: silt, spellings: "
            "[Mud]}}}}",
            "3:99 spelling-clash: \"Mud\" would stand for both silt and clay. (a spelling belongs to one of them)\n"},
        WrongVocabulary{"choices: {soil: {properties: {wet: yes-no}, members: {clay: {wet: perhaps}}}}",
                        "3:67 not-yes-or-no: \"perhaps\" is neither yes nor no.\n"},
        WrongVocabulary{
            "choices: {soil: {properties: {wet: depth}, members: [clay]}}",
            "3:36 property-type: A property of a choice cannot be what \"wet\" is. (use a quantity, number, yes-no, "
            "text, "
            "date or another choice)\n"},
        WrongVocabulary{
            "choices: {soil: {members: [none, clay]}}",
            "3:28 grammar-word-name: \"none\" is a word of the expressions and cannot be a name. (choose another)\n"},
        WrongVocabulary{"derived: {pip: {bore: pipe.size}}\nkinds: {pipe: {}}",
                        "3:11 no-such-shape: There is no kind or record \"pip\". (did you mean pipe?)\n"},
        WrongVocabulary{
            "derived: {pipe: {bore: {type: length}}}\nkinds: {pipe: {}}",
            "3:18 derived-without-formula: The derived value \"bore\" has no formula. (write it under: is)\n"},
        WrongVocabulary{"kinds: {branch: {defined-in: branches}}",
                        "3:30 defined-in-list: \"branches\" is not a named list of the site that holds branch.\n"}));

TEST(LoadVocabulary, ClashesShowBothFiles) {
  const auto world = load_vocabulary({small, R"(format: vocabulary/1
kinds: {pipe: {title: tube, facts: {size: length}}}
marks: {finished-grade: grade}
)"});
  EXPECT_EQ(
      world.said(),
      "more-1.yaml:2:23 declared-twice: \"title of pipe\" is declared twice. (keep one of the two, or give one "
      "another name) [36:17: declared here before]\n"
      "more-1.yaml:2:37 declared-twice: \"size\" is declared twice. (keep one of the two, or give one another name) "
      "[36:83: declared here before]\n"
      "more-1.yaml:3:9 declared-twice: \"finished-grade\" is declared twice. (keep one of the two, or give one "
      "another name) [5:9: declared here before]\n");
}

TEST(LoadVocabulary, ARecordInsideItselfIsRefused) {
  const auto world = load_vocabulary({R"(format: vocabulary/1
records:
  site: {facts: {a: record sleeve}}
  sleeve: {facts: {b: record seal}}
  seal: {facts: {c: record sleeve}}
)"});
  EXPECT_EQ(world.said(), "5:18 record-in-itself: The record sleeve stands inside itself, without end. (use a list)\n");
}

TEST(LoadVocabulary, BuiltInNeighboursCannotBeDeclared) {
  const auto world = load_vocabulary({R"(format: vocabulary/1
records: {site: {facts: {line: {type: list, of: [pipe], walk: yes}}}}
kinds: {pipe: {facts: {next: yes-no}}}
)"});
  EXPECT_EQ(world.said(),
            "3:24 built-in-fact: \"next\" is built in for everything that stands in a walk, pipe too. (choose another "
            "name)\n");
}

TEST(LoadVocabulary, WithoutTheRootRecord) {
  EXPECT_EQ(load_vocabulary({"format: vocabulary/2\nkinds: {pipe: {}}\n"}).said(),
            "1:1 no-site-record: No vocabulary file declares the record site, which a site file begins with. (write: "
            "records: {site: {facts: …}})\n"
            "1:9 vocabulary-format: A vocabulary file of format \"vocabulary/2\" cannot be read. (write: format: "
            "vocabulary/1)\n");
}

TEST(LoadVocabulary, CapsAreSaid) {
  std::string members, kinds;
  for (int i = 0; i < 65; ++i) members += std::string(i ? ", " : "") + "m" + std::to_string(i);
  for (int i = 0; i < 256; ++i) kinds += "  k" + std::to_string(i) + ": {}\n";
  const auto world = load_vocabulary(
      {"format: vocabulary/1\nrecords: {site: {}}\nchoices: {much: {members: [" + members + "]}}\nkinds:\n" + kinds});
  EXPECT_EQ(world.said(),
            "3:338 too-many-members: The choice much has more than 64 members. (split it into two facts)\n"
            "260:3 too-many-shapes: There are more than 256 kinds and records. (join some kinds into one with a "
            "choice)\n");
}

}  // namespace
}  // namespace headgate
