// A small vocabulary with limits and tables, enough to say every form of expression about, and
// expressions compiled against it with what was said about them in short, columns counted in the expression.
#pragma once

#include <deque>
#include <optional>
#include <string>
#include <vector>

#include "document/read.hpp"
#include "expression/describe.hpp"
#include "expression/parse.hpp"
#include "expression/print.hpp"
#include "expression/scope.hpp"
#include "vocabulary/vocabulary.hpp"

namespace headgate::test {

using expression::LimitSignature;
using expression::Scope;
using expression::Tree;
using vocabulary::Type;

inline constexpr const char* small_vocabulary = R"(format: vocabulary/1
records:
  site:
    facts:
      pressure: {type: record pressure}
      house: {type: record house}
      line: {type: list, of: [pipe, meter, wall, valve, gauge, preventer], walk: yes}
      fixtures: {type: list, of: [fixture]}
      tests: {type: list, of: [test]}
      frost-depth: {type: length}
      permit-applied-on: {type: date}
      looked-at: {type: moment}
      reads-at: {type: clock}
      confirmed: {type: answers}
      note: {type: text}
  pressure:
    facts:
      highest-static: {type: pressure}
      lowest-static: {type: pressure}
  house:
    facts:
      kind: {type: house-kind}
      water: {type: temperature}
      air: {type: temperature}
      draw: {type: flow}
  sleeve:
    facts:
      size: {type: size}
      open: {type: yes-no}
kinds:
  pipe:
    passive: yes
    facts:
      material: {type: pipe-material}
      series: {type: pipe-series}
      size: {type: size}
      length: {type: length}
      least-cover: {type: length}
      buried: {type: yes-no}
      cover: {type: depth}
      rise: {type: height, mark: finished-grade}
      near: {type: list, of: [sewer]}
  meter: {facts: {size: {type: size}, housed: {type: text}}}
  wall:
    passive: yes
    facts:
      sleeve: {type: record sleeve}
      pipe: {type: nearest pipe upstream}
      thickness: {type: length}
  gauge: {facts: {reads: {type: pressure}}}
  ball-valve: {groups: [valve], facts: {size: {type: size}, turns: {type: number}}}
  gate-valve: {groups: [valve, settable], facts: {size: {type: size}, set-to: {type: length}}}
  pressure-reducer: {groups: [valve, settable], facts: {size: {type: size}, set-to: {type: pressure}}}
  vacuum-breaker: {groups: [preventer], facts: {height: {type: height}}}
  double-check: {groups: [preventer], facts: {height: {type: height}}}
  sewer: {facts: {beside: {type: length}}}
  lavatory: {groups: [fixture], facts: {count: {type: number}}}
  shower: {groups: [fixture], facts: {count: {type: number}}}
  test: {facts: {done-on: {type: date}, filed-on: {type: date}, shown-to: {type: text}}}
groups: {valve: {title: valve}, settable: {title: settable}, preventer: {title: backflow preventer}, fixture: {title: fixture}}
marks: {finished-grade: {title: finished grade, spellings: [grade]}, highest-outlet: {title: highest outlet}}
roles: {building-official: {title: building official, spellings: [inspector]}, water-superintendent: {title: water superintendent}}
stages: {entry: {title: the water entry}}
choices:
  pipe-material:
    properties: {metal: yes-no, roughness: number, family: material-family}
    members:
      k-copper: {title: type K copper, spellings: [K copper], metal: yes, roughness: 140, family: copper}
      l-copper: {title: type L copper, metal: yes, roughness: 140, family: copper}
      hdpe: {title: polyethylene, spellings: [poly], metal: no, roughness: 150, family: plastic}
  material-family:
    properties: {plain: yes-no}
    members: {copper: {title: copper, plain: yes}, plastic: {title: plastic, plain: no}}
  pipe-series: {members: {type-k: {title: type K}, cts: {title: copper tube size}}}
  house-kind: {members: {one-family: {title: one family}, two-family: {title: two families}}}
)";

// A type in a word: "pressure", "date", "pipe-material", "kind", "mark".
inline Type type_named(std::string_view name, const vocabulary::Vocabulary& vocabulary) {
  Type type;
  using Kind = Type::Kind;
  if (name == "truth")
    type.kind = Kind::truth;
  else if (name == "date")
    type.kind = Kind::date;
  else if (name == "season")
    type.kind = Kind::season;
  else if (name == "span")
    type.kind = Kind::span;
  else if (name == "kind")
    type.kind = Kind::kind;
  else if (name == "mark")
    type.kind = Kind::level;
  else if (name == "nothing")
    type.kind = Kind::nothing;
  else if (const auto choice = vocabulary.choice(name)) {
    type.kind = Kind::choice;
    type.choice = *choice;
  } else {
    type.kind = Kind::number;
    type.dimension = quantity::named(name).value_or(quantity::dimensions::none);
  }
  return type;
}

