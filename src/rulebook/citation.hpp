// Where a number or a rule comes from, and how far that was verified.
//
//   irc-2018 P2903.3.1    -> document irc-2018, section P2903.3.1, seen: secondary
//   practice              -> "common practice, no published source"
//   irc-2018 P2903.33.1   -> diagnostic "unknown-section" with the nearest section
#pragma once

#include <map>
#include <string>
#include <vector>

#include "document/node.hpp"
#include "text/diagnostic.hpp"

namespace headgate::rulebook {

// How a section was seen by whoever wrote it into the sources file.
enum class Seen : std::uint8_t { adopted_text, other_edition, secondary, from_memory, practice };
std::string_view words(Seen seen);  // "adopted text", …, "common practice"

struct Section {
  std::string about;
  std::string where;  // where it was seen
  Seen seen = Seen::from_memory;
  std::string doubt;  // e.g. "two printed versions disagree": findings that turn on it are undecided
  text::Range range;
};

struct SourceDocument {
  std::string id, title, publisher, edition, kind, carries;
  std::string place;     // the place that declared it; "" for the project's
  std::string binds_in;  // a country in whose every place it is law, adopted or not; "" for none
  std::map<std::string, Section> sections;
  text::Range range;
};

struct Citation {
  std::string document;  // "practice" for common practice
  std::string section;
  Seen seen = Seen::practice;
  std::string where;
  std::string carried_from;  // the earlier edition it was taken from, "" when listed by this one
  std::string doubt;
  text::Range range;
  std::string words() const;  // "irc-2018 P2903.3.1" or "common practice, no published source"
};

std::string words_of(const std::vector<Citation>& citations);  // "irc-2018 P2603.4, ipc-2018 305.3"

}  // namespace headgate::rulebook
