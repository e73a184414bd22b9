#include "app/amount.hpp"

#include <cmath>
#include <cstdlib>

#include <fmt/format.h>

namespace headgate::app {

void add_amount(quantity::Interval number, const quantity::Unit* unit, nlohmann::ordered_json& to) {
  const double factor = unit == nullptr ? 1 : unit->factor;
  const double offset = unit == nullptr ? 0 : unit->offset;
  const auto shown = [&](double si) {
    if (!std::isfinite(si)) return nlohmann::ordered_json();
    // The last digits are rounding of the change of unit: twelve are what a text shows at most.
    return nlohmann::ordered_json(std::strtod(fmt::format("{:.12g}", (si - offset) / factor).c_str(), nullptr));
  };
  if (number.exact()) {
    to["value"] = shown(number.lo);
  } else {
    to["low"] = shown(number.lo);
    to["high"] = shown(number.hi);
  }
  to["unit"] = unit == nullptr ? "" : std::string(unit->spelling);
}

}  // namespace headgate::app
