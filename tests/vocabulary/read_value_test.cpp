#include <limits>

#include <gtest/gtest.h>

#include "vocabulary/world.hpp"

namespace headgate {
namespace {

using quantity::Interval;
using vocabulary::Presence;
using vocabulary::Reading;

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double inch = 0.0254;

const std::string facts = R"(format: vocabulary/1
marks: {finished-grade: {title: finished grade, spellings: [grade]}, ground-at-house: ground at the house}
choices:
  pipe-material:
    title: pipe material
    members: {k-copper: {title: type K copper, spellings: [K copper]}, l-copper: {title: type L copper}, hdpe: polyethylene}
records:
  site:
    facts:
      pressure: {type: pressure, plausible: 20 psi to 200 psi, never-negative: yes}
      count: number
      size: size
      length: {type: length, never-negative: yes}
      warmth: temperature
      sealed: yes-no
      material: pipe-material
      built: date
      read-at: moment
      hour: clock
      season: season
      every: span
      note: text
      cover: {type: depth, mark: finished-grade, never-negative: yes, plausible: 6 in to 20 ft}
      depth: depth
      rise: height
)";

struct Read {
  vocabulary::Value value;
  std::vector<Reading> readings;
  std::string said;
  std::string shown;
};

Read read(const std::string& fact, const std::string& text) {
  auto world = test::load_vocabulary({facts});
  const auto& v = world.vocabulary;
  const auto& field = v.shapes[0].fields[v.shapes[0].field(fact).value()];
  const auto* tree = world.read("value.yaml", "it: " + text + "\n");
  Read result;
  if (tree) {
    result.value = read_value(tree->entries[0].value, field.type, &field, v, &result.readings, world.found);
  }
  result.said = world.said();
  const bool level = field.type.kind == vocabulary::Type::Kind::level && result.value.presence == Presence::present;
  result.shown = level ? show(result.readings, field, result.value.unit, v) : show(result.value, field.type, v);
  result.value.text = {};  // its node is gone
  return result;
}

TEST(ReadValue, Quantities) {
  EXPECT_EQ(read("pressure", "86 psi").shown, "86 psi");
  EXPECT_EQ(read("pressure", "86 psi +/- 2 psi").shown, "84 psi to 88 psi");
  EXPECT_EQ(read("length", "at least 44 in").shown, "at least 44 in");
  EXPECT_EQ(read("length", "at most 44 in").value.number.lo, 0.0) << "a length is never negative";
  EXPECT_EQ(read("count", "2").value.number, quantity::exactly(2));
  EXPECT_EQ(read("warmth", "60 F +/- 5 F").said, "");
}

TEST(ReadValue, SizesKnowTheirLadder) {
  EXPECT_EQ(read("size", "3/4\"").value.ladder, vocabulary::Ladder::inch);
  EXPECT_EQ(read("size", "3/4\"").value.number, quantity::exactly(0.75));
  EXPECT_EQ(read("size", "20 mm").value.ladder, vocabulary::Ladder::metric);
  EXPECT_EQ(read("size", "20 mm").value.number, quantity::exactly(20));
}

TEST(ReadValue, PresenceOfAnyFact) {
  EXPECT_EQ(read("pressure", "none").value.presence, Presence::none);
  EXPECT_EQ(read("sealed", "unknown").value.presence, Presence::unknown);
  EXPECT_EQ(read("pressure", "unknown").value.number, Interval{});
  EXPECT_EQ(read("sealed", "yes").value.truth, quantity::Truth::yes);
}

TEST(ReadValue, Choices) {
  EXPECT_EQ(read("material", "K Copper").shown, "type K copper");
  EXPECT_EQ(read("material", "one of (k-copper, l-copper)").value.members, 3U);
  EXPECT_EQ(read("material", "one of (k-copper, l-copper)").shown, "one of type K copper, type L copper");
}

TEST(ReadValue, DatesAndTimes) {
  EXPECT_EQ(read("built", "2026-10-02").shown, "2026-10-02");
  EXPECT_EQ(read("built", "before 1989").value.number, (Interval{-infinity, quantity::day_of({1988, 12, 31}) * 1.0}));
  EXPECT_EQ(read("built", "1989").shown, "1989-01-01 to 1989-12-31");
  EXPECT_EQ(read("read-at", "2026-10-02 11:00").shown, "2026-10-02 11:00");
  const Interval day = read("read-at", "2026-10-02").value.number;
  EXPECT_EQ(day.hi - day.lo, 86399) << "any moment of that day";
  EXPECT_EQ(read("hour", "07:10").value.number, quantity::exactly(7 * 3600 + 600));
  EXPECT_EQ(read("season", "Nov 1 to Apr 1").value.number, (Interval{1101, 401}));
  EXPECT_EQ(read("season", "Nov 1 to Apr 1").shown, "Nov 1 to Apr 1");
  EXPECT_EQ(read("every", "10 business-days").value.span_unit, quantity::Span::Unit::business_days);
  EXPECT_EQ(read("every", "3 months").shown, "3 months");
}

TEST(ReadValue, LevelsAreHeightsAboveTheirMark) {
  const Read below = read("cover", "40 in below grade");
  ASSERT_EQ(below.readings.size(), 1U);
  EXPECT_EQ(below.readings[0].mark, 0);
  EXPECT_NEAR(below.readings[0].height_m.lo, -40 * inch, 1e-12);
  EXPECT_EQ(below.shown, "40 in below finished grade");
  EXPECT_EQ(read("rise", "22\" above ground-at-house").readings[0].mark, 1);
  EXPECT_NEAR(read("rise", "2 in below grade").readings[0].height_m.hi, -2 * inch, 1e-12);
  EXPECT_EQ(read("depth", "40 in").readings[0].mark, vocabulary::no_id);
}

TEST(ReadValue, ADepthWithoutWordsIsBelowItsMark) {
  const Read cover = read("cover", "40\"");
  EXPECT_EQ(cover.readings[0].mark, 0);
  EXPECT_NEAR(cover.readings[0].height_m.hi, -40 * inch, 1e-12);
}

// At least so deep is at most so high.
TEST(ReadValue, CoarseDepthsTurnOver) {
  const Interval deep = read("depth", "at least 44 in below finished-grade").readings[0].height_m;
  EXPECT_EQ(deep.lo, -infinity);
  EXPECT_NEAR(deep.hi, -44 * inch, 1e-12);
  EXPECT_EQ(read("depth", "at least 44 in below finished-grade").shown, "at least 44 in below finished grade");
  const Interval shallow = read("cover", "at most 44 in").readings[0].height_m;
  EXPECT_NEAR(shallow.lo, -44 * inch, 1e-12);
  EXPECT_EQ(shallow.hi, 0.0) << "cover is never negative";
  const Interval about = read("depth", "40 in +/- 3 in below grade").readings[0].height_m;
  EXPECT_NEAR(about.lo, -43 * inch, 1e-12);
  EXPECT_NEAR(about.hi, -37 * inch, 1e-12);
}

TEST(ReadValue, SeveralReadings) {
  const Read two = read("depth", "[40 in below grade, 38 in below ground-at-house]");
  ASSERT_EQ(two.readings.size(), 2U);
  EXPECT_EQ(two.shown, "40 in below finished grade, 38 in below ground at the house");
}

struct WrongValue {
  const char* fact;
  const char* text;
  const char* said;
};

class BadValue : public testing::TestWithParam<WrongValue> {};

TEST_P(BadValue, IsSaid) { EXPECT_EQ(read(GetParam().fact, GetParam().text).said, GetParam().said); }

INSTANTIATE_TEST_SUITE_P(
    ReadValue, BadValue,
    testing::Values(
        WrongValue{"pressure", "86 psy", "value.yaml:1:8 unknown-unit: \"psy\" is not a unit. (did you mean psi?)\n"},
        WrongValue{"pressure", "86",
                   "value.yaml:1:5 number-needs-unit: \"86\" has no unit, where pressure is asked for. (write "
                   "the unit, as in 86 psi)\n"},
        WrongValue{"length", "86 psi",
                   "value.yaml:1:5 wrong-dimension: \"86 psi\" is pressure, where length is asked for. (use "
                   "a unit of length, such as in)\n"},
        WrongValue{
            "pressure", "860 psi",
            "value.yaml:1:5 implausible-value: \"860 psi\" is unusual for pressure. (usual is 20 psi to 200 psi; check "
            "the "
            "number and its unit)\n"},
        WrongValue{"pressure", "-3 psi",
                   "value.yaml:1:5 negative-value: pressure cannot be negative, as in \"-3 psi\".\n"},
        WrongValue{
            "length", "40 in to 46 in",
            "value.yaml:1:5 coarse-range: \"40 in to 46 in\" does not say whether it is one value or several. (for one "
            "value say 43 in +/- 3 in; for several give the field of the least or greatest one)\n"},
        WrongValue{"sealed", "Yes", "value.yaml:1:5 not-yes-or-no: \"Yes\" is neither yes nor no. (write yes)\n"},
        WrongValue{"sealed", "off", "value.yaml:1:5 not-yes-or-no: \"off\" is neither yes nor no. (write no)\n"},
        WrongValue{"sealed", "both faces", "value.yaml:1:5 not-yes-or-no: \"both faces\" is neither yes nor no.\n"},
        WrongValue{"material", "k-coper",
                   "value.yaml:1:5 unknown-member: \"k-coper\" is no pipe material. (did you mean "
                   "k-copper?)\n"},
        WrongValue{"material", "wood",
                   "value.yaml:1:5 unknown-member: \"wood\" is no pipe material. (did you mean one of "
                   "k-copper, l-copper, hdpe?)\n"},
        WrongValue{
            "material", "k-copper or l-copper",
            "value.yaml:1:5 or-of-members: \"k-copper or l-copper\" is not how a doubt is written. (write: one of "
            "(k-copper, l-copper))\n"},
        WrongValue{
            "material", "one of k-copper, l-copper",
            "value.yaml:1:5 one-of-form: \"one of k-copper, l-copper\" does not list what it may be. (write: one of "
            "(this, "
            "that))\n"},
        WrongValue{"material", "one of (k-copper, l-coper)",
                   "value.yaml:1:23 unknown-member: \"l-coper\" is no pipe material. (did you mean l-copper?)\n"},
        WrongValue{"built", "2026-02-30",
                   "value.yaml:1:5 no-such-date: \"2026-02-30\" is not in the calendar. (February 2026 has "
                   "28 days)\n"},
        WrongValue{"depth", "40 in below",
                   "value.yaml:1:5 side-without-mark: \"40 in below\" does not say below what. (write the "
                   "mark, as in: 40 in below finished-grade)\n"},
        WrongValue{"depth", "40 in below gride",
                   "value.yaml:1:17 unknown-mark: \"gride\" is not a mark to measure from. (did you mean grade?)\n"},
        WrongValue{"cover", "40 psi below grade",
                   "value.yaml:1:5 wrong-dimension: \"40 psi\" is pressure, where length is asked "
                   "for. (use a unit of length, such as in)\n"},
        WrongValue{"cover", "2 in above grade",
                   "value.yaml:1:5 negative-value: cover cannot be negative, as in \"2 in above "
                   "grade\".\n"},
        WrongValue{"cover", "2 in",
                   "value.yaml:1:5 implausible-value: \"2 in\" is unusual for cover. (usual is 6 in to 240 in; "
                   "check the number and its unit)\n"},
        WrongValue{"sealed", "[yes, no]",
                   "value.yaml:1:5 one-value-expected: sealed is one value, not a map or a list.\n"}));

TEST(ShowValue, UnknownAndNone) {
  EXPECT_EQ(read("pressure", "unknown").shown, "unknown");
  EXPECT_EQ(read("material", "none").shown, "none");
}

}  // namespace
}  // namespace headgate
