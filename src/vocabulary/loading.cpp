#include "vocabulary/loading.hpp"

#include <algorithm>

#include "vocabulary/names.hpp"

namespace headgate::vocabulary {

using document::Entry;
using document::Node;

bool declare(Loading& at, const std::string& what, std::string_view name, const text::Range& range) {
  const auto [place, fresh] = at.seen.emplace(what, range);
  if (fresh) return true;
  at.found.push_back(text::say("declared-twice", range, {std::string(name)}, place->second, "declared here before"));
  return false;
}

bool check_name(Loading& at, const Entry& entry, bool follows_dot) {
  if (!document::is_name(entry.key)) {
    at.found.push_back(text::say("bad-name", entry.key_range, {entry.key}));
    return false;
  }
  if (!follows_dot && is_grammar_word(entry.key)) {
    at.found.push_back(text::say("grammar-word-name", entry.key_range, {entry.key}));
    return false;
  }
  return true;
}

bool check_keys(Loading& at, const Node& map, const std::vector<std::string>& keys, std::string_view of_what) {
  bool good = true;
  for (const Entry& entry : map.entries) {
    if (std::find(keys.begin(), keys.end(), entry.key) != keys.end()) continue;
    at.found.push_back(
        text::say("vocabulary-key", entry.key_range, {entry.key, std::string(of_what), offer(entry.key, keys)}));
    good = false;
  }
  return good;
}

bool expect_map(Loading& at, const Node& node, std::string_view what) {
  if (node.is_map()) return true;
  at.found.push_back(text::say("vocabulary-map", node.range, {std::string(what)}));
  return false;
}

std::string text_of(Loading& at, const Node& map, std::string_view key) {
  const Node* node = map.find(key);
  if (!node) return "";
  if (node->is_scalar()) return node->scalar;
  at.found.push_back(text::say("vocabulary-text", node->range, {std::string(key)}));
  return "";
}

bool flag_of(Loading& at, const Node& map, std::string_view key) {
  const Node* node = map.find(key);
  if (!node) return false;
  if (node->is_scalar() && node->scalar == "yes") return true;
  if (node->is_scalar() && node->scalar == "no") return false;
  at.found.push_back(text::say("vocabulary-flag", node->range, {std::string(key)}));
  return false;
}

std::vector<const Node*> words_of(Loading& at, const Node& map, std::string_view key) {
  std::vector<const Node*> result;
  const Node* node = map.find(key);
  if (!node) return result;
  if (node->is_scalar()) return {node};
  if (node->is_list()) {
    for (const Node& item : node->items) {
      if (item.is_scalar()) result.push_back(&item);
    }
    if (result.size() == node->items.size()) return result;
  }
  at.found.push_back(text::say("vocabulary-words", node->range, {std::string(key)}));
  return result;
}

ShapeSet read_kinds(Loading& at, const std::vector<const Node*>& names) {
  ShapeSet result;
  for (const Node* name : names) {
    const bool group = at.vocabulary.groups.count(name->scalar) != 0;
    const ShapeSet kinds = at.vocabulary.kinds(name->scalar);
    if (kinds.none() && !group) {
      std::vector<std::string> known;
      for (const std::string& each : at.vocabulary.names()) {
        const auto shape = at.vocabulary.shape(each);
        if (!shape || at.vocabulary.shapes[*shape].kind) known.push_back(each);
      }
      at.found.push_back(text::say("no-such-kind", name->range, {name->scalar, offer(name->scalar, known)}));
    }
    result |= kinds;
  }
  return result;
}

}  // namespace headgate::vocabulary
