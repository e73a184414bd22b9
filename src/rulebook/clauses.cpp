#include <algorithm>

#include "rulebook/keys.hpp"
#include "rulebook/rules.hpp"

namespace headgate::rulebook {

using document::Entry;
using document::Node;
using expression::NodeId;
using expression::Op;
using expression::Scope;
using expression::Tree;
using text::Diagnostics;
using text::say;
using vocabulary::Type;
using Mode = Clause::Mode;

namespace {

Type truth() {
  Type type;
  type.kind = Type::Kind::truth;
  return type;
}

std::optional<Clause> read_single(const Node& node, const Scope& scope, const RuleReader& reader) {
  auto tree = expression::compile(node, scope, truth(), reader.found);
  if (!tree) return std::nullopt;
  say_literals(*tree, reader.found);
  Clause clause;
  clause.tree = std::move(tree);
  clause.range = node.range;
  return clause;
}

bool is_mode(const Entry& entry) { return entry.key == "any" || entry.key == "all"; }

std::optional<Clause> read_labelled(const Entry& entry, const Scope& scope, const RuleReader& reader);

std::optional<Clause> read_kids(const Node& map, Mode mode, const Scope& scope, const RuleReader& reader) {
  Clause clause;
  clause.mode = mode;
  clause.range = map.range;
  bool good = true;
  if (!map.is_map() || map.entries.empty()) {
    reader.found.push_back(say("clause-labels", map.range));
    return std::nullopt;
  }
  for (const Entry& entry : map.entries) {
    auto kid = read_labelled(entry, scope, reader);
    good = good && kid;
    if (kid) clause.kids.push_back(std::move(*kid));
  }
  return good ? std::optional<Clause>(std::move(clause)) : std::nullopt;
}

// `any:` and `all:` are modes, every other key is a label.
std::optional<Clause> read_labelled(const Entry& entry, const Scope& scope, const RuleReader& reader) {
  if (is_mode(entry)) return read_kids(entry.value, entry.key == "any" ? Mode::any : Mode::all, scope, reader);
  auto clause = read_clause(entry.value, Mode::all, scope, reader);
  if (clause) clause->label = entry.key;
  return clause;
}

bool states_source(const Node& node) { return node.is_map() && node.find("if"); }

// `{if: …, source: …}`, or an expression or clauses without a source of their own.
std::optional<Clause> read_exception(const Node& node, const Scope& scope, const RuleReader& reader) {
  if (!states_source(node)) return read_clause(node, Mode::all, scope, reader);
  expect_keys(node, {"if", "source"}, "An exception", reader.found);
  auto clause = read_clause(*node.find("if"), Mode::all, scope, reader);
  if (const Node* source = node.find("source")) {
    const auto sources = reader.documents.cite(*source, reader.found);
    if (clause) clause->sources = sources;
  } else {
    reader.found.push_back(say("exception-without-source", node.range));
  }
  return clause;
}

}  // namespace

std::optional<Clause> read_clause(const Node& node, Mode labelled, const Scope& scope, const RuleReader& reader) {
  if (node.is_scalar()) return read_single(node, scope, reader);
  if (!node.is_map()) {
    reader.found.push_back(say("clause-labels", node.range));
    return std::nullopt;
  }
  if (node.entries.size() == 1 && is_mode(node.entries[0])) return read_labelled(node.entries[0], scope, reader);
  return read_kids(node, labelled, scope, reader);
}

std::vector<Clause> read_exceptions(const Node& node, const Scope& scope, const RuleReader& reader) {
  std::vector<Clause> exceptions;
  const auto take = [&](std::optional<Clause> clause, const std::string& label) {
    if (!clause) return;
    if (!label.empty()) clause->label = label;
    exceptions.push_back(std::move(*clause));
  };
  const bool single_mode = node.is_map() && node.entries.size() == 1 && is_mode(node.entries[0]);
  const Node* labels = &node;
  if (single_mode && node.entries[0].key == "any") labels = &node.entries[0].value;
  if (!labels->is_map() || states_source(*labels) || (single_mode && labels == &node)) {
    take(read_exception(*labels, scope, reader), "");
    return exceptions;
  }
  if (labels->entries.empty()) reader.found.push_back(say("clause-labels", labels->range));
  for (const Entry& entry : labels->entries) {
    if (is_mode(entry))
      take(read_labelled(entry, scope, reader), "");
    else
      take(read_exception(entry.value, scope, reader), entry.key);
  }
  return exceptions;
}

namespace {

bool counts(const expression::Node& node) {
  const double value = node.value.number.lo;
  return node.type.dimension.plain() && node.value.number.exact() && (value == 0 || value == 1 || value == 2);
}

void say_compared(const Tree& tree, NodeId id, Diagnostics& found) {
  if (id == expression::no_node) return;
  const expression::Node& node = tree[id];
  switch (node.op) {
    case Op::literal:
      if (node.type.kind == Type::Kind::number && !counts(node)) {
        found.push_back(say("literal-threshold", node.range, {node.written}));
      }
      return;
    case Op::add:
    case Op::subtract:
    case Op::multiply:
    case Op::divide:
    case Op::negate:
    case Op::least:
    case Op::greatest:
    case Op::choose:
      for (std::size_t i = node.op == Op::choose ? 1 : 0; i < node.kids.size(); ++i)
        say_compared(tree, node.kids[i], found);
      return;
    default: return;
  }
}

}  // namespace

void say_literals(const Tree& tree, Diagnostics& found) {
  for (const expression::Node& node : tree.nodes) {
    const bool compares =
        node.op == Op::compare || node.op == Op::between || node.op == Op::one_of || node.op == Op::is_item;
    if (!compares) continue;
    for (const NodeId kid : node.kids) say_compared(tree, kid, found);
  }
}

}  // namespace headgate::rulebook
