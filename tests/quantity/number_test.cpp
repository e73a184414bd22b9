#include <clocale>
#include <cmath>
#include <random>

#include <fmt/format.h>
#include <gtest/gtest.h>

#include "quantity/read.hpp"

namespace headgate::quantity {
namespace {

Number number(std::string_view text) { return good(read_number(text)); }

TEST(ReadNumber, ReadsTheLongestNumber) {
  EXPECT_EQ(number("5").value, 5);
  EXPECT_EQ(number("-2.5").value, -2.5);
  EXPECT_EQ(number("3/4").value, 0.75);
  EXPECT_EQ(number("1-1/2").value, 1.5);
  EXPECT_EQ(number("1-1/2 in").used, 5U);
  EXPECT_EQ(number("3 / 4").used, 1U);  // a division, where the language divides
  EXPECT_EQ(number("5ft").used, 1U);
  EXPECT_EQ(number("46'").used, 2U);
  EXPECT_EQ(number("5, 6").used, 1U);
  EXPECT_EQ(number("5,60").used, 1U);
  EXPECT_EQ(number("2-x").used, 1U);
  EXPECT_EQ(number("2 - 1").used, 1U);
  EXPECT_EQ(number("9/8").value, 1.125);
  EXPECT_EQ(number("007").value, 7);
}

TEST(ReadNumber, HasNoNegativeZero) {
  EXPECT_FALSE(std::signbit(number("-0").value));
  EXPECT_FALSE(std::signbit(number("-0.00").value));
}

TEST(ReadNumber, RefusesWithItsId) {
  const std::pair<const char*, const char*> all[] = {
      {"", "number-expected"},
      {"-", "number-expected"},
      {"abc", "number-expected"},
      {"- 5", "number-expected"},
      {"--5", "number-expected"},
      {"$5", "number-expected"},
      {"+5", "number-plus"},
      {".5", "number-point"},
      {"-.5", "number-point"},
      {"5.", "number-point"},
      {"5.x", "number-point"},
      {"−5", "number-dash"},
      {"1–1/2", "number-dash"},
      {"½", "number-fraction-glyph"},
      {"1½", "number-fraction-glyph"},
      {"1 ½", "number-fraction-glyph"},
      {"NaN", "number-not-finite"},
      {"-inf", "number-not-finite"},
      {"Infinity", "number-not-finite"},
      {"0x10", "number-hexadecimal"},
      {"0X1p3", "number-hexadecimal"},
      {"1,000", "number-thousands"},
      {"1_000", "number-thousands"},
      {"1,000,000.5", "number-thousands"},
      {"1e3", "number-exponent"},
      {"1E-3", "number-exponent"},
      {"2.5e+3", "number-exponent"},
      {"1/0", "number-zero-below"},
      {"1-1/0", "number-zero-below"},
      {"-3/4", "number-negative-fraction"},
      {"-1-1/2", "number-negative-fraction"},
      {"1-3/2", "number-improper"},
      {"1-2/2", "number-improper"},
      {"2-1", "number-whole-dash"},
      {"2-1/", "number-whole-dash"},
      {"2-1/x", "number-whole-dash"},
      {"2026-10-02", "number-whole-dash"},
      {"1.2.3", "not-a-number"},
      {"1/2/3", "not-a-number"},
      {"1/2.5", "not-a-number"},
      {"2.5-1", "not-a-number"},
      {"1.5/2", "not-a-number"},
      {"1/1234567890", "number-too-long"},
      {"1234567-1/2", "number-too-long"},
      {"12345678901234567890123456789012345678901", "number-too-long"},
      {"0.0000000000000000000000000000000000000001", "number-too-long"},
  };
  for (const auto& [text, id] : all) EXPECT_EQ(wrong(read_number(text)), id) << text;
}

TEST(ReadNumber, RefusesAThousandFiguresQuickly) {
  EXPECT_EQ(wrong(read_number(std::string(100000, '1'))), "number-too-long");
  EXPECT_EQ(wrong(read_number("1/" + std::string(100000, '1'))), "number-too-long");
  EXPECT_EQ(wrong(read_number("1." + std::string(100000, '1'))), "number-too-long");
}

TEST(ReadNumber, RoundsCorrectly) {
  EXPECT_EQ(number("0.1").value, 0.1);
  EXPECT_EQ(number("14.696").value, 14.696);
  EXPECT_EQ(number("123456789012345678901234567890").value, 123456789012345678901234567890.0);
  EXPECT_EQ(number("0.1000000000000000055511151231257827").value, 0.1);
  EXPECT_EQ(number("9007199254740993").value, 9007199254740992.0);  // a tie goes to even
  EXPECT_EQ(number("0.00000000000000000000000000000000000001").value, 1e-38);
}

TEST(ReadNumber, ReadsBackWhatFmtWrites) {
  std::mt19937_64 random(11);
  std::uniform_real_distribution<double> value(0, 1e6);
  for (int i = 0; i < 5000; ++i) {
    const double x = value(random);
    EXPECT_EQ(number(fmt::format("{}", x)).value, x);
  }
}

// A program that uses this library may have any locale set; a comma locale reads "14.696" as 14.
class UnderCommaLocale : public testing::Test {
 protected:
  void SetUp() override {
    for (const char* name : {"de_DE.UTF-8", "de_DE.utf8", "fr_FR.UTF-8", "nl_NL.UTF-8", "de_DE"}) {
      if (std::setlocale(LC_ALL, name) != nullptr) return;
    }
    GTEST_SKIP() << "no locale with a decimal comma is installed";
  }
  void TearDown() override { std::setlocale(LC_ALL, "C"); }
};

TEST_F(UnderCommaLocale, ReadsAndShowsPoints) {
  ASSERT_STREQ(std::localeconv()->decimal_point, ",");
  EXPECT_EQ(number("14.696").value, 14.696);
  EXPECT_EQ(number("0.1000000000000000055511151231257827").value, 0.1);
  EXPECT_EQ(show(si("79.5 psi"), dimensions::pressure), "79.5 psi");
  EXPECT_EQ(show_rounded(1234.5, dimensions::none, 2), "1200");
  EXPECT_EQ(show(good(read_coarse("more than 2.5 ft")).value, dimensions::length, unit("ft")), "more than 2.5 ft");
}

}  // namespace
}  // namespace headgate::quantity
