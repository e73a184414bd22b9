// What the grammar takes, shown in its canonical text; printing and parsing again gives the same tree.
#include <random>

#include <gmock/gmock.h>

#include "expression/same_shape.hpp"
#include "expression/small_world.hpp"

namespace headgate::test {
namespace {

struct Printed {
  const char* expression;
  const char* printed;
};

const std::vector<Printed>& printed_cases() {
  static const std::vector<Printed> all = {
      {"some gauge in line has (some pressure-reducer in line has gauge comes after pressure-reducer)",
       "some gauge in line has (some pressure-reducer in line has gauge comes after pressure-reducer)"},
      {"every pipe in line where pipe.buried has pipe.least-cover >= limit.least-cover",
       "every pipe in line where pipe.buried has pipe.least-cover >= limit.least-cover"},
      {"count(shutoff in line) >= 2", "count(shutoff in line) >= 2"},
      {"sum(pipe.friction-loss for pipe in line)", "sum(pipe.friction-loss for pipe in line)"},
      {"wall.sleeve.size / wall.pipe.size >= limit.sleeve-ratio",
       "wall.sleeve.size / wall.pipe.size >= limit.sleeve-ratio"},
      {"12 in <= meter.height <= 36 in", "12 in <= meter.height <= 36 in"},
      {"36 in > meter.height >= 12 in", "36 in > meter.height >= 12 in"},
      {"a   and  ( b  or c )", "a and (b or c)"},
      {"((a))", "a"},
      {"(a and b) and c", "(a and b) and c"},
      {"not not a", "not not a"},
      {"not (a or b)", "not (a or b)"},
      {"not a is b", "not a is b"},
      {"a is not one of (b, 3/4\", yes)", "a is not one of (b, 3/4\", yes)"},
      {"a is one of limit.x", "a is one of limit.x"},
      {"a is in limit.x[b]", "a is in limit.x[b]"},
      {"a is same as b + 5 ft 6 in", "a is same as b + 5 ft 6 in"},
      {"a is not none", "a is not none"},
      {"a is fitted and b is recorded", "a is fitted and b is recorded"},
      {"a is k-copper", "a is k-copper"},
      {"a comes right before b", "a comes right before b"},
      {"a comes after b.previous", "a comes after b.previous"},
      {"no p in q", "no p in q"},
      {"no p in q has p.a", "no p in q has p.a"},
      {"yes and no", "yes and no"},
      {"every p as r in q has not r.a", "every p as r in q has not r.a"},
      {"some p in q where (some r in p.s) has p.a", "some p in q where (some r in p.s) has p.a"},
      {"some p in q has (not some r in q)", "some p in q has (not some r in q)"},
      {"count(p in q where some r in p.s has r.t)", "count(p in q where (some r in p.s has r.t))"},
      {"count(p as r in q where (r.a or r.b)) - 1", "count(p as r in q where (r.a or r.b)) - 1"},
      {"least(p.a for p in q where p.b) + greatest(1, 2, c)", "least(p.a for p in q where p.b) + greatest(1, 2, c)"},
      {"if a > 3 then 12 in else 18 in", "if a > 3 then 12 in else 18 in"},
      {"(if a then 1 else 2) + 3 * 4", "(if a then 1 else 2) + 3 * 4"},
      {"a - b - (c - d)", "a - b - (c - d)"},
      {"a * b / (c * d)", "a * b / (c * d)"},
      {"(a + b) * c", "(a + b) * c"},
      {"-5 F < a", "-5 F < a"},
      {"3/4 in", "3/4 in"},
      {"1-1/2\"", "1-1/2\""},
      {"46'", "46'"},
      {"5' 6\"", "5' 6\""},
      {"2.5 %", "2.5 %"},
      {"10 business-days", "10 business-days"},
      {"d + 3 months", "d + 3 months"},
      {"a.cover below finished-grade >= 40 in", "a.cover below finished-grade >= 40 in"},
      {"a.cover above limit.mark > 1 ft", "a.cover above limit.mark > 1 ft"},
      {"t[a.b, k-copper].c", "t[a.b, k-copper].c"},
      {"t[3]", "t[3]"},
      {"limit.x[p].flow * 2", "limit.x[p].flow * 2"},
      {"f(a, 3 gpm, (b + c) * 2)", "f(a, 3 gpm, (b + c) * 2)"},
      {"f()", "f()"},
      {"base + 6 in", "base + 6 in"},
      {"approved by building-official", "approved by building-official"},
      {"ordered by water-superintendent for frost-rule", "ordered by water-superintendent for frost-rule"},
      {"confirmed as drawing-12", "confirmed as drawing-12"},
      {"a.some.and.limit is b", "a.some.and.limit is b"},
      {"any > 3", "any > 3"},
      {"all.x is yes", "all.x is yes"},
      {"each", "each"},
  };
  return all;
}

Tree shape_of(const std::string& expression) {
  text::Diagnostics found;
  document::Node node;
  node.scalar = expression;
  auto tree = expression::parse(node, {}, found);
  EXPECT_TRUE(tree && found.empty()) << expression;
  return tree ? *tree : Tree{};
}

TEST(Parse, TakesEveryFormOfTheGrammar) {
  for (const Printed& one : printed_cases()) EXPECT_EQ(parsed(one.expression), one.printed) << one.expression;
}

TEST(Parse, PrintedTextParsesToTheSameTree) {
  for (const Printed& one : printed_cases()) {
    EXPECT_TRUE(same_shape(shape_of(one.expression), shape_of(one.printed))) << one.printed;
  }
}

TEST(Parse, SameShapeTellsTreesApart) {
  EXPECT_FALSE(same_shape(shape_of("a and b"), shape_of("a or b")));
  EXPECT_FALSE(same_shape(shape_of("a - (b - c)"), shape_of("a - b - c")));
  EXPECT_FALSE(same_shape(shape_of("a < b"), shape_of("a <= b")));
  EXPECT_FALSE(same_shape(shape_of("some p in q where p.a"), shape_of("some p in q has p.a")));
}

// Expressions at random, of every form, each within the bounds.
class Writer {
 public:
  explicit Writer(unsigned seed) : random_(seed) {}

