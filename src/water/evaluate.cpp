#include <cmath>

#include "water/functions.hpp"

namespace headgate::water {
namespace {

// A conversion may leave a value a few bits outside the range it was written to be the end of.
double settled(double value, const Input& input) {
  const double slack = 1e-12 * std::fmax(std::fabs(input.lowest), std::fabs(input.highest));
  if (value < input.lowest && value >= input.lowest - slack) return input.lowest;
  if (value > input.highest && value <= input.highest + slack) return input.highest;
  return value;
}

bool in_range(const Input& input, double lo, double hi, Refusal& refusal) {
  const auto refuse = [&](Reason reason, double value) {
    refusal.reason = reason;
    refusal.value = value;
    refusal.lowest = input.lowest;
    refusal.highest = input.highest;
    return false;
  };
  if (!(lo <= hi)) return refuse(Reason::not_known, std::isnan(lo) ? lo : hi);
  if (lo < input.lowest) return refuse(Reason::below, lo);
  if (hi > input.highest) return refuse(Reason::above, hi);
  if (input.whole && lo != std::floor(lo)) return refuse(Reason::not_whole, lo);
  if (input.whole && hi != std::floor(hi)) return refuse(Reason::not_whole, hi);
  return true;
}

bool all_in_range(const Function& function, const double* lo, const double* hi, Refusal& refusal) {
  for (std::size_t i = 0; i < function.inputs.size(); ++i) {
    refusal.input = static_cast<int>(i);
    if (!in_range(function.inputs[i], lo[i], hi[i], refusal)) return false;
  }
  return function.agrees == nullptr || function.agrees(lo, hi, refusal);
}

bool is_point(const Function& function, const double* lo, const double* hi) {
  for (std::size_t i = 0; i < function.inputs.size(); ++i) {
    if (lo[i] != hi[i]) return false;
  }
  return true;
}

// A function that moves one way along each input is least and greatest at two opposite corners of the box.
Interval at_corners(const Function& function, const double* lo, const double* hi) {
  std::array<double, most_inputs> least{};
  std::array<double, most_inputs> greatest{};
  for (std::size_t i = 0; i < function.inputs.size(); ++i) {
    const bool rises = function.inputs[i].direction == Direction::rises;
    least[i] = rises ? lo[i] : hi[i];
    greatest[i] = rises ? hi[i] : lo[i];
  }
  return {function.compute(least.data()), function.compute(greatest.data())};
}

// pow and log are not rounded correctly, so a value computed inside the box may pass a corner's by a last bit.
Interval widened(Interval interval, double rounding) {
  return {interval.lo - rounding * std::fabs(interval.lo), interval.hi + rounding * std::fabs(interval.hi)};
}

}  // namespace

Evaluated evaluate(const Function& function, std::span<const double> lo, std::span<const double> hi) {
  std::array<double, most_inputs> least{};
  std::array<double, most_inputs> greatest{};
  for (std::size_t i = 0; i < function.inputs.size(); ++i) {
    least[i] = settled(lo[i], function.inputs[i]);
    greatest[i] = settled(hi[i], function.inputs[i]);
  }
  Refusal refusal;
  if (!all_in_range(function, least.data(), greatest.data(), refusal)) return refusal;
  if (is_point(function, least.data(), greatest.data())) {
    const double value = function.compute(least.data());
    return Interval{value, value};
  }
  const Interval box = function.bound != nullptr ? function.bound(least.data(), greatest.data())
                                                 : at_corners(function, least.data(), greatest.data());
  return widened(box, function.rounding);
}

}  // namespace headgate::water
