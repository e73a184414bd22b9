#include <algorithm>

#include "rulebook/keys.hpp"
#include "rulebook/limits.hpp"
#include "rulebook/tables.hpp"
#include "rulebook/types.hpp"
#include "vocabulary/names.hpp"

namespace headgate::rulebook {

using document::Entry;
using document::Node;
using expression::Scope;
using text::Diagnostics;
using text::say;
using vocabulary::Type;
using vocabulary::Vocabulary;
using Kind = Type::Kind;

namespace {

// In the order of Stricter.
const Names ways_stricter = {"neither", "lower", "higher"};

Names things(const Vocabulary& vocabulary, bool choices) {
  Names names = vocabulary.names();
  for (const auto& choice : vocabulary.choices) {
    if (choices) names.push_back(choice.name);
  }
  return names;
}

void read_of(Limit& limit, const Node& node, const Vocabulary& vocabulary, Diagnostics& found) {
  auto& signature = limit.signature;
  signature.of_name = node.scalar;
  signature.of = vocabulary.kinds(node.scalar);
  if (const auto shape = vocabulary.shape(node.scalar)) signature.of.set(*shape);
  if (signature.of.any() && node.is_scalar()) return;
  found.push_back(
      say("limit-of", node.range, {node.scalar, vocabulary::offer(node.scalar, things(vocabulary, false), 0)}));
}

void read_by(Limit& limit, const Node& node, const Vocabulary& vocabulary, Diagnostics& found) {
  auto& signature = limit.signature;
  signature.of_name = node.scalar;
  signature.by_kinds = vocabulary.kinds(node.scalar);
  if (signature.by_kinds.any()) return;
  if (const auto choice = vocabulary.choice(node.scalar)) {
    signature.by_choice = *choice;
    return;
  }
  found.push_back(
      say("limit-by", node.range, {node.scalar, vocabulary::offer(node.scalar, things(vocabulary, true), 0)}));
}

void read_keys(Limit& limit, const Node& map, const Vocabulary& vocabulary, Diagnostics& found) {
  const Node* of = map.find("of");
  const Node* by = map.find("by");
  if (of) read_of(limit, *of, vocabulary, found);
  if (by) read_by(limit, *by, vocabulary, found);
  if (of && by) found.push_back(say("limit-of-and-by", by->range, {limit.signature.name}));
  if (const Node* stricter = map.find("stricter")) {
    if (const auto way = one_of(*stricter, ways_stricter, "limit-stricter", found)) {
      limit.stricter = static_cast<Stricter>(*way);
    }
  }
  if (const Node* type = map.find("type")) {
    if (const auto stated = read_type(*type, vocabulary, found)) {
      limit.signature.type = stated->type;
      limit.signature.list = stated->list;
      if (stated->list && by) found.push_back(say("limit-list-by", by->range, {limit.signature.name}));
    }
  }
}

// What the first value says by itself: a quantity's dimension.
std::optional<Type> plain_type(const Node& node) {
  if (!node.is_scalar()) return std::nullopt;
  const auto read = quantity::read_quantity(node.scalar);
  const auto* number = std::get_if<quantity::Quantity>(&read);
  if (!number) return std::nullopt;
  Type type;
  type.kind = Kind::number;
  type.dimension = number->dimension;
  return type;
}

// The first value that is not `unknown`; of a list its first item, of rows the first row.
struct First {
  const Node* node = nullptr;
  bool list = false;
};
First first_value(const WrittenLimit& written, bool by) {
  Diagnostics quiet;
  for (const WrittenValue& each : written.values) {
    const Node* node = bare(each.entry->value, quiet).node;
    if (!node || (node->is_scalar() && node->scalar == "unknown")) continue;
    if (table_in(*node)) return {table_in(*node), false};
    if (node->is_list()) return {node->items.empty() ? nullptr : node->items.data(), true};
    if (!node->is_map()) return {node, false};
    if (by && !node->entries.empty()) return {&node->entries.front().value, false};
  }
  return {};
}

Limit read_declaration(const WrittenLimit& written, const Vocabulary& vocabulary, Diagnostics& found) {
  Limit limit;
  const Node& map = written.declared->value;
  limit.signature.name = written.name;
  limit.range = written.declared->key_range;
  limit.title = text_of(map, "title", found);
  if (limit.title.empty()) limit.title = vocabulary::in_words(written.name);
  read_keys(limit, map, vocabulary, found);
  if (limit.signature.type.kind != Kind::nothing || map.find("type")) return limit;
  const First first = first_value(written, map.find("by") != nullptr);
  limit.signature.list = first.list;
  if (const auto type = first.node ? plain_type(*first.node) : std::nullopt) limit.signature.type = *type;
  return limit;
}

// A limit that holds a table has the keys and columns of its first one.
void read_table_frame(Limit& limit, const Node& map, std::vector<Table>& tables, const Vocabulary& vocabulary,
                      Diagnostics& found) {
  Table frame;
  frame.signature.name = "limit." + limit.signature.name;
  frame.title = limit.title;
  frame.range = limit.range;
  if (!expect_map(map, "The table of a limit", found)) return;
  if (!read_frame(frame, map, "The table of a limit", vocabulary, found)) return;
  limit.signature.table = static_cast<std::uint32_t>(tables.size());
  limit.signature.type = frame.signature.columns.front().type;
  for (const auto& column : frame.signature.columns) limit.signature.columns.push_back(column.name);
  tables.push_back(std::move(frame));
}

bool holds_table(const WrittenLimit& written) {
  Diagnostics quiet;
  return std::any_of(written.values.begin(), written.values.end(), [&](const WrittenValue& each) {
    const Node* node = bare(each.entry->value, quiet).node;
    return node && table_in(*node);
  });
}

class Inference {
 public:
  Inference(Declarations& all, const std::vector<WrittenLimit>& written, const Vocabulary& vocabulary,
            Vocabulary* derive)
      : all_(all), written_(written), vocabulary_(vocabulary), derive_(derive) {}

