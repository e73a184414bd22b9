// Friction and velocity against published tables and worked examples. Each table names its source and its tolerance
// before the comparison; rows that disagree are kept, with the reason, as tests of the disagreement.
#include <cmath>

#include <gtest/gtest.h>

#include "water/friction.hpp"
#include "water/trade_units.hpp"

namespace headgate::water {
namespace {

using namespace trade;

double percent_off(double ours, double published) { return 100.0 * (ours / published - 1.0); }

double psi_per_100_ft(double flow_gpm, double c, double diameter_in) {
  return in_psi(hazen_williams_pa(gpm(flow_gpm), c, inches(diameter_in), feet(100)));
}

// ---- City of Oshkosh WI, permit record 0137320 (state plumbing form SBD-6479, filled in); adopted form, public
// record. Tolerance: 2 % on friction, 0.05 psi on the sums (the form carries one decimal). 22 WSFU, 15.2 gpm; main 44.0
// psi; service 1-1/4 in PE, 50 ft; rise 5.0 ft; 3/4 in meter; shower 20.0 psi; rise 15 ft.
constexpr double oshkosh_bore_in = 1.069;  // CTS SDR 9, which is what the published loss belongs to (see below)

TEST(OshkoshWorksheet, ServiceFriction) {
  EXPECT_LT(std::fabs(percent_off(psi_per_100_ft(15.2, 150, oshkosh_bore_in), 4.66)), 2.0);
}

TEST(OshkoshWorksheet, LineByLine) {
  const double friction = psi_per_100_ft(15.2, 150, oshkosh_bore_in) * 0.5;
  struct Line {
    const char* what;
    double lost_psi, published_after_psi;
  };
  const Line lines[] = {
      {"7 service friction", friction, 41.7},
      {"8 rise 5.0 ft x 0.434", 5.0 * 0.434, 39.5},
      {"C meter, 3/4 in at 15.2 gpm", 3.7, 35.8},
      {"D pressure-balanced shower", 20.0, 15.8},
      {"E valve to fixture, 15 ft x 0.434", 15.0 * 0.434, 9.3},
  };
  double left = 44.0;
  for (const Line& line : lines) {
    left -= line.lost_psi;
    EXPECT_NEAR(left, line.published_after_psi, 0.1) << line.what;
  }
}

// Disagreement: the form's label says Schedule 40 (1.380 in), its number is that of CTS SDR 9. Label and value cannot
// both hold.
TEST(OshkoshWorksheet, LabelOfThePipeContradictsItsLoss) {
  EXPECT_LT(percent_off(psi_per_100_ft(15.2, 150, 1.380), 4.66), -70.0);
}

// ---- US Army engineer course EN0389, main of 1,400 ft, 100 gpm, C 100, 6 in: 2.4 ft lost.
// Tolerance: half of the last printed digit, 0.05 ft.
TEST(ArmyCourse, MainLosesTwoPointFourFeet) {
  EXPECT_NEAR(in_feet_of_water(hazen_williams_pa(gpm(100), 100, inches(6), feet(1400))), 2.4, 0.05);
}

struct Row {
  const char* pipe;
  double diameter_in, flow_gpm, published;
};

// ---- Schedule 40 plastic, C 150, feet of head per 100 ft: Illinois Administrative Code 77-906, appendix A, exhibit I.
// Tolerance: 1.2 %, or half of the last printed digit. Only rows whose columns are certain.
TEST(IllinoisPlastic, HeadPerHundredFeet) {
  const Row rows[] = {
      {"1", 1.049, 3, 0.60},      {"1", 1.049, 5, 1.52},      {"1", 1.049, 8, 3.63},      {"1", 1.049, 10, 5.50},
      {"1-1/4", 1.380, 10, 1.46}, {"1-1/4", 1.380, 15, 3.06}, {"1-1/4", 1.380, 20, 5.23}, {"1-1/2", 1.610, 20, 2.46},
      {"1-1/2", 1.610, 25, 3.75}, {"1-1/2", 1.610, 30, 5.22}, {"2", 2.067, 20, 0.74},     {"2", 2.067, 30, 1.54},
      {"2", 2.067, 50, 3.98},     {"3", 3.068, 100, 2.09},
  };
  for (const Row& row : rows) {
    const double head = in_feet_of_water(hazen_williams_pa(gpm(row.flow_gpm), 150, inches(row.diameter_in), feet(100)));
    EXPECT_NEAR(head, row.published, 0.012 * row.published) << row.pipe << " in, " << row.flow_gpm << " gpm";
  }
}

// ---- Copper, psi per 100 ft: irrigationtutorials.com, copper loss table (secondary).
// Tolerance at C 140: Type L 3 %, Type K 1-1/4 in 3 %.
TEST(CopperTable, TypeLAndLargeTypeK) {
  const Row rows[] = {
      {"L 3/4", 0.785, 4, 2.05},    {"L 3/4", 0.785, 5, 3.09},    {"L 1", 1.025, 4, 0.56},
      {"L 1/2", 0.545, 2, 3.44},    {"L 1/2", 0.545, 4, 12.41},   {"L 1/2", 0.545, 5, 18.77},
      {"K 1-1/4", 1.245, 20, 4.28}, {"K 1-1/4", 1.245, 26, 6.95},
  };
  for (const Row& row : rows) {
    EXPECT_NEAR(psi_per_100_ft(row.flow_gpm, 140, row.diameter_in), row.published, 0.03 * row.published)
        << row.pipe << " in, " << row.flow_gpm << " gpm";
  }
}

// Disagreement: the table's K 1/2 in rows lie 9 % above C 140 on the standard bore (0.527 in), though the metal is the
// same; they fit C 133 within 1 %. The table most likely rests on another bore. We keep one C for one material.
TEST(CopperTable, HalfInchTypeKIsHigherThanItsOwnMaterialExplains) {
  const Row rows[] = {{"K 1/2", 0.527, 2, 4.33}, {"K 1/2", 0.527, 4, 15.67}};
  for (const Row& row : rows) {
    const double off = percent_off(psi_per_100_ft(row.flow_gpm, 140, row.diameter_in), row.published);
    EXPECT_LT(off, -8.0);
    EXPECT_GT(off, -10.0);
    EXPECT_NEAR(psi_per_100_ft(row.flow_gpm, 133, row.diameter_in), row.published, 0.01 * row.published);
  }
}

// ---- Illinois Plumbing Code, 77 Ill. Adm. Code 890, appendix A, table N (adopted text): demand, size, loss, velocity.
struct TableN {
  double wsfu, flow_gpm;
  const char* pipe;
  double type_l_bore_in, loss_psi, velocity_ft_per_s;
};
constexpr TableN table_n[] = {
    {2, 2, "1/2", 0.545, 4.2, 2.7},      {4, 3, "1/2", 0.545, 8.7, 4.2},        {6, 5, "1/2", 0.545, 22.5, 7.0},
    {8, 6.5, "3/4", 0.785, 6.3, 4.3},    {10, 8, "3/4", 0.785, 9.0, 5.4},       {12, 9.2, "3/4", 0.785, 11.5, 6.1},
    {14, 10.4, "3/4", 0.785, 15.0, 6.9}, {16, 11.6, "3/4", 0.785, 18.0, 7.7},   {20, 14, "1", 1.025, 7.2, 5.6},
    {25, 17, "1", 1.025, 10.0, 6.6},     {30, 20, "1", 1.025, 13.6, 8.0},       {35, 22.5, "1-1/4", 1.265, 5.8, 5.7},
    {40, 25, "1-1/4", 1.265, 7.0, 6.3},  {45, 27, "1-1/4", 1.265, 8.2, 6.9},    {50, 29, "1-1/4", 1.265, 9.5, 7.4},
    {60, 32, "1-1/2", 1.505, 5.0, 5.8},  {70, 35, "1-1/2", 1.505, 6.2, 6.4},    {80, 38, "1-1/2", 1.505, 7.0, 7.2},
    {90, 41, "1-1/2", 1.505, 8.0, 7.5},  {100, 43.5, "1-1/2", 1.505, 8.7, 7.8}, {120, 48, "2", 1.985, 2.7, 5.0},
    {140, 52.5, "2", 1.985, 3.1, 5.4},   {160, 57, "2", 1.985, 3.6, 5.8},       {200, 65, "2", 1.985, 4.5, 6.6},
};

// Tolerance: 7 % at C 125 on the Type L bore (the table implies C 121 to 129).
TEST(IllinoisTableN, LossIsHazenWilliamsAtC125) {
  for (const TableN& row : table_n) {
    EXPECT_NEAR(psi_per_100_ft(row.flow_gpm, 125, row.type_l_bore_in), row.loss_psi, 0.07 * row.loss_psi)
        << row.wsfu << " wsfu, " << row.pipe << " in";
  }
}

// Disagreement: no single C, and not copper's 140: at that figure the table's losses lie 15 to 30 % above ours. The
// code allows for age.
TEST(IllinoisTableN, LossIsHigherThanNewCopperHas) {
  for (const TableN& row : table_n) {
    const double off = percent_off(psi_per_100_ft(row.flow_gpm, 140, row.type_l_bore_in), row.loss_psi);
    EXPECT_LT(off, -13.0) << row.wsfu << " wsfu";
    EXPECT_GT(off, -24.0) << row.wsfu << " wsfu";
  }
}

// Tolerance: 0.2 ft/s (the table was read off a chart), but for the two rows below.
TEST(IllinoisTableN, VelocityIsThatOfTypeL) {
  for (const TableN& row : table_n) {
    if (row.wsfu == 30 || row.wsfu == 80) continue;
    EXPECT_NEAR(in_feet_per_second(velocity_m_per_s(gpm(row.flow_gpm), inches(row.type_l_bore_in))),
                row.velocity_ft_per_s, 0.2)
        << row.wsfu << " wsfu, " << row.pipe << " in";
  }
}

// Disagreement: flow over area is exact, so these two printed velocities are not: 8.0 (7.78) and 7.2 (6.85) ft/s. The
// second would fit its neighbours as 6.9.
TEST(IllinoisTableN, TwoVelocitiesAreNotFlowOverArea) {
  const double at_30 = in_feet_per_second(velocity_m_per_s(gpm(20), inches(1.025)));
  const double at_80 = in_feet_per_second(velocity_m_per_s(gpm(38), inches(1.505)));
  EXPECT_NEAR(8.0 - at_30, 0.22, 0.01);
  EXPECT_NEAR(7.2 - at_80, 0.35, 0.01);
}

// ---- v[ft/s] = 0.4085 Q/d² as printed with the tables, and the flush flows it gives for 3 ft/s (recomputed).
// Tolerance: 1 in the last printed digit.
TEST(FlushFlow, ForThreeFeetPerSecond) {
  const Row rows[] = {
      {"L 3/4", 0.785, 4.5, 3}, {"L 1", 1.025, 7.7, 3}, {"K 1", 0.995, 7.3, 3}, {"SDR 9 1", 0.875, 5.6, 3}};
  for (const Row& row : rows) {
    EXPECT_NEAR(in_feet_per_second(velocity_m_per_s(gpm(row.flow_gpm), inches(row.diameter_in))), row.published, 0.04)
        << row.pipe;
  }
}

// ---- Colebrook: F. M. White, Fluid Mechanics, examples 6.6 and 6.7; San Diego State University, CIVE 444 example.
// Tolerance: half of the last digit printed for computed values; 2 % for values read off the Moody chart.
TEST(Colebrook, TextbookFactors) {
  struct Case {
    const char* source;
    double reynolds, roughness, published, tolerance;
  };
  const Case cases[] = {
      {"White 6.6", 2.7e5, 0.0008, 0.0198, 0.00005},
      {"White 6.7, chart", 128000, 0.0013, 0.0225, 0.02 * 0.0225},
      {"CIVE 444", 356711, 0.0005, 0.018, 0.0005},
  };
  for (const Case& c : cases) EXPECT_NEAR(colebrook(c.reynolds, c.roughness), c.published, c.tolerance) << c.source;
}

// Points of the equation itself, solved elsewhere (equation as printed by D. Clamond, 2009).
// Tolerance: one in the last digit (0.02218 was rounded up: the equation gives 0.0221745).
TEST(Colebrook, PointsOfTheEquation) {
  struct Point {
    double reynolds, roughness, factor, digit;
  };
  const Point points[] = {{1e4, 0, 0.03088, 1e-5},     {1e5, 0, 0.01799, 1e-5},    {1e6, 0, 0.01165, 1e-5},
                          {1e5, 1e-4, 0.018514, 1e-6}, {1e5, 1e-3, 0.02218, 1e-5}, {1e8, 1e-3, 0.01964, 1e-5}};
  for (const Point& p : points) {
    EXPECT_NEAR(colebrook(p.reynolds, p.roughness), p.factor, p.digit) << p.reynolds << ' ' << p.roughness;
  }
}

// ---- White, example 6.6: 6-in asphalted cast iron, e/d 0.0008, 200 ft, 6 ft/s: head 4.5 ft, 280 lbf/ft².
// Tolerance: 2 % (the book rounds the factor to 0.02). Temperature 68 °F, the book's water.
TEST(Darcy, WhiteExampleSixPointSix) {
  const double d = feet(0.5);
  const double flow = feet_per_second(6) * pi / 4 * d * d;
  const double loss_pa = darcy_pa(flow, 0.0008 * d, d, feet(200), fahrenheit(68));
  EXPECT_NEAR(in_psi(loss_pa) * 144, 280, 0.02 * 280);
  EXPECT_NEAR(in_feet_of_water(loss_pa), 4.5, 0.02 * 4.5);
}

// ---- CIVE 444: 10-in pipe, roughness 0.0005, head gradient 0.008: 4.88 ft/s, 2.66 cfs.
// Tolerance: 1 %. Reynolds 356,711 at that speed is water near 60 °F (1.14e-5 ft²/s against 1.22e-5).
TEST(Darcy, SanDiegoStateExample) {
  const double d = inches(10);
  const double flow = 2.66 * foot_m * foot_m * foot_m;
  EXPECT_NEAR(in_feet_per_second(velocity_m_per_s(flow, d)), 4.88, 0.005);
  const double head_ft_per_ft = in_feet_of_water(darcy_pa(flow, 0.0005 * d, d, feet(1000), fahrenheit(60))) / 1000;
  EXPECT_NEAR(head_ft_per_ft, 0.008, 0.01 * 0.008);
}

// ---- White, example 6.7: oil, 500 m of 200 mm pipe at 6.4 m/s, chart factor 0.0225: head 117 m (from memory).
// Tolerance: 1 % for the law itself with the chart's factor; by Colebrook the head is 1 % more.
TEST(Darcy, WhiteExampleSixPointSevenByItsLaw) {
  const double velocity_head = 6.4 * 6.4 / (2 * 9.81);
  EXPECT_NEAR(0.0225 * 500 / 0.2 * velocity_head, 117, 0.01 * 117);
  EXPECT_NEAR(colebrook(128000, 0.0013) * 500 / 0.2 * velocity_head, 118.6, 0.1);
}

// ---- A trade page states 1.5 psi per 100 ft for 10 gpm in 3/4 in Type L copper.
// Disagreement: every other source gives 10 to 13; 1.5 is off by a factor of seven.
TEST(TradePage, ThreeQuarterCopperAtTenGallonsIsWrongBySevenfold) {
  EXPECT_NEAR(psi_per_100_ft(10, 140, 0.785), 11.1, 0.1);
  EXPECT_GT(psi_per_100_ft(10, 140, 0.785), 7 * 1.5);
}

}  // namespace
}  // namespace headgate::water
