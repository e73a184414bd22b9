#include "evaluate/reference/reference.hpp"

#include <algorithm>

#include "evaluate/occasion.hpp"

namespace headgate::reference {

using evaluate::Decision;
using evaluate::Occasion;
using evaluate::Outcome;
using rulebook::Clause;
using rulebook::Rule;

namespace {

// How a test came to what it is: plainly, or only because an approval is on file.
enum class Through : std::uint8_t { neither, plainly, approval };

Through through(const Worked& at, Truth truth);

// Both of two parts, and one of two that would do.
Through both_of(Through a, Through b) {
  if (a == Through::neither || b == Through::neither) return Through::neither;
  return a == Through::approval || b == Through::approval ? Through::approval : Through::plainly;
}
Through one_of(Through a, Through b) {
  if (a == Through::plainly || b == Through::plainly) return Through::plainly;
  return a == Through::approval || b == Through::approval ? Through::approval : Through::neither;
}

// `some` is a row of `or` over `where and has`, `every` a row of `and` over `not where or has`, `no` the opposite of
// `some`; whatever they come to no through is the mirror of it.
Through through_list(const Worked& at, Truth truth) {
  const Node& node = (*at.tree)[at.node];
  const bool yes = truth == Truth::yes;
  const bool one_does = node.op == Op::some ? yes : !yes;
  const Truth where_wanted = one_does ? Truth::yes : Truth::no;
  const Truth has_wanted = node.op == Op::every ? quantity::opposite(where_wanted) : where_wanted;
  Through all = one_does ? Through::neither : Through::plainly;
  for (std::size_t i = 0; i < at.kids.size();) {
    Through element = one_does ? Through::plainly : Through::neither;
    const auto take = [&](const Worked& kid, Truth wanted) {
      element = one_does ? both_of(element, through(kid, wanted)) : one_of(element, through(kid, wanted));
    };
    if (node.kids[0] != expression::no_node) take(at.kids[i++], where_wanted);
    if (node.kids.size() > 1 && node.kids[1] != expression::no_node) take(at.kids[i++], has_wanted);
    all = one_does ? one_of(all, element) : both_of(all, element);
  }
  return all;
}

Through through(const Worked& at, Truth truth) {
  if (at.value.truth != truth) return Through::neither;
  const Node& node = (*at.tree)[at.node];
  if (node.op == Op::paper && node.index == 0 && truth == Truth::yes) return Through::approval;
  if (node.op == Op::opposite) return through(at.kids[0], quantity::opposite(truth));
  if (node.op == Op::some || node.op == Op::no || node.op == Op::every) {
    return through_list(at, truth) == Through::approval ? Through::approval : Through::plainly;
  }
  if (node.op != Op::both && node.op != Op::either) return Through::plainly;
  const bool every_part = (node.op == Op::both) == (truth == Truth::yes);
  Through all = every_part ? Through::plainly : Through::neither;
  for (const auto& kid : at.kids)
    all = every_part ? both_of(all, through(kid, truth)) : one_of(all, through(kid, truth));
  return all;
}

WorkedClause work(Interpreter& interpreter, const Clause& clause, const Frame& elements) {
  WorkedClause out;
  out.clause = &clause;
  if (clause.mode == Clause::Mode::single) {
    out.expression = interpreter.work(*clause.tree, elements);
    out.truth = out.expression->value.truth;
    out.by_approval = through(*out.expression, Truth::yes) == Through::approval;
    return out;
  }
  const bool any = clause.mode == Clause::Mode::any;
  out.truth = any ? Truth::no : Truth::yes;
  bool plainly = false;
  for (const auto& kid : clause.kids) {
    const WorkedClause& done = out.kids.emplace_back(work(interpreter, kid, elements));
    out.truth = any ? quantity::either(out.truth, done.truth) : quantity::both(out.truth, done.truth);
    plainly = plainly || (done.truth == Truth::yes && !done.by_approval);
    out.by_approval = out.by_approval || done.by_approval;
  }
  out.by_approval = out.by_approval && out.truth == Truth::yes && !(any && plainly);
  return out;
}

// All there is about one rule.
class RuleWork {
 public:
  RuleWork(const rulebook::Rulebook& book, const site::Site& site, const Occasion& occasion, std::uint32_t index)
      : rule_(book.rules[index]), index_(index), occasion_(occasion), interpreter_(book, site, occasion.checked_on) {}

