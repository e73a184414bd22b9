#include <nlohmann/json.hpp>

#include "report/report.hpp"

namespace headgate::report {

namespace {

using Json = nlohmann::ordered_json;

Json of(const CitationShown& citation) {
  return {{"document", citation.document}, {"title", citation.title}, {"section", citation.section},
          {"seen", citation.seen},         {"where", citation.where}, {"carried-from", citation.carried_from},
          {"doubt", citation.doubt}};
}

Json of(const FactShown& fact) {
  return {{"name", fact.name}, {"title", fact.title},     {"value", fact.value}, {"at", fact.at},
          {"how", fact.how},   {"assumed", fact.assumed}, {"depth", fact.depth}};
}

Json of(const LimitShown& limit) {
  return {{"name", limit.name},
          {"title", limit.title},
          {"value", limit.value},
          {"written", limit.written},
          {"layer", limit.layer},
          {"replaced", limit.replaced},
          {"citation", limit.citation.section.empty() ? limit.citation.document
                                                      : limit.citation.document + " " + limit.citation.section},
          {"seen", limit.citation.seen},
          {"depth", limit.depth}};
}

Json of(const ClauseShown& clause) {
  return {{"label", clause.label},
          {"part", clause.part},
          {"truth", clause.truth},
          {"at", clause.at},
          {"depth", clause.depth}};
}

Json of(const ToDecide& open) { return {{"fact", open.fact}, {"need", open.need}}; }

Json of(const Question& question) {
  return {{"fact", question.fact}, {"about", question.about}, {"ask", question.ask},         {"hint", question.hint},
          {"stop", question.stop}, {"cost", question.cost},   {"decides", question.decides}, {"rules", question.rules}};
}

Json of(const Difference& difference) {
  Json outcomes = Json::array();
  for (const auto& [place, outcome] : difference.outcomes) outcomes.push_back({{"place", place}, {"outcome", outcome}});
  return {{"rule", difference.rule}, {"element", difference.element}, {"outcomes", outcomes}};
}

Json of(const Finding& finding);

template <typename Items>
Json all(const Items& items) {
  Json list = Json::array();
  for (const auto& item : items) list.push_back(of(item));
  return list;
}

Json of(const Finding& finding) {
  return {{"rule", finding.rule},
          {"signed-by", finding.signed_by},
          {"topic", finding.topic},
          {"title", finding.title},
          {"outcome", finding.outcome},
          {"would-be", finding.would_be},
          {"level", finding.level},
          {"stage", finding.stage},
          {"stage-unknown", finding.stage_unknown},
          {"element", finding.element},
          {"sentence", finding.sentence},
          {"because", finding.because},
          {"due", finding.due},
          {"citations", all(finding.citations)},
          {"facts", all(finding.facts)},
          {"limits", all(finding.limits)},
          {"clauses", all(finding.clauses)},
          {"to-decide", all(finding.to_decide)},
          {"why", finding.why},
          {"fix", finding.fix},
          {"caution", finding.caution},
          {"often-misread", finding.often_misread},
          {"at", finding.at},
          {"assumed", finding.assumed},
          {"unfinished", finding.unfinished}};
}

}  // namespace

std::string json(const Report& report) {
  Json totals = Json::object();
  for (std::size_t i = 0; i < outcome_names.size(); ++i) totals[outcome_names[i]] = report.totals[i];
  const Json out = {
      {"report", "headgate-report/1"},
      {"site",
       {{"name", report.site_name}, {"file", report.site_file}, {"stage", report.stage}, {"plan", report.plan}}},
      {"rulebook",
       {{"place", report.place},
        {"title", report.place_title},
        {"also", report.also},
        {"permit-applied-on", report.permit_applied_on},
        {"checked-on", report.checked_on}}},
      {"totals", totals},
      {"findings", all(report.findings)},
      {"differences", all(report.differences)},
      {"contradictions", report.contradictions},
      {"unfinished", report.unfinished},
      {"next", all(report.next)},
      {"closing", report.closing}};
  return written(out);
}

std::string written(const nlohmann::ordered_json& json) {
  return json.dump(2, ' ', true, nlohmann::json::error_handler_t::replace) + "\n";
}

}  // namespace headgate::report
