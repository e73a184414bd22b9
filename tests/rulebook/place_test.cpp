// What a place makes of the project's rules, day by day.
#include "rulebook/place.hpp"

#include <gtest/gtest.h>

#include "rulebook/world.hpp"

namespace headgate::test {
namespace {

using rulebook::Standing;

const char* const project = R"(stage: entry
limits:
  max: {stricter: lower, values: {code-18 A1: 80 psi, code-21 B1: 75 psi, other 1: 90 psi, practice: 100 psi}}
  rise: {by: preventer, values: {code-18 A1: {breaker: 6 in, double-check: 12 in}}}
  depth:
    type: length
    values:
      code-18 A1: site.frost-depth + 6 in
rules:
  reducer:
    title: t
    source: code-18 A1
    when: pressure.highest-static > limit.max
    require: some pressure-reducer in line
  high:
    title: t
    source: code-18 A2
    each: preventer in line
    require: preventer.height above floor >= limit.rise[preventer]
  deep:
    title: t
    source: code-18 A1
    level: should
    each: pipe in line
    require: pipe.least-cover >= limit.depth
)";

World town(const std::string& changes) {
  World world;
  world.rules(project);
  world.town(changes);
  return world;
}

World dated(const std::string& body, const std::string& from = "2026-07-01") {
  return town("changes:\n  - title: Ordinance 26-14\n    from: " + from + "\n" + body);
}

TEST(Place, TheDayBeforeAndTheDayOfALimit) {
  World world = dated("    limits:\n      max: {own 1: 70 psi}\n");
  EXPECT_EQ(chain(world.resolve("2026-06-30"), "max"),
            "80 psi (code-18 A1) < 100 psi (common practice, no published source)");
  const auto book = world.resolve("2026-07-01");
  EXPECT_EQ(chain(book, "max"),
            "70 psi (own 1) < 80 psi (code-18 A1) < 100 psi (common practice, no published source)");
  EXPECT_EQ(book.limits[0].chain[0].layer.title, "Ordinance 26-14");
  EXPECT_EQ(book.limits[0].chain[1].layer.place, "");
  EXPECT_EQ(chain(world.resolve(), "max"), "80 psi (code-18 A1) < 100 psi (common practice, no published source)");
  EXPECT_EQ(world.said(), "");
}

TEST(Place, UntilIsTheFirstDayWithout) {
  World world = dated("    until: 2026-09-01\n    limits:\n      max: {own 1: 70 psi}\n");
  EXPECT_EQ(chain(world.resolve("2026-08-31"), "max").substr(0, 6), "70 psi");
  EXPECT_EQ(chain(world.resolve("2026-09-01"), "max").substr(0, 6), "80 psi");
}

TEST(Place, Drop) {
  World world = dated("    drop:\n      deep: own 2\n");
  EXPECT_EQ(rule(world.resolve("2026-06-30"), "deep").standing, Standing::in_force);
  const auto book = world.resolve("2026-07-01");
  EXPECT_EQ(rule(book, "deep").standing, Standing::dropped);
  EXPECT_EQ(rule(book, "deep").standing_says, "dropped by Ordinance 26-14 (own 2)");
  EXPECT_EQ(
      world.said(),
      "place:10:7 limit-lost-use: With this, nothing uses the limit \"depth\" any more. [rules:7:3: the limit]\n");
}

TEST(Place, ChangeReplacesWholeKeysAndKeepsTheRest) {
  World world = dated("    change:\n      deep: {level: must, source: own 2}\n");
  EXPECT_EQ(rule(world.resolve("2026-06-30"), "deep").level, rulebook::Level::should);
  const auto book = world.resolve("2026-07-01");
  const auto& deep = rule(book, "deep");
  EXPECT_EQ(deep.level, rulebook::Level::must);
  EXPECT_EQ(words(deep.adopted) + "/" + deep.title, "own 2/t");
  ASSERT_EQ(deep.layers.size(), 2u);
  EXPECT_EQ(deep.layers[1].title, "Ordinance 26-14");
  EXPECT_EQ(deep.each.binders.size(), 1u);
  EXPECT_EQ(world.said(), "");
}

TEST(Place, ChangeTakesAKeyAwayByNone) {
  World world = dated("    change:\n      reducer:\n        when: none\n");
  EXPECT_TRUE(rule(world.resolve("2026-06-30"), "reducer").when);
  EXPECT_FALSE(rule(world.resolve("2026-07-01"), "reducer").when);
  EXPECT_EQ(world.said(),
            "place:10:7 limit-lost-use: With this, nothing uses the limit \"max\" any more. [rules:5:3: the limit]\n");
}

TEST(Place, AddAndItsEnd) {
  World world = dated(
      "    until: 2027-01-01\n    add:\n      proven: {title: t, source: own 3, stage: in-service, require: some "
      "pressure-reducer in line}\n");
  const auto before = world.resolve("2026-06-30");
  EXPECT_EQ(rule(before, "proven").standing, Standing::not_begun);
  EXPECT_EQ(rule(before, "proven").standing_says, "begins 2026-07-01 by Ordinance 26-14");
  const auto after = world.resolve("2027-01-01");
  EXPECT_EQ(rule(after, "proven").standing, Standing::ended);
  EXPECT_EQ(rule(after, "proven").standing_says, "ended 2027-01-01, by Ordinance 26-14");
}

TEST(Place, AnAddedRuleIsInForceWhateverItCites) {
  World world = dated(
      "    add:\n      mine:\n        title: t\n        source: other 1\n        require: some pressure-reducer in "
      "line\n");
  const auto book = world.resolve("2026-07-01");
  EXPECT_EQ(rule(book, "mine").standing, Standing::in_force);
  EXPECT_EQ(rule(book, "mine").topic, "town");
  EXPECT_EQ(words(rule(book, "mine").adopted), "other 1");
  EXPECT_EQ(world.said(), "");
}

TEST(Place, LaterChangesStandAboveEarlierWhateverTheirPlaceInTheFile) {
  World world = town(
      "changes:\n  - title: Second\n    from: 2026-01-01\n    limits:\n      max:\n        own 2: base - 5 psi\n"
      "  - title: First\n    from: 2025-01-01\n    limits:\n      max: {own 1: 70 psi}\n");
  EXPECT_EQ(
      chain(world.resolve("2026-01-01"), "max"),
      "base - 5 psi (own 2) < 70 psi (own 1) < 80 psi (code-18 A1) < 100 psi (common practice, no published source)");
  EXPECT_EQ(chain(world.resolve("2025-12-31"), "max").substr(0, 14), "70 psi (own 1)");
  EXPECT_EQ(world.said(), "");
}

TEST(Place, RowsAreReplacedRowByRow) {
  World world = dated("    limits:\n      rise: {own 1: {breaker: 8 in}}\n");
  const auto book = world.resolve("2026-07-01");
  EXPECT_EQ(chain(book, "rise"), "breaker 8 in (own 1) < breaker 6 in, double-check 12 in (code-18 A1)");
  EXPECT_EQ(world.said(), "");
}

TEST(Place, BaseOfARowNeedsARowBelow) {
  World world = town("limits:\n  rise:\n    own 1:\n      breaker: base + 1 in\n      double-check: base + 1 in\n");
  world.resolve();
  EXPECT_EQ(world.said(), "");
  World other;
  other.rules("limits:\n  rise: {by: preventer, values: {code-18 A1: {breaker: 6 in}}}\n");
  other.town("limits:\n  rise:\n    own 1:\n      breaker: base + 1 in\n      double-check: base + 1 in\n");
  other.resolve();
  EXPECT_EQ(other.said(),
            "place:10:21 base-of-nothing: \"base\" has no value below it in the limit \"rise\" here. "
            "(write the value, or adopt a document that gives one)\n");
}

TEST(Place, TwoDocumentsInTheOrderOfAdoption) {
  for (const auto& [adopts, expected] : std::vector<std::pair<std::string, std::string>>{
           {"[code-18, other]",
            "80 psi (code-18 A1) < 90 psi (other 1) < 100 psi (common practice, no published source)"},
           {"[other, code-18]",
            "90 psi (other 1) < 80 psi (code-18 A1) < 100 psi (common practice, no published source)"},
           {"code-21",
            "75 psi (code-21 B1) < 80 psi (code-21 A1 from code-18) < 100 psi (common practice, no published source)"},
           {"nothing", "100 psi (common practice, no published source)"}}) {
    World world;
    world.rules(project);
    world.whole_place("format: place/1\nid: town\ntitle: A town\nadopts: " + adopts + "\n");
    EXPECT_EQ(chain(world.resolve(), "max"), expected);
    EXPECT_EQ(world.said(), "");
  }
}

TEST(Place, AChangeMayAdoptAnew) {
  World world = dated("    adopts: code-21\n");
  EXPECT_EQ(words(rule(world.resolve("2026-06-30"), "reducer").adopted), "code-18 A1");
  const auto book = world.resolve("2026-07-01");
  EXPECT_EQ(book.adopts, std::vector<std::string>{"code-21"});
  EXPECT_EQ(words(rule(book, "reducer").adopted), "code-21 A1 from code-18");
  EXPECT_EQ(rule(book, "high").standing, Standing::not_adopted);
}

TEST(Place, NewLimitsFactsMembersAndRoles) {
  World world;
  world.rules(project);
  world.town(R"(vocabulary:
  roles: {superintendent: {title: water superintendent}}
  choices: {material: {members: {brass: {metal: yes}}}}
  kinds: {pipe: {facts: {tape: {type: length}}}}
limits:
  tape: {title: Tape above the pipe, values: {own 1: 12 in}}
add:
  taped:
    title: t
    source: own 1
    each: pipe in line where pipe.material is brass
    require:
      any:
        taped: pipe.tape >= limit.tape
        approved: approved by superintendent
)");
  const auto book = world.resolve();
  EXPECT_EQ(world.said(), "");
  EXPECT_EQ(chain(book, "tape"), "12 in (own 1)");
  EXPECT_EQ(rule(book, "taped").standing, Standing::in_force);
}

TEST(Place, GivenFactsAndTheirChange) {
  World world = town(
      "given: {site.frost-depth: 30 in}\nchanges:\n  - title: Colder\n    from: 2026-07-01\n"
      "    given: {site.frost-depth: 36 in, pressure.highest-static: 70 psi}\n");
  const auto before = world.resolve("2026-06-30");
  ASSERT_EQ(before.given.size(), 1u);
  EXPECT_EQ(before.given[0].value->scalar, "30 in");
  const auto after = world.resolve("2026-07-01");
  ASSERT_EQ(after.given.size(), 2u);
  EXPECT_EQ(after.given[0].value->scalar, "36 in");
  EXPECT_EQ(after.given[0].layer.title, "Colder");
}

TEST(Place, GivenFactsThatAreNone) {
  World world = town("given: {site.frost-dept: 30 in, pressure.highest-static: 3 ft, line.pipe: x, pressure: 3 psi}\n");
  world.resolve();
  const std::string said = world.said();
  EXPECT_NE(said.find("place:6:14 given-unknown: site has no \"frost-dept\". (did you mean frost-depth?)\n"),
            std::string::npos)
      << said;
  EXPECT_NE(said.find("place:6:58 wrong-dimension"), std::string::npos) << said;
  EXPECT_NE(said.find("place:6:64 given-no-record: \"line\" is no record; a place gives facts of records only.\n"),
            std::string::npos)
      << said;
  EXPECT_NE(said.find("place:6:78 given-no-fact: \"pressure\" is not one fact. (name a fact of it)\n"),
            std::string::npos)
      << said;
}

TEST(Place, ClosedDays) {
  World world = town("closed-days: {from: 2026-01-01, until: 2027-12-31, days: [2026-12-25, 2026-01-01]}\n");
  const auto book = world.resolve();
  EXPECT_EQ(book.closed.days.size(), 2u);
  EXPECT_EQ(quantity::show_date(book.closed.days[0]), "2026-01-01");
  EXPECT_EQ(world.said(), "");
  World wrong = town("closed-days: {from: 2026-01-01, until: 2026-12-31, days: [2027-01-01]}\n");
  wrong.resolve();
  EXPECT_EQ(wrong.said(),
            "place:6:59 closed-day-outside: 2027-01-01 lies outside from: and until: of the closed days.\n");
  World without = town("closed-days: {from: 2026-01-01, days: []}\n");
  without.resolve();
  EXPECT_EQ(without.said(),
            "place:6:14 closed-days-need: Closed days need until:, the days for which they are known.\n");
}

TEST(Place, Segments) {
  World world = town(
      "changes:\n  - {title: a, from: 2026-07-01, until: 2027-01-01}\n  - {title: b, from: 2025-01-01}\n"
      "  - {title: c, from: 2026-07-01}\n");
  std::string days;
  for (const auto day : rulebook::segments(*world.place)) days += quantity::show_date(day) + " ";
  EXPECT_EQ(days, "2025-01-01 2026-07-01 2027-01-01 ");
}

TEST(Place, AtMostSixtyFourRulebooks) {
  const auto with = [](int days) {
    std::string changes = "changes:\n";
    for (int i = 0; i < days; ++i) changes += "  - {title: a, from: " + std::to_string(1900 + i) + "-01-01}\n";
    return town(changes).said();
  };
  EXPECT_EQ(with(63), "");
  EXPECT_EQ(with(64),
            "place:7:3 too-many-changes: The law of the place changes on 64 days; it may be at most 64 rulebooks.\n");
}

TEST(Place, ChangingOrDroppingWhatDoesNotExist) {
  World world = dated("    limits: {mx: {own 1: 3 psi}}\n    drop: {reduce: own 1}\n    change: {hig: {level: must}}\n",
                      "2030-01-01");
  world.resolve("2026-01-01");
  EXPECT_EQ(world.said(),
            "place:9:14 no-such-limit: There is no limit \"mx\" to set. (did you mean max?)\n"
            "place:10:12 no-such-rule: There is no rule \"reduce\" to change. (did you mean reducer?)\n"
            "place:11:14 no-such-rule: There is no rule \"hig\" to change. (did you mean high?)\n");
}

TEST(Place, SourcesAreAskedFor) {
  World world = dated(
      "    limits: {max: {own 9: 70 psi}}\n    drop: [deep]\n    add: {mine: {title: t, require: pressure is "
      "fitted}}\n");
  world.resolve("2026-07-01");
  EXPECT_EQ(
      world.said(),
      "place:9:24 unknown-section: own has no section \"9\". (write one of 1, 2, 3) "
      "[place:5:11: the document is declared here]\n"
      "place:10:11 drop-without-source: What drops a rule has to be cited. (write rule: document section, one a line)\n"
      "place:11:11 rule-needs: The rule \"mine\" needs a source.\n"
      "place:11:37 expression-place: An expression cannot stand in braces or square brackets. "
      "(write it bare on one line, or as lines below a |)\n");
}

TEST(Place, AddingARuleThatExistsOrALimitThatExists) {
  World world =
      town("add:\n  deep: {title: t, source: own 1, level: note}\nlimits:\n  max: {values: {own 1: 3 psi}}\n");
  world.resolve();
  EXPECT_EQ(
      world.said(),
      "place:7:3 rule-twice: The rule \"deep\" is written twice. (give one another name; a place revises by change:) "
      "[rules:22:3: written here before]\n"
      "place:9:3 limit-twice: The limit \"max\" is declared twice. "
      "(a place that sets it writes citation: value, without values:) [rules:5:3: declared here before]\n");
}

TEST(Place, TwoValuesThatBeginTogether) {
  World world = town(
      "changes:\n  - title: a\n    from: 2026-07-01\n    limits: {max: {own 1: 70 psi}}\n"
      "  - title: b\n    from: 2026-07-01\n    limits: {max: {own 2: 65 psi}}\n");
  world.resolve("2020-01-01");
  EXPECT_EQ(world.said(),
            "place:12:20 limit-set-together: Two changes that begin together both set the limit \"max\". "
            "(give the later one its date, or keep one value) [place:9:20: its other value]\n");
}

TEST(Place, OverlappingDates) {
  World world = town(
      "changes:\n  - title: a\n    from: 2026-01-01\n    until: 2026-09-01\n    limits: {max: {own 1: 70 psi}}\n"
      "  - title: b\n    from: 2026-07-01\n    limits: {max: {own 2: 65 psi}}\n");
  world.resolve("2020-01-01");
  EXPECT_EQ(world.said(),
            "place:13:20 limit-overlap: Two values of the limit \"max\" claim the same days, 2026-07-01 to 2026-09-01. "
            "(end the earlier where the later begins, or leave its until: out) [place:10:20: its other value]\n");
}

TEST(Place, AGapBetweenTwoValuesWithNothingBelow) {
  World world = town(
      "vocabulary: {}\nchanges:\n  - title: a\n    from: 2025-01-01\n    until: 2026-01-01\n"
      "    limits: {new: {values: {own 1: 70 psi}}}\n"
      "  - title: b\n    from: 2026-07-01\n    limits: {new: {own 2: 65 psi}, max: {own 2: 65 psi}}\n");
  world.resolve("2020-01-01");
  EXPECT_EQ(world.said(),
            "place:14:20 limit-gap: The limit \"new\" has no value from 2026-01-01 to 2026-07-01. "
            "(end the earlier where the later begins, or leave its until: out) [place:11:29: the value before]\n");
}

TEST(Place, ChangingWhatIsNotInForce) {
  World world;
  world.rules(project);
  world.whole_place("format: place/1\nid: town\ntitle: A town\nadopts: other\nchange: {deep: {level: must}}\n");
  world.resolve();
  EXPECT_EQ(world.said(),
            "place:5:10 change-without-effect: The rule \"deep\" is not in force here, so this changes nothing. "
            "(adopt one of its sources, code-18 A1, or give it one of the place's own)\n");
}

TEST(Place, AChangeSetsALimitTwice) {
  World world = dated("    limits: {max: {own 1: 70 psi, own 2: 60 psi}}\n");
  world.resolve("2026-07-01");
  EXPECT_EQ(world.said(),
            "place:9:35 limit-set-twice: The limit \"max\" has two values from one layer. (keep one, or rows that do "
            "not meet) "
            "[place:9:20: its other value]\n");
}

TEST(Place, ItsOwnKeys) {
  World world;
  world.whole_place("format: place/1\nid: Town\nadopt: code-18\nalso: Town\nchanges: {title: x}\n");
  EXPECT_EQ(world.said(),
            "place:1:1 place-needs: A place needs its adopts.\n"
            "place:1:1 place-needs: A place needs its title.\n"
            "place:2:5 rulebook-name: \"Town\" is no name: names are lower case letters, digits and single hyphens.\n"
            "place:3:1 rulebook-key: A place file has no key \"adopt\". (write adopts)\n"
            "place:4:7 also-itself: A place cannot be its own second authority. (leave also: out)\n"
            "place:4:7 rulebook-name: \"Town\" is no name: names are lower case letters, digits and single hyphens.\n"
            "place:5:10 changes-no-list: Changes are a list, one block an ordinance. (begin each with - title:)\n");
}

TEST(Place, ItsFormat) {
  World world;
  world.whole_place("format: places/1\nid: town\n");
  EXPECT_EQ(world.said(),
            "place:1:9 place-format: \"places/1\" is not the format of a place. (write format: place/1)\n");
}

TEST(Place, AChangeNeedsATitleAndDatesInOrder) {
  World world =
      town("changes:\n  - {from: 2026-07-01, until: 2026-07-01, form: x}\n  - {title: t, from: 2026-02-30}\n");
  const std::string said = world.said();
  EXPECT_EQ(
      said.find("place:7:5 change-without-title: A change needs its title. (write title: and the ordinance's name)\n"
                "place:7:31 change-ends-first: The change ends before it begins. [place:7:12: it begins here]\n"
                "place:7:43 rulebook-key: A change has no key \"form\". (write from)\n"
                "place:8:22 "),
      0u)
      << said;
}

TEST(Place, PartsOfTheWrongShape) {
  World world = dated("    limits: [a]\n    change: x\n    add: []\n    given: 3\n    tables: t\n");
  world.resolve("2026-07-01");
  EXPECT_EQ(world.said(),
            "place:9:13 rulebook-map: \"limits\" is written as a map, one key a line.\n"
            "place:10:13 rulebook-map: \"change\" is written as a map, one key a line.\n"
            "place:11:10 rulebook-map: \"add\" is written as a map, one key a line.\n"
            "place:12:12 rulebook-map: \"given\" is written as a map, one key a line.\n"
            "place:13:13 rulebook-map: \"tables\" is written as a map, one key a line.\n");
}

TEST(Place, FormulasOfAnotherPlaceAreNoBusinessOfThisOne) {
  World world;
  world.rules(project);
  world.town();
  const auto* node = world.read("village",
                                "format: place/1\nid: village\ntitle: V\nadopts: code-18\n"
                                "sources: {vil: {title: V code, kind: ordinance, sections: [1]}}\n"
                                "vocabulary:\n  derived:\n    pipe:\n      twice: limit.own * 2\n"
                                "limits:\n  own: {values: {vil 1: 1 in}}\n");
  const auto village = rulebook::read_place(*node, world.found);
  const auto both = rulebook::read_vocabulary(world.library, {&*world.place, &*village}, world.found);
  EXPECT_TRUE(rulebook::resolve(world.library, both, *world.place, std::nullopt, world.found).derived.empty());
  EXPECT_EQ(rulebook::resolve(world.library, both, *village, std::nullopt, world.found).derived.size(), 1u);
  EXPECT_EQ(world.said(), "");
}

}  // namespace
}  // namespace headgate::test
