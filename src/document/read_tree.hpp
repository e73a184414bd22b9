// For the reader alone: from yaml-cpp's events to the strict tree. No other file includes yaml-cpp
// but read_tree.cpp and read_syntax.cpp.
#pragma once

#include <optional>
#include <string_view>

#include "document/read.hpp"
#include "document/read_text.hpp"

namespace headgate::document {

// Reads the one document of `text`, whose bytes and lines have been checked.
std::optional<Node> read_tree(std::string_view text, const Caps& caps, Findings& found);

}  // namespace headgate::document
