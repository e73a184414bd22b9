// Dates, spans, seasons and duties: decisions 11 and 12.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "evaluate/worlds/world.hpp"

namespace headgate::test {
namespace {

const char* const spans = R"(  month: {title: Month, type: span, values: {code-a 1: 1 month}}
  ten: {title: Ten, type: span, values: {code-a 1: 10 business-days}}
  winter: {title: Winter, type: season, values: {code-a 1: Nov 1 to Apr 1}}
  wait:
    title: Wait
    type: span
    by: material
    values:
      code-a 1: {k-copper: 10 days, l-copper: 20 days, hdpe: 1 month}
)";

const char* const closed = "closed-days: {from: 2026-01-01, until: 2026-12-31, days: [2026-05-25, 2026-07-03]}\n";

std::string date(const std::string& site, const std::string& expression, const std::string& place = "") {
  return World({.limits = spans, .place = place, .site = site}).value(expression);
}

TEST(Dates, ADateIsTheIntervalOfItsDay) {
  EXPECT_EQ(date("reached-on: 2026-05-01", "reached-on <= reached-on"), "yes");
  EXPECT_EQ(date("reached-on: 2026-05\nchecked-on: 2026-05-31", "reached-on <= checked-on"), "yes");
  EXPECT_EQ(date("reached-on: 2026-05\nchecked-on: 2026-05-15", "reached-on <= checked-on"), "undecided");
  EXPECT_EQ(date("reached-on: before 1989\nchecked-on: 1988-12-31", "reached-on <= checked-on"), "yes");
  EXPECT_EQ(date("reached-on: before 1989\nchecked-on: 1980-01-01", "reached-on < checked-on"), "undecided");
}

TEST(Dates, MonthEndsClamp) {
  EXPECT_EQ(date("reached-on: 2026-01-31", "reached-on + limit.month"), "2026-02-28");
  EXPECT_EQ(date("reached-on: 2024-01-31", "reached-on + limit.month"), "2024-02-29");
  EXPECT_EQ(date("reached-on: 2026-03-31", "reached-on - limit.month"), "2026-02-28");
  EXPECT_EQ(date("reached-on: 2026-05", "reached-on + limit.month"), "2026-06-01 to 2026-06-30");
}

TEST(Dates, AnOpenEndStaysOpen) {
  EXPECT_EQ(date("reached-on: before 1989", "reached-on + limit.month"), "1989-01-31 or earlier");
  EXPECT_EQ(date("reached-on: after 2026-03-01", "reached-on - limit.month"), "2026-02-02 or later");
  EXPECT_EQ(date("reached-on: before 1989\nchecked-on: 2026-01-01", "reached-on + limit.month <= checked-on"), "yes");
  EXPECT_EQ(date("wet: yes", "reached-on + limit.month"), "unknown");
}

TEST(Dates, BusinessDaysNeedClosedDays) {
  EXPECT_EQ(date("reached-on: 2026-05-15", "reached-on + limit.ten", closed), "2026-06-01");  // Memorial Day is closed
  EXPECT_EQ(date("reached-on: 2026-06-01", "reached-on - limit.ten", closed), "2026-05-15");
  EXPECT_EQ(date("reached-on: 2026-05-15", "reached-on + limit.ten"), "unknown");
  EXPECT_EQ(date("reached-on: 2026-12-28", "reached-on + limit.ten", closed), "unknown");  // past what is known
}

// A span that may be one of several is all of them.
TEST(Dates, ACoarseSpanMovesBothEnds) {
  const auto due = [](const std::string& material, const std::string& done) {
    World world(
        {.limits = spans,
         .rules = rule("it", "each: pipe in line\nrequire: reached-on <= pipe.laid-on + limit.wait[pipe.material]"),
         .site = "stage: entry\nreached-on: " + done + "\nline: [pipe: {laid-on: 2026-05-01, material: {value: \"" +
                 material + "\"}}]"});
    return world.outcomes("it").substr(9);
  };
  EXPECT_EQ(due("k-copper", "2026-05-11"), "pass");
  EXPECT_EQ(due("k-copper", "2026-05-12"), "fail");
  EXPECT_EQ(due("one of (k-copper, l-copper)", "2026-05-11"), "pass");
  EXPECT_EQ(due("one of (k-copper, l-copper)", "2026-05-12"), "undecided");
  EXPECT_EQ(due("one of (k-copper, l-copper)", "2026-05-22"), "fail");
  EXPECT_EQ(due("one of (k-copper, hdpe)", "2026-05-12"), "undecided");  // days and months have no common count
  EXPECT_EQ(due("mystery", "2026-05-02"), "undecided");
}

TEST(Dates, SeasonsWrapTheYear) {
  const auto winter = [](const std::string& on) { return date("reached-on: " + on, "reached-on is in limit.winter"); };
  EXPECT_EQ(winter("2026-11-01"), "yes");
  EXPECT_EQ(winter("2026-04-01"), "yes");
  EXPECT_EQ(winter("2026-04-02"), "no");
  EXPECT_EQ(winter("2026-12"), "yes");
  EXPECT_EQ(winter("2026-10"), "no");
  EXPECT_EQ(winter("2026-04"), "undecided");
  EXPECT_EQ(winter("2026"), "undecided");
  EXPECT_EQ(winter("before 1989"), "undecided");
  EXPECT_EQ(winter("after 2026-03-01"), "undecided");
  EXPECT_EQ(winter("unknown"), "undecided");
  EXPECT_EQ(date("reached-on: 2026-06-01", "reached-on is not in limit.winter"), "yes");
}

TEST(Dates, MomentsMoveByHours) {
  EXPECT_EQ(date("seen-at: 2026-10-02 23:30", "seen-at + 1 h"), "2026-10-03 00:30");
  EXPECT_EQ(date("seen-at: 2026-10-02", "seen-at + 48 h > seen-at"), "yes");
}

// --- duties ---

std::string duty(const std::string& facts, const std::string& checked, bool says_done = true) {
  World world({.limits = spans,
               .rules = rule("it", std::string("each: test in tests\ndue: test.done-on + limit.month") +
                                       (says_done ? "\ndone: test.filed-on" : "")),
               .site = "stage: in-service\nchecked-on: " + checked + "\ntests: [{" + facts + "}]"});
  return world.outcomes("it").substr(10) + (world.decision("it").done_late ? ", late" : "");
}

TEST(Duties, DoneInTimeOrLate) {
  EXPECT_EQ(duty("done-on: 2026-05-01, filed-on: 2026-06-01", "2026-07-01"), "pass");
  EXPECT_EQ(duty("done-on: 2026-05-01, filed-on: 2026-06-02", "2026-07-01"), "fail, late");
  EXPECT_EQ(duty("done-on: 2026-05-01, filed-on: 2026-06", "2026-07-01"), "undecided");
  EXPECT_EQ(duty("done-on: 2026-05, filed-on: 2026-06-01", "2026-07-01"), "pass");
  EXPECT_EQ(duty("done-on: 2026-05-01, filed-on: 2026-06-01", "unknown"), "pass");
}

TEST(Duties, NotDoneIsLaterUntilItIsDueThenFails) {
  EXPECT_EQ(duty("done-on: 2026-05-01, filed-on: none", "2026-05-20"), "later (undecided)");
  EXPECT_EQ(duty("done-on: 2026-05-01, filed-on: none", "2026-06-01"), "later (undecided)");
  EXPECT_EQ(duty("done-on: 2026-05-01, filed-on: none", "2026-06-02"), "fail");
  EXPECT_EQ(duty("done-on: 2026-05, filed-on: none", "2026-06-15"), "undecided");
  EXPECT_EQ(duty("done-on: 2026-05-01, filed-on: none", "unknown"), "undecided");
}

TEST(Duties, NobodySaidWhetherItIsDone) {
  EXPECT_EQ(duty("done-on: 2026-05-01", "2026-05-20"), "later (undecided)");
  EXPECT_EQ(duty("done-on: 2026-05-01", "2026-06-02"), "undecided");
  EXPECT_EQ(duty("filed-on: 2026-06-02", "2026-06-02"), "undecided");
  EXPECT_EQ(duty("done-on: none", "2026-06-02"), "undecided");
  EXPECT_EQ(duty("done-on: 2026-05-01", "2026-05-20", false), "later (undecided)");
  EXPECT_EQ(duty("done-on: 2026-05-01", "2026-06-02", false), "undecided");
}

TEST(Duties, TheDayOfTheOptionsCounts) {
  evaluate::Options options;
  options.checked_on = std::get<quantity::Day>(quantity::read_date("2026-06-02"));
  World world({.limits = spans,
               .rules = rule("it", "each: test in tests\ndue: test.done-on + limit.month\ndone: test.filed-on"),
               .site = "stage: in-service\nchecked-on: 2026-05-02\ntests: [{done-on: 2026-05-01, filed-on: none}]",
               .options = options});
  EXPECT_EQ(world.outcomes("it"), "tests[1]: fail");
}

TEST(Duties, BeforeItsStageItIsLater) {
  World world(
      {.limits = spans,
       .rules =
           rule("it", "stage: in-service\neach: test in tests\ndue: test.done-on + limit.month\ndone: test.filed-on"),
       .site = "stage: entry\nchecked-on: 2026-08-01\ntests: [{done-on: 2026-05-01, filed-on: none}]"});
  EXPECT_EQ(world.outcomes("it"), "tests[1]: later (fail)");
}

}  // namespace
}  // namespace headgate::test
