// Plain sentences for parts of an expression: what was observed, what was asked, why nothing could be
// decided. Titles and questions come from the vocabulary, values as they were written.
//
//   observed(>= of meter.height and limit)    "the meter's height is 30 in, above 24 in (highest meter)"
//   undecided(same, unknown height)           "the meter's height is not stated"
//   a path whose field has no title is named by its words: "the meter's serial number"
#pragma once

#include <string>

#include "explain/explain.hpp"

namespace headgate::explain {

using evaluate::Evaluated;

std::string spaced(std::string_view name);                    // hyphens to blanks
std::string sentence(std::string text);                       // first letter large, a full stop at the end
std::string joined(const std::vector<std::string>& parts, std::string_view by);

std::string subject(const Context& context, const Evaluated& path);      // "highest static pressure", "the meter's size"
std::string fact_address(const Context& context, const Evaluated& path); // "line[3].size", also for what is not there yet
std::string shown(const Context& context, const Evaluated& of);          // "86 psi +/- 2 psi", "80 psi", "type K copper"
std::string limit_title(const Context& context, const Evaluated& limit); // "" when the node is no limit
std::string element_words(const Context& context, site::ElementId element);   // "pipe line[3]"

std::string observed(const Context& context, const Evaluated& leaf);     // a decided test, as a statement of fact
std::string undecided(const Context& context, const Evaluated& leaf);    // an undecided one, as what is in the way
std::string in_words(const Context& context, const expression::Tree& tree, expression::NodeId node);

const site::Slot* slot_of(const Context& context, const Evaluated& path);         // nullptr when a record on the way is missing
const vocabulary::Field* field_of(const Context& context, const Evaluated& path); // the fact asked for, found by the vocabulary alone if need be

}  // namespace headgate::explain
