// The functions an expression may call, under one numbering: those of the language itself first, whose
// values come from tables of the rulebook, then the water functions in the order of their registry.
//
//   find_function("sizes-up")     -> 0; parameters size, steps (a number); gives a size
//   find_function("velocity")     -> an index for which water_function() gives water's own entry
//   find_function("velocty")      -> nothing
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "quantity/dimension.hpp"
#include "water/functions.hpp"

namespace headgate::expression {

// Indices of the language's own, as they stand in Node::index of a call.
inline constexpr std::uint32_t sizes_up =
    0;  // sizes-up(size, number): so many steps up the size's ladder, down when negative
inline constexpr std::uint32_t size_steps =
    1;  // size-steps(size, size): how many steps up from the first to the second
inline constexpr std::uint32_t first_water_function = 2;

struct Parameter {
  std::string_view name;
  quantity::Dimension dimension;
};

struct Function {
  std::string_view name;
  std::vector<Parameter> parameters;
  quantity::Dimension result;
};

const std::vector<Function>& functions();
std::optional<std::uint32_t> find_function(std::string_view name);

// The entry that computes it; nullptr for the language's own.
const water::Function* water_function(std::uint32_t index);

}  // namespace headgate::expression
