#include "quantity/interval.hpp"

#include <algorithm>
#include <cmath>
#include <random>

#include <gtest/gtest.h>

namespace headgate::quantity {
namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr Interval at_least_two{2, infinity};
constexpr Interval at_most_two{-infinity, 2};

TEST(Interval, KnowsExactAndUnknown) {
  EXPECT_TRUE(Interval{}.everything());
  EXPECT_FALSE(Interval{}.exact());
  EXPECT_TRUE(exactly(3).exact());
  EXPECT_FALSE(at_least_two.everything());
}

TEST(Interval, Adds) {
  EXPECT_EQ(add({1, 2}, {10, 20}), (Interval{11, 22}));
  EXPECT_EQ(subtract({1, 2}, {10, 20}), (Interval{-19, -8}));
  EXPECT_EQ(add(at_least_two, {1, 1}), (Interval{3, infinity}));
  EXPECT_EQ(negate({-1, 3}), (Interval{-3, 1}));
}

TEST(Interval, KnowsNothingOfInfinityLessInfinity) {
  EXPECT_TRUE(add(at_least_two, at_most_two).everything());
  EXPECT_TRUE(subtract(at_least_two, at_least_two).everything());
  EXPECT_TRUE(add({}, exactly(1)).everything());
}

TEST(Interval, KnowsNothingOnceItOverflows) {
  EXPECT_TRUE(add(exactly(1.7e308), exactly(1.7e308)).everything());
  EXPECT_TRUE(multiply(exactly(-1e200), exactly(1e200)).everything());
  EXPECT_TRUE(divide(exactly(1e300), exactly(1e-300)).everything());
}

TEST(Interval, Multiplies) {
  EXPECT_EQ(multiply({2, 3}, {4, 5}), (Interval{8, 15}));
  EXPECT_EQ(multiply({-2, 3}, {4, 5}), (Interval{-10, 15}));
  EXPECT_EQ(multiply({-2, 3}, {-4, 5}), (Interval{-12, 15}));
  EXPECT_EQ(multiply(at_least_two, {3, 4}), (Interval{6, infinity}));
}

TEST(Interval, KnowsNothingOfZeroTimesInfinity) {
  EXPECT_TRUE(multiply(exactly(0), {}).everything());
  EXPECT_TRUE(multiply({0, 1}, at_least_two).everything());
}

TEST(Interval, Divides) {
  EXPECT_EQ(divide({8, 16}, {2, 4}), (Interval{2, 8}));
  EXPECT_EQ(divide({8, 16}, {-4, -2}), (Interval{-8, -2}));
  EXPECT_EQ(divide(exactly(8), at_least_two), (Interval{0, 4}));
}

TEST(Interval, KnowsNothingOfADivisionThatMayBeByZero) {
  EXPECT_TRUE(divide(exactly(1), exactly(0)).everything());
  EXPECT_TRUE(divide(exactly(1), {0, 1}).everything());
  EXPECT_TRUE(divide(exactly(1), {-1, 1}).everything());
  EXPECT_TRUE(divide(exactly(0), exactly(0)).everything());
  EXPECT_TRUE(divide(at_least_two, at_least_two).everything());
}

TEST(Interval, PicksAndSpans) {
  EXPECT_EQ(least({1, 5}, {2, 3}), (Interval{1, 3}));
  EXPECT_EQ(greatest({1, 5}, {2, 3}), (Interval{2, 5}));
  EXPECT_EQ(hull({1, 2}, {5, 6}), (Interval{1, 6}));
  EXPECT_EQ(least({}, exactly(3)), (Interval{-infinity, 3}));
}

TEST(Less, HoldsTheManualsExample) { EXPECT_EQ(less(exactly(79), {78, 80}, 1e-6), Truth::undecided); }

TEST(Less, DecidesOnlyWhatEveryValueAgreesOn) {
  EXPECT_EQ(less({1, 2}, {3, 4}, 1), Truth::yes);
  EXPECT_EQ(less({1, 3}, {3, 4}, 1), Truth::undecided);
  EXPECT_EQ(less({4, 5}, {3, 4}, 1), Truth::no);
  EXPECT_EQ(less_or_equal({1, 3}, {3, 4}, 1), Truth::yes);
  EXPECT_EQ(less_or_equal({4, 5}, {3, 4}, 1), Truth::undecided);
  EXPECT_EQ(less_or_equal({5, 6}, {3, 4}, 1), Truth::no);
  EXPECT_EQ(same(exactly(3), exactly(3), 1), Truth::yes);
  EXPECT_EQ(same({3, 4}, {3, 4}, 1), Truth::undecided);
  EXPECT_EQ(same({1, 2}, {3, 4}, 1), Truth::no);
}

TEST(Less, LeavesTheUnknownUndecided) {
  EXPECT_EQ(less({}, exactly(1), 1), Truth::undecided);
  EXPECT_EQ(less_or_equal({}, {}, 1), Truth::undecided);
  EXPECT_EQ(same({}, {}, 1), Truth::undecided);
  EXPECT_EQ(less(at_least_two, exactly(2), 1), Truth::no);
  EXPECT_EQ(less_or_equal(at_most_two, exactly(2), 1), Truth::yes);
  const double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_EQ(less({nan, nan}, exactly(2), 1), Truth::undecided);
}

TEST(Less, SeesNoDifferenceBelowTheGrid) {
  const double step = grid(dimensions::length);
  EXPECT_EQ(same(exactly(12 * 0.0254), exactly(0.3048), step), Truth::yes);
  EXPECT_EQ(less(exactly(0.1 + 0.2), exactly(0.3), step), Truth::no);
  EXPECT_EQ(less_or_equal(exactly(0.1 + 0.2), exactly(0.3), step), Truth::yes);
  EXPECT_EQ(less(exactly(0.3), exactly(0.3 + 2e-12), step), Truth::yes);
}

TEST(Snap, GivesWholeSteps) {
  EXPECT_EQ(snap(0.3048, 1e-12), 304800000000.0);
  EXPECT_EQ(snap(-2.4, 1), -2);
  EXPECT_EQ(snap(infinity, 1e-6), infinity);
  EXPECT_EQ(snap(-infinity, 1e-6), -infinity);
  EXPECT_FALSE(std::signbit(snap(-0.1, 1)));
}

TEST(Snap, CoarsensPastWhatADoubleHoldsAndKeepsTheOrder) {
  EXPECT_EQ(snap(40000 / 3.0, 1e-12), snap(40000 * (1 / 3.0), 1e-12));
  std::mt19937_64 random(20261002);
  std::uniform_real_distribution<double> power(-3, 30);
  for (int i = 0; i < 20000; ++i) {
    const double a = std::exp2(power(random) * 3);
    const double b = a * (1 + std::exp2(-power(random) - 20));
    EXPECT_LE(snap(a, 1e-12), snap(b, 1e-12)) << a << " " << b;
  }
}

// Whatever values the inputs allow, the result holds what they give.
TEST(Interval, IsSoundForRandomInputs) {
  std::mt19937_64 random(7);
  std::uniform_real_distribution<double> value(-10, 10);
  const auto some = [&] {
    const double a = value(random);
    const double b = value(random);
    return a < b ? Interval{a, b} : Interval{b, a};
  };
  const auto within = [&](Interval i) {
    return i.lo + (i.hi - i.lo) * std::uniform_real_distribution<double>(0, 1)(random);
  };
  const auto holds = [](Interval i, double x) { return i.lo <= x + 1e-9 && x <= i.hi + 1e-9; };
  for (int i = 0; i < 20000; ++i) {
    const Interval a = some();
    const Interval b = some();
    const double x = within(a);
    const double y = within(b);
    EXPECT_TRUE(holds(add(a, b), x + y));
    EXPECT_TRUE(holds(subtract(a, b), x - y));
    EXPECT_TRUE(holds(multiply(a, b), x * y));
    EXPECT_TRUE(y == 0 || std::fabs(x / y) > 1e6 || holds(divide(a, b), x / y));
    EXPECT_TRUE(holds(least(a, b), std::min(x, y)));
    EXPECT_TRUE(holds(greatest(a, b), std::max(x, y)));
    EXPECT_NE(less(a, b, 1e-9), x < y ? Truth::no : Truth::yes);
  }
}

TEST(Truth, IsKleenes) {
  for (const Truth a : {Truth::no, Truth::undecided, Truth::yes}) {
    EXPECT_EQ(opposite(opposite(a)), a);
    for (const Truth b : {Truth::no, Truth::undecided, Truth::yes}) {
      EXPECT_EQ(both(a, b), both(b, a));
      EXPECT_EQ(opposite(both(a, b)), either(opposite(a), opposite(b)));
    }
  }
  EXPECT_EQ(both(Truth::no, Truth::undecided), Truth::no);
  EXPECT_EQ(either(Truth::yes, Truth::undecided), Truth::yes);
  EXPECT_EQ(both(Truth::yes, Truth::undecided), Truth::undecided);
}

}  // namespace
}  // namespace headgate::quantity
