// Where things stand on the way from the main: references, `comes`, values computed along the line:
// decisions 4, 5, 6.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "evaluate/worlds/world.hpp"

namespace headgate::test {
namespace {

// Every kind that may stand in the line has a loss, a pressure entering and one leaving.
std::string derived() {
  std::string kinds = "kinds:\n";
  std::string formulas = "derived:\n";
  for (const std::string kind : {"pipe", "meter", "wall", "ball-valve", "pressure-reducer", "gauge", "strainer",
                                 "vacuum-breaker", "double-check", "branch"}) {
    kinds += "  " + kind + ": {facts: {loss: {type: pressure, never-negative: yes}}}\n";
    formulas += "  " + kind + ":\n    entering:\n      type: pressure\n      is: if " + kind +
                ".previous is none then pressure.highest-static else " + kind +
                ".previous.leaving\n    leaving:\n      type: pressure\n      is: " + kind + ".entering - " + kind +
                ".loss\n";
  }
  return kinds + formulas;
}

TEST(References, TheNearestUpstreamOrNone) {
  EXPECT_EQ(each("wall in line", "wall.pipe.length >= 2 ft",
                 "line: [pipe: {length: 1 ft}, pipe: {length: 3 ft}, meter: {}, wall: {}, pipe: {length: 1 ft}]"),
            "line[4]: pass");
  EXPECT_EQ(each("wall in line", "wall.pipe is none", "line: [wall: {}, pipe: {}]"), "line[1]: pass");
  EXPECT_EQ(each("wall in line", "wall.pipe.length >= 2 ft", "line: [wall: {}, pipe: {}]"), "line[1]: undecided");
  EXPECT_EQ(each("wall in line", "wall.valve-after is ball-valve",
                 "line: [ball-valve: {}, wall: {}, pressure-reducer: {}, ball-valve: {}]"),
            "line[2]: fail");
  EXPECT_EQ(each("wall in line", "wall.valve-after is none", "line: [ball-valve: {}, wall: {}]"), "line[2]: pass");
}

TEST(References, AcrossMoreTheyAreUnknown) {
  EXPECT_EQ(each("wall in line", "wall.pipe.length >= 2 ft", "line: [pipe: {length: 3 ft}, wall: {}, more]"),
            "line[2]: undecided; line open: undecided");
  EXPECT_EQ(each("wall in line", "wall.pipe is none", "line: [wall: {}, more]"),
            "line[1]: undecided; line open: undecided");
  EXPECT_EQ(each("wall in line", "wall.pipe.length >= 2 ft",
                 "line: [pipe: {length: 3 ft}, wall: {}, more: {except: [pipe]}]"),
            "line[2]: pass; line open: undecided");
}

TEST(References, TheSiteMaySayOtherwise) {
  EXPECT_EQ(each("wall in line", "wall.pipe.length >= 2 ft",
                 "line: [pipe: {length: 3 ft}, pipe: {length: 1 ft}, wall: {pipe: \"line[1]\"}]"),
            "line[3]: pass");
  EXPECT_EQ(each("wall in line", "wall.pipe is none", "line: [pipe: {length: 3 ft}, wall: {pipe: none}]"),
            "line[2]: pass");
}

TEST(References, AFieldThroughAGroup) {
  EXPECT_EQ(
      each("wall in line", "wall.valve-after.size is same as 1\"", "line: [wall: {}, pressure-reducer: {size: 1\"}]"),
      "line[1]: pass");
}

std::string comes(const std::string& relation, const std::string& site) {
  return World({.rules = rule("it", "require: some gauge in line has (some pressure-reducer in line has gauge comes " +
                                        relation + " pressure-reducer)"),
                .site = "stage: entry\n" + site})
      .outcomes("it");
}

TEST(Comes, InWrittenOrder) {
  const std::string site = "line: [gauge: {}, strainer: {}, pressure-reducer: {}]";
  EXPECT_EQ(comes("before", site), "pass");
  EXPECT_EQ(comes("after", site), "fail");
  EXPECT_EQ(comes("right before", site), "fail");
  EXPECT_EQ(comes("right before", "line: [gauge: {}, pipe: {}, wall: {}, pressure-reducer: {}]"), "pass");
  EXPECT_EQ(comes("right after", "line: [pressure-reducer: {}, pipe: {}, gauge: {}]"), "pass");
}

TEST(Comes, MoreHidesWhatStandsBetweenButNotTheOrder) {
  const std::string site = "line: [gauge: {}, pipe: {}, pressure-reducer: {}, more]";
  EXPECT_EQ(comes("before", site), "pass");
  EXPECT_EQ(comes("after", site), "undecided");  // a second gauge may stand there
  EXPECT_EQ(comes("right before", site), "undecided");
  EXPECT_EQ(each("gauge in line, pressure-reducer in line", "gauge comes after pressure-reducer", site),
            "line[1], line[3]: fail; line open: undecided");
  EXPECT_EQ(each("gauge in line, pressure-reducer in line", "gauge comes right after pressure-reducer",
                 "line: [pressure-reducer: {}, strainer: {}, gauge: {}, more]"),
            "line[3], line[1]: fail; line open: undecided");
}

const char* const branched = R"(line: [gauge: {}, branch: lawn, strainer: {}, branch: pool]
branches:
  lawn: {line: [pipe: {}, ball-valve: {}]}
  pool: {line: [ball-valve: {}]}
)";

TEST(Comes, ABranchLiesAfterThePointItLeaves) {
  EXPECT_EQ(
      each("gauge in line, branch in branches, ball-valve in branch.line", "gauge comes before ball-valve", branched),
      "line[1], branches.lawn, branches.lawn.line[2]: pass; line[1], branches.pool, branches.pool.line[1]: pass");
  EXPECT_EQ(each("strainer in line, branch in branches, ball-valve in branch.line", "strainer comes before ball-valve",
                 branched),
            "line[3], branches.lawn, branches.lawn.line[2]: fail; line[3], branches.pool, branches.pool.line[1]: pass");
  EXPECT_EQ(each("branch in branches, branch as other in branches, ball-valve in branch.line, ball-valve as second in "
                 "other.line",
                 "ball-valve is ball-valve and not (ball-valve comes before second or second comes before ball-valve)",
                 branched),
            "branches.lawn, branches.lawn, branches.lawn.line[2], branches.lawn.line[2]: pass; "
            "branches.lawn, branches.pool, branches.lawn.line[2], branches.pool.line[1]: pass; "
            "branches.pool, branches.lawn, branches.pool.line[1], branches.lawn.line[2]: pass; "
            "branches.pool, branches.pool, branches.pool.line[1], branches.pool.line[1]: pass");
}

TEST(Comes, NothingComesBeforeItself) {
  EXPECT_EQ(each("gauge in line", "gauge comes before gauge or gauge comes after gauge", "line: [gauge: {}]"),
            "line[1]: fail");
}

TEST(Comes, OfAThingThatIsNotThereIsUndecided) {
  EXPECT_EQ(each("wall in line", "wall.pipe comes before wall", "line: [wall: {}]"), "line[1]: undecided");
  EXPECT_EQ(each("wall in line", "wall.pipe comes before wall", "line: [pipe: {}, wall: {}]"), "line[2]: pass");
}

// --- along the line ---

std::string pressure_after(const std::string& line) {
  World world({.vocabulary = derived(),
               .rules = rule("it", "each: pipe in line\nrequire: pipe.leaving >= 50 psi"),
               .site = "stage: entry\npressure: {highest-static: 60 psi}\nline: [" + line + "]"});
  return world.outcomes("it");
}

TEST(AlongTheLine, ComputedFrontToBack) {
  EXPECT_EQ(pressure_after("pipe: {loss: 4 psi}, pipe: {loss: 6 psi}, pipe: {loss: 1 psi}"),
            "line[1]: pass; line[2]: pass; line[3]: fail");
  EXPECT_EQ(pressure_after("pipe: {loss: 4 psi}, pipe: {}, pipe: {loss: 1 psi}"),
            "line[1]: pass; line[2]: undecided; line[3]: undecided");
  EXPECT_EQ(pressure_after("pipe: {loss: 4 psi +/- 1 psi}, pipe: {loss: 3 psi}, pipe: {loss: 3 psi}"),
            "line[1]: pass; line[2]: pass; line[3]: undecided");
}

TEST(AlongTheLine, AStatedValueReplacesAComputedOne) {
  EXPECT_EQ(pressure_after("pipe: {loss: 4 psi, leaving: 40 psi}, pipe: {loss: 1 psi}"),
            "line[1]: fail; line[2]: fail");
  EXPECT_EQ(pressure_after("pipe: {leaving: unknown}, pipe: {loss: 1 psi}"), "line[1]: undecided; line[2]: undecided");
}

TEST(AlongTheLine, AcrossMoreItIsUnknown) {
  EXPECT_EQ(pressure_after("pipe: {loss: 4 psi}, more"), "line[1]: undecided; line open: undecided");
}

TEST(AlongTheLine, ALongLineIsNoDeepCall) {
  std::string line;
  for (int i = 0; i < static_cast<int>(site::most_parts) - 1; ++i) line += "\n  - pipe: {loss: 0.0001 psi}";
  line += "\n  - meter: {loss: 1 psi}";  // asked for first, so the whole line stands behind one value
  World world({.vocabulary = derived(),
               .rules = rule("it", "require: every meter in line has meter.leaving >= 50 psi"),
               .site = "stage: entry\npressure: {highest-static: 60 psi}\nline: " + line,
               .alone = true});
  EXPECT_EQ(world.outcomes("it"), "pass");
}

std::size_t nodes_of(const evaluate::Evaluated& of) {
  std::size_t nodes = 1;
  for (const auto& kid : of.kids) nodes += nodes_of(kid);
  return nodes;
}

// Each pipe looks back twice: written out, the last of forty would rest on 2^40 readings of the first.
TEST(AlongTheLine, AnExplanationStaysReadable) {
  std::string formulas = "derived:\n";
  for (const std::string kind : {"pipe", "meter", "wall", "ball-valve", "pressure-reducer", "gauge", "strainer",
                                 "vacuum-breaker", "double-check", "branch"}) {
    formulas += "  " + kind + ":\n    so-far:\n      type: number\n      is: if " + kind +
                ".previous is none then 1 else " + kind + ".previous.so-far + " + kind + ".previous.so-far\n";
  }
  std::string line;
  for (int i = 0; i < 40; ++i) line += "\n  - pipe: {}";
  World world({.vocabulary = formulas,
               .rules = rule("it", "each: meter in line\nrequire: meter.so-far >= 2"),
               .site = "stage: entry\nline: " + line + "\n  - meter: {}",
               .alone = true});
  EXPECT_EQ(world.outcomes("it"), "line[41]: pass");
  const auto trace = evaluate::explain(world.judgement(), world.decision("it"));
  ASSERT_TRUE(trace.require && trace.require->expression);
  EXPECT_LT(nodes_of(*trace.require->expression), 30000U);
  EXPECT_GT(nodes_of(*trace.require->expression), 1000U);
}

TEST(Comes, RightLooksThroughPassiveThingsAtTheStartOfABranch) {
  const auto first_of = [](const std::string& line) {
    return each("branch in branches, ball-valve in branch.line", "ball-valve comes right after branch",
                "line: [gauge: {}, branch: lawn]\nbranches:\n  lawn: {line: [" + line + "]}");
  };
  EXPECT_EQ(first_of("pipe: {}, ball-valve: {}"), "branches.lawn, branches.lawn.line[2]: pass");
  EXPECT_EQ(first_of("double-check: {}, ball-valve: {}"), "branches.lawn, branches.lawn.line[2]: fail");
}

}  // namespace
}  // namespace headgate::test
