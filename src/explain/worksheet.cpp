#include "explain/worksheet.hpp"

#include <algorithm>
#include <cmath>

#include "explain/run.hpp"
#include "explain/words.hpp"
#include "expression/functions.hpp"

namespace headgate::explain {

using evaluate::Worked;
using evaluate::WorkedValue;
using expression::Op;
using vocabulary::Presence;

namespace {

const vocabulary::Field& field_of(const Context& context, const WorkedValue& of) {
  return context.book->vocabulary->shapes[of.derivation->shape].fields[of.derivation->field];
}

std::string element_name(const Context& context, site::ElementId element) {
  const auto& at = context.site->elements[element];
  const bool record = at.list == site::nowhere && at.walk == site::nowhere;
  return record ? "" : site::address(*context.site, *context.book->vocabulary, element);
}

std::string source_words(const rulebook::Citation& citation) {
  if (citation.document == "practice") return citation.words();
  return citation.words() + " (seen: " + std::string(rulebook::words(citation.seen)) + ")";
}

// What one formula rests on: its limits, tables and functions, without those of the values it uses.
class Sources {
 public:
  explicit Sources(const Context& context) : context_(context) {}
  std::vector<std::string> words;

  void of(const Evaluated& at) {
    const auto& node = at.tree->nodes[at.node];
    if (node.op == Op::path) return;
    if (at.limit >= 0 && at.chain >= 0) {
      const auto& limit = context_.book->limits[static_cast<std::size_t>(at.limit)];
      const auto& value = limit.chain[static_cast<std::size_t>(at.chain)];
      add(value.citation.document.empty() ? value.layer.title : source_words(value.citation));
    } else if (at.table >= 0) {
      for (const auto& each : context_.book->tables[static_cast<std::size_t>(at.table)].sources)
        add(source_words(each));
    }
    if (node.op == Op::call) {
      const auto* function = expression::water_function(node.index);
      if (function != nullptr) add(std::string(function->name) + ": " + std::string(function->source));
    }
    if (node.op == Op::choose && at.kids[0].truth() != quantity::Truth::undecided) {
      of(at.kids[0]);
      return of(at.kids[at.kids[0].truth() == quantity::Truth::yes ? 1 : 2]);
    }
    for (const auto& kid : at.kids) of(kid);
  }

 private:
  void add(std::string one) {
    if (std::find(words.begin(), words.end(), one) == words.end()) words.push_back(std::move(one));
  }
  const Context& context_;
};

bool known(const Evaluated& of) {
  if (of.value.presence != Presence::present) return of.value.presence == Presence::none;
  switch (of.type.kind) {
    case vocabulary::Type::Kind::number: return !of.value.number.everything();
    case vocabulary::Type::Kind::truth: return of.truth() != quantity::Truth::undecided;
    case vocabulary::Type::Kind::choice: return (of.value.members & (of.value.members - 1)) == 0;
    default: return true;
  }
}

std::string value_words(const Context& context, const Evaluated& of) {
  if (of.type.kind == vocabulary::Type::Kind::truth) return of.truth() == quantity::Truth::yes ? "yes" : "no";
  if (of.type.kind != vocabulary::Type::Kind::number)
    return vocabulary::show(of.value, of.type, *context.book->vocabulary);
  return quantity::show_rounded(of.value.number, of.type.dimension, figures, of.value.unit);
}

void add_missing(std::vector<Missing>& missing, const std::string& reason, const std::string& value) {
  for (auto& each : missing) {
    if (each.reason == reason) return each.values.push_back(value);
  }
  missing.push_back({reason, {value}});
}

// What a branch draws is not followed along it: only the main's own line has a worksheet.
bool on_branch(const site::Site& site, site::ElementId element) {
  for (; element != site::nowhere; element = site.elements[element].parent) {
    const auto walk = site.elements[element].walk;
    if (walk != site::nowhere) return site.lists[walk].owner != 0;
  }
  return false;
}

WorksheetLine line_of(const Context& context, const WorkedValue& at, const Evaluated& formula) {
  const auto& field = field_of(context, at);
  const auto& shape = context.book->vocabulary->shapes[at.derivation->shape];
  WorksheetLine line;
  line.element = element_name(context, at.element);
  line.name = shape.name + "." + field.name;
  line.title = field.title;
  line.value = value_words(context, formula);
  const auto root = formula.tree->nodes[formula.node].op;
  if (root != Op::path && root != Op::literal && formula.type.kind == vocabulary::Type::Kind::number) {
    line.formula = filled(context, formula);
    if (line.formula == line.value) line.formula.clear();
  }
  Sources sources(context);
  sources.of(formula);
  line.sources = std::move(sources.words);
  if (at.stated) line.stated = context.site->slot(at.element, at.derivation->field).written;
  line.is_number = formula.type.kind == vocabulary::Type::Kind::number;
  if (line.is_number) {
    line.number = formula.value.number;
    line.unit = formula.value.unit != nullptr ? formula.value.unit : quantity::customary(formula.type.dimension);
  }
  return line;
}

}  // namespace

namespace {

// A limit for which no adopted document has a value: the law in force knows no such figure.
bool not_asked_here(const Evaluated& cause) {
  return cause.limit >= 0 && cause.chain < 0 && cause.why == evaluate::Why::no_value;
}

}  // namespace

Worksheet worksheet(const Context& context, const Worked& worked) {
  Worksheet sheet;
  Runs runs(context);
  for (const WorkedValue& at : worked.values) {
    if (on_branch(*context.site, at.element)) continue;
    const Evaluated formula = evaluated(worked.plan, worked.cells, at.formula);
    const bool running = runs.take(at, formula);
    if (!known(formula)) {
      if (at.stated || not_asked_here(root_cause(context, formula))) continue;
      const std::string name =
          site::address(*context.site, *context.book->vocabulary, at.element, at.derivation->field);
      add_missing(sheet.missing, reason(context, formula), name);
      continue;
    }
    sheet.lines.push_back(line_of(context, at, formula));
    sheet.lines.back().running = running;
  }
  sheet.runs = runs.finish();
  return sheet;
}

}  // namespace headgate::explain
