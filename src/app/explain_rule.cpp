// `headgate explain SITE RULE`: every clause and node with its value and place.
#include <fmt/format.h>

#include "app/commands.hpp"
#include "report/report.hpp"

namespace headgate::app {

namespace {

std::string rule_name(const std::string& asked) {
  const std::size_t slash = asked.find('/');
  return slash == std::string::npos ? asked : asked.substr(slash + 1);
}

void add_decision(const World& world, const evaluate::Judgement& judgement, const evaluate::Decision& decision,
                  std::string& out) {
  const explain::Context context{&world.sources, judgement.book, judgement.site};
  const Finding finding = explain::finding(context, judgement, decision);
  std::string head = finding.rule + (finding.element.empty() ? "" : " at " + finding.element) + ": " + finding.outcome;
  if (!finding.would_be.empty()) head += " (now it would be: " + finding.would_be + ")";
  out += report::wrapped("", head + "  (" + finding.at + ")", 2, 80);
  out += report::wrapped("  ", finding.title + ". " + finding.sentence, 2, 80);
  for (const auto& line : explain::lines(context, evaluate::explain(judgement, decision))) {
    const std::string indent(2 + 2 * static_cast<std::size_t>(line.depth), ' ');
    out += report::wrapped(indent, line.text + "  = " + line.value + (line.at.empty() ? "" : "  [" + line.at + "]"),
                           indent.size() + 4, 80);
  }
  if (!finding.why.empty()) out += report::wrapped("  why      ", finding.why, 11, 80);
  if (!finding.often_misread.empty()) out += report::wrapped("  misread  ", finding.often_misread, 11, 80);
  out += '\n';
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
  std::string out;
  for (const auto& authority : judge(prepared)) {
    for (const auto& judgement : authority.judgements) {
      if (authority.judgements.size() > 1)
        out += "Law as of " + (judgement.book->day ? quantity::show_date(*judgement.book->day) : "any day") + ":\n";
      if (rule.find('/') != std::string::npos && rule.substr(0, rule.find('/')) != judgement.book->place) continue;
      for (const auto& decision : judgement.decisions) add_decision(world, judgement, decision, out);
    }
  }
  if (out.empty()) {
    const auto ids = rule_ids(prepared);
    const auto near = text::nearest(rule_name(rule), ids);
    world.found.push_back(
        text::say("no-such-rule-here", {},
                  {rule, near ? "did you mean " + *near + "?" : "headgate check --all lists every rule"}));
    return unusable(world);
  }
  return write(world, output, out) ? exit_fine : unusable(world);
}

}  // namespace headgate::app
