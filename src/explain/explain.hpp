// From decisions to words: blame, the facts and limits behind a finding, what would settle an
// undecided one, and the report as a whole.
//
//   Context context{&sources, &book, &site};
//   Finding finding = explain::finding(context, judgement, decision);
//   A decision that failed by its second clause blames that clause only: the others are not named in the sentence.
#pragma once

#include "evaluate/judge.hpp"
#include "headgate/finding.hpp"
#include "text/source.hpp"

namespace headgate::explain {

struct Context {
  const text::Sources* sources = nullptr;
  const rulebook::Rulebook* book = nullptr;
  const site::Site* site = nullptr;
};

Finding finding(const Context& context, const evaluate::Judgement& judgement, const evaluate::Decision& decision);

// What an undecided decision waits for, with the questions of the vocabulary. Blind to what cannot matter
// any more: only undecided parts of undecided parts are followed.
std::vector<Question> questions(const Context& context, const evaluate::Judgement& judgement,
                                const evaluate::Decision& decision);

// The nodes of a trace that made it `no` (or kept it undecided), leaves first: what a sentence is about.
std::vector<const evaluate::Evaluated*> blame(const evaluate::ClauseTrace& clause, quantity::Truth truth);
std::vector<const evaluate::Evaluated*> blame(const evaluate::Evaluated& node, quantity::Truth truth);

// One line a node, indented, with its value and where it comes from: `headgate explain SITE RULE`.
struct Line {
  std::uint32_t depth = 0;
  std::string text;   // the expression as written or printed
  std::string value;  // "yes", "86 psi +/- 2 psi", "unknown: nobody has looked"
  std::string at;     // file:line:column of the fact, limit or clause
};
std::vector<Line> lines(const Context& context, const evaluate::Trace& trace);

// Why a node has no value, in words: "the table of meter losses has no row for 60 gpm".
std::string reason(const Context& context, const evaluate::Evaluated& of);

// Everything about one site under one or two authorities, sorted: fails, undecided, advisories, later, accepted, passes,
// not applicable, not in force; within an outcome by topic, rule and place in the walk.
// Several judgements of one authority (an unknown law date, one a segment): findings that agree are decided, others undecided.
struct Authority {
  const rulebook::Rulebook* book = nullptr;
  std::vector<evaluate::Judgement> judgements;  // one a segment
};
// `side_by_side`: the authorities are alternatives to compare, not two that bind the same job.
Report report(const text::Sources& sources, const site::Site& site, const std::vector<Authority>& authorities,
              std::string site_file, bool side_by_side = false);

}  // namespace headgate::explain
