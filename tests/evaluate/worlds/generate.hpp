// Random worlds, small and awkward: rulebooks and sites as people write them, by a seed.
//
//   Random random(7);
//   Written world = generated_book(random, {});      // vocabulary, tables, limits, rules, places
//   SiteModel model = generated_site(random, {});
//   written(model, random, Detail::some)              // some facts coarse, left out or unknown, some elements hidden
//   written(model, random, Detail::all)               // the same installation, everything known
#pragma once

#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include "evaluate/worlds/world.hpp"

namespace headgate::test {

// The same numbers on every platform: no distribution of the standard library.
class Random {
 public:
  explicit Random(std::uint64_t seed);
  std::uint64_t next();
  std::size_t below(std::size_t count) { return static_cast<std::size_t>(next() % count); }
  bool one_in(std::size_t count) { return below(count) == 0; }
  std::string pick(const std::vector<std::string>& from) { return from[below(from.size())]; }

 private:
  std::uint64_t state_;
};

// What is left out where knowing more must only settle: `recorded`, papers for a place in the line, two ladders of
// sizes, keys between the rows of a table.
struct Kept {
  bool only_settling = false;
};

// One fact: how it is when all is known, and what else may truly be said of it, less exact; "" leaves it out.
struct FactModel {
  std::string name;
  std::vector<std::string> spellings;
};

struct ElementModel;
struct ListModel {
  std::vector<ElementModel> items;
  bool left_out = false;  // where not all is said
  bool more = false;      // likewise: it ends in `more`, and some elements are hidden
};
struct ElementModel {
  std::string kind;
  std::vector<FactModel> facts;
  std::string list_name;  // of its list, "" for none
  ListModel list;
};
struct SiteModel {
  std::vector<FactModel> facts;
  std::vector<FactModel> pressure;
  ListModel line, tests;
  std::vector<ElementModel> branches;
  std::string papers;
  std::vector<FactModel> confirmed;
};

enum class Detail { some, all };

// The text of a site file below its format; `kept`, if given, is told which elements of `line` were written.
std::string written(const SiteModel& model, Random& random, Detail detail, std::vector<std::size_t>* kept = nullptr);

SiteModel generated_site(Random& random, const Kept& kept);
std::string generated_vocabulary(Random& random);  // derived values, some along the line
Written generated_book(Random& random, const Kept& kept);

}  // namespace headgate::test
