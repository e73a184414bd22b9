// Files that were made, or happened, to do harm: each stays for ever, and each gets a located sentence.
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "document/reading.hpp"

namespace headgate::document {
namespace {

using testing::ElementsAre;

const std::filesystem::path data = std::filesystem::path(HEADGATE_SOURCE_DIR) / "tests/hostile/data";

std::string text_of_file(const std::filesystem::path& path) {
  std::ifstream stream(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

Reading read_file(const std::string& name) { return Reading(text_of_file(data / ("document-" + name + ".yaml"))); }

// The first problem, as place and id, and how many there are.
std::string first_problem(const std::string& name) {
  const Reading reading = read_file(name);
  if (reading.found.empty()) return "none";
  const text::Diagnostic& first = reading.found.front();
  return reading.sources.place(first.range).substr(2) + " " + first.id + " of " + std::to_string(reading.found.size());
}

const std::map<std::string, std::string>& expected() {
  static const std::map<std::string, std::string> problems = {
      {"alias-bomb", "1:4 yaml-anchor of 51"},
      {"brace-lines", "129:1 yaml-too-deep of 1"},
      {"brackets", "1:257 yaml-too-deep of 1"},
      {"dashes", "1:65 yaml-too-deep of 1"},
      {"direction", "1:12 yaml-control-character of 4"},
      {"empty", "1:1 yaml-empty-file of 1"},
      {"end-of-transmission", "2:1 yaml-control-character of 2"},
      {"escapes", "1:7 yaml-control-character of 4"},
      {"latin-1", "1:10 yaml-bad-utf8 of 3"},
      {"merge-bomb", "1:4 yaml-anchor of 7"},
      {"nul", "1:11 yaml-control-character of 4"},
      {"only-bom", "1:1 yaml-empty-file of 1"},
      {"only-comments", "1:1 yaml-empty-file of 1"},
      {"open-quote", "1:7 yaml-unclosed-quote of 1"},
      {"overlong", "1:7 yaml-bad-utf8 of 4"},
      {"png", "1:1 yaml-bad-utf8 of 34"},
      {"questions", "1:65 yaml-too-deep of 1"},
      {"returns", "1:8 yaml-lone-return of 3"},
      {"self-alias", "1:4 yaml-anchor of 2"},
      {"stairs", "33:33 yaml-too-deep of 1"},
      {"surrogates", "1:7 yaml-bad-utf8 of 2"},
      {"two-documents", "2:1 yaml-second-document of 1"},
      {"utf-16-bare", "1:1 yaml-utf16 of 1"},
      {"utf-16", "1:1 yaml-utf16 of 1"},
  };
  return problems;
}

TEST(HostileFiles, EachIsRefusedAtItsPlace) {
  for (const auto& [name, problem] : expected()) EXPECT_EQ(first_problem(name), problem) << name;
}

TEST(HostileFiles, NoneIsLeftOut) {
  std::vector<std::string> missing;
  for (const auto& entry : std::filesystem::directory_iterator(data)) {
    const std::string stem = entry.path().stem().string();
    if (stem.rfind("document-", 0) == 0 && expected().count(stem.substr(9)) == 0) missing.push_back(stem);
  }
  EXPECT_THAT(missing, ElementsAre());
}

TEST(HostileFiles, NothingDrawnActsOnATerminal) {
  for (const auto& [name, problem] : expected()) {
    const Reading reading = read_file(name);
    for (const text::Diagnostic& each : reading.found) {
      const std::string drawn = text::draw(each, reading.sources);
      const bool acts = std::any_of(drawn.begin(), drawn.end(), [](char c) { return c >= 0 && c < ' ' && c != '\n'; });
      EXPECT_FALSE(acts) << name << "\n" << text::printable(drawn);
      EXPECT_EQ(drawn.find("\xE2\x80\xAE"), std::string::npos) << name;
    }
  }
}

TEST(HostileFiles, AnAliasBombIsNeverUnfolded) {
  const Reading reading = read_file("alias-bomb");
  ASSERT_TRUE(reading.tree);
  ASSERT_EQ(reading.tree->entries.size(), 10U);
  EXPECT_EQ(reading.tree->entries[9].value.items.size(), 9U);
  EXPECT_EQ(reading.tree->entries[9].value.items[0].scalar, "*i");
}

TEST(HostileFiles, ATerminalEscapeAsItIsShown) {
  const Reading reading = read_file("escapes");
  EXPECT_EQ(text::draw(reading.found[0], reading.sources),
            "f:1:7: error: The invisible character U+001B may not stand in a file. [yaml-control-character]\n"
            "  1 | name: \\x1b]0;owned\\x07\\x1b[2J\n"
            "    |       ^^^^\n"
            "  hint: remove it\n");
}

}  // namespace
}  // namespace headgate::document
