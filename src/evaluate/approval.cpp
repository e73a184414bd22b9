#include "evaluate/approval.hpp"

#include <algorithm>

namespace headgate::evaluate {

using expression::Op;
using rulebook::Clause;

namespace {

// How many parts come to the truth asked for, and how many of them only through an approval.
struct Parts {
  bool approved = false;
  bool plainly = false;
  void add(bool by_approval) { (by_approval ? approved : plainly) = true; }
  // `all`: every part has to come to it, so one that needs its approval is enough; else one part would do.
  bool rests(bool all) const { return approved && (all || !plainly); }
};

class Leaning {
 public:
  Leaning(const Plan& plan, const std::vector<Cell>& cells) : plan_(plan), cells_(cells) {}

  // Whether a node comes to `truth`, and only through an approval.
  bool on(PlannedId id, Truth truth) const {
    const Planned& at = plan_.nodes[id];
    const auto& node = at.tree->nodes[at.node];
    if (cells_[at.cell].truth != truth) return false;
    switch (node.op) {
      case Op::paper: return node.index == 0 && truth == Truth::yes;
      case Op::opposite: return on(kid(at, 0), quantity::opposite(truth));
      case Op::both: return on_parts(at, truth, truth == Truth::yes);
      case Op::either: return on_parts(at, truth, truth == Truth::no);
      case Op::some:
      case Op::no:
      case Op::every: return on_elements(at, node, truth);
      default: return false;
    }
  }

 private:
  PlannedId kid(const Planned& of, std::uint32_t index) const { return plan_.kids[of.first_kid + index]; }
  Truth truth(PlannedId id) const { return cells_[plan_.nodes[id].cell].truth; }

  bool on_parts(const Planned& at, Truth wanted, bool all) const {
    Parts parts;
    for (std::uint32_t i = 0; i < at.kid_count; ++i) {
      if (truth(kid(at, i)) == wanted) parts.add(on(kid(at, i), wanted));
    }
    return parts.rests(all);
  }

  // A list with one element that is as asked (`some`), or with none that is (`no`), or none that is not (`every`).
  // Kids are where and has of each element, or the one of them that was written.
  bool on_elements(const Planned& at, const expression::Node& node, Truth wanted) const {
    const bool has_where = node.kids[0] != expression::no_node;
    const bool has_body = node.kids.size() > 1 && node.kids[1] != expression::no_node;
    const std::uint32_t step = (has_where ? 1U : 0U) + (has_body ? 1U : 0U);
    const bool finds = node.op == Op::some ? wanted == Truth::yes : wanted == Truth::no;  // one element settles it
    const Truth body_found = node.op == Op::every ? Truth::no : Truth::yes;
    Parts elements;
    for (std::uint32_t i = 0; step > 0 && i + step <= at.kid_count; i += step) {
      Parts parts;
      std::uint32_t as_wanted = 0;
      const auto part = [&](PlannedId id, Truth found) {
        const Truth here = finds ? found : quantity::opposite(found);
        if (truth(id) != here) return;
        ++as_wanted;
        parts.add(on(id, here));
      };
      if (has_where) part(kid(at, i), Truth::yes);
      if (has_body) part(kid(at, i + step - 1), body_found);
      if (finds ? as_wanted == step : as_wanted > 0) elements.add(parts.rests(finds));
    }
    return elements.rests(!finds);
  }

  const Plan& plan_;
  const std::vector<Cell>& cells_;
};

}  // namespace

bool by_approval(const Plan& plan, const std::vector<Cell>& cells, const PlannedClause& clause) {
  if (cells[clause.truth].truth != Truth::yes) return false;
  if (clause.clause->mode == Clause::Mode::single)
    return clause.approval && Leaning(plan, cells).on(clause.node, Truth::yes);
  Parts parts;
  for (const auto& kid : clause.kids) {
    if (cells[kid.truth].truth == Truth::yes) parts.add(by_approval(plan, cells, kid));
  }
  return parts.rests(clause.clause->mode == Clause::Mode::all);
}

bool holds_approval(const expression::Tree& tree) {
  return std::any_of(tree.nodes.begin(), tree.nodes.end(),
                     [](const expression::Node& node) { return node.op == Op::paper && node.index == 0; });
}

}  // namespace headgate::evaluate
