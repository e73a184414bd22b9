// Judges one site by one rulebook. Pure: the same two give the same decisions on every platform.
//
//   Judgement judgement = judge(book, site, {});
//   judgement.decisions[0].outcome;            // one decision a rule, or one an element of its `each`
//   Trace trace = explain(judgement, judgement.decisions[0]);   // every node behind it with its value
//   A site without pressure.highest-static: the decision is undecided, and the trace says Why::missing.
//
// To judge again and again, keep the plan: prepare() reserves every place, decide() allocates nothing.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "evaluate/outcome.hpp"
#include "evaluate/plan.hpp"
#include "evaluate/trace.hpp"

namespace headgate::evaluate {

struct Options {
  std::optional<std::size_t> stage;         // instead of the site's own
  std::optional<quantity::Day> checked_on;  // instead of the site's own; the core never reads a clock
  std::string only_rule;                    // judge this rule only; "" for all
};

struct Judgement {
  const rulebook::Rulebook* book = nullptr;
  const site::Site* site = nullptr;
  Options options;
  Plan plan;
  std::vector<Cell> cells;          // what every node came to
  std::vector<Decision> decisions;  // by rule in rulebook order, then by element in the order of the walk
};

// Rulebook and site must outlive the judgement.
Judgement prepare(const rulebook::Rulebook& book, const site::Site& site, const Options& options);
void decide(Judgement& judgement);
Judgement judge(const rulebook::Rulebook& book, const site::Site& site, const Options& options);

// What a decision is about: the elements of its `each`, in binder order; none for a rule about the whole site.
const std::vector<site::ElementId>& elements(const Judgement& judgement, const Decision& decision);

Trace explain(const Judgement& judgement, const Decision& decision);

// One expression by itself (`calc`): no variables. `site` may be an empty one.
Evaluated evaluate(const expression::Tree& tree, const rulebook::Rulebook& book, const site::Site& site);

}  // namespace headgate::evaluate
