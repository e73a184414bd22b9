// What a place knows of every site in it: `given: {site.frost-depth: 30 in}`. Not for other layers.
#pragma once

#include "rulebook/load.hpp"

namespace headgate::rulebook {

// Of the changes in force, a later one's replacing an earlier one's. Every address and value is checked.
std::vector<Given> read_given(const Place& place, const std::vector<std::size_t>& in_force,
                              const vocabulary::Vocabulary& vocabulary, text::Diagnostics& found);

}  // namespace headgate::rulebook
