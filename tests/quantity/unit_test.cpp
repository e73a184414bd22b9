#include "quantity/unit.hpp"

#include <set>

#include <gtest/gtest.h>

#include "quantity/read.hpp"

namespace headgate::quantity {
namespace {

namespace d = dimensions;

std::string shown(std::string_view text, std::optional<Dimension> wanted = std::nullopt) {
  const Quantity quantity = good(read_quantity(text, wanted));
  return show(quantity.si, quantity.dimension, quantity.unit);
}

TEST(Units, AreAllFoundBySpellingWithASource) {
  std::set<std::string_view> seen;
  for (const Unit& entry : units()) {
    EXPECT_EQ(unit(entry.spelling), &entry) << entry.spelling;
    EXPECT_GT(entry.factor, 0) << entry.spelling;
    EXPECT_FALSE(entry.source.empty()) << entry.spelling;
    EXPECT_TRUE(seen.insert(entry.spelling).second) << entry.spelling;
  }
  std::set<std::string> spellings;
  for (const std::string& spelling : unit_spellings()) {
    EXPECT_NE(unit(spelling), nullptr) << spelling;
    EXPECT_TRUE(spellings.insert(spelling).second) << spelling;
  }
}

TEST(Units, MeanWhatIsAskedFor) {
  EXPECT_EQ(unit("F")->dimension, d::temperature);
  EXPECT_EQ(difference_unit("F")->dimension, d::warming);
  EXPECT_EQ(difference_unit("°F"), difference_unit("F"));
  EXPECT_EQ(difference_unit("psi"), nullptr);
  EXPECT_EQ(size_unit("\"")->dimension, d::size);
  EXPECT_EQ(size_unit("ft"), nullptr);
  EXPECT_EQ(unit_of("in", d::size), size_unit("in"));
  EXPECT_EQ(unit_of("in", d::length), unit("in"));
  EXPECT_EQ(unit_of("in", d::pressure), unit("in"));
  EXPECT_EQ(unit("psy"), nullptr);
  EXPECT_EQ(unit(""), nullptr);
}

TEST(Units, HaveOneCustomaryOneOfTheRightDimension) {
  for (const std::string& name : dimension_names()) {
    const Dimension dimension = *named(name);
    if (dimension.plain()) {
      EXPECT_EQ(customary(dimension), nullptr);
    } else {
      ASSERT_NE(customary(dimension), nullptr) << name;
      EXPECT_EQ(customary(dimension)->dimension, dimension) << name;
    }
  }
  EXPECT_EQ(customary(product(d::area, d::area)), nullptr);
}

TEST(ReadQuantity, ReadsHowTheTradeWrites) {
  EXPECT_DOUBLE_EQ(si("5 ft 6 in"), 1.6764);
  EXPECT_DOUBLE_EQ(si("5' 6\""), 1.6764);
  EXPECT_DOUBLE_EQ(si("5'6\""), 1.6764);
  EXPECT_DOUBLE_EQ(si("5′ 6″"), 1.6764);
  EXPECT_DOUBLE_EQ(si("5’ 6”"), 1.6764);
  EXPECT_DOUBLE_EQ(si("5 feet 6 inches"), 1.6764);
  EXPECT_DOUBLE_EQ(si("-5 ft 6 in"), -1.6764);
  EXPECT_DOUBLE_EQ(si("5 ft 6-1/2 in"), 1.6891);
  EXPECT_DOUBLE_EQ(si("46'"), 14.0208);
  EXPECT_DOUBLE_EQ(si("20\""), 0.508);
  EXPECT_DOUBLE_EQ(si("1-1/2 in"), 0.0381);
  EXPECT_DOUBLE_EQ(si("3/4\""), 0.01905);
  EXPECT_DOUBLE_EQ(si("2.5 %"), 0.025);
  EXPECT_DOUBLE_EQ(si("2.5%"), 0.025);
  EXPECT_DOUBLE_EQ(si("50 mg/L"), 0.05);
  EXPECT_DOUBLE_EQ(si("1 h 30 min"), 5400);
  EXPECT_DOUBLE_EQ(si("80 psig"), si("80 psi"));
  EXPECT_DOUBLE_EQ(si("140 °F"), si("140 F"));
  EXPECT_DOUBLE_EQ(si("140°F"), si("140 F"));
  EXPECT_DOUBLE_EQ(si("  80   psi "), si("80 psi"));
}

TEST(ReadQuantity, TakesTheTypeThePlaceDemands) {
  const Quantity size = good(read_quantity("3/4\"", d::size));
  EXPECT_EQ(size.dimension, d::size);
  EXPECT_EQ(size.si, 0.75);
  EXPECT_EQ(size.unit, size_unit("in"));
  EXPECT_EQ(good(read_quantity("20 mm", d::size)).si, 20);
  EXPECT_EQ(good(read_quantity("20 mm", d::size)).unit, size_unit("mm"));
  EXPECT_EQ(good(read_quantity("20 mm")).dimension, d::length);
  EXPECT_DOUBLE_EQ(si("10 F", d::warming), 10 / 1.8);
  EXPECT_DOUBLE_EQ(si("10 F"), 260.92777777777778);
  EXPECT_DOUBLE_EQ(si("50 ppm"), 50e-6);
  EXPECT_EQ(si("50 ppm", d::density), si("50 mg/L"));
  EXPECT_EQ(si("15 ppb", d::density), si("15 ug/L"));
  EXPECT_EQ(si("5"), 5);
  EXPECT_EQ(good(read_quantity("5", d::none)).unit, nullptr);
}

TEST(ReadQuantity, GivesOneValueInEverySpelling) {
  const std::vector<std::vector<std::string>> same_values{
      {"12 in", "1 ft", "12\"", "304.8 mm", "30.48 cm", "0.3048 m", "1/3 yd"},
      {"1/16 in", "0.0625 in", "1.5875 mm", "62.5 mil"},
      {"1/3 ft", "4 in"},
      {"1 gpm", "1 gal/min", "60 gph", "3.785411784 L/min"},
      {"2.5 %", "0.025", "25000 ppm"},
      {"90 min", "1.5 h", "5400 s", "1 h 30 min"},
      {"68 F", "20 C", "293.15 K"},
      {"212 F", "100 C"},
      {"100 kPa", "1 bar", "0.1 MPa", "100000 Pa"},
      {"0.05 lb", "22.6796185 g"},
      {"1 gal", "231 in3", "3.785411784 L", "3785.411784 mL"},
      {"1 psi/ft", "100 psi/100ft"},
      {"7.48051948051948 gal", "1 ft3"},
  };
  for (const auto& spellings : same_values) {
    const Quantity first = good(read_quantity(spellings[0]));
    for (const std::string& spelling : spellings) {
      const Quantity other = good(read_quantity(spelling));
      EXPECT_EQ(other.dimension, first.dimension) << spelling;
      EXPECT_EQ(snap(other.si, grid(first.dimension)), snap(first.si, grid(first.dimension))) << spelling;
    }
  }
}

TEST(ReadQuantity, RefusesWithItsId) {
  const std::pair<const char*, const char*> all[] = {
      {"", "quantity-empty"},
      {"   ", "quantity-empty"},
      {"psi 80", "number-expected"},
      {"unknown", "number-expected"},
      {"1,000 ft", "number-thousands"},
      {"1 000 ft", "number-spaced"},
      {"3 / 4 in", "number-spaced"},
      {"1 1/2 in", "number-spaced"},
      {"1 - 1/2 in", "number-spaced"},
      {"1 2 3 4 in", "number-spaced"},
      {"5 - ", "number-spaced"},
      {".5 in", "number-point"},
      {"5. in", "number-point"},
      {"1e3 psi", "number-exponent"},
      {"2-1 in", "number-whole-dash"},
      {"3,5 in", "number-comma"},
      {"3.5,1 in", "number-comma"},
      {"80psi", "unit-needs-space"},
      {"5ft 6in", "unit-needs-space"},
      {"5 ft 6in", "unit-needs-space"},
      {"80psy", "unknown-unit"},
      {"80 PSI", "unknown-unit"},
      {"80 Psi", "unknown-unit"},
      {"5 gpm.", "unknown-unit"},
      {"46''", "unknown-unit"},
      {"80 psi,", "unknown-unit"},
      {"5 \xff", "unknown-unit"},
      {"5 m²²", "unknown-unit"},
      {"45 days", "span-as-quantity"},
      {"10 business-days", "span-as-quantity"},
      {"80 psi gauge", "text-after-quantity"},
      {"5 ft 6 in 2", "text-after-quantity"},
      {"5 ft or so", "text-after-quantity"},
      {"5'-6\"", "compound-dash"},
      {"5 ft -6 in", "compound-dash"},
      {"5 ft 12 in", "compound-unfit"},
      {"5 ft 14 in", "compound-unfit"},
      {"5.5 ft 6 in", "compound-unfit"},
      {"6 in 5 ft", "compound-unfit"},
      {"5 ft 6 psi", "compound-unfit"},
      {"80 psi 3 kPa", "compound-unfit"},
      {"20 % 3 %", "compound-unfit"},
      {"5 ft 5 ft", "compound-unfit"},
      {"5 ft 6", "number-needs-unit"},
  };
  for (const auto& [text, id] : all) EXPECT_EQ(wrong(read_quantity(text)), id) << text;
}

TEST(ReadQuantity, RefusesTheWrongDimension) {
  EXPECT_EQ(wrong(read_quantity("80", d::pressure)), "number-needs-unit");
  EXPECT_EQ(wrong(read_quantity("0", d::length)), "number-needs-unit");
  EXPECT_EQ(wrong(read_quantity("80 lb", d::pressure)), "wrong-dimension");
  EXPECT_EQ(wrong(read_quantity("80 psi", d::none)), "wrong-dimension");
  EXPECT_EQ(wrong(read_quantity("2.5 %", d::length)), "wrong-dimension");
  EXPECT_EQ(wrong(read_quantity("2 ft", d::size)), "wrong-dimension");
  EXPECT_EQ(wrong(read_quantity("2 cm", d::size)), "wrong-dimension");
  EXPECT_EQ(wrong(read_quantity("1 ft 2 in", d::size)), "compound-unfit");
  EXPECT_EQ(wrong(read_quantity("5 ft 6 in", d::pressure)), "wrong-dimension");
  EXPECT_EQ(wrong(read_quantity("3/4 in", product(d::area, d::area))), "wrong-dimension");
  EXPECT_EQ(wrong(read_quantity("5", product(d::area, d::area))), "number-needs-unit");
}

TEST(ReadQuantity, OffersAUnitOfTheDimensionAskedFor) {
  EXPECT_EQ(std::get<Problem>(read_quantity("5 fx", d::length)).arguments[1], "ft");
  EXPECT_EQ(std::get<Problem>(read_quantity("5 galons", d::volume)).arguments[1], "gallons");
  EXPECT_EQ(std::get<Problem>(read_quantity("5 KPA")).arguments[1], "kPa");
  EXPECT_EQ(std::get<Problem>(read_quantity("5 furlongs")).arguments[1], "");
}

TEST(ReadQuantity, NamesThePlaceInAnyText) {
  const Problem spaced = std::get<Problem>(read_quantity("  86  psy  "));
  EXPECT_EQ(spaced.offset, 6U);
  EXPECT_EQ(spaced.length, 3U);
  const Problem second = std::get<Problem>(read_quantity("5 ft 1,000 in"));
  EXPECT_EQ(second.offset, 6U);
  EXPECT_EQ(second.length, 1U);
}

TEST(Show, CutsToWhatAPersonWouldWrite) {
  EXPECT_EQ(shown("79.5 psi"), "79.5 psi");
  EXPECT_EQ(shown("1-1/2 in"), "1.5 in");
  EXPECT_EQ(shown("5 ft 6 in"), "5.5 ft");
  EXPECT_EQ(shown("46'"), "46 ft");
  EXPECT_EQ(shown("140 °F"), "140 F");
  EXPECT_EQ(shown("-40 F"), "-40 F");
  EXPECT_EQ(shown("2.5%"), "2.5 %");
  EXPECT_EQ(shown("0.1 psi"), "0.1 psi");
  EXPECT_EQ(shown("100 psi"), "100 psi");
  EXPECT_EQ(shown("1234567.25 ft"), "1234567.25 ft");
  EXPECT_EQ(shown("0.000001 psi"), "0.000001 psi");
  EXPECT_EQ(shown("5"), "5");
  EXPECT_EQ(shown("0 psi"), "0 psi");
}

TEST(Show, WritesSizesOfTheInchLadderAsFractions) {
  EXPECT_EQ(shown("3/4\"", d::size), "3/4 in");
  EXPECT_EQ(shown("1.5 in", d::size), "1-1/2 in");
  EXPECT_EQ(shown("2 in", d::size), "2 in");
  EXPECT_EQ(shown("0.6 in", d::size), "0.6 in");
  EXPECT_EQ(shown("20 mm", d::size), "20 mm");
  EXPECT_EQ(show(0.75, d::size), "3/4 in");
}

TEST(Show, NeverShowsNegativeZeroOrNoise) {
  EXPECT_EQ(show(-0.0, d::pressure), "0 psi");
  EXPECT_EQ(show(-1e-9, d::pressure), "0 psi");
  EXPECT_EQ(show(-1e-15, d::none), "0");
  EXPECT_EQ(show(0.1 + 0.2, d::none), "0.3");
  EXPECT_EQ(show(1.0 / 3, d::none), "0.333333333333");
}

TEST(Show, PicksAnEverydayUnitWhenNobodyWroteOne) {
  EXPECT_EQ(show(0.3048 * 9, d::length), "108 in");
  EXPECT_EQ(show(0.3048 * 46, d::length), "46 ft");
  EXPECT_EQ(show(90, d::time), "90 s");
  EXPECT_EQ(show(15 * 60, d::time), "15 min");
  EXPECT_EQ(show(24 * 3600, d::time), "24 h");
  EXPECT_EQ(show(0.05, d::density), "50 mg/L");
  EXPECT_EQ(show(16.018463373960142, d::density), "1 lb/ft3");
  EXPECT_EQ(show(5, product(d::area, d::area)), "5 SI of length^4");
}

TEST(Show, TakesEvenWhatNobodyCanMean) {
  EXPECT_EQ(show(std::numeric_limits<double>::infinity(), d::none), "infinite");
  EXPECT_EQ(show(-std::numeric_limits<double>::infinity(), d::none), "-infinite");
  EXPECT_EQ(show(1e300, d::none), "1e+300");
  EXPECT_EQ(show(123456789012345.0, d::none), "123456789012000");
}

TEST(ShowRounded, KeepsSoManyDigits) {
  EXPECT_EQ(show_rounded(si("43.287163 psi"), d::pressure, 4), "43.29 psi");
  EXPECT_EQ(show_rounded(1234.5, d::none, 2), "1200");
  EXPECT_EQ(show_rounded(999.9, d::none, 3), "1000");
  EXPECT_EQ(show_rounded(0.00123456, d::none, 3), "0.00123");
  EXPECT_EQ(show_rounded(5, d::none, 3), "5");
  EXPECT_EQ(show_rounded(5.4321, d::none, 0), "5");
}

std::string shown(Interval value, const Dimension& dimension, const Unit* in_unit = nullptr) {
  return show(value, dimension, in_unit);
}

TEST(Show, WritesIntervals) {
  const double psi = si("1 psi");
  const double inch = si("1 in");
  const double unknown = std::numeric_limits<double>::infinity();
  EXPECT_EQ(shown({84 * psi, 88 * psi}, d::pressure), "84 psi to 88 psi");
  EXPECT_EQ(shown(exactly(84 * psi), d::pressure), "84 psi");
  EXPECT_EQ(shown({44 * inch, unknown}, d::length), "at least 44 in");
  EXPECT_EQ(shown({-unknown, 36 * inch}, d::length, unit("ft")), "at most 3 ft");
  EXPECT_EQ(shown({80 * psi + grid(d::pressure), unknown}, d::pressure), "more than 80 psi");
  EXPECT_EQ(shown({-unknown, 80 * psi - grid(d::pressure)}, d::pressure), "less than 80 psi");
  EXPECT_EQ(shown({}, d::pressure), "unknown");
  EXPECT_EQ(shown({6 * inch, 240 * inch}, d::length), "0.5 ft to 20 ft");
}

TEST(ShowApart, DiffersWhereTheGridDoes) {
  const double foot = si("1 ft");
  const auto [observed, bound] = show_apart(1000 * foot + 1e-11, 1000 * foot, d::length, unit("ft"));
  EXPECT_NE(observed, bound);
  EXPECT_EQ(bound, "1000 ft");
  const auto [same_a, same_b] = show_apart(foot, 12 * si("1 in"), d::length, nullptr);
  EXPECT_EQ(same_a, same_b);
  const auto [near, limit] = show_apart(si("79.999999 psi"), si("80 psi"), d::pressure, nullptr);
  EXPECT_EQ(near, "79.999999 psi");
  EXPECT_EQ(limit, "80 psi");
}

// What is shown is read back as the same value, for every unit and for the numbers people write.
TEST(Show, ReadsBack) {
  for (const Unit& entry : units()) {
    for (const char* written : {"0.001", "0.25", "1", "3.5", "42", "79.9", "80.1", "1250", "99999"}) {
      const double value = good(read_number(written)).value * entry.factor + entry.offset;
      const std::string text = show(value, entry.dimension, &entry);
      if (good(read_number(written)).value * entry.factor < grid(entry.dimension)) continue;
      const Quantity back = good(read_quantity(text, entry.dimension));
      EXPECT_EQ(snap(back.si, grid(entry.dimension)), snap(value, grid(entry.dimension))) << text;
      EXPECT_EQ(show(back.si, back.dimension, back.unit), text);
    }
  }
}

}  // namespace
}  // namespace headgate::quantity
