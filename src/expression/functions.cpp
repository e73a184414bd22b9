#include "expression/functions.hpp"

namespace headgate::expression {

namespace {

quantity::Dimension dimension_of(water::Measure measure) {
  namespace d = quantity::dimensions;
  switch (measure) {
    case water::Measure::number: return d::none;
    case water::Measure::length: return d::length;
    case water::Measure::volume: return d::volume;
    case water::Measure::flow: return d::flow;
    case water::Measure::pressure: return d::pressure;
    case water::Measure::velocity: return d::velocity;
    case water::Measure::temperature: return d::temperature;
    case water::Measure::time: return d::time;
    case water::Measure::density: return d::density;
    case water::Measure::force: return d::force;
  }
  return d::none;
}

std::vector<Function> all_functions() {
  namespace d = quantity::dimensions;
  std::vector<Function> all = {{"sizes-up", {{"size", d::size}, {"steps", d::none}}, d::size},
                               {"size-steps", {{"from", d::size}, {"to", d::size}}, d::none}};
  for (const water::Function& entry : water::functions()) {
    Function function;
    function.name = entry.name;
    for (const water::Input& input : entry.inputs)
      function.parameters.push_back({input.name, dimension_of(input.measure)});
    function.result = dimension_of(entry.result);
    all.push_back(std::move(function));
  }
  return all;
}

}  // namespace

const std::vector<Function>& functions() {
  static const std::vector<Function> all = all_functions();
  return all;
}

std::optional<std::uint32_t> find_function(std::string_view name) {
  const auto& all = functions();
  for (std::uint32_t i = 0; i < all.size(); ++i) {
    if (all[i].name == name) return i;
  }
  return std::nullopt;
}

const water::Function* water_function(std::uint32_t index) {
  const auto registry = water::functions();
  if (index < first_water_function || index - first_water_function >= registry.size()) return nullptr;
  return &registry[index - first_water_function];
}

}  // namespace headgate::expression
