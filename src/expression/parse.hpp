// Text to checked tree.
//
//   Diagnostics found;
//   auto tree = compile(node, scope, Type{Kind::truth}, found);
//   compile of "pressure.highest-static >= 80"  -> nullopt and "number-needs-unit" at column 28, hint `80 psi`
#pragma once

#include <optional>

#include "document/node.hpp"
#include "expression/scope.hpp"
#include "expression/tree.hpp"
#include "text/diagnostic.hpp"

namespace headgate::expression {

// Bounds known before anything runs. Past them an expression is refused: no rule people read is near them.
struct Bounds {
  std::size_t bytes = 4096;
  std::size_t nodes = 512;
  std::size_t depth = 32;  // of brackets and quantifiers
  std::size_t quantifiers =
      4;  // lists walked inside one another: the cost is at most nodes * (longest list)^quantifiers
};

// Syntax only. nullopt when it does not parse (all problems in `found`).
std::optional<Tree> parse(const document::Node& source, const Bounds& bounds, text::Diagnostics& found);

// Names, types, dimensions. `wanted` nothing: any type is fine. False when anything is wrong.
// Literals take the type their place demands (`3/4 in` beside a size is a size).
bool check(Tree& tree, const Scope& scope, const std::optional<vocabulary::Type>& wanted, text::Diagnostics& found);

std::optional<Tree> compile(const document::Node& source, const Scope& scope,
                            const std::optional<vocabulary::Type>& wanted, text::Diagnostics& found,
                            const Bounds& bounds = {});

// `each: pipe as p in line where p.buried, sewer in p.near`: binders, each with a tree for its list and its `where`.
struct EachBinder {
  Binder binder;
  Tree list;                  // a path
  std::optional<Tree> where;  // over the variables so far
};
struct Each {
  std::vector<EachBinder> binders;
};
std::optional<Each> compile_each(const document::Node& source, const Scope& scope, text::Diagnostics& found);

// A path in braces in a text (`The pipe passes the {wall.material} wall bare.`).
std::optional<Tree> compile_path(std::string_view path, const text::Range& range, const Scope& scope,
                                 text::Diagnostics& found);

}  // namespace headgate::expression
