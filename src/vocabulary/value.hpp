// Types of facts and expressions, and values as far as they are known.
//
//   type of pressure.highest-static    {number, pressure}
//   type of pipe.material              {choice, pipe-material}
//   value of `86 psi +/- 2 psi`        present, [84 psi, 88 psi]
//   value of a fact left out           unknown: [-inf, inf], every member possible, undecided
#pragma once

#include <bitset>
#include <cstdint>
#include <string_view>
#include <vector>

#include "quantity/calendar.hpp"
#include "quantity/interval.hpp"
#include "quantity/unit.hpp"

namespace headgate::vocabulary {

using ShapeId = std::uint16_t;
using FieldId = std::uint16_t;  // index into Shape::fields
using ChoiceId = std::uint16_t;
using MarkId = std::uint16_t;
inline constexpr std::uint16_t no_id = 0xffff;
inline constexpr std::size_t most_shapes = 256;
inline constexpr std::size_t most_members = 64;  // of one choice: a set of them is one 64-bit word
using ShapeSet = std::bitset<most_shapes>;

struct Type {
  enum class Kind : std::uint8_t {
    nothing,  // an expression in error
    truth,    // yes-no
    number,   // a quantity, a plain number (dimension none) or a nominal size (dimension size)
    level,    // depth or height from a mark; a length once the mark is given
    choice,
    date,    // interval of days
    moment,  // seconds since 1970-01-01 00:00
    clock,   // seconds of the day
    season,
    span,
    text,
    element,  // one record or element of a list
    list,
    answers,  // `confirmed:` a map of names to yes or no
    kind,     // the kind of an element, as a limit's `by:` key
  };
  Kind kind = Kind::nothing;
  quantity::Dimension dimension;  // of a number
  ChoiceId choice = no_id;        // of a choice
  ShapeSet shapes;                // of an element or a list: what it may be
  friend bool operator==(const Type& a, const Type& b) {
    return a.kind == b.kind && a.dimension == b.dimension && a.choice == b.choice && a.shapes == b.shapes;
  }
};

// Present: stated or computed. None: it is not there. Unknown: nobody has looked (or it cannot be computed).
enum class Presence : std::uint8_t { unknown, none, present };

// Which ladder a nominal size stands on. Sizes of two ladders compare through an equivalence table.
enum class Ladder : std::uint8_t { inch, metric };

// One reading of a depth or height. `height` is metres above the mark: 40 in below it is -1.016.
struct Reading {
  MarkId mark = no_id;  // no_id: stated without one
  quantity::Interval height_m;
};

using ElementId = std::uint32_t;
using ListId = std::uint32_t;
inline constexpr std::uint32_t nowhere = 0xffffffffU;

// A value of any type; which members hold it is said by its Type.
struct Value {
  Presence presence = Presence::unknown;
  quantity::Truth truth = quantity::Truth::undecided;  // truth
  Ladder ladder = Ladder::inch;                        // number of dimension size
  quantity::Span::Unit span_unit = quantity::Span::Unit::days;
  std::uint32_t id = nowhere;  // element: ElementId; list: ListId; level: index into Site::levels; kind: ShapeId
  std::uint64_t members = ~std::uint64_t{0};  // choice: the members it may be, bit i = member i
  quantity::Interval number;             // number in SI (sizes as written); date: days; moment, clock: s; span: count;
                                         // season: lo = from, hi = to, each month * 100 + day;
                                         // level: its first reading
  const quantity::Unit* unit = nullptr;  // how it was written
  std::string_view text;                 // text; owned by whoever made the value
};

Value unknown();
Value nothing();                        // Presence::none
Value of_truth(quantity::Truth value);  // undecided is present all the same when stated so
Value of_number(quantity::Interval si, const quantity::Unit* unit = nullptr);
Value of_members(std::uint64_t members);

}  // namespace headgate::vocabulary
