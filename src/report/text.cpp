#include <algorithm>
#include <set>

#include <fmt/format.h>

#include "report/report.hpp"

namespace headgate::report {

namespace {

constexpr std::size_t label_width = 11;  // "  because  "

std::string upper(std::string word) {
  for (char& c : word) c = c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
  return word;
}

class Writer {
 public:
  Writer(const Report& report, const TextOptions& options) : report_(report), options_(options) {}

  std::string write() {
    head();
    for (const auto& finding : report_.findings) {
      if (acts(finding)) finding.outcome == "later" ? later(finding) : full(finding);
    }
    waiting();
    side_by_side();
    in_brief();
    foot();
    return out_;
  }

 private:
  static bool acts(const Finding& finding) {
    return finding.outcome == "fail" || finding.outcome == "advisory" || finding.outcome == "accepted" ||
           (finding.outcome == "later" && finding.would_be != "pass" && finding.would_be != "undecided");
  }

  void line(std::string_view label, const std::string& words) {
    if (words.empty()) return;
    out_ += wrapped(fmt::format("  {:<{}}", label, label_width - 2), words, label_width, options_.width);
  }

  void head() {
    out_ += wrapped("", report_.site_name.empty() ? "(a site without a name)" : report_.site_name, 0, options_.width);
    line("site", report_.site_file + (report_.stage.empty() ? ", stage not stated" : ", stage " + report_.stage));
    std::string law = report_.place_title.empty() ? report_.place : report_.place_title + " (" + report_.place + ")";
    for (const auto& also : report_.also) law += ", and beside it " + also;
    line("law", law);
    std::string days = report_.permit_applied_on.empty() ? "permit application not dated"
                                                         : "permit applied for " + report_.permit_applied_on;
    if (!report_.checked_on.empty()) days += "; checked on " + report_.checked_on;
    line("days", days);
    line("answer", answer());
    out_ += '\n';
  }

  std::string answer() const {
    const auto fails = report_.totals[1];
    const auto open = report_.totals[3];
    if (fails == 0 && open == 0)
      return report_.plan ? "As planned, nothing fails and nothing is left undecided."
                          : "Nothing fails and nothing is left undecided.";
    std::string words =
        fails == 0 ? "Nothing fails" : fmt::format("{} {}", fails, fails == 1 ? "finding fails" : "findings fail");
    if (open > 0) words += fmt::format(", {} {} undecided", open, open == 1 ? "is" : "are");
    return words + "." + waiting_for_lists();
  }

  std::string waiting_for_lists() const {
    const auto rest = std::count_if(report_.findings.begin(), report_.findings.end(),
                                    [](const Finding& one) { return one.unfinished; });
    if (rest == 0) return "";
    return fmt::format(" {} rule{} for lists that are not written down, or not to their end.", rest,
                       rest == 1 ? " waits" : "s wait");
  }

  // What binds later is no alarm: its title, and what would be found now.
  void later(const Finding& finding) {
    heading(finding);
    line("", finding.title + ".");
    line("now", finding.sentence);
    own_limits(finding);
    line("due", finding.due);
    if (finding.assumed) line("note", "rests on an assumed value");
    out_ += '\n';
  }

  void heading(const Finding& finding) {
    std::string word = upper(finding.outcome);
    if (finding.outcome == "later") word += " (" + finding.would_be + ")";
    std::string words = finding.rule;
    if (!finding.element.empty()) words += " at " + finding.element;
    for (const auto& also : finding.signed_by) words += ", " + also + " too";
    words += "  (" + finding.topic + (finding.stage.empty() ? "" : ", binds from " + finding.stage) +
             (finding.level == "must" ? "" : ", a " + finding.level) + ")";
    out_ += wrapped(word + "  ", words, label_width, options_.width);
  }

  static std::string seen_words(const CitationShown& citation) {
    if (citation.document == "practice") return "common practice, no published source";
    std::string words = citation.document + " " + citation.section;
    if (!citation.title.empty()) words += " (" + citation.title + ")";
    words += ", seen: " + citation.seen;
    if (!citation.where.empty()) words += " (" + citation.where + ")";
    if (!citation.carried_from.empty()) words += ", carried from " + citation.carried_from;
    if (!citation.doubt.empty()) words += "; doubtful: " + citation.doubt;
    return words;
  }

  void full(const Finding& finding) {
    heading(finding);
    line("", finding.title + ".");
    line("found", finding.sentence);
    if (!finding.because.empty() && finding.level != "note") line("because", finding.because);
    for (const auto& fact : finding.facts) {
      if (fact.depth == 0) fact_line(fact);
    }
    own_limits(finding);
    computed_from(finding);
    for (const auto& citation : finding.citations) source_line(finding, citation);
    const bool known = previous_ != nullptr && same_teaching(*previous_, finding);
    line("why", known ? "" : finding.why);
    line("fix", known && !finding.fix.empty() ? "as above" : finding.fix);
    line("caution", finding.caution);
    if (!known && !finding.often_misread.empty()) line("note", "often misread: " + finding.often_misread);
    previous_ = &finding;
    if (finding.assumed) line("note", "rests on an assumed value");
    if (finding.stage_unknown) line("note", "the stage is not stated");
    out_ += '\n';
  }

  // The same rule at the next element, or of the next authority.
  static bool same_teaching(const Finding& a, const Finding& b) {
    return a.title == b.title && a.why == b.why && a.fix == b.fix && a.often_misread == b.often_misread;
  }

  // Once is enough for a section that a limit line has named already.
  void source_line(const Finding& finding, const CitationShown& citation) {
    const std::string words = seen_words(citation);
    for (const auto& limit : finding.limits) {
      if (seen_words(limit.citation) == words) return;
    }
    line("source", words);
  }

