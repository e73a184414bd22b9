#include "app/world.hpp"

#include <algorithm>
#include <atomic>
#include <future>
#include <thread>

#include "app/files.hpp"
#include "evaluate/occasion.hpp"
#include "evaluate/papers.hpp"

namespace headgate::app {

namespace fs = std::filesystem;
using text::say;

document::Node* load_tree(World& world, const fs::path& path) {
  const auto file = read_file(world.sources, path, world.options.caps.file_bytes, world.found);
  if (!file) return nullptr;
  auto tree = document::read(world.sources, *file, world.options.caps, world.found);
  if (!tree) return nullptr;
  world.trees.push_back(std::move(*tree));
  return &world.trees.back();
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

bool load_rules(World& world) {
  const auto paths = yaml_files(world.options.rules);
  if (paths.empty()) {
    world.found.push_back(say("no-rules", {}, {world.options.rules.string()}));
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

namespace {

fs::path places_directory(const World& world) {
  return world.options.rules.lexically_normal().parent_path() / "jurisdictions";
}

bool is_path(const std::string& name) {
  return name.find('/') != std::string::npos || fs::path(name).extension() == ".yaml";
}

std::vector<std::string> known_places(const World& world) {
  std::vector<std::string> names;
  for (const auto& path : yaml_files(places_directory(world))) names.push_back(path.stem().string());
  return names;
}

// `beside`: the folder of the place that names it as its second authority, or the one a trials file names; looked in first.
// A file's own words name places, never paths: only the command line may say where a place lies.
std::optional<fs::path> place_file(const World& world, const Asked& asked, const fs::path& beside) {
  const std::string& name = asked.name;
  if (is_path(name)) return asked.range.known() ? std::nullopt : std::make_optional(fs::path(name));
  std::error_code error;
  if (!beside.empty() && fs::exists(beside / (name + ".yaml"), error)) return beside / (name + ".yaml");
  for (const auto& path : yaml_files(places_directory(world))) {
    if (path.stem().string() == name) return path;
  }
  return std::nullopt;
}

void no_such_place(World& world, const Asked& asked) {
  const auto known = known_places(world);
  std::string all;
  for (const auto& name : known) all += (all.empty() ? "" : ", ") + name;
  const auto near = text::nearest(asked.name, known);
  world.found.push_back(
      say("no-such-place", asked.range, {asked.name, near ? "did you mean " + *near + "?" : "known places: " + all}));
}

const rulebook::Place* load_place(World& world, const Asked& asked, const fs::path& beside, fs::path& read_from) {
  const auto path = place_file(world, asked, beside);
  if (!path) {
    no_such_place(world, asked);
    return nullptr;
  }
  read_from = *path;
  const auto known = world.places.find(path->string());
  if (known != world.places.end()) return &known->second;
  const auto* tree = load_tree(world, *path);
  if (tree == nullptr) return nullptr;
  auto place = rulebook::read_place(*tree, world.found);
  if (!place) return nullptr;
  return &world.places.emplace(path->string(), std::move(*place)).first->second;
}

// How many of the place's changes have begun by the day: its stretch of time.
std::size_t stretch(const std::vector<quantity::Day>& changes, double day) {
  return static_cast<std::size_t>(
      std::count_if(changes.begin(), changes.end(), [&](quantity::Day at) { return at <= day; }));
}

}  // namespace

Law* law_of(World& world, const std::vector<Asked>& names, const fs::path& beside) {
  std::vector<std::string> key = {beside.string()};
  for (const auto& asked : names) key.push_back(asked.name);
  const auto known = world.laws.find(key);
  if (known != world.laws.end()) return &known->second;
  Law law;
  for (const auto& asked : names) {
    fs::path path;
    const auto* place = load_place(world, asked, beside, path);
    if (place == nullptr) return nullptr;
    law.places.push_back(place);
    if (place->also.empty()) continue;
    const auto* entry = place->node->entry("also");
    fs::path second_path;
    const auto* second = load_place(world, {place->also, entry != nullptr ? entry->value.range : text::Range{}},
                                    path.parent_path(), second_path);
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

namespace {

std::vector<Asked> places_of(World& world, const document::Node& site_tree, const Settings& settings) {
  std::vector<Asked> asked;
  for (const auto& name : settings.places) asked.push_back({name, {}});
  if (!asked.empty()) return asked;
  const auto* own = site_tree.find("place");
  if (own != nullptr && own->is_scalar() && !own->scalar.empty() && own->scalar != "unknown")
    asked.push_back({own->scalar, own->range});
  else
    world.found.push_back(say("no-place", site_tree.range, {}));
  return asked;
}

quantity::Interval law_days(const site::Site& site, const vocabulary::Vocabulary& vocabulary) {
  const auto field = vocabulary.shapes[0].field("permit-applied-on");
  if (!field) return {};
  const auto& value = site.slot(0, *field).value;
  return value.presence == vocabulary::Presence::present ? value.number : quantity::Interval{};
}

// The slot of a record's fact by its address; nothing when the record or the fact is not there.
const site::Slot* slot_at(const site::Site& site, const vocabulary::Vocabulary& vocabulary, std::string_view address) {
  site::ElementId element = 0;
  while (true) {
    const std::size_t dot = address.find('.');
    const std::string_view name = address.substr(0, dot);
    const auto& shape = vocabulary.shapes[site.elements[element].shape];
    const auto field = shape.field(name);
    if (field) {
      const site::Slot& slot = site.slot(element, *field);
      if (dot == std::string_view::npos) return &slot;
      if (slot.value.presence != vocabulary::Presence::present) return nullptr;
      element = slot.value.id;
    } else if (element != 0 || name != shape.name || dot == std::string_view::npos) {
      return nullptr;
    }
    address.remove_prefix(dot + 1);
  }
}

// The site as this rulebook sees it: what the place knows stands in it unless somebody stated it.
const site::Site* with_given(World& world, Case& prepared, const Law& law, const rulebook::Rulebook& book) {
  const document::Node* described = &prepared.trees.front();
  document::Node* tree = nullptr;
  for (const auto& fact : book.given) {
    const auto* slot = slot_at(prepared.sites.front(), law.vocabulary, fact.address);
    if (slot != nullptr && slot->origin != site::Origin::left_out) continue;
    if (tree == nullptr) tree = &prepared.trees.emplace_back(*described);
    site::set(*tree, fact.address, fact.address_range, *fact.value, law.vocabulary, world.found);
  }
  if (tree == nullptr) return &prepared.sites.front();
  prepared.sites.push_back(site::load(*tree, law.vocabulary, world.found));
  for (auto& slot : prepared.sites.back().slots) {
    if (slot.range.known() && slot.range.file == book.given.front().address_range.file)
      slot.origin = site::Origin::given;
  }
  return &prepared.sites.back();
}

}  // namespace

namespace {

std::vector<std::string> stage_names(const vocabulary::Vocabulary& vocabulary) {
  std::vector<std::string> names;
  for (const auto& stage : vocabulary.stages) names.push_back(stage.name);
  return names;
}

text::Range own_text(World& world, const std::string& option, const std::string& text) {
  return {world.sources.add(option, text), 0, static_cast<std::uint32_t>(text.size())};
}

void override_occasion(World& world, const vocabulary::Vocabulary& vocabulary, const Settings& settings,
                       evaluate::Options& options) {
  if (settings.stage) {
    options.stage = vocabulary.stage(*settings.stage);
    const auto near = text::nearest(*settings.stage, stage_names(vocabulary));
    if (!options.stage)
      world.found.push_back(
          say("no-such-stage", own_text(world, "--stage", *settings.stage), {*settings.stage, near ? *near : "entry"}));
  }
  if (!settings.on) return;
  const auto day = quantity::read_date(*settings.on);
  if (const auto* read = std::get_if<quantity::Day>(&day))
    options.checked_on = *read;
  else
    world.found.push_back(say("no-such-day", own_text(world, "--on", *settings.on), {*settings.on}));
}

}  // namespace

namespace {

// The rulebook with what the site's orders set; itself where they set nothing. What the place's files have to be told
// was told when the rulebook without them was resolved.
const rulebook::Rulebook* with_orders(World& world, Case& prepared, const Law& law, std::size_t place,
                                      const rulebook::Rulebook& book, const site::Site& site) {
  const auto checked_on = evaluate::occasion(book, site, prepared.evaluate).checked_on;
  auto orders = evaluate::orders(site, law.vocabulary, checked_on);
  if (orders.empty()) return &book;
  const auto& kept = prepared.orders.emplace_back(std::move(orders));
  text::Diagnostics found;
  prepared.ordered.push_back(
      rulebook::resolve(world.library, law.vocabulary, *law.places[place], book.day, found, kept));
  for (auto& one : found) {
    const bool of_orders = std::any_of(kept.begin(), kept.end(), [&](const rulebook::Order& order) {
      return one.range.file == order.limit.range.file || one.range.file == order.value.range.file;
    });
    if (of_orders) world.found.push_back(std::move(one));
  }
  return &prepared.ordered.back();
}

void say_unknown_limits(World& world, const Case& prepared) {
  std::vector<const rulebook::Rulebook*> books;
  for (const auto& of_place : prepared.books) {
    for (const auto& seen : of_place) books.push_back(seen.book);
  }
  for (const auto& orders : prepared.orders) rulebook::say_unknown_limits(orders, books, world.found);
}

}  // namespace

Case prepare(World& world, const document::Node& site_tree, const Settings& settings) {
  Case prepared;
  prepared.evaluate = settings.evaluate;
  const auto asked = places_of(world, site_tree, settings);
  Law* law = asked.empty() ? nullptr : law_of(world, asked, settings.beside);
  if (law == nullptr) return prepared;
  override_occasion(world, law->vocabulary, settings, prepared.evaluate);
  document::Node& tree = prepared.trees.emplace_back(site_tree);
  for (const auto& [address, value] : settings.sets)
    site::set(tree, address.name, address.range, value, law->vocabulary, world.found);
  prepared.sites.push_back(site::load(tree, law->vocabulary, world.found));
  if (!world.sound()) return prepared;
  const auto days = law_days(prepared.sites.front(), law->vocabulary);
  for (std::size_t place = 0; place < law->places.size(); ++place) {
    auto& seen = prepared.books.emplace_back();
    for (const auto* book : books(world, *law, place, days)) {
      const auto* site = with_given(world, prepared, *law, *book);
      seen.push_back({with_orders(world, prepared, *law, place, *book, *site), site});
    }
  }
  say_unknown_limits(world, prepared);
  if (world.sound()) prepared.law = law;
  return prepared;
}

namespace {

void move_to(document::Node& node, text::FileId file) {
  node.range.file = file;
  for (auto& entry : node.entries) {
    entry.key_range.file = file;
    move_to(entry.value, file);
  }
  for (auto& item : node.items) move_to(item, file);
}

// A value of --set that begins as a list or map is read as a file is. It is read behind as many blanks as its address
// has characters, so that every place found is a place of the option's own text.
std::optional<document::Node> read_flow(World& world, text::FileId file, std::size_t from) {
  const std::string blanks(from, ' ');
  const auto behind = world.sources.add("--set", blanks + std::string(world.sources.text(file).substr(from)));
  const std::size_t before = world.found.size();
  auto tree = document::read(world.sources, behind, world.options.caps, world.found);
  for (std::size_t i = before; i < world.found.size(); ++i) {
    world.found[i].range.file = file;
    if (world.found[i].other.known()) world.found[i].other.file = file;
  }
  if (tree) move_to(*tree, file);
  return tree;
}

}  // namespace

Settings settings(World& world) {
  Settings result;
  result.places = world.options.places;
  if (!world.options.stage.empty()) result.stage = world.options.stage;
  if (!world.options.on.empty()) result.on = world.options.on;
  for (const auto& text : world.options.sets) {
    const std::size_t equals = text.find('=');
    const auto file = world.sources.add("--set", text);
    const auto size = static_cast<std::uint32_t>(text.size());
    if (equals == std::string::npos || equals == 0) {
      world.found.push_back(say("set-without-value", {file, 0, size}, {text}));
      continue;
    }
    const auto at = static_cast<std::uint32_t>(equals);
    document::Node value;
    value.scalar = text.substr(equals + 1);
    value.range = {file, at + 1, size};
    const std::size_t first = text.find_first_not_of(' ', equals + 1);
    if (first != std::string::npos && (text[first] == '[' || text[first] == '{')) {
      auto read = read_flow(world, file, equals + 1);
      if (!read) continue;
      value = std::move(*read);
    }
    result.sets.push_back({{text.substr(0, equals), {file, 0, at}}, value});
  }
  return result;
}

std::optional<Case> open_case(World& world, const std::string& site_file, const std::string& only_rule) {
  if (!load_rules(world)) return std::nullopt;
  const auto* tree = load_tree(world, site_file);
  if (tree == nullptr) return std::nullopt;
  Settings chosen = settings(world);
  chosen.evaluate.only_rule = only_rule;
  Case prepared = prepare(world, *tree, chosen);
  if (prepared.law == nullptr || !world.sound()) return std::nullopt;
  return prepared;
}

std::vector<explain::Authority> judge(const Case& prepared) {
  std::vector<explain::Authority> authorities;
  for (const auto& of_place : prepared.books) {
    explain::Authority authority;
    authority.book = of_place.front().book;
    for (const auto& seen : of_place)
      authority.judgements.push_back(evaluate::judge(*seen.book, *seen.site, prepared.evaluate));
    authorities.push_back(std::move(authority));
  }
  return authorities;
}

}  // namespace headgate::app
