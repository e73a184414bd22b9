// Density, viscosity, thermal expansion and tank size against published tables and examples.
#include <cmath>

#include <gtest/gtest.h>

#include "water/expansion.hpp"
#include "water/functions.hpp"
#include "water/properties.hpp"
#include "water/trade_units.hpp"

namespace headgate::water {
namespace {

using namespace trade;

// ---- Kell, J. Chem. Eng. Data 20 (1975) 97, equation 16, recomputed elsewhere at the trade's temperatures.
// Tolerance: half of the last digit of each column.
TEST(Kell, DensityAtTheTradesTemperatures) {
  struct Row {
    double fahrenheit, kg_per_m3, ft3_per_lb;
  };
  const Row rows[] = {
      {40, 999.970, .016019},  {50, 999.700, .016023},  {60, 999.014, .016034},  {80, 996.604, .016073},
      {100, 993.047, .016131}, {120, 988.535, .016204}, {140, 983.199, .016292}, {160, 977.132, .016393},
      {180, 970.401, .016507}, {200, 963.053, .016633},
  };
  for (const Row& row : rows) {
    const double density = density_kg_per_m3(fahrenheit(row.fahrenheit));
    EXPECT_NEAR(density, row.kg_per_m3, 0.0006) << row.fahrenheit;
    EXPECT_NEAR(in_cubic_feet_per_pound(density), row.ft3_per_lb, 0.6e-6) << row.fahrenheit;
  }
}

// ---- Plumbing engineers' handbook chapter (quoted by hvac-eng.com): 40 and 50 °F both 0.01602 ft³/lb.
// Tolerance: half of the last digit.
TEST(Handbook, SpecificVolumeOfColdWater) {
  EXPECT_NEAR(in_cubic_feet_per_pound(density_kg_per_m3(fahrenheit(40))), 0.01602, 0.000005);
  EXPECT_NEAR(in_cubic_feet_per_pound(density_kg_per_m3(fahrenheit(50))), 0.01602, 0.000005);
}

// ---- Same method, from memory: 1,000 gal from 40 to 140 °F with 0.01629/0.01602 gain 16.9 gal.
// Tolerance: 2 %, what two four-digit volumes leave in their difference; the exact gain is 17.06.
TEST(Handbook, ThousandGallonsGainSeventeen) {
  EXPECT_NEAR(in_gallons(expanded_volume_m3(gallons(1000), fahrenheit(40), fahrenheit(140))), 16.9, 0.02 * 16.9);
}

// ---- IAPWS IF97 verification table, region 1 (from memory): 300 K at 3 MPa 0.00100215168 m³/kg; 80 MPa
// 0.000971180894. Disagreement, expected: Kell is for one atmosphere. Water's compressibility near 4.5e-10 /Pa accounts
// for the difference within 0.01 % at 3 MPa; at 80 MPa it is 3 % and the function must not be used.
TEST(If97, PressureIsWhatKellLeavesOut) {
  const double ours = 1 / density_kg_per_m3(300);
  EXPECT_GT(ours, 0.00100215168);
  EXPECT_NEAR(ours * (1 - 4.5e-10 * (3e6 - standard_atmosphere_pa)), 0.00100215168, 1e-4 * 0.001);
  EXPECT_NEAR(ours / 0.000971180894, 1.033, 0.001);
}

// 500 K at 3 MPa (0.00120241800 m³/kg) is no water at one atmosphere: refused, not extrapolated.
TEST(If97, FiveHundredKelvinIsRefused) {
  const double temperature = 500;
  const Evaluated evaluated = evaluate(*find("water-density"), {&temperature, 1}, {&temperature, 1});
  ASSERT_EQ(evaluated.index(), 1u);
  EXPECT_EQ(std::get<Refusal>(evaluated).highest, 373.15);
}

// ---- Viscosity along saturation, µPa·s: chemical engineers' handbook, 9th ed., table 2-135 (reference equation of
// state). Tolerance: 0.2 %.
TEST(Handbook, Viscosity) {
  struct Row {
    double temperature_k, micro_pa_s;
  };
  const Row rows[] = {{273.16, 1791.2}, {280, 1433.7}, {290, 1084.0}, {300, 853.84}, {310, 693.54}, {320, 577.02},
                      {330, 489.49},    {340, 421.97}, {350, 368.77}, {360, 326.10}, {370, 291.36}};
  for (const Row& row : rows) {
    EXPECT_NEAR(viscosity_pa_s(row.temperature_k) * 1e6, row.micro_pa_s, 0.002 * row.micro_pa_s) << row.temperature_k;
  }
}

// ---- Worked examples. "Almost one-half gallon": insidenout.net, 40 gal heater from 90 to 140 °F. 0.84: 50 gal, 50 to
// 140 °F (recomputed; a maker's page gives the same). Tolerance: 0.02 gal and half a digit.
TEST(Examples, HeatersGain) {
  EXPECT_NEAR(in_gallons(expanded_volume_m3(gallons(40), fahrenheit(90), fahrenheit(140))), 0.48, 0.02);
  EXPECT_LT(in_gallons(expanded_volume_m3(gallons(40), fahrenheit(90), fahrenheit(140))), 0.5);
  EXPECT_NEAR(in_gallons(expanded_volume_m3(gallons(50), fahrenheit(50), fahrenheit(140))), 0.84, 0.005);
}

// ---- Tank sizes by the published form (Boyle, absolute), recomputed elsewhere, without and with a steel vessel's own
// growth of 3 alpha ΔT, alpha 6.5e-6 /°F. Tolerance: 0.2 %, the rounding of
// the specific volumes they were made with.
TEST(Examples, TankSizes) {
  struct Row {
    double gallons, cold_f, hot_f, precharge_psi, highest_psi, expanded_gal, tank_gal, tank_with_steel_gal;
  };
  const Row rows[] = {
      {40, 40, 140, 60, 150, 0.682, 1.247, 1.105}, {50, 40, 140, 60, 150, 0.852, 1.559, 1.381},
      {50, 60, 140, 80, 135, 0.805, 2.190, 1.977}, {50, 50, 120, 60, 100, 0.565, 1.620, 1.424},
      {80, 40, 140, 60, 150, 1.363, 2.495, 2.209},
  };
  for (const Row& row : rows) {
    const double gain = expanded_volume_m3(gallons(row.gallons), fahrenheit(row.cold_f), fahrenheit(row.hot_f));
    const double growth = 3 * 6.5e-6 * (row.hot_f - row.cold_f) * gallons(row.gallons);
    const double low = psi(row.precharge_psi);
    const double high = psi(row.highest_psi);
    EXPECT_NEAR(in_gallons(gain), row.expanded_gal, 0.002 * row.expanded_gal) << row.gallons << " gal";
    EXPECT_NEAR(in_gallons(tank_volume_m3(gain, low, high)), row.tank_gal, 0.002 * row.tank_gal)
        << row.gallons << " gal";
    EXPECT_NEAR(in_gallons(tank_volume_m3(gain - growth, low, high)), row.tank_with_steel_gal,
                0.002 * row.tank_with_steel_gal)
        << row.gallons << " gal";
  }
}

// Disagreement: makers' selection tables are made for a charge of 40 psi and a limit of 150 (published with them), so a
// size picked there is too small for a house charged to 80 psi.
TEST(Examples, SelectionTablesForFortyPoundsAreTooSmallAtEighty) {
  const double gain = expanded_volume_m3(gallons(50), fahrenheit(50), fahrenheit(140));
  EXPECT_GT(tank_volume_m3(gain, psi(80), psi(150)), 1.5 * tank_volume_m3(gain, psi(40), psi(150)));
}

}  // namespace
}  // namespace headgate::water
