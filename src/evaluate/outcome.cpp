#include "evaluate/outcome.hpp"

#include <algorithm>

namespace headgate::evaluate {

std::string_view words(Outcome outcome) {
  switch (outcome) {
    case Outcome::pass: return "pass";
    case Outcome::fail: return "fail";
    case Outcome::advisory: return "advisory";
    case Outcome::undecided: return "undecided";
    case Outcome::later: return "later";
    case Outcome::accepted: return "accepted";
    case Outcome::not_applicable: return "not applicable";
    case Outcome::not_in_force: return "not in force";
  }
  return "";
}

std::size_t badness(Outcome outcome) {
  return static_cast<std::size_t>(worst_first.end() - std::find(worst_first.begin(), worst_first.end(), outcome));
}

Outcome judge_row(rulebook::Level level, Truth applies, Truth require, bool has_require, bool by_approval) {
  if (applies == Truth::no) return Outcome::not_applicable;
  if (!has_require) return applies == Truth::yes ? Outcome::advisory : Outcome::undecided;
  if (require == Truth::yes) return by_approval ? Outcome::accepted : Outcome::pass;
  if (applies == Truth::undecided || require == Truth::undecided) return Outcome::undecided;
  return level == rulebook::Level::must ? Outcome::fail : Outcome::advisory;
}

}  // namespace headgate::evaluate
