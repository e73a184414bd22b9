// Whether two trees say the same: operators, names and order alike; places and node numbers do not count.
#pragma once

#include "expression/tree.hpp"

namespace headgate::test {

inline bool same_shape(const expression::Tree& a, expression::NodeId x, const expression::Tree& b,
                       expression::NodeId y) {
  if (x == expression::no_node || y == expression::no_node) return x == y;
  const expression::Node& m = a[x];
  const expression::Node& n = b[y];
  const bool alike = m.op == n.op && m.relation == n.relation && m.second == n.second && m.negated == n.negated &&
                     m.before == n.before && m.right == n.right && m.index == n.index && m.name == n.name &&
                     m.written == n.written && m.binder.kind_name == n.binder.kind_name &&
                     m.binder.name == n.binder.name && m.steps.size() == n.steps.size() &&
                     m.kids.size() == n.kids.size();
  if (!alike || !same_shape(a, m.binder.list, b, n.binder.list)) return false;
  for (std::size_t i = 0; i < m.steps.size(); ++i) {
    if (m.steps[i].name != n.steps[i].name) return false;
  }
  for (std::size_t i = 0; i < m.kids.size(); ++i) {
    if (!same_shape(a, m.kids[i], b, n.kids[i])) return false;
  }
  return true;
}

inline bool same_shape(const expression::Tree& a, const expression::Tree& b) {
  return same_shape(a, a.root, b, b.root);
}

}  // namespace headgate::test