  std::vector<Finding> findings() {
    if (rule_.standing != rulebook::Standing::in_force) {
      about_rule(Outcome::not_in_force).decision.applies = Truth::undecided;
      return std::move(findings_);
    }
    interpreter_.in_hand(&rule_, {});
    combine(0, Truth::yes);
    for (const auto list : open_) {
      Decision& decision = about_rule(Outcome::undecided).decision;
      decision.unfinished = list;
      if (occasion_.stage && rule_.stage > *occasion_.stage) decision.outcome = Outcome::later;
    }
    if (findings_.empty()) about_rule(Outcome::not_applicable).decision.nothing_matched = true;
    return std::move(findings_);
  }

 private:
  Finding& about_rule(Outcome outcome) {
    Finding& finding = findings_.emplace_back();
    finding.decision.rule = index_;
    finding.decision.outcome = outcome;
    finding.decision.would_be = outcome;
    finding.decision.require = Truth::undecided;
    finding.decision.applies = outcome == Outcome::not_applicable ? Truth::no : Truth::undecided;
    finding.decision.when = finding.decision.applies;
    return finding;
  }

  // Binder after binder; later lists may use earlier elements. What a `where` says no to is gone no further into.
  void combine(std::size_t index, Truth where) {
    if (index == rule_.each.binders.size()) return one(where);
    const auto& binder = rule_.each.binders[index];
    const Worked list = interpreter_.work(binder.list, elements_);
    const Seen seen = interpreter_.see(list.value, binder.binder.shapes);
    const bool known = std::find(open_.begin(), open_.end(), seen.list) != open_.end();
    if (!seen.complete && !known) open_.push_back(seen.list);
    for (const auto element : seen.elements) {
      elements_.push_back(element);
      interpreter_.in_hand(&rule_, elements_);
      Truth here = where;
      if (binder.where)
        here = quantity::both(here, where_.emplace_back(interpreter_.work(*binder.where, elements_)).value.truth);
      if (here != Truth::no) combine(index + 1, here);
      if (binder.where) where_.pop_back();
      elements_.pop_back();
    }
  }

  void one(Truth where) {
    Finding& finding = findings_.emplace_back();
    finding.elements = elements_;
    finding.where = where_;
    interpreter_.in_hand(&rule_, elements_);
    Decision& decision = finding.decision;
    decision.rule = index_;
    decision.when = where;
    if (rule_.when) {
      finding.when = work(interpreter_, *rule_.when, elements_);
      decision.when = quantity::both(where, finding.when->truth);
    }
    for (const auto& exception : rule_.unless) {
      finding.unless.push_back(work(interpreter_, exception, elements_));
      decision.exception = quantity::either(decision.exception, finding.unless.back().truth);
    }
    if (rule_.due) duty(finding);
    if (rule_.require) {
      finding.require = work(interpreter_, *rule_.require, elements_);
      decision.require = quantity::both(decision.require, finding.require->truth);
      decision.by_approval = finding.require->by_approval;
    }
    for (const auto& hole : rule_.if_not.holes) finding.holes.push_back(interpreter_.work(hole.second, elements_));
    evaluate::settle(decision, rule_, occasion_);
  }

  void duty(Finding& finding) {
    finding.due = interpreter_.work(*rule_.due, elements_);
    if (rule_.done) finding.done = interpreter_.work(*rule_.done, elements_);
    const auto duty =
        evaluate::judge_duty(finding.due->value, finding.done ? &finding.done->value : nullptr, occasion_);
    finding.decision.due = finding.due->value;
    finding.decision.require = duty.met;
    finding.decision.duty_open = duty.open;
    finding.decision.done_late = duty.done_late;
  }

  const Rule& rule_;
  std::uint32_t index_ = 0;
  const Occasion& occasion_;
  Interpreter interpreter_;
  Frame elements_;
  std::vector<Worked> where_;
  std::vector<site::ListId> open_;  // lists that may hold more, each once
  std::vector<Finding> findings_;
};

}  // namespace

std::vector<Finding> judge(const rulebook::Rulebook& book, const site::Site& site, const evaluate::Options& options) {
  const Occasion occasion = evaluate::occasion(book, site, options);
  std::vector<Finding> all;
  for (std::uint32_t index = 0; index < book.rules.size(); ++index) {
    if (!options.only_rule.empty() && options.only_rule != book.rules[index].id) continue;
    for (auto& finding : RuleWork(book, site, occasion, index).findings()) all.push_back(std::move(finding));
  }
  return all;
}

Worked evaluate(const Tree& tree, const rulebook::Rulebook& book, const site::Site& site) {
  return Interpreter(book, site, evaluate::occasion(book, site, {}).checked_on).work(tree, {});
}

}  // namespace headgate::reference
