// What YAML can do and a file here may not: every refusal with its place, sentence and hint.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "document/reading.hpp"

namespace headgate::document {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

TEST(Refuses, AnchorsAndAliases) {
  EXPECT_THAT(Reading("a: &a 1\n"
                      "b: *a\n")
                  .problems(),
              ElementsAre("1:4 [&a] yaml-anchor: \"&a\" is a YAML anchor, which is not used here. -> write the value "
                          "out where it is needed; put text that begins with & in quotes",
                          "2:4 [*a] yaml-alias: \"*a\" is a YAML alias, which is not used here. -> write the value "
                          "out; if it is text, put it in quotes: \"*a\""));
}

TEST(Refuses, AnAnchorOnAMap) {
  EXPECT_THAT(Reading("a: &whole\n"
                      "  b: 1\n")
                  .problems(),
              ElementsAre("1:4 [&whole] yaml-anchor: \"&whole\" is a YAML anchor, which is not used here. -> write the "
                          "value out where it is needed; put text that begins with & in quotes"));
}

TEST(Refuses, AnAnchorOnAKey) {
  EXPECT_THAT(Reading("&a b: 1\n").problems(),
              ElementsAre("1:1 [&a] yaml-anchor: \"&a\" is a YAML anchor, which is not used here. -> write the value "
                          "out where it is needed; put text that begins with & in quotes"));
}

TEST(Refuses, AnAnchorWithNothing) {
  EXPECT_THAT(
      Reading("a: &b\n").problems(),
      ElementsAre("1:1 [a] yaml-empty-value: \"a\" has no value. -> write one, write unknown, or leave the key out",
                  "1:4 [&b] yaml-anchor: \"&b\" is a YAML anchor, which is not used here. -> write the value out where "
                  "it is needed; put text that begins with & in quotes"));
}

TEST(Refuses, AnAliasOfNothing) {
  EXPECT_THAT(Reading("files: *.yaml\n").problems(),
              ElementsAre("1:8 [*.yaml] yaml-alias: \"*.yaml\" is a YAML alias, which is not used here. -> write the "
                          "value out; if it is text, put it in quotes: \"*.yaml\""));
}

TEST(Refuses, AnAliasAsKey) {
  EXPECT_THAT(Reading("a: &a x\n"
                      "*a : 1\n")
                  .problems(),
              ElementsAre("1:4 [&a] yaml-anchor: \"&a\" is a YAML anchor, which is not used here. -> write the value "
                          "out where it is needed; put text that begins with & in quotes",
                          "2:1 [*a] yaml-alias: \"*a\" is a YAML alias, which is not used here. -> write the value "
                          "out; if it is text, put it in quotes: \"*a\""));
}

TEST(Refuses, AliasesInsideBraces) {
  EXPECT_THAT(Reading("a: &a 1\n"
                      "b: {c: *a, d: [*a]}\n")
                  .problems(),
              ElementsAre("1:4 [&a] yaml-anchor: \"&a\" is a YAML anchor, which is not used here. -> write the value "
                          "out where it is needed; put text that begins with & in quotes",
                          "2:8 [*a] yaml-alias: \"*a\" is a YAML alias, which is not used here. -> write the value "
                          "out; if it is text, put it in quotes: \"*a\"",
                          "2:16 [*a] yaml-alias: \"*a\" is a YAML alias, which is not used here. -> write the value "
                          "out; if it is text, put it in quotes: \"*a\""));
}

TEST(Refuses, MergeKeys) {
  EXPECT_THAT(
      Reading("a: {b: 1}\n"
              "<<: {c: 1}\n")
          .problems(),
      ElementsAre(
          "2:1 [<<] yaml-merge-key: \"<<\" is a YAML merge key, which is not used here. -> write the keys out"));
}

TEST(Refuses, Tags) {
  EXPECT_THAT(Reading("a: !size 1\n"
                      "b: !!str 2\n"
                      "c: !<x> 3\n"
                      "d: ! 4\n")
                  .problems(),
              ElementsAre("1:4 [!size] yaml-tag: \"!size\" is a YAML tag, which is not used here. -> remove it; put "
                          "text that begins with ! in quotes",
                          "2:4 [!!str] yaml-tag: \"!!str\" is a YAML tag, which is not used here. -> remove it; put "
                          "text that begins with ! in quotes",
                          "3:4 [!<x>] yaml-tag: \"!<x>\" is a YAML tag, which is not used here. -> remove it; put text "
                          "that begins with ! in quotes",
                          "4:4 [!] yaml-tag: \"!\" is a YAML tag, which is not used here. -> remove it; put text that "
                          "begins with ! in quotes"));
}

TEST(Refuses, ATagOnAList) {
  EXPECT_THAT(Reading("line: !!seq\n"
                      "  - pipe\n")
                  .problems(),
              ElementsAre("1:7 [!!seq] yaml-tag: \"!!seq\" is a YAML tag, which is not used here. -> remove it; put "
                          "text that begins with ! in quotes"));
}

TEST(Refuses, ATagWithNothing) {
  EXPECT_THAT(
      Reading("a: !!null\n"
              "b: 1\n")
          .problems(),
      ElementsAre("1:1 [a] yaml-empty-value: \"a\" has no value. -> write one, write unknown, or leave the key out",
                  "1:4 [!!null] yaml-tag: \"!!null\" is a YAML tag, which is not used here. -> remove it; put text "
                  "that begins with ! in quotes"));
}

TEST(Refuses, ASecondDocument) {
  EXPECT_THAT(Reading("a: 1\n"
                      "---\n"
                      "b: 2\n")
                  .problems(),
              ElementsAre("2:1 [---] yaml-second-document: \"---\" ends the document, and a file holds only one. -> "
                          "put the rest into a file of its own; nothing after this line was read"));
}

TEST(Refuses, AThirdStartRightAfterTheFirst) {
  EXPECT_THAT(
      Reading("---\n"
              "---\n"
              "a: 1\n")
          .problems(),
      ElementsAre("1:1 [] yaml-empty-file: The file holds nothing. -> begin with a line such as: format: site/1",
                  "2:1 [---] yaml-second-document: \"---\" ends the document, and a file holds only one. -> put the "
                  "rest into a file of its own; nothing after this line was read"));
}

TEST(Refuses, ADocumentEnd) {
  EXPECT_THAT(Reading("a: 1\n"
                      "...\n")
                  .problems(),
              ElementsAre("2:1 [...] yaml-second-document: \"...\" ends the document, and a file holds only one. -> "
                          "put the rest into a file of its own; nothing after this line was read"));
}

TEST(Refuses, Directives) {
  EXPECT_THAT(Reading("%YAML 1.2\n"
                      "---\n"
                      "a: 1\n")
                  .problems(),
              ElementsAre("1:1 [%YAML 1.2] yaml-directive: A line that begins with % is a YAML directive, which is not "
                          "used here. -> remove the line"));
}

TEST(Refuses, DuplicateKeys) {
  EXPECT_THAT(
      Reading("name: a\n"
              "line: b\n"
              "name: c\n")
          .problems(),
      ElementsAre(
          "3:1 [name] yaml-duplicate-key: \"name\" is given twice. -> keep one of the two | 1:1 first given here"));
}

TEST(Refuses, DuplicateKeysHoweverQuoted) {
  EXPECT_THAT(
      Reading("{name: a, \"name\": b, 'name': c}\n").problems(),
      ElementsAre(
          "1:12 [name] yaml-duplicate-key: \"name\" is given twice. -> keep one of the two | 1:2 first given here",
          "1:23 [name] yaml-duplicate-key: \"name\" is given twice. -> keep one of the two | 1:2 first given here"));
}

TEST(Refuses, DuplicateKeysInside) {
  EXPECT_THAT(
      Reading("a:\n"
              "  - b: 1\n"
              "    b: 2\n")
          .problems(),
      ElementsAre("3:5 [b] yaml-duplicate-key: \"b\" is given twice. -> keep one of the two | 2:5 first given here"));
}

TEST(Refuses, AMapAsKey) {
  EXPECT_THAT(Reading("{a: b}: c\n").problems(),
              ElementsAre("1:1 [{a: b}] yaml-key-not-text: A map or list stands where a key should. -> a key is plain "
                          "text, then a colon"));
}

TEST(Refuses, AListAsKey) {
  EXPECT_THAT(Reading("[a, b]: c\n"
                      "d: 1\n")
                  .problems(),
              ElementsAre("1:1 [[a, b]] yaml-key-not-text: A map or list stands where a key should. -> a key is plain "
                          "text, then a colon"));
}

TEST(Refuses, AMapAsKeyInsideBraces) {
  EXPECT_THAT(Reading("x: {{a: b}: c, d: e}\n").problems(),
              ElementsAre("1:5 [{a: b}] yaml-key-not-text: A map or list stands where a key should. -> a key is plain "
                          "text, then a colon"));
}

TEST(Refuses, QuestionMarkKeys) {
  EXPECT_THAT(Reading("? a\n"
                      ": b\n")
                  .problems(),
              ElementsAre("1:1 [?] yaml-complex-key: A key may not begin with \"?\". -> write: key: value"));
}

TEST(Refuses, QuestionMarkKeysInsideBraces) {
  EXPECT_THAT(Reading("{? a : b}\n").problems(),
              ElementsAre("1:2 [?] yaml-complex-key: A key may not begin with \"?\". -> write: key: value"));
}

TEST(Refuses, AListBehindAQuestionMark) {
  EXPECT_THAT(Reading("? - a\n"
                      ": b\n")
                  .problems(),
              ElementsAre("1:3 [- a] yaml-key-not-text: A map or list stands where a key should. -> a key is plain "
                          "text, then a colon"));
}

TEST(Refuses, AKeyThatIsMissing) {
  EXPECT_THAT(
      Reading(": b\n").problems(),
      ElementsAre("1:1 [:] yaml-empty-key: A colon stands without a key before it. -> write the key before the colon"));
}

TEST(Refuses, AKeyThatIsMissingInsideBraces) {
  EXPECT_THAT(
      Reading("{a: 1, : b}\n").problems(),
      ElementsAre("1:8 [:] yaml-empty-key: A colon stands without a key before it. -> write the key before the colon"));
}

TEST(Refuses, FoldedBlocks) {
  EXPECT_THAT(Reading("why: >\n"
                      "  one line\n"
                      "  and another: yes\n"
                      "name: a\n")
                  .problems(),
              ElementsAre("1:6 [>] yaml-folded-block: \">\" joins the lines below it into one, so places in them are "
                          "lost. -> use | instead"));
}

TEST(Refuses, FoldedBlocksWithAHeader) {
  EXPECT_THAT(Reading("why: >-\n"
                      "  one\n"
                      "fix: >2+\n"
                      "   two\n")
                  .problems(),
              ElementsAre("1:6 [>] yaml-folded-block: \">\" joins the lines below it into one, so places in them are "
                          "lost. -> use | instead",
                          "3:6 [>] yaml-folded-block: \">\" joins the lines below it into one, so places in them are "
                          "lost. -> use | instead"));
}

TEST(Refuses, PlainTextOverLines) {
  EXPECT_THAT(Reading("why: one line\n"
                      "  and another\n")
                  .problems(),
              ElementsAre("1:6 [one line\\x0a  and another] yaml-spread-text: YAML joins these lines into one value. "
                          "-> put the value on one line, or write | and its lines below"));
}

TEST(Refuses, PlainTextOverLinesWithAGap) {
  EXPECT_THAT(Reading("why: one line\n"
                      "\n"
                      "\n"
                      "  and another\n"
                      "name: a\n")
                  .problems(),
              ElementsAre("1:6 [one line\\x0a\\x0a\\x0a  and another] yaml-spread-text: YAML joins these lines into "
                          "one value. -> put the value on one line, or write | and its lines below"));
}

TEST(Refuses, PlainTextOverLinesInsideBraces) {
  EXPECT_THAT(Reading("a: {why: one\n"
                      "  and two, b: 1}\n")
                  .problems(),
              ElementsAre("1:10 [one\\x0a  and two] yaml-spread-text: YAML joins these lines into one value. -> put "
                          "the value on one line, or write | and its lines below"));
}

TEST(Refuses, QuotedTextOverLines) {
  EXPECT_THAT(Reading("why: \"one line\n"
                      "  and another\"\n"
                      "fix: 'a\n"
                      "\n"
                      "  b'\n")
                  .problems(),
              ElementsAre("1:7 [one line\\x0a  and another] yaml-spread-text: YAML joins these lines into one value. "
                          "-> put the value on one line, or write | and its lines below",
                          "3:7 [a\\x0a\\x0a  b] yaml-spread-text: YAML joins these lines into one value. -> put the "
                          "value on one line, or write | and its lines below"));
}

TEST(Refuses, AnEmptyBlock) {
  EXPECT_THAT(Reading("when: |\n"
                      "name: a\n")
                  .problems(),
              ElementsAre("1:7 [|] yaml-empty-block: The block is empty. -> indent its lines deeper than its key"));
}

TEST(Refuses, AKeyWithoutAValue) {
  EXPECT_THAT(
      Reading("a:\n"
              "b: 1\n")
          .problems(),
      ElementsAre("1:1 [a] yaml-empty-value: \"a\" has no value. -> write one, write unknown, or leave the key out"));
}

TEST(Refuses, TheLastKeyWithoutAValue) {
  EXPECT_THAT(
      Reading("b: 1\n"
              "a:\n")
          .problems(),
      ElementsAre("2:1 [a] yaml-empty-value: \"a\" has no value. -> write one, write unknown, or leave the key out"));
}

TEST(Refuses, AKeyWithoutAValueButAComment) {
  EXPECT_THAT(
      Reading("a: # nothing yet\n"
              "b: 1\n")
          .problems(),
      ElementsAre("1:1 [a] yaml-empty-value: \"a\" has no value. -> write one, write unknown, or leave the key out"));
}

TEST(Refuses, AKeyWithoutAValueInsideBraces) {
  EXPECT_THAT(
      Reading("a: {b: , c: 1, d:}\n").problems(),
      ElementsAre("1:5 [b] yaml-empty-value: \"b\" has no value. -> write one, write unknown, or leave the key out",
                  "1:16 [d] yaml-empty-value: \"d\" has no value. -> write one, write unknown, or leave the key out"));
}

TEST(Refuses, AKeyWithoutAValueBeforeNull) {
  EXPECT_THAT(
      Reading("a:\n"
              "null: 1\n")
          .problems(),
      ElementsAre("1:1 [a] yaml-empty-value: \"a\" has no value. -> write one, write unknown, or leave the key out"));
}

TEST(Refuses, AnEmptyItem) {
  EXPECT_THAT(Reading("line:\n"
                      "  - pipe\n"
                      "  -\n"
                      "  - meter\n"
                      "  - \n")
                  .problems(),
              ElementsAre("3:3 [-] yaml-empty-item: This item of the list is empty. -> write it, or remove it",
                          "5:3 [-] yaml-empty-item: This item of the list is empty. -> write it, or remove it"));
}

TEST(Refuses, AnEmptyFirstItem) {
  EXPECT_THAT(Reading("---\n"
                      "-\n"
                      "- pipe\n")
                  .problems(),
              ElementsAre("2:1 [-] yaml-empty-item: This item of the list is empty. -> write it, or remove it"));
}

TEST(Refuses, AnEmptyItemInsideBraces) {
  EXPECT_THAT(Reading("line: [pipe, , meter]\n").problems(),
              ElementsAre("1:14 [,] yaml-empty-item: This item of the list is empty. -> write it, or remove it"));
}

TEST(Refuses, AnItemOfACommaAlone) {
  EXPECT_THAT(Reading("line: [,]\n").problems(),
              ElementsAre("1:8 [,] yaml-empty-item: This item of the list is empty. -> write it, or remove it"));
}

}  // namespace
}  // namespace headgate::document
