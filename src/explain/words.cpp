#include "explain/words.hpp"

#include <fmt/format.h>

namespace headgate::explain {

using expression::Node;
using expression::NodeId;
using expression::Op;
using expression::Relation;
using quantity::Truth;
using vocabulary::Presence;
using Kind = vocabulary::Type::Kind;

namespace {

// How the left side stands to the right one when the relation holds, and when it does not.
std::string_view stands(Relation relation, bool holds, bool in_time) {
  const bool upper = relation == Relation::less || relation == Relation::less_or_equal;
  const bool with_equal = relation == Relation::less_or_equal || relation == Relation::greater_or_equal;
  const bool below = upper == holds;
  const bool equal = with_equal == holds;
  if (in_time) return below ? (equal ? "on or before" : "before") : (equal ? "on or after" : "after");
  return below ? (equal ? "at most" : "below") : (equal ? "at least" : "above");
}

bool in_time(const Evaluated& of) { return of.type.kind == Kind::date || of.type.kind == Kind::moment; }

// "the line has no pressure gauge that comes before the pressure reducing valve"
std::string quantified(const Context& context, const Evaluated& of) {
  const Node& node = node_of(of);
  const std::string list = list_words(context, of);
  const std::string kind = kind_words(context, node.binder.kind_name);
  const std::string where = condition(context, *of.tree, node.binder.name, node.kids[0]);
  const NodeId body = node.kids.size() > 1 ? node.kids[1] : expression::no_node;
  if (node.op == Op::every) {
    return fmt::format("every {} in the {}{}: {}", kind, list, where, in_words(context, *of.tree, body));
  }
  const std::string has = condition(context, *of.tree, node.binder.name, body);
  const bool there = (node.op == Op::some) == (of.truth() == Truth::yes);
  return fmt::format("the {} has {}{}{}{}", list, there ? with_article(kind) : "no " + kind, where,
                     where.empty() || has.empty() ? "" : " and", has);
}

std::string asked(const Context& context, const Evaluated& path) {
  const auto* field = field_of(context, path);
  const bool yes = path.truth() == Truth::yes;
  if (field == nullptr || field->ask.empty()) return subject(context, path) + (yes ? ": yes" : ": no");
  return field->ask + (yes ? " Yes" : " No");
}

// "the foundation wall has no sleeve"; "the breaker's last repair: none"; "highest static pressure is 86 psi"
std::string presence(const Context& context, const Evaluated& path) {
  const bool there = path.value.presence == Presence::present;
  const std::string name = left(context, path);
  const std::size_t owner = name.find("'s ");
  if (path.type.kind == Kind::element && owner != std::string::npos) {
    const std::string thing = name.substr(owner + 3);
    return name.substr(0, owner) + " has " + (there ? with_article(thing) : "no " + thing);
  }
  return there && path.type.kind != Kind::element ? name + " is " + shown(context, path)
                                                  : name + (there ? ": there" : ": none");
}

std::string items_of(const Context& context, const Evaluated& limit) {
  if (limit.limit < 0 || limit.chain < 0) return "no value";
  return limit_items(context, static_cast<std::size_t>(limit.limit), static_cast<std::size_t>(limit.chain));
}

// "type K copper, among the materials for new service pipe"; "PVC, not among …: type K copper, polyethylene"
std::string listed(const Context& context, const Evaluated& of, bool inside) {
  const auto& subject = of.kids[0];
  const auto& list = of.kids[1];
  std::string words = left(context, subject) + " is ";
  if (subject.type.kind != Kind::element) words += shown(context, subject) + ", ";
  words += (inside ? "among the " : "not among the ") + limit_title(context, list);
  return inside ? words : words + ": " + items_of(context, list);
}

std::string one_of(const Context& context, const Evaluated& of, bool inside) {
  const auto& subject = of.kids[0];
  const std::string items = any_of(context, of);
  if (subject.type.kind == Kind::element) return left(context, subject) + (inside ? " is " : " is not ") + items;
  if (inside) return left(context, subject) + " is " + shown(context, subject);
  return fmt::format("{} is {}, not {}", left(context, subject), shown(context, subject), items);
}

std::string paper(const Context& context, const Node& node, bool there) {
  const auto& role = context.book->vocabulary->roles[node.column];
  const std::string kind = node.index == 0 ? "approval" : "order";
  return fmt::format("{} by the {}{} is on file", there ? with_article(kind) : "no " + kind,
                     role.title.empty() ? spaced(role.name) : role.title,
                     node.name.empty() ? "" : " for " + spaced(node.name));
}

}  // namespace

std::string condition(const Context& context, const expression::Tree& tree, std::string_view variable, NodeId of) {
  if (of == expression::no_node) return "";
  const std::string words = in_words(context, tree, of);
  const std::string name = "the " + variable_words(context, variable);
  if (words.rfind(name + "'s ", 0) == 0) return " whose " + words.substr(name.size() + 3);
  if (words.rfind(name + " ", 0) == 0) return " that " + words.substr(name.size() + 1);
  return " where " + words;
}

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

std::string any_of(const Context& context, const Evaluated& of) {
  std::vector<std::string> items;
  for (std::size_t i = 1; i < of.kids.size(); ++i) {
    const auto& kid = of.kids[i];
    if (kid.limit >= 0)
      items.push_back("one of the " + limit_title(context, kid) + ": " + items_of(context, kid));
    else
      items.push_back(kid.type.kind == Kind::kind ? with_article(shown(context, kid)) : shown(context, kid));
  }
  return joined(items, " or ");
}

std::string property_words(const Context& context, const Evaluated& of) {
  const auto& choice = context.book->vocabulary->choices[of.kids[0].type.choice];
  return spaced(choice.properties[node_of(of).index].name);
}

std::string observed(const Context& context, const Evaluated& leaf) {
  const Node& node = node_of(leaf);
  const bool yes = leaf.truth() == Truth::yes;
  const bool holds = yes == !node.negated;  // of the test without its `not`
  const auto name = [&](std::size_t i) { return left(context, leaf.kids[i]); };
  const auto side = [&](std::size_t i) { return shown(context, leaf.kids[i]); };
  switch (node.op) {
    case Op::compare:
      return fmt::format("{} is {}, {} {}", name(0), side(0), stands(node.relation, yes, in_time(leaf.kids[0])),
                         bound(context, leaf.kids[1]));
    case Op::between:
      return fmt::format("{} is {}, {} {} and {}", name(1), side(1), yes ? "between" : "not between",
                         bound(context, leaf.kids[0]), bound(context, leaf.kids[2]));
    case Op::same:
      return fmt::format("{} is {}, {} {}", name(0), side(0), holds ? "the same as" : "not the same as",
                         bound(context, leaf.kids[1]));
    case Op::is_item:
    case Op::one_of: return one_of(context, leaf, holds);
    case Op::in_list:
      if (leaf.kids[0].type.kind == Kind::date)
        return fmt::format("{} is {}, {} {}", name(0), side(0), holds ? "in" : "not in", bound(context, leaf.kids[1]));
      return listed(context, leaf, holds);
    case Op::is_none:
    case Op::fitted: return presence(context, leaf.kids[0]);
    case Op::recorded: return fmt::format("{} is {}on record", name(0), holds ? "" : "not ");
    case Op::comes:
      return fmt::format("{} {} {}{} {}", name(0), yes ? "comes" : "does not come", node.right ? "right " : "",
                         node.before ? "before" : "after", name(1));
    case Op::some:
    case Op::no:
    case Op::every: return quantified(context, leaf);
    case Op::paper: return paper(context, node, yes);
    case Op::confirmed: return fmt::format("{} is {}confirmed", spaced(node.name), yes ? "" : "not ");
    case Op::path: return asked(context, leaf);
    case Op::property:
      return fmt::format("{} is {}, {}{}", name(0), side(0), yes ? "" : "not ", property_words(context, leaf));
    case Op::literal: return yes ? "it always is" : "it never is";
    default: return (yes ? "" : "it is not so that ") + in_words(context, *leaf.tree, leaf.node);
  }
}

}  // namespace headgate::explain
