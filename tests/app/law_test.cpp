// What the law of a place does to a check: ordinances and their days, sources, places side by side.
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "app/run.hpp"

namespace headgate::test {
namespace {

using Json = nlohmann::json;

Json checked(std::vector<std::string> arguments) {
  arguments.insert(arguments.begin(), {"check", "--format", "json"});
  return Json::parse(run(arguments).out, nullptr, false);
}

Json finding(const Json& report, const std::string& rule) {
  for (const auto& one : report["findings"]) {
    if (one["rule"] == rule) return one;
  }
  return {};
}

const std::string reducer = "fennick-ferry/reducer-above-static-limit";

std::vector<std::string> without_reducer(const std::string& pressure, const std::string& applied) {
  return {"examples/halyard/as-built.yaml",      "--set", "line.pressure-reducer=none",  "--set",
          "pressure.highest-static=" + pressure, "--set", "permit-applied-on=" + applied};
}

TEST(Law, TheDayBeforeAndTheDayOfTheOrdinance) {
  const Json before = finding(checked(without_reducer("72 psi", "2026-06-30")), reducer);
  EXPECT_EQ(before["outcome"], "not applicable");
  EXPECT_EQ(before["limits"][0]["value"], "80 psi");
  EXPECT_TRUE(before["limits"][0]["replaced"].empty());
  const Json after = finding(checked(without_reducer("72 psi", "2026-07-01")), reducer);
  EXPECT_EQ(after["outcome"], "fail");
  EXPECT_EQ(after["limits"][0]["value"], "70 psi");
  EXPECT_EQ(after["limits"][0]["layer"],
            "fennick-ferry, Ordinance 26-14, after the spring main breaks, since 2026-07-01");
  EXPECT_EQ(after["limits"][0]["replaced"][0], "80 psi (irc-2018 P2903.3.1)");
}

TEST(Law, AnUnknownDayIsDecidedOnlyWhereBothLawsAgree) {
  EXPECT_EQ(finding(checked(without_reducer("72 psi", "unknown")), reducer)["outcome"], "undecided");
  EXPECT_EQ(finding(checked(without_reducer("86 psi", "unknown")), reducer)["outcome"], "fail");
  EXPECT_EQ(finding(checked(without_reducer("60 psi", "unknown")), reducer)["outcome"], "not applicable");
}

TEST(Law, FailsOfEveryTopicNameTheirSourceAndPlace) {
  const Json report = checked({"examples/halyard/as-found.yaml"});
  for (const std::string topic : {"pressure", "shutoff", "wall", "backflow", "materials"}) {
    int shown = 0;
    for (const auto& one : report["findings"]) {
      if (one["topic"] != topic || (one["outcome"] != "fail" && one["outcome"] != "advisory")) continue;
      ++shown;
      EXPECT_FALSE(one["citations"].empty()) << one["rule"];
      for (const auto& citation : one["citations"]) EXPECT_NE(citation["seen"], "") << one["rule"];
      EXPECT_TRUE(has(one["at"], ".yaml:")) << one["rule"];
      for (const auto& fact : one["facts"]) {
        EXPECT_TRUE(fact["value"] == "not stated" || fact["how"] == "computed" || fact["at"] != "")
            << one["rule"] << fact;
      }
    }
    EXPECT_GT(shown, 0) << topic;
  }
}

TEST(Law, PlacesSideBySideShowWhereTheyDiffer) {
  const Ran ran = run({"check", "--place", "irc-2018", "--place", "upc-2024", "examples/halyard/as-found.yaml"});
  EXPECT_TRUE(has(ran.out, "\nWHERE THE PLACES DIFFER\n")) << ran.out;
  EXPECT_TRUE(has(ran.out, "  shutoff-drains-house: irc-2018 fail; upc-2024 not in force\n")) << ran.out;
}

TEST(Law, LimitsNameTheLayerAndWhatItReplaced) {
  const auto pressure_limit = [](const std::string& day) {
    const Json report = Json::parse(run({"limits", "--place", "fennick-ferry", "--format", "json", "--on", day}).out);
    for (const auto& limit : report["places"][0]["limits"]) {
      if (limit["limit"] == "static-pressure-max") return limit;
    }
    return Json();
  };
  const Json before = pressure_limit("2026-06-30");
  EXPECT_EQ(before["values"][0]["value"], "80 psi");
  EXPECT_TRUE(before["replaces"].empty());
  const Json after = pressure_limit("2026-07-01");
  EXPECT_EQ(after["values"][0]["value"], "70 psi");
  EXPECT_EQ(after["values"][0]["since"], "2026-07-01");
  EXPECT_EQ(after["replaces"][0]["citation"], "irc-2018 P2903.3.1");
}

TEST(Law, LimitInASum) { EXPECT_EQ(run({"calc", "limit.static-pressure-max", "--place", "upc-2024"}).out, "80 psi\n"); }

}  // namespace
}  // namespace headgate::test