  std::string condition(int depth) {
    if (depth == 0) return pick({"a", "p.b", "yes", "confirmed as c", "approved by r for s", "ordered by r"});
    switch (roll(9)) {
      case 0: return bracketed(depth) + " and " + bracketed(depth) + " and " + bracketed(depth);
      case 1: return bracketed(depth) + " or " + bracketed(depth);
      case 2: return "not " + bracketed(depth);
      case 3: return value(depth - 1) + pick({" < ", " <= ", " > ", " >= "}) + value(depth - 1);
      case 4: return value(depth - 1) + pick({" < ", " <= "}) + value(depth - 1) + " <= " + value(depth - 1);
      case 5:
        return "a" + is() + pick({"none", "fitted", "k-copper", "3 psi", "one of (b, 2)", "in limit.x", "recorded"});
      case 6: return value(depth - 1) + is() + "same as " + value(depth - 1);
      case 7: return pick({"some ", "no "}) + over(depth) + " has " + bracketed(depth);
      default: return "every " + over(depth) + " has " + bracketed(depth);
    }
  }

 private:
  int roll(int below) { return static_cast<int>(random_() % static_cast<unsigned>(below)); }
  std::string pick(const std::vector<std::string>& of) { return of[random_() % of.size()]; }
  std::string is() { return pick({" is ", " is not "}); }
  std::string bracketed(int depth) { return "(" + condition(depth - 1) + ")"; }
  std::string over(int depth) {
    const std::string binder = pick({"p", "p as q"}) + " in " + pick({"line", "p.near"});
    return roll(2) == 0 ? binder : binder + " where " + bracketed(depth);
  }
  std::string value(int depth) {
    if (depth <= 0) return pick({"a", "3", "3/4 in", "p.b", "base", "limit.x", "t[a, 2].c", "p.d below m", "-5 F"});
    switch (roll(8)) {
      case 0: return "(" + value(depth - 1) + " - " + value(depth - 1) + ")";
      case 1: return value(depth - 1) + " + " + value(depth - 1);
      case 2: return "(" + value(depth - 1) + ") * (" + value(depth - 1) + ")";
      case 3: return "a / (" + value(depth - 1) + ")";
      case 4: return "(if " + condition(depth - 1) + " then " + value(depth - 1) + " else " + value(depth - 1) + ")";
      case 5: return "sum(" + value(depth - 1) + " for " + over(depth) + ")";
      case 6: return pick({"least(", "f("}) + value(depth - 1) + ", " + value(depth - 1) + ")";
      default: return "limit.y[" + value(depth - 1) + "]";
    }
  }

