#include "app/sizing.hpp"

#include <algorithm>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "explain/worksheet.hpp"
#include "report/report.hpp"

namespace headgate::app {

namespace {

using evaluate::badness;
using evaluate::Outcome;
using Json = nlohmann::ordered_json;

std::string written_size(const vocabulary::Value& size) {
  return quantity::show(size.number.lo, quantity::dimensions::size,
                        quantity::size_unit(size.ladder == vocabulary::Ladder::metric ? "mm" : "in"));
}

// Whose sizes are tried, by kind.
struct Varied {
  std::vector<std::string> pipes;
  std::string meter;
  std::string meter_now;  // its size as it stands
  std::vector<site::ElementId> elements;
  vocabulary::Ladder ladder = vocabulary::Ladder::inch;  // of the pipes
  std::string why_not;
};

Varied find_varied(const Case& prepared) {
  Varied varied;
  const auto& seen = prepared.books.front().back();
  const auto& vocabulary = prepared.law->vocabulary;
  const auto worked = evaluate::work_out(*seen.book, *seen.site);
  const auto asked = [&](const auto& each, const vocabulary::Sizing::Part& part) {
    return each.derivation->shape == part.shape && each.derivation->field == part.when &&
           worked.cells[worked.plan.nodes[each.formula].cell].truth == quantity::Truth::yes;
  };
  const auto& sizing = *vocabulary.sizing;
  for (const auto& each : worked.values) {
    if (asked(each, sizing.pipe)) {
      varied.pipes.push_back(site::address(*seen.site, vocabulary, each.element, sizing.pipe.fact));
      varied.elements.push_back(each.element);
      varied.ladder = seen.site->slot(each.element, sizing.pipe.fact).value.ladder;
    }
    if (!asked(each, sizing.meter)) continue;
    varied.elements.push_back(each.element);
    varied.meter = site::address(*seen.site, vocabulary, each.element, sizing.meter.fact);
    const auto& now = seen.site->slot(each.element, sizing.meter.fact).value;
    if (now.presence == vocabulary::Presence::present) varied.meter_now = written_size(now);
  }
  if (varied.pipes.empty())
    varied.why_not = "no pipe of the line is new and in the ground, so there is none to size";
  else if (varied.meter.empty())
    varied.why_not = "the line has no meter";
  return varied;
}

// The sizes a table has figures for, on the ladder the thing's own size stands on where the table has that.
std::vector<std::string> sizes_of(const rulebook::Rulebook& book, std::string_view table_name,
                                  vocabulary::Ladder ladder) {
  std::vector<double> sizes;
  const auto index = book.table(table_name);
  if (!index) return {};
  const auto& table = book.tables[*index];
  const std::size_t key = table.signature.keys.size() - 1;
  for (const auto& row : table.rows) {
    const auto& cell = row.keys[key];
    if (cell.ladder == ladder) sizes.push_back(cell.number.lo);
  }
  if (sizes.empty() && ladder == vocabulary::Ladder::metric)
    return sizes_of(book, table_name, vocabulary::Ladder::inch);
  std::sort(sizes.begin(), sizes.end());
  sizes.erase(std::unique(sizes.begin(), sizes.end()), sizes.end());
  std::vector<std::string> written;
  const auto* unit = quantity::size_unit(ladder == vocabulary::Ladder::metric ? "mm" : "in");
  for (const double size : sizes) written.push_back(quantity::show(size, quantity::dimensions::size, unit));
  return written;
}

// Whether a value is looked up by size among the sizes tried: a stated one is of the size there is, and where there is no
// row the thing is not made in that size.
bool by_size(const rulebook::Rulebook& book, const vocabulary::Sizing& sizing, const evaluate::WorkedValue& value) {
  for (const auto* part : {&sizing.pipe, &sizing.meter}) {
    if (value.derivation->shape != part->shape) continue;
    const auto table = book.table(part->sizes);
    for (const auto& node : value.derivation->tree.nodes) {
      if (node.op == expression::Op::look_up && table && node.index == *table) return true;
    }
  }
  return false;
}

bool differs(const evaluate::Cell& a, const evaluate::Cell& b) {
  return a.lo != b.lo || a.hi != b.hi || a.members != b.members || a.presence != b.presence || a.truth != b.truth;
}

// Stated values that a formula would give otherwise at other sizes: they were measured at the sizes there are.
std::vector<std::string> stale(const Varied& varied, const Case& before, const Case& after) {
  std::vector<std::string> addresses;
  const auto& seen_before = before.books.front().back();
  const auto& seen_after = after.books.front().back();
  const auto a = evaluate::work_out(*seen_before.book, *seen_before.site);
  const auto b = evaluate::work_out(*seen_after.book, *seen_after.site);
  for (std::size_t i = 0; i < a.values.size() && i < b.values.size(); ++i) {
    if (!a.values[i].stated) continue;
    const auto element = a.values[i].element;
    const bool of_size = by_size(*seen_before.book, *before.law->vocabulary.sizing, a.values[i]) &&
                         std::find(varied.elements.begin(), varied.elements.end(), element) != varied.elements.end();
    const auto& cell_a = a.cells[a.plan.nodes[a.values[i].formula].cell];
    const auto& cell_b = b.cells[b.plan.nodes[b.values[i].formula].cell];
    if (!of_size && !differs(cell_a, cell_b)) continue;
    addresses.push_back(
        site::address(*seen_before.site, before.law->vocabulary, element, a.values[i].derivation->field));
  }
  return addresses;
}

// Of each rule the worst it comes to, whether or not its stage is reached.
struct OfRule {
  std::string topic;
  Outcome outcome = Outcome::pass;
};
std::map<std::string, OfRule> verdicts(const Case& prepared) {
  std::map<std::string, OfRule> worst;
  for (const auto& authority : judge(prepared)) {
    for (const auto& judgement : authority.judgements) {
      for (const auto& decision : judgement.decisions) {
        const Outcome outcome = decision.outcome == Outcome::later ? decision.would_be : decision.outcome;
        if (outcome == Outcome::not_applicable || outcome == Outcome::not_in_force) continue;
        const auto& rule = judgement.book->rules[decision.rule];
        auto& here = worst[judgement.book->place + "/" + rule.id];
        here.topic = rule.topic;
        if (badness(outcome) > badness(here.outcome)) here.outcome = outcome;
      }
    }
  }
  return worst;
}

// What is left, or why that cannot be told; whether something is not made in the size tried.
struct Left {
  std::string words;
  std::string why;
  bool made = true;
};

Left what_is_left(const World& world, const Case& prepared) {
  Left left;
  const auto& seen = prepared.books.front().back();
  const auto& sizing = *prepared.law->vocabulary.sizing;
  const explain::Context context{&world.sources, seen.book, seen.site};
  const auto worked = evaluate::work_out(*seen.book, *seen.site);
  for (const auto& line : explain::worksheet(context, worked).lines) {
    if (line.name == sizing.left) left.words = line.value;
  }
  for (const auto& value : worked.values) {
    const auto& node = worked.plan.nodes[value.formula];
    if (by_size(*seen.book, sizing, value) && worked.cells[node.cell].why == evaluate::Why::outside_table)
      left.made = false;
    const auto& shape = prepared.law->vocabulary.shapes[value.derivation->shape];
    if (left.words.empty() && shape.name + "." + shape.fields[value.derivation->field].name == sizing.left)
      left.why = explain::reason(context, evaluate::evaluated(worked.plan, worked.cells, value.formula));
  }
  return left;
}

struct Judged {
  SizedPair pair;
  Left left;
  std::map<std::string, OfRule> rules;
};

// The site with other sizes.
document::Node with_sizes(World& world, const document::Node& site_tree, const Varied& varied, const Case& before,
                          const std::string& pipe, const std::string& meter) {
  document::Node tree = site_tree;
  const auto set = [&](const std::string& address, const std::string& size) {
    const text::Range range = world.sources.add_whole("--size", address);
    site::set(tree, address, range, site::scalar_node(size, range), before.law->vocabulary, world.found);
  };
  for (const auto& address : varied.pipes) set(address, pipe);
  set(varied.meter, meter);
  return tree;
}

Judged judge_pair(World& world, const document::Node& tree, const world::Settings& settings, const std::string& pipe,
                  const std::string& meter) {
  Judged judged;
  judged.pair.pipe = pipe;
  judged.pair.meter = meter;
  const Case after = prepare(world, tree, settings);
  if (after.law == nullptr || !world.sound()) return judged;
  judged.rules = verdicts(after);
  judged.left = what_is_left(world, after);
  judged.pair.left = judged.left.words;
  return judged;
}

bool changes(const std::vector<Judged>& all, const std::string& rule) {
  const auto outcome = [&](const Judged& of) {
    const auto found = of.rules.find(rule);
    return found == of.rules.end() ? Outcome::not_applicable : found->second.outcome;
  };
  return std::any_of(all.begin(), all.end(), [&](const Judged& each) { return outcome(each) != outcome(all.front()); });
}

bool holds(const std::vector<std::string>& topics, const std::string& topic) {
  return std::find(topics.begin(), topics.end(), topic) != topics.end();
}

// What is left not being known, no pair can be said to pass.
void settle(const vocabulary::Sizing& sizing, std::vector<Judged>& all) {
  for (auto& each : all) {
    if (each.left.words.empty()) each.pair.outcome = Outcome::undecided;
    for (const auto& [rule, verdict] : each.rules) {
      const bool counts =
          holds(sizing.topics, verdict.topic) || (holds(sizing.where_it_differs, verdict.topic) && changes(all, rule));
      if (!counts || badness(verdict.outcome) <= badness(each.pair.outcome)) continue;
      each.pair.outcome = verdict.outcome;
      each.pair.because = rule;
    }
  }
}

bool passes(const SizedPair& pair) { return pair.outcome != Outcome::fail && pair.outcome != Outcome::undecided; }

std::string words_of(const SizedPair& pair) {
  std::string words(evaluate::words(pair.outcome));
  if (!pair.left.empty()) words += pair.left.front() == '-' ? ", nothing is left" : ", " + pair.left + " is left";
  if (!pair.because.empty()) words += " (" + pair.because + ")";
  return words;
}

// With the meter there is, the smallest pipe that passes; else the smallest meter that any pipe passes with.
void choose(Sizing& sizing, const std::string& meter_now) {
  const SizedPair* best = nullptr;
  for (const auto& pair : sizing.pairs) {
    if (!passes(pair)) continue;
    if (best == nullptr || (pair.meter == meter_now && best->meter != meter_now)) best = &pair;
  }
  if (best == nullptr) return;
  sizing.pipe = best->pipe;
  sizing.meter = best->meter;
}

}  // namespace

Sizing size_up(World& world, const Case& before) {
  Sizing sizing;
  world::Settings settings = world::settings(world);
  settings.sets.clear();  // they stand in the site already
  const document::Node& site_tree = before.trees.front();
  if (!before.law->vocabulary.sizing) {
    sizing.why_not = "the vocabulary does not say what to try under `sizing`";
    return sizing;
  }
  const auto& declared = *before.law->vocabulary.sizing;
  const Varied varied = find_varied(before);
  sizing.varied = varied.pipes;
  sizing.why_not = varied.why_not;
  if (!sizing.why_not.empty()) return sizing;
  sizing.varied.push_back(varied.meter);
  const auto& book = *before.books.front().back().book;
  const auto pipes = sizes_of(book, declared.pipe.sizes, varied.ladder);
  const auto meters = sizes_of(book, declared.meter.sizes, vocabulary::Ladder::inch);
  if (pipes.empty() || meters.empty()) {
    sizing.why_not = "the rules have no table " + (pipes.empty() ? declared.pipe.sizes : declared.meter.sizes);
    return sizing;
  }
  document::Node measured_off = site_tree;
  for (const auto& pipe : pipes) {
    const Case after = prepare(world, with_sizes(world, site_tree, varied, before, pipe, meters.back()), settings);
    if (after.law == nullptr || !world.sound()) return sizing;
    for (const auto& address : stale(varied, before, after))
      site::unset(measured_off, address, world.sources.add_whole("--size", address), before.law->vocabulary,
                  world.found);
  }
  std::vector<Judged> all;
  for (const auto& meter : meters) {
    for (const auto& pipe : pipes) {
      const auto tree = with_sizes(world, measured_off, varied, before, pipe, meter);
      all.push_back(judge_pair(world, tree, settings, pipe, meter));
      if (!world.sound()) return sizing;
    }
  }
  all.erase(std::remove_if(all.begin(), all.end(), [](const Judged& each) { return !each.left.made; }), all.end());
  if (all.empty()) {
    sizing.why_not = "none of the sizes there are figures for is made";
    return sizing;
  }
  settle(declared, all);
  sizing.why_open = all.back().left.why;
  for (auto& each : all) sizing.pairs.push_back(std::move(each.pair));
  choose(sizing, varied.meter_now);
  return sizing;
}

// Of each meter the smallest pipe that does, and the next smaller one, which does not.
std::string words_of(const Sizing& sizing) {
  constexpr std::size_t width = 80;
  std::string out = "What size passes\n";
  if (!sizing.why_not.empty()) return out + report::wrapped("  ", "Not told: " + sizing.why_not + ".", 2, width);
  std::string varied;
  for (const auto& address : sizing.varied) varied += (varied.empty() ? "" : ", ") + address;
  out += report::wrapped("  ",
                         "Every size of " + varied +
                             " is tried; what is left is told at the worst outlet. Values measured at the sizes there "
                             "are do not count.",
                         2, width);
  for (auto pair = sizing.pairs.begin(); pair != sizing.pairs.end();) {
    const auto end =
        std::find_if(pair, sizing.pairs.end(), [&](const auto& each) { return each.meter != pair->meter; });
    const auto smallest = std::find_if(pair, end, passes);
    out += fmt::format("  meter {}\n", pair->meter);
    const auto first = smallest == pair ? pair : smallest - 1;
    const auto last = smallest == end ? end : smallest + 1;
    for (auto each = first; each != last; ++each)
      out += report::wrapped(fmt::format("    pipe {:<10}", each->pipe), words_of(*each), 19, width);
    pair = end;
  }
  if (sizing.pipe.empty() && !sizing.why_open.empty())
    return out + report::wrapped("  ", "None of them can be told to pass: " + sizing.why_open + ".", 2, width);
  if (sizing.pipe.empty()) return out + "  None of them passes; the reasons stand beside each.\n";
  return out + fmt::format("  The smallest that pass: pipe {} with meter {}.\n", sizing.pipe, sizing.meter);
}

Json json_of(const Sizing& sizing) {
  Json pairs = Json::array();
  for (const auto& pair : sizing.pairs) {
    pairs.push_back({{"pipe", pair.pipe},
                     {"meter", pair.meter},
                     {"outcome", std::string(evaluate::words(pair.outcome))},
                     {"because", pair.because},
                     {"left", pair.left}});
  }
  return {{"varied", sizing.varied},   {"pairs", pairs},
          {"pipe", sizing.pipe},       {"meter", sizing.meter},
          {"why-not", sizing.why_not}, {"why-open", sizing.why_open}};
}

}  // namespace headgate::app
