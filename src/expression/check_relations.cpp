// Conditions: and, or, comparisons, `is`, presence and order.
#include <algorithm>

#include "expression/check.hpp"
#include "vocabulary/names.hpp"

namespace headgate::expression {

Checker::Type Checker::logic(NodeId id) {
  bool good = true;
  for (const NodeId kid : kids(id)) good = condition(kid) && good;
  return good ? of_kind(Kind::truth) : Type{};
}

Checker::Type Checker::clash(const text::Range& where, NodeId a, const Type& ta, NodeId b, const Type& tb) {
  if (ta.kind == Kind::number && tb.kind == Kind::number) {
    const bool a_size = ta.dimension == quantity::dimensions::size;
    const bool b_size = tb.dimension == quantity::dimensions::size;
    const bool lengths = ta.dimension == quantity::dimensions::length || tb.dimension == quantity::dimensions::length;
    if (a_size != b_size && lengths) {
      const NodeId size = a_size ? a : b;
      const std::string path = node(size).op == Op::path ? written(size) : "";
      const std::string outside = path.substr(0, path.rfind('.') + 1) + "outside-diameter";
      return bad("size-against-length", where,
                 {written(size), written(a_size ? b : a),
                  "compare sizes with sizes" + (path.empty() ? "" : ", or write " + outside)});
    }
    return bad("dimension-clash", where, {written(a), described(ta), written(b), described(tb)});
  }
  return bad("type-clash", where, {written(a), described(ta), written(b), described(tb)});
}

Checker::Type Checker::compare(NodeId id) {
  const auto ids = kids(id);
  const auto types = together(ids, std::nullopt);
  if (!types) return {};
  for (std::size_t i = 0; i < ids.size(); ++i) {
    const Type& type = (*types)[i];
    if (type.kind == Kind::number || type.kind == Kind::date || type.kind == Kind::moment || type.kind == Kind::clock)
      continue;
    std::string instead;
    if (type.kind == Kind::choice || type.kind == Kind::truth) instead = "`" + written(ids[i]) + " is …`";
    if (type.kind == Kind::span) instead = "`date + span <= other date`";
    if (type.kind == Kind::season) instead = "`date is in limit.…`";
    return bad("no-order", node(ids[i]).range, {written(ids[i]), described(type), instead});
  }
  for (std::size_t i = 1; i < ids.size(); ++i) {
    if (!alike((*types)[i - 1], (*types)[i])) {
      return clash(text::join(node(ids[i - 1]).range, node(ids[i]).range), ids[i - 1], (*types)[i - 1], ids[i],
                   (*types)[i]);
    }
  }
  return of_kind(Kind::truth);
}

Checker::Type Checker::same(NodeId id) {
  const auto ids = kids(id);
  const auto types = together(ids, std::nullopt);
  if (!types) return {};
  for (std::size_t i = 0; i < ids.size(); ++i) {
    const Kind kind = (*types)[i].kind;
    if (kind == Kind::span || kind == Kind::season) {
      return bad("no-order", node(ids[i]).range, {written(ids[i]), described((*types)[i]), ""});
    }
  }
  if (!alike((*types)[0], (*types)[1])) return clash(node(id).range, ids[0], (*types)[0], ids[1], (*types)[1]);
  return of_kind(Kind::truth);
}

// A word that names a member of the left side's choice becomes that literal.
bool Checker::member(NodeId item, const Type& left) {
  const vocabulary::Choice& choice = vocabulary_.choices[left.choice];
  const std::string word = node(item).name;
  const auto found = choice.member(word);
  if (found && choice.members[*found].name == word) {
    Node& made = node(item);
    made.op = Op::literal;
    made.type = left;
    made.steps.clear();
    made.written = word;
    made.value = vocabulary::of_members(std::uint64_t{1} << *found);
    return true;
  }
  std::vector<std::string> names;
  for (const auto& one : choice.members) names.push_back(one.name);
  const std::string near = found ? choice.members[*found].name : vocabulary::offer(word, names);
  bad("unknown-member", node(item).range, {word, choice.name, near});
  return false;
}

bool Checker::kind_item(NodeId id, NodeId item, const Type& left) {
  const std::string word = node(item).name;
  const auto shapes = vocabulary_.kinds(word);
  if (shapes.none()) {
    bad("no-such-kind", node(item).range, {word, text::nearest(word, kind_names()).value_or("")});
    return false;
  }
  if ((shapes & left.shapes).none()) {
    bad("never-that-kind", node(item).range, {word, described(left)});
    return false;
  }
  Node& made = node(item);
  made.op = Op::literal;
  made.type = of_kind(Kind::kind);
  made.written = word;
  made.shapes = shapes;
  made.value.presence = vocabulary::Presence::present;
  node(id).shapes |= shapes;
  return true;
}

bool Checker::item(NodeId id, NodeId item, const Type& left) {
  if (left.kind == Kind::nothing) return false;
  const text::Range range = node(item).range;
  if (node(item).op == Op::word) {
    if (left.kind == Kind::choice) return member(item, left);
    if (left.kind == Kind::element) return kind_item(id, item, left);
    const std::string word = node(item).name;
    std::string instead;
    if (left.kind == Kind::truth) instead = word == "true" ? "yes" : word == "false" ? "no" : "yes or no";
    bad("is-with-word", range, {word, described(left), instead});
    return false;
  }
  if (left.kind == Kind::choice || left.kind == Kind::element) {
    bad("is-needs-word", range, {written(item), described(left)});
    return false;
  }
  const Type type = value(item, left);
  if (type.kind == Kind::nothing) return false;
  if (alike(type, left)) return true;
  const NodeId subject = node(id).kids[0];
  clash(text::join(node(subject).range, range), subject, left, item, type);
  return false;
}

// Elements may stand before `is`; everything else must be a value.
Checker::Type Checker::is_item(NodeId id) { return one_of(id); }

Checker::Type Checker::one_of(NodeId id) {
  const auto ids = kids(id);
  Type left = type_of(ids[0]);
  if (left.kind != Kind::element) left = usable(ids[0], left);
  bool good = left.kind != Kind::nothing;
  for (std::size_t i = 1; i < ids.size() && left.kind != Kind::nothing; ++i) good = item(id, ids[i], left) && good;
  return good ? of_kind(Kind::truth) : Type{};
}

Checker::Type Checker::in_list(NodeId id) {
  const auto ids = kids(id);
  Type left = type_of(ids[0]);
  if (left.kind != Kind::element) left = usable(ids[0], left);
  const Type right = limit(ids[1]);
  node(ids[1]).type = right;
  if (left.kind == Kind::nothing || right.kind == Kind::nothing) return {};
  const bool list = node(ids[1]).op == Op::limit && limits_[node(ids[1]).index].list;
  if (!list) {
    if (right.kind == Kind::season && left.kind == Kind::date) return of_kind(Kind::truth);
    if (right.kind == Kind::season)
      return bad("season-asks-date", node(ids[0]).range, {written(ids[0]), described(left)});
    return bad("limit-holds-no-list", node(ids[1]).range, {written(ids[1]), described(right)});
  }
  const bool kinds = left.kind == Kind::element && right.kind == Kind::kind;
  if (!kinds && !alike(left, right)) return clash(node(id).range, ids[0], left, ids[1], right);
  return of_kind(Kind::truth);
}

Checker::Type Checker::presence(NodeId id) {
  const NodeId kid = kids(id)[0];
  const Type type = type_of(kid);
  if (type.kind == Kind::nothing) return {};
  if (node(kid).op != Op::path) {
    const Op op = node(id).op;
    return bad("presence-of-value", node(kid).range,
               {op == Op::is_none  ? "none"
                : op == Op::fitted ? "fitted"
                                   : "recorded"});
  }
  return of_kind(Kind::truth);
}

Checker::Type Checker::comes(NodeId id) {
  bool good = true;
  for (const NodeId kid : kids(id)) {
    const Type type = type_of(kid);
    if (type.kind == Kind::nothing) good = false;
    if (type.kind == Kind::nothing || type.kind == Kind::element) continue;
    bad("comes-asks-things", node(kid).range, {written(kid), described(type)});
    good = false;
  }
  return good ? of_kind(Kind::truth) : Type{};
}

}  // namespace headgate::expression
