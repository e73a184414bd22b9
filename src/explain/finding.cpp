// One decision as a finding.
#include <algorithm>

#include <fmt/format.h>

#include "explain/collect.hpp"

namespace headgate::explain {

using evaluate::ClauseTrace;
using evaluate::Decision;
using evaluate::Outcome;
using evaluate::Trace;
using quantity::Truth;
using rulebook::Clause;
using rulebook::Rule;

namespace {

std::string_view words(rulebook::Level level) {
  switch (level) {
    case rulebook::Level::must: return "must";
    case rulebook::Level::should: return "should";
    case rulebook::Level::note: return "note";
  }
  return "";
}

// Whether another part says the same and more: "its depth is 4 ft" beside "its depth is 4 ft, at most 5 ft".
bool said_by_another(const std::string& part, const std::vector<std::string>& parts) {
  return std::any_of(parts.begin(), parts.end(), [&](const std::string& other) {
    const bool more = other.rfind(part + " whose ", 0) == 0 || other.rfind(part + " that ", 0) == 0;
    return other.rfind(part + ",", 0) == 0 || (more && part.find(" no ") == std::string::npos);
  });
}

// Said once each, in the order met; long lists of alike elements are cut.
std::string said(const Context& context, const std::vector<const Evaluated*>& leaves, bool open) {
  constexpr std::size_t most = 4;
  std::vector<std::string> parts;
  for (const auto* leaf : leaves) {
    std::string part = open ? undecided(context, *leaf) : observed(context, *leaf);
    if (std::find(parts.begin(), parts.end(), part) == parts.end()) parts.push_back(std::move(part));
  }
  const std::vector<std::string> all = parts;
  parts.erase(
      std::remove_if(parts.begin(), parts.end(), [&](const std::string& part) { return said_by_another(part, all); }),
      parts.end());
  if (parts.size() > most) {
    const std::size_t more = parts.size() - most;
    parts.resize(most);
    parts.push_back(fmt::format("and {} more", more));
  }
  // A question with its answer stands by itself.
  std::string words;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const bool own =
        i > 0 && (parts[i].find("? ") != std::string::npos || parts[i - 1].find("? ") != std::string::npos);
    words += (i == 0 ? "" : own ? ". " : "; ") + (own ? capital(parts[i]) : parts[i]);
  }
  return words;
}

// The labels of clauses that failed: what the report blames. Empty for an unlabelled requirement. Of a clause that holds
// others, those too: "called off in time (not met: by the hour)".
std::string labels(const ClauseTrace& require, Truth truth) {
  std::vector<std::string> names;
  for (const auto& kid : require.kids) {
    if (kid.truth != truth) continue;
    const std::string inner = labels(kid, truth);
    const std::string& own = kid.clause->label;
    const bool any = kid.clause->mode == Clause::Mode::any;
    if (own.empty() && !inner.empty())
      names.push_back(inner);
    else if (!own.empty() && (inner.empty() || truth == Truth::yes))
      names.push_back(own);
    else if (!own.empty())
      names.push_back(fmt::format("{} ({}: {})", own, any ? "none of these" : "not met", inner));
  }
  return joined(names, "; ");
}

std::string filled(const Context& context, const rulebook::Text& text, const Trace& trace) {
  std::string out;
  std::size_t from = 0;
  for (const auto& [offset, value] : trace.holes) {
    const std::size_t close = text.written.find('}', offset);
    if (close == std::string::npos) break;
    const bool thing =
        value.type.kind == vocabulary::Type::Kind::element && value.value.presence == vocabulary::Presence::present;
    out += text.written.substr(from, offset - from) + (value.why != evaluate::Why::known ? "(not stated)"
                                                       : thing ? "the " + shape_words(context, value.value.id)
                                                               : shown(context, value));
    from = close + 1;
  }
  return out + text.written.substr(from);
}

std::string due_words(const Context& context, const Decision& decision) {
  return vocabulary::show(decision.due, {vocabulary::Type::Kind::date, {}, vocabulary::no_id, {}},
                          *context.book->vocabulary);
}

std::string not_met(const Context& context, const Rule& rule, const Decision& decision, const Trace& trace) {
  std::vector<std::string> parts;
  if (!rule.if_not.written.empty()) parts.push_back(filled(context, rule.if_not, trace));
  if (decision.done_late)
    parts.push_back("done late: due " + due_words(context, decision));
  else if (rule.due && trace.due && decision.require == Truth::no && !trace.require) {
    parts.push_back("not done, and it was due " + due_words(context, decision));
  }
  if (trace.require && trace.require->truth == Truth::no) {
    const bool any = trace.require->clause->mode == Clause::Mode::any;
    const std::string names = labels(*trace.require, Truth::no);
    const std::string plain = said(context, blame(*trace.require, Truth::no), false);
    if (any && !names.empty())
      parts.push_back("none of these holds: " + names);
    else if (!names.empty())
      parts.push_back("not met: " + names + (rule.if_not.written.empty() ? ". " + capital(plain) : ""));
    else if (rule.if_not.written.empty())
      parts.push_back(plain);
  }
  for (auto& part : parts) {
    if (!part.empty() && part.back() == '.') part.pop_back();
  }
  for (auto& part : parts) part = capital(part);
  return joined(parts, ". ");
}

std::string open_words(const Context& context, const Decision& decision, const Trace& trace) {
  std::string what = said(context, open_leaves(trace, decision), true);
  if (what.empty() && trace.due)
    what = "due " + due_words(context, decision) + ", and the day this is checked on is not stated";
  if (decision.applies == Truth::undecided && decision.require == Truth::no)
    return "fails if it applies. " + capital(what);
  if (decision.applies == Truth::undecided && decision.require != Truth::undecided)
    return "it is not known whether it applies. " + capital(what);
  return what;
}

std::string met_words(const Context& context, const Decision& decision, const Trace& trace) {
  std::string out;
  if (trace.require) {
    const std::string names =
        trace.require->clause->mode == Clause::Mode::any ? labels(*trace.require, Truth::yes) : "";
    out = names.empty() ? said(context, blame(*trace.require, Truth::yes), false) : names;
  } else if (decision.due.presence == vocabulary::Presence::present) {
    out = "done in time: due " + due_words(context, decision);
  }
  if (decision.applies == Truth::undecided) out += ", whether or not it applies";
  return out;
}

// "there is no branch in the branches with a vacuum breaker in the branch's line"
std::string nothing_of(const Context& context, const Rule& rule) {
  std::string words = "there is no ";
  bool described = false;
  for (const auto& one : rule.each.binders) {
    const std::string kind = kind_words(context, one.binder.kind_name);
    words += &one == &rule.each.binders.front() ? kind : (described ? ", with " : " with ") + with_article(kind);
    described = described || one.where;
    if (one.where) words += condition(context, *one.where, one.binder.name, one.where->root);
  }
  return words;
}

std::string why_not_applicable(const Context& context, const Rule& rule, const Decision& decision, const Trace& trace) {
  if (decision.nothing_matched) return nothing_of(context, rule);
  if (decision.when != Truth::no) {
    for (const auto& exception : trace.unless) {
      if (exception.truth == Truth::yes) {
        return "excepted: " + (exception.clause->label.empty() ? said(context, blame(exception, Truth::yes), false)
                                                               : exception.clause->label);
      }
    }
  }
  std::vector<const Evaluated*> leaves;
  for (const auto& where : trace.where) {
    const auto more = blame(where, Truth::no);
    leaves.insert(leaves.end(), more.begin(), more.end());
  }
  if (trace.when) {
    const auto more = blame(*trace.when, Truth::no);
    leaves.insert(leaves.end(), more.begin(), more.end());
  }
  return said(context, leaves, false);
}

std::string outcome_sentence(const Context& context, const Rule& rule, const Decision& decision, const Trace& trace,
                             Outcome outcome) {
  switch (outcome) {
    case Outcome::pass: return sentence(met_words(context, decision, trace));
    case Outcome::accepted: return sentence("met through a recorded approval: " + met_words(context, decision, trace));
    case Outcome::fail: return sentence(not_met(context, rule, decision, trace));
    case Outcome::advisory:
      if (rule.level == rulebook::Level::note && rule.if_not.written.empty()) {
        return trace.when ? sentence(said(context, blame(*trace.when, Truth::yes), false)) : "";
      }
      return sentence(not_met(context, rule, decision, trace));
    case Outcome::undecided:
      if (!rule.each.binders.empty() && decision.instance == evaluate::no_instance &&
          decision.unfinished != site::nowhere) {
        const std::string name = list_name(context, decision.unfinished);
        const bool stated = open_list(context, decision.unfinished).stated;
        return sentence(stated ? not_to_its_end(context, decision.unfinished) + ", so there may be more to judge"
                               : fmt::format("{} {} not stated", name, is_or_are(name)));
      }
      return sentence(open_words(context, decision, trace));
    case Outcome::later:
      if (decision.duty_open && decision.would_be == Outcome::undecided) {
        return sentence("due " + due_words(context, decision));
      }
      return outcome_sentence(context, rule, decision, trace, decision.would_be);
    case Outcome::not_applicable: return sentence(why_not_applicable(context, rule, decision, trace));
    case Outcome::not_in_force: return sentence(rule.standing_says);
  }
  return "";
}

std::string because(const Context& context, const Decision& decision, const Trace& trace) {
  if (decision.applies != Truth::yes || !trace.when) return "";
  const auto& when = trace.when->expression;
  if (when && when->tree->nodes[when->node].op == expression::Op::literal) return "";  // `when: yes`
  return sentence(said(context, blame(*trace.when, Truth::yes), false));
}

// `confirmed as NAME` asks the label of its own clause.
std::string confirmed_label(const ClauseTrace& clause, const Evaluated& leaf) {
  if (clause.expression && leaf.tree == &*clause.clause->tree &&
      leaf.tree->nodes[leaf.node].op == expression::Op::confirmed)
    return clause.clause->label;
  for (const auto& kid : clause.kids) {
    const std::string label = confirmed_label(kid, leaf);
    if (!label.empty()) return label;
  }
  return "";
}

std::string elements(const Context& context, const evaluate::Judgement& judgement, const Decision& decision) {
  std::vector<std::string> names;
  for (const auto element : evaluate::elements(judgement, decision))
    names.push_back(site::address(*context.site, *context.book->vocabulary, element));
  return joined(names, ", ");
}

}  // namespace

