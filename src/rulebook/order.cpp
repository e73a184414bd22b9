#include "rulebook/order.hpp"

#include <algorithm>

namespace headgate::rulebook {

using text::Diagnostics;
using vocabulary::ShapeSet;

namespace {

constexpr std::size_t none = static_cast<std::size_t>(-1);

}  // namespace

Needs::Needs(const Rulebook& book) : book_(book), edges_(book.limits.size() + book.derived.size()) {
  for (std::size_t i = 0; i < book.derived.size(); ++i) {
    derived_.emplace(std::pair(book.derived[i].shape, book.derived[i].field), book.limits.size() + i);
  }
  for (std::size_t i = 0; i < book.limits.size(); ++i) {
    const Limit& limit = book.limits[i];
    std::vector<ShapeSet> handed;
    if (limit.signature.of.any()) handed.push_back(limit.signature.of);
    for (const LimitValue& value : limit.chain) {
      if (value.tree) connect(i, *value.tree, handed);
      for (const auto& row : value.rows) connect(i, row.second, handed);
    }
  }
  for (std::size_t i = 0; i < book.derived.size(); ++i) {
    ShapeSet self;
    self.set(book.derived[i].shape);
    connect(book.limits.size() + i, book.derived[i].tree, {self});
  }
}

void Needs::connect(std::size_t from, const expression::Tree& tree, const std::vector<ShapeSet>& handed) {
  for (const Use& use : uses_of(tree, handed, *book_.vocabulary)) {
    const std::size_t to = node_of(use);
    if (to != none) edges_[from].push_back({to, use.reach, use.range});
  }
}

std::size_t Needs::node_of(const Use& use) const {
  if (use.limit) return use.index < book_.limits.size() ? use.index : none;
  const auto at = derived_.find({use.shape, use.field});
  return at == derived_.end() ? none : at->second;
}

std::string Needs::name(std::size_t node) const {
  if (node < book_.limits.size()) return "limit." + book_.limits[node].signature.name;
  const Derived& derived = book_.derived[node - book_.limits.size()];
  const auto& shape = book_.vocabulary->shapes[derived.shape];
  return shape.name + "." + shape.fields[derived.field].name;
}

// Tarjan's strongly connected components, without recursion: hostile files may be deep. A component's number is smaller
// than that of those that need it.
std::vector<std::size_t> Needs::components() const {
  struct Visit {
    std::size_t node;
    std::size_t edge;
  };
  std::vector<std::size_t> component(edges_.size(), none), seen(edges_.size(), none), low(edges_.size(), none), stack;
  std::vector<Visit> visits;
  std::size_t count = 0;
  std::size_t components = 0;
  for (std::size_t root = 0; root < edges_.size(); ++root) {
    if (seen[root] == none) visits.push_back({root, 0});
    while (!visits.empty()) {
      const std::size_t node = visits.back().node;
      if (visits.back().edge == 0 && seen[node] == none) {
        seen[node] = low[node] = count++;
        stack.push_back(node);
      }
      if (visits.back().edge < edges_[node].size()) {
        const std::size_t to = edges_[node][visits.back().edge++].to;
        if (seen[to] == none)
          visits.push_back({to, 0});
        else if (component[to] == none)
          low[node] = std::min(low[node], seen[to]);
        continue;
      }
      if (low[node] == seen[node]) {
        for (std::size_t member = none; member != node;) {
          member = stack.back();
          stack.pop_back();
          component[member] = components;
        }
        ++components;
      }
      visits.pop_back();
      if (!visits.empty()) low[visits.back().node] = std::min(low[visits.back().node], low[node]);
    }
  }
  return component;
}

// The shortest way inside one component, both ends included; empty when there is none.
std::vector<std::size_t> Needs::way(std::size_t from, std::size_t to, const std::vector<std::size_t>& component,
                                    bool upstream) const {
  std::vector<std::size_t> before(edges_.size(), none), queue{from};
  before[from] = from;
  for (std::size_t i = 0; i < queue.size() && before[to] == none; ++i) {
    for (const Edge& edge : edges_[queue[i]]) {
      const bool open = upstream || edge.reach != Reach::upstream;
      if (!open || component[edge.to] != component[from] || before[edge.to] != none) continue;
      before[edge.to] = queue[i];
      queue.push_back(edge.to);
    }
  }
  if (before[to] == none) return {};
  std::vector<std::size_t> path{to};
  while (path.back() != from) path.push_back(before[path.back()]);
  std::reverse(path.begin(), path.end());
  return path;
}

// Inside a component only what points upstream may come round again; one circle a component is enough to find it.
void Needs::say_circles(const std::vector<std::size_t>& component, Diagnostics& found) const {
  std::vector<bool> said(edges_.size(), false);
  for (std::size_t from = 0; from < edges_.size(); ++from) {
    for (const Edge& edge : edges_[from]) {
      if (component[from] != component[edge.to] || said[component[from]] || edge.reach == Reach::upstream) continue;
      const std::vector<std::size_t> back = way(edge.to, from, component, edge.reach == Reach::other);
      if (back.empty()) continue;
      said[component[from]] = true;
      std::string path = name(from);
      for (const std::size_t node : back) path += " -> " + name(node);
      found.push_back(text::say("circle", edge.range, {path}));
    }
  }
}

// What comes round again by looking upstream does not hold up the order: it is computed element by element.
std::vector<std::size_t> Needs::order(Diagnostics& found) const {
  const std::vector<std::size_t> component = components();
  say_circles(component, found);
  const std::size_t first = book_.limits.size();
  std::vector<std::size_t> order;
  std::vector<bool> seen(edges_.size(), false);
  std::vector<std::pair<std::size_t, std::size_t>> visits;  // node, next edge
  const auto visit = [&](std::size_t node) {
    if (!seen[node]) visits.emplace_back(node, 0);
    seen[node] = true;
  };
  for (std::size_t root = first; root < edges_.size(); ++root) {
    visit(root);
    while (!visits.empty()) {
      const std::size_t node = visits.back().first;
      if (visits.back().second < edges_[node].size()) {
        const Edge& edge = edges_[node][visits.back().second++];
        if (edge.reach != Reach::upstream || component[edge.to] != component[node]) visit(edge.to);
        continue;
      }
      if (node >= first) order.push_back(node - first);
      visits.pop_back();
    }
  }
  return order;
}

std::vector<std::uint32_t> Needs::limits_behind(const std::vector<Use>& uses, bool through_derived) const {
  std::vector<bool> met(edges_.size(), false);
  std::vector<std::size_t> queue;
  const auto meet = [&](std::size_t node) {
    if (node == none || met[node] || (node >= book_.limits.size() && !through_derived)) return;
    met[node] = true;
    queue.push_back(node);
  };
  for (const Use& use : uses) meet(node_of(use));
  for (std::size_t i = 0; i < queue.size(); ++i) {
    for (const Edge& edge : edges_[queue[i]]) meet(edge.to);
  }
  std::vector<std::uint32_t> limits;
  for (std::size_t i = 0; i < book_.limits.size(); ++i) {
    if (met[i]) limits.push_back(static_cast<std::uint32_t>(i));
  }
  return limits;
}

}  // namespace headgate::rulebook
