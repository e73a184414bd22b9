// The binomial method against Hunter's own case and recomputed points.
#include <boost/math/distributions/binomial.hpp>
#include <gtest/gtest.h>

#include "water/demand.hpp"

namespace headgate::water {
namespace {

// ---- R. B. Hunter, Methods of estimating loads in plumbing systems, BMS 65 (1940), from memory: flush valves run 9 s
// in 300 (p 0.03, 27 gpm), tanks 60 in 300 (p 0.2, 4 gpm); the design number holds 99 % of the time. Tolerance: none.
TEST(Hunter, HundredFlushValves) {
  EXPECT_EQ(binomial_demand(100, 9.0 / 300, 0.99), 8);
  EXPECT_EQ(binomial_demand(100, 9.0 / 300, 0.99) * 27, 216) << "gpm";
}

// Recomputed elsewhere. Tolerance: none.
TEST(Hunter, OtherPoints) {
  struct Row {
    double count, probability, running;
  };
  const Row rows[] = {{50, 0.03, 5}, {10, 0.03, 2}, {20, 0.2, 8}, {5, 0.2, 3}};
  for (const Row& row : rows) {
    EXPECT_EQ(binomial_demand(row.count, row.probability, 0.99), row.running) << row.count << " at " << row.probability;
  }
}

// The twenty tanks are a near miss: eight of them hold 99.002 % of the time.
TEST(Hunter, TwentyTanksJustReachNinetyNinePercent) {
  EXPECT_NEAR(cdf(boost::math::binomial(20, 0.2), 8), 0.99002, 0.000005);
  EXPECT_EQ(binomial_demand(20, 0.2, 0.9901), 9);
}

}  // namespace
}  // namespace headgate::water
