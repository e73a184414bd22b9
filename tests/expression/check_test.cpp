// Types and resolved names of good expressions.
#include <gmock/gmock.h>

#include "expression/functions.hpp"
#include "expression/same_shape.hpp"
#include "expression/small_world.hpp"

namespace headgate::test {
namespace {

using expression::Node;
using expression::Op;
using testing::HasSubstr;

struct Typed {
  const char* expression;
  const char* typed;  // "TYPE: canonical text with what was implied"
};

const std::vector<Typed>& typed_cases() {
  static const std::vector<Typed> all = {
      {"some gauge in line has (some pressure-reducer in line has gauge comes after pressure-reducer)",
       "a yes or no: some gauge in line has (some pressure-reducer in line has gauge comes after "
       "pressure-reducer)"},
      {"every pipe in line where pipe.buried has pipe.least-cover >= limit.least-cover",
       "a yes or no: every pipe in line where pipe.buried has pipe.least-cover >= limit.least-cover[pipe]"},
      {"count(ball-valve in line) >= 2", "a yes or no: count(ball-valve in line) >= 2"},
      {"sum(pipe.length for pipe in line where pipe.material.metal)",
       "a length: sum(pipe.length for pipe in line where pipe.material.metal)"},
      {"every wall in line has wall.sleeve.size / wall.pipe.size >= limit.sleeve-ratio",
       "a yes or no: every wall in line has wall.sleeve.size / wall.pipe.size >= limit.sleeve-ratio"},
      {"pressure.highest-static >= 80 psi", "a yes or no: pressure.highest-static >= 80 psi"},
      {"80 psi <= pressure.highest-static", "a yes or no: 80 psi <= pressure.highest-static"},
      {"site.frost-depth + 6 in", "a length: site.frost-depth + 6 in"},
      {"frost-depth + 6 in", "a length: frost-depth + 6 in"},
      {"greatest(12 in, site.frost-depth + 6 in)", "a length: greatest(12 in, site.frost-depth + 6 in)"},
      {"12 in <= frost-depth <= 5 ft 6 in", "a yes or no: 12 in <= frost-depth <= 5 ft 6 in"},
      {"some pipe in line has pipe.size is 3/4\"", "a yes or no: some pipe in line has pipe.size is 3/4\""},
      {"some pipe in line has pipe.size >= 20 mm", "a yes or no: some pipe in line has pipe.size >= 20 mm"},
      {"some pipe in line has pipe.size / 3/4 in > 2", "a yes or no: some pipe in line has pipe.size / 3/4 in > 2"},
      {"some pipe in line has pipe.material is k-copper",
       "a yes or no: some pipe in line has pipe.material is k-copper"},
      {"some pipe in line has pipe.material is not one of (k-copper, hdpe)",
       "a yes or no: some pipe in line has pipe.material is not one of (k-copper, hdpe)"},
      {"some pipe in line has pipe.material is one of limit.allowed-materials",
       "a yes or no: some pipe in line has pipe.material is one of limit.allowed-materials"},
      {"some pipe in line has pipe.size is one of limit.allowed-sizes",
       "a yes or no: some pipe in line has pipe.size is one of limit.allowed-sizes"},
      {"some preventer as breaker in line has breaker.height above highest-outlet >= limit.breaker-rise",
       "a yes or no: some preventer as breaker in line has breaker.height above highest-outlet >= "
       "limit.breaker-rise[breaker]"},
      {"limit.breaker-rise[vacuum-breaker] > 3 ft", "a yes or no: limit.breaker-rise[vacuum-breaker] > 3 ft"},
      {"some preventer in line has preventer is one of limit.high-hazard-preventers",
       "a yes or no: some preventer in line has preventer is one of limit.high-hazard-preventers"},
      {"some valve in line has valve is one of (ball-valve, gate-valve)",
       "a yes or no: some valve in line has valve is one of (ball-valve, gate-valve)"},
      {"some pipe in line has pipe.rise >= 6 in",
       "a yes or no: some pipe in line has pipe.rise above finished-grade >= 6 in"},
      {"some pipe in line has pipe.cover below finished-grade >= 40 in",
       "a yes or no: some pipe in line has pipe.cover below finished-grade >= 40 in"},
      {"some pipe in line has pipe.cover below limit.cover-mark >= 40 in",
       "a yes or no: some pipe in line has pipe.cover below limit.cover-mark >= 40 in"},
      {"permit-applied-on + 3 months", "a date: permit-applied-on + 3 months"},
      {"permit-applied-on - limit.report-time >= limit.law-began",
       "a yes or no: permit-applied-on - limit.report-time >= limit.law-began"},
      {"permit-applied-on is in limit.digging-season", "a yes or no: permit-applied-on is in limit.digging-season"},
      {"permit-applied-on is same as limit.law-began", "a yes or no: permit-applied-on is same as limit.law-began"},
      {"least(permit-applied-on, limit.law-began)", "a date: least(permit-applied-on, limit.law-began)"},
      {"greatest(test.done-on for test in tests)", "a date: greatest(test.done-on for test in tests)"},
      {"looked-at + 15 min", "a date with a time: looked-at + 15 min"},
      {"looked-at - 2 h < looked-at", "a yes or no: looked-at - 2 h < looked-at"},
      {"reads-at < reads-at", "a yes or no: reads-at < reads-at"},
      {"house.water - house.air >= 10 F", "a yes or no: house.water - house.air >= 10 F"},
      {"house.water >= 140 F", "a yes or no: house.water >= 140 F"},
      {"house.air + 10 F", "a temperature: house.air + 10 F"},
      {"10 F + house.air", "a temperature: 10 F + house.air"},
      {"house.air + 2 * 10 F", "a temperature: house.air + 2 * 10 F"},
      {"house.water - 40 F", "a temperature difference: house.water - 40 F"},
      {"house.water - (house.water - house.air)", "a temperature: house.water - (house.water - house.air)"},
      {"if house.kind is one-family then 12 in else 18 in",
       "a length: if house.kind is one-family then 12 in else 18 in"},
      {"if house.kind is one-family then house.kind else house.kind",
       "a house-kind: if house.kind is one-family then house.kind else house.kind"},
      {"some pipe in line has pipe-dimensions[pipe.series, pipe.size].inside-diameter < 1 in",
       "a yes or no: some pipe in line has pipe-dimensions[pipe.series, pipe.size].inside-diameter < 1 in"},
      {"pipe-dimensions[type-k, 3/4 in].inside-diameter", "a length: pipe-dimensions[type-k, 3/4 in].inside-diameter"},
      {"meter-loss[house.draw]", "a pressure: meter-loss[house.draw]"},
      {"limit.demand-curve[30].flow", "a flow: limit.demand-curve[30].flow"},
      {"limit.demand-curve[30]", "a flow: limit.demand-curve[30]"},
      {"sum(fixture.count * limit.fixture-units[fixture] for fixture in fixtures)",
       "a number: sum(fixture.count * limit.fixture-units[fixture] for fixture in fixtures)"},
      {"sum(fixture.count * limit.fixture-units for fixture in fixtures)",
       "a number: sum(fixture.count * limit.fixture-units[fixture] for fixture in fixtures)"},
      {"limit.wall-factor[k-copper] * 2", "a number: limit.wall-factor[k-copper] * 2"},
      {"some pipe in line has limit.wall-factor[pipe.material] > 3",
       "a yes or no: some pipe in line has limit.wall-factor[pipe.material] > 3"},
      {"approved by building-official", "a yes or no: approved by building-official"},
      {"ordered by water-superintendent for frost-rule", "a yes or no: ordered by water-superintendent for frost-rule"},
      {"confirmed as drawing-12", "a yes or no: confirmed as drawing-12"},
      {"some wall in line has wall.pipe.material.family.plain",
       "a yes or no: some wall in line has wall.pipe.material.family.plain"},
      {"some wall in line has wall.pipe is pipe", "a yes or no: some wall in line has wall.pipe is pipe"},
      {"some wall in line where (wall.sleeve is fitted and not wall.sleeve.open) has wall.pipe is not none",
       "a yes or no: some wall in line where (wall.sleeve is fitted and not wall.sleeve.open) has wall.pipe "
       "is not none"},
      {"some pipe in line has (pipe.previous is meter and pipe.next is not fitted)",
       "a yes or no: some pipe in line has (pipe.previous is meter and pipe.next is not fitted)"},
      {"note is recorded", "a yes or no: note is recorded"},
      {"line is none", "a yes or no: line is none"},
      {"sizes-up(3/4 in, 2)", "a nominal size: sizes-up(3/4 in, 2)"},
      {"some pipe in line has size-steps(pipe.size, 2 in) >= 2",
       "a yes or no: some pipe in line has size-steps(pipe.size, 2 in) >= 2"},
      {"hazen-williams(5 gpm, 140, 0.8 in, 46')", "a pressure: hazen-williams(5 gpm, 140, 0.8 in, 46')"},
      {"velocity(house.draw, 1 in) * 3 s", "a length: velocity(house.draw, 1 in) * 3 s"},
      {"house.draw / 2 gpm", "a number: house.draw / 2 gpm"},
      {"frost-depth * frost-depth", "an area: frost-depth * frost-depth"},
      {"1 / frost-depth", "1 / length: 1 / frost-depth"},
      {"count(pipe in line) / 2", "a number: count(pipe in line) / 2"},
      {"no pipe in line", "a yes or no: no pipe in line"},
      {"some valve in line has valve.size is 1\"", "a yes or no: some valve in line has valve.size is 1\""},
      {"some pipe in line where (some sewer in pipe.near has sewer.beside < 3 ft) has pipe.buried",
       "a yes or no: some pipe in line where (some sewer in pipe.near has sewer.beside < 3 ft) has "
       "pipe.buried"},
      {"some pipe in line has no pipe in line", "a yes or no: some pipe in line has (no pipe in line)"},
      {"some pipe as a in line has (some pipe as b in line has a comes before b)",
       "a yes or no: some pipe as a in line has (some pipe as b in line has a comes before b)"},
      {"least(pipe.size for pipe in line) >= 3/4 in", "a yes or no: least(pipe.size for pipe in line) >= 3/4 in"},
      {"yes", "a yes or no: yes"},
      {"not yes", "a yes or no: not yes"},
      {"frost-depth is 30 in", "a yes or no: frost-depth is 30 in"},
      {"frost-depth is one of (30 in, 3 ft)", "a yes or no: frost-depth is one of (30 in, 3 ft)"},
      {"count(pipe in line) is 3", "a yes or no: count(pipe in line) is 3"},
      {"house.kind is same as house.kind", "a yes or no: house.kind is same as house.kind"},
      {"house.air + 10 F >= house.water", "a yes or no: house.air + 10 F >= house.water"},
  };
  return all;
}

TEST(Check, GivesEveryFormItsType) {
  SmallWorld world;
  ASSERT_EQ(in_short(world.found, world.sources), "");
  for (const Typed& one : typed_cases()) EXPECT_EQ(checked(world, one.expression), one.typed) << one.expression;
}

TEST(Check, KidsComeBeforeTheirParents) {
  SmallWorld world;
  for (const Typed& one : typed_cases()) {
    text::Diagnostics found;
    const auto tree = expression::compile(world.text(one.expression), world.scope, std::nullopt, found);
    ASSERT_TRUE(tree) << one.expression;
    EXPECT_EQ(tree->root, tree->nodes.size() - 1);
    for (expression::NodeId id = 0; id < tree->nodes.size(); ++id) {
      const Node& node = tree->nodes[id];
      EXPECT_NE(node.type.kind, Type::Kind::nothing) << one.expression << " " << print(*tree, id);
      EXPECT_NE(node.op, Op::word) << one.expression;
      for (const auto kid : node.kids) EXPECT_TRUE(kid == expression::no_node || kid < id) << one.expression;
      EXPECT_TRUE(node.binder.list == expression::no_node || node.binder.list < id) << one.expression;
    }
  }
}

TEST(Check, WhatItPrintsChecksToTheSame) {
  SmallWorld world;
  for (const Typed& one : typed_cases()) {
    const std::string typed = one.typed;
    EXPECT_EQ(checked(world, typed.substr(typed.find(": ") + 2)), typed);
  }
}

class CheckTree : public testing::Test {
 protected:
  SmallWorld world;

