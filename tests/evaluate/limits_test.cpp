// Limits in layers, by kind and by member, tables; duties and dates; papers and clauses: decisions 10 to 13, 15.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "evaluate/worlds/world.hpp"

namespace headgate::test {
namespace {

const char* const both = "adopts: [code-a, code-b]\n";
const char* const both_other_way = "adopts: [code-b, code-a]\n";

std::string limit(const std::string& limits, const std::string& expression, const std::string& place = both,
                  const std::string& site = "wet: yes", const std::string& day = "2026-05-01") {
  return World({.limits = limits, .place = place, .site = site, .day = day}).value(expression);
}

TEST(Limits, TheFirstAdoptedBindsFirst) {
  const std::string limits = "  top: {title: Top, values: {code-a 1: 80 psi, code-b 1: 70 psi, practice: 60 psi}}";
  EXPECT_EQ(limit(limits, "limit.top"), "80 psi");
  EXPECT_EQ(limit(limits, "limit.top", both_other_way), "70 psi");
  EXPECT_EQ(limit(limits, "limit.top", "adopts: nothing\n"), "60 psi");
  EXPECT_EQ(limit(limits, "limit.top",
                  "adopts: code-a\nchanges: [{title: Now, from: 2026-01-01, limits: {top: {code-a 2: 65 psi}}}]"),
            "65 psi");
  EXPECT_EQ(limit(limits, "limit.top",
                  "adopts: code-a\nchanges: [{title: Later, from: 2026-05-02, limits: {top: {code-a 2: 65 psi}}}]"),
            "80 psi");
  EXPECT_EQ(limit(limits, "limit.top",
                  "adopts: code-a\nchanges:\n  - title: Two\n    from: 2026-02-01\n    limits:\n      top:\n        "
                  "code-a 2: base - 5 psi\n"
                  "  - {title: One, from: 2026-01-01, limits: {top: {code-a 2: 65 psi}}}"),
            "60 psi");
}

TEST(Limits, BaseIsTheNextLowerValue) {
  const std::string limits =
      "  deep:\n    title: Deep\n    type: length\n    values:\n      code-a 1: base + 6 in\n      code-b 1: "
      "frost-depth + 12 in";
  EXPECT_EQ(limit(limits, "limit.deep is same as 38 in", both, "frost-depth: 20 in"), "yes");
  EXPECT_EQ(limit(limits, "limit.deep is same as 32 in", "adopts: code-b\n", "frost-depth: 20 in"), "yes");
  EXPECT_EQ(limit(limits, "limit.deep", both, "wet: yes"), "unknown");
  EXPECT_EQ(limit(limits, "limit.deep >= 38 in", both, "frost-depth: at least 20 in"), "yes");
}

TEST(Limits, UnknownAndDoubtful) {
  EXPECT_EQ(limit("  top: {title: Top, type: pressure, values: {code-a 1: unknown, code-b 1: 70 psi}}", "limit.top"),
            "unknown");
  EXPECT_EQ(limit("  top: {title: Top, values: {code-a 3: 80 psi}}", "limit.top < 90 psi"), "undecided");
  EXPECT_EQ(limit("  top:\n    title: Top\n    values:\n      code-a 1: {value: 80 psi, doubt: two printings differ}",
                  "limit.top < 90 psi"),
            "undecided");
  EXPECT_EQ(limit("  top: {title: Top, values: {code-a 1: 80 psi}}", "limit.top < 90 psi"), "yes");
}

const char* const rises = R"(  rise:
    title: Rise
    by: preventer
    values:
      code-a 1: {vacuum-breaker: 6 in}
      code-b 1: {vacuum-breaker: 9 in, double-check: 12 in}
)";

std::string risen(const std::string& limits, const std::string& place, const std::string& site) {
  return World({.limits = limits,
                .rules = rule("it",
                              "each: preventer as device in line\nrequire: device.height above highest-outlet >= "
                              "limit.rise[device]"),
                .place = place,
                .site = "stage: entry\nline: [" + site + "]"})
      .outcomes("it");
}

TEST(Limits, ARowAKindReplacedRowByRow) {
  const std::string line =
      "vacuum-breaker: {height: 7 in above highest-outlet}, double-check: {height: 7 in above highest-outlet}";
  EXPECT_EQ(risen(rises, both, line), "line[1]: pass; line[2]: fail");
  EXPECT_EQ(risen(rises, both_other_way, line), "line[1]: fail; line[2]: fail");
  EXPECT_EQ(risen(rises, "adopts: code-a\n", line), "line[1]: pass; line[2]: undecided");  // never a neighbour's number
}

TEST(Limits, BaseOfARowIsThatRowBelow) {
  const std::string limits =
      "  rise:\n    title: Rise\n    by: preventer\n    type: length\n    values:\n      code-a 1:\n        "
      "vacuum-breaker: base + 1 in\n        double-check: base - 6 in\n"
      "      code-b 1: {vacuum-breaker: 9 in, double-check: 12 in}";
  const std::string line =
      "vacuum-breaker: {height: 9.5 in above highest-outlet}, double-check: {height: 7 in above highest-outlet}";
  EXPECT_EQ(risen(limits, both, line), "line[1]: fail; line[2]: pass");
}

TEST(Limits, OfTheThingInHand) {
  const std::string limits =
      "  deep:\n    title: Deep\n    of: pipe\n    values:\n      code-a 1: if pipe.material.metal then 12 in else "
      "pipe.length / 10\n";
  World world({.limits = limits,
               .rules = rule("it", "each: pipe in line\nrequire: pipe.least-cover >= limit.deep"),
               .site = "stage: entry\nline: [pipe: {material: k-copper, least-cover: 12 in}, pipe: {material: hdpe, "
                       "length: 20 ft, least-cover: 12 in}, pipe: {least-cover: 1 in}]"});
  EXPECT_EQ(world.outcomes("it"), "line[1]: pass; line[2]: fail; line[3]: undecided");
}

TEST(Limits, ARowAMemberHullOverASet) {
  const std::string limits =
      "  bar:\n    title: Bar\n    by: material\n    values:\n      code-a 1: {k-copper: 10 psi, l-copper: 20 psi, "
      "hdpe: 30 psi}\n";
  const auto at = [&](const std::string& material) {
    World world({.limits = limits,
                 .rules = rule("it", "each: pipe in line\nrequire: limit.bar[pipe.material] <= 20 psi"),
                 .site = "stage: entry\nline: [pipe: {material: {value: \"" + material + "\"}}]"});
    return world.outcomes("it").substr(9);
  };
  EXPECT_EQ(at("k-copper"), "pass");
  EXPECT_EQ(at("hdpe"), "fail");
  EXPECT_EQ(at("mystery"), "undecided");
  EXPECT_EQ(at("one of (k-copper, l-copper)"), "pass");
  EXPECT_EQ(at("one of (k-copper, hdpe)"), "undecided");
  EXPECT_EQ(at("one of (k-copper, mystery)"), "undecided");
  EXPECT_EQ(at("unknown"), "undecided");
}

TEST(Limits, ListsAndKinds) {
  const std::string limits =
      "  fine: {title: Fine, type: list of material, values: {code-a 1: [k-copper, hdpe]}}\n"
      "  approved: {title: Approved, type: list of preventer, values: {code-a 1: [double-check]}}";
  World world(
      {.limits = limits,
       .rules = rule("it", "each: pipe in line\nrequire: pipe.material is one of limit.fine") +
                rule("device", "each: preventer as device in line\nrequire: device is one of limit.approved") +
                rule("not-device", "each: preventer as device in line\nrequire: device is not one of limit.approved"),
       .site = "stage: entry\nline: [pipe: {material: hdpe}, pipe: {material: l-copper}, pipe: {material: {value: "
               "\"one of (hdpe, k-copper)\"}}, "
               "pipe: {}, double-check: {}, vacuum-breaker: {}]"});
  EXPECT_EQ(world.outcomes("it"), "line[1]: pass; line[2]: fail; line[3]: pass; line[4]: undecided");
  EXPECT_EQ(world.outcomes("device"), "line[5]: pass; line[6]: fail");
  EXPECT_EQ(world.outcomes("not-device"), "line[5]: fail; line[6]: pass");
}

TEST(Limits, AnAlternativeWithoutValueIsDroppedARuleWithoutOneNotInForce) {
  const std::string limits =
      "  gone: {title: Gone, values: {code-b 1: 5 psi}}\n  here: {title: Here, values: {code-a 1: 5 psi}}";
  World world(
      {.limits = limits,
       .rules = rule("any",
                     "require:\n  any:\n    a: pressure.highest-static > limit.gone\n    b: pressure.highest-static > "
                     "limit.here") +
                rule("all",
                     "require:\n  a: pressure.highest-static > limit.gone\n  b: pressure.highest-static > limit.here"),
       .site = "stage: entry\npressure: {highest-static: 3 psi}"});
  EXPECT_EQ(world.outcomes("any"), "fail");
  EXPECT_EQ(world.outcomes("all"), "not in force");
}

TEST(Limits, TwoAuthoritiesJudgeWithTheirOwn) {
  World world({.limits = "  top: {title: Top, values: {code-a 1: 80 psi, code-b 1: 70 psi}}",
               .rules = rule("it", "require: pressure.highest-static <= limit.top", "code-a 1, code-b 1"),
               .place = "adopts: code-a",
               .site = "stage: entry\npressure: {highest-static: 75 psi}",
               .also = "adopts: code-b"});
  EXPECT_EQ(world.outcomes("it"), "pass");
  EXPECT_EQ(world.outcomes_of_second("it"), "fail");
}

TEST(Clauses, LabelsMeanAllAndNest) {
  const auto at = [](const std::string& pressure) {
    World world(
        {.rules =
             rule("it",
                  "require:\n  wet it is: wet\n  one of two:\n    any:\n      low: pressure.highest-static < 40 psi\n"
                  "      both:\n        all:\n          high: pressure.highest-static > 60 psi\n          low: "
                  "pressure.lowest-static < 9 psi"),
         .site = "stage: entry\nwet: yes\npressure: {" + pressure + "}"});
    return world.outcomes("it");
  };
  EXPECT_EQ(at("highest-static: 30 psi"), "pass");
  EXPECT_EQ(at("highest-static: 50 psi"), "fail");
  EXPECT_EQ(at("highest-static: 70 psi"), "undecided");
  EXPECT_EQ(at("highest-static: 70 psi, lowest-static: 3 psi"), "pass");
  EXPECT_EQ(at("lowest-static: 30 psi"), "undecided");
}

TEST(Clauses, ConfirmedAsksItsOwnName) {
  const std::string rules = rule("it", "require:\n  drawing twelve: confirmed as drawing-12");
  const auto at = [&](const std::string& site) {
    return World({.rules = rules, .site = "stage: entry\n" + site}).outcomes("it");
  };
  EXPECT_EQ(at("confirmed: {drawing-12: yes}"), "pass");
  EXPECT_EQ(at("confirmed: {drawing-12: no}"), "fail");
  EXPECT_EQ(at("confirmed: {drawing-12: unknown}"), "undecided");
  EXPECT_EQ(at("confirmed: {drawing-13: yes}"), "undecided");
  EXPECT_EQ(at("wet: yes"), "undecided");
}

TEST(Limits, AnUnknownValueOfADoubtfulSectionIsDoubtful) {
  const auto why = [](const std::string& value, const std::string& section) {
    World world({.limits = "  floor: {title: Floor, type: pressure, values: {code-a " + section + ": " + value + "}}",
                 .rules = rule("it", "require: pressure.highest-static >= limit.floor"),
                 .site = "stage: entry\npressure: {highest-static: 60 psi}"});
    EXPECT_EQ(world.outcomes("it"), "undecided") << value;
    return evaluate::explain(world.judgement(), world.decision("it")).require->expression->kids[1].why;
  };
  EXPECT_EQ(why("unknown", "3"), evaluate::Why::doubt);
  EXPECT_EQ(why("50 psi", "3"), evaluate::Why::doubt);
  EXPECT_EQ(why("{value: unknown, doubt: smudged}", "1"), evaluate::Why::doubt);
  EXPECT_EQ(why("unknown", "1"), evaluate::Why::no_value);
}

TEST(Limits, AnUnknownRowIsNotKnown) {
  World world({.limits = "  rise: {title: Rise, by: preventer, type: length, values: {code-a 1: {vacuum-breaker: "
                         "unknown, double-check: 6 in}}}",
               .rules = rule("it", "each: preventer in line\nrequire: limit.rise >= 5 in"),
               .site = "stage: entry\nline: [vacuum-breaker: {}, double-check: {}]"});
  EXPECT_EQ(world.outcomes("it"), "line[1]: undecided; line[2]: pass");
  EXPECT_EQ(evaluate::explain(world.judgement(), world.judgement().decisions[0]).require->expression->kids[0].why,
            evaluate::Why::no_value);
}

TEST(Papers, AnApprovalForOneElementCountsForThatOne) {
  const std::string rules = rule("it",
                                 "each: wall in line\nrequire:\n  any:\n    sleeve: wall.sleeve is fitted\n    "
                                 "approved: approved by building-official");
  const auto at = [&](const std::string& paper) {
    return World({.rules = rules,
                  .site = "stage: entry\nline: [wall: {sleeve: none}, wall: {sleeve: none}]\npapers: [" + paper + "]"})
        .outcomes("it");
  };
  EXPECT_EQ(at("approval: {for: it, by: inspector}"), "line[1]: accepted; line[2]: accepted");
  EXPECT_EQ(at("approval: {for: it, by: inspector, at: \"line[2]\"}"), "line[1]: fail; line[2]: accepted");
  EXPECT_EQ(at("approval: {for: town/it, by: Building-Official, at: \"line[1]\"}"), "line[1]: accepted; line[2]: fail");
  EXPECT_EQ(at("approval: {by: inspector}"), "line[1]: fail; line[2]: fail");
  EXPECT_EQ(at("order: {for: it, by: inspector}"), "line[1]: fail; line[2]: fail");
  EXPECT_EQ(at("more"), "line[1]: undecided; line[2]: undecided");
  EXPECT_EQ(at("approval: {for: it, by: inspector, at: \"line[2]\"}, more"), "line[1]: undecided; line[2]: accepted");
}

TEST(Papers, ApprovedForAnotherSubjectAndOrdered) {
  const std::string rules = rule(
      "it", "when: ordered by water-superintendent for repair\nrequire: approved by building-official for trenchless");
  const auto at = [&](const std::string& papers) {
    return World({.rules = rules, .site = "stage: entry\npapers: [" + papers + "]"}).outcomes("it");
  };
  const std::string order = "order: {for: repair, by: water superintendent}";
  EXPECT_EQ(at(order), "fail");
  EXPECT_EQ(at(order + ", approval: {for: trenchless, by: inspector}"), "accepted");
  EXPECT_EQ(at("approval: {for: repair, by: water-superintendent}"), "not applicable");
}

}  // namespace
}  // namespace headgate::test
