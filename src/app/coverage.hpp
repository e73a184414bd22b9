// What trials have reached: outcomes by rule, and for each limit a rule compares with, values just
// under it, at it and just over it ("just": within a twentieth of it).
#pragma once

#include <array>
#include <map>
#include <string>
#include <utility>

#include "evaluate/judge.hpp"

namespace headgate::app {

struct Boundary {
  bool under = false;
  bool at = false;
  bool over = false;
  bool complete() const { return under && at && over; }
};

struct Coverage {
  std::map<std::string, std::array<std::uint32_t, evaluate::outcome_count>> outcomes;  // by rule id
  std::map<std::pair<std::string, std::string>, Boundary> boundaries;                  // by rule and limit

  void add(const rulebook::Rule& rule, evaluate::Outcome outcome);
  void add(const rulebook::Rulebook& book, const rulebook::Rule& rule, const evaluate::Trace& trace);
};

// What is missing of a rule: "never undecided; static-pressure-max never just over"; "" when all is covered.
std::string missing(const Coverage& coverage, const rulebook::Rule& rule);

}  // namespace headgate::app
