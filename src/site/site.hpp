// One described installation as facts in flat slots: every record and every element of a list is an
// Element with one slot for each field of its shape, present, none or unknown, each with its place.
//
//   line:
//     - meter: {size: 3/4"}
//     - wall: {sleeve: none}
//     - more
//
//   element line[1] meter, slot size = 3/4 in at site.yaml:2:20; element line[2] wall, slot sleeve = none;
//   list `line`: two items, unfinished
//   `pipe: {set-to: 55 psi}`  -> diagnostic "unknown-fact" with the facts a pipe has
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "vocabulary/vocabulary.hpp"

namespace headgate::site {

using vocabulary::ElementId;
using vocabulary::FieldId;
using vocabulary::ListId;
using vocabulary::nowhere;
using vocabulary::ShapeId;

// Elements of all lists together. A long service has some tens; a rule that looks at every pair of them works through
// most_parts * most_parts, which is what keeps the time and memory of a judgement bounded.
constexpr std::size_t most_parts = 500;

enum class Origin : std::uint8_t { left_out, stated, given };  // given: by the place, not typed by anybody

// A record's slot holds the ElementId of its record and a list's slot its ListId, stated or not; a record or
// list left out is unknown, and so is everything in it. A reference nobody stated is computed: its origin is
// left_out, its value the element, none or unknown.
struct Slot {
  vocabulary::Value value;
  Origin origin = Origin::left_out;
  bool asked_not = false;  // written `unknown`: not asked again
  bool assumed = false;    // `how: assumed`
  text::Range range;       // of the value; of nothing when left out
  std::string written;     // as written: "86 psi +/- 2 psi"
  std::string how;         // "bibb gauge, 07:10", "" when not said
};

struct Element {
  ShapeId shape = 0;
  ElementId parent = nowhere;  // the element whose list or record this is
  FieldId field = 0;           // of the parent: the list or record this is in
  ListId list = nowhere;       // nowhere for a record
  std::uint32_t number = 0;    // in its list, from 1
  std::string name;            // of a named list's element: "lawn"
  text::Range range;           // of its key
  std::uint32_t first_slot = 0;
  // Where the water meets it: a list with `walk: yes`, and the place there from 1. Of a branch not the list
  // that defines it but the one it leaves from; nowhere when it stands in no walk.
  ListId walk = nowhere;
  std::uint32_t place = 0;
};

struct List {
  ElementId owner = nowhere;
  FieldId field = 0;
  std::vector<ElementId> items;  // of a walk: a branch that leaves here among them
  bool complete = false;         // left out, unknown, or ending in `more`: not complete
  bool stated = false;           // anything was written
  // Kinds it surely holds no more of than `items`: all when complete, none when not, some after
  // `- more: {except: [gauge]}` (all but those unlooked-for after `- more: {only: [gauge]}`).
  vocabulary::ShapeSet closed;
  text::Range range;  // of `more` when it is unfinished by it, else of the key

  bool complete_for(const vocabulary::ShapeSet& kinds) const { return (kinds & ~closed).none(); }
};

struct Site {
  std::vector<Element> elements;  // elements[0] is the root record `site`
  std::vector<Slot> slots;
  std::vector<List> lists;
  std::vector<std::vector<vocabulary::Reading>> levels;  // readings of level slots, by Value::id
  std::map<std::string, Slot> confirmed;                 // answers, by name
  // Everything that stands in a walk, each after all that is upstream of it: `previous` never points forward.
  std::vector<ElementId> downstream_order;

  const Slot& slot(ElementId element, FieldId field) const { return slots[elements[element].first_slot + field]; }
  Slot& slot(ElementId element, FieldId field) { return slots[elements[element].first_slot + field]; }
};

// Reads a site file's tree. Facts no shape has, values of the wrong type, two elements in one item… go to
// `found`. The tree must outlive the site (texts point into it).
Site load(const document::Node& tree, const vocabulary::Vocabulary& vocabulary, text::Diagnostics& found);

// "line[3].near[1].beside", "branches.lawn.line[1].height", "pressure.highest-static"; for an element "line[3] meter".
std::string address(const Site& site, const vocabulary::Vocabulary& vocabulary, ElementId element);
std::string address(const Site& site, const vocabulary::Vocabulary& vocabulary, ElementId element, FieldId field);

// What an address names: an element (field no_id) or a slot. `line.meter` is allowed while exactly one meter is
// there; `site.` before a top-level fact too. What is wrong is said at its part of `range`.
struct Target {
  ElementId element = nowhere;
  FieldId field = vocabulary::no_id;
};
std::optional<Target> find(const Site& site, const vocabulary::Vocabulary& vocabulary, std::string_view address,
                           const text::Range& range, text::Diagnostics& found);

// Writes `value` (a scalar, `none`, `unknown`, or a map) at an address of the tree, before it is loaded. The changed
// nodes carry the range given in `value`.
//
//   line.gauge = none        every gauge is removed and no more are looked for: a `more` becomes
//                            `more: {except: [gauge]}`
//   line.gauge = unknown     likewise, and nobody has looked: a finished list then ends in `more: {only: [gauge]}`
//   line.meter.size = 1"     while exactly one meter is there, else the diagnostic lists the candidates
//   line[4] = none           element 4 is removed, those after it move up; `unknown` forgets its facts
//   line[9] = {gauge: …}     replaces element 9; one past the end, adds it
//   house.hose-bibbs = 2     a record (or named element) missing on the way is made
void set(document::Node& tree, std::string_view address, const text::Range& address_range, const document::Node& value,
         const vocabulary::Vocabulary& vocabulary, text::Diagnostics& found);

// Takes a stated fact out again, so that its formula counts: `pressure.worst-outlet`, `line[4].outside-diameter`.
void unset(document::Node& tree, std::string_view address, const text::Range& address_range,
           const vocabulary::Vocabulary& vocabulary, text::Diagnostics& found);

// A scalar as if it stood at `range` of a file, for a value that came from a command line.
document::Node scalar_node(std::string text, const text::Range& range);

// `line.meter.size=3/4"` in two. nullopt, with a diagnostic, when there is no `=` or nothing before it.
struct Setting {
  std::string address;
  text::Range address_range;
  document::Node value;
};
std::optional<Setting> read_setting(std::string_view text, const text::Range& range, text::Diagnostics& found);

}  // namespace headgate::site
