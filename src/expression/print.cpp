#include "expression/print.hpp"

namespace headgate::expression {

namespace {

// How tightly a form binds; a kid that binds less than its place asks for is bracketed.
enum Binding : int { joined, condition, test, summed, product, atom };

int binding(const Node& node) {
  switch (node.op) {
    case Op::both:
    case Op::either: return joined;
    case Op::opposite:
    case Op::some:
    case Op::no:
    case Op::every: return condition;
    case Op::compare:
    case Op::between:
    case Op::same:
    case Op::is_item:
    case Op::one_of:
    case Op::in_list:
    case Op::is_none:
    case Op::fitted:
    case Op::recorded:
    case Op::comes:
    case Op::paper:
    case Op::confirmed: return test;
    case Op::add:
    case Op::subtract:
    case Op::choose: return summed;
    case Op::multiply:
    case Op::divide: return product;
    default: return atom;
  }
}

class Printer {
 public:
  explicit Printer(const Tree& tree) : tree_(tree) {}

  std::string of(NodeId id) const {
    if (id >= tree_.nodes.size()) return "?";
    const Node& node = tree_[id];
    switch (node.op) {
      case Op::literal: return node.written;
      case Op::word:
      case Op::path: return node.name;
      case Op::both: return list(node, " and ");
      case Op::either: return list(node, " or ");
      case Op::opposite: return "not " + at(node.kids[0], condition);
      case Op::compare: return value(node, 0) + " " + std::string(sign(node.relation)) + " " + value(node, 1);
      case Op::between:
        return value(node, 0) + " " + std::string(sign(node.relation)) + " " + value(node, 1) + " " +
               std::string(sign(node.second)) + " " + value(node, 2);
      case Op::same: return value(node, 0) + is(node) + "same as " + value(node, 1);
      case Op::is_item: return value(node, 0) + is(node) + of(node.kids[1]);
      case Op::one_of: return value(node, 0) + is(node) + "one of (" + rest(node, 1) + ")";
      case Op::in_list: return value(node, 0) + is(node) + (node.before ? "in " : "one of ") + of(node.kids[1]);
      case Op::is_none: return value(node, 0) + is(node) + "none";
      case Op::fitted: return value(node, 0) + is(node) + "fitted";
      case Op::recorded: return value(node, 0) + is(node) + "recorded";
      case Op::comes: return comes(node);
      case Op::some: return quantifier("some ", node);
      case Op::no: return quantifier("no ", node);
      case Op::every: return quantifier("every ", node);
      case Op::count: return "count(" + over(node, 0) + ")";
      case Op::sum: return "sum(" + value(node, 0) + " for " + over(node, 1) + ")";
      case Op::least_of: return "least(" + value(node, 0) + " for " + over(node, 1) + ")";
      case Op::greatest_of: return "greatest(" + value(node, 0) + " for " + over(node, 1) + ")";
      case Op::least: return "least(" + rest(node, 0) + ")";
      case Op::greatest: return "greatest(" + rest(node, 0) + ")";
      case Op::add: return at(node.kids[0], summed) + " + " + at(node.kids[1], product);
      case Op::subtract: return at(node.kids[0], summed) + " - " + at(node.kids[1], product);
      case Op::multiply: return at(node.kids[0], product) + " * " + at(node.kids[1], atom);
      case Op::divide: return at(node.kids[0], product) + " / " + at(node.kids[1], atom);
      case Op::negate: return "-" + at(node.kids[0], atom);
      case Op::property: return of(node.kids[0]) + "." + node.name;
      case Op::at_mark: return of(node.kids[0]) + (node.before ? " below " : " above ") + of(node.kids[1]);
      case Op::limit: return keyed("limit." + node.name, node, 0);
      case Op::look_up: return look_up(node);
      case Op::call: return node.name + "(" + rest(node, 0) + ")";
      case Op::choose: return "if " + of(node.kids[0]) + " then " + value(node, 1) + " else " + value(node, 2);
      case Op::paper:
        return std::string(node.index == 0 ? "approved" : "ordered") + " by " + node.written +
               (node.name.empty() ? "" : " for " + node.name);
      case Op::confirmed: return "confirmed as " + node.name;
      case Op::base: return "base";
      case Op::error: break;
    }
    return "?";
  }

