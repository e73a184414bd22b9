// The flat evaluator. A plan is a rulebook laid out over one site: every node of every rule that there
// is something to judge for, list bodies once an element, as one array of steps in dependency order.
// Deciding runs the steps from first to last and fills one array of cells: no recursion, no short
// circuit, no allocation, no virtual call. Explanations read the cells afterwards, so they can never
// disagree with the decision.
//
//   Plan plan = make_plan(book, site);                 // counts and reserves everything
//   std::vector<Cell> cells = plan.cells;              // facts and constants stand in it already
//   run(plan, cells);                                  // every step, in order
//   plan.nodes[plan.instances[0].require.node].cell    // where a clause's truth stands
//   a path to a record that is not there is a constant cell: unknown, Why::missing
#pragma once

#include <cstdint>
#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "evaluate/trace.hpp"

namespace headgate::evaluate {

// A value as the steps see it. Units and texts are found again through the node when something is shown.
struct Cell {
  double lo = -std::numeric_limits<double>::infinity();
  double hi = std::numeric_limits<double>::infinity();
  std::uint64_t members = ~std::uint64_t{0};
  std::uint32_t id = vocabulary::nowhere;
  vocabulary::Presence presence = vocabulary::Presence::unknown;
  Truth truth = Truth::undecided;
  Why why = Why::known;
  std::uint8_t extra = 0;  // of a size: its ladder; of a span: its unit
};

Cell cell_of(const vocabulary::Value& value, Why why);
vocabulary::Value value_of(const Cell& cell);

using CellId = std::uint32_t;
using PlannedId = std::uint32_t;
inline constexpr PlannedId not_planned = 0xffffffffU;

// clang-format off
enum class Code : std::uint8_t {
  all_of, any_of, invert,               // operands
  compare_less, compare_less_or_equal,  // operand 0 < operand 1 (greater: swapped)
  between,                              // operands 0, 1, 2
  same, one_of,                         // operand 0 is the same as one of the others
  member,                               // operand 0, a choice, is one of the others, single members
  in_list, in_season,                   // operand 0; the node's limit
  is_none, fitted, recorded,
  some, every, none_of,                 // pairs (where, has), always yes where absent; `finished`
  count, sum, least_of, greatest_of,    // pairs (where, value); `finished`, `grows`
  add, subtract, multiply, divide, negate, least, greatest, date_step,
  property, reading, choose, look_up, call,
  select_row,                           // operand 0 the key, then a row for each member
  copy                                  // of a limit or derived value: operand 0 with `parts` for a reason
};
// clang-format on

struct Step {
  Code code = Code::copy;
  bool negated = false;
  bool finished = true;     // of a walk: the list holds no others
  bool grows = false;       // of a sum: what is not seen can only add
  bool sizes = false;       // operands are nominal sizes, which stand on two ladders
  std::uint32_t first = 0;  // operands[first, first + count)
  std::uint32_t count = 0;
  CellId out = 0;
  PlannedId node = not_planned;
  double grid = 1;
};

// One node of a tree over one binding, with where its value stands.
struct Planned {
  const expression::Tree* tree = nullptr;
  expression::NodeId node = expression::no_node;
  CellId cell = 0;
  site::ElementId element = site::nowhere;
  site::FieldId field = 0;
  std::uint32_t beyond = 0;  // how many of the path's last steps were not reached
  std::int32_t limit = -1, chain = -1, table = -1, paper = -1;
  site::ElementId about = site::nowhere;
  site::ListId list = site::nowhere;
  const site::Slot* slot = nullptr;  // of a path that ends in a stated or missing fact
  std::uint32_t first_kid = 0;       // kids[first_kid, first_kid + kid_count)
  std::uint32_t kid_count = 0;
};

// A clause over one binding.
struct PlannedClause {
  const rulebook::Clause* clause = nullptr;
  CellId truth = 0;
  PlannedId node = not_planned;  // of a single expression
  bool approval = false;         // of a single expression: some part of it is an approval
  std::vector<PlannedClause> kids;
};

// One rule about one binding.
struct Instance {
  std::uint32_t rule = 0;
  std::vector<site::ElementId> elements;
  std::vector<PlannedId> where;
  CellId reached = 0;  // all of `where`
  std::optional<PlannedClause> when, require;
  std::vector<PlannedClause> unless;
  PlannedId due = not_planned, done = not_planned;
  std::vector<PlannedId> holes;
  bool approvals = false;  // some clause holds an approval
};

// What deciding reads of an instance, side by side. `plain`: no duty and no approval, so nothing else.
struct Brief {
  CellId reached = 0, when = 0, exception = 0, require = 0;  // yes or no where the rule has none
  std::uint32_t stage = 0;
  std::uint16_t row = 0;  // of the outcomes, see judge.cpp
  bool plain = true;
};

// Steps of one code that do not need one another: steps[first, last).
struct Group {
  Code code = Code::copy;
  bool sizes = false;
  std::uint32_t first = 0, last = 0;
};

// A comparison of stated facts and plain limits, all of them there: most comparisons are. What it compares stands in
// it, so that nothing need be fetched. Ends further apart than `margin` compare as they are, whatever snapping does.
struct Comparison {
  quantity::Interval left, right;
  double margin = 0;
  CellId out = 0;
  std::uint32_t step = 0;
};

// A list an `each` walks that may hold more than was written, and whether the walk comes that far: all the
// `where` before it.
struct OpenList {
  site::ListId list = site::nowhere;
  CellId reached = 0;
};

struct RulePlan {
  std::uint32_t first_instance = 0;
  std::uint32_t instance_count = 0;
  bool in_force = false;
  bool asked = false;          // it is laid out at all
  std::vector<OpenList> open;  // in the order of the walk; one may come up several times
};

struct Plan {
  const rulebook::Rulebook* book = nullptr;
  const site::Site* site = nullptr;
  std::optional<quantity::Interval> checked_on;  // the day papers are judged on; nothing when it is not known
  std::vector<Cell> cells;                       // facts and constants filled in
  std::vector<Step> steps;
  std::vector<Comparison> comparisons;  // of steps[0, compared)
  std::vector<Group> groups;            // of steps[compared, grouped)
  std::size_t compared = 0;
  std::size_t grouped = 0;
  std::vector<CellId> operands;
  std::vector<Planned> nodes;
  std::vector<PlannedId> kids;
  std::vector<Instance> instances;
  std::vector<Brief> briefs;    // one an instance
  std::size_t open_lists = 0;   // of all rules
  std::vector<RulePlan> rules;  // one a rule of the book
};

// What one plan may hold; past it a value is not known (Why::too_large). A town's whole rulebook over a long line has some
// ten thousand nodes; these take about a gigabyte, and without the bound a rule of nested lists or a limit that doubles
// another would take all there is.
inline constexpr std::size_t most_nodes = 4'000'000;
// Of one rule with several things in its `each`. Two hundred pipes with five neighbours each are a thousand.
inline constexpr std::size_t most_combinations = 100'000;

// Says each rule in force that this site would have judged more often than that.
void say_too_many(const rulebook::Rulebook& book, const site::Site& site, text::Diagnostics& found);

// Nothing in it yet, over this book and site.
Plan empty_plan(const rulebook::Rulebook& book, const site::Site& site, std::optional<quantity::Day> checked_on);
// `checked_on`: instead of the day the site says.
Plan make_plan(const rulebook::Rulebook& book, const site::Site& site, const std::string& only_rule = "",
               std::optional<quantity::Day> checked_on = std::nullopt);
// Puts the steps in order of what they need and then of their code, so that like steps run together.
void group_steps(Plan& plan);
// One expression alone; its root is the last node of the plan.
Plan make_plan(const rulebook::Rulebook& book, const site::Site& site, const expression::Tree& tree);

// `cells` begins as a copy of plan.cells and is filled.
void run(const Plan& plan, std::vector<Cell>& cells);

// Every node below `node` with its value.
Evaluated evaluated(const Plan& plan, const std::vector<Cell>& cells, PlannedId node);

}  // namespace headgate::evaluate
