// `headgate calc EXPRESSION`: one sum of the language, with units.
#include <cmath>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "app/amount.hpp"
#include "app/commands.hpp"

namespace headgate::app {

namespace {

using vocabulary::Type;

document::Node scalar(World& world, const std::string& name, const std::string& text) {
  document::Node node;
  node.scalar = text;
  node.range = world.sources.add_whole(name, text);
  return node;
}

// The unit asked for, as the result's dimension reads it; nullptr, with a diagnostic, when it does not fit.
const quantity::Unit* result_unit(World& world, const expression::Tree& tree, const std::string& spelling) {
  const auto place = world.sources.add_whole("--in", spelling);
  const Type& type = tree.nodes[tree.root].type;
  const auto* unit = quantity::unit_of(spelling, type.dimension);
  if (unit == nullptr)
    world.found.push_back(text::say("calc-unit", place, {spelling}));
  else if (type.kind == Type::Kind::number && unit->dimension != type.dimension)
    world.found.push_back(text::say("calc-dimension", place, {spelling, quantity::name_of(type.dimension)}));
  return unit;
}

}  // namespace

int calc(World& world, const std::string& expression, const std::string& in_unit, const Output& output) {
  // Without a place: every table of the rules, no limit values.
  Law* law = law_of(world, world::asked(world.options.places));
  if (law == nullptr) return unusable(world);
  document::Node no_file;
  no_file.kind = document::Node::Kind::map;
  rulebook::Place nowhere;
  nowhere.node = &no_file;
  std::optional<rulebook::Rulebook> own;
  const rulebook::Rulebook* book = nullptr;
  if (law->places.empty()) {
    own = rulebook::resolve(world.library, law->vocabulary, nowhere, std::nullopt, world.found);
    book = &*own;
  } else {
    book = books(world, *law, 0, day_asked(world)).back();
  }
  if (!world.sound()) return unusable(world);
  const auto node = scalar(world, "calc", expression);
  const auto tree = rulebook::compile(*book, node, world.found);
  const quantity::Unit* unit = tree && !in_unit.empty() ? result_unit(world, *tree, in_unit) : nullptr;
  if (!tree || !world.sound()) return unusable(world);
  document::Node described;
  described.kind = document::Node::Kind::map;
  described.entries.push_back({"format", {}, site::scalar_node("site/1", {})});
  for (const auto& [address, value] : world::settings(world).sets)
    site::set(described, address.name, address.range, value, law->vocabulary, world.found);
  const auto site = site::load(described, law->vocabulary, world.found);
  if (!world.sound()) return unusable(world);
  const auto result = evaluate::evaluate(*tree, *book, site);
  const Type& type = tree->nodes[tree->root].type;
  const bool number = type.kind == Type::Kind::number;
  if (result.value.presence != vocabulary::Presence::present || (number && result.value.number.everything())) {
    const explain::Context context{&world.sources, book, &site};
    world.found.push_back(text::say("calc-unknown", node.range, {explain::reason(context, result)}));
    return unusable(world);
  }
  if (number && unit == nullptr)
    unit = result.value.unit != nullptr ? result.value.unit : quantity::customary(type.dimension);
  const std::string shown = number ? quantity::show(result.value.number, type.dimension, unit)
                                   : vocabulary::show(result.value, type, law->vocabulary);
  std::string out = shown + "\n";
  if (output.format == Format::json) {
    nlohmann::ordered_json amount;
    if (number)
      add_amount(result.value.number, unit, amount);
    else
      amount = {{"value", shown}, {"unit", ""}};
    out = amount.dump() + "\n";
  }
  return write(world, output, out) ? exit_fine : unusable(world);
}

}  // namespace headgate::app
