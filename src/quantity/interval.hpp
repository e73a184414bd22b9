// A number as far as it is known: the closed interval [lo, hi]. An exact number has lo == hi, an
// unknown one is (-inf, +inf); an open end is moved inward by one grid step. Sound, not tightest: an
// operation's result holds every value its inputs allow, and inf - inf, 0 * inf and division by an
// interval that holds 0 give everything.
//
//   less(exact(79), {78, 80}, grid)   -> undecided
#pragma once

#include <cstdint>
#include <limits>

#include "quantity/dimension.hpp"

namespace headgate::quantity {

// Yes, no or undecided, ordered so that Kleene's `and` is the least and `or` the greatest.
enum class Truth : std::uint8_t { no = 0, undecided = 1, yes = 2 };
inline Truth both(Truth a, Truth b) { return a < b ? a : b; }
inline Truth either(Truth a, Truth b) { return a < b ? b : a; }
inline Truth opposite(Truth a) { return static_cast<Truth>(2 - static_cast<int>(a)); }
inline Truth truth(bool value) { return value ? Truth::yes : Truth::no; }

struct Interval {
  double lo = -std::numeric_limits<double>::infinity();
  double hi = std::numeric_limits<double>::infinity();

  bool exact() const { return lo == hi; }
  bool everything() const;  // nothing at all is known
  friend bool operator==(const Interval& a, const Interval& b) { return a.lo == b.lo && a.hi == b.hi; }
};

// How far apart two values surely lie on different steps of the grid, which coarsens far out with the larger of them.
double margin(double largest, double grid_step);

inline Interval exactly(double value) { return {value, value}; }
Interval add(Interval a, Interval b);
Interval subtract(Interval a, Interval b);
Interval multiply(Interval a, Interval b);
Interval divide(Interval a, Interval b);
Interval least(Interval a, Interval b);
Interval greatest(Interval a, Interval b);
Interval hull(Interval a, Interval b);
Interval negate(Interval a);

// The integer number of grid steps nearest to the value, as a double (infinities stay). Past 2^50 steps only 50 bits
// are kept, so that values which differ by the rounding of a change of unit are still the same.
double snap(double value, double grid_step);

Truth less(Interval a, Interval b, double grid_step);           // a < b
Truth less_or_equal(Interval a, Interval b, double grid_step);  // a <= b
Truth same(Interval a, Interval b, double grid_step);           // a = b

}  // namespace headgate::quantity
