#include <algorithm>

#include "rulebook/keys.hpp"
#include "rulebook/rules.hpp"
#include "vocabulary/names.hpp"

namespace headgate::rulebook {

using document::Node;
using expression::Scope;
using expression::Tree;
using text::Diagnostics;
using text::say;
using vocabulary::Type;

namespace {

// In the order of Level.
const Names levels = {"must", "should", "note"};

Type date() {
  Type type;
  type.kind = Type::Kind::date;
  return type;
}

class Reading {
 public:
  Reading(const WrittenRule& written, const RuleReader& reader)
      : written_(written), reader_(reader), found_(reader.found), scope_(scope_of(reader.all, reader.vocabulary)) {}

  Rule read() {
    rule_.id = written_.id;
    rule_.range = written_.declared->key_range;
    texts();
    sources();
    stage();
    if (const Node* level = key("level")) {
      if (const auto known = one_of(*level, levels, "rule-level", found_)) rule_.level = static_cast<Level>(*known);
    }
    each();
    clauses();
    duty();
    holes();
    complete();
    return std::move(rule_);
  }

 private:
  const Node* key(const std::string& name) const {
    const auto at = written_.keys.find(name);
    return at == written_.keys.end() ? nullptr : &at->second.entry->value;
  }

  bool of_place(const std::string& name) const {
    const auto at = written_.keys.find(name);
    return at != written_.keys.end() && at->second.change != of_project;
  }

  std::string text(const std::string& name) {
    const Node* node = key(name);
    if (!node) return "";
    if (node->is_scalar()) return node->scalar;
    found_.push_back(say("rulebook-text", node->range, {name}));
    return "";
  }

  void texts() {
    rule_.title = text("title");
    rule_.topic = key("topic") ? text("topic") : written_.topic;
    rule_.why = text("why");
    rule_.fix = text("fix");
    rule_.caution = text("caution");
    rule_.often_misread = text("often-misread");
    rule_.if_not.written = text("if-not");
  }

  void sources() {
    const Node* source = key("source");
    if (!source) return;
    rule_.sources = reader_.documents.cite(*source, found_);
    rule_.adopted = reader_.adoption.binding(rule_.sources);
    // What a place writes binds because it says so, whatever else it cites.
    if (rule_.adopted.empty() && of_place("source")) rule_.adopted = rule_.sources;
  }

  void stage() {
    const Node* node = key("stage");
    if (!node) node = written_.stage;
    if (!node) return;
    Names names;
    for (const auto& each : reader_.vocabulary.stages) names.push_back(each.name);
    if (const auto known = one_of(*node, names, "rule-stage", found_)) rule_.stage = *known;
  }

  void each() {
    const Node* node = key("each");
    if (!node) return;
    auto compiled = expression::compile_each(*node, scope_, found_);
    if (!compiled) {
      broken_ = true;
      return;
    }
    rule_.each = std::move(*compiled);
    for (const auto& binder : rule_.each.binders) {
      scope_.variables.push_back({binder.binder.name, binder.binder.shapes});
      if (binder.where) say_literals(*binder.where, found_);
    }
  }

  // After an `each` that is wrong every name of its variables would be wrong too.
  void clauses() {
    if (broken_) return;
    if (const Node* when = key("when")) rule_.when = read_clause(*when, Clause::Mode::all, scope_, reader_);
    if (const Node* unless = key("unless")) rule_.unless = read_exceptions(*unless, scope_, reader_);
    if (const Node* require = key("require")) rule_.require = read_clause(*require, Clause::Mode::all, scope_, reader_);
  }

  void duty() {
    if (broken_) return;
    if (const Node* due = key("due")) {
      rule_.due = expression::compile(*due, scope_, date(), found_);
      if (rule_.due) say_literals(*rule_.due, found_);
    }
    if (const Node* done = key("done")) rule_.done = expression::compile(*done, scope_, date(), found_);
  }

  // `{path}` in if-not.
  void holes() {
    const Node* node = key("if-not");
    if (!node || broken_) return;
    const std::string& written = rule_.if_not.written;
    std::size_t open = written.find('{');
    for (; open != std::string::npos; open = written.find('{', open + 1)) {
      const std::size_t close = written.find('}', open);
      if (close == std::string::npos) {
        found_.push_back(say("brace-open", node->range_of(open, 1)));
        return;
      }
      const std::string path = written.substr(open + 1, close - open - 1);
      auto tree = expression::compile_path(path, node->range_of(open + 1, path.size()), scope_, found_);
      if (tree) rule_.if_not.holes.emplace_back(open, std::move(*tree));
    }
  }

  void wrong(std::string_view id, const std::string& name) {
    const auto at = written_.keys.find(name);
    found_.push_back(say(id, at == written_.keys.end() ? rule_.range : at->second.entry->key_range, {rule_.id, name}));
  }

  void complete() {
    for (const char* name : {"title", "source"}) {
      if (!key(name)) wrong("rule-needs", name);
    }
    const bool demands = key("require") || key("due");
    if (rule_.level == Level::note) {
      for (const char* name : {"require", "due", "done"}) {
        if (key(name)) wrong("note-with", name);
      }
      if (!key("when") && !key("each")) wrong("note-without", "when");
    } else if (!demands) {
      wrong("rule-needs-require", "require");
    }
    if (key("require") && key("due")) wrong("require-and-due", "due");
    if (key("done") && !key("due")) wrong("done-without-due", "done");
    advice();
  }

  void advice() {
    if (!key("why")) wrong("rule-without-why", "why");
    if (rule_.level == Level::must && !key("fix")) wrong("rule-without-fix", "fix");
    const auto practice = [](const Citation& each) { return each.document == "practice"; };
    if (rule_.level == Level::must && !rule_.sources.empty() &&
        std::all_of(rule_.sources.begin(), rule_.sources.end(), practice)) {
      wrong("must-by-practice", "source");
    }
  }

  const WrittenRule& written_;
  const RuleReader& reader_;
  Diagnostics& found_;
  Scope scope_;
  Rule rule_;
  bool broken_ = false;
};

}  // namespace

Rule read_rule(const WrittenRule& written, const RuleReader& reader) { return Reading(written, reader).read(); }

}  // namespace headgate::rulebook