  Tree tree_of(const std::string& expression, const std::optional<Type>& wanted = std::nullopt) {
    text::Diagnostics found;
    auto tree = expression::compile(world.text(expression), world.scope, wanted, found);
    EXPECT_TRUE(tree) << in_short(found, world.sources);
    return tree ? *tree : Tree{};
  }
  static const Node& first(const Tree& tree, Op op) {
    static const Node none;
    for (const Node& node : tree.nodes) {
      if (node.op == op) return node;
    }
    ADD_FAILURE() << "no such node";
    return none;
  }
};

// A literal takes the type its place demands.

TEST_F(CheckTree, ThreeQuartersOfAnInchIsASizeBesideASizeAndElseALength) {
  const Tree size = tree_of("some pipe in line has pipe.size is 3/4 in");
  EXPECT_EQ(first(size, Op::literal).type.dimension, quantity::dimensions::size);
  EXPECT_EQ(first(size, Op::literal).value.number, quantity::exactly(0.75));
  EXPECT_EQ(first(size, Op::literal).value.ladder, vocabulary::Ladder::inch);
  const Tree length = tree_of("frost-depth is 3/4 in");
  EXPECT_EQ(first(length, Op::literal).type.dimension, quantity::dimensions::length);
  EXPECT_EQ(first(length, Op::literal).value.number, quantity::exactly(0.75 * 0.0254));
}

TEST_F(CheckTree, MillimetresBesideASizeStandOnTheMetricLadder) {
  const Tree tree = tree_of("some pipe in line has pipe.size >= 20 mm");
  EXPECT_EQ(first(tree, Op::literal).value.number, quantity::exactly(20));
  EXPECT_EQ(first(tree, Op::literal).value.ladder, vocabulary::Ladder::metric);
}

TEST_F(CheckTree, TenDegreesAreAWarmingWhereADifferenceIsAsked) {
  const Tree warming = tree_of("house.water - house.air >= 9 F");
  EXPECT_EQ(first(warming, Op::literal).type.dimension, quantity::dimensions::warming);
  EXPECT_DOUBLE_EQ(first(warming, Op::literal).value.number.lo, 5);
  const Tree absolute = tree_of("house.water >= 50 F");
  EXPECT_EQ(first(absolute, Op::literal).type.dimension, quantity::dimensions::temperature);
  EXPECT_DOUBLE_EQ(first(absolute, Op::literal).value.number.lo, 283.15);
  const Tree raised = tree_of("house.water + 9 F");
  EXPECT_EQ(first(raised, Op::literal).type.dimension, quantity::dimensions::warming);
  const Tree lowered = tree_of("house.water - 9 F", world.type("temperature"));
  EXPECT_EQ(first(lowered, Op::literal).type.dimension, quantity::dimensions::warming);
}

TEST_F(CheckTree, ALiteralAloneTakesTheTypeAskedFor) {
  EXPECT_EQ(tree_of("3/4 in", world.type("size")).nodes[0].type.dimension, quantity::dimensions::size);
  EXPECT_EQ(tree_of("10 F", world.type("temperature-difference")).nodes[0].type.dimension,
            quantity::dimensions::warming);
  EXPECT_EQ(tree_of("if yes then 3/4 in else 1 in", world.type("size")).nodes[1].type.dimension,
            quantity::dimensions::size);
}

TEST_F(CheckTree, SpansAndYesAreValuesToo) {
  const Tree span = tree_of("permit-applied-on + 10 business-days");
  EXPECT_EQ(first(span, Op::literal).type.kind, Type::Kind::span);
  EXPECT_EQ(first(span, Op::literal).value.span_unit, quantity::Span::Unit::business_days);
  EXPECT_EQ(first(span, Op::literal).value.number, quantity::exactly(10));
  EXPECT_EQ(tree_of("yes").nodes[0].value.truth, quantity::Truth::yes);
  EXPECT_EQ(tree_of("no").nodes[0].value.truth, quantity::Truth::no);
}

// Names.

TEST_F(CheckTree, APathStartsFromAVariableOrTheRoot) {
  world.hand("pipe", "pipe");
  const Tree tree = tree_of("pipe.length > site.frost-depth and pressure.highest-static > 3 psi");
  EXPECT_EQ(tree.nodes[0].variable, 0U);
  ASSERT_EQ(tree.nodes[0].steps.size(), 1U);
  EXPECT_EQ(tree.nodes[0].steps[0].name, "length");
  EXPECT_EQ(tree.nodes[1].variable, expression::no_node);
  ASSERT_EQ(tree.nodes[1].steps.size(), 1U);
  EXPECT_EQ(tree.nodes[1].steps[0].name, "frost-depth");
  EXPECT_EQ(tree.nodes[3].variable, expression::no_node);
  EXPECT_EQ(tree.nodes[3].steps.size(), 2U);
  EXPECT_EQ(tree.variables, 1U);
}

TEST_F(CheckTree, VariablesAreNumberedFromTheHandedOnesUp) {
  world.hand("wall", "wall");
  const Tree tree = tree_of("(some pipe in line has pipe.buried) and (some gauge in line has gauge comes after wall)");
  EXPECT_EQ(tree.variables, 3U);
  std::vector<std::uint32_t> binders;
  for (const Node& node : tree.nodes) {
    if (node.op == Op::some) binders.push_back(node.binder.variable);
  }
  EXPECT_THAT(binders, testing::ElementsAre(1, 2));
  EXPECT_EQ(first(tree, Op::comes).kids.size(), 2U);
}

TEST_F(CheckTree, ABinderHoldsTheKindsItsListMayHold) {
  const Tree tree = tree_of("some fixture in fixtures has fixture.count > 1");
  EXPECT_EQ(first(tree, Op::some).binder.shapes, world.vocabulary.kinds("fixture"));
}

TEST_F(CheckTree, PropertiesOfMembersStandOverTheirPath) {
  const Tree tree = tree_of("some wall in line has wall.pipe.material.family.plain");
  const Node& path = first(tree, Op::path);  // of the list
  EXPECT_EQ(path.name, "line");
  std::vector<std::string> printed;
  for (expression::NodeId id = 0; id < tree.nodes.size(); ++id) printed.push_back(print(tree, id));
  EXPECT_THAT(printed, testing::ElementsAre("line", "wall.pipe.material", "wall.pipe.material.family",
                                            "wall.pipe.material.family.plain",
                                            "some wall in line has wall.pipe.material.family.plain"));
  EXPECT_EQ(tree.nodes[1].steps.size(), 2U);
  EXPECT_EQ(tree.nodes[2].index, 2U);
  EXPECT_EQ(tree.nodes[3].index, 0U);
}

TEST_F(CheckTree, MembersAndKindsBehindIsAreLiterals) {
  const Tree member = tree_of("some pipe in line has pipe.material is hdpe");
  EXPECT_EQ(first(member, Op::literal).value.members, 4U);
  EXPECT_TRUE(first(member, Op::is_item).shapes.none());
  const Tree kind = tree_of("some valve in line has valve is one of (ball-valve, gate-valve)");
  EXPECT_EQ(first(kind, Op::one_of).shapes,
            world.vocabulary.kinds("ball-valve") | world.vocabulary.kinds("gate-valve"));
  EXPECT_EQ(first(kind, Op::literal).type.kind, Type::Kind::kind);
}

TEST_F(CheckTree, ALevelWithADeclaredMarkIsReadFromIt) {
  const Tree tree = tree_of("some pipe in line has pipe.rise >= 6 in");
  const Node& read = first(tree, Op::at_mark);
  EXPECT_FALSE(read.before);  // a height, not a depth
  EXPECT_EQ(tree[read.kids[1]].value.id, *world.vocabulary.mark("finished-grade"));
  EXPECT_EQ(tree[read.kids[0]].type.kind, Type::Kind::level);
  const Tree below = tree_of("some pipe in line has pipe.cover below highest-outlet >= 6 in");
  EXPECT_TRUE(first(below, Op::at_mark).before);
}

TEST_F(CheckTree, LimitsTablesAndFunctionsAreIndices) {
  const Tree keyed = tree_of("sum(fixture.count * limit.fixture-units for fixture in fixtures)");
  const Node& limit = first(keyed, Op::limit);
  EXPECT_EQ(world.limits[limit.index].name, "fixture-units");
  ASSERT_EQ(limit.kids.size(), 1U);
  EXPECT_EQ(keyed[limit.kids[0]].type.kind, Type::Kind::element);
  const Tree row = tree_of("pipe-dimensions[type-k, 1 in].outside-diameter");
  EXPECT_EQ(first(row, Op::look_up).index, 0U);
  EXPECT_EQ(first(row, Op::look_up).column, 1U);
  const Tree held = tree_of("limit.demand-curve[3].flow");
  EXPECT_EQ(first(held, Op::look_up).index, vocabulary::no_id);
  EXPECT_EQ(held[first(held, Op::look_up).kids[0]].op, Op::limit);
  const Tree call = tree_of("velocity(house.draw, 1 in)");
  EXPECT_EQ(expression::functions()[first(call, Op::call).index].name, "velocity");
  const Tree role = tree_of("ordered by water-superintendent for x");
  EXPECT_EQ(first(role, Op::paper).index, 1U);
  EXPECT_EQ(first(role, Op::paper).column, 1U);
  EXPECT_EQ(first(role, Op::paper).name, "x");
}

// What the scope allows, and what is asked for.

TEST_F(CheckTree, BaseOnlyWhereTheScopeSays) {
  world.scope.base_allowed = true;
  world.scope.base_type = world.type("length");
  EXPECT_EQ(checked(world, "base + 6 in", world.type("length")), "a length: base + 6 in");
  EXPECT_EQ(checked(world, "base + 6 psi"),
            "1-12 sum-of-two-dimensions: \"base\" is a length and \"6 psi\" is a pressure: they have no sum.");
}

TEST_F(CheckTree, SubjectsAreTheRulesTheScopeNames) {
  const std::vector<std::string> rules = {"sleeve-or-arch"};
  world.scope.subjects = &rules;
  EXPECT_EQ(checked(world, "approved by building-official for sleeve-or-arch"),
            "a yes or no: approved by building-official for sleeve-or-arch");
  EXPECT_EQ(checked(world, "approved by building-official for sleve-or-arch"),
            "35-13 unknown-subject: \"sleve-or-arch\" is no rule. (did you mean sleeve-or-arch?)");
}

TEST_F(CheckTree, TheTypeAskedForIsTheTypeGiven) {
  EXPECT_EQ(checked(world, "frost-depth", world.type("truth")),
            "1-11 not-a-condition: \"frost-depth\" is a length, not a condition. (compare it, or ask what it is)");
  EXPECT_EQ(checked(world, "frost-depth > 3 in", world.type("length")),
            "1-18 wrong-type: This is a yes or no, where a length is asked for.");
  EXPECT_EQ(checked(world, "permit-applied-on + 3 months", world.type("date")), "a date: permit-applied-on + 3 months");
  EXPECT_EQ(checked(world, "80", world.type("pressure")),
            "1-2 number-needs-unit: \"80\" has no unit, where pressure is asked for. (write the unit, as in 80 psi)");
  EXPECT_EQ(checked(world, "12 ft", world.type("pressure")),
            "1-5 wrong-type: This is a length, where a pressure is asked for.");
}

TEST_F(CheckTree, ATextMayBeDerivedAndDecidesNothing) {
  EXPECT_EQ(checked(world, "note"), "a text: note");
  EXPECT_THAT(checked(world, "note", world.type("truth")), HasSubstr("text-decides"));
}

TEST_F(CheckTree, AVariableShadowsNothing) {
  world.hand("pipe", "pipe");
  EXPECT_EQ(
      checked(world, "some pipe in line has pipe.buried"),
      "6-4 name-taken: \"pipe\" already is another thing in hand. (give this one another name: pipe as other-pipe)");
  EXPECT_EQ(checked(world, "some pipe in line"), "a yes or no: some pipe in line");
  EXPECT_EQ(checked(world, "some pipe as next-pipe in line has next-pipe.buried"),
            "a yes or no: some pipe as next-pipe in line has next-pipe.buried");
}

// Derived fields whose formula is not read yet.

TEST(CheckDerived, ATypeNobodyKnowsYetIsAnError) {
  SmallWorld world;
  auto& pipe = world.vocabulary.shapes[*world.vocabulary.shape("pipe")];
  pipe.fields[*pipe.field("length")].type = {};
  EXPECT_EQ(checked(world, "some pipe in line has pipe.length > 3 ft"),
            "28-6 derived-type-unknown: The type of \"length\" is not known, because its formula is in error.");
}

// each:

std::string each_of(SmallWorld& world, const std::string& expression) {
  text::Diagnostics found;
  const document::Node node = world.text(expression);
  const auto each = expression::compile_each(node, world.scope, found);
  if (!each) return in_short(found, world.sources);
  std::string all;
  for (const auto& one : each->binders) {
    all += std::to_string(one.binder.variable) + " " + one.binder.kind_name + " as " + one.binder.name + " in " +
           print(one.list);
    if (one.where) all += " where " + print(*one.where);
    all += "; ";
  }
  return all;
}

TEST(Each, LaterListsMayUseEarlierNames) {
  SmallWorld world;
  EXPECT_EQ(each_of(world, "pipe as p in line where p.buried, sewer in p.near"),
            "0 pipe as p in line where p.buried; 1 sewer as sewer in p.near; ");
  EXPECT_EQ(each_of(world, "valve in line"), "0 valve as valve in line; ");
  EXPECT_EQ(
      each_of(world, "pipe in line where (pipe.buried or pipe.length > 3 ft), gauge in line where some wall in line"),
      "0 pipe as pipe in line where pipe.buried or pipe.length > 3 ft; 1 gauge as gauge in line where some wall in "
      "line; ");
}

TEST(Each, SaysWhatIsWrong) {
  SmallWorld world;
  EXPECT_EQ(each_of(world, "pipe in line where pipe.buried and pipe.length > 3 ft"),
            "32-3 body-and-or: Behind where and has, this \"and\" can be read as inside or outside. (bracket the "
            "condition: has (a and b), or the whole: (some … has a) and b)");
  EXPECT_EQ(each_of(world, "sewer in pipe.near, pipe in line"),
            "10-4 kind-not-in-hand: \"pipe\" is a kind of thing, and none of it is in hand. (write some pipe in …)");
  EXPECT_EQ(
      each_of(world, "pipe in line, pipe in line"),
      "15-4 name-taken: \"pipe\" already is another thing in hand. (give this one another name: pipe as other-pipe)");
  EXPECT_EQ(each_of(world, "pipe in line has pipe.buried"),
            "14-3 unexpected: Expected `,` and a further kind, or the end, found `has`.");
  EXPECT_EQ(each_of(world, "pipe"), "5-0 unexpected: Expected `in` and the list to look in, found the end.");
  EXPECT_EQ(each_of(world, "pipe in line where pipe.length"),
            "20-11 not-a-condition: \"pipe.length\" is a length, not a condition. (compare it, or ask what it is)");
  EXPECT_EQ(each_of(world, "pip in line"), "1-3 no-such-kind: There is no kind or group \"pip\". (did you mean pipe?)");
}

// Paths in texts.

std::string path_of(SmallWorld& world, const std::string& text_with_path, const std::string& path) {
  text::Diagnostics found;
  const text::FileId file = world.sources.add("text", text_with_path);
  const auto begin = static_cast<std::uint32_t>(text_with_path.find(path));
  const auto end = static_cast<std::uint32_t>(begin + path.size());
  const auto tree = expression::compile_path(path, {file, begin, end}, world.scope, found);
  return tree ? expression::describe((*tree)[tree->root].type, world.vocabulary) + ": " + print(*tree)
              : in_short(found, world.sources);
}

TEST(PathInText, MayBeAnyValue) {
  SmallWorld world;
  world.hand("pipe", "pipe");
  EXPECT_EQ(path_of(world, "a {pipe.material} pipe", "pipe.material"), "a pipe-material: pipe.material");
  EXPECT_EQ(path_of(world, "{pipe.cover}", "pipe.cover"), "a depth or height: pipe.cover");
  EXPECT_EQ(path_of(world, "{note}", "note"), "a text: note");
  EXPECT_EQ(path_of(world, "{pipe.material.metal}", "pipe.material.metal"), "a yes or no: pipe.material.metal");
  EXPECT_EQ(path_of(world, "{pipe}", "pipe"), "a pipe: pipe");
}

TEST(PathInText, IsOnePath) {
  SmallWorld world;
  world.hand("pipe", "pipe");
  EXPECT_EQ(path_of(world, "a {pipe.materiel} pipe", "pipe.materiel"),
            "9-8 unknown-field: \"materiel\" is no fact of a pipe. (did you mean material?)");
  EXPECT_EQ(path_of(world, "{3 psi}", "3 psi"),
            "2-5 path-wanted: \"3 psi\" is not a path. (braces in a text hold one path, as in {wall.material})");
  EXPECT_EQ(path_of(world, "{line}", "line"),
            "2-4 not-a-value: \"line\" is a list, not one value. (name one of its facts)");
}

// Functions.

TEST(Functions, TheLanguagesOwnComeFirstThenWaters) {
  EXPECT_EQ(expression::find_function("sizes-up"), expression::sizes_up);
  EXPECT_EQ(expression::find_function("size-steps"), expression::size_steps);
  EXPECT_EQ(expression::find_function("velocty"), std::nullopt);
  EXPECT_EQ(expression::water_function(expression::sizes_up), nullptr);
  const auto velocity = expression::find_function("velocity");
  ASSERT_TRUE(velocity);
  ASSERT_NE(expression::water_function(*velocity), nullptr);
  EXPECT_EQ(expression::water_function(*velocity)->name, "velocity");
  EXPECT_EQ(expression::functions()[*velocity].result, quantity::dimensions::velocity);
  EXPECT_EQ(expression::functions().size(), expression::first_water_function + water::functions().size());
  EXPECT_EQ(expression::water_function(9999), nullptr);
}

}  // namespace
}  // namespace headgate::test
