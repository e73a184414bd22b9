// `headgate explain SITE RULE`: every clause and node with its value and place.
#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "app/commands.hpp"
#include "report/report.hpp"

namespace headgate::app {

namespace {

std::string rule_name(const std::string& asked) {
  const std::size_t slash = asked.find('/');
  return slash == std::string::npos ? asked : asked.substr(slash + 1);
}

// One decision of the rule, with every clause and node behind it.
struct Explained {
  std::string law;  // the day whose law it is, where several could apply
  Finding finding;
  std::vector<explain::Line> lines;
};

std::vector<Explained> explained(const World& world, const Case& prepared, const std::string& rule) {
  std::vector<Explained> all;
  for (const auto& authority : judge(prepared)) {
    for (const auto& judgement : authority.judgements) {
      const auto& book = *judgement.book;
      if (rule.find('/') != std::string::npos && rule.substr(0, rule.find('/')) != book.place) continue;
      const explain::Context context{&world.sources, judgement.book, judgement.site};
      const bool several = authority.judgements.size() > 1;
      for (const auto& decision : judgement.decisions) {
        all.push_back({!several   ? ""
                       : book.day ? quantity::show_date(*book.day)
                                  : "any day",
                       explain::finding(context, judgement, decision),
                       explain::lines(context, evaluate::explain(judgement, decision))});
      }
    }
  }
  return all;
}

std::string text_of(const std::vector<Explained>& all) {
  std::string out;
  std::string law;
  for (const auto& one : all) {
    const Finding& finding = one.finding;
    if (one.law != law) out += "Law as of " + one.law + ":\n";
    law = one.law;
    std::string head =
        finding.rule + (finding.element.empty() ? "" : " at " + finding.element) + ": " + finding.outcome;
    if (!finding.would_be.empty()) head += " (now it would be: " + finding.would_be + ")";
    out += report::wrapped("", head + "  (" + finding.at + ")", 2, 80);
    out += report::wrapped("  ", finding.title + ". " + finding.sentence, 2, 80);
    for (const auto& line : one.lines) {
      const std::string indent(2 + 2 * static_cast<std::size_t>(line.depth), ' ');
      out += report::wrapped(indent, line.text + "  = " + line.value + (line.at.empty() ? "" : "  [" + line.at + "]"),
                             indent.size() + 4, 80);
    }
    if (!finding.why.empty()) out += report::wrapped("  why      ", finding.why, 11, 80);
    if (!finding.often_misread.empty()) out += report::wrapped("  misread  ", finding.often_misread, 11, 80);
    out += '\n';
  }
  return out;
}

std::string json_of(const std::vector<Explained>& all) {
  auto list = nlohmann::ordered_json::array();
  for (const auto& one : all) {
    auto lines = nlohmann::ordered_json::array();
    for (const auto& line : one.lines)
      lines.push_back({{"depth", line.depth}, {"text", line.text}, {"value", line.value}, {"at", line.at}});
    const Finding& finding = one.finding;
    list.push_back({{"rule", finding.rule},
                    {"law-as-of", one.law},
                    {"element", finding.element},
                    {"outcome", finding.outcome},
                    {"would-be", finding.would_be},
                    {"title", finding.title},
                    {"sentence", finding.sentence},
                    {"at", finding.at},
                    {"lines", lines},
                    {"why", finding.why},
                    {"often-misread", finding.often_misread}});
  }
  return report::written({{"explanation", "headgate-explanation/1"}, {"decisions", list}});
}

std::vector<std::string> rule_ids(const Case& prepared) {
  std::vector<std::string> ids;
  for (const auto& of_place : prepared.books) {
    for (const auto& rule : of_place.front().book->rules) ids.push_back(rule.id);
  }
  return ids;
}

}  // namespace

int explain(World& world, const std::string& site, const std::string& rule, const Output& output) {
  const auto opened = open_case(world, site, rule_name(rule));
  if (!opened) return unusable(world);
  const Case& prepared = *opened;
  const auto all = explained(world, prepared, rule);
  if (all.empty()) {
    const auto ids = rule_ids(prepared);
    const auto near = text::nearest(rule_name(rule), ids);
    world.found.push_back(
        text::say("no-such-rule-here", {},
                  {rule, near ? "did you mean " + *near + "?" : "headgate check --all lists every rule"}));
    return unusable(world);
  }
  return write(world, output, output.format == Format::json ? json_of(all) : text_of(all)) ? exit_fine
                                                                                           : unusable(world);
}

}  // namespace headgate::app
