// The language's example reads a coefficient off the material itself; the project keeps those in a table with its
// source. For the example the property is put back into the project's choices.
#pragma once

#include <string>

namespace headgate::test {

inline std::string with_roughness(std::string choices) {
  const auto after = [&](const std::string& place, const std::string& words) {
    const auto at = choices.find(place);
    if (at != std::string::npos) choices.insert(at + place.size(), words);
  };
  after("lead-bearing: yes-no", ", roughness: number");
  after("k-copper: {", "roughness: 140, ");
  after("l-copper: {", "roughness: 140, ");
  after("hdpe: {", "roughness: 150, ");
  return choices;
}

}  // namespace headgate::test
