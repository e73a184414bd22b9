#include "site/site.hpp"
#include "site/steps.hpp"
#include "vocabulary/names.hpp"

namespace headgate::site {
namespace {

using vocabulary::Field;
using vocabulary::ShapeSet;
using vocabulary::Vocabulary;

const Field& holder(const Site& site, const Vocabulary& vocabulary, const Element& element) {
  return vocabulary.shapes[site.elements[element.parent].shape].fields[element.field];
}

// "line[3]", "branches.lawn", "pressure"; "" for the root.
std::string path(const Site& site, const Vocabulary& vocabulary, ElementId id) {
  std::string result;
  while (id != 0) {
    const Element& element = site.elements[id];
    std::string step = holder(site, vocabulary, element).name;
    if (!element.name.empty()) {
      step += "." + element.name;
    } else if (element.list != nowhere) {
      step += "[" + std::to_string(element.number) + "]";
    }
    result = result.empty() ? step : step + "." + result;
    id = element.parent;
  }
  return result;
}

std::string candidates(const Site& site, const Vocabulary& vocabulary, const std::vector<ElementId>& items) {
  std::vector<std::string> result;
  for (const ElementId item : items) result.push_back(path(site, vocabulary, item));
  return vocabulary::join(result);
}

// Follows an address from the root, a step at a time.
struct Finder {
  const Site& site;
  const Vocabulary& vocabulary;
  const std::vector<AddressStep>& steps;
  text::Diagnostics& found;

  std::optional<ElementId> by_number(const List& list, const AddressStep& step) const {
    if (*step.number <= list.items.size()) return list.items[*step.number - 1];
    found.push_back(text::say("no-such-number", step.range, {step.name, std::to_string(list.items.size())}));
    return std::nullopt;
  }

  std::optional<ElementId> by_name(const List& list, const AddressStep& step) const {
    std::vector<std::string> known;
    for (const ElementId item : list.items) {
      if (site.elements[item].name == step.name) return item;
      known.push_back(site.elements[item].name);
    }
    found.push_back(text::say("no-such-named", step.range, {step.name, vocabulary::offer(step.name, known)}));
    return std::nullopt;
  }

  std::optional<ElementId> by_kind(const List& list, const Field& field, const AddressStep& step) const {
    const ShapeSet kinds = vocabulary.kinds(step.name) & field.type.shapes;
    std::vector<ElementId> matches;
    for (const ElementId item : list.items) {
      if (kinds.test(site.elements[item].shape)) matches.push_back(item);
    }
    if (step.number) {
      found.push_back(text::say("address-not-list", step.range, {step.name}));
    } else if (kinds.none()) {
      std::vector<std::string> known;
      for (std::size_t i = 0; i < vocabulary.shapes.size(); ++i) {
        if (field.type.shapes.test(i)) known.push_back(vocabulary.shapes[i].name);
      }
      found.push_back(
          text::say("unknown-kind", step.range, {step.name, field.title, vocabulary::offer(step.name, known, 24)}));
    } else if (matches.empty()) {
      found.push_back(text::say("none-of-kind", step.range, {step.name, field.name}));
    } else if (matches.size() > 1) {
      found.push_back(
          text::say("several-of-kind", step.range, {step.name, field.name, candidates(site, vocabulary, matches)}));
    } else {
      return matches.front();
    }
    return std::nullopt;
  }

  // The element a list's step means, with the step after it where that says which. `i` is left at the last step used.
  std::optional<ElementId> in_list(const List& list, const Field& field, std::size_t& i) const {
    if (steps[i].number) return by_number(list, steps[i]);
    ++i;
    return field.named ? by_name(list, steps[i]) : by_kind(list, field, steps[i]);
  }

  std::optional<Target> find() const {
    ElementId here = 0;
    for (std::size_t i = 0; i < steps.size(); ++i) {
      const auto id = field_of_step(vocabulary, site.elements[here].shape, steps[i], found);
      if (!id) return std::nullopt;
      const Field& field = vocabulary.shapes[site.elements[here].shape].fields[*id];
      const bool last = i + 1 == steps.size();
      if (last && !steps[i].number) return Target{here, *id};
      if (field.holds == Field::Holds::list) {
        const auto item = in_list(site.lists[site.slot(here, *id).value.id], field, i);
        if (!item) return std::nullopt;
        here = *item;
      } else if (field.holds == Field::Holds::record) {
        here = site.slot(here, *id).value.id;
      } else if (field.holds == Field::Holds::answers) {
        return Target{here, *id};
      } else {
        found.push_back(text::say("address-past-value", steps[i + 1].range, {steps[i].name}));
        return std::nullopt;
      }
    }
    return Target{here, vocabulary::no_id};
  }
};

}  // namespace

std::string address(const Site& site, const Vocabulary& vocabulary, ElementId element) {
  const Element& it = site.elements[element];
  const std::string& kind = vocabulary.shapes[it.shape].name;
  if (element == 0) return kind;
  const std::string where = path(site, vocabulary, element);
  const bool told = it.list == nowhere || !it.name.empty() || holder(site, vocabulary, it).type.shapes.count() == 1;
  return told ? where : where + " " + kind;
}

std::string address(const Site& site, const Vocabulary& vocabulary, ElementId element, FieldId field) {
  const std::string where = path(site, vocabulary, element);
  const std::string& name = vocabulary.shapes[site.elements[element].shape].fields[field].name;
  return where.empty() ? name : where + "." + name;
}

std::optional<Target> find(const Site& site, const Vocabulary& vocabulary, std::string_view address,
                           const text::Range& range, text::Diagnostics& found) {
  if (site.elements.empty()) return std::nullopt;
  const auto steps = read_steps(address, range, vocabulary, found);
  if (!steps) return std::nullopt;
  return Finder{site, vocabulary, *steps, found}.find();
}

}  // namespace headgate::site
