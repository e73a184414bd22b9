// Laying out rules: one instance for every combination of their `each`.
#include <algorithm>
#include <cmath>

#include "evaluate/approval.hpp"
#include "evaluate/occasion.hpp"
#include "evaluate/planner.hpp"

namespace headgate::evaluate {

using rulebook::Clause;
using rulebook::Rule;
using vocabulary::Presence;

namespace {

class RuleLayer {
 public:
  RuleLayer(Plan& plan, Planner& planner) : plan_(plan), planner_(planner) {}

  void add(std::uint32_t index) {
    rule_ = &plan_.book->rules[index];
    rule_index_ = index;
    RulePlan& here = plan_.rules[index];
    here.first_instance = static_cast<std::uint32_t>(plan_.instances.size());
    here.asked = true;
    here.in_force = rule_->standing == rulebook::Standing::in_force;
    if (here.in_force) {
      std::vector<site::ElementId> bindings;
      std::vector<PlannedId> wheres;
      yes_ = planner_.yes();
      no_ = planner_.constant(cell_of(vocabulary::of_truth(Truth::no), Why::known));
      combine(0, bindings, wheres, yes_);
    }
    here.instance_count = static_cast<std::uint32_t>(plan_.instances.size()) - here.first_instance;
  }

 private:
  void combine(std::size_t index, std::vector<site::ElementId>& bindings, std::vector<PlannedId>& wheres,
               CellId reached) {
    if (index == rule_->each.binders.size()) return instance(bindings, wheres, reached);
    const auto& binder = rule_->each.binders[index];
    const Cell list = plan_.cells[planner_.cell(planner_.plan(binder.list, bindings))];
    const Walked walked = walk_list(*plan_.site, binder.binder.shapes, list.presence, list.id);
    if (!walked.complete) {
      plan_.rules[rule_index_].open.push_back({list.id, reached});
      ++plan_.open_lists;
    }
    for (const auto element : walked.elements) {
      bindings.push_back(element);
      planner_.in_hand(rule_, bindings);
      CellId here = reached;
      if (binder.where) {
        wheres.push_back(planner_.plan(*binder.where, bindings));
        here = planner_.truth_cell(Code::all_of, {reached, planner_.cell(wheres.back())});
      }
      combine(index + 1, bindings, wheres, here);
      if (binder.where) wheres.pop_back();
      bindings.pop_back();
    }
  }

  void instance(const std::vector<site::ElementId>& bindings, const std::vector<PlannedId>& wheres, CellId reached) {
    Instance made;
    made.rule = rule_index_;
    made.elements = bindings;
    made.where = wheres;
    made.reached = reached;
    planner_.in_hand(rule_, bindings);
    if (rule_->when) made.when = clause(*rule_->when, bindings, made);
    for (const auto& exception : rule_->unless) made.unless.push_back(clause(exception, bindings, made));
    if (rule_->require) made.require = clause(*rule_->require, bindings, made);
    if (rule_->due) made.due = planner_.plan(*rule_->due, bindings);
    if (rule_->done) made.done = planner_.plan(*rule_->done, bindings);
    for (const auto& hole : rule_->if_not.holes) made.holes.push_back(planner_.plan(hole.second, bindings));
    plan_.briefs.push_back(brief(made));
    plan_.instances.push_back(std::move(made));
  }

  Brief brief(const Instance& of) {
    Brief made;
    made.reached = of.reached;
    made.when = of.when ? of.when->truth : yes_;
    std::vector<CellId> exceptions;
    for (const auto& exception : of.unless) exceptions.push_back(exception.truth);
    made.exception = exceptions.empty() ? no_ : planner_.truth_cell(Code::any_of, exceptions);
    made.require = of.require ? of.require->truth : yes_;
    made.stage = static_cast<std::uint32_t>(rule_->stage);
    made.row = first_row(rule_->level, rule_->require.has_value() || rule_->due.has_value());
    made.plain = of.due == not_planned && !of.approvals;
    return made;
  }

