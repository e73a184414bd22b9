// How hard a polyethylene pipe may be pulled into place.
//
//   pull_limit_n(1.375 in, 9, 3500 psi, 0.95, 0.40)   -> 3,470 N = 780 lbf     (1-1/4" CTS, a pull of up to 12 hours)
//
// Arguments are SI and must lie in the ranges of functions.hpp; nothing here checks them:
//
//   evaluate(*find("pull-limit"), {0.035, 4, …}, …)   -> Refusal: dimension-ratio below 6
#pragma once

namespace headgate::water {

// Allowable tensile load in N: safety · time · yield · π D² (1/DR - 1/DR²). Yield in Pa at the pipe's temperature;
// factors are plain numbers (0.40 and 1.00 to 1 h, 0.95 to 12 h, 0.91 to 24 h). Rises with all but the dimension ratio.
// Source: the form of ASTM F1804, which is written for polyethylene GAS pipe; borrowed, because water practice has no
// rule of its own. The factors are from memory: take the pipe maker's load where it states one, the lower of the two.
// Check: 2.375 in SDR 11 at 1,100 psi allowed -> 1,610 lbf (a published 12-hour pull table).
double pull_limit_n(double outside_diameter_m, double dimension_ratio, double yield_pa, double time_factor,
                    double safety_factor);

}  // namespace headgate::water
