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

bool never_negative(const expression::Tree& tree, expression::NodeId id, const vocabulary::Vocabulary& vocabulary) {
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
                         [&](auto kid) { return never_negative(tree, kid, vocabulary); });
    case Op::path: break;
    default: return false;
  }
  if (node.steps.empty()) return false;
  for (const auto& shape : vocabulary.shapes) {  // every fact of this name must be declared so
    const auto field = shape.field(node.steps.back().name);
    if (field && !shape.fields[*field].never_negative) return false;
  }
  return true;
}

namespace {

std::string_view text_of(const site::Site& site, const vocabulary::Shape& shape, site::ElementId element,
                         std::string_view name) {
  const auto field = shape.field(name);
  if (!field || site.slot(element, *field).value.presence != Presence::present) return {};
  return site.slot(element, *field).value.text;
}

// Whether a paper for one element (by its address, or as a reference to it) is for one of those in hand.
bool lies_at(const site::Site& site, const vocabulary::Vocabulary& vocabulary, site::ElementId paper,
             const std::vector<site::ElementId>& elements) {
  const auto& shape = vocabulary.shapes[site.elements[paper].shape];
  const auto field = shape.field("at");
  if (!field || elements.empty()) return true;
  const auto& at = site.slot(paper, *field);
  if (at.value.presence != Presence::present) return at.origin == site::Origin::left_out;
  if (shape.fields[*field].type.kind == vocabulary::Type::Kind::element) {
    return std::find(elements.begin(), elements.end(), at.value.id) != elements.end();
  }
  return std::any_of(elements.begin(), elements.end(), [&](site::ElementId element) {
    const std::string address = site::address(site, vocabulary, element);
    return at.value.text == address || at.value.text == address.substr(0, address.find(' '));
  });
}

}  // namespace

bool computes(const site::Site& site, const vocabulary::Vocabulary& vocabulary, const vocabulary::Field& field,
              const site::Slot& slot, std::string_view next) {
  if (field.holds != vocabulary::Field::Holds::record || slot.value.presence != vocabulary::Presence::unknown)
    return false;
  if (slot.value.id == site::nowhere) return false;
  const auto& record = vocabulary.shapes[site.elements[slot.value.id].shape];
  const auto inside = record.field(next);
  return inside && record.fields[*inside].holds == vocabulary::Field::Holds::derived;
}

PaperFound find_paper(const site::Site& site, const vocabulary::Vocabulary& vocabulary, const expression::Node& node,
                      const rulebook::Rule* rule, const std::vector<site::ElementId>& elements) {
  PaperFound found;
  const auto field = vocabulary.shapes[0].field("papers");
  const auto kind = vocabulary.shape(node.index == 0 ? "approval" : "order");
  if (!field || !kind) return {Truth::undecided, -1};
  const auto list_id = site.slot(0, *field).value.id;
  if (list_id == site::nowhere) return found;
  const auto& list = site.lists[list_id];
  if (!list.complete && list.stated) found.truth = Truth::undecided;
  const auto& shape = vocabulary.shapes[*kind];
  const std::string_view wanted = !node.name.empty() ? std::string_view(node.name)
                                  : rule != nullptr  ? std::string_view(rule->id)
                                                     : "";
  for (const auto element : list.items) {
    if (site.elements[element].shape != *kind) continue;
    std::string_view subject = text_of(site, shape, element, "for");
    if (const auto slash = subject.find('/'); slash != std::string_view::npos)
      subject = subject.substr(slash + 1);  // authority/rule
    const auto role = vocabulary.role(text_of(site, shape, element, "by"));
    if (subject != wanted || !role || *role != node.column) continue;
    if (!lies_at(site, vocabulary, element, elements)) continue;
    found = {Truth::yes, static_cast<std::int32_t>(element)};
  }
  return found;
}

}  // namespace headgate::evaluate
