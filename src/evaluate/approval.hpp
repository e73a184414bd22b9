// Whether a requirement is met only through a recorded approval: take the approval away and it is met no more.
//
//   approved by building-official and some meter in line      by approval
//   approved by building-official or some meter in line       with a meter: plainly
#pragma once

#include "evaluate/plan.hpp"

namespace headgate::evaluate {

// `clause` holds, and only through an approval; allocates nothing.
bool by_approval(const Plan& plan, const std::vector<Cell>& cells, const PlannedClause& clause);

bool holds_approval(const expression::Tree& tree);  // some part of it is `approved by`

}  // namespace headgate::evaluate
