// Lists as a quantifier sees them. Known when a site is loaded.
#pragma once

#include <string_view>
#include <vector>

#include "evaluate/trace.hpp"

namespace headgate::evaluate {

// The elements of a list a binder looks at, and whether there can be no others.
struct Walked {
  site::ListId list = site::nowhere;
  std::vector<site::ElementId> elements;
  bool complete = false;
};
Walked walk_list(const site::Site& site, const vocabulary::ShapeSet& shapes, vocabulary::Presence presence,
                 site::ListId list);

// Whether an expression can never be negative, by what the vocabulary declares of its facts: then an
// unfinished list's sum still has a lower bound.
bool never_negative(const expression::Tree& tree, expression::NodeId id, const expression::Binder& of,
                    const vocabulary::Vocabulary& vocabulary);

// Whether `next` of a record nobody wrote is computed: it needs nothing stated there, so it may still be known.
bool computes(const site::Site& site, const vocabulary::Vocabulary& vocabulary, const vocabulary::Field& field,
              const site::Slot& slot, std::string_view next);

}  // namespace headgate::evaluate
