// A row of a table for keys that may be coarse: the hull of every row they touch. Past the rows a
// table is silent (Why::outside_table); nothing is extrapolated.
//
//   rows flow -> loss: 10 gpm 3.7 psi, 12 gpm 5.1 psi (linear)    look-up of 11 gpm -> 4.4 psi
//   look-up of 25 gpm where the last row is 20 gpm                  -> unknown, Why::outside_table
#pragma once

#include <optional>
#include <span>

#include "evaluate/values.hpp"

namespace headgate::evaluate {

struct Found {
  vocabulary::Value value;
  Why why = Why::known;
};

Found look_up(const rulebook::Table& table, std::span<const vocabulary::Value> keys, std::size_t column,
              const rulebook::Rulebook& book);

// Where a look-up left its table: at the first key for which no row is left that fits the keys before it (that between
// rows, linear or next up, comes last), and how far those rows go; nothing where the key has no order.
struct TableEnd {
  std::size_t key = 0;
  std::optional<quantity::Interval> rows;
};
std::optional<TableEnd> table_end(const rulebook::Table& table, std::span<const vocabulary::Value> keys,
                                  const rulebook::Rulebook& book);

// Steps along the ladder of nominal sizes (table `size-ladder`, one key a size): `steps` up from `size`.
Found size_up(const vocabulary::Value& size, const quantity::Interval& steps, const rulebook::Rulebook& book);
// How many steps up the ladder from one size to the other; negative downward.
Found size_steps(const vocabulary::Value& from, const vocabulary::Value& to, const rulebook::Rulebook& book);

// A function of the registry (expression/functions.hpp) for inputs that may be coarse.
Found call_function(std::size_t function, std::span<const vocabulary::Value> inputs, const rulebook::Rulebook& book);

}  // namespace headgate::evaluate
