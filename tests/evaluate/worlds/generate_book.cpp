#include <functional>

#include "evaluate/worlds/generate.hpp"

namespace headgate::test {

using Words = std::vector<std::string>;

namespace {

std::uint64_t mix(std::uint64_t value) {  // of splitmix64
  value = (value ^ (value >> 30U)) * 0xbf58476d1ce4e5b9ULL;
  value = (value ^ (value >> 27U)) * 0x94d049bb133111ebULL;
  return value ^ (value >> 31U);
}

}  // namespace

Random::Random(std::uint64_t seed) : state_(mix(seed + 0x9e3779b97f4a7c15ULL)) {}

std::uint64_t Random::next() {
  state_ += 0x9e3779b97f4a7c15ULL;
  return mix(state_);
}

namespace {

const Words walked = {"pipe",  "meter",    "wall",           "ball-valve",   "pressure-reducer",
                      "gauge", "strainer", "vacuum-breaker", "double-check", "branch"};

const Words approving = {"building-official", "water-superintendent"};

// A name in hand: its variable, and the kind or group it is of.
struct Var {
  std::string name, kind;
};

bool in(const Words& words, const std::string& word) {
  for (const auto& one : words) {
    if (one == word) return true;
  }
  return false;
}

// Writes expressions of a wanted type over what is in hand.
class Expressions {
 public:
  Expressions(Random& random, const Kept& kept) : random_(random), kept_(kept) {}

  std::vector<Var> vars;
  bool base = false;      // inside a limit: the value below may be used
  bool of_limit = false;  // inside a limit or a formula: no other limits, no papers

  std::string truth(std::size_t depth) {
    if (depth == 0) return leaf();
    switch (random_.below(14)) {
      case 0:
      case 1: return "(" + truth(depth - 1) + ") and (" + truth(depth - 1) + ")";
      case 2: return "(" + truth(depth - 1) + ") or (" + truth(depth - 1) + ")";
      case 3: return "not (" + truth(depth - 1) + ")";
      case 4:
      case 5:
      case 6: return quantifier(depth);
      case 7: return "(if " + truth(depth - 1) + " then (" + truth(depth - 1) + ") else (" + truth(depth - 1) + "))";
      case 8: return compared("pressure", depth);
      case 9: return compared("length", depth);
      case 10: return compared("number", depth);
      case 11: return compared("size", depth);
      default: return leaf();
    }
  }

  std::string number(const std::string& type, std::size_t depth) {
    if (depth > 0) {
      switch (random_.below(12)) {
        case 0:
          return type == "size"
                     ? leaf(type)
                     : "(" + number(type, depth - 1) + random_.pick({" + ", " - "}) + number(type, depth - 1) + ")";
        case 1:
          return type == "size" ? "sizes-up(" + leaf(type) + ", " + random_.pick({"1", "2", "-1"}) + ")"
                                : "((" + number(type, depth - 1) + ")" + random_.pick({" * ", " / "}) + "(1 + " +
                                      number("number", depth - 1) + "))";
        case 2:
          return random_.pick({"least(", "greatest("}) + number(type, depth - 1) + ", " + number(type, depth - 1) + ")";
        case 3:
          return "(if " + truth(depth - 1) + " then " + number(type, depth - 1) + " else " + number(type, depth - 1) +
                 ")";
        case 4:
        case 5: return fold(type, depth);
        case 6: return type == "number" ? count(depth) : leaf(type);
        case 7: return type == "number" ? look_up(depth) : leaf(type);
        default: break;
      }
    }
    return leaf(type);
  }

  // `KIND as NAME in LIST`, and the variable it opens.
  std::string binder(Var& opened) {
    std::vector<std::pair<std::string, Words>> lists = {
        {"line", {"pipe", "pipe", "wall", "valve", "preventer", "gauge", "strainer", "meter"}},
        {"all-lines", {"pipe", "valve", "preventer"}},
        {"branches", {"branch"}},
        {"tests", {"test"}}};
    for (const auto& var : vars) {
      if (var.kind == "pipe") lists.push_back({var.name + ".near", {"sewer", "gas"}});
      if (var.kind == "branch") lists.push_back({var.name + ".line", {"pipe", "ball-valve", "preventer"}});
    }
    const auto& [list, kinds] = lists[random_.one_in(3)   ? random_.below(lists.size())
                                      : random_.one_in(3) ? lists.size() - 1
                                                          : 0];
    opened.kind = random_.pick(kinds);
    opened.name = "x" + std::to_string(++names_);
    return opened.kind + " as " + opened.name + " in " + list;
  }