  // Each round types what only uses typed things; it ends when a round adds nothing.
  void run() {
    bool more = true;
    while (more) more = limits(nullptr, nullptr) + fields(nullptr, nullptr) > 0;
  }

  // What is left: its own problems; where nobody has any, that its type has to be stated.
  void complain(Diagnostics& found) {
    const std::size_t before = found.size();
    Diagnostics untyped;
    limits(&found, &untyped);
    fields(&found, &untyped);
    if (found.size() == before) found.insert(found.end(), untyped.begin(), untyped.end());
  }

 private:
  // The expression's type; complaints only for those nothing else can explain.
  std::optional<Type> type_of(const Node& node, const Scope& scope, Diagnostics* found) {
    Diagnostics own;
    const auto tree = expression::compile(node, scope, std::nullopt, own);
    const bool wrong = text::has_errors(own);
    forget_echoes(own, 0);
    if (found) found->insert(found->end(), own.begin(), own.end());
    if (!tree || wrong) return std::nullopt;
    const Type type = (*tree)[tree->root].type;
    return type.kind == Kind::nothing ? std::nullopt : std::optional<Type>(type);
  }

  int limits(Diagnostics* found, Diagnostics* untyped) {
    int typed = 0;
    for (std::size_t i = 0; i < all_.limits.size(); ++i) {
      Limit& limit = all_.limits[i];
      const Node& map = written_[i].declared->value;
      if (limit.signature.type.kind != Kind::nothing || map.find("type") || holds_table(written_[i])) continue;
      const First first = first_value(written_[i], map.find("by") != nullptr);
      const bool expression = first.node && first.node->is_scalar() && !first.list;
      const std::size_t before = found ? found->size() : 0;
      const auto type = expression ? type_of(*first.node, scope_of(all_, vocabulary_, limit), found) : std::nullopt;
      if (type) {
        limit.signature.type = all_.limit_names[i].type = *type;
        ++typed;
      } else if (found && found->size() == before) {
        (expression ? untyped : found)->push_back(say("limit-needs-type", limit.range, {limit.signature.name}));
      }
    }
    return typed;
  }

