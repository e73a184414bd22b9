// Laying out rules: one instance for every combination of their `each`.
#include <algorithm>

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
    if (rule_->standing == rulebook::Standing::in_force) {
      std::vector<site::ElementId> bindings;
      std::vector<PlannedId> wheres;
      combine(0, bindings, wheres, planner_.yes());
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
    if (!walked.complete) plan_.rules[rule_index_].open.push_back({list.id, reached});
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
    plan_.instances.push_back(std::move(made));
  }

  PlannedClause clause(const Clause& of, const std::vector<site::ElementId>& bindings, Instance& made) {
    PlannedClause out;
    out.clause = &of;
    if (of.mode == Clause::Mode::single) {
      out.node = planner_.plan(*of.tree, bindings);
      out.truth = planner_.cell(out.node);
      const auto& root = of.tree->nodes[of.tree->root];
      out.approval = root.op == expression::Op::paper && root.index == 0;
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
};

}  // namespace

Plan make_plan(const rulebook::Rulebook& book, const site::Site& site, const std::string& only_rule) {
  Plan plan;
  plan.book = &book;
  plan.site = &site;
  plan.rules.resize(book.rules.size());
  Planner planner(plan);
  RuleLayer layer(plan, planner);
  for (std::uint32_t index = 0; index < book.rules.size(); ++index) {
    if (only_rule.empty() || only_rule == book.rules[index].id) layer.add(index);
  }
  return plan;
}

Plan make_plan(const rulebook::Rulebook& book, const site::Site& site, const expression::Tree& tree) {
  Plan plan;
  plan.book = &book;
  plan.site = &site;
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
  const bool formula = node.op == expression::Op::path && at.kid_count > 0;
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
