#include "report/checklist.hpp"

#include <algorithm>
#include <map>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "report/report.hpp"

namespace headgate::report {

namespace {

using Json = nlohmann::ordered_json;

bool applies(const Finding& finding) {
  return finding.outcome != "not applicable" && finding.outcome != "not in force";
}

const char* mark_of(const Finding& finding) {
  if (finding.outcome == "pass" || finding.outcome == "accepted") return "[x]";
  if (finding.outcome == "fail" || finding.outcome == "later") return "[ ]";
  return finding.outcome == "undecided" ? "[?]" : "[!]";
}

// The findings of a report sorted onto the sheet.
struct Sorted {
  std::vector<const Finding*> now, earlier, next, duties;
  std::size_t waiting = 0;  // rules that wait for the rest of a list
  std::string stage, stage_title, next_title;
};

std::size_t place_of(const ChecklistSheet& sheet, const std::string& stage) {
  const auto found =
      std::find_if(sheet.stages.begin(), sheet.stages.end(), [&](const auto& one) { return one.first == stage; });
  return static_cast<std::size_t>(found - sheet.stages.begin());
}

void by_topic(std::vector<const Finding*>& findings) {
  std::stable_sort(findings.begin(), findings.end(),
                   [](const Finding* a, const Finding* b) { return a->topic < b->topic; });
}

Sorted sorted(const Report& report, const ChecklistSheet& sheet) {
  Sorted out;
  out.stage = report.stage;
  const std::size_t here = place_of(sheet, report.stage);
  if (here < sheet.stages.size()) out.stage_title = sheet.stages[here].second;
  std::size_t next = sheet.stages.size();
  for (const auto& finding : report.findings) {
    const std::size_t at = place_of(sheet, finding.stage);
    if (applies(finding) && at > here) next = std::min(next, at);
  }
  if (next < sheet.stages.size()) out.next_title = sheet.stages[next].second;
  for (const auto& finding : report.findings) {
    if (!applies(finding)) continue;
    const std::size_t at = place_of(sheet, finding.stage);
    if (finding.unfinished) {
      out.waiting += at <= here ? 1 : 0;
      continue;
    }
    const bool shut = finding.outcome == "pass" || finding.outcome == "accepted";
    if (at <= here && finding.outcome == "later")
      out.duties.push_back(&finding);
    else if (at == here)
      out.now.push_back(&finding);
    else if (at < here && !shut)
      out.earlier.push_back(&finding);
    else if (at == next)
      out.next.push_back(&finding);
  }
  // Two authorities that ask the same of the same part are one line.
  const auto once = [](std::vector<const Finding*>& findings) {
    std::vector<const Finding*> kept;
    for (const auto* finding : findings) {
      const auto same = [&](const Finding* other) {
        return other->title == finding->title && other->element == finding->element &&
               std::string(mark_of(*other)) == mark_of(*finding);
      };
      if (std::none_of(kept.begin(), kept.end(), same)) kept.push_back(finding);
    }
    findings = kept;
  };
  for (auto* list : {&out.now, &out.earlier, &out.next, &out.duties}) once(*list);
  by_topic(out.now);
  by_topic(out.earlier);
  by_topic(out.next);
  return out;
}

class Sheet {
 public:
  Sheet(const Report& report, const ChecklistSheet& sheet, std::size_t width)
      : report_(report), sheet_(sheet), width_(width), sorted_(sorted(report, sheet)) {}

  std::string write() {
    head();
    section("WHAT THE INSPECTOR LOOKS FOR", sorted_.now, true);
    if (sorted_.now.empty()) out_ += "Nothing binds from this stage.\n\n";
    section("STILL OPEN FROM EARLIER STAGES", sorted_.earlier, true);
    in_hand();
    duties();
    section(sorted_.next_title.empty() ? "" : "WHAT COMES NEXT: " + sorted_.next_title, sorted_.next, false);
    out_ += wrapped("", report_.closing, 0, width_);
    return out_;
  }

 private:
  void head() {
    const std::string stage = sorted_.stage_title.empty() ? sorted_.stage : sorted_.stage_title;
    out_ += wrapped("CHECKLIST  ", stage, 11, width_);
    out_ += wrapped("  site     ", report_.site_name + " (" + report_.site_file + ")", 11, width_);
    std::string law = report_.place_title + " (" + report_.place + ")";
    for (const auto& also : report_.also) law += ", and beside it " + also;
    out_ += wrapped("  law      ", law, 11, width_);
    const auto count = [&](const char* mark) {
      const auto is = [&](const Finding* one) { return std::string(mark_of(*one)) == mark; };
      return std::count_if(sorted_.now.begin(), sorted_.now.end(), is) +
             std::count_if(sorted_.earlier.begin(), sorted_.earlier.end(), is);
    };
    const auto wrong = count("[ ]");
    const auto open = count("[?]");
    const auto mind = count("[!]");
    std::string ready = "nothing to put right and nothing to find out";
    if (wrong + open > 0) ready = fmt::format("{} to put right, {} to find out", wrong, open);
    if (mind > 0) ready += fmt::format(", {} to mind", mind);
    out_ += wrapped("  so far   ", ready, 11, width_);
    if (sorted_.waiting > 0) {
      std::string lists;
      for (const auto& list : report_.unfinished) lists += (lists.empty() ? "" : ", ") + list;
      out_ += wrapped("  waiting  ",
                      fmt::format("{} more rule{} for the rest of what is not written down to its end: {}",
                                  sorted_.waiting, sorted_.waiting == 1 ? " waits" : "s wait", lists),
                      11, width_);
    }
    out_ += wrapped("  marks    ", "[x] shown to be met  [ ] to put right  [?] to find out  [!] to mind", 11, width_);
    out_ += '\n';
  }

