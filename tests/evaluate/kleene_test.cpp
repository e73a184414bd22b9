// and, or, not, some, every, no over everything that is yes, no or undecided, against truth tables.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "evaluate/worlds/world.hpp"

namespace headgate::test {
namespace {

// no 0, undecided 1, yes 2
constexpr int and_table[3][3] = {{0, 0, 0}, {0, 1, 1}, {0, 1, 2}};
constexpr int or_table[3][3] = {{0, 1, 2}, {1, 1, 2}, {2, 2, 2}};
constexpr int not_table[3] = {2, 1, 0};
const char* const words[] = {"no", "undecided", "yes"};

struct Said {
  std::string text;
  int truth = 0;
};
using Sized = std::vector<std::vector<Said>>;  // by how many nodes

Sized all_expressions(std::size_t most) {
  Sized sized(most + 1);
  sized[1] = {{"no", 0}, {"wet", 1}, {"yes", 2}};  // nobody has said whether it is wet
  for (std::size_t nodes = 2; nodes <= most; ++nodes) {
    for (const auto& one : sized[nodes - 1]) sized[nodes].push_back({"not (" + one.text + ")", not_table[one.truth]});
    for (std::size_t left = 1; left + 1 < nodes; ++left) {
      for (const auto& a : sized[left]) {
        for (const auto& b : sized[nodes - 1 - left]) {
          sized[nodes].push_back({"(" + a.text + ") and (" + b.text + ")", and_table[a.truth][b.truth]});
          sized[nodes].push_back({"(" + a.text + ") or (" + b.text + ")", or_table[a.truth][b.truth]});
        }
      }
    }
  }
  return sized;
}

TEST(Kleene, EveryExpressionUpToFiveNodes) {
  World world({.site = "place: town"});
  std::size_t tried = 0;
  for (const auto& some : all_expressions(5)) {
    for (const auto& one : some) {
      ASSERT_EQ(world.value(one.text), words[one.truth]) << one.text;
      ++tried;
    }
  }
  EXPECT_EQ(tried, 3U + 3 + 21 + 57 + 327);
}

TEST(Kleene, LongRowsWithoutBrackets) {
  World world({.site = "place: town"});
  const char* const leaves[] = {"no", "wet", "yes"};
  for (int a = 0; a < 3; ++a) {
    for (int b = 0; b < 3; ++b) {
      for (int c = 0; c < 3; ++c) {
        for (int d = 0; d < 3; ++d) {
          const std::string x = leaves[a], y = leaves[b], z = leaves[c], u = leaves[d];
          EXPECT_EQ(world.value(x + " and " + y + " and " + z + " and " + u),
                    words[and_table[and_table[a][b]][and_table[c][d]]]);
          EXPECT_EQ(world.value(x + " or " + y + " or " + z + " or " + u),
                    words[or_table[or_table[a][b]][or_table[c][d]]]);
        }
      }
    }
  }
}

// Up to three pipes, each buried, not buried or unknown, each in a trench, pulled or unknown; then perhaps more.
TEST(Kleene, EveryListUpToTwoElements) {
  const char* const buried[] = {"buried: no", "buried: unknown", "buried: yes"};
  const char* const laid[] = {"laid: pulled", "laid: unknown", "laid: trench"};
  for (const bool more : {false, true}) {
    for (int count = 0; count <= 2; ++count) {
      const int cases = count == 0 ? 1 : count == 1 ? 9 : 81;
      for (int at = 0; at < cases; ++at) {
        std::string site = "line:\n";
        int some = 0;
        int every = 2;
        for (int pipe = 0, code = at; pipe < count; ++pipe, code /= 9) {
          const int where = code % 3;
          const int has = code / 3 % 3;
          site += std::string("  - pipe: {") + buried[where] + ", " + laid[has] + "}\n";
          some = or_table[some][and_table[where][has]];
          every = and_table[every][or_table[not_table[where]][has]];
        }
        if (count == 0 && !more) site = "line: none";
        if (more) site += "  - more\n";
        if (more && some == 0) some = 1;
        if (more && every == 2) every = 1;
        World world({.site = site});
        ASSERT_EQ(world.value("some pipe in line where pipe.buried has pipe.laid is trench"), words[some]) << site;
        ASSERT_EQ(world.value("no pipe in line where pipe.buried has pipe.laid is trench"), words[not_table[some]])
            << site;
        ASSERT_EQ(world.value("every pipe in line where pipe.buried has pipe.laid is trench"), words[every]) << site;
      }
    }
  }
}

}  // namespace
}  // namespace headgate::test
