#include "water/properties.hpp"

#include <algorithm>
#include <cmath>

#include "water/constants.hpp"

namespace headgate::water {

double density_kg_per_m3(double temperature_k) {
  const double t = temperature_k - freezing_k;
  const double mass =
      999.83952 + t * (16.945176 + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 - t * 280.54253e-12))));
  return mass / (1.0 + 16.879850e-3 * t);
}

double viscosity_pa_s(double temperature_k) {
  const double t = temperature_k / 300.0;
  return 1e-6 * (280.68 * std::pow(t, -1.9) + 511.45 * std::pow(t, -7.7) + 61.131 * std::pow(t, -19.6) +
                 0.45903 * std::pow(t, -40.0));
}

Densities densities_between(double coldest_temperature_k, double hottest_temperature_k) {
  const double at_coldest = density_kg_per_m3(coldest_temperature_k);
  const double at_hottest = density_kg_per_m3(hottest_temperature_k);
  Densities between{std::min(at_coldest, at_hottest), std::max(at_coldest, at_hottest)};
  if (coldest_temperature_k < densest_k && densest_k < hottest_temperature_k) {
    between.greatest_kg_per_m3 = density_kg_per_m3(densest_k);
  }
  return between;
}

}  // namespace headgate::water
