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
  std::string id, title, also;
  std::vector<std::string> adopts;
  const document::Node* node = nullptr;        // the whole file
  const document::Node* vocabulary = nullptr;  // what it adds to the vocabulary (key `vocabulary:`), or nullptr
  std::vector<Change> changes;  // the whole file first (no title, no dates), then those of `changes` in written order
};
std::optional<Place> read_place(const document::Node& tree, text::Diagnostics& found);

// The vocabulary of the project and of the places in play.
vocabulary::Vocabulary read_vocabulary(const Library& library, const std::vector<const Place*>& places,
                                       text::Diagnostics& found);

// What the place asks on the day. `day` nullopt: without any dated change that has a `from` (used only by tools that show the base);
// callers with an unknown date use `segments`.
Rulebook resolve(const Library& library, const vocabulary::Vocabulary& vocabulary, const Place& place,
                 std::optional<quantity::Day> day, text::Diagnostics& found);

// The days on which the place's law changes, sorted: between two of them it is one rulebook. At most 64.
std::vector<quantity::Day> segments(const Place& place);

}  // namespace headgate::rulebook