  std::mt19937 random_;
};

TEST(Parse, RandomExpressionsSurvivePrinting) {
  Writer writer(20);
  int parsed_count = 0;
  for (int i = 0; i < 800; ++i) {
    const std::string written = writer.condition(1 + i % 4);
    document::Node node;
    node.scalar = written;
    text::Diagnostics found;
    const auto tree = expression::parse(node, {}, found);
    if (!tree) continue;  // more lists inside one another than the bounds allow
    ++parsed_count;
    const std::string printed = print(*tree);
    ASSERT_TRUE(same_shape(*tree, shape_of(printed))) << written << "\n" << printed;
    ASSERT_EQ(print(shape_of(printed)), printed);
  }
  EXPECT_GT(parsed_count, 400);
}

TEST(Parse, EveryNodeKnowsItsPlace) {
  SmallWorld world;
  text::Diagnostics found;
  const document::Node node = world.text("not (a.b  and c) or some p in q has p.length >= 3 ft");
  const auto tree = expression::parse(node, {}, found);
  ASSERT_TRUE(tree);
  std::vector<std::string> places;
  for (const auto& one : tree->nodes) places.emplace_back(world.sources.text(one.range));
  EXPECT_THAT(places, testing::ElementsAre("a.b", "c", "(a.b  and c)", "not (a.b  and c)", "q", "p.length", "3 ft",
                                           "p.length >= 3 ft", "some p in q has p.length >= 3 ft",
                                           "not (a.b  and c) or some p in q has p.length >= 3 ft"));
}

// Where an expression may stand.

std::string said_of(const std::string& file) {
  text::Sources sources;
  text::Diagnostics found;
  const auto tree = document::read(sources, sources.add("rules.yaml", file), {}, found);
  EXPECT_TRUE(tree && found.empty()) << in_short(found, sources);
  const document::Node* when = tree->find("when");
  if (when->is_map()) when = when->find("a");
  const auto parsed_tree = expression::parse(*when, {}, found);
  return parsed_tree ? print(*parsed_tree) : in_short(found, sources);
}

TEST(ParsePlace, OneLine) { EXPECT_EQ(said_of("when: a.b > 3\n"), "a.b > 3"); }

TEST(ParsePlace, ABlockOfLinesWithPlacesInTheFile) {
  EXPECT_EQ(said_of("when: |\n  a.b > 3\n    and c\n  and d\n"), "a.b > 3 and c and d");
  EXPECT_EQ(said_of("when: |\n  a.b > 3\n    and c\n  or d\n"),
            "4:3-2 and-or-mixed: \"and\" and \"or\" side by side can be read in two ways. (bracket one of them: (a and "
            "b) or c, or: a and (b or c)) [3:5: \"and\" stands here]");
}

TEST(ParsePlace, NeitherQuotedNorInBraces) {
  EXPECT_EQ(
      said_of("when: \"a > 3\"\n"),
      "8-5 expression-place: An expression cannot stand in quotes. (write it bare on one line, or as lines below a "
      "|)");
  EXPECT_EQ(
      said_of("when: {a: b > 3}\n"),
      "11-5 expression-place: An expression cannot stand in braces or square brackets. (write it bare on one line, "
      "or as lines below a |)");
  EXPECT_EQ(said_of("when: {a: 70 psi}\n"), "70 psi");
}

TEST(ParsePlace, OneTextAndNotEmpty) {
  EXPECT_EQ(
      said_of("when: [a]\n"),
      "7-3 expression-wanted: An expression is one text, not a list. (write it on one line, or as lines below a |)");
  EXPECT_EQ(parsed("  "), "1-2 expression-empty: There is no expression here. (write one, or leave the key out)");
}

// Bounds.

std::string repeated(const std::string& text, int times) {
  std::string all;
  for (int i = 0; i < times; ++i) all += text;
  return all;
}

TEST(ParseBounds, Depth) {
  EXPECT_EQ(parsed(repeated("(", 32) + "a" + repeated(")", 32)), "a");
  EXPECT_EQ(
      parsed(repeated("(", 33) + "a" + repeated(")", 33)),
      "33-1 expression-too-deep: Brackets and conditions stand more than 32 deep here. (give parts of it a name, as "
      "derived values or labelled clauses)");
  EXPECT_THAT(parsed(repeated("(", 4000)), testing::HasSubstr("expression-too-deep"));
  EXPECT_THAT(parsed(repeated("not ", 1000) + "a"), testing::HasSubstr("expression-too-deep"));
  EXPECT_THAT(parsed(repeated("if ", 1000) + "a"), testing::HasSubstr("expression-too-deep"));
  EXPECT_THAT(parsed(repeated("t[", 1000) + "a"), testing::HasSubstr("expression-too-deep"));
  EXPECT_THAT(parsed(repeated("least(", 600) + "a"), testing::HasSubstr("expression-too-deep"));
  EXPECT_THAT(parsed(repeated("some p in q has ", 200) + "a"), testing::HasSubstr("expression-too-deep"));
}

TEST(ParseBounds, Size) {
  EXPECT_THAT(parsed("a" + repeated(" + a", 255)), testing::StartsWith("a + a"));
  EXPECT_EQ(parsed("a" + repeated(" + a", 256)),
            "1-1025 expression-too-big: This expression has more than 512 parts. (give parts of it a name, as derived "
            "values or labelled clauses)");
  EXPECT_EQ(
      parsed("a" + repeated(" ", 4096)),
      "1-4097 expression-too-long: This expression has 4097 bytes; 4096 is the most. (give parts of it a name, as "
      "derived values or labelled clauses)");
}

TEST(ParseBounds, ListsInsideOneAnother) {
  const auto nested = [](int times) {
    std::string text = "a";
    for (int i = 0; i < times; ++i) text = "some p in q has (" + text + ")";
    return text;
  };
  EXPECT_THAT(parsed(nested(4)), testing::StartsWith("some p in q has (some p"));
  EXPECT_EQ(parsed(nested(5)),
            "1-91 quantifiers-too-deep: More than 4 lists are walked inside one another here. (give the inner part a "
            "name, as a derived value)");
  EXPECT_EQ(parsed("sum(sum(sum(sum(sum(1 for p in q) for p in q) for p in q) for p in q) for p in q)"),
            "1-81 quantifiers-too-deep: More than 4 lists are walked inside one another here. (give the inner part a "
            "name, as a derived value)");
}

}  // namespace
}  // namespace headgate::test
