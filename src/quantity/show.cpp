// How values are shown: the digits a person would write, in the unit they wrote.
#include <algorithm>
#include <cmath>
#include <cstdlib>

#include <fmt/format.h>

#include "quantity/unit.hpp"

namespace headgate::quantity {

namespace {

constexpr int most_digits = 12;
constexpr int most_decimals = 18;

// Digits after the point that the grid can tell apart in this unit.
int decimals(const Dimension& dimension, const Unit* in_unit) {
  const double step = grid(dimension) / (in_unit == nullptr ? 1 : in_unit->factor);
  int count = 0;
  // The unit's factor may put a step of 1e-6 a rounding error below it; that is still six decimals.
  for (double place = 1; place > step * 1.000001 && count < most_decimals; place /= 10) ++count;
  return count;
}

void cut_zeros(std::string& text) {
  if (text.find('.') == std::string::npos) return;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
}

// A value rounded to so many significant digits: its digits as a whole number, and the power of ten of the first one.
struct Rounded {
  std::string digits;
  int power = 0;

  // Digits and exponent without a point: strtod would expect the point of the locale.
  double value() const { return std::strtod(fmt::format("{}e{}", digits, power - last_power()).c_str(), nullptr); }
  int last_power() const { return static_cast<int>(digits.size()) - 1 - (digits[0] == '-' ? 1 : 0); }
};

Rounded rounded(double value, int significant) {
  std::string text = fmt::format("{:.{}e}", value, significant - 1);
  const std::size_t e = text.find('e');
  const int power = std::atoi(text.c_str() + e + 1);
  text.resize(e);
  text.erase(std::remove(text.begin(), text.end(), '.'), text.end());
  return {text, power};
}

std::string digits(double value, int significant, int after_point) {
  if (std::isnan(value) || std::isinf(value)) return value < 0 ? "-infinite" : "infinite";
  if (value == 0) return "0";
  const Rounded decimal = rounded(value, significant);
  if (decimal.power > 20) return fmt::format("{:.{}g}", value, significant);
  // 1234.5 to two digits is 1200.
  if (decimal.power >= significant) value = decimal.value();
  const int places = std::clamp(significant - 1 - decimal.power, 0, after_point);
  std::string text = fmt::format("{:.{}f}", value, places);
  cut_zeros(text);
  return text == "-0" ? "0" : text;
}

double in(const Unit* in_unit, double si) { return in_unit == nullptr ? si : (si - in_unit->offset) / in_unit->factor; }

std::string with_unit(std::string number, const Dimension& dimension, const Unit* in_unit) {
  if (in_unit != nullptr) return fmt::format("{} {}", number, in_unit->spelling);
  return dimension.plain() ? number : fmt::format("{} SI of {}", number, name_of(dimension));
}

// `3/4`, `1-1/2`, `2`: how nominal sizes of the inch ladder are called; "" where the number is no such fraction.
std::string size_fraction(double inches) {
  constexpr int parts = 16;
  const double steps = std::round(inches * parts);
  if (steps <= 0 || steps > 1000 * parts ||
      snap(inches, grid(dimensions::size)) != snap(steps / parts, grid(dimensions::size))) {
    return "";
  }
  const int whole = static_cast<int>(steps) / parts;
  int above = static_cast<int>(steps) % parts;
  int below = parts;
  while (above > 0 && above % 2 == 0) {
    above /= 2;
    below /= 2;
  }
  if (above == 0) return std::to_string(whole);
  return whole == 0 ? fmt::format("{}/{}", above, below) : fmt::format("{}-{}/{}", whole, above, below);
}

// Of dimensions whose everyday unit changes with the amount.
const Unit* everyday(const Dimension& dimension, double si) {
  const double amount = std::fabs(si);
  if (dimension == dimensions::length && amount >= 10 * 0.3048) return unit("ft");
  if (dimension == dimensions::time && amount >= 2 * 3600) return unit("h");
  if (dimension == dimensions::time && amount >= 2 * 60) return unit("min");
  if (dimension == dimensions::density && amount >= 10) return unit("lb/ft3");
  return customary(dimension);
}

double larger_end(Interval value) {
  const double lo = std::isinf(value.lo) ? 0 : value.lo;
  const double hi = std::isinf(value.hi) ? 0 : value.hi;
  return std::fabs(lo) > std::fabs(hi) ? lo : hi;
}

std::string shown(double si, const Dimension& dimension, const Unit* in_unit, int significant, int after_point) {
  const double value = in(in_unit, si);
  if (dimension == dimensions::size && in_unit != nullptr && in_unit->spelling == "in") {
    const std::string fraction = size_fraction(value);
    if (!fraction.empty()) return with_unit(fraction, dimension, in_unit);
  }
  return with_unit(digits(value, significant, after_point), dimension, in_unit);
}

// An end one grid step off a number a person would write is an open end at that number.
std::optional<double> open_at(double end, double side, const Dimension& dimension, const Unit* in_unit) {
  const double step = grid(dimension);
  const double beyond = end + side * step;
  const double offset = in_unit == nullptr ? 0 : in_unit->offset;
  const double factor = in_unit == nullptr ? 1 : in_unit->factor;
  const double round_number = rounded(in(in_unit, beyond), 9).value() * factor + offset;
  constexpr double fewest_steps = 1000;  // nearer to nothing than that nobody writes a number
  const bool written = round_number == 0 || std::fabs(round_number) >= fewest_steps * step;
  const bool open = written && snap(round_number, step) == snap(beyond, step) && snap(beyond, step) != snap(end, step);
  return open ? std::optional<double>(round_number) : std::nullopt;
}

}  // namespace

std::string show(double si, const Dimension& dimension, const Unit* in_unit) {
  const Unit* used = in_unit == nullptr ? everyday(dimension, si) : in_unit;
  return shown(si, dimension, used, most_digits, decimals(dimension, used));
}

std::string show_rounded(double si, const Dimension& dimension, int significant, const Unit* in_unit) {
  const Unit* used = in_unit == nullptr ? everyday(dimension, si) : in_unit;
  return shown(si, dimension, used, std::clamp(significant, 1, most_digits), decimals(dimension, used));
}

std::string show_rounded(Interval value, const Dimension& dimension, int significant, const Unit* in_unit) {
  const auto end = [&](double si) { return show_rounded(si, dimension, significant, in_unit); };
  if (value.everything()) return "unknown";
  if (value.exact()) return end(value.lo);
  if (std::isinf(value.lo)) return "at most " + end(value.hi);
  if (std::isinf(value.hi)) return "at least " + end(value.lo);
  return end(value.lo) + " to " + end(value.hi);
}

std::string show(Interval value, const Dimension& dimension, const Unit* in_unit) {
  if (value.everything()) return "unknown";
  const Unit* used = in_unit == nullptr ? everyday(dimension, larger_end(value)) : in_unit;
  if (value.exact()) return show(value.lo, dimension, used);
  if (std::isinf(value.hi)) {
    const auto open = open_at(value.lo, -1, dimension, used);
    return (open ? "more than " : "at least ") + show(open.value_or(value.lo), dimension, used);
  }
  if (std::isinf(value.lo)) {
    const auto open = open_at(value.hi, 1, dimension, used);
    return (open ? "less than " : "at most ") + show(open.value_or(value.hi), dimension, used);
  }
  const auto [lo, hi] = show_apart(value.lo, value.hi, dimension, used);
  return lo == hi ? lo : fmt::format("{} to {}", lo, hi);
}

std::pair<std::string, std::string> show_apart(double a_si, double b_si, const Dimension& dimension,
                                               const Unit* in_unit) {
  const double larger = std::fabs(a_si) > std::fabs(b_si) ? a_si : b_si;
  const Unit* used = in_unit == nullptr ? everyday(dimension, larger) : in_unit;
  const bool differ = snap(a_si, grid(dimension)) != snap(b_si, grid(dimension));
  int significant = most_digits;
  const auto both_shown = [&] {
    const int after_point = decimals(dimension, used) + (significant > most_digits ? 3 : 0);
    return std::make_pair(shown(a_si, dimension, used, significant, after_point),
                          shown(b_si, dimension, used, significant, after_point));
  };
  auto texts = both_shown();
  while (differ && texts.first == texts.second && significant < 18) {
    ++significant;
    texts = both_shown();
  }
  return texts;
}

const Unit* customary(const Dimension& dimension) {
  struct Customary {
    Dimension dimension;
    std::string_view spelling;
  };
  namespace d = dimensions;
  static constexpr Customary all[] = {
      {d::length, "in"},     {d::area, "in2"},      {d::volume, "gal"},   {d::mass, "lb"},   {d::time, "s"},
      {d::velocity, "ft/s"}, {d::flow, "gpm"},      {d::pressure, "psi"}, {d::force, "lbf"}, {d::energy, "ft-lbf"},
      {d::density, "mg/L"},  {d::temperature, "F"}, {d::warming, "F"},    {d::size, "in"},   {d::gradient, "psi/100ft"},
  };
  for (const Customary& entry : all) {
    if (entry.dimension == dimension) return unit_of(entry.spelling, dimension);
  }
  return nullptr;
}

}  // namespace headgate::quantity
