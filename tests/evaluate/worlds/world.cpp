#include "evaluate/worlds/world.hpp"

#include <optional>
#include <sstream>

namespace headgate::test {

const char* const small_vocabulary = R"(format: vocabulary/1
stages: {found: as found, entry: the entry, wall: the wall, in-service: in service}
roles: {building-official: {title: building official, spellings: [inspector]}, water-superintendent: water superintendent}
marks: {finished-grade: {title: finished grade, spellings: [grade]}, ground-at-house: ground at the house, highest-outlet: highest outlet}
groups: {valve: valve, preventer: backflow preventer, paper: paper}
choices:
  material:
    properties: {metal: yes-no, roughness: number, family: family}
    members:
      k-copper: {metal: yes, roughness: 140, family: copper}
      l-copper: {metal: yes, roughness: 135, family: copper}
      hdpe: {metal: no, roughness: 150, family: plastic}
      mystery: {title: mystery pipe}
  family: {members: [copper, plastic]}
  laying: {members: [trench, pulled]}
records:
  site:
    facts:
      place: text
      stage: stage
      permit-applied-on: date
      checked-on: date
      frost-depth: length
      reached-on: date
      seen-at: moment
      wet: yes-no
      pressure: {type: record pressure}
      line: {type: list, of: [pipe, meter, wall, valve, gauge, strainer, preventer, branch], walk: yes}
      branches: {type: list, of: branch, named: yes}
      all-lines: {type: list, union: [line, branches.line]}
      tests: {type: list, of: test}
      papers: {type: list, of: paper, left-out: none}
      confirmed: answers
  pressure: {facts: {highest-static: pressure, lowest-static: pressure}}
  sleeve: {short: size, facts: {size: size, sealed: yes-no}}
kinds:
  pipe:
    passive: yes
    short: size
    facts:
      material: material
      size: size
      length: {type: length, never-negative: yes}
      rise: length
      buried: yes-no
      laid: laying
      least-cover: {type: depth, mark: finished-grade}
      cover: depth
      laid-on: date
      near: {type: list, of: [sewer, gas]}
  meter: {facts: {size: size, one-way: yes-no}}
  wall: {passive: yes, facts: {sleeve: {type: record sleeve}, arch: yes-no, pipe: nearest pipe upstream, valve-after: nearest valve downstream}}
  ball-valve: {groups: [valve], facts: {size: size, set-to: pressure}}
  pressure-reducer: {groups: [valve], short: set-to, facts: {size: size, set-to: pressure}}
  gauge: {short: reads, facts: {reads: pressure}}
  strainer: {facts: {size: size}}
  vacuum-breaker: {groups: [preventer], facts: {height: height}}
  double-check: {groups: [preventer], facts: {height: height}}
  branch: {defined-in: branches, facts: {feeds: text, chemical: yes-no, line: {type: list, of: [pipe, valve, preventer, branch], walk: yes}}}
  sewer: {short: beside, facts: {beside: length}}
  gas: {short: beside, facts: {beside: length}}
  test: {facts: {kind: laying, done-on: date, filed-on: date}}
  approval: {groups: [paper], facts: {for: text, by: text, at: element, dated: date, until: date}}
  order: {groups: [paper], facts: {for: text, by: text, at: element, limit: text, value: text, dated: date, until: date, number: text}}
)";

const char* const small_sources = R"(format: sources/1
documents:
  code-a: {title: Code A, publisher: A, edition: "2018", kind: model code, sections: {"1": {about: a, seen: adopted text}, "2": {about: b, seen: adopted text}, "3": {about: c, seen: secondary, doubt: two printings differ}}}
  code-b: {title: Code B, publisher: B, edition: "2024", kind: model code, sections: {"1": {about: a, seen: adopted text}, "2": {about: b, seen: adopted text}}}
)";

