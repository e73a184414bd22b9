// The pass that gives every node of a parsed tree its type and resolves every name; behind check().
//
//   Checker(tree, scope, found).run(Type{truth})   pipe.least-cover >= 40 in    -> true; the literal is a length
//                                                  pipe.least-cover >= 40       -> false, "number-needs-unit"
//
// A node in error has Type::Kind::nothing, and what uses it stays silent: one mistake, one diagnostic.
// Nodes change in place: a path that ends in a member's property becomes a `property` over the path, a
// level with a declared mark an `at_mark`, a bare word a literal; finally all are put in evaluation order.
#pragma once

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "expression/describe.hpp"
#include "expression/parse.hpp"
#include "expression/scope.hpp"
#include "expression/tree.hpp"

namespace headgate::expression {

class Checker {
 public:
  Checker(Tree& tree, const Scope& scope, text::Diagnostics& found);

  bool run(const std::optional<vocabulary::Type>& wanted);
  bool bind(Binder& binder);  // of `each:`; the tree is its list
  bool run_path();            // a path shown in a text: any value, or a thing, which is shown by its kind

 private:
  using Type = vocabulary::Type;
  using Kind = vocabulary::Type::Kind;
  using Wanted = std::optional<Type>;
  struct Visible {
    std::string name;
    vocabulary::ShapeSet shapes;
    std::uint32_t index = 0;
  };

  // Any type; `wanted` is only what a literal would like to be.
  Type type_of(NodeId id, const Wanted& wanted = std::nullopt);
  Type typed(NodeId id, const Wanted& wanted);
  // A type that can be computed with: no element, list, text; a level gets its mark.
  Type value(NodeId id, const Wanted& wanted = std::nullopt);
  Type usable(NodeId id, const Type& type);  // the same for a node whose type is known
  bool condition(NodeId id);
  // Values that should be of one type: literals take theirs from the others. Nothing when one is in error.
  std::optional<std::vector<Type>> together(const std::vector<NodeId>& ids, const Wanted& wanted);
  bool loose(NodeId id) const;  // made of literals only

  // Relations (check_relations.cpp).
  Type logic(NodeId id);
  Type compare(NodeId id);
  Type same(NodeId id);
  Type is_item(NodeId id);
  Type one_of(NodeId id);
  bool item(NodeId id, NodeId item, const Type& left);
  bool member(NodeId item, const Type& left);
  bool kind_item(NodeId id, NodeId item, const Type& left);
  Type in_list(NodeId id);
  Type presence(NodeId id);
  Type comes(NodeId id);
  Type clash(const text::Range& where, NodeId a, const Type& ta, NodeId b, const Type& tb);

  // Arithmetic (check_arithmetic.cpp).
  Type literal(NodeId id, const Wanted& wanted);
  Type add(NodeId id, const Wanted& wanted);
  Type step_date(NodeId id, const Type& from, const Type& by);
  Type add_numbers(NodeId id, const Type& a, const Type& b);
  Wanted beside(const Type& other, bool adds, const Wanted& wanted) const;
  Type factor(NodeId id, const Wanted& wanted);
  Type multiply(NodeId id);
  Type extreme(NodeId id, const Wanted& wanted);
  Type choose(NodeId id, const Wanted& wanted);
  Type call(NodeId id);

  // Names (check_names.cpp, check_limits.cpp).
  Type path(NodeId id);
  std::optional<Type> start(NodeId id);
  Type unknown_start(NodeId id);
  Type walk(NodeId id, Type at, const text::Range& first);
  const vocabulary::Field* field(const Type& of, const Step& step);
  Type no_such_field(const vocabulary::ShapeSet& shapes, const Step& step);
  std::optional<std::uint32_t> property_of(const Type& choice, const Step& step);
  void wrap_property(NodeId id, std::uint32_t property, const std::string& name, const Type& path_type);
  void wrap_mark(NodeId id, const vocabulary::Field& field);
  Type at_mark(NodeId id);
  bool mark(NodeId id);
  Type quantifier(NodeId id);
  Type fold(NodeId id, const Wanted& wanted);
  // Its variable is visible until close_binder. Not `named`: nothing uses it, so its name may be taken.
  bool open_binder(Binder& binder, NodeId list, bool named);
  void close_binder() { visible_.pop_back(); }
  bool name_taken(const Binder& binder);

  Type limit_value(NodeId id);
  Type limit(NodeId id);  // of one of its values, where it holds a list
  Type limit_table(NodeId id, std::uint32_t index);
  bool limit_keys(NodeId id, const LimitSignature& signature);
  bool implied_key(NodeId id, const LimitSignature& signature);
  bool kind_key(NodeId id, const vocabulary::ShapeSet& kinds);
  bool key(NodeId id, const Type& wanted, std::string_view of);
  Type look_up(NodeId id);
  Type row(NodeId id, const TableSignature& table, std::size_t first_key, const std::string& called);
  Type paper(NodeId id);

  Type bad(std::string_view id, const text::Range& range, const std::vector<std::string>& arguments = {});
  Node& node(NodeId id) { return tree_.nodes[id]; }
  const Node& node(NodeId id) const { return tree_.nodes[id]; }
  std::vector<NodeId> kids(NodeId id) const { return tree_.nodes[id].kids; }
  NodeId append(Node made);
  std::string described(const Type& type) const { return describe(type, vocabulary_); }
  std::string written(NodeId id) const;
  std::vector<std::string> kind_names() const;
  const Visible* visible(std::string_view name) const;
  void put_in_order();

  Tree& tree_;
  const Scope& scope_;
  const vocabulary::Vocabulary& vocabulary_;
  const std::vector<LimitSignature>& limits_;
  const std::vector<TableSignature>& tables_;
  text::Diagnostics& found_;
  std::vector<Visible> visible_;
  std::uint32_t next_variable_ = 0;
  std::map<NodeId, const vocabulary::Field*> fields_;  // of paths: their last field
  bool ok_ = true;
};

vocabulary::Type number_of(const quantity::Dimension& dimension);
inline vocabulary::Type of_kind(vocabulary::Type::Kind kind) {
  vocabulary::Type type;
  type.kind = kind;
  return type;
}

}  // namespace headgate::expression
