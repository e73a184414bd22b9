// For the reader alone: what yaml-cpp could not read, in the words of a person who wrote the file.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "document/read_frame.hpp"

namespace headgate::document {

// Where reading broke off.
struct Syntax {
  std::string_view text;
  Offset at = 0;  // where yaml-cpp says it is

  Offset cursor = 0;  // after the last token that was taken
  const std::vector<Frame>& frames;
};

// `message` is one of YAML::ErrorMsg.
void explain_syntax(const Syntax& syntax, const std::string& message, Findings& found);

}  // namespace headgate::document
