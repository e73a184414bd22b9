#include "expression/check.hpp"

#include <algorithm>
#include <utility>

#include "expression/print.hpp"

namespace headgate::expression {

namespace {

const std::vector<LimitSignature> no_limits;
const std::vector<TableSignature> no_tables;

}  // namespace

vocabulary::Type number_of(const quantity::Dimension& dimension) {
  vocabulary::Type type;
  type.kind = vocabulary::Type::Kind::number;
  type.dimension = dimension;
  return type;
}

Checker::Checker(Tree& tree, const Scope& scope, text::Diagnostics& found)
    : tree_(tree),
      scope_(scope),
      vocabulary_(*scope.vocabulary),
      limits_(scope.limits != nullptr ? *scope.limits : no_limits),
      tables_(scope.tables != nullptr ? *scope.tables : no_tables),
      found_(found) {
  for (const Variable& variable : scope.variables)
    visible_.push_back({variable.name, variable.shapes, next_variable_++});
}

Checker::Type Checker::bad(std::string_view id, const text::Range& range, const std::vector<std::string>& arguments) {
  found_.push_back(text::say(id, range, arguments));
  ok_ = false;
  return {};
}

NodeId Checker::append(Node made) {
  tree_.nodes.push_back(std::move(made));
  return static_cast<NodeId>(tree_.nodes.size() - 1);
}

std::string Checker::written(NodeId id) const { return print(tree_, id); }

bool Checker::run(const Wanted& wanted) {
  const bool as_it_stands = wanted && (wanted->kind == Kind::element || wanted->kind == Kind::list ||
                                       wanted->kind == Kind::level || wanted->kind == Kind::text);
  Type type = type_of(tree_.root, wanted);
  const bool shown_only = !wanted && type.kind == Kind::text;
  if (!as_it_stands && !shown_only) type = usable(tree_.root, type);
  if (ok_ && wanted && !alike(type, *wanted)) {
    const bool condition = wanted->kind == Kind::truth;
    bad(condition ? "not-a-condition" : "wrong-type", node(tree_.root).range,
        {condition ? written(tree_.root) : described(type), described(condition ? type : *wanted)});
  }
  put_in_order();
  return ok_;
}

bool Checker::bind(Binder& binder) {
  open_binder(binder, tree_.root, true);
  put_in_order();
  return ok_;
}

bool Checker::run_path() {
  const Type type = type_of(tree_.root);
  if (ok_ && (type.kind == Kind::list || type.kind == Kind::answers)) {
    bad("not-a-value", node(tree_.root).range, {written(tree_.root), described(type)});
  }
  put_in_order();
  return ok_;
}

Checker::Type Checker::type_of(NodeId id, const Wanted& wanted) {
  const Type type = typed(id, wanted);
  node(id).type = type;
  return type;
}

Checker::Type Checker::typed(NodeId id, const Wanted& wanted) {
  switch (node(id).op) {
    case Op::literal: return literal(id, wanted);
    case Op::both:
    case Op::either:
    case Op::opposite: return logic(id);
    case Op::compare:
    case Op::between: return compare(id);
    case Op::same: return same(id);
    case Op::is_item: return is_item(id);
    case Op::one_of: return one_of(id);
    case Op::in_list: return in_list(id);
    case Op::is_none:
    case Op::fitted:
    case Op::recorded: return presence(id);
    case Op::comes: return comes(id);
    case Op::some:
    case Op::no:
    case Op::every: return quantifier(id);
    case Op::count:
    case Op::sum:
    case Op::least_of:
    case Op::greatest_of: return fold(id, wanted);
    case Op::least:
    case Op::greatest: return extreme(id, wanted);
    case Op::add:
    case Op::subtract: return add(id, wanted);
    case Op::multiply:
    case Op::divide: return multiply(id);
    case Op::path: return path(id);
    case Op::at_mark: return at_mark(id);
    case Op::limit: return limit_value(id);
    case Op::look_up: return look_up(id);
    case Op::call: return call(id);
    case Op::choose: return choose(id, wanted);
    case Op::paper: return paper(id);
    case Op::confirmed: return of_kind(Kind::truth);
    case Op::base:
      if (!scope_.base_allowed) return bad("base-outside-limit", node(id).range);
      return scope_.base_type;
    case Op::property: return node(id).type;
    case Op::negate:
    case Op::word:
    case Op::error: break;
  }
  return bad("unknown-name", node(id).range, {node(id).name, ""});
}

Checker::Type Checker::value(NodeId id, const Wanted& wanted) { return usable(id, type_of(id, wanted)); }

Checker::Type Checker::usable(NodeId id, const Type& type) {
  const text::Range range = node(id).range;
  switch (type.kind) {
    case Kind::element: return bad("element-as-value", range, {written(id), described(type)});
    case Kind::list: return bad("list-as-value", range, {written(id)});
    case Kind::answers: return bad("answers-as-value", range, {written(id)});
    case Kind::text: return bad("text-decides", range, {written(id)});
    case Kind::level: break;
    default: return type;
  }
  const auto field = fields_.find(id);
  const bool declared = field != fields_.end() && field->second->mark != vocabulary::no_id;
  if (!declared) {
    const std::string mark = vocabulary_.marks.empty() ? "finished-grade" : vocabulary_.marks.front().name;
    return bad("level-needs-mark", range, {written(id), written(id) + " below " + mark});
  }
  wrap_mark(id, *field->second);
  return node(id).type;
}

bool Checker::condition(NodeId id) {
  const Type type = value(id);
  if (type.kind == Kind::truth || type.kind == Kind::nothing) return type.kind == Kind::truth;
  bad("not-a-condition", node(id).range, {written(id), described(type)});
  return false;
}

bool Checker::loose(NodeId id) const {
  const Node& at = node(id);
  if (at.op == Op::literal) return true;
  const bool computes = at.op == Op::add || at.op == Op::subtract || at.op == Op::multiply || at.op == Op::divide ||
                        at.op == Op::least || at.op == Op::greatest;
  return computes && std::all_of(at.kids.begin(), at.kids.end(), [this](NodeId kid) { return loose(kid); });
}

std::optional<std::vector<Checker::Type>> Checker::together(const std::vector<NodeId>& ids, const Wanted& wanted) {
  std::vector<Type> types(ids.size());
  Wanted lead = wanted;
  for (const bool literals : {false, true}) {
    for (std::size_t i = 0; i < ids.size(); ++i) {
      if (loose(ids[i]) != literals) continue;
      types[i] = value(ids[i], lead);
      if (!lead && types[i].kind != Kind::nothing) lead = types[i];
    }
  }
  const bool good =
      std::none_of(types.begin(), types.end(), [](const Type& type) { return type.kind == Kind::nothing; });
  return good ? std::optional(std::move(types)) : std::nullopt;
}

const Checker::Visible* Checker::visible(std::string_view name) const {
  for (auto at = visible_.rbegin(); at != visible_.rend(); ++at) {
    if (at->name == name) return &*at;
  }
  return nullptr;
}

// Kids before parents: wrapping appended nodes behind those that use them.
void Checker::put_in_order() {
  tree_.variables = next_variable_;
  if (!ok_) return;
  std::vector<Node> ordered;
  const std::function<NodeId(NodeId)> move = [&](NodeId id) {
    if (id == no_node) return no_node;
    Node taken = std::move(tree_.nodes[id]);
    taken.binder.list = move(taken.binder.list);
    for (NodeId& kid : taken.kids) kid = move(kid);
    ordered.push_back(std::move(taken));
    return static_cast<NodeId>(ordered.size() - 1);
  };
  tree_.root = move(tree_.root);
  tree_.nodes = std::move(ordered);
}

bool check(Tree& tree, const Scope& scope, const std::optional<vocabulary::Type>& wanted, text::Diagnostics& found) {
  return Checker(tree, scope, found).run(wanted);
}

std::optional<Tree> compile(const document::Node& source, const Scope& scope,
                            const std::optional<vocabulary::Type>& wanted, text::Diagnostics& found,
                            const Bounds& bounds) {
  auto tree = parse(source, bounds, found);
  if (!tree || !check(*tree, scope, wanted, found)) return std::nullopt;
  return tree;
}

}  // namespace headgate::expression
