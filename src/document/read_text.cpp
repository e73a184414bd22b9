#include "document/read_text.hpp"

#include <algorithm>
#include <utility>

#include "text/utf8.hpp"

namespace headgate::document {

namespace {

constexpr std::size_t longest_quote = 60;

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
bool is_name_character(char c) { return is_letter(c) || (c >= '0' && c <= '9') || c == '-'; }

}  // namespace

Offset line_begin(std::string_view text, Offset at) {
  if (at == 0) return 0;
  const std::size_t before = text.rfind('\n', at - 1);
  return before == std::string_view::npos ? 0 : static_cast<Offset>(before + 1);
}

Offset line_end(std::string_view text, Offset at) {
  const std::size_t feed = std::min(text.find('\n', at), text.size());
  const bool returned = feed > at && feed < text.size() && text[feed - 1] == '\r';
  return static_cast<Offset>(returned ? feed - 1 : feed);
}

Offset next_line(std::string_view text, Offset at) {
  const std::size_t feed = std::min(text.find('\n', at), text.size());
  return static_cast<Offset>(std::min(feed + 1, text.size()));
}

Offset skip_blanks(std::string_view text, Offset at) {
  while (at < text.size() && is_blank(text[at])) ++at;
  return at;
}

Offset skip_gap(std::string_view text, Offset at) {
  while (at < text.size()) {
    if (text[at] == '#') {
      at = line_end(text, at);
    } else if (is_space(text[at])) {
      ++at;
    } else {
      break;
    }
  }
  return at;
}

Offset skip_word(std::string_view text, Offset at) {
  while (at < text.size() && !is_space(text[at]) && !is_flow_indicator(text[at])) ++at;
  return at;
}

bool same_line(std::string_view text, Offset a, Offset b) {
  const auto [first, last] = std::minmax(a, b);
  return text.substr(first, last - first).find('\n') == std::string_view::npos;
}

bool is_plain_comment(std::string_view text, Offset hash) {
  while (hash < text.size() && text[hash] == '#') ++hash;
  return is_space(at_or_end(text, hash));
}

std::size_t glued_colon(std::string_view scalar) {
  if (scalar.empty() || !is_letter(scalar.front())) return std::string_view::npos;
  std::size_t at = 0;
  while (at < scalar.size() && is_name_character(scalar[at])) ++at;
  if (at_or_end(scalar, at) != ':' || is_space(at_or_end(scalar, at + 1))) return std::string_view::npos;
  return scalar.substr(at + 1, 2) == "//" ? std::string_view::npos : at;
}

void refuse_comment(std::string_view text, Offset hash, bool in_braces, std::string_view before, Findings& found) {
  const Offset end = line_end(text, hash);
  const std::string_view comment = text.substr(hash, end - hash);
  std::size_t meant = std::min(in_braces ? comment.find_first_of(",}]") : comment.size(), comment.size());
  while (meant > 0 && is_blank(comment[meant - 1])) --meant;
  found.add("yaml-comment-cuts", hash, end,
            {shortened(comment), in_quotes(std::string(before) + std::string(comment.substr(0, meant)))});
}

std::string shortened(std::string_view value) {
  const std::string_view head = text::first_characters(value, longest_quote);
  return head.size() == value.size() ? std::string(value) : std::string(head) + "…";
}

std::string in_quotes(std::string_view value) {
  const std::string shown = shortened(value);
  if (shown.find_first_of("\"\\") == std::string::npos) return '"' + shown + '"';
  std::string single = "'";
  for (const char c : shown) single += c == '\'' ? std::string("''") : std::string(1, c);
  return single + "'";
}

void Findings::add(std::string_view id, Offset begin, Offset end, const std::vector<std::string>& arguments) {
  add(id, range(begin, end), arguments, {}, {});
}

void Findings::add(std::string_view id, const text::Range& range, const std::vector<std::string>& arguments,
                   const text::Range& other, std::string other_says) {
  if (list.size() < cap) {
    list.push_back(text::say(id, range, arguments, other, std::move(other_says)));
  } else {
    ++unlisted;
  }
}

}  // namespace headgate::document
