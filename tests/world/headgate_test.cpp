// The public headers, used as another program would: nothing else of headgate is included here.
#include "headgate/headgate.hpp"

#include <filesystem>
#include <fstream>
#include <iterator>

#include <gmock/gmock.h>

namespace {

namespace fs = std::filesystem;
using headgate::File;
using headgate::Problems;
using headgate::Rules;
using ::testing::ElementsAre;
using ::testing::IsEmpty;
using ::testing::StartsWith;

const fs::path root = HEADGATE_SOURCE_DIR;

File file(const fs::path& path) {
  std::ifstream stream(root / path, std::ios::binary);
  return {path.string(), {std::istreambuf_iterator<char>(stream), {}}};
}

std::vector<File> folder(const std::string& name) {
  std::vector<File> files;
  for (const auto& entry : fs::recursive_directory_iterator(root / name)) {
    if (entry.path().extension() == ".yaml") files.push_back(file(fs::relative(entry.path(), root)));
  }
  return files;
}

Rules rules_with(std::vector<File> places) {
  Problems problems;
  auto rules = Rules::load(folder("rules"), std::move(places), problems);
  EXPECT_THAT(problems, IsEmpty());
  return std::move(*rules);
}

std::vector<std::string> ids(const Problems& problems) {
  std::vector<std::string> found;
  for (const auto& problem : problems) found.push_back(problem.id);
  return found;
}

std::string outcome(const headgate::Report& report, const std::string& rule) {
  for (const auto& finding : report.findings) {
    if (finding.rule == rule) return finding.outcome;
  }
  return "no finding";
}

const std::string reducer = "irc-2018/reducer-above-static-limit";
const File at_86_psi = {"quay.yaml",
                        "format: site/1\nplace: irc-2018\nstage: entry\npressure: {highest-static: 86 psi}\n"
                        "line: [meter, shutoff]\n"};

TEST(Embedding, WhatWasJudgedCanBeRead) {
  Rules rules = rules_with(folder("jurisdictions"));
  Problems problems;
  const auto found = rules.judge(file("examples/halyard/as-found.yaml"), {}, problems);
  const auto built = rules.judge(file("examples/halyard/as-built.yaml"), {}, problems);
  ASSERT_TRUE(found && built);
  EXPECT_THAT(problems, IsEmpty());
  EXPECT_GT(found->totals[1], 0U);
  EXPECT_EQ(built->totals[1], 0U);
  EXPECT_EQ(built->place, "fennick-ferry");
  EXPECT_THAT(built->also, ElementsAre("fennick-water"));
  EXPECT_THAT(json(*found), StartsWith("{\n  \"report\": \"headgate-report/1\","));
}

TEST(Embedding, AskingReplacesWhatTheSiteSays) {
  Rules rules = rules_with(folder("jurisdictions"));
  Problems problems;
  const auto as_is = rules.judge(at_86_psi, {}, problems);
  const auto what_if = rules.judge(at_86_psi, {{}, "", "", {"pressure.highest-static=79 psi"}}, problems);
  const auto elsewhere = rules.judge(at_86_psi, {{"upc-2024"}, "", "", {}}, problems);
  const auto early = rules.judge(at_86_psi, {{}, "survey", "", {}}, problems);
  ASSERT_TRUE(as_is && what_if && elsewhere && early);
  EXPECT_THAT(problems, IsEmpty());
  EXPECT_EQ(outcome(*as_is, reducer), "fail");
  EXPECT_EQ(outcome(*what_if, reducer), "not applicable");
  EXPECT_EQ(outcome(*early, reducer), "later");
  EXPECT_EQ(elsewhere->place, "upc-2024");
}

TEST(Embedding, ProblemsAreToldWithTheirPlace) {
  Rules rules = rules_with(folder("jurisdictions"));
  Problems problems;
  EXPECT_FALSE(rules.judge({"quay.yaml", "format: site/1\n"}, {}, problems));
  ASSERT_EQ(problems.size(), 1U);
  EXPECT_EQ(problems[0].id, "no-place");
  EXPECT_TRUE(problems[0].error);
  EXPECT_EQ(problems[0].at, "quay.yaml:1:1");
  EXPECT_EQ(problems[0].sentence, "The site does not say which place's rules apply.");
  EXPECT_EQ(problems[0].hint, "add a line such as place: irc-2018, or use --place");

  problems.clear();
  EXPECT_FALSE(rules.judge({"quay.yaml", "format: site/1\nplace: irc-2081\n"}, {}, problems));
  EXPECT_THAT(ids(problems), ElementsAre("no-such-place"));
  EXPECT_EQ(problems[0].hint, "did you mean irc-2018?");

  problems.clear();  // a site that cannot be used does not spoil the next
  EXPECT_TRUE(rules.judge(at_86_psi, {}, problems));
  EXPECT_THAT(problems, IsEmpty());
}

TEST(Embedding, ABadPlaceIsToldEachTime) {
  Rules rules =
      rules_with({{"town.yaml", "format: place/1\nid: town\ntitle: Town (invented)\nadopts: nothing\ndrop: x\n"}});
  for (int i = 0; i < 2; ++i) {
    Problems problems;
    EXPECT_FALSE(rules.judge({"quay.yaml", "format: site/1\nplace: town\n"}, {}, problems));
    EXPECT_FALSE(problems.empty());
  }
}

TEST(Embedding, RulesThatCannotBeUsed) {
  Problems problems;
  EXPECT_FALSE(Rules::load({}, {}, problems));
  EXPECT_THAT(ids(problems), ElementsAre("no-rules"));

  problems.clear();
  EXPECT_FALSE(Rules::load({{"a.yaml", "format: rules/1\ntopic: [\n"}}, {}, problems));
  ASSERT_FALSE(problems.empty());
  EXPECT_EQ(problems[0].at.substr(0, 7), "a.yaml:");
}

}  // namespace
