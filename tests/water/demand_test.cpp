#include "water/demand.hpp"

#include <gtest/gtest.h>

namespace headgate::water {
namespace {

TEST(BinomialDemand, EndsOfTheRange) {
  EXPECT_EQ(binomial_demand(0, 0.2, 0.99), 0);
  EXPECT_EQ(binomial_demand(10, 0, 0.99), 0);
  EXPECT_EQ(binomial_demand(10, 1, 0.99), 10);
  EXPECT_EQ(binomial_demand(10000, 0.5, 0.9999), 5186);
}

TEST(BinomialDemand, OneFixtureInUseOnePercentOfTheTimeIsJustNotExpected) {
  // Both sides are 0.99; what the last bit of either says must not matter.
  EXPECT_EQ(binomial_demand(1, 0.01, 0.99), 0);
  EXPECT_EQ(binomial_demand(1, 0.0101, 0.99), 1);
  EXPECT_EQ(binomial_demand(1, 0.5, 0.5), 0);
}

// A second way to the same number: add the terms of the distribution one by one.
double summed(int count, double probability, double percentile) {
  double term = 1;
  for (int i = 0; i < count; ++i) term *= 1 - probability;
  double sum = term;
  int m = 0;
  while (sum + 1e-12 < percentile) {
    term *= (count - m) / (m + 1.0) * probability / (1 - probability);
    sum += term;
    ++m;
  }
  return m;
}

TEST(BinomialDemand, AgreesWithTheSumOfTerms) {
  for (int count = 0; count <= 60; ++count) {
    for (const double p : {0.01, 0.03, 0.067, 0.2, 0.5, 0.9}) {
      for (const double percentile : {0.5, 0.95, 0.99, 0.999}) {
        EXPECT_EQ(binomial_demand(count, p, percentile), summed(count, p, percentile))
            << count << ' ' << p << ' ' << percentile;
      }
    }
  }
}

}  // namespace
}  // namespace headgate::water
