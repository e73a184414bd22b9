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

bool in_time(const Evaluated& of) { return of.type.kind == Kind::date || of.type.kind == Kind::moment; }

// "Is this pipe new in this job? Yes"; "the old line is made of lead"
std::string asked(const Context& context, const Evaluated& path, bool yes) {
  const auto* field = field_of(context, path);
  if (field != nullptr && !field->ask.empty()) return field->ask + (yes ? " Yes" : " No");
  return in_words(context, *path.tree, path.node, yes);
}

std::string asked(const Context& context, const Evaluated& path) {
  return asked(context, path, path.truth() == Truth::yes);
}

// "the foundation wall has no sleeve"; "day the work began: none"; "highest static pressure is 86 psi"
std::string presence(const Context& context, const Evaluated& path) {
  const bool there = path.value.presence == Presence::present;
  const bool thing = path.type.kind == Kind::element;
  const std::string name = left(context, path);
  const std::size_t owner = name.find("'s ");
  if (there && !thing) return fmt::format("{} {} {}", name, is_or_are(name), shown(context, path));
  if (owner == std::string::npos) {
    if (!thing) return name + ": none";
    return there ? fmt::format("{} {} on record", name, is_or_are(name)) : "there is no " + name;
  }
  const std::string what = name.substr(owner + 3);
  return name.substr(0, owner) + " has " + (!there ? "no " + what : is_plural(what) ? what : with_article(what));
}

// Of a yes-no fact: whether its question is answered.
std::string recorded(const Context& context, const Evaluated& path, bool holds) {
  const auto* field = path.type.kind == Kind::truth ? field_of(context, path) : nullptr;
  if (field != nullptr && !field->ask.empty()) return field->ask + (holds ? " Answered" : " Not answered");
  const std::string name = left(context, path);
  return fmt::format("{} {} {}on record", name, is_or_are(name), holds ? "" : "not ");
}

std::string items_of(const Context& context, const Evaluated& limit) {
  if (limit.limit < 0 || limit.chain < 0) return "no value";
  return limit_items(context, static_cast<std::size_t>(limit.limit), static_cast<std::size_t>(limit.chain));
}

// "type K copper, among the materials for new service pipe"; "PVC, not among …: type K copper, polyethylene"
std::string listed(const Context& context, const Evaluated& of, bool inside) {
  const auto& subject = of.kids[0];
  const auto& list = of.kids[1];
  std::string words = left(context, subject);
  words += " " + is_or_are(words) + " ";
  if (subject.type.kind != Kind::element) words += shown(context, subject) + ", ";
  words += (inside ? "among the " : "not among the ") + limit_title(context, list);
  return inside ? words : words + ": " + items_of(context, list);
}

std::string one_of(const Context& context, const Evaluated& of, bool inside) {
  const auto& subject = of.kids[0];
  const std::string items = any_of(context, of);
  const std::string name = left(context, subject);
  if (subject.type.kind == Kind::truth && node_of(subject).op == Op::path) return asked(context, subject);
  if (subject.type.kind == Kind::element) return name + (inside ? " is " : " is not ") + items;
  // What it was asked not to be is worth a word only where it was to be something.
  if (inside || node_of(of).negated) return fmt::format("{} {} {}", name, is_or_are(name), shown(context, subject));
  return fmt::format("{} {} {}, not {}", name, is_or_are(name), shown(context, subject), items);
}

// "an approval by the building official is on file"; of one whose day is past "the approval by … has run out"
std::string paper(const Context& context, const Evaluated& of, bool there) {
  const Node& node = node_of(of);
  const auto& role = context.book->vocabulary->roles[node.column];
  const std::string kind = node.index == 0 ? "approval" : "order";
  const std::string title = role.title.empty() ? spaced(role.name) : role.title;
  const std::string by = fmt::format("by {}{}{}", title.rfind("the ", 0) == 0 ? "" : "the ", title,
                                     node.name.empty() ? "" : " for " + spaced(node.name));
  if (there || of.paper < 0) return fmt::format("{} {} is on file", there ? with_article(kind) : "no " + kind, by);
  return fmt::format("the {} {} ({}) has run out", kind, by,
                     site::address(*context.site, *context.book->vocabulary, static_cast<site::ElementId>(of.paper)));
}

}  // namespace

std::string_view relation_words(Relation relation, bool holds, bool in_time) {
  const bool upper = relation == Relation::less || relation == Relation::less_or_equal;
  const bool with_equal = relation == Relation::less_or_equal || relation == Relation::greater_or_equal;
  const bool below = upper == holds;
  const bool equal = with_equal == holds;
  if (in_time) return below ? (equal ? "on or before" : "before") : (equal ? "on or after" : "after");
  return below ? (equal ? "at most" : "below") : (equal ? "at least" : "above");
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
  return choice.properties[node_of(of).index].title;
}

std::string observed(const Context& context, const Evaluated& leaf) {
  const Node& node = node_of(leaf);
  const bool yes = leaf.truth() == Truth::yes;
  const bool holds = yes == !node.negated;  // of the test without its `not`
  const auto name = [&](std::size_t i) { return left(context, leaf.kids[i]); };
  // "the meter's height is 30 in"
  const auto value = [&](std::size_t i) {
    return fmt::format("{} {} {}", name(i), is_or_are(name(i)), shown(context, leaf.kids[i]));
  };
  switch (node.op) {
    case Op::compare:
      return fmt::format("{}, {} {}", value(0), relation_words(node.relation, yes, in_time(leaf.kids[0])),
                         bound(context, leaf.kids[1]));
    case Op::between:
      return fmt::format("{}, {} {} and {}", value(1), yes ? "between" : "not between", bound(context, leaf.kids[0]),
                         bound(context, leaf.kids[2]));
    case Op::same:
      return fmt::format("{}, {} {}", value(0), holds ? "the same as" : "not the same as",
                         bound(context, leaf.kids[1]));
    case Op::is_item:
    case Op::one_of: return one_of(context, leaf, holds);
    case Op::in_list:
      if (leaf.kids[0].type.kind == Kind::date)
        return fmt::format("{}, {} {}", value(0), holds ? "in" : "not in", bound(context, leaf.kids[1]));
      return listed(context, leaf, holds);
    case Op::is_none:
    case Op::fitted: return presence(context, leaf.kids[0]);
    case Op::recorded: return recorded(context, leaf.kids[0], holds);
    case Op::comes:
      return fmt::format("{} {} {}{} {}", name(0), yes ? "comes" : "does not come", node.right ? "right " : "",
                         node.before ? "before" : "after", name(1));
    case Op::some:
    case Op::no:
    case Op::every: return quantified(context, *leaf.tree, leaf.node, yes, &leaf);
    case Op::paper: return paper(context, leaf, yes);
    case Op::confirmed: return fmt::format("{} is {}confirmed", spaced(node.name), yes ? "" : "not ");
    case Op::path: return asked(context, leaf);
    case Op::property: return fmt::format("{}, {}{}", value(0), yes ? "" : "not ", property_words(context, leaf));
    case Op::literal: return yes ? "it always is" : "it never is";
    default: return in_words(context, *leaf.tree, leaf.node, yes);
  }
}

}  // namespace headgate::explain