  PlannedClause clause(const Clause& of, const std::vector<site::ElementId>& bindings, Instance& made) {
    PlannedClause out;
    out.clause = &of;
    if (of.mode == Clause::Mode::single) {
      out.node = planner_.plan(*of.tree, bindings);
      out.truth = planner_.cell(out.node);
      out.approval = holds_approval(*of.tree);
      made.approvals = made.approvals || out.approval;
      return out;
    }
    std::vector<CellId> cells;
    for (const auto& kid : of.kids) {
      out.kids.push_back(clause(kid, bindings, made));
      cells.push_back(out.kids.back().truth);
    }
    out.truth = planner_.truth_cell(of.mode == Clause::Mode::any ? Code::any_of : Code::all_of, cells);
    return out;
  }

  Plan& plan_;
  Planner& planner_;
  const Rule* rule_ = nullptr;
  std::uint32_t rule_index_ = 0;
  CellId yes_ = 0;
  CellId no_ = 0;
};

}  // namespace

void say_too_many(const rulebook::Rulebook& book, const site::Site& site, text::Diagnostics& found) {
  for (const auto& rule : book.rules) {
    if (rule.standing != rulebook::Standing::in_force || rule.each.binders.size() < 2) continue;
    double combinations = 1;
    for (const auto& one : rule.each.binders) {
      const auto fits = [&](const site::Element& element) { return one.binder.shapes.test(element.shape); };
      combinations *= static_cast<double>(std::count_if(site.elements.begin(), site.elements.end(), fits));
    }
    if (combinations > static_cast<double>(most_combinations))
      found.push_back(text::say("too-many-combinations", rule.range, {rule.id, std::to_string(most_combinations)}));
  }
}

Plan empty_plan(const rulebook::Rulebook& book, const site::Site& site, std::optional<quantity::Day> checked_on) {
  Plan plan;
  plan.book = &book;
  plan.site = &site;
  Options options;
  options.checked_on = checked_on;
  plan.checked_on = occasion(book, site, options).checked_on;
  return plan;
}

Plan make_plan(const rulebook::Rulebook& book, const site::Site& site, const std::string& only_rule,
               std::optional<quantity::Day> checked_on) {
  Plan plan = empty_plan(book, site, checked_on);
  plan.rules.resize(book.rules.size());
  Planner planner(plan);
  RuleLayer layer(plan, planner);
  for (std::uint32_t index = 0; index < book.rules.size(); ++index) {
    if (only_rule.empty() || only_rule == book.rules[index].id) layer.add(index);
  }
  group_steps(plan);
  return plan;
}

namespace {

// Whether a step compares cells that no step writes, both of them there and on one ladder.
bool is_steady(const Plan& plan, const Step& step, std::uint32_t depth) {
  const bool compares = step.code == Code::compare_less || step.code == Code::compare_less_or_equal;
  if (!compares || depth > 0 || step.sizes) return false;
  const auto there = [&](std::uint32_t k) {
    return plan.cells[plan.operands[step.first + k]].presence == Presence::present;
  };
  return there(0) && there(1);
}

Comparison comparison(const Plan& plan, std::uint32_t index) {
  const Step& step = plan.steps[index];
  const auto interval = [&](std::uint32_t k) {
    const Cell& cell = plan.cells[plan.operands[step.first + k]];
    return quantity::Interval{cell.lo, cell.hi};
  };
  Comparison made{interval(0), interval(1), 0, step.out, index};
  double largest = 0;
  for (const double end : {made.left.lo, made.left.hi, made.right.lo, made.right.hi}) {
    if (std::isfinite(end)) largest = std::max(largest, std::fabs(end));
  }
  made.margin = quantity::margin(largest, step.grid);
  return made;
}

}  // namespace

void group_steps(Plan& plan) {
  constexpr std::uint64_t first_of_all = 0;
  std::vector<std::uint32_t> depth(plan.cells.size(), 0);
  std::vector<std::pair<std::uint64_t, std::uint32_t>> order;
  for (std::uint32_t i = 0; i < plan.steps.size(); ++i) {
    const Step& step = plan.steps[i];
    std::uint32_t deepest = 0;
    for (std::uint32_t k = 0; k < step.count; ++k) deepest = std::max(deepest, depth[plan.operands[step.first + k]]);
    depth[step.out] = deepest + 1;
    const std::uint64_t like =
        std::uint64_t{deepest + 1} << 16U | static_cast<std::uint64_t>(step.code) << 8U | (step.sizes ? 1U : 0U);
    order.emplace_back(is_steady(plan, step, deepest) ? first_of_all : like, i);
  }
  std::sort(order.begin(), order.end());
  std::vector<Step> steps;
  steps.reserve(order.size());
  for (const auto& [key, index] : order) {
    const auto at = static_cast<std::uint32_t>(steps.size());
    steps.push_back(plan.steps[index]);
    if (key == first_of_all) continue;
    if (plan.groups.empty() || key != order[at - 1].first)
      plan.groups.push_back({steps.back().code, steps.back().sizes, at, at});
    plan.groups.back().last = at + 1;
  }
  plan.steps = std::move(steps);
  plan.grouped = plan.steps.size();
  plan.compared = plan.groups.empty() ? plan.grouped : plan.groups.front().first;
  for (std::uint32_t i = 0; i < plan.compared; ++i) {
    plan.comparisons.push_back(comparison(plan, i));
    plan.cells[plan.steps[i].out].presence = Presence::present;  // a comparison writes no more than its truth
  }
}

Plan make_plan(const rulebook::Rulebook& book, const site::Site& site, const expression::Tree& tree) {
  Plan plan = empty_plan(book, site, std::nullopt);
  Planner(plan).plan(tree, {});
  return plan;
}

namespace {

// How a value was written, for showing it: steps carry numbers only.
const quantity::Unit* unit_of(const Evaluated& of) {
  switch (of.tree->nodes[of.node].op) {
    case expression::Op::multiply:
    case expression::Op::divide:
    case expression::Op::call:
    case expression::Op::count: return nullptr;
    case expression::Op::choose: return of.kids[1].value.unit;
    default: break;
  }
  for (const auto& kid : of.kids) {
    if (kid.value.unit != nullptr && kid.type == of.type) return kid.value.unit;
  }
  return nullptr;
}

}  // namespace

namespace {

// Of an explanation. A value along a long line rests on all that stands before it: past this a computed value is
// shown without its formula.
struct Room {
  std::size_t nodes = 20000;
  std::size_t formulas = 200;  // inside one another
};

Evaluated shown(const Plan& plan, const std::vector<Cell>& cells, PlannedId id, Room& room) {
  const Planned& at = plan.nodes[id];
  const auto& node = at.tree->nodes[at.node];
  Evaluated out;
  out.tree = at.tree;
  out.node = at.node;
  out.type = node.type;
  out.value = value_of(cells[at.cell]);
  out.why = cells[at.cell].why;
  out.element = at.element;
  out.field = at.field;
  out.limit = at.limit;
  out.chain = at.chain;
  out.table = at.table;
  out.paper = at.paper;
  out.about = at.about;
  out.list = at.list;
  for (std::size_t i = node.steps.size() - at.beyond; i < node.steps.size(); ++i)
    out.beyond.push_back(node.steps[i].name);
  const bool through =
      node.op == expression::Op::path || node.op == expression::Op::limit || node.op == expression::Op::base;
  const bool formula = through && at.kid_count > 0;
  const bool fits = !formula || (room.formulas > 0 && room.nodes > 0);
  room.formulas -= formula && fits ? 1 : 0;
  for (std::uint32_t i = 0; i < at.kid_count && fits; ++i) {
    room.nodes -= room.nodes > 0 ? 1 : 0;
    out.kids.push_back(shown(plan, cells, plan.kids[at.first_kid + i], room));
  }
  room.formulas += formula && fits ? 1 : 0;
  if (at.slot != nullptr) {
    out.value.unit = at.slot->value.unit;
    out.value.text = at.slot->value.text;
  } else if (node.op == expression::Op::literal) {
    out.value.unit = node.value.unit;
    out.value.text = node.value.text;
  } else if (out.value.presence == Presence::present) {
    out.value.unit = unit_of(out);
  }
  return out;
}

}  // namespace

Evaluated evaluated(const Plan& plan, const std::vector<Cell>& cells, PlannedId id) {
  Room room;
  return shown(plan, cells, id, room);
}

}  // namespace headgate::evaluate
