// Limits layer by layer, and tables.
#include <algorithm>

#include "evaluate/look_up.hpp"
#include "evaluate/reference/interpret.hpp"

namespace headgate::reference {

using rulebook::LimitValue;

namespace {

// What one source says for a row (of a limit by kind or member) or at all; nullptr when it has no such row.
const Tree* tree_of(const LimitValue& value, std::size_t row) {
  if (value.form != LimitValue::Form::rows) return value.tree ? &*value.tree : nullptr;
  for (const auto& [key, tree] : value.rows) {
    if (key == row) return &tree;
  }
  return nullptr;
}

// The value in force of a limit that is not asked row by row; nullptr when nothing can be said from it.
const LimitValue* in_force(const rulebook::Limit& limit) {
  if (limit.chain.empty() || !limit.chain[0].doubt.empty()) return nullptr;
  return limit.chain[0].form == LimitValue::Form::unknown ? nullptr : &limit.chain[0];
}

}  // namespace

// Rows are replaced row by row: the strongest source that has the row counts, and `base` is the next below it.
Value Interpreter::limit_row(std::uint32_t limit, std::size_t from, std::size_t row, site::ElementId element,
                             Worked& out, const Frame& in_hand) {
  const auto& chain = book_.limits[limit].chain;
  Frame hand = in_hand;  // a limit asked inside another's value has in hand what that one has
  if (!below_.empty() && below_.back().element == site::nowhere)
    hand.insert(hand.end(), below_.back().in_hand.begin(), below_.back().in_hand.end());
  for (std::size_t i = from; i < chain.size(); ++i) {
    const bool here = element != site::nowhere ? chain[i].at == element
                                               : std::find(hand.begin(), hand.end(), chain[i].at) != hand.end();
    if (chain[i].at != site::nowhere && !here) continue;
    const Tree* tree = tree_of(chain[i], row);
    if (tree == nullptr && chain[i].form == LimitValue::Form::rows) continue;
    if (tree == nullptr) return vocabulary::unknown();
    below_.push_back({limit, i, row, element, hand});
    out.kids.push_back(work(*tree, element == site::nowhere ? Frame{} : Frame{element}));
    below_.pop_back();
    return chain[i].doubt.empty() ? out.kids.back().value : vocabulary::unknown();
  }
  return vocabulary::unknown();
}

Value Interpreter::limit(const Node& at, Worked& out, const Frame& in_hand) {
  if (out.kids.empty()) return limit_row(at.index, 0, 0, site::nowhere, out, in_hand);
  const Value key = out.kids[0].value;
  if (!evaluate::usable(key)) return vocabulary::unknown();
  const auto choice = book_.limits[at.index].signature.by_choice;
  const bool of_kind = out.kids[0].tree->nodes[out.kids[0].node].type.kind == vocabulary::Type::Kind::kind;
  if (of_kind) return limit_row(at.index, 0, key.id, site::nowhere, out, in_hand);
  if (choice == vocabulary::no_id) return limit_row(at.index, 0, site_.elements[key.id].shape, key.id, out, in_hand);
  std::vector<Value> rows;
  for (std::size_t member = 0; member < book_.vocabulary->choices[choice].members.size(); ++member) {
    if ((key.members >> member & 1U) != 0) rows.push_back(limit_row(at.index, 0, member, site::nowhere, out, in_hand));
  }
  Value all = rows.front();
  for (const auto& row : rows) all = evaluate::hull(all, row, at.type, book_);
  return all;
}

Value Interpreter::in_limit(const Tree& tree, const Node& at, Worked& out, Frame& frame) {
  out.kids.push_back(node(tree, at.kids[0], frame));
  const Value& subject = out.kids[0].value;
  const Node& list = tree[at.kids[1]];
  const Type& type = tree[at.kids[0]].type;
  if (list.type.kind == Type::Kind::season) {
    Worked season;
    const Value days = limit_row(list.index, 0, 0, site::nowhere, season, frame);
    if (!evaluate::usable(subject)) return vocabulary::of_truth(Truth::undecided);
    const Truth in = evaluate::in_season(subject, days).truth;
    return vocabulary::of_truth(at.negated ? quantity::opposite(in) : in);
  }
  const LimitValue* value = in_force(book_.limits[list.index]);
  if (value == nullptr || !evaluate::usable(subject)) return vocabulary::of_truth(Truth::undecided);
  Truth any = Truth::no;
  std::uint64_t listed = 0;
  for (const auto& item : value->list) {
    listed |= item.members;
    if (type.kind == Type::Kind::element)
      any = quantity::either(any, quantity::truth(site_.elements[subject.id].shape == item.id));
    else
      any = quantity::either(any, evaluate::same(subject, item, type, book_).truth);
  }
  const bool choice = type.kind == Type::Kind::choice && !value->list.empty();
  if (choice && (subject.members & ~listed) == 0) any = Truth::yes;
  return vocabulary::of_truth(at.negated ? quantity::opposite(any) : any);
}

Value Interpreter::look_up(const Tree& tree, const Node& at, const Worked& out) const {
  const bool of_limit = at.index == vocabulary::no_id;
  std::uint32_t table = at.index;
  if (of_limit) {
    const LimitValue* value = in_force(book_.limits[tree[at.kids[0]].index]);
    if (value == nullptr || value->form != LimitValue::Form::table) return vocabulary::unknown();
    table = value->table;
  }
  std::vector<Value> keys;
  for (std::size_t i = of_limit ? 1 : 0; i < out.kids.size(); ++i) {
    Value key = out.kids[i].value;
    if (!evaluate::usable(key)) return vocabulary::unknown();
    if (tree[at.kids[i]].type.kind == Type::Kind::element) key.id = site_.elements[key.id].shape;  // a row a kind
    keys.push_back(key);
  }
  return evaluate::look_up(book_.tables[table], keys, at.column, book_).value;
}

}  // namespace headgate::reference
