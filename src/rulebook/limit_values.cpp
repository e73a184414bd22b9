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
using expression::Tree;
using quantity::Interval;
using text::Diagnostics;
using text::say;
using vocabulary::Presence;
using vocabulary::Type;
using vocabulary::Value;
using vocabulary::Vocabulary;
using Form = LimitValue::Form;
using Kind = Type::Kind;

namespace {

Tree literal(const Node& node, const Type& type, const Value& value, const Scope& scope) {
  expression::Node one;
  one.op = expression::Op::literal;
  one.range = one.mark = node.range;
  one.type = type;
  one.value = value;
  one.written = node.scalar;
  Tree tree;
  tree.nodes.push_back(one);
  tree.root = 0;
  tree.variables = static_cast<std::uint32_t>(scope.variables.size());
  tree.range = node.range;
  return tree;
}

// Stand in data and limits, never in expressions.
bool only_plain(Kind kind) {
  return kind == Kind::season || kind == Kind::span || kind == Kind::clock || kind == Kind::text ||
         kind == Kind::level || kind == Kind::kind;
}

bool exact(const Value& value, const Type& type) {
  if (value.presence != Presence::present) return false;
  switch (type.kind) {
    case Kind::choice: return value.members != 0 && (value.members & (value.members - 1)) == 0;
    case Kind::truth: return value.truth != quantity::Truth::undecided;
    case Kind::number:
    case Kind::date:
    case Kind::moment: return value.number.exact();
    default: return true;
  }
}

bool begins_with_digit(const std::string& text) {
  return !text.empty() && ((text[0] >= '0' && text[0] <= '9') || text[0] == '-');
}

struct Reader {
  const Limit& limit;
  Declarations& all;
  const Vocabulary& vocabulary;
  Diagnostics& found;

  const Type& type() const { return limit.signature.type; }
  std::optional<Tree> tree_of(const Node& node) const;
  std::optional<LimitValue> list(const Node& node) const;
  std::optional<LimitValue> rows(const Node& node) const;
  std::optional<LimitValue> flat_rows(const Node& node) const;
  std::optional<LimitValue> table(const Node& node) const;
  std::optional<LimitValue> one(const Node& node) const;
  bool row(const Entry& entry, LimitValue& into) const;
  std::vector<std::size_t> keys_of(const Entry& entry) const;
  std::vector<std::size_t> all_keys() const;
};

std::string usual_words(const Interval& usual, const expression::Node& literal) {
  if (literal.type.kind != Kind::span) return quantity::show(usual, literal.type.dimension, literal.value.unit);
  return quantity::show(usual, {}) + " days";
}

// The expression of one value; a plain one outside what the limit calls plausible is likely a slip.
std::optional<Tree> Reader::tree_of(const Node& node) const {
  auto tree = read_tree(node, type(), scope_of(all, vocabulary, limit), found);
  if (!tree || !limit.plausible) return tree;
  const expression::Node& literal = (*tree)[tree->root];
  if (literal.op != expression::Op::literal || literal.value.presence != Presence::present) return tree;
  const bool span = type().kind == Kind::span;
  const double step = span ? 1 : quantity::grid(type().dimension);
  const double amount = quantity::snap(literal.value.number.lo * (span ? days_in(literal.value.span_unit) : 1), step);
  const Interval usual = *limit.plausible;
  if (amount < quantity::snap(usual.lo, step) || amount > quantity::snap(usual.hi, step)) {
    found.push_back(
        say("limit-implausible", node.range, {node.scalar, limit.signature.name, usual_words(usual, literal)}));
  }
  return tree;
}

std::optional<LimitValue> Reader::list(const Node& node) const {
  if (!node.is_list()) {
    found.push_back(say("limit-wants-list", node.range, {limit.signature.name}));
    return std::nullopt;
  }
  LimitValue value;
  value.form = Form::list;
  for (const Node& item : node.items) {
    const std::size_t before = found.size();
    const Value each = read_plain(item, type(), vocabulary, found);
    if (found.size() == before && !exact(each, type()))
      found.push_back(say("limit-list-item", item.range, {item.scalar}));
    value.list.push_back(each);
    value.written += (value.written.empty() ? "" : ", ") + item.scalar;
  }
  return value;
}

std::vector<std::size_t> Reader::all_keys() const {
  std::vector<std::size_t> keys;
  if (limit.signature.by_choice != vocabulary::no_id) {
    for (std::size_t i = 0; i < vocabulary.choices[limit.signature.by_choice].members.size(); ++i) keys.push_back(i);
  }
  for (std::size_t i = 0; i < vocabulary.shapes.size(); ++i) {
    if (limit.signature.by_kinds.test(i)) keys.push_back(i);
  }
  return keys;
}

std::vector<std::size_t> Reader::keys_of(const Entry& entry) const {
  const auto& signature = limit.signature;
  std::vector<std::size_t> keys;
  Names known;
  if (signature.by_choice != vocabulary::no_id) {
    const auto& choice = vocabulary.choices[signature.by_choice];
    if (const auto member = choice.member(entry.key)) keys.push_back(*member);
    for (const auto& member : choice.members) known.push_back(member.name);
  } else {
    const auto kinds = vocabulary.kinds(entry.key);
    const bool inside = kinds.any() && (kinds & signature.by_kinds) == kinds;
    for (const std::size_t key : all_keys()) {
      if (inside && kinds.test(key)) keys.push_back(key);
      known.push_back(vocabulary.shapes[key].name);
    }
  }
  if (keys.empty()) {
    found.push_back(
        say("limit-row", entry.key_range, {entry.key, signature.of_name, vocabulary::offer(entry.key, known)}));
  }
  return keys;
}

bool Reader::row(const Entry& entry, LimitValue& into) const {
  const std::vector<std::size_t> keys = keys_of(entry);
  const auto tree = tree_of(entry.value);
  if (keys.empty() || !tree) return false;
  for (const std::size_t key : keys) {
    for (const auto& [before, other] : into.rows) {
      if (before != key) continue;
      found.push_back(say("limit-row-twice", entry.key_range, {entry.key}, other.range, "its row before"));
      return false;
    }
    into.rows.emplace_back(key, *tree);
  }
  into.written += (into.written.empty() ? "" : ", ") + entry.key + " " + entry.value.scalar;
  return true;
}

std::optional<LimitValue> Reader::rows(const Node& node) const {
  LimitValue value;
  value.form = Form::rows;
  bool good = true;
  for (const Entry& entry : node.entries) good = row(entry, value) && good;
  return good ? std::optional<LimitValue>(value) : std::nullopt;
}

// One value for every kind or member.
std::optional<LimitValue> Reader::flat_rows(const Node& node) const {
  const auto tree = tree_of(node);
  if (!tree) return std::nullopt;
  LimitValue value;
  value.form = Form::rows;
  value.written = node.scalar;
  for (const std::size_t key : all_keys()) value.rows.emplace_back(key, *tree);
  return value;
}

std::optional<LimitValue> Reader::table(const Node& node) const {
  const Node* map = table_in(node);
  if (!map || !map->is_map()) {
    found.push_back(say("limit-wants-table", node.range, {limit.signature.name}));
    return std::nullopt;
  }
  expect_keys(*map, {"keys", "columns", "rows", "over"}, "The table of a limit", found);
  Table table;
  const Table frame = all.tables[limit.signature.table];
  table.signature.name = frame.signature.name;
  table.title = frame.title;
  table.range = node.range;
  const std::size_t before = found.size();
  if (!read_frame(table, *map, "The table of a limit", vocabulary, found)) return std::nullopt;
  if (!same_frame(table, frame)) {
    found.push_back(say("limit-other-frame", node.range, {limit.signature.name}, frame.range, "the limit"));
  }
  if (const Node* rows = map->find("rows"))
    read_rows(table, *rows, map->find("over"), vocabulary, found);
  else
    found.push_back(say("table-needs", node.range, {frame.signature.name, "rows"}));
  if (found.size() != before) return std::nullopt;
  LimitValue value;
  value.form = Form::table;
  value.table = static_cast<std::uint32_t>(all.tables.size());
  value.written = "a table of " + std::to_string(table.rows.size()) + " rows";
  all.tables.push_back(std::move(table));
  return value;
}

std::optional<LimitValue> Reader::one(const Node& node) const {
  if (!node.is_scalar()) {
    found.push_back(
        say(node.is_map() ? "limit-rows-without-by" : "limit-not-list", node.range, {limit.signature.name}));
    return std::nullopt;
  }
  auto tree = tree_of(node);
  if (!tree) return std::nullopt;
  LimitValue value;
  value.form = Form::expression;
  value.written = node.scalar;
  value.tree = std::move(tree);
  return value;
}

}  // namespace

