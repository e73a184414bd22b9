#include "evaluate/planner.hpp"

#include <algorithm>

#include "evaluate/walk.hpp"
#include "expression/functions.hpp"

namespace headgate::evaluate {

using expression::Node;
using expression::NodeId;
using expression::Op;
using expression::Relation;
using expression::Tree;
using vocabulary::Presence;
using Kind = vocabulary::Type::Kind;

Planner::Planner(Plan& plan) : plan_(plan), book_(*plan.book), site_(*plan.site) {
  for (const auto& limit : book_.limits) {
    for (const auto& value : limit.chain) orders_by_element_ = orders_by_element_ || value.at != site::nowhere;
  }
}

void Planner::in_hand(const rulebook::Rule* rule, const std::vector<site::ElementId>& elements) {
  rule_ = rule;
  elements_ = elements;
  limits_.clear();
}

PlannedId Planner::plan(const Tree& tree, const Frame& handed) {
  Frame frame(std::max<std::size_t>(tree.variables, handed.size()), site::nowhere);
  std::copy(handed.begin(), handed.end(), frame.begin());
  return lay(tree, tree.root, frame);
}

CellId Planner::constant(const Cell& cell) {
  plan_.cells.push_back(cell);
  return static_cast<CellId>(plan_.cells.size() - 1);
}

CellId Planner::constant_truth(Truth truth) { return constant(cell_of(vocabulary::of_truth(truth), Why::known)); }

CellId Planner::truth_cell(Code code, const std::vector<CellId>& operands) {
  Step step;
  step.code = code;
  step.first = static_cast<std::uint32_t>(plan_.operands.size());
  step.count = static_cast<std::uint32_t>(operands.size());
  plan_.operands.insert(plan_.operands.end(), operands.begin(), operands.end());
  step.out = constant({});
  plan_.steps.push_back(step);
  return step.out;
}

void Planner::step(Draft& draft, Code code, const std::vector<CellId>& operands, double grid) {
  draft.planned.cell = truth_cell(code, operands);
  Step& made = plan_.steps.back();
  made.negated = draft.node->negated;
  made.grid = grid;
  made.node = static_cast<PlannedId>(plan_.nodes.size());  // where keep() will put the draft
}

std::vector<CellId> Planner::cells(const Draft& draft) const {
  std::vector<CellId> result;
  for (const auto kid : draft.kids) result.push_back(cell(kid));
  return result;
}

void Planner::not_known(Draft& draft, Why why) { draft.planned.cell = constant(cell_of(vocabulary::unknown(), why)); }

void Planner::all_kids(Draft& draft, Frame& frame) {
  for (const NodeId kid : draft.node->kids) draft.kids.push_back(lay(*draft.tree, kid, frame));
}

PlannedId Planner::keep(Draft& draft) {
  draft.planned.first_kid = static_cast<std::uint32_t>(plan_.kids.size());
  draft.planned.kid_count = static_cast<std::uint32_t>(draft.kids.size());
  plan_.kids.insert(plan_.kids.end(), draft.kids.begin(), draft.kids.end());
  plan_.nodes.push_back(draft.planned);
  return static_cast<PlannedId>(plan_.nodes.size() - 1);
}

PlannedId Planner::lay(const Tree& tree, NodeId id, Frame& frame) {
  Draft draft;
  draft.node = &tree[id];
  draft.tree = &tree;
  draft.planned.tree = &tree;
  draft.planned.node = id;
  if (full()) {
    not_known(draft, Why::too_large);
    return keep(draft);
  }
  switch (draft.node->op) {
    case Op::literal: {
      const auto known = literals_.find(&draft.node->value);
      draft.planned.cell = known != literals_.end() ? known->second : constant(cell_of(draft.node->value, Why::known));
      literals_.emplace(&draft.node->value, draft.planned.cell);
      break;
    }
    case Op::both:
    case Op::either:
    case Op::opposite: logic(draft, frame); break;
    case Op::compare:
    case Op::between:
    case Op::same: relation(draft, frame); break;
    case Op::comes: comes(draft, frame); break;
    case Op::is_item:
    case Op::one_of: item(draft, frame); break;
    case Op::in_list: in_list(draft, frame); break;
    case Op::is_none:
    case Op::fitted:
    case Op::recorded: presence(draft, frame); break;
    case Op::some:
    case Op::no:
    case Op::every: quantifier(draft, frame); break;
    case Op::count:
    case Op::sum:
    case Op::least_of:
    case Op::greatest_of: fold(draft, frame); break;
    case Op::least:
    case Op::greatest:
    case Op::add:
    case Op::subtract:
    case Op::multiply:
    case Op::divide:
    case Op::negate: arithmetic(draft, frame); break;
    case Op::path: path(draft, frame); break;
    case Op::property:
      all_kids(draft, frame);
      step(draft, Code::property, cells(draft));
      break;
    case Op::at_mark:
      all_kids(draft, frame);
      step(draft, Code::reading, cells(draft));
      plan_.steps.back().negated = draft.node->before;
      break;
    case Op::limit: limit(draft, frame); break;
    case Op::look_up: look_up(draft, frame); break;
    case Op::call:
      all_kids(draft, frame);
      step(draft, Code::call, cells(draft));
      break;
    case Op::choose:
      all_kids(draft, frame);
      step(draft, Code::choose, cells(draft));
      break;
    case Op::paper: paper(draft, frame); break;
    case Op::confirmed: confirmed(draft); break;
    case Op::base: {
      const Base base = bases_.back();
      limit_value(draft, base.limit, base.chain + 1, base.key, base.element, *base.in_hand);
      break;
    }
    case Op::word:
    case Op::error: not_known(draft, Why::missing); break;
  }
  return keep(draft);
}

void Planner::logic(Draft& draft, Frame& frame) {
  all_kids(draft, frame);
  const Op op = draft.node->op;
  step(draft, op == Op::both ? Code::all_of : op == Op::either ? Code::any_of : Code::invert, cells(draft));
}

void Planner::relation(Draft& draft, Frame& frame) {
  all_kids(draft, frame);
  const Node& node = *draft.node;
  const auto& type = (*draft.tree)[node.kids[0]].type;
  auto operands = cells(draft);
  Code code = Code::same;
  if (node.op == Op::between) code = Code::between;
  if (node.op == Op::compare) {
    if (node.relation == Relation::greater || node.relation == Relation::greater_or_equal)
      std::swap(operands[0], operands[1]);
    code = node.relation == Relation::less || node.relation == Relation::greater ? Code::compare_less
                                                                                 : Code::compare_less_or_equal;
  }
  step(draft, code, operands, grid_of(type));
  plan_.steps.back().sizes = is_size(type);
}

// Where things stand on the walk is known when a site is loaded.
void Planner::comes(Draft& draft, Frame& frame) {
  all_kids(draft, frame);
  const Cell& a = plan_.cells[cell(draft.kids[0])];
  const Cell& b = plan_.cells[cell(draft.kids[1])];
  Compared result{Truth::undecided, Why::parts};
  if (a.presence == Presence::present && b.presence == Presence::present) {
    result = evaluate::comes(site_, *book_.vocabulary, a.id, b.id, draft.node->before, draft.node->right);
  }
  if (result.why == Why::unfinished) {
    for (const auto element : {a.id, b.id}) {
      const auto walk = site_.elements[element].walk;
      if (walk != site::nowhere && !site_.lists[walk].complete) draft.planned.list = walk;
    }
  }
  const Truth truth = draft.node->negated ? quantity::opposite(result.truth) : result.truth;
  draft.planned.cell =
      constant(cell_of(vocabulary::of_truth(truth), truth == Truth::undecided ? result.why : Why::known));
}

void Planner::item(Draft& draft, Frame& frame) {
  const Node& node = *draft.node;
  if (node.shapes.any()) {  // what kind an element is, is known when a site is loaded
    if (node.op == Op::is_item)
      draft.kids.push_back(lay(*draft.tree, node.kids[0], frame));
    else
      all_kids(draft, frame);
    const Cell& subject = plan_.cells[cell(draft.kids[0])];
    Truth result = Truth::undecided;
    if (subject.presence == Presence::present)
      result = quantity::truth(node.shapes.test(site_.elements[subject.id].shape));
    if (node.negated) result = quantity::opposite(result);
    draft.planned.cell =
        constant(cell_of(vocabulary::of_truth(result), result == Truth::undecided ? Why::parts : Why::known));
    return;
  }
  all_kids(draft, frame);
  const bool choice = (*draft.tree)[node.kids[0]].type.kind == Kind::choice;
  step(draft, choice ? Code::member : Code::one_of, cells(draft));
}

void Planner::in_list(Draft& draft, Frame& frame) {
  draft.kids.push_back(lay(*draft.tree, draft.node->kids[0], frame));
  const Node& list = (*draft.tree)[draft.node->kids[1]];
  Draft of;
  of.node = &list;
  of.tree = draft.tree;
  of.planned.tree = draft.tree;
  of.planned.node = draft.node->kids[1];
  const auto& chain = book_.limits[list.index].chain;
  std::size_t at = 0;  // an order for another element says nothing here; lists are set by no order
  while (at < chain.size() && !counts_for(chain[at], site::nowhere, {&frame, hand_})) ++at;
  const bool none = at == chain.size();
  const bool silent = none || chain[at].form == rulebook::LimitValue::Form::unknown || !chain[at].doubt.empty();
  const Why why = !silent ? Why::known : none || chain[at].doubt.empty() ? Why::no_value : Why::doubt;
  if (!silent && list.type.kind == Kind::season) {
    limit_value(of, list.index, 0, 0, site::nowhere, frame);
    of.kids.clear();
  } else {
    of.planned.cell = constant(cell_of(vocabulary::unknown(), why));
  }
  of.planned.limit = static_cast<std::int32_t>(list.index);
  of.planned.chain = none ? -1 : static_cast<std::int32_t>(at);
  draft.kids.push_back(keep(of));
  if (silent) {
    draft.planned.cell = constant(cell_of(vocabulary::of_truth(Truth::undecided), why));
    return;
  }
  if ((*draft.tree)[draft.node->kids[0]].type.kind == Kind::element) return kind_in_list(draft, chain[0].list);
  step(draft, list.type.kind == Kind::season ? Code::in_season : Code::in_list, cells(draft));
}

void Planner::kind_in_list(Draft& draft, const std::vector<vocabulary::Value>& kinds) {
  const Cell& subject = plan_.cells[cell(draft.kids[0])];
  Truth result = Truth::undecided;
  if (subject.presence == Presence::present) {
    const auto shape = site_.elements[subject.id].shape;
    result =
        quantity::truth(std::any_of(kinds.begin(), kinds.end(), [&](const auto& kind) { return kind.id == shape; }));
  }
  if (draft.node->negated) result = quantity::opposite(result);
  draft.planned.cell =
      constant(cell_of(vocabulary::of_truth(result), result == Truth::undecided ? Why::parts : Why::known));
}

void Planner::presence(Draft& draft, Frame& frame) {
  all_kids(draft, frame);
  const Op op = draft.node->op;
  const CellId subject = cell(draft.kids[0]);
  const auto& type = (*draft.tree)[draft.node->kids[0]].type;
  CellId operand = subject;
  if (type.kind == Kind::list && plan_.cells[subject].presence == Presence::present) {
    const auto& list = site_.lists[plan_.cells[subject].id];
    Cell stands = plan_.cells[subject];
    stands.presence = !list.items.empty() ? Presence::present : list.complete ? Presence::none : Presence::unknown;
    operand = constant(stands);
  }
  step(draft, op == Op::recorded ? Code::recorded : op == Op::fitted ? Code::fitted : Code::is_none, {operand});
}

void Planner::arithmetic(Draft& draft, Frame& frame) {
  all_kids(draft, frame);
  const Node& node = *draft.node;
  Code code = Code::greatest;
  switch (node.op) {
    case Op::add: code = Code::add; break;
    case Op::subtract: code = Code::subtract; break;
    case Op::multiply: code = Code::multiply; break;
    case Op::divide: code = Code::divide; break;
    case Op::negate: code = Code::negate; break;
    case Op::least: code = Code::least; break;
    default: break;
  }
  if (node.type.kind == Kind::date && (node.op == Op::add || node.op == Op::subtract)) code = Code::date_step;
  step(draft, code, cells(draft));
  plan_.steps.back().sizes = is_size((*draft.tree)[node.kids[0]].type);
  if (code == Code::date_step) plan_.steps.back().negated = node.op == Op::subtract;
}

}  // namespace headgate::evaluate
