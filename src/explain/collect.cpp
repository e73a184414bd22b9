#include "explain/collect.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace headgate::explain {

using evaluate::ClauseTrace;
using evaluate::Trace;
using evaluate::Why;
using expression::Op;
using quantity::Truth;
using rulebook::LimitValue;

namespace {

// Calls `take` for every node of the trace, parents before kids, with how many formulas of computed facts it stands in.
// Of a limit with a row a member, the rows asked for stand in its place.
template <typename Take>
void every_node(const Context& context, const Evaluated& of, Take& take, std::uint32_t depth = 0) {
  if (has_rows(context, of)) {
    const auto rows = rows_asked(context, of);
    every_node(context, of.kids[0], take, depth);
    if (rows.empty() || rows.size() > most_rows) return take(of, depth);
    for (const auto* row : rows) every_node(context, *row, take, depth);
    return;
  }
  take(of, depth);
  const bool computed = of.tree != nullptr && of.tree->nodes[of.node].op == Op::path;
  for (const auto& kid : of.kids) every_node(context, kid, take, computed ? depth + 1 : depth);
}

template <typename Take>
void every_node(const Context& context, const ClauseTrace& of, Take& take) {
  if (of.expression) every_node(context, *of.expression, take);
  for (const auto& kid : of.kids) every_node(context, kid, take);
}

template <typename Take>
void every_node(const Context& context, const Trace& trace, Take take) {
  for (const auto& where : trace.where) every_node(context, where, take);
  if (trace.when) every_node(context, *trace.when, take);
  for (const auto& exception : trace.unless) every_node(context, exception, take);
  if (trace.require) every_node(context, *trace.require, take);
  if (trace.due) every_node(context, *trace.due, take);
  if (trace.done) every_node(context, *trace.done, take);
}

std::string how_of(const site::Slot& slot) {
  if (slot.origin == site::Origin::given) return slot.how.empty() ? "given by the place" : slot.how;
  return slot.how;
}

// Whether it is listed already; then at the least depth it was met at.
template <typename Shown, typename Alike>
bool listed(std::vector<Shown>& all, std::uint32_t depth, Alike alike) {
  const auto known = std::find_if(all.begin(), all.end(), alike);
  if (known == all.end()) return false;
  known->depth = std::min(known->depth, depth);
  return true;
}

void add_fact(const Context& context, const Evaluated& path, std::uint32_t depth, std::vector<FactShown>& facts) {
  FactShown fact;
  fact.name = fact_address(context, path);
  fact.depth = depth;
  const auto same_name = [&](const FactShown& other) { return other.name == fact.name; };
  if (fact.name.empty() || listed(facts, depth, same_name)) return;
  fact.title = subject(context, path);
  fact.value = shown(context, path);
  const auto* slot = slot_of(context, path);
  if (slot != nullptr && slot->origin != site::Origin::left_out) {
    fact.at = context.sources->place(slot->range);
    fact.how = how_of(*slot);
    fact.assumed = slot->assumed;
  } else if (!path.kids.empty()) {
    fact.how = "computed";
  } else {
    fact.value = "not stated";
  }
  facts.push_back(std::move(fact));
}

// "pipe, meter, wall; and more": what a reader looks for something in.
std::string list_items(const Context& context, const site::List& list) {
  constexpr std::size_t most = 20;
  const std::size_t named = std::min(most, list.items.size());
  std::vector<std::string> names;
  for (std::size_t i = 0; i < named; ++i) {
    const auto& element = context.site->elements[list.items[i]];
    names.push_back(element.name.empty() ? context.book->vocabulary->shapes[element.shape].name : element.name);
  }
  if (named < list.items.size()) names.push_back(fmt::format("{} others", list.items.size() - named));
  if (!list.complete) names.push_back("more");
  return names.empty() ? "none" : joined(names, ", ");
}

void add_list(const Context& context, const Evaluated& of, std::uint32_t depth, std::vector<FactShown>& facts) {
  if (of.list == site::nowhere) return;
  const auto& list = context.site->lists[of.list];
  FactShown fact;
  fact.name = site::address(*context.site, *context.book->vocabulary, list.owner, list.field);
  const auto same_name = [&](const FactShown& other) { return other.name == fact.name; };
  if (listed(facts, depth, same_name)) return;
  fact.depth = depth;
  fact.title =
      spaced(context.book->vocabulary->shapes[context.site->elements[list.owner].shape].fields[list.field].name);
  fact.value = list.stated ? list_items(context, list) : "not stated";
  fact.at = list.stated ? context.sources->place(list.range) : "";
  facts.push_back(std::move(fact));
}

bool is_value(const vocabulary::Type& type) {
  return type.kind != vocabulary::Type::Kind::element && type.kind != vocabulary::Type::Kind::list;
}

// Of a limit with rows, the row that was used: another row has no part in it.
std::vector<std::string> replaced_words(const Context& context, const Evaluated& of) {
  const auto& limit = context.book->limits[static_cast<std::size_t>(of.limit)];
  std::vector<std::string> all;
  for (std::size_t i = static_cast<std::size_t>(of.chain) + 1; i < limit.chain.size(); ++i) {
    if (limit.chain[i].at != site::nowhere) continue;  // an order for one thing
    const std::string written = value_written(context, of, i);
    const std::string by = limit.chain[i].citation.words();
    if (!written.empty())
      all.push_back(fmt::format("{} ({})", written, by.empty() ? layer_words(limit.chain[i].layer) : by));
  }
  return all;
}

void add_limit(const Context& context, const Evaluated& of, std::uint32_t depth, std::vector<LimitShown>& limits) {
  const auto& limit = context.book->limits[static_cast<std::size_t>(of.limit)];
  LimitShown shown_limit;
  shown_limit.name = limit.signature.name;
  shown_limit.title = limit.title;
  const bool known = of.value.presence != vocabulary::Presence::unknown;
  shown_limit.value = of.chain >= 0 || known ? explain::shown(context, of) : "no value";
  if (of.chain >= 0) {
    const auto chain = static_cast<std::size_t>(of.chain);
    const LimitValue& value = limit.chain[chain];
    if (value.form == LimitValue::Form::list || value.form == LimitValue::Form::table)
      shown_limit.value = value.written;
    const std::string written = value_written(context, of, chain);
    if (written != shown_limit.value) shown_limit.written = written;
    shown_limit.layer = layer_words(value.layer);
    shown_limit.citation = shown(context, value.citation);
    shown_limit.replaced = replaced_words(context, of);
    if (shown_limit.citation.doubt.empty()) shown_limit.citation.doubt = value.doubt;
  }
  const auto alike = [&](const LimitShown& other) {
    return other.name == shown_limit.name && other.value == shown_limit.value;
  };
  shown_limit.depth = depth;
  if (!listed(limits, depth, alike)) limits.push_back(std::move(shown_limit));
}

void add_clause(const Context& context, const ClauseTrace& of, std::string_view part, std::uint32_t depth,
                std::vector<ClauseShown>& clauses) {
  ClauseShown clause;
  clause.part = std::string(part);
  clause.depth = depth;
  clause.truth = of.truth == Truth::yes ? "yes" : of.truth == Truth::no ? "no" : "undecided";
  clause.at = context.sources->place(of.clause->range);
  clause.label = of.clause->label;
  if (clause.label.empty() && of.expression) clause.label = std::string(context.sources->text(of.clause->tree->range));
  if (clause.label.empty()) clause.label = of.clause->mode == rulebook::Clause::Mode::any ? "any of" : "all of";
  clauses.push_back(std::move(clause));
  for (const auto& kid : of.kids) add_clause(context, kid, part, depth + 1, clauses);
}

void append(std::vector<const Evaluated*>& to, const std::vector<const Evaluated*>& more) {
  to.insert(to.end(), more.begin(), more.end());
}

void ask_as(const vocabulary::Field& field, Question& out) {
  constexpr std::array<const char*, 4> costs = {"know", "look", "measure", "dig"};
  out.hint = field.hint;
  out.stop = field.stop;
  out.cost = costs[static_cast<std::size_t>(field.cost)];
}

// The thing a question calls "it": "line[7] shutoff"; "" for a fact of the whole site.
std::string about(const Context& context, const Evaluated& fact) {
  if (fact.element == site::nowhere) return "";
  auto element = fact.element;
  while (element != 0 && context.site->elements[element].list == site::nowhere)
    element = context.site->elements[element].parent;
  return element == 0 ? "" : site::address(*context.site, *context.book->vocabulary, element);
}

bool is_stated(const Context& context, const Evaluated& path) {
  const auto* slot = slot_of(context, path);
  return slot != nullptr && slot->origin != site::Origin::left_out;
}

}  // namespace

