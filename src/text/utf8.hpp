// UTF-8, as far as showing a file needs it: where one character ends.
//
//   character("½ in", 0) -> 2
//   character("\xff", 0) -> 0 : no UTF-8; whoever counts takes it as one character of one byte
#pragma once

#include <cstddef>
#include <string_view>

namespace headgate::text {

// Bytes of the character that begins at `at` (1 to 4), 0 when they are not well-formed UTF-8 or `at` is the end.
std::size_t character(std::string_view text, std::size_t at);

// Characters in `text`; a byte that is not UTF-8 counts as one.
std::size_t count_characters(std::string_view text);

// The beginning of `text`, at most so many characters long.
std::string_view first_characters(std::string_view text, std::size_t characters);

}  // namespace headgate::text
