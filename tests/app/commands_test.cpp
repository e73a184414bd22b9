// The other commands: facts, calc, explain, limits, and every example of the help.
#include <algorithm>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "app/run.hpp"

namespace headgate::test {
namespace {

using Json = nlohmann::json;

const std::string sum = "hazen-williams(5 gpm, 140, 0.785 in, 100 ft)";

TEST(Calc, MeetsTheHandbooksFigure) {
  const Ran ran = run({"calc", sum, "--in", "psi"});
  EXPECT_EQ(ran.status, 0);
  EXPECT_NEAR(std::stod(ran.out), 3.1, 0.031) << ran.out;
  EXPECT_TRUE(has(ran.out, " psi\n"));
}

TEST(Calc, JsonHoldsValueAndUnit) {
  const Json exact = Json::parse(run({"calc", sum, "--in", "psi", "--format", "json"}).out);
  EXPECT_NEAR(exact["value"].get<double>(), 3.1, 0.031);
  EXPECT_EQ(exact["unit"], "psi");
  EXPECT_EQ(exact.size(), 2U);
}

// Nobody has read the pressure, so either branch may count.
TEST(Calc, CoarseResultHasLowAndHigh) {
  const std::string either = "if pressure.highest-static > 80 psi then 3 psi else 4 psi";
  EXPECT_EQ(run({"calc", either, "--format", "json"}).out, "{\"low\":3.0,\"high\":4.0,\"unit\":\"psi\"}\n");
  EXPECT_EQ(run({"calc", either}).out, "3 psi to 4 psi\n");
}

TEST(Calc, ConvertsAndRefuses) {
  EXPECT_EQ(run({"calc", "100 ft + 12 in", "--in", "ft"}).out, "101 ft\n");
  EXPECT_EQ(run({"calc", "1 > 2"}).out, "no\n");
  const auto refused = [](const std::vector<std::string>& command) {
    const Ran ran = run(command);
    EXPECT_EQ(ran.status, 2) << ran.out;
    EXPECT_EQ(ran.out, "");
    return ran.err;
  };
  EXPECT_TRUE(has(refused({"calc", "5 ft", "--in", "psi"}), "[calc-dimension]"));
  EXPECT_TRUE(has(refused({"calc", "5 ft", "--in", "cubits"}), "[calc-unit]"));
  EXPECT_TRUE(has(refused({"calc", "5 ft + 3 psi"}), "calc:1:"));
  EXPECT_TRUE(has(refused({"calc", "pressure.highest-static"}), "[calc-unknown]"));
  EXPECT_NE(refused({"calc", ""}), "");
  EXPECT_NE(refused({"calc", "5 ft +"}), "");
}

TEST(Facts, SayHowAFactIsSpelledAndFound) {
  const Ran ran = run({"facts", "highest-static"});
  EXPECT_EQ(ran.status, 0);
  EXPECT_EQ(ran.out,
            "pressure.highest-static\n"
            "  is       pressure; highest static pressure\n"
            "  ask      What is the highest static pressure the street gives?\n"
            "  hint     Screw a gauge on a hose bibb ahead of any reducer with no water\n"
            "           running anywhere; leave one with a lazy hand overnight if you can.\n"
            "  usual    20 psi to 200 psi\n"
            "  found    at the hose bibb, measured\n"
            "\n");
}

TEST(Facts, UsualRangeKeepsTheUnitOfEachEnd) {
  EXPECT_TRUE(has(run({"facts", "cut-for"}).out, "\n  usual    1 min to 12 h\n"));
}

TEST(Facts, FindChoicesAndOfferTheNearest) {
  EXPECT_TRUE(has(run({"facts", "polybutylene"}).out, "pipe-material  (choices)\n"));
  const Ran none = run({"facts", "metre"});
  EXPECT_EQ(none.status, 2);
  EXPECT_TRUE(has(none.err, "did you mean meter?")) << none.err;
  const Json json = Json::parse(run({"facts", "highest-static", "--format", "json"}).out);
  EXPECT_EQ(json["facts"][0]["fact"], "pressure.highest-static");
}

TEST(Explain, ShowsEveryClauseWithValueAndPlace) {
  const Ran ran = run({"explain", "examples/halyard/as-found.yaml", "fennick-ferry/reducer-above-static-limit"});
  EXPECT_EQ(ran.status, 0);
  EXPECT_TRUE(has(ran.out, "fennick-ferry/reducer-above-static-limit: fail")) << ran.out;
  EXPECT_TRUE(has(ran.out, "  when = yes")) << ran.out;
  EXPECT_TRUE(has(
      ran.out, "      pressure.highest-static = 86 psi +/- 2 psi\n          [examples/halyard/as-found.yaml:19:27]\n"))
      << ran.out;
  EXPECT_TRUE(has(ran.out, "ff-code 52-118")) << ran.out;
  EXPECT_TRUE(has(ran.out, "some pressure-reducer in line = no")) << ran.out;
  EXPECT_FALSE(has(ran.out, "fennick-water/")) << ran.out;
}

TEST(Explain, OfARuleThatIsNotThereOffersTheNearest) {
  const Ran ran = run({"explain", "examples/halyard/as-found.yaml", "reducer-above-static-limits"});
  EXPECT_EQ(ran.status, 2);
  EXPECT_TRUE(has(ran.err, "did you mean reducer-above-static-limit?")) << ran.err;
}

TEST(Limits, NameTheirLayers) {
  const Ran ran = run({"limits", "--place", "fennick-ferry", "--on", "2026-07-01"});
  EXPECT_EQ(ran.status, 0);
  EXPECT_TRUE(has(ran.out, "  value    70 psi\n")) << ran.out;
  EXPECT_TRUE(has(ran.out, "  replaces 80 psi\n")) << ran.out;
  EXPECT_TRUE(has(run({"limits", "--place", "fennick-ferry", "--on", "2026-06-30"}).out, "  value    80 psi\n"));
  EXPECT_EQ(run({"limits"}).status, 2);
}

TEST(Help, EveryExampleRunsAsPrinted) {
  const std::string overview = run({"--help"}).out;
  std::size_t tried = 0;
  std::istringstream lines(overview.substr(overview.find("Subcommands:")));
  std::string line;
  std::getline(lines, line);
  while (std::getline(lines, line)) {
    std::istringstream words(line);
    std::string command;
    if (!(words >> command)) continue;
    const Ran help = run({command, "--help"});
    EXPECT_EQ(help.status, 0);
    const std::size_t at = help.out.find("Example:\n  headgate ");
    ASSERT_NE(at, std::string::npos) << command;
    const std::size_t begin = at + std::string("Example:\n  ").size();
    const auto arguments = words_of(help.out.substr(begin, help.out.find('\n', begin) - begin));
    const Ran ran = run(arguments);
    EXPECT_NE(ran.status, 2) << command << ": " << ran.err;
    EXPECT_FALSE(ran.out.empty()) << command;
    EXPECT_LT(ran.status, 128) << command;
    ++tried;
  }
  EXPECT_GE(tried, 6U);
}

TEST(Calc, TakesWhatIfAndDifferencesAndKinds) {
  EXPECT_EQ(run({"calc", "pressure.highest-static + 5 psi", "--set", "pressure.highest-static=80 psi"}).out,
            "85 psi\n");
  EXPECT_EQ(run({"calc", "40 C - 20 C", "--in", "C"}).out, "20 C\n");
  EXPECT_EQ(run({"calc", "preventer-loss[double-check].loss", "--in", "psi"}).out, "3 psi to 8 psi\n");
  EXPECT_EQ(run({"calc", "limit.static-pressure-max", "--place", "fennick-ferry", "--on", "2026-06-30"}).out,
            "80 psi\n");
}

TEST(Calc, OutOfRangeNamesTheInputAndItsRange) {
  EXPECT_TRUE(has(run({"calc", "hazen-williams(5 gpm, 20, 0.785 in, 100 ft)"}).err,
                  "There is no result: the c of hazen-williams is 20, outside 60 to 160. [calc-unknown]"));
  EXPECT_TRUE(has(run({"calc", "tank-volume(1 gal, 80 psi, 80 psi)"}).err,
                  "the highest of tank-volume is 80 psi, where its precharge asks for more than 80 psi."));
  EXPECT_TRUE(has(run({"calc", "meter-loss[3/4\", 31 gpm].loss"}).err,
                  "has no row for flow 31 gpm: its rows for 3/4\" go from 0 gpm to 30 gpm."));
}

TEST(Facts, JsonHoldsTheSameAsTheText) {
  const Json found = Json::parse(run({"facts", "material", "--format", "json"}).out);
  EXPECT_FALSE(found["facts"].empty());
  EXPECT_FALSE(found["choices"].empty());
  EXPECT_EQ(run({"facts", "zzz", "--format", "json"}).status, 2);
}

TEST(Explain, JsonHoldsEveryLine) {
  const Json told = Json::parse(
      run({"explain", "examples/halyard/as-found.yaml", "reducer-above-static-limit", "--format", "json"}).out);
  EXPECT_EQ(told["explanation"], "headgate-explanation/1");
  ASSERT_FALSE(told["decisions"].empty());
  EXPECT_EQ(told["decisions"][0]["outcome"], "fail");
  EXPECT_EQ(told["decisions"][0]["lines"][0]["text"], "when");
}

// The pressure at the worst outlet rests on all that stands before it, part by part.
TEST(Explain, WorksEachValueOutOnce) {
  const Ran ran = run({"explain", "examples/willow-court/in-service.yaml", "outlet-has-what-it-needs"});
  EXPECT_EQ(ran.status, 0) << ran.err;
  EXPECT_TRUE(has(ran.out, ", as worked out above"));
  EXPECT_LT(std::count(ran.out.begin(), ran.out.end(), '\n'), 6000);
}

}  // namespace
}  // namespace headgate::test
