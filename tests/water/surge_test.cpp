#include "water/surge.hpp"

#include <gtest/gtest.h>

#include "water/trade_units.hpp"

namespace headgate::water {
namespace {

using namespace trade;

TEST(WaveSpeed, NearsTheRigidPipesAsTheWallStiffens) {
  EXPECT_NEAR(in_feet_per_second(wave_speed_m_per_s(inches(1), inches(0.2), psi(3e7))), 4660, 120);
  EXPECT_LT(wave_speed_m_per_s(inches(1), inches(0.2), psi(3e7)), feet_per_second(4660));
}

TEST(WaveSpeed, PlasticIsSlowerThanCopper) {
  const double copper = wave_speed_m_per_s(inches(1.025), inches(0.050), psi(17e6));
  const double polyethylene = wave_speed_m_per_s(inches(0.875), inches(0.125), psi(150e3));
  EXPECT_GT(copper, 3 * polyethylene);
}

TEST(Surge, NoChangeOfVelocityNoSurge) { EXPECT_EQ(surge_pa(0, 1200), 0.0); }

TEST(Surge, IsProportionalToBoth) {
  EXPECT_DOUBLE_EQ(surge_pa(2, 1200), 2 * surge_pa(1, 1200));
  EXPECT_DOUBLE_EQ(surge_pa(1, 1200), 3 * surge_pa(1, 400));
}

}  // namespace
}  // namespace headgate::water
