#include "document/node.hpp"

#include <gtest/gtest.h>

#include "document/reading.hpp"

namespace headgate::document {
namespace {

using text::Range;

TEST(Node, FindsAKeyOrNothing) {
  const Reading reading("a: 1\nb: {c: 2}\n");
  ASSERT_TRUE(reading.tree);
  ASSERT_NE(reading.tree->find("b"), nullptr);
  EXPECT_TRUE(reading.tree->find("b")->is_map());
  EXPECT_EQ(reading.tree->find("c"), nullptr);
  EXPECT_EQ(reading.tree->find(""), nullptr);
  EXPECT_EQ(reading.tree->find("a")->find("a"), nullptr);
}

TEST(Node, GivesAnEntryWithItsKeysRange) {
  const Reading reading("a: 1\n\"b c\": 2\n");
  ASSERT_TRUE(reading.tree);
  const Entry* entry = reading.tree->entry("b c");
  ASSERT_NE(entry, nullptr);
  EXPECT_EQ(reading.text_of(entry->key_range), "b c");
  EXPECT_EQ(reading.sources.place(entry->key_range), "f:2:2");
  EXPECT_EQ(reading.tree->entry("b"), nullptr);
}

TEST(RangeOf, APartOfPlainText) {
  const Reading reading("when: a > b\n");
  const Node& when = reading.at("when");
  EXPECT_EQ(reading.text_of(when.range_of(4, 1)), "b");
  EXPECT_EQ(reading.sources.place(when.range_of(4, 1)), "f:1:11");
}

TEST(RangeOf, IsCutToTheText) {
  const Reading reading("when: a > b\n");
  const Node& when = reading.at("when");
  EXPECT_EQ(when.range_of(4, 100), (Range{0, 10, 11}));
  EXPECT_EQ(when.range_of(100, 5), (Range{0, 11, 11}));
}

TEST(RangeOf, APartOfQuotedText) {
  const Reading reading("how: \"bibb gauge, 07:10\"\n");
  EXPECT_EQ(reading.text_of(reading.at("how").range_of(12, 5)), "07:10");
}

TEST(RangeOf, StaysInsideQuotedTextWithEscapes) {
  const Reading reading(R"(a: "\u00e9\L")");
  const Node& a = reading.at("a");
  EXPECT_EQ(a.scalar, "\u00e9\u2028");
  EXPECT_EQ(a.range_of(0, 99), a.range);
  EXPECT_EQ(a.range_of(3, 2).end, 9U);
}

TEST(RangeOf, EveryLineOfABlock) {
  const Reading reading("when: |\n  some gauge\n    in line\n\n  has x\nnext: 1\n");
  const Node& when = reading.at("when");
  ASSERT_EQ(when.scalar, "some gauge\n  in line\n\nhas x\n");
  const auto word = [&](std::string_view text) {
    return reading.sources.place(when.range_of(when.scalar.find(text), text.size())) + " " +
           reading.text_of(when.range_of(when.scalar.find(text), text.size()));
  };
  EXPECT_EQ(word("some"), "f:2:3 some");
  EXPECT_EQ(word("gauge"), "f:2:8 gauge");
  EXPECT_EQ(word("in line"), "f:3:5 in line");
  EXPECT_EQ(word("has x"), "f:5:3 has x");
}

TEST(RangeOf, AcrossLinesOfABlock) {
  const Reading reading("when: |\n  a and\n  b\n");
  const Node& when = reading.at("when");
  EXPECT_EQ(reading.text_of(when.range_of(2, 5)), "and\n  b");
  EXPECT_EQ(reading.text_of(when.range_of(0, 5)), "a and");
  EXPECT_EQ(reading.text_of(when.range_of(0, 99)), "a and\n  b");
}

TEST(RangeOf, PastTheEndOfABlock) {
  const Reading reading("when: |\n  a\n  b\n");
  const Node& when = reading.at("when");
  const Range end{0, 15, 15};
  EXPECT_EQ(when.range_of(4, 0), end);
  EXPECT_EQ(when.range_of(4, 3), end);
  EXPECT_EQ(when.range_of(1000, 3), end);
}

TEST(RangeOf, ABlockOfAFileWithReturns) {
  const Reading reading("when: |\r\n  a\r\n   \xC2\xBD in\r\nb: c\r\n");
  const Node& when = reading.at("when");
  ASSERT_EQ(when.scalar, "a\n \xC2\xBD in\n");
  EXPECT_EQ(reading.text_of(when.range_of(6, 2)), "in");
  EXPECT_EQ(reading.sources.place(when.range_of(6, 2)), "f:3:6");
}

TEST(IsName, LowerCaseWithSingleHyphens) {
  for (const char* name : {"a", "line", "least-cover", "k-copper", "full-baths-2", "irc-2018"}) {
    EXPECT_TRUE(is_name(name)) << name;
  }
}

TEST(IsName, NothingElse) {
  for (const char* name : {"", "Line", "leastCover", "least cover", "least--cover", "-a", "a-", "2-baths", "3/4",
                           "least_cover", "caf\xC3\xA9", "a.b"}) {
    EXPECT_FALSE(is_name(name)) << name;
  }
}

}  // namespace
}  // namespace headgate::document
