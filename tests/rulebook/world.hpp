// A small project in memory (vocabulary, sources, tables) to which a test adds rules and a place, and
// what was said in short: "rules:5:3 limit-unused: Nothing uses the limit …", one a line.
//
//   World world;
//   world.rules("limits:\n  cover:\n    values: {code-18 A1: 12 in}\n");
//   Rulebook book = world.resolve("2026-10-01");
//   EXPECT_EQ(world.said(), "");
#pragma once

#include <deque>
#include <string>
#include <vector>

#include "document/read.hpp"
#include "rulebook/load.hpp"

namespace headgate::test {

inline constexpr const char* small_vocabulary = R"(format: vocabulary/1
stages: {entry: the entry, wall: the wall, in-service: in service}
roles: {building-official: {title: building official}}
marks: {finished-grade: {title: finished grade}, floor: {title: floor}}
groups: {preventer: {title: preventer}}
choices:
  material:
    properties: {metal: yes-no}
    members: {k-copper: {spellings: [K copper], metal: yes}, l-copper: {metal: yes}, hdpe: {metal: no}}
records:
  site:
    facts:
      frost-depth: {type: length}
      pressure: {type: record pressure}
      line: {type: list, of: [pipe, wall, preventer, pressure-reducer], walk: yes}
      tests: {type: list, of: [test]}
  pressure: {facts: {highest-static: {type: pressure}}}
kinds:
  pipe:
    passive: yes
    facts: {size: {type: size}, length: {type: length}, least-cover: {type: length}, material: {type: material}, buried: {type: yes-no}}
  wall: {facts: {material: {type: text}, hole: {type: yes-no}, pipe: {type: nearest pipe upstream}}}
  pressure-reducer: {facts: {set-to: {type: pressure}}}
  breaker: {groups: [preventer], facts: {height: {type: height}}}
  double-check: {groups: [preventer], facts: {height: {type: height}}}
  test: {facts: {done-on: {type: date}, filed-on: {type: date}}}
)";

inline constexpr const char* small_sources = R"(format: sources/1
documents:
  code-18: {title: Code of 2018, edition: "2018", kind: model code, sections: {A1: {about: a, seen: adopted text}, A2: {seen: secondary, where: a forum}, A3: {seen: from memory, doubt: two printings disagree}}}
  code-21: {title: Code of 2021, edition: "2021", kind: model code, carries: code-18, sections: {A2: {about: anew, seen: other edition}, B1: {seen: adopted text}}}
  other: {title: Another code, kind: model code, sections: [1, 2]}
  act: {title: The Act, kind: statute, binds-in: us, sections: [7]}
)";

inline constexpr const char* small_place = R"(format: place/1
id: town
title: A town
adopts: code-18
sources: {own: {title: Town code, kind: ordinance, sections: [1, 2, 3]}}
)";

inline std::string in_short(const text::Diagnostic& d, const text::Sources& sources) {
  std::string line = sources.place(d.range) + " " + d.id + ": " + d.sentence;
  if (!d.hint.empty()) line += " (" + d.hint + ")";
  if (d.other.known()) line += " [" + sources.place(d.other) + ": " + d.other_says + "]";
  return line + "\n";
}

struct World {
  text::Sources sources;
  text::Diagnostics found;
  std::deque<document::Node> trees;
  rulebook::Library library;
  std::optional<rulebook::Place> place;
  std::deque<vocabulary::Vocabulary> vocabularies;

  explicit World(const std::string& more_vocabulary = "") {
    file("vocabulary", small_vocabulary);
    if (!more_vocabulary.empty()) file("more", "format: vocabulary/1\n" + more_vocabulary);
    file("sources", small_sources);
  }

  const document::Node* read(const std::string& name, const std::string& text) {
    auto tree = document::read(sources, sources.add(name, text), {}, found);
    if (!tree) return nullptr;
    trees.push_back(std::move(*tree));
    return &trees.back();
  }
  void file(const std::string& name, const std::string& text) {
    if (const auto* node = read(name, text)) rulebook::add(library, *node, found);
  }
  void rules(const std::string& text) { file("rules", "format: rules/1\ntopic: topic\n" + text); }
  void tables(const std::string& text) { file("tables", "format: tables/1\ntables:\n" + text); }
  // The place's whole file, or what follows the head of the small one.
  void whole_place(const std::string& text) {
    if (const auto* node = read("place", text)) place = rulebook::read_place(*node, found);
  }
  void town(const std::string& text = "") { whole_place(small_place + text); }

  rulebook::Rulebook resolve(const std::string& day = "") {
    if (!place) town();
    vocabularies.push_back(rulebook::read_vocabulary(library, {&*place}, found));
    std::optional<quantity::Day> on;
    if (!day.empty()) on = std::get<quantity::Day>(quantity::read_date(day));
    return rulebook::resolve(library, vocabularies.back(), *place, on, found);
  }

  // Warnings about unused limits and rules without advice are left out unless asked for.
  std::string said(bool all = false) {
    text::settle(found);
    std::string lines;
    for (const auto& each : found) {
      const bool minor = each.id == "limit-unused" || each.id == "rule-without-why" || each.id == "rule-without-fix";
      if (all || !minor) lines += in_short(each, sources);
    }
    return lines;
  }
};

// "70 psi (own 1) < 80 psi (code-18 A1)": a limit's chain, strongest first.
inline std::string chain(const rulebook::Rulebook& book, const std::string& limit) {
  const auto index = book.limit(limit);
  if (!index) return "no such limit";
  std::string words;
  for (const auto& value : book.limits[*index].chain) {
    if (!words.empty()) words += " < ";
    words += value.written + " (" + value.citation.words();
    if (!value.citation.carried_from.empty()) words += " from " + value.citation.carried_from;
    words += ")";
  }
  return words;
}

inline const rulebook::Rule& rule(const rulebook::Rulebook& book, const std::string& id) {
  static const rulebook::Rule none;
  const auto index = book.rule(id);
  return index ? book.rules[*index] : none;
}

// "code-21 A1 from code-18, own 1"
inline std::string words(const std::vector<rulebook::Citation>& citations) {
  std::string words;
  for (const auto& each : citations) {
    words += (words.empty() ? "" : ", ") + each.words();
    if (!each.carried_from.empty()) words += " from " + each.carried_from;
  }
  return words;
}

}  // namespace headgate::test
