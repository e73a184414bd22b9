// A second opinion: a site judged by walking the trees of its rules, as the language page says it.
//
//   for (const Finding& finding : reference::judge(book, site, {})) finding.decision.outcome;
//   an `each` over a list nobody wrote   -> one finding, undecided, with the list in decision.unfinished
#pragma once

#include <optional>
#include <utility>
#include <vector>

#include "evaluate/judge.hpp"
#include "evaluate/reference/interpret.hpp"

namespace headgate::reference {

struct WorkedClause {
  const rulebook::Clause* clause = nullptr;
  Truth truth = Truth::undecided;
  bool by_approval = false;
  std::optional<Worked> expression;
  std::vector<WorkedClause> kids;
};

// One rule about one combination of elements, or about a list.
struct Finding {
  std::vector<site::ElementId> elements;
  evaluate::Decision decision;
  std::vector<Worked> where;
  std::optional<WorkedClause> when, require;
  std::vector<WorkedClause> unless;
  std::optional<Worked> due, done;
  std::vector<Worked> holes;
};

// By rule, then by elements in the order of the walk, then by open list.
std::vector<Finding> judge(const rulebook::Rulebook& book, const site::Site& site, const evaluate::Options& options);

Worked evaluate(const Tree& tree, const rulebook::Rulebook& book, const site::Site& site);

}  // namespace headgate::reference
