// What is wrong, where, in one sentence, and what would be right. Errors are values: a load returns
// the thing and all its diagnostics. The words stand in one place, the catalogue of messages.cpp.
//
//   Diagnostics found;
//   found.push_back(say("unknown-unit", range, {"psy", "psi"}));
//   draw(found[0], sources);
//     site.yaml:4:31: error: "psy" is not a unit. [unknown-unit]
//       4 | pressure: {highest-static: 86 psy}
//         |                               ^^^
//       hint: did you mean psi?
//
// An id the catalogue does not have is a bug of the caller: it is drawn as its id and arguments, so
// nothing is lost, and a test looks for it.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "text/source.hpp"

namespace headgate::text {

enum class Severity { error, warning };

struct Diagnostic {
  std::string id;
  Severity severity = Severity::error;
  Range range;
  std::string sentence;
  std::string hint;  // may be empty
  Range other;       // the second place, where two clash
  std::string other_says;
};

using Diagnostics = std::vector<Diagnostic>;

// One entry of the catalogue. {0}, {1}… in sentence and hint are the arguments of `say`, cut when very long; every
// other brace stands for itself. A hint whose {n} argument is empty or not given is left out ("did you mean {1}?"
// when nothing is near). A sentence begins with a capital or a quote and ends with its full stop; a hint ends
// without one.
struct Message {
  std::string_view id;
  Severity severity;
  std::string_view sentence;
  std::string_view hint;
};

const std::vector<Message>& catalogue();

Diagnostic say(std::string_view id, const Range& range, const std::vector<std::string>& arguments = {});
Diagnostic say(std::string_view id, const Range& range, const std::vector<std::string>& arguments, const Range& other,
               std::string other_says);

bool has_errors(const Diagnostics& found);

// Sorts by file, place and id, and drops exact repeats. With the sources, files come in the order of their names,
// so the order in which they were read shows nowhere. What is of no file comes last.
void settle(Diagnostics& found);
void settle(Diagnostics& found, const Sources& sources);

// As in the example above, every line with its line end; where there is a second place it follows, drawn likewise.
// A long line is cut to about 100 columns round the range. Control characters and terminal escapes of the file are
// shown as \xNN.
std::string draw(const Diagnostic& diagnostic, const Sources& sources);

// Control characters (terminal escapes among them) as \xNN, bad UTF-8 likewise; for anything shown that came from a
// file.
std::string printable(std::string_view text);

// The candidate nearest to `word` by edit distance, when it is near enough to be a slip: at most 2 or a third of the
// word, 1 in a word of two or three letters, 0 in one of one. Two letters that changed places are one slip, upper and
// lower case are the same. Of several as near, the first in sorted order.
std::optional<std::string> nearest(std::string_view word, const std::vector<std::string>& candidates);

}  // namespace headgate::text
