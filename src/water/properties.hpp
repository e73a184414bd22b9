// Density and viscosity of liquid water at one atmosphere.
//
//   density_kg_per_m3(277.13)   -> 999.972, the densest water there is
//   density_kg_per_m3(333.15)   -> 983.199, at 140 °F
//
// Both hold for liquid water from freezing to boiling (coldest_k to hottest_k) and must not be asked outside:
//
//   evaluate(*find("water-density"), {500 K}, {500 K})   -> Refusal, input 0, above 373.15
#pragma once

namespace headgate::water {

inline constexpr double coldest_k = 273.15;
inline constexpr double hottest_k = 373.15;

// Where the density formula turns: below it warming makes water denser, above it lighter. The root of the formula's
// own derivative (3.98316883 °C), so the density there bounds every density.
inline constexpr double densest_k = 273.15 + 3.9831687628834787;

// Density in kg/m³ of air-free water at one atmosphere; temperature in K.
// Source: G. S. Kell, J. Chem. Eng. Data 20 (1975) 97, equation 16. Check: 4 °C -> 999.972 kg/m³.
double density_kg_per_m3(double temperature_k);

// Dynamic viscosity in Pa·s at 0.1 MPa; temperature in K. Always falls as the water warms.
// Source: IAPWS SR6-08(2011), the viscosity equation for liquid water at 0.1 MPa. Check: 25 °C -> 890.0 µPa·s.
double viscosity_pa_s(double temperature_k);

struct Densities {
  double least_kg_per_m3;
  double greatest_kg_per_m3;
};

// The densities water can have anywhere in [coldest, hottest], both in K: the ends, and the peak if it lies between.
Densities densities_between(double coldest_temperature_k, double hottest_temperature_k);

}  // namespace headgate::water
