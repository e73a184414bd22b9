#include "evaluate/judge.hpp"

#include <algorithm>

#include "evaluate/interpret.hpp"

namespace headgate::evaluate {

using rulebook::Clause;
using rulebook::Rule;
using vocabulary::Presence;

namespace {

using Bindings = std::vector<site::ElementId>;

// The site's own answers to what the options may override.
struct Occasion {
  std::optional<std::size_t> stage;
  std::optional<quantity::Interval> checked_on;
};

std::optional<site::FieldId> root_field(const vocabulary::Vocabulary& vocabulary, std::string_view name) {
  return vocabulary.shapes[0].field(name);
}

// The stage is stated as text, or as a member of a choice whose members are named like the stages.
std::optional<std::size_t> stage_of(const vocabulary::Vocabulary& vocabulary, const vocabulary::Type& type, const vocabulary::Value& value) {
  if (value.presence != Presence::present) return std::nullopt;
  if (type.kind != vocabulary::Type::Kind::choice) return vocabulary.stage(value.text);
  const auto& members = vocabulary.choices[type.choice].members;
  for (std::size_t m = 0; m < members.size(); ++m) {
    if (value.members == std::uint64_t{1} << m) return vocabulary.stage(members[m].name);
  }
  return std::nullopt;
}

Occasion occasion(const rulebook::Rulebook& book, const site::Site& site, const Options& options) {
  Occasion result;
  const auto& vocabulary = *book.vocabulary;
  if (options.stage) result.stage = options.stage;
  else if (const auto field = root_field(vocabulary, "stage")) {
    result.stage = stage_of(vocabulary, vocabulary.shapes[0].fields[*field].type, site.slot(0, *field).value);
  }
  if (options.checked_on) result.checked_on = quantity::exactly(*options.checked_on);
  else if (const auto field = root_field(vocabulary, "checked-on")) {
    const auto& value = site.slot(0, *field).value;
    if (value.presence == Presence::present) result.checked_on = value.number;
  }
  return result;
}

ClauseTrace run(Interpreter& interpreter, const Clause& clause, const Bindings& bindings) {
  ClauseTrace out;
  out.clause = &clause;
  if (clause.mode == Clause::Mode::single) {
    out.expression = interpreter.evaluate(*clause.tree, bindings);
    out.truth = out.expression->truth();
    out.by_approval = out.truth == Truth::yes && clause.tree->nodes[clause.tree->root].op == expression::Op::paper &&
                      clause.tree->nodes[clause.tree->root].index == 0;
    return out;
  }
  const bool any = clause.mode == Clause::Mode::any;
  out.truth = any ? Truth::no : Truth::yes;
  bool plainly = false;
  for (const auto& kid : clause.kids) {
    out.kids.push_back(run(interpreter, kid, bindings));
    const ClauseTrace& last = out.kids.back();
    out.truth = any ? quantity::either(out.truth, last.truth) : quantity::both(out.truth, last.truth);
    plainly = plainly || (last.truth == Truth::yes && !last.by_approval);
    out.by_approval = out.by_approval || last.by_approval;
  }
  if (any) out.by_approval = out.by_approval && !plainly;
  out.by_approval = out.by_approval && out.truth == Truth::yes;
  return out;
}

// Everything of one rule about one combination of elements, with the decision it comes to.
struct Judged {
  Decision decision;
  Trace trace;
};

void settle_duty(const Rule& rule, const Occasion& when, Interpreter& interpreter, const Bindings& bindings, Judged& out) {
  out.trace.due = interpreter.evaluate(*rule.due, bindings);
  const auto& due = out.trace.due->value;
  out.decision.due = due;
  out.decision.require = Truth::undecided;
  bool open = false;
  if (rule.done) {
    out.trace.done = interpreter.evaluate(*rule.done, bindings);
    const auto& done = out.trace.done->value;
    if (done.presence == Presence::present) {
      if (due.presence == Presence::present) out.decision.require = quantity::less_or_equal(done.number, due.number, 1.0);
      out.decision.done_late = out.decision.require == Truth::no;
      return;
    }
    if (done.presence == Presence::none && when.checked_on && due.presence == Presence::present) {
      const Truth past = quantity::less(due.number, *when.checked_on, 1.0);
      out.decision.require = past == Truth::yes ? Truth::no : Truth::undecided;
      open = past == Truth::no;
    }
    if (done.presence == Presence::unknown && when.checked_on && due.presence == Presence::present) {
      open = quantity::less(due.number, *when.checked_on, 1.0) == Truth::no;
    }
  } else if (when.checked_on && due.presence == Presence::present) {
    open = quantity::less(due.number, *when.checked_on, 1.0) == Truth::no;
  }
  out.decision.duty_open = open;
}

Judged judge_one(const Rule& rule, const Bindings& bindings, Truth where, const Occasion& when, Interpreter& interpreter) {
  Judged out;
  Decision& decision = out.decision;
  decision.elements = bindings;
  interpreter.in_hand(&rule, bindings);
  if (rule.when) {
    out.trace.when = run(interpreter, *rule.when, bindings);
    decision.when = out.trace.when->truth;
  }
  decision.when = quantity::both(where, decision.when);
  for (const auto& exception : rule.unless) {
    out.trace.unless.push_back(run(interpreter, exception, bindings));
    decision.exception = quantity::either(decision.exception, out.trace.unless.back().truth);
  }
  decision.applies = quantity::both(decision.when, quantity::opposite(decision.exception));
  if (rule.due) settle_duty(rule, when, interpreter, bindings, out);
  if (rule.require) {
    out.trace.require = run(interpreter, *rule.require, bindings);
    decision.require = rule.due ? quantity::both(decision.require, out.trace.require->truth) : out.trace.require->truth;
    decision.by_approval = out.trace.require->by_approval;
  }
  for (const auto& hole : rule.if_not.holes) out.trace.holes.emplace_back(hole.first, interpreter.evaluate(hole.second, bindings));
  const bool has_require = rule.require.has_value() || rule.due.has_value();
  decision.outcome = judge_row(rule.level, decision.applies, decision.require, has_require, decision.by_approval);
  decision.would_be = decision.outcome;
  if (decision.applies == Truth::no) return out;
  if (decision.duty_open && decision.require == Truth::undecided) decision.outcome = Outcome::later;
  decision.stage_unknown = !when.stage.has_value();
  if (when.stage && rule.stage > *when.stage) decision.outcome = Outcome::later;
  return out;
}

// Walks an `each`, one binder after another; calls `take` for every combination whose `where` is not no.
class EachWalk {
 public:
  EachWalk(const Rule& rule, const site::Site& site, Interpreter& interpreter)
      : rule_(rule), site_(site), interpreter_(interpreter) {}

