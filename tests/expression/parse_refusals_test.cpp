// What the grammar refuses, word for word: "column-bytes id: sentence (hint)".
#include <gmock/gmock.h>

#include "expression/small_world.hpp"

namespace headgate::test {
namespace {

struct Unparsed {
  const char* expression;
  const char* said;
};

TEST(ParseRefusals, SayWhereWhatAndWhatWouldBeRight) {
  const std::vector<Unparsed> cases = {
      {"some pipe in line has pipe.length > 1,000 ft",
       "38-1 number-thousands: \"1,000\" separates its thousands. (write 1000; between two values leave a "
       "space after the comma)"},
      {"sum(1,000)",
       "6-1 number-thousands: \"1,000\" separates its thousands. (write 1000; between two values leave a "
       "space after the comma)\n"
       "10-1 unexpected: Expected `for` and what to sum over, found `)`."},
      {"a.size >= 3 / 4 in", "11-8 number-spaced: A space splits the number \"3 / 4 in\". (write 3/4 in)"},
      {"a.size >= 3 / 4", "11-5 number-spaced: A space splits the number \"3 / 4\". (write 3/4)"},
      {"a.size >= 1 1/2 in", "11-8 number-spaced: A space splits the number \"1 1/2 in\". (write 1-1/2 in)"},
      {"a == 80 psi",
       "3-2 refused-spelling: Expressions have no \"==\". (write `is`, or `is same as` between two values)"},
      {"a = 80 psi",
       "3-1 refused-spelling: Expressions have no \"=\". (write `is`, or `is same as` between two values)"},
      {"a === b",
       "3-3 refused-spelling: Expressions have no \"===\". (write `is`, or `is same as` between two values)"},
      {"a != 80 psi",
       "3-2 refused-spelling: Expressions have no \"!=\". (write `is not`, or `is not same as` between two "
       "values)"},
      {"a <> 80 psi",
       "3-2 refused-spelling: Expressions have no \"<>\". (write `is not`, or `is not same as` between two "
       "values)"},
      {"a => 80 psi", "3-2 refused-spelling: Expressions have no \"=>\". (write `>=`)"},
      {"a =< 80 psi", "3-2 refused-spelling: Expressions have no \"=<\". (write `<=`)"},
      {"a ≥ 80 psi", "3-3 refused-spelling: Expressions have no \"≥\". (write `>=`)"},
      {"a ≤ 80 psi", "3-3 refused-spelling: Expressions have no \"≤\". (write `<=`)"},
      {"a ≠ 80 psi",
       "3-3 refused-spelling: Expressions have no \"≠\". (write `is not`, or `is not same as` between two "
       "values)"},
      {"a × 2", "3-2 refused-spelling: Expressions have no \"×\". (write ` * `)"},
      {"a − b", "3-3 refused-spelling: Expressions have no \"−\". (write ` - ` with a blank on both sides)"},
      {"a ** 2 > 3", "3-2 refused-spelling: Expressions have no \"**\". (write the product, `a * a`)"},
      {"a^2 > 3 ft2", "2-1 refused-spelling: Expressions have no \"^\". (write the product, `a * a`)"},
      {"a && b", "3-2 refused-spelling: Expressions have no \"&&\". (write `and`)"},
      {"a && b || c",
       "3-2 refused-spelling: Expressions have no \"&&\". (write `and`)\n"
       "8-2 refused-spelling: Expressions have no \"||\". (write `or`)\n"
       "8-2 and-or-mixed: \"and\" and \"or\" side by side can be read in two ways. (bracket one of them: (a "
       "and b) or c, or: a and (b or c)) [3: \"and\" stands here]"},
      {"!a", "1-1 refused-spelling: Expressions have no \"!\". (write `not`)"},
      {"¬a", "1-2 refused-spelling: Expressions have no \"¬\". (write `not`)"},
      {"NOT a", "1-3 word-case: \"NOT\" is not in lower case with hyphens, as every word here is. (write not)"},
      {"a AND b", "3-3 word-case: \"AND\" is not in lower case with hyphens, as every word here is. (write and)"},
      {"Pipe.size > 1 in",
       "1-9 word-case: \"Pipe.size\" is not in lower case with hyphens, as every word here is. (write "
       "pipe.size)"},
      {"frost_depth > 3 in",
       "1-11 word-case: \"frost_depth\" is not in lower case with hyphens, as every word here is. (write "
       "frost-depth)"},
      {"a % 2", "3-1 refused-spelling: Expressions have no \"%\". (write `%` right after its number, `2.5 %`)"},
      {"a > %", "5-1 refused-spelling: Expressions have no \"%\". (write `%` right after its number, `2.5 %`)"},
      {"a > ½ in", "5-2 refused-spelling: Expressions have no \"½\". (write `1/2`)"},
      {"a > “x”",
       "5-3 refused-spelling: Expressions have no \"“\". (write names bare, without quotes)\n"
       "7-3 refused-spelling: Expressions have no \"”\". (write names bare, without quotes)"},
      {"\"frost\"",
       "1-1 bad-character: \"\"\" has no meaning in an expression. (names stand bare, without quotes)\n"
       "7-1 bad-character: \"\"\" has no meaning in an expression. (names stand bare, without quotes)"},
      {"a is 'copper'",
       "6-1 bad-character: \"'\" has no meaning in an expression. (names stand bare, without quotes)\n"
       "13-1 bad-character: \"'\" has no meaning in an expression. (names stand bare, without quotes)"},
      {"a and b or c",
       "9-2 and-or-mixed: \"and\" and \"or\" side by side can be read in two ways. (bracket one of them: (a "
       "and b) or c, or: a and (b or c)) [3: \"and\" stands here]"},
      {"a or b and c and d",
       "8-3 and-or-mixed: \"and\" and \"or\" side by side can be read in two ways. (bracket one of them: (a "
       "and b) or c, or: a and (b or c)) [3: \"or\" stands here]"},
      {"some p in q has p.a and p.b",
       "21-3 body-and-or: Behind where and has, this \"and\" can be read as inside or outside. (bracket the "
       "condition: has (a and b), or the whole: (some … has a) and b)"},
      {"some p in q where p.a or p.b has p.c",
       "23-2 body-and-or: Behind where and has, this \"or\" can be read as inside or outside. (bracket the "
       "condition: has (a or b), or the whole: (some … has a) or b)"},
      {"not some p in q has p.a or b",
       "25-2 body-and-or: Behind where and has, this \"or\" can be read as inside or outside. (bracket the "
       "condition: has (a or b), or the whole: (some … has a) or b)"},
      {"count(p in q where p.a and p.b) > 2",
       "24-3 body-and-or: Behind where and has, this \"and\" can be read as inside or outside. (bracket the "
       "condition: has (a and b), or the whole: (some … has a) and b)"},
      {"least(a for p in q where p.a or p.b) > 2",
       "30-2 body-and-or: Behind where and has, this \"or\" can be read as inside or outside. (bracket the "
       "condition: has (a or b), or the whole: (some … has a) or b)"},
      {"every p in q where some r in p.s has r.t has p.u",
       "20-4 where-quantifier: A \"some\" behind where needs brackets. (write where (some …))"},
      {"every p in q where not no r in p.s has p.u",
       "24-2 where-quantifier: A \"no\" behind where needs brackets. (write where (no …))"},
      {"any p in q", "1-3 refused-spelling: Expressions have no \"any\". (write `some`)"},
      {"all p in q has p.a", "1-3 refused-spelling: Expressions have no \"all\". (write `every`)"},
      {"each p in q has p.a", "1-4 refused-spelling: Expressions have no \"each\". (write `every`)"},
      {"exists p in q", "1-6 refused-spelling: Expressions have no \"exists\". (write `some`)"},
      {"any(p in q)", "1-3 refused-spelling: Expressions have no \"any\". (write `some`)"},
      {"there is a p in q", "1-5 refused-spelling: Expressions have no \"there\". (write `some`)"},
      {"a p in q", "1-1 refused-spelling: Expressions have no \"a\". (write `some`)"},
      {"a is equal to b",
       "3-11 refused-spelling: Expressions have no \"is equal to\". (write `is`, or `is same as` between "
       "two values)"},
      {"a is greater than b", "3-15 refused-spelling: Expressions have no \"is greater than\". (write `>`)"},
      {"a is more than 3", "3-12 refused-spelling: Expressions have no \"is more than\". (write `>`)"},
      {"a is less than b", "3-12 refused-spelling: Expressions have no \"is less than\". (write `<`)"},
      {"a is at least 80 psi", "3-11 refused-spelling: Expressions have no \"is at least\". (write `>=`)"},
      {"a is at most 80 psi", "3-10 refused-spelling: Expressions have no \"is at most\". (write `<=`)"},
      {"a is between 40 psi and 80 psi",
       "3-10 refused-spelling: Expressions have no \"is between\". (write `lowest <= value <= highest`)"},
      {"a is over 80 psi", "3-7 refused-spelling: Expressions have no \"is over\". (write `>`)"},
      {"a is not above 80 psi", "3-12 refused-spelling: Expressions have no \"is not above\". (write `>`)"},
      {"a is any of (b, c)", "3-9 refused-spelling: Expressions have no \"is any of\". (write `is one of (…)`)"},
      {"a is unknown", "3-10 refused-spelling: Expressions have no \"is unknown\". (write `is not recorded`)"},
      {"a between 40 psi and 80 psi",
       "3-7 refused-spelling: Expressions have no \"between\". (write `lowest <= value <= highest`)"},
      {"a isn't b", "3-5 refused-spelling: Expressions have no \"isn't\". (write `is not`)"},
      {"a doesn't matter", "3-7 refused-spelling: Expressions have no \"doesn't\". (write `is not`)"},
      {"a contains b",
       "3-8 refused-spelling: Expressions have no \"contains\". (write `some … in …`, or `is one of (…)`)"},
      {"a equals b",
       "3-6 refused-spelling: Expressions have no \"equals\". (write `is`, or `is same as` between two "
       "values)"},
      {"a exceeds b", "3-7 refused-spelling: Expressions have no \"exceeds\". (write `>`)"},
      {"a has b",
       "3-3 refused-spelling: Expressions have no \"has\". (write `some … in … has …`, or a path with a dot)"},
      {"a in b", "3-2 refused-spelling: Expressions have no \"in\". (write `is in`, or `some … in …`)"},
      {"a gt b", "3-2 refused-spelling: Expressions have no \"gt\". (write `>`)"},
      {"a < b > c",
       "7-1 comparison-chain-mixed: \"<\" and \">\" in one chain look in two directions. (a chain runs one "
       "way: lowest <= value <= highest; else join two comparisons by and) [3: \"<\" stands here]"},
      {"a > b >= c < d", "12-1 two-relations: A second relation, \"<\", follows the first. (join the two by and)"},
      {"a < b < c < d", "11-1 two-relations: A second relation, \"<\", follows the first. (join the two by and)"},
      {"a < b is yes", "7-2 two-relations: A second relation, \"is\", follows the first. (join the two by and)"},
      {"a is b is c", "8-2 two-relations: A second relation, \"is\", follows the first. (join the two by and)"},
      {"a is b < c", "8-1 two-relations: A second relation, \"<\", follows the first. (join the two by and)"},
      {"a comes before b comes after c",
       "18-5 two-relations: A second relation, \"comes\", follows the first. (join the two by and)"},
      {"a -b", "3-1 sign-needs-blanks: A \"-\" between two values has a blank on both sides. (write a - b)"},
      {"a- b", "2-1 sign-needs-blanks: A \"-\" between two values has a blank on both sides. (write a - b)"},
      {"a -5 in", "3-1 sign-needs-blanks: A \"-\" between two values has a blank on both sides. (write a - 5 in)"},
      {"a+b", "2-1 sign-needs-blanks: A \"+\" between two values has a blank on both sides. (write a + b)"},
      {"a *b", "3-1 sign-needs-blanks: A \"*\" between two values has a blank on both sides. (write a * b)"},
      {"a/b", "2-1 sign-needs-blanks: A \"/\" between two values has a blank on both sides. (write a / b)"},
      {"-a", "1-1 minus-before-name: Only a number can carry a minus sign. (write a difference, as in a - b)"},
      {"a * -b", "5-1 minus-before-name: Only a number can carry a minus sign. (write a difference, as in a - b)"},
      {"a > 2-1 in",
       "5-3 number-whole-dash: The dash in \"2-1\" joins no whole number and fraction. (a size is written "
       "1-1/2; a value known within a margin 43 in +/- 3 in)"},
      {"a > 2026-10-02",
       "5-10 date-in-expression: \"2026-10-02\" is a date; dates stand in facts and limits. (name the fact "
       "or the limit that holds it)"},
      {"a > 86 psy", "8-3 unknown-unit: \"psy\" is not a unit. (did you mean psi?)"},
      {"a > 3 mnths", "7-5 unknown-unit: \"mnths\" is not a unit. (did you mean months?)"},
      {"a > 5 ft 6", "10-1 unexpected: Expected `and`, `or`, a comparison or the end, found `6`."},
      {"a > 3 in in", "10-2 refused-spelling: Expressions have no \"in\". (write `is in`, or `some … in …`)"},
      {"a is b.c", "6-3 is-with-path: A member or a kind follows \"is\"; \"b.c\" is a path. (write is same as b.c)"},
      {"a is one of (b or c)", "16-2 unexpected: Expected `,` or `)`, found `or`."},
      {"a is one of b", "13-1 unexpected: Expected `(` and a list, or a limit that holds one, found `b`."},
      {"a is one of ()", "14-1 unexpected: Expected a member, a kind, a number, `yes` or `no`, found `)`."},
      {"a is one of (b", "13-1 bracket-open: This \"(\" is never closed. (write the ) that belongs to it)"},
      {"a is in b", "9-1 unexpected: Expected a limit that holds a list or a season, found `b`."},
      {"a is not", "9-0 unexpected: Expected a member, a kind, a number, `yes` or `no`, found the end."},
      {"a is same b", "11-1 unexpected: Expected `as` and a value, found `b`."},
      {"a comes b", "9-1 unexpected: Expected `before` or `after`, found `b`."},
      {"a comes right b", "15-1 unexpected: Expected `before` or `after`, found `b`."},
      {"a comes before 3", "16-1 unexpected: Expected the thing it comes before or after, found `3`."},
      {"approved building-official", "10-17 unexpected: Expected `by` and a role, found `building-official`."},
      {"approved by", "12-0 unexpected: Expected a role, found the end."},
      {"approved by x for", "18-0 unexpected: Expected a name, found the end."},
      {"confirmed x", "11-1 unexpected: Expected `as` and a name, found `x`."},
      {"confirmed as", "13-0 unexpected: Expected a name, found the end."},
      {"some p", "7-0 unexpected: Expected `in` and the list to look in, found the end."},
      {"some p in", "10-0 unexpected: Expected the name of a list, found the end."},
      {"some p q", "8-1 unexpected: Expected `in` and the list to look in, found `q`."},
      {"some and in line", "6-3 unexpected: Expected a kind of thing, found `and`."},
      {"some p as limit in line", "11-5 unexpected: Expected a name, found `limit`."},
      {"every p in q", "13-0 unexpected: Expected `has` and what every one has, found the end."},
      {"every p in q where a", "21-0 unexpected: Expected `has` and what every one has, found the end."},
      {"some p in q has", "16-0 unexpected: Expected a value, found the end."},
      {"sum(p.a)", "8-1 unexpected: Expected `for` and what to sum over, found `)`."},
      {"sum p in q", "5-1 unexpected: Expected `(`, found `p`."},
      {"count(p, q)", "8-1 unexpected: Expected `in` and the list to look in, found `,`."},
      {"if a", "5-0 unexpected: Expected `then`, found the end."},
      {"if a then b", "12-0 unexpected: Expected `else`, found the end."},
      {"if a then b > c else d", "13-1 unexpected: Expected `else`, found `>`."},
      {"a > not b",
       "5-3 needs-brackets: A condition that begins with \"not\" needs brackets to stand here. (write (not "
       "…))"},
      {"a > some p in q",
       "5-4 needs-brackets: A condition that begins with \"some\" needs brackets to stand here. (write "
       "(some …))"},
      {"limit", "1-5 unexpected: Expected a value, found `limit`."},
      {"limit.x.y",
       "1-9 limit-name: \"limit.x.y\" does not name a limit. (write limit.name; a key stands in [ ] behind "
       "it)"},
      {"limit.",
       "6-1 bad-character: \".\" has no meaning in an expression. (a path is one word without blanks, "
       "`wall.sleeve.size`)"},
      {"a . b",
       "3-1 bad-character: \".\" has no meaning in an expression. (a path is one word without blanks, "
       "`wall.sleeve.size`)"},
      {"a. b",
       "2-1 bad-character: \".\" has no meaning in an expression. (a path is one word without blanks, "
       "`wall.sleeve.size`)"},
      {"a..b",
       "2-1 bad-character: \".\" has no meaning in an expression. (a path is one word without blanks, "
       "`wall.sleeve.size`)\n"
       "3-1 bad-character: \".\" has no meaning in an expression. (a path is one word without blanks, "
       "`wall.sleeve.size`)"},
      {"a.2b",
       "2-1 bad-character: \".\" has no meaning in an expression. (a path is one word without blanks, "
       "`wall.sleeve.size`)\n"
       "4-1 unknown-unit: \"b\" is not a unit."},
      {"a--b", "2-1 sign-needs-blanks: A \"-\" between two values has a blank on both sides. (write a - b)"},
      {"a[1", "2-1 bracket-open: This \"[\" is never closed. (write the ] that belongs to it)"},
      {"a]", "2-1 unexpected: Expected `and`, `or`, a comparison or the end, found `]`."},
      {"(a", "1-1 bracket-open: This \"(\" is never closed. (write the ) that belongs to it)"},
      {"((a)", "1-1 bracket-open: This \"(\" is never closed. (write the ) that belongs to it)"},
      {"a)", "2-1 unexpected: Expected `and`, `or`, a comparison or the end, found `)`."},
      {"a;", "2-1 bad-character: \";\" has no meaning in an expression."},
      {"a ? b : c",
       "3-1 bad-character: \"?\" has no meaning in an expression. (a choice between two values is `if … "
       "then … else …`)\n"
       "7-1 bad-character: \":\" has no meaning in an expression. (a choice between two values is `if … "
       "then … else …`)"},
      {"{a}",
       "1-1 bad-character: \"{\" has no meaning in an expression. (brackets are ( ) and, for keys, [ ])\n"
       "3-1 bad-character: \"}\" has no meaning in an expression. (brackets are ( ) and, for keys, [ ])"},
      {"a,b", "2-1 unexpected: Expected `and`, `or`, a comparison or the end, found `,`."},
      {"f(a b)", "5-1 unexpected: Expected `)`, found `b`."},
      {"f(a", "2-1 bracket-open: This \"(\" is never closed. (write the ) that belongs to it)"},
      {"and a", "1-3 unexpected: Expected a value, found `and`."},
      {"a and", "6-0 unexpected: Expected a value, found the end."},
      {"a b", "3-1 unexpected: Expected `and`, `or`, a comparison or the end, found `b`."},
      {"yes no", "5-2 unexpected: Expected `and`, `or`, a comparison or the end, found `no`."},
      {"3 ft 4 gpm",
       "1-10 compound-unfit: The parts of \"3 ft 4 gpm\" make no one quantity. (a whole number of the "
       "larger unit, then less than one of it in the smaller, as in 5 ft 6 in)"},
      {"f(a and b)", "5-3 and-or-needs-brackets: An \"and\" between values needs brackets. (write (a and b))"},
      {"t[a or b]", "5-2 and-or-needs-brackets: An \"or\" between values needs brackets. (write (a or b))"},
  };
  for (const Unparsed& one : cases) EXPECT_EQ(parsed(one.expression), one.said) << one.expression;
}

}  // namespace
}  // namespace headgate::test
