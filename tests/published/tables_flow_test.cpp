// The shipped tables against the pages they were taken from, and against what follows from them elsewhere.
#include <gtest/gtest.h>

#include "shipped.hpp"

namespace headgate::published {
namespace {

struct MeterRow {
  int gpm;
  double psi[5];  // 5/8, 3/4, 1, 1-1/2, 2; negative where the page has none
};
// A one-page sheet of the meter association's losses; the last figure of each column is the safe maximum's.
constexpr MeterRow meter_rows[] = {
    {5, {.9, .6, .2, -1, -1}},      {8, {2.3, 1.0, .5, -1, -1}},    {10, {3.7, 1.6, .7, -1, -1}},
    {12, {5.1, 2.2, .9, -1, -1}},   {14, {7.2, 3.1, 1.1, -1, -1}},  {15, {8.3, 3.6, 1.2, -1, -1}},
    {16, {9.4, 4.1, 1.4, .4, -1}},  {18, {12.0, 5.2, 1.8, .6, -1}}, {20, {15.0, 6.5, 2.2, .8, -1}},
    {22, {-1, 7.9, 2.8, 1.0, -1}},  {24, {-1, 9.5, 3.4, 1.2, -1}},  {26, {-1, 11.2, 4.0, 1.4, -1}},
    {28, {-1, 13.0, 4.6, 1.6, -1}}, {30, {-1, 15.0, 5.3, 1.8, .7}}, {40, {-1, -1, 9.6, 3.3, 1.3}},
    {50, {-1, -1, 15.0, 4.9, 1.9}}, {100, {-1, -1, -1, 20.0, 7.8}}, {160, {-1, -1, -1, -1, 20.0}}};
constexpr const char* meter_sizes[] = {"5/8 in", "3/4 in", "1 in", "1-1/2 in", "2 in"};

std::string meter(const char* size, const std::string& gpm) {
  return std::string("meter-loss[") + size + ", " + gpm + " gpm].loss";
}

TEST(PublishedMeters, EveryFigureOfTheSheet) {
  ShippedRules rules("irc-2018");
  for (const auto& row : meter_rows) {
    for (int s = 0; s < 5; ++s) {
      if (row.psi[s] < 0) continue;
      const auto loss = rules.calc(meter(meter_sizes[s], std::to_string(row.gpm)));
      EXPECT_NEAR(loss.middle() / si("psi"), row.psi[s], 1e-9) << meter_sizes[s] << " at " << row.gpm;
    }
  }
}

// Between rows the straight line: 15.2 gpm through 3/4 in is 3.7 psi on a filled-in municipal form.
TEST(PublishedMeters, BetweenRowsTheStraightLineAndPastTheEndNothing) {
  ShippedRules rules("irc-2018");
  EXPECT_NEAR(rules.calc(meter("3/4 in", "15.2")).middle() / si("psi"), 3.7, 0.005);
  EXPECT_TRUE(rules.calc(meter("5/8 in", "20")).known);
  EXPECT_FALSE(rules.calc(meter("5/8 in", "20.1")).known);
  EXPECT_FALSE(rules.calc(meter("2 in", "161")).known);
  EXPECT_FALSE(rules.calc(meter("1-1/4 in", "10")).known);  // no meter of that size
}

struct Bore {
  const char* series;
  const char* size;
  double inches;
};
// Copper: two engineering reference tables that agree. Plastic 1/2 to 1 in: a county's print of the PEX standard.
// Schedule 40: the residential code's table of steel pipe.
constexpr Bore bores[] = {
    {"type-k", "1/2 in", .527},         {"type-k", "3/4 in", .745},      {"type-k", "1 in", .995},
    {"type-k", "1-1/4 in", 1.245},      {"type-k", "2 in", 1.959},       {"type-l", "1/2 in", .545},
    {"type-l", "3/4 in", .785},         {"type-l", "1 in", 1.025},       {"type-l", "1-1/4 in", 1.265},
    {"type-l", "1-1/2 in", 1.505},      {"cts-sdr-9", "3/4 in", .681},   {"cts-sdr-9", "1 in", .875},
    {"cts-sdr-9", "1-1/4 in", 1.069},   {"schedule-40", "3/4 in", .824}, {"schedule-40", "1 in", 1.049},
    {"schedule-40", "1-1/4 in", 1.380}, {"schedule-40", "2 in", 2.067},  {"sidr-7", "1 in", 1.049}};

TEST(PublishedPipe, Bores) {
  ShippedRules rules("irc-2018");
  for (const auto& bore : bores) {
    const auto in = rules.calc(std::string("pipe-dimensions[") + bore.series + ", " + bore.size + "].inside-diameter");
    EXPECT_NEAR(in.middle() / si("in"), bore.inches, 1e-9) << bore.series << ' ' << bore.size;
  }
}

// Of outside-controlled plastic the wall is the outside over the ratio: the standards round it to a thousandth.
TEST(PublishedPipe, WallsFollowTheRatio) {
  ShippedRules rules("irc-2018");
  struct Ratio {
    const char* series;
    double ratio;
  };
  for (const Ratio each : {Ratio{"cts-sdr-9", 9},
                           {"cts-sdr-13-5", 13.5},
                           {"ips-dr-7", 7},
                           {"ips-dr-9", 9},
                           {"ips-dr-11", 11},
                           {"ips-dr-13-5", 13.5},
                           {"ips-dr-17", 17}}) {
    for (const char* size : {"3/4 in", "1 in", "1-1/4 in", "1-1/2 in", "2 in"}) {
      const std::string key = std::string("pipe-dimensions[") + each.series + ", " + size + "].";
      const double outside = rules.calc(key + "outside-diameter").middle() / si("in");
      const double inside = rules.calc(key + "inside-diameter").middle() / si("in");
      EXPECT_NEAR((outside - inside) / 2, outside / each.ratio, 0.001) << each.series << ' ' << size;
    }
  }
}

// A label is not a value: 15.2 gpm in 1-1/4 in lose 4.66 psi/100 ft on a form that calls the pipe schedule 40. Of the
// two pipes of that name only copper tube size SDR 9 does (2 %); schedule 40 loses 1.36.
TEST(PublishedPipe, LabelAgainstValue) {
  ShippedRules rules("irc-2018");
  const auto per_100_ft = [&](const std::string& series) {
    return rules
               .calc("hazen-williams(15.2 gpm, 150, pipe-dimensions[" + series + ", 1-1/4 in].inside-diameter, 100 ft)")
               .middle() /
           si("psi");
  };
  EXPECT_NEAR(per_100_ft("cts-sdr-9"), 4.66, 0.02 * 4.66);
  EXPECT_NEAR(per_100_ft("schedule-40"), 1.36, 0.02);
}

struct Illinois {
  int wsfu;
  double gpm;
  const char* size;
  double psi_per_100_ft, ft_per_s;
};
// Illinois Plumbing Code, appendix A, table N: adopted text.
constexpr Illinois table_n[] = {
    {2, 2, "1/2 in", 4.2, 2.7},      {4, 3, "1/2 in", 8.7, 4.2},        {6, 5, "1/2 in", 22.5, 7.0},
    {8, 6.5, "3/4 in", 6.3, 4.3},    {10, 8, "3/4 in", 9.0, 5.4},       {12, 9.2, "3/4 in", 11.5, 6.1},
    {14, 10.4, "3/4 in", 15.0, 6.9}, {16, 11.6, "3/4 in", 18.0, 7.7},   {20, 14, "1 in", 7.2, 5.6},
    {25, 17, "1 in", 10.0, 6.6},     {30, 20, "1 in", 13.6, 8.0},       {35, 22.5, "1-1/4 in", 5.8, 5.7},
    {40, 25, "1-1/4 in", 7.0, 6.3},  {45, 27, "1-1/4 in", 8.2, 6.9},    {50, 29, "1-1/4 in", 9.5, 7.4},
    {60, 32, "1-1/2 in", 5.0, 5.8},  {70, 35, "1-1/2 in", 6.2, 6.4},    {80, 38, "1-1/2 in", 7.0, 7.2},
    {90, 41, "1-1/2 in", 8.0, 7.5},  {100, 43.5, "1-1/2 in", 8.7, 7.8}, {120, 48, "2 in", 2.7, 5.0},
    {140, 52.5, "2 in", 3.1, 5.4},   {160, 57, "2 in", 3.6, 5.8},       {200, 65, "2 in", 4.5, 6.6}};

// Velocities within 0.25 ft/s of Type L copper; losses, of which the table prints two figures, lie between C 118 and
// C 133 (mean 125), so a quarter more than C 140 gives at most.
TEST(PublishedPipe, IllinoisTableN) {
  ShippedRules rules("upc-2024");
  for (const auto& row : table_n) {
    const std::string bore = std::string("pipe-dimensions[type-l, ") + row.size + "].inside-diameter";
    const std::string flow = std::to_string(row.gpm) + " gpm";
    const double velocity = rules.calc("velocity(" + flow + ", " + bore + ")").middle() / si("ft/s");
    // The row of 80 units prints 7.2 ft/s where 38 gpm in 1.505 in run at 6.85, as its neighbours do.
    EXPECT_NEAR(velocity, row.ft_per_s, row.wsfu == 80 ? 0.36 : 0.25) << row.wsfu;
    const double at_140 = rules.calc("hazen-williams(" + flow + ", 140, " + bore + ", 100 ft)").middle() / si("psi");
    EXPECT_GT(row.psi_per_100_ft, at_140 * 1.05) << row.wsfu;
    EXPECT_LT(row.psi_per_100_ft, at_140 * 1.38) << row.wsfu;
    // The curve of the Uniform code is the same as this table's.
    const auto expected = rules.calc("limit.demand-curve[" + std::to_string(row.wsfu) + "].flow");
    EXPECT_NEAR(expected.middle() / si("gpm"), row.gpm, 1e-9) << row.wsfu;
  }
}

}  // namespace
}  // namespace headgate::published
