// What YAML would cut or reshape in silence: found in the raw text, refused with advice.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "document/reading.hpp"

namespace headgate::document {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

TEST(Cuts, ANumberSignAfterABlank) {
  EXPECT_THAT(Reading("gauge: gauge #12\n").problems(),
              ElementsAre("1:14 [#12] yaml-comment-cuts: YAML takes \"#12\" for a comment and drops it. -> put the "
                          "value in quotes: \"gauge #12\"; for a comment leave a space after the #"));
}

TEST(Cuts, ANumberSignAtTheStart) {
  EXPECT_THAT(Reading("gauge: #12\n"
                      "name: a\n")
                  .problems(),
              ElementsAre("1:8 [#12] yaml-comment-cuts: YAML takes \"#12\" for a comment and drops it. -> put the "
                          "value in quotes: \"#12\"; for a comment leave a space after the #"));
}

TEST(Cuts, ANumberSignAtTheStartOfAnItem) {
  EXPECT_THAT(Reading("line:\n"
                      "  - #12\n"
                      "  - pipe\n")
                  .problems(),
              ElementsAre("2:5 [#12] yaml-comment-cuts: YAML takes \"#12\" for a comment and drops it. -> put the "
                          "value in quotes: \"#12\"; for a comment leave a space after the #"));
}

TEST(Cuts, ANumberSignInsideBraces) {
  EXPECT_THAT(Reading("a: {number: #12}\n").problems(),
              ElementsAre("1:13 [#12}] yaml-comment-cuts: YAML takes \"#12}\" for a comment and drops it. -> put the "
                          "value in quotes: \"#12\"; for a comment leave a space after the #"));
}

TEST(Cuts, ANumberSignInsideBracesAfterText) {
  EXPECT_THAT(Reading("a: {number: no #12, b: 1}\n").problems(),
              ElementsAre("1:16 [#12, b: 1}] yaml-comment-cuts: YAML takes \"#12, b: 1}\" for a comment and drops it. "
                          "-> put the value in quotes: \"no #12\"; for a comment leave a space after the #"));
}

TEST(Cuts, ANumberSignInsideBracesOverLines) {
  EXPECT_THAT(Reading("a: {number: #12,\n"
                      "  b: 1}\n")
                  .problems(),
              ElementsAre("1:13 [#12,] yaml-comment-cuts: YAML takes \"#12,\" for a comment and drops it. -> put the "
                          "value in quotes: \"#12\"; for a comment leave a space after the #"));
}

TEST(Cuts, ANumberSignAfterQuotedText) {
  EXPECT_THAT(Reading("name: \"Quay House\" #12\n").problems(),
              ElementsAre("1:20 [#12] yaml-comment-cuts: YAML takes \"#12\" for a comment and drops it. -> put the "
                          "value in quotes: \"Quay House #12\"; for a comment leave a space after the #"));
}

TEST(Cuts, ANumberSignAfterAnInchMark) {
  EXPECT_THAT(Reading("size: 3/4\" #2\n").problems(),
              ElementsAre("1:12 [#2] yaml-comment-cuts: YAML takes \"#2\" for a comment and drops it. -> put the value "
                          "in quotes: '3/4\" #2'; for a comment leave a space after the #"));
}

TEST(Cuts, ANumberSignInAKey) {
  EXPECT_THAT(Reading("gauge #12: here\n").problems(),
              ElementsAre("1:7 [#12: here] yaml-comment-cuts: YAML takes \"#12: here\" for a comment and drops it. -> "
                          "put the value in quotes: \"gauge #12: here\"; for a comment leave a space after the #"));
}

TEST(Cuts, ANumberSignAfterAnItem) {
  EXPECT_THAT(Reading("- gauge #12\n").problems(),
              ElementsAre("1:9 [#12] yaml-comment-cuts: YAML takes \"#12\" for a comment and drops it. -> put the "
                          "value in quotes: \"gauge #12\"; for a comment leave a space after the #"));
}

TEST(Cuts, ACommentWithoutASpace) {
  EXPECT_THAT(Reading("a: 1 #twelve\n").problems(),
              ElementsAre("1:6 [#twelve] yaml-comment-cuts: YAML takes \"#twelve\" for a comment and drops it. -> put "
                          "the value in quotes: \"1 #twelve\"; for a comment leave a space after the #"));
}

TEST(Cuts, NoHashInsideAWord) {
  EXPECT_THAT(Reading("a: gauge#12\n"
                      "b: \"gauge #12\"\n"
                      "c: '#'\n")
                  .problems(),
              IsEmpty());
}

TEST(Cuts, NoCommentThatIsOne) {
  EXPECT_THAT(Reading("a: 1  # one\n"
                      "b: 2 ## two\n"
                      "c: 3 #\n"
                      "d: # four\n"
                      "  - 5   # five\n"
                      "#six\n"
                      "  #seven\n")
                  .problems(),
              IsEmpty());
}

TEST(Cuts, ACommaInsideBraces) {
  EXPECT_THAT(Reading("a: {how: bibb gauge, 07:10}\n").problems(),
              ElementsAre("1:10 [bibb gauge, 07:10] yaml-comma-splits: The comma ends the value of \"how\" and leaves "
                          "\"07:10\" over. -> put the value in quotes: \"bibb gauge, 07:10\""));
}

TEST(Cuts, ACommaInFeetAndInches) {
  EXPECT_THAT(Reading("a: {size: 1-1/2\", length: 5 ft, 6 in}\n").problems(),
              ElementsAre("1:27 [5 ft, 6 in] yaml-comma-splits: The comma ends the value of \"length\" and leaves \"6 "
                          "in\" over. -> put the value in quotes: \"5 ft, 6 in\""));
}

TEST(Cuts, TwoCommasInsideBraces) {
  EXPECT_THAT(
      Reading("a: {how: photo, 07:10, street side, by: me}\n").problems(),
      ElementsAre("1:10 [photo, 07:10, street side] yaml-comma-splits: The comma ends the value of \"how\" and leaves "
                  "\"07:10, street side\" over. -> put the value in quotes: \"photo, 07:10, street side\""));
}

TEST(Cuts, ACommaInANumber) {
  EXPECT_THAT(Reading("{length: 1,000 ft}\n").problems(),
              ElementsAre("1:10 [1,000 ft] yaml-comma-splits: The comma ends the value of \"length\" and leaves \"000 "
                          "ft\" over. -> put the value in quotes: \"1,000 ft\""));
}

TEST(Cuts, TwoValuesByCommas) {
  EXPECT_THAT(Reading("{a: 1, 2, b: 3, 4}\n").problems(),
              ElementsAre("1:5 [1, 2] yaml-comma-splits: The comma ends the value of \"a\" and leaves \"2\" over. -> "
                          "put the value in quotes: \"1, 2\"",
                          "1:14 [3, 4] yaml-comma-splits: The comma ends the value of \"b\" and leaves \"4\" over. -> "
                          "put the value in quotes: \"3, 4\""));
}

TEST(Cuts, NoCommaOutsideBraces) {
  EXPECT_THAT(Reading("a: bibb gauge, 07:10\n"
                      "b: {c: \"d, e\"}\n")
                  .problems(),
              IsEmpty());
}

TEST(Cuts, AWordAloneInBraces) {
  EXPECT_THAT(Reading("a: {strainer}\n").problems(),
              ElementsAre("1:5 [strainer] yaml-empty-value: \"strainer\" has no value. -> write one, write unknown, or "
                          "leave the key out"));
}

TEST(Cuts, AWordAloneAfterAList) {
  EXPECT_THAT(
      Reading("a: {b: [c], d}\n").problems(),
      ElementsAre("1:13 [d] yaml-empty-value: \"d\" has no value. -> write one, write unknown, or leave the key out"));
}

TEST(Cuts, AColonWithoutASpaceInBraces) {
  EXPECT_THAT(Reading("{a:b}\n").problems(),
              ElementsAre("1:3 [:] yaml-colon-needs-space: No space stands after the colon of \"a\". -> write: a: b; "
                          "if it is text, put it in quotes"));
}

TEST(Cuts, AColonWithoutASpaceAfterAComma) {
  EXPECT_THAT(Reading("{a: b, at:noon}\n").problems(),
              ElementsAre("1:10 [:] yaml-colon-needs-space: No space stands after the colon of \"at\". -> write: at: "
                          "noon; if it is text, put it in quotes"));
}

TEST(Cuts, AColonWithoutASpaceOnALine) {
  EXPECT_THAT(Reading("name: a\n"
                      "place:b\n")
                  .problems(),
              ElementsAre("2:6 [:] yaml-colon-needs-space: No space stands after the colon of \"place\". -> write: "
                          "place: b; if it is text, put it in quotes"));
}

TEST(Cuts, AColonWithoutASpaceAlone) {
  EXPECT_THAT(Reading("name:Quay House\n").problems(),
              ElementsAre("1:5 [:] yaml-colon-needs-space: No space stands after the colon of \"name\". -> write: "
                          "name: Quay House; if it is text, put it in quotes"));
}

TEST(Cuts, AColonWithoutASpaceBelowItsKey) {
  EXPECT_THAT(Reading("house:\n"
                      "  kind:one-family\n")
                  .problems(),
              ElementsAre("2:7 [:] yaml-colon-needs-space: No space stands after the colon of \"kind\". -> write: "
                          "kind: one-family; if it is text, put it in quotes"));
}

TEST(Cuts, AColonWithoutASpaceBeforeABrace) {
  EXPECT_THAT(Reading("- pipe:{material: k-copper, size: 1\"}\n").problems(),
              ElementsAre("1:7 [:] yaml-colon-needs-space: No space stands after the colon of \"pipe\". -> write: "
                          "pipe: {material: k-copper, size: 1\"}; if it is text, put it in quotes"));
}

TEST(Cuts, AColonWithoutASpaceBeforeABraceInBraces) {
  EXPECT_THAT(Reading("a: {pipe:{size: 1 in}}\n").problems(),
              ElementsAre("1:9 [:] yaml-colon-needs-space: No space stands after the colon of \"pipe\". -> write: "
                          "pipe: {size: 1 in}}; if it is text, put it in quotes"));
}

TEST(Cuts, AColonWithoutASpaceInAnItem) {
  EXPECT_THAT(Reading("- gauge:12\n").problems(),
              ElementsAre("1:8 [:] yaml-colon-needs-space: No space stands after the colon of \"gauge\". -> write: "
                          "gauge: 12; if it is text, put it in quotes"));
}

TEST(Cuts, AColonWithoutASpaceInAListInBraces) {
  EXPECT_THAT(Reading("near: [sewer:7 ft]\n").problems(),
              ElementsAre("1:13 [:] yaml-colon-needs-space: No space stands after the colon of \"sewer\". -> write: "
                          "sewer: 7 ft; if it is text, put it in quotes"));
}

TEST(Cuts, AColonWithoutASpaceAfterAQuotedKey) {
  EXPECT_THAT(Reading("name: a\n"
                      "\"place\":b\n")
                  .problems(),
              ElementsAre("2:8 [:] yaml-colon-needs-space: No space stands after the colon of \"place\". -> write: "
                          "\"place\": b; if it is text, put it in quotes"));
}

TEST(Cuts, AColonWithoutASpaceAfterTheOnlyKey) {
  EXPECT_THAT(Reading("\"place\":b\n").problems(),
              ElementsAre("1:8 [:] yaml-colon-needs-space: No space stands after the colon of \"place\". -> write: "
                          "\"place\": b; if it is text, put it in quotes"));
}

TEST(Cuts, NoColonInAClockOrAddress) {
  EXPECT_THAT(Reading("a: 07:10\n"
                      "b: [07:10, http://x.y]\n"
                      "5:23-3.15: c\n"
                      "d: at:noon\n")
                  .problems(),
              IsEmpty());
}

TEST(Cuts, NoColonInQuotedKeysOfJson) { EXPECT_THAT(Reading("{\"a\":\"b\",\"c\":[\"d:e\"]}\n").problems(), IsEmpty()); }

TEST(Cuts, AWordWithoutAColon) {
  EXPECT_THAT(Reading("name: a\n"
                      "place\n")
                  .problems(),
              ElementsAre("2:1 [place] yaml-no-colon: \"place\" stands where a key should, without a colon. -> write: "
                          "key: value, or begin the line with - in a list"));
}

TEST(Cuts, AValueAtTheColumnOfItsKey) {
  EXPECT_THAT(
      Reading("stage:\n"
              "entry\n")
          .problems(),
      ElementsAre(
          "1:1 [stage] yaml-empty-value: \"stage\" has no value. -> write one, write unknown, or leave the key out",
          "2:1 [entry] yaml-no-colon: \"entry\" stands where a key should, without a colon. -> write: key: value, or "
          "begin the line with - in a list"));
}

TEST(Cuts, AControlCharacterByEscape) {
  EXPECT_THAT(Reading("a: \"\\u001b[31m\"\n"
                      "b: \"\\0\"\n"
                      "b2: \"\\u202ex\"\n"
                      "c: \"tab\\t, line\\n\"\n")
                  .problems(),
              ElementsAre("1:5 [\\u001b[31m] yaml-control-escape: An escape in this text stands for an invisible "
                          "character. -> leave the escape out",
                          "2:5 [\\0] yaml-control-escape: An escape in this text stands for an invisible character. -> "
                          "leave the escape out",
                          "3:6 [\\u202ex] yaml-control-escape: An escape in this text stands for an invisible "
                          "character. -> leave the escape out"));
}

}  // namespace
}  // namespace headgate::document
