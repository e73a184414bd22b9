// `headgate worksheet`: the figures, their sum, and what size passes.
#include <cmath>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "app/run.hpp"

namespace headgate::test {
namespace {

using SheetJson = nlohmann::json;

SheetJson sheet_of(const std::string& site, std::vector<std::string> options = {}) {
  options.insert(options.begin(), {"worksheet", site, "--format", "json"});
  const Ran ran = run(options);
  EXPECT_EQ(ran.err, "");
  return SheetJson::parse(ran.out);
}

double figure(std::string shown) {  // "- 9.66"
  const bool minus = shown.find('-') != std::string::npos;
  shown.erase(0, shown.find_first_of("0123456789"));
  return (minus ? -1 : 1) * std::stod(shown);
}

// The column of every run adds up as it is printed, digit by digit.
void adds_up(const SheetJson& sheet) {
  ASSERT_FALSE(sheet["runs"].empty());
  for (const auto& one : sheet["runs"]) {
    double left = figure(one["start"]);
    for (const auto& step : one["steps"]) {
      for (const auto& term : step["terms"]) left += figure(term["shown"]);
      const double after = figure(step["after"]);
      if (step["reset"] == "") {
        EXPECT_NEAR(left, after, 1e-9) << one["title"] << " at " << step["element"];
      }
      left = after;
    }
  }
}

TEST(Worksheet, SumsCloseToTheDisplayedDigit) {
  for (const char* place : {"irc-2018", "ipc-2018", "upc-2024"})
    adds_up(sheet_of("examples/halyard/as-built.yaml", {"--place", place}));
}

TEST(Worksheet, EveryPressureOnTheWayIsThere) {
  const auto sheet = sheet_of("examples/halyard/as-built.yaml");
  std::vector<std::string> elements;
  for (const auto& one : sheet["runs"]) {
    if (one["title"] != "pressure at peak demand" || one["end"] != "least") continue;
    for (const auto& step : one["steps"]) elements.push_back(step["element"]);
  }
  ASSERT_FALSE(elements.empty());
  EXPECT_EQ(elements.front(), "line[1] pipe");
  EXPECT_EQ(elements.back(), "line[18] worst-outlet");
}

TEST(Worksheet, EachLineHasValueUnitFormulaAndSource) {
  const auto sheet = sheet_of("examples/halyard/as-built.yaml");
  bool seen = false;
  for (const auto& line : sheet["lines"]) {
    if (line["name"] != "demand.fixture-flow") continue;
    seen = true;
    EXPECT_DOUBLE_EQ(line["value"].get<double>(), 18.8);  // 17.2 units: the row of 18, which this curve takes
    EXPECT_EQ(line["unit"], "gpm");
    EXPECT_EQ(line["formula"], "demand-curve[17.2]");
    EXPECT_TRUE(has(line["citation"], "irc-2018 P2903.6(1)")) << line["citation"];
  }
  EXPECT_TRUE(seen);
}

TEST(Worksheet, FrictionByEitherMethodAndTheirDifference) {
  const auto loss = [](const char* method) {
    const auto sheet =
        sheet_of("examples/halyard/as-built.yaml", {"--set", std::string("demand.friction-method=") + method});
    for (const auto& line : sheet["lines"]) {
      if (line["name"] == "pipe.friction-loss" && line["element"] == "line[4] pipe") return line["value"].get<double>();
    }
    return 0.0;
  };
  const double hazen = loss("hazen-williams");
  const double darcy = loss("darcy");
  EXPECT_GT(hazen, 5);
  EXPECT_NE(hazen, darcy);
  EXPECT_NEAR(hazen / darcy, 1, 0.1);  // in smooth house pipe the two lie within a tenth
}

TEST(Worksheet, SizeNamesTheSmallestThatPassesAndTheNextSmallerFailing) {
  const Ran ran = run({"worksheet", "examples/halyard/as-built.yaml", "--size"});
  EXPECT_EQ(ran.status, 0);
  EXPECT_TRUE(has(ran.out, "  The smallest that pass: pipe 1 in with meter 3/4 in.\n")) << ran.out;
  EXPECT_TRUE(has(ran.out, "  meter 3/4 in\n    pipe 3/4 in    fail, ")) << ran.out;
}

TEST(Worksheet, TellsWhatIsMissing) {
  const Ran ran = run({"worksheet", "examples/halyard/as-planned.yaml"});
  EXPECT_EQ(ran.status, 0);
  EXPECT_TRUE(has(ran.out, "\nNot computed\n")) << ran.out;
}

TEST(Worksheet, NoLineIsWiderThanATerminal) {
  const Ran ran = run({"worksheet", "examples/halyard/as-built.yaml", "--size"});
  std::istringstream lines(ran.out);
  for (std::string line; std::getline(lines, line);) EXPECT_LE(line.size(), 80U) << line;
}

TEST(Worksheet, AnOpenEndStaysOpen) {
  const Ran ran =
      run({"worksheet", "examples/halyard/as-built.yaml", "--set", "pressure.highest-static=at least 60 psi"});
  EXPECT_EQ(ran.status, 0) << ran.err;
  EXPECT_TRUE(has(ran.out, "  where the line begins                                       60.00          ?\n"))
      << ran.out;
  EXPECT_FALSE(has(ran.out, "infinite")) << ran.out;
  EXPECT_FALSE(has(ran.out, "-9223372036854775808")) << ran.out;
}

TEST(Worksheet, NoSizePassesWhereNothingIsKnownToBeLeft) {
  const Ran ran = run({"worksheet", "examples/quarry-lane/before-cover.yaml", "--size"});
  EXPECT_EQ(ran.status, 3) << ran.err;
  EXPECT_TRUE(has(ran.out, "None of them can be told to pass: there is no worst outlet to go by.")) << ran.out;
}

}  // namespace
}  // namespace headgate::test
