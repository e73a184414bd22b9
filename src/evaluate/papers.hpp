// Papers on file: whether one of them counts, and which. What is not known of a paper that may be the one
// leaves the test undecided; a paper whose day is past counts no more.
//
//   require: approved by building-official
//   - approval: {for: it, by: building-official}                     yes
//   - approval: {for: it}                                            undecided: who gave it?
//   - approval: {for: it, by: building-official, until: 2026-06-30}  checked on 2026-07-01: no; on no day: undecided
//
// An order may set a limit for the job; the rulebook is then resolved with it as its last layer.
//   - order: {limit: test-interval, value: 6 months, by: water-superintendent}
#pragma once

#include <optional>
#include <vector>

#include "evaluate/trace.hpp"
#include "rulebook/load.hpp"

namespace headgate::evaluate {

// `approved by ROLE [for NAME]`, `ordered by ROLE [for NAME]`: a paper counts when its `for` names the rule (or
// NAME), its `by` is the role (a paper that does not say who gave it may be the role's), its `at`, if given, is one
// of the elements in hand, and its `until`, if given, is not past.
struct PaperFound {
  Truth truth = Truth::no;
  std::int32_t paper = -1;  // the element that counts or may count; with `no`, one that counted once
  // Undecided: why, and the fact that would settle it (of the paper or, of the day of checking, of the site), or
  // the list of papers nobody finished.
  Why why = Why::known;
  site::ElementId element = site::nowhere;
  site::FieldId field = 0;
  site::ListId list = site::nowhere;
};
// `checked_on`: the day papers are judged on; nothing when it is not known.
PaperFound find_paper(const site::Site& site, const vocabulary::Vocabulary& vocabulary, const expression::Node& node,
                      const rulebook::Rule* rule, const std::vector<site::ElementId>& elements,
                      const std::optional<quantity::Interval>& checked_on);

// The orders on file that set a limit, strongest first: the later dated, then the later written. Left out are those
// whose last day is past and those by nobody; one that does not say who gave it, or whose last day cannot be judged,
// is doubtful. `for` is words only.
std::vector<rulebook::Order> orders(const site::Site& site, const vocabulary::Vocabulary& vocabulary,
                                    const std::optional<quantity::Interval>& checked_on);

}  // namespace headgate::evaluate
