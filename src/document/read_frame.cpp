#include "document/read_frame.hpp"

#include <algorithm>
#include <numeric>
#include <string>
#include <utility>
#include <vector>

namespace headgate::document {

namespace {

bool is_plain(const Node& node) { return node.is_scalar() && node.style == Node::Style::plain; }

std::string_view between(std::string_view text, Offset begin, Offset end) { return text.substr(begin, end - begin); }

// yaml-cpp takes a value at or left of its key's column, which no reader of the file would.
void check_indent(const Frame& frame, const Node& node, Offset begin, std::string_view text, Findings& found) {
  const bool dashes = node.is_list() && at_or_end(text, begin) == '-';
  if (frame.flow || dashes || column(text, begin) > frame.column) return;
  found.add("yaml-indent", begin, line_end(text, begin));
}

void flush_split(Frame& frame, std::string_view text, Findings& found) {
  const CommaSplit split = std::exchange(frame.split, {});
  if (split.end == 0) return;
  const std::string_view whole = between(text, split.value_begin, split.end);
  found.add("yaml-comma-splits", split.value_begin, split.end,
            {frame.node.entries.back().key, shortened(between(text, split.left_over, split.end)), in_quotes(whole)});
}

bool is_split(const Frame& frame) { return frame.split.after_plain && !frame.node.entries.empty(); }

void miss_colon(Frame& frame, std::string_view text, Findings& found) {
  const text::Range key = frame.pending.key_range;
  const Offset hash = skip_blanks(text, frame.key_after);
  if (at_or_end(text, hash) == '#' && !is_plain_comment(text, hash)) return;  // said with the key
  if (frame.flow && is_split(frame)) {
    if (frame.split.end == 0) frame.split.left_over = key.begin;
    frame.split.end = key.end;
  } else {
    found.add(frame.flow ? "yaml-empty-value" : "yaml-no-colon", key.begin, key.end, {shortened(frame.pending.key)});
  }
}

// Between two tokens stand only blanks, comments and indicators.
bool refuse_question_mark(const Token& key, std::string_view text, Findings& found) {
  for (Offset at = skip_gap(text, key.gap); at < key.begin; at = skip_gap(text, at + 1)) {
    if (text[at] != '?') continue;
    found.add("yaml-complex-key", at, at + 1);
    return true;
  }
  return false;
}

std::vector<std::size_t> order_by_key(const std::vector<Entry>& entries) {
  std::vector<std::size_t> order(entries.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return entries[a].key < entries[b].key; });
  return order;
}

void drop_repeated_keys(Node& map, Findings& found) {
  const std::vector<std::size_t> order = order_by_key(map.entries);
  std::vector<bool> repeated(map.entries.size(), false);
  for (std::size_t i = 1, first = 0; i < order.size(); ++i) {
    const Entry& original = map.entries[order[first]];
    const Entry& entry = map.entries[order[i]];
    if (entry.key != original.key) {
      first = i;
      continue;
    }
    repeated[order[i]] = true;
    found.add("yaml-duplicate-key", entry.key_range, {shortened(entry.key)}, original.key_range, "first given here");
  }
  std::vector<Entry> kept;
  for (std::size_t i = 0; i < map.entries.size(); ++i) {
    if (!repeated[i]) kept.push_back(std::move(map.entries[i]));
  }
  map.entries = std::move(kept);
}

}  // namespace

bool refuse_glued_colon(const Node& scalar, std::string_view text, Findings& found) {
  if (!is_plain(scalar)) return false;
  const std::size_t colon = glued_colon(scalar.scalar);
  if (colon == std::string_view::npos) return false;
  const Offset at = std::min(scalar.range.begin + static_cast<Offset>(colon), scalar.range.end);
  const std::string name = scalar.scalar.substr(0, colon);
  const Offset end = scalar.in_braces ? scalar.range.end : line_end(text, at);
  const std::string apart = name + ": " + std::string(between(text, at + 1, std::max(at + 1, end)));
  found.add("yaml-colon-needs-space", at, std::min(at + 1, scalar.range.end), {shortened(name), shortened(apart)});
  return true;
}

