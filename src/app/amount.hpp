// A number as JSON tells it: `value`, or `low` and `high` where it is known within bounds, and its unit. What has no end
// is null.
#pragma once

#include <nlohmann/json.hpp>

#include "quantity/interval.hpp"
#include "quantity/unit.hpp"

namespace headgate::app {

// `unit` nullptr: a plain number, `unit` is "".
void add_amount(quantity::Interval number, const quantity::Unit* unit, nlohmann::ordered_json& to);

}  // namespace headgate::app
