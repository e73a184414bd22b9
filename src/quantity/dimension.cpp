#include "quantity/dimension.hpp"

#include <algorithm>
#include <array>

namespace headgate::quantity {

namespace {

constexpr double psi_pa = 4.4482216152605 / (0.0254 * 0.0254);
constexpr double gpm_m3_per_s = 3.785411784e-3 / 60;

// A grid is far finer than anyone measures and coarse enough to swallow what a change of unit does to the last
// digits. Where the trade's units are decimal multiples of it in SI (inch, gallon, pound) it is a power of ten, so
// no written value lies halfway between two steps.
struct Named {
  std::string_view name;
  Dimension dimension;
  double grid;
};

constexpr std::array<Named, 16> named_dimensions{{
    {"number", dimensions::none, 1e-12},
    {"length", dimensions::length, 1e-12},                               // 1 pm
    {"area", dimensions::area, 1e-12},                                   // 1 square micrometre
    {"volume", dimensions::volume, 1e-12},                               // 1 nL
    {"mass", dimensions::mass, 1e-12},                                   // 1 ng
    {"time", dimensions::time, 1e-6},                                    // 1 us; a moment of the calendar keeps it too
    {"velocity", dimensions::velocity, 1e-9},                            // 1 nm/s
    {"flow", dimensions::flow, 1e-6 * gpm_m3_per_s},                     // 1e-6 gpm
    {"pressure", dimensions::pressure, 1e-6 * psi_pa},                   // 1e-6 psi
    {"force", dimensions::force, 1e-9},                                  // 1 nN
    {"energy", dimensions::energy, 1e-9},                                // 1 nJ
    {"density", dimensions::density, 1e-12},                             // 1 ng/m3
    {"temperature", dimensions::temperature, 1e-6},                      // 1e-6 K
    {"temperature-difference", dimensions::warming, 1e-6},               // 1e-6 K
    {"size", dimensions::size, 1e-6},                                    // a millionth of an inch or millimetre
    {"gradient", dimensions::gradient, 1e-6 * psi_pa / (100 * 0.3048)},  // 1e-6 psi per 100 ft
}};

constexpr double grid_of_others = 1e-12;  // SI

std::int8_t exponent(int sum) { return static_cast<std::int8_t>(std::clamp(sum, -127, 127)); }

Dimension combined(const Dimension& a, const Dimension& b, int sign) {
  return {exponent(a.length + sign * b.length),   exponent(a.mass + sign * b.mass), exponent(a.time + sign * b.time),
          exponent(a.warming + sign * b.warming), exponent(a.size + sign * b.size), false};
}

void append_power(std::string& text, std::string_view separator, std::string_view name, int power) {
  if (!text.empty()) text += separator;
  text += name;
  if (power > 1) text += "^" + std::to_string(power);
}

std::string formula(const Dimension& d) {
  struct Base {
    std::string_view name;
    int power;
  };
  const std::array<Base, 5> bases{{{"length", d.length},
                                   {"mass", d.mass},
                                   {"time", d.time},
                                   {"temperature-difference", d.warming},
                                   {"size", d.size}}};
  std::string text;
  for (const Base& base : bases) {
    if (base.power > 0) append_power(text, " * ", base.name, base.power);
  }
  if (text.empty()) text = "1";
  for (const Base& base : bases) {
    if (base.power < 0) append_power(text, " / ", base.name, -base.power);
  }
  return text;
}

}  // namespace

std::optional<Dimension> named(std::string_view name) {
  for (const Named& entry : named_dimensions) {
    if (entry.name == name) return entry.dimension;
  }
  return std::nullopt;
}

std::vector<std::string> dimension_names() {
  std::vector<std::string> names;
  for (const Named& entry : named_dimensions) names.emplace_back(entry.name);
  return names;
}

std::string name_of(const Dimension& dimension) {
  for (const Named& entry : named_dimensions) {
    if (entry.dimension == dimension) return std::string(entry.name);
  }
  return formula(dimension);
}

Dimension product(const Dimension& a, const Dimension& b) { return combined(a, b, 1); }
Dimension quotient(const Dimension& a, const Dimension& b) { return combined(a, b, -1); }

double grid(const Dimension& dimension) {
  for (const Named& entry : named_dimensions) {
    if (entry.dimension == dimension) return entry.grid;
  }
  return grid_of_others;
}

}  // namespace headgate::quantity
