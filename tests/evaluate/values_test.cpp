// Presence, coarse values, `if`, sizes on two ladders, and what intervals say: decisions 3, 8, 9, 19.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "evaluate/worlds/world.hpp"

namespace headgate::test {
namespace {

TEST(Comparing, CoarseValuesDecideOnlyWhatTheySettle) {
  const auto at = [](const std::string& pressure, const std::string& test) {
    return in("pressure: {highest-static: " + pressure + "}", "pressure.highest-static " + test);
  };
  EXPECT_EQ(at("80 psi", "> 80 psi"), "no");
  EXPECT_EQ(at("80.1 psi", "> 80 psi"), "yes");
  EXPECT_EQ(at("79 psi +/- 2 psi", "> 80 psi"), "undecided");
  EXPECT_EQ(at("78 psi +/- 2 psi", "> 80 psi"), "no");
  EXPECT_EQ(at("at least 80 psi", "> 80 psi"), "undecided");
  EXPECT_EQ(at("at least 80 psi", ">= 80 psi"), "yes");
  EXPECT_EQ(at("at most 80 psi", "> 80 psi"), "no");
  EXPECT_EQ(at("unknown", "> 80 psi"), "undecided");
  EXPECT_EQ(at("none", "> 80 psi"), "undecided");
  EXPECT_EQ(at("80 psi +/- 0 psi", "is same as 80 psi"), "yes");
  EXPECT_EQ(at("80 psi +/- 1 psi", "is same as 80 psi"), "undecided");
  EXPECT_EQ(at("80 psi +/- 1 psi", "is not same as 90 psi"), "yes");
}

TEST(Comparing, AValueEqualsItselfInEverySpelling) {
  const auto alike = [](const std::string& a, const std::string& b) {
    return in("frost-depth: " + a, "frost-depth is same as " + b) + in("frost-depth: " + a, "frost-depth >= " + b) +
           in("frost-depth: " + a, "frost-depth < " + b);
  };
  EXPECT_EQ(alike("1 ft", "12 in"), "yesyesno");
  EXPECT_EQ(alike("0.3048 m", "1 ft"), "yesyesno");
  EXPECT_EQ(alike("5 ft 6 in", "66 in"), "yesyesno");
  EXPECT_EQ(alike("1000000 ft", "304800 m"), "yesyesno");
  EXPECT_EQ(alike("300000.3 ft", "91440.09144 m"), "yesyesno");
  EXPECT_EQ(alike("1 in", "25.4000001 mm"), "nonoyes");
}

// Past a thousand kilometres a double is coarser than the grid; then equality is coarser too.
TEST(Comparing, LongLengthsEqualThemselves) {
  for (const char* feet : {"123456789.1", "987654321.7", "33333333.3", "77777777.7"}) {
    const double metres = std::strtod(feet, nullptr) * 0.3048;
    char spelled[64];
    std::snprintf(spelled, sizeof spelled, "%.10f m", metres);
    EXPECT_EQ(in("frost-depth: " + std::string(feet) + " ft", "frost-depth < " + std::string(spelled)), "no") << feet;
    EXPECT_EQ(in("frost-depth: " + std::string(feet) + " ft", "frost-depth <= " + std::string(spelled)), "yes") << feet;
  }
}

TEST(Comparing, BothSidesOfAChainCount) {
  const auto at = [](const std::string& depth) { return in("frost-depth: " + depth, "12 in <= frost-depth < 36 in"); };
  EXPECT_EQ(at("12 in"), "yes");
  EXPECT_EQ(at("36 in"), "no");
  EXPECT_EQ(at("35 in +/- 1 in"), "undecided");
  EXPECT_EQ(at("11 in +/- 1/2 in"), "no");
  EXPECT_EQ(in("frost-depth: 12 in", "36 in > frost-depth >= 12 in"), "yes");
  EXPECT_EQ(in("frost-depth: 40 in", "36 in > frost-depth >= 12 in"), "no");
}

TEST(Presence, EveryFactIsPresentNoneOrUnknown) {
  const auto all = [](const std::string& site, const std::string& path) {
    World world({.site = site});
    return world.value(path + " is fitted") + " " + world.value(path + " is none") + " " +
           world.value(path + " is recorded") + " " + world.value(path + " is not recorded");
  };
  EXPECT_EQ(all("frost-depth: 3 ft", "frost-depth"), "yes no yes no");
  EXPECT_EQ(all("frost-depth: none", "frost-depth"), "no yes yes no");
  EXPECT_EQ(all("frost-depth: unknown", "frost-depth"), "undecided undecided no yes");
  EXPECT_EQ(all("wet: yes", "frost-depth"), "undecided undecided no yes");
  EXPECT_EQ(all("frost-depth: at least 2 ft", "frost-depth"), "yes no yes no");
}

TEST(Presence, OfListsAndRecords) {
  const auto all = [](const std::string& site, const std::string& path) {
    World world({.site = site});
    return world.value(path + " is fitted") + " " + world.value(path + " is none") + " " +
           world.value(path + " is recorded");
  };
  EXPECT_EQ(all("line: none", "line"), "no yes yes");
  EXPECT_EQ(all("line: []", "line"), "no yes yes");
  EXPECT_EQ(all("line: [more]", "line"), "undecided undecided no");
  EXPECT_EQ(all("line: [pipe: {}, more]", "line"), "yes no yes");
  EXPECT_EQ(all("wet: yes", "line"), "undecided undecided no");
  EXPECT_EQ(all("pressure: none", "pressure"), "no yes yes");
  EXPECT_EQ(all("pressure: {lowest-static: 3 psi}", "pressure"), "yes no yes");
  EXPECT_EQ(all("wet: yes", "pressure"), "undecided undecided no");
  EXPECT_EQ(all("wet: yes", "papers"), "no yes yes");
}

TEST(Presence, APropertyOfNoneIsUndecided) {
  World world({.rules = rule("sealed", "each: wall in line\nrequire: wall.sleeve.sealed") +
                        rule("size", "each: wall in line\nrequire: wall.sleeve.size is fitted"),
               .site = "line: [wall: {sleeve: none}, wall: {sleeve: {sealed: yes}}, wall: {}]"});
  EXPECT_EQ(world.outcomes("sealed"), "line[1]: undecided; line[2]: pass; line[3]: undecided");
  EXPECT_EQ(world.outcomes("size"), "line[1]: undecided; line[2]: undecided; line[3]: undecided");
}

// Of the only pipe of a line.
std::string of_pipe(const std::string& facts, const std::string& expression) {
  World world(
      {.rules = rule("it", "each: pipe in line\nrequire: " + expression), .site = "line: [pipe: {" + facts + "}]"});
  return world.outcomes("it").substr(9);
}

TEST(Choices, SeveralMembersAreASet) {
  EXPECT_EQ(of_pipe("material: k-copper", "pipe.material is k-copper"), "pass");
  EXPECT_EQ(of_pipe("material: k-copper", "pipe.material is not k-copper"), "fail");
  EXPECT_EQ(of_pipe("material: unknown", "pipe.material is k-copper"), "undecided");
  EXPECT_EQ(of_pipe("material: unknown", "pipe.material is one of (k-copper, l-copper, hdpe, mystery)"), "undecided");
  const std::string either = "material: {value: \"one of (k-copper, l-copper)\"}";
  EXPECT_EQ(of_pipe(either, "pipe.material is k-copper"), "undecided");
  EXPECT_EQ(of_pipe(either, "pipe.material is hdpe"), "fail");
  EXPECT_EQ(of_pipe(either, "pipe.material is one of (l-copper, k-copper)"), "pass");
  EXPECT_EQ(of_pipe(either, "pipe.material is one of (l-copper, hdpe)"), "undecided");
  EXPECT_EQ(of_pipe(either, "pipe.material is not one of (hdpe, mystery)"), "pass");
  EXPECT_EQ(of_pipe(either, "pipe.material is not one of (l-copper, k-copper)"), "fail");
}

TEST(Choices, APropertyOverASetIsTheHull) {
  const std::string either = "material: {value: \"one of (k-copper, l-copper)\"}";
  EXPECT_EQ(of_pipe(either, "pipe.material.metal"), "pass");
  EXPECT_EQ(of_pipe(either, "pipe.material.family is copper"), "pass");
  EXPECT_EQ(of_pipe(either, "pipe.material.roughness > 134"), "pass");
  EXPECT_EQ(of_pipe(either, "pipe.material.roughness > 137"), "undecided");
  EXPECT_EQ(of_pipe("material: {value: \"one of (k-copper, hdpe)\"}", "pipe.material.metal"), "undecided");
  EXPECT_EQ(of_pipe("material: {value: \"one of (k-copper, hdpe)\"}", "pipe.material.roughness >= 140"), "pass");
  EXPECT_EQ(of_pipe("material: {value: \"one of (k-copper, mystery)\"}", "pipe.material.roughness >= 140"),
            "undecided");
  EXPECT_EQ(of_pipe("material: mystery", "pipe.material.metal"), "undecided");
  EXPECT_EQ(of_pipe("material: none", "pipe.material.metal"), "undecided");
}

TEST(If, TheBranchTakenCountsAloneTheHullWhenUndecided) {
  const auto at = [](const std::string& wet, const std::string& depth) {
    return in("wet: " + wet + "\nfrost-depth: " + depth, "(if wet then frost-depth else 12 in)");
  };
  EXPECT_EQ(at("yes", "2 ft"), "2 ft");
  EXPECT_EQ(at("no", "unknown"), "12 in");
  EXPECT_EQ(at("yes", "unknown"), "unknown");
  EXPECT_EQ(at("unknown", "unknown"), "unknown");
  EXPECT_EQ(in("frost-depth: 2 ft", "(if wet then frost-depth else 1 ft) >= 1 ft"), "yes");
  EXPECT_EQ(in("frost-depth: 2 ft", "(if wet then frost-depth else 1 ft) >= 2 ft"), "undecided");
  EXPECT_EQ(in("frost-depth: 2 ft", "(if wet then frost-depth else 3 ft) < 2 ft"), "no");
  EXPECT_EQ(in("frost-depth: 2 ft", "if wet then yes else (frost-depth > 1 ft)"), "yes");
  EXPECT_EQ(in("frost-depth: 2 ft", "if wet then no else (frost-depth > 1 ft)"), "undecided");
  EXPECT_EQ(in("wet: no\nfrost-depth: none", "(if wet then 1 ft else frost-depth) > 1 in"), "undecided");
}

TEST(Sizes, ComparedThroughTheEquivalence) {
  EXPECT_EQ(of_pipe("size: 20 mm", "pipe.size is same as 3/4\""), "pass");
  EXPECT_EQ(of_pipe("size: 20 mm", "pipe.size < 1\""), "pass");
  EXPECT_EQ(of_pipe("size: 25 mm", "pipe.size < 1\""), "fail");
  EXPECT_EQ(of_pipe("size: 32 mm", "pipe.size < 2\""), "undecided");  // nothing says what 32 mm stands for
  EXPECT_EQ(of_pipe("size: 32 mm", "pipe.size is not same as 2\""), "undecided");
  EXPECT_EQ(of_pipe("size: 32 mm", "pipe.size > 25 mm"), "pass");
  EXPECT_EQ(of_pipe("size: 32 mm", "20 mm <= pipe.size <= 1\""), "undecided");
  EXPECT_EQ(of_pipe("size: unknown", "pipe.size < 2\""), "undecided");
}

TEST(Sizes, DivideAndStepOnOneLadder) {
  EXPECT_EQ(of_pipe("size: 1-1/2\"", "pipe.size / 3/4\" >= 2"), "pass");
  EXPECT_EQ(of_pipe("size: 25 mm", "pipe.size / 20 mm > 1.2"), "pass");
  EXPECT_EQ(of_pipe("size: 25 mm", "pipe.size / 3/4\" > 1.3"), "pass");  // as an inch
  EXPECT_EQ(of_pipe("size: 50 mm", "pipe.size / 3/4\" > 1.3"), "undecided");
  EXPECT_EQ(of_pipe("size: 3/4\"", "sizes-up(pipe.size, 2) is same as 1-1/4\""), "pass");
  EXPECT_EQ(of_pipe("size: 3/4\"", "sizes-up(pipe.size, -1) is same as 1/2\""), "pass");
  EXPECT_EQ(of_pipe("size: 2\"", "sizes-up(pipe.size, 1) > 2\""), "undecided");  // past the ladder's end
  EXPECT_EQ(of_pipe("size: 25 mm", "sizes-up(pipe.size, 1) is same as 32 mm"), "pass");
  EXPECT_EQ(of_pipe("size: 7/8\"", "sizes-up(pipe.size, 1) >= 1\""), "undecided");  // no rung
  EXPECT_EQ(of_pipe("size: 1-1/2\"", "size-steps(3/4\", pipe.size) >= 3"), "pass");
  EXPECT_EQ(of_pipe("size: 1/2\"", "size-steps(1\", pipe.size) >= -2"), "pass");
  EXPECT_EQ(of_pipe("size: 32 mm", "size-steps(1\", pipe.size) >= 1"), "undecided");
}

TEST(Sizes, LeastAndGreatestKeepTheirLadder) {
  const auto line = [](const std::string& sizes, const std::string& expression) {
    return in("line: [" + sizes + "]", expression);
  };
  const std::string metric = "pipe: {size: 20 mm}, pipe: {size: 32 mm}";
  EXPECT_EQ(line(metric, "greatest(pipe.size for pipe in line) is same as 32 mm"), "yes");
  EXPECT_EQ(line(metric, "least(pipe.size for pipe in line) is same as 3/4\""), "yes");
  EXPECT_EQ(line("pipe: {size: 20 mm}, pipe: {size: 1\"}", "greatest(pipe.size for pipe in line) is same as 1\""),
            "yes");
  EXPECT_EQ(line("pipe: {size: 1\"}, pipe: {size: 20 mm}", "least(pipe.size for pipe in line) is same as 20 mm"),
            "yes");
  EXPECT_EQ(line("pipe: {size: 1\"}, pipe: {size: 50 mm}", "greatest(pipe.size for pipe in line) > 1/2\""),
            "undecided");
  EXPECT_EQ(of_pipe("size: 20 mm", "least(pipe.size, 25 mm) is same as 3/4\""), "pass");
  EXPECT_EQ(of_pipe("size: 25 mm", "greatest(1/2\", pipe.size, 3/4\") is same as 1\""), "pass");
  EXPECT_EQ(of_pipe("size: 50 mm", "greatest(1/2\", pipe.size, 3/4\") > 1/4\""), "undecided");
  EXPECT_EQ(of_pipe("size: 20 mm", "(if pipe.buried then pipe.size else 3/4\") is same as 3/4\""), "pass");
  EXPECT_EQ(of_pipe("size: 50 mm", "(if pipe.buried then pipe.size else 3/4\") > 1/2\""), "undecided");
}

TEST(Intervals, ArithmeticHoldsEveryValueItMayBe) {
  const std::string site =
      "frost-depth: 10 in +/- 2 in\npressure: {highest-static: at least 40 psi, lowest-static: 0 psi +/- 1 psi}";
  EXPECT_EQ(in(site, "frost-depth - frost-depth < 5 in"), "yes");
  EXPECT_EQ(in(site, "frost-depth - frost-depth < 4 in"), "undecided");
  EXPECT_EQ(in(site, "frost-depth * 2 >= 16 in"), "yes");
  EXPECT_EQ(in(site, "frost-depth * frost-depth > 63 in2"), "yes");
  EXPECT_EQ(in(site, "-2 * frost-depth <= -16 in"), "yes");
  EXPECT_EQ(in(site, "pressure.highest-static - pressure.highest-static"), "unknown");         // inf - inf
  EXPECT_EQ(in(site, "pressure.highest-static * 0"), "unknown");                               // 0 * inf
  EXPECT_EQ(in(site, "(pressure.highest-static / pressure.lowest-static) > 0"), "undecided");  // may be over 0
  EXPECT_EQ(in(site, "pressure.highest-static + 5 psi >= 45 psi"), "yes");
  EXPECT_EQ(in(site, "least(pressure.highest-static, 30 psi) is same as 30 psi"), "yes");
  EXPECT_EQ(in(site, "greatest(pressure.highest-static, 30 psi) >= 40 psi"), "yes");
  EXPECT_EQ(in("wet: yes", "frost-depth + 6 in"), "unknown");
}

TEST(Levels, ReadFromTheAskedMarkOnly) {
  EXPECT_EQ(of_pipe("cover: 40 in below finished-grade", "pipe.cover below finished-grade >= 40 in"), "pass");
  EXPECT_EQ(of_pipe("cover: 40 in below finished-grade", "pipe.cover below ground-at-house >= 40 in"), "undecided");
  EXPECT_EQ(of_pipe("cover: [40 in below finished-grade, 30 in below ground-at-house]",
                    "pipe.cover below ground-at-house >= 31 in"),
            "fail");
  EXPECT_EQ(of_pipe("cover: 40 in above grade", "pipe.cover below finished-grade > 0 in"), "fail");
  EXPECT_EQ(of_pipe("cover: at least 40 in below grade", "pipe.cover below finished-grade >= 36 in"), "pass");
  EXPECT_EQ(of_pipe("cover: at least 40 in below grade", "pipe.cover below finished-grade >= 41 in"), "undecided");
  EXPECT_EQ(of_pipe("cover: unknown", "pipe.cover below finished-grade > 0 in"), "undecided");
  EXPECT_EQ(of_pipe("cover: none", "pipe.cover below finished-grade > 0 in"), "undecided");
  EXPECT_EQ(of_pipe("least-cover: 40 in", "pipe.least-cover >= 40 in"), "pass");
}

TEST(Levels, TheMarkMayBeALimit) {
  const std::string limits = "  from: {title: From, type: mark, values: {code-a 1: ground-at-house}}";
  World world({.limits = limits,
               .rules = rule("it", "each: pipe in line\nrequire: pipe.cover below limit.from >= 1 ft"),
               .site = "line: [pipe: {cover: 2 ft below ground-at-house}, pipe: {cover: 2 ft below grade}]"});
  EXPECT_EQ(world.outcomes("it"), "line[1]: pass; line[2]: undecided");
}

}  // namespace
}  // namespace headgate::test