  std::string compared(const std::string& type, std::size_t depth) {
    const Words signs = {"<", "<=", ">", ">="};
    const std::string left = number(type, depth - 1);
    const std::string right = number(type, depth - 1);
    if (random_.one_in(6)) return left + random_.pick({" is same as ", " is not same as "}) + right;
    if (random_.one_in(6)) {
      const Words one_way = random_.one_in(2) ? Words{" < ", " <= "} : Words{" > ", " >= "};
      return left + random_.pick(one_way) + number(type, depth - 1) + random_.pick(one_way) + right;
    }
    return left + " " + random_.pick(signs) + " " + right;
  }

 private:
  std::string quantifier(std::size_t depth) {
    Var opened;
    const std::string head = random_.pick({"some ", "no ", "every "});
    const std::string binds = binder(opened);
    vars.push_back(opened);
    std::string text = "(" + head + binds;
    if (random_.one_in(2)) text += " where (" + truth(depth - 1) + ")";
    if (head == "every " || random_.one_in(2)) text += " has (" + truth(depth - 1) + ")";
    vars.pop_back();
    return text + ")";
  }

  std::string where(std::size_t depth) { return random_.one_in(2) ? " where (" + truth(depth - 1) + ")" : ""; }

  std::string fold(const std::string& type, std::size_t depth) {
    Var opened;
    const std::string binds = binder(opened);
    vars.push_back(opened);
    const std::string text = (type == "size" || random_.one_in(2) ? random_.pick({"least(", "greatest("}) : "sum(") +
                             number(type, depth - 1) + " for " + binds + where(depth) + ")";
    vars.pop_back();
    return text;
  }

  std::string count(std::size_t depth) {
    Var opened;
    const std::string binds = binder(opened);
    vars.push_back(opened);
    const std::string text = "count(" + binds + where(depth) + ")";
    vars.pop_back();
    return text;
  }

  std::string look_up(std::size_t depth) {
    const std::string load = number("number", depth - 1);
    if (!of_limit && random_.one_in(4)) return "limit.curve[" + load + "].flow";
    switch (random_.below(kept_.only_settling ? 3 : 5)) {
      case 0: return "curve[" + load + "].flow";
      case 1: return "losses[" + choice("material") + ", " + load + "].loss";
      case 2: return "steps[" + load + "].size";
      case 3: return "bands[" + load + "].rate";
      default: return "ratings[" + choice("material") + ", " + number("size", 0) + "].rate";
    }
  }

  // Every path of a type that can be read from what is in hand.
  Words paths(const std::string& type) const {
    Words found;
    const auto add = [&](const std::string& of, const std::string& path) {
      if (of == type) found.push_back(path);
    };
    add("truth", "wet");
    add("length", "frost-depth");
    add("pressure", "pressure.highest-static");
    add("pressure", "pressure.lowest-static");
    add("date", "reached-on");
    for (const auto& var : vars) {
      const auto of = [&](const std::string& kind, const std::string& fact, const std::string& name) {
        if (var.kind == kind) add(fact, var.name + "." + name);
      };
      for (const char* length : {"length", "rise", "least-cover"}) of("pipe", "length", length);
      for (const char* kind : {"pipe", "valve", "meter", "strainer", "ball-valve"}) of(kind, "size", "size");
      of("pipe", "material", "material");
      of("pipe", "laying", "laid");
      of("pipe", "truth", "buried");
      of("pipe", "truth", "material.metal");
      of("pipe", "number", "material.roughness");
      of("pipe", "date", "laid-on");
      of("pipe", "level", "cover");
      of("preventer", "level", "height");
      of("wall", "truth", "arch");
      of("wall", "truth", "sleeve.sealed");
      of("wall", "size", "sleeve.size");
      of("wall", "length", "pipe.length");
      of("wall", "truth", "pipe.buried");
      of("wall", "size", "valve-after.size");
      of("wall", "pipe", "pipe");
      of("ball-valve", "pressure", "set-to");
      of("gauge", "pressure", "reads");
      of("branch", "truth", "chemical");
      for (const char* kind : {"sewer", "gas"}) of(kind, "length", "beside");
      of("test", "laying", "kind");
      of("test", "date", "done-on");
      of("test", "date", "filed-on");
      if (in(walked, var.kind)) {
        for (const char* name : {"loss", "entering", "leaving", "previous.leaving", "next.entering"})
          add("pressure", var.name + "." + name);
      }
    }
    return found;
  }

