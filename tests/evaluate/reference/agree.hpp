// Whether the evaluator and the reference say the same of one site, down to every node.
//
//   difference(judgement, reference::judge(book, site, {}))   -> "" when they agree
//   otherwise the first difference: "deep line[3]: require: pipe.length >= 1 ft: yes, reference no"
#pragma once

#include <string>
#include <vector>

#include "evaluate/reference/reference.hpp"

namespace headgate::reference {

std::string difference(const evaluate::Judgement& judgement, const std::vector<Finding>& findings);

// A node laid out over the site, and every node below it.
std::string difference(const Worked& worked, const evaluate::Plan& plan, const std::vector<evaluate::Cell>& cells,
                       evaluate::PlannedId planned);

}  // namespace headgate::reference
