#include <algorithm>
#include <sstream>

#include "vocabulary/loading.hpp"
#include "vocabulary/names.hpp"

namespace headgate::vocabulary {
namespace {

using document::Node;
using Kind = Type::Kind;

struct Word {
  std::string_view name;
  Kind kind;
  Field::Holds holds;
};

constexpr Word plain_types[] = {
    {"yes-no", Kind::truth, Field::Holds::fact},  {"number", Kind::number, Field::Holds::fact},
    {"text", Kind::text, Field::Holds::fact},     {"date", Kind::date, Field::Holds::fact},
    {"moment", Kind::moment, Field::Holds::fact}, {"clock", Kind::clock, Field::Holds::fact},
    {"season", Kind::season, Field::Holds::fact}, {"span", Kind::span, Field::Holds::fact},
    {"depth", Kind::level, Field::Holds::fact},   {"height", Kind::level, Field::Holds::fact},
    {"list", Kind::list, Field::Holds::list},     {"answers", Kind::answers, Field::Holds::answers},
};

std::vector<std::string> split(const std::string& text) {
  std::istringstream stream(text);
  std::vector<std::string> words;
  for (std::string word; stream >> word;) words.push_back(word);
  return words;
}

std::vector<std::string> type_names(const Vocabulary& vocabulary) {
  std::vector<std::string> result = quantity::dimension_names();
  for (const Word& word : plain_types) result.emplace_back(word.name);
  for (const Choice& choice : vocabulary.choices) result.push_back(choice.name);
  result.insert(result.end(), {"size", "element"});
  return result;
}

std::optional<Declared> read_record(Loading& at, const Node& node, const std::string& name) {
  const auto shape = at.vocabulary.shape(name);
  if (shape && !at.vocabulary.shapes[*shape].kind) {
    Declared declared;
    declared.type.kind = Kind::element;
    declared.type.shapes.set(*shape);
    declared.holds = Field::Holds::record;
    return declared;
  }
  std::vector<std::string> records;
  for (const Shape& each : at.vocabulary.shapes) {
    if (!each.kind) records.push_back(each.name);
  }
  at.found.push_back(text::say("no-such-record", node.range, {name, offer(name, records)}));
  return std::nullopt;
}

std::optional<Declared> read_reference(Loading& at, const Node& node, const std::string& kind_name,
                                       Direction direction) {
  Node kind = node;
  kind.scalar = kind_name;
  Declared declared;
  declared.type.kind = Kind::element;
  declared.type.shapes = read_kinds(at, {&kind});
  declared.holds = Field::Holds::reference;
  declared.direction = direction;
  if (declared.type.shapes.none()) return std::nullopt;
  return declared;
}

std::optional<Declared> read_nearest(Loading& at, const Node& node, const std::vector<std::string>& words) {
  const bool upstream = words[2] == "upstream";
  if (!upstream && words[2] != "downstream") {
    at.found.push_back(text::say("nearest-direction", node.range, {words[2], words[1]}));
    return std::nullopt;
  }
  return read_reference(at, node, words[1], upstream ? Direction::upstream : Direction::downstream);
}

Declared any_element(const Vocabulary& vocabulary) {
  Declared declared;
  declared.type.kind = Kind::element;
  for (std::size_t i = 0; i < vocabulary.shapes.size(); ++i) declared.type.shapes.set(i, vocabulary.shapes[i].kind);
  declared.holds = Field::Holds::reference;
  declared.direction = Direction::stated;
  return declared;
}

std::optional<Declared> read_plain(const Vocabulary& vocabulary, const std::string& name) {
  Declared declared;
  for (const Word& word : plain_types) {
    if (word.name != name) continue;
    declared.type.kind = word.kind;
    declared.holds = word.holds;
    declared.depth = name == "depth";
    if (word.kind == Kind::level) declared.type.dimension = quantity::dimensions::length;
    return declared;
  }
  if (name == "element") return any_element(vocabulary);
  if (const auto choice = vocabulary.choice(name)) {
    declared.type.kind = Kind::choice;
    declared.type.choice = *choice;
    return declared;
  }
  const auto dimension = name == "size" ? quantity::dimensions::size : quantity::named(name);
  if (!dimension) return std::nullopt;
  declared.type.kind = Kind::number;
  declared.type.dimension = *dimension;
  return declared;
}

}  // namespace

bool is_type_name(const std::string& name) { return read_plain(Vocabulary{}, name).has_value(); }

std::optional<Declared> read_type(Loading& at, const Node& node) {
  if (!node.is_scalar()) {
    at.found.push_back(text::say("vocabulary-text", node.range, {"type"}));
    return std::nullopt;
  }
  const std::vector<std::string> words = split(node.scalar);
  if (words.size() == 2 && words[0] == "record") return read_record(at, node, words[1]);
  if (words.size() == 3 && words[0] == "nearest") return read_nearest(at, node, words);
  if (words.size() == 2 && words[0] == "holding") return read_reference(at, node, words[1], Direction::holding);
  if (words.size() == 1) {
    if (const auto declared = read_plain(at.vocabulary, words[0])) return declared;
  }
  at.found.push_back(
      text::say("unknown-type", node.range, {node.scalar, offer(node.scalar, type_names(at.vocabulary), 0)}));
  return std::nullopt;
}

}  // namespace headgate::vocabulary
