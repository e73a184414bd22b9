#include "vocabulary/value.hpp"

namespace headgate::vocabulary {

Value unknown() { return {}; }

Value nothing() {
  Value value;
  value.presence = Presence::none;
  return value;
}

Value of_truth(quantity::Truth truth) {
  Value value;
  value.presence = Presence::present;
  value.truth = truth;
  return value;
}

Value of_number(quantity::Interval si, const quantity::Unit* unit) {
  Value value;
  value.presence = Presence::present;
  value.number = si;
  value.unit = unit;
  return value;
}

Value of_members(std::uint64_t members) {
  Value value;
  value.presence = Presence::present;
  value.members = members;
  return value;
}

}  // namespace headgate::vocabulary
