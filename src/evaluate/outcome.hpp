// The closed set of outcomes, and the decision one rule comes to about one element or combination.
//
//   when yes, require no, level must    -> fail
//   when undecided, require yes         -> pass, "whether or not it applies"
//   when no                             -> not applicable, whatever require says
#pragma once

#include <array>
#include <cstdint>
#include <string_view>
#include <vector>

#include "quantity/interval.hpp"
#include "rulebook/rulebook.hpp"
#include "site/site.hpp"

namespace headgate::evaluate {

using quantity::Truth;

enum class Outcome : std::uint8_t { pass, fail, advisory, undecided, later, accepted, not_applicable, not_in_force };
inline constexpr std::size_t outcome_count = 8;
std::string_view words(Outcome outcome);  // "pass", "not applicable", …

// What needs action first; how bad an outcome is counts from the end of it.
inline constexpr std::array<Outcome, outcome_count> worst_first = {
    Outcome::fail,     Outcome::undecided, Outcome::advisory,       Outcome::later,
    Outcome::accepted, Outcome::pass,      Outcome::not_applicable, Outcome::not_in_force};
std::size_t badness(Outcome outcome);

inline constexpr std::uint32_t no_instance = 0xffffffffU;

// One finding before it is put in words.
struct Decision {
  std::uint32_t rule = 0;
  std::uint32_t instance = no_instance;  // which binding of its `each`, see judge.hpp's elements()
  // An `each` whose list nobody finished or wrote: one decision for the list, undecided.
  site::ListId unfinished = site::nowhere;
  Outcome outcome = Outcome::undecided;
  Outcome would_be = Outcome::undecided;  // of `later`: what it would be now
  Truth applies = Truth::yes;             // where, when and no exception
  Truth when = Truth::yes;                // where and when, exceptions aside
  Truth exception = Truth::no;
  Truth require = Truth::yes;
  bool stage_unknown = false;
  bool by_approval = false;      // require is yes only through a recorded approval
  bool nothing_matched = false;  // not applicable because a finished list has no such element
  bool duty_open = false;        // of a due date not yet reached
  bool done_late = false;
  vocabulary::Value due;  // of a duty: a date
};

// The outcome of section 5's table for a rule that binds now.
Outcome judge_row(rulebook::Level level, Truth applies, Truth require, bool has_require, bool by_approval);

// The same as a table: its rows for a level begin at first_row(), then by what applies and what is required.
inline constexpr std::size_t outcome_rows = 54;
inline std::uint16_t first_row(rulebook::Level level, bool has_require) {
  return static_cast<std::uint16_t>(18 * static_cast<int>(level) + (has_require ? 9 : 0));
}

}  // namespace headgate::evaluate
