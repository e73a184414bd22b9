// What size passes? The new service pipe and the meter are given every size there are figures for, and each pair is
// judged by the rules that hang on it.
//
//   size_up(world, prepare(world, as_built, {}))   -> meter 3/4 in: pipe 3/4 in fails outlet-has-what-it-needs, 1 in passes
//   a site without a meter, or without a new pipe, has nothing to vary: Sizing::pairs is empty, `why_not` says so
#pragma once

#include <string>
#include <vector>

#include <nlohmann/json_fwd.hpp>

#include "app/opening.hpp"

namespace headgate::app {

struct SizedPair {
  std::string pipe, meter;                              // as written: 1-1/4"
  evaluate::Outcome outcome = evaluate::Outcome::pass;  // the worst of the rules that hang on the sizes
  std::string because;                                  // the rule behind it
  std::string left;  // what is left, by the fact that the vocabulary names; "" when it cannot be told
};

struct Sizing {
  std::vector<std::string> varied;  // addresses of the pipes and the meter
  std::vector<SizedPair> pairs;     // by meter, then by pipe, smallest first
  std::string pipe, meter;  // the smallest that pass together: the meter as it stands if any pipe passes with it
  std::string why_not;
  std::string why_open;  // why nothing can be told of what is left, at the largest sizes
};

Sizing size_up(World& world, const Case& before);

std::string words_of(const Sizing& sizing);
nlohmann::ordered_json json_of(const Sizing& sizing);

}  // namespace headgate::app
