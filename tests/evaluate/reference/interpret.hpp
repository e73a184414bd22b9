// The language page once more, as plainly as it can be said: a tree walked for its value, kid by kid.
// Slow and without memory on purpose; the evaluator must say the same.
//
//   Interpreter interpreter(book, site, {});
//   interpreter.work(tree, {}).value           // of an expression without variables
//   interpreter.work(tree, {wall}).value       // variable 0 is the element `wall`
#pragma once

#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "evaluate/values.hpp"

namespace headgate::reference {

using evaluate::Truth;
using expression::Node;
using expression::NodeId;
using expression::Op;
using expression::Tree;
using quantity::Interval;
using vocabulary::Presence;
using vocabulary::Type;
using vocabulary::Value;
using Frame = std::vector<site::ElementId>;

// A node with what it came to, and what that was made of. Kids stand in the node's own order; of a limit
// the expression of its value follows its keys, of a derived path its formula is the only kid, and of a
// list there is a kid for each element and part.
struct Worked {
  const Tree* tree = nullptr;
  NodeId node = expression::no_node;
  Value value;
  site::ElementId about = site::nowhere;  // of a list's kid
  std::vector<Worked> kids;
};

// A list as a quantifier sees it.
struct Seen {
  site::ListId list = site::nowhere;
  std::vector<site::ElementId> elements;  // of the kinds asked for
  bool complete = false;                  // there are no others of these kinds
};

class Interpreter {
 public:
  // `checked_on`: the day papers are judged on; nothing when it is not known.
  Interpreter(const rulebook::Rulebook& book, const site::Site& site,
              const std::optional<quantity::Interval>& checked_on)
      : book_(book), site_(site), checked_on_(checked_on) {}

  Worked work(const Tree& tree, const Frame& handed);
  Seen see(const Value& list, const vocabulary::ShapeSet& kinds) const;

  // Papers count for the rule in hand and the elements its finding is about.
  void in_hand(const rulebook::Rule* rule, const std::vector<site::ElementId>& elements);

 private:
  // The value of a limit whose expression is being worked out: what `base` starts from.
  struct Below {
    std::uint32_t limit = 0;
    std::size_t chain = 0;
    std::size_t row = 0;
    site::ElementId element = site::nowhere;
    Frame in_hand;
  };

  Worked node(const Tree& tree, NodeId id, Frame& frame);
  Value value(const Tree& tree, const Node& at, Worked& out, Frame& frame);

  Value logic(const Node& at, const Worked& out) const;
  Value relation(const Tree& tree, const Node& at, const Worked& out) const;
  Value is_one_of(const Tree& tree, const Node& at, const Worked& out) const;
  Value presence(const Tree& tree, const Node& at, const Worked& out) const;
  Value arithmetic(const Tree& tree, const Node& at, const Worked& out) const;
  Value sizes(const Node& at, const Worked& out) const;
  Value step_date(const Node& at, const Worked& out) const;
  Value property(const Tree& tree, const Node& at, const Worked& out) const;
  Value reading(const Node& at, const Worked& out) const;
  Value choose(const Node& at, const Worked& out) const;
  Value call(const Node& at, const Worked& out) const;

  Value path(const Node& at, Worked& out, const Frame& frame);
  Value derived(site::ElementId element, site::FieldId field, Worked& out);
  bool computed_in(site::ElementId record, std::string_view name) const;
  Value paper(const Node& at, const Frame& frame) const;
  Truth counts(site::ElementId paper, const Node& at, const std::string& subject, const Frame& frame) const;
  Value confirmed(const Node& at) const;

  Value quantifier(const Tree& tree, const Node& at, Worked& out, Frame& frame);
  Value fold(const Tree& tree, const Node& at, Worked& out, Frame& frame);
  Value count_or_sum(const Tree& tree, const Node& at, const Seen& seen, const Worked& out) const;
  Value extreme_of(const Node& at, const Seen& seen, const Worked& out) const;
  bool never_negative(const Tree& tree, NodeId id, const expression::Binder& of) const;

  Value limit(const Node& at, Worked& out, const Frame& in_hand);
  Value limit_row(std::uint32_t limit, std::size_t from, std::size_t row, site::ElementId element, Worked& out,
                  const Frame& in_hand);
  Value in_limit(const Tree& tree, const Node& at, Worked& out, Frame& frame);
  Value look_up(const Tree& tree, const Node& at, const Worked& out) const;

  const rulebook::Rulebook& book_;
  const site::Site& site_;
  std::optional<quantity::Interval> checked_on_;
  const rulebook::Rule* rule_ = nullptr;
  std::vector<site::ElementId> elements_;
  std::vector<Below> below_;
  std::set<std::pair<site::ElementId, site::FieldId>> running_;
};

}  // namespace headgate::reference
