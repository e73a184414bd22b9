// Which of a limit's written values hold in a place on a day, strongest first. Not for other layers.
#pragma once

#include "rulebook/adoption.hpp"
#include "rulebook/limits.hpp"

namespace headgate::rulebook {

// Reads every value of every limit, and fills the chains with those in force. Values of one layer that claim the same
// days are said, whatever the day. Orders of the site come first.
void fill_chains(Declarations& all, const std::vector<WrittenLimit>& written, const Place& place,
                 const std::vector<std::size_t>& in_force, const Adoption& adoption,
                 const vocabulary::Vocabulary& vocabulary, const std::vector<Order>& orders, text::Diagnostics& found);

// Limits no value of which can be had: none is in force, or the one in force needs such a limit.
std::vector<bool> valueless(const std::vector<Limit>& limits, const vocabulary::Vocabulary& vocabulary);

}  // namespace headgate::rulebook
