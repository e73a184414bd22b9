// Every node of an expression with the value it came to: what explanations read. Nothing is left out
// because it did not matter: `and`, `or`, `some` and `every` look at all their parts.
//
//   pressure.highest-static > limit.static-pressure-max        yes
//   |- path   pressure.highest-static   [84 psi, 88 psi]       slot at site.yaml:8:28
//   `- limit  static-pressure-max       80 psi                 limit 0, value 0 of its chain
#pragma once

#include <optional>
#include <vector>

#include "evaluate/outcome.hpp"

namespace headgate::evaluate {

// Why a value is not known, or a test not decided.
enum class Why : std::uint8_t {
  known,           // it is decided
  missing,         // nobody has stated the fact
  asked_not,       // stated as `unknown`
  too_close,       // a coarse value does not settle it
  of_none,         // a property of what is not there
  no_reading,      // no reading from the asked mark
  unfinished,      // the list is not finished or left out
  empty,           // least or greatest of nothing
  outside_table,   // past the table's rows
  no_row,          // a limit without a row for this kind or member
  no_value,        // the limit's value is `unknown`
  doubt,           // the source itself is doubtful
  no_closed_days,  // business days past the known closed days
  two_ladders,     // an inch and a metric size without an equivalence
  out_of_range,    // a function's input outside its range
  too_large,       // past what a plan may hold
  parts,           // undecided because a part is
};

struct Evaluated {
  const expression::Tree* tree = nullptr;
  expression::NodeId node = expression::no_node;
  vocabulary::Value value;
  vocabulary::Type type;
  Why why = Why::known;
  // Of a path: the element whose field was read last, and the field; nowhere when a record on the way is missing.
  site::ElementId element = site::nowhere;
  site::FieldId field = 0;
  std::vector<std::string> beyond;  // steps not reached because a record on the way is missing
  // Of a limit: which, and which value of its chain; -1 for none. A look-up: the table.
  std::int32_t limit = -1;
  std::int32_t chain = -1;
  std::int32_t table = -1;
  // Of a quantifier's or fold's kid: the element it is about. Kids: for each element where, has/value (absent ones left out).
  site::ElementId about = site::nowhere;
  site::ListId list = site::nowhere;  // of a quantifier, fold: the list walked
  std::int32_t paper = -1;            // of `approved by`: element of the paper that counted
  std::vector<Evaluated>
      kids;  // in the node's order; of a limit: its value's expression; of a derived path: its formula
  Truth truth() const { return value.truth; }
};

// A clause with its truth and either its expression or its nested clauses.
struct ClauseTrace {
  const rulebook::Clause* clause = nullptr;
  Truth truth = Truth::undecided;
  bool by_approval = false;
  std::optional<Evaluated> expression;
  std::vector<ClauseTrace> kids;
};

struct Trace {
  std::vector<Evaluated> where;  // of each binder
  std::optional<ClauseTrace> when;
  std::vector<ClauseTrace> unless;
  std::optional<ClauseTrace> require;
  std::optional<Evaluated> due, done;
  std::vector<std::pair<std::size_t, Evaluated>> holes;  // of if-not: offset of { and value
};

}  // namespace headgate::evaluate
