// Reports as JSON: valid by the schema, the same from run to run and in any locale.
#include <clocale>

#include <gtest/gtest.h>

#include "report/small_report.hpp"

namespace headgate::test {
namespace {

using Json = nlohmann::json;

Report full_report() {
  Report report = small_report();
  Finding undecided = small_finding();
  undecided.outcome = "undecided";
  undecided.to_decide = {{"pressure.highest-static", "What is it?"}};
  Finding later = small_finding();
  later.outcome = "later";
  later.would_be = "fail";
  report.findings = {small_finding(), undecided, later};
  report.totals = {3, 1, 0, 1, 1, 0, 4, 2};
  Question question;
  question.fact = "pressure.highest-static";
  question.ask = "What is it?";
  question.cost = "measure";
  question.decides = 1;
  question.rules = {"mill-town/reducer-fitted"};
  report.next = {question};
  report.unfinished = {"line"};
  report.also = {"mill-water"};
  report.differences = {{"a", "line[2] pipe", {{"mill-town", "pass"}, {"mill-water", "fail"}}}};
  report.contradictions = {"a and b"};
  return report;
}

TEST(Json, KeepsToTheSchema) {
  EXPECT_EQ(against_schema(report::json(small_report())), "");
  EXPECT_EQ(against_schema(report::json(full_report())), "");
}

TEST(Json, SchemaRefusesWhatIsNotAReport) {
  auto report = Json::parse(report::json(full_report()));
  report["findings"][0]["outcome"] = "perhaps";
  EXPECT_NE(against_schema(report.dump()), "");
  report = Json::parse(report::json(full_report()));
  report.erase("closing");
  EXPECT_NE(against_schema(report.dump()), "");
  report = Json::parse(report::json(full_report()));
  report["surprise"] = 1;
  EXPECT_NE(against_schema(report.dump()), "");
}

TEST(Json, HoldsWhatTheReportHolds) {
  const auto report = Json::parse(report::json(full_report()));
  EXPECT_EQ(report["report"], "headgate-report/1");
  EXPECT_EQ(report["totals"]["not applicable"], 4);
  EXPECT_EQ(report["findings"][0]["facts"][0]["at"], "quay.yaml:9:28");
  EXPECT_EQ(report["findings"][0]["limits"][0]["citation"], "town-code 52");
  EXPECT_EQ(report["findings"][0]["limits"][0]["replaced"][0], "80 psi (code-x 604.8)");
  EXPECT_EQ(report["findings"][2]["would-be"], "fail");
  EXPECT_EQ(report["findings"][1]["to-decide"][0]["need"], "What is it?");
  EXPECT_EQ(report["next"][0]["decides"], 1);
}

TEST(Json, IsTheSameEveryTimeAndInEveryLocale) {
  const std::string first = report::json(full_report());
  EXPECT_EQ(first, report::json(full_report()));
  const std::string before = std::setlocale(LC_ALL, nullptr);
  for (const char* name : {"de_DE.UTF-8", "fr_FR.UTF-8", "C.UTF-8", "C"}) {
    if (std::setlocale(LC_ALL, name) == nullptr) continue;
    EXPECT_EQ(first, report::json(full_report())) << name;
  }
  std::setlocale(LC_ALL, before.c_str());
}

TEST(Json, IsPlainAsciiWhateverTheSiteHolds) {
  Report report = small_report();
  report.site_name = "M\u00fchle \x1b[31m \x7f \xc2\x9b \xe2\x80\xae \xff";
  const std::string text = report::json(report);
  for (const char c : text) EXPECT_TRUE(c == '\n' || (c >= 0x20 && c < 0x7f)) << text;
  EXPECT_EQ(against_schema(text), "");
  EXPECT_EQ(Json::parse(text)["site"]["name"].get<std::string>().substr(0, 7), "M\u00fchle ");
}

}  // namespace
}  // namespace headgate::test
