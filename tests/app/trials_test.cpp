// `headgate trials`, and the language's own files in tests/language/ used as a project of their own.
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "app/run.hpp"
#include "language/roughness.hpp"

namespace headgate::test {
namespace {

namespace fs = std::filesystem;
using Json = nlohmann::json;

// A trials file of the project's own rules, starting from a house without a reducer.
class Trials {
 public:
  explicit Trials(const std::string& trials) {
    scratch_.file("house.yaml", house_without_reducer("80 psi"));
    path_ = scratch_.file("trials.yaml", "format: trials/1\nstart-from: house.yaml\ntrials:\n" + trials);
  }
  const std::string& path() const { return path_; }
  Ran run(std::vector<std::string> options = {}) const {
    options.insert(options.begin(), {"trials", path_});
    return test::run(options);
  }

 private:
  Scratch scratch_;
  std::string path_;
};

const std::string good =
    "  - name: round the limit\n"
    "    rule: reducer-above-static-limit\n"
    "    vary: pressure.highest-static\n"
    "    expect: {79 psi: not applicable, 80 psi: not applicable, 80.1 psi: fail, unknown: undecided}\n";

TEST(Trials, PassingOnesEndWithNoughtAndTheirCount) {
  const Ran ran = Trials(good).run();
  EXPECT_EQ(ran.status, 0);
  EXPECT_EQ(ran.err, "");
  EXPECT_TRUE(has(ran.out, "\n4 passed, 0 failed\n")) << ran.out;
}

TEST(Trials, CoverageSaysWhatWasNeverTried) {
  const Ran some = Trials(good).run();
  EXPECT_TRUE(has(some.out, "Not covered:\n")) << some.out;
  EXPECT_TRUE(has(some.out, "\n  reducer-above-static-limit: never pass\n")) << some.out;
  EXPECT_TRUE(has(some.out, " rules covered by outcome and boundary.\n")) << some.out;
  const Ran whole =
      Trials(good +
             "  - name: with one\n    rule: reducer-above-static-limit\n"
             "    set: {pressure.highest-static: 90 psi, \"line[4]\": {pressure-reducer: {}}}\n    expect: pass\n")
          .run();
  EXPECT_EQ(whole.status, 0) << whole.out << whole.err;
  EXPECT_FALSE(has(whole.out, "\n  reducer-above-static-limit: ")) << whole.out;
  EXPECT_TRUE(has(Trials("  - name: far off\n    rule: reducer-above-static-limit\n    set: {pressure.highest-static: "
                         "120 psi}\n    expect: fail\n")
                      .run()
                      .out,
                  "static-pressure-max never tried just under, at, just over"));
}

TEST(Trials, FailingOneSaysExpectedWasAndWhy) {
  const Trials wrong(
      "  - name: too strict\n    rule: reducer-above-static-limit\n    set: {pressure.highest-static: 80 psi}\n    "
      "expect: fail\n");
  const Ran ran = wrong.run();
  EXPECT_EQ(ran.status, 1);
  EXPECT_TRUE(has(ran.out, "\n0 passed, 1 failed\n")) << ran.out;
  std::string flat = ran.out;
  for (std::size_t at; (at = flat.find("\n        ")) != std::string::npos;) flat.replace(at, 9, " ");
  EXPECT_TRUE(
      has(flat, "FAILED  " + wrong.path() +
                    ":7:13: too strict (reducer-above-static-limit): expected fail, was not "
                    "applicable. Highest static pressure is 80 psi, at most 80 psi (highest static pressure without a "
                    "pressure reducing valve).\n"))
      << flat;
  const Json json = Json::parse(wrong.run({"--format", "json"}).out);
  EXPECT_EQ(json["passed"], 0);
  EXPECT_EQ(json["failed"].size(), 1U);
}

TEST(Trials, UnknownRuleFails) {
  const Ran ran = Trials("  - name: none\n    rule: no-such-rule\n    expect: pass\n").run();
  EXPECT_EQ(ran.status, 1);
  EXPECT_TRUE(has(ran.out, "was no finding")) << ran.out;
}

TEST(Trials, WhatIsWrittenWrongEndsWithTwoAndItsPlace) {
  const auto said = [](const std::string& trials) {
    const Trials written(trials);
    const Ran ran = written.run();
    EXPECT_EQ(ran.status, 2) << ran.out;
    EXPECT_EQ(ran.out, "");
    EXPECT_TRUE(has(ran.err, written.path() + ":")) << ran.err;
    return ran.err;
  };
  EXPECT_TRUE(has(said("  - name: a\n    rule: reducer-above-static-limit\n    expect: failed\n"), "[trials-outcome]"));
  EXPECT_TRUE(has(said("  - name: a\n    rule: reducer-above-static-limit\n    expects: fail\n"), "[trials-key]"));
  EXPECT_TRUE(has(said("  - name: a\n    expect: fail\n"), "[trials-missing]"));
  EXPECT_TRUE(
      has(said("  - name: a\n    rule: reducer-above-static-limit\n    expect: {80 psi: fail}\n"), "[trials-missing]"));
  EXPECT_TRUE(has(
      said(
          "  - name: a\n    rule: reducer-above-static-limit\n    set: {pressure.highest: 80 psi}\n    expect: fail\n"),
      ":6:20: error: \"highest\" is not a fact of pressure."));
  EXPECT_TRUE(has(said("  - name: a\n    rule: reducer-above-static-limit\n    set: {pressure.highest-static: 80 "
                       "psy}\n    expect: fail\n"),
                  "[unknown-unit]"));
  EXPECT_TRUE(has(said("  - just words\n"), "[trials-missing]"));
}

// Trials of a place that stands beside them, each rule of it as `rules` says.
class OwnPlace {
 public:
  OwnPlace(const std::string& limits, const std::string& rules, const std::string& trials) {
    scratch_.file("house.yaml", house_without_reducer("60 psi"));
    place("town", limits, rules);
    path_ = scratch_.file("trials.yaml",
                          "format: trials/1\nstart-from: house.yaml\nplaces: .\nplace: town\ntrials:\n" + trials);
  }
  void place(const std::string& id, const std::string& limits, const std::string& rules) const {
    scratch_.file(id + ".yaml", "format: place/1\nid: " + id + "\ntitle: Town of " + id +
                                    "\nadopts: irc-2018\nsources:\n  own: {title: Own code, kind: ordinance, sections: "
                                    "{\"1\": {about: it, seen: adopted text, where: written for this test}}}\n" +
                                    "changes:\n  - title: Ordinance 1\n    from: 2026-07-01\n    limits:" +
                                    (limits.empty() ? " {}" : "\n" + limits) + "\n    add:\n" + rules);
  }
  std::string file(const std::string& name, const std::string& text) const { return scratch_.file(name, text); }
  Ran run() const { return test::run({"trials", path_}); }
  const std::string& path() const { return path_; }