  std::string literal(const std::string& type) {
    if (type == "size") {  // by itself a literal would be a length
      if (!of_limit && random_.one_in(2)) return "limit.smallest";
      return "sizes-up(" +
             (kept_.only_settling || random_.one_in(2) ? random_.pick({"3/4\"", "1\"", "1-1/2\""})
                                                       : random_.pick({"20 mm", "32 mm"})) +
             ", 0)";
    }
    const std::string is = std::to_string(random_.below(13));
    if (type == "pressure") return std::to_string(30 + random_.below(60)) + " psi";
    return type == "length" ? is + random_.pick({" ft", " in"}) : is;
  }

  std::string leaf(const std::string& type) {
    if (type == "length" && random_.one_in(4)) {
      const Words levels = paths("level");
      if (!levels.empty()) return random_.pick(levels) + random_.pick({" below ", " above "}) + mark();
    }
    if (base && random_.one_in(3)) return "base";
    if (!of_limit && random_.one_in(3)) return limit(type);
    const Words found = paths(type);
    return found.empty() || random_.one_in(4) ? literal(type) : random_.pick(found);
  }

  std::string mark() {
    return !of_limit && random_.one_in(4) ? "limit.from-mark"
                                          : random_.pick({"finished-grade", "ground-at-house", "highest-outlet"});
  }

  std::string limit(const std::string& type) {
    for (const auto& var : vars) {
      if (var.kind == "pipe" && type == "length" && random_.one_in(2)) return "limit.deep[" + var.name + "]";
      if (var.kind == "preventer" && type == "length") return "limit.rise[" + var.name + "]";
    }
    if (type == "pressure") return random_.one_in(2) ? "limit.top" : "limit.bar[" + choice("material") + "]";
    if (type == "number") return "limit.ratio";
    if (type == "size") return "limit.smallest";
    return "limit.cover";
  }

  std::string choice(const std::string& of) {
    const Words found = paths(of);
    if (!found.empty() && !random_.one_in(6)) return random_.pick(found);
    return of == "material" ? random_.pick({"k-copper", "hdpe"}) : "trench";
  }

  std::string leaf() {
    for (int tries = 0; tries < 4; ++tries) {
      const std::string made = leaf_of(random_.below(12));
      if (!made.empty()) return made;
    }
    return "wet";
  }
  std::string leaf_of(std::size_t which) {
    const std::string is = random_.pick({" is ", " is not "});
    const Words materials = paths("material");
    const Words dates = paths("date");
    switch (which) {
      case 0: return random_.pick(paths("truth"));
      case 1:
        return materials.empty()
                   ? ""
                   : random_.pick(materials) + is +
                         random_.pick({"k-copper", "one of (k-copper, l-copper)", "one of (hdpe, mystery, k-copper)"});
      case 2: return materials.empty() || of_limit ? "" : random_.pick(materials) + is + "one of limit.fine";
      case 3: return presence();
      case 4:
        return dates.size() < 2 ? "" : random_.pick(dates) + random_.pick({" < ", " <= "}) + step(random_.pick(dates));
      case 5: return of_limit ? "" : random_.pick(dates) + is + "in limit.winter";
      case 6: return order();
      case 7: return kind();
      case 8: return of_limit ? "" : random_.pick({"confirmed as drawing-12", "confirmed as drawing-13"});
      case 9:
        return of_limit ? ""
                        : random_.pick({"approved by building-official", "ordered by water-superintendent for repair",
                                        "approved by building-official for rule-1"});
      case 10: return random_.pick({"yes", "no"});
      default: return compared(random_.pick({"pressure", "length", "number", "size"}), 1);
    }
  }

  std::string step(const std::string& date) {
    return of_limit ? date
                    : "(" + date + random_.pick({" + ", " - "}) +
                          random_.pick(
                              {"limit.month", "limit.wait[" + choice("material") + "]", "3 weeks", "5 business-days"}) +
                          ")";
  }

