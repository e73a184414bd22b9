// The small language of conditions, limits and derived values, as a tree. Parsing gives shape and
// ranges; checking gives every node its type and resolves every name; both leave located diagnostics.
//
//   every pipe in line where pipe.buried has pipe.least-cover >= limit.least-cover
//   `- every     binder: pipe in `line`
//      |- path pipe.buried
//      `- compare >=
//         |- path pipe.least-cover
//         `- limit least-cover
//
//   pipe.least-cover >= 3 psi   -> diagnostic "dimension-clash" over the relation, both dimensions named
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "text/source.hpp"
#include "vocabulary/value.hpp"

namespace headgate::expression {

using NodeId = std::uint32_t;
inline constexpr NodeId no_node = 0xffffffffU;

enum class Op : std::uint8_t {
  error,
  literal,   // value, type
  word,      // a bare name not yet resolved (only before checking)
  both,      // and: two or more kids
  either,    // or
  opposite,  // not
  compare,   // kids a, b; relation
  between,   // kids a, b, c; relation (a rel b), second (b rel c)
  same,      // is same as: kids a, b
  is_item,   // is X: kid a; literal kid b of a's type, or of Type::Kind::kind: value.members unused, shapes set
  one_of,    // is one of (…): kid a, then items
  in_list,   // is one of limit.x / is in limit.x : kid a, kid limit (a list, or a season for a date)
  is_none,   // kid path
  fitted,    // kid path
  recorded,  // kid path
  comes,     // kids a, b elements; before; right
  some,      // binder in `binder`; kids where or no_node, has or no_node
  no,
  every,
  count,     // binder; kids where or no_node
  sum,       // binder; kids value, where or no_node
  least_of,  // binder; kids value, where or no_node
  greatest_of,
  least,  // kids
  greatest,
  add,
  subtract,
  multiply,
  divide,
  negate,
  path,       // steps
  property,   // kid choice; index = property
  at_mark,    // kid path (level), kid mark (literal choice-like: value.id = MarkId, or a limit); before = below
  limit,      // index = limit; kids: keys (may be none)
  look_up,    // index = table or no_index with a limit kid first; kids: keys; column
  call,       // index = function; kids arguments
  choose,     // if kids[0] then kids[1] else kids[2]
  paper,      // approved (index 0) or ordered (1) by role `column`; name = subject or ""
  confirmed,  // name
  base,       // the value below, in a limit's expression
};

enum class Relation : std::uint8_t { less, less_or_equal, greater, greater_or_equal };

// `kind as name in path`
struct Binder {
  std::string kind_name;  // kind or group
  text::Range kind_range;
  std::string name;  // the variable: kind's name, or what `as` says
  text::Range name_range;
  vocabulary::ShapeSet shapes;  // set by checking
  std::uint32_t variable = 0;   // index into the frame, set by checking
  NodeId list = no_node;        // a path node
};

struct Step {
  std::string name;
  text::Range range;
};

struct Node {
  Op op = Op::error;
  text::Range range;  // what it covers
  text::Range mark;   // of the operator word or sign
  vocabulary::Type type;
  std::vector<NodeId> kids;  // no_node where an optional one is absent
  Relation relation = Relation::less;
  Relation second = Relation::less;
  bool negated = false;              // is not
  bool before = false;               // comes before; below; of in_list: written `is in`, not `is one of`
  bool right = false;                // comes right
  std::uint32_t index = 0;           // limit, table, function, property, role… as the op says
  std::uint32_t column = 0;          // of a look-up; role of a paper
  std::uint32_t variable = no_node;  // of a path: the frame variable it starts from; no_node: the root record
  // Of a path: the names after the variable, or from the root. Of a limit or look-up: the column, if written.
  std::vector<Step> steps;
  // Of word, confirmed, limit, look_up, call and property: its name. Of a path: as written, the variable too. Of a paper:
  // the subject.
  std::string name;
  Binder binder;                // of quantifiers and folds
  vocabulary::Value value;      // of a literal
  vocabulary::ShapeSet shapes;  // of is_item over a kind
  std::string written;          // of a literal: as written; of a paper: the role
};

// One expression. Kids come before their parents in `nodes` (evaluation order); frames are numbered
// from the variables the expression is handed (of `each`, `of`) upward.
struct Tree {
  std::vector<Node> nodes;
  NodeId root = no_node;
  std::uint32_t variables = 0;  // how many the frame needs, handed ones included
  text::Range range;
  const Node& operator[](NodeId id) const { return nodes[id]; }
};

}  // namespace headgate::expression
