#include "rulebook/keys.hpp"

#include <algorithm>

#include "vocabulary/names.hpp"

namespace headgate::rulebook {

using document::Entry;
using document::Node;
using text::Diagnostics;
using text::say;

bool expect_map(const Node& node, std::string_view what, Diagnostics& found) {
  if (node.is_map()) return true;
  found.push_back(say("rulebook-map", node.range, {std::string(what)}));
  return false;
}

void expect_keys(const Node& map, const Names& keys, std::string_view what, Diagnostics& found) {
  for (const Entry& entry : map.entries) {
    if (std::find(keys.begin(), keys.end(), entry.key) != keys.end()) continue;
    found.push_back(
        say("rulebook-key", entry.key_range, {std::string(what), entry.key, vocabulary::offer(entry.key, keys, 16)}));
  }
}

bool expect_name(const Entry& entry, Diagnostics& found) {
  if (document::is_name(entry.key)) return true;
  found.push_back(say("rulebook-name", entry.key_range, {entry.key}));
  return false;
}

const Node* map_of(const Node& map, std::string_view key, Diagnostics& found) {
  const Node* node = map.find(key);
  return node && expect_map(*node, "\"" + std::string(key) + "\"", found) ? node : nullptr;
}

std::string text_of(const Node& map, std::string_view key, Diagnostics& found) {
  const Node* node = map.find(key);
  if (!node) return "";
  if (node->is_scalar()) return node->scalar;
  found.push_back(say("rulebook-text", node->range, {std::string(key)}));
  return "";
}

std::vector<const Node*> words_of(const Node& node, Diagnostics& found) {
  if (node.is_scalar()) return {&node};
  std::vector<const Node*> words;
  if (node.is_map()) found.push_back(say("rulebook-words", node.range));
  for (const Node& item : node.items) {
    if (item.is_scalar()) {
      words.push_back(&item);
    } else {
      found.push_back(say("rulebook-words", item.range));
    }
  }
  return words;
}

std::optional<quantity::Day> day_of(const Node& map, std::string_view key, Diagnostics& found) {
  const Node* node = map.find(key);
  if (!node) return std::nullopt;
  if (!node->is_scalar()) {
    found.push_back(say("rulebook-text", node->range, {std::string(key)}));
    return std::nullopt;
  }
  const auto read = quantity::read_date(node->scalar);
  if (const auto* day = std::get_if<quantity::Day>(&read)) return *day;
  const auto& problem = std::get<quantity::Problem>(read);
  found.push_back(say(problem.id, node->range_of(problem.offset, problem.length), problem.arguments));
  return std::nullopt;
}

std::optional<std::size_t> one_of(const Node& word, const Names& allowed, std::string_view id, Diagnostics& found,
                                  std::size_t most) {
  const auto at = std::find(allowed.begin(), allowed.end(), word.scalar);
  if (word.is_scalar() && at != allowed.end()) return static_cast<std::size_t>(at - allowed.begin());
  found.push_back(say(id, word.range, {word.scalar, vocabulary::offer(word.scalar, allowed, most)}));
  return std::nullopt;
}

Node piece(const Node& whole, std::size_t offset, std::size_t length) {
  Node part;
  part.in_braces = whole.in_braces;
  part.range = whole.range_of(offset, length);
  part.scalar = whole.scalar.substr(std::min(offset, whole.scalar.size()), length);
  return part;
}

std::string join(const Names& names, std::string_view between) { return vocabulary::join(names, between); }

}  // namespace headgate::rulebook
