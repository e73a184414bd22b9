#include "water/pull.hpp"

#include <gtest/gtest.h>

#include "water/trade_units.hpp"

namespace headgate::water {
namespace {

using namespace trade;

TEST(PullLimit, IsTheWallsAreaTimesTheStressAllowed) {
  const double outside = inches(1.375);
  const double wall = outside / 9;
  const double inside = outside - 2 * wall;
  const double area = pi / 4 * (outside * outside - inside * inside);
  EXPECT_NEAR(pull_limit_n(outside, 9, psi(3500), 0.95, 0.40), area * psi(3500) * 0.95 * 0.40, 1e-9);
}

TEST(PullLimit, LongerPullsAllowLess) {
  EXPECT_LT(pull_limit_n(0.035, 9, psi(3500), 0.91, 0.4), pull_limit_n(0.035, 9, psi(3500), 0.95, 0.4));
}

TEST(PullLimit, ThinnerWallsAllowLess) {
  EXPECT_LT(pull_limit_n(0.035, 17, psi(3500), 1, 0.4), pull_limit_n(0.035, 11, psi(3500), 1, 0.4));
}

}  // namespace
}  // namespace headgate::water
