#include "water/expansion.hpp"

#include "water/constants.hpp"
#include "water/properties.hpp"

namespace headgate::water {

double expanded_volume_m3(double volume_m3, double cold_k, double hot_k) {
  const double hot_density = density_kg_per_m3(hot_k);
  return volume_m3 * (density_kg_per_m3(cold_k) - hot_density) / hot_density;
}

double tank_volume_m3(double expanded_m3, double precharge_pa, double highest_pa) {
  return expanded_m3 * (highest_pa + standard_atmosphere_pa) / (highest_pa - precharge_pa);
}

}  // namespace headgate::water
