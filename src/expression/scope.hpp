// The names an expression may use beyond the vocabulary's: limits, tables, functions, variables.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "vocabulary/vocabulary.hpp"

namespace headgate::expression {

// A limit as its users see it; values are the rulebook's business.
struct LimitSignature {
  std::string name;
  vocabulary::Type
      type;           // of one value; Kind::level: the value is a mark (`cover below limit.x`), Value::id its MarkId;
                      // Kind::kind: a kind of thing (`valve is one of limit.x`); Kind::season: `date is in limit.x`
  bool list = false;  // holds a list of such values: `is one of limit.x`, `is in limit.x`
  vocabulary::ShapeSet of;                             // `of:` looks at one thing in hand; none set: it does not
  std::string of_name;                                 // kind or group named by `of:` or `by:`
  vocabulary::ShapeSet by_kinds;                       // `by:` a group: a row a kind
  vocabulary::ChoiceId by_choice = vocabulary::no_id;  // `by:` a choice: a row a member
  std::vector<std::string> columns;         // of a limit that holds a table: then keys and columns are the table's
  std::uint32_t table = vocabulary::no_id;  // the table signature it holds
};

struct TableKey {
  std::string name;
  vocabulary::Type type;
};
struct TableColumn {
  std::string name;
  vocabulary::Type type;
};
struct TableSignature {
  std::string name;
  std::vector<TableKey> keys;
  std::vector<TableColumn> columns;
};

struct Variable {
  std::string name;
  vocabulary::ShapeSet shapes;
};

struct Scope {
  const vocabulary::Vocabulary* vocabulary = nullptr;
  const std::vector<LimitSignature>* limits = nullptr;  // nullptr: none
  const std::vector<TableSignature>* tables = nullptr;  // nullptr: none
  std::vector<Variable> variables;                      // handed in: of `each`, `of:`, a derived value's own record
  bool base_allowed = false;                            // inside a limit's value
  vocabulary::Type base_type;
  // Names a plain word may stand for (rules, for `approved by R for N`); nullptr: any name.
  const std::vector<std::string>* subjects = nullptr;
};

}  // namespace headgate::expression
