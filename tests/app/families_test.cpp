// The three families of model codes side by side, as `headgate limits` and `headgate check` tell them: the figures and
// duties in which they really differ, gathered from published pages (how each was seen stands in rules/sources*.yaml).
#include <map>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "app/run.hpp"

namespace headgate::test {
namespace {

using FamilyJson = nlohmann::json;

constexpr const char* families[] = {"irc-2018", "ipc-2018", "upc-2024"};

// Limit -> the value the family's own text gives; "" where only practice or nobody gives one.
std::map<std::string, std::string> own_values(const std::string& family) {
  const Ran ran = run({"limits", "--place", family, "--format", "json"});
  std::map<std::string, std::string> values;
  const FamilyJson report = FamilyJson::parse(ran.out);
  for (const auto& limit : report["places"][0]["limits"]) {
    std::string all;
    for (const auto& value : limit["values"]) {
      const std::string citation = value["citation"];
      if (citation.rfind(family + " ", 0) == 0) all += (all.empty() ? "" : "; ") + value["value"].get<std::string>();
    }
    values[limit["limit"]] = all;
  }
  return values;
}

TEST(Families, DifferInTheirFigures) {
  struct Row {
    const char* limit;
    const char* values[3];
  };
  const Row rows[] = {
      {"static-pressure-max", {"80 psi", "80 psi", "80 psi"}},
      {"strainer-exempt-size", {"", "", "1-1/2 in"}},
      {"residual-pressure-min", {"", "", "15 psi"}},
      {"least-cover",
       {"greatest(site.frost-depth + 6 in, 12 in)", "greatest(site.frost-depth + 6 in, 12 in)",
        "greatest(site.frost-depth + 12 in, 12 in)"}},
      {"sewer-aside", {"5 ft", "5 ft", ""}},
      {"shelf-beside-sewer", {"", "", "12 in"}},
      {"above-sewer", {"12 in", "12 in", "12 in"}},
      {"sleeve-past-sewer", {"5 ft", "5 ft", ""}},
      {"sleeve-steps", {"2", "2", ""}},
      {"velocity-max", {"", "", "if pipe.hot then 5 ft/s else 8 ft/s"}},
      {"tracer-gauge", {"", "", "18"}},
      {"chlorine-day-dose", {"", "50 mg/L", "50 mg/L"}},
      {"chlorine-short-dose", {"", "200 mg/L", "200 mg/L"}},
      {"gas-test-pressure", {"50 psi", "50 psi", "50 psi"}},
      {"regulated-share", {"", "", "80 %"}},
  };
  for (std::size_t i = 0; i < 3; ++i) {
    auto values = own_values(families[i]);
    for (const auto& row : rows) EXPECT_EQ(values[row.limit], row.values[i]) << families[i] << " " << row.limit;
    const std::string tub = i == 2 ? "bathtub 4" : "bathtub 1.4";  // units of one family mean nothing in the other
    EXPECT_TRUE(has(values["fixture-units"], tub)) << families[i] << ": " << values["fixture-units"];
  }
}

TEST(Families, DifferInWhatTheyAskFor) {
  struct Row {
    const char* rule;
    bool binds[3];
  };
  const Row rows[] = {
      {"strainer-before-reducer", {false, true, true}},
      {"outlet-has-what-it-needs", {true, true, false}},
      {"enough-pressure-at-outlet", {false, false, true}},
      {"expansion-behind-reducer", {true, true, false}},
      {"tank-behind-regulator", {false, false, true}},
      {"expansion-behind-check", {true, true, false}},
      {"expansion-behind-any-check", {false, false, true}},
      {"shutoff-drains-house", {true, false, false}},
      {"curb-valve", {false, true, false}},
      {"shutoff-after-meter", {false, true, true}},
      {"velocity-in-copper", {false, false, true}},
      {"tracer-along-plastic", {false, false, true}},
      {"line-disinfected", {false, true, true}},
      {"metal-earth-replaced", {false, true, false}},
      {"metal-earth-approved", {false, false, true}},
      {"no-gas-in-plastic", {true, true, true}},
      {"sleeve-two-sizes", {true, true, false}},
  };
  for (std::size_t i = 0; i < 3; ++i) {
    const Ran ran = run({"check", "examples/halyard/as-built.yaml", "--place", families[i], "--format", "json"});
    std::map<std::string, std::string> outcomes;
    const FamilyJson report = FamilyJson::parse(ran.out);
    for (const auto& finding : report["findings"]) {
      const std::string rule = finding["rule"];
      outcomes[rule.substr(rule.find('/') + 1)] = finding["outcome"];
    }
    for (const auto& row : rows) {
      ASSERT_EQ(outcomes.count(row.rule), 1U) << row.rule;
      EXPECT_EQ(outcomes[row.rule] != "not in force", row.binds[i]) << families[i] << " " << row.rule;
    }
  }
}

}  // namespace
}  // namespace headgate::test