  template <typename Take>
  void run(Take take) {
    Bindings bindings;
    std::vector<Evaluated> wheres;
    step(0, bindings, Truth::yes, wheres, take);
  }
  const std::vector<site::ListId>& unfinished() const { return unfinished_; }
  bool left_out() const { return left_out_; }

 private:
  template <typename Take>
  void step(std::size_t index, Bindings& bindings, Truth where, std::vector<Evaluated>& wheres, Take& take) {
    if (index == rule_.each.binders.size()) {
      take(bindings, where, wheres);
      return;
    }
    const auto& binder = rule_.each.binders[index];
    const Evaluated list = interpreter_.evaluate(binder.list, bindings);
    if (list.value.id == site::nowhere || list.value.presence != Presence::present) {
      left_out_ = left_out_ || list.value.presence != Presence::none;
      return;
    }
    const auto& items = site_.lists[list.value.id];
    if (!items.complete && (binder.binder.shapes & ~items.closed).any()) {
      if (items.items.empty() && !items.stated) left_out_ = true;
      if (std::find(unfinished_.begin(), unfinished_.end(), list.value.id) == unfinished_.end()) unfinished_.push_back(list.value.id);
    }
    for (const auto element : items.items) {
      if (!binder.binder.shapes.test(site_.elements[element].shape)) continue;
      bindings.push_back(element);
      Truth here = where;
      if (binder.where) {
        wheres.push_back(interpreter_.evaluate(*binder.where, bindings));
        here = quantity::both(where, wheres.back().truth());
      }
      if (here != Truth::no) step(index + 1, bindings, here, wheres, take);
      if (binder.where) wheres.pop_back();
      bindings.pop_back();
    }
  }