  std::string presence() {
    Words found = {"frost-depth", "pressure", "line", "branches", "tests"};
    for (const char* type : {"size", "length", "truth", "pipe", "material"}) {
      for (const auto& path : paths(type)) {
        if (path.find("material.") == std::string::npos) found.push_back(path);
      }
    }
    for (const auto& var : vars) {
      if (var.kind == "pipe") found.push_back(var.name + ".near");
      if (var.kind == "wall") found.push_back(var.name + ".sleeve");
    }
    const Words tests = kept_.only_settling ? Words{" is fitted", " is none", " is not none"}
                                            : Words{" is fitted", " is none", " is recorded", " is not recorded"};
    return random_.pick(found) + random_.pick(tests);
  }

  std::string order() {
    Words things;
    for (const auto& var : vars) {
      if (var.kind != "test" && var.kind != "sewer" && var.kind != "gas") things.push_back(var.name);
      if (var.kind == "wall") things.push_back(var.name + ".pipe");
      if (in(walked, var.kind)) things.push_back(var.name + ".previous");
    }
    if (things.size() < 2) return "";
    return random_.pick(things) + " comes " + random_.pick({"", "right "}) + random_.pick({"before ", "after "}) +
           random_.pick(things);
  }

  std::string kind() {
    for (const auto& var : vars) {
      if (var.kind == "preventer" && !of_limit && random_.one_in(2)) return var.name + " is one of limit.approved";
      if (var.kind == "preventer")
        return var.name + random_.pick({" is ", " is not "}) +
               random_.pick({"vacuum-breaker", "double-check", "one of (vacuum-breaker, double-check)"});
      if (var.kind == "valve")
        return var.name + random_.pick({" is ", " is not "}) + random_.pick({"ball-valve", "pressure-reducer"});
      if (in(walked, var.kind))
        return var.name + ".previous is " + random_.pick({"pipe", "wall", "valve", "one of (gauge, strainer)"});
    }
    return "";
  }

