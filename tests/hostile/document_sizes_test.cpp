// Files that are too much: built here rather than kept, as they are large.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "document/reading.hpp"

namespace headgate::document {
namespace {

using testing::ElementsAre;

constexpr std::size_t many = 300'000;

std::string repeated(std::string_view text, std::size_t times) {
  std::string all;
  all.reserve(text.size() * times);
  for (std::size_t i = 0; i < times; ++i) all += text;
  return all;
}

TEST(HostileSizes, AFileOfFiveMegabytes) {
  const Reading reading(repeated("a: b\n", 1'000'000));
  EXPECT_FALSE(reading.tree);
  EXPECT_THAT(reading.problems(),
              ElementsAre("1:1 [] yaml-file-too-long: The file is 5000000 bytes long; at most 4194304 are read. -> a "
                          "real file is a few kilobytes: split it, or check that this is the file you meant"));
}

TEST(HostileSizes, GiantTextOnOneLine) {
  for (const char* begin : {"a: ", "a: \"", "a: '", "# ", "a: |\n  ", "a: 1 # "}) {
    const Reading reading(begin + std::string(many, 'x'));
    EXPECT_FALSE(reading.tree) << begin;
    EXPECT_THAT(reading.ids(), ElementsAre("yaml-line-too-long")) << begin;
  }
}

TEST(HostileSizes, GiantTextInABlock) {
  const Reading reading("a: |\n" + repeated("  x\n", 250'000) + "b: &c 1\n");
  EXPECT_THAT(reading.problems(),
              ElementsAre("1:4 [] yaml-text-too-long: This text is 500000 bytes long; at most 65536 are read. -> "
                          "shorten it",
                          "250002:4 [&c] yaml-anchor: \"&c\" is a YAML anchor, which is not used here. -> write the "
                          "value out where it is needed; put text that begins with & in quotes"));
}

TEST(HostileSizes, GiantTextOverLines) {
  EXPECT_THAT(Reading("a: " + repeated("x\n  ", many / 2)).ids(),
              ElementsAre("yaml-text-too-long", "yaml-spread-text"));
}

TEST(HostileSizes, NestingWithoutEnd) {
  for (const char* level : {"[\n", "{a:\n", "[[\n{a:\n", "[ ] [\n"}) {
    EXPECT_THAT(Reading(repeated(level, many)).ids(), ElementsAre("yaml-too-deep")) << level;
  }
}

TEST(HostileSizes, NestingByIndentAThousandDeep) {
  std::string text;
  for (std::size_t i = 0; i < 1000; ++i) text += std::string(i, ' ') + "-\n";
  EXPECT_THAT(Reading(text).ids(), ElementsAre("yaml-too-deep"));
}

TEST(HostileSizes, ManyThousandValues) {
  EXPECT_THAT(Reading(repeated("- a\n", many)).problems(),
              ElementsAre("200000:3 [] yaml-too-many-nodes: The file holds more than 200000 values. -> split it"));
}

TEST(HostileSizes, ManyThousandMistakes) {
  const Reading reading(repeated("-\n", many));
  ASSERT_EQ(reading.found.size(), 51U);
  EXPECT_EQ(reading.found[49].id, "yaml-empty-item");
  EXPECT_EQ(reading.found[50].sentence, "199950 further problems in this file are not listed.");
}

TEST(HostileSizes, TheSameKeyAHundredThousandTimes) {
  const Reading reading(repeated("k: 1\n", 99'000));
  ASSERT_EQ(reading.found.size(), 51U);
  EXPECT_EQ(reading.found[50].sentence, "98949 further problems in this file are not listed.");
  ASSERT_TRUE(reading.tree);
  EXPECT_EQ(reading.tree->entries.size(), 1U);
}

TEST(HostileSizes, ManyThousandNuls) {
  const Reading reading(std::string(many, '\0'));
  EXPECT_FALSE(reading.tree);
  ASSERT_EQ(reading.found.size(), 51U);
  EXPECT_EQ(reading.found[0].id, "yaml-control-character");
}

TEST(HostileSizes, ManyThousandCommentsAreFine) {
  const Reading reading(repeated("#\n", many) + "a: b\n");
  EXPECT_THAT(reading.problems(), ElementsAre());
  EXPECT_EQ(reading.at("a").scalar, "b");
}

}  // namespace
}  // namespace headgate::document
