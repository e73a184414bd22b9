#include <gtest/gtest.h>

#include "site/world.hpp"

namespace headgate {
namespace {

using vocabulary::Presence;

// A site with settings applied one after another, each written `address=value`; a value in braces is a map.
test::SiteWorld with(const std::string& site, const std::vector<std::string>& settings) {
  test::SiteWorld world;
  world.vocabulary = vocabulary::load({world.read("vocabulary.yaml", test::site_vocabulary)}, world.found);
  world.read("site.yaml", "format: site/1\n" + site);
  document::Node& tree = world.trees.back();
  for (const std::string& text : settings) {
    const auto file = world.sources.add("--set", text);
    auto setting = site::read_setting(text, {file, 0, static_cast<std::uint32_t>(text.size())}, world.found);
    if (!setting) continue;
    if (setting->value.scalar.front() == '{') {
      auto map = document::read(world.sources, world.sources.add("map", setting->value.scalar), {}, world.found);
      setting->value = *map;
    }
    site::set(tree, setting->address, setting->address_range, setting->value, world.vocabulary, world.found);
  }
  world.site = site::load(tree, world.vocabulary, world.found);
  return world;
}

TEST(Set, AFactOfARecordThereOrNot) {
  EXPECT_EQ(with("house: {kitchens: 1}", {"house.kitchens=2"}).at("house.kitchens"), "2");
  EXPECT_EQ(with("house: {kitchens: 1}", {"house.hose-bibbs=2"}).at("house.hose-bibbs"), "2");
  EXPECT_EQ(with("name: x", {"house.hose-bibbs=2"}).at("house.hose-bibbs"), "2");
  EXPECT_EQ(with("house: none", {"house.hose-bibbs=2"}).at("house.hose-bibbs"), "2");
  EXPECT_EQ(with("name: x", {"site.stage=entry"}).at("stage"), "the water entry");
  EXPECT_EQ(with("name: x", {"house=none"}).at("house"), "none");
}

TEST(Set, AValueInFull) {
  auto world = with("name: x", {"pressure.highest-static={value: 86 psi, good-to: 2 psi}"});
  EXPECT_EQ(world.at("pressure.highest-static"), "84 psi to 88 psi");
}

TEST(Set, KeepsWhatStandsBeside) {
  auto world = with("line: [pipe: 3/4\", wall: {sleeve: 2\"}, gauge: {value: 55 psi, how: photo}]",
                    {"line.pipe.length=24'", "line[2].sleeve.material=hdpe", "line.gauge.reads=60 psi"});
  ASSERT_EQ(world.said(), "");
  EXPECT_EQ(world.at("line[1].size"), "3/4 in") << "the short form became the fact it stated";
  EXPECT_EQ(world.at("line[1].length"), "24 ft");
  EXPECT_EQ(world.at("line[2].sleeve.size"), "2 in");
  EXPECT_EQ(world.at("line[2].sleeve.material"), "hdpe");
  EXPECT_EQ(world.at("line[3].reads"), "60 psi");
}

TEST(Set, FactsOfABareElement) {
  EXPECT_EQ(with("line: [meter]", {"line.meter.size=1\""}).at("line[1].size"), "1 in");
  EXPECT_EQ(with("line: [wall]", {"line[1].sleeve=none"}).at("line[1].sleeve"), "none");
}

TEST(Unset, LeavesTheFactOutAndKeepsWhatStandsBeside) {
  auto world = with("house: {kitchens: 1, hose-bibbs: 2}\nline: [pipe: {size: 3/4\", length: 24'}, gauge: 55 psi]", {});
  document::Node& tree = world.trees.back();
  for (const char* address : {"house.kitchens", "line[1].length", "line.gauge.reads", "pressure.highest-static"})
    site::unset(tree, address, {}, world.vocabulary, world.found);
  world.site = site::load(tree, world.vocabulary, world.found);
  ASSERT_EQ(world.said(), "");
  EXPECT_EQ(world.at("house.kitchens"), "unknown");
  EXPECT_EQ(world.at("house.hose-bibbs"), "2");
  EXPECT_EQ(world.at("line[1].length"), "unknown");
  EXPECT_EQ(world.at("line[1].size"), "3/4 in");
  EXPECT_EQ(world.at("line[2].reads"), "unknown");
}

TEST(Set, NoneRemovesEveryOneOfAKind) {
  auto world = with("line: [gauge: 60 psi, pipe, gauge]", {"line.gauge=none"});
  ASSERT_EQ(world.said(), "");
  EXPECT_EQ(world.list("line").items.size(), 1U);
  EXPECT_TRUE(world.list("line").complete);
}

TEST(Set, NoneClosesAnUnfinishedListForTheKind) {
  for (const std::string line :
       {"[gauge, pipe, more]", "[pipe, more: {only: [gauge, meter]}]", "[pipe, more: {except: [meter]}]", "unknown"}) {
    auto world = with("line: " + line, {"line.gauge=none"});
    ASSERT_EQ(world.said(), "") << line;
    EXPECT_TRUE(world.list("line").complete_for(world.vocabulary.kinds("gauge"))) << line;
    EXPECT_FALSE(world.list("line").complete) << line;
  }
  auto left_out = with("name: x", {"line.valve=none"});
  EXPECT_TRUE(left_out.list("line").complete_for(left_out.vocabulary.kinds("valve")));
  EXPECT_FALSE(left_out.list("line").complete_for(left_out.vocabulary.kinds("pipe")));
  EXPECT_TRUE(with("line: [pipe, more: {only: gauge}]", {"line.gauge=none"}).list("line").complete);
}

TEST(Set, UnknownOpensAFinishedListForTheKind) {
  auto world = with("line: [gauge, pipe]", {"line.gauge=unknown"});
  ASSERT_EQ(world.said(), "");
  EXPECT_EQ(world.list("line").items.size(), 1U);
  EXPECT_FALSE(world.list("line").complete_for(world.vocabulary.kinds("gauge")));
  EXPECT_TRUE(world.list("line").complete_for(world.vocabulary.kinds("pipe")));
  auto reopened = with("line: [pipe, more: {except: gauge}]", {"line.gauge=unknown"});
  EXPECT_FALSE(reopened.list("line").complete_for(reopened.vocabulary.kinds("gauge")));
}

TEST(Set, WholeElements) {
  auto world = with("line: [pipe, gauge, more]",
                    {"line[2]={pressure-reducer: 55 psi}", "line[3]={gauge: 60 psi}", "line.pipe={length: 3 ft}"});
  ASSERT_EQ(world.said(), "");
  EXPECT_EQ(world.at("line[1].length"), "3 ft");
  EXPECT_EQ(world.at("line[2].set-to"), "55 psi");
  EXPECT_EQ(world.at("line[3].reads"), "60 psi") << "one past the end adds";
  EXPECT_FALSE(world.list("line").complete);
}

TEST(Set, RemovesAndForgetsByNumber) {
  auto world = with("line: [pipe, gauge: 60 psi, meter]", {"line[1]=none", "line[1]=unknown"});
  ASSERT_EQ(world.said(), "");
  EXPECT_EQ(world.at("line[1].reads"), "unknown");
  EXPECT_EQ(world.list("line").items.size(), 2U);
}

TEST(Set, BranchesByNameAndByPlace) {
  auto world = with("line: [branch: lawn]", {"branches.lawn.feeds=sprinklers", "line[1].injects-chemicals=no"});
  ASSERT_EQ(world.said(), "");
  EXPECT_EQ(world.at("branches.lawn.feeds"), "sprinklers");
  EXPECT_EQ(world.at("branches.lawn.injects-chemicals"), "no");
  EXPECT_FALSE(world.list("branches").complete) << "nobody has said that there are no others";
  EXPECT_EQ(with("branches: {lawn: {feeds: lawn}}", {"branches.lawn=none"}).list("branches").items.size(), 0U);
}

TEST(Set, ListsOfOneKindAndAnswers) {
  auto world = with("tests: [pressure-test]\nconfirmed: {a: no}", {"tests[1].passed=yes", "confirmed.drawing-12=yes"});
  ASSERT_EQ(world.said(), "");
  EXPECT_EQ(world.at("tests[1].kind"), "pressure-test");
  EXPECT_EQ(world.at("tests[1].passed"), "yes");
  EXPECT_EQ(world.site.confirmed.size(), 2U);
}

TEST(Set, WholeLists) {
  EXPECT_EQ(with("line: [pipe]", {"line=none"}).slot("line").value.presence, Presence::none);
  EXPECT_FALSE(with("line: [pipe]", {"line=unknown"}).list("line").complete);
  EXPECT_FALSE(with("papers: none", {"papers=unknown"}).list("papers").complete);
}

TEST(Set, BadValuesAreSaidAtTheSetting) {
  EXPECT_EQ(with("name: x", {"pressure.highest-static=86 psy"}).said(),
            "--set:1:28 unknown-unit: \"psy\" is not a unit. (did you mean psi?)\n");
}

struct WrongSetting {
  const char* setting;
  const char* said;
};

class BadSetting : public testing::TestWithParam<WrongSetting> {};

TEST_P(BadSetting, IsSaid) {
  EXPECT_EQ(with("line: [pipe, gauge, pipe, more]", {GetParam().setting}).said(), GetParam().said);
}

INSTANTIATE_TEST_SUITE_P(
    Set, BadSetting,
    testing::Values(
        WrongSetting{"line.pipe.size=1\"",
                     "--set:1:6 several-of-kind: There is more than one pipe in line. (say which: line[1], "
                     "line[3])\n"},
        WrongSetting{"line.meter.size=1\"", "--set:1:6 none-of-kind: There is no meter in line.\n"},
        WrongSetting{"line.gage=none",
                     "--set:1:6 unknown-kind: \"gage\" is nothing that stands in line. (did you mean gauge?)\n"},
        WrongSetting{"line[5].size=1\"",
                     "--set:1:1 no-such-number: \"line\" holds 3 things. (count from 1 in written order)\n"},
        WrongSetting{"line[5]=gauge",
                     "--set:1:1 no-such-number: \"line\" holds 3 things. (count from 1 in written order)\n"},
        WrongSetting{"presure.highest-static=1 psi",
                     "--set:1:1 unknown-fact: \"presure\" is not a fact of site. (did you mean pressure?)\n"},
        WrongSetting{"line[1].siz=1\"",
                     "--set:1:9 unknown-fact: \"siz\" is not a fact of pipe. (did you mean size?)\n"},
        WrongSetting{"name.first=x",
                     "--set:1:6 address-past-value: \"name\" is one value and holds nothing below it.\n"},
        WrongSetting{"all-lines.gauge=none",
                     "--set:1:1 computed-list: \"all-lines\" cannot be written; it is made of line, "
                     "branches.line. (write it there)\n"},
        WrongSetting{"all-lines=none",
                     "--set:1:1 computed-list: \"all-lines\" cannot be written; it is made of line, "
                     "branches.line. (write it there)\n"},
        WrongSetting{"branches[1].feeds=x",
                     "--set:1:1 named-list-number: What stands in \"branches\" has names, not numbers.\n"},
        WrongSetting{"line[1.size=2",
                     "--set:1:1 address-form: \"line[1.size\" is not the address of a fact. (write it as in "
                     "pressure.highest-static, line[3].size or line.meter.size)\n"},
        WrongSetting{"line",
                     "--set:1:1 setting-form: \"line\" does not set anything. (write: address=value, as in "
                     "pressure.highest-static=86 psi)\n"},
        WrongSetting{"=3",
                     "--set:1:1 setting-form: \"=3\" does not set anything. (write: address=value, as in "
                     "pressure.highest-static=86 psi)\n"}));

}  // namespace
}  // namespace headgate