  void fact_line(const FactShown& fact) {
    std::string words = fact.name + " = " + fact.value;
    if (!fact.how.empty()) words += ", " + fact.how;
    if (!fact.at.empty()) words += "  (" + fact.at + ")";
    line("fact", words);
  }

  // What stands behind computed facts, in brief: the worksheet shows each formula.
  void computed_from(const Finding& finding) {
    std::string words;
    std::set<std::string> said;
    const auto say = [&](const std::string& part) {
      if (said.insert(part).second) words += (words.empty() ? "" : "; ") + part;
    };
    for (const auto& fact : finding.facts) {
      if (fact.depth > 0 && !fact.at.empty()) say(fact.name + " " + fact.value);
    }
    for (const auto& limit : finding.limits) {
      if (limit.depth == 0 || limit.citation.document.empty()) continue;
      const bool practice = limit.citation.document == "practice";
      say(limit.name + " of " +
          (practice ? "common practice" : limit.citation.document + " " + limit.citation.section));
    }
    line("from", words);
  }

  void own_limits(const Finding& finding) {
    for (const auto& limit : finding.limits) {
      if (limit.depth == 0) limit_lines(limit);
    }
  }

  void limit_lines(const LimitShown& limit) {
    std::string words = limit.name + " = " + limit.value;
    if (!limit.written.empty()) words += " (" + limit.written + ")";
    if (!limit.layer.empty()) words += ", set by " + limit.layer;
    if (!limit.citation.document.empty()) words += ": " + seen_words(limit.citation);
    if (limit.citation.document.empty() && !limit.citation.doubt.empty())
      words += "; doubtful: " + limit.citation.doubt;  // of a paper
    line("limit", words);
    std::string replaced;
    for (const auto& one : limit.replaced) replaced += (replaced.empty() ? "replaces " : ", ") + one;
    line("", replaced);
  }

  static std::string cost_words(const std::string& cost) {
    if (cost == "know") return ", known beforehand or asked for";
    if (cost == "look") return ", found by looking";
    if (cost == "measure") return ", found by measuring or trying";
    return cost == "dig" ? ", seen only when the ground is open" : "";
  }

  // Undecided findings by the question that would settle them.
  void waiting() {
    for (const auto& question : report_.next) {
      const std::size_t rules = question.rules.size();
      std::string head =
          fmt::format("{} {} wait{} on: {}", question.decides, question.decides == 1 ? "finding" : "findings",
                      question.decides == 1 ? "s" : "", question.ask);
      if (!question.about.empty()) head += "  (" + question.about + ")";
      out_ += wrapped("UNDECIDED  ", head, label_width, options_.width);
      line("state", question.fact + cost_words(question.cost));
      line("hint", question.hint);
      constexpr std::size_t most = 6;
      std::string names;
      for (std::size_t i = 0; i < std::min(rules, most); ++i) names += (i == 0 ? "" : ", ") + question.rules[i];
      if (rules > most) names += fmt::format(" and {} others", rules - most);
      line(rules == 1 ? "rule" : "rules", names);
      out_ += '\n';
    }
    if (report_.unfinished.empty()) return;
    std::string names;
    for (const auto& list : report_.unfinished) names += (names.empty() ? "" : ", ") + list;
    out_ +=
        wrapped("UNFINISHED  ", names + ": not written down to the end, so nothing is concluded from what is not there",
                label_width, options_.width);
    out_ += '\n';
  }

  // Places judged side by side: only where they do not agree.
  void side_by_side() {
    for (const auto& pair : report_.contradictions) {
      out_ += wrapped("CONTRADICTION  ", pair, label_width, options_.width);
      line("ask", "both authorities which of the two binds, before work begins");
      out_ += '\n';
    }
    if (report_.differences.empty()) return;
    out_ += "WHERE THE PLACES DIFFER\n";
    for (const auto& difference : report_.differences) {
      std::string words;
      for (const auto& [place, outcome] : difference.outcomes)
        words += (words.empty() ? "" : "; ") + place + " " + outcome;
      const std::string at = difference.element.empty() ? "" : " at " + difference.element;
      out_ += wrapped("  " + difference.rule + at + ": ", words, 6, options_.width);
    }
    out_ += '\n';
  }

  void in_brief() {
    if (!options_.all) return;
    for (const auto& finding : report_.findings) {
      if (acts(finding)) continue;
      const std::string word = finding.outcome == "pass" && report_.plan ? "passes as planned" : finding.outcome;
      std::string words = finding.rule;
      if (!finding.element.empty()) words += " at " + finding.element;
      words += ": " + (finding.sentence.empty() ? finding.title + "." : finding.sentence);
      if (finding.assumed) words += " Rests on an assumed value.";
      out_ += wrapped(upper(word) + "  ", words, label_width, options_.width);
    }
    out_ += '\n';
  }

  void foot() {
    std::string totals;
    for (std::size_t i = 0; i < report_.totals.size(); ++i) {
      if (report_.totals[i] == 0) continue;
      totals += (totals.empty() ? "" : ", ") + fmt::format("{} {}", report_.totals[i], outcome_names[i]);
    }
    out_ += wrapped("", (totals.empty() ? "No findings" : totals) + ".", 0, options_.width);
    out_ += wrapped("", report_.closing, 0, options_.width);
  }

  const Report& report_;
  const TextOptions& options_;
  const Finding* previous_ = nullptr;  // the one written out in full before
  std::string out_;
};

}  // namespace

std::string text(const Report& report, const TextOptions& options) { return Writer(report, options).write(); }

}  // namespace headgate::report
