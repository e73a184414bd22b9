// Pressure lost to friction in a full round pipe, by the two methods the trade knows, and the velocity in it.
//
//   hazen_williams_pa(5 gpm, 140, 0.785 in, 100 ft)   -> 21.3 kPa = 3.09 psi     (3/4" L copper)
//   friction_factor(1e5, 0)                           -> 0.0180
//
// Arguments are SI and must lie in the ranges of functions.hpp; nothing here checks them:
//
//   evaluate(*find("hazen-williams"), {2e-3, 140, 0.01, 30}, …)   -> Refusal: 25 m/s is no flow in a house
//
// Which to use. Hazen-Williams is what plumbing codes and their tables are made of. It knows no temperature (it was
// fitted to cold water near 60 °F) and no viscous flow, so at a trickle it states less than the true, tiny, loss.
// Darcy-Weisbach knows both. For copper, PE and PVC in cold water they differ by 15 % at most from 3 to 8 ft/s, and by
// 20 % at 2 ft/s.
#pragma once

namespace headgate::water {

inline constexpr double highest_pipe_velocity_m_per_s = 10.0;  // beyond any plumbing; a bound of ours, no source
inline constexpr double last_laminar_reynolds = 2300.0;
inline constexpr double first_turbulent_reynolds = 4000.0;
inline constexpr double roughest_pipe = 0.05;  // roughness over diameter: the end of the Moody chart

// Friction loss in Pa by Hazen-Williams: 102,625.0019 · L · Q^1.85 / (C^1.85 · d^4.87), Q in m³/s, d and L in m.
// This is p[psi/ft] = 4.52 Q^1.85 / (C^1.85 d^4.87), Q in gpm, d in inches, restated in SI without rounding.
// The older 1.852 / 4.8704 form differs by less than 1 % at house sizes. Rises with flow and length, falls with C and
// diameter. Source: the form fire protection and plumbing tables use (NFPA 13; irrigation tables). Check: see
// above, 3.1 psi.
double hazen_williams_pa(double flow_m3_per_s, double c, double inside_diameter_m, double length_m);

// Mean velocity in m/s: flow over the area of the bore. Rises with flow, falls with diameter.
// Check: v[ft/s] = 0.4085 Q[gpm] / d²[in].
double velocity_m_per_s(double flow_m3_per_s, double inside_diameter_m);

// Darcy friction factor of turbulent flow: 1/√f = -2 log10(k/3.7 + 2.51/(Re √f)), solved to the last bits.
// Reynolds 4,000 to 1e8, relative roughness 0 to 0.05 (the Moody chart). Falls with Reynolds, rises with roughness.
// Source: C. F. Colebrook, J. Inst. Civ. Eng. 11 (1939). Check: (1e5, 1e-4) -> 0.018514.
double colebrook(double reynolds, double relative_roughness);

// Darcy friction factor of any flow: 64/Re while laminar (Re <= 2,300), Colebrook from 4,000 on. Between them no
// law holds; the factor runs straight from the one to the other, so that loss still rises with flow.
double friction_factor(double reynolds, double relative_roughness);

// Friction loss in Pa by Darcy-Weisbach, f · L/d · ρ v²/2, water's density and viscosity at the temperature (K).
// Rises with flow, roughness and length, falls with diameter; with temperature it moves either way.
// Check: 6-in pipe, e/d 0.0008, 200 ft, 6 ft/s -> 280 lbf/ft² (White, Fluid Mechanics, example 6.6).
double darcy_pa(double flow_m3_per_s, double roughness_m, double inside_diameter_m, double length_m,
                double temperature_k);

struct Losses {
  double least_pa;
  double greatest_pa;
};

// Bounds of darcy_pa while the temperature alone ranges over [coldest, hottest]. Reynolds rises throughout with
// warmth, so the friction factor's extremes lie at the ends or where laminar flow ends and turbulent flow begins;
// they are paired with the extremes of density, which is a little wider than the truth and never narrower.
Losses darcy_between_pa(double flow_m3_per_s, double roughness_m, double inside_diameter_m, double length_m,
                        double coldest_temperature_k, double hottest_temperature_k);

}  // namespace headgate::water
