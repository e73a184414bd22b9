// A file as bytes and lines: encodings, control characters, tabs, nothing at all.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "document/reading.hpp"

namespace headgate::document {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

TEST(Bytes, EmptyFile) {
  EXPECT_THAT(
      Reading("").problems(),
      ElementsAre("1:1 [] yaml-empty-file: The file holds nothing. -> begin with a line such as: format: site/1"));
}

TEST(Bytes, OnlyBlankLines) {
  EXPECT_THAT(
      Reading("\n"
              "  \n"
              "\r\n")
          .problems(),
      ElementsAre("1:1 [] yaml-empty-file: The file holds nothing. -> begin with a line such as: format: site/1"));
}

TEST(Bytes, OnlyComments) {
  EXPECT_THAT(
      Reading("# nothing yet\n"
              "  # here\n")
          .problems(),
      ElementsAre("1:1 [] yaml-empty-file: The file holds nothing. -> begin with a line such as: format: site/1"));
}

TEST(Bytes, OnlyADocumentStart) {
  EXPECT_THAT(
      Reading("---\n"
              "# a\n")
          .problems(),
      ElementsAre("1:1 [] yaml-empty-file: The file holds nothing. -> begin with a line such as: format: site/1"));
}

TEST(Bytes, OnlyAByteOrderMark) {
  EXPECT_THAT(
      Reading("\xef\xbb\xbf").problems(),
      ElementsAre("1:1 [] yaml-empty-file: The file holds nothing. -> begin with a line such as: format: site/1"));
}

TEST(Bytes, LatinOne) {
  EXPECT_THAT(Reading("name: Caf\xe9\n").problems(),
              ElementsAre("1:10 [\\xe9] yaml-bad-utf8: Byte 0xE9 at offset 9 is not UTF-8: a character that is cut "
                          "short. -> save the file as UTF-8"));
}

TEST(Bytes, AStrayContinuationByte) {
  EXPECT_THAT(Reading("name: a\x80\n").problems(),
              ElementsAre("1:8 [\\x80] yaml-bad-utf8: Byte 0x80 at offset 7 is not UTF-8: a continuation byte without "
                          "a beginning. -> save the file as UTF-8"));
}

TEST(Bytes, AnOverlongSlash) {
  EXPECT_THAT(Reading("name: \xc0\xaf\n").problems(),
              ElementsAre("1:7 [\\xc0\\xaf] yaml-bad-utf8: Byte 0xC0 at offset 6 is not UTF-8: an overlong form. -> "
                          "save the file as UTF-8"));
}

TEST(Bytes, AnOverlongForm) {
  EXPECT_THAT(Reading("name: \xe0\x80\xaf\n").problems(),
              ElementsAre("1:7 [\\xe0\\x80\\xaf] yaml-bad-utf8: Byte 0xE0 at offset 6 is not UTF-8: an overlong form. "
                          "-> save the file as UTF-8"));
}

TEST(Bytes, ASurrogate) {
  EXPECT_THAT(Reading("name: \xed\xa0\x80\n").problems(),
              ElementsAre("1:7 [\\xed\\xa0\\x80] yaml-bad-utf8: Byte 0xED at offset 6 is not UTF-8: half of a "
                          "surrogate pair. -> save the file as UTF-8"));
}

TEST(Bytes, PastTheLastCharacter) {
  EXPECT_THAT(Reading("name: \xf4\x90\x80\x80\n").problems(),
              ElementsAre("1:7 [\\xf4\\x90\\x80\\x80] yaml-bad-utf8: Byte 0xF4 at offset 6 is not UTF-8: past the last "
                          "character. -> save the file as UTF-8"));
}

TEST(Bytes, CutShortAtTheEnd) {
  EXPECT_THAT(Reading("name: \xc3").problems(),
              ElementsAre("1:7 [\\xc3] yaml-bad-utf8: Byte 0xC3 at offset 6 is not UTF-8: a character that is cut "
                          "short. -> save the file as UTF-8"));
}

TEST(Bytes, Utf16LittleEndian) {
  EXPECT_THAT(Reading(std::string("n\x00"
                                  "a\x00m\x00"
                                  "e\x00:\x00 \x00"
                                  "a\x00",
                                  14))
                  .problems(),
              ElementsAre("1:1 [] yaml-utf16: The file is UTF-16, not UTF-8. -> save it as UTF-8"));
}

TEST(Bytes, Utf16WithAMark) {
  EXPECT_THAT(Reading(std::string("\xff\xfen\x00"
                                  "a\x00m\x00"
                                  "e\x00:\x00 \x00"
                                  "a\x00",
                                  16))
                  .problems(),
              ElementsAre("1:1 [] yaml-utf16: The file is UTF-16, not UTF-8. -> save it as UTF-8"));
}

TEST(Bytes, Utf16BigEndian) {
  EXPECT_THAT(Reading(std::string("\xfe\xff\x00n\x00"
                                  "a\x00m\x00"
                                  "e\x00:\x00 \x00"
                                  "a",
                                  16))
                  .problems(),
              ElementsAre("1:1 [] yaml-utf16: The file is UTF-16, not UTF-8. -> save it as UTF-8"));
}

TEST(Bytes, ANul) {
  EXPECT_THAT(
      Reading(std::string("name: a\x00"
                          "b\n",
                          10))
          .problems(),
      ElementsAre(
          "1:8 [\\x00] yaml-control-character: The invisible character U+0000 may not stand in a file. -> remove it"));
}

TEST(Bytes, ATerminalEscape) {
  EXPECT_THAT(
      Reading("name: \x1b[31mred\n").problems(),
      ElementsAre(
          "1:7 [\\x1b] yaml-control-character: The invisible character U+001B may not stand in a file. -> remove it"));
}

TEST(Bytes, DeleteAndC1) {
  EXPECT_THAT(
      Reading("a: \x7f\n"
              "b: \xc2\x85\n")
          .problems(),
      ElementsAre(
          "1:4 [\\x7f] yaml-control-character: The invisible character U+007F may not stand in a file. -> remove it",
          "2:4 [\\xc2\\x85] yaml-control-character: The invisible character U+0085 may not stand in a file. -> remove "
          "it"));
}

TEST(Bytes, ALineSeparator) {
  EXPECT_THAT(Reading("a: b\xe2\x80\xa8"
                      "c: d\n")
                  .problems(),
              ElementsAre("1:5 [\\xe2\\x80\\xa8] yaml-control-character: The invisible character U+2028 may not stand "
                          "in a file. -> remove it",
                          "1:7 [:] yaml-colon-in-value: A value on one line may not hold a colon and a space. -> put "
                          "the whole value in quotes"));
}

TEST(Bytes, TurnedDirection) {
  EXPECT_THAT(Reading("a: b\xe2\x80\xae"
                      "c\n")
                  .problems(),
              ElementsAre("1:5 [\\xe2\\x80\\xae] yaml-control-character: The invisible character U+202E may not stand "
                          "in a file. -> remove it"));
}

TEST(Bytes, AByteOrderMarkInside) {
  EXPECT_THAT(Reading("a: b\xef\xbb\xbf"
                      "c\n")
                  .problems(),
              ElementsAre("1:5 [\\xef\\xbb\\xbf] yaml-control-character: The invisible character U+FEFF may not stand "
                          "in a file. -> remove it"));
}

TEST(Bytes, ALoneReturn) {
  EXPECT_THAT(Reading("a: b\rc: d\n").problems(),
              ElementsAre("1:5 [\\x0d] yaml-lone-return: A carriage return stands without a line feed. -> end every "
                          "line with LF or CR LF"));
}

TEST(Bytes, TheControlThatYamlCppTakesForTheEnd) {
  EXPECT_THAT(
      Reading("a: b\n"
              "\x04"
              "c: d\n")
          .problems(),
      ElementsAre(
          "2:1 [\\x04] yaml-control-character: The invisible character U+0004 may not stand in a file. -> remove it"));
}

TEST(Bytes, ATabInTheIndent) {
  EXPECT_THAT(Reading("house:\n"
                      "\tkind: one-family\n")
                  .problems(),
              ElementsAre("2:1 [\\x09] yaml-tab: A tab indents this line. -> indent with spaces"));
}

TEST(Bytes, ATabAfterSpaces) {
  EXPECT_THAT(Reading("house:\n"
                      "  kind: a\n"
                      "  \tbaths: 2\n")
                  .problems(),
              ElementsAre("3:3 [\\x09] yaml-tab: A tab indents this line. -> indent with spaces"));
}

TEST(Bytes, NoTabElsewhere) {
  EXPECT_THAT(Reading("a:\tb\t# c\n"
                      "\t\n"
                      "\t# d\n"
                      "e: f\tg\n")
                  .problems(),
              IsEmpty());
}

TEST(Bytes, NoTabInsideJson) {
  EXPECT_THAT(Reading("{\n"
                      "\t\"a\": [\n"
                      "\t\t\"b\"\n"
                      "\t]\n"
                      "}\n")
                  .problems(),
              IsEmpty());
}

TEST(Bytes, SeveralProblemsAtOnce) {
  EXPECT_THAT(Reading("name: Caf\xe9\n"
                      "b: &c 1\n"
                      "d: e #5\n")
                  .problems(),
              ElementsAre("1:10 [\\xe9] yaml-bad-utf8: Byte 0xE9 at offset 9 is not UTF-8: a character that is cut "
                          "short. -> save the file as UTF-8",
                          "2:4 [&c] yaml-anchor: \"&c\" is a YAML anchor, which is not used here. -> write the value "
                          "out where it is needed; put text that begins with & in quotes",
                          "3:6 [#5] yaml-comment-cuts: YAML takes \"#5\" for a comment and drops it. -> put the value "
                          "in quotes: \"e #5\"; for a comment leave a space after the #"));
}

}  // namespace
}  // namespace headgate::document
