#include "evaluate/reference/agree.hpp"

#include <fmt/format.h>

#include "expression/print.hpp"

namespace headgate::reference {

using evaluate::Cell;
using evaluate::Decision;
using evaluate::Instance;
using evaluate::Judgement;
using evaluate::Plan;
using evaluate::PlannedClause;
using evaluate::PlannedId;
using Kind = Type::Kind;

namespace {

std::string_view words(Truth truth) { return truth == Truth::yes ? "yes" : truth == Truth::no ? "no" : "undecided"; }

// Of an element or list only which it is, of a choice its members, of a number both ends and its ladder or unit.
std::string shown(const Value& value, const Type& type) {
  if (type.kind == Kind::truth) return std::string(words(value.truth));
  if (value.presence != Presence::present) return value.presence == Presence::none ? "none" : "unknown";
  switch (type.kind) {
    case Kind::choice: return fmt::format("members {:x}", value.members);
    case Kind::element:
    case Kind::list:
    case Kind::level:
    case Kind::kind: return fmt::format("id {}", value.id);
    case Kind::text:
    case Kind::answers: return "text";
    case Kind::span:
      return fmt::format("[{:.17g}, {:.17g}] span {}", value.number.lo, value.number.hi,
                         static_cast<int>(value.span_unit));
    default: break;
  }
  const bool size = type.kind == Kind::number && type.dimension == quantity::dimensions::size;
  const int ladder = size ? static_cast<int>(value.ladder) : 0;
  return fmt::format("[{:.17g}, {:.17g}]{}", value.number.lo, value.number.hi, ladder != 0 ? " metric" : "");
}

bool same_value(const Value& a, const Value& b, const Type& type) {
  if (type.kind == Kind::truth) return a.truth == b.truth;
  if (a.presence != b.presence) return false;
  if (a.presence != Presence::present) return true;
  if (type.kind == Kind::number && type.dimension != quantity::dimensions::size) return a.number == b.number;
  return shown(a, type) == shown(b, type);
}

// The evaluator lays out every row of a limit by a choice, and a listed limit's values are no nodes.
bool same_kids(const Node& at) { return at.op != Op::limit && at.op != Op::in_list && at.op != Op::base; }

std::string compared(Truth a, Truth b, std::string_view what) {
  return a == b ? "" : fmt::format("{}: {}, reference {}", what, words(a), words(b));
}

std::string in_clause(const WorkedClause& worked, const PlannedClause& planned, const Judgement& judgement) {
  const std::string label = worked.clause->label.empty() ? "a clause" : worked.clause->label;
  std::string found = compared(judgement.cells[planned.truth].truth, worked.truth, label);
  if (worked.expression && found.empty())
    found = difference(*worked.expression, judgement.plan, judgement.cells, planned.node);
  if (worked.kids.size() != planned.kids.size()) return label + ": not the same clauses";
  for (std::size_t i = 0; i < worked.kids.size() && found.empty(); ++i)
    found = in_clause(worked.kids[i], planned.kids[i], judgement);
  return found;
}

std::string in_nodes(const std::vector<Worked>& worked, const std::vector<PlannedId>& planned,
                     const Judgement& judgement) {
  if (worked.size() != planned.size()) return "not as many expressions";
  std::string found;
  for (std::size_t i = 0; i < worked.size() && found.empty(); ++i)
    found = difference(worked[i], judgement.plan, judgement.cells, planned[i]);
  return found;
}

std::string in_instance(const Finding& finding, const Instance& at, const Judgement& judgement) {
  std::string found;
  const auto clause = [&](const std::optional<WorkedClause>& worked, const std::optional<PlannedClause>& planned) {
    if (!found.empty() || !worked) return;
    found = in_clause(*worked, *planned, judgement);
  };
  const auto node = [&](const std::optional<Worked>& worked, PlannedId planned) {
    if (found.empty() && worked) found = difference(*worked, judgement.plan, judgement.cells, planned);
  };
  found = in_nodes(finding.where, at.where, judgement);
  clause(finding.when, at.when);
  for (std::size_t i = 0; i < finding.unless.size() && found.empty(); ++i)
    found = in_clause(finding.unless[i], at.unless[i], judgement);
  clause(finding.require, at.require);
  node(finding.due, at.due);
  node(finding.done, at.done);
  return found.empty() ? in_nodes(finding.holes, at.holes, judgement) : found;
}

std::string in_decision(const Decision& a, const Decision& b) {
  const auto truth = [](std::string_view what, Truth x, Truth y) { return compared(x, y, what); };
  if (a.outcome != b.outcome)
    return fmt::format("outcome {}, reference {}", evaluate::words(a.outcome), evaluate::words(b.outcome));
  if (a.would_be != b.would_be)
    return fmt::format("would be {}, reference {}", evaluate::words(a.would_be), evaluate::words(b.would_be));
  for (const auto& found : {truth("applies", a.applies, b.applies), truth("when", a.when, b.when),
                            truth("exception", a.exception, b.exception), truth("require", a.require, b.require)}) {
    if (!found.empty()) return found;
  }
  const bool flags = a.by_approval == b.by_approval && a.stage_unknown == b.stage_unknown &&
                     a.nothing_matched == b.nothing_matched && a.duty_open == b.duty_open &&
                     a.done_late == b.done_late && a.unfinished == b.unfinished;
  return flags ? "" : "not the same approval, stage, duty or list";
}

std::string named(const Judgement& judgement, const Finding& finding) {
  std::string name = judgement.book->rules[finding.decision.rule].id;
  for (const auto element : finding.elements)
    name += " " + site::address(*judgement.site, *judgement.book->vocabulary, element);
  return name;
}

}  // namespace

std::string difference(const Worked& worked, const Plan& plan, const std::vector<Cell>& cells, PlannedId planned) {
  const auto& at = plan.nodes[planned];
  const Node& node = (*worked.tree)[worked.node];
  const Value value = evaluate::value_of(cells[at.cell]);
  const auto here = [&](const std::string& a, const std::string& b) {
    return fmt::format("{}: {}, reference {}", expression::print(*worked.tree, worked.node), a, b);
  };
  if (at.tree != worked.tree || at.node != worked.node) return here("another node", "");
  if (!same_value(value, worked.value, node.type)) return here(shown(value, node.type), shown(worked.value, node.type));
  if (!same_kids(node)) return "";
  if (at.kid_count != worked.kids.size())
    return here(fmt::format("{} kids", at.kid_count), fmt::format("{} kids", worked.kids.size()));
  for (std::size_t i = 0; i < worked.kids.size(); ++i) {
    const auto kid = plan.kids[at.first_kid + i];
    if (plan.nodes[kid].about != worked.kids[i].about && worked.kids[i].about != site::nowhere)
      return here("another element", "");
    std::string found = difference(worked.kids[i], plan, cells, kid);
    if (!found.empty()) return found;
  }
  return "";
}

std::string difference(const Judgement& judgement, const std::vector<Finding>& findings) {
  for (std::size_t i = 0; i < std::min(findings.size(), judgement.decisions.size()); ++i) {
    const Decision& decision = judgement.decisions[i];
    const Finding& finding = findings[i];
    std::string found;
    if (decision.rule != finding.decision.rule || evaluate::elements(judgement, decision) != finding.elements)
      found = "another rule or element";
    if (found.empty() && decision.instance != evaluate::no_instance) {
      found = in_instance(finding, judgement.plan.instances[decision.instance], judgement);
    }
    if (found.empty()) found = in_decision(decision, finding.decision);
    if (!found.empty()) return named(judgement, finding) + ": " + found;
  }
  if (findings.size() == judgement.decisions.size()) return "";
  return fmt::format("{} decisions, reference {}", judgement.decisions.size(), findings.size());
}

}  // namespace headgate::reference
