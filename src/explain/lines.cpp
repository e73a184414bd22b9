// A trace as indented lines, one a clause or node.
#include <set>

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
  if (is_truth(of)) return std::string(words(of.truth()));
  const bool list = of.limit >= 0 && of.chain >= 0 && of.tree->nodes[of.node].op == Op::limit &&
                    context.book->limits[static_cast<std::size_t>(of.limit)].signature.list;
  return list ? limit_items(context, static_cast<std::size_t>(of.limit), static_cast<std::size_t>(of.chain))
              : shown(context, of);
}

// "(code 2, the project's rules)": who says a limit's value, or what a table is taken from.
std::string said_by(const Context& context, const Evaluated& of) {
  if (of.limit >= 0 && of.chain >= 0) {
    const auto& value =
        context.book->limits[static_cast<std::size_t>(of.limit)].chain[static_cast<std::size_t>(of.chain)];
    const std::string by = value.citation.words();
    return fmt::format(" ({}{})", by.empty() ? "" : by + ", ", layer_words(value.layer));
  }
  if (of.table < 0) return "";
  const auto& table = context.book->tables[static_cast<std::size_t>(of.table)];
  std::vector<std::string> cited;
  for (const auto& source : table.sources) cited.push_back(source.words());
  cited.push_back(layer_words(table.layer));
  return " (" + joined(cited, ", ") + ")";
}

std::string place_of(const Context& context, const Evaluated& of) {
  if (of.limit >= 0 && of.chain >= 0) {
    const auto& value =
        context.book->limits[static_cast<std::size_t>(of.limit)].chain[static_cast<std::size_t>(of.chain)];
    return context.sources->place(value.range);
  }
  if (of.table >= 0) return context.sources->place(context.book->tables[static_cast<std::size_t>(of.table)].range);
  if (of.paper >= 0) return context.sources->place(context.site->elements[static_cast<std::size_t>(of.paper)].range);
  const auto* slot = of.tree->nodes[of.node].op == Op::path ? slot_of(context, of) : nullptr;
  return slot != nullptr && slot->origin != site::Origin::left_out ? context.sources->place(slot->range) : "";
}

// The lines so far, and the computed values worked out in them: each is worked out once.
struct Lines {
  std::vector<Line> all;
  std::set<std::pair<site::ElementId, site::FieldId>> worked_out;
};

void add(const Context& context, const Evaluated& of, std::uint32_t depth, Lines& lines) {
  const auto& node = of.tree->nodes[of.node];
  if (node.op == Op::literal) return;
  Line line;
  line.depth = depth;
  line.text = std::string(context.sources->text(node.range));
  if (of.about != site::nowhere) line.text = element_words(context, of.about) + ": " + line.text;
  // Of a limit with a row a member, the one row used speaks for it.
  const auto rows = rows_asked(context, of);
  const Evaluated& speaks = rows.size() == 1 && rows[0]->chain >= 0 ? *rows[0] : of;
  line.value = outcome(context, of) + said_by(context, speaks);
  line.at = place_of(context, speaks);
  const bool computed = node.op == Op::path && !of.kids.empty();
  const bool known = computed && !lines.worked_out.emplace(of.element, of.field).second;
  if (known) line.value += ", as worked out above";
  lines.all.push_back(std::move(line));
  if (known) return;
  if (!has_rows(context, of)) {
    for (const auto& kid : of.kids) add(context, kid, depth + 1, lines);
    return;
  }
  add(context, of.kids[0], depth + 1, lines);
  if (&speaks != &of) {
    for (const auto& kid : speaks.kids) add(context, kid, depth + 1, lines);
  } else if (rows.size() <= most_rows) {
    for (const auto* row : rows) add(context, *row, depth + 1, lines);
  }
}

void add(const Context& context, const ClauseTrace& of, std::string_view part, std::uint32_t depth, Lines& lines) {
  Line line;
  line.depth = depth;
  line.text = std::string(part);
  if (!of.clause->label.empty()) line.text += (line.text.empty() ? "" : " ") + of.clause->label;
  if (of.clause->mode != rulebook::Clause::Mode::single) {
    line.text += of.clause->mode == rulebook::Clause::Mode::any ? " (any of)" : " (all of)";
  }
  line.value = words(of.truth);
  line.at = context.sources->place(of.clause->range);
  lines.all.push_back(std::move(line));
  if (of.expression) add(context, *of.expression, depth + 1, lines);
  for (const auto& kid : of.kids) add(context, kid, "", depth + 1, lines);
}

void add(const Context& context, const Evaluated& of, std::string_view part, Lines& lines) {
  lines.all.push_back({0, std::string(part), outcome(context, of), ""});
  add(context, of, 1, lines);
}

}  // namespace

std::vector<Line> lines(const Context& context, const Trace& trace) {
  Lines out;
  for (const auto& where : trace.where) add(context, where, "each, where", out);
  if (trace.when) add(context, *trace.when, "when", 0, out);
  for (const auto& exception : trace.unless) add(context, exception, "unless", 0, out);
  if (trace.require) add(context, *trace.require, "require", 0, out);
  if (trace.due) add(context, *trace.due, "due", out);
  if (trace.done) add(context, *trace.done, "done", out);
  return std::move(out.all);
}

}  // namespace headgate::explain
