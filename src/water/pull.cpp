#include "water/pull.hpp"

#include "water/constants.hpp"

namespace headgate::water {

double pull_limit_n(double outside_diameter_m, double dimension_ratio, double yield_pa, double time_factor,
                    double safety_factor) {
  const double wall_area_m2 =
      pi * outside_diameter_m * outside_diameter_m * (dimension_ratio - 1.0) / (dimension_ratio * dimension_ratio);
  return safety_factor * time_factor * yield_pa * wall_area_m2;
}

}  // namespace headgate::water
