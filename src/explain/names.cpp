// Names and values of facts, limits and elements.
#include <algorithm>
#include <cctype>

#include "explain/words.hpp"

namespace headgate::explain {

using expression::Op;
using vocabulary::Field;
using vocabulary::Presence;
using vocabulary::Shape;
using Kind = vocabulary::Type::Kind;

std::string spaced(std::string_view name) {
  std::string words(name);
  std::replace(words.begin(), words.end(), '-', ' ');
  return words;
}

namespace {

// ASCII alone: a locale of the program around us must not touch the bytes of other letters.
bool is_lower(char c) { return c >= 'a' && c <= 'z'; }
bool is_upper(char c) { return c >= 'A' && c <= 'Z'; }
constexpr char to_other_case = 'a' - 'A';

}  // namespace

std::string capital(std::string text) {
  if (!text.empty() && is_lower(text[0])) text[0] = static_cast<char>(text[0] - to_other_case);
  return text;
}

std::string lowered(std::string title) {
  if (title.size() > 1 && is_lower(title[1]) && is_upper(title[0]))
    title[0] = static_cast<char>(title[0] + to_other_case);
  return title;
}

std::string sentence(std::string text) {
  text = capital(std::move(text));
  if (text.empty()) return text;
  if (text.back() != '.' && text.back() != '?' && text.back() != '!') text += '.';
  return text;
}

std::string joined(const std::vector<std::string>& parts, std::string_view by) {
  std::string all;
  for (const auto& part : parts) {
    if (!all.empty()) all += by;
    all += part;
  }
  return all;
}

std::string with_article(const std::string& thing) {
  const bool vowel = !thing.empty() && std::string_view("aeioAEIO").find(thing[0]) != std::string_view::npos;
  return (vowel ? "an " : "a ") + thing;
}

std::string plural(const std::string& thing) {
  const bool hisses = !thing.empty() && (thing.back() == 's' || thing.back() == 'x' || thing.back() == 'h');
  return thing + (hisses ? "es" : "s");
}

bool is_plural(std::string_view name) {
  if (const std::size_t owner = name.rfind("'s "); owner != std::string_view::npos) name.remove_prefix(owner + 3);
  // The first noun decides: "months of use", "number of fittings".
  for (const std::string_view joint : {" of ", " in ", " at ", " to ", " for ", " it ", " its ", " by ", " behind ",
                                       " against ", " from ", " on ", " when "}) {
    name = name.substr(0, name.find(joint));
  }
  const auto ends = [&](std::string_view with) {
    return name.size() >= with.size() && name.substr(name.size() - with.size()) == with;
  };
  if (!ends("s")) return false;
  return !ends("ss") && !ends("us") && !ends("is") && !ends("gas") && !ends("series");
}

std::string is_or_are(std::string_view name) { return is_plural(name) ? "are" : "is"; }

namespace {

const Shape& shape_of(const Context& context, site::ElementId element) {
  return context.book->vocabulary->shapes[context.site->elements[element].shape];
}

std::string title_of(const Shape& shape) { return shape.title.empty() ? spaced(shape.name) : shape.title; }

// The shape that holds the fact a path asks for, following records the site does not have.
std::pair<const Shape*, const Field*> asked_for(const Context& context, const Evaluated& path) {
  const auto& vocabulary = *context.book->vocabulary;
  if (path.element == site::nowhere) return {nullptr, nullptr};
  const Shape* shape = &shape_of(context, path.element);
  if (path.field >= shape->fields.size()) return {shape, nullptr};
  const Field* field = &shape->fields[path.field];
  for (const auto& step : path.beyond) {
    const Shape* next = nullptr;
    for (std::size_t id = 0; id < vocabulary.shapes.size(); ++id) {
      if (field->type.shapes.test(id)) next = &vocabulary.shapes[id];
    }
    if (next == nullptr) return {shape, field};
    const auto at = next->field(step);
    if (!at) return {shape, field};
    shape = next;
    field = &next->fields[*at];
  }
  return {shape, field};
}

// "the pipe before it", when a path goes through a reference that has a name of its own.
std::string through(const Context& context, const Evaluated& path, const Shape& shape) {
  if (path.tree == nullptr) return "";
  const auto& steps = path.tree->nodes[path.node].steps;
  if (steps.size() < 2) return "";
  const std::string& name = steps[steps.size() - 2].name;
  for (const auto& other : context.book->vocabulary->shapes) {
    const auto field = other.field(name);
    if (!field || other.fields[*field].holds != Field::Holds::reference) continue;
    const std::string& title = other.fields[*field].title;
    if (name == "previous") return "what comes before it";
    if (name == "next") return "what comes after it";
    return title == title_of(shape) ? "" : "the " + title;
  }
  return "";
}

// "highest static pressure" needs no "the pressure's" before it; "material" and "size" say too little.
bool speaks_alone(const vocabulary::Vocabulary& vocabulary, const Field& field) {
  const auto has = [&](const Shape& shape) { return shape.field(field.name).has_value(); };
  return field.title != spaced(field.name) &&
         std::count_if(vocabulary.shapes.begin(), vocabulary.shapes.end(), has) == 1;
}

}  // namespace

const Field* field_of(const Context& context, const Evaluated& path) { return asked_for(context, path).second; }

const Shape& shape_asked(const Context& context, const Evaluated& path) {
  const auto* shape = asked_for(context, path).first;
  return shape == nullptr ? context.book->vocabulary->shapes[0] : *shape;
}

const site::Slot* slot_of(const Context& context, const Evaluated& path) {
  if (path.element == site::nowhere || !path.beyond.empty()) return nullptr;
  if (path.field >= shape_of(context, path.element).fields.size()) return nullptr;
  return &context.site->slot(path.element, path.field);
}

std::string subject(const Context& context, const Evaluated& path) {
  const auto [shape, field] = asked_for(context, path);
  if (shape == nullptr) return "it";
  const bool element =
      path.tree != nullptr && path.tree->nodes[path.node].op == Op::path && path.tree->nodes[path.node].steps.empty();
  if (element) return element_words(context, path.element);
  if (field == nullptr) return title_of(*shape);
  const std::string name = field->title.empty() ? spaced(field->name) : field->title;
  const std::string other = through(context, path, *shape);
  if (!other.empty()) return "the " + name + " of " + other;
  if (shape->name == "site" || (!shape->kind && speaks_alone(*context.book->vocabulary, *field))) return name;
  return "the " + title_of(*shape) + "'s " + name;
}

std::string fact_address(const Context& context, const Evaluated& path) {
  if (path.element == site::nowhere) return "";
  const auto& shape = shape_of(context, path.element);
  std::string address = path.field < shape.fields.size()
                            ? site::address(*context.site, *context.book->vocabulary, path.element, path.field)
                            : site::address(*context.site, *context.book->vocabulary, path.element);
  for (const auto& step : path.beyond) address += "." + step;
  return address;
}

std::string shape_words(const Context& context, site::ElementId element) {
  return title_of(shape_of(context, element));
}

std::string element_words(const Context& context, site::ElementId element) {
  if (element == site::nowhere) return "it";
  if (element == 0) return "the site";
  const std::string& own = context.site->elements[element].name;
  const std::string name = title_of(shape_of(context, element));
  if (!own.empty()) return "the " + name + " \"" + own + "\"";
  const std::string address = site::address(*context.site, *context.book->vocabulary, element);
  return "the " + name + " at " + address.substr(0, address.find(' '));
}

std::string limit_title(const Context& context, const Evaluated& limit) {
  if (limit.limit < 0) return "";
  const auto& of = context.book->limits[static_cast<std::size_t>(limit.limit)];
  return of.title.empty() ? spaced(of.signature.name) : lowered(of.title);
}

bool has_rows(const Context& context, const Evaluated& limit) {
  if (limit.limit < 0 || limit.tree == nullptr || limit.tree->nodes[limit.node].op != Op::limit) return false;
  const auto& of = context.book->limits[static_cast<std::size_t>(limit.limit)].signature;
  return of.by_choice != vocabulary::no_id && limit.kids.size() > 1;
}

std::vector<const Evaluated*> rows_asked(const Context& context, const Evaluated& limit) {
  std::vector<const Evaluated*> rows;
  if (!has_rows(context, limit)) return rows;
  const auto& key = limit.kids[0].value;
  if (key.presence != Presence::present) return rows;
  for (std::size_t i = 1; i < limit.kids.size(); ++i) {
    if ((key.members >> (i - 1) & 1U) != 0) rows.push_back(&limit.kids[i]);
  }
  return rows;
}

std::string value_written(const Context& context, const Evaluated& limit, std::size_t chain) {
  const auto& values = context.book->limits[static_cast<std::size_t>(limit.limit)].chain;
  const auto& value = values[chain];
  if (value.form != rulebook::LimitValue::Form::rows) return value.written;
  if (limit.chain < 0 || limit.kids.empty()) return "";
  const auto& used = values[static_cast<std::size_t>(limit.chain)].rows;
  const auto* tree = limit.kids.back().tree;
  const auto row = std::find_if(used.begin(), used.end(), [&](const auto& one) { return &one.second == tree; });
  if (row == used.end()) return "";
  for (const auto& [key, written] : value.rows) {
    if (key == row->first) return std::string(context.sources->text(written.range));
  }
  return "";
}

std::string limit_items(const Context& context, std::size_t limit, std::size_t chain) {
  const auto& of = context.book->limits[limit];
  const auto& value = of.chain[chain];
  if (value.form != rulebook::LimitValue::Form::list) return value.written;
  const auto& vocabulary = *context.book->vocabulary;
  const auto& type = of.signature.type;
  std::vector<std::string> items;
  for (const auto& item : value.list) {
    const bool kind = type.kind == Kind::kind && item.id < vocabulary.shapes.size();
    items.push_back(kind ? title_of(vocabulary.shapes[item.id]) : vocabulary::show(item, type, vocabulary));
  }
  return joined(items, ", ");
}

site::ListId list_of(const Context& context, const Evaluated& of) {
  if (of.list != site::nowhere || of.tree == nullptr) return of.list;
  const auto list = of.tree->nodes[of.node].binder.list;
  if (list == expression::no_node) return site::nowhere;
  const auto& path = of.tree->nodes[list];
  if (path.variable != expression::no_node || path.steps.size() != 1) return site::nowhere;
  const auto field = context.book->vocabulary->shapes[0].field(path.steps[0].name);
  return field ? context.site->slot(0, *field).value.id : site::nowhere;
}

const site::List& open_list(const Context& context, site::ListId asked) {
  const auto& vocabulary = *context.book->vocabulary;
  const auto field_of_list = [&](const site::List& list) -> const Field& {
    return vocabulary.shapes[context.site->elements[list.owner].shape].fields[list.field];
  };
  const site::List& list = context.site->lists[asked];
  if (field_of_list(list).union_of.empty()) return list;
  for (const auto& one : context.site->lists) {
    if (!one.complete && field_of_list(one).walk) return one;
  }
  return list;
}

std::string list_name(const Context& context, site::ListId asked) {
  const auto& list = open_list(context, asked);
  const auto& title = shape_of(context, list.owner).fields[list.field].title;
  return "the " + title + (list.owner == 0 ? "" : " of " + element_words(context, list.owner));
}

std::string not_to_its_end(const Context& context, site::ListId asked) {
  const std::string name = list_name(context, asked);
  return name + (is_plural(name) ? " are not written down to their end" : " is not written down to its end");
}

std::string kind_words(const Context& context, std::string_view kind_or_group) {
  const auto& vocabulary = *context.book->vocabulary;
  if (const auto shape = vocabulary.shape(kind_or_group)) return title_of(vocabulary.shapes[*shape]);
  const auto group = vocabulary.group_titles.find(std::string(kind_or_group));
  return group == vocabulary.group_titles.end() || group->second.empty() ? spaced(kind_or_group) : group->second;
}

std::string variable_words(const Context& context, std::string_view variable) {
  return context.book->vocabulary->kinds(variable).any() ? kind_words(context, variable) : spaced(variable);
}

std::string shown(const Context& context, const Evaluated& of) {
  const auto& vocabulary = *context.book->vocabulary;
  if (of.value.presence == Presence::none) return "none";
  const auto* node = of.tree == nullptr ? nullptr : &of.tree->nodes[of.node];
  if (node != nullptr && node->op == Op::at_mark) {
    const auto* slot = slot_of(context, of.kids[0]);
    if (slot != nullptr && !slot->written.empty()) return slot->written;
  }
  if (node != nullptr && node->op == Op::path) {
    const auto* slot = slot_of(context, of);
    if (slot != nullptr && slot->origin != site::Origin::left_out && !slot->written.empty() &&
        of.type.kind != Kind::choice && of.type.kind != Kind::element && of.type.kind != Kind::list)
      return slot->written;
  }
  if (of.type.kind == Kind::kind) return node == nullptr ? "" : kind_words(context, node->written);
  if (node != nullptr && node->op == Op::literal && !node->written.empty() && of.type.kind != Kind::choice)
    return node->written;
  if (of.type.kind == Kind::element && of.value.id != site::nowhere) return element_words(context, of.value.id);
  if (const auto rows = rows_asked(context, of); rows.size() == 1) return shown(context, *rows[0]);
  const bool of_limit = of.limit >= 0 && node != nullptr && node->op == Op::limit && !of.kids.empty();
  if (of_limit && of.chain >= 0 && of.kids.back().tree != nullptr && of.kids.back().tree != of.tree &&
      of.kids.back().tree->nodes[of.kids.back().node].op == Op::literal)
    return shown(context, of.kids.back());
  // Nobody wrote this number: it is computed, and its last digits mean nothing.
  constexpr int significant = 4;
  const bool computed =
      of.type.kind == Kind::number && of.value.presence == Presence::present && of.value.number.exact();
  if (computed && of.type.dimension != quantity::dimensions::size) {
    return quantity::show_rounded(of.value.number.lo, of.type.dimension, significant, of.value.unit);
  }
  return vocabulary::show(of.value, of.type, vocabulary);
}

}  // namespace headgate::explain
