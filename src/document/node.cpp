#include "document/node.hpp"

#include <algorithm>

namespace headgate::document {

namespace {

bool is_lower(char c) { return c >= 'a' && c <= 'z'; }
bool is_digit(char c) { return c >= '0' && c <= '9'; }

// The file offset of byte `offset` of a block's scalar.
std::uint32_t block_offset(const Node& node, std::size_t offset) {
  offset = std::min(offset, node.scalar.size());
  const auto begin = node.scalar.begin();
  const auto here = begin + static_cast<std::ptrdiff_t>(offset);
  const auto line = static_cast<std::size_t>(std::count(begin, here, '\n'));
  if (line >= node.line_offsets.size()) return node.range.end;
  const std::size_t before = offset == 0 ? std::string::npos : node.scalar.rfind('\n', offset - 1);
  const std::size_t line_start = before == std::string::npos ? 0 : before + 1;
  return node.line_offsets[line] + static_cast<std::uint32_t>(offset - line_start);
}

}  // namespace

text::Range Node::range_of(std::size_t offset, std::size_t length) const {
  if (style != Style::block) return text::part(range, offset, length);
  const auto inside = [this](std::uint32_t at) { return std::clamp(at, range.begin, range.end); };
  const std::uint32_t begin = inside(block_offset(*this, offset));
  if (length == 0 || offset >= scalar.size()) return {range.file, begin, begin};
  // The last byte and one: the end itself may already lie on the next line, past its indent.
  const std::size_t last = offset + std::min(length, scalar.size() - offset) - 1;
  return {range.file, begin, std::max(begin, inside(block_offset(*this, last) + 1))};
}

const Node* Node::find(std::string_view key) const {
  const Entry* found = entry(key);
  return found == nullptr ? nullptr : &found->value;
}

const Entry* Node::entry(std::string_view key) const {
  for (const Entry& each : entries) {
    if (each.key == key) return &each;
  }
  return nullptr;
}

bool is_name(std::string_view key) {
  if (key.empty() || !is_lower(key.front()) || key.back() == '-') return false;
  for (std::size_t i = 0; i < key.size(); ++i) {
    const bool doubled = key[i] == '-' && key[i - 1] == '-';
    if (doubled || !(is_lower(key[i]) || is_digit(key[i]) || key[i] == '-')) return false;
  }
  return true;
}

}  // namespace headgate::document
