// `headgate worksheet SITE`: every computed value as one formula with its numbers and source, and the pressure along
// the line as a column that adds up.
#include "explain/worksheet.hpp"

#include <algorithm>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "app/amount.hpp"
#include "app/commands.hpp"
#include "app/sizing.hpp"
#include "explain/collect.hpp"
#include "report/report.hpp"

namespace headgate::app {

namespace {

using explain::Run;
using explain::Worksheet;
using explain::WorksheetLine;
using Json = nlohmann::ordered_json;

constexpr std::size_t width = 80;

// One or two columns of figures that add up: where a value is known only within bounds, both are followed.
class RunTable {
 public:
  explicit RunTable(std::vector<const Run*> columns) : columns_(std::move(columns)), elements_(elements()) {}

  std::string text() {
    const Run& run = *columns_.front();
    out_ = explain::capital(run.title) + " along the line, in " + run.unit + '\n';
    if (columns_.size() > 1) row("", "", [](const Run& of) { return of.end; });
    row("where the line begins", "", [](const Run& of) { return of.start; });
    for (const auto& element : elements_) step_rows(element);
    return out_ + '\n';
  }

 private:
  static const explain::RunStep* step_of(const Run& run, const std::string& element) {
    for (const auto& step : run.steps) {
      if (step.element == element) return &step;
    }
    return nullptr;
  }

  static std::string term_of(const Run& run, const std::string& element, const std::string& title) {
    const auto* step = step_of(run, element);
    if (step == nullptr) return "";
    for (const auto& [shown, of] : step->terms) {
      if (of == title) return shown;
    }
    return "";
  }

  // The elements of all columns, in the order of the line: a column leaves out what does not change it.
  std::vector<std::string> elements() const {
    std::vector<std::string> names;
    for (const Run* run : columns_) {
      std::size_t at = 0;
      for (const auto& step : run->steps) {
        const auto known = std::find(names.begin(), names.end(), step.element);
        if (known != names.end())
          at = static_cast<std::size_t>(known - names.begin()) + 1;
        else
          names.insert(names.begin() + static_cast<std::ptrdiff_t>(at++), step.element);
      }
    }
    return names;
  }

  void step_rows(const std::string& element) {
    std::vector<std::string> titles;
    std::string reset;
    for (const Run* run : columns_) {
      const auto* step = step_of(*run, element);
      if (step == nullptr) continue;
      reset = step->reset;
      for (const auto& term : step->terms) {
        if (std::find(titles.begin(), titles.end(), term.second) == titles.end()) titles.push_back(term.second);
      }
    }
    std::string head = element;
    if (!reset.empty()) {
      out_ += report::wrapped(fmt::format("  {:<28}", head), "set anew: " + reset, 30, width);
      head.clear();
    }
    for (const auto& title : titles) {
      row(head, title, [&](const Run& of) { return term_of(of, element, title); });
      head.clear();
    }
    row(head, "is left", [&](const Run& of) { return left_after(of, element); });
  }

  // A column that an element does not change keeps what it had.
  std::string left_after(const Run& of, const std::string& element) const {
    std::string left = of.start;
    for (const auto& name : elements_) {
      if (const auto* step = step_of(of, name)) left = step->after;
      if (name == element) break;
    }
    return left;
  }

  template <typename Cell>
  void row(const std::string& element, const std::string& title, Cell cell) {
    std::string line = fmt::format("  {:<28}{:<26}", element, title);
    for (const Run* run : columns_) line += fmt::format("{:>11}", cell(*run));
    line.resize(line.find_last_not_of(' ') + 1);
    out_ += line + '\n';
  }

  std::vector<const Run*> columns_;
  std::vector<std::string> elements_;
  std::string out_;
};

void add_runs(const std::vector<Run>& runs, std::string& out) {
  for (std::size_t i = 0; i < runs.size(); ++i) {
    std::vector<const Run*> columns = {&runs[i]};
    if (i + 1 < runs.size() && runs[i + 1].title == runs[i].title) columns.push_back(&runs[++i]);
    out += RunTable(columns).text();
  }
}

// Sources by number, listed at the end: most stand behind many lines.
class Footnotes {
 public:
  std::string numbers(const std::vector<std::string>& sources) {
    std::string words;
    for (const auto& source : sources) {
      auto at = std::find(all_.begin(), all_.end(), source);
      if (at == all_.end()) at = all_.insert(at, source);
      words += (words.empty() ? "" : ", ") + std::to_string(at - all_.begin() + 1);
    }
    return words;
  }
  std::string text() const {
    std::string out = all_.empty() ? "" : "Sources\n";
    for (std::size_t i = 0; i < all_.size(); ++i) {
      out += report::wrapped(fmt::format("  [{}] ", i + 1), all_[i], 7, width);
    }
    return out + '\n';
  }

