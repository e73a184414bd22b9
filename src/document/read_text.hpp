// For the reader alone: looking at the raw text around yaml-cpp's tokens, and collecting what is wrong.
//
//   line_begin("a: b\nc: d", 7)      // 5
//   skip_gap("a: b  # note\nc", 4)   // 13, the `c`: blanks, line ends and comments are passed over
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "text/diagnostic.hpp"

namespace headgate::document {

using Offset = std::uint32_t;

inline bool is_blank(char c) { return c == ' ' || c == '\t'; }
inline bool is_line_end(char c) { return c == '\n' || c == '\r'; }
inline bool is_flow_indicator(char c) { return c == ',' || c == '[' || c == ']' || c == '{' || c == '}'; }
inline bool is_space(char c) { return is_blank(c) || is_line_end(c); }

// The byte at `at`, '\n' past the end: what ends a line ends every search.
inline char at_or_end(std::string_view text, std::size_t at) { return at < text.size() ? text[at] : '\n'; }

Offset line_begin(std::string_view text, Offset at);
Offset line_end(std::string_view text, Offset at);   // the \n or \r\n, or the end of the text
Offset next_line(std::string_view text, Offset at);  // the byte behind the line's \n, or the end of the text
Offset skip_blanks(std::string_view text, Offset at);
Offset skip_gap(std::string_view text, Offset at);
Offset skip_word(std::string_view text, Offset at);  // up to a blank, a line end, a comma or a brace
bool same_line(std::string_view text, Offset a, Offset b);
inline Offset column(std::string_view text, Offset at) { return at - line_begin(text, at); }

// A comment that is plainly meant as one: hashes, then a blank or the line's end. `#12` is not.
bool is_plain_comment(std::string_view text, Offset hash);

// The colon of "name:rest" where a space was forgotten; npos for "07:10", "name: rest", "http://x".
std::size_t glued_colon(std::string_view scalar);

// How a comment that was not meant as one is refused: `before` is what YAML leaves of the value, for the
// hint; inside braces the value would have ended at the next comma or brace.
struct Findings;
void refuse_comment(std::string_view text, Offset hash, bool in_braces, std::string_view before, Findings& found);

// The text as it would be written in quotes, shortened for a hint.
std::string in_quotes(std::string_view value);
std::string shortened(std::string_view value);

// The problems of one file, up to a cap; the rest are counted.
struct Findings {
  text::FileId file = text::no_file;
  std::size_t cap = 0;
  text::Diagnostics list;
  std::size_t unlisted = 0;

  text::Range range(Offset begin, Offset end) const { return {file, begin, end}; }
  void add(std::string_view id, Offset begin, Offset end, const std::vector<std::string>& arguments = {});
  void add(std::string_view id, const text::Range& range, const std::vector<std::string>& arguments,
           const text::Range& other, std::string other_says);
};

}  // namespace headgate::document
