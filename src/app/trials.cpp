// `headgate trials PATH…`: cases with expected outcomes, and what they cover.
#include <algorithm>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "app/commands.hpp"
#include "app/coverage.hpp"
#include "app/files.hpp"
#include "report/report.hpp"

namespace headgate::app {

namespace fs = std::filesystem;
using document::Node;
using evaluate::badness;
using evaluate::Outcome;
using text::say;

namespace {

std::optional<Outcome> outcome_named(std::string_view name) {
  for (std::size_t i = 0; i < evaluate::outcome_count; ++i) {
    if (evaluate::words(static_cast<Outcome>(i)) == name) return static_cast<Outcome>(i);
  }
  return std::nullopt;
}

// One case: a trial with one value of what varies.
struct Trial {
  std::string name;
  std::string rule;
  std::string element;
  world::Settings settings;
  std::optional<std::string> stage, on;
  Outcome expected = Outcome::pass;
  text::Range expected_at;
};

struct Ran {
  std::size_t passed = 0;
  std::vector<std::string> failures;
  Coverage coverage;
  std::map<std::string, rulebook::Rule> rules;  // every rule of every law tried, by counted_as
};

std::string text_of(const Node& map, std::string_view key) {
  const Node* node = map.find(key);
  return node != nullptr && node->is_scalar() ? node->scalar : "";
}

class File {
 public:
  File(World& world, const fs::path& path, const Node& tree) : world_(world), path_(path), tree_(tree) {}

  std::vector<Trial> read() {
    check_keys(tree_, {"format", "start-from", "places", "place", "on", "stage", "about", "trials"});
    if (text_of(tree_, "format") != "trials/1")
      world_.found.push_back(say("trials-format", tree_.range, {path_.string()}));
    const Node* list = tree_.find("trials");
    if (list == nullptr || !list->is_list()) {
      world_.found.push_back(say("trials-missing", tree_.range, {"trials"}));
      return {};
    }
    for (const auto& item : list->items) trial(item);
    return std::move(trials_);
  }

  const Node* start() {
    const Node* from = tree_.find("start-from");
    if (from == nullptr || !from->is_scalar()) {
      world_.found.push_back(say("trials-missing", tree_.range, {"start-from"}));
      return nullptr;
    }
    return load_tree(world_, (path_.parent_path() / from->scalar).lexically_normal());
  }

 private:
  void check_keys(const Node& map, const std::vector<std::string>& known) {
    for (const auto& entry : map.entries) {
      if (std::find(known.begin(), known.end(), entry.key) != known.end()) continue;
      const auto near = text::nearest(entry.key, known);
      world_.found.push_back(say("trials-key", entry.key_range, {entry.key, near ? *near : ""}));
    }
  }

  std::string either(const Node& item, std::string_view key) const {
    const std::string own = text_of(item, key);
    return own.empty() ? text_of(tree_, key) : own;
  }

  void trial(const Node& item) {
    if (!item.is_map()) {
      world_.found.push_back(say("trials-missing", item.range, {"rule"}));
      return;
    }
    check_keys(item, {"name", "rule", "element", "set", "vary", "expect", "place", "on", "stage"});
    Trial base;
    base.name = text_of(item, "name");
    base.rule = text_of(item, "rule");
    base.element = text_of(item, "element");
    if (base.rule.empty()) world_.found.push_back(say("trials-missing", item.range, {"rule"}));
    const std::string place = either(item, "place");
    if (!place.empty()) base.settings.places = {place};
    if (const std::string places = text_of(tree_, "places"); !places.empty())
      base.settings.beside = (path_.parent_path() / places).lexically_normal().string();
    if (const auto stage = either(item, "stage"); !stage.empty()) base.stage = stage;
    if (const auto on = either(item, "on"); !on.empty()) base.on = on;
    if (const Node* sets = item.find("set")) {
      for (const auto& entry : sets->entries) base.settings.sets.push_back({{entry.key, entry.key_range}, entry.value});
    }
    expectations(item, base);
  }

  void expectations(const Node& item, const Trial& base) {
    const Node* expect = item.find("expect");
    if (expect == nullptr) {
      world_.found.push_back(say("trials-missing", item.range, {"expect"}));
      return;
    }
    const Node* vary = item.find("vary");
    if (expect->is_map() ? expect->entries.empty() : vary != nullptr || !expect->is_scalar()) {
      world_.found.push_back(say("trials-vary", expect->range));
      return;
    }
    if (expect->is_scalar()) {
      add(base, *expect);
      return;
    }
    if (vary == nullptr) world_.found.push_back(say("trials-missing", item.range, {"vary"}));
    for (const auto& entry : expect->entries) {
      Trial one = base;
      one.name += " [" + entry.key + "]";
      Node value;
      value.scalar = entry.key;
      value.range = entry.key_range;
      if (vary != nullptr) one.settings.sets.push_back({{vary->scalar, vary->range}, value});
      add(one, entry.value);
    }
  }

