#include "document/read_scalar.hpp"

#include <algorithm>

namespace headgate::document {

namespace {

std::vector<std::string_view> lines_of(std::string_view value) {
  std::vector<std::string_view> lines;
  while (!value.empty()) {
    const std::size_t feed = std::min(value.find('\n'), value.size());
    lines.push_back(value.substr(0, feed));
    value.remove_prefix(std::min(feed + 1, value.size()));
  }
  return lines;
}

// Every line of a block is its raw line without the indent, and all have the same indent.
Offset block_indent(std::string_view text, Offset first_line, const std::vector<std::string_view>& lines) {
  Offset line = first_line;
  for (const std::string_view each : lines) {
    if (line >= text.size()) break;
    const Offset length = line_end(text, line) - line;
    if (!each.empty() && each.size() <= length) return length - static_cast<Offset>(each.size());
    line = next_line(text, line);
  }
  return 0;
}

}  // namespace

ScalarText plain_text(std::string_view text, Offset begin, std::string_view value) {
  const auto size = static_cast<Offset>(value.size());
  if (text.substr(begin, size) == value) return {begin, begin + size, begin + size, false, true, {}};
  Offset at = begin;
  Offset end = begin;
  for (const char c : value) {
    if (is_space(c)) continue;
    while (at < text.size() && is_space(text[at])) ++at;
    if (at >= text.size() || text[at] != c) break;
    end = ++at;
  }
  return {begin, end, end, true, true, {}};
}

ScalarText quoted_text(std::string_view text, Offset quote) {
  const char mark = at_or_end(text, quote);
  Offset at = quote + 1;
  while (at < text.size()) {
    if (mark == '"' && text[at] == '\\') {
      ++at;
    } else if (text[at] == mark) {
      if (mark == '"' || at_or_end(text, at + 1) != mark) break;
      ++at;
    }
    ++at;
  }
  const auto size = static_cast<Offset>(text.size());
  const Offset begin = std::min(quote + 1, size);
  const Offset end = std::clamp(at, begin, size);
  const bool spread = text.substr(begin, end - begin).find('\n') != std::string_view::npos;
  return {begin, end, std::min(end + 1, size), spread, end < size, {}};
}

ScalarText block_text(std::string_view text, Offset header, std::string_view value) {
  ScalarText result;
  result.begin = result.end = result.after = line_end(text, header);
  const std::vector<std::string_view> lines = lines_of(value);
  Offset line = next_line(text, header);
  const Offset indent = block_indent(text, line, lines);
  for (const std::string_view each : lines) {
    if (line >= text.size()) break;
    const Offset end = line_end(text, line);
    result.line_offsets.push_back(std::min(line + indent, end));
    if (!each.empty()) result.end = std::min(result.line_offsets.back() + static_cast<Offset>(each.size()), end);
    result.after = end;
    line = next_line(text, line);
  }
  if (!result.line_offsets.empty()) result.begin = result.line_offsets.front();
  result.end = std::max(result.begin, result.end);
  return result;
}

}  // namespace headgate::document
