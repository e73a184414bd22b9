// One site put under its law, ready to be judged.
//
//   Case a = prepare(world, site_tree, settings(world));
//   std::vector<explain::Authority> said = judge(a);
//   a site whose place nobody wrote: a.law == nullptr, and world.found holds "no-such-place" at its `place:`
#pragma once

#include <deque>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "explain/explain.hpp"
#include "site/site.hpp"
#include "world/world.hpp"

namespace headgate::world {

struct Settings {
  std::vector<std::string> places;                     // instead of the site's own
  std::string beside;                                  // a folder to look for places in first
  std::vector<std::pair<Asked, document::Node>> sets;  // address and value
  std::optional<std::string> stage, on;                // instead of the site's own
  evaluate::Options evaluate;
};

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

// Of the world's options: places, sets, day and stage.
Settings settings(World& world);

std::vector<explain::Authority> judge(const Case& prepared);

}  // namespace headgate::world
