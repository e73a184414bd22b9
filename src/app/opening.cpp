#include "app/opening.hpp"

#include <algorithm>
#include <atomic>
#include <future>
#include <thread>

#include "app/files.hpp"

namespace headgate::app {

namespace fs = std::filesystem;
using text::say;

namespace {

bool is_path(const std::string& name) {
  return name.find('/') != std::string::npos || fs::path(name).extension() == ".yaml";
}

// A file's own words name places, never paths: only the command line may say where a place lies.
std::optional<std::string> place_file(const fs::path& folder, const world::Asked& asked, const std::string& beside) {
  const std::string& name = asked.name;
  if (is_path(name)) return asked.range.known() ? std::nullopt : std::make_optional(name);
  std::error_code error;
  const fs::path first = fs::path(beside) / (name + ".yaml");
  if (!beside.empty() && fs::exists(first, error)) return first.string();
  for (const auto& path : yaml_files(folder)) {
    if (path.stem().string() == name) return path.string();
  }
  return std::nullopt;
}

}  // namespace

world::Shelf shelf_beside(const fs::path& rules) {
  const fs::path folder = rules.lexically_normal().parent_path() / "jurisdictions";
  world::Shelf shelf;
  shelf.find = [folder](const world::Asked& asked, const std::string& beside) {
    return place_file(folder, asked, beside);
  };
  shelf.read = [](World& world, const std::string& path) {
    return read_file(world.sources, path, world.options.caps.file_bytes, world.found);
  };
  shelf.names = [folder] {
    std::vector<std::string> names;
    for (const auto& path : yaml_files(folder)) names.push_back(path.stem().string());
    return names;
  };
  return shelf;
}

document::Node* load_tree(World& world, const fs::path& path) {
  const auto file = read_file(world.sources, path, world.options.caps.file_bytes, world.found);
  return file ? world.add_tree(*file) : nullptr;
}

namespace {

struct Reading {
  text::FileId file;
  std::optional<document::Node> tree;
  text::Diagnostics found;
};

// Reading YAML is most of a run, and no file waits for another: they are shared out over the processor's cores. What
// comes out, and in which order, does not depend on how many there are.
void read_side_by_side(const World& world, std::vector<Reading>& files) {
  std::atomic<std::size_t> next{0};
  const auto work = [&] {
    for (std::size_t at = next++; at < files.size(); at = next++) {
      Reading& one = files[at];
      one.tree = document::read(world.sources, one.file, world.options.caps, one.found);
    }
  };
  std::vector<std::future<void>> helpers;  // where no thread is to be had, done here
  const unsigned cores = std::min(8U, std::max(1U, std::thread::hardware_concurrency()));
  for (unsigned i = 1; i < cores; ++i) helpers.push_back(std::async(work));
  work();
  for (auto& helper : helpers) helper.get();
}

}  // namespace

bool load_rules(World& world, const fs::path& rules) {
  const auto paths = yaml_files(rules);
  if (paths.empty()) {
    world.found.push_back(say("no-rules", {}, {rules.string()}));
    return false;
  }
  std::vector<Reading> files;
  for (const auto& path : paths) {
    if (const auto file = read_file(world.sources, path, world.options.caps.file_bytes, world.found))
      files.push_back({*file, std::nullopt, {}});
  }
  read_side_by_side(world, files);
  for (auto& one : files) {
    world.found.insert(world.found.end(), one.found.begin(), one.found.end());
    if (!one.tree) continue;
    world.trees.push_back(std::move(*one.tree));
    rulebook::add(world.library, world.trees.back(), world.found);
  }
  return world.sound();
}

std::optional<Case> open_case(World& world, const std::string& site_file, const std::string& only_rule) {
  const auto* tree = load_tree(world, site_file);
  if (tree == nullptr) return std::nullopt;
  world::Settings chosen = world::settings(world);
  chosen.evaluate.only_rule = only_rule;
  Case prepared = world::prepare(world, *tree, chosen);
  if (prepared.law == nullptr || !world.sound()) return std::nullopt;
  return prepared;
}

quantity::Interval day_asked(World& world) {
  const std::string& on = world.options.on;
  if (on.empty()) return {};
  const auto day = quantity::read_date(on);
  if (const auto* read = std::get_if<quantity::Day>(&day)) return quantity::exactly(*read);
  world.found.push_back(say("no-such-day", world.sources.add_whole("--on", on), {on}));
  return {};
}

}  // namespace headgate::app
