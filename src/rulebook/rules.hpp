// Rules as they are written and changed, and read into what can be judged. Not for other layers.
#pragma once

#include <map>
#include <vector>

#include "rulebook/adoption.hpp"
#include "rulebook/limits.hpp"
#include "rulebook/uses.hpp"

namespace headgate::rulebook {

inline constexpr std::string_view rule_keys[] = {"title", "topic",  "source",  "stage",        "level", "each",
                                                 "when",  "unless", "require", "if-not",       "due",   "done",
                                                 "why",   "fix",    "caution", "often-misread"};

struct WrittenKey {
  const document::Entry* entry = nullptr;
  std::size_t change = of_project;
};

struct WrittenRule {
  std::string id, topic;
  const document::Entry* declared = nullptr;
  const document::Node* stage = nullptr;     // of the file, where the rule has none
  std::size_t change = of_project;           // who added it
  std::map<std::string, WrittenKey> keys;    // as changed by the day
  std::vector<std::size_t> changed_by;       // changes in force, in their order
  const document::Entry* changed = nullptr;  // in the last of them
  const document::Entry* dropped = nullptr;
  std::size_t dropped_by = of_project;
};

// Every rule of the project's files and of the place, with what the changes in force (in their order) made of it.
// All changes are checked, in force or not.
std::vector<WrittenRule> collect_rules(const Library& library, const Place& place,
                                       const std::vector<std::size_t>& in_force, const Documents& documents,
                                       text::Diagnostics& found);
// The rule as it was before any change.
WrittenRule unchanged(const WrittenRule& rule);

struct RuleReader {
  const Declarations& all;
  const vocabulary::Vocabulary& vocabulary;
  const Documents& documents;
  const Adoption& adoption;
  text::Diagnostics& found;
};

// All of a rule but its standing, every exception among it.
Rule read_rule(const WrittenRule& written, const RuleReader& reader);

// A clause, or nested clauses; nullopt when it is wrong (which is said).
std::optional<Clause> read_clause(const document::Node& node, Clause::Mode labelled, const expression::Scope& scope,
                                  const RuleReader& reader);
std::vector<Clause> read_exceptions(const document::Node& node, const expression::Scope& scope,
                                    const RuleReader& reader);

// Numbers and quantities compared in a rule, where a limit belongs; 0, 1 and 2 of something are counts.
void say_literals(const expression::Tree& tree, text::Diagnostics& found);

// What the variables of a rule's expressions may be.
std::vector<vocabulary::ShapeSet> variables_of(const Rule& rule);
// What all its expressions read.
std::vector<Use> uses_of(const Rule& rule, const vocabulary::Vocabulary& vocabulary);

// Leaves out the exceptions that cite a source of their own, none of which binds, unless a place wrote them.
void leave_out_exceptions(Rule& rule, const WrittenRule& written, const Adoption& adoption);

// Drops the clauses of `any` that reach a limit without value; the limit that leaves the rule not in force, if one does.
std::optional<std::uint32_t> drop_valueless(Rule& rule, const std::vector<bool>& valueless,
                                            const vocabulary::Vocabulary& vocabulary);

}  // namespace headgate::rulebook
