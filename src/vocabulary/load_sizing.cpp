#include "vocabulary/loading.hpp"
#include "vocabulary/names.hpp"

namespace headgate::vocabulary {
namespace {

using document::Node;

// A fact of a shape by the text under a key; no_id, with a diagnostic, when there is none such.
FieldId fact_of(Loading& at, const Node& map, std::string_view key, const Shape& shape) {
  const Node* node = map.find(key);
  const std::string name = text_of(at, map, key);
  if (const auto field = shape.field(name)) return *field;
  std::vector<std::string> known;
  for (const Field& field : shape.fields) known.push_back(field.name);
  at.found.push_back(
      text::say("unknown-fact", node != nullptr ? node->range : map.range, {name, shape.name, offer(name, known)}));
  return no_id;
}

Sizing::Part part_of(Loading& at, const Node& sizing, const std::string& kind) {
  Sizing::Part part;
  const Node* map = sizing.find(kind);
  const auto shape = at.vocabulary.shape(kind);
  if (map == nullptr || !shape) {
    at.found.push_back(text::say("no-such-shape", sizing.range, {kind, offer(kind, at.vocabulary.names())}));
    return part;
  }
  if (!expect_map(at, *map, kind)) return part;
  check_keys(at, *map, {"when", "fact", "sizes"}, "sizing");
  part.shape = *shape;
  part.when = fact_of(at, *map, "when", at.vocabulary.shapes[*shape]);
  part.fact = fact_of(at, *map, "fact", at.vocabulary.shapes[*shape]);
  part.sizes = text_of(at, *map, "sizes");
  return part;
}

}  // namespace

void read_sizing(Loading& at, const Node& file) {
  const document::Entry* entry = file.entry("sizing");
  if (entry == nullptr || !declare(at, "sizing", "sizing", entry->key_range)) return;
  const Node& map = entry->value;
  if (!expect_map(at, map, "sizing")) return;
  check_keys(at, map, {"pipe", "meter", "topics", "where-it-differs", "left"}, "sizing");
  Sizing sizing;
  sizing.pipe = part_of(at, map, "pipe");
  sizing.meter = part_of(at, map, "meter");
  for (const Node* topic : words_of(at, map, "topics")) sizing.topics.push_back(topic->scalar);
  for (const Node* topic : words_of(at, map, "where-it-differs")) sizing.where_it_differs.push_back(topic->scalar);
  sizing.left = text_of(at, map, "left");
  at.vocabulary.sizing = std::move(sizing);
}

}  // namespace headgate::vocabulary
