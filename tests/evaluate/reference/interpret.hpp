// The plain tree interpreter: an expression over one site, every node kept. Deliberately naive: it
// follows the language page line by line.
//
//   Interpreter run(book, site, options);
//   Evaluated result = run.evaluate(tree, {});     // frame: the elements of the variables handed in
#pragma once

#include <map>
#include <set>
#include <vector>

#include "evaluate/judge.hpp"
#include "evaluate/look_up.hpp"

namespace headgate::evaluate {

using Frame = std::vector<site::ElementId>;

// The elements of a list a binder looks at, and whether there can be no others.
struct Walked {
  site::ListId list = site::nowhere;
  std::vector<site::ElementId> elements;
  bool complete = false;
};

class Interpreter {
 public:
  Interpreter(const rulebook::Rulebook& book, const site::Site& site) : book_(book), site_(site) {}

  Evaluated evaluate(const expression::Tree& tree, const Frame& handed);

  // Papers count for the rule in hand, and for the element its finding is about.
  void in_hand(const rulebook::Rule* rule, const std::vector<site::ElementId>& elements);

 private:
  struct Base {
    std::uint32_t limit = 0;
    std::size_t chain = 0;       // the value whose expression runs
    std::size_t key = 0;
    site::ElementId element = site::nowhere;
  };

  Walked walk(const expression::Tree& tree, const expression::Node& node, Frame& frame);
  Evaluated run(const expression::Tree& tree, expression::NodeId id, Frame& frame);
  Evaluated logic(const expression::Tree& tree, const expression::Node& node, Evaluated out, Frame& frame);
  Evaluated relation(const expression::Tree& tree, const expression::Node& node, Evaluated out, Frame& frame);
  Evaluated item(const expression::Tree& tree, const expression::Node& node, Evaluated out, Frame& frame);
  Evaluated presence(const expression::Tree& tree, const expression::Node& node, Evaluated out, Frame& frame);
  Evaluated arithmetic(const expression::Tree& tree, const expression::Node& node, Evaluated out, Frame& frame);
  Evaluated date_step(const expression::Node& node, Evaluated out);
  Evaluated path(const expression::Node& node, Evaluated out, const Frame& frame);
  Evaluated reading(const expression::Tree& tree, const expression::Node& node, Evaluated out, Frame& frame);
  Evaluated property(const expression::Tree& tree, const expression::Node& node, Evaluated out, Frame& frame);
  Evaluated quantifier(const expression::Tree& tree, const expression::Node& node, Evaluated out, Frame& frame);
  Evaluated fold(const expression::Tree& tree, const expression::Node& node, Evaluated out, Frame& frame);
  Evaluated extreme(const expression::Tree& tree, const expression::Node& node, Evaluated out, Frame& frame);
  Evaluated choose(const expression::Tree& tree, const expression::Node& node, Evaluated out, Frame& frame);
  Evaluated limit(const expression::Tree& tree, const expression::Node& node, Evaluated out, Frame& frame);
  Evaluated limit_value(std::uint32_t index, std::size_t from, std::size_t key, site::ElementId element, Evaluated out);
  Evaluated in_list(const expression::Tree& tree, const expression::Node& node, Evaluated out, Frame& frame);
  Evaluated table(const expression::Tree& tree, const expression::Node& node, Evaluated out, Frame& frame);
  Evaluated call(const expression::Tree& tree, const expression::Node& node, Evaluated out, Frame& frame);
  Evaluated paper(const expression::Node& node, Evaluated out);
  Evaluated confirmed(const expression::Node& node, Evaluated out);
  Evaluated derived(const rulebook::Derived& derivation, site::ElementId element, Evaluated out);
  void run_kids(const expression::Tree& tree, const expression::Node& node, Evaluated& out, Frame& frame);

  const rulebook::Rulebook& book_;
  const site::Site& site_;
  const rulebook::Rule* rule_ = nullptr;
  std::vector<site::ElementId> elements_;
  std::vector<Base> bases_;
  std::map<std::pair<site::ElementId, site::FieldId>, Evaluated> derived_;
  std::set<std::pair<site::ElementId, site::FieldId>> running_;
};

// The first reason below an undecided node that names something to find out.
Why reason(const Evaluated& of);

}  // namespace headgate::evaluate
