// Steps over lists.
#include <algorithm>

#include "evaluate/runner.hpp"

namespace headgate::evaluate {

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

}  // namespace

void Runner::quantifier(const Step& step, Cell& out) const {
  const bool every = step.code == Code::every;
  Truth result = every ? Truth::yes : Truth::no;
  for (std::size_t i = 0; i < step.count; i += 2) {
    const Truth where = in(step, i).truth;
    const Truth has = in(step, i + 1).truth;
    result = every ? quantity::both(result, quantity::either(quantity::opposite(where), has))
                   : quantity::either(result, quantity::both(where, has));
  }
  Why why = Why::parts;
  if (!step.finished && result == (every ? Truth::yes : Truth::no)) {
    result = Truth::undecided;
    why = Why::unfinished;
  }
  set_truth(out, step.code == Code::none_of ? quantity::opposite(result) : result, why);
}

void Runner::total(const Step& step, Cell& out) const {
  Interval total = quantity::exactly(0);
  Why why = Why::known;
  for (std::size_t i = 0; i < step.count; i += 2) {
    const Truth where = in(step, i).truth;
    if (where == Truth::no) continue;
    const Interval value = counted(in(step, i + 1));
    if (where == Truth::undecided || value.everything()) why = Why::parts;
    total = quantity::add(total, where == Truth::yes ? value : quantity::hull(value, quantity::exactly(0)));
  }
  if (!step.finished) {
    why = Why::unfinished;
    total = step.grows ? Interval{total.lo, infinity} : Interval{};
  }
  set_number(out, total);
  out.why = why;
}

// Sizes are compared on the inch ladder, unless all that are known stand on the metric one.
bool Runner::all_metric(const Step& step) const {
  bool some = false;
  for (std::size_t i = 0; i < step.count; i += 2) {
    if (in(step, i).truth == Truth::no || counted(in(step, i + 1)).everything()) continue;
    if (in(step, i + 1).extra >> 4U == static_cast<unsigned>(vocabulary::Ladder::inch)) return false;
    some = true;
  }
  return some;
}
bool Runner::to_inch(Cell& size) const {
  Value value = value_of(size);
  Value inch;
  if (!same_ladder(value, inch, book())) return false;
  size = cell_of(value, Why::known);
  return true;
}

// Of nothing there is no least; while none is certain to count, there may be nothing.
void Runner::extreme_of(const Step& step, Cell& out) const {
  const bool least = step.code == Code::least_of;
  const bool metric = step.sizes && all_metric(step);
  double lo = infinity;  // of the greatest: of the negated values
  double hi = infinity;
  bool any = false;
  bool certain = false;
  Why why = Why::known;
  for (std::size_t i = 0; i < step.count; i += 2) {
    const Truth where = in(step, i).truth;
    if (where == Truth::no) continue;
    Cell cell = in(step, i + 1);
    const bool converts = step.sizes && !metric && cell.extra >> 4U != 0 && !counted(cell).everything();
    if (converts && !to_inch(cell)) return set_unknown(out, Why::two_ladders);
    const Interval value = least ? counted(cell) : quantity::negate(counted(cell));
    if (where == Truth::undecided || value.everything()) why = Why::parts;
    any = true;
    certain = certain || where == Truth::yes;
    lo = std::min(lo, value.lo);
    if (where == Truth::yes) hi = std::min(hi, value.hi);
  }
  if (!step.finished) why = Why::unfinished;
  if (!certain) return set_unknown(out, any ? Why::parts : step.finished ? Why::empty : why);
  if (!step.finished) lo = -infinity;
  set_number(out, least ? Interval{lo, hi} : Interval{-hi, -lo});
  if (metric) out.extra = static_cast<std::uint8_t>(static_cast<unsigned>(vocabulary::Ladder::metric) << 4U);
  out.why = why;
}

}  // namespace headgate::evaluate
