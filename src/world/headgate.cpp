#include "headgate/headgate.hpp"

#include <algorithm>

#include "report/report.hpp"
#include "world/case.hpp"

namespace headgate {

namespace {

// "jurisdictions/fennick-ferry.yaml" -> "fennick-ferry"
std::string place_name(const std::string& file) {
  const auto slash = file.rfind('/');
  const std::string name = slash == std::string::npos ? file : file.substr(slash + 1);
  return name.substr(0, name.rfind(".yaml"));
}

world::Shelf shelf_of(std::vector<File> places) {
  const auto kept = std::make_shared<const std::vector<File>>(std::move(places));
  world::Shelf shelf;
  shelf.find = [kept](const world::Asked& asked, const std::string&) -> std::optional<std::string> {
    for (const auto& file : *kept) {
      if (place_name(file.name) == asked.name) return file.name;
    }
    return std::nullopt;
  };
  shelf.read = [kept](world::World& world, const std::string& name) -> std::optional<text::FileId> {
    const auto file = std::find_if(kept->begin(), kept->end(), [&](const File& each) { return each.name == name; });
    return world.sources.add(file->name, file->text);
  };
  shelf.names = [kept] {
    std::vector<std::string> names;
    for (const auto& file : *kept) names.push_back(place_name(file.name));
    return names;
  };
  return shelf;
}

// Hands over what was found. False when any of it is an error.
bool tell(world::World& world, Problems& problems) {
  text::settle(world.found, world.sources);
  const bool sound = world.sound();
  for (const auto& found : world.found) {
    problems.push_back({found.id, found.severity == text::Severity::error, world.sources.place(found.range),
                        found.sentence, found.hint, text::draw(found, world.sources)});
  }
  world.found.clear();
  return sound;
}

}  // namespace

struct Rules::Held {
  world::World world;
};

Rules::Rules(std::unique_ptr<Held> held) : held_(std::move(held)) {}
Rules::Rules(Rules&& other) noexcept = default;
Rules& Rules::operator=(Rules&& other) noexcept = default;
Rules::~Rules() = default;

std::optional<Rules> Rules::load(std::vector<File> rules, std::vector<File> places, Problems& problems) {
  auto held = std::make_unique<Held>(Held{world::World({}, shelf_of(std::move(places)))});
  world::World& world = held->world;
  if (rules.empty()) world.found.push_back(text::say("no-rules", {}, {"the files given"}));
  for (auto& file : rules) {
    const auto* tree = world.add_tree(world.sources.add(std::move(file.name), std::move(file.text)));
    if (tree != nullptr) rulebook::add(world.library, *tree, world.found);
  }
  if (!tell(world, problems)) return std::nullopt;
  return Rules(std::move(held));
}

std::optional<Report> Rules::judge(const File& site, const Asking& asking, Problems& problems) {
  world::World& world = held_->world;
  world.options.places = asking.places;
  world.options.stage = asking.stage;
  world.options.on = asking.checked_on;
  world.options.sets = asking.sets;
  std::optional<Report> report;
  const auto* tree = world.add_tree(world.sources.add(site.name, site.text));
  if (tree != nullptr && world.sound()) {
    const auto prepared = world::prepare(world, *tree, world::settings(world));
    if (prepared.law != nullptr && world.sound()) {
      report = explain::report(world.sources, prepared.sites.front(), world::judge(prepared), site.name,
                               asking.places.size() > 1);
    }
  }
  if (tell(world, problems)) return report;
  // A place with errors in it is looked at anew the next time, so that they are told again.
  world.laws.clear();
  world.places.clear();
  return std::nullopt;
}

std::string json(const Report& report) { return report::json(report); }

}  // namespace headgate
