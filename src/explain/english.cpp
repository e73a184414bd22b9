// An expression in plain words, whatever it came to: "the gauge comes before the pressure reducer".
#include <fmt/format.h>

#include "explain/words.hpp"

namespace headgate::explain {

using expression::no_node;
using expression::Node;
using expression::NodeId;
using expression::Op;
using expression::Tree;
using Kind = vocabulary::Type::Kind;

namespace {

// Calls `take` for every node below `of` that stands for `node`.
template <typename Take>
void every_value(const Evaluated& of, const Tree& tree, NodeId node, Take& take) {
  if (of.tree == &tree && of.node == node) take(of);
  for (const auto& kid : of.kids) every_value(kid, tree, node, take);
}

// What a path ends in, and whose it is.
struct Ending {
  const vocabulary::Shape* shape = nullptr;
  const vocabulary::Field* field = nullptr;
};

struct Speaker {
  const Context& context;
  const Tree& tree;
  const Evaluated* values = nullptr;  // of the quantifier that is told, for its limits and look-ups

  const vocabulary::Vocabulary& vocabulary() const { return *context.book->vocabulary; }

  std::string say(NodeId id, bool holds = true) const { return id == no_node ? "" : words(id, holds); }

  std::string all(const Node& node, std::string_view by, bool holds = true) const {
    std::vector<std::string> parts;
    for (const auto kid : node.kids) parts.push_back(say(kid, holds));
    return joined(parts, by);
  }

  // The written name of the variable a path begins with: the first word of its text. Empty for the site's own.
  std::string_view variable_of(const Node& node) const {
    if (node.variable == no_node) return "";
    const std::string_view text = context.sources->text(node.range);
    return text.substr(0, text.find('.'));
  }

  // The fact a path ends in: of the variable's own kind where that has one, of the record named before it, else of the
  // first kind that has it.
  Ending ending(const Node& node) const {
    const auto& last = node.steps.back().name;
    const auto in = [&](std::string_view name) -> Ending {
      const auto id = vocabulary().shape(name);
      const auto field = id ? vocabulary().shapes[*id].field(last) : std::nullopt;
      return field ? Ending{&vocabulary().shapes[*id], &vocabulary().shapes[*id].fields[*field]} : Ending{};
    };
    const bool own = node.steps.size() == 1;
    const std::string_view of = !own                       ? std::string_view(node.steps[node.steps.size() - 2].name)
                                : node.variable == no_node ? std::string_view("site")
                                                           : variable_of(node);
    if (const Ending there = in(of); there.field != nullptr) return there;
    if (own && node.variable != no_node) {
      const auto kinds = vocabulary().kinds(variable_of(node));
      for (std::size_t id = 0; id < vocabulary().shapes.size(); ++id) {
        if (!kinds.test(id)) continue;
        if (const Ending there = in(vocabulary().shapes[id].name); there.field != nullptr) return there;
      }
    }
    for (const auto& shape : vocabulary().shapes) {
      if (node.variable != no_node && !shape.kind) continue;
      if (const Ending there = in(shape.name); there.field != nullptr) return there;
    }
    return {};
  }

  std::string last_title(const Node& node) const {
    const Ending end = ending(node);
    return end.field == nullptr || end.field->title.empty() ? spaced(node.steps.back().name) : end.field->title;
  }

  // "the pipe", "the old line", "the foundation wall's sleeve": what the last fact of a path is a fact of.
  std::string owner(const Node& node) const {
    if (node.variable == no_node) {
      const Ending end = ending(node);
      return end.shape == nullptr ? "the site" : "the " + kind_words(context, end.shape->name);
    }
    std::string name = "the " + variable_words(context, variable_of(node));
    for (std::size_t i = 0; i + 1 < node.steps.size(); ++i) name += "'s " + spaced(node.steps[i].name);
    return name;
  }

  std::string path(const Node& node) const {
    if (node.variable == no_node) return node.steps.empty() ? "the site" : last_title(node);
    if (node.steps.empty()) return owner(node);
    std::vector<std::string> names;
    for (const auto& step : node.steps) names.push_back(spaced(step.name));
    names.back() = last_title(node);
    return "the " + variable_words(context, variable_of(node)) + "'s " + joined(names, " ");
  }