  int fields(Diagnostics* found, Diagnostics* untyped) {
    int typed = 0;
    if (!derive_) return typed;
    for (std::size_t s = 0; s < derive_->shapes.size(); ++s) {
      for (auto& field : derive_->shapes[s].fields) {
        if (!field.formula || field.type.kind != Kind::nothing) continue;
        const std::size_t before = found ? found->size() : 0;
        const auto scope = scope_of(all_, *derive_, static_cast<vocabulary::ShapeId>(s), field);
        const auto type = type_of(*field.formula, scope, found);
        if (type) {
          field.type = *type;
          ++typed;
        } else if (found && found->size() == before) {
          untyped->push_back(say("derived-needs-type", field.range, {field.name}));
        }
      }
    }
    return typed;
  }

  Declarations& all_;
  const std::vector<WrittenLimit>& written_;
  const Vocabulary& vocabulary_;
  Vocabulary* derive_;
};

void read_plausible(Limit& limit, const Node& map, const Vocabulary& vocabulary, Diagnostics& found) {
  const Node* node = map.find("plausible");
  const Type& type = limit.signature.type;
  if (!node || type.kind == Kind::nothing) return;
  const bool ordered = type.kind == Kind::number || type.kind == Kind::span;
  if (!node->is_scalar() || !ordered || limit.signature.table != vocabulary::no_id) {
    found.push_back(say("limit-plausible", node->range));
    return;
  }
  const auto value = read_range(*node, type, vocabulary, found);
  if (value.presence == vocabulary::Presence::present) limit.plausible = value.number;
}

}  // namespace

void forget_echoes(Diagnostics& found, std::size_t from) {
  const auto echo = [](const text::Diagnostic& each) {
    return each.id == "limit-type-unknown" || each.id == "derived-type-unknown";
  };
  found.erase(std::remove_if(found.begin() + static_cast<std::ptrdiff_t>(from), found.end(), echo), found.end());
}

Scope scope_of(const Declarations& all, const Vocabulary& vocabulary) {
  Scope scope;
  scope.vocabulary = &vocabulary;
  scope.limits = &all.limit_names;
  scope.tables = &all.table_names;
  return scope;
}

Scope scope_of(const Declarations& all, const Vocabulary& vocabulary, const Limit& limit) {
  Scope scope = scope_of(all, vocabulary);
  if (limit.signature.of.any()) scope.variables.push_back({limit.signature.of_name, limit.signature.of});
  scope.base_allowed = true;
  scope.base_type = limit.signature.type;
  return scope;
}

Scope scope_of(const Declarations& all, const Vocabulary& vocabulary, vocabulary::ShapeId shape,
               const vocabulary::Field& derived) {
  Scope scope = scope_of(all, vocabulary);
  expression::Variable self{derived.self, {}};
  self.shapes.set(shape);
  scope.variables.push_back(self);
  return scope;
}

Declarations declare(const std::vector<WrittenLimit>& written, std::vector<Table> tables, const Vocabulary& vocabulary,
                     Vocabulary* derive, Diagnostics& found) {
  Declarations all;
  all.tables = std::move(tables);
  for (const WrittenLimit& each : written) {
    all.limits.push_back(read_declaration(each, vocabulary, found));
    if (!holds_table(each)) continue;
    const First first = first_value(each, false);
    if (first.node) read_table_frame(all.limits.back(), *first.node, all.tables, vocabulary, found);
  }
  for (const Limit& limit : all.limits) all.limit_names.push_back(limit.signature);
  for (const Table& table : all.tables) all.table_names.push_back(table.signature);
  Inference inference(all, written, vocabulary, derive);
  inference.run();
  inference.complain(found);
  for (std::size_t i = 0; i < written.size(); ++i)
    read_plausible(all.limits[i], written[i].declared->value, vocabulary, found);
  return all;
}

}  // namespace headgate::rulebook
