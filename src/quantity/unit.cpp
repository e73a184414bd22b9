// The table of units. Factors follow from a few exact definitions: the inch is 25.4 mm, the gallon 231 cubic inches,
// the avoirdupois pound 0.45359237 kg, standard gravity 9.80665 m/s2.
#include "quantity/unit.hpp"

#include <array>

namespace headgate::quantity {

namespace {

constexpr double inch = 0.0254;
constexpr double foot = 12 * inch;
constexpr double gallon = 3.785411784e-3;
constexpr double pound = 0.45359237;
constexpr double pound_force = 4.4482216152605;  // pound * 9.80665
constexpr double psi = pound_force / (inch * inch);
constexpr double fahrenheit = 5.0 / 9.0;
constexpr double litre = 1e-3;
constexpr double minute = 60;
constexpr double hour = 3600;
constexpr double day = 86400;

constexpr std::string_view si = "SI";
constexpr std::string_view sp811 = "NIST SP 811, appendix B, from memory";

const std::array<Unit, 3> differences{{{"F", dimensions::warming, fahrenheit, 0, sp811},
                                       {"C", dimensions::warming, 1, 0, si},
                                       {"K", dimensions::warming, 1, 0, si}}};

// The number itself, not metres: 20 mm on the metric ladder is no 0.787 in on the inch one.
const std::array<Unit, 2> sizes{{{"in", dimensions::size, 1, 0, "inch ladder of nominal sizes"},
                                 {"mm", dimensions::size, 1, 0, "metric ladder of nominal sizes"}}};

// One litre of water is near enough one kilogram that the trade says ppm for mg/L.
const std::array<Unit, 2> parts_in_water{{{"ppm", dimensions::density, 1e-3, 0, "trade usage, mg/L"},
                                          {"ppb", dimensions::density, 1e-6, 0, "trade usage, ug/L"}}};

struct Spelling {
  std::string_view written;
  std::string_view canonical;
};

constexpr std::array<Spelling, 66> spellings{{
    {"\"", "in"},         {"″", "in"},
    {"”", "in"},          {"inch", "in"},
    {"inches", "in"},     {"'", "ft"},
    {"′", "ft"},          {"’", "ft"},
    {"foot", "ft"},       {"feet", "ft"},
    {"yard", "yd"},       {"yards", "yd"},
    {"mile", "mi"},       {"miles", "mi"},
    {"mils", "mil"},      {"µm", "um"},
    {"μm", "um"},         {"in²", "in2"},
    {"ft²", "ft2"},       {"mm²", "mm2"},
    {"cm²", "cm2"},       {"m²", "m2"},
    {"in³", "in3"},       {"ft³", "ft3"},
    {"m³", "m3"},         {"gallon", "gal"},
    {"gallons", "gal"},   {"liter", "L"},
    {"liters", "L"},      {"litre", "L"},
    {"litres", "L"},      {"gal/min", "gpm"},
    {"gal/h", "gph"},     {"gal/day", "gpd"},
    {"m³/h", "m3/h"},     {"m³/s", "m3/s"},
    {"fps", "ft/s"},      {"sec", "s"},
    {"second", "s"},      {"seconds", "s"},
    {"minute", "min"},    {"minutes", "min"},
    {"hr", "h"},          {"hour", "h"},
    {"hours", "h"},       {"°F", "F"},
    {"°C", "C"},          {"lbs", "lb"},
    {"pound", "lb"},      {"pounds", "lb"},
    {"psig", "psi"},      {"kg/m³", "kg/m3"},
    {"lb/ft³", "lb/ft3"}, {"µg/L", "ug/L"},
    {"μg/L", "ug/L"},     {"ft-lb", "ft-lbf"},
    {"percent", "%"},     {"ug/m³", "ug/m3"},
    {"µg/m³", "ug/m3"},   {"μg/m³", "ug/m3"},
    {"µg/m3", "ug/m3"},   {"μg/m3", "ug/m3"},
    {"m3/hr", "m3/h"},    {"ft³/min", "ft3/min"},
    {"ft³/s", "ft3/s"},   {"psi/100-ft", "psi/100ft"},
}};

std::string_view canonical(std::string_view spelling) {
  for (const Spelling& entry : spellings) {
    if (entry.written == spelling) return entry.canonical;
  }
  return spelling;
}

template <typename Table>
const Unit* find(const Table& table, std::string_view canonical_spelling) {
  for (const Unit& entry : table) {
    if (entry.spelling == canonical_spelling) return &entry;
  }
  return nullptr;
}

}  // namespace

const std::vector<Unit>& units() {
  namespace d = dimensions;
  static const std::vector<Unit> all{
      {"%", d::none, 1e-2, 0, "SI brochure"},
      {"ppm", d::none, 1e-6, 0, "parts per million"},
      {"ppb", d::none, 1e-9, 0, "parts per billion"},
      {"in", d::length, inch, 0, sp811},
      {"ft", d::length, foot, 0, sp811},
      {"yd", d::length, 3 * foot, 0, sp811},
      {"mi", d::length, 5280 * foot, 0, sp811},
      {"mil", d::length, inch / 1000, 0, sp811},
      {"um", d::length, 1e-6, 0, si},
      {"mm", d::length, 1e-3, 0, si},
      {"cm", d::length, 1e-2, 0, si},
      {"m", d::length, 1, 0, si},
      {"km", d::length, 1e3, 0, si},
      {"in2", d::area, inch * inch, 0, sp811},
      {"ft2", d::area, foot * foot, 0, sp811},
      {"mm2", d::area, 1e-6, 0, si},
      {"cm2", d::area, 1e-4, 0, si},
      {"m2", d::area, 1, 0, si},
      {"gal", d::volume, gallon, 0, sp811},
      {"L", d::volume, litre, 0, si},
      {"mL", d::volume, 1e-6, 0, si},
      {"m3", d::volume, 1, 0, si},
      {"in3", d::volume, inch * inch * inch, 0, sp811},
      {"ft3", d::volume, foot * foot * foot, 0, sp811},
      {"gpm", d::flow, gallon / minute, 0, sp811},
      {"gph", d::flow, gallon / hour, 0, sp811},
      {"gpd", d::flow, gallon / day, 0, sp811},
      {"L/s", d::flow, litre, 0, si},
      {"L/min", d::flow, litre / minute, 0, si},
      {"L/h", d::flow, litre / hour, 0, si},
      {"mL/min", d::flow, 1e-6 / minute, 0, si},
      {"m3/h", d::flow, 1 / hour, 0, si},
      {"m3/s", d::flow, 1, 0, si},
      {"ft3/min", d::flow, foot * foot * foot / minute, 0, sp811},
      {"ft3/s", d::flow, foot * foot * foot, 0, sp811},
      {"ft/s", d::velocity, foot, 0, sp811},
      {"ft/min", d::velocity, foot / minute, 0, sp811},
      {"m/s", d::velocity, 1, 0, si},
      {"ms", d::time, 1e-3, 0, si},
      {"s", d::time, 1, 0, si},
      {"min", d::time, minute, 0, si},
      {"h", d::time, hour, 0, si},
      {"F", d::temperature, fahrenheit, 459.67 * 5 / 9, sp811},
      {"C", d::temperature, 1, 273.15, si},
      {"K", d::temperature, 1, 0, si},
      {"lb", d::mass, pound, 0, sp811},
      {"kg", d::mass, 1, 0, si},
      {"g", d::mass, 1e-3, 0, si},
      {"mg", d::mass, 1e-6, 0, si},
      {"lbf", d::force, pound_force, 0, sp811},
      {"N", d::force, 1, 0, si},
      {"kN", d::force, 1e3, 0, si},
      {"psi", d::pressure, psi, 0, sp811},
      {"Pa", d::pressure, 1, 0, si},
      {"kPa", d::pressure, 1e3, 0, si},
      {"MPa", d::pressure, 1e6, 0, si},
      {"bar", d::pressure, 1e5, 0, sp811},
      {"J", d::energy, 1, 0, si},
      {"ft-lbf", d::energy, foot * pound_force, 0, sp811},
      {"kg/m3", d::density, 1, 0, si},
      {"lb/ft3", d::density, pound / (foot * foot * foot), 0, sp811},
      {"mg/L", d::density, 1e-3, 0, si},
      {"ug/L", d::density, 1e-6, 0, si},
      {"ug/m3", d::density, 1e-9, 0, si},
      {"Pa/m", d::gradient, 1, 0, si},
      {"kPa/m", d::gradient, 1e3, 0, si},
      {"psi/ft", d::gradient, psi / foot, 0, sp811},
      {"psi/100ft", d::gradient, psi / (100 * foot), 0, sp811},
  };
  return all;
}

const Unit* unit(std::string_view spelling) { return find(units(), canonical(spelling)); }
const Unit* difference_unit(std::string_view spelling) { return find(differences, canonical(spelling)); }
const Unit* size_unit(std::string_view spelling) { return find(sizes, canonical(spelling)); }

const Unit* unit_of(std::string_view spelling, const Dimension& wanted) {
  const Unit* special = nullptr;
  if (wanted == dimensions::size) special = size_unit(spelling);
  if (wanted == dimensions::warming) special = difference_unit(spelling);
  if (wanted == dimensions::density) special = find(parts_in_water, spelling);
  return special != nullptr ? special : unit(spelling);
}

std::vector<std::string> unit_spellings() {
  std::vector<std::string> all;
  for (const Unit& entry : units()) all.emplace_back(entry.spelling);
  for (const Spelling& entry : spellings) all.emplace_back(entry.written);
  return all;
}

text::Diagnostic told(const Problem& problem, const text::Range& whole) {
  return text::say(problem.id, text::part(whole, problem.offset, problem.length), problem.arguments);
}

}  // namespace headgate::quantity
