// `headgate checklist SITE --stage S`: what one stage asks for, as a sheet to print.
#include "report/checklist.hpp"

#include <algorithm>

#include "app/commands.hpp"
#include "report/report.hpp"

namespace headgate::app {

namespace {

// The elements of one of the site's own lists in a few words: kind, then whatever text or day names each.
std::vector<std::string> elements_of(const Case& prepared, vocabulary::FieldId list) {
  std::vector<std::string> words;
  const auto& vocabulary = prepared.law->vocabulary;
  const auto& site = prepared.sites.front();
  for (const auto element : site.lists[site.slot(0, list).value.id].items) {
    const auto& shape = vocabulary.shapes[site.elements[element].shape];
    std::string line = shape.title;
    for (std::size_t i = 0; i < shape.fields.size(); ++i) {
      const auto& slot = site.slot(element, static_cast<vocabulary::FieldId>(i));
      const auto kind = shape.fields[i].type.kind;
      const bool names = kind == vocabulary::Type::Kind::text || kind == vocabulary::Type::Kind::date ||
                         kind == vocabulary::Type::Kind::choice;
      if (!names || slot.origin == site::Origin::left_out || slot.value.presence != vocabulary::Presence::present)
        continue;
      line += (line == shape.title ? ": " : ", ") + vocabulary::show(slot.value, shape.fields[i].type, vocabulary);
    }
    words.push_back(std::move(line));
  }
  return words;
}

}  // namespace

int checklist(World& world, const std::string& site, const Output& output) {
  const auto opened = open_case(world, site);
  if (!opened) return unusable(world);
  const Case& prepared = *opened;
  report::ChecklistSheet sheet;
  for (const auto& stage : prepared.law->vocabulary.stages) sheet.stages.emplace_back(stage.name, stage.title);
  const auto& fields = prepared.law->vocabulary.shapes[vocabulary::root_shape].fields;
  for (vocabulary::FieldId field = 0; field < fields.size(); ++field) {
    if (fields[field].on_file) sheet.on_file.emplace_back(fields[field].name, elements_of(prepared, field));
  }
  const Report report = explain::report(world.sources, prepared.sites.front(), judge(prepared), site);
  if (report.stage.empty()) {
    std::string names;
    for (const auto& stage : sheet.stages) names += (names.empty() ? "" : ", ") + stage.first;
    world.found.push_back(text::say("no-stage", prepared.trees.front().range, {names}));
    return unusable(world);
  }
  const std::string text =
      output.format == Format::json ? report::checklist_json(report, sheet) : report::checklist(report, sheet, 80);
  return write(world, output, text) ? status(report) : unusable(world);
}

}  // namespace headgate::app
