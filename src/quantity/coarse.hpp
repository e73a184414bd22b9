// A value as far as it is known, no more: one number, one number give or take a margin, or one end.
//
//   read_coarse("86 psi +/- 2 psi")  -> 84 psi to 88 psi
//   read_coarse("at least 44 in")    -> 44 in and up;  `at most` likewise, `more than` and `less than` without the end
//   read_coarse("40 in to 46 in")    -> problem "coarse-range", hint 43 in +/- 3 in: a range may mean one value not
//                                       known better, or several values, and these are judged differently
//   read_coarse_date("before 1989")  -> every day up to 1988-12-31;  read_coarse_date("1989") -> the days of that year
//   read_coarse_date("about 1989")   -> problem "coarse-date-word"
#pragma once

#include <string_view>

#include "quantity/calendar.hpp"
#include "quantity/unit.hpp"

namespace headgate::quantity {

struct Coarse {
  Interval value;  // SI
  Dimension dimension;
  const Unit* unit = nullptr;  // as Quantity's: of the value, not of the margin
};

// `wanted` as for read_quantity. The margin may be in another unit of the dimension; a temperature's is a difference.
Read<Coarse> read_coarse(std::string_view text, std::optional<Dimension> wanted = std::nullopt);

// Days. A year, a month (2026-10) or a date, alone or after `before` or `after`.
Read<Interval> read_coarse_date(std::string_view text);

}  // namespace headgate::quantity
