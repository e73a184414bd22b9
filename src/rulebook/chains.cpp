#include "rulebook/chains.hpp"

#include <algorithm>

#include "rulebook/uses.hpp"

namespace headgate::rulebook {

using expression::Tree;
using text::Diagnostics;
using text::say;
using vocabulary::Vocabulary;
using Form = LimitValue::Form;

namespace {

// A written value that was read, and how strongly it holds (least first).
struct Candidate {
  LimitValue value;
  std::size_t change = of_project;
  std::vector<Citation> citations;
  std::vector<std::size_t> rank;
};

bool rows_apart(const LimitValue& a, const LimitValue& b) {
  if (a.form != Form::rows || b.form != Form::rows) return false;
  for (const auto& row : a.rows) {
    for (const auto& other : b.rows) {
      if (row.first == other.first) return false;
    }
  }
  return true;
}

bool cite_together(const Candidate& a, const Candidate& b) {
  for (const Citation& one : a.citations) {
    for (const Citation& other : b.citations) {
      if (one.document == other.document) return true;
    }
  }
  return false;
}

class Filling {
 public:
  Filling(Declarations& all, const Place& place, const std::vector<std::size_t>& in_force, const Adoption& adoption,
          const Vocabulary& vocabulary, const std::vector<Order>& orders, Diagnostics& found)
      : all_(all),
        place_(place),
        adoption_(adoption),
        vocabulary_(vocabulary),
        orders_(orders),
        found_(found),
        order_(place.changes.size(), of_project) {
    for (std::size_t i = 0; i < in_force.size(); ++i) order_[in_force[i]] = i;
  }

  void fill(std::size_t index, const WrittenLimit& written) {
    std::vector<Candidate> candidates;
    for (const WrittenValue& each : written.values) {
      if (auto candidate = read(index, each)) candidates.push_back(std::move(*candidate));
    }
    for (std::size_t b = 1; b < candidates.size(); ++b) {
      for (std::size_t a = 0; a < b; ++a) check_pair(all_.limits[index], candidates[a], candidates[b]);
    }
    check_gaps(all_.limits[index], candidates);
    std::vector<Candidate> holding;
    for (Candidate& each : candidates) {
      if (holds(each)) holding.push_back(std::move(each));
    }
    std::stable_sort(holding.begin(), holding.end(),
                     [](const Candidate& a, const Candidate& b) { return a.rank < b.rank; });
    for (const Order& order : orders_) {
      if (order.limit.scalar == written.name) take(order, index);
    }
    for (Candidate& each : holding) all_.limits[index].chain.push_back(std::move(each.value));
    check_base(all_.limits[index]);
  }

 private:
  void take(const Order& order, std::size_t index) {
    const Limit limit = all_.limits[index];
    if (limit.signature.list || limit.signature.table != vocabulary::no_id) {
      found_.push_back(say("order-of-many", order.value.range,
                           {limit.signature.name, limit.signature.list ? "a list" : "a table"}, limit.range,
                           "the limit"));
      return;
    }
    auto value = read_limit_value(order.value, limit, all_, vocabulary_, found_);
    if (!value) return;
    value->citation.range = order.value.range;
    value->layer = order.layer;
    value->doubt = order.doubt;
    value->at = order.at;
    all_.limits[index].chain.push_back(std::move(*value));
  }

  std::optional<Candidate> read(std::size_t index, const WrittenValue& written) {
    const document::Entry& entry = *written.entry;
    Candidate candidate;
    candidate.change = written.change;
    candidate.citations = adoption_.documents->cite(entry.key, entry.key_range, found_);
    const Limit limit = all_.limits[index];
    auto value = read_limit_value(entry.value, limit, all_, vocabulary_, found_);
    if (!value || candidate.citations.empty()) return std::nullopt;
    candidate.value = std::move(*value);
    candidate.value.citation = candidate.citations.front();
    if (written.change != of_project)
      candidate.value.layer = place_.changes[written.change].layer;
    else
      candidate.value.layer.range = entry.key_range;
    return candidate;
  }

  const Layer& layer(const Candidate& of) const { return place_.changes[of.change].layer; }

  // Two values that nothing puts in an order.
  void check_pair(const Limit& limit, const Candidate& a, const Candidate& b) {
    if (rows_apart(a.value, b.value) || (a.change == of_project) != (b.change == of_project)) return;
    const std::string& name = limit.signature.name;
    const std::string says = "its other value";
    if (a.change == of_project || a.change == b.change) {
      if (a.change != of_project || cite_together(a, b)) {
        found_.push_back(say("limit-set-twice", b.value.citation.range, {name}, a.value.citation.range, says));
      }
      return;
    }
    const bool a_first = layer(a).from < layer(b).from;
    const Layer& first = a_first ? layer(a) : layer(b);
    const Layer& second = a_first ? layer(b) : layer(a);
    if (first.from == second.from) {
      found_.push_back(say("limit-set-together", b.value.citation.range, {name}, a.value.citation.range, says));
    } else if (first.until && *second.from < *first.until) {
      found_.push_back(say("limit-overlap", b.value.citation.range,
                           {name, quantity::show_date(*second.from), quantity::show_date(*first.until)},
                           a.value.citation.range, says));
    }
  }

