#include <algorithm>

#include "site/loading.hpp"
#include "vocabulary/names.hpp"

namespace headgate::site {

using document::Entry;
using document::Node;
using vocabulary::Field;
using vocabulary::Presence;
using vocabulary::ShapeSet;

namespace {

// What is needed to read one list.
struct Reading {
  Loading& at;
  ElementId owner;
  FieldId field_id;
  ListId id;

  const Field& field() const { return at.field(owner, field_id); }
  List& list() const { return at.site.lists[id]; }
  const ShapeSet& allowed() const { return field().type.shapes; }
  void say(std::string_view message, const text::Range& range, const std::vector<std::string>& arguments) const {
    at.found.push_back(text::say(message, range, arguments));
  }
};

ElementId append(const Reading& r, ShapeId kind, const text::Range& range, const std::string& name) {
  Element element;
  element.shape = kind;
  element.parent = r.owner;
  element.field = r.field_id;
  element.list = r.id;
  element.number = static_cast<std::uint32_t>(r.list().items.size() + 1);
  element.name = name;
  element.range = range;
  if (r.field().walk) {
    element.walk = r.id;
    element.place = element.number;
  }
  const ElementId made = make_element(r.at, element);
  r.list().items.push_back(made);
  return made;
}

// The names under `except` or `only`, as kinds.
ShapeSet read_kinds(const Reading& r, const Node& names_node) {
  ShapeSet result;
  std::vector<const Node*> words;
  if (names_node.is_scalar()) words.push_back(&names_node);
  for (const Node& item : names_node.items) words.push_back(&item);
  for (const Node* word : words) {
    const ShapeSet kinds = r.at.vocabulary.kinds(word->scalar) & r.allowed();
    if (kinds.none()) {
      r.say("unknown-kind", word->range,
            {word->scalar, r.field().title, vocabulary::offer(word->scalar, names(r.at.vocabulary, r.allowed()))});
    }
    result |= kinds;
  }
  return result;
}

void end_unfinished(const Reading& r, const Node* limits, const text::Range& range) {
  r.list().complete = false;
  r.list().closed.reset();
  r.list().range = range;
  if (!limits || is_word(*limits, "yes")) return;
  const Node* except = limits->find("except");
  const Node* only = limits->find("only");
  if (!limits->is_map() || limits->entries.size() != 1 || (!except && !only)) {
    r.say("more-form", limits->range, {});
  } else {
    r.list().closed = except ? read_kinds(r, *except) : ~read_kinds(r, *only);
  }
}

void read_more(const Reading& r, const Node& item, bool last) {
  const text::Range range = item.is_map() ? item.entries.front().key_range : item.range;
  if (last) {
    end_unfinished(r, item.is_map() ? &item.entries.front().value : nullptr, range);
  } else {
    r.say("more-not-last", range, {});
  }
}

void say_unknown_kind(const Reading& r, std::string_view word, const text::Range& range) {
  const auto& v = r.at.vocabulary;
  const ShapeSet group = v.kinds(word) & r.allowed();
  if (v.groups.count(std::string(word)) != 0 && group.any()) {
    r.say("group-for-kind", range, {std::string(word), vocabulary::join(names(v, group))});
    return;
  }
  const std::string near = vocabulary::offer(word, names(v, r.allowed()), 24);
  r.say("unknown-kind", range, {std::string(word), r.field().title, near});
}

// What the item's first word or key says, when it is no kind of this list.
void say_unfit(const Reading& r, const Node& item) {
  if (item.is_scalar() && (item.scalar == "none" || item.scalar == "unknown")) {
    r.say("none-in-list", item.range, {item.scalar, r.field().name});
  } else if (item.is_scalar()) {
    say_unknown_kind(r, item.scalar, item.range);
  } else if (item.is_list()) {
    r.say("list-in-list", item.range, {});
  } else if (item.entries.empty()) {
    r.say("empty-item", item.range, {});
  } else {
    say_unknown_kind(r, item.entries.front().key, item.entries.front().key_range);
  }
}

// `- branch: lawn`, or why it cannot be that.
void place_later(const Reading& r, ShapeId kind, const Node& item) {
  const Node* name = item.is_map() ? &item.entries.front().value : nullptr;
  const text::Range range = item.is_map() ? item.entries.front().key_range : item.range;
  if (!name || !name->is_scalar() || !document::is_name(name->scalar)) {
    const vocabulary::Shape& shape = r.at.vocabulary.shapes[kind];
    r.say("branch-name", name ? name->range : range,
          {shape.name, r.at.vocabulary.shapes[vocabulary::root_shape].fields[shape.defined_in].name});
    return;
  }
  r.at.placings.push_back({r.id, r.list().items.size(), kind, name});
  r.list().items.push_back(nowhere);
}

// Facts beside the kind instead of below it: `- pipe: 3/4"` and on the next line `length: 24'`.
bool has_loose_facts(const Reading& r, const Node& item) {
  if (item.entries.size() == 1) return false;
  const Entry& second = item.entries[1];
  r.say("facts-beside-kind", second.key_range, {second.key, item.entries.front().key});
  return true;
}

void read_item(const Reading& r, const Node& item) {
  const auto& v = r.at.vocabulary;
  const ItemForm form = item_form(v, r.allowed(), item);
  if (!form.kind) return say_unfit(r, item);
  const bool keyed = form.facts == ItemForm::Facts::entry;
  if (keyed && has_loose_facts(r, item)) return;
  if (only_named(v, *form.kind, r.at.site.elements[r.owner].shape, r.field_id)) return place_later(r, *form.kind, item);
  const ElementId made = append(r, *form.kind, keyed ? item.entries.front().key_range : item.range, "");
  if (form.facts == ItemForm::Facts::whole) return read_facts(r.at, made, item);
  if (!keyed) return;
  const Node& facts = item.entries.front().value;
  if (is_word(facts, "none")) return r.say("none-in-list", facts.range, {"none", r.field().name});
  if (!is_word(facts, "unknown")) read_facts(r.at, made, facts);
}

void read_items(const Reading& r, const Node& node) {
  for (std::size_t i = 0; i < node.items.size(); ++i) {
    if (is_more(node.items[i])) {
      read_more(r, node.items[i], i + 1 == node.items.size());
    } else if (room_for(r.at, node.items[i].range)) {
      read_item(r, node.items[i]);
    }
  }
}

// `branches: {lawn: {…}}`; `more: yes` at the end when there may be others.
void read_named(const Reading& r, const Node& node) {
  const auto kind = only_kind(r.allowed());
  for (const Entry& entry : node.entries) {
    if (entry.key == "more") {
      end_unfinished(r, &entry.value, entry.key_range);
    } else if (!document::is_name(entry.key) || vocabulary::is_grammar_word(entry.key)) {
      r.say("bad-name", entry.key_range, {entry.key});
    } else if (is_word(entry.value, "none")) {
      r.say("none-in-list", entry.value.range, {"none", r.field().name});
    } else if (kind && room_for(r.at, entry.key_range)) {
      const ElementId made = append(r, *kind, entry.key_range, entry.key);
      if (!is_word(entry.value, "unknown")) read_facts(r.at, made, entry.value);
    }
  }
}

void state(const Reading& r, Presence presence, bool complete, const Entry& entry) {
  Slot& slot = r.at.site.slot(r.owner, r.field_id);
  slot.value.presence = presence;
  slot.origin = Origin::stated;
  slot.range = entry.value.range;
  r.list().stated = true;
  r.list().complete = complete;
  r.list().range = entry.key_range;
  if (complete) r.list().closed.set();
  if (!complete) r.list().closed.reset();
}

}  // namespace

bool room_for(Loading& at, const text::Range& range) {
  if (++at.parts == most_parts + 1)
    at.found.push_back(text::say("too-many-parts", range, {std::to_string(most_parts)}));
  return at.parts <= most_parts;
}

bool is_more(const Node& item) {
  return is_word(item, "more") || (item.is_map() && item.entries.size() == 1 && item.entries.front().key == "more");
}

std::optional<ShapeId> only_kind(const ShapeSet& allowed) {
  if (allowed.count() != 1) return std::nullopt;
  for (std::size_t id = 0; id < allowed.size(); ++id) {
    if (allowed.test(id)) return static_cast<ShapeId>(id);
  }
  return std::nullopt;
}

bool only_named(const vocabulary::Vocabulary& vocabulary, ShapeId kind, ShapeId owner, FieldId list) {
  const FieldId defined_in = vocabulary.shapes[kind].defined_in;
  return defined_in != vocabulary::no_id && (owner != vocabulary::root_shape || list != defined_in);
}

ItemForm item_form(const vocabulary::Vocabulary& vocabulary, const ShapeSet& allowed, const Node& item) {
  using Facts = ItemForm::Facts;
  const auto only = only_kind(allowed);
  const auto allowed_kind = [&](std::string_view word) {
    auto kind = vocabulary.shape(word);
    return kind && allowed.test(*kind) ? kind : std::nullopt;
  };
  if (item.is_scalar()) {
    if (const auto kind = allowed_kind(item.scalar)) return {kind, Facts::bare};
    const bool short_form = only && vocabulary.shapes[*only].short_field != vocabulary::no_id;
    return short_form && item.scalar != "none" && item.scalar != "unknown" ? ItemForm{only, Facts::whole} : ItemForm{};
  }
  if (!item.is_map()) return {};
  if (item.entries.empty()) return {only, Facts::whole};
  const std::string& key = item.entries.front().key;
  const auto kind = allowed_kind(key);
  if (kind && !(only && vocabulary.shapes[*only].field(key))) return {kind, Facts::entry};
  return {only, Facts::whole};
}

void read_list(Loading& at, ElementId element, FieldId field, const Entry& entry) {
  const Reading r{at, element, field, at.site.slot(element, field).value.id};
  const Node& node = entry.value;
  if (!r.field().union_of.empty()) {
    r.say("computed-list", entry.key_range, {r.field().name, vocabulary::join(r.field().union_of)});
  } else if (is_word(node, "none")) {
    state(r, Presence::none, true, entry);
  } else if (is_word(node, "unknown")) {
    state(r, Presence::unknown, false, entry);
    at.site.slot(element, field).asked_not = true;
  } else if (r.field().named ? node.is_map() : node.is_list()) {
    state(r, Presence::present, true, entry);
    r.field().named ? read_named(r, node) : read_items(r, node);
  } else {
    r.say(r.field().named ? "named-list-expected" : "list-expected", node.range, {r.field().name});
  }
}

}  // namespace headgate::site