const char* const small_tables = R"(  size-ladder:
    title: Sizes in order
    source: practice
    keys: {size: {type: size, match: exact}}
    columns: {name: {type: text}}
    rows:
      - [1/2", half]
      - [3/4", three quarters]
      - [1", one]
      - [1-1/4", one and a quarter]
      - [1-1/2", one and a half]
      - [2", two]
      - [20 mm, twenty]
      - [25 mm, twenty-five]
      - [32 mm, thirty-two]
      - [50 mm, fifty]
  size-equivalence:
    title: Sizes that stand for each other
    source: practice
    keys: {metric: {type: size, match: exact}}
    columns: {inch: {type: size}}
    rows:
      - [20 mm, 3/4"]
      - [25 mm, 1"]
)";

std::string indented(const std::string& text, std::size_t blanks) {
  std::istringstream lines(text);
  std::string result;
  for (std::string line; std::getline(lines, line);) {
    if (!line.empty()) result += std::string(blanks, ' ') + line + "\n";
  }
  return result;
}

std::string rule(const std::string& id, const std::string& body, const std::string& source) {
  const bool own = body.find("source: ") == 0 || body.find("\nsource: ") != std::string::npos;
  return "  " + id + ":\n    title: About " + id + "\n" + (own ? "" : "    source: " + source + "\n") +
         "    why: Because.\n    fix: Mend it.\n" + indented(body, 4);
}

namespace {

std::string place_text(const std::string& id, const std::string& keys) {
  const bool adopts = keys.find("adopts:") != std::string::npos;
  return "format: place/1\nid: " + id + "\ntitle: The town\n" + (adopts ? "" : "adopts: code-a\n") + keys;
}

std::string section(const std::string& key, const std::string& body) {
  return body.empty() ? "" : key + ":\n" + body + "\n";
}

const document::Node* read(text::Sources& sources, std::deque<document::Node>& trees, text::Diagnostics& found,
                           const std::string& name, const std::string& text) {
  auto tree = document::read(sources, sources.add(name, text), {}, found);
  static const document::Node nothing;
  return tree ? &trees.emplace_back(std::move(*tree)) : &nothing;
}

std::string in_short(const text::Diagnostics& found, const text::Sources& sources) {
  std::string all;
  for (const auto& one : found) {
    if (one.severity != text::Severity::error) continue;
    const auto at = sources.position(one.range);
    const std::string file = one.range.file == 0 ? "" : std::string(sources.name(one.range.file));
    all += file + ":" + std::to_string(at.line) + ":" + std::to_string(at.column) + " " + one.id + ": " + one.sentence +
           "\n";
  }
  return all;
}

// Reads what somebody wrote, but for the site, into a library and its places.
struct Reading {
  text::Sources& sources;
  text::Diagnostics& found;
  std::deque<document::Node>& trees;
  std::deque<rulebook::Place>& places;

  const document::Node* tree(const std::string& name, const std::string& text) const {
    return read(sources, trees, found, name, text);
  }

  void rules(rulebook::Library& library, const Written& written) const {
    library.sources.push_back(tree("sources.yaml", small_sources));
    library.tables.push_back(
        tree("tables.yaml", "format: tables/1\ntables:\n" + std::string(small_tables) + written.tables));
    const std::string rules = section("limits", written.limits) + section("rules", written.rules);
    if (!rules.empty())
      library.rules.push_back(tree("rules.yaml", "format: rules/1\ntopic: pressure\nstage: entry\n" + rules));
  }
  std::vector<const rulebook::Place*> both(const Written& written) const {
    std::vector<const rulebook::Place*> result;
    for (const auto& [id, keys] : {std::make_pair(std::string("town"), written.place), {"utility", written.also}}) {
      if (id == "utility" && keys.empty()) continue;
      auto place = rulebook::read_place(*tree(id + ".yaml", place_text(id, keys)), found);
      if (place) result.push_back(&places.emplace_back(std::move(*place)));
    }
    return result;
  }
  std::optional<quantity::Day> day(const Written& written) const {
    if (written.day.empty()) return std::nullopt;
    return std::get<quantity::Day>(quantity::read_date(written.day));
  }
};

const std::string more_vocabulary = "format: vocabulary/1\n";

}  // namespace

World::World(const Written& written) {
  const Reading reading{sources_, found_, trees_, places_};
  library_.vocabulary.push_back(read("vocabulary.yaml", small_vocabulary));
  if (!written.vocabulary.empty())
    library_.vocabulary.push_back(read("more.yaml", more_vocabulary + written.vocabulary));
  reading.rules(library_, written);
  const auto both = reading.both(written);
  const auto* site = read("site.yaml", "format: site/1\n" + written.site);
  if (text::has_errors(found_) || both.empty()) return;
  vocabulary_ = rulebook::read_vocabulary(library_, both, found_);
  if (text::has_errors(found_)) return;
  for (const auto* place : both)
    books_.push_back(rulebook::resolve(library_, vocabulary_, *place, reading.day(written), found_));
  site_ = site::load(*site, vocabulary_, found_);
  if (text::has_errors(found_)) return;
  resolve_again(both, reading.day(written), written.options);
  if (!text::has_errors(found_)) judge(written);
}

// With what the site's orders set.
void World::resolve_again(const std::vector<const rulebook::Place*>& places, std::optional<quantity::Day> day,
                          const evaluate::Options& options) {
  std::vector<const rulebook::Rulebook*> all;
  for (std::size_t i = 0; i < places.size(); ++i) {
    all.push_back(&books_[i]);
    auto orders = evaluate::orders(site_, vocabulary_, evaluate::occasion(books_[i], site_, options).checked_on);
    if (orders.empty()) continue;
    const auto& kept = orders_.emplace_back(std::move(orders));
    books_[i] = rulebook::resolve(library_, vocabulary_, *places[i], day, found_, kept);
  }
  for (const auto& orders : orders_) rulebook::say_unknown_limits(orders, all, found_);
}

const document::Node* World::read(const std::string& name, const std::string& text) {
  return test::read(sources_, trees_, found_, name, text);
}

std::string in(const std::string& site, const std::string& expression) {
  return World({.site = site}).value(expression);
}

std::string each(const std::string& binders, const std::string& require, const std::string& site) {
  return World({.rules = rule("it", "each: " + binders + "\nrequire: " + require), .site = "stage: entry\n" + site})
      .outcomes("it");
}

Shelf::Shelf(const std::string& vocabulary) {
  rulebook::Library library;
  library.vocabulary.push_back(read(sources_, trees_, found_, "vocabulary.yaml", small_vocabulary));
  added_ = read(sources_, trees_, found_, "more.yaml", more_vocabulary + vocabulary);
  library.vocabulary.push_back(added_);
  vocabulary_ = rulebook::read_vocabulary(library, {}, found_);
}

std::vector<const rulebook::Rulebook*> Shelf::add_books(const Written& written) {
  const Reading reading{sources_, found_, trees_, places_};
  rulebook::Library library;
  library.vocabulary.push_back(added_);
  reading.rules(library, written);
  std::vector<const rulebook::Rulebook*> added;
  for (const auto* place : reading.both(written)) {
    added.push_back(
        &books_.emplace_back(rulebook::resolve(library, vocabulary_, *place, reading.day(written), found_)));
  }
  return added;
}

const site::Site* Shelf::add_site(const std::string& text) {
  const auto* tree = read(sources_, trees_, found_, "site.yaml", "format: site/1\n" + text);
  return &sites_.emplace_back(site::load(*tree, vocabulary_, found_));
}

std::string Shelf::said() const { return in_short(found_, sources_); }

void World::judge(const Written& written) {
  for (const auto& book : books_) {
    judgements_.push_back(evaluate::judge(book, site_, written.options));
    if (written.alone || !disagreement_.empty()) continue;
    disagreement_ = reference::difference(judgements_.back(), reference::judge(book, site_, written.options));
  }
}

std::string World::said() const { return in_short(found_, sources_); }

std::string World::outcomes(const std::string& rule) const {
  return judgements_.empty() ? said() : outcomes(judgements_.front(), rule);
}

std::string World::outcomes_of_second(const std::string& rule) const {
  return judgements_.size() < 2 ? said() : outcomes(judgements_[1], rule);
}

std::string World::outcomes(const evaluate::Judgement& judgement, const std::string& rule) const {
  if (!disagreement_.empty()) return disagreement_;
  std::string all;
  for (const auto& decision : judgement.decisions) {
    if (judgement.book->rules[decision.rule].id != rule) continue;
    if (!all.empty()) all += "; ";
    std::string about;
    for (const auto element : evaluate::elements(judgement, decision)) {
      std::string address = site::address(site_, vocabulary_, element);
      address = address.substr(0, address.find(' '));
      about += (about.empty() ? "" : ", ") + address;
    }
    if (decision.unfinished != site::nowhere) {
      const auto& list = site_.lists[decision.unfinished];
      about = site::address(site_, vocabulary_, list.owner, list.field) + (list.stated ? " open" : " left out");
    }
    all += (about.empty() ? "" : about + ": ") + std::string(evaluate::words(decision.outcome));
    if (decision.outcome == evaluate::Outcome::later)
      all += " (" + std::string(evaluate::words(decision.would_be)) + ")";
  }
  return all;
}

const evaluate::Decision& World::decision(const std::string& rule) const {
  static const evaluate::Decision none;
  for (const auto& judgement : judgements_) {
    for (const auto& decision : judgement.decisions) {
      if (judgement.book->rules[decision.rule].id == rule) return decision;
    }
  }
  return none;
}

std::string World::value(const std::string& expression) {
  if (books_.empty() || text::has_errors(found_)) return said();
  document::Node& node = trees_.emplace_back();
  node.scalar = expression;
  node.range = {sources_.add("expression", expression), 0, static_cast<std::uint32_t>(expression.size())};
  auto tree = rulebook::compile(book(), node, found_);
  if (!tree) return said();
  const auto& kept = expressions_.emplace_back(std::move(*tree));
  const auto result = evaluate::evaluate(kept, book(), site_);
  const auto plan = evaluate::make_plan(book(), site_, kept);
  auto cells = plan.cells;
  evaluate::run(plan, cells);
  const auto other = reference::evaluate(kept, book(), site_);
  const std::string found =
      reference::difference(other, plan, cells, static_cast<evaluate::PlannedId>(plan.nodes.size() - 1));
  if (!found.empty()) return found;
  if (result.type.kind == vocabulary::Type::Kind::truth) {
    return result.truth() == evaluate::Truth::yes ? "yes" : result.truth() == evaluate::Truth::no ? "no" : "undecided";
  }
  if (result.type.kind == vocabulary::Type::Kind::element && result.value.presence == vocabulary::Presence::present) {
    return site::address(site_, vocabulary_, result.value.id);
  }
  return vocabulary::show(result.value, result.type, vocabulary_);
}

}  // namespace headgate::test
