// Conversions against NIST SP 811, Guide for the Use of the International System of Units, appendix B. The figures were
// set down from memory of that table (seven digits, as printed there), not read from it; each also follows from the
// exact definitions of inch, gallon and pound. Tolerance: half a unit of the last printed digit.
#include <cmath>

#include <gtest/gtest.h>

#include "quantity/unit.hpp"

namespace headgate::quantity {
namespace {

double si(std::string_view text, std::optional<Dimension> wanted = std::nullopt) {
  const Read<Quantity> read = read_quantity(text, wanted);
  const Quantity* quantity = std::get_if<Quantity>(&read);
  EXPECT_NE(quantity, nullptr) << text;
  return quantity == nullptr ? 0 : quantity->si;
}

TEST(UnitsOfSp811, AgreeToTheLastPrintedDigit) {
  struct Row {
    const char* unit;
    double printed;
    double half_digit;
  };
  const Row rows[] = {
      {"1 in", 2.54e-2, 0},       // exact
      {"1 ft", 3.048e-1, 0},      // exact
      {"1 yd", 9.144e-1, 0},      // exact
      {"1 mi", 1.609344e3, 0},    // exact
      {"1 mil", 2.54e-5, 0},      // exact
      {"1 in2", 6.4516e-4, 0},    // exact
      {"1 ft2", 9.290304e-2, 0},  // exact
      {"1 gal", 3.785412e-3, 0.5e-9},
      {"1 in3", 1.638706e-5, 0.5e-11},
      {"1 ft3", 2.831685e-2, 0.5e-8},
      {"1 gpm", 6.309020e-5, 0.5e-11},
      {"1 gpd", 4.381264e-8, 0.5e-14},
      {"1 ft3/min", 4.719474e-4, 0.5e-10},
      {"1 ft/min", 5.08e-3, 0},  // exact
      {"1 lb", 4.535924e-1, 0.5e-7},
      {"1 lbf", 4.448222, 0.5e-6},
      {"1 psi", 6.894757e3, 0.5e-3},
      {"1 bar", 1e5, 0},  // exact
      {"1 ft-lbf", 1.355818, 0.5e-6},
      {"1 lb/ft3", 1.601846e1, 0.5e-5},
      {"1 min", 60, 0},
      {"1 h", 3600, 0},
  };
  for (const Row& row : rows) {
    EXPECT_NEAR(si(row.unit), row.printed, row.half_digit + 1e-15 * row.printed) << row.unit;
  }
}

// With the digits of our own sheet, which go further than the table's seven.
TEST(UnitsOfSp811, AgreeWithTheFullDefinitions) {
  EXPECT_NEAR(si("1 psi"), 6894.757293, 0.5e-6);
  EXPECT_NEAR(si("1 gpm"), 0.0630901964e-3, 0.5e-13);
  EXPECT_DOUBLE_EQ(si("1 gal"), 3.785411784e-3);
  EXPECT_NEAR(si("1 lbf"), 4.4482216, 0.5e-7);
}

TEST(UnitsOfSp811, ConvertTemperature) {
  const auto kelvin = [](double fahrenheit) { return (fahrenheit + 459.67) / 1.8; };
  for (const double f : {-40.0, 32.0, 40.0, 60.0, 140.0, 212.0}) {
    const std::string number = std::to_string(static_cast<int>(f));
    EXPECT_NEAR(si(number + " F"), kelvin(f), 1e-9) << f;
    EXPECT_NEAR(si(number + " F", dimensions::warming), f / 1.8, 1e-9) << f;
  }
  EXPECT_NEAR(si("0 C"), 273.15, 1e-12);
  EXPECT_NEAR(si("-40 C"), si("-40 F"), 1e-9);
}

// One psi is 2.3067 ft of water at 62.428 lb/ft3; the trade rounds it to 2.31.
TEST(UnitsOfSp811, GiveTheHeadOfAPound) {
  const double gravity = 9.80665;
  const double head_m = si("1 psi") / (si("62.428 lb/ft3") * gravity);
  EXPECT_NEAR(head_m / si("1 ft"), 2.3067, 0.5e-4);
}

}  // namespace
}  // namespace headgate::quantity
