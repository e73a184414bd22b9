#include <algorithm>
#include <set>

#include "vocabulary/coarse.hpp"
#include "vocabulary/loading.hpp"
#include "vocabulary/names.hpp"

namespace headgate::vocabulary {
namespace {

using document::Entry;
using document::Node;
using Kind = Type::Kind;

const std::vector<std::string> fact_keys = {"type", "title", "ask",      "says",   "hint",           "plausible",
                                            "at",   "cost",  "mark",     "of",     "never-negative", "named",
                                            "walk", "union", "left-out", "on-file"};
const std::vector<std::string> list_keys = {"of", "named", "walk", "union", "left-out", "on-file"};
const std::vector<std::string> costs = {"know", "look", "measure", "dig"};

bool declare_field(Loading& at, const Shape& shape, const Entry& entry) {
  return check_name(at, entry, true) &&
         declare(at, "field/" + shape.name + "/" + entry.key, entry.key, entry.key_range);
}

// A key that only facts of another type have.
bool misplaced(Loading& at, const Node& fact, std::string_view key, bool fits, std::string_view wanted) {
  const Entry* entry = fact.entry(key);
  if (!entry || fits) return !entry;
  at.found.push_back(text::say("fact-key-misplaced", entry->key_range, {std::string(key), std::string(wanted)}));
  return true;
}

void read_asking(Loading& at, Field& field, const Node& fact) {
  if (const std::string title = text_of(at, fact, "title"); !title.empty()) field.title = title;
  field.ask = text_of(at, fact, "ask");
  field.hint = text_of(at, fact, "hint");
  if (const Node* stop = fact.find("at")) {
    field.stop = text_of(at, fact, "at");
    std::vector<std::string> stops;
    for (const Stop& each : at.vocabulary.stops) stops.push_back(each.name);
    if (stop->is_scalar() && std::find(stops.begin(), stops.end(), field.stop) == stops.end()) {
      at.found.push_back(text::say("no-such-stop", stop->range, {field.stop, offer(field.stop, stops)}));
    }
  }
  if (const Node* cost = fact.find("cost")) {
    const std::string name = text_of(at, fact, "cost");
    const auto place = std::find(costs.begin(), costs.end(), name);
    if (place != costs.end()) {
      field.cost = static_cast<Cost>(place - costs.begin());
    } else if (cost->is_scalar()) {
      at.found.push_back(text::say("unknown-cost", cost->range, {name, offer(name, costs)}));
    }
  }
}

void read_measure(Loading& at, Field& field, const Node& fact) {
  // A computed value may have no type yet.
  const bool yes_no = field.type.kind == Kind::truth || field.type.kind == Kind::nothing;
  if (!misplaced(at, fact, "says", yes_no, "a yes or no")) field.says = text_of(at, fact, "says");
  const bool measured = field.type.kind == Kind::number || field.type.kind == Kind::level;
  if (!misplaced(at, fact, "plausible", measured, "a quantity, number, depth or height")) {
    field.plausible = read_span_of_amounts(*fact.find("plausible"), field.type.dimension, at.found);
    if (field.plausible) field.usual = fact.find("plausible")->scalar;
  }
  if (!misplaced(at, fact, "never-negative", measured, "a quantity, number, depth or height")) {
    field.never_negative = flag_of(at, fact, "never-negative");
  }
  if (misplaced(at, fact, "mark", field.type.kind == Kind::level, "a depth or height")) return;
  const std::string name = text_of(at, fact, "mark");
  if (const auto mark = at.vocabulary.mark(name)) {
    field.mark = *mark;
    return;
  }
  std::vector<std::string> marks;
  for (const Mark& each : at.vocabulary.marks) marks.push_back(each.name);
  at.found.push_back(text::say("unknown-mark", fact.find("mark")->range, {name, offer(name, marks)}));
}

void read_left_out(Loading& at, Field& field, const Node& fact) {
  const Node* node = fact.find("left-out");
  if (!node) return;
  field.left_out_none = node->is_scalar() && node->scalar == "none";
  if (!field.left_out_none) at.found.push_back(text::say("left-out-none", node->range));
}

void read_list(Loading& at, Field& field, const Node& fact) {
  const bool list = field.type.kind == Kind::list;
  if (!misplaced(at, fact, "of", list, "a list")) field.type.shapes = read_kinds(at, words_of(at, fact, "of"));
  if (!misplaced(at, fact, "named", list, "a list")) field.named = flag_of(at, fact, "named");
  if (!misplaced(at, fact, "walk", list, "a list")) field.walk = flag_of(at, fact, "walk");
  if (!misplaced(at, fact, "on-file", list, "a list")) field.on_file = flag_of(at, fact, "on-file");
  if (!misplaced(at, fact, "left-out", list, "a list")) read_left_out(at, field, fact);
  if (!misplaced(at, fact, "union", list, "a list")) {
    for (const Node* part : words_of(at, fact, "union")) field.union_of.push_back(part->scalar);
  }
  if (!list) return;
  const bool has_of = fact.is_map() && fact.find("of");
  if (has_of == !field.union_of.empty()) at.found.push_back(text::say("list-of-nothing", field.range, {field.name}));
  if (field.named && field.type.shapes.count() > 1) {
    at.found.push_back(text::say("named-list-kinds", field.range, {field.name}));
  }
}

void take(Field& field, const Declared& declared) {
  field.type = declared.type;
  field.holds = declared.holds;
  field.direction = declared.direction;
  field.depth = declared.depth;
}

void add_field(Loading& at, ShapeId id, const Entry& entry) {
  Shape& shape = at.vocabulary.shapes[id];
  if (!declare_field(at, shape, entry)) return;
  Field field;
  field.name = entry.key;
  field.title = in_words(entry.key);
  field.range = entry.key_range;
  const Node* type = entry.value.is_scalar() ? &entry.value : entry.value.find("type");
  if (!type) {
    at.found.push_back(text::say("fact-without-type", entry.key_range, {entry.key}));
    return;
  }
  const auto declared = read_type(at, *type);
  if (declared) take(field, *declared);
  if (entry.value.is_map()) check_keys(at, entry.value, fact_keys, "a fact");
  if (declared) {
    read_asking(at, field, entry.value);
    read_measure(at, field, entry.value);
    read_list(at, field, entry.value);
  }
  // The law's papers are what the site shows; none shown is none on file.
  if (id == root_shape && field.name == "papers" && field.type.kind == Kind::list) field.left_out_none = true;
  shape.fields.push_back(field);
}

const Node* formula_of(Loading& at, const Entry& entry) {
  if (entry.value.is_scalar()) return &entry.value;
  const Node* formula = entry.value.find("is");
  if (formula && formula->is_scalar()) return formula;
  at.found.push_back(text::say("derived-without-formula", entry.key_range, {entry.key}));
  return nullptr;
}

// A fact that can be stated may be computed too: the formula joins the fact.
void derive_known(Loading& at, Shape& shape, const WrittenDerived& written, const Node* formula) {
  const Entry& entry = *written.entry;
  Field& field = shape.fields[*shape.field(entry.key)];
  const bool computable = field.holds == Field::Holds::fact && field.type.kind != Kind::text;
  if (!computable || (entry.value.is_map() && entry.value.find("type"))) {
    at.found.push_back(text::say("declared-twice", entry.key_range, {entry.key}, field.range, "declared here before"));
    return;
  }
  field.holds = Field::Holds::derived;
  field.formula = formula;
  field.self = written.of;
}

void derive_new(Loading& at, Shape& shape, const WrittenDerived& written, const Node* formula) {
  const Entry& entry = *written.entry;
  if (!declare_field(at, shape, entry)) return;
  Field field;
  field.name = entry.key;
  field.title = in_words(entry.key);
  field.range = entry.key_range;
  if (const Node* type = entry.value.is_map() ? entry.value.find("type") : nullptr) {
    const auto declared = read_type(at, *type);
    if (declared && declared->holds != Field::Holds::fact) {
      at.found.push_back(text::say("derived-type", type->range, {entry.key}));
    } else if (declared) {
      take(field, *declared);
    }
  }
  if (entry.value.is_map()) {
    read_asking(at, field, entry.value);
    read_measure(at, field, entry.value);
  }
  field.holds = Field::Holds::derived;
  field.formula = formula;
  field.self = written.of;
  shape.fields.push_back(field);
}

void derive(Loading& at, const WrittenDerived& written, const Node* formula) {
  Shape& shape = at.vocabulary.shapes[written.shape];
  const auto known = shape.field(written.entry->key);
  if (known && shape.fields[*known].formula == nullptr) {
    derive_known(at, shape, written, formula);
  } else {
    derive_new(at, shape, written, formula);
  }
}

// What a group says of all its kinds holds where neither the kind itself, as a fact or as a formula, nor a group
// inside it says its own.
bool says_its_own(const Loading& at, const WrittenDerived& written) {
  const Shape& shape = at.vocabulary.shapes[written.shape];
  const auto known = shape.field(written.entry->key);
  if (!known || shape.fields[*known].formula == nullptr) return known.has_value();
  const ShapeSet inner = at.vocabulary.kinds(shape.fields[*known].self);
  const ShapeSet outer = at.vocabulary.kinds(written.of);
  return inner != outer && (inner & ~outer).none();
}

// Kinds before groups, small groups before those that hold them.
std::vector<WrittenDerived> narrow_first(const Loading& at) {
  std::vector<WrittenDerived> sorted = at.derived;
  const auto width = [&](const WrittenDerived& each) {
    return each.by_group ? at.vocabulary.kinds(each.of).count() : std::size_t{0};
  };
  std::stable_sort(sorted.begin(), sorted.end(),
                   [&](const WrittenDerived& a, const WrittenDerived& b) { return width(a) < width(b); });
  return sorted;
}

}  // namespace

void read_shape_facts(Loading& at) {
  const auto read = [&](ShapeId shape, const Entry& entry) {
    if (entry.value.is_list()) {
      at.found.push_back(text::say("vocabulary-map", entry.value.range, {entry.key}));
    } else {
      add_field(at, shape, entry);
    }
  };
  for (const auto& [shape, entry] : at.facts) read(shape, *entry);
  // What a group says of all its kinds holds where the kind itself does not say its own. A mistake is said once.
  for (const auto& [group, entry] : at.group_facts) {
    const ShapeSet kinds = at.vocabulary.kinds(group);
    bool wrong = false;
    for (std::size_t id = 0; id < at.vocabulary.shapes.size() && !wrong; ++id) {
      if (!kinds.test(id) || at.vocabulary.shapes[id].field(entry->key)) continue;
      const auto before = at.found.size();
      read(static_cast<ShapeId>(id), *entry);
      wrong = at.found.size() != before;
    }
  }
}

void read_derived(Loading& at) {
  std::vector<std::string> keys = {"is"};
  for (const std::string& key : fact_keys) {
    if (std::find(list_keys.begin(), list_keys.end(), key) == list_keys.end()) keys.push_back(key);
  }
  std::set<const Entry*> said;  // a group's mistake is said once, not for each of its kinds
  for (const WrittenDerived& written : narrow_first(at)) {
    const Entry& entry = *written.entry;
    const auto unsaid = at.found.size();
    if (entry.value.is_map()) check_keys(at, entry.value, keys, "a derived value");
    const Node* formula = formula_of(at, entry);
    if (formula && !(written.by_group && says_its_own(at, written))) derive(at, written, formula);
    if (at.found.size() == unsaid || !written.by_group || said.insert(&entry).second) continue;
    at.found.erase(at.found.begin() + static_cast<std::ptrdiff_t>(unsaid), at.found.end());
  }
}

}  // namespace headgate::vocabulary
