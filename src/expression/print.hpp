// An expression back as text, in one canonical spelling; names as written, brackets only where needed.
//
//   print(parse("some pipe in line  where (pipe.buried)"))  -> "some pipe in line where pipe.buried"
//   print of a checked tree shows what was implied too: "pipe.cover below finished-grade", "limit.least-cover[pipe]"
//
// print(parse(x)) parses to the same tree. A node in error prints as "?".
#pragma once

#include <string>

#include "expression/tree.hpp"

namespace headgate::expression {

std::string print(const Tree& tree, NodeId id);
std::string print(const Tree& tree);
std::string_view sign(Relation relation);  // "<=", …

}  // namespace headgate::expression
