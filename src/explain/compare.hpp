// Authorities beside each other: where they come to different outcomes, and where one demands what the
// other bans.
#pragma once

#include "explain/explain.hpp"

namespace headgate::explain {

// One row for each rule and element whose outcome is not the same under every authority. Law of an
// unknown date: the outcome of the first stretch that does not agree with the others is "undecided".
std::vector<Difference> differences(const std::vector<Authority>& authorities);

// "a/valve-with-drain demands what b/no-drain bans: shutoff.drain", of rules in force; each pair once.
std::vector<std::string> contradictions(const std::vector<Authority>& authorities);

}  // namespace headgate::explain
