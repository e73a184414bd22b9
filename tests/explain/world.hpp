// A small trade in memory: a rule's `require` (or `when`) and a site come to a finding.
//
//   World world("some gauge in line", "line: [meter]");
//   world.sentence()     "The line has no pressure gauge."
//   world.said           "" unless a file could not be used
#pragma once

#include <deque>
#include <string>

#include "document/read.hpp"
#include "explain/explain.hpp"
#include "rulebook/load.hpp"
#include "site/site.hpp"

namespace headgate::test {

inline constexpr const char* trade_vocabulary = R"(format: vocabulary/1
stages: {survey: the survey, entry: the water entry, in-service: in service}
roles: {building-official: {title: building official}}
marks: {floor: {title: floor}, grade: {title: finished grade}}
groups: {preventer: {title: backflow preventer}}
stops: {truck: at the truck, bibb: at the hose bibb}
choices:
  material:
    properties: {metal: yes-no}
    members: {k-copper: {title: type K copper, metal: yes}, hdpe: {title: polyethylene, metal: no}, old: {title: unmarked pipe}}
records:
  site:
    facts:
      name: text
      stage: stage
      permit-applied-on: date
      checked-on: {type: date, title: day of the check}
      describes: text
      house: {type: record house}
      pressure: {type: record pressure}
      line: {type: list, of: [pipe, meter, wall, gauge, reducer, preventer], walk: yes, ask: "What does the water meet?", at: truck, cost: look}
      papers: {type: list, of: [approval, permit], left-out: none}
      tests: {type: list, of: [test]}
      confirmed: answers
  house: {facts: {units: {type: number, title: dwelling units}, sprinklers: {type: text}}}
  pressure:
    title: pressure
    facts:
      highest: {type: pressure, title: highest static pressure, ask: "What is the highest static pressure?", hint: Read a gauge overnight., at: bibb, cost: measure}
      lowest: {type: pressure, title: lowest static pressure}
      running: {type: yes-no, title: water ran, ask: "Was any water running?", at: bibb, cost: look}
      read-on: {type: date, title: day of the reading}
  sleeve: {title: sleeve, short: size, facts: {size: size}}
kinds:
  pipe:
    title: pipe
    passive: yes
    facts:
      material: material
      size: size
      length: {type: length, never-negative: yes}
      new: {type: yes-no, ask: "Is this pipe new in this job?"}
      owned: {type: yes-no, ask: "Does the utility own it?", says: is the utility's own}
      joint: {type: yes-no, ask: "Is there a joint in the wall?"}
      held: {type: yes-no, ask: "Does it hold?"}
      before: {type: nearest pipe upstream, title: pipe before it}
  meter: {title: meter, facts: {size: size, height: {type: height, mark: floor}}}
  wall: {title: foundation wall, passive: yes, facts: {sleeve: {type: record sleeve, ask: "Is there a sleeve?", at: bibb, cost: look}, pipe: {type: nearest pipe upstream}}}
  gauge: {title: pressure gauge, facts: {reads: pressure}}
  reducer: {title: pressure reducing valve, facts: {set-to: {type: pressure, title: set pressure}}}
  breaker: {title: vacuum breaker, groups: [preventer], facts: {height: height}}
  double-check: {title: double check, groups: [preventer], facts: {height: height}}
  permit: {facts: {dated: {type: date, title: date}, until: {type: date, title: last day}}}
  test: {facts: {passed: {type: yes-no, ask: "Did it pass?", says: passed}, lasted: {type: time, title: time held}}}
  approval: {title: approval, facts: {for: text, by: {type: text, ask: "Who gave the approval?"}, at: element, dated: date, until: {type: date, title: last day}}}
derived:
  pipe:
    long:
      type: yes-no
      says: is a long one
      is: pipe.length > 10 ft
)";

inline constexpr const char* trade_sources = R"(format: sources/1
documents:
  code: {title: Trade Code, edition: "2018", kind: model code, sections: {"1": {about: a, seen: secondary, where: a forum}, "2": {about: b, seen: adopted text}}}
  town: {title: Town Code, kind: ordinance, sections: {"7": {about: c, seen: adopted text}}}
)";

inline constexpr const char* trade_tables = R"(format: tables/1
tables:
  bores:
    title: Bores of pipe
    source: code 2
    keys: {material: {type: material}}
    columns: {bore: {type: length}}
    rows:
      - [k-copper, 1 in]
      - [hdpe, 2 in]
)";

