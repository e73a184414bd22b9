#include <algorithm>

#include "site/loading.hpp"
#include "vocabulary/names.hpp"

namespace headgate::site {

using document::Entry;
using document::Node;
using vocabulary::Field;
using vocabulary::Presence;
using vocabulary::root_shape;
using vocabulary::Shape;
using Kind = vocabulary::Type::Kind;

namespace {

std::vector<std::string> fact_names(const Shape& shape) {
  std::vector<std::string> result;
  for (const Field& field : shape.fields) {
    if (field.union_of.empty()) result.push_back(field.name);
  }
  return result;
}

// `sleeve: {value: 1-1/2", how: …}` is the short form in full.
bool is_full_short(const Shape& shape, const Node& node) {
  return shape.short_field != vocabulary::no_id && node.is_map() && node.find("value") && !shape.field("value");
}

void state_presence(Slot& slot, Presence presence, const Node& node) {
  slot.value.presence = presence;
  slot.origin = Origin::stated;
  slot.range = node.range;
  if (node.is_scalar()) slot.written = node.scalar;
}

void read_record(Loading& at, ElementId element, FieldId field, const Node& node) {
  const ElementId record = at.site.slot(element, field).value.id;
  const Shape& shape = at.shape(record);
  Slot& slot = at.site.slot(element, field);
  if (is_word(node, "none")) return state_presence(slot, Presence::none, node);
  if (is_word(node, "unknown")) {
    state_presence(slot, Presence::unknown, node);
    slot.asked_not = true;
    return;
  }
  state_presence(slot, Presence::present, node);
  const bool short_is_truth =
      shape.short_field != vocabulary::no_id && shape.fields[shape.short_field].type.kind == Kind::truth;
  if (is_word(node, "yes") && !short_is_truth) return;  // it is there, and no more is known
  read_facts(at, record, node);
}

void read_answers(Loading& at, const Node& node) {
  if (!node.is_map()) {
    at.found.push_back(text::say("answers-form", node.range));
    return;
  }
  for (const Entry& entry : node.entries) {
    if (!document::is_name(entry.key)) {
      at.found.push_back(text::say("bad-name", entry.key_range, {entry.key}));
      continue;
    }
    vocabulary::Type type;
    type.kind = Kind::truth;
    at.site.confirmed[entry.key] = read_stated(at, type, nullptr, entry.value);
  }
}

void read_entry(Loading& at, ElementId element, FieldId id, const Entry& entry) {
  const Field& field = at.field(element, id);
  switch (field.holds) {
    case Field::Holds::fact:
    case Field::Holds::derived: read_fact(at, element, id, entry.value); break;
    case Field::Holds::record: read_record(at, element, id, entry.value); break;
    case Field::Holds::list: read_list(at, element, id, entry); break;
    case Field::Holds::reference: read_reference(at, element, id, entry.value); break;
    case Field::Holds::answers:
      state_presence(at.site.slot(element, id), Presence::present, entry.value);
      read_answers(at, entry.value);
      break;
  }
}

void read_short(Loading& at, ElementId element, const Node& node) {
  const Shape& shape = at.shape(element);
  if (shape.short_field != vocabulary::no_id) return read_fact(at, element, shape.short_field, node);
  at.found.push_back(text::say("no-short-form", node.range, {node.scalar, shape.title}));
}

// An approval or order by somebody the vocabulary does not know counts for nothing: a slip of the pen is worth a word.
void warn_of_strangers(Loading& at) {
  for (ElementId element = 0; element < at.site.elements.size(); ++element) {
    const Shape& shape = at.shape(element);
    if (shape.name != "approval" && shape.name != "order") continue;
    const auto by = shape.field("by");
    if (!by || shape.fields[*by].type.kind != Kind::text) continue;
    const Slot& slot = at.site.slot(element, *by);
    if (slot.value.presence != Presence::present || at.vocabulary.role(slot.value.text)) continue;
    std::vector<std::string> known;
    for (const auto& role : at.vocabulary.roles) {
      known.push_back(role.name);
      known.insert(known.end(), role.spellings.begin(), role.spellings.end());
      known.push_back(role.title);
    }
    const std::string written(slot.value.text);
    at.found.push_back(
        text::say("paper-by-nobody", slot.range, {written, shape.title, vocabulary::offer(written, known, 0)}));
  }
}

void consume_format(Loading& at, const Node& tree) {
  const Node* format = tree.find("format");
  if (!format) {
    at.found.push_back(text::say("site-format-missing", text::part(tree.range, 0, 1)));
  } else if (!is_word(*format, "site/1")) {
    at.found.push_back(text::say("site-format", format->range, {format->scalar}));
  }
}

}  // namespace

bool is_word(const Node& node, std::string_view word) { return node.is_scalar() && node.scalar == word; }

std::vector<std::string> names(const vocabulary::Vocabulary& vocabulary, const vocabulary::ShapeSet& shapes) {
  std::vector<std::string> result;
  for (std::size_t id = 0; id < vocabulary.shapes.size(); ++id) {
    if (shapes.test(id)) result.push_back(vocabulary.shapes[id].name);
  }
  return result;
}

ElementId make_element(Loading& at, const Element& element) {
  const auto id = static_cast<ElementId>(at.site.elements.size());
  const Shape& shape = at.vocabulary.shapes[element.shape];
  at.site.elements.push_back(element);
  at.site.elements[id].first_slot = static_cast<std::uint32_t>(at.site.slots.size());
  at.site.slots.resize(at.site.slots.size() + shape.fields.size());
  for (std::size_t i = 0; i < shape.fields.size(); ++i) {
    const auto field_id = static_cast<FieldId>(i);
    const Field& field = shape.fields[i];
    if (field.holds == Field::Holds::record) {
      Element record;
      for (std::size_t s = 0; s < at.vocabulary.shapes.size(); ++s) {
        if (field.type.shapes.test(s)) record.shape = static_cast<ShapeId>(s);
      }
      record.parent = id;
      record.field = field_id;
      const ElementId made = make_element(at, record);
      at.site.slot(id, field_id).value.id = made;
    } else if (field.holds == Field::Holds::list) {
      List list;
      list.owner = id;
      list.field = field_id;
      if (field.left_out_none) list.closed.set();
      list.complete = field.left_out_none;
      at.site.slot(id, field_id).value.id = static_cast<ListId>(at.site.lists.size());
      if (field.left_out_none) at.site.slot(id, field_id).value.presence = Presence::none;
      at.site.lists.push_back(list);
    }
  }
  return id;
}

void read_facts(Loading& at, ElementId element, const Node& node) {
  const Shape& shape = at.shape(element);
  if (node.is_scalar()) return read_short(at, element, node);
  if (is_full_short(shape, node)) return read_fact(at, element, shape.short_field, node);
  if (node.is_list()) {
    at.found.push_back(text::say("facts-expected", node.range, {shape.title}));
    return;
  }
  for (const Entry& entry : node.entries) {
    if (element == 0 && entry.key == "format") continue;
    if (const auto field = shape.field(entry.key)) {
      read_entry(at, element, *field, entry);
    } else {
      at.found.push_back(text::say("unknown-fact", entry.key_range,
                                   {entry.key, shape.title, vocabulary::offer(entry.key, fact_names(shape), 20)}));
    }
  }
}

Site load(const Node& tree, const vocabulary::Vocabulary& vocabulary, text::Diagnostics& found) {
  Loading at{vocabulary, found};
  if (vocabulary.shapes.empty()) return at.site;
  make_element(at, Element{});
  if (!tree.is_map()) {
    found.push_back(text::say("facts-expected", tree.range, {vocabulary.shapes[root_shape].title}));
    return at.site;
  }
  consume_format(at, tree);
  read_facts(at, 0, tree);
  place_branches(at);
  join_lists(at);
  resolve_stated(at);
  resolve_nearest(at);
  warn_of_strangers(at);
  return at.site;
}

}  // namespace headgate::site
