#include "evaluate/worlds/generate.hpp"

namespace headgate::test {

namespace {

using Words = std::vector<std::string>;

const Words inch_sizes = {"1/2\"", "3/4\"", "1\"", "1-1/4\"", "1-1/2\"", "2\""};
const Words metric_sizes = {"20 mm", "25 mm", "32 mm", "50 mm"};
const Words materials = {"k-copper", "l-copper", "hdpe", "mystery"};
const Words layings = {"trench", "pulled"};
const Words truths = {"yes", "no"};
const Words marks = {"finished-grade", "ground-at-house", "highest-outlet"};

// The exact spelling first; what is none may be said to be none, or not at all.
FactModel fact(const std::string& name, Words spellings, Random& random) {
  if (random.one_in(9)) spellings = {"none"};
  spellings.emplace_back("");
  spellings.emplace_back("unknown");
  return {name, std::move(spellings)};
}

FactModel of_choice(const std::string& name, const Words& members, Random& random) {
  const std::string is = random.pick(members);
  return fact(
      name,
      {is, "one of (" + is + ", " + random.pick(members) + ")", "one of (" + is + ", " + random.pick(members) + ")"},
      random);
}

FactModel truth(const std::string& name, Random& random) { return fact(name, {random.pick(truths)}, random); }

FactModel amount(const std::string& name, std::size_t least, std::size_t most, const std::string& unit,
                 Random& random) {
  const std::size_t is = least + random.below(most - least + 1);
  const auto said = [&](std::size_t value) { return std::to_string(value) + " " + unit; };
  const std::size_t off = 1 + random.below(3);
  const std::size_t below = is >= off ? is - off : 0;
  return fact(name,
              {said(is), said(is + random.below(off + 1)) + " +/- " + said(off), "at least " + said(below),
               "at most " + said(is + off)},
              random);
}

FactModel size(const std::string& name, Random& random, const Kept& kept) {
  const bool metric = !kept.only_settling && random.one_in(4);
  const Words& ladder = metric ? metric_sizes : inch_sizes;
  const std::size_t is = random.below(ladder.size());
  const std::string lower = ladder[random.below(is + 1)];
  const std::string upper = ladder[is + random.below(ladder.size() - is)];
  if (!kept.only_settling && random.one_in(12)) return fact(name, {"7/8\""}, random);
  return fact(name, {ladder[is], "at least " + lower, "at most " + upper}, random);
}

FactModel date(const std::string& name, Random& random) {
  const std::size_t month = 1 + random.below(12);
  const std::string of = "2026-" + std::string(month < 10 ? "0" : "") + std::to_string(month);
  const std::size_t day = 1 + random.below(28);
  const std::string is = of + "-" + std::string(day < 10 ? "0" : "") + std::to_string(day);
  return fact(name, {is, of, "2026", "before 2027", "after 2025"}, random);
}

// A depth or height, perhaps read from two marks; an unsaid reading is one nobody took.
FactModel level(const std::string& name, const std::string& side, Random& random) {
  const std::string far = std::to_string(2 + random.below(40)) + " in ";
  const std::string reading = far + side + " " + random.pick(marks);
  return fact(name, {reading}, random);
}

FactModel sleeve(Random& random, const Kept& kept) {
  if (random.one_in(3)) return {"sleeve", {"none", "", "unknown"}};
  const FactModel of = size("size", random, kept);
  const std::string is = of.spellings[0];
  const std::string sealed = random.pick(truths);
  return {"sleeve", {"{size: " + is + ", sealed: " + sealed + "}", "{size: " + is + "}", "yes", "", "unknown"}};
}

ElementModel element(const std::string& kind, Random& random, const Kept& kept);

ListModel list(const Words& kinds, std::size_t most, Random& random, const Kept& kept) {
  ListModel made;
  for (std::size_t count = random.below(most + 1); count > 0; --count)
    made.items.push_back(element(random.pick(kinds), random, kept));
  made.left_out = random.one_in(6);
  made.more = random.one_in(3);
  return made;
}

ElementModel element(const std::string& kind, Random& random, const Kept& kept) {
  ElementModel made;
  made.kind = kind;
  auto& facts = made.facts;
  if (kind == "pipe") {
    facts = {
        of_choice("material", materials, random), size("size", random, kept),      amount("length", 1, 9, "ft", random),
        amount("rise", 0, 5, "ft", random),       truth("buried", random),         of_choice("laid", layings, random),
        level("least-cover", "below", random),    level("cover", "below", random), date("laid-on", random)};
    if (facts[6].spellings[0] != "none") facts[6] = amount("least-cover", 6, 40, "in", random);
    made.list_name = "near";
    made.list = list({"sewer", "gas"}, 2, random, kept);
  } else if (kind == "wall") {
    facts = {sleeve(random, kept), truth("arch", random)};
  } else if (kind == "meter") {
    facts = {size("size", random, kept), truth("one-way", random)};
  } else if (kind == "gauge") {
    facts = {amount("reads", 40, 90, "psi", random)};
  } else if (kind == "strainer") {
    facts = {size("size", random, kept)};
  } else if (kind == "ball-valve" || kind == "pressure-reducer") {
    facts = {size("size", random, kept), amount("set-to", 40, 70, "psi", random)};
  } else if (kind == "vacuum-breaker" || kind == "double-check") {
    facts = {level("height", "above", random)};
  } else if (kind == "sewer" || kind == "gas") {
    facts = {amount("beside", 0, 9, "ft", random)};
  } else if (kind == "test") {
    facts = {of_choice("kind", layings, random), date("done-on", random), date("filed-on", random)};
  }
  const Words on_the_way = {
      "pipe", "wall", "meter", "gauge", "strainer", "ball-valve", "pressure-reducer", "vacuum-breaker", "double-check"};
  for (const auto& one : on_the_way) {
    if (one == kind) facts.push_back(amount("loss", 0, 9, "psi", random));
  }
  return made;
}

std::string papers(Random& random, bool names_first, std::size_t rules) {
  if (random.one_in(3)) return "";
  std::string said;
  for (std::size_t count = 1 + random.below(6); count > 0; --count) {
    said += "  - " + random.pick({"approval", "approval", "order"}) +
            ": {for: " + random.pick({"rule-" + std::to_string(random.below(rules)), "repair", "town/rule-1"}) +
            (random.one_in(6) ? random.pick({", by: unknown", ""})
                              : ", by: " + random.pick({"building-official", "inspector", "water-superintendent"}));
    if (random.one_in(5)) said += random.pick({", until: 2026-05-01", ", until: 2026-08-09", ", until: unknown"});
    if (names_first && random.one_in(3)) said += ", at: \"line[1]\"";
    said += "}\n";
  }
  return said + (random.one_in(5) ? "  - more\n" : "");
}

}  // namespace

SiteModel generated_site(Random& random, const Kept& kept) {
  SiteModel site;
  site.facts = {truth("wet", random), amount("frost-depth", 0, 40, "in", random), date("reached-on", random),
                date("permit-applied-on", random)};
  site.facts.push_back({"stage", {random.pick({"found", "entry", "wall", "in-service", "", "unknown"})}});
  site.facts.push_back({"checked-on", {random.pick({"2026-03-04", "2026-08-09", "", "2027-01-01"})}});
  site.pressure = {amount("highest-static", 40, 90, "psi", random), amount("lowest-static", 30, 60, "psi", random)};
  const Words on_the_way = {"pipe",           "pipe",        "pipe",     "wall",       "wall",
                            "meter",          "gauge",       "strainer", "ball-valve", "pressure-reducer",
                            "vacuum-breaker", "double-check"};
  site.line = list(on_the_way, 6, random, kept);
  site.tests = list({"test"}, 2, random, kept);
  for (const char* name : {"lawn", "pool"}) {
    if (random.one_in(2)) continue;
    ElementModel branch;
    branch.kind = name;
    branch.facts = {truth("chemical", random)};
    branch.list_name = "line";
    branch.list = list({"pipe", "ball-valve", "vacuum-breaker", "double-check"}, 3, random, kept);
    site.branches.push_back(branch);
    ElementModel point;
    point.kind = "branch: " + branch.kind;
    site.line.items.insert(
        site.line.items.begin() + static_cast<std::ptrdiff_t>(random.below(site.line.items.size() + 1)), point);
  }
  const bool whole = !site.line.items.empty() && !site.line.left_out && !site.line.more;
  site.papers = papers(random, whole && !kept.only_settling, 8);
  site.confirmed = {truth("drawing-12", random), truth("drawing-13", random)};
  for (auto& answer : site.confirmed) {
    if (answer.spellings[0] == "none") answer.spellings[0] = "yes";
  }
  return site;
}

namespace {

class Writer {
 public:
  Writer(Random& random, Detail detail) : random_(random), some_(detail == Detail::some) {}

