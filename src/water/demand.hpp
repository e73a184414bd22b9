// How many of a group of fixtures run at once: the method behind the demand curves of the plumbing codes.
//
//   binomial_demand(100, 0.03, 0.99)   -> 8     (a hundred flush valves, each open 3 % of the time)
//   binomial_demand(20, 0.2, 0.99)     -> 8
//
// Arguments must lie in the ranges of functions.hpp; nothing here checks them:
//
//   evaluate(*find("binomial-demand"), {2.5, …}, …)   -> Refusal: count is no whole number
#pragma once

namespace headgate::water {

// The least number m of `count` fixtures such that no more than m run at once with at least the given probability
// (percentile, 0.99 in the codes), when each runs by itself the share `probability` of the time. Rises with all three.
// Source: R. B. Hunter, BMS 65 (1940), binomial distribution. Check: (100, 0.03, 0.99) -> 8.
double binomial_demand(double count, double probability, double percentile);

}  // namespace headgate::water