  Random& random_;
  const Kept& kept_;
  std::size_t names_ = 0;
};

const char* const generated_tables = R"(
  curve:
    title: Curve
    source: practice
    keys: {load: {type: number, match: linear}}
    columns: {flow: {type: number}}
    rows: [[0, 1], [3, 9], [7, 4], [20, 12]]
  losses:
    title: Losses
    source: practice
    keys: {material: {type: material, match: exact}, load: {type: number, match: linear}}
    columns: {loss: {type: number}}
    rows: [[k-copper, 0, 0], [k-copper, 10, 9], [l-copper, 0, 2], [l-copper, 5, 3], [l-copper, 20, 4], [hdpe, 1, 6], [hdpe, 9, 8]]
  steps:
    title: Steps
    source: practice
    keys: {load: {type: number, match: next up}}
    columns: {size: {type: number}}
    rows: [[2, 1], [6, 2], [12, 5]]
    over: [9]
  bands:
    title: Bands
    source: practice
    keys: {load: {type: number, match: range}}
    columns: {rate: {type: number}}
    rows: [[0 to 2, 3], [3 to 7, 1], [10 to 12, 8]]
    over: [4]
  ratings:
    title: Ratings
    source: practice
    keys: {material: {type: material, match: exact}, size: {type: size, match: exact}}
    columns: {rate: {type: number}}
    rows: [[k-copper, 3/4", 1], [k-copper, 1", 2], [l-copper, 3/4", 7], [l-copper, 25 mm, 5], [hdpe, 2", 3]]
)";

// The values of a limit by citation, written below its other keys; `value` writes one.
std::string values(Random& random, const std::function<std::string(bool first)>& value) {
  std::string text = "    values:\n";
  const std::size_t count = 1 + random.below(3);
  const Words citations = {"code-a 1", "code-b 1", "practice"};
  for (std::size_t i = 0; i < count; ++i) {
    if (i > 0 && random.one_in(12))
      text += "      " + citations[i] + ": unknown\n";
    else
      text += "      " + citations[i] + ": " + value(i == 0) + "\n";
  }
  return text;
}

std::string limit(const std::string& name, const std::string& keys, const std::string& values) {
  return "  " + name + ":\n    title: About " + name + "\n" + keys + values;
}

std::string plain(Random& random, const std::string& unit, std::size_t least, std::size_t most) {
  const std::string is = std::to_string(least + random.below(most - least + 1)) + unit;
  return random.one_in(15) ? "{value: " + is + ", doubt: two printings differ}" : is;
}

std::string formula(Random& random, const Kept& kept, const std::string& var, const std::string& type) {
  Expressions expressions(random, kept);
  expressions.of_limit = true;
  if (!var.empty()) expressions.vars.push_back({var, var});
  return expressions.number(type, 1 + random.below(2));
}

std::string limits(Random& random, const Kept& kept) {
  const auto psi = [&](bool) { return plain(random, " psi", 40, 80); };
  const auto row = [&](const Words& keys, const std::string& unit, std::size_t least, std::size_t most) {
    std::string text = "{";
    for (const auto& key : keys) {
      if (text.size() > 1 && random.one_in(4)) continue;
      text +=
          (text.size() > 1 ? ", " : "") + key + ": " + std::to_string(least + random.below(most - least + 1)) + unit;
    }
    return text + "}";
  };
  const Words members = {"k-copper", "l-copper", "hdpe", "mystery"};
  std::string text = limit("top", "    type: pressure\n", values(random, psi));
  text +=
      limit("cover", "    type: length\n", values(random, [&](bool) { return formula(random, kept, "", "length"); }));
  text += limit("deep", "    type: length\n    of: pipe\n",
                values(random, [&](bool) { return formula(random, kept, "pipe", "length"); }));
  text += limit("ratio", "    type: number\n", values(random, [&](bool) { return plain(random, "", 1, 6); }));
  text += limit("smallest", "    type: size\n", values(random, [&](bool) {
                  return random.pick(kept.only_settling ? Words{"3/4\"", "1\""} : Words{"3/4\"", "1\"", "25 mm"});
                }));
  text += limit("rise", "    type: length\n    by: preventer\n", values(random, [&](bool) {
                  return row({"vacuum-breaker", "double-check"}, " in", 4, 20);
                }));
  text += limit("bar", "    type: pressure\n    by: material\n",
                values(random, [&](bool) { return row(members, " psi", 40, 80); }));
  text += limit("wait", "    type: span\n    by: material\n", values(random, [&](bool) {
                  return row(members, random.pick({" days", " months"}), 1, 9);
                }));
  text += limit("month", "    type: span\n", values(random, [&](bool) {
                  return random.pick({"1 month", "30 days", "10 business-days"});
                }));
  text += limit("winter", "    type: season\n", values(random, [&](bool) {
                  return random.pick({"Nov 1 to Apr 1", "Jun 1 to Sep 15"});
                }));
  text += limit("fine", "    type: list of material\n", values(random, [&](bool) {
                  return random.pick({"[k-copper]", "[k-copper, hdpe]", "[l-copper, mystery, hdpe]"});
                }));
  text += limit("approved", "    type: list of preventer\n", values(random, [&](bool) {
                  return random.pick({"[double-check]", "[vacuum-breaker, double-check]"});
                }));
  text += limit("from-mark", "    type: mark\n", values(random, [&](bool) {
                  return random.pick({"finished-grade", "highest-outlet"});
                }));
  const std::string table =
      "\n        table: {keys: {load: {type: number, match: linear}}, columns: {flow: {type: number}}, rows: [[0, 0], "
      "[" +
      std::to_string(5 + random.below(9)) + ", 9]]}";
  return text + limit("curve", "",
                      "    values:\n      " + random.pick({"code-a 1", "code-b 1", "practice"}) + ":" + table + "\n");
}

std::string clauses(Expressions& expressions, Random& random, std::size_t depth, std::size_t blanks) {
  if (depth == 0 || random.one_in(2)) return " " + expressions.truth(1 + random.below(3)) + "\n";
  const std::string in(blanks, ' ');
  const bool any = random.one_in(2);
  std::string text = "\n" + in + (any ? "any:" : "all:") + "\n";
  for (std::size_t i = 0; i < 2 + random.below(2); ++i) {
    text += in + "  part " + std::to_string(i) + ":" + clauses(expressions, random, depth - 1, blanks + 4);
  }
  // As people write it: the last way out is that somebody approved another.
  if (any && random.one_in(2)) text += in + "  an approval: approved by " + random.pick(approving) + "\n";
  return text;
}

std::string one_rule(const std::string& id, Random& random, const Kept& kept) {
  Expressions expressions(random, kept);
  std::string body;
  std::string each;
  for (std::size_t binders = random.below(3); binders > 0; --binders) {
    Var opened;
    each += (each.empty() ? "each: " : ", ") + expressions.binder(opened);
    expressions.vars.push_back(opened);
    if (random.one_in(3)) each += " where (" + expressions.truth(1) + ")";
  }
  if (!each.empty()) body += each + "\n";
  if (random.one_in(3)) body += "stage: " + random.pick({"found", "entry", "wall", "in-service"}) + "\n";
  if (random.one_in(2)) body += "when:" + clauses(expressions, random, 1, 2);
  if (random.one_in(3)) {
    body += "unless:\n  an exception:\n    if: " + expressions.truth(1) +
            "\n    source: " + random.pick({"code-a 2", "code-b 2"}) + "\n";
    if (random.one_in(2)) body += "  another: " + expressions.truth(2) + "\n";
  }
  const std::size_t form = random.below(8);
  if (form == 0) {
    body += "level: note\n" + std::string(each.empty() && body.find("when:") == std::string::npos ? "when: wet\n" : "");
  } else if (form == 1) {
    body += "due: reached-on + " + random.pick({"limit.month", "2 months", "10 business-days"}) + "\n";
    if (!random.one_in(3)) body += "done: permit-applied-on\n";
  } else {
    if (random.one_in(4)) body += "level: should\n";
    body += "require:" + clauses(expressions, random, 2, 2);
  }
  if (!expressions.vars.empty() && expressions.vars[0].kind == "pipe")
    body += "if-not: The pipe is of {" + expressions.vars[0].name + ".material}.\n";
  return rule(id, body, random.pick({"code-a 1", "code-b 1", "code-a 1, code-b 1", "practice"}));
}

std::string place(Random& random) {
  std::string text =
      "adopts: " + random.pick({"code-a", "code-b", "[code-a, code-b]", "[code-b, code-a]", "nothing"}) + "\n";
  if (random.one_in(2)) text += "closed-days: {from: 2026-01-01, until: 2026-11-30, days: [2026-05-25]}\n";
  text += "changes:\n  - title: First\n    from: 2026-02-01\n    limits:\n      top: {code-a 2: " +
          plain(random, " psi", 40, 80) + "}\n";
  text += "      deep:\n        code-a 2: " + std::string(random.one_in(2) ? "greatest(pipe.length, 9 in)" : "30 in") +
          "\n";
  text +=
      "  - title: Second\n    from: 2026-06-01\n    until: 2026-09-01\n    drop: {rule-2: code-a 2}\n    change:\n     "
      " rule-3: {stage: wall, source: code-a 2}\n";
  if (random.one_in(2))
    text += "    limits:\n      rise: {code-b 2: {vacuum-breaker: 11 in}}\n      top:\n        code-b 2: 55 psi\n";
  return text;
}

}  // namespace

