#include "water/functions.hpp"

#include <algorithm>

#include "water/constants.hpp"
#include "water/demand.hpp"
#include "water/expansion.hpp"
#include "water/friction.hpp"
#include "water/properties.hpp"
#include "water/pull.hpp"
#include "water/surge.hpp"

namespace headgate::water {
namespace {

// Ranges: what house services, their mains and the published checks need, and no more; ours unless a source is named.
constexpr double smallest_bore_m = 0.004;
constexpr double largest_bore_m = 0.300;
constexpr double largest_flow_m3_per_s = 0.1;
constexpr double longest_run_m = 3000.0;

constexpr double rounding = 1e-13;
constexpr double same_pressure_pa = 0.01;  // one pressure in two spellings: 80 psi and 551.5806 kPa

constexpr Input flow{"flow", Measure::flow, Direction::rises, 0.0, largest_flow_m3_per_s};
constexpr Input bore{"inside-diameter", Measure::length, Direction::falls, smallest_bore_m, largest_bore_m};
constexpr Input run{"length", Measure::length, Direction::rises, 0.0, longest_run_m};

constexpr std::array hazen_williams_inputs{
    flow,
    Input{"c", Measure::number, Direction::falls, 60.0, 160.0},
    bore,
    run,
};
constexpr std::array velocity_inputs{flow, bore};
constexpr std::array darcy_inputs{
    flow, Input{"roughness", Measure::length, Direction::rises, 0.0, roughest_pipe* largest_bore_m}, bore,
    run,  Input{"temperature", Measure::temperature, Direction::neither, coldest_k, hottest_k},
};
constexpr std::array colebrook_inputs{
    Input{"reynolds", Measure::number, Direction::falls, first_turbulent_reynolds, 1e8},
    Input{"relative-roughness", Measure::number, Direction::rises, 0.0, roughest_pipe},
};
constexpr std::array water_density_inputs{
    Input{"temperature", Measure::temperature, Direction::neither, coldest_k, hottest_k},
};
constexpr std::array expanded_volume_inputs{
    Input{"volume", Measure::volume, Direction::neither, 0.0, 10.0},
    Input{"cold", Measure::temperature, Direction::neither, coldest_k, hottest_k},
    Input{"hot", Measure::temperature, Direction::neither, coldest_k, hottest_k},
};
constexpr std::array tank_volume_inputs{
    Input{"expanded", Measure::volume, Direction::rises, 0.0, 1.0},
    Input{"precharge", Measure::pressure, Direction::rises, 0.0, 2e6},
    Input{"highest", Measure::pressure, Direction::falls, 0.0, 2e6},
};
constexpr std::array wave_speed_inputs{
    bore,
    Input{"wall", Measure::length, Direction::rises, 0.0002, 0.05},
    Input{"modulus", Measure::pressure, Direction::rises, 1e8, 2.5e11},
};
constexpr std::array surge_inputs{
    Input{"velocity-change", Measure::velocity, Direction::rises, 0.0, highest_pipe_velocity_m_per_s},
    Input{"wave-speed", Measure::velocity, Direction::rises, 0.0, 1600.0},
};
constexpr std::array pull_limit_inputs{
    Input{"outside-diameter", Measure::length, Direction::rises, 0.010, 0.350},
    Input{"dimension-ratio", Measure::number, Direction::falls, 6.0, 41.0},
    Input{"yield", Measure::pressure, Direction::rises, 5e6, 4e7},
    Input{"time-factor", Measure::number, Direction::rises, 0.5, 1.0},
    Input{"safety-factor", Measure::number, Direction::rises, 0.1, 1.0},
};
constexpr std::array binomial_demand_inputs{
    Input{"count", Measure::number, Direction::rises, 0.0, 10000.0, true},
    Input{"probability", Measure::number, Direction::rises, 0.0, 1.0},
    Input{"percentile", Measure::number, Direction::rises, 0.5, 0.9999},
};

// Refuses input `narrowed` when `value` does not stay under `limit`, which input `by` sets.
bool stays_below(int narrowed, double value, double lowest, double limit, int by, Refusal& refusal) {
  if (value < limit) return true;
  refusal = {narrowed, Reason::above, value, lowest, limit, by};
  return false;
}

// Both friction functions have the flow first and the bore third.
bool slow_enough(const double* lo, const double* hi, Refusal& refusal) {
  const double fastest_m3_per_s = highest_pipe_velocity_m_per_s * pi / 4.0 * lo[2] * lo[2];
  return stays_below(0, hi[0], 0.0, fastest_m3_per_s, 2, refusal);
}

bool darcy_agrees(const double* lo, const double* hi, Refusal& refusal) {
  return slow_enough(lo, hi, refusal) && stays_below(1, hi[1], 0.0, roughest_pipe * lo[2], 2, refusal);
}

bool wave_speed_agrees(const double* lo, const double* hi, Refusal& refusal) {
  return stays_below(1, hi[1], wave_speed_inputs[1].lowest, thickest_wall_of_bore * lo[0], 0, refusal);
}

bool tank_volume_agrees(const double* lo, const double* hi, Refusal& refusal) {
  if (lo[2] > hi[1] + same_pressure_pa) return true;
  refusal = {2, Reason::below, lo[2], hi[1], tank_volume_inputs[2].highest, 1};
  return false;
}

Interval darcy_bound(const double* lo, const double* hi) {
  return {darcy_between_pa(lo[0], lo[1], hi[2], lo[3], lo[4], hi[4]).least_pa,
          darcy_between_pa(hi[0], hi[1], lo[2], hi[3], lo[4], hi[4]).greatest_pa};
}

Interval water_density_bound(const double* lo, const double* hi) {
  const Densities density = densities_between(lo[0], hi[0]);
  return {density.least_kg_per_m3, density.greatest_kg_per_m3};
}

// The gain is a small difference of two densities: their own rounding is what counts, not the difference's.
Interval expanded_volume_bound(const double* lo, const double* hi) {
  const Densities cold = densities_between(lo[1], hi[1]);
  const Densities hot = densities_between(lo[2], hi[2]);
  const double least = cold.least_kg_per_m3 / hot.greatest_kg_per_m3 - 1.0 - rounding;
  const double greatest = cold.greatest_kg_per_m3 / hot.least_kg_per_m3 - 1.0 + rounding;
  return {least * (least < 0.0 ? hi[0] : lo[0]), greatest * (greatest < 0.0 ? lo[0] : hi[0])};
}

constexpr std::array all{
    Function{
        "hazen-williams",
        hazen_williams_inputs,
        Measure::pressure,
        [](const double* in) { return hazen_williams_pa(in[0], in[1], in[2], in[3]); },
        nullptr,
        slow_enough,
        rounding,
        "Pressure lost to friction in a full pipe of cold water, by Hazen-Williams.",
        "p[psi/ft] = 4.52 Q^1.85 / (C^1.85 d^4.87), Q in gpm, d in inches",
        "the form of NFPA 13 and of published friction tables; seen in published tables, other edition",
        "5 gpm in 100 ft of 3/4 in Type L copper (0.785 in) at C 140 lose 3.09 psi in a published copper table",
    },
    Function{
        "velocity",
        velocity_inputs,
        Measure::velocity,
        [](const double* in) { return velocity_m_per_s(in[0], in[1]); },
        nullptr,
        nullptr,
        rounding,
        "Mean velocity in a full round pipe.",
        "v = Q / (pi d^2 / 4)",
        "geometry",
        "14 gpm in 1 in Type L copper (1.025 in) run at 5.6 ft/s (Illinois Plumbing Code, Table N: adopted text)",
    },
    Function{
        "darcy",
        darcy_inputs,
        Measure::pressure,
        [](const double* in) { return darcy_pa(in[0], in[1], in[2], in[3], in[4]); },
        darcy_bound,
        darcy_agrees,
        rounding,
        "Pressure lost to friction in a full pipe, by Darcy-Weisbach, for the water's temperature.",
        "p = f L/d rho v^2/2, f = 64/Re up to Re 2,300, by Colebrook from 4,000, a straight line between",
        "Darcy-Weisbach with Colebrook 1939; density by Kell 1975; viscosity by IAPWS SR6-08(2011)",
        "6 in pipe, relative roughness 0.0008, 200 ft at 6 ft/s lose about 280 lbf/ft2 (White, example 6.6)",
    },
    Function{
        "colebrook",
        colebrook_inputs,
        Measure::number,
        [](const double* in) { return colebrook(in[0], in[1]); },
        nullptr,
        nullptr,
        rounding,
        "Darcy friction factor of turbulent flow in a round pipe.",
        "1/sqrt(f) = -2 log10(k/3.7 + 2.51 / (Re sqrt(f)))",
        "Colebrook 1939; the equation as printed by Clamond 2009; range of the Moody chart",
        "Reynolds 128,000 and roughness 0.0013 give 0.0227; the chart of White, example 6.7, reads 0.0225",
    },
    Function{
        "water-density",
        water_density_inputs,
        Measure::density,
        [](const double* in) { return density_kg_per_m3(in[0]); },
        water_density_bound,
        nullptr,
        rounding,
        "Density of water at atmospheric pressure.",
        "Kell's ratio of polynomials in Celsius",
        "Kell, J. Chem. Eng. Data 20 (1975) 97, equation 16",
        "40 F and 50 F: 0.01602 ft3/lb, both (plumbing engineers' handbook table)",
    },
    Function{
        "expanded-volume",
        expanded_volume_inputs,
        Measure::volume,
        [](const double* in) { return expanded_volume_m3(in[0], in[1], in[2]); },
        expanded_volume_bound,
        nullptr,
        rounding,
        "What a volume of water gains when warmed, the vessel's own growth left out.",
        "V (rho-cold / rho-hot - 1)",
        "ratio of specific volumes, densities by Kell 1975",
        "40 gal from 90 F to 140 F gain almost half a gallon (published example; 0.48)",
    },
    Function{
        "tank-volume",
        tank_volume_inputs,
        Measure::volume,
        [](const double* in) { return tank_volume_m3(in[0], in[1], in[2]); },
        nullptr,
        tank_volume_agrees,
        rounding,
        "Size of a diaphragm expansion tank charged to the line's pressure.",
        "Vt = Ve / (1 - P1/P2), absolute pressures (gauge plus one standard atmosphere)",
        "Boyle's law, the form of plumbing engineers' handbooks",
        "0.852 gal between 60 and 150 psi need 1.56 gal (recomputed from the published form)",
    },
    Function{
        "wave-speed",
        wave_speed_inputs,
        Measure::velocity,
        [](const double* in) { return wave_speed_m_per_s(in[0], in[1], in[2]); },
        nullptr,
        wave_speed_agrees,
        rounding,
        "Speed of a pressure wave in a thin-walled pipe full of water.",
        "a = 4,660 ft/s / sqrt(1 + K d / (E t)), K = 300,000 psi",
        "PE pipe handbook and waterworks practice, from memory",
        "3/4 in Type L copper, E 17,000,000 psi: 4,075 ft/s (recomputed from the published form)",
    },
    Function{
        "surge",
        surge_inputs,
        Measure::pressure,
        [](const double* in) { return surge_pa(in[0], in[1]); },
        nullptr,
        nullptr,
        rounding,
        "Pressure rise when water is stopped at once.",
        "p = rho a dv, rho = 1000 kg/m3",
        "Joukowsky's equation",
        "5 ft/s stopped at a wave speed of 4,860 ft/s: 328 psi (published example)",
    },
    Function{
        "pull-limit",
        pull_limit_inputs,
        Measure::force,
        [](const double* in) { return pull_limit_n(in[0], in[1], in[2], in[3], in[4]); },
        nullptr,
        nullptr,
        rounding,
        "Allowable tensile load on a polyethylene pipe pulled into place.",
        "F = safety time yield pi D^2 (1/DR - 1/DR^2)",
        "the form of ASTM F1804, borrowed from gas pipe practice; seen in its scope pages, factors from memory",
        "2.375 in SDR 11 at 1,100 psi: 1,610 lbf (published 12-hour pull table)",
    },
    Function{
        "binomial-demand",
        binomial_demand_inputs,
        Measure::number,
        [](const double* in) { return binomial_demand(in[0], in[1], in[2]); },
        nullptr,
        nullptr,
        0.0,
        "How many of a group of like fixtures to expect in use at once.",
        "the least m whose binomial distribution function reaches the percentile",
        "Hunter, BMS 65 (1940), from memory",
        "100 flush valves in use 3 % of the time, 99 %: 8",
    },
};

}  // namespace

std::span<const Function> functions() { return all; }

const Function* find(std::string_view name) {
  const auto found = std::find_if(all.begin(), all.end(), [name](const Function& f) { return f.name == name; });
  return found == all.end() ? nullptr : &*found;
}

std::string_view si_unit(Measure measure) {
  switch (measure) {
    case Measure::number: return "";
    case Measure::length: return "m";
    case Measure::volume: return "m3";
    case Measure::flow: return "m3/s";
    case Measure::pressure: return "Pa";
    case Measure::velocity: return "m/s";
    case Measure::temperature: return "K";
    case Measure::time: return "s";
    case Measure::density: return "kg/m3";
    case Measure::force: return "N";
  }
  return "";
}

}  // namespace headgate::water
