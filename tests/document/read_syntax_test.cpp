// What YAML cannot read: one plain sentence at the place, whatever yaml-cpp calls it.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "document/reading.hpp"

namespace headgate::document {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

TEST(Syntax, AColonInsideAValue) {
  EXPECT_THAT(Reading("a: b: c\n").problems(),
              ElementsAre("1:5 [:] yaml-colon-in-value: A value on one line may not hold a colon and a space. -> put "
                          "the whole value in quotes"));
}

TEST(Syntax, AColonInsideAValueInBraces) {
  EXPECT_THAT(Reading("a: {b: c, d: e: f}\n").problems(),
              ElementsAre("1:15 [:] yaml-colon-in-value: A value on one line may not hold a colon and a space. -> put "
                          "the whole value in quotes"));
}

TEST(Syntax, AKeyBelowAValue) {
  EXPECT_THAT(Reading("a: b\n"
                      "  c: d\n")
                  .problems(),
              ElementsAre("2:3 [c: d] yaml-indent: This line is not indented like the lines it belongs to. -> give "
                          "keys of one map, and dashes of one list, the same indent"));
}

TEST(Syntax, AKeyBelowAnItem) {
  EXPECT_THAT(Reading("- a\n"
                      " b: c\n")
                  .problems(),
              ElementsAre("2:2 [b: c] yaml-indent: This line is not indented like the lines it belongs to. -> give "
                          "keys of one map, and dashes of one list, the same indent"));
}

TEST(Syntax, AnIndentBetweenTwoOthers) {
  EXPECT_THAT(Reading("a:\n"
                      "    b: 1\n"
                      "  c: 2\n")
                  .problems(),
              ElementsAre("3:3 [c: 2] yaml-indent: This line is not indented like the lines it belongs to. -> give "
                          "keys of one map, and dashes of one list, the same indent"));
}

TEST(Syntax, ADashOutOfLine) {
  EXPECT_THAT(Reading("a:\n"
                      "  - b\n"
                      " - c\n")
                  .problems(),
              ElementsAre("3:2 [- c] yaml-indent: This line is not indented like the lines it belongs to. -> give keys "
                          "of one map, and dashes of one list, the same indent"));
}

TEST(Syntax, AKeyAfterAList) {
  EXPECT_THAT(Reading("- a\n"
                      "b: c\n")
                  .problems(),
              ElementsAre("2:1 [b: c] yaml-left-over: \"b: c\" stands after the end and belongs to nothing. -> check "
                          "the indent and the braces before it"));
}

TEST(Syntax, AKeyInsideAListAtItsColumn) {
  EXPECT_THAT(Reading("line:\n"
                      "  - a\n"
                      "  b: c\n")
                  .problems(),
              ElementsAre("3:3 [b: c] yaml-indent: This line is not indented like the lines it belongs to. -> give "
                          "keys of one map, and dashes of one list, the same indent"));
}

TEST(Syntax, TextAfterAQuote) {
  EXPECT_THAT(Reading("a: \"b\" c\n").problems(),
              ElementsAre("1:8 [c] yaml-text-after-quote: Text stands after the \" that closes the value. -> leave the "
                          "quotes out, or put the whole value in quotes"));
}

TEST(Syntax, TextAfterAQuoteInBraces) {
  EXPECT_THAT(Reading("a: {b: \"c\" d}\n").problems(),
              ElementsAre("1:12 [d}] yaml-text-after-quote: Text stands after the \" that closes the value. -> leave "
                          "the quotes out, or put the whole value in quotes"));
}

TEST(Syntax, AnInchMarkInQuotes) {
  EXPECT_THAT(Reading("size: \"3/4\"\" pipe\n").problems(),
              ElementsAre("1:12 [\" pipe] yaml-text-after-quote: Text stands after the \" that closes the value. -> "
                          "leave the quotes out, or put the whole value in quotes"));
}

TEST(Syntax, AnApostropheInQuotes) {
  EXPECT_THAT(Reading("a: 'it's'\n").problems(),
              ElementsAre("1:8 [s'] yaml-text-after-quote: Text stands after the ' that closes the value. -> leave the "
                          "quotes out, or put the whole value in quotes"));
}

TEST(Syntax, TextAfterABrace) {
  EXPECT_THAT(Reading("a: {b: c} d\n").problems(),
              ElementsAre("1:11 [d] yaml-text-after-brace: Text stands after the } that closes the value. -> put the "
                          "whole value in quotes, or the text on a line of its own"));
}

TEST(Syntax, TextAfterTheOnlyValue) {
  EXPECT_THAT(Reading("{a: b} c\n").problems(),
              ElementsAre("1:8 [c] yaml-left-over: \"c\" stands after the end and belongs to nothing. -> check the "
                          "indent and the braces before it"));
}

TEST(Syntax, AQuoteLeftOpen) {
  EXPECT_THAT(Reading("a: \"b\n"
                      "c: d\n")
                  .problems(),
              ElementsAre("1:4 [\"b] yaml-unclosed-quote: The \" that begins this text is never closed. -> close it on "
                          "the same line; an inch or foot mark needs no quote before it"));
}

TEST(Syntax, AQuoteLeftOpenInBraces) {
  EXPECT_THAT(Reading("a: {b: 'c}\n").problems(),
              ElementsAre("1:8 ['c}] yaml-unclosed-quote: The ' that begins this text is never closed. -> close it on "
                          "the same line; an inch or foot mark needs no quote before it"));
}

TEST(Syntax, AFootMarkAtTheStart) {
  EXPECT_THAT(Reading("length: '24\n").problems(),
              ElementsAre("1:9 ['24] yaml-unclosed-quote: The ' that begins this text is never closed. -> close it on "
                          "the same line; an inch or foot mark needs no quote before it"));
}

TEST(Syntax, ABraceLeftOpen) {
  EXPECT_THAT(Reading("a: {b: c\n").problems(),
              ElementsAre("1:4 [{] yaml-unclosed-brace: This { is never closed. -> write the } that belongs to it"));
}

TEST(Syntax, ABracketLeftOpenBeforeMore) {
  EXPECT_THAT(Reading("a: [b, c\n"
                      "d: e\n")
                  .problems(),
              ElementsAre("1:4 [[] yaml-unclosed-brace: This [ is never closed. -> write the ] that belongs to it"));
}

TEST(Syntax, TheInnerBraceLeftOpen) {
  EXPECT_THAT(Reading("a: {b: {c: d}\n"
                      "e: f\n")
                  .problems(),
              ElementsAre("2:1 [e: f] yaml-brace-content: A comma or a closing brace should stand here. -> put a comma "
                          "between entries, and quotes around a value that holds a comma, colon or brace"));
}

TEST(Syntax, TheWrongBrace) {
  EXPECT_THAT(
      Reading("a: [b}\n").problems(),
      ElementsAre("1:6 [}] yaml-stray-closer: This } closes nothing that is open. -> remove it, or open it before"));
}

TEST(Syntax, ABraceTooMany) {
  EXPECT_THAT(
      Reading("a: [b]]\n").problems(),
      ElementsAre("1:7 []] yaml-stray-closer: This ] closes nothing that is open. -> remove it, or open it before"));
}

TEST(Syntax, ABraceAlone) {
  EXPECT_THAT(
      Reading("a: ]\n").problems(),
      ElementsAre("1:4 []] yaml-stray-closer: This ] closes nothing that is open. -> remove it, or open it before"));
}

TEST(Syntax, AListOnTheLineOfItsKey) {
  EXPECT_THAT(Reading("a: - b\n").problems(),
              ElementsAre("1:4 [-] yaml-dash: A list may not begin on the line of its key. -> begin each item on a "
                          "line of its own; if it is text, put it in quotes"));
}

TEST(Syntax, ReservedCharacters) {
  EXPECT_THAT(
      Reading("a: @b\n").problems(),
      ElementsAre("1:4 [@] yaml-reserved-character: A value may not begin with \"@\". -> put it in quotes: \"@b\""));
}

TEST(Syntax, APercentSign) {
  EXPECT_THAT(
      Reading("a: %b c # d\n").problems(),
      ElementsAre(
          "1:4 [%] yaml-reserved-character: A value may not begin with \"%\". -> put it in quotes: \"%b c # d\""));
}

TEST(Syntax, ABackTick) {
  EXPECT_THAT(
      Reading("a: `b`\n").problems(),
      ElementsAre("1:4 [`] yaml-reserved-character: A value may not begin with \"`\". -> put it in quotes: \"`b`\""));
}

TEST(Syntax, ACommaAtTheStart) {
  EXPECT_THAT(
      Reading("a: , b\n").problems(),
      ElementsAre("1:4 [,] yaml-reserved-character: A value may not begin with \",\". -> put it in quotes: \", b\""));
}

TEST(Syntax, AnEscapeThatIsNone) {
  EXPECT_THAT(Reading("a: \"C:\\quay\"\n").problems(),
              ElementsAre("1:7 [\\q] yaml-bad-escape: This escape stands for no character. -> write the character "
                          "itself; for a backslash write two, or use single quotes, where nothing is escaped"));
}

TEST(Syntax, AnEscapeThatIsNoNumber) {
  EXPECT_THAT(Reading("a: \"\\xzz\"\n").problems(),
              ElementsAre("1:5 [\\xzz] yaml-bad-escape: This escape stands for no character. -> write the character "
                          "itself; for a backslash write two, or use single quotes, where nothing is escaped"));
}

TEST(Syntax, HalfASurrogatePair) {
  EXPECT_THAT(Reading("a: \"\\ud83d\\ude00\"\n").problems(),
              ElementsAre("1:5 [\\ud83d] yaml-bad-escape: This escape stands for no character. -> write the character "
                          "itself; for a backslash write two, or use single quotes, where nothing is escaped"));
}

TEST(Syntax, TextAfterABlockHeader) {
  EXPECT_THAT(Reading("a: |x\n"
                      "  b\n")
                  .problems(),
              ElementsAre("1:4 [|x] yaml-block-header: Only the line's end may follow the | that begins a block. -> "
                          "begin the text on the next line, indented deeper"));
}

TEST(Syntax, ABlockOfNoIndent) {
  EXPECT_THAT(Reading("a: |0\n"
                      "  b\n")
                  .problems(),
              ElementsAre("1:4 [|0] yaml-block-header: Only the line's end may follow the | that begins a block. -> "
                          "begin the text on the next line, indented deeper"));
}

TEST(Syntax, SaysWhatCameBeforeToo) {
  EXPECT_THAT(
      Reading("a: &b 1\n"
              "c:\n"
              "d: e: f\n"
              "g:\n")
          .problems(),
      ElementsAre("1:4 [&b] yaml-anchor: \"&b\" is a YAML anchor, which is not used here. -> write the value out where "
                  "it is needed; put text that begins with & in quotes",
                  "2:1 [c] yaml-empty-value: \"c\" has no value. -> write one, write unknown, or leave the key out",
                  "3:5 [:] yaml-colon-in-value: A value on one line may not hold a colon and a space. -> put the whole "
                  "value in quotes"));
}

}  // namespace
}  // namespace headgate::document
