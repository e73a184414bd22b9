#include "app/coverage.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include "evaluate/values.hpp"

namespace headgate::app {

using evaluate::ClauseTrace;
using evaluate::Evaluated;
using evaluate::Outcome;

namespace {

void compare_with_limit(const rulebook::Rulebook& book, const std::string& rule, const Evaluated& limit,
                        const Evaluated& other, Coverage& coverage) {
  // Sizes come in steps and counts in ones: there the next one is just over.
  const bool stepped = limit.type.dimension.plain() || limit.type.dimension == quantity::dimensions::size;
  const double share = stepped ? 0.5 : 0.05;
  const double one = limit.type.dimension.plain() ? 1.0 : 0.0;
  if (limit.limit < 0 || !limit.value.number.exact() || limit.type.kind != vocabulary::Type::Kind::number) return;
  Boundary& boundary = coverage.boundaries[{rule, book.limits[static_cast<std::size_t>(limit.limit)].signature.name}];
  if (!other.value.number.exact() || other.value.presence != vocabulary::Presence::present) return;
  const double step = evaluate::grid_of(limit.type);
  const double at = quantity::snap(limit.value.number.lo, step);
  const double is = quantity::snap(other.value.number.lo, step);
  if (is == at)
    boundary.at = true;
  else if (std::abs(is - at) <= std::max(share * std::abs(at), one / step) || at == 0)
    (is < at ? boundary.under : boundary.over) = true;
}

void walk(const rulebook::Rulebook& book, const std::string& rule, const Evaluated& of, Coverage& coverage) {
  if (of.tree == nullptr) return;
  const auto op = of.tree->nodes[of.node].op;
  if (op == expression::Op::compare || op == expression::Op::between) {
    for (std::size_t i = 0; i + 1 < of.kids.size(); ++i) {
      compare_with_limit(book, rule, of.kids[i], of.kids[i + 1], coverage);
      compare_with_limit(book, rule, of.kids[i + 1], of.kids[i], coverage);
    }
  }
  for (const auto& kid : of.kids) walk(book, rule, kid, coverage);
}

// `recorded` and papers on file are always decided.
bool always_decided(const expression::Tree& tree) {
  using expression::Op;
  return std::all_of(tree.nodes.begin(), tree.nodes.end(), [](const expression::Node& node) {
    const bool test = node.type.kind == vocabulary::Type::Kind::truth && node.op != Op::path;
    return !test || node.op == Op::recorded || node.op == Op::paper || node.op == Op::both || node.op == Op::either ||
           node.op == Op::opposite;
  });
}

bool always_decided(const rulebook::Clause& clause) {
  if (clause.tree) return always_decided(*clause.tree);
  return std::all_of(clause.kids.begin(), clause.kids.end(),
                     [](const rulebook::Clause& kid) { return always_decided(kid); });
}

bool always_decided(const rulebook::Rule& rule) {
  if (!rule.each.binders.empty() || rule.due) return false;
  return (!rule.when || always_decided(*rule.when)) && (!rule.require || always_decided(*rule.require)) &&
         std::all_of(rule.unless.begin(), rule.unless.end(),
                     [](const rulebook::Clause& one) { return always_decided(one); });
}

// Whether a place has replaced what the rule asks, and not only its level or source.
bool asks_anew(const rulebook::Rule& rule) {
  const auto elsewhere = [&](const text::Range& range) { return range.known() && range.file != rule.range.file; };
  const auto& binders = rule.each.binders;
  return (rule.when && elsewhere(rule.when->range)) || (rule.require && elsewhere(rule.require->range)) ||
         (rule.due && elsewhere(rule.due->range)) || (rule.done && elsewhere(rule.done->range)) ||
         std::any_of(rule.unless.begin(), rule.unless.end(),
                     [&](const rulebook::Clause& one) { return elsewhere(one.range); }) ||
         std::any_of(binders.begin(), binders.end(), [&](const auto& one) { return elsewhere(one.binder.kind_range); });
}

void walk(const rulebook::Rulebook& book, const std::string& rule, const ClauseTrace& of, Coverage& coverage) {
  if (of.expression) walk(book, rule, *of.expression, coverage);
  for (const auto& kid : of.kids) walk(book, rule, kid, coverage);
}

}  // namespace

std::string counted_as(const rulebook::Rulebook& book, const rulebook::Rule& rule) {
  const bool added = !rule.layers.empty() && !rule.layers.front().place.empty();
  return added || asks_anew(rule) ? book.place + "/" + rule.id : rule.id;
}

void Coverage::add(const std::string& name, Outcome outcome) { ++outcomes[name][static_cast<std::size_t>(outcome)]; }

void Coverage::add(const rulebook::Rulebook& book, const std::string& name, const evaluate::Trace& trace,
                   bool reached) {
  for (const auto& where : trace.where) walk(book, name, where, *this);
  if (!reached) return;
  if (trace.when) walk(book, name, *trace.when, *this);
  for (const auto& exception : trace.unless) walk(book, name, exception, *this);
  if (trace.require) walk(book, name, *trace.require, *this);
}

std::string missing(const Coverage& coverage, const std::string& name, const rulebook::Rule& rule) {
  const auto found = coverage.outcomes.find(name);
  const auto reached = [&](Outcome outcome) {
    return found != coverage.outcomes.end() && found->second[static_cast<std::size_t>(outcome)] > 0;
  };
  std::vector<std::string> lacks;
  const bool note = rule.level == rulebook::Level::note;
  if (found == coverage.outcomes.end()) return "no trial";
  if (!note && !reached(Outcome::pass) && !reached(Outcome::accepted)) lacks.emplace_back("pass");
  // Places differ in the level of one rule.
  if (!reached(Outcome::advisory) && (note || !reached(Outcome::fail))) {
    lacks.emplace_back(rule.level == rulebook::Level::must ? "fail" : "advisory");
  }
  if (!reached(Outcome::undecided) && !always_decided(rule)) lacks.emplace_back("undecided");
  const bool conditional = rule.when || !rule.each.binders.empty() || !rule.unless.empty();
  if (conditional && !reached(Outcome::not_applicable)) lacks.emplace_back("not applicable");
  std::string out;
  for (const auto& lack : lacks) out += (out.empty() ? "never " : ", ") + lack;
  for (const auto& [key, boundary] : coverage.boundaries) {
    if (key.first != name || boundary.complete()) continue;
    std::string parts;
    if (!boundary.under) parts += "just under";
    if (!boundary.at) parts += std::string(parts.empty() ? "" : ", ") + "at";
    if (!boundary.over) parts += std::string(parts.empty() ? "" : ", ") + "just over";
    out += (out.empty() ? "" : "; ") + key.second + " never tried " + parts;
  }
  return out;
}

}  // namespace headgate::app
