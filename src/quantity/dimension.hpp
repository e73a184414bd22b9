// What kind of amount a number is: pressure, length, flow, … A dimension is its exponents over a few
// base amounts; nominal size and temperature difference are bases of their own (3/4" is no length,
// 10 F of warming is no temperature).
//
//   quotient(dimensions::flow, dimensions::area) == dimensions::velocity
//   named("pressure") -> pressure;  named("presure") -> nothing
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace headgate::quantity {

struct Dimension {
  std::int8_t length = 0;
  std::int8_t mass = 0;
  std::int8_t time = 0;
  std::int8_t warming = 0;  // temperature difference, K
  std::int8_t size = 0;     // nominal pipe size
  bool absolute = false;    // an absolute temperature (then warming == 1): may be compared and subtracted, not added

  bool plain() const { return *this == Dimension{}; }
  friend bool operator==(const Dimension& a, const Dimension& b) {
    return a.length == b.length && a.mass == b.mass && a.time == b.time && a.warming == b.warming && a.size == b.size &&
           a.absolute == b.absolute;
  }
  friend bool operator!=(const Dimension& a, const Dimension& b) { return !(a == b); }
};

namespace dimensions {                                        // SI unit in which each is held
inline constexpr Dimension none{};                            // 1 (percent and ppm are 1 too)
inline constexpr Dimension length{1, 0, 0, 0, 0, false};      // m
inline constexpr Dimension area{2, 0, 0, 0, 0, false};        // m2
inline constexpr Dimension volume{3, 0, 0, 0, 0, false};      // m3
inline constexpr Dimension mass{0, 1, 0, 0, 0, false};        // kg
inline constexpr Dimension time{0, 0, 1, 0, 0, false};        // s
inline constexpr Dimension velocity{1, 0, -1, 0, 0, false};   // m/s
inline constexpr Dimension flow{3, 0, -1, 0, 0, false};       // m3/s
inline constexpr Dimension pressure{-1, 1, -2, 0, 0, false};  // Pa, gauge
inline constexpr Dimension force{1, 1, -2, 0, 0, false};      // N
inline constexpr Dimension energy{2, 1, -2, 0, 0, false};     // J
inline constexpr Dimension density{-3, 1, 0, 0, 0, false};    // kg/m3, concentration (mg/L) too
inline constexpr Dimension temperature{0, 0, 0, 1, 0, true};  // K
inline constexpr Dimension warming{0, 0, 0, 1, 0, false};     // K, a temperature difference
inline constexpr Dimension size{0, 0, 0,
                                0, 1, false};  // nominal; inches on the inch ladder, millimetres on the metric one
inline constexpr Dimension gradient{-2, 1, -2, 0, 0, false};  // Pa/m, friction per length
}  // namespace dimensions

std::optional<Dimension> named(
    std::string_view name);  // the names used in vocabulary files: "pressure", "length", "temperature-difference", …
std::vector<std::string> dimension_names();
std::string name_of(const Dimension& dimension);            // "pressure"; "length^2 / time" style when it has no name
Dimension product(const Dimension& a, const Dimension& b);  // of an absolute temperature as of a difference
Dimension quotient(const Dimension& a, const Dimension& b);

// The published grid: values nearer than this are the same value. Every comparison snaps both sides
// to it and compares integers, so a value equals itself in every spelling and order is total. 1 pm for lengths, 1e-6
// psi, 1e-6 gpm, 1e-6 K, 1e-6 s; the table in dimension.cpp has them all, and what has no name has 1e-12 in SI. Past
// 2^50 steps (a kilometre of length) it coarsens with the value, see `snap`.
double grid(const Dimension& dimension);

}  // namespace headgate::quantity
