#include "world/world.hpp"

#include <algorithm>

namespace headgate::world {

using text::say;

std::vector<Asked> asked(const std::vector<std::string>& names) {
  std::vector<Asked> all;
  for (const auto& name : names) all.push_back({name, {}});
  return all;
}

document::Node* World::add_tree(text::FileId file) {
  auto tree = document::read(sources, file, options.caps, found);
  if (!tree) return nullptr;
  trees.push_back(std::move(*tree));
  return &trees.back();
}

namespace {

void no_such_place(World& world, const Asked& asked) {
  const auto known = world.shelf.names();
  std::string all;
  for (const auto& name : known) all += (all.empty() ? "" : ", ") + name;
  const auto near = text::nearest(asked.name, known);
  world.found.push_back(
      say("no-such-place", asked.range, {asked.name, near ? "did you mean " + *near + "?" : "known places: " + all}));
}

const rulebook::Place* load_place(World& world, const Asked& asked, const std::string& beside, std::string& path) {
  const auto lies_at = world.shelf.find(asked, beside);
  if (!lies_at) {
    no_such_place(world, asked);
    return nullptr;
  }
  path = *lies_at;
  const auto known = world.places.find(path);
  if (known != world.places.end()) return &known->second;
  const auto file = world.shelf.read(world, path);
  const auto* tree = file ? world.add_tree(*file) : nullptr;
  if (tree == nullptr) return nullptr;
  auto place = rulebook::read_place(*tree, world.found);
  if (!place) return nullptr;
  return &world.places.emplace(path, std::move(*place)).first->second;
}

std::string folder_of(const std::string& path) {
  const auto slash = path.rfind('/');
  return slash == std::string::npos ? "" : path.substr(0, slash);
}

// How many of the place's changes have begun by the day: its stretch of time.
std::size_t stretch(const std::vector<quantity::Day>& changes, double day) {
  return static_cast<std::size_t>(
      std::count_if(changes.begin(), changes.end(), [&](quantity::Day at) { return at <= day; }));
}

}  // namespace

Law* law_of(World& world, const std::vector<Asked>& names, const std::string& beside) {
  std::vector<std::string> key = {beside};
  for (const auto& asked : names) key.push_back(asked.name);
  const auto known = world.laws.find(key);
  if (known != world.laws.end()) return &known->second;
  Law law;
  for (const auto& asked : names) {
    std::string path;
    const auto* place = load_place(world, asked, beside, path);
    if (place == nullptr) return nullptr;
    law.places.push_back(place);
    if (place->also.empty()) continue;
    const auto* entry = place->node->entry("also");
    std::string second_path;
    const auto* second = load_place(world, {place->also, entry != nullptr ? entry->value.range : text::Range{}},
                                    folder_of(path), second_path);
    if (second == nullptr) return nullptr;
    if (std::find(law.places.begin(), law.places.end(), second) == law.places.end()) law.places.push_back(second);
  }
  if (!world.sound()) return nullptr;
  law.vocabulary = rulebook::read_vocabulary(world.library, law.places, world.found);
  if (!world.sound()) return nullptr;
  return &world.laws.emplace(key, std::move(law)).first->second;
}

std::vector<const rulebook::Rulebook*> books(World& world, Law& law, std::size_t place, quantity::Interval days) {
  const auto changes = rulebook::segments(*law.places[place]);
  const std::size_t first = stretch(changes, days.lo);
  const std::size_t last = stretch(changes, days.hi);
  std::vector<const rulebook::Rulebook*> result;
  for (std::size_t at = first; at <= last; ++at) {
    auto known = law.books.find({place, at});
    if (known == law.books.end()) {
      std::optional<quantity::Day> day;
      if (at > 0)
        day = changes[at - 1];
      else if (!changes.empty())
        day = changes[0] - 1;
      known = law.books
                  .emplace(std::make_pair(place, at),
                           rulebook::resolve(world.library, law.vocabulary, *law.places[place], day, world.found))
                  .first;
    }
    result.push_back(&known->second);
  }
  return result;
}

}  // namespace headgate::world
