// The other commands end to end, and input that cannot be used.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "app/run.hpp"

namespace headgate::app_test {
namespace {

using Json = nlohmann::json;

bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

TEST(Calc, HazenWilliamsAgreesWithTheFrictionTable) {
  // 3.1 psi: check value of the friction formula for 3/4 in type L at 5 gpm (irrigation friction table gives 3.09).
  const Ran ran = headgate("calc 'hazen-williams(5 gpm, 140, 0.785 in, 100 ft)' --in psi --format json");
  ASSERT_EQ(ran.status, 0) << ran.err;
  const Json result = Json::parse(ran.out);
  EXPECT_NEAR(result["value"].get<double>(), 3.1, 0.031);
  EXPECT_EQ(result["unit"], "psi");
}

TEST(Calc, SumsCarryUnitsAndProblemsAPlace) {
  EXPECT_EQ(headgate("calc '2 ft + 6 in' --in in").out, "30 in\n");
  EXPECT_EQ(headgate("calc 'limit.static-pressure-max' --place upc-2024").out, "80 psi\n");
  const Ran clash = headgate("calc '2 ft + 3 psi'");
  EXPECT_EQ(clash.status, 2);
  EXPECT_EQ(clash.out, "");
  EXPECT_TRUE(holds(clash.err, "calc:1:1: error:")) << clash.err;
  const Ran unit = headgate("calc '2 ft' --in psi");
  EXPECT_EQ(unit.status, 2);
  EXPECT_TRUE(holds(unit.err, "The result cannot be shown in psi: it is a length.")) << unit.err;
}

TEST(Facts, FindsByWordOfNameTitleOrQuestion) {
  const Ran ran = headgate("facts highest-static");
  EXPECT_EQ(ran.status, 0);
  EXPECT_TRUE(holds(ran.out, "pressure.highest-static"));
  EXPECT_TRUE(holds(ran.out, "What is the highest static pressure the street gives?"));
  EXPECT_TRUE(holds(ran.out, "at the hose bibb"));
  EXPECT_TRUE(holds(headgate("facts 'K copper'").out, "k-copper"));
  const Ran none = headgate("facts qwertz");
  EXPECT_EQ(none.status, 2);
  EXPECT_TRUE(holds(none.err, "Nothing that can be stated is called qwertz."));
}

TEST(Explain, ShowsEveryClauseWithItsValueAndPlace) {
  const Ran ran = headgate("explain examples/halyard/as-found.yaml fennick-ferry/reducer-above-static-limit");
  EXPECT_EQ(ran.status, 0) << ran.err;
  EXPECT_TRUE(holds(ran.out, "fennick-ferry/reducer-above-static-limit: fail"));
  EXPECT_TRUE(holds(ran.out, "pressure.highest-static > limit.static-pressure-max"));
  EXPECT_TRUE(holds(ran.out, "86 psi"));
  EXPECT_TRUE(holds(ran.out, "[examples/halyard/as-found.yaml:"));
  EXPECT_TRUE(holds(ran.out, "ff-code 52-118"));
  EXPECT_FALSE(holds(ran.out, "fennick-water/"));
  const Ran none = headgate("explain examples/halyard/as-found.yaml reducer-above-static-limt");
  EXPECT_EQ(none.status, 2);
  EXPECT_TRUE(holds(none.err, "did you mean reducer-above-static-limit?")) << none.err;
}

TEST(Limits, NameTheLayerAndWhatItReplaced) {
  const auto pressure_limit = [](const std::string& day) {
    const Json report = Json::parse(headgate("limits --place fennick-ferry --format json --on " + day).out);
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
  EXPECT_EQ(headgate("limits").status, 2);
}

TEST(Trials, OfAllRulesPass) {
  const Ran ran = headgate("trials tests/trials");
  EXPECT_EQ(ran.status, 0) << ran.out;
  EXPECT_TRUE(holds(ran.out, " passed, 0 failed\n"));
}

TEST(Trials, AFailureNamesTheCaseAndWhatItCameTo) {
  const Folder folder;
  const std::string file = folder.write("trials.yaml",
                                        "format: trials/1\nstart-from: " HEADGATE_SOURCE_DIR
                                        "/examples/halyard/as-built.yaml\ntrials:\n  - name: a wrong guess\n"
                                        "    rule: reducer-above-static-limit\n    set: {line.pressure-reducer: none}\n    expect: pass\n");
  const Ran ran = headgate("trials '" + file + "'");
  EXPECT_EQ(ran.status, 1);
  EXPECT_TRUE(holds(ran.out, "expected pass, was fail")) << ran.out;
  EXPECT_TRUE(holds(ran.out, "0 passed, 1 failed\n"));
}

TEST(Trials, AMistypedFileIsRefusedWithItsPlace) {
  const Folder folder;
  const std::string file = folder.write("trials.yaml",
                                        "format: trials/1\nstart-from: " HEADGATE_SOURCE_DIR
                                        "/examples/halyard/as-built.yaml\ntrials:\n  - name: x\n    rule: a\n    expct: fail\n");
  const Ran ran = headgate("trials '" + file + "'");
  EXPECT_EQ(ran.status, 2);
  EXPECT_TRUE(holds(ran.err, ":6:5: error: A trials file has no \"expct\". [trials-key]")) << ran.err;
  EXPECT_TRUE(holds(ran.err, "did you mean expect?"));
}

TEST(Unusable, IsSaidInOneSentenceAndNothingIsWritten) {
  const Folder folder;
  const std::string good = "examples/halyard/as-built.yaml";
  const std::string kept = folder.write("report.json", "kept");
  const std::pair<std::string, std::string> cases[] = {
      {"check nosuch.yaml", "There is no file nosuch.yaml."},
      {"check examples", "examples is a directory, not a file."},
      {"check '" + folder.write("empty.yaml", "") + "'", "The file holds nothing."},
      {"check '" + folder.write("nul.yaml", std::string("name: a\0b\n", 10)) + "'", "error"},
      {"check '" + folder.write("utf8.yaml", "name: \xff\xfe\n") + "'", "not UTF-8"},
      {"check '" + folder.write("bomb.yaml", "a: &a [x]\nb: [*a, *a]\n") + "'", "YAML anchor"},
      {"check '" + folder.write("deep.yaml", "a: " + std::string(5000, '[') + "\n") + "'", "deep"},
      {"check '" + folder.write("away.yaml", "format: site/1\nplace: ../../../etc/passwd\n") + "'", "no place ../../../etc/passwd"},
      {"check '" + folder.write("none.yaml", "format: site/1\nname: x\n") + "'", "does not say which place's rules apply"},
      {"check " + good + " --place fenick-ferry", "did you mean fennick-ferry?"},
      {"check " + good + " --set nonsense", "\"nonsense\" sets nothing."},
      {"check " + good + " --set pressure.highest=3", "pressure.highest"},
      {"check " + good + " --stage kitchen", "There is no stage kitchen."},
      {"check " + good + " --on tomorrow", "\"tomorrow\" is not a day."},
      {"check " + good + " --rules /nosuch", "There are no rules in /nosuch."},
  };
  for (const auto& [arguments, words] : cases) {
    const Ran ran = headgate(arguments + " --format json -o '" + kept + "'");
    EXPECT_EQ(ran.status, 2) << arguments << "\n" << ran.err;
    EXPECT_EQ(ran.out, "") << arguments;
    EXPECT_TRUE(holds(ran.err, words)) << arguments << "\n" << ran.err;
    EXPECT_EQ(content(kept), "kept") << arguments;
  }
}

TEST(Output, GoesToTheFileWholeOrNotAtAll) {
  const Folder folder;
  const std::string file = folder.write("report.json", "old");
  EXPECT_EQ(headgate("check examples/halyard/as-built.yaml --format json -o '" + file + "'").status, 0);
  EXPECT_EQ(Json::parse(content(file))["report"], "headgate-report/1");
  const Ran nowhere = headgate("check examples/halyard/as-built.yaml -o /nosuch/report.txt");
  EXPECT_EQ(nowhere.status, 2);
  EXPECT_TRUE(holds(nowhere.err, "/nosuch/report.txt cannot be written")) << nowhere.err;
  const Ran quiet = headgate("check examples/halyard/as-found.yaml --quiet");
  EXPECT_EQ(quiet.status, 1);
  EXPECT_EQ(quiet.out, "");
}

TEST(Output, NoTerminalEscapeOfAFileReachesTheTerminal) {
  const Folder folder;
  const std::string site = folder.write(
      "site.yaml", "format: site/1\nname: \"Quay \\x1b[31mHouse\"\nplace: irc-2018\nstage: entry\npressure: {highest-static: 86 psi}\nline: none\n");
  for (const std::string format : {"text", "json"}) {
    const Ran ran = headgate("check --format " + format + " '" + site + "'");
    EXPECT_EQ((ran.out + ran.err).find('\x1b'), std::string::npos) << format;
  }
}

TEST(Log, SaysWhatWasReadAndTheStatus) {
  const Folder folder;
  const std::string log = (folder / "log").string();
  EXPECT_EQ(headgate("check examples/halyard/as-built.yaml --quiet --log '" + log + "'").status, 0);
  EXPECT_TRUE(holds(content(log), "read examples/halyard/as-built.yaml"));
  EXPECT_TRUE(holds(content(log), "exit status 0"));
}

TEST(Help, EveryExampleRunsAsPrinted) {
  for (const std::string command : {"check", "explain", "calc", "facts", "limits", "trials"}) {
    const Ran help = headgate(command + " --help");
    EXPECT_EQ(help.status, 0);
    const std::string mark = "Example:\n  headgate ";
    const std::size_t at = help.out.find(mark);
    ASSERT_NE(at, std::string::npos) << command;
    const std::size_t from = at + mark.size();
    const std::string example = help.out.substr(from, help.out.find('\n', from) - from);
    const Ran ran = headgate(example);
    EXPECT_NE(ran.status, 2) << example << "\n" << ran.err;
    EXPECT_NE(ran.out, "") << example;
  }
}

TEST(Usage, AMistakeExitsTwo) {
  EXPECT_EQ(headgate("").status, 2);
  EXPECT_EQ(headgate("check").status, 2);
  EXPECT_EQ(headgate("bogus").status, 2);
  EXPECT_EQ(headgate("check --format xml examples/halyard/as-built.yaml").status, 2);
}

}  // namespace
}  // namespace headgate::app_test
