#include <algorithm>

#include "site/loading.hpp"
#include "site/steps.hpp"
#include "vocabulary/names.hpp"

namespace headgate::site {
namespace {

using document::Entry;
using document::Node;
using vocabulary::Field;
using vocabulary::Shape;
using vocabulary::ShapeSet;
using vocabulary::Vocabulary;

Node make(Node::Kind kind, const text::Range& range) {
  Node node;
  node.kind = kind;
  node.range = range;
  return node;
}

Node single(const std::string& key, Node value, const text::Range& range) {
  Node node = make(Node::Kind::map, range);
  node.entries.push_back({key, range, std::move(value)});
  return node;
}

Node* find_value(Node& map, std::string_view key) {
  for (Entry& entry : map.entries) {
    if (entry.key == key) return &entry.value;
  }
  return nullptr;
}

Node& value_of(Node& map, const std::string& key, const text::Range& range) {
  if (Node* value = find_value(map, key)) return *value;
  map.entries.push_back({key, range, make(Node::Kind::map, range)});
  return map.entries.back().value;
}

void drop(Node& map, std::string_view key) {
  const auto is_it = [&](const Entry& entry) { return entry.key == key; };
  map.entries.erase(std::remove_if(map.entries.begin(), map.entries.end(), is_it), map.entries.end());
}

bool unstated(const Node& node) { return is_word(node, "unknown"); }

// One call's arguments and where it stands.
struct Setter {
  Node& tree;
  const std::vector<AddressStep>& steps;
  const Node& value;
  const Vocabulary& vocabulary;
  text::Diagnostics& found;
  bool leaves_out = false;  // the fact is taken out instead

  void say(std::string_view id, std::size_t step, const std::vector<std::string>& arguments) const {
    found.push_back(text::say(id, steps[step].range, arguments));
  }
  bool last(std::size_t step) const { return step + 1 >= steps.size(); }
  bool none() const { return is_word(value, "none"); }
  bool unknown() const { return is_word(value, "unknown"); }

  // Makes a node the map of a shape's facts: a short form becomes the fact it states.
  Node& open_facts(Node& node, ShapeId id) const {
    const Shape& shape = vocabulary.shapes[id];
    const bool has_short = shape.short_field != vocabulary::no_id;
    const bool full_short = node.is_map() && has_short && find_value(node, "value") && !shape.field("value");
    if (node.is_map() && !full_short) return node;
    const bool empty = is_word(node, "none") || is_word(node, "unknown") || is_word(node, "yes") || node.is_list();
    Node map = make(Node::Kind::map, value.range);
    if (has_short && !empty) map.entries.push_back({shape.fields[shape.short_field].name, node.range, node});
    node = map;
    return node;
  }

  Node& open_item(Node& item, const ItemForm& form, const ShapeSet& allowed) const {
    if (form.facts == ItemForm::Facts::entry) return open_facts(item.entries.front().value, *form.kind);
    if (form.facts == ItemForm::Facts::whole) return open_facts(item, *form.kind);
    if (only_kind(allowed)) {
      item = make(Node::Kind::map, value.range);
      return item;
    }
    item = single(item.scalar, make(Node::Kind::map, value.range), item.range);
    return item.entries.front().value;
  }

  struct Here {
    Node* node = nullptr;  // a map of facts; nullptr: nothing more to do
    ShapeId shape = 0;
  };

  // The list a step names, made when it is not there. What nobody had looked at stays unfinished.
  Node& open_list(Node& owner, const Field& field) const {
    const bool missing = !find_value(owner, field.name);
    Node& list = value_of(owner, field.name, value.range);
    const bool unfinished = (missing && !field.left_out_none) || unstated(list);
    const Node::Kind kind = field.named ? Node::Kind::map : Node::Kind::list;
    if (!missing && list.kind == kind) return list;
    list = make(kind, value.range);
    if (unfinished && field.named) list.entries.push_back({"more", value.range, scalar_node("yes", value.range)});
    if (unfinished && !field.named) list.items.push_back(scalar_node("more", value.range));
    return list;
  }

  static std::size_t count(const Node& list) {
    const bool unfinished = !list.items.empty() && is_more(list.items.back());
    return list.items.size() - (unfinished ? 1 : 0);
  }

  // A branch that a walk only names is opened where it is defined.
  Here open_element(Node& item, const Field& field, ShapeId owner, FieldId id) const {
    const ItemForm form = item_form(vocabulary, field.type.shapes, item);
    if (!form.kind) return {};
    if (!only_named(vocabulary, *form.kind, owner, id)) {
      return {&open_item(item, form, field.type.shapes), *form.kind};
    }
    if (!item.is_map() || !item.entries.front().value.is_scalar()) return {};
    const std::string name = item.entries.front().value.scalar;
    const Field& defining = vocabulary.shapes[vocabulary::root_shape].fields[vocabulary.shapes[*form.kind].defined_in];
    Node& list = open_list(tree, defining);
    return {&open_facts(value_of(list, name, value.range), *form.kind), *form.kind};
  }

