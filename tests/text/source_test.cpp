#include "text/source.hpp"

#include <gtest/gtest.h>

#include "text/utf8.hpp"

namespace headgate::text {
namespace {

Position at(Sources& sources, FileId file, std::uint32_t begin) { return sources.position({file, begin, begin}); }

void expect_position(const Position& position, std::uint32_t line, std::uint32_t column) {
  EXPECT_EQ(position.line, line);
  EXPECT_EQ(position.column, column);
}

TEST(Sources, HoldTheManualsExample) {
  Sources sources;
  const FileId file = sources.add("site.yaml", "format: site/1\nname: Quay House\n");
  EXPECT_EQ(sources.place({file, 15, 19}), "site.yaml:2:1");
  EXPECT_EQ(sources.text(Range{file, 15, 19}), "name");
  EXPECT_EQ(sources.place(Range{}), "");
}

TEST(Sources, CountLinesAtLfAndCrLfOnly) {
  Sources sources;
  const FileId file = sources.add("a", "one\r\ntwo\rstill two\n\nfour");
  expect_position(at(sources, file, 0), 1, 1);
  expect_position(at(sources, file, 5), 2, 1);
  expect_position(at(sources, file, 9), 2, 5);
  expect_position(at(sources, file, 19), 3, 1);
  expect_position(at(sources, file, 20), 4, 1);
  EXPECT_EQ(sources.line(file, 1), "one");
  EXPECT_EQ(sources.line(file, 2), "two\rstill two");
  EXPECT_EQ(sources.line(file, 3), "");
  EXPECT_EQ(sources.line(file, 4), "four");
}

TEST(Sources, CountCharactersNotBytes) {
  Sources sources;
  const FileId file = sources.add("a", "5 ½ ″ é x");
  expect_position(at(sources, file, 2), 1, 3);
  expect_position(at(sources, file, 5), 1, 5);   // after the half and a blank
  expect_position(at(sources, file, 12), 1, 9);  // the x
}

TEST(Sources, CountEachBadByteOnce) {
  Sources sources;
  const FileId file = sources.add("a", "\xff\xc3\xe2\x82x");
  expect_position(at(sources, file, 4), 1, 5);
}

TEST(Sources, DoNotCountAByteOrderMark) {
  Sources sources;
  const FileId file = sources.add("a", "\xef\xbb\xbfname: x");
  expect_position(at(sources, file, 3), 1, 1);
  expect_position(at(sources, file, 9), 1, 7);
  expect_position(at(sources, file, 0), 1, 1);
  EXPECT_EQ(sources.line(file, 1), "name: x");
  EXPECT_EQ(sources.line_begin(file, 1), 3U);
}

TEST(Sources, AnswerForPlacesPastTheEnd) {
  Sources sources;
  const FileId file = sources.add("a", "ab\n");
  expect_position(at(sources, file, 3), 2, 1);
  expect_position(at(sources, file, 900), 2, 1);
  EXPECT_EQ(sources.text(Range{file, 1, 900}), "b\n");
  EXPECT_EQ(sources.text(Range{file, 900, 950}), "");
  EXPECT_EQ(sources.text(Range{file, 2, 1}), "");
  EXPECT_EQ(sources.line(file, 2), "");
  EXPECT_EQ(sources.line(file, 3), "");
  EXPECT_EQ(sources.line(file, 0), "");
}

TEST(Sources, AnswerForFilesThereAreNone) {
  Sources sources;
  EXPECT_EQ(sources.count(), 0U);
  EXPECT_EQ(sources.name(0), "");
  EXPECT_EQ(sources.text(FileId{7}), "");
  EXPECT_EQ(sources.place({7, 0, 1}), "");
  expect_position(sources.position(Range{}), 0, 0);
  const FileId empty = sources.add("empty", "");
  expect_position(sources.position({empty, 0, 0}), 1, 1);
}

TEST(Sources, KeepTheirTextInPlaceAsFilesAreAdded) {
  Sources sources;
  const FileId first = sources.add("first", "short");
  const std::string_view held = sources.text(first);
  for (int i = 0; i < 100; ++i) sources.add("more", "x");
  EXPECT_EQ(held.data(), sources.text(first).data());
  EXPECT_EQ(held, "short");
}

TEST(Range, PartIsCutToItsWhole) {
  const Range outer{3, 10, 20};
  EXPECT_EQ(part(outer, 2, 3), (Range{3, 12, 15}));
  EXPECT_EQ(part(outer, 8, 99), (Range{3, 18, 20}));
  EXPECT_EQ(part(outer, 99, 1), (Range{3, 20, 20}));
  EXPECT_EQ(part(outer, 0, static_cast<std::size_t>(-1)), outer);
  EXPECT_EQ(part(Range{3, 20, 10}, 1, 1), (Range{3, 20, 20}));
}

TEST(Range, JoinSpansBothAndNeverTwoFiles) {
  EXPECT_EQ(join({1, 4, 6}, {1, 9, 12}), (Range{1, 4, 12}));
  EXPECT_EQ(join({1, 9, 12}, {1, 4, 6}), (Range{1, 4, 12}));
  EXPECT_EQ(join({1, 4, 6}, {2, 9, 12}), (Range{1, 4, 6}));
  EXPECT_FALSE(join(Range{}, {2, 9, 12}).known());
}

TEST(Utf8, RefusesWhatIsNoCharacter) {
  EXPECT_EQ(character("½", 0), 2U);
  EXPECT_EQ(character("€", 0), 3U);
  EXPECT_EQ(character("\xf0\x9f\x9a\xb0", 0), 4U);
  EXPECT_EQ(character("\xc0\x80", 0), 0U);          // overlong NUL
  EXPECT_EQ(character("\xe0\x80\x80", 0), 0U);      // overlong
  EXPECT_EQ(character("\xed\xa0\x80", 0), 0U);      // surrogate
  EXPECT_EQ(character("\xf4\x90\x80\x80", 0), 0U);  // past U+10FFFF
  EXPECT_EQ(character("\xf0\x9f\x9a", 0), 0U);      // cut short
  EXPECT_EQ(character("\xf0\x9f\x9ax", 0), 0U);
  EXPECT_EQ(character("\x80", 0), 0U);
  EXPECT_EQ(character("a", 1), 0U);
}

TEST(Utf8, CutsBetweenCharacters) {
  EXPECT_EQ(first_characters("½½½", 2), "½½");
  EXPECT_EQ(first_characters("ab", 5), "ab");
  EXPECT_EQ(first_characters("", 5), "");
}

}  // namespace
}  // namespace headgate::text
