#include "evaluate/work_out.hpp"

#include <algorithm>

#include "evaluate/planner.hpp"

namespace headgate::evaluate {

namespace {

// Records and loose elements as they were written, then what stands in walks, each after what is upstream of it.
std::vector<site::ElementId> reading_order(const site::Site& site) {
  std::vector<site::ElementId> order;
  for (site::ElementId id = 0; id < site.elements.size(); ++id) {
    if (site.elements[id].walk == site::nowhere) order.push_back(id);
  }
  order.insert(order.end(), site.downstream_order.begin(), site.downstream_order.end());
  return order;
}

}  // namespace

Worked work_out(const rulebook::Rulebook& book, const site::Site& site) {
  Worked worked;
  worked.plan = empty_plan(book, site, std::nullopt);
  Planner planner(worked.plan);
  std::vector<const rulebook::Derived*> derived;
  for (const auto& each : book.derived) derived.push_back(&each);
  std::sort(derived.begin(), derived.end(), [](const auto* a, const auto* b) { return a->field < b->field; });
  for (const site::ElementId element : reading_order(site)) {
    for (const auto* each : derived) {
      if (each->shape != site.elements[element].shape) continue;
      const PlannedId formula = planner.formula_of(*each, element);
      if (formula == not_planned) continue;
      const bool stated = site.slot(element, each->field).origin != site::Origin::left_out;
      worked.values.push_back({element, each, formula, stated});
    }
  }
  worked.cells = worked.plan.cells;
  run(worked.plan, worked.cells);
  return worked;
}

}  // namespace headgate::evaluate