  // The item as the value says: a map that begins with a kind is the whole item, other maps and scalars are its facts.
  void replace(Node& item, const Field& field) const {
    const ItemForm now = item_form(vocabulary, field.type.shapes, item);
    const ItemForm then = item_form(vocabulary, field.type.shapes, value);
    const bool whole_item = then.kind && !(value.is_scalar() && only_kind(field.type.shapes));
    if (whole_item || !now.kind || only_kind(field.type.shapes)) {
      item = value;
    } else {
      item = single(vocabulary.shapes[*now.kind].name, value, value.range);
    }
  }

  void forget(Node& item, const Field& field) const {
    const ItemForm form = item_form(vocabulary, field.type.shapes, item);
    if (form.kind) item = scalar_node(vocabulary.shapes[*form.kind].name, value.range);
  }

  Here numbered(Node& owner, ShapeId shape, FieldId id, std::size_t step) const {
    const Field& field = vocabulary.shapes[shape].fields[id];
    if (field.named) {
      say("named-list-number", step, {field.name});
      return {};
    }
    Node& list = open_list(owner, field);
    const std::size_t known = count(list);
    const std::size_t index = *steps[step].number - 1;
    const bool adds = index == known && last(step) && !none() && !unknown();
    if (index >= known && !adds) {
      say("no-such-number", step, {steps[step].name, std::to_string(known)});
      return {};
    }
    const auto place = list.items.begin() + static_cast<std::ptrdiff_t>(index);
    if (adds) {
      list.items.insert(place, value);
    } else if (!last(step)) {
      return open_element(*place, field, shape, id);
    } else if (none()) {
      list.items.erase(place);
    } else if (unknown()) {
      forget(*place, field);
    } else {
      replace(*place, field);
    }
    return {};
  }

  Here named(Node& owner, const Field& field, std::size_t step) const {
    const auto kind = only_kind(field.type.shapes);
    Node& list = open_list(owner, field);
    const std::string& name = steps[step].name;
    if (!kind) return {};
    if (!last(step)) return {&open_facts(value_of(list, name, value.range), *kind), *kind};
    if (none()) {
      drop(list, name);
    } else {
      value_of(list, name, value.range) = value;
    }
    return {};
  }

  // The kinds under `except` or `only`, less those given, written out.
  void subtract(Node& words, const Field& field, const ShapeSet& kinds) const {
    ShapeSet all;
    if (words.is_scalar()) all = vocabulary.kinds(words.scalar);
    for (const Node& word : words.items) all |= vocabulary.kinds(word.scalar);
    const ShapeSet rest = all & field.type.shapes & ~kinds;
    words = make(Node::Kind::list, value.range);
    for (const std::string& name : names(vocabulary, rest)) words.items.push_back(scalar_node(name, value.range));
  }

  static void add(Node& words, const Node& word) {
    if (words.is_scalar()) {
      Node list = make(Node::Kind::list, words.range);
      list.items.push_back(words);
      words = list;
    }
    words.items.push_back(word);
  }

  Node more_with(const std::string& key, const Node& word) const {
    Node list = make(Node::Kind::list, value.range);
    list.items.push_back(word);
    return single("more", single(key, list, value.range), value.range);
  }

  // No more of these kinds (`closing`), or nobody has looked for more of them.
  void limit_more(Node& list, const Field& field, std::size_t step, bool closing) const {
    const Node word = scalar_node(steps[step].name, value.range);
    const bool unfinished = count(list) < list.items.size();
    if (!unfinished) {
      if (!closing) list.items.push_back(more_with("only", word));
      return;
    }
    Node& end = list.items.back();
    if (end.is_scalar()) {
      if (closing) end = more_with("except", word);
      return;
    }
    Node& limits = end.entries.front().value;
    Node* growing = find_value(limits, closing ? "except" : "only");
    Node* shrinking = find_value(limits, closing ? "only" : "except");
    if (growing) add(*growing, word);
    if (!shrinking) return;
    subtract(*shrinking, field, vocabulary.kinds(steps[step].name));
    if (!shrinking->items.empty()) return;
    if (closing) {
      list.items.pop_back();
    } else {
      end = scalar_node("more", value.range);
    }
  }

  std::string candidates(const std::vector<std::size_t>& matches, std::size_t step) const {
    std::vector<std::string> result;
    for (const std::size_t match : matches) {
      result.push_back(show(steps, step) + "[" + std::to_string(match + 1) + "]");
    }
    return vocabulary::join(result);
  }

  std::vector<std::size_t> matching(const Node& list, const Field& field, const ShapeSet& kinds) const {
    std::vector<std::size_t> result;
    for (std::size_t i = 0; i < count(list); ++i) {
      const ItemForm form = item_form(vocabulary, field.type.shapes, list.items[i]);
      if (form.kind && kinds.test(*form.kind)) result.push_back(i);
    }
    return result;
  }

