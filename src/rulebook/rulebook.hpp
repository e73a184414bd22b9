// The resolved rulebook: what one authority asks on one day, flat and immutable. Every limit, rule
// and table remembers the layers that touched it.
//
//   add(library, node, found);                               // each file: vocabulary, sources, tables, rules
//   auto place = read_place(node, found);                    // format: place/1
//   auto book = resolve(library, vocabulary, place, day, found);
//   resolve of a place that drops a rule nobody wrote -> diagnostic "no-such-rule" with the nearest id
#pragma once

#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "expression/parse.hpp"
#include "expression/scope.hpp"
#include "expression/tree.hpp"
#include "rulebook/citation.hpp"
#include "vocabulary/vocabulary.hpp"

namespace headgate::rulebook {

// What set a value: the base rules, or a place's dated change, or a paper of the site.
struct Layer {
  std::string place;                  // "" : the project's rules or a paper; else the place's id
  std::string title;                  // of the change: "Ordinance 26-14, after the spring main breaks"; "" for none;
                                      // of a paper "order of water-superintendent, 2026-09-01, number X"
  std::optional<quantity::Day> from;  // [from, until)
  std::optional<quantity::Day> until;
  text::Range range;
};

enum class Match : std::uint8_t { exact, next_up, linear, range };

inline constexpr std::size_t most_table_keys = 16;

struct Table {
  expression::TableSignature signature;  // with at most most_table_keys keys
  std::string title;
  std::vector<Citation> sources;
  std::vector<Match> match;  // one a key
  struct Row {
    std::vector<vocabulary::Value> keys;  // of a range key: number = [from, to]
    std::vector<vocabulary::Value> cells;
    text::Range range;
  };
  std::vector<Row> rows;
  std::optional<std::vector<vocabulary::Value>> over;  // cells for keys past the last row
  Layer layer;
  text::Range range;
};

// One source's value of a limit.
struct LimitValue {
  enum class Form : std::uint8_t { unknown, expression, list, rows, table };
  Form form = Form::unknown;
  Citation citation;
  Layer layer;
  std::string written;                   // as in the file, for showing
  std::optional<expression::Tree> tree;  // of an expression; a plain quantity is one literal
  std::vector<vocabulary::Value> list;
  std::vector<std::pair<std::size_t, expression::Tree>> rows;  // key: ShapeId or member index
  std::uint32_t table = 0;                                     // index into Rulebook::tables
  std::string doubt;                                           // of the value, its section or its paper
  vocabulary::ElementId at = vocabulary::nowhere;              // of a paper: it counts for this element only
  text::Range range;
};

enum class Stricter : std::uint8_t { neither, lower, higher };

struct Limit {
  expression::LimitSignature signature;
  std::string title;
  Stricter stricter = Stricter::neither;
  std::optional<quantity::Interval> plausible;  // SI; of a span in days, a month as 30 and a year as 365
  std::vector<LimitValue> chain;  // in force on the day, strongest first; empty: no adopted source has a value
  text::Range range;
};

// One expression, or labelled clauses that nest.
struct Clause {
  enum class Mode : std::uint8_t { single, all, any };
  Mode mode = Mode::single;
  std::string label;  // "" for an unlabelled single expression
  std::optional<expression::Tree> tree;
  std::vector<Clause> kids;
  std::vector<Citation> sources;  // of an exception: it is in force only where one of these is
  text::Range range;
};

enum class Level : std::uint8_t { must, should, note };

// A text with {path} holes.
struct Text {
  std::string written;
  std::vector<std::pair<std::size_t, expression::Tree>> holes;  // offset of the { in written, and the path
};

// Why a rule does not bind here at all.
enum class Standing : std::uint8_t { in_force, dropped, not_begun, ended, not_adopted, no_limit };

struct Rule {
  std::string id, topic, title, why, fix, caution, often_misread;
  std::vector<Citation> sources;  // all it cites
  std::vector<Citation> adopted;  // those in force here
  std::size_t stage = 0;          // index into Vocabulary::stages
  Level level = Level::must;
  expression::Each each;  // binders, none for a rule about the whole site
  std::optional<Clause> when;
  std::vector<Clause> unless;            // exceptions in force here
  std::optional<Clause> require;         // none for a note or a duty
  std::optional<expression::Tree> due;   // a date
  std::optional<expression::Tree> done;  // a date fact
  Text if_not;
  Standing standing = Standing::in_force;
  std::string standing_says;          // "dropped by Ordinance 26-14", "no adopted source gives limit.x"
  std::vector<Layer> layers;          // who wrote it, who changed it, in order
  std::vector<std::uint32_t> limits;  // every limit it reaches, through limits and derived values too; sorted
  text::Range range;
};

// A derived value: the formula of one field of one shape.
struct Derived {
  vocabulary::ShapeId shape = 0;
  vocabulary::FieldId field = 0;
  expression::Tree tree;  // variable 0 is the element itself
};

// A fact the place knows: `given: {site.frost-depth: 30 in}`.
struct Given {
  std::string address;
  text::Range address_range;
  const document::Node* value = nullptr;
  Layer layer;
};

struct Rulebook {
  const vocabulary::Vocabulary* vocabulary = nullptr;
  std::string place, title;
  std::vector<std::string> adopts;
  std::string also;                  // id of the second authority, "" for none
  std::optional<quantity::Day> day;  // the day it was resolved for
  std::vector<SourceDocument> documents;
  std::vector<Table> tables;
  std::vector<Limit> limits;
  std::vector<Rule> rules;
  std::vector<Derived> derived;  // in dependency order
  std::vector<Given> given;
  quantity::ClosedDays closed;
  std::optional<std::uint32_t> ladders;     // the table `size-ladder`, for sizes-up
  std::optional<std::uint32_t> size_match;  // the table `size-equivalence`

  std::optional<std::uint32_t> limit(std::string_view name) const;
  std::optional<std::uint32_t> table(std::string_view name) const;
  std::optional<std::uint32_t> rule(std::string_view id) const;
  const Derived* derivation(vocabulary::ShapeId shape, vocabulary::FieldId field) const;
};

}  // namespace headgate::rulebook
