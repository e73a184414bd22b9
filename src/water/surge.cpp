#include "water/surge.hpp"

#include <cmath>

#include "water/constants.hpp"

namespace headgate::water {

double wave_speed_m_per_s(double inside_diameter_m, double wall_m, double modulus_pa) {
  constexpr double speed_in_rigid_pipe_m_per_s = 4660.0 * foot_m;
  constexpr double bulk_modulus_pa = 300000.0 * psi_pa;
  return speed_in_rigid_pipe_m_per_s / std::sqrt(1.0 + bulk_modulus_pa * inside_diameter_m / (modulus_pa * wall_m));
}

double surge_pa(double velocity_change_m_per_s, double wave_speed_m_per_s) {
  constexpr double water_kg_per_m3 = 1000.0;
  return water_kg_per_m3 * wave_speed_m_per_s * velocity_change_m_per_s;
}

}  // namespace headgate::water