 private:
  std::vector<std::string> all_;
};

void add_line(const WorksheetLine& line, Footnotes& notes, std::string& out) {
  std::string words = line.formula.empty() ? line.value : line.formula + " = " + line.value;
  if (!line.stated.empty()) words += "; the site states " + line.stated + ", which counts";
  if (!line.sources.empty()) words += "  [" + notes.numbers(line.sources) + "]";
  out += report::wrapped(fmt::format("  {} = ", line.name.substr(line.name.find('.') + 1)), words, 6, width);
}

// What stands in a run already, what is only another name of a value, and a plain yes or no has no line of its own.
bool shown_as_line(const WorksheetLine& line) {
  if (!line.is_number && (line.value == "yes" || line.value == "no")) return false;
  return !line.running && (!line.formula.empty() || !line.is_number || !line.stated.empty() || !line.sources.empty());
}

void add_lines(const Worksheet& sheet, Footnotes& notes, std::string& out) {
  std::string above;
  for (const auto& line : sheet.lines) {
    if (!shown_as_line(line)) continue;
    const std::string head = line.element.empty() ? line.name.substr(0, line.name.find('.')) : line.element;
    if (head != above) out += (above.empty() ? "" : "\n") + head + '\n';
    above = head;
    add_line(line, notes, out);
  }
  out += '\n';
}

void add_missing(const Worksheet& sheet, std::string& out) {
  if (sheet.missing.empty()) return;
  constexpr std::size_t most = 4;
  out += "Not computed\n";
  for (const auto& each : sheet.missing) {
    std::vector<std::string> values = each.values;
    if (values.size() > most) values.resize(most);
    std::string words = explain::sentence(each.reason) + " " + explain::joined(values, ", ");
    if (each.values.size() > most) words += fmt::format(" and {} more", each.values.size() - most);
    out += report::wrapped("  ", words, 6, width);
  }
  out += '\n';
}

Json as_json(const WorksheetLine& line) {
  Json out{{"name", line.name}, {"element", line.element}, {"title", line.title}};
  if (line.is_number) {
    add_amount(line.number, line.unit, out);
  } else {
    out["value"] = line.value;
    out["unit"] = "";
  }
  out["formula"] = line.formula;
  out["citation"] = explain::joined(line.sources, "; ");
  if (!line.stated.empty()) out["stated"] = line.stated;
  return out;
}

Json as_json(const Run& run) {
  Json steps = Json::array();
  for (const auto& step : run.steps) {
    Json terms = Json::array();
    for (const auto& term : step.terms) terms.push_back({{"shown", term.first}, {"title", term.second}});
    steps.push_back({{"element", step.element}, {"terms", terms}, {"reset", step.reset}, {"after", step.after}});
  }
  return {{"title", run.title}, {"end", run.end}, {"unit", run.unit}, {"start", run.start}, {"steps", steps}};
}

Json as_json(const Worksheet& sheet) {
  Json lines = Json::array();
  for (const auto& line : sheet.lines) lines.push_back(as_json(line));
  Json runs = Json::array();
  for (const auto& run : sheet.runs) runs.push_back(as_json(run));
  Json missing = Json::array();
  for (const auto& each : sheet.missing) missing.push_back({{"reason", each.reason}, {"values", each.values}});
  return {{"lines", lines}, {"runs", runs}, {"missing", missing}};
}

// The rulebooks asked for by name, or else the site's own place: a second authority seldom has figures of its own.
std::vector<Case::Seen> seen_of(const World& world, const Case& prepared) {
  std::vector<Case::Seen> seen;
  for (const auto& of_place : prepared.books) {
    if (seen.empty() || world.options.places.size() > 1) seen.push_back(of_place.back());
  }
  return seen;
}

}  // namespace

int worksheet(World& world, const std::string& site, bool size, const Output& output) {
  const auto opened = open_case(world, site);
  if (!opened) return unusable(world);
  const Case& prepared = *opened;
  std::string out;
  Json places = Json::array();
  for (const auto& seen : seen_of(world, prepared)) {
    const explain::Context context{&world.sources, seen.book, seen.site};
    const Worksheet sheet = explain::worksheet(context, evaluate::work_out(*seen.book, *seen.site));
    out += report::wrapped("", fmt::format("Worksheet of {}, by {} ({})", site, seen.book->title, seen.book->place), 2,
                           width) +
           "\n";
    Footnotes notes;
    add_runs(sheet.runs, out);
    add_lines(sheet, notes, out);
    add_missing(sheet, out);
    out += notes.text();
    Json of_place = as_json(sheet);
    of_place["place"] = seen.book->place;
    places.push_back(std::move(of_place));
  }
  Json json{{"worksheet", "headgate-worksheet/1"}, {"site", site}};
  if (!places.empty()) {
    for (const char* key : {"place", "lines", "runs", "missing"}) json[key] = places[0][key];
    if (places.size() > 1) json["places"] = places;
  }
  int status = exit_fine;
  if (size) {
    const Sizing sizing = size_up(world, prepared);
    if (!world.sound()) return unusable(world);
    out += words_of(sizing);
    json["sizes"] = json_of(sizing);
    status = sizing.pipe.empty() ? exit_undecided : exit_fine;
  }
  return write(world, output, output.format == Format::json ? report::written(json) : out) ? status : unusable(world);
}

}  // namespace headgate::app
