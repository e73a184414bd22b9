// Trade units as SI numbers, so that a test reads as its source does: hazen_williams_pa(gpm(5), 140, inches(0.785),
// feet(100)).
#pragma once

#include "water/constants.hpp"

namespace headgate::water::trade {

inline double gpm(double value) { return value * gpm_m3_per_s; }
inline double gallons(double value) { return value * gallon_m3; }
inline double feet(double value) { return value * foot_m; }
inline double inches(double value) { return value * inch_m; }
inline double psi(double value) { return value * psi_pa; }
inline double feet_per_second(double value) { return value * foot_m; }
inline double fahrenheit(double value) { return (value + 459.67) / 1.8; }
inline double celsius(double value) { return value + freezing_k; }

inline double in_gpm(double si) { return si / gpm_m3_per_s; }
inline double in_gallons(double si) { return si / gallon_m3; }
inline double in_psi(double si) { return si / psi_pa; }
inline double in_feet_per_second(double si) { return si / foot_m; }
inline double in_pounds_force(double si) { return si / pound_force_n; }
inline double in_cubic_feet_per_pound(double kg_per_m3) { return 0.45359237 / kg_per_m3 / (foot_m * foot_m * foot_m); }
inline double in_feet_of_water(double si) { return in_psi(si) * 2.31; }  // the trade's figure, 62.34 lb/ft3

}  // namespace headgate::water::trade