  // "the pipe is new in this job"; without such words, the question and its answer.
  std::string yes_no(const Node& node, bool yes) const {
    if (node.steps.empty()) return path(node);
    const Ending end = ending(node);
    if (end.field == nullptr) return path(node) + (yes ? ": yes" : ": no");
    const Predicate says = predicate(*end.field, *end.shape);
    const std::string& own = yes ? says.yes : says.no;
    if (!own.empty()) return owner(node) + " " + own;
    if (!says.yes.empty()) return "it is not so that " + owner(node) + " " + says.yes;
    if (end.field->ask.empty()) return path(node) + (yes ? ": yes" : ": no");
    return fmt::format("the answer to \"{}\" is {}", end.field->ask, yes ? "yes" : "no");
  }

  // "the line", "the branch's line"
  std::string list(const Node& quantifier) const {
    const Node& node = tree[quantifier.binder.list];
    if (node.steps.empty()) return "the list";
    const std::string title = last_title(node);
    return "the " + (node.variable == no_node ? "" : owner(node).substr(4) + "'s ") + title;
  }

  // A list of the site that holds one kind of thing needs no name: "there is no test".
  bool goes_unnamed(const Node& quantifier) const {
    const Node& node = tree[quantifier.binder.list];
    if (node.variable != no_node || node.steps.size() != 1) return false;
    const Ending end = ending(node);
    return end.field != nullptr && end.field->union_of.empty() && end.field->type.shapes.count() == 1;
  }

  std::string counted(const Node& node, NodeId where, bool many) const {
    const std::string kind = kind_words(context, node.binder.kind_name);
    const std::string in = goes_unnamed(node) ? "" : " in " + list(node);
    if (!many) return kind + in + condition(node.binder.name, where);
    return plural(kind) + in + (where == no_node ? "" : ", counting each" + condition(node.binder.name, where) + ",");
  }

  std::string limit(const Node& node, NodeId id) const {
    const auto& of = context.book->limits[node.index];
    const std::string title = of.title.empty() ? spaced(of.signature.name) : lowered(of.title);
    if (of.chain.empty()) return title;
    if (of.signature.list) return limit_items(context, node.index, 0);
    const bool one = of.chain.front().form == rulebook::LimitValue::Form::expression && node.kids.empty();
    return one ? of.chain.front().written : value_or(id, title);
  }

  // The value a node came to, where it is one and the same for every element; else its words.
  std::string value_or(NodeId id, const std::string& title) const {
    if (values == nullptr) return title;
    std::string value;
    bool one = true;
    const auto take = [&](const Evaluated& of) {
      const std::string here = of.why == evaluate::Why::known ? shown(context, of) : "";
      one = one && !here.empty() && (value.empty() || value == here);
      value = here;
    };
    every_value(*values, tree, id, take);
    return value.empty() || !one ? title : value;
  }

  std::string look_up(const Node& node, NodeId id) const {
    const bool of_limit = node.index == vocabulary::no_id;
    std::string name;
    std::string column;
    if (of_limit) {
      const auto& of = context.book->limits[tree[node.kids[0]].index];
      name = of.title.empty() ? spaced(of.signature.name) : lowered(of.title);
      if (!node.steps.empty()) column = spaced(node.steps.back().name);
    } else {
      const auto& of = context.book->tables[node.index];
      name = of.title.empty() ? spaced(of.signature.name) : lowered(of.title);
      if (of.signature.columns.size() > 1) column = spaced(of.signature.columns[node.column].name);
    }
    return value_or(id, column.empty() || of_limit ? name : column + " by the table of " + name);
  }

  std::string call(const Node& node) const {
    if (node.name == "size-steps") return "the number of sizes from " + all(node, " up to ");
    if (node.name == "sizes-up" && node.kids.size() == 2)
      return fmt::format("{} and {} sizes up", say(node.kids[0]), say(node.kids[1]));
    std::string from;
    for (std::size_t i = 0; i < node.kids.size(); ++i)
      from += (i == 0 ? "" : i + 1 == node.kids.size() ? " and " : ", ") + say(node.kids[i]);
    return "the " + spaced(node.name) + " worked out from " + from;
  }

  std::string some(const Node& node, bool there) const {
    const std::string kind = kind_words(context, node.binder.kind_name);
    const std::string which = condition(node.binder.name, node.kids[0]);
    const std::string has = node.kids.size() > 1 ? condition(node.binder.name, node.kids[1]) : "";
    const std::string what =
        (there ? with_article(kind) : "no " + kind) + which + (which.empty() || has.empty() ? "" : " and") + has;
    if (goes_unnamed(node)) return "there is " + what;
    const std::string name = list(node);
    return name + (is_plural(name) ? " have " : " has ") + what;
  }

