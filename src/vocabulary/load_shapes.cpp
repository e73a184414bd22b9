#include <algorithm>

#include "vocabulary/loading.hpp"
#include "vocabulary/names.hpp"

namespace headgate::vocabulary {
namespace {

using document::Entry;
using document::Node;

// A kind or record under its name, new or met before; nullopt when the name is not free or not good.
std::optional<ShapeId> begin_shape(Loading& at, const Entry& entry, bool kind) {
  const auto known = at.vocabulary.shape(entry.key);
  const bool declared = at.seen.count("name/" + entry.key) != 0;
  if (known && declared && at.vocabulary.shapes[*known].kind == kind) return known;  // a later file adds to it
  if (!check_name(at, entry) || !declare(at, "name/" + entry.key, entry.key, entry.key_range)) return std::nullopt;
  if (entry.key == at.vocabulary.shapes[root_shape].name && !kind) {
    at.vocabulary.shapes[root_shape].range = entry.key_range;
    return root_shape;
  }
  if (at.vocabulary.shapes.size() == most_shapes) {
    at.found.push_back(text::say("too-many-shapes", entry.key_range, {std::to_string(most_shapes)}));
    return std::nullopt;
  }
  Shape shape;
  shape.name = entry.key;
  shape.title = in_words(entry.key);
  shape.kind = kind;
  shape.range = entry.key_range;
  at.vocabulary.shapes.push_back(shape);
  return static_cast<ShapeId>(at.vocabulary.shapes.size() - 1);
}

// The node under a key that may be said once only, over all files.
const Node* once(Loading& at, const Entry& shape, std::string_view key) {
  const Node* node = shape.value.find(key);
  if (!node) return nullptr;
  const bool first = declare(at, "shape-key/" + shape.key + "/" + std::string(key),
                             std::string(key) + " of " + shape.key, node->range);
  return first ? node : nullptr;
}

void join_groups(Loading& at, ShapeId id, const Node& shape) {
  for (const Node* name : words_of(at, shape, "groups")) {
    const auto group = at.vocabulary.groups.find(name->scalar);
    if (group == at.vocabulary.groups.end()) {
      std::vector<std::string> known;
      for (const auto& each : at.vocabulary.groups) known.push_back(each.first);
      at.found.push_back(text::say("no-such-group", name->range, {name->scalar, offer(name->scalar, known)}));
      continue;
    }
    group->second.set(id);
    at.vocabulary.shapes[id].groups.push_back(name->scalar);
  }
}

void note_facts(Loading& at, ShapeId id, const Node& facts) {
  if (!expect_map(at, facts, "facts")) return;
  for (const Entry& fact : facts.entries) at.facts.emplace_back(id, &fact);
}

void declare_shape(Loading& at, const Entry& entry, bool kind) {
  const auto id = begin_shape(at, entry, kind);
  if (!id || !expect_map(at, entry.value, entry.key)) return;
  const std::vector<std::string> kind_keys = {"title", "groups", "passive", "short", "defined-in", "facts"};
  const std::vector<std::string> record_keys = {"title", "short", "facts"};
  check_keys(at, entry.value, kind ? kind_keys : record_keys, kind ? "a kind" : "a record");
  Shape& shape = at.vocabulary.shapes[*id];
  if (once(at, entry, "title")) shape.title = text_of(at, entry.value, "title");
  if (kind && once(at, entry, "passive")) shape.passive = flag_of(at, entry.value, "passive");
  if (kind) join_groups(at, *id, entry.value);
  if (const Node* node = once(at, entry, "short")) at.shorts.emplace_back(*id, node);
  if (const Node* node = kind ? once(at, entry, "defined-in") : nullptr) at.definitions.emplace_back(*id, node);
  if (const Node* facts = entry.value.find("facts")) note_facts(at, *id, *facts);
}

}  // namespace

void declare_shapes(Loading& at, const Node& shapes, bool kinds) {
  if (!expect_map(at, shapes, kinds ? "kinds" : "records")) return;
  for (const Entry& entry : shapes.entries) declare_shape(at, entry, kinds);
}

}  // namespace headgate::vocabulary