  void section(const std::string& title, const std::vector<const Finding*>& findings, bool in_full) {
    if (findings.empty()) return;
    out_ += title + '\n';
    std::string topic;
    for (const auto* finding : findings) {
      if (finding->topic != topic) out_ += " " + finding->topic + '\n';
      topic = finding->topic;
      item(*finding, in_full);
    }
    out_ += '\n';
  }

  void item(const Finding& finding, bool in_full) {
    std::string words = finding.title + ".";
    if (!finding.element.empty()) words += "  (" + finding.element + ")";
    if (finding.assumed) words += "  Rests on an assumed value.";
    out_ += wrapped(in_full ? fmt::format("  {} ", mark_of(finding)) : "  - ", words, in_full ? 6 : 4, width_);
    if (!in_full) return;
    const std::string mark = mark_of(finding);
    if (mark == "[ ]" || mark == "[!]") {
      out_ += wrapped("      ", finding.sentence, 6, width_);
      out_ += wrapped("      ", finding.fix.empty() ? "" : "To do: " + finding.fix, 6, width_);
    }
    if (mark == "[?]") {
      for (const auto& open : finding.to_decide) out_ += wrapped("      ", open.need, 6, width_);
    }
    if (mark != "[x]" && !finding.caution.empty()) out_ += wrapped("      ", "Caution: " + finding.caution, 6, width_);
  }

  // What is asked of the findings on this sheet, by how it is found out.
  std::vector<std::string> asked(const char* cost) const {
    std::vector<std::string> asks;
    const auto of_sheet = [&](const Question& question) {
      for (const auto* list : {&sorted_.now, &sorted_.earlier}) {
        for (const auto* finding : *list) {
          if (std::find(question.rules.begin(), question.rules.end(), finding->rule) != question.rules.end())
            return true;
        }
      }
      return false;
    };
    for (const auto& question : report_.next) {
      if (question.cost == cost && of_sheet(question))
        asks.push_back(question.ask + (question.about.empty() ? "" : "  (" + question.about + ")"));
    }
    return asks;
  }

  void lines(const char* head, const std::vector<std::string>& all) {
    for (const auto& one : all) {
      out_ += wrapped(fmt::format("  {:<9}", &one == &all.front() ? head : ""), one, 11, width_);
    }
  }

  void in_hand() {
    const auto measure = asked("measure");
    const auto dig = asked("dig");
    const bool on_file = std::any_of(sheet_.on_file.begin(), sheet_.on_file.end(),
                                     [](const auto& list) { return !list.second.empty(); });
    if (!on_file && measure.empty() && dig.empty()) return;
    out_ += "HAVE IN HAND\n";
    for (const auto& [list, items] : sheet_.on_file) lines(list.c_str(), items);
    lines("measure", measure);
    lines("dig", dig);
    out_ += '\n';
  }

  void duties() {
    if (sorted_.duties.empty()) return;
    out_ += "NOT DUE YET\n";
    for (const auto* finding : sorted_.duties) {
      std::string words = finding->title + ".";
      if (!finding->element.empty()) words += "  (" + finding->element + ")";
      out_ += wrapped("  - ", (finding->due.empty() ? "" : "by " + finding->due + ": ") + words, 4, width_);
    }
    out_ += '\n';
  }

  const Report& report_;
  const ChecklistSheet& sheet_;
  std::size_t width_;
  Sorted sorted_;
  std::string out_;
};

Json items(const std::vector<const Finding*>& findings) {
  Json list = Json::array();
  for (const auto* finding : findings) {
    Json open = Json::array();
    for (const auto& one : finding->to_decide) open.push_back({{"fact", one.fact}, {"need", one.need}});
    list.push_back({{"rule", finding->rule},
                    {"topic", finding->topic},
                    {"title", finding->title},
                    {"element", finding->element},
                    {"outcome", finding->outcome},
                    {"assumed", finding->assumed},
                    {"sentence", finding->sentence},
                    {"due", finding->due},
                    {"to-decide", open},
                    {"fix", finding->fix},
                    {"caution", finding->caution}});
  }
  return list;
}

}  // namespace

std::string checklist(const Report& report, const ChecklistSheet& sheet, std::size_t width) {
  return Sheet(report, sheet, width).write();
}

std::string checklist_json(const Report& report, const ChecklistSheet& sheet) {
  const Sorted of = sorted(report, sheet);
  Json out{{"checklist", "headgate-checklist/1"},
           {"site", {{"name", report.site_name}, {"file", report.site_file}}},
           {"place", report.place},
           {"stage", of.stage},
           {"now", items(of.now)},
           {"earlier", items(of.earlier)}};
  for (const auto& [list, items] : sheet.on_file) out[list] = items;
  out.update({{"waiting", of.waiting},
              {"not-due-yet", items(of.duties)},
              {"next-stage", of.next_title},
              {"next", items(of.next)},
              {"closing", report.closing}});
  return written(out);
}

}  // namespace headgate::report
