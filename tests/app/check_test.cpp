// `headgate check` end to end: outcomes, exit statuses, the JSON report against its schema.
#include <gtest/gtest.h>

#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validator.hpp>

#include "app/run.hpp"

namespace headgate::app_test {
namespace {

using Json = nlohmann::json;

std::string problems(const Json& report) {
  const Json schema_text = Json::parse(content(HEADGATE_SOURCE_DIR "/include/headgate/report.schema.json"));
  valijson::Schema schema;
  valijson::SchemaParser parser;
  parser.populateSchema(valijson::adapters::NlohmannJsonAdapter(schema_text), schema);
  valijson::Validator validator;
  valijson::ValidationResults results;
  validator.validate(schema, valijson::adapters::NlohmannJsonAdapter(report), &results);
  std::string all;
  for (const auto& error : results) {
    for (const auto& step : error.context) all += step;
    all += ": " + error.description + "\n";
  }
  return all;
}

Json finding(const Json& report, const std::string& rule) {
  for (const auto& one : report["findings"]) {
    if (one["rule"] == rule) return one;
  }
  return {};
}

constexpr const char* no_reducer =
    "format: site/1\nname: Weir Cottage\nplace: upc-2024\nstage: entry\n"
    "pressure: {highest-static: VALUE}\nline:\n  - meter: {size: 3/4\"}\n";

Ran check_pressure(const std::string& value) {
  std::string text = no_reducer;
  const std::string line = "pressure: {highest-static: VALUE}\n";
  text.replace(text.find(line), line.size(), value.empty() ? "" : "pressure: {highest-static: " + value + "}\n");
  const Folder folder;
  return headgate("check --format json --place upc-2024 '" + folder.write("site.yaml", text) + "'");
}

TEST(Check, ReducerAboveTheStaticLimitByReading) {
  const std::pair<const char*, const char*> cases[] = {
      {"80 psi", "not applicable"}, {"80.1 psi", "fail"}, {"79 psi +/- 2 psi", "undecided"}, {"", "undecided"}};
  for (const auto& [value, outcome] : cases) {
    const Ran ran = check_pressure(value);
    const Json report = Json::parse(ran.out);
    const Json about = finding(report, "upc-2024/reducer-above-static-limit");
    EXPECT_EQ(about["outcome"], outcome) << value;
    EXPECT_EQ(problems(report), "") << value;
  }
}

TEST(Check, WhatWouldSettleAnUndecidedReading) {
  const Json close = finding(Json::parse(check_pressure("79 psi +/- 2 psi").out), "upc-2024/reducer-above-static-limit");
  ASSERT_EQ(close["to-decide"].size(), 1U);
  EXPECT_EQ(close["to-decide"][0]["fact"], "pressure.highest-static");
  EXPECT_NE(close["to-decide"][0]["need"].get<std::string>().find("79 psi +/- 2 psi"), std::string::npos);
  const Json missing = finding(Json::parse(check_pressure("").out), "upc-2024/reducer-above-static-limit");
  ASSERT_EQ(missing["to-decide"].size(), 1U);
  EXPECT_EQ(missing["to-decide"][0]["need"], "What is the highest static pressure the street gives?");
}

TEST(Check, TheExamplesExitAsTheirStoriesSay) {
  EXPECT_EQ(headgate("check examples/halyard/as-found.yaml").status, 1);
  EXPECT_EQ(headgate("check examples/halyard/as-planned.yaml").status, 3);
  EXPECT_EQ(headgate("check examples/halyard/as-built.yaml").status, 0);
}

TEST(Check, EveryReportFollowsTheSchema) {
  for (const std::string site : {"as-found", "as-planned", "as-built"}) {
    for (const std::string place : {"", "--place irc-2018", "--place ipc-2018", "--place upc-2024", "--place brackwater",
                                    "--place irc-2018 --place upc-2024"}) {
      const Ran ran = headgate("check --format json " + place + " examples/halyard/" + site + ".yaml");
      EXPECT_EQ(problems(Json::parse(ran.out)), "") << site << " " << place;
    }
  }
  Json broken = Json::parse(headgate("check --format json examples/halyard/as-built.yaml").out);
  broken["findings"][0]["outcome"] = "maybe";
  EXPECT_NE(problems(broken), "");
}

TEST(Check, FindingsOfAllFiveTopicsNameTheirSourceAndPlace) {
  const Json report = Json::parse(headgate("check --format json examples/halyard/as-found.yaml").out);
  for (const std::string topic : {"pressure", "shutoff", "wall", "backflow", "materials"}) {
    int shown = 0;
    for (const auto& one : report["findings"]) {
      if (one["topic"] != topic || (one["outcome"] != "fail" && one["outcome"] != "advisory")) continue;
      ++shown;
      EXPECT_FALSE(one["citations"].empty()) << one["rule"];
      for (const auto& citation : one["citations"]) EXPECT_NE(citation["seen"], "") << one["rule"];
      EXPECT_NE(one["at"].get<std::string>().find(".yaml:"), std::string::npos) << one["rule"];
      for (const auto& fact : one["facts"]) {
        if (fact["value"] != "not stated" && fact["how"] != "computed") EXPECT_NE(fact["at"], "") << one["rule"] << fact;
      }
    }
    EXPECT_GT(shown, 0) << topic;
  }
}

TEST(Check, TheDayBeforeAndTheDayOfTheOrdinance) {
  const std::string arguments =
      "check --format json examples/halyard/as-built.yaml --set line.pressure-reducer=none"
      " --set pressure.highest-static='72 psi' --set permit-applied-on=";
  const Json before = finding(Json::parse(headgate(arguments + "2026-06-30").out), "fennick-ferry/reducer-above-static-limit");
  const Json after = finding(Json::parse(headgate(arguments + "2026-07-01").out), "fennick-ferry/reducer-above-static-limit");
  EXPECT_EQ(before["outcome"], "not applicable");
  EXPECT_EQ(before["limits"][0]["value"], "80 psi");
  EXPECT_EQ(after["outcome"], "fail");
  EXPECT_EQ(after["limits"][0]["value"], "70 psi");
  EXPECT_EQ(after["limits"][0]["layer"], "fennick-ferry, Ordinance 26-14, after the spring main breaks, since 2026-07-01");
  EXPECT_EQ(after["limits"][0]["replaced"][0], "80 psi (irc-2018 P2903.3.1)");
}

TEST(Check, AnUnknownLawDateIsDecidedOnlyWhereBothLawsAgree) {
  const std::string arguments =
      "check --format json examples/halyard/as-built.yaml --set line.pressure-reducer=none"
      " --set permit-applied-on=unknown --set pressure.highest-static=";
  const auto outcome = [&](const std::string& value) {
    return finding(Json::parse(headgate(arguments + value).out), "fennick-ferry/reducer-above-static-limit")["outcome"];
  };
  EXPECT_EQ(outcome("'72 psi'"), "undecided");
  EXPECT_EQ(outcome("'86 psi'"), "fail");
  EXPECT_EQ(outcome("'60 psi'"), "not applicable");
}

TEST(Check, TheSameBytesWhateverTheLocaleAndTheRun) {
  const std::string arguments = "check --format json examples/halyard/as-found.yaml";
  const std::string first = headgate(arguments).out;
  EXPECT_EQ(headgate(arguments).out, first);
  EXPECT_EQ(headgate(arguments, "LC_ALL=de_DE.UTF-8 LANG=tr_TR.UTF-8").out, first);
}

TEST(Check, TextFitsEightyColumnsAndEndsWithTheClosing) {
  const Ran ran = headgate("check --all examples/halyard/as-found.yaml");
  std::istringstream lines(ran.out);
  for (std::string line; std::getline(lines, line);) {
    // Only a word that cannot be cut, such as a file and place, may be wider.
    if (line.size() > 80) EXPECT_EQ(line.find(' ', line.find_first_not_of(' ')), std::string::npos) << line;
  }
  EXPECT_NE(ran.out.find("approves nothing"), std::string::npos);
  EXPECT_EQ(ran.err, "");
}

TEST(Check, StageAndDayOverrideTheSites) {
  const Json report = Json::parse(headgate("check --format json --stage survey --on 2026-12-01 examples/halyard/as-found.yaml").out);
  EXPECT_EQ(report["site"]["stage"], "survey");
  EXPECT_EQ(report["rulebook"]["checked-on"], "2026-12-01");
  EXPECT_EQ(finding(report, "fennick-ferry/reducer-above-static-limit")["outcome"], "later");
  EXPECT_EQ(finding(report, "fennick-ferry/reducer-above-static-limit")["would-be"], "fail");
}

TEST(Check, PlacesSideBySideShowWhereTheyDiffer) {
  const Ran ran = headgate("check --place irc-2018 --place upc-2024 examples/halyard/as-found.yaml");
  EXPECT_NE(ran.out.find("WHERE THE PLACES DIFFER"), std::string::npos);
  EXPECT_NE(ran.out.find("shutoff-drains-house: irc-2018 fail; upc-2024 not in force"), std::string::npos) << ran.out;
}

}  // namespace
}  // namespace headgate::app_test