std::vector<FactShown> facts(const Context& context, const Trace& trace) {
  std::vector<FactShown> result;
  every_node(context, trace, [&](const Evaluated& of, std::uint32_t depth) {
    if (of.tree == nullptr) return;
    const auto op = of.tree->nodes[of.node].op;
    const bool none =
        of.value.presence == vocabulary::Presence::none && of.type.kind == vocabulary::Type::Kind::element;
    if (op == Op::path && (is_value(of.type) || (none && is_stated(context, of)))) add_fact(context, of, depth, result);
    if (op == Op::some || op == Op::no || op == Op::every || op == Op::count || op == Op::sum)
      add_list(context, of, depth, result);
  });
  return result;
}

std::vector<LimitShown> limits(const Context& context, const Trace& trace) {
  std::vector<LimitShown> result;
  every_node(context, trace, [&](const Evaluated& of, std::uint32_t depth) {
    if (of.limit >= 0) add_limit(context, of, depth, result);
  });
  return result;
}

std::vector<ClauseShown> clauses(const Context& context, const Trace& trace) {
  std::vector<ClauseShown> result;
  if (trace.when) add_clause(context, *trace.when, "when", 0, result);
  for (const auto& exception : trace.unless) add_clause(context, exception, "unless", 0, result);
  if (trace.require) add_clause(context, *trace.require, "require", 0, result);
  return result;
}