inline constexpr const char* trade_place = R"(format: place/1
id: town
title: A town
adopts: [code, town]
sources:
  torn: {title: Torn Code, publisher: City of Town, kind: ordinance, sections: {"9": {about: d, seen: secondary, doubt: a page is torn.}}}
)";

inline constexpr const char* trade_limits = R"(limits:
  most-pressure: {title: Highest pressure without a reducer, values: {code 1: 80 psi}}
  least-height: {title: Lowest a meter sits, values: {code 1: 12 in}}
  most-height: {title: Highest a meter sits, values: {code 1: 36 in}}
  good-materials: {title: Materials for new pipe, type: list of material, values: {code 2: [k-copper]}}
  doubtful: {title: Least pressure, type: pressure, values: {code 2: {value: 40 psi, doubt: two printings disagree}}}
  rise: {title: Rise of a breaker, by: preventer, values: {code 2: {breaker: 6 in}}}
  span: {title: Longest pipe, by: material, values: {town 7: {k-copper: 12 ft}, code 1: {k-copper: 10 ft, hdpe: 20 ft}}}
  unread: {title: Most pressure, type: pressure, values: {torn 9: unknown}}
  torn: {title: Materials of the torn page, type: list of material, values: {torn 9: unknown}}
  nobody-knows: {title: Some pressure, type: pressure, values: {code 2: unknown}}
  by-units:
    title: Pressure by units
    values:
      code 1: {table: {keys: {units: {type: number, match: exact}}, columns: {least: pressure}, rows: [[10, 40 psi], [100, unknown]]}}
  by-units-doubtful:
    title: Pressure by units of the torn page
    values:
      torn 9: {table: {keys: {units: {type: number, match: exact}}, columns: {least: pressure}, rows: [[10, 40 psi]]}}
)";

struct World {
  text::Sources sources;
  text::Diagnostics found;
  std::deque<document::Node> trees;
  rulebook::Library library;
  vocabulary::Vocabulary vocabulary;
  std::optional<rulebook::Place> place;
  rulebook::Rulebook book;
  site::Site site;
  evaluate::Judgement judgement;
  std::string said;

  const document::Node& file(const std::string& name, const std::string& text) {
    auto tree = document::read(sources, sources.add(name, text), {}, found);
    trees.push_back(tree ? std::move(*tree) : document::Node{});
    return trees.back();
  }

  // `body`: a whole rule's keys beside title, why and fix, each line indented by four; or one expression for `require`.
  World(const std::string& body, const std::string& described) {
    const bool whole = body.find("    ") == 0;
    const std::string keys = whole ? body : "    require: " + body + "\n";
    for (const auto& [name, text] :
         {std::pair<std::string, std::string>{"vocabulary", trade_vocabulary},
          {"sources", trade_sources},
          {"tables", trade_tables},
          {"rules", "format: rules/1\ntopic: trade\nstage: survey\n" + std::string(trade_limits) +
                        "rules:\n  tried:\n    title: The rule under trial\n    source: code 1\n" + keys +
                        "    why: Because.\n    fix: Mend it.\n"}}) {
      rulebook::add(library, file(name, text), found);
    }
    place = rulebook::read_place(file("place", trade_place), found);
    vocabulary = rulebook::read_vocabulary(library, {&*place}, found);
    book = rulebook::resolve(library, vocabulary, *place, std::nullopt, found);
    site = site::load(file("site", "format: site/1\nstage: entry\n" + described), vocabulary, found);
    for (const auto& one : found) {
      if (one.severity == text::Severity::error) said += text::draw(one, sources);
    }
    evaluate::Options options;
    options.only_rule = "tried";
    if (said.empty()) judgement = evaluate::judge(book, site, options);
  }
  World(const World&) = delete;
  World& operator=(const World&) = delete;

  explain::Context context() const { return {&sources, &book, &site}; }
  Finding finding(std::size_t i = 0) const { return explain::finding(context(), judgement, judgement.decisions.at(i)); }
  // "fail: The line has no pressure gauge."
  std::string told() const {
    if (!said.empty()) return said;
    const Finding first = finding();
    return first.outcome + ": " + first.sentence;
  }
};

inline std::string told(const std::string& body, const std::string& described) { return World(body, described).told(); }

}  // namespace headgate::test
