// A place's file and its changes, day by day. Not for other layers.
#pragma once

#include "rulebook/load.hpp"

namespace headgate::rulebook {

inline constexpr std::size_t most_segments = 64;

// One document, a list of them, or `nothing`.
std::vector<std::string> adopted_ids(const document::Node& adopts, text::Diagnostics& found);

// [from, until); without a day, what has no `from`.
bool in_force(const Layer& layer, std::optional<quantity::Day> day);

// Indices into Place::changes, earlier first; those that begin together in written order.
std::vector<std::size_t> changes_in_force(const Place& place, std::optional<quantity::Day> day);

quantity::ClosedDays read_closed_days(const Place& place, text::Diagnostics& found);

}  // namespace headgate::rulebook
