// Reading facts: paths, derived values, papers and answers.
#include "evaluate/interpret.hpp"

namespace headgate::evaluate {

using expression::Node;
using vocabulary::Field;
using vocabulary::Presence;
using vocabulary::Value;

namespace {

void not_known(Evaluated& out, Why why) {
  out.value = vocabulary::unknown();
  out.why = why;
}

void give_reason(Evaluated& out, const site::Slot& slot) {
  if (out.value.presence == Presence::unknown) out.why = slot.asked_not ? Why::asked_not : Why::missing;
  else if (out.value.presence == Presence::present && out.type.kind == vocabulary::Type::Kind::truth &&
           out.value.truth == Truth::undecided) out.why = Why::missing;
}

// Text of a paper's field against a name, its title or a spelling.
bool names_role(const vocabulary::Vocabulary& vocabulary, std::string_view written, std::size_t role) {
  const auto found = vocabulary.role(written);
  return found && *found == role;
}

}  // namespace

Evaluated Interpreter::path(const Node& node, Evaluated out, const Frame& frame) {
  const auto& vocabulary = *book_.vocabulary;
  site::ElementId element = node.variable == expression::no_node ? 0 : frame[node.variable];
  out.element = element;
  out.value.presence = Presence::present;
  out.value.id = element;
  for (std::size_t i = 0; i < node.steps.size(); ++i) {
    if (out.value.presence != Presence::present) {
      for (std::size_t j = i; j < node.steps.size(); ++j) out.beyond.push_back(node.steps[j].name);
      not_known(out, out.value.presence == Presence::none ? Why::of_none : Why::missing);
      return out;
    }
    element = out.value.id;
    const auto field = vocabulary.shapes[site_.elements[element].shape].field(node.steps[i].name);
    if (!field) {   // `site.x`: the root names itself
      if (i == 0 && element == 0 && node.steps[i].name == vocabulary.shapes[0].name) continue;
      not_known(out, Why::missing);
      return out;
    }
    const Field& at = vocabulary.shapes[site_.elements[element].shape].fields[*field];
    const site::Slot& slot = site_.slot(element, *field);
    out.element = element;
    out.field = *field;
    out.why = Why::known;
    out.value = slot.value;
    if (at.holds == Field::Holds::derived && slot.origin == site::Origin::left_out) {
      const auto* derivation = book_.derivation(site_.elements[element].shape, *field);
      if (derivation != nullptr) out = derived(*derivation, element, std::move(out));
      else out.why = Why::missing;
    } else {
      give_reason(out, slot);
    }
  }
  return out;
}

Evaluated Interpreter::derived(const rulebook::Derived& derivation, site::ElementId element, Evaluated out) {
  const auto key = std::make_pair(element, derivation.field);
  auto known = derived_.find(key);
  if (known == derived_.end()) {
    if (!running_.insert(key).second) {   // loading refuses cycles; a site's own reference may still close one
      not_known(out, Why::missing);
      return out;
    }
    const auto bases = std::move(bases_);
    bases_.clear();
    known = derived_.emplace(key, evaluate(derivation.tree, {element})).first;
    bases_ = bases;
    running_.erase(key);
  }
  out.value = known->second.value;
  out.why = known->second.why == Why::known ? Why::known : Why::parts;
  out.kids.push_back(known->second);
  return out;
}

Evaluated Interpreter::paper(const Node& node, Evaluated out) {
  const auto& vocabulary = *book_.vocabulary;
  const auto papers = vocabulary.shapes[0].field("papers");
  const auto kind = vocabulary.shape(node.index == 0 ? "approval" : "order");
  if (!papers || !kind) {
    not_known(out, Why::missing);
    return out;
  }
  const Value& list_value = site_.slot(0, *papers).value;
  Truth result = Truth::no;
  if (list_value.id != site::nowhere) {
    const auto& list = site_.lists[list_value.id];
    if (!list.complete && !list.items.empty()) result = Truth::undecided;
    for (const auto element : list.items) {
      if (site_.elements[element].shape != *kind) continue;
      const auto& shape = vocabulary.shapes[*kind];
      const auto text_of = [&](std::string_view name) -> std::string_view {
        const auto field = shape.field(name);
        return field && site_.slot(element, *field).value.presence == Presence::present
                   ? site_.slot(element, *field).value.text : std::string_view{};
      };
      std::string_view subject = text_of("for");
      const std::size_t slash = subject.find('/');   // authority/rule
      if (slash != std::string_view::npos) subject = subject.substr(slash + 1);
      const std::string wanted = !node.name.empty() ? node.name : rule_ != nullptr ? rule_->id : "";
      if (subject != wanted || !names_role(vocabulary, text_of("by"), node.column)) continue;
      const std::string_view at = text_of("at");
      bool counts = at.empty() || elements_.empty();
      for (const auto in_hand : elements_) {
        const std::string address = site::address(site_, vocabulary, in_hand);
        counts = counts || at == address || at == address.substr(0, address.find(' '));
      }
      if (!counts) continue;
      result = Truth::yes;
      out.paper = static_cast<std::int32_t>(element);
    }
  }
  out.value = vocabulary::of_truth(result);
  out.why = result == Truth::undecided ? Why::unfinished : Why::known;
  return out;
}

Evaluated Interpreter::confirmed(const Node& node, Evaluated out) {
  const auto answer = site_.confirmed.find(node.name);
  const bool answered = answer != site_.confirmed.end() && answer->second.value.presence == Presence::present;
  out.value = vocabulary::of_truth(answered ? answer->second.value.truth : Truth::undecided);
  if (!answered) out.why = Why::missing;
  return out;
}

}  // namespace headgate::evaluate
