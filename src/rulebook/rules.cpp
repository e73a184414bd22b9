#include "rulebook/rules.hpp"

#include <algorithm>

#include "rulebook/keys.hpp"
#include "vocabulary/names.hpp"

namespace headgate::rulebook {

using document::Entry;
using document::Node;
using text::Diagnostics;
using text::say;

namespace {

Names all_rule_keys() { return {std::begin(rule_keys), std::end(rule_keys)}; }

class CollectingRules {
 public:
  CollectingRules(const Documents& documents, Diagnostics& found) : documents_(documents), found_(found) {}

  void add(const Entry& entry, const std::string& topic, const Node* stage, std::size_t change) {
    if (!expect_name(entry, found_) || !expect_map(entry.value, "A rule", found_)) return;
    if (const WrittenRule* before = find(entry.key)) {
      found_.push_back(
          say("rule-twice", entry.key_range, {entry.key}, before->declared->key_range, "written here before"));
      return;
    }
    expect_keys(entry.value, all_rule_keys(), "A rule", found_);
    WrittenRule rule;
    rule.id = entry.key;
    rule.topic = topic;
    rule.declared = &entry;
    rule.stage = stage;
    rule.change = change;
    for (const Entry& key : entry.value.entries) rule.keys[key.key] = {&key, change};
    index_[rule.id] = rules_.size();
    rules_.push_back(std::move(rule));
  }

  // `change:` of one change; applied only when it is in force.
  void change(const Node& rules, std::size_t change, bool apply) {
    for (const Entry& entry : rules.entries) {
      WrittenRule* rule = known(entry);
      if (!rule || !expect_map(entry.value, "A change of a rule", found_)) continue;
      expect_keys(entry.value, all_rule_keys(), "A rule", found_);
      if (!apply) continue;
      rule->changed_by.push_back(change);
      rule->changed = &entry;
      for (const Entry& key : entry.value.entries) replace(*rule, key, change);
    }
  }

  void drop(const Node& rules, std::size_t change, bool apply) {
    if (!rules.is_map()) {
      found_.push_back(say("drop-without-source", rules.range));
      return;
    }
    for (const Entry& entry : rules.entries) {
      WrittenRule* rule = known(entry);
      documents_.cite(entry.value, found_);
      if (!rule || !apply) continue;
      rule->dropped = &entry;
      rule->dropped_by = change;
    }
  }

  std::vector<WrittenRule> finish() { return std::move(rules_); }

 private:
  static void replace(WrittenRule& rule, const Entry& key, std::size_t change) {
    const bool removes = key.value.is_scalar() && key.value.scalar == "none";
    if (removes)
      rule.keys.erase(key.key);
    else
      rule.keys[key.key] = {&key, change};
  }

  WrittenRule* find(const std::string& id) {
    const auto at = index_.find(id);
    return at == index_.end() ? nullptr : &rules_[at->second];
  }

  WrittenRule* known(const Entry& entry) {
    WrittenRule* rule = find(entry.key);
    if (rule) return rule;
    Names names;
    for (const WrittenRule& each : rules_) names.push_back(each.id);
    found_.push_back(say("no-such-rule", entry.key_range, {entry.key, vocabulary::offer(entry.key, names, 0)}));
    return nullptr;
  }

  const Documents& documents_;
  Diagnostics& found_;
  std::vector<WrittenRule> rules_;
  std::map<std::string, std::size_t> index_;
};

void collect_file(const Node& file, CollectingRules& collecting, Diagnostics& found) {
  if (!expect_map(file, "A rules file", found)) return;
  expect_keys(file, {"format", "topic", "stage", "title", "limits", "rules"}, "A rules file", found);
  const std::string topic = text_of(file, "topic", found);
  if (topic.empty()) found.push_back(say("rules-without-topic", file.range));
  const Node* rules = map_of(file, "rules", found);
  if (!rules) return;
  for (const Entry& entry : rules->entries) collecting.add(entry, topic, file.find("stage"), of_project);
}

void collect_changes(const Place& place, const std::vector<std::size_t>& in_force, CollectingRules& collecting,
                     Diagnostics& found) {
  for (std::size_t i = 0; i < place.changes.size(); ++i) {
    const Node* add = map_of(*place.changes[i].node, "add", found);
    if (!add) continue;
    for (const Entry& entry : add->entries) collecting.add(entry, place.id, nullptr, i);
  }
  const auto treat = [&](std::size_t i, bool apply) {
    const Node& node = *place.changes[i].node;
    if (const Node* change = map_of(node, "change", found)) collecting.change(*change, i, apply);
    if (const Node* drop = node.find("drop")) collecting.drop(*drop, i, apply);
  };
  for (std::size_t i = 0; i < place.changes.size(); ++i) {
    if (std::find(in_force.begin(), in_force.end(), i) == in_force.end()) treat(i, false);
  }
  for (const std::size_t i : in_force) treat(i, true);
}

}  // namespace

std::vector<WrittenRule> collect_rules(const Library& library, const Place& place,
                                       const std::vector<std::size_t>& in_force, const Documents& documents,
                                       Diagnostics& found) {
  CollectingRules collecting(documents, found);
  for (const Node* file : library.rules) collect_file(*file, collecting, found);
  collect_changes(place, in_force, collecting, found);
  return collecting.finish();
}

WrittenRule unchanged(const WrittenRule& rule) {
  WrittenRule result = rule;
  result.keys.clear();
  for (const Entry& key : rule.declared->value.entries) result.keys[key.key] = {&key, rule.change};
  result.changed_by.clear();
  result.dropped = nullptr;
  return result;
}

}  // namespace headgate::rulebook
