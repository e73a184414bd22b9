#include "text/utf8.hpp"

#include <algorithm>

namespace headgate::text {

namespace {

// The range of the second byte is what keeps out overlong forms, surrogates and values past U+10FFFF.
struct Lead {
  std::size_t length;
  unsigned char second_least;
  unsigned char second_most;
};

Lead lead(unsigned char byte) {
  if (byte < 0x80) return {1, 0, 0};
  if (byte >= 0xc2 && byte <= 0xdf) return {2, 0x80, 0xbf};
  if (byte == 0xe0) return {3, 0xa0, 0xbf};
  if (byte == 0xed) return {3, 0x80, 0x9f};
  if (byte >= 0xe1 && byte <= 0xef) return {3, 0x80, 0xbf};
  if (byte == 0xf0) return {4, 0x90, 0xbf};
  if (byte >= 0xf1 && byte <= 0xf3) return {4, 0x80, 0xbf};
  if (byte == 0xf4) return {4, 0x80, 0x8f};
  return {0, 0, 0};
}

}  // namespace

std::size_t character(std::string_view text, std::size_t at) {
  if (at >= text.size()) return 0;
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[at + i]); };
  const Lead first = lead(byte(0));
  if (first.length <= 1) return first.length;
  if (at + first.length > text.size()) return 0;
  if (byte(1) < first.second_least || byte(1) > first.second_most) return 0;
  for (std::size_t i = 2; i < first.length; ++i) {
    if (byte(i) < 0x80 || byte(i) > 0xbf) return 0;
  }
  return first.length;
}

std::size_t count_characters(std::string_view text) {
  std::size_t count = 0;
  for (std::size_t at = 0; at < text.size(); ++count) at += std::max<std::size_t>(1, character(text, at));
  return count;
}

std::string_view first_characters(std::string_view text, std::size_t characters) {
  std::size_t at = 0;
  for (std::size_t i = 0; i < characters && at < text.size(); ++i) {
    at += std::max<std::size_t>(1, character(text, at));
  }
  return text.substr(0, at);
}

}  // namespace headgate::text