struct SmallWorld {
  text::Sources sources;
  text::Diagnostics found;
  std::deque<document::Node> trees;
  vocabulary::Vocabulary vocabulary;
  std::vector<LimitSignature> limits;
  std::vector<expression::TableSignature> tables;
  Scope scope;

  SmallWorld() {
    auto tree = document::read(sources, sources.add("vocabulary.yaml", small_vocabulary), {}, found);
    if (tree) trees.push_back(std::move(*tree));
    if (tree) vocabulary = vocabulary::load({&trees.back()}, found);
    add_tables();
    add_limits();
    scope.vocabulary = &vocabulary;
    scope.limits = &limits;
    scope.tables = &tables;
  }
  SmallWorld(const SmallWorld&) = delete;
  SmallWorld& operator=(const SmallWorld&) = delete;

  Type type(std::string_view name) const { return type_named(name, vocabulary); }

  LimitSignature& limit(const char* name, std::string_view type_name) {
    LimitSignature made;
    made.name = name;
    made.type = type(type_name);
    limits.push_back(made);
    return limits.back();
  }

  void add_tables() {
    tables.push_back({"pipe-dimensions",
                      {{"series", type("pipe-series")}, {"size", type("size")}},
                      {{"inside-diameter", type("length")}, {"outside-diameter", type("length")}}});
    tables.push_back({"meter-loss", {{"flow", type("flow")}}, {{"loss", type("pressure")}}});
    tables.push_back({"demand-rows", {{"units", type("number")}}, {{"flow", type("flow")}}});
  }

  void add_limits() {
    limit("static-pressure-max", "pressure");
    limit("least-cover", "length").of = vocabulary.kinds("pipe");
    limits.back().of_name = "pipe";
    limit("breaker-rise", "length").by_kinds = vocabulary.kinds("preventer");
    limits.back().of_name = "preventer";
    limit("fixture-units", "number").by_kinds = vocabulary.kinds("fixture");
    limits.back().of_name = "fixture";
    limit("wall-factor", "number").by_choice = *vocabulary.choice("pipe-material");
    limit("allowed-materials", "pipe-material").list = true;
    limit("allowed-sizes", "size").list = true;
    limit("high-hazard-preventers", "kind").list = true;
    limit("digging-season", "season");
    limit("report-time", "span");
    limit("cover-mark", "mark");
    limit("sleeve-ratio", "number");
    limit("law-began", "date");
    limit("untyped", "nothing");
    limit("demand-curve", "nothing").table = 2;
    limits.back().columns = {"flow"};
  }

  void hand(const char* name, std::string_view kind_or_group) {
    scope.variables.push_back({name, vocabulary.kinds(kind_or_group)});
  }

  document::Node text(const std::string& expression) {
    document::Node node;
    node.scalar = expression;
    node.range.file = sources.add("expression", expression);
    node.range.end = static_cast<std::uint32_t>(expression.size());
    return node;
  }
};

inline std::string in_short(const text::Diagnostic& d, const text::Sources& sources) {
  const auto at = [&](const text::Range& range) {
    const text::Position position = sources.position(range);
    return (position.line > 1 ? std::to_string(position.line) + ":" : "") + std::to_string(position.column);
  };
  std::string line = at(d.range) + "-" + std::to_string(d.range.end - d.range.begin) + " " + d.id + ": " + d.sentence;
  if (!d.hint.empty()) line += " (" + d.hint + ")";
  if (d.other.known()) line += " [" + at(d.other) + ": " + d.other_says + "]";
  return line;
}

inline std::string in_short(const text::Diagnostics& found, const text::Sources& sources) {
  std::string lines;
  for (const text::Diagnostic& d : found) lines += (lines.empty() ? "" : "\n") + in_short(d, sources);
  return lines;
}

// The expression as parsed, in canonical text, or what is wrong with its shape.
inline std::string parsed(const std::string& expression) {
  text::Sources sources;
  text::Diagnostics found;
  document::Node node;
  node.scalar = expression;
  node.range.file = sources.add("expression", expression);
  node.range.end = static_cast<std::uint32_t>(expression.size());
  const auto tree = expression::parse(node, {}, found);
  return tree && found.empty() ? print(*tree) : in_short(found, sources);
}

// "TYPE: canonical text" of a checked expression, or what is wrong with it.
inline std::string checked(SmallWorld& world, const std::string& expression,
                           const std::optional<Type>& wanted = std::nullopt) {
  text::Diagnostics found;
  const document::Node node = world.text(expression);
  const auto tree = expression::compile(node, world.scope, wanted, found);
  if (!tree) return in_short(found, world.sources);
  return expression::describe((*tree)[tree->root].type, world.vocabulary) + ": " + print(*tree);
}

}  // namespace headgate::test
