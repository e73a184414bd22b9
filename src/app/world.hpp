// Everything one run works on, loaded from disk: the project's rules, the places in play, sites.
//
//   World world{options};
//   if (!load_rules(world)) …                             // draw world.found, exit 2
//   document::Node* tree = load_tree(world, "site.yaml");
//   Case a = prepare(world, *tree, {});                   // its place's law, the site, what it is judged on
//   std::vector<explain::Authority> said = judge(world, a);
//   a site whose place nobody wrote: a.law == nullptr, and world.found holds "no-such-place" at its `place:`
#pragma once

#include <deque>
#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "document/read.hpp"
#include "explain/explain.hpp"
#include "rulebook/load.hpp"
#include "site/site.hpp"

namespace headgate::app {

struct Options {
  std::filesystem::path rules;      // --rules; places are looked up in its sibling `jurisdictions`
  std::vector<std::string> places;  // --place: an id or a file; empty: the site's own
  std::string on;                   // --on: the day deadlines are judged on, instead of the site's checked-on
  std::string stage;                // --stage, instead of the site's
  std::vector<std::string> sets;    // --set PATH=VALUE, in order
  document::Caps caps;
};

// The places judged side by side, each followed by its `also`, and the vocabulary they share.
struct Law {
  std::vector<const rulebook::Place*> places;
  vocabulary::Vocabulary vocabulary;
  // Rulebooks resolved so far: by place and by the stretch of time between two changes (0: before the first).
  std::map<std::pair<std::size_t, std::size_t>, rulebook::Rulebook> books;
};

struct World {
  Options options;
  text::Sources sources;
  text::Diagnostics found;
  std::deque<document::Node> trees;
  rulebook::Library library;
  std::map<std::string, rulebook::Place> places;  // by the path they were read from
  std::map<std::vector<std::string>, Law> laws;   // by the folder looked in first and the names asked for

  explicit World(Options chosen) : options(std::move(chosen)) {}
  bool sound() const { return !text::has_errors(found); }
};

// Reads every file of rules/. False when it cannot be used.
bool load_rules(World& world);

// Reads one file's tree and keeps it; nullptr when it cannot be read at all.
document::Node* load_tree(World& world, const std::filesystem::path& path);

// A name as asked for, and where (of no file for one from the command line).
struct Asked {
  std::string name;
  text::Range range;
};
// The law of these places, looked for in `beside` first; nullptr with diagnostics when one cannot be used.
Law* law_of(World& world, const std::vector<Asked>& names, const std::filesystem::path& beside = {});

// The rulebooks that could apply on the days given: one for each stretch they touch. Unknown day: all.
std::vector<const rulebook::Rulebook*> books(World& world, Law& law, std::size_t place, quantity::Interval days);

struct Settings {
  std::vector<std::string> places;                     // instead of the site's own
  std::filesystem::path beside;                        // a folder to look for places in before jurisdictions/
  std::vector<std::pair<Asked, document::Node>> sets;  // address and value
  std::optional<std::string> stage, on;                // instead of the site's own
  evaluate::Options evaluate;
};

// One site ready to be judged.
struct Case {
  Law* law = nullptr;                // nullptr: it cannot be judged, see world.found
  std::deque<document::Node> trees;  // the site's tree with all sets; then, where a place gives facts, with those
  std::deque<site::Site> sites;      // sites[0] as described; then as each rulebook sees it
  struct Seen {
    const rulebook::Rulebook* book = nullptr;
    const site::Site* site = nullptr;
  };
  std::vector<std::vector<Seen>> books;  // of each place of the law, one a stretch of time
  // Where papers set limits for the job: the orders, and the rulebooks resolved with them.
  std::deque<std::vector<rulebook::Order>> orders;
  std::deque<rulebook::Rulebook> ordered;
  evaluate::Options evaluate;
};
Case prepare(World& world, const document::Node& site_tree, const Settings& settings);

// Settings from the command line: --place, --set, --on, --stage.
Settings settings(World& world);

// What a command about one site works on: the rules, the site of this file, and its law. nullopt, with diagnostics, when
// any of them cannot be used. `only_rule`: a rule's id; "" for all.
std::optional<Case> open_case(World& world, const std::string& site_file, const std::string& only_rule = "");

std::vector<explain::Authority> judge(const Case& prepared);

}  // namespace headgate::app
