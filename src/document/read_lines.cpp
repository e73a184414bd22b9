#include "document/read_lines.hpp"

#include <algorithm>

namespace headgate::document {

namespace {

bool is_marker(std::string_view text, Offset line, std::string_view marker) {
  return text.substr(line, 3) == marker && is_space(at_or_end(text, line + 3));
}

bool is_bare_marker(std::string_view text, Offset line) {
  if (!is_marker(text, line, "---")) return false;
  const char next = at_or_end(text, skip_blanks(text, line + 3));
  return is_line_end(next) || next == '#';
}

// Inside braces an indent means nothing, so a file that is one pair of braces (JSON) may use tabs.
bool is_all_braces(std::string_view text) {
  const char first = at_or_end(text, skip_gap(text, 0));
  return first == '{' || first == '[';
}

// yaml-cpp scans far ahead of what it reports when braces open and never close, so hopeless nesting is
// found first. Braces in text and comments count here too; the exact depth is counted while reading.
bool check_nesting(std::string_view text, std::size_t depth, Findings& found) {
  constexpr std::size_t hopeless = 8;
  std::size_t open = 0;
  for (Offset at = 0; at < text.size(); ++at) {
    if (text[at] == '[' || text[at] == '{') ++open;
    if ((text[at] == ']' || text[at] == '}') && open > 0) --open;
    if (open <= hopeless * depth) continue;
    found.add("yaml-too-deep", at, at + 1, {std::to_string(depth)});
    return false;
  }
  return true;
}

bool check_length(std::string_view text, Offset line, std::size_t longest, Findings& found) {
  const std::size_t length = line_end(text, line) - line;
  if (length <= longest) return true;
  found.add("yaml-line-too-long", line, line, {std::to_string(length), std::to_string(longest)});
  return false;
}

bool check_tab(std::string_view text, Offset line, Findings& found) {
  const Offset content = skip_blanks(text, line);
  const char first = at_or_end(text, content);
  if (is_line_end(first) || first == '#') return true;
  const std::size_t tab = text.substr(line, content - line).find('\t');
  if (tab == std::string_view::npos) return true;
  const Offset at = line + static_cast<Offset>(tab);
  found.add("yaml-tab", at, at + 1);
  return false;
}

}  // namespace

std::optional<Offset> check_lines(std::string& text, const Caps& caps, Findings& found) {
  if (!check_nesting(text, caps.depth, found)) return std::nullopt;
  const bool tabs_allowed = is_all_braces(text);
  bool indents_sound = true;
  bool begun = false;
  bool empty = true;
  auto end = static_cast<Offset>(text.size());
  for (Offset line = 0; line < text.size(); line = next_line(text, line)) {
    if (!check_length(text, line, caps.line_bytes, found)) return std::nullopt;
    const Offset content = skip_blanks(text, line);
    const char first = at_or_end(text, content);
    if (is_line_end(first) || first == '#') continue;
    if (is_marker(text, line, "...") || (begun && is_marker(text, line, "---"))) {
      found.add("yaml-second-document", line, line + 3, {text.substr(line, 3)});
      end = line;
      break;
    }
    if (first == '%' && content == line) {
      found.add("yaml-directive", line, line_end(text, line));
      text[line] = '#';
      continue;
    }
    begun = true;
    if (is_bare_marker(text, line)) continue;
    if (!tabs_allowed && !check_tab(text, line, found)) indents_sound = false;
    empty = false;
  }
  if (empty) found.add("yaml-empty-file", 0, 0);
  if (empty || !indents_sound) return std::nullopt;
  return end;
}

}  // namespace headgate::document
