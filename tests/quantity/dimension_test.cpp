#include "quantity/dimension.hpp"

#include <set>

#include <gtest/gtest.h>

namespace headgate::quantity {
namespace {

namespace d = dimensions;

TEST(Dimension, HasTheNamesVocabulariesUse) {
  EXPECT_EQ(named("pressure"), d::pressure);
  EXPECT_EQ(named("temperature-difference"), d::warming);
  EXPECT_EQ(named("number"), d::none);
  EXPECT_EQ(named("presure"), std::nullopt);
  EXPECT_EQ(named("Pressure"), std::nullopt);
  EXPECT_EQ(named(""), std::nullopt);
  EXPECT_EQ(named("length^2"), std::nullopt);
}

TEST(Dimension, NamesAndDimensionsAreOneToOne) {
  std::set<std::string> seen;
  for (const std::string& name : dimension_names()) {
    ASSERT_TRUE(named(name)) << name;
    EXPECT_EQ(name_of(*named(name)), name);
    EXPECT_TRUE(seen.insert(name).second) << name;
  }
}

TEST(Dimension, MultipliesAndDivides) {
  EXPECT_EQ(quotient(d::flow, d::area), d::velocity);
  EXPECT_EQ(quotient(d::force, d::area), d::pressure);
  EXPECT_EQ(product(d::gradient, d::length), d::pressure);
  EXPECT_EQ(product(d::flow, d::time), d::volume);
  EXPECT_EQ(product(d::pressure, d::volume), d::energy);
  EXPECT_TRUE(quotient(d::size, d::size).plain());
  EXPECT_NE(quotient(d::size, d::length), d::none);
}

TEST(Dimension, KeepsTemperatureApartFromADifference) {
  EXPECT_NE(d::temperature, d::warming);
  EXPECT_EQ(product(d::temperature, d::none), d::warming);
  EXPECT_FALSE(quotient(d::temperature, d::time).absolute);
}

TEST(Dimension, SpellsOutWhatHasNoName) {
  EXPECT_EQ(name_of(quotient(d::area, d::time)), "length^2 / time");
  EXPECT_EQ(name_of(product(d::area, d::area)), "length^4");
  EXPECT_EQ(name_of(quotient(d::none, d::time)), "1 / time");
  EXPECT_EQ(name_of(quotient(d::size, d::warming)), "size / temperature-difference");
  EXPECT_EQ(name_of(product(d::pressure, d::length)), "mass / time^2");
}

TEST(Dimension, StopsAtTheLargestPowerInsteadOfWrapping) {
  Dimension big = d::volume;
  for (int i = 0; i < 10; ++i) big = product(big, big);
  EXPECT_EQ(big.length, 127);
  EXPECT_EQ(quotient(quotient(d::none, big), big).length, -127);
}

TEST(Dimension, HasAGridForEveryDimension) {
  for (const std::string& name : dimension_names()) {
    EXPECT_GT(grid(*named(name)), 0) << name;
    EXPECT_LE(grid(*named(name)), 0.01) << name;
  }
  EXPECT_EQ(grid(d::length), 1e-12);
  EXPECT_DOUBLE_EQ(grid(d::pressure), 6894.757293168361e-6);
  EXPECT_DOUBLE_EQ(grid(d::flow), 6.30901964e-11);
  EXPECT_EQ(grid(quotient(d::area, d::time)), 1e-12);
}

}  // namespace
}  // namespace headgate::quantity
