// Which leaves of a trace made it what it is: the parts without which it would have come out otherwise.
#include "explain/explain.hpp"

namespace headgate::explain {

using evaluate::ClauseTrace;
using evaluate::Evaluated;
using expression::Op;
using quantity::Truth;

namespace {

bool is_truth(const Evaluated& of) { return of.type.kind == vocabulary::Type::Kind::truth; }

// The kids that pull a junction to its truth: for an undecided one, every undecided kid.
void follow(const Evaluated& of, Truth truth, std::vector<const Evaluated*>& leaves) {
  if (of.tree == nullptr) return;
  const auto& node = of.tree->nodes[of.node];
  switch (node.op) {
    case Op::both:
    case Op::either:
      for (const auto& kid : of.kids) {
        if (kid.truth() == truth) follow(kid, truth, leaves);
      }
      return;
    case Op::opposite: follow(of.kids[0], quantity::opposite(truth), leaves); return;
    case Op::every: {
      // The elements that break it, each by its own leaf.
      const std::size_t before = leaves.size();
      for (const auto& kid : of.kids) {
        if (is_truth(kid) && kid.truth() == truth && truth != Truth::yes) follow(kid, truth, leaves);
      }
      if (leaves.size() == before) leaves.push_back(&of);
      return;
    }
    case Op::some:
    case Op::no: {
      const std::size_t before = leaves.size();
      for (const auto& kid : of.kids) {
        if (truth == Truth::undecided && is_truth(kid) && kid.truth() == truth) follow(kid, truth, leaves);
      }
      if (leaves.size() == before) leaves.push_back(&of);
      return;
    }
    default: leaves.push_back(&of); return;
  }
}

void follow(const ClauseTrace& of, Truth truth, std::vector<const Evaluated*>& leaves) {
  if (of.expression) return follow(*of.expression, truth, leaves);
  for (const auto& kid : of.kids) {
    if (kid.truth == truth) follow(kid, truth, leaves);
  }
}

}  // namespace

std::vector<const Evaluated*> blame(const Evaluated& node, Truth truth) {
  std::vector<const Evaluated*> leaves;
  follow(node, truth, leaves);
  return leaves;
}

std::vector<const Evaluated*> blame(const ClauseTrace& clause, Truth truth) {
  std::vector<const Evaluated*> leaves;
  follow(clause, truth, leaves);
  return leaves;
}

}  // namespace headgate::explain
