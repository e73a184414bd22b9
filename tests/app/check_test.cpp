// `headgate check`, end to end.
#include <gtest/gtest.h>

#include "app/run.hpp"
#include "report/small_report.hpp"

namespace headgate::test {
namespace {

using Json = nlohmann::json;

std::string example(const std::string& name) { return "examples/halyard/" + name + ".yaml"; }

// The outcome of the first finding of a rule, as "outcome: sentence"; "none" without one.
std::string outcome(const Json& report, const std::string& rule) {
  for (const auto& finding : report["findings"]) {
    if (finding["rule"] == rule)
      return finding["outcome"].get<std::string>() + ": " + finding["sentence"].get<std::string>();
  }
  return "none";
}

Json judged(std::vector<std::string> arguments) {
  arguments.insert(arguments.end(), {"--format", "json"});
  const Ran ran = run(arguments);
  EXPECT_EQ(ran.err, "");
  EXPECT_EQ(against_schema(ran.out), "");
  return Json::parse(ran.out, nullptr, false);
}

TEST(Check, ExamplesEndAsTheirStoriesSay) {
  const Ran found = run({"check", example("as-found")});
  EXPECT_EQ(found.status, 1);
  EXPECT_TRUE(has(found.out, "\nFAIL  fennick-ferry/reducer-above-static-limit (pressure, binds from entry)\n"))
      << found.out;
  EXPECT_TRUE(has(found.out, "  found    The line has no pressure reducing valve.\n"));
  EXPECT_TRUE(has(found.out, "           replaces 80 psi (irc-2018 P2903.3.1)\n"));
  EXPECT_TRUE(has(found.out, "(examples/halyard/as-found.yaml:19:27)\n"));
  EXPECT_EQ(found.err, "");
  const Ran planned = run({"check", example("as-planned")});
  EXPECT_EQ(planned.status, 3);
  EXPECT_TRUE(has(planned.out, "\n  answer   Nothing fails, ")) << planned.out;
  EXPECT_TRUE(has(planned.out, "What else is there, to the end of the line?"));
  const Ran built = run({"check", example("as-built")});
  EXPECT_EQ(built.status, 0);
  EXPECT_TRUE(has(built.out, "\n  answer   Nothing fails and nothing is left undecided.\n")) << built.out;
  EXPECT_TRUE(has(built.out, "jurisdiction and a licensed person decide.\n"));
}

TEST(Check, EveryHouseEndsAsItsStorySays) {
  const std::vector<std::pair<std::string, int>> houses = {{"quarry-lane/before-cover", 1},
                                                           {"orchard-row/survey", 3},
                                                           {"tollgate/handover", 1},
                                                           {"willow-court/in-service", 0},
                                                           {"high-meadow/planned", 3}};
  for (const auto& [house, status] : houses) {
    const Ran ran = run({"check", "examples/" + house + ".yaml"});
    EXPECT_EQ(ran.status, status) << house << "\n" << ran.out << ran.err;
    EXPECT_EQ(ran.err, "") << house;
  }
}

std::string in_one_line(const std::string& text) {
  std::istringstream words(text);
  std::string all;
  for (std::string word; words >> word;) all += (all.empty() ? "" : " ") + word;
  return all;
}

TEST(Check, DoubtIsToldInItsOwnWordsWithWhomToAsk) {
  const Scratch scratch;
  const std::string place = scratch.file("doubtful.yaml", R"(format: place/1
id: doubtful
title: City of Two Prints (invented)
adopts: irc-2018
sources:
  own:
    title: Own Code
    kind: ordinance
    sections: {"1": {about: pressure, seen: secondary, doubt: two printed versions disagree}}
limits:
  static-pressure-max: {own 1: unknown}
)");
  const std::string words = "is doubtful: two printed versions disagree; ask City of Two Prints which value counts";
  const Ran ran = run({"check", example("as-built"), "--place", place});
  EXPECT_EQ(ran.status, 3) << ran.err;
  const std::string text = in_one_line(ran.out);
  const std::size_t waits = text.find(words);
  EXPECT_LT(text.rfind("UNDECIDED", waits), waits) << ran.out;
  EXPECT_NE(waits, std::string::npos) << ran.out;
  const Ran explained = run({"explain", example("as-built"), "reducer-above-static-limit", "--place", place});
  EXPECT_TRUE(has(in_one_line(explained.out), words)) << explained.out;
}

TEST(Check, AnOrderIsTheLastLayer) {
  const Scratch scratch;
  const auto site = [&](const std::string& order) {
    return scratch.file(
        "site.yaml",
        "format: site/1\nplace: fennick-ferry\nstage: entry\npermit-applied-on: 2026-09-14\n"
        "checked-on: 2026-10-02\npressure: {highest-static: 65 psi}\nline: [wall]\npapers:\n  - order: {" +
            order + "}\n");
  };
  const std::string order = "limit: static-pressure-max, value: 60 psi, dated: 2026-09-01, number: X-7";
  const std::string text = in_one_line(run({"check", site(order + ", by: building-official")}).out);
  EXPECT_TRUE(has(text, "FAIL fennick-ferry/reducer-above-static-limit")) << text;
  EXPECT_TRUE(has(text,
                  "limit static-pressure-max = 60 psi, set by order of building-official, 2026-09-01, number X-7 "
                  "replaces 70 psi (ff-code 52-118), 80 psi (irc-2018 P2903.3.1)"))
      << text;
  const std::string doubtful = in_one_line(run({"check", site(order)}).out);
  EXPECT_TRUE(has(doubtful, "is doubtful: who gave the order papers[1] is not stated; ask the authority having"))
      << doubtful;
  const Ran wrong = run({"check", site("limit: static-pressure-mx, value: 60 psi, by: building-official")});
  EXPECT_EQ(wrong.status, 2);
  EXPECT_TRUE(has(wrong.err, "There is no limit \"static-pressure-mx\" to set. [no-such-limit]")) << wrong.err;
  EXPECT_TRUE(has(wrong.err, "did you mean static-pressure-max?")) << wrong.err;
  const Ran length = run({"check", site("limit: static-pressure-max, value: 60 ft, by: building-official")});
  EXPECT_EQ(length.status, 2);
  EXPECT_TRUE(has(length.err, "site.yaml:9:48: error: This is a length, where a pressure is asked for. [wrong-type]"))
      << length.err;
}

TEST(Check, TextStaysWithinEightyColumns) {
  for (const auto* name : {"as-found", "as-planned", "as-built"}) {
    std::istringstream lines(run({"check", example(name), "--all"}).out);
    for (std::string line; std::getline(lines, line);) {
      const bool several_words = line.find(' ', line.find_first_not_of(' ')) != std::string::npos;
      EXPECT_TRUE(line.size() <= 80 || !several_words) << line;
    }
  }
}

TEST(Check, JsonOfEveryExampleAndPlaceKeepsToTheSchema) {
  const auto expect_valid = [](const std::string& name, const std::vector<std::string>& place) {
    std::vector<std::string> command = {"check", example(name), "--format", "json"};
    command.insert(command.end(), place.begin(), place.end());
    const Ran ran = run(command);
    EXPECT_TRUE(ran.status == 0 || ran.status == 1 || ran.status == 3) << name << ran.err;
    EXPECT_EQ(against_schema(ran.out), "") << testing::PrintToString(command);
  };
  for (const auto* name : {"as-found", "as-planned", "as-built"}) expect_valid(name, {});
  for (const auto* place : {"fennick-water", "brackwater", "irc-2018", "ipc-2018", "upc-2024"})
    expect_valid("as-found", {"--place", place});
}

TEST(Check, JsonIsTheSameFromRunToRunAndInAnyLocale) {
  const std::vector<std::string> command = {"check", example("as-found"), "--format", "json"};
  const std::string first = run(command).out;
  ASSERT_FALSE(first.empty());
  EXPECT_EQ(run(command).out, first);
  setenv("LC_ALL", "de_DE.UTF-8", 1);
  EXPECT_EQ(run(command).out, first);
  unsetenv("LC_ALL");
}

TEST(Check, ExactCoarseAndMissingPressureUnderTheUniformCode) {
  const Scratch scratch;
  const std::string rule = "upc-2024/reducer-above-static-limit";
  const auto under = [&](const std::string& pressure) {
    return outcome(judged({"check", scratch.file("site.yaml", house_without_reducer(pressure)), "--place", "upc-2024"}),
                   rule);
  };
  const std::string bound = "80 psi (highest static pressure without a pressure reducing valve).";
  EXPECT_EQ(under("80 psi"), "not applicable: Highest static pressure is 80 psi, at most " + bound);
  EXPECT_EQ(under("80.1 psi"), "fail: The line has no pressure reducing valve.");
  EXPECT_EQ(under("79 psi +/- 2 psi"),
            "undecided: Fails if it applies. Highest static pressure is 79 psi +/- 2 psi, too coarse to compare with " +
                bound);
  EXPECT_EQ(under(""), "undecided: Fails if it applies. Highest static pressure is not stated.");
}

TEST(Check, FindingIsTraceableToItsLines) {
  const Json report = judged({"check", example("as-found")});
  for (const auto& finding : report["findings"]) {
    if (finding["rule"] != "fennick-ferry/reducer-above-static-limit") continue;
    EXPECT_EQ(finding["facts"][0]["at"], "examples/halyard/as-found.yaml:19:27");
    EXPECT_EQ(finding["limits"][0]["value"], "70 psi");
    EXPECT_EQ(finding["limits"][0]["citation"], "ff-code 52-118");
    EXPECT_EQ(finding["limits"][0]["replaced"][0], "80 psi (irc-2018 P2903.3.1)");
    EXPECT_EQ(finding["citations"][0]["section"], "P2903.3.1");
    EXPECT_TRUE(has(finding["at"], "rules/pressure.yaml:"));
    EXPECT_FALSE(finding["caution"].get<std::string>().empty());
    return;
  }
  ADD_FAILURE() << "no such finding";
}

TEST(Check, SetAsksWhatIf) {
  const std::string rule = "fennick-ferry/reducer-above-static-limit";
  EXPECT_EQ(
      outcome(judged({"check", example("as-found"), "--set", "pressure.highest-static=70 psi"}), rule).substr(0, 14),
      "not applicable");
  EXPECT_EQ(outcome(judged({"check", example("as-built"), "--set", "line.pressure-reducer=none"}), rule),
            "fail: The line has no pressure reducing valve.");
  const Json both = judged({"check", example("as-built"), "--set", "line.pressure-reducer=none", "--set",
                            "pressure.highest-static=unknown"});
  EXPECT_EQ(outcome(both, rule), "undecided: Fails if it applies. Highest static pressure is stated as unknown.");
}

TEST(Check, SetTakesListsAndMaps) {
  const auto facts = [](const std::string& set) {
    const Json report = judged({"check", example("as-built"), "--all", "--set", set});
    std::string all;
    for (const auto& finding : report["findings"]) {
      for (const auto& fact : finding["facts"])
        all += fact["name"].get<std::string>() + " = " + fact["value"].get<std::string>() + "  (" +
               fact["at"].get<std::string>() + ")\n";
    }
    return all;
  };
  EXPECT_TRUE(has(facts("line[4].near=[sewer: {beside: 7'}]"), "line[4].near[1].beside = 7'  (--set:1:31)\n"));
  EXPECT_TRUE(has(facts("tests[4]={kind: wire-test, passed: no}"), "tests[4].kind = tracer wire continuity"));
  const auto refused = [](const std::string& set) {
    const Ran ran = run({"check", example("as-built"), "--set", set});
    EXPECT_EQ(ran.status, 2);
    return ran.err;
  };
  EXPECT_TRUE(has(refused("line[4].near=[sewer: {beside: 7'}"), "--set:1:14: error: This [ is never closed."));
  EXPECT_TRUE(has(refused("line[4].near=[sewer: {besides: 7'}]"), "--set:1:23: error: \"besides\" is not"));
  EXPECT_TRUE(has(refused("line[4].near=[sewer: {beside: 7 psy}]"), "--set:1:"));
  EXPECT_TRUE(has(refused("tests[5]={kind: wire-test}"), "--set:1:1: error:"));
}

TEST(Check, StageMakesRulesBind) {
  const std::string rule = "fennick-ferry/reducer-proven";
  const std::vector<std::string> unread = {"check", example("as-built"), "--set", "pressure.after-reducer=unknown"};
  auto early = unread;
  early.insert(early.end(), {"--stage", "entry"});
  EXPECT_EQ(outcome(judged(early), rule).substr(0, 5), "later");
  EXPECT_EQ(outcome(judged(unread), rule).substr(0, 4), "fail");
}

TEST(Check, OnPicksTheDayDeadlinesAreJudged) {
  const std::string rule = "fennick-ferry/report-filed";
  const std::vector<std::string> unfiled = {"check", example("as-built"), "--set", "tests[2].report-filed-on=none"};
  const auto outcome_on = [&](const std::string& day) {
    auto command = unfiled;
    command.insert(command.end(), {"--on", day});
    return outcome(judged(command), rule);
  };
  EXPECT_EQ(outcome_on("2026-10-22").substr(0, 5), "later");
  EXPECT_EQ(outcome_on("2026-10-24").substr(0, 4), "fail");
}

TEST(Check, TwoPlacesAreJudgedSideBySide) {
  const Json report = judged({"check", example("as-built"), "--place", "irc-2018", "--place", "upc-2024"});
  EXPECT_EQ(report["rulebook"]["place"], "irc-2018");
  EXPECT_EQ(report["rulebook"]["also"][0], "upc-2024");
  EXPECT_NE(outcome(report, "irc-2018/reducer-above-static-limit"), "none");
  EXPECT_NE(outcome(report, "upc-2024/strainer-before-reducer"), "none");
  EXPECT_FALSE(report["differences"].empty());
}

TEST(Check, QuietPrintsNothing) {
  const Ran ran = run({"check", example("as-found"), "--quiet"});
  EXPECT_EQ(ran.status, 1);
  EXPECT_EQ(ran.out + ran.err, "");
}

TEST(Check, OutputFileIsReplacedWholeAndOnlyWhenThereIsAReport) {
  const Scratch scratch;
  const std::string out = scratch.file("report.txt", std::string(100000, 'x'));
  const Ran ran = run({"check", example("as-found"), "-o", out});
  EXPECT_EQ(ran.status, 1);
  EXPECT_EQ(ran.out, "");
  EXPECT_EQ(read_text(out), run({"check", example("as-found")}).out);
  EXPECT_EQ(run({"check", scratch.file("bad.yaml", "format: site/1\nplace: nowhere\n"), "-o", out}).status, 2);
  EXPECT_EQ(read_text(out).substr(0, 26), "Halyard Street 212, as fou");
  EXPECT_EQ(run({"check", "no-such.yaml", "-o", scratch.at("new.txt")}).status, 2);
  EXPECT_FALSE(std::filesystem::exists(scratch.at("new.txt")));
  EXPECT_EQ(scratch.files().size(), 2U);  // nothing left half-written
  const Ran nowhere = run({"check", example("as-found"), "-o", scratch.at("no-folder/report.txt")});
  EXPECT_EQ(nowhere.status, 2);
  EXPECT_TRUE(has(nowhere.err, "[file-unwritable]")) << nowhere.err;
}

TEST(Check, LogSaysWhatWasRead) {
  const Scratch scratch;
  EXPECT_EQ(run({"check", example("as-built"), "--log", scratch.at("log.txt")}).status, 0);
  const std::string log = read_text(scratch.at("log.txt"));
  EXPECT_TRUE(has(log, "examples/halyard/as-built.yaml")) << log;
  EXPECT_TRUE(has(log, "rules/pressure.yaml")) << log;
  EXPECT_TRUE(has(log, "exit status 0")) << log;
  EXPECT_EQ(run({"check", example("as-built"), "--log", scratch.at("log.txt/below-a-file")}).status, 2);
}

TEST(Check, PermitDateLeftOutLeavesTheChangedLawOpen) {
  const Scratch scratch;
  const std::string site =
      "format: site/1\nname: Quay House\nplace: fennick-ferry\nstage: entry\npressure: {highest-static: 75 "
      "psi}\nline:\n  - meter: {size: 3/4\"}\n";
  const Json open = judged({"check", scratch.file("site.yaml", site)});
  EXPECT_EQ(outcome(open, "fennick-ferry/reducer-above-static-limit"),
            "undecided: The law changed, and the day of the permit application is not stated: before and after the "
            "change the outcome differs.");
  const Json dated = judged({"check", scratch.at("site.yaml"), "--set", "permit-applied-on=2026-06-30"});
  EXPECT_EQ(outcome(dated, "fennick-ferry/reducer-above-static-limit").substr(0, 14), "not applicable");
}

TEST(Check, WhatCannotBeUsedEndsWithTwo) {
  const auto said = [](const std::vector<std::string>& command) {
    const Ran ran = run(command);
    EXPECT_EQ(ran.status, 2);
    EXPECT_EQ(ran.out, "");
    return ran.err;
  };
  EXPECT_TRUE(has(said({"check", "no-such.yaml"}), "[file-missing]"));
  EXPECT_TRUE(has(said({"check", example("as-built"), "--place", "fennik-ferry"}), "did you mean fennick-ferry?"));
  EXPECT_TRUE(has(said({"check", example("as-built"), "--stage", "entri"}), "[no-such-stage]"));
  EXPECT_TRUE(has(said({"check", example("as-built"), "--on", "tomorrow"}), "[no-such-day]"));
  EXPECT_TRUE(has(said({"check", example("as-built"), "--set", "pressure.highest-statik=80 psi"}), "highest-static"));
  EXPECT_TRUE(has(said({"check", example("as-built"), "--rules", "no-such-folder"}), "[no-rules]"));
  EXPECT_NE(said({"check"}), "");
  EXPECT_NE(said({"check", example("as-built"), "--format", "pdf"}), "");
  EXPECT_NE(said({"check", example("as-built"), "--no-such-option"}), "");
  EXPECT_NE(said({"no-such-command"}), "");
  EXPECT_NE(said({}), "");
}

TEST(Check, ADutyWithoutItsDayAsksForIt) {
  const Scratch scratch;
  std::string built = read_text(std::filesystem::path(HEADGATE_SOURCE_DIR) / example("as-built"));
  const std::size_t at = built.find("checked-on:");
  built.erase(at, built.find('\n', at) - at);
  const Ran ran = run({"check", scratch.file("site.yaml", built)});
  EXPECT_EQ(ran.status, 3) << ran.err;
  EXPECT_TRUE(has(ran.out, "  state    checked-on")) << ran.out;
}

TEST(Check, ADutyOfAnOpenDayShowsNoOther) {
  const Ran ran = run({"check", example("as-built"), "--all", "--set", "tests[2].done-on=after 2026-09-20"});
  EXPECT_TRUE(has(ran.out, "Done in time: due 2026-10-21 or")) << ran.out;
  EXPECT_FALSE(has(ran.out, "1970")) << ran.out;
}

TEST(Check, WarningsAreToldOnceByEveryCommand) {
  for (const auto* command : {"check", "checklist", "worksheet"}) {
    const Ran ran = run({command, example("as-built"), "--set", "pressure.lowest-static=1 psi"});
    const std::size_t first = ran.err.find("warning:");
    EXPECT_NE(first, std::string::npos) << command << ran.err;
    EXPECT_EQ(ran.err.find("warning:", first + 1), std::string::npos) << command << ran.err;
  }
}

TEST(Check, WhatStandsThereForNothingIsAFactOfAFinding) {
  const Ran ran = run({"check", example("as-found")});
  EXPECT_TRUE(has(ran.out, "  fact     line[5].sleeve = none (examples/halyard/as-found.yaml:")) << ran.out;
}

TEST(Check, QuietStillWritesTheFileAskedFor) {
  const Scratch scratch;
  const Ran ran = run({"check", example("as-built"), "--quiet", "-o", scratch.at("report.txt")});
  EXPECT_EQ(ran.out, "");
  EXPECT_TRUE(has(read_text(scratch.at("report.txt")), "This is a pre-check"));
}

TEST(Check, AMisspeltConfirmationIsTold) {
  const Ran ran = run({"check", "examples/quarry-lane/before-cover.yaml", "--set", "confirmed.licence-hel=yes"});
  EXPECT_TRUE(has(ran.err, "No rule asks whether \"licence-hel\" is confirmed. [unasked-answer]")) << ran.err;
  EXPECT_TRUE(has(ran.err, "did you mean licence-held?")) << ran.err;
}

}  // namespace
}  // namespace headgate::test
