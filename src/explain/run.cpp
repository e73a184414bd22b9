#include "explain/run.hpp"

#include <cmath>

#include <fmt/format.h>

#include "explain/words.hpp"

namespace headgate::explain {

using evaluate::WorkedValue;
using expression::Op;
using quantity::Interval;
using quantity::Truth;

namespace {

const vocabulary::Field& field_at(const Context& context, site::ElementId element, vocabulary::FieldId field) {
  return context.book->vocabulary->shapes[context.site->elements[element].shape].fields[field];
}

// Whether the value is read of another element under its own name: what makes it a value handed down.
bool hands_down(const expression::Tree& tree, const std::string& name) {
  for (const auto& node : tree.nodes) {
    const bool through = node.op == Op::path && node.variable == 0 && node.steps.size() > 1;
    if (through && node.steps.back().name == name) return true;
  }
  return false;
}

const Evaluated& taken(const Evaluated& of) {
  if (of.tree->nodes[of.node].op != Op::choose || of.kids[0].truth() == Truth::undecided) return of;
  return taken(of.kids[of.kids[0].truth() == Truth::yes ? 1 : 2]);
}

// a + b - c as +a, +b, -c.
void flatten(const Evaluated& of, double sign, std::vector<std::pair<double, const Evaluated*>>& terms) {
  const auto op = of.tree->nodes[of.node].op;
  if (op == Op::add || op == Op::subtract) {
    flatten(of.kids[0], sign, terms);
    flatten(of.kids[1], op == Op::subtract ? -sign : sign, terms);
  } else {
    terms.emplace_back(sign, &taken(of));
  }
}

// On the main's own line: what leaves it has a line of its own.
bool on_trunk(const Context& context, site::ElementId element) {
  const auto walk = context.site->elements[element].walk;
  return walk != site::nowhere && context.site->lists[walk].owner == 0;
}

// Whole steps of the last digit shown.
struct Digits {
  double unit = 1;  // SI of one unit
  int after_point = 0;
  double step = 1;  // in the unit

  std::int64_t steps(double si) const { return std::llround(si / unit / step); }
  std::string show(std::int64_t count) const {
    return fmt::format("{:.{}f}", static_cast<double>(count) * step, after_point);
  }
};

// As many digits as four figures of the largest value have.
Digits digits_for(double largest_si, const quantity::Unit* unit) {
  Digits digits;
  digits.unit = unit == nullptr ? 1 : unit->factor;
  digits.after_point = 3;
  for (double at = std::fabs(largest_si) / digits.unit; at >= 10 && digits.after_point > 0; at /= 10) {
    --digits.after_point;
  }
  for (int i = 0; i < digits.after_point; ++i) digits.step /= 10;
  return digits;
}

}  // namespace

bool Runs::take(const WorkedValue& at, const Evaluated& formula) {
  const auto& field = field_at(context_, at.element, at.derivation->field);
  if (formula.type.kind != vocabulary::Type::Kind::number || !on_trunk(context_, at.element)) return false;
  Followed* run = nullptr;
  for (auto& each : followed_) {
    if (each.name == field.name) run = &each;
  }
  const bool begins = run == nullptr;
  if (!hands_down(at.derivation->tree, field.name)) return false;
  if (begins) {
    followed_.push_back({field.name, field.title, formula.type, {}, {}, false});
    run = &followed_.back();
  }
  if (run->broken) return true;
  const auto& slot = context_.site->slot(at.element, at.derivation->field);
  const Interval after = at.stated ? slot.value.number : formula.value.number;
  std::vector<std::pair<double, const Evaluated*>> terms;
  flatten(formula, 1, terms);
  const Evaluated& first = *terms.front().second;
  const bool from_before = first.tree->nodes[first.node].op == Op::path && first.element != at.element &&
                           first.element != site::nowhere && first.beyond.empty() &&
                           field_at(context_, first.element, first.field).name == field.name;
  Step step;
  step.element = site::address(*context_.site, *context_.book->vocabulary, at.element);
  step.after = after;
  const bool first_on_line = begins;
  if (first_on_line) run->start = first.value.number;
  if (at.stated || (!from_before && !first_on_line) || terms.front().first < 0) {
    step.reset = at.stated ? "stated" : filled(context_, formula);
  } else {
    for (std::size_t i = 1; i < terms.size(); ++i) {
      const Evaluated& term = *terms[i].second;
      const bool path = term.tree->nodes[term.node].op == Op::path && term.element != site::nowhere;
      step.terms.push_back({terms[i].first, term.value.number,
                            path ? field_at(context_, term.element, term.field).title : filled(context_, term)});
    }
  }
  run->broken = after.everything() || run->start.everything();
  if (!run->broken) run->steps.push_back(std::move(step));
  return true;
}

Run Runs::shown(const Followed& of, bool least, bool exact) const {
  const auto* unit = quantity::customary(of.type.dimension);
  double largest = std::fmax(std::fabs(of.start.lo), std::fabs(of.start.hi));
  for (const auto& step : of.steps)
    largest = std::fmax(largest, std::fmax(std::fabs(step.after.lo), std::fabs(step.after.hi)));
  const Digits digits = digits_for(largest, unit);
  const auto end = [&](Interval value) { return digits.steps(least ? value.lo : value.hi); };
  Run run;
  run.title = of.title;
  run.end = exact ? "" : least ? "least" : "most";
  run.unit = unit == nullptr ? "" : std::string(unit->spelling);
  std::int64_t before = end(of.start);
  run.start = digits.show(before);
  for (std::size_t i = 0; i < of.steps.size(); ++i) {
    const Step& step = of.steps[i];
    const std::int64_t after = end(step.after);
    std::vector<std::int64_t> counts;
    std::int64_t sum = 0;
    std::size_t largest_term = 0;
    for (const auto& term : step.terms) {
      const bool low = (term.sign > 0) == least;
      counts.push_back(static_cast<std::int64_t>(term.sign) * digits.steps(low ? term.value.lo : term.value.hi));
      sum += counts.back();
      if (std::llabs(counts.back()) > std::llabs(counts[largest_term])) largest_term = counts.size() - 1;
    }
    if (!counts.empty()) counts[largest_term] += after - before - sum;
    RunStep out;
    out.element = step.element;
    out.reset = step.reset;
    out.after = digits.show(after);
    for (std::size_t k = 0; k < counts.size(); ++k) {
      if (counts[k] == 0) continue;
      out.terms.emplace_back((counts[k] < 0 ? "- " : "+ ") + digits.show(std::llabs(counts[k])), step.terms[k].title);
    }
    before = after;
    const bool last = i + 1 == of.steps.size();
    if (last || !out.reset.empty() || !out.terms.empty()) run.steps.push_back(std::move(out));
  }
  return run;
}

std::vector<Run> Runs::finish() const {
  std::vector<Run> runs;
  for (const auto& each : followed_) {
    if (each.steps.empty()) continue;
    bool exact = each.start.exact();
    for (const auto& step : each.steps) exact = exact && step.after.exact();
    runs.push_back(shown(each, true, exact));
    if (!exact) runs.push_back(shown(each, false, exact));
  }
  return runs;
}

}  // namespace headgate::explain
