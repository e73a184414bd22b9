// For the reader alone: what the bytes of a file must be before anything is read out of them.
//
//   check_bytes("name: Quay House\n", found)  // true
//   check_bytes("name: Caf\xE9\n", found)     // true, and `yaml-bad-utf8` at the byte
//   check_bytes("\xFF\xFEn\0…", found)        // false, and `yaml-utf16`
#pragma once

#include <string>

#include "document/read_text.hpp"

namespace headgate::document {

// False when the file is no UTF-8 text at all, or so little that listing more of it helps nobody. A byte order mark
// becomes an empty line and bytes that are refused become `_` (a lone return, a line feed), so that the rest can be
// looked at too and nothing moves.
bool check_bytes(std::string& text, Findings& found);

// Whether escapes in quoted text have brought in what may not stand in a file.
bool holds_invisible(std::string_view decoded);

}  // namespace headgate::document
