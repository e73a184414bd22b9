// Where elements stand on the way from the main: the trunk `line`, and each branch after the point
// where it leaves.
//
//   comes(gauge, pressure-reducer, before)   line: [gauge, strainer, pressure-reducer]  -> yes; `right` -> no (a strainer between)
//   two elements of two branches             -> no: they lie on no common way
#pragma once

#include "evaluate/values.hpp"

namespace headgate::evaluate {

Compared comes(const site::Site& site, const vocabulary::Vocabulary& vocabulary, site::ElementId a, site::ElementId b,
               bool before, bool right);

}  // namespace headgate::evaluate