std::string generated_vocabulary(Random& random) {
  std::string kinds = "kinds:\n";
  std::string formulas = "derived:\n";
  const std::string entering = random.pick(
      {"X.previous.leaving", "least(X.previous.leaving, 70 psi)", "X.previous.leaving - X.previous.loss / 2"});
  const std::string leaving = random.pick({"X.entering - X.loss", "greatest(X.entering - X.loss, 0 psi)",
                                           "if wet then X.entering else X.entering - 2 * X.loss"});
  for (const auto& kind : walked) {
    const auto of = [&](std::string text) {
      for (std::size_t at = text.find('X'); at != std::string::npos; at = text.find('X')) text.replace(at, 1, kind);
      return text;
    };
    kinds += "  " + kind + ": {facts: {loss: {type: pressure, never-negative: yes}}}\n";
    formulas += "  " + kind + ":\n    entering:\n      type: pressure\n      is: if " + kind +
                ".previous is none then pressure.highest-static else " + of(entering) +
                "\n    leaving:\n      type: pressure\n      is: " + of(leaving) + "\n";
  }
  return kinds + formulas;
}

Written generated_book(Random& random, const Kept& kept) {
  Written made;
  made.tables = generated_tables;
  made.limits = limits(random, kept);
  for (int i = 0; i < 8; ++i) made.rules += one_rule("rule-" + std::to_string(i), random, kept);
  made.place = place(random);
  made.also = place(random);
  made.day = random.pick({"2026-01-05", "2026-05-01", "2026-08-08", "2026-12-24"});
  return made;
}

}  // namespace headgate::test
