// Comparing and joining values, whatever their type, with the reason when nothing is decided.
//
//   compare(Relation::greater, 79 psi +/- 2 psi, 80 psi)   -> undecided, Why::too_close
//   compare(Relation::less, 20 mm, 3/4")                    -> through the equivalence table, else undecided, Why::two_ladders
#pragma once

#include "evaluate/trace.hpp"
#include "rulebook/rulebook.hpp"

namespace headgate::evaluate {

struct Compared {
  Truth truth = Truth::undecided;
  Why why = Why::known;
};

Compared compare(expression::Relation relation, const vocabulary::Value& a, const vocabulary::Value& b,
                 const vocabulary::Type& type, const rulebook::Rulebook& book);
Compared same(const vocabulary::Value& a, const vocabulary::Value& b, const vocabulary::Type& type,
              const rulebook::Rulebook& book);

// What either may be: the hull of numbers, the union of members.
vocabulary::Value hull(const vocabulary::Value& a, const vocabulary::Value& b, const vocabulary::Type& type,
                       const rulebook::Rulebook& book);

bool is_size(const vocabulary::Type& type);  // its numbers stand on a ladder of nominal sizes

// The grid step a type's numbers are compared on (days for dates, …).
double grid_of(const vocabulary::Type& type);

// Brings two sizes onto one ladder; false when the equivalence table does not have the size.
bool same_ladder(vocabulary::Value& a, vocabulary::Value& b, const rulebook::Rulebook& book);

// Whether every, no or only some of the days a date may be lie in the season.
Compared in_season(const vocabulary::Value& date, const vocabulary::Value& season);

bool usable(const vocabulary::Value& value);  // present, so that its number or members say something

}  // namespace headgate::evaluate
