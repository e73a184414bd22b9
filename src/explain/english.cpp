// An expression in plain words, whatever it came to: "the gauge comes before the pressure reducer".
#include <fmt/format.h>

#include "explain/words.hpp"

namespace headgate::explain {

using expression::Node;
using expression::NodeId;
using expression::Op;
using expression::Relation;
using expression::Tree;

namespace {

struct Speaker {
  const Context& context;
  const Tree& tree;

  std::string say(NodeId id) const { return id == expression::no_node ? "" : words(tree[id]); }

  std::string all(const Node& node, std::string_view by) const {
    std::vector<std::string> parts;
    for (const auto kid : node.kids) parts.push_back(say(kid));
    return joined(parts, by);
  }

  // The title of the fact a path ends in: of the variable's own kind where that has one.
  std::string last_title(const Node& node, std::string_view variable) const {
    const auto& last = node.steps.back().name;
    const auto& vocabulary = *context.book->vocabulary;
    const auto own = node.steps.size() == 1 ? vocabulary.shape(variable) : std::nullopt;
    if (own && vocabulary.shapes[*own].field(last)) return title_of(vocabulary.shapes[*own], last);
    for (const auto& shape : vocabulary.shapes) {
      if (shape.field(last) && (node.variable == expression::no_node || shape.kind)) return title_of(shape, last);
    }
    return spaced(last);
  }

  static std::string title_of(const vocabulary::Shape& shape, std::string_view name) {
    const auto& field = shape.fields[*shape.field(name)];
    return field.title.empty() ? spaced(name) : field.title;
  }

  // The written name of the variable a path begins with: the first word of its text.
  std::string path(const Node& node) const {
    if (node.variable == expression::no_node) return node.steps.empty() ? "the site" : last_title(node, "");
    const std::string_view text = context.sources->text(node.range);
    const std::string_view variable = text.substr(0, text.find('.'));
    const std::string owner = "the " + variable_words(context, variable);
    if (node.steps.empty()) return owner;
    std::vector<std::string> names;
    for (const auto& step : node.steps) names.push_back(spaced(step.name));
    names.back() = last_title(node, variable);
    return owner + "'s " + joined(names, " ");
  }

  std::string binder(const Node& node, bool many = false) const {
    const std::string list =
        tree[node.binder.list].steps.empty() ? "list" : spaced(tree[node.binder.list].steps.back().name);
    const std::string kind = kind_words(context, node.binder.kind_name);
    return (many ? plural(kind) : kind) + " in the " + list;
  }

  std::string limit(const Node& node) const {
    const auto& of = context.book->limits[node.index];
    if (of.chain.empty()) return spaced(of.signature.name);
    if (of.signature.list) return limit_items(context, node.index, 0);
    return of.chain.front().written;
  }

  static std::string_view relation(Relation relation) {
    switch (relation) {
      case Relation::less: return "is below";
      case Relation::less_or_equal: return "is at most";
      case Relation::greater: return "is above";
      case Relation::greater_or_equal: return "is at least";
    }
    return "";
  }

  std::string quantified(const Node& node) const {
    const std::string first = node.op == Op::every ? "every " : node.op == Op::some ? "some " : "no ";
    std::string text = first + binder(node);
    const std::string where = say(node.kids[0]);
    const std::string has = node.kids.size() > 1 ? say(node.kids[1]) : "";
    if (!where.empty()) text += " where " + where;
    if (!has.empty()) text += (node.op == Op::every ? ": " : " where ") + has;
    return text;
  }

  std::string item(const Node& node) const {
    std::vector<std::string> items;
    for (std::size_t i = 1; i < node.kids.size(); ++i) items.push_back(say(node.kids[i]));
    return say(node.kids[0]) + (node.negated ? " is not " : " is ") + joined(items, " or ");
  }

  std::string literal(const Node& node) const {
    if (node.type.kind == vocabulary::Type::Kind::kind) return with_article(kind_words(context, node.written));
    if (node.type.kind == vocabulary::Type::Kind::choice)
      return vocabulary::show(node.value, node.type, *context.book->vocabulary);
    return node.written;
  }

  std::string words(const Node& node) const {
    switch (node.op) {
      case Op::literal: return literal(node);
      case Op::both: return all(node, " and ");
      case Op::either: return all(node, " or ");
      case Op::opposite: return "not (" + say(node.kids[0]) + ")";
      case Op::compare: return fmt::format("{} {} {}", say(node.kids[0]), relation(node.relation), say(node.kids[1]));
      case Op::between:
        return fmt::format("{} is between {} and {}", say(node.kids[1]), say(node.kids[0]), say(node.kids[2]));
      case Op::same:
        return fmt::format("{} is {}the same as {}", say(node.kids[0]), node.negated ? "not " : "", say(node.kids[1]));
      case Op::is_item:
      case Op::one_of: return item(node);
      case Op::in_list:
        return fmt::format("{} is {}one of: {}", say(node.kids[0]), node.negated ? "not " : "", say(node.kids[1]));
      case Op::is_none: return say(node.kids[0]) + (node.negated ? " is there" : " is none");
      case Op::fitted: return say(node.kids[0]) + (node.negated ? " is not fitted" : " is fitted");
      case Op::recorded: return say(node.kids[0]) + (node.negated ? " is not on record" : " is on record");
      case Op::comes:
        return fmt::format("{} comes {}{} {}", say(node.kids[0]), node.right ? "right " : "",
                           node.before ? "before" : "after", say(node.kids[1]));
      case Op::some:
      case Op::no:
      case Op::every: return quantified(node);
      case Op::count: return "the number of " + binder(node, true);
      case Op::sum: return "the sum of " + say(node.kids[0]) + " over every " + binder(node);
      case Op::least_of: return "the least of " + say(node.kids[0]) + " over every " + binder(node);
      case Op::greatest_of: return "the greatest of " + say(node.kids[0]) + " over every " + binder(node);
      case Op::least: return "the least of " + all(node, ", ");
      case Op::greatest: return "the greatest of " + all(node, ", ");
      case Op::add: return all(node, " plus ");
      case Op::subtract: return all(node, " minus ");
      case Op::multiply: return all(node, " times ");
      case Op::divide: return all(node, " divided by ");
      case Op::negate: return "-" + say(node.kids[0]);
      case Op::path: return path(node);
      case Op::property: {
        const auto& choice = context.book->vocabulary->choices[tree[node.kids[0]].type.choice];
        return say(node.kids[0]) + " is " + spaced(choice.properties[node.index].name);
      }
      case Op::at_mark: return say(node.kids[0]) + (node.before ? " below " : " above ") + say(node.kids[1]);
      case Op::limit: return limit(node);
      case Op::look_up:
      case Op::call: return std::string(context.sources->text(node.range));
      case Op::choose:
        return fmt::format("if {} then {} else {}", say(node.kids[0]), say(node.kids[1]), say(node.kids[2]));
      case Op::paper: {
        const auto& role = context.book->vocabulary->roles[node.column];
        return fmt::format("{} by the {}", node.index == 0 ? "approved" : "ordered",
                           role.title.empty() ? spaced(role.name) : role.title);
      }
      case Op::confirmed: return spaced(node.name) + " is confirmed";
      case Op::base: return "the value below";
      case Op::word:
      case Op::error: break;
    }
    return node.name;
  }
};

}  // namespace

std::string in_words(const Context& context, const Tree& tree, NodeId node) { return Speaker{context, tree}.say(node); }

}  // namespace headgate::explain
