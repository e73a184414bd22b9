#include "rulebook/given.hpp"

#include <algorithm>

#include "rulebook/keys.hpp"
#include "vocabulary/names.hpp"

namespace headgate::rulebook {

using document::Entry;
using document::Node;
using text::Diagnostics;
using text::say;
using vocabulary::Field;
using vocabulary::Vocabulary;

namespace {

std::vector<std::pair<std::size_t, std::string>> steps_of(const std::string& address) {
  std::vector<std::pair<std::size_t, std::string>> steps;
  std::size_t begin = 0;
  while (begin <= address.size()) {
    const std::size_t end = std::min(address.find('.', begin), address.size());
    steps.emplace_back(begin, address.substr(begin, end - begin));
    begin = end + 1;
  }
  return steps;
}

// The fact a given address means: records only, since a list's elements are the site's to name.
const Field* fact_at(const Entry& entry, const Vocabulary& vocabulary, Diagnostics& found) {
  vocabulary::ShapeId shape = vocabulary::root_shape;
  const auto steps = steps_of(entry.key);
  const Field* field = nullptr;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const auto& from = vocabulary.shapes[shape];
    if (i == 0 && steps[i].second == from.name && steps.size() > 1) continue;
    const text::Range range = text::part(entry.key_range, steps[i].first, steps[i].second.size());
    const auto id = from.field(steps[i].second);
    if (!id) {
      Names names;
      for (const Field& each : from.fields) names.push_back(each.name);
      found.push_back(
          say("given-unknown", range, {from.name, steps[i].second, vocabulary::offer(steps[i].second, names, 0)}));
      return nullptr;
    }
    field = &from.fields[*id];
    if (i + 1 == steps.size()) break;
    if (field->holds != Field::Holds::record) {
      found.push_back(say("given-no-record", range, {steps[i].second}));
      return nullptr;
    }
    for (std::size_t s = 0; s < vocabulary.shapes.size(); ++s) {
      if (field->type.shapes.test(s)) shape = static_cast<vocabulary::ShapeId>(s);
    }
  }
  if (field && (field->holds == Field::Holds::fact || field->holds == Field::Holds::derived)) return field;
  found.push_back(say("given-no-fact", entry.key_range, {entry.key}));
  return nullptr;
}

void check(const Entry& entry, const Vocabulary& vocabulary, Diagnostics& found) {
  const Field* field = fact_at(entry, vocabulary, found);
  if (!field) return;
  if (!entry.value.is_scalar()) {
    found.push_back(say("value-not-plain", entry.value.range));
    return;
  }
  std::vector<vocabulary::Reading> readings;
  vocabulary::read_value(entry.value, field->type, field, vocabulary, &readings, found);
}

}  // namespace

std::vector<Given> read_given(const Place& place, const std::vector<std::size_t>& in_force,
                              const Vocabulary& vocabulary, Diagnostics& found) {
  std::vector<Given> given;
  for (const Change& change : place.changes) {
    const Node* facts = change.node->find("given");
    if (!facts) continue;
    for (const Entry& entry : facts->entries) check(entry, vocabulary, found);
  }
  for (const std::size_t i : in_force) {
    const Node* facts = place.changes[i].node->find("given");
    if (!facts) continue;
    for (const Entry& entry : facts->entries) {
      const Given one{entry.key, entry.key_range, &entry.value, place.changes[i].layer};
      const auto same = [&](const Given& each) { return each.address == one.address; };
      const auto before = std::find_if(given.begin(), given.end(), same);
      if (before == given.end())
        given.push_back(one);
      else
        *before = one;
    }
  }
  return given;
}

}  // namespace headgate::rulebook
