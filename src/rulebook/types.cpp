#include "rulebook/types.hpp"

#include <limits>

#include "rulebook/keys.hpp"
#include "vocabulary/names.hpp"

namespace headgate::rulebook {

using document::Node;
using text::Diagnostics;
using text::say;
using vocabulary::Presence;
using vocabulary::Type;
using vocabulary::Value;
using vocabulary::Vocabulary;
using Kind = Type::Kind;

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

struct Plain {
  std::string_view name;
  Kind kind;
};
constexpr Plain plain_types[] = {{"yes-no", Kind::truth}, {"date", Kind::date},     {"moment", Kind::moment},
                                 {"clock", Kind::clock},  {"season", Kind::season}, {"span", Kind::span},
                                 {"text", Kind::text},    {"mark", Kind::level}};

Names type_names(const Vocabulary& vocabulary) {
  Names names = quantity::dimension_names();
  names.push_back("number");
  for (const Plain& each : plain_types) names.emplace_back(each.name);
  for (const auto& choice : vocabulary.choices) names.push_back(choice.name);
  for (const std::string& name : vocabulary.names()) {
    if (vocabulary.kinds(name).any()) names.push_back(name);
  }
  return names;
}

std::optional<Type> named_type(std::string_view name, const Vocabulary& vocabulary) {
  Type type;
  for (const Plain& each : plain_types) {
    if (each.name != name) continue;
    type.kind = each.kind;
    return type;
  }
  if (const auto choice = vocabulary.choice(name)) {
    type.kind = Kind::choice;
    type.choice = *choice;
    return type;
  }
  const auto dimension = name == "number" ? quantity::dimensions::none : quantity::named(name);
  if (dimension) {
    type.kind = Kind::number;
    type.dimension = *dimension;
    return type;
  }
  type.kind = Kind::kind;
  type.shapes = vocabulary.kinds(name);
  return type.shapes.any() ? std::optional<Type>(type) : std::nullopt;
}

Value read_mark(const Node& node, const Vocabulary& vocabulary, Diagnostics& found) {
  Value value;
  const auto mark = vocabulary.mark(node.scalar);
  if (!mark) {
    Names names;
    for (const auto& each : vocabulary.marks) names.push_back(each.name);
    found.push_back(say("mark-unknown", node.range, {node.scalar, vocabulary::offer(node.scalar, names)}));
    return value;
  }
  value.presence = vocabulary::Presence::present;
  value.id = *mark;
  return value;
}

Value read_kind(const Node& node, const Type& type, const Vocabulary& vocabulary, Diagnostics& found) {
  Value value;
  const auto shape = vocabulary.shape(node.scalar);
  if (!shape || !type.shapes.test(*shape)) {
    Names names;
    for (std::size_t i = 0; i < vocabulary.shapes.size(); ++i) {
      if (type.shapes.test(i)) names.push_back(vocabulary.shapes[i].name);
    }
    found.push_back(say("kind-unknown", node.range, {node.scalar, vocabulary::offer(node.scalar, names)}));
    return value;
  }
  value.presence = vocabulary::Presence::present;
  value.id = *shape;
  return value;
}

}  // namespace

std::optional<StatedType> read_type(const Node& node, const Vocabulary& vocabulary, Diagnostics& found) {
  constexpr std::string_view list_of = "list of ";
  StatedType stated;
  std::string_view name = node.scalar;
  std::size_t offset = 0;
  if (name.substr(0, list_of.size()) == list_of) {
    stated.list = true;
    offset = list_of.size();
    name.remove_prefix(offset);
  }
  if (const auto type = node.is_scalar() ? named_type(name, vocabulary) : std::nullopt) {
    stated.type = *type;
    return stated;
  }
  found.push_back(say("type-unknown", node.range_of(offset, name.size()),
                      {std::string(name), vocabulary::offer(name, type_names(vocabulary), 0)}));
  return std::nullopt;
}

Value read_plain(const Node& node, const Type& type, const Vocabulary& vocabulary, Diagnostics& found) {
  if (!node.is_scalar()) {
    found.push_back(say("value-not-plain", node.range));
    return {};
  }
  if (node.scalar == "unknown") return {};
  if (node.scalar == "none") return vocabulary::nothing();
  if (type.kind == Kind::level) return read_mark(node, vocabulary, found);
  if (type.kind == Kind::kind) return read_kind(node, type, vocabulary, found);
  return vocabulary::read_value(node, type, nullptr, vocabulary, nullptr, found);
}

double days_in(quantity::Span::Unit unit) {
  switch (unit) {
    case quantity::Span::Unit::weeks: return 7;
    case quantity::Span::Unit::months: return 30;
    case quantity::Span::Unit::years: return 365;
    default: return 1;
  }
}

Value read_range(const Node& cell, const Type& type, const Vocabulary& vocabulary, Diagnostics& found) {
  constexpr std::string_view to = " to ";
  constexpr std::string_view and_up = " and up";
  constexpr std::string_view up_to = "up to ";
  const std::string& text = cell.scalar;
  const auto read = [&](std::size_t offset, std::size_t length) {
    Value value = read_plain(piece(cell, offset, length), type, vocabulary, found);
    if (type.kind == Kind::span)
      value.number = quantity::multiply(value.number, quantity::exactly(days_in(value.span_unit)));
    return value;
  };
  if (text.rfind(up_to, 0) == 0) {
    Value value = read(up_to.size(), text.size() - up_to.size());
    value.number.lo = -infinity;
    return value;
  }
  if (text.size() > and_up.size() && text.compare(text.size() - and_up.size(), and_up.size(), and_up) == 0) {
    Value value = read(0, text.size() - and_up.size());
    value.number.hi = infinity;
    return value;
  }
  const std::size_t middle = text.find(to);
  if (middle == std::string::npos) return read(0, text.size());
  Value low = read(0, middle);
  const Value high = read(middle + to.size(), text.size() - middle - to.size());
  if (low.presence == Presence::present && high.presence == Presence::present && high.number.hi < low.number.lo) {
    found.push_back(say("table-range-backwards", cell.range, {text}));
  }
  low.number.hi = high.number.hi;
  return low;
}

}  // namespace headgate::rulebook
