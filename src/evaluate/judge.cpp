#include "evaluate/judge.hpp"

#include "evaluate/occasion.hpp"

namespace headgate::evaluate {

using rulebook::Clause;
using rulebook::Rule;

namespace {

// Whether a clause that holds does so only through a recorded approval.
bool by_approval(const PlannedClause& clause, const std::vector<Cell>& cells) {
  if (cells[clause.truth].truth != Truth::yes) return false;
  if (clause.clause->mode == Clause::Mode::single) return clause.approval;
  bool some = false;
  bool plainly = false;
  for (const auto& kid : clause.kids) {
    const bool approved = by_approval(kid, cells);
    some = some || approved;
    plainly = plainly || (cells[kid.truth].truth == Truth::yes && !approved);
  }
  return some && !(clause.clause->mode == Clause::Mode::any && plainly);
}

void judge_instance(const Judgement& judgement, const Instance& at, const Occasion& when, Decision& out) {
  const auto& cells = judgement.cells;
  const auto& nodes = judgement.plan.nodes;
  const Rule& rule = judgement.book->rules[at.rule];
  out.when = cells[at.reached].truth;
  if (at.when) out.when = quantity::both(out.when, cells[at.when->truth].truth);
  out.exception = Truth::no;
  for (const auto& exception : at.unless) out.exception = quantity::either(out.exception, cells[exception.truth].truth);
  out.require = Truth::yes;
  if (at.due != not_planned) {
    out.due = value_of(cells[nodes[at.due].cell]);
    vocabulary::Value done;
    if (at.done != not_planned) done = value_of(cells[nodes[at.done].cell]);
    const Duty duty = judge_duty(out.due, at.done != not_planned ? &done : nullptr, when);
    out.require = duty.met;
    out.duty_open = duty.open;
    out.done_late = duty.done_late;
  }
  if (at.require) {
    out.require = quantity::both(out.require, cells[at.require->truth].truth);
    out.by_approval = at.approvals && by_approval(*at.require, cells);
  }
  settle(out, rule, when);
}

Decision about_list(std::uint32_t rule, Outcome outcome, bool nothing_matched, site::ListId unfinished) {
  Decision out;
  out.rule = rule;
  out.outcome = outcome;
  out.would_be = outcome;
  out.applies = nothing_matched ? Truth::no : Truth::undecided;
  out.when = out.applies;
  out.require = Truth::undecided;
  out.nothing_matched = nothing_matched;
  out.unfinished = unfinished;
  return out;
}

// Whether the walk comes to an open list, and has not come to it before.
bool says_open(const Judgement& judgement, const std::vector<OpenList>& open, std::size_t at) {
  const auto reached = [&](const OpenList& list) { return judgement.cells[list.reached].truth != Truth::no; };
  if (!reached(open[at])) return false;
  for (std::size_t i = 0; i < at; ++i) {
    if (open[i].list == open[at].list && reached(open[i])) return false;
  }
  return true;
}

// What a rule comes to when its lists hold nothing it is about, or may hold more than was written.
void judge_lists(const Judgement& judgement, std::uint32_t index, const Occasion& when, bool any,
                 std::vector<Decision>& decisions) {
  const Rule& rule = judgement.book->rules[index];
  const auto& open = judgement.plan.rules[index].open;
  for (std::size_t i = 0; i < open.size(); ++i) {
    if (!says_open(judgement, open, i)) continue;
    const bool later = when.stage && rule.stage > *when.stage;
    decisions.push_back(about_list(index, later ? Outcome::later : Outcome::undecided, false, open[i].list));
    decisions.back().would_be = Outcome::undecided;
    any = true;
  }
  if (!any) decisions.push_back(about_list(index, Outcome::not_applicable, true, site::nowhere));
}

bool wanted(const Judgement& judgement, const Rule& rule) {
  return judgement.options.only_rule.empty() || judgement.options.only_rule == rule.id;
}

ClauseTrace trace_of(const Judgement& judgement, const PlannedClause& clause) {
  ClauseTrace out;
  out.clause = clause.clause;
  out.truth = judgement.cells[clause.truth].truth;
  out.by_approval = by_approval(clause, judgement.cells);
  if (clause.node != not_planned) out.expression = evaluated(judgement.plan, judgement.cells, clause.node);
  for (const auto& kid : clause.kids) out.kids.push_back(trace_of(judgement, kid));
  return out;
}

}  // namespace

Judgement prepare(const rulebook::Rulebook& book, const site::Site& site, const Options& options) {
  Judgement judgement;
  judgement.book = &book;
  judgement.site = &site;
  judgement.options = options;
  judgement.plan = make_plan(book, site, options.only_rule);
  judgement.cells = judgement.plan.cells;
  // One decision an instance and an open list, and at most one more a rule.
  std::size_t most = judgement.plan.instances.size() + book.rules.size();
  for (const auto& rule : judgement.plan.rules) most += rule.open.size();
  judgement.decisions.reserve(most);
  return judgement;
}

void decide(Judgement& judgement) {
  run(judgement.plan, judgement.cells);
  const Occasion when = occasion(*judgement.book, *judgement.site, judgement.options);
  auto& decisions = judgement.decisions;
  decisions.clear();
  for (std::uint32_t index = 0; index < judgement.book->rules.size(); ++index) {
    const Rule& rule = judgement.book->rules[index];
    if (!wanted(judgement, rule)) continue;
    if (rule.standing != rulebook::Standing::in_force) {
      decisions.push_back(about_list(index, Outcome::not_in_force, false, site::nowhere));
      continue;
    }
    const RulePlan& at = judgement.plan.rules[index];
    bool any = false;
    for (std::uint32_t i = at.first_instance; i < at.first_instance + at.instance_count; ++i) {
      const Instance& instance = judgement.plan.instances[i];
      if (judgement.cells[instance.reached].truth == Truth::no) continue;
      any = true;
      Decision& decision = decisions.emplace_back();
      decision.rule = index;
      decision.instance = i;
      judge_instance(judgement, instance, when, decision);
    }
    judge_lists(judgement, index, when, any, decisions);
  }
}

Judgement judge(const rulebook::Rulebook& book, const site::Site& site, const Options& options) {
  Judgement judgement = prepare(book, site, options);
  decide(judgement);
  return judgement;
}

const std::vector<site::ElementId>& elements(const Judgement& judgement, const Decision& decision) {
  static const std::vector<site::ElementId> none;
  return decision.instance == no_instance ? none : judgement.plan.instances[decision.instance].elements;
}

Trace explain(const Judgement& judgement, const Decision& decision) {
  Trace trace;
  if (decision.instance == no_instance) return trace;
  const Instance& at = judgement.plan.instances[decision.instance];
  const Rule& rule = judgement.book->rules[decision.rule];
  const auto value = [&](PlannedId node) { return evaluated(judgement.plan, judgement.cells, node); };
  for (const auto where : at.where) trace.where.push_back(value(where));
  if (at.when) trace.when = trace_of(judgement, *at.when);
  for (const auto& exception : at.unless) trace.unless.push_back(trace_of(judgement, exception));
  if (at.require) trace.require = trace_of(judgement, *at.require);
  if (at.due != not_planned) trace.due = value(at.due);
  if (at.done != not_planned) trace.done = value(at.done);
  for (std::size_t i = 0; i < at.holes.size(); ++i)
    trace.holes.emplace_back(rule.if_not.holes[i].first, value(at.holes[i]));
  return trace;
}

Evaluated evaluate(const expression::Tree& tree, const rulebook::Rulebook& book, const site::Site& site) {
  const Plan plan = make_plan(book, site, tree);
  std::vector<Cell> cells = plan.cells;
  run(plan, cells);
  return evaluated(plan, cells, static_cast<PlannedId>(plan.nodes.size() - 1));
}

}  // namespace headgate::evaluate
