// For the reader alone: where a scalar's text stands. yaml-cpp gives the decoded text and the place
// of its first byte (the quote, or the `|`); the rest is recovered from the raw text.
//
//   plain_text("size: 3/4 in  # note", 6, "3/4 in")   // [6, 12), after 12
//   quoted_text("how: \"07:10\"", 5)                  // [6, 11), after 12
//   plain_text("why: a\n  b", 5, "a b")               // [5, 10), spread: two lines became one
#pragma once

#include <string_view>
#include <vector>

#include "document/read_text.hpp"

namespace headgate::document {

struct ScalarText {
  Offset begin = 0;
  Offset end = 0;
  Offset after = 0;     // first byte after the scalar, closing quote included
  bool spread = false;  // over several lines that YAML joins into one
  bool closed = true;   // false: the text ends before the closing quote, which yaml-cpp may let pass
  std::vector<Offset> line_offsets;
};

ScalarText plain_text(std::string_view text, Offset begin, std::string_view value);
ScalarText quoted_text(std::string_view text, Offset quote);
ScalarText block_text(std::string_view text, Offset header, std::string_view value);

}  // namespace headgate::document