  void add(Trial trial, const Node& expected) {
    const auto outcome = outcome_named(expected.scalar);
    if (!outcome) {
      std::vector<std::string> names(outcome_names.begin(), outcome_names.end());
      const auto near = text::nearest(expected.scalar, names);
      world_.found.push_back(say("trials-outcome", expected.range, {expected.scalar, near ? *near : "fail"}));
      return;
    }
    trial.expected = *outcome;
    trial.expected_at = expected.range;
    trials_.push_back(std::move(trial));
  }

  World& world_;
  fs::path path_;
  const Node& tree_;
  std::vector<Trial> trials_;
};

// The finding a trial is about: of the rule, of the authority and element it names, the worst.
struct Verdict {
  std::optional<Outcome> outcome;
  const evaluate::Judgement* judgement = nullptr;
  const evaluate::Decision* decision = nullptr;
};

// A rule that is not in force is so for every element.
bool about(const Trial& trial, const evaluate::Judgement& judgement, const evaluate::Decision& decision) {
  if (trial.element.empty() || decision.outcome == Outcome::not_in_force) return true;
  for (const auto element : evaluate::elements(judgement, decision)) {
    const std::string address = site::address(*judgement.site, *judgement.book->vocabulary, element);
    if (address == trial.element || address.substr(0, address.find(' ')) == trial.element) return true;
  }
  return false;
}

Verdict worst_of(const Trial& trial, const evaluate::Judgement& judgement) {
  Verdict verdict;
  for (const auto& decision : judgement.decisions) {
    if (!about(trial, judgement, decision)) continue;
    if (verdict.outcome && badness(*verdict.outcome) >= badness(decision.outcome)) continue;
    verdict = {decision.outcome, &judgement, &decision};
  }
  return verdict;
}

bool asks(const Trial& trial, const explain::Authority& authority) {
  const std::size_t slash = trial.rule.find('/');
  return slash == std::string::npos || trial.rule.substr(0, slash) == authority.book->place;
}

// Laws of several dates that do not agree leave it undecided.
Verdict verdict_of(const Trial& trial, const std::vector<explain::Authority>& said) {
  Verdict verdict;
  for (const auto& authority : said) {
    if (!asks(trial, authority)) continue;
    Verdict own;
    for (const auto& judgement : authority.judgements) {
      const Verdict here = worst_of(trial, judgement);
      if (!own.outcome)
        own = here;
      else if (here.outcome && *here.outcome != *own.outcome)
        own.outcome = Outcome::undecided;
    }
    if (own.outcome && (!verdict.outcome || badness(*own.outcome) > badness(*verdict.outcome))) verdict = own;
  }
  return verdict;
}

// Every finding the trial is about, and every element that the rule's `each` left out.
void cover(const Trial& trial, const evaluate::Judgement& judgement, Coverage& coverage) {
  for (std::uint32_t index = 0; index < judgement.plan.rules.size(); ++index) {
    const auto& at = judgement.plan.rules[index];
    const auto& rule = judgement.book->rules[index];
    for (std::uint32_t i = at.first_instance; i < at.first_instance + at.instance_count; ++i) {
      evaluate::Decision decision;
      decision.rule = index;
      decision.instance = i;
      if (!about(trial, judgement, decision)) continue;
      const bool reached = judgement.cells[judgement.plan.instances[i].reached].truth != quantity::Truth::no;
      coverage.add(*judgement.book, counted_as(*judgement.book, rule), evaluate::explain(judgement, decision), reached);
    }
  }
}

void failed(const World& world, const Trial& trial, const Verdict& verdict, Ran& ran) {
  std::string words =
      fmt::format("{}: {} ({}): expected {}, was {}", world.sources.place(trial.expected_at), trial.name, trial.rule,
                  evaluate::words(trial.expected),
                  verdict.outcome ? evaluate::words(*verdict.outcome) : "no finding: is there such a rule or element?");
  if (verdict.decision != nullptr) {
    const explain::Context context{&world.sources, verdict.judgement->book, verdict.judgement->site};
    words += ". " + explain::finding(context, *verdict.judgement, *verdict.decision).sentence;
  }
  ran.failures.push_back(std::move(words));
}

void run(World& world, const Node& start, Trial trial, Ran& ran) {
  trial.settings.evaluate.only_rule =
      trial.rule.substr(trial.rule.find('/') == std::string::npos ? 0 : trial.rule.find('/') + 1);
  if (trial.stage) trial.settings.stage = trial.stage;
  if (trial.on) trial.settings.on = trial.on;
  const std::size_t before = world.found.size();
  const Case prepared = prepare(world, start, trial.settings);
  if (prepared.law == nullptr) return;
  const auto warns = [](const text::Diagnostic& found) { return found.severity == text::Severity::warning; };
  world.found.erase(std::remove_if(world.found.begin() + static_cast<std::ptrdiff_t>(before), world.found.end(), warns),
                    world.found.end());
  const auto said = judge(prepared);
  const Verdict verdict = verdict_of(trial, said);
  for (const auto& authority : said) {
    for (const auto& rule : authority.book->rules) {
      const auto name = counted_as(*authority.book, rule);
      if (rule.standing == rulebook::Standing::in_force && ran.rules.count(name) == 0) ran.rules.emplace(name, rule);
    }
    if (!asks(trial, authority)) continue;
    for (const auto& judgement : authority.judgements) cover(trial, judgement, ran.coverage);
  }
  if (verdict.outcome && verdict.decision != nullptr) {
    const auto& book = *verdict.judgement->book;
    ran.coverage.add(counted_as(book, book.rules[verdict.decision->rule]), *verdict.outcome);
  }
  if (verdict.outcome && *verdict.outcome == trial.expected)
    ++ran.passed;
  else
    failed(world, trial, verdict, ran);
}

std::vector<fs::path> trial_files(const std::vector<std::string>& paths) {
  std::vector<fs::path> files;
  std::error_code error;
  for (const auto& path : paths) {
    if (!fs::is_directory(path, error))
      files.emplace_back(path);
    else {
      const auto below = yaml_files(path);
      files.insert(files.end(), below.begin(), below.end());
    }
  }
  return files;
}

bool all_covered(const Ran& ran) {
  return std::all_of(ran.rules.begin(), ran.rules.end(),
                     [&](const auto& rule) { return missing(ran.coverage, rule.first, rule.second).empty(); });
}

std::string summary(const Ran& ran) {
  std::string out;
  for (const auto& failure : ran.failures) out += report::wrapped("FAILED  ", failure, 8, 80);
  std::size_t covered = 0;
  std::string gaps;
  std::string untried;
  for (const auto& [id, rule] : ran.rules) {
    const std::string lacks = missing(ran.coverage, id, rule);
    if (lacks.empty())
      ++covered;
    else if (ran.coverage.outcomes.count(id) == 0)
      untried += (untried.empty() ? "" : ", ") + id;
    else
      gaps += report::wrapped("  ", id + ": " + lacks, 4, 80);
  }
  if (!untried.empty()) out += report::wrapped("Without a trial: ", untried, 2, 80);
  if (!gaps.empty()) out += "Not covered:\n" + gaps;
  out += fmt::format("{} of {} rules covered by outcome and boundary.\n", covered, ran.rules.size());
  return out + fmt::format("{} passed, {} failed\n", ran.passed, ran.failures.size());
}

std::string summary_json(const Ran& ran) {
  nlohmann::ordered_json rules = nlohmann::ordered_json::array();
  for (const auto& [id, rule] : ran.rules) {
    nlohmann::ordered_json outcomes = nlohmann::ordered_json::object();
    const auto found = ran.coverage.outcomes.find(id);
    for (std::size_t i = 0; i < outcome_names.size(); ++i)
      outcomes[outcome_names[i]] = found == ran.coverage.outcomes.end() ? 0 : found->second[i];
    rules.push_back({{"rule", id}, {"outcomes", outcomes}, {"missing", missing(ran.coverage, id, rule)}});
  }
  return report::written({{"passed", ran.passed}, {"failed", ran.failures}, {"rules", rules}});
}

}  // namespace

int trials(World& world, const std::vector<std::string>& paths, const Output& output) {
  Ran ran;
  for (const auto& path : trial_files(paths)) {
    const Node* tree = load_tree(world, path);
    if (tree == nullptr) continue;
    File file(world, path, *tree);
    const auto cases = file.read();
    const Node* start = file.start();
    if (start == nullptr || !world.sound()) continue;
    for (const auto& one : cases) run(world, *start, one, ran);
  }
  if (!world.sound()) return unusable(world);
  if (!write(world, output, output.format == Format::json ? summary_json(ran) : summary(ran))) return unusable(world);
  return ran.failures.empty() && (!output.covered || all_covered(ran)) ? exit_fine : exit_fails;
}

}  // namespace headgate::app
