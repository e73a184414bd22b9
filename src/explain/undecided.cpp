// Why something could not be decided, in words.
#include <cmath>

#include <fmt/format.h>

#include "evaluate/look_up.hpp"
#include "explain/words.hpp"
#include "explain/worksheet.hpp"
#include "expression/functions.hpp"

namespace headgate::explain {

using evaluate::Why;
using expression::Node;
using expression::Op;
using quantity::Truth;
using vocabulary::Presence;
using Kind = vocabulary::Type::Kind;

namespace {

// The keys a table was asked with: what holds it, where a limit does, is none.
std::vector<const Evaluated*> keys_asked(const Evaluated& look_up) {
  std::vector<const Evaluated*> keys;
  for (const auto& kid : look_up.kids) {
    if (kid.tree == nullptr || node_of(kid).op != Op::limit || kid.value.presence == Presence::present)
      keys.push_back(&kid);
  }
  return keys;
}

// "the table head loss of meters has no row for 31 gpm: its rows for 3/4 in go from 2 gpm to 30 gpm"
std::string table_end(const Context& context, const Evaluated& of) {
  const auto& table = context.book->tables[static_cast<std::size_t>(of.table)];
  const std::string title = table.title.empty() ? spaced(table.signature.name) : table.title;
  const auto keys = keys_asked(of);
  std::vector<vocabulary::Value> values;
  for (const auto* key : keys) values.push_back(key->value);
  const auto end =
      keys.size() == table.signature.keys.size() ? evaluate::table_end(table, values, *context.book) : std::nullopt;
  if (!end)
    return fmt::format("the table {} has no row for {}", title, keys.empty() ? "it" : shown(context, *keys.back()));
  std::string words = fmt::format("the table {} has no row for {} {}", title,
                                  spaced(table.signature.keys[end->key].name), shown(context, *keys[end->key]));
  if (!end->rows) return words;
  std::vector<std::string> others;
  for (std::size_t k = 0; k < keys.size(); ++k) {
    if (k < end->key || table.match[end->key] != rulebook::Match::exact) {
      if (k != end->key) others.push_back(shown(context, *keys[k]));
    }
  }
  const auto show = [&](double si) {
    return quantity::show(si, table.signature.keys[end->key].type.dimension, keys[end->key]->value.unit);
  };
  const std::string rows = ": its rows" + (others.empty() ? "" : " for " + joined(others, ", "));
  if (std::isinf(end->rows->hi)) return words + rows + " begin at " + show(end->rows->lo);
  if (std::isinf(end->rows->lo)) return words + rows + " end at " + show(end->rows->hi);
  return words + rows + " go from " + show(end->rows->lo) + " to " + show(end->rows->hi);
}

// "the c of hazen-williams is 20, outside 60 to 160"
std::string out_of_range(const Context& context, const Evaluated& call) {
  const auto* function = expression::water_function(node_of(call).index);
  std::vector<double> lo;
  std::vector<double> hi;
  for (const auto& kid : call.kids) {
    lo.push_back(kid.value.number.lo);
    hi.push_back(kid.value.number.hi);
  }
  const std::string plain = in_words(context, *call.tree, call.node) + " has an input outside its range";
  if (function == nullptr || lo.size() != function->inputs.size()) return plain;
  const auto result = water::evaluate(*function, lo, hi);
  const auto* refusal = std::get_if<water::Refusal>(&result);
  if (refusal == nullptr) return plain;
  const auto index = static_cast<std::size_t>(refusal->input);
  const Evaluated& input = call.kids[index];
  const auto show = [&](double si) {
    return quantity::show_rounded(si, input.type.dimension, figures, input.value.unit);
  };
  const std::string what =
      fmt::format("the {} of {} is {}", spaced(function->inputs[index].name), function->name, shown(context, input));
  if (refusal->reason == water::Reason::not_whole) return what + ", where whole numbers only are meant";
  if (refusal->narrowed_by < 0)
    return fmt::format("{}, outside {} to {}", what, show(refusal->lowest), show(refusal->highest));
  const bool below = refusal->reason == water::Reason::below;
  return fmt::format("{}, where its {} asks for {} than {}", what,
                     spaced(function->inputs[static_cast<std::size_t>(refusal->narrowed_by)].name),
                     below ? "more" : "less", show(below ? refusal->lowest : refusal->highest));
}

std::string list_words(const Evaluated& quantifier) {
  if (node_of(quantifier).binder.list == expression::no_node) return "list";
  const auto& steps = quantifier.tree->nodes[node_of(quantifier).binder.list].steps;
  return steps.empty() ? "list" : spaced(steps.back().name);
}

std::string table_silence(const Context& context, const Evaluated& of) {
  const auto& table = context.book->tables[static_cast<std::size_t>(of.table)];
  std::vector<std::string> keys;
  for (const auto* key : keys_asked(of)) keys.push_back(shown(context, *key));
  return fmt::format("the table {} does not give the value for {}",
                     table.title.empty() ? spaced(table.signature.name) : table.title, joined(keys, ", "));
}

// Who can say what a doubtful text means: of a place's own document whoever published it, else the place.
std::string authority_for(const Context& context, const rulebook::Citation& citation) {
  for (const auto& document : context.book->documents) {
    if (document.id != citation.document || document.place.empty()) continue;
    if (!document.publisher.empty()) return document.publisher;
    return context.book->title.substr(0, context.book->title.find(" ("));
  }
  return "the authority having jurisdiction";
}

// "least pressure is doubtful: two printings disagree; ask the City of Fennick Ferry which value counts"
std::string doubt_words(const Context& context, const Evaluated& of) {
  const auto& limit = context.book->limits[static_cast<std::size_t>(of.limit)];
  const auto& value = limit.chain[static_cast<std::size_t>(of.chain)];
  std::string doubt = value.doubt;
  while (!doubt.empty() && (doubt.back() == '.' || doubt.back() == ' ')) doubt.pop_back();
  return fmt::format("{} is doubtful: {}; ask {} which value counts", limit_title(context, of), doubt,
                     authority_for(context, value.citation));
}

// "least pressure is not known; ask the City of Fennick Ferry which value counts"
std::string unknown_words(const Context& context, const Evaluated& of) {
  const auto& limit = context.book->limits[static_cast<std::size_t>(of.limit)];
  return fmt::format("{} is not known; ask {} which value counts", limit_title(context, of),
                     authority_for(context, limit.chain[static_cast<std::size_t>(of.chain)].citation));
}

std::string unfinished_words(const Context& context, const Evaluated& of) {
  const auto list = list_of(context, of);
  if (list != site::nowhere && open_list(context, list).stated) return not_to_its_end(context, list);
  const std::string name = list == site::nowhere ? "the " + list_words(of) : list_name(context, list);
  return fmt::format("{} {} not stated", name, is_or_are(name));
}

std::string nothing_to_take(const Context& context, const Evaluated& of) {
  const Node& node = node_of(of);
  if (node.binder.list == expression::no_node) return "there is nothing to take the least or greatest of";
  const auto where = node.kids.size() > 1 ? node.kids[1] : expression::no_node;
  return "there is no " + kind_words(context, node.binder.kind_name) +
         condition(context, *of.tree, node.binder.name, where) + " to go by";
}

// "the pipe before it", "whether the pipe before it is new in this job": what cannot be told.
std::string sought(const Context& context, const Evaluated& path) {
  const auto* field = field_of(context, path);
  const std::string name = subject(context, path);
  if (field == nullptr) return name;
  const bool reference = field->holds == vocabulary::Field::Holds::reference;
  if (reference && field->title.find(' ') != std::string::npos) return "the " + field->title;
  const std::string says = path.type.kind == Kind::truth ? predicate(*field, shape_asked(context, path)).yes : "";
  const std::size_t of = name.rfind(" of the ");
  if (says.empty() || of == std::string::npos) return name;
  return "whether " + name.substr(of + 4) + " " + says;
}

// "the pipe's size is not stated"; "Does the valve shut off fully? Not stated"
std::string missing(const Context& context, const Evaluated& path, const std::string& how) {
  if (node_of(path).op == Op::confirmed) return fmt::format("nobody has confirmed {}", spaced(node_of(path).name));
  if (const auto list = hiding_list(context, path)) {
    return sought(context, path) + " cannot be told while " + not_to_its_end(context, *list);
  }
  const auto* field = field_of(context, path);
  if (path.type.kind == Kind::truth && field != nullptr && !field->ask.empty())
    return field->ask + (how == "not stated" ? " Not stated" : " Nobody knows");
  const std::string name = subject(context, path);
  return fmt::format("{} {} {}", name, is_or_are(name), how);
}

// "highest static pressure is 79 psi +/- 2 psi"
std::string told_value(const Context& context, const Evaluated& of) {
  const std::string name = left(context, of);
  return fmt::format("{} {} {}", name, is_or_are(name), shown(context, of));
}

// "highest static pressure is 79 psi +/- 2 psi, too coarse to compare with 80 psi (…)"
std::string too_close(const Context& context, const Evaluated& of) {
  switch (node_of(of).op) {
    case Op::compare:
    case Op::same:
      return fmt::format("{}, too coarse to compare with {}", told_value(context, of.kids[0]),
                         bound(context, of.kids[1]));
    case Op::between:
      return fmt::format("{}, too coarse to compare with {} and {}", told_value(context, of.kids[1]),
                         bound(context, of.kids[0]), bound(context, of.kids[2]));
    case Op::is_item:
    case Op::one_of:
    case Op::in_list:
      return fmt::format("{}, which may or may not be {}", told_value(context, of.kids[0]), any_of(context, of));
    case Op::paper:
      if (of.element != site::nowhere)
        return subject(context, of) + " is too coarse to compare with the day it is checked on";
      break;
    default: break;
  }
  return "it cannot be told whether " + in_words(context, *of.tree, of.node);
}

// "rock", "a double check": what a limit with rows was asked for.
std::string key_words(const Context& context, const Evaluated& limit) {
  if (limit.kids.empty()) return "this kind";
  const Evaluated& key = limit.kids[0];
  const bool thing = key.type.kind == Kind::element && key.value.id < context.site->elements.size();
  return thing ? with_article(shape_words(context, key.value.id)) : shown(context, key);
}

// A property of what is not there, or a comparison with it.
std::string of_none(const Context& context, const Evaluated& of) {
  for (const auto& kid : of.kids) {
    if (kid.value.presence == Presence::none) return subject(context, kid) + " is none: there is nothing to compare";
  }
  if (of.element == site::nowhere || of.beyond.empty())
    return subject(context, of) + " is none: there is nothing to compare";
  const auto& shape = context.book->vocabulary->shapes[context.site->elements[of.element].shape];
  return fmt::format("{} cannot be told where there is no {}", subject(context, of),
                     spaced(shape.fields[of.field].name));
}

}  // namespace

namespace {

bool nobody_said(Why why) { return why == Why::missing || why == Why::asked_not || why == Why::unfinished; }

// Inside a value that is known only within open ends, the first fact that nobody stated.
const Evaluated* unsaid_inside(const Evaluated& of) {
  const bool chosen = node_of(of).op == Op::choose && of.kids.size() == 3 && of.kids[0].truth() != Truth::undecided;
  for (std::size_t i = 0; i < of.kids.size(); ++i) {
    if (chosen && i == (of.kids[0].truth() == Truth::yes ? 2U : 1U)) continue;
    if (nobody_said(of.kids[i].why)) return &of.kids[i];
    if (const auto* inner = unsaid_inside(of.kids[i])) return inner;
  }
  return nullptr;
}

// A table that a limit holds has no value by itself: what is not known then is the key.
bool is_held_table(const Evaluated& of, const Evaluated& kid) {
  return node_of(of).op == Op::look_up && node_of(kid).op == Op::limit && kid.chain >= 0;
}

// No further fact would help.
bool is_dead_end(Why why) {
  return why == Why::outside_table || why == Why::no_row || why == Why::no_value || why == Why::of_none ||
         why == Why::out_of_range;
}

// A computed fact that can be stated itself, where its formula leads nowhere.
bool asked_for_itself(const Context& context, const Evaluated& path, const Evaluated& cause) {
  if (node_of(path).op != Op::path || path.kids.empty()) return false;
  const auto* field = field_of(context, path);
  return is_dead_end(cause.why) && field != nullptr && !field->ask.empty();
}

}  // namespace

const Evaluated& root_cause(const Context& context, const Evaluated& of) {
  if (of.why == Why::doubt && of.limit >= 0 && of.chain >= 0) return of;  // whatever its value is made of
  // Of a decided `if`, what the other branch lacks is no matter.
  if (node_of(of).op == Op::choose && of.kids.size() == 3 && of.kids[0].truth() != Truth::undecided) {
    const Evaluated& taken = of.kids[of.kids[0].truth() == Truth::yes ? 1 : 2];
    return taken.why != Why::known ? root_cause(context, taken) : of;
  }
  // Of a limit with a row a member or kind, once the key is known: the key says what has no row.
  if (node_of(of).op == Op::limit && of.why == Why::no_row) return of;
  for (const auto& kid : of.kids) {
    if (kid.why == Why::known || is_held_table(of, kid)) continue;
    const Evaluated& cause = root_cause(context, kid);
    return asked_for_itself(context, of, cause) ? of : cause;
  }
  if (of.why != Why::too_close) return of;
  for (const auto& kid : of.kids) {
    if (kid.type.kind != Kind::number || (std::isfinite(kid.value.number.lo) && std::isfinite(kid.value.number.hi)))
      continue;
    if (const auto* inner = unsaid_inside(kid)) return *inner;
  }
  return of;
}

std::optional<site::ListId> hiding_list(const Context& context, const Evaluated& path) {
  if (path.tree == nullptr || node_of(path).op != Op::path || path.element == site::nowhere) return std::nullopt;
  const auto& element = context.site->elements[path.element];
  const auto& fields = context.book->vocabulary->shapes[element.shape].fields;
  if (path.field >= fields.size() || fields[path.field].holds != vocabulary::Field::Holds::reference)
    return std::nullopt;
  if (element.walk == site::nowhere || context.site->lists[element.walk].complete) return std::nullopt;
  return element.walk;
}

std::string undecided(const Context& context, const Evaluated& leaf) {
  const Evaluated& cause = root_cause(context, leaf);
  const Node& node = node_of(cause);
  switch (cause.why) {
    case Why::missing: return missing(context, cause, "not stated");
    case Why::asked_not: return missing(context, cause, "stated as unknown");
    case Why::too_close: return too_close(context, cause);
    case Why::of_none: return of_none(context, cause);
    case Why::no_reading: {
      const auto mark = cause.kids.size() > 1 ? cause.kids[1].value.id : vocabulary::no_id;
      const auto& marks = context.book->vocabulary->marks;
      return fmt::format("{} has no reading from {}", left(context, cause),
                         mark < marks.size() ? "the " + marks[mark].title : "the mark asked for");
    }
    case Why::unfinished: return unfinished_words(context, cause);
    case Why::empty: return nothing_to_take(context, cause);
    case Why::outside_table: return cause.table >= 0 ? table_end(context, cause) : "the ladder of sizes ends before it";
    case Why::no_row: return limit_title(context, cause) + " has no value for " + key_words(context, cause);
    case Why::no_value:
      if (cause.table >= 0) return table_silence(context, cause);
      if (cause.limit >= 0 && cause.chain >= 0) return unknown_words(context, cause);
      return limit_title(context, cause) + " is not known";
    case Why::doubt:
      if (cause.limit >= 0 && cause.chain >= 0) return doubt_words(context, cause);
      return limit_title(context, cause) + " is doubtful: ask the authority having jurisdiction which value counts";
    case Why::no_closed_days: return "the place's closed days are not known that far";
    case Why::two_ladders: return "an inch size and a metric size without an equivalence cannot be compared";
    case Why::out_of_range: return out_of_range(context, cause);
    case Why::too_large: return "it takes more steps than headgate works through";
    case Why::known:
    case Why::parts: break;
  }
  if (node.op == Op::path && !cause.kids.empty()) {
    const Evaluated& inside = root_cause(context, cause.kids[0]);
    const std::string words = missing(context, cause, "not stated");
    if (!is_dead_end(inside.why)) return words;
    return words + ", nor can it be worked out: " + undecided(context, inside);
  }
  if (node.op == Op::property) {
    return fmt::format("{}, which may or may not be {}", told_value(context, cause.kids[0]),
                       property_words(context, cause));
  }
  return too_close(context, cause);
}

std::string reason(const Context& context, const Evaluated& of) { return undecided(context, of); }

}  // namespace headgate::explain
