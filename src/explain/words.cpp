#include "explain/words.hpp"

#include <fmt/format.h>

namespace headgate::explain {

using evaluate::Why;
using expression::Node;
using expression::Op;
using expression::Relation;
using quantity::Truth;
using vocabulary::Presence;
using Kind = vocabulary::Type::Kind;

namespace {

const Node& node_of(const Evaluated& of) { return of.tree->nodes[of.node]; }

// How the left side stands to the right one when the relation holds, and when it does not.
std::string_view stands(Relation relation, bool holds) {
  switch (relation) {
    case Relation::less: return holds ? "below" : "not below";
    case Relation::less_or_equal: return holds ? "not above" : "above";
    case Relation::greater: return holds ? "above" : "not above";
    case Relation::greater_or_equal: return holds ? "not below" : "below";
  }
  return "";
}

// "80 psi (highest static pressure without a reducer)", "the sleeve's size of 1-1/2 in"
std::string bound(const Context& context, const Evaluated& of) {
  const std::string value = shown(context, of);
  const std::string title = limit_title(context, of);
  if (!title.empty()) return value + " (" + title + ")";
  if (node_of(of).op == Op::path) return value + " (" + subject(context, of) + ")";
  return value;
}

std::string left(const Context& context, const Evaluated& of) {
  if (node_of(of).op == Op::path) return subject(context, of);
  if (node_of(of).op == Op::at_mark || node_of(of).op == Op::property) return left(context, of.kids[0]);
  const std::string title = limit_title(context, of);
  return title.empty() ? in_words(context, *of.tree, of.node) : title;
}

std::string list_words(const Context& context, const Evaluated& of) {
  if (of.list == site::nowhere) {
    const auto& steps = of.tree->nodes[node_of(of).binder.list].steps;
    return steps.empty() ? "list" : spaced(steps.back().name);
  }
  const auto& list = context.site->lists[of.list];
  const auto& field = context.book->vocabulary->shapes[context.site->elements[list.owner].shape].fields[list.field];
  return spaced(field.name);
}

std::string kind_words(const Context& context, const Node& node) {
  const auto& vocabulary = *context.book->vocabulary;
  const auto& name = node.binder.kind_name;
  if (const auto shape = vocabulary.shape(name)) {
    const auto& title = vocabulary.shapes[*shape].title;
    return title.empty() ? spaced(name) : title;
  }
  const auto group = vocabulary.group_titles.find(name);
  return group == vocabulary.group_titles.end() || group->second.empty() ? spaced(name) : group->second;
}

std::string quantified(const Context& context, const Evaluated& of) {
  const Node& node = node_of(of);
  const std::string kind = kind_words(context, node);
  std::string condition;
  for (const auto kid : node.kids) {
    if (kid != expression::no_node) condition = in_words(context, *of.tree, kid);
  }
  const bool there = (node.op == Op::some) == (of.truth() == Truth::yes);
  const std::string how = condition.empty() ? "" : " where " + condition;
  if (there) return "the " + list_words(context, of) + " has a " + kind + how;
  return "the " + list_words(context, of) + " has no " + kind + how;
}

std::string asked(const Context& context, const Evaluated& path) {
  const auto* field = field_of(context, path);
  const char* answer = path.truth() == Truth::yes ? "yes" : "no";
  if (field == nullptr || field->ask.empty()) return subject(context, path) + ": " + answer;
  return field->ask + " " + (path.truth() == Truth::yes ? "Yes" : "No");
}

std::string any_of(const Context& context, const Evaluated& of) {
  std::vector<std::string> items;
  for (std::size_t i = 1; i < of.kids.size(); ++i) {
    const auto& kid = of.kids[i];
    if (kid.limit >= 0 && kid.chain >= 0) {
      const auto& value = context.book->limits[static_cast<std::size_t>(kid.limit)].chain[static_cast<std::size_t>(kid.chain)];
      items.push_back(value.written + " (" + limit_title(context, kid) + ")");
    } else {
      items.push_back(shown(context, kid));
    }
  }
  return joined(items, " or ");
}

// "the shutoff's type is globe valve, which is not full way"
std::string property_words(const Context& context, const Evaluated& of) {
  const auto& choice = context.book->vocabulary->choices[of.kids[0].type.choice];
  return fmt::format("{} is {}, which is {}{}", left(context, of.kids[0]), shown(context, of.kids[0]), of.truth() == Truth::yes ? "" : "not ",
                     spaced(choice.properties[node_of(of).index].name));
}

}  // namespace

std::string observed(const Context& context, const Evaluated& leaf) {
  const Node& node = node_of(leaf);
  const bool yes = leaf.truth() == Truth::yes;
  const auto side = [&](std::size_t i) { return shown(context, leaf.kids[i]); };
  switch (node.op) {
    case Op::compare:
      return fmt::format("{} is {}, {} {}", left(context, leaf.kids[0]), side(0), stands(node.relation, yes), bound(context, leaf.kids[1]));
    case Op::between:
      return fmt::format("{} is {}, {} {} and {}", left(context, leaf.kids[1]), side(1), yes ? "between" : "not between",
                         bound(context, leaf.kids[0]), bound(context, leaf.kids[2]));
    case Op::same:
      return fmt::format("{} is {}, {} {}", left(context, leaf.kids[0]), side(0),
                         yes == !node.negated ? "the same as" : "not the same as", bound(context, leaf.kids[1]));
    case Op::is_item: {
      if (leaf.kids.size() < 2) {
        return fmt::format("{} is {}{}", left(context, leaf.kids[0]), yes == !node.negated ? "" : "not ", kind_words(context, node));
      }
      if (yes != node.negated) return fmt::format("{} is {}", left(context, leaf.kids[0]), side(1));
      return fmt::format("{} is {}, not {}", left(context, leaf.kids[0]), side(0), side(1));
    }
    case Op::one_of:
    case Op::in_list:
      return fmt::format("{} is {}{} {}", left(context, leaf.kids[0]), side(0),
                         yes == !node.negated ? ", one of" : " and not", any_of(context, leaf));
    case Op::is_none:
    case Op::fitted: {
      const bool there = leaf.kids[0].value.presence == Presence::present;
      return left(context, leaf.kids[0]) + (there ? " is there" : " is not there");
    }
    case Op::recorded:
      return fmt::format("{} is {}on record", left(context, leaf.kids[0]), yes == !node.negated ? "" : "not ");
    case Op::comes: return in_words(context, *leaf.tree, leaf.node) + (yes ? "" : ": no");
    case Op::some:
    case Op::no:
    case Op::every: return quantified(context, leaf);
    case Op::paper: {
      const auto& role = context.book->vocabulary->roles[node.column];
      return fmt::format("{} {} by the {} is on file", yes ? "an" : "no", node.index == 0 ? "approval" : "order",
                         role.title.empty() ? spaced(role.name) : role.title);
    }
    case Op::confirmed: return fmt::format("{} is {}confirmed", spaced(node.name), yes ? "" : "not ");
    case Op::path: return asked(context, leaf);
    case Op::property: return property_words(context, leaf);
    case Op::literal: return yes ? "it always is" : "it never is";
    default: return in_words(context, *leaf.tree, leaf.node) + (yes ? "" : ": no");
  }
}

namespace {

// The deepest value that is not known, and why: what a reader has to go and find out.
const Evaluated& root_cause(const Evaluated& of) {
  for (const auto& kid : of.kids) {
    if (kid.why != Why::known) return root_cause(kid);
  }
  return of;
}

std::string table_end(const Context& context, const Evaluated& of) {
  const auto& table = context.book->tables[static_cast<std::size_t>(of.table)];
  return fmt::format("the table {} has no row for {}", table.title.empty() ? spaced(table.signature.name) : table.title,
                     of.kids.empty() ? "it" : shown(context, of.kids.back()));
}

}  // namespace

std::string undecided(const Context& context, const Evaluated& leaf) {
  const Evaluated& cause = root_cause(leaf);
  const Node& node = node_of(cause);
  switch (cause.why) {
    case Why::missing:
      if (node.op == Op::confirmed) return fmt::format("nobody has confirmed {}", spaced(node.name));
      return subject(context, cause) + " is not stated";
    case Why::asked_not: return subject(context, cause) + " is stated as unknown";
    case Why::too_close: {
      if (cause.kids.size() < 2) return in_words(context, *cause.tree, cause.node) + " cannot be told";
      return fmt::format("{} of {} is too coarse to compare with {}", left(context, cause.kids[0]), shown(context, cause.kids[0]),
                         bound(context, cause.kids[1]));
    }
    case Why::of_none: return subject(context, cause) + " asks about something that is not there";
    case Why::no_reading: {
      const auto mark = cause.kids.size() > 1 ? cause.kids[1].value.id : vocabulary::no_id;
      const auto& marks = context.book->vocabulary->marks;
      return fmt::format("{} has no reading from {}", left(context, cause), mark < marks.size() ? marks[mark].title : "the mark asked for");
    }
    case Why::unfinished: return fmt::format("the {} is not written down to its end", list_words(context, cause));
    case Why::empty: return "there is nothing to take the least or greatest of";
    case Why::outside_table: return cause.table >= 0 ? table_end(context, cause) : "the ladder of sizes ends before it";
    case Why::no_row: return limit_title(context, cause) + " has no value for this kind";
    case Why::no_value: return limit_title(context, cause) + " is not known";
    case Why::doubt: return limit_title(context, cause) + " is doubtful: ask the authority which value counts";
    case Why::no_closed_days: return "the place's closed days are not known that far";
    case Why::two_ladders: return "an inch size and a metric size without an equivalence cannot be compared";
    case Why::out_of_range: return in_words(context, *cause.tree, cause.node) + " has an input outside its range";
    case Why::known:
    case Why::parts: break;
  }
  return in_words(context, *leaf.tree, leaf.node) + " cannot be told";
}

std::string reason(const Context& context, const Evaluated& of) { return undecided(context, of); }

}  // namespace headgate::explain
