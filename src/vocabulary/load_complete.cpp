#include <algorithm>
#include <map>

#include "vocabulary/loading.hpp"
#include "vocabulary/names.hpp"

namespace headgate::vocabulary {
namespace {

using document::Node;
using Kind = Type::Kind;
using Holds = Field::Holds;

std::vector<std::string> field_names(const Shape& shape) {
  std::vector<std::string> result;
  for (const Field& field : shape.fields) result.push_back(field.name);
  return result;
}

void complete_short(Loading& at, ShapeId id, const Node& node) {
  Shape& shape = at.vocabulary.shapes[id];
  const auto field = node.is_scalar() ? shape.field(node.scalar) : std::nullopt;
  if (!field) {
    at.found.push_back(
        text::say("short-no-fact", node.range, {node.scalar, shape.name, offer(node.scalar, field_names(shape))}));
  } else if (shape.fields[*field].holds == Holds::fact || shape.fields[*field].holds == Holds::derived) {
    shape.short_field = *field;
  } else {
    at.found.push_back(text::say("short-not-scalar", node.range, {node.scalar}));
  }
}

void complete_definition(Loading& at, ShapeId id, const Node& node) {
  const Shape& root = at.vocabulary.shapes[root_shape];
  const auto field = node.is_scalar() ? root.field(node.scalar) : std::nullopt;
  const bool fits = field && root.fields[*field].named && root.fields[*field].type.shapes.test(id);
  if (fits) {
    at.vocabulary.shapes[id].defined_in = *field;
  } else {
    at.found.push_back(text::say("defined-in-list", node.range, {node.scalar, at.vocabulary.shapes[id].name}));
  }
}

ShapeSet walked_kinds(const Vocabulary& vocabulary) {
  ShapeSet result;
  for (const Shape& shape : vocabulary.shapes) {
    for (const Field& field : shape.fields) {
      if (field.walk) result |= field.type.shapes;
    }
  }
  return result;
}

void add_neighbour(Loading& at, Shape& shape, const ShapeSet& walked, std::string_view name, Direction direction) {
  if (const auto taken = shape.field(name)) {
    at.found.push_back(text::say("built-in-fact", shape.fields[*taken].range, {std::string(name), shape.name}));
    return;
  }
  Field field;
  field.name = name;
  field.title = name;
  field.holds = Holds::reference;
  field.type.kind = Kind::element;
  field.type.shapes = walked;
  field.direction = direction;
  field.range = shape.range;
  shape.fields.push_back(field);
}

void add_neighbours(Loading& at) {
  const ShapeSet walked = walked_kinds(at.vocabulary);
  for (std::size_t id = 0; id < at.vocabulary.shapes.size(); ++id) {
    if (!walked.test(id)) continue;
    add_neighbour(at, at.vocabulary.shapes[id], walked, "previous", Direction::upstream);
    add_neighbour(at, at.vocabulary.shapes[id], walked, "next", Direction::downstream);
  }
}

// What `branches.line` may hold: step by step through lists and records. Empty when a step is no such thing.
ShapeSet kinds_along(const Vocabulary& vocabulary, ShapeId from, const std::string& path) {
  ShapeSet here;
  here.set(from);
  Kind kind = Kind::element;
  for (std::size_t begin = 0; begin <= path.size();) {
    const std::size_t end = std::min(path.find('.', begin), path.size());
    ShapeSet next;
    for (std::size_t id = 0; id < vocabulary.shapes.size(); ++id) {
      const Shape& shape = vocabulary.shapes[id];
      const auto field = here.test(id) ? shape.field(std::string_view(path).substr(begin, end - begin)) : std::nullopt;
      if (!field) continue;
      kind = shape.fields[*field].type.kind;
      const bool computed = !shape.fields[*field].union_of.empty();
      if ((kind == Kind::list && !computed) || kind == Kind::element) next |= shape.fields[*field].type.shapes;
    }
    here = next;
    begin = end + 1;
  }
  return kind == Kind::list ? here : ShapeSet{};
}

void complete_unions(Loading& at) {
  for (std::size_t id = 0; id < at.vocabulary.shapes.size(); ++id) {
    for (Field& field : at.vocabulary.shapes[id].fields) {
      for (const std::string& part : field.union_of) {
        const ShapeSet kinds = kinds_along(at.vocabulary, static_cast<ShapeId>(id), part);
        if (kinds.none()) at.found.push_back(text::say("union-no-list", field.range, {part, field.name}));
        field.type.shapes |= kinds;
      }
    }
  }
}

enum class Visit : std::uint8_t { fresh, open, done };

// Fields of a shape and of the records inside it, which all stand in every element. A record inside
// itself would never end; it is said once and counted no further.
std::size_t count_fields(Loading& at, ShapeId id, std::vector<Visit>& visits, std::vector<std::size_t>& counts) {
  if (visits[id] == Visit::done) return counts[id];
  visits[id] = Visit::open;
  std::size_t total = 0;
  for (Field& field : at.vocabulary.shapes[id].fields) {
    ++total;
    if (field.holds != Holds::record) continue;
    for (std::size_t inner = 0; inner < at.vocabulary.shapes.size(); ++inner) {
      if (!field.type.shapes.test(inner)) continue;
      if (visits[inner] == Visit::open) {
        at.found.push_back(text::say("record-in-itself", field.range, {at.vocabulary.shapes[inner].name}));
        field.holds = Holds::fact;  // so that nobody builds it without end
        field.type = Type{};
      } else {
        total += count_fields(at, static_cast<ShapeId>(inner), visits, counts);
      }
    }
  }
  visits[id] = Visit::done;
  counts[id] = std::min(total, std::size_t{1} << 20U);  // far past the cap; its sums cannot overflow
  return counts[id];
}

void check_sizes(Loading& at) {
  std::vector<Visit> visits(at.vocabulary.shapes.size(), Visit::fresh);
  std::vector<std::size_t> counts(visits.size(), 0);
  for (std::size_t id = 0; id < visits.size(); ++id) {
    const std::size_t total = count_fields(at, static_cast<ShapeId>(id), visits, counts);
    const Shape& shape = at.vocabulary.shapes[id];
    if (total <= most_fields) continue;
    at.found.push_back(
        text::say("too-many-facts", shape.range, {shape.name, std::to_string(total), std::to_string(most_fields)}));
  }
}

}  // namespace

void complete_shapes(Loading& at) {
  for (const auto& [id, node] : at.shorts) complete_short(at, id, *node);
  for (const auto& [id, node] : at.definitions) complete_definition(at, id, *node);
  add_neighbours(at);
  complete_unions(at);
  check_sizes(at);
}

}  // namespace headgate::vocabulary
