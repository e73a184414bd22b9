#include "app/amount.hpp"

#include <cmath>

namespace headgate::app {

void add_amount(quantity::Interval number, const quantity::Unit* unit, nlohmann::ordered_json& to) {
  const double factor = unit == nullptr ? 1 : unit->factor;
  const double offset = unit == nullptr ? 0 : unit->offset;
  const auto shown = [&](double si) {
    return std::isfinite(si) ? nlohmann::ordered_json((si - offset) / factor) : nlohmann::ordered_json();
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
