// Water hammer: how fast a pressure wave runs in a pipe, and the rise when the water is stopped at once.
//
//   wave_speed_m_per_s(0.785 in, 0.045 in, 17e6 psi)   -> 1,242 m/s = 4,075 ft/s     (3/4" L copper)
//   surge_pa(5 ft/s, 4860 ft/s)                        -> 2,258 kPa = 327 psi
//
// Arguments are SI and must lie in the ranges of functions.hpp; nothing here checks them:
//
//   evaluate(*find("wave-speed"), {0.02, 0.01, 1e9}, …)   -> Refusal: a wall of half the bore is no thin one
#pragma once

namespace headgate::water {

// The formula is a thin-walled one: a wall must be thinner than a quarter of the bore (DR 6 is refused, DR 7 is not).
inline constexpr double thickest_wall_of_bore = 0.25;

// Speed of a pressure wave in m/s in a thin-walled pipe full of water: a0 / √(1 + K d/(E t)), with a0 = 4,660 ft/s
// and K = 300,000 psi for water. Falls with diameter, rises with wall and with the wall's modulus (Pa), which for
// plastics is the short-term one. Source: the form of the PE pipe handbook and of waterworks practice (from memory).
// Check: 3/4" L copper 4,075 ft/s; 1" PE SDR 9 at 150,000 psi 1,203 ft/s.
double wave_speed_m_per_s(double inside_diameter_m, double wall_m, double modulus_pa);

// Pressure rise in Pa when flow changes at once, that is sooner than the wave returns: ρ a Δv, water at 1,000 kg/m³.
// Rises with both. A slower closure gives less. Source: Joukowsky. Check: 5 ft/s at 4,860 ft/s -> 328 psi in
// the published example, 327 by this formula.
double surge_pa(double velocity_change_m_per_s, double wave_speed_m_per_s);

}  // namespace headgate::water
