#include "rulebook/rulebook.hpp"

#include <algorithm>

namespace headgate::rulebook {

namespace {

template <typename Items, typename Name>
std::optional<std::uint32_t> index_of(const Items& items, Name named) {
  const auto at = std::find_if(items.begin(), items.end(), named);
  if (at == items.end()) return std::nullopt;
  return static_cast<std::uint32_t>(at - items.begin());
}

}  // namespace

std::optional<std::uint32_t> Rulebook::limit(std::string_view name) const {
  return index_of(limits, [&](const Limit& each) { return each.signature.name == name; });
}

std::optional<std::uint32_t> Rulebook::table(std::string_view name) const {
  return index_of(tables, [&](const Table& each) { return each.signature.name == name; });
}

std::optional<std::uint32_t> Rulebook::rule(std::string_view id) const {
  return index_of(rules, [&](const Rule& each) { return each.id == id; });
}

const Derived* Rulebook::derivation(vocabulary::ShapeId shape, vocabulary::FieldId field) const {
  for (const Derived& each : derived) {
    if (each.shape == shape && each.field == field) return &each;
  }
  return nullptr;
}

}  // namespace headgate::rulebook
