// What the steps of loading a site share. Not for other layers.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "site/site.hpp"

namespace headgate::site {

// `- branch: lawn`: item `index` of `list`, until every branch is known.
struct Placing {
  ListId list = 0;
  std::size_t index = 0;
  ShapeId shape = 0;
  const document::Node* name = nullptr;
};

// `pipe: line[2]`, until every element is known.
struct StatedReference {
  ElementId element = 0;
  FieldId field = 0;
  const document::Node* address = nullptr;
};

struct Loading {
  const vocabulary::Vocabulary& vocabulary;
  text::Diagnostics& found;
  Site site = {};
  std::size_t parts = 0;  // elements of lists so far
  std::vector<Placing> placings = {};
  std::vector<StatedReference> references = {};

  const vocabulary::Shape& shape(ElementId element) const { return vocabulary.shapes[site.elements[element].shape]; }
  const vocabulary::Field& field(ElementId element, FieldId field) const { return shape(element).fields[field]; }
};

// Counts one more element of a list at its place; false when there are more than a site may hold, said once.
bool room_for(Loading& at, const text::Range& range);

// An element with its slots, its records (and theirs) and its lists, all unknown.
ElementId make_element(Loading& at, const Element& element);

// States the facts of an element: a map of them, or the short form.
void read_facts(Loading& at, ElementId element, const document::Node& node);
// One fact that is a value, `{value: …, good-to: …, how: …}` or not.
void read_fact(Loading& at, ElementId element, FieldId field, const document::Node& node);
void read_reference(Loading& at, ElementId element, FieldId field, const document::Node& node);
// A value in full or not, as a slot; `field` may be null.
Slot read_stated(Loading& at, const vocabulary::Type& type, const vocabulary::Field* field, const document::Node& node);
void read_list(Loading& at, ElementId element, FieldId field, const document::Entry& entry);

// Which kind a list's item is of, and where its facts stand.
struct ItemForm {
  enum class Facts : std::uint8_t { bare, whole, entry };  // `- strainer`, `- {result: …}`, `- pipe: {…}`
  std::optional<ShapeId> kind;
  Facts facts = Facts::bare;
};
ItemForm item_form(const vocabulary::Vocabulary& vocabulary, const vocabulary::ShapeSet& allowed,
                   const document::Node& item);
bool is_more(const document::Node& item);  // `- more`, `- more: {except: …}`

void place_branches(Loading& at);
void join_lists(Loading& at);  // the computed lists
void resolve_stated(Loading& at);
void resolve_nearest(Loading& at);

bool is_word(const document::Node& node, std::string_view word);  // the scalar `none`, `unknown`, `more`…
// The branch kinds: a walk only names them, they are defined in a list of the root.
bool only_named(const vocabulary::Vocabulary& vocabulary, ShapeId kind, ShapeId owner, FieldId list);
std::optional<ShapeId> only_kind(const vocabulary::ShapeSet& allowed);  // of a list of one kind
std::vector<std::string> names(const vocabulary::Vocabulary& vocabulary, const vocabulary::ShapeSet& shapes);

}  // namespace headgate::site
