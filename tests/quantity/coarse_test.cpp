#include "quantity/coarse.hpp"

#include <cmath>

#include <gtest/gtest.h>

#include "quantity/read.hpp"

namespace headgate::quantity {
namespace {

namespace d = dimensions;

std::string shown_coarse(std::string_view text, std::optional<Dimension> wanted = std::nullopt) {
  const Coarse coarse = good(read_coarse(text, wanted));
  return show(coarse.value, coarse.dimension, coarse.unit);
}

TEST(ReadCoarse, ReadsWhatIsKnown) {
  EXPECT_EQ(shown_coarse("86 psi"), "86 psi");
  EXPECT_EQ(shown_coarse("86 psi +/- 2 psi"), "84 psi to 88 psi");
  EXPECT_EQ(shown_coarse("86 psi ± 2 psi"), "84 psi to 88 psi");
  EXPECT_EQ(shown_coarse("86 psi+/-2 psi"), "84 psi to 88 psi");
  EXPECT_EQ(shown_coarse("3 ft +/- 6 in"), "2.5 ft to 3.5 ft");
  EXPECT_EQ(shown_coarse("5 ft 6 in +/- 1/2 in"), "5.45833333333 ft to 5.54166666667 ft");
  EXPECT_EQ(shown_coarse("140 F +/- 2 F"), "138 F to 142 F");
  EXPECT_EQ(shown_coarse("10 F +/- 2 F", d::warming), "8 F to 12 F");
  EXPECT_EQ(shown_coarse("5 +/- 1"), "4 to 6");
  EXPECT_EQ(shown_coarse("86 psi +/- 0 psi"), "86 psi");
  EXPECT_EQ(shown_coarse("at least 44 in"), "at least 44 in");
  EXPECT_EQ(shown_coarse("at most 3 ft"), "at most 3 ft");
  EXPECT_EQ(shown_coarse(" at least  44\" "), "at least 44 in");
}

TEST(ReadCoarse, LeavesAnOpenEndOut) {
  const Interval more = good(read_coarse("more than 80 psi")).value;
  const Interval less_than = good(read_coarse("less than 80 psi")).value;
  const double step = grid(d::pressure);
  EXPECT_EQ(less_or_equal(more, exactly(si("80 psi")), step), Truth::no);
  EXPECT_EQ(less(less_than, exactly(si("80 psi")), step), Truth::yes);
  EXPECT_EQ(less(exactly(si("80 psi")), good(read_coarse("at least 80 psi")).value, step), Truth::undecided);
  EXPECT_EQ(shown_coarse("more than 80 psi"), "more than 80 psi");
  EXPECT_EQ(shown_coarse("less than 3/8 in"), "less than 0.375 in");
}

TEST(ReadCoarse, RefusesWithItsId) {
  const std::pair<const char*, const char*> all[] = {
      {"", "quantity-empty"},
      {"at least", "number-expected"},
      {"at least ", "number-expected"},
      {"At least 44 in", "number-expected"},
      {"at least 44", ""},
      {"at least 80psi", "unit-needs-space"},
      {"at least at least 5 ft", "number-expected"},
      {"at least 40 in to 46 in", "text-after-quantity"},
      {"+/- 2 psi", "quantity-empty"},
      {"86 psi +/-", "quantity-empty"},
      {"86 psi +/- -2 psi", "coarse-margin-negative"},
      {"86 psi +/- 2", "number-needs-unit"},
      {"86 +/- 2 psi", "number-needs-unit"},
      {"86 psi +/- 2 ft", "wrong-dimension"},
      {"86 psi +/- 2 %", "wrong-dimension"},
      {"86 psi +/- 2 psi +/- 1 psi", "text-after-quantity"},
      {"86 psi +- 2 psi", "coarse-sign"},
      {"40 in to 46 in", "coarse-range"},
      {"40 to 46 in", "coarse-range"},
      {"between 40 in and 46 in", "coarse-range"},
      {"40 in to 46 psi", "coarse-range"},
      {"low to high", "number-expected"},
      {"40-46 in", "number-whole-dash"},
      {"> 80 psi", "coarse-word"},
      {">80 psi", "coarse-word"},
      {">= 80 psi", "coarse-word"},
      {"≤ 80 psi", "coarse-word"},
      {"over 80 psi", "coarse-word"},
      {"up to 80 psi", "coarse-word"},
      {"min 44 in", "coarse-word"},
      {"about 86 psi", "coarse-vague"},
      {"~86 psi", "coarse-vague"},
      {"approx. 86 psi", "coarse-vague"},
      {"one of (40 in, 46 in)", "coarse-one-of"},
      {"44 in or more", "text-after-quantity"},
  };
  for (const auto& [text, id] : all) EXPECT_EQ(wrong(read_coarse(text)), id) << text;
}

TEST(ReadCoarse, OffersTheRightSpelling) {
  const auto offer = [](std::string_view text, std::optional<Dimension> wanted = std::nullopt) {
    return std::get<Problem>(read_coarse(text, wanted)).arguments.at(1);
  };
  EXPECT_EQ(offer("40 in to 46 in"), "43 in +/- 3 in");
  EXPECT_EQ(offer("40 to 46 in", d::length), "43 in +/- 3 in");
  EXPECT_EQ(offer("40 in to 4 ft"), "3.66666666667 ft +/- 0.333333333333 ft");
  EXPECT_EQ(offer("138 F to 142 F"), "140 F +/- 2 F");
  EXPECT_EQ(offer("46 in to 40 in"), "");
  EXPECT_EQ(offer("40 in to 46 psi"), "");
  EXPECT_EQ(offer(">= 80 psi"), "at least 80 psi");
  EXPECT_EQ(offer("under  80 psi"), "less than 80 psi");
}

TEST(ReadCoarse, NamesThePlaceInTheWholeText) {
  const Problem margin = std::get<Problem>(read_coarse(" 86 psi +/- 2 psy"));
  EXPECT_EQ(margin.id, "unknown-unit");
  EXPECT_EQ(margin.offset, 14U);
  const Problem bound = std::get<Problem>(read_coarse("at least  44 inn"));
  EXPECT_EQ(bound.offset, 13U);
  EXPECT_EQ(bound.length, 3U);
}

std::string days(std::string_view text) {
  const Interval interval = good(read_coarse_date(text));
  const auto end = [](double day) { return std::isinf(day) ? std::string("…") : show_date(static_cast<Day>(day)); };
  return end(interval.lo) + " " + end(interval.hi);
}

TEST(ReadCoarseDate, ReadsWhatIsKnown) {
  EXPECT_EQ(days("2026-10-02"), "2026-10-02 2026-10-02");
  EXPECT_EQ(days("2026-10"), "2026-10-01 2026-10-31");
  EXPECT_EQ(days("2024-02"), "2024-02-01 2024-02-29");
  EXPECT_EQ(days("2300-12"), "2300-12-01 2300-12-31");
  EXPECT_EQ(days("1989"), "1989-01-01 1989-12-31");
  EXPECT_EQ(days("2300"), "2300-01-01 2300-12-31");
  EXPECT_EQ(days("before 1989"), "… 1988-12-31");
  EXPECT_EQ(days("after 2014"), "2015-01-01 …");
  EXPECT_EQ(days("before 2026-10"), "… 2026-09-30");
  EXPECT_EQ(days("after 2026-10-02"), "2026-10-03 …");
  EXPECT_EQ(days("  before  1989 "), "… 1988-12-31");
}

TEST(ReadCoarseDate, RefusesWithItsId) {
  for (const char* text : {"at least 1989", "at most 1989", "since 1989", "about 1989", "until 2014", "by 2014",
                           "~1989", "between 1985 and 1989", "<1989", "in 1989"}) {
    EXPECT_EQ(wrong(read_coarse_date(text)), "coarse-date-word") << text;
  }
  for (const char* text : {"", "before", "before ", "89", "1980s", "1989 or so", "10/2026", "2026-1", "2026-10-2",
                           "Before 1989", "before before 1989", "1985 to 1989", "1989-", "--1989-"}) {
    EXPECT_EQ(wrong(read_coarse_date(text)), "coarse-date-shape") << text;
  }
  for (const char* text : {"2026-13", "2026-00", "2026-02-30", "before 2026-13"}) {
    EXPECT_EQ(wrong(read_coarse_date(text)), "no-such-date") << text;
  }
  for (const char* text : {"1799", "after 2301", "0000-01"})
    EXPECT_EQ(wrong(read_coarse_date(text)), "date-outside") << text;
}

}  // namespace
}  // namespace headgate::quantity
