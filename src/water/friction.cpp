#include "water/friction.hpp"

#include <algorithm>
#include <cmath>

#include "water/constants.hpp"
#include "water/properties.hpp"

namespace headgate::water {
namespace {

double reynolds_number(double flow_m3_per_s, double inside_diameter_m, double temperature_k) {
  return velocity_m_per_s(flow_m3_per_s, inside_diameter_m) * inside_diameter_m * density_kg_per_m3(temperature_k) /
         viscosity_pa_s(temperature_k);
}

double loss_per_factor_and_density(double flow_m3_per_s, double inside_diameter_m, double length_m) {
  const double velocity = velocity_m_per_s(flow_m3_per_s, inside_diameter_m);
  return length_m / inside_diameter_m * velocity * velocity / 2.0;
}

}  // namespace

double hazen_williams_pa(double flow_m3_per_s, double c, double inside_diameter_m, double length_m) {
  const double flow_gpm = flow_m3_per_s / gpm_m3_per_s;
  const double diameter_in = inside_diameter_m / inch_m;
  const double loss_psi_per_ft = 4.52 * std::pow(flow_gpm / c, 1.85) / std::pow(diameter_in, 4.87);
  return loss_psi_per_ft * psi_pa * (length_m / foot_m);
}

double velocity_m_per_s(double flow_m3_per_s, double inside_diameter_m) {
  return flow_m3_per_s / (pi / 4.0 * inside_diameter_m * inside_diameter_m);
}

double colebrook(double reynolds, double relative_roughness) {
  const double rough = relative_roughness / 3.7;
  const double smooth = 2.51 / reynolds;
  const double two_over_ln10 = 2.0 / std::log(10.0);
  double x = 4.0;  // 1/√f; left of every root in range, whence Newton climbs to it without overshooting
  for (int step = 0; step < 10; ++step) {
    const double inside = rough + smooth * x;
    x -= (x + 2.0 * std::log10(inside)) / (1.0 + two_over_ln10 * smooth / inside);
  }
  return 1.0 / (x * x);
}

double friction_factor(double reynolds, double relative_roughness) {
  if (reynolds <= last_laminar_reynolds) return 64.0 / reynolds;
  if (reynolds >= first_turbulent_reynolds) return colebrook(reynolds, relative_roughness);
  const double laminar = 64.0 / last_laminar_reynolds;
  const double turbulent = colebrook(first_turbulent_reynolds, relative_roughness);
  const double way = (reynolds - last_laminar_reynolds) / (first_turbulent_reynolds - last_laminar_reynolds);
  return laminar + way * (turbulent - laminar);
}

double darcy_pa(double flow_m3_per_s, double roughness_m, double inside_diameter_m, double length_m,
                double temperature_k) {
  if (flow_m3_per_s == 0.0) return 0.0;
  const double reynolds = reynolds_number(flow_m3_per_s, inside_diameter_m, temperature_k);
  return friction_factor(reynolds, roughness_m / inside_diameter_m) * density_kg_per_m3(temperature_k) *
         loss_per_factor_and_density(flow_m3_per_s, inside_diameter_m, length_m);
}

Losses darcy_between_pa(double flow_m3_per_s, double roughness_m, double inside_diameter_m, double length_m,
                        double coldest_temperature_k, double hottest_temperature_k) {
  if (flow_m3_per_s == 0.0) return {0.0, 0.0};
  const double relative_roughness = roughness_m / inside_diameter_m;
  const double slowest = reynolds_number(flow_m3_per_s, inside_diameter_m, coldest_temperature_k);
  const double fastest = reynolds_number(flow_m3_per_s, inside_diameter_m, hottest_temperature_k);
  double least = friction_factor(slowest, relative_roughness);
  double greatest = friction_factor(fastest, relative_roughness);
  if (least > greatest) std::swap(least, greatest);
  for (const double turn : {last_laminar_reynolds, first_turbulent_reynolds}) {
    if (turn <= slowest || turn >= fastest) continue;
    least = std::min(least, friction_factor(turn, relative_roughness));
    greatest = std::max(greatest, friction_factor(turn, relative_roughness));
  }
  const Densities density = densities_between(coldest_temperature_k, hottest_temperature_k);
  const double scale = loss_per_factor_and_density(flow_m3_per_s, inside_diameter_m, length_m);
  return {least * density.least_kg_per_m3 * scale, greatest * density.greatest_kg_per_m3 * scale};
}

}  // namespace headgate::water
