// From the files of rules/ and a place's file to a resolved rulebook.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "rulebook/rulebook.hpp"

namespace headgate::rulebook {

// The trees of all project files, sorted by their first line. They must outlive everything made from them.
struct Library {
  std::vector<const document::Node*> vocabulary, sources, tables, rules;
};

// One file's tree by its `format:`; a file of another format is a diagnostic.
bool add(Library& library, const document::Node& tree, text::Diagnostics& found);

// A place file, read as far as its own keys go; its limits and rules are compiled by `resolve`.
//
//   country: us                             what `binds-in: us` is law here too, also under `adopts: nothing`
//   adopts: irc-2018                        what stands outside `changes` holds always: it is the first change
//   changes:
//     - title: Ordinance 26-14
//       from: 2026-07-01                    [from, until); left out: always
//       limits: {static-pressure-max: {ff-code 52-118: 70 psi}}    an existing limit; a new one is written whole
//       drop: {sleeve-two-sizes: ff-code 52-131}
//       change: {sleeve-ratio: {level: must, unless: none}}        whole keys; `none` takes one away
//   `form: 2026-07-01`  -> "rulebook-key" at the key, hint `write from`
struct Change {
  Layer layer;
  const document::Node* node = nullptr;  // limits, drop, change, add, tables, adopts, given
};
struct Place {
  std::string id, title, also, country;
  std::vector<std::string> adopts;
  const document::Node* node = nullptr;        // the whole file
  const document::Node* vocabulary = nullptr;  // what it adds to the vocabulary (key `vocabulary:`), or nullptr
  std::vector<Change> changes;  // the whole file first (no title, no dates), then those of `changes` in written order
};
std::optional<Place> read_place(const document::Node& tree, text::Diagnostics& found);

// The vocabulary of the project and of the places in play.
vocabulary::Vocabulary read_vocabulary(const Library& library, const std::vector<const Place*>& places,
                                       text::Diagnostics& found);

// A paper of the site that sets a limit for this job: the last layer, stronger than all a place says.
//
//   order: {limit: test-interval, value: 6 months, by: water-superintendent}
//   {limit: test-intervall, …}  -> "no-such-limit" at the word, with the nearest
//   {value: 6 psi, …}           -> what the limit's own reader says, at the value
// The texts must outlive the rulebook resolved with it.
struct Order {
  document::Node limit, value;
  Layer layer;
  std::string doubt;                               // why nobody can say whether it counts; "" when it does
  vocabulary::ElementId at = vocabulary::nowhere;  // of one element only
};

// What the place asks on the day. `day` nullopt: without any dated change that has a `from` (used only by tools that show the base);
// callers with an unknown date use `segments`.
// `orders`: of the site, strongest first. What they set that no limit here is called is passed over: it may be another
// authority's.
Rulebook resolve(const Library& library, const vocabulary::Vocabulary& vocabulary, const Place& place,
                 std::optional<quantity::Day> day, text::Diagnostics& found, const std::vector<Order>& orders = {});

// Orders that set what none of the rulebooks has.
void say_unknown_limits(const std::vector<Order>& orders, const std::vector<const Rulebook*>& books,
                        text::Diagnostics& found);

// The days on which the place's law changes, sorted: between two of them it is one rulebook. At most 64.
std::vector<quantity::Day> segments(const Place& place);

// An expression that may use whatever the rulebook holds: what `calc` reads.
std::optional<expression::Tree> compile(const Rulebook& book, const document::Node& written, text::Diagnostics& found);

}  // namespace headgate::rulebook
