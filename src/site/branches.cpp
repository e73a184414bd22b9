#include <map>
#include <string>
#include <utility>

#include "site/loading.hpp"
#include "vocabulary/names.hpp"

namespace headgate::site {
namespace {

using document::Node;
using vocabulary::Field;
using vocabulary::root_shape;
using vocabulary::Shape;
using vocabulary::ShapeSet;

using Named = std::map<std::pair<ListId, std::string>, ElementId>;

ListId defining_list(const Loading& at, const Placing& placing) {
  return at.site.slot(0, at.vocabulary.shapes[placing.shape].defined_in).value.id;
}

Named known_branches(const Loading& at) {
  Named named;
  for (const Placing& placing : at.placings) {
    const ListId list = defining_list(at, placing);
    if (named.count({list, ""}) != 0) continue;
    named[{list, ""}] = nowhere;  // this list is entered
    for (const ElementId item : at.site.lists[list].items) {
      if (item != nowhere) named[{list, at.site.elements[item].name}] = item;
    }
  }
  return named;
}

void say_undefined(Loading& at, const Placing& placing, ListId list) {
  std::vector<std::string> known;
  for (const ElementId item : at.site.lists[list].items) known.push_back(at.site.elements[item].name);
  const Shape& shape = at.vocabulary.shapes[placing.shape];
  const std::string& defined_in = at.vocabulary.shapes[root_shape].fields[shape.defined_in].name;
  at.found.push_back(text::say("undefined-branch", placing.name->range,
                               {placing.name->scalar, defined_in, vocabulary::offer(placing.name->scalar, known)},
                               at.site.lists[list].range, "the list is complete"));
}

// A branch nobody has described: it is there, and nothing is known of it.
ElementId make_branch(Loading& at, const Placing& placing, ListId list) {
  if (at.site.lists[list].complete) say_undefined(at, placing, list);
  Element element;
  element.shape = placing.shape;
  element.parent = 0;
  element.field = at.vocabulary.shapes[placing.shape].defined_in;
  element.list = list;
  element.number = static_cast<std::uint32_t>(at.site.lists[list].items.size() + 1);
  element.name = placing.name->scalar;
  element.range = placing.name->range;
  const ElementId made = make_element(at, element);
  at.site.lists[list].items.push_back(made);
  return made;
}

void place(Loading& at, const Placing& placing, ElementId branch, const text::Range& first) {
  List& list = at.site.lists[placing.list];
  list.items[placing.index] = branch;
  if (first.known() || at.site.elements[branch].walk != nowhere) {
    at.found.push_back(
        text::say("branch-twice", placing.name->range, {placing.name->scalar}, first, "it leaves here before"));
    return;
  }
  if (!at.vocabulary.shapes[at.site.elements[list.owner].shape].fields[list.field].walk) return;
  at.site.elements[branch].walk = placing.list;
  at.site.elements[branch].place = static_cast<std::uint32_t>(placing.index + 1);
}

// Elements of the list a path names, step by step from one element; what any list on the way may hide,
// the union may hide too.
struct Union {
  std::vector<ElementId> items;
  ShapeSet closed = ShapeSet{}.set();
  bool stated = false;
};

void gather(const Loading& at, ElementId element, std::string_view path, Union& result) {
  const std::size_t end = std::min(path.find('.'), path.size());
  const auto id = at.shape(element).field(path.substr(0, end));
  if (!id) return;
  const std::string_view rest = end < path.size() ? path.substr(end + 1) : std::string_view{};
  const vocabulary::Value& value = at.site.slot(element, *id).value;
  const Field& field = at.field(element, *id);
  if (field.holds == Field::Holds::record && !rest.empty() && value.presence != vocabulary::Presence::none) {
    gather(at, value.id, rest, result);
  }
  if (field.holds != Field::Holds::list || !field.union_of.empty()) return;
  const List& list = at.site.lists[value.id];
  if (rest.empty()) {
    result.items.insert(result.items.end(), list.items.begin(), list.items.end());
    result.closed &= list.closed;
    result.stated = result.stated || list.stated;
    return;
  }
  if (!list.complete) result.closed.reset();
  for (const ElementId item : list.items) gather(at, item, rest, result);
}

void join(Loading& at, ElementId element, FieldId id) {
  Union all;
  for (const std::string& path : at.field(element, id).union_of) gather(at, element, path, all);
  Slot& slot = at.site.slot(element, id);
  List& list = at.site.lists[slot.value.id];
  list.items = all.items;
  list.closed = all.closed;
  list.complete = list.complete_for(at.field(element, id).type.shapes);
  list.stated = all.stated;
  if (all.stated) slot.value.presence = vocabulary::Presence::present;
}

}  // namespace

void place_branches(Loading& at) {
  Named named = known_branches(at);
  std::map<ElementId, text::Range> placed;
  for (const Placing& placing : at.placings) {
    const ListId list = defining_list(at, placing);
    const auto known = named.find({list, placing.name->scalar});
    const ElementId branch = known != named.end() ? known->second : make_branch(at, placing, list);
    named[{list, placing.name->scalar}] = branch;
    place(at, placing, branch, placed[branch]);
    if (!placed[branch].known()) placed[branch] = placing.name->range;
  }
}

void join_lists(Loading& at) {
  for (ElementId element = 0; element < at.site.elements.size(); ++element) {
    const std::size_t fields = at.shape(element).fields.size();
    for (std::size_t id = 0; id < fields; ++id) {
      if (!at.shape(element).fields[id].union_of.empty()) join(at, element, static_cast<FieldId>(id));
    }
  }
}

}  // namespace headgate::site