 private:
  Scratch scratch_;
  std::string path_;
};

std::string own_rule(const std::string& name, const std::string& body) {
  return "      " + name +
         ":\n        title: It is as the town wants it\n        topic: meter\n        source: own 1\n"
         "        stage: entry\n        why: The town wants it.\n        fix: Do it.\n" +
         body;
}

TEST(Trials, ElementOfARuleNotInForceIsNotInForce) {
  const OwnPlace town(
      "      house-meter: {title: Largest meter, type: size, values: {own 1: 3/4 in}}",
      own_rule("small-meter", "        each: meter in line\n        require: meter.size <= limit.house-meter\n"),
      "  - name: before it began\n    rule: small-meter\n    element: line[1]\n    set: "
      "{permit-applied-on: 2026-06-30}\n    expect: not in force\n"
      "  - name: since\n    rule: small-meter\n    element: line[1]\n    set: "
      "{permit-applied-on: 2026-07-01}\n    expect: pass\n"
      "  - name: either\n    rule: small-meter\n    element: line[1]\n    set: "
      "{permit-applied-on: unknown}\n    expect: undecided\n"
      "  - name: no such part\n    rule: small-meter\n    element: line[9]\n    set: "
      "{permit-applied-on: 2026-07-01}\n    expect: pass\n");
  const Ran ran = town.run();
  EXPECT_TRUE(has(ran.out, "\n3 passed, 1 failed\n")) << ran.out << ran.err;
  EXPECT_TRUE(has(ran.out, "was no finding")) << ran.out;
}

TEST(Coverage, CountsWhatTheWhereLeavesOutAndEveryFinding) {
  const std::string dated = "permit-applied-on: 2026-07-01";
  const OwnPlace town(
      "      house-meter: {title: Largest meter, type: size, values: {own 1: 1 in}}\n"
      "      longest: {title: Longest pipe, values: {own 1: 10 ft}}",
      own_rule(
          "small-meter-in-pit",
          "        each: meter in line where meter.size <= limit.house-meter\n        require: meter.housed is pit\n") +
          own_rule("short-pipe", "        each: pipe in line\n        require: pipe.length <= limit.longest\n"),
      "  - name: by size\n    rule: small-meter-in-pit\n    set: {" + dated +
          ", line.meter.housed: pit}\n"
          "    vary: line.meter.size\n    expect: {3/4 in: pass, 1 in: pass, 1-1/4 in: not applicable}\n"
          "  - name: elsewhere\n    rule: small-meter-in-pit\n    set: {" +
          dated +
          "}\n"
          "    vary: line.meter.housed\n    expect: {indoors: fail, unknown: undecided}\n"
          "  - name: two pipes, the first too long\n    rule: short-pipe\n    set: {" +
          dated + ", \"line[2].length\": 10.1 ft, \"line[4]\": {pipe: {length: 10 ft}}}\n    expect: fail\n");
  const Ran ran = town.run();
  EXPECT_EQ(ran.status, 0) << ran.out << ran.err;
  EXPECT_FALSE(has(ran.out, "small-meter-in-pit:")) << ran.out;
  EXPECT_TRUE(has(ran.out, "longest never tried\n    just under\n")) << ran.out;
}

TEST(Coverage, AnApprovalIsAPass) {
  const OwnPlace town(
      "", own_rule("work-approved", "        require: approved by building-official\n"),
      "  - name: approved\n    rule: work-approved\n    set: {permit-applied-on: 2026-07-01, papers: "
      "[approval: {for: work-approved, by: building-official, dated: 2026-07-02}]}\n    expect: accepted\n"
      "  - name: nothing on file\n    rule: work-approved\n    set: {permit-applied-on: 2026-07-01}\n"
      "    expect: fail\n");
  const Ran ran = town.run();
  EXPECT_EQ(ran.status, 0) << ran.out << ran.err;
  EXPECT_FALSE(has(ran.out, "work-approved:")) << ran.out;
}

TEST(Coverage, KeepsTheRulesOfPlacesApart) {
  const std::string rule = "        when: pressure.highest-static > 1 psi\n        require: some meter in line\n";
  const OwnPlace town(
      "", own_rule("own-rule", rule),
      "  - name: here\n    rule: own-rule\n    set: {permit-applied-on: 2026-07-01}\n    expect: pass\n");
  town.place("village", "", own_rule("own-rule", rule));
  const std::string other = town.file("b.yaml",
                                      "format: trials/1\nstart-from: house.yaml\nplaces: .\nplace: village\ntrials:\n"
                                      "  - name: there\n    rule: own-rule\n    set: {permit-applied-on: 2026-07-01, "
                                      "line.meter: none}\n    expect: fail\n");
  const Ran ran = test::run({"trials", town.path(), other});
  EXPECT_EQ(ran.status, 0) << ran.out << ran.err;
  EXPECT_TRUE(has(ran.out, "\n  town/own-rule: never fail")) << ran.out;
  EXPECT_TRUE(has(ran.out, "\n  village/own-rule: never pass")) << ran.out;
}

TEST(Trials, StartFromNowhereEndsWithTwo) {
  const Scratch scratch;
  const Ran ran = run({"trials", scratch.file("t.yaml", "format: trials/1\nstart-from: nowhere.yaml\ntrials: []\n")});
  EXPECT_EQ(ran.status, 2);
  EXPECT_TRUE(has(ran.err, "[file-missing]")) << ran.err;
  EXPECT_EQ(run({"trials", scratch.at("none.yaml")}).status, 2);
}

TEST(Trials, CoveredFailsWhenSomethingWasNeverTried) {
  const Ran ran = Trials(good).run({"--covered"});
  EXPECT_EQ(ran.status, 1);
  EXPECT_TRUE(has(ran.out, "\n  reducer-above-static-limit: never pass\n")) << ran.out;
  EXPECT_TRUE(has(ran.out, "\n4 passed, 0 failed\n")) << ran.out;
}

TEST(Trials, TheProjectsOwnAllPassAndTryEverything) {
  const Ran ran = run({"trials", "tests/trials", "--covered"});
  EXPECT_EQ(ran.status, 0) << ran.out << ran.err;
  EXPECT_TRUE(has(ran.out, " passed, 0 failed\n"));
}

// The vocabulary and sources of the project, with the rules, tables and place a newcomer learns from.
class Language {
 public:
  Language() {
    const fs::path tree = HEADGATE_SOURCE_DIR;
    for (const auto& entry : fs::directory_iterator(tree / "rules/vocabulary")) {
      if (entry.path().stem() != "derived") copy(entry.path(), "rules/vocabulary");  // it has formulas of its own
    }
    scratch_.file("rules/vocabulary/choices.yaml", with_roughness(read_text(tree / "rules/vocabulary/choices.yaml")));
    copy(tree / "rules/sources.yaml", "rules");
    copy(tree / "rules/tables/sizes.yaml", "rules");
    for (const char* own : {"rules", "tables", "vocabulary"}) {
      scratch_.file("rules/language/" + std::string(own) + ".yaml",
                    read_text(tree / "tests/language" / (std::string(own) + ".yaml")));
    }
    scratch_.file("jurisdictions/fennick-ferry.yaml", read_text(tree / "tests/language/place.yaml"));
    copy(tree / "jurisdictions/fennick-water.yaml", "jurisdictions");
    // What the project computes and this house states is nothing the example knows of.
    std::string house = read_text(tree / "examples/halyard/as-built.yaml");
    for (const char* computed :
         {"fixture-units: 1.4, ", "fall-off: {value: 6 psi, how: \"maker's curve at 19 gpm\"}, "}) {
      const auto at = house.find(computed);
      if (at != std::string::npos) house.erase(at, std::string(computed).size());
    }
    scratch_.file("examples/halyard/as-built.yaml", house);
    copy(tree / "tests/language/trials.yaml", "tests/language");
    copy(tree / "tests/language/site.yaml", "tests/language");
    // The water works change rules that the small project does not have.
    // Nor does it know the federal safety rules; what `country` binds has to be there.
    const std::string works = read_text(scratch_.at("jurisdictions/fennick-water.yaml"));
    scratch_.file("jurisdictions/fennick-water.yaml",
                  works.substr(0, works.find("changes:")) +
                      "changes:\n  - title: Rules of Service of 2023\n    from: 2023-01-01\n    limits:\n"
                      "      static-pressure-max: {fw-rules 4.2: 75 psi}\n    change:\n      "
                      "reducer-above-static-limit: {source: fw-rules 4.2}\n");
  }
  Ran run(std::vector<std::string> arguments) const {
    arguments.insert(arguments.end(), {"--rules", scratch_.at("rules")});
    return test::run(arguments);
  }
  std::string at(const std::string& name) const { return scratch_.at(name); }
  std::string site(const std::string& text) const { return scratch_.file("site.yaml", text); }

