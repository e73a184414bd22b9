// Units and constants the formulas share. The unit values are exact by definition (NIST SP 811).
#pragma once

namespace headgate::water {

inline constexpr double pi = 3.14159265358979323846;

inline constexpr double foot_m = 0.3048;
inline constexpr double inch_m = 0.0254;
inline constexpr double gallon_m3 = 231.0 * inch_m * inch_m * inch_m;
inline constexpr double gpm_m3_per_s = gallon_m3 / 60.0;
inline constexpr double pound_force_n = 0.45359237 * 9.80665;
inline constexpr double psi_pa = pound_force_n / (inch_m * inch_m);

inline constexpr double standard_atmosphere_pa = 101325.0;  // by definition; what a gauge reads zero at, at sea level
inline constexpr double freezing_k = 273.15;

}  // namespace headgate::water
