#include "evaluate/lists.hpp"

#include <algorithm>

namespace headgate::evaluate {

using expression::Op;
using vocabulary::Presence;

Walked walk_list(const site::Site& site, const vocabulary::ShapeSet& shapes, Presence presence, site::ListId list) {
  Walked walked;
  if (list == site::nowhere || presence != Presence::present) {
    walked.complete = presence == Presence::none;
    return walked;
  }
  walked.list = list;
  const auto& items = site.lists[list];
  walked.complete = items.complete || (shapes & ~items.closed).none();
  for (const auto element : items.items) {
    if (shapes.test(site.elements[element].shape)) walked.elements.push_back(element);
  }
  return walked;
}

bool never_negative(const expression::Tree& tree, expression::NodeId id, const expression::Binder& of,
                    const vocabulary::Vocabulary& vocabulary) {
  const auto& node = tree[id];
  switch (node.op) {
    case Op::literal: return node.value.number.lo >= 0;
    case Op::count: return true;
    case Op::add:
    case Op::multiply:
    case Op::divide:
    case Op::greatest:
    case Op::least:
      return std::all_of(node.kids.begin(), node.kids.end(),
                         [&](auto kid) { return never_negative(tree, kid, of, vocabulary); });
    case Op::path: break;
    default: return false;
  }
  if (node.steps.empty()) return false;
  // A fact of what is summed must be declared so by its kind; another's by every kind and record that has one so called.
  const bool own = node.variable == of.variable && node.steps.size() == 1;
  for (std::size_t id_of = 0; id_of < vocabulary.shapes.size(); ++id_of) {
    const auto& shape = vocabulary.shapes[id_of];
    const auto field = own && !of.shapes.test(id_of) ? std::nullopt : shape.field(node.steps.back().name);
    if (field && !shape.fields[*field].never_negative) return false;
  }
  return true;
}

bool computes(const site::Site& site, const vocabulary::Vocabulary& vocabulary, const vocabulary::Field& field,
              const site::Slot& slot, std::string_view next) {
  if (field.holds != vocabulary::Field::Holds::record || slot.value.presence != vocabulary::Presence::unknown)
    return false;
  if (slot.value.id == site::nowhere) return false;
  const auto& record = vocabulary.shapes[site.elements[slot.value.id].shape];
  const auto inside = record.field(next);
  return inside && record.fields[*inside].holds == vocabulary::Field::Holds::derived;
}

}  // namespace headgate::evaluate
