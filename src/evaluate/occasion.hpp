// What a judgement is about beside the facts: the stage reached and the day deadlines are judged on.
#pragma once

#include <optional>

#include "evaluate/judge.hpp"

namespace headgate::evaluate {

struct Occasion {
  std::optional<std::size_t> stage;
  std::optional<quantity::Interval> checked_on;  // days
};

// The options where they say, else the site.
Occasion occasion(const rulebook::Rulebook& book, const site::Site& site, const Options& options);

// A duty: what `require` it comes to (done in time, late, overdue), and whether it is still open.
struct Duty {
  Truth met = Truth::undecided;
  bool open = false;
  bool done_late = false;
};
// `done` nullptr: the duty does not say what shows it was done.
Duty judge_duty(const vocabulary::Value& due, const vocabulary::Value* done, const Occasion& when);

// The outcome once stage and duty are weighed in.
void settle(Decision& decision, const rulebook::Rule& rule, const Occasion& when);

}  // namespace headgate::evaluate
