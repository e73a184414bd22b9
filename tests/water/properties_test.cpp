#include "water/properties.hpp"

#include <gtest/gtest.h>

#include "water/trade_units.hpp"

namespace headgate::water {
namespace {

using namespace trade;

TEST(Density, PeaksAtFourDegrees) {
  EXPECT_NEAR(density_kg_per_m3(densest_k), 999.972, 0.0005);
  EXPECT_GT(density_kg_per_m3(densest_k), density_kg_per_m3(densest_k - 0.001));
  EXPECT_GT(density_kg_per_m3(densest_k), density_kg_per_m3(densest_k + 0.001));
}

TEST(Density, RisesToThePeakAndFallsBeyondIt) {
  for (double c = 0; c < 3.9; c += 0.1) {
    EXPECT_LT(density_kg_per_m3(celsius(c)), density_kg_per_m3(celsius(c + 0.08))) << c;
  }
  for (double c = 4; c < 99.9; c += 0.1) {
    EXPECT_GT(density_kg_per_m3(celsius(c)), density_kg_per_m3(celsius(c + 0.1))) << c;
  }
}

TEST(Density, BetweenTwoTemperaturesLooksAtThePeak) {
  const Densities across = densities_between(celsius(1), celsius(10));
  EXPECT_EQ(across.greatest_kg_per_m3, density_kg_per_m3(densest_k));
  EXPECT_EQ(across.least_kg_per_m3, density_kg_per_m3(celsius(10)));
  const Densities below = densities_between(celsius(0), celsius(2));
  EXPECT_EQ(below.greatest_kg_per_m3, density_kg_per_m3(celsius(2)));
}

TEST(Viscosity, AlwaysFallsAsWaterWarms) {
  for (double c = 0; c < 100; c += 0.5) {
    EXPECT_GT(viscosity_pa_s(celsius(c)), viscosity_pa_s(celsius(c + 0.5))) << c;
  }
}

// Reynolds number rises with temperature only while viscosity falls faster than density; darcy's bounds rest on it.
TEST(Viscosity, FallsFasterThanDensity) {
  for (double c = 0; c < 100; c += 0.5) {
    EXPECT_GT(viscosity_pa_s(celsius(c)) / density_kg_per_m3(celsius(c)),
              viscosity_pa_s(celsius(c + 0.5)) / density_kg_per_m3(celsius(c + 0.5)))
        << c;
  }
}

}  // namespace
}  // namespace headgate::water
