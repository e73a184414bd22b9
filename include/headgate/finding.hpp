// What a judgement says, ready to be shown: plain text and numbers, nothing to resolve. Reports draw
// it; another program reads it.
//
//   Finding f: rule "fennick-ferry/reducer-above-static-limit", outcome fail,
//     sentence "Highest static pressure is 86 psi +/- 2 psi, above the 80 psi limit, and no pressure reducing valve is in the line."
//     facts {"pressure.highest-static", "86 psi +/- 2 psi", "site.yaml:8:28"}, limits {"static-pressure-max", "80 psi", …}
//   A finding that could not be decided has `to_decide`: which fact, and what to find out.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <utility>
#include <vector>

namespace headgate {

struct CitationShown {
  std::string document;  // "irc-2018"; "practice"
  std::string title;     // "International Residential Code, 2018"
  std::string section;
  std::string seen;          // "adopted text", "other edition", "secondary", "from memory", "common practice"
  std::string where;         // where it was seen
  std::string carried_from;  // the earlier edition it stands in, or ""
  std::string doubt;
};

struct FactShown {
  std::string name;   // address: "line[3].size"
  std::string title;  // "highest static pressure"
  std::string value;  // as written; computed ones as shown
  std::string at;     // "site.yaml:9:28"; "" when computed or left out
  std::string how;    // how it was got, "given by fennick-ferry", "computed"
  bool assumed = false;
  std::uint32_t depth = 0;  // 0: the rule reads it; else of how many formulas of computed facts it is a part
};

struct LimitShown {
  std::string name;
  std::string title;
  std::string value;
  std::string written;  // the expression, where the value is computed
  std::string layer;    // "fennick-ferry, Ordinance 26-14, since 2026-07-01"; "rules" for the project's own
  std::vector<std::string> replaced;  // "80 psi (irc-2018 P2903.3.1)", strongest first
  CitationShown citation;
  std::uint32_t depth = 0;  // as of a fact
};

struct ClauseShown {
  std::string label;        // the clause's label, or the expression itself
  std::string part;         // "when", "unless", "require"
  std::string truth;        // "yes", "no", "undecided"
  std::string at;           // where the clause stands: "rules/pressure.yaml:31:14"
  std::uint32_t depth = 0;  // of nesting
};

struct ToDecide {
  std::string fact;  // address
  std::string
      need;  // in words: "What is the highest static pressure?" or "a closer reading: 79 psi +/- 2 psi does not settle 80 psi"
};

struct Finding {
  std::string rule;                    // "authority/rule"
  std::vector<std::string> signed_by;  // further authorities the same finding holds for
  std::string topic;
  std::string title;
  std::string outcome;   // one of the eight words
  std::string would_be;  // of `later`
  std::string level;     // must, should, note
  std::string stage;     // it binds from
  bool stage_unknown = false;
  std::string element;  // "line[3] meter", "" for the whole site
  std::string sentence;
  std::string because;  // why it applies, when that is not the whole site always; may be ""
  std::string due;      // of a duty: the date
  std::vector<CitationShown> citations;
  std::vector<FactShown> facts;
  std::vector<LimitShown> limits;
  std::vector<ClauseShown> clauses;
  std::vector<ToDecide> to_decide;
  std::string why, fix, caution, often_misread;
  std::string at;           // where the rule stands
  bool assumed = false;     // rests on an assumed fact
  bool unfinished = false;  // undecided only because a list is not written down to its end, or not at all
};

// One question, with how many findings it would settle or help to settle.
struct Question {
  std::string fact;
  std::string about;  // the thing it is about: "line[7] shutoff"; "" for the whole site
  std::string ask;
  std::string hint;
  std::string stop;  // where on the walk
  std::string cost;  // know, look, measure, dig
  std::uint32_t decides = 0;
  std::vector<std::string> rules;
};

// A rule and element to which the places judged side by side come to different outcomes.
struct Difference {
  std::string rule;
  std::string element;
  std::vector<std::pair<std::string, std::string>> outcomes;  // place, outcome
};

struct Report {
  std::string site_name, site_file, stage;
  bool plan = false;  // `describes: plan`: every pass reads "passes as planned"
  std::string place, place_title;
  std::vector<std::string> also;
  std::string permit_applied_on, checked_on;
  // By outcome, in the order of outcome_names; findings that only wait for a list count as one for each list.
  std::array<std::uint32_t, 8> totals{};
  std::vector<Finding> findings;
  std::vector<Question> next;
  std::vector<Difference> differences;  // of places named side by side; empty for one place and its second authority
  std::vector<std::string> contradictions;  // one authority demands what another bans
  std::vector<std::string> unfinished;      // lists that end in `more` or were left out: "line"
  std::string closing;
};

inline constexpr std::array<const char*, 8> outcome_names = {"pass",  "fail",     "advisory",       "undecided",
                                                             "later", "accepted", "not applicable", "not in force"};

}  // namespace headgate
