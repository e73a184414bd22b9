// Water that is heated in a closed system, and the tank that takes up what it gains.
//
//   expanded_volume_m3(40 gal, 90 °F, 140 °F)       -> 0.48 gal
//   tank_volume_m3(0.852 gal, 60 psi, 150 psi)      -> 1.56 gal
//
// Arguments are SI and must lie in the ranges of functions.hpp; nothing here checks them. A tank charged to the
// relief pressure can take nothing, so
//
//   evaluate(*find("tank-volume"), {0.003, 1034e3, 1034e3}, …)   -> Refusal: highest must be above precharge
//
// Neither counts the growth of the heater's own metal, which takes some of the gain (about 3 · alpha · ΔT of the
// volume, alpha 11.7e-6/K for steel); leaving it out gives the larger tank.
#pragma once

namespace headgate::water {

// What a volume of water in m³ gains when warmed from cold to hot (K) at constant pressure: V (ρcold/ρhot - 1).
// Negative where it shrinks. Source: ratio of specific volumes, densities by Kell (1975).
// Check: 1,000 gal from 40 to 140 °F gain 16.9 gal (the plumbing engineers' handbook method).
double expanded_volume_m3(double volume_m3, double cold_k, double hot_k);

// Size in m³ of a diaphragm tank that takes the expanded volume between its charge and the highest pressure
// allowed, both gauge, in Pa: Ve / (1 - P1/P2) with absolute pressures. The charge must equal the line's pressure.
// Rises with expanded volume and charge, falls with the highest pressure. Absolute means plus one standard
// atmosphere: at 5,000 ft the air is 2.5 psi less and the true tank some 1.5 % smaller.
// Source: Boyle's law at constant temperature. Check: 0.852 gal, 60 to 150 psi -> 1.56 gal.
double tank_volume_m3(double expanded_m3, double precharge_pa, double highest_pa);

}  // namespace headgate::water
