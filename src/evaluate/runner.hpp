// What one step does to the cells. Used by run() only.
#pragma once

#include <limits>
#include <optional>

#include "evaluate/plan.hpp"
#include "evaluate/values.hpp"

namespace headgate::evaluate {

inline bool there(const Cell& cell) { return cell.presence == vocabulary::Presence::present; }
inline quantity::Interval number(const Cell& cell) { return {cell.lo, cell.hi}; }
// What a list counts of an element's fact: everything it may be.
inline quantity::Interval counted(const Cell& cell) { return there(cell) ? number(cell) : quantity::Interval{}; }

inline void set_truth(Cell& out, Truth truth, Why why) {
  out.presence = vocabulary::Presence::present;
  out.truth = truth;
  out.why = truth == Truth::undecided ? (why == Why::known ? Why::parts : why) : Why::known;
}

inline void set_unknown(Cell& out, Why why) {
  out = Cell{};
  out.why = why == Why::known ? Why::parts : why;
}

inline void set_number(Cell& out, quantity::Interval value) {
  out = Cell{};
  out.presence = vocabulary::Presence::present;
  out.lo = value.lo;
  out.hi = value.hi;
}

struct Runner {
  const Plan& plan;
  Cell* cells;

  void comparisons() const;
  void junctions(const Step* at, const Step* end, bool all) const;
  void choices(const Step* at, const Step* end) const;
  void copies(const Step* at, const Step* end) const;
  void one(const Step& step) const;
  void each(const Step* at, const Step* end) const {
    for (; at != end; ++at) one(*at);
  }

 private:
  using Interval = quantity::Interval;
  using Value = vocabulary::Value;

  const Cell& in(const Step& step, std::size_t i) const { return cells[plan.operands[step.first + i]]; }
  const rulebook::Rulebook& book() const { return *plan.book; }
  const expression::Node& node(const Step& step) const {
    return plan.nodes[step.node].tree->nodes[plan.nodes[step.node].node];
  }
  const vocabulary::Type& kid_type(const Step& step, std::size_t kid) const {
    return plan.nodes[step.node].tree->nodes[node(step).kids[kid]].type;
  }
  bool all_there(const Step& step) const;

  // Tests (run.cpp).
  Compared relate(const Step& step, const Cell& a, const Cell& b, bool or_equal) const;
  void between(const Step& step, Cell& out) const;
  Compared alike(const Step& step, const Value& a, const Value& b) const;
  void same(const Step& step, Cell& out) const;
  void one_of(const Step& step, Cell& out) const;
  Compared of_kind(const Value& element, const Value& kind) const;
  void choice_in(const Step& step, std::uint64_t listed, Compared& any) const;
  void in_list(const Step& step, Cell& out) const;
  void in_season(const Step& step, Cell& out) const;
  void presence(const Step& step, Cell& out) const;

  // Lists (run_lists.cpp): pairs of `where` and what is asked of an element.
  void quantifier(const Step& step, Cell& out) const;
  void total(const Step& step, Cell& out) const;
  bool all_metric(const Step& step) const;
  bool to_inch(Cell& size) const;
  void extreme_of(const Step& step, Cell& out) const;

  // Values (run_values.cpp).
  void arithmetic(const Step& step, Cell& out) const;
  void of_sizes(const Step& step, Cell& out) const;
  std::optional<double> stepped(double day, double count, quantity::Span::Unit unit, int sign) const;
  void date_step(const Step& step, Cell& out) const;
  void property(const Step& step, Cell& out) const;
  void reading(const Step& step, Cell& out) const;
  void choose(const Step& step, Cell& out) const;
  void select_row(const Step& step, Cell& out) const;
  std::size_t values(const Step& step, Value* into) const;  // how many
  void look_up(const Step& step, Cell& out) const;
  void call(const Step& step, Cell& out) const;
};

}  // namespace headgate::evaluate
