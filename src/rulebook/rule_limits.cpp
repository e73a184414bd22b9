#include <algorithm>

#include "rulebook/rules.hpp"

namespace headgate::rulebook {

using expression::Tree;
using Mode = Clause::Mode;

namespace {

// Calls `take` with every tree of the clause.
template <typename Take>
void each_tree(const Clause& clause, const Take& take) {
  if (clause.tree) take(*clause.tree);
  for (const Clause& kid : clause.kids) each_tree(kid, take);
}

template <typename Take>
void each_tree(const Rule& rule, const Take& take) {
  for (const auto& binder : rule.each.binders) {
    take(binder.list);
    if (binder.where) take(*binder.where);
  }
  if (rule.when) each_tree(*rule.when, take);
  for (const Clause& clause : rule.unless) each_tree(clause, take);
  if (rule.require) each_tree(*rule.require, take);
  if (rule.due) take(*rule.due);
  if (rule.done) take(*rule.done);
  for (const auto& hole : rule.if_not.holes) take(hole.second);
}

// A limit without value that the clause cannot do without.
class Valueless {
 public:
  Valueless(const std::vector<bool>& limits, const std::vector<vocabulary::ShapeSet>& handed,
            const vocabulary::Vocabulary& vocabulary)
      : limits_(limits), handed_(handed), vocabulary_(vocabulary) {}

  std::optional<std::uint32_t> in(const Tree& tree) const {
    for (const Use& use : uses_of(tree, handed_, vocabulary_)) {
      if (use.limit && use.index < limits_.size() && limits_[use.index]) return use.index;
    }
    return std::nullopt;
  }

  std::optional<std::uint32_t> prune(Clause& clause) const {
    if (clause.mode == Mode::single) return clause.tree ? in(*clause.tree) : std::nullopt;
    if (clause.mode == Mode::any) return prune_any(clause.kids);
    for (Clause& kid : clause.kids) {
      if (const auto limit = prune(kid)) return limit;
    }
    return std::nullopt;
  }

  std::optional<std::uint32_t> prune_any(std::vector<Clause>& kids) const {
    std::optional<std::uint32_t> first;
    std::vector<Clause> left;
    for (Clause& kid : kids) {
      const auto limit = prune(kid);
      if (!limit)
        left.push_back(kid);
      else if (!first)
        first = limit;
    }
    if (left.empty()) return first;
    kids = std::move(left);
    return std::nullopt;
  }

 private:
  const std::vector<bool>& limits_;
  const std::vector<vocabulary::ShapeSet>& handed_;
  const vocabulary::Vocabulary& vocabulary_;
};

}  // namespace

std::vector<vocabulary::ShapeSet> variables_of(const Rule& rule) {
  std::vector<vocabulary::ShapeSet> shapes;
  for (const auto& each : rule.each.binders) shapes.push_back(each.binder.shapes);
  return shapes;
}

std::vector<Use> uses_of(const Rule& rule, const vocabulary::Vocabulary& vocabulary) {
  std::vector<Use> uses;
  const auto handed = variables_of(rule);
  each_tree(rule, [&](const Tree& tree) {
    const auto some = uses_of(tree, handed, vocabulary);
    uses.insert(uses.end(), some.begin(), some.end());
  });
  return uses;
}

void leave_out_exceptions(Rule& rule, const WrittenRule& written, const Adoption& adoption) {
  const auto key = written.keys.find("unless");
  const bool of_place = key != written.keys.end() && key->second.change != of_project;
  std::vector<Clause> left;
  for (Clause& clause : rule.unless) {
    auto binding = adoption.binding(clause.sources);
    if (binding.empty() && !clause.sources.empty() && !of_place) continue;
    if (!binding.empty()) clause.sources = std::move(binding);
    left.push_back(std::move(clause));
  }
  rule.unless = std::move(left);
}

std::optional<std::uint32_t> drop_valueless(Rule& rule, const std::vector<bool>& valueless,
                                            const vocabulary::Vocabulary& vocabulary) {
  const auto handed = variables_of(rule);
  const Valueless limits(valueless, handed, vocabulary);
  std::optional<std::uint32_t> missing;
  const auto note = [&](std::optional<std::uint32_t> limit) {
    if (!missing) missing = limit;
  };
  for (const auto& binder : rule.each.binders) {
    note(limits.in(binder.list));
    if (binder.where) note(limits.in(*binder.where));
  }
  if (rule.when) note(limits.prune(*rule.when));
  const bool unlabelled = rule.unless.size() == 1 && rule.unless[0].label.empty();
  if (unlabelled)
    note(limits.prune(rule.unless[0]));
  else if (!rule.unless.empty() && limits.prune_any(rule.unless))
    rule.unless.clear();
  if (rule.require) note(limits.prune(*rule.require));
  if (rule.due) note(limits.in(*rule.due));
  if (rule.done) note(limits.in(*rule.done));
  return missing;
}

}  // namespace headgate::rulebook