 private:
  void copy(const fs::path& from, const std::string& folder) const {
    scratch_.file(folder + "/" + from.filename().string(), read_text(from));
  }
  Scratch scratch_;
};

TEST(Language, ItsTrialsPass) {
  const Language language;
  const Ran ran = language.run({"trials", language.at("tests/language/trials.yaml")});
  EXPECT_EQ(ran.status, 0) << ran.out << ran.err;
  EXPECT_TRUE(has(ran.out, "\n3 passed, 0 failed\n")) << ran.out;
}

TEST(Language, ItsSiteIsJudgedByItsRules) {
  const Language language;
  const Ran ran = language.run({"check", language.at("tests/language/site.yaml"), "--all", "--format", "json"});
  ASSERT_EQ(ran.status, 3) << ran.err;
  std::map<std::string, std::string> first;
  const Json report = Json::parse(ran.out);
  for (const auto& finding : report["findings"]) {
    first.emplace(finding["rule"].get<std::string>(),
                  finding["outcome"].get<std::string>() + ": " + finding["sentence"].get<std::string>());
  }
  EXPECT_EQ(first["fennick-ferry/reducer-above-static-limit"], "pass: The line has a pressure reducing valve.");
  EXPECT_EQ(first["fennick-water/reducer-above-static-limit"], "pass: The line has a pressure reducing valve.");
  EXPECT_EQ(first["fennick-ferry/sleeve-two-sizes"].substr(0, 12), "not in force");
  EXPECT_EQ(first["fennick-ferry/reducer-proven"].substr(0, 5), "later");
  EXPECT_EQ(first["fennick-ferry/breaker-high-enough"],
            "undecided: The pressure vacuum breaker's height has no reading from the highest outlet it feeds.");
}

TEST(Language, ItsFormulasLoadAndCompute) {
  const Language language;
  const Ran ran = language.run({"calc", "meter-loss[3/4 in, 15 gpm].loss", "--in", "psi"});
  EXPECT_EQ(ran.out, "5.1 psi\n") << ran.err;  // halfway between 2.2 and 8
  EXPECT_EQ(language.run({"calc", "pipe-dimensions[type-l, 3/4 in].inside-diameter", "--in", "in"}).out, "0.785 in\n");
  const Ran beyond = language.run({"calc", "meter-loss[3/4 in, 60 gpm].loss"});
  EXPECT_EQ(beyond.status, 2);
  EXPECT_TRUE(has(beyond.err, "has no row for flow 60 gpm: its rows for 3/4 in go from 5 gpm to 20 gpm")) << beyond.err;
}

TEST(Language, AnExceptionCountsOnlyWhereItsSourceIsAdopted) {
  const Language language;
  const std::string bare =
      "format: site/1\nname: a\nplace: fennick-ferry\nstage: wall\npermit-applied-on: 2026-09-14\n"
      "line: [pipe: {size: 1\"}, wall: {material: fieldstone, hole: cored, sleeve: none, arch: none}]\n";
  const Ran ran = language.run({"check", language.site(bare)});
  EXPECT_EQ(ran.status, 3) << ran.out;  // drawing 12 is not confirmed by anybody yet
  EXPECT_TRUE(has(ran.out, "Is this so: the detail on standard drawing 12?")) << ran.out;
  const Ran refused = language.run({"check", language.at("site.yaml"), "--set", "confirmed.drawing-12=no"});
  EXPECT_EQ(refused.status, 1) << refused.out;
  EXPECT_TRUE(has(refused.out, "  found    The pipe passes the fieldstone wall bare. None of these holds:"))
      << refused.out;
}

}  // namespace
}  // namespace headgate::test
