// List bodies, once an element; limits by layer; tables.
#include <algorithm>
#include <array>
#include <utility>

#include "evaluate/planner.hpp"

namespace headgate::evaluate {

using expression::no_node;
using expression::Node;
using expression::Op;
using rulebook::LimitValue;
using vocabulary::Presence;

void Planner::quantifier(Draft& draft, Frame& frame) {
  const Node& node = *draft.node;
  const Cell list = plan_.cells[cell(lay(*draft.tree, node.binder.list, frame))];
  const Walked walked = walk_list(site_, node.binder.shapes, list.presence, list.id);
  draft.planned.list = walked.list;
  std::vector<CellId> operands;
  const CellId always = yes();
  for (const auto element : walked.elements) {
    if (full()) return not_known(draft, Why::too_large);
    frame[node.binder.variable] = element;
    std::array<CellId, 2> pair{always, always};
    for (std::size_t k = 0; k < node.kids.size() && k < pair.size(); ++k) {
      if (node.kids[k] == no_node) continue;
      draft.kids.push_back(lay(*draft.tree, node.kids[k], frame));
      plan_.nodes[draft.kids.back()].about = element;
      pair[k] = cell(draft.kids.back());
    }
    operands.insert(operands.end(), pair.begin(), pair.end());
  }
  frame[node.binder.variable] = site::nowhere;
  step(draft, node.op == Op::every ? Code::every : node.op == Op::some ? Code::some : Code::none_of, operands);
  plan_.steps.back().finished = walked.complete;
}

void Planner::fold(Draft& draft, Frame& frame) {
  const Node& node = *draft.node;
  const bool counts = node.op == Op::count;
  const Cell list = plan_.cells[cell(lay(*draft.tree, node.binder.list, frame))];
  const Walked walked = walk_list(site_, node.binder.shapes, list.presence, list.id);
  draft.planned.list = walked.list;
  std::vector<CellId> operands;
  const CellId always = yes();
  const CellId one = constant(cell_of(vocabulary::of_number(quantity::exactly(1)), Why::known));
  for (const auto element : walked.elements) {
    if (full()) return not_known(draft, Why::too_large);
    frame[node.binder.variable] = element;
    CellId where = always;
    CellId value = one;
    for (std::size_t k = 0; k < node.kids.size(); ++k) {
      if (node.kids[k] == no_node) continue;
      draft.kids.push_back(lay(*draft.tree, node.kids[k], frame));
      plan_.nodes[draft.kids.back()].about = element;
      (k == (counts ? 0U : 1U) ? where : value) = cell(draft.kids.back());
    }
    operands.push_back(where);
    operands.push_back(value);
  }
  frame[node.binder.variable] = site::nowhere;
  const Code code = counts                    ? Code::count
                    : node.op == Op::sum      ? Code::sum
                    : node.op == Op::least_of ? Code::least_of
                                              : Code::greatest_of;
  step(draft, code, operands);
  plan_.steps.back().finished = walked.complete;
  plan_.steps.back().sizes = is_size(node.type);
  plan_.steps.back().grows =
      counts || (node.op == Op::sum && never_negative(*draft.tree, node.kids[0], node.binder, *book_.vocabulary));
}

namespace {

const expression::Tree* row_of(const LimitValue& value, std::size_t key) {
  for (const auto& row : value.rows) {
    if (row.first == key) return &row.second;
  }
  return nullptr;
}

}  // namespace

// An order may be for one thing only: the one the limit is asked for, else one of those in hand.
bool Planner::counts_for(const LimitValue& value, site::ElementId element, const Hand& hand) {
  if (value.at == site::nowhere) return true;
  if (element != site::nowhere) return value.at == element;
  for (const Hand* at = &hand; at != nullptr; at = at->outer) {
    if (std::find(at->frame->begin(), at->frame->end(), value.at) != at->frame->end()) return true;
  }
  return false;
}

void Planner::limit_value(Draft& draft, std::uint32_t index, std::size_t from, std::size_t key, site::ElementId element,
                          const Frame& in_hand) {
  const auto known = limits_.find({index, from, key, element});
  if (known != limits_.end()) {
    draft.planned.limit = static_cast<std::int32_t>(index);
    draft.planned.chain = known->second.chain;
    draft.planned.cell = known->second.cell;
    draft.kids.insert(draft.kids.end(), known->second.kids.begin(), known->second.kids.end());
    return;
  }
  if (too_deep()) return not_known(draft, Why::too_large);
  const std::size_t before = draft.kids.size();
  ++limits_running_;
  lay_limit(draft, index, from, key, element, in_hand);
  --limits_running_;
  if (orders_by_element_) return;
  const auto first = draft.kids.begin() + static_cast<std::ptrdiff_t>(before);
  limits_.insert({{index, from, key, element}, {draft.planned.chain, draft.planned.cell, {first, draft.kids.end()}}});
}

void Planner::lay_limit(Draft& draft, std::uint32_t index, std::size_t from, std::size_t key, site::ElementId element,
                        const Frame& in_hand) {
  const auto& limit = book_.limits[index];
  const Hand hand{&in_hand, hand_};
  draft.planned.limit = static_cast<std::int32_t>(index);
  for (std::size_t i = from; i < limit.chain.size(); ++i) {
    const LimitValue& value = limit.chain[i];
    if (!counts_for(value, element, hand)) continue;
    const auto* tree = value.form == LimitValue::Form::rows ? row_of(value, key) : value.tree ? &*value.tree : nullptr;
    if (value.form == LimitValue::Form::rows && tree == nullptr) continue;
    draft.planned.chain = static_cast<std::int32_t>(i);
    if (value.form == LimitValue::Form::unknown && !value.doubt.empty()) return not_known(draft, Why::doubt);
    if (value.form == LimitValue::Form::unknown) return not_known(draft, Why::no_value);
    if (tree == nullptr) return not_known(draft, Why::known);  // a list or a table is asked by what stands around it
    bases_.push_back({index, i, key, element, &in_hand});
    const Hand* const outer = std::exchange(hand_, element == site::nowhere ? &hand : nullptr);
    draft.kids.push_back(plan(*tree, element == site::nowhere ? Frame{} : Frame{element}));
    hand_ = outer;
    bases_.pop_back();
    const CellId inner = cell(draft.kids.back());
    if (!value.doubt.empty()) return not_known(draft, Why::doubt);
    const bool plain = tree->nodes[tree->root].op == Op::literal;
    if (plain && tree->nodes[tree->root].value.presence == Presence::unknown) return not_known(draft, Why::no_value);
    // A plain number needs no step of its own.
    if (plain)
      draft.planned.cell = inner;
    else
      step(draft, Code::copy, {inner});
    return;
  }
  not_known(draft, limit.chain.empty() ? Why::no_value : Why::no_row);
}

void Planner::limit(Draft& draft, Frame& frame) {
  const Node& node = *draft.node;
  const auto& signature = book_.limits[node.index].signature;
  all_kids(draft, frame);
  draft.planned.limit = static_cast<std::int32_t>(node.index);
  if (draft.kids.empty()) return limit_value(draft, node.index, 0, 0, site::nowhere, frame);
  if (signature.by_choice != vocabulary::no_id) return limit_rows(draft, frame);
  const Cell key = plan_.cells[cell(draft.kids[0])];
  if (key.presence != Presence::present)
    return not_known(draft, key.presence == Presence::none ? Why::of_none : Why::parts);
  const bool of_kind = (*draft.tree)[node.kids[0]].type.kind == vocabulary::Type::Kind::kind;
  if (of_kind) return limit_value(draft, node.index, 0, key.id, site::nowhere, frame);
  limit_value(draft, node.index, 0, site_.elements[key.id].shape, key.id, frame);
}

// A row for each member of the choice; which one counts is seen when deciding.
void Planner::limit_rows(Draft& draft, const Frame& in_hand) {
  const std::uint32_t index = draft.node->index;
  const auto& choice = book_.vocabulary->choices[book_.limits[index].signature.by_choice];
  std::vector<CellId> operands{cell(draft.kids[0])};
  for (std::size_t member = 0; member < choice.members.size(); ++member) {
    Draft row;
    row.node = draft.node;
    row.tree = draft.tree;
    row.planned.tree = draft.tree;
    row.planned.node = draft.planned.node;
    limit_value(row, index, 0, member, site::nowhere, in_hand);
    draft.kids.push_back(keep(row));
    operands.push_back(cell(draft.kids.back()));
  }
  step(draft, Code::select_row, operands);
}

// A table with a row a kind is asked with an element: its key is the kind, known when a site is loaded.
CellId Planner::kind_key(CellId key, const Draft& draft, std::size_t index) {
  const std::size_t first = draft.node->index == vocabulary::no_id ? 1 : 0;
  Cell cell = plan_.cells[key];
  const bool element = (*draft.tree)[draft.node->kids[first + index]].type.kind == vocabulary::Type::Kind::element;
  if (!element || cell.presence != Presence::present) return key;
  cell.id = site_.elements[cell.id].shape;
  return constant(cell);
}

void Planner::look_up(Draft& draft, Frame& frame) {
  const Node& node = *draft.node;
  all_kids(draft, frame);
  auto operands = cells(draft);
  draft.planned.table = static_cast<std::int32_t>(node.index);
  if (!node.kids.empty() && (*draft.tree)[node.kids[0]].op == Op::limit && node.index == vocabulary::no_id) {
    const auto limit_index = (*draft.tree)[node.kids[0]].index;
    const auto& chain = book_.limits[limit_index].chain;
    draft.planned.limit = static_cast<std::int32_t>(limit_index);
    draft.planned.table = -1;
    operands.erase(operands.begin());
    draft.planned.chain = chain.empty() ? -1 : 0;
    if (chain.empty() || chain[0].form != LimitValue::Form::table || !chain[0].doubt.empty()) {
      return not_known(draft, chain.empty() || chain[0].doubt.empty() ? Why::no_value : Why::doubt);
    }
    draft.planned.table = static_cast<std::int32_t>(chain[0].table);
  }
  for (std::size_t k = 0; k < operands.size(); ++k) operands[k] = kind_key(operands[k], draft, k);
  step(draft, Code::look_up, operands);
}

}  // namespace headgate::evaluate
