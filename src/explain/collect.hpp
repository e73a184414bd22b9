// What lies behind a trace: the facts read, the limits used, the questions still open.
#pragma once

#include "explain/words.hpp"

namespace headgate::explain {

// Each fact and limit once, in the order they were read.
std::vector<FactShown> facts(const Context& context, const evaluate::Trace& trace);
std::vector<LimitShown> limits(const Context& context, const evaluate::Trace& trace);
std::vector<ClauseShown> clauses(const Context& context, const evaluate::Trace& trace);

CitationShown shown(const Context& context, const rulebook::Citation& citation);
std::string layer_words(const rulebook::Layer& layer);  // "fennick-ferry, Ordinance 26-14, since 2026-07-01"

// The undecided leaves that keep a decision open: of its conditions, exceptions and requirement as far as they still matter.
std::vector<const Evaluated*> open_leaves(const evaluate::Trace& trace, const evaluate::Decision& decision);
// What would settle one of them.
// Of a duty: the day it is judged on.
Question day_question(const Context& context);
Question list_question(const Context& context, site::ListId list);
Question question(const Context& context, const Evaluated& leaf);

}  // namespace headgate::explain