 private:
  // The kid, bracketed when it binds less tightly than `least`. An `if` is bracketed wherever something stands beside
  // it.
  std::string at(NodeId id, int least) const {
    if (id >= tree_.nodes.size()) return "?";
    const bool loose = binding(tree_[id]) < least || tree_[id].op == Op::choose;
    return loose ? "(" + of(id) + ")" : of(id);
  }

  // A quantifier behind any number of `not`, itself or one with a body only.
  bool quantified(NodeId id, bool with_body) const {
    if (id >= tree_.nodes.size()) return false;
    const Node& node = tree_[id];
    if (node.op == Op::opposite) return quantified(node.kids[0], with_body);
    if (node.op != Op::some && node.op != Op::no && node.op != Op::every) return false;
    return !with_body || node.kids[0] != no_node || node.kids[1] != no_node;
  }

  std::string value(const Node& node, std::size_t kid) const { return at(node.kids[kid], summed); }
  static std::string is(const Node& node) { return node.negated ? " is not " : " is "; }

  std::string list(const Node& node, std::string_view between) const {
    std::string all;
    for (const NodeId kid : node.kids) {
      if (!all.empty()) all += between;
      // The body of a quantifier would swallow what follows it.
      all += quantified(kid, true) ? "(" + of(kid) + ")" : at(kid, condition);
    }
    return all;
  }

  std::string rest(const Node& node, std::size_t from) const {
    std::string all;
    for (std::size_t i = from; i < node.kids.size(); ++i) {
      if (i > from) all += ", ";
      all += value(node, i);
    }
    return all;
  }

  std::string binder(const Node& node) const {
    const Binder& over = node.binder;
    const std::string as = over.name == over.kind_name ? "" : " as " + over.name;
    return over.kind_name + as + " in " + of(over.list);
  }

  std::string over(const Node& node, std::size_t where) const {
    return binder(node) + (node.kids[where] == no_node ? "" : " where " + body(node.kids[where]));
  }

  std::string body(NodeId id) const { return quantified(id, false) ? "(" + of(id) + ")" : at(id, condition); }

  std::string quantifier(std::string_view word, const Node& node) const {
    return std::string(word) + over(node, 0) + (node.kids[1] == no_node ? "" : " has " + body(node.kids[1]));
  }

  std::string comes(const Node& node) const {
    return value(node, 0) + " comes " + (node.right ? "right " : "") + (node.before ? "before " : "after ") +
           of(node.kids[1]);
  }

  std::string keyed(const std::string& name, const Node& node, std::size_t first_key) const {
    std::string text = name;
    if (node.kids.size() > first_key) text += "[" + rest(node, first_key) + "]";
    if (!node.steps.empty()) text += "." + node.steps[0].name;
    return text;
  }

  std::string look_up(const Node& node) const {
    const bool limit = !node.kids.empty() && node.kids[0] < tree_.nodes.size() && tree_[node.kids[0]].op == Op::limit &&
                       node.index == vocabulary::no_id;
    return limit ? keyed(of(node.kids[0]), node, 1) : keyed(node.name, node, 0);
  }

  const Tree& tree_;
};

}  // namespace

std::string_view sign(Relation relation) {
  switch (relation) {
    case Relation::less: return "<";
    case Relation::less_or_equal: return "<=";
    case Relation::greater: return ">";
    case Relation::greater_or_equal: return ">=";
  }
  return "?";
}

std::string print(const Tree& tree, NodeId id) { return Printer(tree).of(id); }
std::string print(const Tree& tree) { return Printer(tree).of(tree.root); }

}  // namespace headgate::expression
