#include <algorithm>

#include "site/loading.hpp"
#include "vocabulary/names.hpp"

namespace headgate::site {
namespace {

using document::Entry;
using document::Node;
using vocabulary::Field;
using vocabulary::Presence;
using Kind = vocabulary::Type::Kind;

const std::vector<std::string> full_form_keys = {"value", "good-to", "how"};

// `{value: …, good-to: …, how: …}` taken apart; a value alone is its own value.
struct FullForm {
  const Node* value = nullptr;
  const Node* good_to = nullptr;
  const Node* how = nullptr;
};

FullForm take_apart(Loading& at, const Node& node) {
  FullForm form;
  if (!node.is_map()) {
    form.value = &node;
    return form;
  }
  for (const Entry& entry : node.entries) {
    if (std::find(full_form_keys.begin(), full_form_keys.end(), entry.key) != full_form_keys.end()) continue;
    at.found.push_back(
        text::say("full-form-key", entry.key_range, {entry.key, vocabulary::offer(entry.key, full_form_keys)}));
    return form;
  }
  form.value = node.find("value");
  form.good_to = node.find("good-to");
  form.how = node.find("how");
  if (!form.value) at.found.push_back(text::say("full-form-value", node.range));
  return form;
}

std::string as_written(const Node& node) {
  if (node.is_scalar()) return node.scalar;
  std::vector<std::string> parts;
  for (const Node& item : node.items) parts.push_back(item.scalar);
  return vocabulary::join(parts);
}

void take_how(Loading& at, Slot& slot, const FullForm& form) {
  if (form.good_to && form.good_to->is_scalar()) slot.written += " +/- " + form.good_to->scalar;
  if (!form.how) return;
  if (!form.how->is_scalar()) {
    at.found.push_back(text::say("how-text", form.how->range));
    return;
  }
  slot.how = form.how->scalar;
  slot.assumed = form.how->scalar == "assumed";
}

void take_value(Loading& at, Slot& slot, const vocabulary::Type& type, const Field* field, const FullForm& form) {
  std::vector<vocabulary::Reading> readings;
  slot.value = vocabulary::read_value(*form.value, type, field, at.vocabulary, &readings, at.found);
  if (form.good_to) vocabulary::widen(slot.value, &readings, *form.good_to, type, at.found);
  if (type.kind != Kind::level || slot.value.presence != Presence::present) return;
  slot.value.id = static_cast<std::uint32_t>(at.site.levels.size());
  at.site.levels.push_back(readings);
}

}  // namespace

Slot read_stated(Loading& at, const vocabulary::Type& type, const Field* field, const Node& node) {
  Slot slot;
  slot.origin = Origin::stated;
  slot.range = node.range;
  const FullForm form = take_apart(at, node);
  if (!form.value) return slot;
  slot.range = form.value->range;
  slot.asked_not = is_word(*form.value, "unknown");
  slot.written = as_written(*form.value);
  take_value(at, slot, type, field, form);
  take_how(at, slot, form);
  return slot;
}

void read_fact(Loading& at, ElementId element, FieldId id, const Node& node) {
  const Field& field = at.field(element, id);
  if (field.type.kind == Kind::nothing) {
    at.found.push_back(text::say("fact-untyped", node.range, {field.title}));
    return;
  }
  at.site.slot(element, id) = read_stated(at, field.type, &field, node);
}

void read_reference(Loading& at, ElementId element, FieldId id, const Node& node) {
  Slot slot;
  slot.origin = Origin::stated;
  slot.range = node.range;
  const FullForm form = take_apart(at, node);
  if (form.value && !form.value->is_scalar()) {
    at.found.push_back(text::say("one-value-expected", node.range, {at.field(element, id).title}));
  } else if (form.value) {
    slot.range = form.value->range;
    slot.written = form.value->scalar;
    slot.asked_not = is_word(*form.value, "unknown");
    if (is_word(*form.value, "none")) slot.value.presence = Presence::none;
    const bool word = slot.asked_not || slot.value.presence == Presence::none;
    if (!word) at.references.push_back({element, id, form.value});
    if (form.good_to) at.found.push_back(text::say("good-to-measured", form.good_to->range));
    take_how(at, slot, form);
  }
  at.site.slot(element, id) = slot;
}

}  // namespace headgate::site