  std::string quantified(const Node& node, bool holds) const {
    if (node.op != Op::every) return some(node, (node.op == Op::some) == holds);
    const std::string body = node.kids.size() > 1 ? say(node.kids[1]) : "";
    return fmt::format("{} {}: {}", holds ? "every" : "not every", counted(node, node.kids[0], false), body);
  }

  std::string item(const Node& node, bool holds) const {
    const Node& first = tree[node.kids[0]];
    if (first.type.kind == Kind::truth && first.op == Op::path && node.kids.size() == 2) {
      const bool asked = tree[node.kids[1]].value.truth == quantity::Truth::yes;
      return yes_no(first, (asked != node.negated) == holds);
    }
    std::vector<std::string> items;
    for (std::size_t i = 1; i < node.kids.size(); ++i) items.push_back(say(node.kids[i]));
    const std::string name = say(node.kids[0]);
    return fmt::format("{} {}{} {}", name, is_or_are(name), node.negated == holds ? " not" : "", joined(items, " or "));
  }

  std::string literal(const Node& node) const {
    if (node.type.kind == Kind::kind) return with_article(kind_words(context, node.written));
    if (node.type.kind == Kind::choice) return vocabulary::show(node.value, node.type, vocabulary());
    return node.written;
  }

  // "the foundation wall has a sleeve"; "the inspection's date is given"
  std::string fitted(const Node& node, bool there) const {
    const Node& path_node = tree[node.kids[0]];
    const bool thing = path_node.type.kind == Kind::element && path_node.op == Op::path && !path_node.steps.empty();
    if (!thing || path_node.variable == no_node) {
      const std::string name = say(node.kids[0]);
      if (thing) return there ? name + " is on record" : "there is no " + name;
      return fmt::format("{} {}{} given", name, is_or_are(name), there ? "" : " not");
    }
    const std::string title = last_title(path_node);
    return owner(path_node) + " has " + (!there ? "no " + title : is_plural(title) ? title : with_article(title));
  }

  std::string recorded(const Node& node, bool holds) const {
    const Node& path_node = tree[node.kids[0]];
    const Ending end = path_node.op == Op::path && path_node.type.kind == Kind::truth ? ending(path_node) : Ending{};
    if (end.field != nullptr && !end.field->ask.empty())
      return fmt::format("\"{}\" is {}answered", end.field->ask, holds ? "" : "not ");
    const std::string name = say(node.kids[0]);
    return fmt::format("{} {}{} on record", name, is_or_are(name), holds ? "" : " not");
  }

  std::string comparison(const Node& node, bool holds) const {
    const auto kind = tree[node.kids[0]].type.kind;
    const bool in_time = kind == Kind::date || kind == Kind::moment;
    const std::string name = say(node.kids[0]);
    return fmt::format("{} {} {} {}", name, is_or_are(name), relation_words(node.relation, holds, in_time),
                       bound(node.kids[1]));
  }

  // A fact of the site wants its article here: "on or before the day the work began".
  std::string bound(NodeId id) const {
    const Node& node = tree[id];
    const bool bare = node.op == Op::path && node.variable == no_node && !node.steps.empty();
    return (bare ? "the " : "") + say(id);
  }

  std::string comes(const Node& node, bool holds) const {
    return fmt::format("{} {} {}{} {}", say(node.kids[0]), holds ? "comes" : "does not come",
                       node.right ? "right " : "", node.before ? "before" : "after", say(node.kids[1]));
  }

