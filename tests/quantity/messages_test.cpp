// Every answer of this layer as a person sees it, word for word.
#include <algorithm>
#include <set>

#include <gtest/gtest.h>

#include "quantity/read.hpp"

namespace headgate::quantity {
namespace {

using Draw = std::string (*)(const std::string&);

std::string as_quantity(const std::string& text) { return drawn(text, read_quantity(text)); }
std::string as_pressure(const std::string& text) { return drawn(text, read_quantity(text, dimensions::pressure)); }
std::string as_number(const std::string& text) { return drawn(text, read_quantity(text, dimensions::none)); }
std::string as_coarse(const std::string& text) { return drawn(text, read_coarse(text)); }
std::string as_days(const std::string& text) { return drawn(text, read_coarse_date(text)); }
std::string as_date(const std::string& text) { return drawn(text, read_date(text)); }
std::string as_clock(const std::string& text) { return drawn(text, read_clock(text)); }
std::string as_moment(const std::string& text) { return drawn(text, read_moment(text)); }
std::string as_season(const std::string& text) { return drawn(text, read_season(text)); }
std::string as_span(const std::string& text) { return drawn(text, read_span(text)); }

struct Answer {
  Draw read;
  std::string written;
  std::string drawn;
};

const std::vector<Answer>& answers() {
  // clang-format off
  static const std::vector<Answer> all{
  {as_quantity, "psi 80",
   ":1:1: error: \"psi\" does not begin with a number. [number-expected]\n"
   "  1 | psi 80\n"
   "    | ^^^\n"
   "  hint: write a number, a space and the unit, as in 80 psi\n"},
  {as_quantity, "+5 ft",
   ":1:1: error: \"+5\" begins with a plus sign. [number-plus]\n"
   "  1 | +5 ft\n"
   "    | ^^\n"
   "  hint: write 5\n"},
  {as_quantity, ".5 in",
   ":1:1: error: A point in a number has a digit on both sides, unlike in \".5\". [number-point]\n"
   "  1 | .5 in\n"
   "    | ^^\n"
   "  hint: write 0.5\n"},
  {as_quantity, "1–1/2 in",
   ":1:2: error: The dash in \"1–1/2\" is not a hyphen. [number-dash]\n"
   "  1 | 1–1/2 in\n"
   "    |  ^\n"
   "  hint: write 1-1/2\n"},
  {as_quantity, "1 ½ in",
   ":1:1: error: \"1 ½\" holds a fraction in one character. [number-fraction-glyph]\n"
   "  1 | 1 ½ in\n"
   "    | ^^^\n"
   "  hint: write 1-1/2\n"},
  {as_quantity, "NaN psi",
   ":1:1: error: \"NaN\" is not a number. [number-not-finite]\n"
   "  1 | NaN psi\n"
   "    | ^^^\n"
   "  hint: write unknown, or leave the key out\n"},
  {as_quantity, "0x50 psi",
   ":1:1: error: \"0x50\" is not a decimal number. [number-hexadecimal]\n"
   "  1 | 0x50 psi\n"
   "    | ^^^^\n"
   "  hint: write it in decimal digits\n"},
  {as_quantity, "1,000 ft",
   ":1:2: error: \"1,000\" separates its thousands. [number-thousands]\n"
   "  1 | 1,000 ft\n"
   "    |  ^\n"
   "  hint: write 1000; between two values leave a space after the comma\n"},
  {as_quantity, "1e3 psi",
   ":1:1: error: \"1e3\" has an exponent. [number-exponent]\n"
   "  1 | 1e3 psi\n"
   "    | ^^^\n"
   "  hint: write out 1000\n"},
  {as_quantity, "1.5e-3 in",
   ":1:1: error: \"1.5e-3\" has an exponent. [number-exponent]\n"
   "  1 | 1.5e-3 in\n"
   "    | ^^^^^^\n"
   "  hint: write out its digits\n"},
  {as_quantity, "10000000000000000000000000000000000000000 ft",
   ":1:1: error: \"10000000000000000000000000000000000000000\" has more digits than a number may have. [number-too-long]\n"
   "  1 | 10000000000000000000000000000000000000000 ft\n"
   "    | ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^\n"
   "  hint: write at most 12 digits\n"},
  {as_quantity, "3/0 in",
   ":1:1: error: \"3/0\" divides by zero. [number-zero-below]\n"
   "  1 | 3/0 in\n"
   "    | ^^^\n"},
  {as_quantity, "-3/4 in",
   ":1:1: error: \"-3/4\" is a negative fraction. [number-negative-fraction]\n"
   "  1 | -3/4 in\n"
   "    | ^^^^\n"
   "  hint: write -0.75\n"},
  {as_quantity, "1-3/2 in",
   ":1:1: error: The fraction in \"1-3/2\" is not below one. [number-improper]\n"
   "  1 | 1-3/2 in\n"
   "    | ^^^^^\n"
   "  hint: write 2.5\n"},
  {as_quantity, "2-1 in",
   ":1:1: error: The dash in \"2-1\" joins no whole number and fraction. [number-whole-dash]\n"
   "  1 | 2-1 in\n"
   "    | ^^^\n"
   "  hint: a size is written 1-1/2; a value known within a margin 43 in +/- 3 in\n"},
  {as_quantity, "1.2.3 ft",
   ":1:1: error: \"1.2.3\" is not a number. [not-a-number]\n"
   "  1 | 1.2.3 ft\n"
   "    | ^^^^^\n"
   "  hint: a number is written 5, 2.5, 3/4 or 1-1/2\n"},
  {as_quantity, "3 / 4 in",
   ":1:1: error: A space splits the number \"3 / 4\". [number-spaced]\n"
   "  1 | 3 / 4 in\n"
   "    | ^^^^^\n"
   "  hint: write 3/4\n"},
  {as_quantity, "3,5 in",
   ":1:2: error: \"3,5\" holds a comma. [number-comma]\n"
   "  1 | 3,5 in\n"
   "    |  ^\n"
   "  hint: write 3.5\n"},
  {as_quantity, "",
   ":1:1: error: A value is missing here. [quantity-empty]\n"
   "  1 | \n"
   "    | ^\n"
   "  hint: write a number and its unit, as in 80 psi\n"},
  {as_quantity, "86 psy",
   ":1:4: error: \"psy\" is not a unit. [unknown-unit]\n"
   "  1 | 86 psy\n"
   "    |    ^^^\n"
   "  hint: did you mean psi?\n"},
  {as_quantity, "86 furlongs",
   ":1:4: error: \"furlongs\" is not a unit. [unknown-unit]\n"
   "  1 | 86 furlongs\n"
   "    |    ^^^^^^^^\n"},
  {as_quantity, "45 days",
   ":1:4: error: \"days\" counts days of the calendar, which are no quantity. [span-as-quantity]\n"
   "  1 | 45 days\n"
   "    |    ^^^^\n"
   "  hint: write the time in s, min or h\n"},
  {as_quantity, "80psi",
   ":1:1: error: \"80psi\" has no space before its unit. [unit-needs-space]\n"
   "  1 | 80psi\n"
   "    | ^^^^^\n"
   "  hint: write 80 psi\n"},
  {as_pressure, "80",
   ":1:1: error: \"80\" has no unit, where pressure is asked for. [number-needs-unit]\n"
   "  1 | 80\n"
   "    | ^^\n"
   "  hint: write the unit, as in 80 psi\n"},
  {as_pressure, "80 lb",
   ":1:1: error: \"80 lb\" is mass, where pressure is asked for. [wrong-dimension]\n"
   "  1 | 80 lb\n"
   "    | ^^^^^\n"
   "  hint: use a unit of pressure, such as psi\n"},
  {as_number, "80 psi",
   ":1:1: error: \"80 psi\" is pressure, where number is asked for. [wrong-dimension]\n"
   "  1 | 80 psi\n"
   "    | ^^^^^^\n"},
  {as_quantity, "5 ft 14 in",
   ":1:1: error: The parts of \"5 ft 14 in\" make no one quantity. [compound-unfit]\n"
   "  1 | 5 ft 14 in\n"
   "    | ^^^^^^^^^^\n"
   "  hint: a whole number of the larger unit, then less than one of it in the smaller, as in 5 ft 6 in\n"},
  {as_quantity, "5'-6\"",
   ":1:1: error: A dash joins the parts of \"5'-6\"\". [compound-dash]\n"
   "  1 | 5'-6\"\n"
   "    | ^^^^^\n"
   "  hint: write 5' 6\"\n"},
  {as_quantity, "80 psi gauge",
   ":1:8: error: \"gauge\" stands after the end of the quantity. [text-after-quantity]\n"
   "  1 | 80 psi gauge\n"
   "    |        ^^^^^\n"
   "  hint: remove it\n"},
  {as_coarse, "40 in to 46 in",
   ":1:1: error: \"40 in to 46 in\" does not say whether it is one value or several. [coarse-range]\n"
   "  1 | 40 in to 46 in\n"
   "    | ^^^^^^^^^^^^^^\n"
   "  hint: for one value say 43 in +/- 3 in; for several give the field of the least or greatest one\n"},
  {as_coarse, "40 in to 46 psi",
   ":1:1: error: \"40 in to 46 psi\" does not say whether it is one value or several. [coarse-range]\n"
   "  1 | 40 in to 46 psi\n"
   "    | ^^^^^^^^^^^^^^^\n"},
  {as_coarse, "> 80 psi",
   ":1:1: error: \">\" is not how a bound is written. [coarse-word]\n"
   "  1 | > 80 psi\n"
   "    | ^\n"
   "  hint: write more than 80 psi\n"},
  {as_coarse, "about 86 psi",
   ":1:1: error: \"about\" does not say how far off the value may be. [coarse-vague]\n"
   "  1 | about 86 psi\n"
   "    | ^^^^^\n"
   "  hint: write the margin after it: 86 psi +/- …\n"},
  {as_coarse, "one of (1 in, 2 in)",
   ":1:1: error: \"one of\" lists members of a choice, not numbers. [coarse-one-of]\n"
   "  1 | one of (1 in, 2 in)\n"
   "    | ^^^^^^^^^^^^^^^^^^^\n"
   "  hint: write the value and its margin, as in 43 in +/- 3 in\n"},
  {as_coarse, "86 psi +- 2 psi",
   ":1:8: error: \"+-\" is not how a margin is written. [coarse-sign]\n"
   "  1 | 86 psi +- 2 psi\n"
   "    |        ^^\n"
   "  hint: write +/-\n"},
  {as_coarse, "86 psi +/- -2 psi",
   ":1:12: error: The margin \"-2 psi\" is below zero. [coarse-margin-negative]\n"
   "  1 | 86 psi +/- -2 psi\n"
   "    |            ^^^^^^\n"
   "  hint: leave the minus sign out\n"},
  {as_days, "89",
   ":1:1: error: \"89\" is not a date. [coarse-date-shape]\n"
   "  1 | 89\n"
   "    | ^^\n"
   "  hint: write year, month and day, as in 2026-10-02; a year or 2026-10 says less\n"},
  {as_days, "about 1989",
   ":1:1: error: \"about\" is not said of a date. [coarse-date-word]\n"
   "  1 | about 1989\n"
   "    | ^^^^^\n"
   "  hint: write what is certain: before 1989, after 2014, 1989, 2026-10 or 2026-10-02\n"},
  {as_date, "10/02/2026",
   ":1:1: error: \"10/02/2026\" is not a date. [date-shape]\n"
   "  1 | 10/02/2026\n"
   "    | ^^^^^^^^^^\n"
   "  hint: write year, month and day, as in 2026-10-02\n"},
  {as_date, "2026/10/2",
   ":1:1: error: \"2026/10/2\" is not a date. [date-shape]\n"
   "  1 | 2026/10/2\n"
   "    | ^^^^^^^^^\n"
   "  hint: write 2026-10-02\n"},
  {as_date, "2026-02-30",
   ":1:1: error: \"2026-02-30\" is not in the calendar. [no-such-date]\n"
   "  1 | 2026-02-30\n"
   "    | ^^^^^^^^^^\n"
   "  hint: February 2026 has 28 days\n"},
  {as_date, "2026-13-01",
   ":1:1: error: \"2026-13-01\" is not in the calendar. [no-such-date]\n"
   "  1 | 2026-13-01\n"
   "    | ^^^^^^^^^^\n"},
  {as_date, "2501-01-01",
   ":1:1: error: \"2501-01-01\" is not in the years 1800 to 2300. [date-outside]\n"
   "  1 | 2501-01-01\n"
   "    | ^^^^^^^^^^\n"
   "  hint: check the year\n"},
  {as_clock, "7:10",
   ":1:1: error: \"7:10\" is not a time of day. [clock-shape]\n"
   "  1 | 7:10\n"
   "    | ^^^^\n"
   "  hint: write 07:10\n"},
  {as_clock, "24:10",
   ":1:1: error: \"24:10\" is not on the clock. [no-such-time]\n"
   "  1 | 24:10\n"
   "    | ^^^^^\n"
   "  hint: 00:00 to 23:59\n"},
  {as_moment, "2026-10-02T11:00",
   ":1:1: error: \"2026-10-02T11:00\" is not a date and time. [moment-shape]\n"
   "  1 | 2026-10-02T11:00\n"
   "    | ^^^^^^^^^^^^^^^^\n"
   "  hint: write 2026-10-02 11:00\n"},
  {as_season, "Nov 1 - Apr 1",
   ":1:1: error: \"Nov 1 - Apr 1\" is not a season. [season-shape]\n"
   "  1 | Nov 1 - Apr 1\n"
   "    | ^^^^^^^^^^^^^\n"
   "  hint: write month and day twice, as in Nov 1 to Apr 1\n"},
  {as_season, "Nov 31 to Apr 1",
   ":1:1: error: \"Nov 31\" is not in the calendar. [no-such-season-day]\n"
   "  1 | Nov 31 to Apr 1\n"
   "    | ^^^^^^^^^^^^^^^\n"},
  {as_span, "3 moths",
   ":1:1: error: \"3 moths\" is not a span of days. [span-shape]\n"
   "  1 | 3 moths\n"
   "    | ^^^^^^^\n"
   "  hint: write 3 months\n"},
  {as_span, "soon",
   ":1:1: error: \"soon\" is not a span of days. [span-shape]\n"
   "  1 | soon\n"
   "    | ^^^^\n"
   "  hint: write a count and days, weeks, months, years or business-days, as in 3 months\n"},
  {as_span, "10 business days",
   ":1:1: error: \"10 business days\" is not a span of days. [span-shape]\n"
   "  1 | 10 business days\n"
   "    | ^^^^^^^^^^^^^^^^\n"
   "  hint: write 10 business-days\n"},
  {as_span, "100000 days",
   ":1:1: error: \"100000 days\" is longer than the calendar reaches. [span-too-long]\n"
   "  1 | 100000 days\n"
   "    | ^^^^^^^^^^^\n"
   "  hint: write at most five digits\n"},
  {as_span, "1.5 years",
   ":1:1: error: \"1.5 years\" is not a whole count. [span-whole]\n"
   "  1 | 1.5 years\n"
   "    | ^^^^^^^^^\n"
   "  hint: use a smaller unit, such as days\n"},
  {as_span, "72 h",
   ":1:1: error: \"72 h\" is a quantity, where a span of days is asked for. [quantity-as-span]\n"
   "  1 | 72 h\n"
   "    | ^^^^\n"
   "  hint: write days, weeks, months, years or business-days\n"},
  };
  // clang-format on
  return all;
}

TEST(Messages, SayWhatIsWrongWhereAndWhatWouldBeRight) {
  for (const Answer& answer : answers()) EXPECT_EQ(answer.read(answer.written), answer.drawn);
}

TEST(Messages, AreAllTested) {
  const std::vector<text::Message>& all = text::catalogue();
  const auto at = [&](std::string_view id) {
    return std::find_if(all.begin(), all.end(), [&](const text::Message& message) { return message.id == id; });
  };
  ASSERT_LT(at("number-expected"), at("quantity-as-span"));
  for (auto message = at("number-expected"); message <= at("quantity-as-span"); ++message) {
    const std::string mark = "[" + std::string(message->id) + "]";
    const bool seen = std::any_of(answers().begin(), answers().end(),
                                  [&](const Answer& answer) { return answer.drawn.find(mark) != std::string::npos; });
    EXPECT_TRUE(seen) << message->id;
  }
}

}  // namespace
}  // namespace headgate::quantity
