// What is accepted, and where the tree says it stands.
#include "document/read.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "document/reading.hpp"

namespace headgate::document {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

// key=value, with {} round what stands in braces; the texts are the file's, taken by range.
std::string outline(const Reading& reading, const Node& node) {
  std::string text;
  if (node.is_scalar()) text = reading.text_of(node);
  for (const Entry& entry : node.entries) {
    text += (text.empty() ? "" : " ") + reading.text_of(entry.key_range) + "=" + outline(reading, entry.value);
  }
  for (const Node& item : node.items) text += (text.empty() ? "" : " ") + outline(reading, item);
  if (node.is_list()) text = "[" + text + "]";
  if (node.is_map()) text = "(" + text + ")";
  return text;
}

std::string outline(const Reading& reading) { return reading.tree ? outline(reading, *reading.tree) : "nothing"; }

TEST(Read, ASiteAsPeopleWriteThem) {
  const Reading reading(
      "format: site/1\n"
      "permit-applied-on: 2026-09-14     # the date that picks the law\n"
      "\n"
      "house: {kind: one-family, hose-bibbs: 2}\n"
      "line:                             # in the order the water meets them\n"
      "  - pipe: {size: 3/4\", length: 24', near: [sewer: {beside: 7'}]}\n"
      "  - strainer\n"
      "  - more                          # not looked at yet\n");
  EXPECT_THAT(reading.problems(), IsEmpty());
  EXPECT_EQ(outline(reading),
            "(format=site/1 permit-applied-on=2026-09-14 house=(kind=one-family hose-bibbs=2) "
            "line=[(pipe=(size=3/4\" length=24' near=[(sewer=(beside=7'))])) strainer more])");
}

TEST(Read, RangesOfMapsAndListsHoldTheirBraces) {
  const Reading reading("a: {b: [c, d] , e: f }  # g\nh:\n  - i\n  - j: k\n");
  EXPECT_EQ(reading.text_of(reading.at("a")), "{b: [c, d] , e: f }");
  EXPECT_EQ(reading.text_of(*reading.at("a").find("b")), "[c, d]");
  EXPECT_EQ(reading.text_of(reading.at("h")), "- i\n  - j: k");
  EXPECT_EQ(reading.text_of(reading.at("h").items[1]), "j: k");
  EXPECT_EQ(reading.tree->range, (text::Range{0, 0, 45}));
}

TEST(Read, SaysWhatStandsInBraces) {
  const Reading reading("a: {b: [c]}\nd:\n  - [e: f]\n");
  const Node& a = reading.at("a");
  EXPECT_FALSE(a.in_braces);
  EXPECT_TRUE(a.find("b")->in_braces);
  EXPECT_TRUE(a.find("b")->items[0].in_braces);
  const Node& list = reading.at("d").items[0];
  EXPECT_FALSE(list.in_braces);
  EXPECT_TRUE(list.items[0].in_braces);
  EXPECT_TRUE(list.items[0].find("f") == nullptr && list.items[0].find("e")->in_braces);
}

TEST(Read, TypesNothing) {
  const Reading reading("a: no\nb: 1e3\nc: null\nd: ~\ne: [Null, NULL, true]\nf: {g: null}\nnull: 0x1F\n");
  EXPECT_THAT(reading.problems(), IsEmpty());
  EXPECT_EQ(outline(reading), "(a=no b=1e3 c=null d=~ e=[Null NULL true] f=(g=null) null=0x1F)");
  EXPECT_EQ(reading.at("c").scalar, "null");
  EXPECT_EQ(reading.at("d").scalar, "~");
}

TEST(Read, QuotedTextWithoutItsQuotes) {
  const Reading reading("a: \"b \\\"c\\\" \\\\\"\nd: 'it''s'\ne: \"\"\n'f g': h\n");
  EXPECT_THAT(reading.problems(), IsEmpty());
  EXPECT_EQ(reading.at("a").scalar, "b \"c\" \\");
  EXPECT_EQ(reading.text_of(reading.at("a")), "b \\\"c\\\" \\\\");
  EXPECT_EQ(reading.at("d").scalar, "it's");
  EXPECT_EQ(reading.text_of(reading.at("d")), "it''s");
  EXPECT_EQ(reading.at("e").style, Node::Style::quoted);
  EXPECT_EQ(reading.at("e").range, (text::Range{0, 31, 31}));
  EXPECT_EQ(reading.at("f g").scalar, "h");
}

TEST(Read, Blocks) {
  const Reading reading("a: |\n\n  b\n    c  \n\nd: |-  # note\n  e\nf: |2+\n    g\n\nh: i\n");
  EXPECT_THAT(reading.problems(), IsEmpty());
  EXPECT_EQ(reading.at("a").style, Node::Style::block);
  EXPECT_EQ(reading.at("a").scalar, "\nb\n  c  \n");
  EXPECT_THAT(reading.at("a").line_offsets, ElementsAre(5, 8, 12));
  EXPECT_EQ(reading.text_of(reading.at("a")), "\n  b\n    c  ");
  EXPECT_EQ(reading.at("d").scalar, "e");
  EXPECT_EQ(reading.text_of(reading.at("d")), "e");
  EXPECT_EQ(reading.at("f").scalar, "  g\n\n");
  EXPECT_EQ(reading.text_of(reading.at("f")), "  g");
  EXPECT_EQ(reading.at("h").scalar, "i");
}

TEST(Read, BlocksThatHoldWhatLooksLikeYaml) {
  const Reading reading("a: |\n  - b: {c #d\n  ? \"e\n  # f\n# g\nh: i\n");
  EXPECT_THAT(reading.problems(), IsEmpty());
  EXPECT_EQ(reading.at("a").scalar, "- b: {c #d\n? \"e\n# f\n");
  EXPECT_EQ(reading.at("h").scalar, "i");
}

TEST(Read, ABlockAtTheEndWithoutALineEnd) {
  const Reading reading("a: |\n  b\n  c");
  EXPECT_EQ(reading.at("a").scalar, "b\nc");
  EXPECT_EQ(reading.text_of(reading.at("a")), "b\n  c");
}

TEST(Read, CountsPlacesInCharactersAndRangesInBytes) {
  const Reading reading("\xC3\xA9t\xC3\xA9: {m: \"\xC3\xBC\", n: x}\n");
  EXPECT_THAT(reading.problems(), IsEmpty());
  const Node& n = *reading.at("\xC3\xA9t\xC3\xA9").find("n");
  EXPECT_EQ(n.range, (text::Range{0, 20, 21}));
  EXPECT_EQ(reading.sources.place(n.range), "f:1:18");
}

TEST(Read, PassesOverAByteOrderMark) {
  const Reading reading(
      "\xEF\xBB\xBF"
      "a: b\nc: d\n");
  EXPECT_THAT(reading.problems(), IsEmpty());
  EXPECT_EQ(outline(reading), "(a=b c=d)");
  EXPECT_EQ(reading.sources.place(reading.at("a").range), "f:1:4");
  EXPECT_EQ(reading.sources.place(reading.at("c").range), "f:2:4");
}

TEST(Read, LinesThatEndInReturnAndFeed) {
  const Reading reading("a: b  # c\r\nd:\r\n  - e\r\n  - \"f\"\r\ng: {h: i,\r\n  j: k}\r\n");
  EXPECT_THAT(reading.problems(), IsEmpty());
  EXPECT_EQ(outline(reading), "(a=b d=[e f] g=(h=i j=k))");
}

TEST(Read, OneStartOfTheDocument) {
  const Reading reading("# a note\n---  # and here\na: b\n");
  EXPECT_THAT(reading.problems(), IsEmpty());
  EXPECT_EQ(outline(reading), "(a=b)");
}

TEST(Read, Json) {
  const Reading reading("{\n\t\"a\": [1, 2.50, null, true, \"\\u00e9\\/\"],\n\t\"b\":{\"c\":\"\"}, \"d\":[]\n}\n");
  EXPECT_THAT(reading.problems(), IsEmpty());
  EXPECT_EQ(outline(reading), "(a=[1 2.50 null true \\u00e9\\/] b=(c=) d=[])");
  EXPECT_EQ(reading.at("a").items[4].scalar, "\xC3\xA9/");
}

TEST(Read, EmptyListsAndMapsInBraces) {
  const Reading reading("a: []\nb: {}\nc: [ ]\n");
  EXPECT_THAT(reading.problems(), IsEmpty());
  EXPECT_TRUE(reading.at("a").is_list() && reading.at("b").is_map());
  EXPECT_EQ(reading.text_of(reading.at("c")), "[ ]");
}

TEST(Read, AListAtTheColumnOfItsKey) {
  const Reading reading("a:\n- b\n- c: d\n  e: f\ng: h\n");
  EXPECT_THAT(reading.problems(), IsEmpty());
  EXPECT_EQ(outline(reading), "(a=[b (c=d e=f)] g=h)");
}

TEST(Read, AScalarAloneIsATreeToo) {
  const Reading reading("  strainer  # x\n");
  EXPECT_THAT(reading.problems(), IsEmpty());
  EXPECT_EQ(outline(reading), "strainer");
}

TEST(Read, KeysInTheOrderAndSpellingTheyWereWritten) {
  const Reading reading("Zeta: 1\nalpha: 2\nMid Key: 3\n");
  EXPECT_THAT(reading.problems(), IsEmpty());
  EXPECT_EQ(outline(reading), "(Zeta=1 alpha=2 Mid Key=3)");
}

TEST(Read, GoesOnAfterAProblem) {
  const Reading reading("a: &b 1\nc: d #2\ne:\nf: {g: h}\na: 3\n");
  EXPECT_THAT(reading.ids(), ElementsAre("yaml-anchor", "yaml-comment-cuts", "yaml-empty-value", "yaml-duplicate-key"));
  EXPECT_EQ(outline(reading), "(a=1 c=d f=(g=h))");
}

TEST(Read, KeepsWhatItReadBeforeItHadToStop) {
  const Reading reading("a: 1\nb: {c: 2, d: [e], f: g\n");
  EXPECT_THAT(reading.ids(), ElementsAre("yaml-unclosed-brace"));
  EXPECT_EQ(outline(reading), "(a=1 b=(c=2 d=[e] f=g))");
}

TEST(Read, LeavesWhatOtherFilesGaveInPlace) {
  text::Sources sources;
  const text::FileId first = sources.add("a.yaml", "a: *b\n");
  const text::FileId second = sources.add("b.yaml", "c: &d\n");
  text::Diagnostics found;
  read(sources, first, {}, found);
  read(sources, second, {}, found);
  ASSERT_EQ(found.size(), 3U);
  EXPECT_EQ(sources.place(found[0].range), "a.yaml:1:4");
  EXPECT_EQ(sources.place(found[1].range), "b.yaml:1:1");
}

TEST(Read, AFileThatIsNotThere) {
  text::Sources sources;
  text::Diagnostics found;
  EXPECT_FALSE(read(sources, 7, {}, found));
  EXPECT_TRUE(text::has_errors(found));
}

}  // namespace
}  // namespace headgate::document
