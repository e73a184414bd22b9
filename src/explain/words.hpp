// Plain sentences for parts of an expression: what was observed, what was asked, why nothing could be
// decided. Titles and questions come from the vocabulary, values as they were written.
//
//   observed(>= of meter.height and limit)    "the meter's height is 30 in, at least 24 in (lowest meter)"
//   undecided(same, unknown height)           "the meter's height is not stated"
//   a path whose field has no title is named by its words: "the meter's serial number"
#pragma once

#include <optional>
#include <string>

#include "explain/explain.hpp"

namespace headgate::explain {

using evaluate::Evaluated;

inline const expression::Node& node_of(const Evaluated& of) { return of.tree->nodes[of.node]; }

std::string spaced(std::string_view name);  // hyphens to blanks
std::string capital(std::string text);      // first letter large
std::string sentence(std::string text);     // first letter large, a full stop at the end
std::string lowered(std::string title);     // within a sentence: "highest pressure", but "UPC table"
// How the left side stands to the right one when the relation holds, and when it does not: "at most", "after".
std::string_view relation_words(expression::Relation relation, bool holds, bool in_time);
std::string joined(const std::vector<std::string>& parts, std::string_view by);
std::string with_article(const std::string& thing);  // "a meter", "an approval"
std::string plural(const std::string& thing);        // "shutoff valves"
bool is_plural(std::string_view name);               // "fixture units", "the house's half baths"; not "gas"
std::string is_or_are(std::string_view name);        // "is", "are"

// What a yes-no fact says of its thing: "is new in this job", "is not new in this job". Empty where neither its `says`
// nor its question tells; `no` also where it cannot be denied in the same words.
struct Predicate {
  std::string yes, no;
};
Predicate predicate(const vocabulary::Field& field, const vocabulary::Shape& shape);

std::string subject(const Context& context, const Evaluated& path);  // "highest static pressure", "the meter's size"
std::string left(const Context& context, const Evaluated& of);       // what a test is about; of a formula its words
std::string fact_address(const Context& context,
                         const Evaluated& path);                 // "line[3].size", also for what is not there yet
std::string shown(const Context& context, const Evaluated& of);  // "86 psi +/- 2 psi", "80 psi", "type K copper"
std::string bound(const Context& context, const Evaluated& of);  // "80 psi (highest static pressure without a reducer)"
std::string any_of(const Context& context,
                   const Evaluated& test);  // the items of an `is`: "type K copper or type L copper"
std::string property_words(const Context& context, const Evaluated& property);  // "full way"
std::string limit_title(const Context& context, const Evaluated& limit);        // "" when the node is no limit
// Of a limit with a row a member: the rows its key may mean, none while nothing is known of the key. Empty for others.
inline constexpr std::size_t most_rows = 4;  // of a coarse key: with more the limit is shown as one
bool has_rows(const Context& context, const Evaluated& limit);
std::vector<const Evaluated*> rows_asked(const Context& context, const Evaluated& limit);
// A value of a limit as written; of one with rows only the row used, "" when it has no such row.
std::string value_written(const Context& context, const Evaluated& limit, std::size_t chain);
std::string limit_items(const Context& context, std::size_t limit,
                        std::size_t chain);  // of a list: "type K copper, polyethylene"
// The list a quantifier walks, also one nobody stated; nowhere when its record is missing.
site::ListId list_of(const Context& context, const Evaluated& quantifier);
// The list a reader has to finish: of a computed one, the first unfinished walk it may be made of; and its name,
// "the line", "branches.lawn.line".
const site::List& open_list(const Context& context, site::ListId asked);
std::string list_name(const Context& context, site::ListId asked);
std::string not_to_its_end(const Context& context, site::ListId asked);  // "the line is not written down to its end"
std::string kind_words(const Context& context, std::string_view kind_or_group);  // "pressure reducing valve"
std::string variable_words(const Context& context, std::string_view variable);   // a kind's title, else as written
std::string shape_words(const Context& context, site::ElementId element);        // "pipe"
std::string element_words(const Context& context, site::ElementId element);      // "the pipe at line[3]"

std::string observed(const Context& context, const Evaluated& leaf);   // a decided test, as a statement of fact
std::string undecided(const Context& context, const Evaluated& leaf);  // an undecided one, as what is in the way
// Of a quantifier's element: " whose material is copper and that comes before the meter"; "" for no_node.
std::string condition(const Context& context, const expression::Tree& tree, std::string_view variable,
                      expression::NodeId of);
// What a quantifier says when it holds, or when not: "the line has no gauge that comes after the reducer". With what
// was evaluated, the values of its limits and look-ups are given too.
std::string quantified(const Context& context, const expression::Tree& tree, expression::NodeId node, bool holds,
                       const Evaluated* values = nullptr);
// A condition that does not hold is denied.
std::string in_words(const Context& context, const expression::Tree& tree, expression::NodeId node, bool holds = true);

// The deepest value that is not known: what has to be found out.
const Evaluated& root_cause(const Context& context, const Evaluated& of);
// The unfinished walk in which a nearer element may hide, when the path goes through a reference (`wall.pipe`).
std::optional<site::ListId> hiding_list(const Context& context, const Evaluated& path);

const site::Slot* slot_of(const Context& context,
                          const Evaluated& path);  // nullptr when a record on the way is missing
const vocabulary::Field* field_of(
    const Context& context, const Evaluated& path);  // the fact asked for, found by the vocabulary alone if need be
const vocabulary::Shape& shape_asked(const Context& context, const Evaluated& path);  // what it is a fact of

}  // namespace headgate::explain