void take_key(Frame& frame, Node key, const Token& token, std::string_view text, Findings& found) {
  const bool questioned = refuse_question_mark(token, text, found);
  if (!frame.flow && !questioned && column(text, token.begin) != frame.column) {
    found.add("yaml-indent", token.begin, line_end(text, token.begin));
  }
  frame.waiting = true;
  frame.dropped = refuse_glued_colon(key, text, found);
  if (is_plain(key) && key.scalar == "<<") {
    found.add("yaml-merge-key", key.range.begin, key.range.end);
    frame.dropped = true;
  }
  frame.key_after = token.after;
  frame.pending.key_range = key.range;
  frame.pending.key = std::move(key.scalar);
}

// `number: #12` and the value on a later line: the comment took what was meant as the value.
void refuse_comment_before(const Frame& frame, const Node& value, Offset begin, std::string_view text,
                           Findings& found) {
  if (!value.is_scalar() || same_line(text, frame.key_after, begin)) return;
  const Offset colon = skip_blanks(text, frame.key_after);
  const Offset hash = skip_blanks(text, colon + 1);
  if (at_or_end(text, colon) != ':' || at_or_end(text, hash) != '#' || is_plain_comment(text, hash)) return;
  refuse_comment(text, hash, frame.flow, "", found);
}

void take_value(Frame& frame, Node value, const Token& token, std::string_view text, Findings& found) {
  frame.waiting = false;
  refuse_comment_before(frame, value, token.begin, text, found);
  check_indent(frame, value, token.begin, text, found);
  if (!same_line(text, frame.key_after, token.begin)) refuse_glued_colon(value, text, found);
  flush_split(frame, text, found);
  if (frame.dropped) return;
  frame.split.after_plain = is_plain(value);
  frame.split.value_begin = value.range.begin;
  frame.pending.value = std::move(value);
  frame.node.entries.push_back(std::move(frame.pending));
  frame.pending = {};
}

void take_item(Frame& frame, Node item, const Token& token, std::string_view text, Findings& found) {
  check_indent(frame, item, token.begin, text, found);
  refuse_glued_colon(item, text, found);
  frame.node.items.push_back(std::move(item));
}

Offset miss_value(Frame& frame, std::string_view text, Findings& found) {
  frame.waiting = false;
  const Offset colon = frame.flow ? skip_gap(text, frame.key_after) : skip_blanks(text, frame.key_after);
  if (at_or_end(text, colon) != ':') {
    if (!frame.dropped) miss_colon(frame, text, found);
    return frame.key_after;
  }
  if (frame.dropped) return colon + 1;
  if (!frame.flow && !is_space(at_or_end(text, colon + 1))) {
    const std::string rest(between(text, colon + 1, line_end(text, colon)));
    found.add("yaml-colon-needs-space", colon, colon + 1,
              {shortened(frame.pending.key), shortened(in_quotes(frame.pending.key) + ": " + rest)});
    return colon + 1;
  }
  const Offset hash = skip_blanks(text, colon + 1);
  if (at_or_end(text, hash) == '#' && !is_plain_comment(text, hash)) {
    refuse_comment(text, hash, frame.flow, "", found);
  } else {
    const text::Range key = frame.pending.key_range;
    found.add("yaml-empty-value", key.begin, key.end, {shortened(frame.pending.key)});
  }
  return colon + 1;
}

Offset miss_item(Frame& frame, Offset at, Offset seen_to, std::string_view text, Findings& found) {
  const auto size = static_cast<Offset>(text.size());
  if (!frame.flow) at = std::min(skip_gap(text, seen_to), size);
  const Offset end = std::min(at + 1, size);
  const Offset hash = skip_blanks(text, end);
  if (!frame.flow && at_or_end(text, hash) == '#' && !is_plain_comment(text, hash)) {
    refuse_comment(text, hash, frame.flow, "", found);
  } else {
    found.add("yaml-empty-item", at, end);
  }
  return frame.flow ? at : end;
}

void finish(Frame& frame, std::string_view text, Findings& found) {
  flush_split(frame, text, found);
  drop_repeated_keys(frame.node, found);
}

}  // namespace headgate::document