  const Rule& rule_;
  const site::Site& site_;
  Interpreter& interpreter_;
  std::vector<site::ListId> unfinished_;
  bool left_out_ = false;
};

Judged about_list(Outcome outcome, bool nothing_matched, site::ListId unfinished) {
  Judged out;
  out.decision.outcome = outcome;
  out.decision.would_be = outcome;
  out.decision.applies = nothing_matched ? Truth::no : Truth::undecided;
  out.decision.when = out.decision.applies;
  out.decision.require = Truth::undecided;
  out.decision.nothing_matched = nothing_matched;
  out.decision.unfinished = unfinished;
  return out;
}

std::vector<Judged> judge_rule(const Rule& rule, const site::Site& site, const Occasion& when, Interpreter& interpreter) {
  std::vector<Judged> results;
  if (rule.standing != rulebook::Standing::in_force) {
    Judged out;
    out.decision.outcome = Outcome::not_in_force;
    out.decision.would_be = Outcome::not_in_force;
    results.push_back(std::move(out));
    return results;
  }
  if (rule.each.binders.empty()) {
    results.push_back(judge_one(rule, {}, Truth::yes, when, interpreter));
    return results;
  }
  EachWalk walk(rule, site, interpreter);
  interpreter.in_hand(&rule, {});
  walk.run([&](const Bindings& bindings, Truth where, const std::vector<Evaluated>& wheres) {
    results.push_back(judge_one(rule, bindings, where, when, interpreter));
    results.back().trace.where = wheres;
  });
  const bool binds_later = when.stage && rule.stage > *when.stage;
  if (!walk.unfinished().empty() || (walk.left_out() && results.empty())) {
    const auto list = walk.unfinished().empty() ? site::nowhere : walk.unfinished().front();
    results.push_back(about_list(binds_later ? Outcome::later : Outcome::undecided, false, list));
    results.back().decision.would_be = Outcome::undecided;
  } else if (results.empty()) {
    results.push_back(about_list(Outcome::not_applicable, true, site::nowhere));
  }
  return results;
}

}  // namespace

Judgement judge(const rulebook::Rulebook& book, const site::Site& site, const Options& options) {
  Judgement judgement;
  judgement.book = &book;
  judgement.site = &site;
  judgement.options = options;
  const Occasion when = occasion(book, site, options);
  Interpreter interpreter(book, site);
  for (std::uint32_t index = 0; index < book.rules.size(); ++index) {
    const Rule& rule = book.rules[index];
    if (!options.only_rule.empty() && options.only_rule != rule.id) continue;
    for (auto& judged : judge_rule(rule, site, when, interpreter)) {
      judged.decision.rule = index;
      judgement.decisions.push_back(std::move(judged.decision));
    }
  }
  return judgement;
}

Trace explain(const Judgement& judgement, const Decision& decision) {
  const Rule& rule = judgement.book->rules[decision.rule];
  if (decision.outcome == Outcome::not_in_force || decision.nothing_matched || decision.unfinished != site::nowhere) return {};
  const Occasion when = occasion(*judgement.book, *judgement.site, judgement.options);
  Interpreter interpreter(*judgement.book, *judgement.site);
  for (auto& judged : judge_rule(rule, *judgement.site, when, interpreter)) {
    if (judged.decision.elements == decision.elements && judged.decision.unfinished == decision.unfinished) return std::move(judged.trace);
  }
  return {};
}

Evaluated evaluate(const expression::Tree& tree, const rulebook::Rulebook& book, const site::Site& site, const Options&) {
  Interpreter interpreter(book, site);
  return interpreter.evaluate(tree, {});
}

}  // namespace headgate::evaluate
