// The caps on what a file may hold: just inside, just outside.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "document/reading.hpp"

namespace headgate::document {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

std::string repeated(std::string_view text, std::size_t times) {
  std::string all;
  for (std::size_t i = 0; i < times; ++i) all += text;
  return all;
}

TEST(Caps, FileLength) {
  Caps caps;
  caps.file_bytes = 5;
  EXPECT_THAT(Reading("a: b\n", caps).problems(), IsEmpty());
  const Reading reading("a: bc\n", caps);
  EXPECT_FALSE(reading.tree);
  EXPECT_THAT(
      reading.problems(),
      ElementsAre("1:1 [] yaml-file-too-long: The file is 6 bytes long; at most 5 are read. -> a real file is a "
                  "few kilobytes: split it, or check that this is the file you meant"));
}

TEST(Caps, LineLength) {
  Caps caps;
  caps.line_bytes = 8;
  EXPECT_THAT(Reading("a: 45678\r\nb: c\n", caps).problems(), IsEmpty());
  const Reading reading("a: b\nc: 456789\n", caps);
  EXPECT_FALSE(reading.tree);
  EXPECT_THAT(
      reading.problems(),
      ElementsAre(
          "2:1 [] yaml-line-too-long: This line is 9 bytes long; at most 8 are read. -> break it into several"));
}

TEST(Caps, TextLength) {
  Caps caps;
  caps.scalar_bytes = 4;
  EXPECT_THAT(Reading("a: 1234\nb: |\n  123\n", caps).problems(), IsEmpty());
  EXPECT_THAT(Reading("a: 12345\nb: |\n  1\n  2\n  3\nc: 'd'\n", caps).problems(),
              ElementsAre("1:4 [] yaml-text-too-long: This text is 5 bytes long; at most 4 are read. -> shorten it",
                          "2:4 [] yaml-text-too-long: This text is 6 bytes long; at most 4 are read. -> shorten it"));
}

TEST(Caps, DepthOfLists) {
  Caps caps;
  caps.depth = 3;
  EXPECT_THAT(Reading("a: [[b]]\n", caps).problems(), IsEmpty());
  EXPECT_THAT(Reading("a: [[[b]]]\n", caps).problems(),
              ElementsAre("1:6 [] yaml-too-deep: Maps and lists stand more than 3 deep inside one another. -> a real "
                          "file is about five deep"));
}

TEST(Caps, DepthOfMapsByIndent) {
  Caps caps;
  caps.depth = 3;
  EXPECT_THAT(Reading("a:\n  b:\n    c: d\n", caps).problems(), IsEmpty());
  const Reading reading("a:\n  b:\n    c:\n      d: e\n", caps);
  EXPECT_THAT(reading.problems(), ElementsAre("4:7 [] yaml-too-deep: Maps and lists stand more than 3 deep inside one "
                                              "another. -> a real file is about five deep"));
  EXPECT_TRUE(reading.tree);
}

TEST(Caps, DepthOfDashesOnOneLine) {
  Caps caps;
  caps.depth = 3;
  EXPECT_THAT(Reading("- - - a\n", caps).problems(), IsEmpty());
  EXPECT_THAT(Reading("- - - - a\n", caps).ids(), ElementsAre("yaml-too-deep"));
}

TEST(Caps, DepthIsNotMistakenForBracesInText) {
  Caps caps;
  caps.depth = 2;
  EXPECT_THAT(Reading("a: b [ { [ [\nc: '[[[[{{'  # [[[[\n", caps).problems(), IsEmpty());
}

TEST(Caps, Nodes) {
  Caps caps;
  caps.nodes = 5;
  EXPECT_THAT(Reading("a: 1\nb: 2\n", caps).problems(), IsEmpty());
  EXPECT_THAT(Reading("a: 1\nb: [2]\n", caps).problems(),
              ElementsAre("2:5 [] yaml-too-many-nodes: The file holds more than 5 values. -> split it"));
}

TEST(Caps, ProblemsPastTheCapAreCounted) {
  Caps caps;
  caps.diagnostics = 2;
  EXPECT_THAT(Reading(repeated("- \n", 5), caps).problems(),
              ElementsAre("1:1 [-] yaml-empty-item: This item of the list is empty. -> write it, or remove it",
                          "2:1 [-] yaml-empty-item: This item of the list is empty. -> write it, or remove it",
                          "6:1 [] yaml-more-problems: 3 further problems in this file are not listed. -> put the ones "
                          "above right first"));
}

TEST(Caps, ProblemsUpToTheCapAreAllThere) {
  Caps caps;
  caps.diagnostics = 2;
  EXPECT_THAT(Reading(repeated("- \n", 2), caps).ids(), ElementsAre("yaml-empty-item", "yaml-empty-item"));
}

TEST(Caps, ProblemsInBytesAloneStopTheReading) {
  Caps caps;
  caps.diagnostics = 3;
  const Reading reading("a: \x01\x01\x01\x01\nb: &c 1\n", caps);
  EXPECT_FALSE(reading.tree);
  EXPECT_THAT(reading.ids(), ElementsAre("yaml-control-character", "yaml-control-character", "yaml-control-character",
                                         "yaml-more-problems"));
}

}  // namespace
}  // namespace headgate::document
