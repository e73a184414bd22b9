// What the checker refuses, word for word: "column-bytes id: sentence (hint)".
#include <gmock/gmock.h>

#include "expression/small_world.hpp"

namespace headgate::test {
namespace {

struct Unchecked {
  const char* expression;
  const char* said;
};

TEST(CheckRefusals, SayWhereWhatAndWhatWouldBeRight) {
  const std::vector<Unchecked> cases = {
      {"pressure.highest-static >= 80",
       "28-2 number-needs-unit: \"80\" has no unit, where pressure is asked for. (write the unit, as in 80 "
       "psi)"},
      {"frost-depth - 3",
       "15-1 number-needs-unit: \"3\" has no unit, where length is asked for. (write the unit, as in 3 in)"},
      {"frost-depth > 3 psi",
       "1-19 dimension-clash: \"frost-depth\" is a length and \"3 psi\" is a pressure. (compare like with "
       "like)"},
      {"frost-depth > 80 %",
       "1-18 dimension-clash: \"frost-depth\" is a length and \"80 %\" is a number. (compare like with like)"},
      {"pressure.highest-static <= frost-depth",
       "1-38 dimension-clash: \"pressure.highest-static\" is a pressure and \"frost-depth\" is a length. "
       "(compare like with like)"},
      {"12 in <= pressure.highest-static <= 36 in",
       "1-32 dimension-clash: \"12 in\" is a length and \"pressure.highest-static\" is a pressure. (compare "
       "like with like)"},
      {"frost-depth + 3 psi",
       "1-19 sum-of-two-dimensions: \"frost-depth\" is a length and \"3 psi\" is a pressure: they have no "
       "sum."},
      {"frost-depth - pressure.highest-static",
       "1-37 difference-of-two-dimensions: \"frost-depth\" is a length and \"pressure.highest-static\" is a "
       "pressure: they have no difference."},
      {"house.water + house.air",
       "1-23 sum-of-two-dimensions: \"house.water\" is a temperature and \"house.air\" is a temperature: "
       "they have no sum."},
      {"10 F + 3",
       "8-1 number-needs-unit: \"3\" has no unit, where temperature-difference is asked for. (write the "
       "unit, as in 3 F)"},
      {"house.water * 2",
       "1-11 temperature-product: \"house.water\" is a temperature, which cannot be added up or multiplied. "
       "(a difference of two temperatures can)"},
      {"sum(house.water for pipe in line)",
       "5-11 temperature-product: \"house.water\" is a temperature, which cannot be added up or multiplied. "
       "(a difference of two temperatures can)"},
      {"house.water - house.air + 3",
       "27-1 number-needs-unit: \"3\" has no unit, where temperature-difference is asked for. (write the "
       "unit, as in 3 F)"},
      {"frost-depth * frost-depth + 3 in",
       "1-32 sum-of-two-dimensions: \"frost-depth * frost-depth\" is an area and \"3 in\" is a length: they "
       "have no sum."},
      {"frost-depth * frost-depth * frost-depth * frost-depth * frost-depth * frost-depth * frost-depth * "
       "frost-depth * frost-depth * frost-depth * frost-depth * frost-depth * frost-depth",
       "1-179 dimension-too-high: A length, mass or time comes out above the power of 12."},
      {"some pipe in line has pipe.size >= 12 ft",
       "23-18 size-against-length: \"pipe.size\" is a nominal size, which is no length like \"12 ft\". "
       "(compare sizes with sizes, or write pipe.outside-diameter)"},
      {"some pipe in line has pipe.size >= pipe.length",
       "23-24 size-against-length: \"pipe.size\" is a nominal size, which is no length like "
       "\"pipe.length\". (compare sizes with sizes, or write pipe.outside-diameter)"},
      {"some pipe in line has pipe.size >= 80 psi",
       "23-19 dimension-clash: \"pipe.size\" is a nominal size and \"80 psi\" is a pressure. (compare like "
       "with like)"},
      {"some pipe in line has pipe.size is same as pipe.length",
       "23-32 size-against-length: \"pipe.size\" is a nominal size, which is no length like "
       "\"pipe.length\". (compare sizes with sizes, or write pipe.outside-diameter)"},
      {"some pipe in line has pipe.size / pipe.length > 2",
       "23-23 size-against-length: \"pipe.size\" is a nominal size, which is no length like "
       "\"pipe.length\". (compare sizes with sizes, or write pipe.outside-diameter)"},
      {"some pipe in line has pipe.length / pipe.size > 2",
       "23-23 size-against-length: \"pipe.size\" is a nominal size, which is no length like "
       "\"pipe.length\". (compare sizes with sizes, or write pipe.outside-diameter)"},
      {"some pipe in line has pipe.size + pipe.size > 1 in",
       "23-21 size-arithmetic: \"pipe.size\" is a nominal size, which is only compared with and divided by "
       "sizes. (a step up the ladder is sizes-up(pipe.size, 1))"},
      {"some pipe in line has pipe.size * 2 > 1 in",
       "23-13 size-arithmetic: \"pipe.size\" is a nominal size, which is only compared with and divided by "
       "sizes. (a step up the ladder is sizes-up(pipe.size, 1))"},
      {"some pipe in line has pipe.size / 2 > 1 in",
       "23-13 size-arithmetic: \"pipe.size\" is a nominal size, which is only compared with and divided by "
       "sizes. (a step up the ladder is sizes-up(pipe.size, 1))"},
      {"sum(pipe.size for pipe in line)",
       "5-9 size-arithmetic: \"pipe.size\" is a nominal size, which is only compared with and divided by "
       "sizes."},
      {"greatest(frost-depth, limit.law-began)",
       "10-28 type-clash: \"frost-depth\" is a length and \"limit.law-began\" is a date. (compare like with "
       "like)"},
      {"frost-depth is one of limit.allowed-sizes",
       "1-41 size-against-length: \"limit.allowed-sizes\" is a nominal size, which is no length like "
       "\"frost-depth\". (compare sizes with sizes)"},
      {"pipe-dimensions[type-k, 1 psi].inside-diameter",
       "25-5 wrong-key: The key of pipe-dimensions's size is a nominal size; \"1 psi\" is a pressure."},
      {"sizes-up(frost-depth, 2)",
       "10-11 wrong-argument: The value \"size\" of sizes-up is a nominal size; this is a length."},
      {"sizes-up(3/4 in, 2 in)", "18-4 wrong-argument: The value \"steps\" of sizes-up is a number; this is a length."},
      {"velocity(3 gpm, 3 gpm)",
       "17-5 wrong-argument: The value \"inside-diameter\" of velocity is a length; this is a flow."},
      {"velocity(3 gpm)",
       "1-15 wrong-argument-count: \"velocity\" takes 2 values, not 1. (write velocity(flow, "
       "inside-diameter))"},
      {"velocty(3 gpm, 1 in)", "1-7 unknown-function: There is no function \"velocty\". (did you mean velocity?)"},
      {"max(3 in, 4 in)", "1-3 unknown-function: There is no function \"max\". (did you mean greatest?)"},
      {"min(3 in, 4 in)", "1-3 unknown-function: There is no function \"min\". (did you mean least?)"},
      {"f(3)", "1-1 unknown-function: There is no function \"f\"."},
      {"permit-applied-on - limit.law-began",
       "1-35 date-difference: Two dates have no difference. (write permit-applied-on <= limit.law-began + "
       "limit.…, with the span in the limit)"},
      {"permit-applied-on + permit-applied-on", "1-37 date-sum: Two dates have no sum."},
      {"permit-applied-on + 3 h",
       "21-3 date-step: \"3 h\" cannot be added to a date. (a date moves by days, months, years or "
       "business-days)"},
      {"permit-applied-on + 3",
       "21-1 date-step: \"3\" cannot be added to a date. (a date moves by days, months, years or "
       "business-days)"},
      {"looked-at + 3 days",
       "13-6 moment-step: \"3 days\" cannot be added to a date with a time. (it moves by s, min or h)"},
      {"3 days + permit-applied-on",
       "1-26 date-goes-first: The date stands before what is added to it. (write permit-applied-on + 3 days)"},
      {"3 days - permit-applied-on", "1-26 date-goes-first: The date stands before what is added to it."},
      {"3 days + 4 days",
       "1-15 span-without-date: \"3 days\" is a span of the calendar, which is only added to a date."},
      {"limit.report-time < limit.report-time",
       "1-17 no-order: \"limit.report-time\" is a span of the calendar, which is neither more nor less than "
       "another. (write `date + span <= other date`)"},
      {"limit.report-time is same as limit.report-time",
       "1-17 no-order: \"limit.report-time\" is a span of the calendar, which is neither more nor less than "
       "another."},
      {"permit-applied-on > looked-at",
       "1-29 type-clash: \"permit-applied-on\" is a date and \"looked-at\" is a date with a time. (compare "
       "like with like)"},
      {"permit-applied-on > 3 psi",
       "1-25 type-clash: \"permit-applied-on\" is a date and \"3 psi\" is a pressure. (compare like with "
       "like)"},
      {"reads-at < looked-at",
       "1-20 type-clash: \"reads-at\" is a time of day and \"looked-at\" is a date with a time. (compare "
       "like with like)"},
      {"permit-applied-on * 2",
       "1-17 not-a-number-value: \"permit-applied-on\" is a date, which cannot be reckoned with."},
      {"limit.digging-season > permit-applied-on",
       "1-20 no-order: \"limit.digging-season\" is a season, which is neither more nor less than another. "
       "(write `date is in limit.…`)"},
      {"frost-depth is in limit.digging-season",
       "1-11 season-asks-date: \"frost-depth\" is a length; a date is in a season."},
      {"permit-applied-on is in limit.law-began",
       "25-15 limit-holds-no-list: \"limit.law-began\" is a date, not a list or a season. (write is same as "
       "limit.law-began)"},
      {"frost-depth is in limit.static-pressure-max",
       "19-25 limit-holds-no-list: \"limit.static-pressure-max\" is a pressure, not a list or a season. "
       "(write is same as limit.static-pressure-max)"},
      {"frost-depth is one of limit.demand-curve[3]",
       "23-21 limit-holds-no-list: \"limit.demand-curve[3]\" is a flow, not a list or a season. (write is "
       "same as limit.demand-curve[3])"},
      {"limit.allowed-sizes > 3 in",
       "1-19 limit-is-list: \"limit.allowed-sizes\" holds a list, not one value. (write … is one of "
       "limit.allowed-sizes)"},
      {"if yes then 3 in else 3 psi",
       "1-27 branches-differ: Behind then, \"3 in\" is a length; behind else, \"3 psi\" is a pressure. "
       "(give both the same type)"},
      {"if yes then frost-depth else house.kind",
       "1-39 branches-differ: Behind then, \"frost-depth\" is a length; behind else, \"house.kind\" is a "
       "house-kind. (give both the same type)"},
      {"if 3 in then 3 in else 4 in",
       "4-4 not-a-condition: \"3 in\" is a length, not a condition. (compare it, or ask what it is)"},
      {"frost-depth and yes",
       "1-11 not-a-condition: \"frost-depth\" is a length, not a condition. (compare it, or ask what it is)"},
      {"not frost-depth",
       "5-11 not-a-condition: \"frost-depth\" is a length, not a condition. (compare it, or ask what it is)"},
      {"note > 3",
       "1-4 text-decides: \"note\" is a text, which is shown and never decides. (ask whether it is recorded)"},
      {"note is yes",
       "1-4 text-decides: \"note\" is a text, which is shown and never decides. (ask whether it is recorded)"},
      {"line > 3", "1-4 list-as-value: \"line\" is a list, not a value. (write count(… in line), or: some … in line)"},
      {"line is yes",
       "1-4 list-as-value: \"line\" is a list, not a value. (write count(… in line), or: some … in line)"},
      {"house > 3",
       "1-5 element-as-value: \"house\" is a house, not a value. (name one of its facts, or ask whether it "
       "is fitted)"},
      {"house is same as house",
       "1-5 element-as-value: \"house\" is a house, not a value. (name one of its facts, or ask whether it "
       "is fitted)\n"
       "18-5 element-as-value: \"house\" is a house, not a value. (name one of its facts, or ask whether it "
       "is fitted)"},
      {"house.kind > 3",
       "1-10 no-order: \"house.kind\" is a house-kind, which is neither more nor less than another. (write "
       "`house.kind is …`)"},
      {"house.kind is 3",
       "15-1 is-needs-word: \"3\" follows \"is\", but what stands before it is a house-kind. (name one, as "
       "a bare word)"},
      {"house.kind is villa",
       "15-5 unknown-member: \"villa\" is no house-kind. (did you mean one of one-family, two-family?)"},
      {"house.kind is one of (one-family, one-familly)",
       "35-11 unknown-member: \"one-familly\" is no house-kind. (did you mean one-family?)"},
      {"house.kind is same as one-family",
       "23-10 member-without-is: \"one-family\" is a house-kind, which can only stand behind is. (write … "
       "is one-family)"},
      {"house.kind is one-family or two-family",
       "29-10 member-without-is: \"two-family\" is a house-kind, which can only stand behind is. (write … "
       "is two-family)"},
      {"some pipe in line has pipe.material is koper",
       "40-5 unknown-member: \"koper\" is no pipe-material. (did you mean one of k-copper, l-copper, hdpe?)"},
      {"some pipe in line has pipe.material is poly",
       "40-4 unknown-member: \"poly\" is no pipe-material. (did you mean hdpe?)"},
      {"some pipe in line has pipe.buried is true",
       "38-4 is-with-word: \"true\" follows \"is\", but what stands before it is a yes or no. (write yes)"},
      {"some pipe in line has pipe.buried is false",
       "38-5 is-with-word: \"false\" follows \"is\", but what stands before it is a yes or no. (write no)"},
      {"some pipe in line has pipe.buried is maybe",
       "38-5 is-with-word: \"maybe\" follows \"is\", but what stands before it is a yes or no. (write yes "
       "or no)"},
      {"some pipe in line has pipe.buried > 3",
       "23-11 no-order: \"pipe.buried\" is a yes or no, which is neither more nor less than another. (write "
       "`pipe.buried is …`)"},
      {"frost-depth is cored", "16-5 is-with-word: \"cored\" follows \"is\", but what stands before it is a length."},
      {"frost-depth is yes",
       "1-18 type-clash: \"frost-depth\" is a length and \"yes\" is a yes or no. (compare like with like)"},
      {"frost-depth is 3 psi",
       "1-20 dimension-clash: \"frost-depth\" is a length and \"3 psi\" is a pressure. (compare like with "
       "like)"},
      {"some wall in line has wall.pipe is gauge", "36-5 never-that-kind: No gauge can stand there: it is a pipe."},
      {"some wall in line has wall.pipe is gage",
       "36-4 no-such-kind: There is no kind or group \"gage\". (did you mean gauge?)"},
      {"some wall in line has wall.pipe is 3",
       "36-1 is-needs-word: \"3\" follows \"is\", but what stands before it is a pipe. (name one, as a bare "
       "word)"},
      {"some wall in line has wall.pipe is house", "36-5 no-such-kind: There is no kind or group \"house\"."},
      {"(frost-depth + 3 in) is none", "1-20 presence-of-value: Only a fact or a thing named by its path can be none."},
      {"some pipe in line has pipe.material.metal is recorded",
       "23-19 presence-of-value: Only a fact or a thing named by its path can be recorded."},
      {"frost-depth comes before line",
       "1-11 comes-asks-things: \"frost-depth\" is a length; things come before and after one another.\n"
       "26-4 comes-asks-things: \"line\" is a list; things come before and after one another."},
      {"line.meter.size > 1 in",
       "6-5 step-into-list: \"line\" is a list, and \"meter\" cannot be asked of a list. (write some … in "
       "line has …, or: sum(… for … in line))"},
      {"line[3].size > 1 in",
       "1-4 index-into-list: \"line\" is a list, and its elements have no numbers here. (write some … in "
       "line has …)"},
      {"elements[3] > 1 in", "1-8 unknown-table: There is no table \"elements\"."},
      {"confirmed", "10-0 unexpected: Expected `as` and a name, found the end."},
      {"frost-depth.foo", "13-3 step-past-value: \"frost-depth\" is a length, which has no \"foo\"."},
      {"house.kind.foo", "12-3 unknown-property: A house-kind has no \"foo\"."},
      {"some pipe in line has pipe.material.metall",
       "37-6 unknown-property: A pipe-material has no \"metall\". (did you mean metal?)"},
      {"some pipe in line has pipe.material.metal.foo",
       "43-3 step-past-value: \"metal\" is a yes or no, which has no \"foo\"."},
      {"pressure.highest-sttaic > 3 psi",
       "10-14 unknown-field: \"highest-sttaic\" is no fact of a pressure. (did you mean highest-static?)"},
      {"presure.highest-static > 3 psi",
       "1-7 unknown-name: Nothing here is called \"presure\". (did you mean pressure?)"},
      {"x.y.z", "1-1 unknown-name: Nothing here is called \"x\"."},
      {"meter.size > 3 in",
       "1-5 kind-not-in-hand: \"meter\" is a kind of thing, and none of it is in hand. (write some meter in "
       "…)"},
      {"static-pressure-max > 3 psi",
       "1-19 unknown-name: Nothing here is called \"static-pressure-max\". (did you mean "
       "limit.static-pressure-max?)"},
      {"limt.static-pressure-max > 3 psi", "1-4 unknown-name: Nothing here is called \"limt\". (did you mean limit?)"},
      {"limit.static-presure-max > 3 psi",
       "1-24 unknown-limit: There is no limit \"static-presure-max\". (did you mean "
       "limit.static-pressure-max?)"},
      {"limit.static-pressure-max[3] > 3 psi",
       "27-1 limit-takes-no-key: The limit \"static-pressure-max\" is one value and takes no key. (leave "
       "the brackets out)"},
      {"limit.static-pressure-max[3].flow > 3 psi",
       "30-4 limit-without-column: The limit \"static-pressure-max\" holds no table, so it has no column "
       "\"flow\"."},
      {"limit.least-cover > 3 in",
       "1-17 limit-of-nothing: The limit \"least-cover\" looks at a pipe, and none is in hand here. (name "
       "it in brackets: limit.least-cover[…])"},
      {"limit.least-cover[3] > 3 in", "19-1 wrong-key: The key of limit.least-cover is a pipe; \"3\" is a number."},
      {"limit.fixture-units > 3",
       "1-19 limit-of-nothing: The limit \"fixture-units\" looks at a fixture, and none is in hand here. "
       "(name it in brackets: limit.fixture-units[…])"},
      {"some lavatory in fixtures has (some shower in fixtures has limit.fixture-units > 3)",
       "60-19 limit-of-several: The limit \"fixture-units\" could look at more than one thing in hand: "
       "lavatory, shower. (write limit.fixture-units[lavatory])"},
      {"some valve in line has limit.least-cover[valve] > 3 ft",
       "42-5 wrong-key: The key of limit.least-cover is a pipe; \"valve\" is one of ball-valve, gate-valve, "
       "pressure-reducer."},
      {"some pipe in line has limit.least-cover[pipe, pipe] > 3 ft",
       "47-4 limit-takes-one-key: The limit \"least-cover\" takes one key."},
      {"limit.wall-factor > 3",
       "1-17 limit-needs-key: The limit \"wall-factor\" has a row for each pipe-material. (write "
       "limit.wall-factor[…] with a pipe-material in brackets)"},
      {"limit.wall-factor[copper] > 3",
       "19-6 unknown-member: \"copper\" is no pipe-material. (did you mean k-copper?)"},
      {"limit.wall-factor[house.kind] > 3",
       "19-10 wrong-key: The key of limit.wall-factor is a pipe-material; \"house.kind\" is a house-kind."},
      {"limit.demand-curve > 3 gpm",
       "1-18 wrong-key-count: \"limit.demand-curve\" takes 1 key, not 0. (write limit.demand-curve[units])"},
      {"limit.demand-curve[3].flo > 3 gpm",
       "23-3 unknown-column: \"limit.demand-curve\" has no column \"flo\". (did you mean flow?)"},
      {"limit.demand-curve[3 psi].flow > 3 gpm",
       "20-5 wrong-key: The key of limit.demand-curve's units is a number; \"3 psi\" is a pressure."},
      {"limit.untyped > 3",
       "1-13 limit-type-unknown: The type of the limit \"untyped\" is not known. (state its type: in the "
       "limit)"},
      {"pipe-dimensions[type-k] > 3 in",
       "1-23 wrong-key-count: \"pipe-dimensions\" takes 2 keys, not 1. (write pipe-dimensions[series, size])"},
      {"pipe-dimensions[type-k, 1\"] > 3 in",
       "1-27 column-missing: \"pipe-dimensions\" has several columns. (name one behind the brackets: "
       "inside-diameter, outside-diameter)"},
      {"pipe-dimension[type-k, 1\"].inside-diameter > 3 in",
       "1-14 unknown-table: There is no table \"pipe-dimension\". (did you mean pipe-dimensions?)"},
      {"pipe-dimensions[type-q, 1\"].inside-diameter > 3 in",
       "17-6 unknown-member: \"type-q\" is no pipe-series. (did you mean type-k?)"},
      {"base + 3 in",
       "1-4 base-outside-limit: \"base\" stands in the value of a limit only. (it is the value below this "
       "one)"},
      {"some pipes in line", "6-5 no-such-kind: There is no kind or group \"pipes\". (did you mean pipe?)"},
      {"some pipe in lines", "14-5 unknown-name: Nothing here is called \"lines\". (did you mean line?)"},
      {"some pipe in frost-depth", "14-11 not-a-list: \"frost-depth\" is a length, not a list."},
      {"some pipe in house", "14-5 not-a-list: \"house\" is a house, not a list."},
      {"some sewer in line",
       "6-5 kind-not-in-list: \"line\" cannot hold sewer. (it holds pipe, meter, wall, gauge, ball-valve, "
       "gate-valve, pressure-reducer, vacuum-breaker, …)"},
      {"some line in line", "6-4 no-such-kind: There is no kind or group \"line\". (did you mean pipe?)"},
      {"some pipe in line has (some pipe in line has pipe.buried)",
       "29-4 name-taken: \"pipe\" already is another thing in hand. (give this one another name: pipe as "
       "other-pipe)"},
      {"some pipe as meter in line has meter.buried",
       "14-5 name-taken: \"meter\" already is a kind, group or record. (give this one another name: pipe as "
       "other-pipe)"},
      {"some pipe as pressure in line has pressure.buried",
       "14-8 name-taken: \"pressure\" already is a fact of the site. (give this one another name: pipe as "
       "other-pipe)"},
      {"some pipe as velocity in line has velocity.buried",
       "14-8 name-taken: \"velocity\" already is a function. (give this one another name: pipe as "
       "other-pipe)"},
      {"some pipe as meter-loss in line has meter-loss.buried",
       "14-10 name-taken: \"meter-loss\" already is a table. (give this one another name: pipe as "
       "other-pipe)"},
      {"some valve in line has valve.set-to > 3 psi",
       "30-6 field-not-in-all: Some kinds here have no \"set-to\": ball-valve. (it belongs to gate-valve, "
       "pressure-reducer)"},
      {"some valve in line has valve.turns > 3",
       "30-5 field-not-in-all: Some kinds here have no \"turns\": gate-valve, pressure-reducer. (it belongs "
       "to ball-valve)"},
      {"some pressure-reducer in line has pressure-reducer.sett-to > 3 psi",
       "52-7 unknown-field: \"sett-to\" is no fact of a pressure-reducer. (did you mean set-to?)"},
      {"some pipe in line has pipe.set-to > 3 psi",
       "28-6 unknown-field: \"set-to\" is no fact of a pipe. (set-to belongs to gate-valve, "
       "pressure-reducer)"},
      {"some pipe in line has pipe.length-pipe.least-cover > 3 ft",
       "28-11 unknown-field: \"length-pipe\" is no fact of a pipe. (a minus has blanks: length - …)"},
      {"some pipe in line has pipe.near > 3",
       "23-9 list-as-value: \"pipe.near\" is a list, not a value. (write count(… in pipe.near), or: some … "
       "in pipe.near)"},
      {"some pipe in line has pipe.cover >= 40 in",
       "23-10 level-needs-mark: \"pipe.cover\" is a depth or height, which says nothing without its mark. "
       "(write pipe.cover below finished-grade)"},
      {"some preventer in line has preventer.height is 3 in",
       "28-16 level-needs-mark: \"preventer.height\" is a depth or height, which says nothing without its "
       "mark. (write preventer.height below finished-grade)"},
      {"frost-depth below finished-grade > 3 in",
       "1-11 mark-without-level: \"frost-depth\" is a length, which is not measured from a mark."},
      {"some pipe in line has pipe.cover below grade > 3 in",
       "40-5 unknown-mark: \"grade\" is not a mark to measure from. (did you mean finished-grade?)"},
      {"some pipe in line has pipe.cover below gravel > 3 in",
       "40-6 unknown-mark: \"gravel\" is not a mark to measure from. (did you mean one of finished-grade, "
       "highest-outlet?)"},
      {"some pipe in line has pipe.cover below limit.law-began > 3 in",
       "40-15 limit-is-no-mark: \"limit.law-began\" is a date, not a mark."},
      {"approved by building-oficial",
       "13-16 unknown-role: \"building-oficial\" is not a role. (did you mean building-official?)"},
      {"approved by inspector", "13-9 unknown-role: \"inspector\" is not a role. (did you mean building-official?)"},
      {"count(pipe in line where pipe.length) > 3",
       "26-11 not-a-condition: \"pipe.length\" is a length, not a condition. (compare it, or ask what it is)"},
      {"sum(pipe.buried for pipe in line)",
       "5-11 not-a-number-value: \"pipe.buried\" is a yes or no, which cannot be reckoned with."},
      {"least(pipe.material for pipe in line)",
       "7-13 no-order: \"pipe.material\" is a pipe-material, which is neither more nor less than another."},
      {"frost-depth > 3 psi and presure.highest-static > 3 and house.kind is villa",
       "1-19 dimension-clash: \"frost-depth\" is a length and \"3 psi\" is a pressure. (compare like with "
       "like)\n"
       "25-7 unknown-name: Nothing here is called \"presure\". (did you mean pressure?)\n"
       "70-5 unknown-member: \"villa\" is no house-kind. (did you mean one of one-family, two-family?)"},
      {"confirmed.drawing-12", "1-20 step-into-answers: Answers are asked by name. (write confirmed as drawing-12)"},
      {"site.confirmed > 3",
       "1-14 answers-as-value: \"site.confirmed\" holds answers, not a value. (write confirmed as NAME)"},
      {"some settable in line has settable.set-to > 3 psi",
       "36-6 field-types-differ: \"set-to\" is not of one type in all of gate-valve, pressure-reducer. (ask "
       "one kind only)"},
  };
  SmallWorld world;
  for (const Unchecked& one : cases) EXPECT_EQ(checked(world, one.expression), one.said) << one.expression;
}

}  // namespace
}  // namespace headgate::test