  std::string facts(const std::vector<FactModel>& facts, std::size_t blanks) {
    std::string text;
    for (const auto& fact : facts) {
      const bool exact = !some_ || random_.one_in(2);
      const std::string& said = exact ? fact.spellings[0] : random_.pick(fact.spellings);
      if (!said.empty()) text += std::string(blanks, ' ') + fact.name + ": " + said + "\n";
    }
    return text;
  }

  std::string list(const std::string& name, const ListModel& list, std::size_t blanks, bool may_hide,
                   std::vector<std::size_t>* kept = nullptr) {
    const std::string key = std::string(blanks, ' ') + name + ":";
    if (some_ && list.left_out) return random_.one_in(2) ? key + " unknown\n" : "";
    const bool more = some_ && list.more;
    std::string text;
    for (std::size_t i = 0; i < list.items.size(); ++i) {
      if (more && may_hide && random_.one_in(4)) continue;
      if (kept != nullptr) kept->push_back(i);
      text += item(list.items[i], blanks + 2);
    }
    if (more) text += std::string(blanks + 2, ' ') + "- more\n";
    return text.empty() ? key + " none\n" : key + "\n" + text;
  }

  std::string inside(const ElementModel& element, std::size_t blanks) {
    std::string text = facts(element.facts, blanks);
    if (!element.list_name.empty()) text += list(element.list_name, element.list, blanks, false);
    return text;
  }

