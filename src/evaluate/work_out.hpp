// Every derived value of one site with its formula laid out and computed: what a worksheet shows. Values the
// site states are computed too, so that both can be shown.
//
//   Worked worked = work_out(book, site);
//   worked.values[0]                                         demand.fixture-units of the record `demand`
//   evaluated(worked.plan, worked.cells, worked.values[0].formula)   every node of its formula with its value
//   a pipe whose length nobody stated: its friction-loss is there, unknown, Why::parts
#pragma once

#include <vector>

#include "evaluate/plan.hpp"

namespace headgate::evaluate {

struct WorkedValue {
  site::ElementId element = site::nowhere;
  const rulebook::Derived* derivation = nullptr;
  PlannedId formula = not_planned;
  bool stated = false;  // the site says it itself: the formula does not count
};

// Rulebook and site must outlive it.
struct Worked {
  Plan plan;
  std::vector<Cell> cells;
  std::vector<WorkedValue> values;  // by element, records first, then the walk from the main on; then as declared
};

Worked work_out(const rulebook::Rulebook& book, const site::Site& site);

}  // namespace headgate::evaluate
