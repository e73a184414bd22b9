#include "rulebook/limits.hpp"

#include <algorithm>

#include "rulebook/keys.hpp"
#include "vocabulary/names.hpp"

namespace headgate::rulebook {

using document::Entry;
using document::Node;
using text::Diagnostics;
using text::say;

namespace {

class CollectingLimits {
 public:
  explicit CollectingLimits(Diagnostics& found) : found_(found) {}

  void declare(const Entry& entry, std::size_t change) {
    if (!expect_name(entry, found_)) return;
    if (const WrittenLimit* before = find(entry.key)) {
      found_.push_back(
          say("limit-twice", entry.key_range, {entry.key}, before->declared->key_range, "declared here before"));
      return;
    }
    if (!expect_map(entry.value, "A limit", found_)) return;
    expect_keys(entry.value, {std::begin(limit_keys), std::end(limit_keys)}, "A limit", found_);
    WrittenLimit limit;
    limit.name = entry.key;
    limit.declared = &entry;
    limit.change = change;
    const Node* values = map_of(entry.value, "values", found_);
    if (!entry.value.find("values")) found_.push_back(say("limit-without-values", entry.key_range, {entry.key}));
    if (values) take(limit, *values, change);
    limits_.push_back(std::move(limit));
  }

  void set(const Entry& entry, std::size_t change) {
    WrittenLimit* limit = find(entry.key);
    if (!limit) {
      found_.push_back(say("no-such-limit", entry.key_range, {entry.key, vocabulary::offer(entry.key, names(), 0)}));
      return;
    }
    if (expect_map(entry.value, "\"" + entry.key + "\" in a change", found_)) take(*limit, entry.value, change);
  }

  std::vector<WrittenLimit> finish() { return std::move(limits_); }

 private:
  static void take(WrittenLimit& limit, const Node& values, std::size_t change) {
    for (const Entry& each : values.entries) limit.values.push_back({&each, change});
  }

  WrittenLimit* find(const std::string& name) {
    const auto named = [&](const WrittenLimit& each) { return each.name == name; };
    const auto at = std::find_if(limits_.begin(), limits_.end(), named);
    return at == limits_.end() ? nullptr : &*at;
  }

  Names names() const {
    Names names;
    for (const WrittenLimit& each : limits_) names.push_back(each.name);
    return names;
  }

  Diagnostics& found_;
  std::vector<WrittenLimit> limits_;
};

bool declares(const Entry& entry) { return entry.value.is_map() && entry.value.find("values"); }

}  // namespace

std::vector<WrittenLimit> collect_limits(const Library& library, const Place* place, Diagnostics& found) {
  CollectingLimits collecting(found);
  for (const Node* file : library.rules) {
    const Node* limits = file->is_map() ? map_of(*file, "limits", found) : nullptr;
    if (!limits) continue;
    for (const Entry& entry : limits->entries) collecting.declare(entry, of_project);
  }
  if (!place) return collecting.finish();
  // A change may set what a later one declares, so all declarations come first.
  for (const bool declaring : {true, false}) {
    for (std::size_t i = 0; i < place->changes.size(); ++i) {
      const Node* limits = place->changes[i].node->find("limits");
      if (!limits || !limits->is_map()) continue;
      for (const Entry& entry : limits->entries) {
        if (declares(entry) != declaring) continue;
        if (declaring)
          collecting.declare(entry, i);
        else
          collecting.set(entry, i);
      }
    }
  }
  return collecting.finish();
}

const Node* table_in(const Node& value) { return value.is_map() ? value.find("table") : nullptr; }

Bare bare(const Node& value, Diagnostics& found) {
  if (!value.is_map() || (!value.find("value") && !value.find("doubt"))) return {&value, ""};
  Bare result;
  expect_keys(value, {"value", "doubt"}, "A value with its doubt", found);
  result.doubt = text_of(value, "doubt", found);
  result.node = value.find("value");
  if (!result.node) found.push_back(say("limit-value-missing", value.range));
  return result;
}

}  // namespace headgate::rulebook
