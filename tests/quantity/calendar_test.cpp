#include "quantity/calendar.hpp"

#include <gtest/gtest.h>

#include "quantity/read.hpp"

namespace headgate::quantity {
namespace {

Day date(std::string_view text) { return good(read_date(text)); }
Span span(std::string_view text) { return good(read_span(text)); }

std::string stepped(std::string_view from, std::string_view by, int sign = 1, const ClosedDays* closed = nullptr) {
  const auto day = step(date(from), span(by), sign, closed);
  return day ? show_date(*day) : "undecided";
}

TEST(Date, CountsFromTheEpoch) {
  EXPECT_EQ(date("1970-01-01"), 0);
  EXPECT_EQ(date("1969-12-31"), -1);
  EXPECT_EQ(date("2000-03-01"), 11017);
  EXPECT_EQ(weekday(date("1970-01-01")), 4);
  EXPECT_EQ(weekday(date("2026-10-02")), 5);
  EXPECT_EQ(weekday(date("1800-01-01")), 3);
}

TEST(Date, RoundsTripForEveryDayItHas) {
  int of_week = weekday(date("1800-01-01"));
  for (Day day = date("1800-01-01"); day <= date("2300-12-31"); ++day) {
    ASSERT_EQ(date(show_date(day)), day);
    ASSERT_EQ(day_of(civil(day)), day);
    ASSERT_EQ(weekday(day), of_week);
    of_week = (of_week + 1) % 7;
  }
}

TEST(Date, RefusesWithItsId) {
  const std::pair<const char*, const char*> all[] = {
      {"", "date-shape"},
      {"2026", "date-shape"},
      {"2026-1-2", "date-shape"},
      {"2026/10/02", "date-shape"},
      {"10/02/2026", "date-shape"},
      {"2026-10-02 ", "date-shape"},
      {" 2026-10-02", "date-shape"},
      {"Oct 2 2026", "date-shape"},
      {"2026-10-0x", "date-shape"},
      {"-026-10-02", "date-shape"},
      {"20261002", "date-shape"},
      {"2026-10-02T11:00", "date-shape"},
      {"2026-02-29", "no-such-date"},
      {"2026-02-30", "no-such-date"},
      {"1900-02-29", "no-such-date"},
      {"2026-13-01", "no-such-date"},
      {"2026-00-10", "no-such-date"},
      {"2026-04-31", "no-such-date"},
      {"2026-04-00", "no-such-date"},
      {"1799-12-31", "date-outside"},
      {"2301-01-01", "date-outside"},
      {"0000-01-01", "date-outside"},
      {"9999-12-31", "date-outside"},
  };
  for (const auto& [text, id] : all) EXPECT_EQ(wrong(read_date(text)), id) << text;
  EXPECT_EQ(wrong(read_date("2000-02-29")), "");
  EXPECT_EQ(wrong(read_date("2024-02-29")), "");
}

TEST(Date, OffersTheSpellingThatIsClear) {
  EXPECT_EQ(std::get<Problem>(read_date("2026-1-2")).arguments[1], "2026-01-02");
  EXPECT_EQ(std::get<Problem>(read_date("2026/10/02")).arguments[1], "2026-10-02");
  // The first number may be the month or the day, so no spelling is offered.
  EXPECT_EQ(std::get<Problem>(read_date("10/02/2026")).arguments[1], "year, month and day, as in 2026-10-02");
}

TEST(Clock, ReadsMinutesOfTheDay) {
  EXPECT_EQ(good(read_clock("00:00")), 0);
  EXPECT_EQ(good(read_clock("07:10")), 25800);
  EXPECT_EQ(show_clock(25800), "07:10");
  EXPECT_EQ(show_clock(good(read_clock("23:59"))), "23:59");
}

TEST(Clock, RefusesWithItsId) {
  for (const char* text : {"", "7:10", "1100", "11:00 am", "11.00", "11:0", "11:00:30", "noon", "ab:cd", "11:00 "}) {
    EXPECT_EQ(wrong(read_clock(text)), "clock-shape") << text;
  }
  for (const char* text : {"24:00", "23:60", "99:99"}) EXPECT_EQ(wrong(read_clock(text)), "no-such-time") << text;
}

TEST(Clock, OffersTheSpellingThatIsClear) {
  const auto offer = [](std::string_view text) { return std::get<Problem>(read_clock(text)).arguments[1]; };
  EXPECT_EQ(offer("7:10"), "07:10");
  EXPECT_EQ(offer("11:00 am"), "11:00");
  EXPECT_EQ(offer("1 pm"), "13:00");
  EXPECT_EQ(offer("12 am"), "00:00");
  EXPECT_EQ(offer("12:30pm"), "12:30");
  EXPECT_EQ(offer("13 pm"), "hours and minutes, as in 07:10");
  EXPECT_EQ(offer("7"), "hours and minutes, as in 07:10");
}

TEST(Moment, ReadsDateAndTime) {
  EXPECT_EQ(good(read_moment("1970-01-02 01:00")), 90000);
  EXPECT_EQ(show_moment(good(read_moment("2026-10-02 11:00"))), "2026-10-02 11:00");
  EXPECT_EQ(show_moment(good(read_moment("1969-12-31 23:59"))), "1969-12-31 23:59");
}

TEST(Moment, RefusesWithItsIdAtItsPlace) {
  for (const char* text : {"", "2026-10-02", "2026-10-02T11:00", "11:00", "2026-10-02,11:00", "2026-10-02  "}) {
    EXPECT_EQ(wrong(read_moment(text)), text == std::string("2026-10-02  ") ? "clock-shape" : "moment-shape") << text;
  }
  EXPECT_EQ(wrong(read_moment("2026-02-30 11:00")), "no-such-date");
  const Problem late = std::get<Problem>(read_moment("2026-10-02 24:30"));
  EXPECT_EQ(late.id, "no-such-time");
  EXPECT_EQ(late.offset, 11U);
  EXPECT_EQ(late.length, 5U);
  EXPECT_EQ(std::get<Problem>(read_moment("2026-10-02T11:00")).arguments[1], "2026-10-02 11:00");
}

TEST(Season, HoldsBothItsEnds) {
  const Season summer = good(read_season("May 15 to Sep 30"));
  EXPECT_TRUE(holds(summer, date("2026-05-15")));
  EXPECT_TRUE(holds(summer, date("2026-09-30")));
  EXPECT_FALSE(holds(summer, date("2026-05-14")));
  EXPECT_FALSE(holds(summer, date("2026-10-01")));
}

TEST(Season, WrapsTheYear) {
  const Season winter = good(read_season("Nov 1 to Apr 1"));
  EXPECT_TRUE(holds(winter, date("2026-12-31")));
  EXPECT_TRUE(holds(winter, date("2026-01-01")));
  EXPECT_TRUE(holds(winter, date("2026-04-01")));
  EXPECT_FALSE(holds(winter, date("2026-04-02")));
  EXPECT_FALSE(holds(winter, date("2026-10-31")));
  EXPECT_EQ(show(winter), "Nov 1 to Apr 1");
  EXPECT_EQ(show(good(read_season("November 1 to April 1"))), "Nov 1 to Apr 1");
}

TEST(Season, MayEndOnALeapDay) {
  const Season season = good(read_season("Dec 1 to Feb 29"));
  EXPECT_TRUE(holds(season, date("2024-02-29")));
  EXPECT_TRUE(holds(season, date("2026-02-28")));
  EXPECT_FALSE(holds(season, date("2026-03-01")));
}

TEST(Season, RefusesWithItsId) {
  for (const char* text :
       {"", "Nov 1", "Nov 1 - Apr 1", "nov 1 to apr 1", "Nov to Apr", "1 Nov to 1 Apr", "Nov 1 to Apr 1 to May 1",
        "Nov 001 to Apr 1", "Nov x to Apr 1", "winter", "Novem 1 to Apr 1"}) {
    EXPECT_EQ(wrong(read_season(text)), "season-shape") << text;
  }
  for (const char* text : {"Nov 31 to Apr 1", "Nov 0 to Apr 1", "Nov 1 to Feb 30"}) {
    EXPECT_EQ(wrong(read_season(text)), "no-such-season-day") << text;
  }
}

TEST(Span, ReadsAndShows) {
  for (const char* text :
       {"3 months", "10 business-days", "1 year", "2 weeks", "45 days", "1 day", "0 days", "1 business-day"}) {
    EXPECT_EQ(show(span(text)), text);
  }
  EXPECT_EQ(show(span("1 months")), "1 month");
}

TEST(Span, RefusesWithItsId) {
  const std::pair<const char*, const char*> all[] = {
      {"", "span-shape"},
      {"3", "span-shape"},
      {"months", "span-shape"},
      {"3 moths", "span-shape"},
      {"3months", "span-shape"},
      {"ten days", "span-shape"},
      {"-3 days", "span-shape"},
      {"10 business days", "span-shape"},
      {"3 months 2 days", "span-shape"},
      {"3 Months", "span-shape"},
      {"72 h", "quantity-as-span"},
      {"72 hours", "quantity-as-span"},
      {"15 min", "quantity-as-span"},
      {"1.5 years", "span-whole"},
      {"1/2 year", "span-whole"},
      {"1-1/2 years", "span-whole"},
      {"100000 days", "span-too-long"},
      {"99999999999999999999 days", "span-too-long"},
  };
  for (const auto& [text, id] : all) EXPECT_EQ(wrong(read_span(text)), id) << text;
}

TEST(Step, ClampsToTheEndOfTheMonth) {
  EXPECT_EQ(stepped("2026-01-31", "1 month"), "2026-02-28");
  EXPECT_EQ(stepped("2024-01-31", "1 month"), "2024-02-29");
  EXPECT_EQ(stepped("2026-03-31", "1 month", -1), "2026-02-28");
  EXPECT_EQ(stepped("2024-02-29", "1 year"), "2025-02-28");
  EXPECT_EQ(stepped("2024-02-29", "4 years"), "2028-02-29");
  EXPECT_EQ(stepped("2026-01-15", "13 months", -1), "2024-12-15");
}

TEST(Step, CountsDaysAndWeeks) {
  EXPECT_EQ(stepped("2026-12-31", "1 day"), "2027-01-01");
  EXPECT_EQ(stepped("2026-10-02", "2 weeks"), "2026-10-16");
  EXPECT_EQ(stepped("2026-10-02", "45 days", -1), "2026-08-18");
  EXPECT_EQ(stepped("2026-10-02", "0 months"), "2026-10-02");
}

TEST(Step, IsUndecidedOutsideTheCalendar) {
  EXPECT_EQ(stepped("2300-12-31", "1 day"), "undecided");
  EXPECT_EQ(stepped("2300-12-31", "1 month"), "undecided");
  EXPECT_EQ(stepped("1800-01-01", "1 day", -1), "undecided");
  EXPECT_EQ(stepped("1800-01-15", "1 month", -1), "undecided");
  EXPECT_EQ(stepped("2026-10-02", "99999 years"), "undecided");
  EXPECT_EQ(step(0, {std::numeric_limits<double>::infinity(), Span::Unit::days}, 1, nullptr), std::nullopt);
}

ClosedDays october() { return {date("2026-10-01"), date("2026-10-31"), {date("2026-10-12")}}; }

TEST(Step, CountsBusinessDays) {
  const ClosedDays closed = october();
  EXPECT_EQ(stepped("2026-10-02", "1 business-day", 1, &closed), "2026-10-05");  // Friday to Monday
  EXPECT_EQ(stepped("2026-10-03", "1 business-day", 1, &closed), "2026-10-05");  // from a Saturday
  EXPECT_EQ(stepped("2026-10-09", "1 business-day", 1, &closed), "2026-10-13");  // over a closed Monday
  EXPECT_EQ(stepped("2026-10-13", "1 business-day", -1, &closed), "2026-10-09");
  EXPECT_EQ(stepped("2026-10-12", "0 business-days", 1, &closed), "2026-10-12");
  EXPECT_EQ(stepped("2026-10-02", "10 business-days", 1, &closed), "2026-10-19");
}

TEST(Step, IsUndecidedWhereTheClosedDaysEnd) {
  const ClosedDays closed = october();
  EXPECT_EQ(stepped("2026-10-29", "1 business-day", 1, &closed), "2026-10-30");
  EXPECT_EQ(stepped("2026-10-30", "1 business-day", 1, &closed), "undecided");
  EXPECT_EQ(stepped("2026-10-01", "1 business-day", -1, &closed), "undecided");
  EXPECT_EQ(stepped("2026-10-02", "99999 business-days", 1, &closed), "undecided");
  EXPECT_EQ(stepped("2026-10-02", "1 business-day"), "undecided");
  const ClosedDays none;
  EXPECT_EQ(stepped("2026-10-02", "1 business-day", 1, &none), "undecided");
}

}  // namespace
}  // namespace headgate::quantity
