// Which leaves of a trace made it what it is: the parts without which it would have come out otherwise.
#include "explain/explain.hpp"

namespace headgate::explain {

using evaluate::ClauseTrace;
using evaluate::Evaluated;
using expression::Op;
using quantity::Truth;

namespace {

void follow(const Evaluated& of, Truth truth, std::vector<const Evaluated*>& leaves);

// The elements that keep a quantifier open, or break an `every`, each by its own leaves. Kids are where and has of
// each element, or the one of them that was written.
void follow_elements(const Evaluated& of, Truth truth, std::vector<const Evaluated*>& leaves) {
  const auto& node = of.tree->nodes[of.node];
  const bool every = node.op == Op::every;
  if (truth == Truth::yes || (truth == Truth::no && !every)) return;
  const Truth settled = every ? Truth::yes : Truth::no;  // a body that keeps the element out of it
  const bool has_where = node.kids[0] != expression::no_node;
  const bool has_body = node.kids.size() > 1 && node.kids[1] != expression::no_node;
  const std::size_t step = (has_where ? 1U : 0U) + (has_body ? 1U : 0U);
  for (std::size_t i = 0; step > 0 && i + step <= of.kids.size(); i += step) {
    const auto* where = has_where ? &of.kids[i] : nullptr;
    const auto* body = has_body ? &of.kids[i + step - 1] : nullptr;
    if ((where != nullptr && where->truth() == Truth::no) || (body != nullptr && body->truth() == settled)) continue;
    if (where != nullptr && where->truth() == truth && truth == Truth::undecided) follow(*where, truth, leaves);
    if (body != nullptr && body->truth() == truth) follow(*body, truth, leaves);
  }
}

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
    case Op::some:
    case Op::no:
    case Op::every: {
      const std::size_t before = leaves.size();
      follow_elements(of, truth, leaves);
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
  if (node.truth() == truth) follow(node, truth, leaves);
  return leaves;
}

std::vector<const Evaluated*> blame(const ClauseTrace& clause, Truth truth) {
  std::vector<const Evaluated*> leaves;
  if (clause.truth == truth) follow(clause, truth, leaves);
  return leaves;
}

}  // namespace headgate::explain
