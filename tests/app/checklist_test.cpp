// `headgate checklist`: one stage on a sheet.
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "app/run.hpp"

namespace headgate::test {
namespace {

TEST(Checklist, ShowsWhatIsMetWhatToHaveInHandAndWhatComesNext) {
  const Ran ran = run({"checklist", "examples/halyard/as-built.yaml", "--stage", "before-cover"});
  EXPECT_EQ(ran.status, 0) << ran.err;
  EXPECT_TRUE(has(ran.out, "CHECKLIST  before cover\n")) << ran.out;
  EXPECT_TRUE(has(ran.out, "  [x] The new line has passed a pressure test.\n")) << ran.out;
  EXPECT_TRUE(has(ran.out, "\nHAVE IN HAND\n  papers   permit: ")) << ran.out;
  EXPECT_TRUE(has(ran.out, "\nWHAT COMES NEXT: in service\n")) << ran.out;
  EXPECT_TRUE(has(ran.out, "\nThis is a pre-check and approves nothing")) << ran.out;
  std::istringstream lines(ran.out);
  for (std::string line; std::getline(lines, line);) EXPECT_LE(line.size(), 80U) << line;
}

TEST(Checklist, WhatIsNotMetSaysWhatToDo) {
  const Ran ran = run({"checklist", "examples/halyard/as-found.yaml", "--stage", "wall"});
  EXPECT_EQ(ran.status, 1) << ran.err;
  EXPECT_TRUE(has(ran.out, "\n  [ ] A pipe through ")) << ran.out;
  EXPECT_TRUE(has(ran.out, "      To do: Build in or grout in a sleeve")) << ran.out;
  EXPECT_TRUE(has(ran.out, "\nSTILL OPEN FROM EARLIER STAGES\n")) << ran.out;  // the shallow pipe, the polybutylene
}

TEST(Checklist, AnUnfinishedListIsSaidOnce) {
  const Ran ran = run({"checklist", "examples/halyard/as-planned.yaml", "--stage", "wall"});
  EXPECT_EQ(ran.status, 1) << ran.err;  // planned, but nothing begun
  const std::size_t at = ran.out.find("  waiting  ");
  ASSERT_NE(at, std::string::npos) << ran.out;
  EXPECT_EQ(ran.out.find("  waiting  ", at + 1), std::string::npos);
}

TEST(Checklist, JsonHoldsTheSame) {
  const Ran ran = run({"checklist", "examples/halyard/as-built.yaml", "--stage", "before-cover", "--format", "json"});
  const auto sheet = nlohmann::json::parse(ran.out);
  EXPECT_EQ(sheet["checklist"], "headgate-checklist/1");
  EXPECT_EQ(sheet["stage"], "before-cover");
  EXPECT_FALSE(sheet["now"].empty());
  for (const auto& item : sheet["now"]) EXPECT_EQ(item["outcome"], "pass") << item["rule"];
}

TEST(Checklist, AsksForTheStageWhenNobodySaysIt) {
  const Scratch scratch;
  const std::string site = scratch.file("site.yaml", "format: site/1\nplace: irc-2018\nline: [meter]\n");
  const Ran ran = run({"checklist", site});
  EXPECT_EQ(ran.status, 2);
  EXPECT_TRUE(has(ran.err, "Neither the site nor the command says which stage is meant. [no-stage]\n")) << ran.err;
}

}  // namespace
}  // namespace headgate::test