  void remove(Node& list, const Field& field, const std::vector<std::size_t>& matches, std::size_t step) const {
    for (auto match = matches.rbegin(); match != matches.rend(); ++match) {
      list.items.erase(list.items.begin() + static_cast<std::ptrdiff_t>(*match));
    }
    limit_more(list, field, step, none());
  }

  // `line.gauge`: `step` is that of `gauge`.
  Here of_kind(Node& owner, ShapeId shape, FieldId id, std::size_t step) const {
    const Field& field = vocabulary.shapes[shape].fields[id];
    const ShapeSet kinds = vocabulary.kinds(steps[step].name) & field.type.shapes;
    if (kinds.none() || steps[step].number) {
      const auto known = names(vocabulary, field.type.shapes);
      say("unknown-kind", step, {steps[step].name, field.title, vocabulary::offer(steps[step].name, known, 24)});
      return {};
    }
    Node& list = open_list(owner, field);
    const std::vector<std::size_t> matches = matching(list, field, kinds);
    if (last(step) && (none() || unknown())) {
      remove(list, field, matches, step);
    } else if (matches.empty()) {
      say("none-of-kind", step, {steps[step].name, field.name});
    } else if (matches.size() > 1) {
      say("several-of-kind", step, {steps[step].name, field.name, candidates(matches, step)});
    } else if (last(step)) {
      replace(list.items[matches.front()], field);
    } else {
      return open_element(list.items[matches.front()], field, shape, id);
    }
    return {};
  }

  Here step_into_list(Here here, FieldId id, std::size_t& i) const {
    const Field& field = vocabulary.shapes[here.shape].fields[id];
    if (!field.union_of.empty()) {
      say("computed-list", i, {field.name, vocabulary::join(field.union_of)});
      return {};
    }
    if (steps[i].number) return numbered(*here.node, here.shape, id, i);
    ++i;
    return field.named ? named(*here.node, field, i) : of_kind(*here.node, here.shape, id, i);
  }

  void run() const {
    Here here{&tree, vocabulary::root_shape};
    for (std::size_t i = 0; i < steps.size() && here.node; ++i) {
      const auto id = field_of_step(vocabulary, here.shape, steps[i], found);
      if (!id) return;
      const Field& field = vocabulary.shapes[here.shape].fields[*id];
      if (last(i) && !steps[i].number && field.union_of.empty()) {
        if (leaves_out) return drop(*here.node, field.name);
        value_of(*here.node, field.name, value.range) = value;
        return;
      }
      if (field.holds == Field::Holds::list) {
        here = step_into_list(here, *id, i);
      } else if (field.holds == Field::Holds::record) {
        ShapeId inner = 0;
        if (const auto kind = only_kind(field.type.shapes)) inner = *kind;
        here = {&open_facts(value_of(*here.node, field.name, value.range), inner), inner};
      } else if (field.holds == Field::Holds::answers) {
        Node& answers = value_of(*here.node, field.name, value.range);
        if (!answers.is_map()) answers = make(Node::Kind::map, value.range);
        value_of(answers, steps[i + 1].name, value.range) = value;
        return;
      } else {
        return say("address-past-value", i + 1, {steps[i].name});
      }
    }
    // The last step named an element and nothing under it: it was written where it was found.
  }
};

}  // namespace

void set(Node& tree, std::string_view address, const text::Range& address_range, const Node& value,
         const Vocabulary& vocabulary, text::Diagnostics& found) {
  const auto steps = read_steps(address, address_range, vocabulary, found);
  if (!steps || !tree.is_map()) return;
  Setter{tree, *steps, value, vocabulary, found}.run();
}

void unset(Node& tree, std::string_view address, const text::Range& address_range, const Vocabulary& vocabulary,
           text::Diagnostics& found) {
  const auto steps = read_steps(address, address_range, vocabulary, found);
  if (!steps || !tree.is_map()) return;
  Setter{tree, *steps, scalar_node("unknown", address_range), vocabulary, found, true}.run();
}

Node scalar_node(std::string text, const text::Range& range) {
  Node node;
  node.range = range;
  node.scalar = std::move(text);
  return node;
}

std::optional<Setting> read_setting(std::string_view text, const text::Range& range, text::Diagnostics& found) {
  const std::size_t sign = text.find('=');
  if (sign == std::string_view::npos || sign == 0 || sign + 1 == text.size()) {
    found.push_back(text::say("setting-form", range, {std::string(text)}));
    return std::nullopt;
  }
  const std::size_t length = text.size() - sign - 1;
  return Setting{std::string(text.substr(0, sign)), text::part(range, 0, sign),
                 scalar_node(std::string(text.substr(sign + 1)), text::part(range, sign + 1, length))};
}

}  // namespace headgate::site
