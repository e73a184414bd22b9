// Limits by layer, tables, functions and `if`.
#include "evaluate/interpret.hpp"
#include "expression/functions.hpp"

namespace headgate::evaluate {

using expression::Node;
using expression::Tree;
using quantity::Interval;
using rulebook::LimitValue;
using vocabulary::Presence;
using vocabulary::Value;
using Kind = vocabulary::Type::Kind;

namespace {

void not_known(Evaluated& out, Why why) {
  out.value = vocabulary::unknown();
  out.why = why;
}

const Tree* row_of(const LimitValue& value, std::size_t key) {
  for (const auto& row : value.rows) {
    if (row.first == key) return &row.second;
  }
  return nullptr;
}

}  // namespace

// The strongest value from `from` on that has one for the key; `base` in it is the next lower.
Evaluated Interpreter::limit_value(std::uint32_t index, std::size_t from, std::size_t key, site::ElementId element, Evaluated out) {
  const auto& limit = book_.limits[index];
  out.limit = static_cast<std::int32_t>(index);
  for (std::size_t i = from; i < limit.chain.size(); ++i) {
    const LimitValue& value = limit.chain[i];
    const Tree* tree = value.form == LimitValue::Form::rows ? row_of(value, key) : value.tree ? &*value.tree : nullptr;
    if (value.form == LimitValue::Form::rows && tree == nullptr) continue;
    out.chain = static_cast<std::int32_t>(i);
    if (value.form == LimitValue::Form::unknown || tree == nullptr) {
      not_known(out, Why::no_value);
      return out;
    }
    bases_.push_back({index, i, key, element});
    Evaluated inner = evaluate(*tree, element == site::nowhere ? Frame{} : Frame{element});
    bases_.pop_back();
    out.value = inner.value;
    out.why = inner.why == Why::known ? Why::known : Why::parts;
    out.kids.push_back(std::move(inner));
    if (!value.doubt.empty()) not_known(out, Why::doubt);
    return out;
  }
  not_known(out, limit.chain.empty() ? Why::no_value : Why::no_row);
  return out;
}

Evaluated Interpreter::limit(const Tree& tree, const Node& node, Evaluated out, Frame& frame) {
  const auto& signature = book_.limits[node.index].signature;
  for (const auto kid : node.kids) out.kids.push_back(run(tree, kid, frame));
  if (out.kids.empty()) return limit_value(node.index, 0, 0, site::nowhere, std::move(out));
  const Value key = out.kids[0].value;
  if (!usable(key)) {
    out.limit = static_cast<std::int32_t>(node.index);
    not_known(out, key.presence == Presence::none ? Why::of_none : Why::parts);
    return out;
  }
  if (signature.by_choice == vocabulary::no_id) {
    return limit_value(node.index, 0, site_.elements[key.id].shape, key.id, std::move(out));
  }
  // A choice that may be several members: the hull of their rows.
  bool first = true;
  Evaluated all = out;
  for (std::size_t member = 0; member < vocabulary::most_members; ++member) {
    if ((key.members >> member & 1U) == 0 || member >= book_.vocabulary->choices[signature.by_choice].members.size()) continue;
    Evaluated one = limit_value(node.index, 0, member, site::nowhere, Evaluated(out));
    if (first) all = std::move(one);
    else {
      all.value = hull(all.value, one.value, node.type, book_);
      if (!usable(all.value)) all.why = one.why == Why::known ? all.why : one.why;
      all.kids.insert(all.kids.end(), one.kids.begin(), one.kids.end());
    }
    first = false;
  }
  if (first) not_known(all, Why::no_row);
  return all;
}

Evaluated Interpreter::in_list(const Tree& tree, const Node& node, Evaluated out, Frame& frame) {
  out.kids.push_back(run(tree, node.kids[0], frame));
  const Value& subject = out.kids[0].value;
  const Node& of = tree[node.kids[1]];
  Evaluated list;
  list.tree = &tree;
  list.node = node.kids[1];
  list.type = of.type;
  list.limit = static_cast<std::int32_t>(of.index);
  const auto& chain = book_.limits[of.index].chain;
  Compared any{Truth::no, Why::known};
  if (chain.empty() || chain[0].form == LimitValue::Form::unknown || !chain[0].doubt.empty()) {
    any = {Truth::undecided, chain.empty() ? Why::no_value : chain[0].doubt.empty() ? Why::no_value : Why::doubt};
  } else if (of.type.kind == Kind::season) {
    list.chain = 0;
    list.value = limit_value(of.index, 0, 0, site::nowhere, Evaluated(list)).value;
    any = in_season(subject, list.value);
  } else {
    list.chain = 0;
    std::uint64_t members = 0;
    for (const auto& value : chain[0].list) {
      members |= value.members;
      const Compared one = same(subject, value, out.kids[0].type, book_);
      any.truth = quantity::either(any.truth, one.truth);
      if (one.truth == Truth::undecided) any.why = one.why;
    }
    const bool choice = out.kids[0].type.kind == Kind::choice && usable(subject) && !chain[0].list.empty();
    if (any.truth == Truth::undecided && choice && (subject.members & ~members) == 0) any = {Truth::yes, Why::known};
  }
  list.why = any.why == Why::no_value || any.why == Why::doubt ? any.why : Why::known;
  out.kids.push_back(std::move(list));
  const Truth truth = node.negated ? quantity::opposite(any.truth) : any.truth;
  out.value = vocabulary::of_truth(truth);
  out.why = truth == Truth::undecided ? any.why : Why::known;
  return out;
}

Evaluated Interpreter::table(const Tree& tree, const Node& node, Evaluated out, Frame& frame) {
  std::vector<Value> keys;
  std::uint32_t index = node.index;
  std::size_t first_key = 0;
  for (std::size_t k = 0; k < node.kids.size(); ++k) out.kids.push_back(run(tree, node.kids[k], frame));
  const rulebook::Table* table = nullptr;
  if (!node.kids.empty() && tree[node.kids[0]].op == expression::Op::limit && node.index == vocabulary::no_id) {
    // A limit that holds a table: the strongest value's one.
    const auto& chain = book_.limits[tree[node.kids[0]].index].chain;
    out.limit = static_cast<std::int32_t>(tree[node.kids[0]].index);
    first_key = 1;
    if (chain.empty() || chain[0].form != LimitValue::Form::table || !chain[0].doubt.empty()) {
      not_known(out, chain.empty() || chain[0].doubt.empty() ? Why::no_value : Why::doubt);
      return out;
    }
    out.chain = 0;
    index = chain[0].table;
  }
  table = &book_.tables[index];
  out.table = static_cast<std::int32_t>(index);
  for (std::size_t k = first_key; k < out.kids.size(); ++k) keys.push_back(out.kids[k].value);
  const Found found = look_up(*table, keys, node.column, book_);
  out.value = found.value;
  out.why = found.why;
  return out;
}

Evaluated Interpreter::call(const Tree& tree, const Node& node, Evaluated out, Frame& frame) {
  run_kids(tree, node, out, frame);
  std::vector<Value> inputs;
  for (const auto& kid : out.kids) {
    if (!usable(kid.value)) {
      not_known(out, Why::parts);
      return out;
    }
    inputs.push_back(kid.value);
  }
  const Found found = call_function(node.index, inputs, book_);
  out.value = found.value;
  out.why = found.why;
  return out;
}

}  // namespace headgate::evaluate
