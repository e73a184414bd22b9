#include "expression/describe.hpp"

#include "vocabulary/names.hpp"

namespace headgate::expression {

using vocabulary::ShapeSet;
using vocabulary::Type;
using vocabulary::Vocabulary;

std::string with_article(std::string_view noun) {
  const bool vowel = !noun.empty() && std::string_view("aeio").find(noun.front()) != std::string_view::npos;
  if (!noun.empty() && noun.front() >= '0' && noun.front() <= '9') return std::string(noun);  // "1 / length"
  return (vowel ? "an " : "a ") + std::string(noun);
}

std::vector<std::string> names_of(const ShapeSet& shapes, const Vocabulary& vocabulary) {
  std::vector<std::string> names;
  for (std::size_t i = 0; i < vocabulary.shapes.size(); ++i) {
    if (shapes.test(i)) names.push_back(vocabulary.shapes[i].name);
  }
  return names;
}

std::string listed(const std::vector<std::string>& names, std::size_t most) {
  std::string all;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (i > 0) all += ", ";
    if (i == most) return all + "…";
    all += names[i];
  }
  return all;
}

std::string counted(std::size_t count, std::string_view noun) {
  return std::to_string(count) + " " + std::string(noun) + (count == 1 ? "" : "s");
}

bool alike(const Type& a, const Type& b) {
  if (a.kind != b.kind) return false;
  if (a.kind == Type::Kind::number) return a.dimension == b.dimension;
  if (a.kind == Type::Kind::choice) return a.choice == b.choice;
  return true;
}

std::string describe(const Type& type, const Vocabulary& vocabulary) {
  switch (type.kind) {
    case Type::Kind::nothing: return "nothing known";
    case Type::Kind::truth: return "a yes or no";
    case Type::Kind::number:
      if (type.dimension.plain()) return "a number";
      if (type.dimension == quantity::dimensions::size) return "a nominal size";
      return with_article(vocabulary::in_words(quantity::name_of(type.dimension)));
    case Type::Kind::level: return "a depth or height";
    case Type::Kind::choice:
      if (type.choice < vocabulary.choices.size()) return with_article(vocabulary.choices[type.choice].name);
      return "a choice";
    case Type::Kind::date: return "a date";
    case Type::Kind::moment: return "a date with a time";
    case Type::Kind::clock: return "a time of day";
    case Type::Kind::season: return "a season";
    case Type::Kind::span: return "a span of the calendar";
    case Type::Kind::text: return "a text";
    case Type::Kind::element: {
      const auto names = names_of(type.shapes, vocabulary);
      return names.size() == 1 ? with_article(names[0]) : "one of " + listed(names);
    }
    case Type::Kind::list: return "a list";
    case Type::Kind::answers: return "the answers";
    case Type::Kind::kind: return "a kind of thing";
  }
  return "nothing known";
}

}  // namespace headgate::expression
