// For the reader alone: what single lines tell before the structure is read.
//
//   "\tsize: 1 in"    `yaml-tab`: an indent must be spaces
//   "%YAML 1.2"       `yaml-directive`
//   "a: 1\n---\n"     `yaml-second-document`; one `---` before everything else is fine
#pragma once

#include <optional>
#include <string>

#include "document/read.hpp"
#include "document/read_text.hpp"

namespace headgate::document {

// Where the first document ends; nullopt when a line is too long, the nesting hopeless, the indents
// cannot be trusted or there is nothing to read. Directives are overwritten by comments.
std::optional<Offset> check_lines(std::string& text, const Caps& caps, Findings& found);

}  // namespace headgate::document
