// Lays trees out over a site. Used by make_plan only.
#pragma once

#include <map>
#include <set>
#include <string>
#include <string_view>
#include <tuple>

#include "evaluate/lists.hpp"
#include "evaluate/plan.hpp"
#include "evaluate/values.hpp"

namespace headgate::evaluate {

using Frame = std::vector<site::ElementId>;

class Planner {
 public:
  explicit Planner(Plan& plan);

  PlannedId plan(const expression::Tree& tree, const Frame& handed);
  // A derived value's formula for one element, also where the site states the value; not_planned in a circle.
  PlannedId formula_of(const rulebook::Derived& derivation, site::ElementId element);
  void in_hand(const rulebook::Rule* rule, const std::vector<site::ElementId>& elements);

  CellId truth_cell(Code code, const std::vector<CellId>& operands);  // all_of, any_of over clauses
  CellId constant(const Cell& cell);
  CellId yes() { return constant_truth(Truth::yes); }
  CellId cell(PlannedId node) const { return plan_.nodes[node].cell; }

 private:
  struct Base {
    std::uint32_t limit = 0;
    std::size_t chain = 0;
    std::size_t key = 0;
    site::ElementId element = site::nowhere;
    const Frame* in_hand = nullptr;
  };
  // The elements in hand where a limit is asked, and where the limit was asked that asks it.
  struct Hand {
    const Frame* frame = nullptr;
    const Hand* outer = nullptr;
  };
  // What a node is while it is laid out; `kids` are added to the plan at the end.
  struct Draft {
    Planned planned;
    std::vector<PlannedId> kids;
    const expression::Node* node = nullptr;
    const expression::Tree* tree = nullptr;
  };

  PlannedId lay(const expression::Tree& tree, expression::NodeId id, Frame& frame);
  PlannedId keep(Draft& draft);
  void all_kids(Draft& draft, Frame& frame);
  void step(Draft& draft, Code code, const std::vector<CellId>& operands, double grid = 1);
  std::vector<CellId> cells(const Draft& draft) const;
  CellId constant_truth(Truth truth);
  void not_known(Draft& draft, Why why);

  void logic(Draft& draft, Frame& frame);
  void relation(Draft& draft, Frame& frame);
  void comes(Draft& draft, Frame& frame);
  void item(Draft& draft, Frame& frame);
  void in_list(Draft& draft, Frame& frame);
  void kind_in_list(Draft& draft, const std::vector<vocabulary::Value>& kinds);
  void presence(Draft& draft, Frame& frame);
  void arithmetic(Draft& draft, Frame& frame);
  void path(Draft& draft, const Frame& frame);
  void fact(Draft& draft, const site::Slot& slot);
  void derived(Draft& draft, const rulebook::Derived& derivation, site::ElementId element);
  std::optional<PlannedId> formula(const rulebook::Derived& derivation, site::ElementId element);
  void upstream_first(site::ElementId element, std::string_view name);
  void quantifier(Draft& draft, Frame& frame);
  void fold(Draft& draft, Frame& frame);
  static bool counts_for(const rulebook::LimitValue& value, site::ElementId element, const Hand& hand);
  void limit(Draft& draft, Frame& frame);
  // The value of a limit for a key or an element, or, where it has neither, with these elements in hand; `lay_limit`
  // where it was not laid out before.
  void lay_limit(Draft& draft, std::uint32_t index, std::size_t from, std::size_t key, site::ElementId element,
                 const Frame& in_hand);
  void limit_value(Draft& draft, std::uint32_t index, std::size_t from, std::size_t key, site::ElementId element,
                   const Frame& in_hand);
  void limit_rows(Draft& draft, const Frame& in_hand);
  bool too_deep() const;
  bool full() const { return plan_.nodes.size() >= most_nodes; }
  void look_up(Draft& draft, Frame& frame);
  CellId kind_key(CellId key, const Draft& draft, std::size_t index);
  void paper(Draft& draft, const Frame& frame);
  void confirmed(Draft& draft);

  Plan& plan_;
  const rulebook::Rulebook& book_;
  const site::Site& site_;
  const rulebook::Rule* rule_ = nullptr;
  std::vector<site::ElementId> elements_;
  std::vector<Base> bases_;
  const Hand* hand_ = nullptr;
  std::map<std::pair<site::ElementId, site::FieldId>, PlannedId> derived_;
  // A limit's value by limit, layer, key and element, for the rule in hand (a paper may decide in it); where no order is
  // for one element only, it is the same wherever it is asked.
  struct LimitValued {
    std::int32_t chain = -1;
    CellId cell = 0;
    std::vector<PlannedId> kids;
  };
  std::map<std::tuple<std::uint32_t, std::size_t, std::size_t, site::ElementId>, LimitValued> limits_;
  bool orders_by_element_ = false;
  std::size_t limits_running_ = 0;
  std::set<std::pair<site::ElementId, site::FieldId>> running_;
  std::map<std::string, std::size_t> laid_upstream_;  // by derived value: how much of the walk
  std::vector<std::size_t> place_in_walk_;            // of each element, in downstream order
  std::map<const site::Slot*, CellId> facts_;
  std::map<const vocabulary::Value*, CellId> literals_;
};

}  // namespace headgate::evaluate
