// Reports as text: exact, and never wider than asked unless one word is.
#include <gtest/gtest.h>

#include "report/small_report.hpp"

namespace headgate::test {
namespace {

const std::string head =
    "Quay House\n"
    "  site     quay.yaml, stage entry\n"
    "  law      Mill Town (mill-town)\n"
    "  days     permit application not dated; checked on 2026-10-02\n";

// Of every line, the columns past `width`, where the line holds more than one word after its indent.
std::string too_wide(const std::string& text, std::size_t width) {
  std::istringstream lines(text);
  std::string bad;
  for (std::string line; std::getline(lines, line);) {
    std::size_t columns = 0;
    for (const char c : line) columns += (static_cast<unsigned char>(c) & 0xC0U) != 0x80U ? 1 : 0;
    const std::size_t start = line.find_first_not_of(' ');
    if (columns > width && line.find(' ', start) != std::string::npos) bad += line + "\n";
  }
  return bad;
}

TEST(Text, NothingFoundStillAnswersTotalsAndCloses) {
  EXPECT_EQ(report::text(small_report(), {}), head +
                                                  "  answer   Nothing fails and nothing is left undecided.\n"
                                                  "\n"
                                                  "No findings.\n"
                                                  "A licensed person decides.\n");
}

TEST(Text, FailIsWrittenInFull) {
  Report report = small_report();
  report.findings = {small_finding()};
  report.totals[1] = 1;
  report.totals[0] = 2;
  EXPECT_EQ(report::text(report, {}),
            head +
                "  answer   1 finding fails.\n"
                "\n"
                "FAIL  mill-town/reducer-fitted (pressure, binds from entry)\n"
                "           A reducer is fitted.\n"
                "  found    The line has no pressure reducing valve.\n"
                "  because  Highest static pressure is 86 psi, above 70 psi (highest static\n"
                "           pressure).\n"
                "  fact     pressure.highest-static = 86 psi, gauge, photo 3 (quay.yaml:9:28)\n"
                "  limit    static-max = 70 psi, set by mill-town, Ordinance 5, since 2026-07-01:\n"
                "           town-code 52 (Town Code), seen: adopted text\n"
                "           replaces 80 psi (code-x 604.8)\n"
                "  source   code-x 604.8 (Code X, 2018), seen: secondary (a forum)\n"
                "  why      High pressure wears valves.\n"
                "  fix      Fit a valve at the entry.\n"
                "  caution  Drain before cutting.\n"
                "  note     often misread: At the limit itself none is asked for.\n"
                "\n"
                "2 pass, 1 fail.\n"
                "A licensed person decides.\n");
}

TEST(Text, SecondFindingOfARuleKeepsItsCautionAndPointsBack) {
  Report report = small_report();
  Finding second = small_finding();
  second.rule = "mill-water/reducer-fitted";
  second.limits[0].citation = second.citations[0];
  report.findings = {small_finding(), second};
  report.totals[1] = 2;
  const std::string text = report::text(report, {});
  EXPECT_EQ(text.substr(text.find("FAIL  mill-water")),
            "FAIL  mill-water/reducer-fitted (pressure, binds from entry)\n"
            "           A reducer is fitted.\n"
            "  found    The line has no pressure reducing valve.\n"
            "  because  Highest static pressure is 86 psi, above 70 psi (highest static\n"
            "           pressure).\n"
            "  fact     pressure.highest-static = 86 psi, gauge, photo 3 (quay.yaml:9:28)\n"
            "  limit    static-max = 70 psi, set by mill-town, Ordinance 5, since 2026-07-01:\n"
            "           code-x 604.8 (Code X, 2018), seen: secondary (a forum)\n"
            "           replaces 80 psi (code-x 604.8)\n"
            "  fix      as above\n"
            "  caution  Drain before cutting.\n"
            "\n"
            "2 fail.\n"
            "A licensed person decides.\n");
}

TEST(Text, PassesAreOneLineAndOnlyWithAll) {
  Report report = small_report();
  Finding pass = small_finding();
  pass.outcome = "pass";
  pass.element = "line[3] meter";
  pass.sentence = "The meter's size is 1\".";
  report.findings = {pass};
  report.totals[0] = 1;
  EXPECT_EQ(report::text(report, {}).find("PASS"), std::string::npos);
  EXPECT_NE(report::text(report, {80, true})
                .find("\nPASS  mill-town/reducer-fitted at line[3] meter: The meter's size is 1\".\n"),
            std::string::npos);
  report.plan = true;
  EXPECT_NE(report::text(report, {80, true})
                .find("\nPASSES AS PLANNED  mill-town/reducer-fitted at line[3] meter: The meter's size\n"
                      "           is 1\".\n"),
            std::string::npos);
}

TEST(Text, UndecidedComesByQuestion) {
  Report report = small_report();
  report.totals[3] = 9;
  Question question;
  question.fact = "line[7].lead-share";
  question.about = "line[7] shutoff";
  question.ask = "What lead content is it certified for?";
  question.hint = "Read the tag.";
  question.cost = "look";
  question.decides = 9;
  for (const char* name : {"t/a", "t/b", "t/c", "t/d", "t/e", "t/f", "t/g", "t/h"}) question.rules.emplace_back(name);
  Question single;
  single.fact = "line";
  single.ask = "What else is there, to the end of the line?";
  single.decides = 1;
  single.rules = {"t/a"};
  report.next = {question, single};
  report.unfinished = {"line"};
  EXPECT_EQ(report::text(report, {}),
            head +
                "  answer   Nothing fails, 9 are undecided.\n"
                "\n"
                "UNDECIDED  9 findings wait on: What lead content is it certified for? (line[7]\n"
                "           shutoff)\n"
                "  state    line[7].lead-share, found by looking\n"
                "  hint     Read the tag.\n"
                "  rules    t/a, t/b, t/c, t/d, t/e, t/f and 2 others\n"
                "\n"
                "UNDECIDED  1 finding waits on: What else is there, to the end of the line?\n"
                "  state    line\n"
                "  rule     t/a\n"
                "\n"
                "UNFINISHED  line: not written down to the end, so nothing is concluded from what\n"
                "           is not there\n"
                "\n"
                "9 undecided.\n"
                "A licensed person decides.\n");
}

TEST(Text, LaterShowsWhatWouldFailNow) {
  Report report = small_report();
  Finding later = small_finding();
  later.outcome = "later";
  later.would_be = "fail";
  Finding fine = later;
  fine.rule = "mill-town/fine";
  fine.would_be = "pass";
  report.findings = {later, fine};
  report.totals[4] = 2;
  const std::string text = report::text(report, {});
  EXPECT_NE(text.find("\nLATER (fail)  mill-town/reducer-fitted (pressure, binds from entry)\n"), std::string::npos);
  EXPECT_EQ(text.find("mill-town/fine"), std::string::npos);
}

TEST(Text, PlacesSideBySideWhereTheyDiffer) {
  Report report = small_report();
  report.also = {"mill-water"};
  report.contradictions = {"mill-town/a and mill-water/b ask for opposite things: some gauge in line"};
  report.differences = {{"a", "line[2] pipe", {{"mill-town", "pass"}, {"mill-water", "fail"}}}};
  const std::string text = report::text(report, {});
  EXPECT_NE(text.find("  law      Mill Town (mill-town), and beside it mill-water\n"), std::string::npos);
  EXPECT_NE(
      text.find(
          "\nCONTRADICTION  mill-town/a and mill-water/b ask for opposite things: some gauge\n           in line\n"),
      std::string::npos);
  EXPECT_NE(text.find("\nWHERE THE PLACES DIFFER\n  a at line[2] pipe: mill-town pass; mill-water fail\n"),
            std::string::npos);
}

TEST(Text, NeverWiderThanAskedUnlessAWordIs) {
  Report report = small_report();
  Finding wide = small_finding();
  wide.facts[0].at = std::string(120, 'x') + ".yaml:1:1";
  wide.why =
      "Gr\u00f6\u00dfe und Druck m\u00fcssen passen, und zwar \u00fcberall im Haus, vom Keller bis unter das Dach.";
  report.findings = {wide, small_finding()};
  for (const std::size_t width : {40U, 60U, 80U, 120U})
    EXPECT_EQ(too_wide(report::text(report, {width, true}), width), "") << width;
}

TEST(Text, NothingATerminalActsOnGetsOut) {
  Report report = small_report();
  report.site_name = "Quay\x1b[31m House\a";
  report.site_file = "\x1b]0;title\x07.yaml";
  Finding bad = small_finding();
  bad.facts[0].how = "gauge\r\x1b[2J, \xc2\x9bphoto, \xe2\x80\xaereversed";
  bad.sentence = "first\nsecond";
  report.findings = {bad};
  const std::string text = report::text(report, {});
  for (const char c : text) EXPECT_TRUE(c == '\n' || static_cast<unsigned char>(c) >= 0x20) << text;
  EXPECT_EQ(text.find("\xc2\x9b"), std::string::npos);
  EXPECT_EQ(text.find("\xe2\x80\xae"), std::string::npos);
  EXPECT_NE(text.find("Quay\\x1b[31m House\\x07\n"), std::string::npos);
  EXPECT_NE(text.find("  found    first second\n"), std::string::npos);
}

TEST(Wrapped, KeepsWordsWholeAndIndents) {
  EXPECT_EQ(report::wrapped("a  ", "one two three", 3, 10), "a  one two\n   three\n");
  EXPECT_EQ(report::wrapped("", "onetwothreefour five", 2, 8), "onetwothreefour\n  five\n");
  EXPECT_EQ(report::wrapped("label  ", "", 2, 8), "label  \n");
}

}  // namespace
}  // namespace headgate::test
