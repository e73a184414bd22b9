#include "water/expansion.hpp"

#include <gtest/gtest.h>

#include "water/trade_units.hpp"

namespace headgate::water {
namespace {

using namespace trade;

TEST(ExpandedVolume, IsNothingWithoutWarmingAndNegativeWhenCooled) {
  EXPECT_EQ(expanded_volume_m3(gallons(50), fahrenheit(60), fahrenheit(60)), 0.0);
  EXPECT_LT(expanded_volume_m3(gallons(50), fahrenheit(140), fahrenheit(60)), 0.0);
}

TEST(ExpandedVolume, ShrinksWhenIceColdWaterWarmsToFourDegrees) {
  EXPECT_LT(expanded_volume_m3(gallons(50), celsius(0), celsius(4)), 0.0);
}

TEST(TankVolume, CountsPressureFromVacuum) {
  // With gauge pressures the answer would be 1.42 gal and the tank too small.
  EXPECT_NEAR(in_gallons(tank_volume_m3(gallons(0.852), psi(60), psi(150))), 1.559, 0.001);
  EXPECT_GT(tank_volume_m3(gallons(0.852), psi(60), psi(150)), gallons(0.852) / (1.0 - 60.0 / 150.0));
}

TEST(TankVolume, UnchargedTankStillCompressesTheAirItHolds) {
  EXPECT_NEAR(tank_volume_m3(0.001, 0, standard_atmosphere_pa), 0.002, 1e-15);
}

TEST(TankVolume, GrowsWithoutBoundAsTheChargeNearsTheHighestPressure) {
  EXPECT_GT(tank_volume_m3(0.001, psi(149), psi(150)), 0.1);
}

}  // namespace
}  // namespace headgate::water
