#include "document/read_bytes.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "text/utf8.hpp"

namespace headgate::document {

namespace {

bool starts_with(std::string_view text, std::string_view head) { return text.substr(0, head.size()) == head; }

// With a byte order mark, or a first ASCII character whose other byte is NUL.
bool is_utf16(std::string_view text) {
  if (starts_with(text, "\xFF\xFE") || starts_with(text, "\xFE\xFF")) return true;
  return text.size() >= 2 && (text[0] == '\0') != (text[1] == '\0');
}

std::string why_not_utf8(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(at_or_end(text, at + i)); };
  if (byte(0) == 0xED && byte(1) >= 0xA0 && byte(1) <= 0xBF) return "half of a surrogate pair";
  const bool overlong = byte(0) == 0xC0 || byte(0) == 0xC1 || (byte(0) == 0xE0 && byte(1) >= 0x80 && byte(1) < 0xA0) ||
                        (byte(0) == 0xF0 && byte(1) >= 0x80 && byte(1) < 0x90);
  if (overlong) return "an overlong form";
  if (byte(0) >= 0x80 && byte(0) < 0xC0) return "a continuation byte without a beginning";
  if (byte(0) >= 0xF5 || (byte(0) == 0xF4 && byte(1) >= 0x90 && byte(1) <= 0xBF)) return "past the last character";
  return "a character that is cut short";
}

// A wrong beginning and the continuation bytes that follow it are one mistake.
std::size_t bad_length(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(at_or_end(text, at + i)); };
  std::size_t length = 1;
  while (byte(0) >= 0xC0 && length < 4 && byte(length) >= 0x80 && byte(length) < 0xC0) ++length;
  return length;
}

std::uint32_t code_point(std::string_view bytes) {
  std::uint32_t point = static_cast<unsigned char>(bytes[0]);
  if (bytes.size() > 1) point &= 0x7FU >> bytes.size();
  for (const char c : bytes.substr(1)) point = (point << 6U) | (static_cast<unsigned char>(c) & 0x3FU);
  return point;
}

// Control characters, line ends that editors do not count alike, and marks that turn the writing
// direction, so that a line reads otherwise than it is.
bool is_refused(std::uint32_t point) {
  if (point == '\t' || point == '\n' || point == '\r') return false;
  const bool control = point < 0x20 || (point >= 0x7F && point < 0xA0);
  const bool line_end = point == 0x2028 || point == 0x2029;
  const bool direction = (point >= 0x202A && point <= 0x202E) || (point >= 0x2066 && point <= 0x2069);
  return control || line_end || direction || point == 0xFEFF;
}

void mask(std::string& text, std::size_t at, std::size_t length) { text.replace(at, length, length, '_'); }

// Returns the bytes passed over.
std::size_t check_character(std::string& text, std::size_t at, Findings& found) {
  const std::size_t length = text::character(text, at);
  const auto begin = static_cast<Offset>(at);
  if (length == 0) {
    const auto byte = static_cast<unsigned char>(text[at]);
    const std::size_t bad = bad_length(text, at);
    found.add("yaml-bad-utf8", begin, begin + static_cast<Offset>(bad),
              {fmt::format("0x{:02X}", byte), std::to_string(at), why_not_utf8(text, at)});
    mask(text, at, bad);
    return bad;
  }
  const std::uint32_t point = code_point(std::string_view(text).substr(at, length));
  if (is_refused(point)) {
    found.add("yaml-control-character", begin, begin + static_cast<Offset>(length), {fmt::format("U+{:04X}", point)});
    mask(text, at, length);
  } else if (point == '\r' && (at + 1 == text.size() || text[at + 1] != '\n')) {
    found.add("yaml-lone-return", begin, begin + 1);
    text[at] = '\n';
  }
  return length;
}

}  // namespace

bool holds_invisible(std::string_view decoded) {
  for (std::size_t at = 0; at < decoded.size();) {
    const std::size_t length = text::character(decoded, at);
    const std::uint32_t point = code_point(decoded.substr(at, std::max<std::size_t>(1, length)));
    if (length == 0 || point == '\r' || is_refused(point)) return true;
    at += length;
  }
  return false;
}

bool check_bytes(std::string& text, Findings& found) {
  if (is_utf16(text)) {
    found.add("yaml-utf16", 0, 0);
    return false;
  }
  if (starts_with(text, "\xEF\xBB\xBF")) text.replace(0, 3, "  \n");
  for (std::size_t at = 0; at < text.size();) at += check_character(text, at, found);
  return found.unlisted == 0;
}

}  // namespace headgate::document