CitationShown shown(const Context& context, const rulebook::Citation& citation) {
  CitationShown out;
  out.document = citation.document;
  out.section = citation.section;
  if (!citation.document.empty()) out.seen = std::string(rulebook::words(citation.seen));  // else it is a paper
  out.where = citation.where;
  out.carried_from = citation.carried_from;
  out.doubt = citation.doubt;
  for (const auto& document : context.book->documents) {
    if (document.id != citation.document) continue;
    out.title = document.title + (document.edition.empty() ? "" : ", " + document.edition);
  }
  return out;
}

std::string layer_words(const rulebook::Layer& layer) {
  if (layer.place.empty()) return layer.title.empty() ? "the project's rules" : layer.title;  // of a paper
  std::string words = layer.place;
  if (!layer.title.empty()) words += ", " + layer.title;
  if (layer.from) words += ", since " + quantity::show_date(*layer.from);
  if (layer.until) words += ", until " + quantity::show_date(*layer.until);
  return words;
}

std::vector<const Evaluated*> open_leaves(const Trace& trace, const evaluate::Decision& decision) {
  std::vector<const Evaluated*> leaves;
  if (decision.applies == Truth::undecided) {
    for (const auto& where : trace.where) append(leaves, blame(where, Truth::undecided));
    if (trace.when) append(leaves, blame(*trace.when, Truth::undecided));
    for (const auto& exception : trace.unless) append(leaves, blame(exception, Truth::undecided));
  }
  // Whether it applies comes first: what it would ask may never matter.
  if (!leaves.empty() && decision.require != Truth::no) return leaves;
  if (decision.require == Truth::undecided) {
    if (trace.require) append(leaves, blame(*trace.require, Truth::undecided));
    if (trace.due && trace.due->why != Why::known) leaves.push_back(&*trace.due);
    if (trace.done && trace.done->why != Why::known) leaves.push_back(&*trace.done);
  }
  return leaves;
}

Question day_question(const Context& context) {
  Question out;
  const auto& root = context.book->vocabulary->shapes[vocabulary::root_shape];
  out.fact = "checked-on";
  out.ask = "On which day is this checked?";
  if (const auto field = root.field(out.fact)) {
    if (!root.fields[*field].ask.empty()) out.ask = root.fields[*field].ask;
    ask_as(root.fields[*field], out);
  }
  return out;
}

Question list_question(const Context& context, site::ListId asked) {
  const auto& list = open_list(context, asked);
  const auto& vocabulary = *context.book->vocabulary;
  const auto& field = vocabulary.shapes[context.site->elements[list.owner].shape].fields[list.field];
  Question out;
  out.fact = site::address(*context.site, vocabulary, list.owner, list.field);
  out.ask = list.stated ? "What else is there, to the end of " + list_name(context, asked) + "?" : field.ask;
  if (out.ask.empty()) out.ask = "What is in " + list_name(context, asked) + "?";
  ask_as(field, out);
  return out;
}

Question question(const Context& context, const Evaluated& leaf) {
  const Evaluated& cause = root_cause(context, leaf);
  Question out;
  out.ask = sentence(undecided(context, leaf));
  const auto hiding = hiding_list(context, cause);
  const auto open = hiding ? *hiding : cause.why == Why::unfinished ? list_of(context, cause) : site::nowhere;
  if (open != site::nowhere) {
    return list_question(context, open);
  }
  if (cause.tree == nullptr) return out;
  // The text itself is open: no reading settles that.
  if (cause.why == Why::doubt || cause.why == Why::no_value) return out;
  const auto& node = cause.tree->nodes[cause.node];
  if (node.op == Op::confirmed) {
    out.fact = "confirmed." + node.name;
    out.ask = "Is " + spaced(node.name) + " confirmed?";
    return out;
  }
  // A value that is there but does not settle it: the fact it is about, and what about it.
  const bool of_paper = node.op == Op::paper && cause.element != site::nowhere;
  const Evaluated* fact = node.op == Op::path || of_paper ? &cause : nullptr;
  for (std::size_t i = 0; fact == nullptr && i < cause.kids.size(); ++i) {
    const auto& kid = cause.kids[i];
    if (kid.tree != nullptr && kid.tree->nodes[kid.node].op == Op::path) fact = &kid;
  }
  if (fact == nullptr) return out;
  const auto* field = field_of(context, *fact);
  out.fact = fact_address(context, *fact);
  out.about = about(context, *fact);
  if (field == nullptr) return out;
  if ((node.op == Op::path || (of_paper && cause.why != Why::too_close)) && !field->ask.empty()) out.ask = field->ask;
  if (cause.why == Why::too_close && field->cost == vocabulary::Cost::measure)
    out.ask = "A closer reading: " + undecided(context, leaf) + ".";
  ask_as(*field, out);
  return out;
}

}  // namespace headgate::explain
