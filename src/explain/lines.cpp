// A trace as indented lines, one a clause or node.
#include <fmt/format.h>

#include "explain/collect.hpp"
#include "explain/words.hpp"

namespace headgate::explain {

using evaluate::ClauseTrace;
using evaluate::Trace;
using evaluate::Why;
using expression::Op;
using quantity::Truth;

namespace {

std::string_view words(Truth truth) { return truth == Truth::yes ? "yes" : truth == Truth::no ? "no" : "undecided"; }

bool is_truth(const Evaluated& of) { return of.type.kind == vocabulary::Type::Kind::truth; }

// What a node came to; an undecided one says why where the reason is its own.
std::string outcome(const Context& context, const Evaluated& of) {
  if (of.why != Why::known && of.why != Why::parts) {
    return (is_truth(of) ? "undecided: " : "unknown: ") + undecided(context, of);
  }
  return is_truth(of) ? std::string(words(of.truth())) : shown(context, of);
}

std::string place_of(const Context& context, const Evaluated& of) {
  if (of.limit >= 0 && of.chain >= 0) {
    const auto& value =
        context.book->limits[static_cast<std::size_t>(of.limit)].chain[static_cast<std::size_t>(of.chain)];
    return context.sources->place(value.range);
  }
  const auto* slot = of.tree->nodes[of.node].op == Op::path ? slot_of(context, of) : nullptr;
  return slot != nullptr && slot->origin != site::Origin::left_out ? context.sources->place(slot->range) : "";
}

void add(const Context& context, const Evaluated& of, std::uint32_t depth, std::vector<Line>& lines) {
  const auto& node = of.tree->nodes[of.node];
  if (node.op == Op::literal) return;
  Line line;
  line.depth = depth;
  line.text = std::string(context.sources->text(node.range));
  if (of.about != site::nowhere) line.text = element_words(context, of.about) + ": " + line.text;
  line.value = outcome(context, of);
  if (of.limit >= 0 && of.chain >= 0) {
    const auto& value =
        context.book->limits[static_cast<std::size_t>(of.limit)].chain[static_cast<std::size_t>(of.chain)];
    line.value += fmt::format(" ({}, {})", value.citation.words(), layer_words(value.layer));
  }
  line.at = place_of(context, of);
  lines.push_back(std::move(line));
  for (const auto& kid : of.kids) add(context, kid, depth + 1, lines);
}

void add(const Context& context, const ClauseTrace& of, std::string_view part, std::uint32_t depth,
         std::vector<Line>& lines) {
  Line line;
  line.depth = depth;
  line.text = std::string(part);
  if (!of.clause->label.empty()) line.text += (line.text.empty() ? "" : " ") + of.clause->label;
  if (of.clause->mode != rulebook::Clause::Mode::single) {
    line.text += of.clause->mode == rulebook::Clause::Mode::any ? " (any of)" : " (all of)";
  }
  line.value = words(of.truth);
  line.at = context.sources->place(of.clause->range);
  lines.push_back(std::move(line));
  if (of.expression) add(context, *of.expression, depth + 1, lines);
  for (const auto& kid : of.kids) add(context, kid, "", depth + 1, lines);
}

void add(const Context& context, const Evaluated& of, std::string_view part, std::vector<Line>& lines) {
  lines.push_back({0, std::string(part), outcome(context, of), ""});
  add(context, of, 1, lines);
}

}  // namespace

std::vector<Line> lines(const Context& context, const Trace& trace) {
  std::vector<Line> out;
  for (const auto& where : trace.where) add(context, where, "each, where", out);
  if (trace.when) add(context, *trace.when, "when", 0, out);
  for (const auto& exception : trace.unless) add(context, exception, "unless", 0, out);
  if (trace.require) add(context, *trace.require, "require", 0, out);
  if (trace.due) add(context, *trace.due, "due", out);
  if (trace.done) add(context, *trace.done, "done", out);
  return out;
}

}  // namespace headgate::explain