Finding finding(const Context& context, const evaluate::Judgement& judgement, const Decision& decision) {
  const Rule& rule = context.book->rules[decision.rule];
  const Trace trace = evaluate::explain(judgement, decision);
  Finding out;
  out.rule = context.book->place + "/" + rule.id;
  out.topic = rule.topic;
  out.title = rule.title;
  out.outcome = evaluate::words(decision.outcome);
  out.would_be = decision.outcome == Outcome::later ? evaluate::words(decision.would_be) : "";
  out.level = words(rule.level);
  if (rule.stage < context.book->vocabulary->stages.size())
    out.stage = context.book->vocabulary->stages[rule.stage].name;
  out.stage_unknown = decision.stage_unknown;
  out.element = elements(context, judgement, decision);
  out.sentence = outcome_sentence(context, rule, decision, trace, decision.outcome);
  out.because = because(context, decision, trace);
  if (decision.due.presence == vocabulary::Presence::present && !decision.due.number.everything()) {
    out.due = due_words(context, decision);
  }
  const auto& cited = rule.adopted.empty() ? rule.sources : rule.adopted;
  for (const auto& citation : cited) out.citations.push_back(shown(context, citation));
  out.facts = facts(context, trace);
  out.limits = limits(context, trace);
  out.clauses = clauses(context, trace);
  for (const auto& one : questions(context, judgement, decision)) out.to_decide.push_back({one.fact, one.ask});
  out.why = rule.why;
  out.fix = rule.fix;
  out.caution = rule.caution;
  out.often_misread = rule.often_misread;
  out.at = context.sources->place(rule.range);
  out.unfinished = decision.outcome == Outcome::undecided && !rule.each.binders.empty() &&
                   decision.instance == evaluate::no_instance && decision.unfinished != site::nowhere;
  out.assumed = std::any_of(out.facts.begin(), out.facts.end(), [](const FactShown& fact) { return fact.assumed; });
  return out;
}

std::vector<Question> questions(const Context& context, const evaluate::Judgement& judgement,
                                const Decision& decision) {
  std::vector<Question> out;
  const Outcome settled = decision.outcome == Outcome::later ? decision.would_be : decision.outcome;
  if (settled != Outcome::undecided) return out;
  const Rule& rule = context.book->rules[decision.rule];
  if (!rule.each.binders.empty() && decision.instance == evaluate::no_instance &&
      decision.unfinished != site::nowhere) {
    out.push_back(list_question(context, decision.unfinished));
    return out;
  }
  const Trace trace = evaluate::explain(judgement, decision);
  for (const auto* leaf : open_leaves(trace, decision)) {
    Question one = question(context, *leaf);
    const std::string label = trace.require ? confirmed_label(*trace.require, *leaf) : "";
    if (!label.empty()) one.ask = "Is this so: " + label + "?";
    const auto alike = [&](const Question& other) { return other.fact == one.fact && other.ask == one.ask; };
    if (std::none_of(out.begin(), out.end(), alike)) out.push_back(std::move(one));
  }
  if (out.empty() && rule.due) out.push_back(day_question(context));
  return out;
}

}  // namespace headgate::explain