std::optional<Tree> read_tree(const Node& node, const Type& type, const Scope& scope, Diagnostics& found) {
  if (!node.is_scalar()) {
    found.push_back(say("value-not-plain", node.range));
    return std::nullopt;
  }
  if (node.scalar == "unknown") return literal(node, type, {}, scope);
  Diagnostics problems;
  const Value value = read_plain(node, type, *scope.vocabulary, problems);
  const bool good = !text::has_errors(problems);
  if (good && exact(value, type)) return literal(node, type, value, scope);
  if (only_plain(type.kind)) {
    if (good) problems.push_back(say("limit-value-coarse", node.range, {node.scalar}));
    found.insert(found.end(), problems.begin(), problems.end());
    return std::nullopt;
  }
  if (node.in_braces && begins_with_digit(node.scalar) && !good) {
    found.insert(found.end(), problems.begin(), problems.end());
    return std::nullopt;
  }
  if (good && value.presence == Presence::present) {
    found.push_back(say("limit-value-coarse", node.range, {node.scalar}));
    return std::nullopt;
  }
  return expression::compile(node, scope, type, found);
}

std::optional<LimitValue> read_limit_value(const Node& node, const Limit& limit, Declarations& all,
                                           const Vocabulary& vocabulary, Diagnostics& found) {
  if (limit.signature.type.kind == Kind::nothing) return std::nullopt;  // said when the limit was declared
  const Bare value = bare(node, found);
  if (!value.node) return std::nullopt;
  const Reader reader{limit, all, vocabulary, found};
  std::optional<LimitValue> result;
  const bool by = limit.signature.by_kinds.any() || limit.signature.by_choice != vocabulary::no_id;
  if (value.node->is_scalar() && value.node->scalar == "unknown") {
    result.emplace();
    result->written = "unknown";
  } else if (limit.signature.table != vocabulary::no_id) {
    result = reader.table(*value.node);
  } else if (limit.signature.list) {
    result = reader.list(*value.node);
  } else if (by) {
    result = value.node->is_map() ? reader.rows(*value.node) : reader.flat_rows(*value.node);
  } else {
    result = reader.one(*value.node);
  }
  if (!result) return std::nullopt;
  result->doubt = value.doubt;
  result->range = value.node->range;
  return result;
}

}  // namespace headgate::rulebook
