#include "rulebook/uses.hpp"

namespace headgate::rulebook {

using expression::Op;
using expression::Tree;
using vocabulary::Field;
using vocabulary::ShapeSet;
using vocabulary::Vocabulary;

namespace {

class Walk {
 public:
  Walk(const Tree& tree, const std::vector<ShapeSet>& handed, const Vocabulary& vocabulary)
      : tree_(tree), vocabulary_(vocabulary), handed_(handed.size()), frame_(handed) {
    if (frame_.size() < tree.variables) frame_.resize(tree.variables);
    for (const expression::Node& node : tree.nodes) {
      if (node.binder.list != expression::no_node && node.binder.variable < frame_.size()) {
        frame_[node.binder.variable] |= node.binder.shapes;
      }
    }
  }

  std::vector<Use> run() {
    for (const expression::Node& node : tree_.nodes) {
      if (node.op == Op::path) path(node, true);
      if (node.op == Op::limit) limit(node);
    }
    return std::move(uses_);
  }

 private:
  void limit(const expression::Node& node) {
    Use use;
    use.limit = true;
    use.index = node.index;
    use.range = node.range;
    for (const expression::NodeId kid : node.kids) {
      if (kid != expression::no_node && tree_[kid].op == Op::path) use.reach = path(tree_[kid], false);
    }
    uses_.push_back(use);
  }

  // One step from every shape it may start from; where it leads is added to `next`.
  Reach step(const std::string& name, const ShapeSet& from, Reach reach, ShapeSet& next, const expression::Node& node,
             bool note) {
    Reach after = reach;
    for (std::size_t s = 0; s < vocabulary_.shapes.size(); ++s) {
      const auto id = from.test(s) ? vocabulary_.shapes[s].field(name) : std::nullopt;
      if (!id) continue;
      const Field& field = vocabulary_.shapes[s].fields[*id];
      if (field.formula && note) {
        uses_.push_back({false, 0, static_cast<vocabulary::ShapeId>(s), *id, reach, node.range});
      }
      next |= field.type.shapes;
      if (field.holds == Field::Holds::record || field.type.shapes.none()) continue;
      const bool upstream =
          field.holds == Field::Holds::reference && field.direction == vocabulary::Direction::upstream;
      after = upstream && reach != Reach::other ? Reach::upstream : Reach::other;
    }
    return after;
  }

  Reach path(const expression::Node& node, bool note) {
    ShapeSet at;
    Reach reach = Reach::same;
    std::size_t first = 0;
    if (node.variable != expression::no_node && node.variable < frame_.size()) {
      at = frame_[node.variable];
      reach = node.variable == 0 && handed_ > 0 ? Reach::same : Reach::other;
    } else {
      const auto& root = vocabulary_.shapes[vocabulary::root_shape];
      at.set(vocabulary::root_shape);
      if (!node.steps.empty() && node.steps[0].name == root.name && !root.field(root.name)) first = 1;
    }
    for (std::size_t i = first; i < node.steps.size(); ++i) {
      ShapeSet next;
      reach = step(node.steps[i].name, at, reach, next, node, note);
      at = next;
    }
    return reach;
  }

  const Tree& tree_;
  const Vocabulary& vocabulary_;
  std::size_t handed_;
  std::vector<ShapeSet> frame_;
  std::vector<Use> uses_;
};

}  // namespace

std::vector<Use> uses_of(const Tree& tree, const std::vector<ShapeSet>& handed, const Vocabulary& vocabulary) {
  return Walk(tree, handed, vocabulary).run();
}

}  // namespace headgate::rulebook
