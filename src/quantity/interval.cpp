#include "quantity/interval.hpp"

#include <algorithm>
#include <cmath>

namespace headgate::quantity {

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

// Ends that are no numbers, or that overflowed onto one side, say nothing any more.
Interval settled(double lo, double hi) {
  const bool fine = lo <= hi && lo < infinity && hi > -infinity;
  return fine ? Interval{lo, hi} : Interval{};
}

Interval spanned(double a, double b, double c, double d) {
  if (std::isnan(a) || std::isnan(b) || std::isnan(c) || std::isnan(d)) return {};
  return settled(std::min({a, b, c, d}), std::max({a, b, c, d}));
}

bool holds_zero(Interval value) { return value.lo <= 0 && value.hi >= 0; }

}  // namespace

bool Interval::everything() const { return lo == -infinity && hi == infinity; }

Interval add(Interval a, Interval b) { return settled(a.lo + b.lo, a.hi + b.hi); }
Interval subtract(Interval a, Interval b) { return settled(a.lo - b.hi, a.hi - b.lo); }
Interval multiply(Interval a, Interval b) { return spanned(a.lo * b.lo, a.lo * b.hi, a.hi * b.lo, a.hi * b.hi); }

Interval divide(Interval a, Interval b) {
  if (holds_zero(b)) return {};
  return spanned(a.lo / b.lo, a.lo / b.hi, a.hi / b.lo, a.hi / b.hi);
}

Interval least(Interval a, Interval b) { return {std::min(a.lo, b.lo), std::min(a.hi, b.hi)}; }
Interval greatest(Interval a, Interval b) { return {std::max(a.lo, b.lo), std::max(a.hi, b.hi)}; }
Interval hull(Interval a, Interval b) { return {std::min(a.lo, b.lo), std::max(a.hi, b.hi)}; }
Interval negate(Interval a) { return {-a.hi, -a.lo}; }

namespace {

constexpr int steps_kept = 50;  // bits of a count of steps that are told apart

}  // namespace

double margin(double largest, double grid_step) {
  return 2 * std::max(grid_step, std::ldexp(std::fabs(largest), 1 - steps_kept));
}

double snap(double value, double grid_step) {
  const double steps = value / grid_step;
  if (std::isinf(steps) || std::isnan(steps)) return std::isinf(value) ? value : steps;
  // A double holds 53 bits. Past 2^50 steps the last of them are rounding noise of a change of unit, so the grid
  // coarsens with the value; rounding stays monotone, order stays total.
  int exponent = 0;
  const double fraction = std::frexp(steps, &exponent);
  if (exponent <= steps_kept) return std::round(steps) + 0.0;
  return std::ldexp(std::round(std::ldexp(fraction, steps_kept)), exponent - steps_kept);
}

Truth less(Interval a, Interval b, double grid_step) {
  if (snap(a.hi, grid_step) < snap(b.lo, grid_step)) return Truth::yes;
  if (snap(a.lo, grid_step) >= snap(b.hi, grid_step)) return Truth::no;
  return Truth::undecided;
}

Truth less_or_equal(Interval a, Interval b, double grid_step) {
  if (snap(a.hi, grid_step) <= snap(b.lo, grid_step)) return Truth::yes;
  if (snap(a.lo, grid_step) > snap(b.hi, grid_step)) return Truth::no;
  return Truth::undecided;
}

Truth same(Interval a, Interval b, double grid_step) {
  const double a_lo = snap(a.lo, grid_step);
  const double a_hi = snap(a.hi, grid_step);
  const double b_lo = snap(b.lo, grid_step);
  const double b_hi = snap(b.hi, grid_step);
  if (a_hi < b_lo || b_hi < a_lo) return Truth::no;
  return a_lo == a_hi && b_lo == b_hi ? Truth::yes : Truth::undecided;
}

}  // namespace headgate::quantity
