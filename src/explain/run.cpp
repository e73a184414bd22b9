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

namespace {

double greatest_finite(double so_far, Interval value) {
  for (const double end : {value.lo, value.hi}) {
    if (std::isfinite(end)) so_far = std::fmax(so_far, std::fabs(end));
  }
  return so_far;
}

}  // namespace

// Whole steps of the last digit shown.
struct Runs::Digits {
  double unit = 1;  // SI of one unit
  int after_point = 0;
  double step = 1;  // in the unit

  // As many digits as four figures of the largest value have.
  Digits(double largest_si, const quantity::Unit* of) : unit(of == nullptr ? 1 : of->factor), after_point(3) {
    for (double at = std::fabs(largest_si) / unit; at >= 10 && after_point > 0; at /= 10) --after_point;
    for (int i = 0; i < after_point; ++i) step /= 10;
  }

  // Nothing where an end is open, or beyond all that a pipe can hold.
  std::optional<std::int64_t> steps(double si) const {
    constexpr double most = 1e15;
    const double count = si / unit / step;
    return std::fabs(count) < most ? std::make_optional<std::int64_t>(std::llround(count)) : std::nullopt;
  }
  std::string show(std::optional<std::int64_t> count) const {
    return count ? fmt::format("{:.{}f}", static_cast<double>(*count) * step, after_point) : "?";
  }
};

// What each term changes the value by, in steps of the last digit: where all of them are known, so that they close the
// sum from `before` to `after`.
std::vector<std::optional<std::int64_t>> Runs::changes(const Step& step, bool least, const Digits& digits,
                                                       std::optional<std::int64_t> sum_to) {
  std::vector<std::optional<std::int64_t>> counts;
  std::size_t largest = 0;
  for (const auto& term : step.terms) {
    const bool low = (term.sign > 0) == least;
    auto count = digits.steps(low ? term.value.lo : term.value.hi);
    if (count && term.sign < 0) *count = -*count;
    if (!count || !sum_to) {
      sum_to.reset();
    } else {
      *sum_to -= *count;
    }
    counts.push_back(count);
    if (sum_to && std::llabs(*count) > std::llabs(*counts[largest])) largest = counts.size() - 1;
  }
  if (sum_to && !counts.empty()) *counts[largest] += *sum_to;
  return counts;
}

Run Runs::shown(const Followed& of, bool least, bool exact) {
  const auto* unit = quantity::customary(of.type.dimension);
  double largest = greatest_finite(0, of.start);
  for (const auto& step : of.steps) largest = greatest_finite(largest, step.after);
  const Digits digits(largest, unit);
  const auto end = [&](Interval value) { return digits.steps(least ? value.lo : value.hi); };
  Run run;
  run.title = of.title;
  run.end = exact ? "" : least ? "least" : "most";
  run.unit = unit == nullptr ? "" : std::string(unit->spelling);
  auto before = end(of.start);
  run.start = digits.show(before);
  for (std::size_t i = 0; i < of.steps.size(); ++i) {
    const Step& step = of.steps[i];
    const auto after = end(step.after);
    RunStep out;
    out.element = step.element;
    out.reset = step.reset;
    out.after = digits.show(after);
    const auto sum = before && after ? std::make_optional(*after - *before) : std::nullopt;
    const auto counts = changes(step, least, digits, sum);
    for (std::size_t k = 0; k < counts.size(); ++k) {
      if (counts[k] && *counts[k] == 0) continue;
      const bool taken_off = counts[k] ? *counts[k] < 0 : step.terms[k].sign < 0;
      const auto size = counts[k] ? std::make_optional<std::int64_t>(std::llabs(*counts[k])) : std::nullopt;
      out.terms.emplace_back((taken_off ? "- " : "+ ") + digits.show(size), step.terms[k].title);
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
