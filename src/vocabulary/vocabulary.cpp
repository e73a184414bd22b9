#include "vocabulary/vocabulary.hpp"

#include "vocabulary/names.hpp"

namespace headgate::vocabulary {
namespace {

template <typename Item>
std::optional<std::size_t> position(const std::vector<Item>& items, std::string_view name) {
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (items[i].name == name) return i;
  }
  return std::nullopt;
}

// By name, else by one of its spellings, without regard to case, blanks and hyphens.
template <typename Item>
std::optional<std::size_t> position_written(const std::vector<Item>& items, std::string_view written) {
  if (const auto found = position(items, written)) return found;
  const std::string wanted = folded(written);
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (folded(items[i].name) == wanted) return i;
    for (const std::string& spelling : items[i].spellings) {
      if (folded(spelling) == wanted) return i;
    }
  }
  return std::nullopt;
}

template <typename Id>
std::optional<Id> as_id(std::optional<std::size_t> found) {
  if (!found) return std::nullopt;
  return static_cast<Id>(*found);
}

}  // namespace

std::optional<std::size_t> Choice::member(std::string_view written) const { return position_written(members, written); }

std::optional<FieldId> Shape::field(std::string_view wanted) const { return as_id<FieldId>(position(fields, wanted)); }

std::optional<ShapeId> Vocabulary::shape(std::string_view name) const { return as_id<ShapeId>(position(shapes, name)); }

std::optional<ChoiceId> Vocabulary::choice(std::string_view name) const {
  return as_id<ChoiceId>(position(choices, name));
}

std::optional<MarkId> Vocabulary::mark(std::string_view written) const {
  return as_id<MarkId>(position_written(marks, written));
}

std::optional<std::size_t> Vocabulary::role(std::string_view written) const {
  if (const auto found = position_written(roles, written)) return found;
  const std::string wanted = folded(written);
  for (std::size_t i = 0; i < roles.size(); ++i) {
    if (!roles[i].title.empty() && folded(roles[i].title) == wanted) return i;
  }
  return std::nullopt;
}

std::optional<std::size_t> Vocabulary::stage(std::string_view name) const { return position(stages, name); }

ShapeSet Vocabulary::kinds(std::string_view kind_or_group) const {
  ShapeSet result;
  if (const auto group = groups.find(std::string(kind_or_group)); group != groups.end()) return group->second;
  const auto found = shape(kind_or_group);
  if (found && shapes[*found].kind) result.set(*found);
  return result;
}

const Field* Vocabulary::common_field(const ShapeSet& wanted, std::string_view name) const {
  const Field* common = nullptr;
  for (std::size_t i = 0; i < shapes.size(); ++i) {
    if (!wanted.test(i)) continue;
    const auto found = shapes[i].field(name);
    if (!found) return nullptr;
    const Field& field = shapes[i].fields[*found];
    if (common && !(common->type == field.type)) return nullptr;
    if (!common) common = &field;
  }
  return common;
}

std::vector<std::string> Vocabulary::names() const {
  std::vector<std::string> result;
  for (const Shape& each : shapes) result.push_back(each.name);
  for (const auto& group : groups) result.push_back(group.first);
  return result;
}

}  // namespace headgate::vocabulary
