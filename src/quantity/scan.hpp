// For the readers of this layer alone: looking at single places of a text.
#pragma once

#include <cstddef>
#include <string_view>

namespace headgate::quantity {

inline bool digit(char c) { return c >= '0' && c <= '9'; }
inline bool digit_at(std::string_view text, std::size_t at) { return at < text.size() && digit(text[at]); }
inline bool begins(std::string_view text, std::size_t at, std::string_view with) {
  return text.substr(at, with.size()) == with;
}
inline bool begins(std::string_view text, std::string_view with) { return begins(text, 0, with); }

}  // namespace headgate::quantity
