// Hand-made reports, and the schema they must keep to.
#pragma once

#include <fstream>
#include <string>
#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validation_results.hpp>
#include <valijson/validator.hpp>

#include <nlohmann/json.hpp>

#include "report/report.hpp"

namespace headgate::test {

// What the schema of include/headgate has against it; "" when nothing.
inline std::string against_schema(const std::string& report) {
  using valijson::adapters::NlohmannJsonAdapter;
  const auto document = nlohmann::json::parse(report, nullptr, false);
  if (document.is_discarded()) return "no JSON";
  std::ifstream file(HEADGATE_SOURCE_DIR "/include/headgate/report.schema.json");
  const auto written = nlohmann::json::parse(file, nullptr, false);
  if (written.is_discarded()) return "the schema is no JSON";
  valijson::Schema schema;
  valijson::SchemaParser().populateSchema(NlohmannJsonAdapter(written), schema);
  valijson::ValidationResults results;
  if (valijson::Validator().validate(schema, NlohmannJsonAdapter(document), &results)) return "";
  std::string said;
  for (const auto& error : results) {
    for (const auto& part : error.context) said += part;
    said += ": " + error.description + "\n";
  }
  return said;
}

inline Finding small_finding() {
  Finding finding;
  finding.rule = "mill-town/reducer-fitted";
  finding.topic = "pressure";
  finding.title = "A reducer is fitted";
  finding.outcome = "fail";
  finding.level = "must";
  finding.stage = "entry";
  finding.sentence = "The line has no pressure reducing valve.";
  finding.because = "Highest static pressure is 86 psi, above 70 psi (highest static pressure).";
  finding.citations = {{"code-x", "Code X, 2018", "604.8", "secondary", "a forum", "", ""}};
  finding.facts = {
      {"pressure.highest-static", "highest static pressure", "86 psi", "quay.yaml:9:28", "gauge, photo 3", false}};
  LimitShown limit;
  limit.name = "static-max";
  limit.title = "Highest static pressure";
  limit.value = "70 psi";
  limit.layer = "mill-town, Ordinance 5, since 2026-07-01";
  limit.replaced = {"80 psi (code-x 604.8)"};
  limit.citation = {"town-code", "Town Code", "52", "adopted text", "", "", ""};
  finding.limits = {limit};
  finding.clauses = {{"", "when", "yes", "rules/pressure.yaml:31:14", 0}};
  finding.clauses[0].label = "pressure.highest-static > limit.static-max";
  finding.why = "High pressure wears valves.";
  finding.fix = "Fit a valve at the entry.";
  finding.caution = "Drain before cutting.";
  finding.often_misread = "At the limit itself none is asked for.";
  finding.at = "rules/pressure.yaml:29:3";
  return finding;
}

inline Report small_report() {
  Report report;
  report.site_name = "Quay House";
  report.site_file = "quay.yaml";
  report.stage = "entry";
  report.place = "mill-town";
  report.place_title = "Mill Town";
  report.checked_on = "2026-10-02";
  report.closing = "A licensed person decides.";
  return report;
}

}  // namespace headgate::test
