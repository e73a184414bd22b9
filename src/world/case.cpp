#include "world/case.hpp"

#include <algorithm>
#include <set>

#include "evaluate/occasion.hpp"
#include "evaluate/papers.hpp"

namespace headgate::world {

using text::say;

namespace {

std::vector<Asked> places_of(World& world, const document::Node& site_tree, const Settings& settings) {
  std::vector<Asked> asked = world::asked(settings.places);
  if (!asked.empty()) return asked;
  for (const auto& [address, value] : settings.sets) {
    if (address.name == "place" || address.name == "site.place") asked = {{value.scalar, value.range}};
  }
  if (!asked.empty()) return asked;
  const auto* format = site_tree.find("format");
  if (format != nullptr && format->is_scalar() && format->scalar != "site/1") {
    world.found.push_back(say("site-format", format->range, {format->scalar}));
    return asked;
  }
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

std::vector<std::string> stage_names(const vocabulary::Vocabulary& vocabulary) {
  std::vector<std::string> names;
  for (const auto& stage : vocabulary.stages) names.push_back(stage.name);
  return names;
}

void override_occasion(World& world, const vocabulary::Vocabulary& vocabulary, const Settings& settings,
                       evaluate::Options& options) {
  if (settings.stage) {
    options.stage = vocabulary.stage(*settings.stage);
    const auto near = text::nearest(*settings.stage, stage_names(vocabulary));
    if (!options.stage)
      world.found.push_back(say("no-such-stage", world.sources.add_whole("--stage", *settings.stage),
                                {*settings.stage, near ? *near : "entry"}));
  }
  if (!settings.on) return;
  const auto day = quantity::read_date(*settings.on);
  if (const auto* read = std::get_if<quantity::Day>(&day))
    options.checked_on = *read;
  else
    world.found.push_back(say("no-such-day", world.sources.add_whole("--on", *settings.on), {*settings.on}));
}

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

void note_confirmations(const rulebook::Clause& clause, std::set<std::string>& names) {
  if (clause.tree) {
    for (const auto& node : clause.tree->nodes) {
      if (node.op == expression::Op::confirmed) names.insert(node.name);
    }
  }
  for (const auto& kid : clause.kids) note_confirmations(kid, names);
}

// An answer nobody asks for is most likely misspelt.
void say_unasked_answers(World& world, const Case& prepared) {
  const auto& answers = prepared.sites.front().confirmed;
  if (answers.empty()) return;
  std::set<std::string> names;
  for (const auto& of_place : prepared.books) {
    for (const auto& seen : of_place) {
      for (const auto& rule : seen.book->rules) {
        if (rule.when) note_confirmations(*rule.when, names);
        if (rule.require) note_confirmations(*rule.require, names);
        for (const auto& exception : rule.unless) note_confirmations(exception, names);
      }
    }
  }
  const std::vector<std::string> known(names.begin(), names.end());
  for (const auto& [name, slot] : answers) {
    if (names.count(name) == 0)
      world.found.push_back(say("unasked-answer", slot.range, {name, text::nearest(name, known).value_or("")}));
  }
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
      evaluate::say_too_many(*book, *site, world.found);
    }
  }
  say_unknown_limits(world, prepared);
  say_unasked_answers(world, prepared);
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
    const auto place = world.sources.add_whole("--set", text);
    auto setting = site::read_setting(text, place, world.found);
    if (!setting) continue;
    const std::size_t first = setting->value.scalar.find_first_not_of(' ');
    if (first != std::string::npos && (setting->value.scalar[first] == '[' || setting->value.scalar[first] == '{')) {
      auto read = read_flow(world, place.file, setting->value.range.begin);
      if (!read) continue;
      setting->value = std::move(*read);
    }
    result.sets.emplace_back(Asked{setting->address, setting->address_range}, std::move(setting->value));
  }
  return result;
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

}  // namespace headgate::world
