// Functions of the registry over values that may be coarse.
#include "evaluate/look_up.hpp"
#include "expression/functions.hpp"

namespace headgate::evaluate {

Found call_function(std::size_t function, std::span<const vocabulary::Value> inputs, const rulebook::Rulebook& book) {
  if (function == expression::sizes_up) return size_up(inputs[0], inputs[1].number, book);
  if (function == expression::size_steps) return size_steps(inputs[0], inputs[1], book);
  const auto* water = expression::water_function(static_cast<std::uint32_t>(function));
  if (water == nullptr) return {vocabulary::unknown(), Why::no_value};
  std::array<double, water::most_inputs> lo{};
  std::array<double, water::most_inputs> hi{};
  for (std::size_t i = 0; i < inputs.size(); ++i) {
    lo[i] = inputs[i].number.lo;
    hi[i] = inputs[i].number.hi;
  }
  const auto result = water::evaluate(*water, std::span(lo).first(inputs.size()), std::span(hi).first(inputs.size()));
  if (result.index() != 0) return {vocabulary::unknown(), Why::out_of_range};
  const auto interval = std::get<0>(result);
  return {vocabulary::of_number({interval.lo, interval.hi}), Why::known};
}

}  // namespace headgate::evaluate
