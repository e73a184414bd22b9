#include "explain/compare.hpp"

#include <algorithm>
#include <map>

#include "expression/print.hpp"

namespace headgate::explain {

using evaluate::Judgement;
using expression::Op;
using expression::Tree;
using rulebook::Clause;
using rulebook::Rule;

namespace {

std::string element_words(const Judgement& judgement, const evaluate::Decision& decision) {
  std::string words;
  for (const auto element : evaluate::elements(judgement, decision)) {
    words += (words.empty() ? "" : ", ") + site::address(*judgement.site, *judgement.book->vocabulary, element);
  }
  return words;
}

using Row = std::map<std::size_t, std::string>;  // outcome by authority

void add_outcomes(const Authority& authority, std::size_t index,
                  std::map<std::pair<std::string, std::string>, Row>& rows) {
  for (const auto& judgement : authority.judgements) {
    for (const auto& decision : judgement.decisions) {
      const auto& rule = judgement.book->rules[decision.rule];
      auto& outcome = rows[{rule.id, element_words(judgement, decision)}][index];
      const std::string here(evaluate::words(decision.outcome));
      outcome = outcome.empty() || outcome == here ? here : "undecided";
    }
  }
}

// A rule not in force, or with nothing to judge, has one outcome for every element.
std::string outcome_of(const std::map<std::pair<std::string, std::string>, Row>& rows,
                       const std::pair<std::string, std::string>& key, std::size_t authority) {
  for (const auto& element : {key.second, std::string()}) {
    const auto row = rows.find({key.first, element});
    if (row == rows.end()) continue;
    const auto outcome = row->second.find(authority);
    if (outcome != row->second.end()) return outcome->second;
  }
  return std::string(evaluate::words(evaluate::Outcome::not_applicable));
}

std::string each_words(const Rule& rule) {
  std::string words;
  for (const auto& binder : rule.each.binders)
    words += binder.binder.kind_name + " in " + expression::print(binder.list) + ";";
  return words;
}

// What a requirement says, and what would say the opposite, in canonical spelling.
std::pair<std::string, std::string> demand_and_ban(const Tree& tree) {
  const auto& root = tree.nodes[tree.root];
  const std::string own = expression::print(tree);
  if (root.op == Op::some) return {own, "no" + own.substr(4)};
  if (root.op == Op::no) return {own, "some" + own.substr(2)};
  if (root.op == Op::fitted || root.op == Op::is_none) {
    const std::string subject = expression::print(tree, root.kids[0]);
    return {own, subject + (root.op == Op::fitted ? " is none" : " is fitted")};
  }
  if (root.op == Op::opposite) return {own, expression::print(tree, root.kids[0])};
  return {own, "not " + own};
}

// The expressions that must all hold.
void demands(const Clause& clause, std::vector<const Tree*>& trees) {
  if (clause.mode == Clause::Mode::single) trees.push_back(&*clause.tree);
  if (clause.mode != Clause::Mode::all) return;
  for (const auto& kid : clause.kids) demands(kid, trees);
}

bool clash(const Rule& a, const Rule& b, std::string& about) {
  if (!a.require || !b.require || each_words(a) != each_words(b)) return false;
  std::vector<const Tree*> of_a;
  std::vector<const Tree*> of_b;
  demands(*a.require, of_a);
  demands(*b.require, of_b);
  for (const auto* x : of_a) {
    for (const auto* y : of_b) {
      if (demand_and_ban(*x).second != demand_and_ban(*y).first &&
          demand_and_ban(*y).second != demand_and_ban(*x).first)
        continue;
      about = demand_and_ban(*x).first;
      return true;
    }
  }
  return false;
}

bool binds(const Rule& rule) {
  return rule.standing == rulebook::Standing::in_force && rule.level == rulebook::Level::must;
}

}  // namespace

std::vector<Difference> differences(const std::vector<Authority>& authorities) {
  std::map<std::pair<std::string, std::string>, Row> rows;
  for (std::size_t i = 0; i < authorities.size(); ++i) add_outcomes(authorities[i], i, rows);
  std::vector<Difference> result;
  for (const auto& entry : rows) {
    const auto& key = entry.first;
    const auto next = rows.upper_bound(key);  // rows of elements come right after the row of the whole rule
    if (key.second.empty() && next != rows.end() && next->first.first == key.first) continue;
    Difference difference{key.first, key.second, {}};
    bool differs = false;
    bool matters = false;
    for (std::size_t i = 0; i < authorities.size(); ++i) {
      const std::string outcome = outcome_of(rows, key, i);
      differs = differs || (i > 0 && outcome != difference.outcomes.front().second);
      matters = matters || (outcome != "not applicable" && outcome != "not in force");
      difference.outcomes.emplace_back(authorities[i].book->place, outcome);
    }
    if (differs && matters) result.push_back(std::move(difference));
  }
  return result;
}

std::vector<std::string> contradictions(const std::vector<Authority>& authorities) {
  std::vector<std::string> result;
  for (std::size_t i = 0; i < authorities.size(); ++i) {
    for (std::size_t j = i + 1; j < authorities.size(); ++j) {
      for (const auto& a : authorities[i].book->rules) {
        for (const auto& b : authorities[j].book->rules) {
          std::string about;
          if (!binds(a) || !binds(b) || !clash(a, b, about)) continue;
          result.push_back(authorities[i].book->place + "/" + a.id + " and " + authorities[j].book->place + "/" + b.id +
                           " ask for opposite things: " + about);
        }
      }
    }
  }
  return result;
}

}  // namespace headgate::explain
