// Dates, moments, times of day, seasons and spans: local wall time, no zones, never a clock read.
//
//   read_date("2026-10-02")  -> day number; read_date("2026-02-30") -> problem "no-such-date"
//   step("2026-01-31", 1 month) -> 2026-02-28 : month ends clamp
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "quantity/unit.hpp"

namespace headgate::quantity {

// Days since 1970-01-01, proleptic Gregorian, years 1800 to 2300.
using Day = std::int32_t;

struct Civil {
  int year = 1970;
  int month = 1;
  int day = 1;
};
Day day_of(Civil date);
Civil civil(Day day);
int weekday(Day day);  // 0 Sunday … 6 Saturday

Read<Day> read_date(std::string_view text);       // 2026-10-02
Read<double> read_moment(std::string_view text);  // 2026-10-02 11:00 -> seconds since 1970-01-01 00:00
Read<double> read_clock(std::string_view text);   // 11:00, 07:10 -> seconds of the day
std::string show_date(Day day);
std::string show_moment(double seconds);
std::string show_clock(double seconds);

// `Nov 1 to Apr 1`: both ends in, wraps the year.
struct Season {
  int from_month = 1, from_day = 1, to_month = 12, to_day = 31;
};
Read<Season> read_season(std::string_view text);
bool holds(const Season& season, Day day);
std::string show(const Season& season);

// `3 months`, `10 business-days`, `1 year`, `2 weeks`, `45 days`. Seconds to hours are quantities, not spans.
struct Span {
  enum class Unit : std::uint8_t { days, weeks, months, years, business_days };
  double count = 0;
  Unit unit = Unit::days;
};
Read<Span> read_span(std::string_view text);
std::string show(const Span& span);

// A place's closed days: those of the list, and Saturdays and Sundays. Known for [from, until]; outside it a
// business-day count is undecided (nullopt).
struct ClosedDays {
  Day from = 0;
  Day until = -1;
  std::vector<Day> days;  // sorted
};

// date + sign * span. nullopt when business days run past what the closed days cover, when `closed` is nullptr and they
// are asked for, or when the result is outside the years above.
std::optional<Day> step(Day date, const Span& span, int sign, const ClosedDays* closed);

}  // namespace headgate::quantity
