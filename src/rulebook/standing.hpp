// Whether a rule binds here today, and if not why; and which limits nothing uses. Not for other layers.
#pragma once

#include "rulebook/order.hpp"
#include "rulebook/rules.hpp"

namespace headgate::rulebook {

// Where a change in force last touched the rule; nullptr when none did.
const document::Entry* touched_at(const WrittenRule& written);

void set_standing(Rule& rule, const WrittenRule& written, const Place& place, std::optional<quantity::Day> day,
                  const std::vector<bool>& valueless, const Declarations& all,
                  const vocabulary::Vocabulary& vocabulary);

// Warnings: limits nothing reaches, and those a change took the last use from.
// `uses`: of each rule, its exceptions and clauses that do not count here included.
void say_unused(const Rulebook& book, const std::vector<WrittenRule>& written,
                const std::vector<std::vector<Use>>& uses, const Needs& needs, const RuleReader& reader);

}  // namespace headgate::rulebook