  // Place values that leave days without any between them, and nothing below.
  void check_gaps(const Limit& limit, const std::vector<Candidate>& candidates) {
    std::vector<const Candidate*> dated;
    for (const Candidate& each : candidates) {
      const bool binds = each.change == of_project && !adoption_.binding(each.citations).empty();
      if (binds || (each.change != of_project && !layer(each).from)) return;
      if (each.change != of_project) dated.push_back(&each);
    }
    std::stable_sort(dated.begin(), dated.end(),
                     [&](const auto* a, const auto* b) { return layer(*a).from < layer(*b).from; });
    std::optional<quantity::Day> covered;  // the first day without a value
    for (std::size_t i = 0; i < dated.size(); ++i) {
      const Layer& now = layer(*dated[i]);
      if (i > 0 && *covered < *now.from) {
        found_.push_back(say("limit-gap", dated[i]->value.citation.range,
                             {limit.signature.name, quantity::show_date(*covered), quantity::show_date(*now.from)},
                             dated[i - 1]->value.citation.range, "the value before"));
      }
      if (!now.until) return;
      covered = i == 0 ? *now.until : std::max(*covered, *now.until);
    }
  }

  // A place's change binds by being in force, whatever it cites; a project's value by its document.
  bool holds(Candidate& candidate) {
    if (candidate.change != of_project) {
      const std::size_t order = order_[candidate.change];
      candidate.rank = {0, order_.size() - order};
      const auto binding = adoption_.binding(candidate.citations);
      if (!binding.empty()) candidate.value.citation = binding.front();
      note_doubt(candidate);
      return order != of_project;
    }
    for (const Citation& each : candidate.citations) {
      const auto bound = adoption_.bound(each);
      if (!bound || (!candidate.rank.empty() && candidate.rank[1] <= bound->rank)) continue;
      candidate.rank = {1, bound->rank};
      candidate.value.citation = bound->citation;
    }
    note_doubt(candidate);
    return !candidate.rank.empty();
  }

  static void note_doubt(Candidate& candidate) {
    LimitValue& value = candidate.value;
    if (value.doubt.empty()) value.doubt = value.citation.doubt;
  }

  static bool has_row(const LimitValue& value, std::size_t key) {
    if (value.form != Form::rows) return true;
    return std::any_of(value.rows.begin(), value.rows.end(), [&](const auto& row) { return row.first == key; });
  }

  void check_base(const Limit& limit) {
    for (std::size_t i = 0; i < limit.chain.size(); ++i) {
      const LimitValue& value = limit.chain[i];
      if (value.tree && i + 1 == limit.chain.size()) say_base(*value.tree, limit);
      for (const auto& [row_key, tree] : value.rows) {
        const std::size_t key = row_key;
        const auto below = limit.chain.begin() + static_cast<std::ptrdiff_t>(i) + 1;
        if (std::none_of(below, limit.chain.end(), [&](const LimitValue& each) { return has_row(each, key); })) {
          say_base(tree, limit);
        }
      }
    }
  }

  void say_base(const Tree& tree, const Limit& limit) {
    for (const expression::Node& node : tree.nodes) {
      if (node.op == expression::Op::base) found_.push_back(say("base-of-nothing", node.range, {limit.signature.name}));
    }
  }

  Declarations& all_;
  const Place& place_;
  const Adoption& adoption_;
  const Vocabulary& vocabulary_;
  const std::vector<Order>& orders_;
  Diagnostics& found_;
  std::vector<std::size_t> order_;  // of each change among those in force
};

bool needs_valueless(const LimitValue& value, const std::vector<bool>& without,
                     const std::vector<vocabulary::ShapeSet>& handed, const Vocabulary& vocabulary) {
  const auto needs = [&](const Tree& tree) {
    const auto uses = uses_of(tree, handed, vocabulary);
    return std::any_of(uses.begin(), uses.end(),
                       [&](const Use& use) { return use.limit && use.index < without.size() && without[use.index]; });
  };
  if (value.tree) return needs(*value.tree);
  return !value.rows.empty() &&
         std::all_of(value.rows.begin(), value.rows.end(), [&](const auto& row) { return needs(row.second); });
}

}  // namespace

void fill_chains(Declarations& all, const std::vector<WrittenLimit>& written, const Place& place,
                 const std::vector<std::size_t>& in_force, const Adoption& adoption, const Vocabulary& vocabulary,
                 const std::vector<Order>& orders, Diagnostics& found) {
  Filling filling(all, place, in_force, adoption, vocabulary, orders, found);
  for (std::size_t i = 0; i < written.size(); ++i) filling.fill(i, written[i]);
}

std::vector<bool> valueless(const std::vector<Limit>& limits, const Vocabulary& vocabulary) {
  std::vector<bool> without;
  for (const Limit& limit : limits) without.push_back(limit.chain.empty());
  bool more = true;
  while (more) {
    more = false;
    for (std::size_t i = 0; i < limits.size(); ++i) {
      if (without[i]) continue;
      std::vector<vocabulary::ShapeSet> handed;
      if (limits[i].signature.of.any()) handed.push_back(limits[i].signature.of);
      if (needs_valueless(limits[i].chain.front(), without, handed, vocabulary)) without[i] = more = true;
    }
  }
  return without;
}

}  // namespace headgate::rulebook
