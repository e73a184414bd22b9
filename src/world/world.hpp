// The rules, the places and the law in play, put together from texts that somebody else fetched.
//
//   World world{options, shelf};
//   rulebook::add(world.library, *world.add_tree(file), world.found);   // each file of rules
//   Law* law = law_of(world, {{"fennick-ferry", {}}});                  // with its second authority
//   books(world, *law, 0, days)                                         // the rulebooks that could apply
//   a place the shelf does not have: law_of is nullptr, and world.found holds "no-such-place"
#pragma once

#include <deque>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "document/read.hpp"
#include "rulebook/load.hpp"

namespace headgate::world {

struct Options {
  std::vector<std::string> places;  // judged by these instead of the site's own; side by side when more than one
  std::string on;                   // the day deadlines are judged on, instead of the site's checked-on
  std::string stage;                // instead of the site's
  std::vector<std::string> sets;    // PATH=VALUE, in order
  document::Caps caps;
};

// A name as asked for, and where (of no file for one from a command line).
struct Asked {
  std::string name;
  text::Range range;
};

// Names from a command line.
std::vector<Asked> asked(const std::vector<std::string>& names);

struct World;

// Where the files of places are kept.
struct Shelf {
  // The path of a place's file, looked for in the folder `beside` first; nothing when there is none.
  std::function<std::optional<std::string>(const Asked& asked, const std::string& beside)> find;
  // The text at a path that `find` gave, put into the world's sources; nothing, with a diagnostic, when it is not to be
  // read.
  std::function<std::optional<text::FileId>(World& world, const std::string& path)> read;
  std::function<std::vector<std::string>()> names;  // of all places, for "did you mean"
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
  Shelf shelf;
  text::Sources sources;
  text::Diagnostics found;
  std::deque<document::Node> trees;
  rulebook::Library library;
  std::map<std::string, rulebook::Place> places;  // by path
  std::map<std::vector<std::string>, Law> laws;   // by the folder looked in first and the names asked for

  World(Options chosen, Shelf places_kept) : options(std::move(chosen)), shelf(std::move(places_kept)) {}
  bool sound() const { return !text::has_errors(found); }

  // Reads a file's tree and keeps it; nullptr when it cannot be read at all.
  document::Node* add_tree(text::FileId file);
};

// The law of these places, looked for in `beside` first; nullptr with diagnostics when one cannot be used.
Law* law_of(World& world, const std::vector<Asked>& names, const std::string& beside = "");

// The rulebooks that could apply on the days given: one for each stretch they touch. Unknown day: all.
std::vector<const rulebook::Rulebook*> books(World& world, Law& law, std::size_t place, quantity::Interval days);

}  // namespace headgate::world
