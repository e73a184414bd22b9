// The water functions a rule may call, each with what a reader must know before trusting it: units, the range it
// holds in, which way it moves with each input, where it comes from and a published value it is checked against.
//
//   const Function* f = find("hazen-williams");           // flow, c, inside-diameter, length -> pressure
//   evaluate(*f, {{3.1545e-4, 140, 0.019939, 30.48}}, …)  -> Interval {21300.9, 21300.9}     5 gpm, 3/4" L, 100 ft
//   evaluate(*f, {{3.1545e-4, 20, 0.019939, 30.48}}, …)   -> Refusal {input 1, below, 20, lowest 60, highest 160}
//   find("manning")                                       -> nullptr
//
// Nothing is extrapolated: an input that is not wholly inside its range is refused, by number, with the range. What
// only rounding puts outside (32 °F is 273.15 K but for the last bit) counts as the end of the range.
// Zero flow and zero length are inside and lose nothing.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <string_view>
#include <variant>

namespace headgate::water {

// What kind of amount an input or a result is, and the SI unit it is held in.
enum class Measure : std::uint8_t {
  number,       // 1
  length,       // m
  volume,       // m³
  flow,         // m³/s
  pressure,     // Pa: gauge, or a modulus, a strength, a loss
  velocity,     // m/s
  temperature,  // K, absolute
  time,         // s
  density,      // kg/m³
  force,        // N
};
std::string_view si_unit(Measure measure);  // "m", "m3", "m3/s", …; "" for a number

// Which way a result moves when one input grows and the others stay. `neither` inputs have a bound() of their own.
enum class Direction : std::uint8_t { rises, falls, neither };

struct Input {
  std::string_view name;  // as in the call: "inside-diameter"
  Measure measure = Measure::number;
  Direction direction = Direction::rises;
  double lowest = 0.0;  // SI, both ends in range
  double highest = 0.0;
  bool whole = false;  // whole numbers only
};

inline constexpr std::size_t most_inputs = 5;

// Lowest and highest, SI.
struct Interval {
  double lo = 0.0;
  double hi = 0.0;
};

enum class Reason : std::uint8_t {
  below,      // reaches below `lowest`
  above,      // reaches above `highest`
  not_whole,  // a count of 2.5
  not_known,  // no number, or an interval whose ends are crossed
};

// Why a call has no answer. `value` is the end that lies outside. When `narrowed_by` names another input, that one
// sets the bound (a tank's highest pressure must be above its charge) and the bound itself is outside too.
struct Refusal {
  int input = 0;  // index into Function::inputs
  Reason reason = Reason::below;
  double value = 0.0;
  double lowest = 0.0;
  double highest = 0.0;
  int narrowed_by = -1;
};

using Evaluated = std::variant<Interval, Refusal>;

struct Function {
  std::string_view name;
  std::span<const Input> inputs;
  Measure result = Measure::number;

  // The value at one point, SI in the order of `inputs`. Only for points evaluate() would not refuse.
  double (*compute)(const double* inputs) = nullptr;

  // For functions with a `neither` input: an interval that holds every value in the box. Else null.
  Interval (*bound)(const double* lo, const double* hi) = nullptr;

  // Narrows the range of an input by the value of another; null where inputs do not constrain one another.
  // Returns false and fills the refusal when some point of the box lies outside.
  bool (*agrees)(const double* lo, const double* hi, Refusal& refusal) = nullptr;

  double rounding = 0.0;  // bound on the relative rounding error of compute(); evaluate() widens by it

  std::string_view meaning;  // one sentence
  std::string_view formula;  // for the worksheet
  std::string_view source;   // with how it was seen
  std::string_view check;    // a published value, in words
};

// All functions, in the order of the manual; nullptr for an unknown name.
std::span<const Function> functions();
const Function* find(std::string_view name);

// Every value the function takes while each input ranges over [lo[i], hi[i]], or why it has none.
// Both spans hold function.inputs.size() numbers, SI. Equal ends give compute()'s value, both ends of it; else the
// result holds every value of compute() in the box, and is the tightest such interval but for rounding, except along
// a `neither` input:
//   water-density    temperature: tight; the densest temperature is looked at when it lies inside
//   expanded-volume  all three: tight when cold and hot are independent
//   darcy            temperature: friction factor's extremes times density's, some 4 % wider than the truth at most
Evaluated evaluate(const Function& function, std::span<const double> lo, std::span<const double> hi);

}  // namespace headgate::water
