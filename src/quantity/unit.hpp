// The units people write, and quantities as written: `92 psi`, `1-1/2 in`, `5 ft 6 in`, `46'`, `20"`,
// `2.5 %`, `50 mg/L`, `140 F`.
//
//   read_quantity("5 ft 6 in")   -> 1.6764, length
//   read_quantity("1,000 ft")    -> problem "number-thousands", at the comma, hint 1000 ft
//   read_quantity("86 psy")      -> problem "unknown-unit" over `psy`, hint psi
//
// A number is digits with a point and digits after it, or a fraction (3/4), or a whole number, a dash and a fraction
// (1-1/2): no commas, exponents or signs but a leading minus, at most 40 characters. A space stands before the unit
// except before a mark (' " % °). Two parts make one quantity where the second goes on with the first in a smaller
// unit: feet and inches, hours and minutes. The spelling of the locale is never used.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "quantity/dimension.hpp"
#include "quantity/interval.hpp"
#include "text/diagnostic.hpp"

namespace headgate::quantity {

struct Unit {
  std::string_view spelling;  // canonical: "psi", "gpm", "in"
  Dimension dimension;
  double factor = 1;        // SI value = written * factor + offset
  double offset = 0;        // only absolute temperatures have one
  std::string_view source;  // e.g. "NIST SP 811, B.8"
};

// Every canonical unit but the sizes and differences below. A unit is always met as the one object of this table.
const std::vector<Unit>& units();
// Any spelling (`'` and `feet` mean ft, `"` means in …); nullptr when unknown. `F` and `C` give absolute temperature,
// `in` and `mm` a length, `ppm` a plain number.
const Unit* unit(std::string_view spelling);
const Unit* difference_unit(std::string_view spelling);  // `F`, `C`, `K` as a temperature difference
const Unit* size_unit(std::string_view spelling);  // `in`, `"`: the inch ladder of nominal sizes; `mm`: the metric one
const Unit* unit_of(std::string_view spelling,
                    const Dimension& wanted);  // what the spelling means where `wanted` is asked
std::vector<std::string> unit_spellings();     // all of them, to find the nearest

// A value with its dimension, and how it was written (unit, if one) so it can be shown so.
struct Quantity {
  double si = 0;  // of a nominal size the number itself: inches or millimetres, as `unit` says
  Dimension dimension;
  const Unit* unit = nullptr;  // of a compound (5 ft 6 in) the first; of a bare number none
};

// What is wrong with a text and where in it; the caller turns it into a diagnostic at its own place.
struct Problem {
  std::string id;  // of the catalogue
  std::size_t offset = 0;
  std::size_t length = 0;
  std::vector<std::string> arguments;
};

template <typename T>
using Read = std::variant<T, Problem>;

// The problem as a diagnostic; `whole` is where the text that was read stands.
text::Diagnostic told(const Problem& problem, const text::Range& whole);

// `wanted` settles what the text leaves open: `3/4 in` and `3/4"` are a size where a size is asked, else a length;
// `20 mm` likewise; `10 F` a difference where one is asked. A bare number where a dimension is asked is a problem
// ("number-needs-unit"). A quantity of another dimension than wanted is a problem ("wrong-dimension"). `ppm` and `ppb`
// where a density is asked are mg/L and ug/L, as the water trade uses them.
Read<Quantity> read_quantity(std::string_view text, std::optional<Dimension> wanted = std::nullopt);

// A plain number: `5`, `-2.5`, `3/4`, `1-1/2`. The longest that begins `text`; its length in `used`.
struct Number {
  double value = 0;
  std::size_t used = 0;
};
Read<Number> read_number(std::string_view text);

// As few digits as tell it from any other number a person would write (at most 12, never finer than the grid), in the
// unit: "79.5 psi"; a length `1-1/2 in` is shown as 1.5 in, a nominal size in inches as a fraction, 1-1/2 in. Without a
// unit in the customary one; then lengths from 10 ft on are in ft, times in s, min or h, densities from 10 kg/m3 in
// lb/ft3.
std::string show(double si, const Dimension& dimension, const Unit* in_unit = nullptr);
// The same with at most so many significant digits, for a computed value nobody wrote.
std::string show_rounded(double si, const Dimension& dimension, int significant, const Unit* in_unit = nullptr);
std::string show_rounded(Interval value, const Dimension& dimension, int significant, const Unit* in_unit = nullptr);
// An interval: "84 psi to 88 psi", "at least 44 in", "more than 3 ft" (an open end), "unknown"; [x, x] as x.
std::string show(Interval value, const Dimension& dimension, const Unit* in_unit = nullptr);
// Two values with enough digits that they differ when they differ on the grid.
std::pair<std::string, std::string> show_apart(double a_si, double b_si, const Dimension& dimension,
                                               const Unit* in_unit);

// The unit a value of this dimension is shown in when nobody wrote one: psi, in, ft, gpm, ft/s, gal, F, … ; nullptr for
// a plain number.
const Unit* customary(const Dimension& dimension);

}  // namespace headgate::quantity
