// Limits and derived values in the order in which one needs the other, and the circles among them. Not
// for other layers.
//
//   a: b + 1, b: c, c: a              -> "circle": limit.a -> limit.b -> limit.c -> limit.a
//   pipe.p: pipe.previous.p - 1 psi   -> allowed: it is computed front to back
#pragma once

#include <map>
#include <utility>
#include <vector>

#include "rulebook/rulebook.hpp"
#include "rulebook/uses.hpp"

namespace headgate::rulebook {

class Needs {
 public:
  // Of a rulebook whose limits have their chains and whose derived values stand in any order.
  explicit Needs(const Rulebook& book);

  // Says every circle, and gives the derived values so that each comes after what it needs.
  std::vector<std::size_t> order(text::Diagnostics& found) const;

  // Every limit reached from these uses, sorted; `through_derived` false: through limits only.
  std::vector<std::uint32_t> limits_behind(const std::vector<Use>& uses, bool through_derived) const;

 private:
  struct Edge {
    std::size_t to = 0;
    Reach reach = Reach::same;
    text::Range range;
  };

  void connect(std::size_t from, const expression::Tree& tree, const std::vector<vocabulary::ShapeSet>& handed);
  std::size_t node_of(const Use& use) const;
  std::string name(std::size_t node) const;
  std::vector<std::size_t> components() const;
  void say_circles(const std::vector<std::size_t>& component, text::Diagnostics& found) const;
  std::vector<std::size_t> way(std::size_t from, std::size_t to, const std::vector<std::size_t>& component,
                               bool upstream) const;

  const Rulebook& book_;
  std::map<std::pair<vocabulary::ShapeId, vocabulary::FieldId>, std::size_t> derived_;
  std::vector<std::vector<Edge>> edges_;  // limits first, then derived values
};

}  // namespace headgate::rulebook