 private:
  std::string item(const ElementModel& element, std::size_t blanks) {
    const std::string text = inside(element, blanks + 4);
    return std::string(blanks, ' ') + "- " + element.kind + (text.empty() ? "\n" : ":\n" + text);
  }

  Random& random_;
  bool some_;
};

}  // namespace

std::string written(const SiteModel& model, Random& random, Detail detail, std::vector<std::size_t>* kept) {
  Writer writer(random, detail);
  std::string text = writer.facts(model.facts, 0);
  const std::string pressure = writer.facts(model.pressure, 2);
  if (!pressure.empty()) text += "pressure:\n" + pressure;
  text += writer.list("line", model.line, 0, true, kept);
  std::string branches;
  for (const auto& branch : model.branches) {
    const std::string inside = writer.inside(branch, 4);
    branches += "  " + branch.kind + ":" + (inside.empty() ? " unknown\n" : "\n" + inside);
  }
  text += branches.empty() ? "branches: none\n" : "branches:\n" + branches;
  text += writer.list("tests", model.tests, 0, false);
  if (!model.papers.empty()) text += "papers:\n" + model.papers;
  const std::string confirmed = writer.facts(model.confirmed, 2);
  return confirmed.empty() ? text : text + "confirmed:\n" + confirmed;
}

}  // namespace headgate::test
