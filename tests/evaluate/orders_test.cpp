// A paper that sets a limit for the job: the strongest layer of all (language page, section 7; decision 10).
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "evaluate/worlds/world.hpp"

namespace headgate::test {
namespace {

const char* const cover = "  cover: {title: Least cover, values: {code-a 1: 48 in}}\n";

Written ordered(const std::string& papers, const std::string& site = "checked-on: 2026-07-01") {
  return {
      .limits = cover,
      .rules = rule("deep", "each: pipe in line\nrequire: pipe.least-cover below finished-grade >= limit.cover"),
      .site = "stage: entry\n" + site +
              "\nline: [pipe: {least-cover: 40 in below grade}, pipe: {least-cover: 30 in below grade}]\npapers:\n" +
              papers};
}
std::string with(const std::string& papers, const std::string& site = "checked-on: 2026-07-01") {
  return World(ordered(papers, site)).outcomes("deep");
}
std::string order(const std::string& facts) { return "  - order: {limit: cover, " + facts + "}\n"; }

TEST(Orders, SetTheLimitForTheJob) {
  EXPECT_EQ(with("  - approval: {for: deep, by: inspector}\n"), "line[1]: fail; line[2]: fail");
  EXPECT_EQ(with(order("value: 36 in, by: inspector")), "line[1]: pass; line[2]: fail");
  EXPECT_EQ(with(order("value: 30 in, by: inspector")), "line[1]: pass; line[2]: pass");
  EXPECT_EQ(with(order("value: 60 in, by: inspector")), "line[1]: fail; line[2]: fail");
  EXPECT_EQ(with(order("value: base - 12 in, by: inspector")), "line[1]: pass; line[2]: fail");
}

TEST(Orders, AreALayerThatIsShownWithWhatItReplaced) {
  World world(ordered(order("value: 36 in, by: inspector, dated: 2026-06-01, number: X-7")));
  ASSERT_EQ(world.said(), "");
  const auto& chain = world.book().limits[0].chain;
  ASSERT_EQ(chain.size(), 2U);
  EXPECT_EQ(chain[0].written, "36 in");
  EXPECT_EQ(chain[0].layer.title, "order of building-official, 2026-06-01, number X-7");
  EXPECT_EQ(chain[0].citation.words(), "");
  EXPECT_EQ(chain[1].written, "48 in");
}

TEST(Orders, TheLaterOneIsStronger) {
  const std::string early = order("value: 36 in, by: inspector, dated: 2026-05-01");
  const std::string late = order("value: 24 in, by: inspector, dated: 2026-06-01");
  EXPECT_EQ(with(early + late), "line[1]: pass; line[2]: pass");
  EXPECT_EQ(with(late + early), "line[1]: pass; line[2]: pass");
  const std::string undated = order("value: 60 in, by: inspector");
  EXPECT_EQ(with(early + undated), "line[1]: pass; line[2]: fail") << "of no date: before all that have one";
  EXPECT_EQ(with(order("value: 60 in, by: inspector") + order("value: 24 in, by: inspector")),
            "line[1]: pass; line[2]: pass")
      << "the later written";
}

TEST(Orders, CountUntilTheirLastDay) {
  EXPECT_EQ(with(order("value: 36 in, by: inspector, until: 2026-07-01")), "line[1]: pass; line[2]: fail");
  EXPECT_EQ(with(order("value: 36 in, by: inspector, until: 2026-06-30")), "line[1]: fail; line[2]: fail");
  EXPECT_EQ(with(order("value: 36 in, by: inspector, until: 2026-06-30"), "wet: yes"),
            "line[1]: undecided; line[2]: undecided")
      << "on no day it cannot be said whether it counts";
  EXPECT_EQ(with(order("value: 36 in, by: inspector, until: unknown")), "line[1]: undecided; line[2]: undecided");
}

TEST(Orders, BySomebodyNobodyHasReadAreDoubtful) {
  for (const std::string by : {"value: 36 in", "value: 36 in, by: unknown"}) {
    World world(ordered(order(by)));
    EXPECT_EQ(world.outcomes("deep"), "line[1]: undecided; line[2]: undecided");
    EXPECT_EQ(world.book().limits[0].chain[0].doubt, "who gave the order papers[1] is not stated");
  }
  EXPECT_EQ(with(order("value: 36 in, by: the mayor")), "line[1]: fail; line[2]: fail");
  EXPECT_EQ(with(order("value: 36 in, by: none")), "line[1]: fail; line[2]: fail");
  EXPECT_EQ(with(order("by: inspector")), "line[1]: undecided; line[2]: undecided") << "to what value?";
  EXPECT_EQ(with(order("by: inspector, value: unknown")), "line[1]: undecided; line[2]: undecided");
}

TEST(Orders, ForOneElementCountForThatOne) {
  EXPECT_EQ(with(order("value: 20 in, by: inspector, at: \"line[2]\"")), "line[1]: fail; line[2]: pass");
  EXPECT_EQ(with(order("value: 20 in, by: inspector, at: unknown")), "line[1]: undecided; line[2]: undecided");
  EXPECT_EQ(with(order("value: 36 in, by: inspector") + order("value: 20 in, by: inspector, at: \"line[2]\"")),
            "line[1]: pass; line[2]: pass");
}

TEST(Orders, ForOneElementThroughListsAndOtherLimits) {
  const auto judged = [](const std::string& limits, const std::string& rules) {
    return World({.limits = limits,
                  .rules = rules,
                  .site = "stage: entry\nline: [pipe: {length: 5 ft}, pipe: {length: 9 ft}]\n"
                          "papers: [order: {limit: longest, value: 10 ft, by: inspector, at: \"line[2]\"}]"})
        .outcomes("it");
  };
  const std::string plain = "  longest: {title: Longest, values: {code-a 1: 6 ft}}\n";
  EXPECT_EQ(judged(plain, rule("it", "require: every pipe in line has pipe.length <= limit.longest")), "pass");
  EXPECT_EQ(judged(plain, rule("it", "require: sum(pipe.length for pipe in line) <= limit.longest")), "fail");
  EXPECT_EQ(judged(plain, rule("it",
                               "require: (every pipe in line has pipe.length <= limit.longest) and "
                               "greatest(pipe.length for pipe in line) <= limit.longest")),
            "fail")
      << "outside the walk no pipe is in hand";
  const std::string through =
      plain + "  twice:\n    title: Twice\n    type: length\n    values:\n      code-a 1: limit.longest * 2\n";
  EXPECT_EQ(judged(through, rule("it", "each: pipe in line\nrequire: limit.twice >= 20 ft")),
            "line[1]: fail; line[2]: pass");
  const std::string of_pipe =
      "  longest:\n    title: Longest\n    of: pipe\n    type: length\n    values:\n      code-a 1: pipe.length - 1 "
      "ft\n";
  EXPECT_EQ(judged(of_pipe, rule("it", "each: pipe in line\nrequire: pipe.length <= limit.longest[pipe]")),
            "line[1]: fail; line[2]: pass");
}

TEST(Orders, OfRowsSetEveryRow) {
  World world(
      {.limits = "  rise: {title: Rise, by: preventer, values: {code-a 1: {vacuum-breaker: 6 in}}}",
       .rules = rule("it", "each: preventer in line\nrequire: preventer.height above finished-grade >= limit.rise"),
       .site = "stage: entry\n"
               "line: [vacuum-breaker: {height: 9 in above grade}, double-check: {height: 9 in above grade}]\n"
               "papers: [order: {limit: rise, value: 8 in, by: inspector}]"});
  EXPECT_EQ(world.outcomes("it"), "line[1]: pass; line[2]: pass");
}

TEST(Orders, SpansSeasonsAndARuleThatHadNoLimit) {
  World duty({.limits = "  interval: {title: Time between tests, type: span, values: {code-a 1: 12 months}}",
              .rules = rule("it", "each: test in tests\ndue: test.done-on + limit.interval\ndone: test.filed-on"),
              .site = "stage: entry\nchecked-on: 2026-12-01\ntests: [{done-on: 2026-05-04, filed-on: none}]\n"
                      "papers: [order: {limit: interval, value: 6 months, by: inspector}]"});
  EXPECT_EQ(duty.outcomes("it"), "tests[1]: fail");
  World season({.limits = "  closed: {title: Closed season, type: season, values: {code-a 1: Nov 1 to Apr 1}}",
                .rules = rule("it", "require: reached-on is not in limit.closed"),
                .site = "stage: entry\nreached-on: 2026-10-20\n"
                        "papers: [order: {limit: closed, value: Oct 15 to Apr 1, by: inspector}]"});
  EXPECT_EQ(season.outcomes("it"), "fail");
  World fresh(
      {.limits = "  cover: {title: Least cover, values: {code-b 1: 48 in}}\n",
       .rules = rule("deep", "each: pipe in line\nrequire: pipe.least-cover below finished-grade >= limit.cover"),
       .site = "stage: entry\nline: [pipe: {least-cover: 40 in below grade}]\n"
               "papers: [order: {limit: cover, value: 36 in, by: inspector}]"});
  EXPECT_EQ(fresh.outcomes("deep"), "line[1]: pass") << "no adopted source had a value: the order brings one";
}

TEST(Orders, OrderedByStillAsksForThePaper) {
  World world({.limits = cover,
               .rules = rule("it", "require: ordered by building-official for repair"),
               .site = "stage: entry\npapers: [order: {for: repair, limit: cover, value: 36 in, by: inspector}]"});
  EXPECT_EQ(world.outcomes("it"), "pass");
}

TEST(Orders, WrongOnesAreSaidAtTheirPlace) {
  const auto said = [](const std::string& facts) {
    return World({.limits = std::string(cover) +
                            "  kinds: {title: Kinds, type: list of material, values: {code-a 1: [hdpe]}}\n",
                  .rules = rule("it",
                                "each: pipe in line where pipe.material is in limit.kinds\n"
                                "require: pipe.least-cover below finished-grade >= limit.cover"),
                  .site = "stage: entry\npapers:\n  - order: {by: inspector, " + facts + "}"})
        .said();
  };
  EXPECT_THAT(said("limit: covers, value: 36 in"),
              testing::StartsWith("site.yaml:4:35 no-such-limit: There is no limit \"covers\" to set."));
  EXPECT_THAT(said("limit: cover, value: 36 psi"), testing::StartsWith("site.yaml:4:49 "));
  EXPECT_THAT(said("limit: cover, value: deep"), testing::StartsWith("site.yaml:4:49 "));
  EXPECT_THAT(said("limit: kinds, value: hdpe"),
              testing::StartsWith("site.yaml:4:49 order-of-many: An order sets one value; \"kinds\" holds a list."));
  EXPECT_EQ(said("value: 36 in"), "") << "it sets no limit";
}

TEST(Orders, OfAnotherAuthoritysLimitArePassedOver) {
  World world({.limits = cover,
               .rules = rule("it", "each: pipe in line\nrequire: pipe.length >= limit.cover"),
               .place = "adopts: code-a\nlimits: {own: {title: Own, values: {code-a 1: 5 ft}}}\nadd:\n" +
                        indented(rule("mine", "each: pipe in line\nrequire: pipe.length >= limit.own"), 0),
               .site = "stage: entry\nline: [pipe: {length: 4 ft}]\n"
                       "papers: [order: {limit: own, value: 3 ft, by: inspector}]",
               .also = "adopts: code-a"});
  EXPECT_EQ(world.outcomes("mine"), "line[1]: pass");
  EXPECT_EQ(world.outcomes_of_second("it"), "line[1]: pass");
}

}  // namespace
}  // namespace headgate::test
