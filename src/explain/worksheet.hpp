// The worksheet: every derived value of a site as its formula with the numbers filled in, and the values that are
// handed down the line (a derived value that reads itself through `previous`, as pressure does) as a column whose
// shown figures add up.
//
//   Worksheet sheet = worksheet(context, work_out(book, site));
//   sheet.lines[3]   demand.flow: "demand-curve[17.2]" = 18.8 gpm, by irc-2018 P2903.6(1)
//   sheet.runs[0]    pressure at peak demand: 69 psi at the start, - 10.72 psi at line[1] pipe, …
//   a pipe whose climb nobody stated: its lift is in `missing` with the reason, and so is what needs it
#pragma once

#include <string>
#include <vector>

#include "evaluate/work_out.hpp"
#include "explain/explain.hpp"

namespace headgate::explain {

struct WorksheetLine {
  std::string element;  // "line[4] pipe"; "" for a record
  std::string name;     // "demand.flow", "pipe.friction-loss"
  std::string title;
  std::string value;    // as shown: "9.42 psi", "83 psi to 86 psi"
  std::string formula;  // "18.11 psi/100ft * 52 ft"; "" when there is nothing to show but the value
  std::vector<std::string> sources;
  std::string stated;                    // what the site says instead, and counts
  quantity::Interval number;             // SI; of a number
  const quantity::Unit* unit = nullptr;  // of a number that has one
  bool is_number = false;
  bool running = false;  // handed down the line: shown in a run
};

// What could not be computed, by what is lacking.
struct Missing {
  std::string reason;
  std::vector<std::string> values;
};

// One step of a value handed down the line: the terms it changes by, as shown, and what is left.
struct RunStep {
  std::string element;
  std::vector<std::pair<std::string, std::string>> terms;  // "- 10.71", "pressure loss"
  std::string reset;                                       // the formula instead of terms where the value is set anew
  std::string after;
};

// One end of an interval, followed from the main on. The shown figures add up digit by digit: start and ends are
// rounded, and a term is shown as what closes the sum (its largest gives way by one in the last digit).
struct Run {
  std::string title;
  std::string end;  // "least", "most"; "" when the value is exact all along
  std::string unit;
  std::string start;           // "?", as any figure of it, where the value is open at that end
  std::vector<RunStep> steps;  // those that change it, and the last
};

struct Worksheet {
  std::vector<WorksheetLine> lines;
  std::vector<Run> runs;
  std::vector<Missing> missing;
};

Worksheet worksheet(const Context& context, const evaluate::Worked& worked);

constexpr int figures = 4;  // of a value nobody wrote

// A formula with every value filled in, as far as the names that stand in it: what one level of a worksheet shows.
std::string filled(const Context& context, const evaluate::Evaluated& of);

}  // namespace headgate::explain
