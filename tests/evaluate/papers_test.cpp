// Approvals and orders on file: by whom, until when, and what is not known of them (decision 13).
#include <gtest/gtest.h>

#include "evaluate/worlds/world.hpp"

namespace headgate::test {
namespace {

const char* const to_approve = "require: approved by building-official";

std::string with_paper(const std::string& facts, const std::string& site = "checked-on: 2026-07-01") {
  return World({.rules = rule("it", to_approve),
                .site = "stage: entry\n" + site + "\npapers: [approval: {for: it" + facts + "}]"})
      .outcomes("it");
}

TEST(Papers, OneWhoseLastDayIsPastDoesNotCount) {
  EXPECT_EQ(with_paper(", by: inspector, until: 2026-07-02"), "accepted");
  EXPECT_EQ(with_paper(", by: inspector, until: 2026-07-01"), "accepted") << "its last day still counts";
  EXPECT_EQ(with_paper(", by: inspector, until: 2026-06-30"), "fail");
  EXPECT_EQ(with_paper(", by: inspector, until: none"), "accepted");
  EXPECT_EQ(with_paper(", by: inspector, until: before 2026-06-01"), "fail");
  EXPECT_EQ(with_paper(", by: inspector, until: before 2026-08-01"), "undecided");
  EXPECT_EQ(with_paper(", by: inspector, until: unknown"), "undecided");
}

TEST(Papers, WithoutADayOfCheckingALastDayIsUndecided) {
  EXPECT_EQ(with_paper(", by: inspector, until: 2026-06-30", ""), "undecided");
  EXPECT_EQ(with_paper(", by: inspector, until: 2026-06-30", "checked-on: unknown"), "undecided");
  EXPECT_EQ(with_paper(", by: inspector", ""), "accepted") << "without a last day it needs none";
  EXPECT_EQ(with_paper(", by: water-superintendent, until: 2026-06-30", ""), "fail");
}

TEST(Papers, TheDayOfTheOptionsCounts) {
  evaluate::Options options;
  options.checked_on = std::get<quantity::Day>(quantity::read_date("2026-05-01"));
  World world({.rules = rule("it", to_approve),
               .site = "stage: entry\nchecked-on: 2026-07-01\n"
                       "papers: [approval: {for: it, by: inspector, until: 2026-06-30}]",
               .options = options});
  EXPECT_EQ(world.outcomes("it"), "accepted");
}

TEST(Papers, OneThatDoesNotSayWhoGaveItMayBeTheRoles) {
  EXPECT_EQ(with_paper(""), "undecided");
  EXPECT_EQ(with_paper(", by: unknown"), "undecided");
  EXPECT_EQ(with_paper(", by: none"), "fail");
  EXPECT_EQ(with_paper(", by: water-superintendent"), "fail");
  EXPECT_EQ(with_paper(", until: 2026-06-30"), "fail") << "whoever gave it, it ran out";
}

TEST(Papers, WhatIsUnknownOfAPaperIsUndecided) {
  const auto at_walls = [](const std::string& facts) {
    return World({.rules = rule("it", "each: wall in line\nrequire: approved by building-official"),
                  .site = "stage: entry\nline: [wall: {}, wall: {}]\npapers: [approval: {" + facts + "}]"})
        .outcomes("it");
  };
  EXPECT_EQ(at_walls("for: it, by: inspector, at: unknown"), "line[1]: undecided; line[2]: undecided");
  EXPECT_EQ(at_walls("for: unknown, by: inspector, at: \"line[1]\""), "line[1]: undecided; line[2]: fail");
  EXPECT_EQ(at_walls("by: inspector"), "line[1]: fail; line[2]: fail") << "it names no rule";
}

TEST(Papers, ACertainOneCountsBesideAnUncertainOne) {
  const auto with = [](const std::string& papers) {
    return World({.rules = rule("it", to_approve),
                  .site = "stage: entry\nchecked-on: 2026-07-01\npapers: [" + papers + "]"})
        .outcomes("it");
  };
  EXPECT_EQ(with("approval: {for: it}, approval: {for: it, by: inspector}"), "accepted");
  EXPECT_EQ(with("approval: {for: it, by: inspector, until: 2026-01-01}, approval: {for: it}"), "undecided");
  EXPECT_EQ(with("order: {for: it}"), "fail");
  EXPECT_EQ(with("more: {only: order}"), "fail") << "no other approval can be there";
  EXPECT_EQ(with("more: {except: order}"), "undecided");
}

TEST(Papers, ATitleIsASpellingOfTheRole) {
  World world({.vocabulary = "roles: {pud: the PUD}",
               .rules = rule("it", "require: approved by pud"),
               .site = "stage: entry\npapers: [approval: {for: it, by: The PUD}]"});
  EXPECT_EQ(world.outcomes("it"), "accepted");
}

// The same said as one expression and as labelled clauses comes to the same.
TEST(Papers, AcceptedInsideAnExpression) {
  const auto judged = [](const std::string& require, const std::string& wet, bool approved = true) {
    return World({.rules = rule("it", "require: " + require),
                  .site = "stage: entry\nwet: " + wet +
                          "\nline: [wall: {sleeve: none, arch: yes}, wall: {sleeve: none}]" +
                          (approved ? "\npapers: [approval: {for: it, by: inspector}]" : "")})
        .outcomes("it");
  };
  EXPECT_EQ(judged("wet and approved by building-official", "yes"), "accepted");
  EXPECT_EQ(judged("\n  all:\n    it is wet: wet\n    approved: approved by building-official", "yes"), "accepted");
  EXPECT_EQ(judged("wet and approved by building-official", "no"), "fail");
  EXPECT_EQ(judged("wet and approved by building-official", "yes", false), "fail");
  EXPECT_EQ(judged("wet or approved by building-official", "yes"), "pass");
  EXPECT_EQ(judged("wet or approved by building-official", "no"), "accepted");
  EXPECT_EQ(judged("wet or approved by building-official", "unknown"), "accepted");
  EXPECT_EQ(judged("wet and (wet is no or approved by building-official)", "yes"), "accepted");
  EXPECT_EQ(judged("not (wet is no or not approved by building-official)", "yes"), "accepted");
  EXPECT_EQ(judged("not approved by building-official", "yes", false), "pass") << "none is on file";
  EXPECT_EQ(judged("wet and not approved by water-superintendent", "yes"), "pass");
  EXPECT_EQ(judged("ordered by building-official or wet", "yes"), "pass");
}

TEST(Papers, AcceptedThroughAList) {
  const auto judged = [](const std::string& require, const std::string& walls) {
    return World({.rules = rule("it", "require: " + require),
                  .site = "stage: entry\nline: [" + walls + "]\npapers: [approval: {for: it, by: inspector}]"})
        .outcomes("it");
  };
  const std::string every = "every wall in line has (wall.arch or approved by building-official)";
  EXPECT_EQ(judged(every, "wall: {arch: yes}, wall: {arch: yes}"), "pass");
  EXPECT_EQ(judged(every, "wall: {arch: yes}, wall: {arch: no}"), "accepted");
  EXPECT_EQ(judged(every, "gauge"), "pass") << "of no wall nothing has to be approved";
  const std::string some = "some wall in line has (wall.arch or approved by building-official)";
  EXPECT_EQ(judged(some, "wall: {arch: yes}, wall: {arch: no}"), "pass");
  EXPECT_EQ(judged(some, "wall: {arch: no}, wall: {arch: no}"), "accepted");
  const std::string no_bare = "no wall in line where wall.arch has (not approved by building-official)";
  EXPECT_EQ(judged(no_bare, "wall: {arch: no}"), "pass");
  EXPECT_EQ(judged(no_bare, "wall: {arch: no}, wall: {arch: yes}"), "accepted");
}

TEST(Papers, OneForOnePartDoesNotCountForItsNeighbourInsideAQuantifier) {
  const auto with = [](const std::string& at) {
    return World({.rules = rule(
                      "it", "require: every wall in line has (wall.pipe is not none or approved by building-official)"),
                  .site = "stage: entry\nline: [wall: {}, wall: {}]\n"
                          "papers: [approval: {for: it, by: inspector" +
                          at + "}]"})
        .outcomes("it");
  };
  EXPECT_EQ(with(""), "accepted");
  EXPECT_EQ(with(", at: \"line[1]\""), "fail");
}

}  // namespace
}  // namespace headgate::test
