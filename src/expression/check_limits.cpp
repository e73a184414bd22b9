// Limits, tables and papers: what the rulebook names.
#include <algorithm>

#include "expression/check.hpp"
#include "vocabulary/names.hpp"

namespace headgate::expression {

namespace {

using vocabulary::ShapeSet;

bool within(const ShapeSet& inner, const ShapeSet& outer) { return (inner & ~outer).none(); }

}  // namespace

Checker::Type Checker::limit_value(NodeId id) {
  const Type type = limit(id);
  const Node& at = node(id);
  const bool list = type.kind != Kind::nothing && at.op == Op::limit && limits_[at.index].list;
  return list ? bad("limit-is-list", at.range, {written(id)}) : type;
}

Checker::Type Checker::limit(NodeId id) {
  const std::string name = node(id).name;
  std::uint32_t index = 0;
  while (index < limits_.size() && limits_[index].name != name) ++index;
  if (index == limits_.size()) {
    std::vector<std::string> names;
    for (const LimitSignature& one : limits_) names.push_back(one.name);
    const auto near = text::nearest(name, names);
    return bad("unknown-limit", node(id).mark, {name, near ? "limit." + *near : ""});
  }
  node(id).index = index;
  const LimitSignature& signature = limits_[index];
  if (signature.table != vocabulary::no_id) return limit_table(id, index);
  if (!node(id).steps.empty())
    return bad("limit-without-column", node(id).steps[0].range, {name, node(id).steps[0].name});
  if (!limit_keys(id, signature)) return {};
  if (signature.type.kind == Kind::nothing) return bad("limit-type-unknown", node(id).range, {name});
  return signature.type;
}

// A limit that holds a table: a look-up with the limit as its first kid.
Checker::Type Checker::limit_table(NodeId id, std::uint32_t index) {
  const LimitSignature& signature = limits_[index];
  if (signature.table >= tables_.size()) return bad("limit-type-unknown", node(id).range, {signature.name});
  const TableSignature& table = tables_[signature.table];
  Node bare;
  bare.op = Op::limit;
  bare.range = bare.mark = node(id).mark;
  bare.index = index;
  bare.name = signature.name;
  const NodeId first = append(std::move(bare));
  Node& made = node(id);
  made.op = Op::look_up;
  made.index = vocabulary::no_id;
  made.kids.insert(made.kids.begin(), first);
  const Type type = row(id, table, 1, "limit." + signature.name);
  node(first).type = type;
  return type;
}

bool Checker::limit_keys(NodeId id, const LimitSignature& signature) {
  const auto ids = kids(id);
  const bool by_element = signature.of.any() || signature.by_kinds.any();
  const bool by_choice = signature.by_choice != vocabulary::no_id;
  if (!by_element && !by_choice) {
    if (ids.empty()) return true;
    bad("limit-takes-no-key", node(ids[0]).range, {signature.name});
    return false;
  }
  if (ids.size() > 1) {
    bad("limit-takes-one-key", node(ids[1]).range, {signature.name});
    return false;
  }
  if (ids.empty() && by_element) return implied_key(id, signature);
  Type wanted = of_kind(by_choice ? Kind::choice : Kind::element);
  wanted.choice = signature.by_choice;
  wanted.shapes = signature.of | signature.by_kinds;
  if (!ids.empty() && signature.by_kinds.any() && kind_key(ids[0], signature.by_kinds)) return true;
  if (!ids.empty()) return key(ids[0], wanted, "limit." + signature.name);
  bad("limit-needs-key", node(id).range, {signature.name, vocabulary_.choices[signature.by_choice].name});
  return false;
}

// `limit.fixture-units[full-bath-group]`, `preventer-loss[double-check]`: the row of a kind, without a thing of it in hand.
bool Checker::kind_key(NodeId id, const ShapeSet& kinds) {
  Node& at = node(id);
  const bool bare = at.op == Op::path && at.steps.size() == 1 && visible(at.name) == nullptr;
  const auto shape = bare ? vocabulary_.shape(at.name) : std::nullopt;
  if (!shape || !kinds.test(*shape)) return false;
  at.op = Op::literal;
  at.steps.clear();
  at.written = at.name;
  at.type = of_kind(Kind::kind);
  at.value.presence = vocabulary::Presence::present;
  at.value.id = *shape;
  return true;
}

// The only thing in hand of the right kind.
bool Checker::implied_key(NodeId id, const LimitSignature& signature) {
  const ShapeSet asked = signature.of | signature.by_kinds;
  std::vector<const Visible*> fitting;
  std::vector<std::string> names;
  for (const Visible& one : visible_) {
    if (one.shapes.none() || !within(one.shapes, asked)) continue;
    fitting.push_back(&one);
    names.push_back(one.name);
  }
  if (fitting.size() != 1) {
    if (names.empty()) {
      bad("limit-of-nothing", node(id).range, {signature.name, with_article(signature.of_name)});
    } else {
      bad("limit-of-several", node(id).range,
          {signature.name, listed(names), "limit." + signature.name + "[" + names[0] + "]"});
    }
    return false;
  }
  Node made;
  made.op = Op::path;
  made.range = made.mark = node(id).range;
  made.variable = fitting[0]->index;
  made.name = fitting[0]->name;
  made.type = of_kind(Kind::element);
  made.type.shapes = fitting[0]->shapes;
  const NodeId path = append(std::move(made));
  node(id).kids = {path};
  return true;
}

// A key is a value, or a bare member where a choice is asked, or an element where one is.
bool Checker::key(NodeId id, const Type& wanted, std::string_view of) {
  const bool bare = node(id).op == Op::path && node(id).steps.size() == 1;
  const bool names_something =
      bare && (visible(node(id).name) != nullptr || vocabulary_.shapes[0].field(node(id).name));
  if (wanted.kind == Kind::choice && bare && !names_something) return member(id, wanted);
  if (wanted.kind == Kind::kind && bare && !names_something) {
    if (kind_key(id, wanted.shapes.any() ? wanted.shapes : ~ShapeSet{})) return true;
  }
  const Type type = wanted.kind == Kind::element || wanted.kind == Kind::kind ? type_of(id) : value(id, wanted);
  node(id).type = type;
  if (type.kind == Kind::nothing) return false;
  const bool element = type.kind == Kind::element && (wanted.kind == Kind::element || wanted.kind == Kind::kind);
  if (element && (wanted.shapes.none() || within(type.shapes, wanted.shapes))) return true;
  if (!element && alike(type, wanted)) return true;
  bad("wrong-key", node(id).range, {std::string(of), described(wanted), written(id), described(type)});
  return false;
}

Checker::Type Checker::look_up(NodeId id) {
  const std::string name = node(id).name;
  const auto& tables = tables_;
  std::uint32_t index = 0;
  while (index < tables.size() && tables[index].name != name) ++index;
  if (index == tables.size()) {
    const auto field = vocabulary_.shapes[0].field(name.substr(0, name.find('.')));
    if (field && vocabulary_.shapes[0].fields[*field].type.kind == Kind::list) {
      return bad("index-into-list", node(id).mark, {name});
    }
    std::vector<std::string> names;
    for (const TableSignature& table : tables) names.push_back(table.name);
    for (const LimitSignature& one : limits_) names.push_back("limit." + one.name);
    return bad("unknown-table", node(id).mark, {name, text::nearest(name, names).value_or("")});
  }
  node(id).index = index;
  return row(id, tables[index], 0, name);
}

// Keys and column of a look-up.
Checker::Type Checker::row(NodeId id, const TableSignature& table, std::size_t first_key, const std::string& called) {
  const auto ids = kids(id);
  std::vector<std::string> key_names;
  for (const TableKey& one : table.keys) key_names.push_back(one.name);
  if (ids.size() - first_key != table.keys.size()) {
    return bad("wrong-key-count", node(id).range,
               {called, counted(table.keys.size(), "key"), std::to_string(ids.size() - first_key),
                called + "[" + listed(key_names) + "]"});
  }
  bool good = true;
  for (std::size_t i = 0; i < table.keys.size(); ++i) {
    good = key(ids[first_key + i], table.keys[i].type, called + "'s " + table.keys[i].name) && good;
  }
  std::vector<std::string> columns;
  for (const TableColumn& column : table.columns) columns.push_back(column.name);
  const auto& steps = node(id).steps;
  if (steps.empty() && columns.size() != 1) return bad("column-missing", node(id).range, {called, listed(columns)});
  std::size_t column = 0;
  if (!steps.empty()) {
    column = static_cast<std::size_t>(std::find(columns.begin(), columns.end(), steps[0].name) - columns.begin());
    if (column == columns.size()) {
      return bad("unknown-column", steps[0].range, {called, steps[0].name, vocabulary::offer(steps[0].name, columns)});
    }
  }
  node(id).column = static_cast<std::uint32_t>(column);
  return good ? table.columns[column].type : Type{};
}

// approved by ROLE [for NAME]
Checker::Type Checker::paper(NodeId id) {
  const std::string role = node(id).written;
  const auto found = vocabulary_.role(role);
  if (!found || vocabulary_.roles[*found].name != role) {
    std::vector<std::string> names;
    for (const auto& one : vocabulary_.roles) names.push_back(one.name);
    return bad("unknown-role", node(id).mark,
               {role, found ? vocabulary_.roles[*found].name : vocabulary::offer(role, names)});
  }
  node(id).column = static_cast<std::uint32_t>(*found);
  const std::string subject = node(id).name;
  if (!subject.empty() && scope_.subjects != nullptr &&
      std::find(scope_.subjects->begin(), scope_.subjects->end(), subject) == scope_.subjects->end()) {
    return bad("unknown-subject", node(id).steps[0].range,
               {subject, text::nearest(subject, *scope_.subjects).value_or("")});
  }
  return of_kind(Kind::truth);
}

}  // namespace headgate::expression
