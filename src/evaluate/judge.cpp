#include "evaluate/judge.hpp"

#include <limits>

#include "evaluate/approval.hpp"
#include "evaluate/occasion.hpp"

namespace headgate::evaluate {

using rulebook::Rule;

namespace {

// Every row of section 5.
struct Rows {
  Outcome outcome[outcome_rows];

  Rows() {
    for (const auto level : {rulebook::Level::must, rulebook::Level::should, rulebook::Level::note}) {
      for (std::size_t cell = 0; cell < 18; ++cell) {
        const bool has_require = cell >= 9;
        outcome[first_row(level, has_require) + cell % 9] =
            judge_row(level, static_cast<Truth>(cell % 9 / 3), static_cast<Truth>(cell % 3), has_require, false);
      }
    }
  }
};

// Decisions are written over those of the last time: a Decision is large, and most of it is for duties.
class Writing {
 public:
  explicit Writing(std::vector<Decision>& decisions)
      : decisions_(decisions), at_(decisions.data()), end_(decisions.data() + decisions.size()) {}
  Decision& next() { return at_ != end_ ? *at_++ : decisions_.emplace_back(); }  // prepare() has reserved for the most
  void end() {
    if (at_ != end_) decisions_.resize(static_cast<std::size_t>(at_ - decisions_.data()));
  }

 private:
  std::vector<Decision>& decisions_;
  Decision* at_;
  Decision* end_;
};

struct Now {
  const Cell* cells = nullptr;
  const Outcome* rows = nullptr;
  bool stage_unknown = false;
  std::size_t stage = 0;  // the last there is, when it is unknown
};

void judge_plain(const Brief& brief, const Now& now, Decision& out) {
  const Truth when = quantity::both(now.cells[brief.reached].truth, now.cells[brief.when].truth);
  const Truth exception = now.cells[brief.exception].truth;
  const Truth require = now.cells[brief.require].truth;
  const Truth applies = quantity::both(when, quantity::opposite(exception));
  const Outcome row = now.rows[brief.row + 3 * static_cast<std::size_t>(applies) + static_cast<std::size_t>(require)];
  const bool binds = applies != Truth::no;
  out.outcome = binds && brief.stage > now.stage ? Outcome::later : row;
  out.would_be = row;
  out.applies = applies;
  out.when = when;
  out.exception = exception;
  out.require = require;
  out.by_approval = false;
  out.stage_unknown = binds && now.stage_unknown;
  out.nothing_matched = false;
  out.duty_open = false;
  out.done_late = false;
  out.unfinished = site::nowhere;
  if (out.due.presence != vocabulary::Presence::unknown) out.due = {};
}

// With a duty or an approval.
void judge_fully(const Judgement& judgement, const Brief& brief, const Instance& at, const Occasion& when,
                 Decision& out) {
  const auto& cells = judgement.cells;
  const auto& nodes = judgement.plan.nodes;
  const Rule& rule = judgement.book->rules[at.rule];
  out = Decision{};
  out.when = quantity::both(cells[brief.reached].truth, cells[brief.when].truth);
  out.exception = cells[brief.exception].truth;
  if (at.due != not_planned) {
    out.due = value_of(cells[nodes[at.due].cell]);
    vocabulary::Value done;
    if (at.done != not_planned) done = value_of(cells[nodes[at.done].cell]);
    const Duty duty = judge_duty(out.due, at.done != not_planned ? &done : nullptr, when);
    out.require = duty.met;
    out.duty_open = duty.open;
    out.done_late = duty.done_late;
  }
  out.require = quantity::both(out.require, cells[brief.require].truth);
  out.by_approval = at.approvals && at.require && by_approval(judgement.plan, cells, *at.require);
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
void judge_lists(const Judgement& judgement, std::uint32_t index, const Occasion& when, bool any, Writing& writing) {
  const Rule& rule = judgement.book->rules[index];
  const auto& open = judgement.plan.rules[index].open;
  for (std::size_t i = 0; i < open.size(); ++i) {
    if (!says_open(judgement, open, i)) continue;
    Decision& decision = writing.next();
    decision = about_list(index, Outcome::undecided, false, open[i].list);
    if (when.stage && rule.stage > *when.stage) decision.outcome = Outcome::later;
    any = true;
  }
  if (!any) writing.next() = about_list(index, Outcome::not_applicable, true, site::nowhere);
}

ClauseTrace trace_of(const Judgement& judgement, const PlannedClause& clause) {
  ClauseTrace out;
  out.clause = clause.clause;
  out.truth = judgement.cells[clause.truth].truth;
  out.by_approval = by_approval(judgement.plan, judgement.cells, clause);
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
  judgement.plan = make_plan(book, site, options.only_rule, options.checked_on);
  judgement.cells = judgement.plan.cells;
  // One an instance and an open list, and at most one more a rule.
  const Plan& plan = judgement.plan;
  judgement.decisions.reserve(plan.instances.size() + plan.open_lists + plan.rules.size());
  return judgement;
}

void decide(Judgement& judgement) {
  static const Rows rows;
  run(judgement.plan, judgement.cells);
  const Occasion when = occasion(*judgement.book, *judgement.site, judgement.options);
  const Now now{judgement.cells.data(), rows.outcome, !when.stage,
                when.stage.value_or(std::numeric_limits<std::size_t>::max())};
  Writing writing(judgement.decisions);
  for (std::uint32_t index = 0; index < judgement.plan.rules.size(); ++index) {
    const RulePlan& at = judgement.plan.rules[index];
    if (!at.asked) continue;
    if (!at.in_force) {
      writing.next() = about_list(index, Outcome::not_in_force, false, site::nowhere);
      continue;
    }
    bool any = false;
    const Brief* const briefs = judgement.plan.briefs.data();
    for (std::uint32_t i = at.first_instance; i < at.first_instance + at.instance_count; ++i) {
      const Brief& brief = briefs[i];
      if (now.cells[brief.reached].truth == Truth::no) continue;
      any = true;
      Decision& decision = writing.next();
      if (brief.plain) {
        judge_plain(brief, now, decision);
      } else {
        judge_fully(judgement, brief, judgement.plan.instances[i], when, decision);
      }
      decision.rule = index;
      decision.instance = i;
    }
    if (!any || !at.open.empty()) judge_lists(judgement, index, when, any, writing);
  }
  writing.end();
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
