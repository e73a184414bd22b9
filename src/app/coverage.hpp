// What trials have reached: outcomes by rule, and for each limit a rule compares with, values just
// under it, at it and just over it ("just": within a twentieth of it). A rule of the project is one rule
// over all places, whatever level they give it; one that a place wrote, or asks something else of, is its own.
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

// What a rule is counted under: "sleeve-ratio", or "mill-town/sleeve-ratio" where the place has its own.
std::string counted_as(const rulebook::Rulebook& book, const rulebook::Rule& rule);

struct Coverage {
  std::map<std::string, std::array<std::uint32_t, evaluate::outcome_count>> outcomes;  // by counted_as
  std::map<std::pair<std::string, std::string>, Boundary> boundaries;                  // by counted_as and limit

  void add(const std::string& name, evaluate::Outcome outcome);
  // Of one finding, or of an element that the `where` of its `each` left out: then only the `where`.
  void add(const rulebook::Rulebook& book, const std::string& name, const evaluate::Trace& trace, bool reached);
};

// What is missing of a rule: "never undecided; static-pressure-max never just over"; "" when all is covered. An outcome
// of `accepted` is a pass: the rule is met.
std::string missing(const Coverage& coverage, const std::string& name, const rulebook::Rule& rule);

}  // namespace headgate::app