  std::string words(NodeId id, bool holds) const {
    const Node& node = tree[id];
    const bool yes = node.negated != holds;  // of the test without its `not`
    switch (node.op) {
      case Op::literal: return literal(node);
      case Op::both: return all(node, holds ? " and " : " or ", holds);
      case Op::either: return all(node, holds ? " or " : " and ", holds);
      case Op::opposite: return say(node.kids[0], !holds);
      case Op::compare: return comparison(node, holds);
      case Op::between:
        return fmt::format("{} is {}between {} and {}", say(node.kids[1]), holds ? "" : "not ", say(node.kids[0]),
                           say(node.kids[2]));
      case Op::same:
        return fmt::format("{} is {}the same as {}", say(node.kids[0]), yes ? "" : "not ", say(node.kids[1]));
      case Op::is_item:
      case Op::one_of: return item(node, holds);
      case Op::in_list:
        return fmt::format("{} is {}one of: {}", say(node.kids[0]), yes ? "" : "not ", say(node.kids[1]));
      case Op::is_none: return fitted(node, !yes);
      case Op::fitted: return fitted(node, yes);
      case Op::recorded: return recorded(node, yes);
      case Op::comes: return comes(node, holds);
      case Op::some:
      case Op::no:
      case Op::every: return quantified(node, holds);
      case Op::count: return "the number of " + counted(node, node.kids[0], true);
      case Op::sum: return fold("the sum of ", node);
      case Op::least_of: return fold("the least of ", node);
      case Op::greatest_of: return fold("the greatest of ", node);
      case Op::least: return "the least of " + all(node, ", ");
      case Op::greatest: return "the greatest of " + all(node, ", ");
      case Op::add: return all(node, " plus ");
      case Op::subtract: return all(node, " minus ");
      case Op::multiply: return all(node, " times ");
      case Op::divide: return all(node, " divided by ");
      case Op::negate: return "-" + say(node.kids[0]);
      case Op::path: return node.type.kind == Kind::truth ? yes_no(node, holds) : path(node);
      case Op::property: {
        const auto& choice = vocabulary().choices[tree[node.kids[0]].type.choice];
        return say(node.kids[0]) + (holds ? " is " : " is not ") + choice.properties[node.index].title;
      }
      case Op::at_mark: return say(node.kids[0]) + (node.before ? " below " : " above ") + say(node.kids[1]);
      case Op::limit: return limit(node, id);
      case Op::look_up: return look_up(node, id);
      case Op::call: return call(node);
      case Op::choose:
        return fmt::format("if {} then {} else {}", say(node.kids[0]), say(node.kids[1]), say(node.kids[2]));
      case Op::paper: {
        const auto& role = vocabulary().roles[node.column];
        return fmt::format("{}{} by the {}", holds ? "" : "not ", node.index == 0 ? "approved" : "ordered",
                           role.title.empty() ? spaced(role.name) : role.title);
      }
      case Op::confirmed: return spaced(node.name) + (holds ? " is confirmed" : " is not confirmed");
      case Op::base: return "the value below";
      case Op::word:
      case Op::error: break;
    }
    return node.name;
  }

  std::string fold(std::string_view what, const Node& node) const {
    return std::string(what) + say(node.kids[0]) + " over every " +
           counted(node, node.kids.size() > 1 ? node.kids[1] : no_node, false);
  }

  // After a variable: "whose material is copper and that comes before the meter".
  std::string relative(std::string_view variable, NodeId id, bool holds, bool inside_and = false) const {
    const Node& node = tree[id];
    if (node.op == Op::opposite) return relative(variable, node.kids[0], !holds, inside_and);
    if (node.op == Op::both || node.op == Op::either) {
      const bool conjunction = (node.op == Op::both) == holds;
      std::vector<std::string> parts;
      for (const auto kid : node.kids) parts.push_back(relative(variable, kid, holds, conjunction));
      const std::string together = joined(parts, conjunction ? " and " : " or ");
      return inside_and && !conjunction ? "(" + together + ")" : together;
    }
    const std::string name = "the " + variable_words(context, variable);
    const auto stands_for_it = [&](NodeId side) {
      return tree[side].op == Op::path && tree[side].steps.empty() && tree[side].variable != no_node &&
             variable_of(tree[side]) == variable;
    };
    if (node.op == Op::comes && holds && stands_for_it(node.kids[1])) {
      return fmt::format("that comes {}{} {}", node.right ? "right " : "", node.before ? "after" : "before",
                         say(node.kids[0]));
    }
    const std::string words = say(id, holds);
    if (words.rfind(name + "'s ", 0) == 0) return "whose " + words.substr(name.size() + 3);
    if (words.rfind(name + " ", 0) == 0) return "that " + words.substr(name.size() + 1);
    return "for which " + words;
  }

  std::string condition(std::string_view variable, NodeId of) const {
    return of == no_node ? "" : " " + relative(variable, of, true);
  }
};

}  // namespace

std::string in_words(const Context& context, const Tree& tree, NodeId node, bool holds) {
  return Speaker{context, tree}.say(node, holds);
}

std::string condition(const Context& context, const Tree& tree, std::string_view variable, NodeId of) {
  return Speaker{context, tree}.condition(variable, of);
}

std::string quantified(const Context& context, const Tree& tree, NodeId node, bool holds, const Evaluated* values) {
  return Speaker{context, tree, values}.quantified(tree[node], holds);
}

}  // namespace headgate::explain
