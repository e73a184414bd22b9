#include <gtest/gtest.h>

#include "text/diagnostic.hpp"

namespace headgate::text {
namespace {

// One diagnostic over bytes [begin, end) of a file of its own, drawn.
std::string drawn(const std::string& text, std::uint32_t begin, std::uint32_t end) {
  Sources sources;
  Diagnostic diagnostic;
  diagnostic.id = "some-id";
  diagnostic.sentence = "Wrong.";
  diagnostic.range = {sources.add("f", text), begin, end};
  return draw(diagnostic, sources);
}

TEST(Draw, HoldsTheManualsExample) {
  Sources sources;
  const FileId file =
      sources.add("site.yaml", "format: site/1\nname: Quay House\nstage: entry\npressure: {highest-static: 86 psy}\n");
  EXPECT_EQ(draw(say("unknown-unit", {file, 75, 78}, {"psy", "psi"}), sources),
            "site.yaml:4:31: error: \"psy\" is not a unit. [unknown-unit]\n"
            "  4 | pressure: {highest-static: 86 psy}\n"
            "    |                               ^^^\n"
            "  hint: did you mean psi?\n");
}

TEST(Draw, ShowsBothPlaces) {
  Sources sources;
  const FileId file = sources.add("a.yaml", "size: 1\nsize: 2\n");
  Diagnostic diagnostic =
      say("yaml-duplicate-key", {file, 8, 12}, {"size"}, {file, 0, 4}, "\"size\" is given here first");
  diagnostic.severity = Severity::warning;
  EXPECT_EQ(draw(diagnostic, sources),
            "a.yaml:2:1: warning: \"size\" is given twice. [yaml-duplicate-key]\n"
            "  2 | size: 2\n"
            "    | ^^^^\n"
            "  a.yaml:1:1: \"size\" is given here first\n"
            "  1 | size: 1\n"
            "    | ^^^^\n"
            "  hint: keep one of the two\n");
}

TEST(Draw, DoesWithoutAPlace) {
  Diagnostic diagnostic;
  diagnostic.id = "some-id";
  diagnostic.sentence = "Wrong.";
  EXPECT_EQ(draw(diagnostic, Sources{}), "error: Wrong. [some-id]\n");
}

TEST(Draw, PutsOneCaretUnderNothing) {
  EXPECT_EQ(drawn("name:\n", 5, 5), "f:1:6: error: Wrong. [some-id]\n  1 | name:\n    |      ^\n");
  EXPECT_EQ(drawn("", 0, 0), "f:1:1: error: Wrong. [some-id]\n  1 | \n    | ^\n");
}

TEST(Draw, UnderlinesAtMostTheLine) {
  EXPECT_EQ(drawn("ab\ncd\nef\n", 4, 8), "f:2:2: error: Wrong. [some-id]\n  2 | cd\n    |  ^\n");
  EXPECT_EQ(drawn("ab", 1, 4000), "f:1:2: error: Wrong. [some-id]\n  1 | ab\n    |  ^\n");
  EXPECT_EQ(drawn("ab\r\n", 0, 4), "f:1:1: error: Wrong. [some-id]\n  1 | ab\n    | ^^\n");
}

TEST(Draw, TakesARangeThatEndsBeforeItBegins) {
  EXPECT_EQ(drawn("abc", 2, 1), "f:1:3: error: Wrong. [some-id]\n  1 | abc\n    |   ^\n");
}

TEST(Draw, ExpandsTabsToBlanks) {
  EXPECT_EQ(drawn("\tab\tc", 4, 5), "f:1:5: error: Wrong. [some-id]\n  1 |     ab  c\n    |         ^\n");
  EXPECT_EQ(drawn("a\tb", 1, 2), "f:1:2: error: Wrong. [some-id]\n  1 | a   b\n    |  ^^^\n");
}

TEST(Draw, CountsACharacterAsOneColumn) {
  EXPECT_EQ(drawn("½ ″ x", 7, 8), "f:1:5: error: Wrong. [some-id]\n  1 | ½ ″ x\n    |     ^\n");
}

TEST(Draw, MarksTheWholeCharacterARangeBeginsIn) {
  EXPECT_EQ(drawn("a½b", 2, 3), "f:1:3: error: Wrong. [some-id]\n  1 | a½b\n    |  ^\n");
}

TEST(Draw, ShowsControlCharactersAndBadBytes) {
  EXPECT_EQ(drawn("a\x1b[2Jb", 1, 2), "f:1:2: error: Wrong. [some-id]\n  1 | a\\x1b[2Jb\n    |  ^^^^\n");
  EXPECT_EQ(drawn("\xff x", 2, 3), "f:1:3: error: Wrong. [some-id]\n  1 | \\xff x\n    |      ^\n");
}

TEST(Draw, LeavesAByteOrderMarkOut) {
  EXPECT_EQ(drawn("\xef\xbb\xbfname", 3, 7), "f:1:1: error: Wrong. [some-id]\n  1 | name\n    | ^^^^\n");
}

TEST(Draw, DoesNotLetWordsActOnTheTerminal) {
  Sources sources;
  Diagnostic diagnostic;
  diagnostic.id = "some-id";
  diagnostic.sentence = "Wrong \x1b[31m.";
  diagnostic.hint = "two\nlines";
  diagnostic.range = {sources.add("f\x07", "x"), 0, 1};
  EXPECT_EQ(draw(diagnostic, sources),
            "f\\x07:1:1: error: Wrong \\x1b[31m. [some-id]\n  1 | x\n    | ^\n  hint: two\\x0alines\n");
}

std::string numbers(int count) {
  std::string line;
  for (int i = 0; i < count; ++i) line += static_cast<char>('0' + i % 10);
  return line;
}

TEST(Draw, CutsALongLineRoundTheRange) {
  const std::string line = numbers(400);
  EXPECT_EQ(drawn(line, 200, 203),
            "f:1:201: error: Wrong. [some-id]\n"
            "  1 | …" +
                line.substr(167, 100) + "…\n" + "    |  " + std::string(33, ' ') + "^^^\n");
  EXPECT_EQ(drawn(line, 0, 2),
            "f:1:1: error: Wrong. [some-id]\n"
            "  1 | " +
                line.substr(0, 100) + "…\n" + "    | ^^\n");
  EXPECT_EQ(drawn(line, 399, 400),
            "f:1:400: error: Wrong. [some-id]\n"
            "  1 | …" +
                line.substr(300, 100) + "\n" + "    |  " + std::string(99, ' ') + "^\n");
}

TEST(Draw, CutsALongRangeToo) {
  const std::string line = numbers(400);
  EXPECT_EQ(drawn(line, 100, 390),
            "f:1:101: error: Wrong. [some-id]\n"
            "  1 | …" +
                line.substr(67, 100) + "…\n" + "    |  " + std::string(33, ' ') + std::string(67, '^') + "\n");
}

TEST(Draw, WidensForTheLineNumber) {
  EXPECT_EQ(drawn(std::string(11, '\n') + "x", 11, 12), "f:12:1: error: Wrong. [some-id]\n  12 | x\n     | ^\n");
}

TEST(Printable, KeepsTextAndShowsTheRest) {
  EXPECT_EQ(printable("3/4″ pipe, ½ é"), "3/4″ pipe, ½ é");
  EXPECT_EQ(printable("a\tb\r\n\x7f"), "a\\x09b\\x0d\\x0a\\x7f");
  EXPECT_EQ(printable(std::string_view("\0", 1)), "\\x00");
  EXPECT_EQ(printable("\xc2\x9b"), "\\xc2\\x9b");  // a control by its own byte
  EXPECT_EQ(printable("\xe2\x80\xae"
                      "abc"),
            "\\xe2\\x80\\xaeabc");  // turns the reading direction
  EXPECT_EQ(printable("\xe2\x81\xa6"), "\\xe2\\x81\\xa6");
  EXPECT_EQ(printable("\xe2\x80\x8b"), "\\xe2\\x80\\x8b");  // no width
  EXPECT_EQ(printable("\xc3("), "\\xc3(");
}

}  // namespace
}  // namespace headgate::text
