// Limits as they are written, project and place together, and what their users see of them. Not for
// other layers.
#pragma once

#include <vector>

#include "rulebook/documents.hpp"
#include "rulebook/load.hpp"

namespace headgate::rulebook {

inline constexpr std::size_t of_project = static_cast<std::size_t>(-1);

// `CITATION: value`, and who wrote it.
struct WrittenValue {
  const document::Entry* entry = nullptr;
  std::size_t change = of_project;  // index into Place::changes
};

struct WrittenLimit {
  std::string name;
  const document::Entry* declared = nullptr;
  std::size_t change = of_project;
  std::vector<WrittenValue> values;  // in written order, the project's first
};

// Every limit of the project's files and of the place, whatever the day: a limit's number is the same on all days.
// `place` may be nullptr.
std::vector<WrittenLimit> collect_limits(const Library& library, const Place* place, text::Diagnostics& found);

// A value unwrapped from `{value: …, doubt: …}`.
struct Bare {
  const document::Node* node = nullptr;  // nullptr when the map has no value (which is said)
  std::string doubt;
};
Bare bare(const document::Node& value, text::Diagnostics& found);

inline constexpr std::string_view limit_keys[] = {"title", "stricter", "of", "by", "type", "plausible", "values"};

// The map of keys, columns and rows in `{table: …}`; nullptr when the value is no table.
const document::Node* table_in(const document::Node& value);

// What expressions may name, in the order of its index.
struct Declarations {
  std::vector<Limit> limits;  // chains empty
  std::vector<Table> tables;  // the named ones, then one frame without rows a limit that holds a table
  std::vector<expression::LimitSignature> limit_names;
  std::vector<expression::TableSignature> table_names;
};

// Signatures of all limits. Types come from `type:`, else from the first value; a value that is an expression is
// compiled for it once what it uses is known. Derived values of `vocabulary` without a type get theirs in the same way
// when `derive` is set (then it is `&vocabulary`).
Declarations declare(const std::vector<WrittenLimit>& written, std::vector<Table> tables,
                     const vocabulary::Vocabulary& vocabulary, vocabulary::Vocabulary* derive,
                     text::Diagnostics& found);

// A limit or derived value without a type is said where it is declared; from `from` on, its users' echoes go.
void forget_echoes(text::Diagnostics& found, std::size_t from);

// The scope of a limit's values, of a derived value's formula, of a rule.
expression::Scope scope_of(const Declarations& all, const vocabulary::Vocabulary& vocabulary);
expression::Scope scope_of(const Declarations& all, const vocabulary::Vocabulary& vocabulary, const Limit& limit);
expression::Scope scope_of(const Declarations& all, const vocabulary::Vocabulary& vocabulary, vocabulary::ShapeId shape,
                           const vocabulary::Field& derived);

// One value of a limit, without citation and layer; nullopt when it is wrong (which is said). Rows of a table it holds
// become one more table of `all`.
std::optional<LimitValue> read_limit_value(const document::Node& node, const Limit& limit, Declarations& all,
                                           const vocabulary::Vocabulary& vocabulary, text::Diagnostics& found);

// One value as an expression; a value that is no expression, or `unknown`, is one literal.
std::optional<expression::Tree> read_tree(const document::Node& node, const vocabulary::Type& type,
                                          const expression::Scope& scope, text::Diagnostics& found);

}  // namespace headgate::rulebook
