#include <gtest/gtest.h>

#include "rulebook/world.hpp"

namespace headgate::test {
namespace {

std::string said_of_derived(const std::string& derived, const std::string& rules = "") {
  World world(derived.empty() ? "" : "derived:\n" + derived);
  if (!rules.empty()) world.rules(rules);
  world.resolve();
  return world.said();
}

const char* const hint = "(only what looks upstream, as previous does, may come round again)";

const std::string pipe_before =
    "kinds:\n  pipe: {facts: {pipe-before: {type: nearest pipe upstream}, pipe-after: {type: nearest pipe "
    "downstream}}}\n";

std::string length(const std::string& name, const std::string& value, const std::string& of = "") {
  return "  " + name + ":\n    type: length\n" + (of.empty() ? "" : "    of: " + of + "\n") +
         "    values:\n      code-18 A1: " + value + "\n";
}

TEST(Circles, AmongLimits) {
  EXPECT_EQ(said_of_derived(
                "", "limits:\n" + length("a", "limit.b") + length("b", "limit.c + 1 in") + length("c", "limit.a")),
            std::string("rules:7:19 circle: These need one another: limit.a -> limit.b -> limit.c -> limit.a. ") +
                hint + "\n");
}

TEST(Circles, ALimitOfItself) {
  EXPECT_EQ(said_of_derived("", "limits:\n" + length("a", "limit.a")),
            std::string("rules:7:19 circle: These need one another: limit.a -> limit.a. ") + hint + "\n");
}

TEST(Circles, AmongDerivedValuesAndLimits) {
  EXPECT_EQ(said_of_derived("  pipe:\n    cover:\n      type: length\n      is: limit.cover\n",
                            "limits:\n" + length("cover", "pipe.cover", "pipe")),
            std::string("rules:8:19 circle: These need one another: limit.cover -> pipe.cover -> limit.cover. ") +
                hint + "\n");
}

TEST(Circles, UpstreamMayComeRound) {
  World world(
      "derived:\n  pipe:\n    run:\n      type: length\n      is: pipe.start + pipe.length\n"
      "    start:\n      type: length\n"
      "      is: if pipe.pipe-before is fitted then pipe.pipe-before.run else 0 ft\n" +
      pipe_before);
  const auto book = world.resolve();
  EXPECT_EQ(world.said(), "");
  EXPECT_EQ(book.derived.size(), 2u);
}

TEST(Circles, DownstreamMayNot) {
  EXPECT_NE(said_of_derived("  pipe:\n    run:\n      type: length\n      is: pipe.pipe-after.run\n" + pipe_before)
                .find("circle: These need one another: pipe.run -> pipe.run."),
            std::string::npos);
}

TEST(Circles, NorTheWholeLine) {
  EXPECT_EQ(said_of_derived("  pipe:\n    a:\n      type: length\n      is: sum(each.b for pipe as each in line)\n"
                            "    b:\n      type: length\n      is: pipe.a\n"),
            std::string("more:6:15 circle: These need one another: pipe.a -> pipe.b -> pipe.a. ") + hint + "\n");
}

// A derived value that looks upstream for itself cannot also need a sum over all of them.
TEST(Circles, UpstreamDoesNotExcuseTheWholeLine) {
  const std::string said = said_of_derived(
      "  pipe:\n    a:\n      type: length\n      is: if pipe.buried then 1 ft else sum(each.b for pipe as each in "
      "line)\n"
      "    b:\n      type: length\n      is: if pipe.pipe-before is fitted then pipe.pipe-before.a else 1 ft\n" +
      pipe_before);
  EXPECT_NE(said.find("circle: These need one another: pipe.a -> pipe.b -> pipe.a."), std::string::npos) << said;
}

TEST(Derived, EachComesAfterWhatItNeeds) {
  World world("derived:\n  pipe:\n    a: pipe.b * 2\n    b: pipe.c + limit.x\n    c: pipe.length\n");
  world.rules("limits:\n  x: {values: {code-18 A1: 1 in}}\n");
  const auto book = world.resolve();
  EXPECT_EQ(world.said(), "");
  ASSERT_EQ(book.derived.size(), 3u);
  const auto name = [&](std::size_t i) {
    return book.vocabulary->shapes[book.derived[i].shape].fields[book.derived[i].field].name;
  };
  EXPECT_EQ(name(0) + name(1) + name(2), "cba");
  EXPECT_EQ(book.vocabulary->shapes[book.derived[0].shape].fields[book.derived[0].field].type.dimension,
            quantity::dimensions::length);
}

TEST(Derived, ItsTypeMayComeThroughALimitThatNeedsADerivedValue) {
  World world("derived:\n  pipe:\n    a: limit.x[pipe] * 2\n    c: pipe.length\n");
  world.rules("limits:\n  x:\n    of: pipe\n    values:\n      code-18 A1: pipe.c\n");
  world.resolve();
  EXPECT_EQ(world.said(), "");
}

TEST(Derived, AnUntypedCircleAsksForTypes) {
  EXPECT_EQ(said_of_derived("  pipe:\n    a: pipe.b\n    b: pipe.a\n"),
            "more:4:5 derived-needs-type: The formula of \"a\" does not tell its type. (state it, as in a: with type: "
            "and is: below)\n"
            "more:5:5 derived-needs-type: The formula of \"b\" does not tell its type. (state it, as in b: with type: "
            "and is: below)\n");
}

TEST(Derived, AMistakeInAFormulaIsSaidOnce) {
  const std::string said = said_of_derived("  pipe:\n    a: pipe.lenth * 2\n    b: pipe.a\n");
  EXPECT_EQ(said.find("more:4:13 unknown-field"), 0u) << said;
  EXPECT_EQ(said.find('\n'), said.size() - 1) << said;
}

}  // namespace
}  // namespace headgate::test
