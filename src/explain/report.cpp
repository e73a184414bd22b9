// All findings about one site, of one or two authorities, in one order.
#include <algorithm>
#include <array>
#include <map>
#include <set>

#include "explain/collect.hpp"
#include "explain/compare.hpp"

namespace headgate::explain {

using evaluate::badness;
using evaluate::Decision;
using evaluate::Judgement;
using evaluate::Outcome;

namespace {

struct Entry {
  Finding finding;
  std::vector<Question> questions;
  Outcome outcome = Outcome::undecided;
  std::uint32_t rule = 0;
  std::size_t authority = 0;
  bool superseded = false;  // not in force here, and another authority judges it
};

std::string id_of(const Judgement& judgement, const Decision& decision) {
  return judgement.book->rules[decision.rule].id;
}

const Decision* counterpart(const Judgement& in, const std::string& id, const Judgement& from, const Decision& of) {
  for (const auto& other : in.decisions) {
    const bool alike =
        evaluate::elements(in, other) == evaluate::elements(from, of) && other.unfinished == of.unfinished;
    if (alike && id_of(in, other) == id) return &other;
  }
  return nullptr;
}

// Where the law of every stretch agrees the finding is decided; else it waits for the law's date.
void across_dates(const Authority& authority, Entry& entry, const Decision& decision) {
  const std::string id = id_of(authority.judgements.front(), decision);
  for (std::size_t i = 1; i < authority.judgements.size(); ++i) {
    const Decision* other = counterpart(authority.judgements[i], id, authority.judgements.front(), decision);
    if (other != nullptr && other->outcome == decision.outcome) continue;
    entry.outcome = Outcome::undecided;
    entry.finding.outcome = evaluate::words(Outcome::undecided);
    entry.finding.sentence =
        "The law changed, and the day of the permit application is not stated: before and after the change the outcome "
        "differs.";
    Question question;
    question.fact = "permit-applied-on";
    question.ask = "On which day was the permit applied for?";
    question.cost = "know";
    entry.questions = {question};
    entry.finding.to_decide = {{question.fact, question.ask}};
    return;
  }
}

bool alike(const Finding& a, const Finding& b) {
  const auto limit_values = [](const Finding& of) {
    std::vector<std::string> values;
    for (const auto& limit : of.limits) values.push_back(limit.name + "=" + limit.value + "@" + limit.layer);
    return values;
  };
  const auto sections = [](const Finding& of) {
    std::vector<std::string> cited;
    for (const auto& citation : of.citations) cited.push_back(citation.document + " " + citation.section);
    return cited;
  };
  if (a.level != b.level || a.stage != b.stage || sections(a) != sections(b)) return false;
  const auto rule_name = [](const Finding& of) { return of.rule.substr(of.rule.find('/') + 1); };
  return rule_name(a) == rule_name(b) && a.element == b.element && a.outcome == b.outcome && a.sentence == b.sentence &&
         limit_values(a) == limit_values(b);
}

std::string authority_of(const Entry& entry) { return entry.finding.rule.substr(0, entry.finding.rule.find('/')); }

// Findings so far, by rule. A rule both authorities share is signed by both; one that is in force for the first only is
// the first's alone.
class Merger {
 public:
  void take(Entry entry) {
    const std::string name = entry.finding.rule.substr(entry.finding.rule.find('/') + 1);
    auto& whole = by_rule_[{name, ""}];  // of other authorities, for the rule as a whole and for the element
    auto& same_element = by_rule_[{name, entry.finding.element}];
    if (entry.outcome == Outcome::not_in_force && !known_elsewhere(name, entry.authority).empty()) return;
    for (const std::size_t index : same_element) {
      Entry& known = entries_[index];
      if (known.authority == entry.authority || !alike(known.finding, entry.finding)) continue;
      known.finding.signed_by.push_back(authority_of(entry));
      return;
    }
    for (const std::size_t index : whole) {
      Entry& known = entries_[index];
      if (known.authority != entry.authority && known.outcome == Outcome::not_in_force) known.superseded = true;
    }
    by_authority_[name].insert(entry.authority);
    same_element.push_back(entries_.size());
    entries_.push_back(std::move(entry));
  }

  std::vector<Entry> result() {
    entries_.erase(
        std::remove_if(entries_.begin(), entries_.end(), [](const Entry& entry) { return entry.superseded; }),
        entries_.end());
    return std::move(entries_);
  }

 private:
  std::set<std::size_t> known_elsewhere(const std::string& name, std::size_t authority) {
    std::set<std::size_t> others = by_authority_[name];
    others.erase(authority);
    return others;
  }

  std::vector<Entry> entries_;
  std::map<std::pair<std::string, std::string>, std::vector<std::size_t>> by_rule_;
  std::map<std::string, std::set<std::size_t>> by_authority_;
};

void gather_questions(const std::vector<Entry>& entries, std::vector<Question>& next) {
  std::map<std::pair<std::string, std::string>, Question> by_fact;
  for (const auto& entry : entries) {
    if (entry.outcome != Outcome::undecided) continue;
    for (const auto& question : entry.questions) {
      auto& known = by_fact.emplace(std::make_pair(question.fact, question.ask), question).first->second;
      ++known.decides;
      if (std::find(known.rules.begin(), known.rules.end(), entry.finding.rule) == known.rules.end())
        known.rules.push_back(entry.finding.rule);
    }
  }
  for (auto& [key, question] : by_fact) next.push_back(question);
  std::stable_sort(next.begin(), next.end(),
                   [](const Question& a, const Question& b) { return a.decides > b.decides; });
}

std::string root_text(const site::Site& site, const vocabulary::Vocabulary& vocabulary, std::string_view name) {
  const auto field = vocabulary.shapes[0].field(name);
  return field ? site.slot(0, *field).written : "";
}

void add_unfinished(const site::Site& site, const vocabulary::Vocabulary& vocabulary, Report& report) {
  for (const auto& list : site.lists) {
    const auto& field = vocabulary.shapes[site.elements[list.owner].shape].fields[list.field];
    if (!list.complete && list.stated && field.holds == vocabulary::Field::Holds::list && field.union_of.empty()) {
      report.unfinished.push_back(site::address(site, vocabulary, list.owner, list.field));
    }
  }
}

void head(const site::Site& site, const std::vector<Authority>& authorities, Report& report) {
  const auto& book = *authorities.front().book;
  const auto& vocabulary = *book.vocabulary;
  const auto& options = authorities.front().judgements.front().options;
  report.site_name = root_text(site, vocabulary, "name");
  report.stage = options.stage ? vocabulary.stages[*options.stage].name : root_text(site, vocabulary, "stage");
  report.plan = root_text(site, vocabulary, "describes") == "plan";
  report.permit_applied_on = root_text(site, vocabulary, "permit-applied-on");
  report.checked_on =
      options.checked_on ? quantity::show_date(*options.checked_on) : root_text(site, vocabulary, "checked-on");
  report.place = book.place;
  report.place_title = book.title;
  for (std::size_t i = 1; i < authorities.size(); ++i) report.also.push_back(authorities[i].book->place);
  report.closing =
      "This is a pre-check and approves nothing: the adopted code, the authority having jurisdiction and a licensed "
      "person decide.";
}

}  // namespace

Report report(const text::Sources& sources, const site::Site& site, const std::vector<Authority>& authorities,
              std::string site_file, bool side_by_side) {
  Report out;
  out.site_file = std::move(site_file);
  head(site, authorities, out);
  Merger merger;
  for (std::size_t a = 0; a < authorities.size(); ++a) {
    const auto& judgement = authorities[a].judgements.front();
    const Context context{&sources, judgement.book, judgement.site};
    for (const auto& decision : judgement.decisions) {
      Entry entry;
      entry.finding = finding(context, judgement, decision);
      entry.outcome = decision.outcome;
      entry.rule = decision.rule;
      entry.authority = a;
      entry.questions = questions(context, judgement, decision);
      across_dates(authorities[a], entry, decision);
      merger.take(std::move(entry));
    }
  }
  std::vector<Entry> entries = merger.result();
  std::stable_sort(entries.begin(), entries.end(), [](const Entry& x, const Entry& y) {
    if (x.outcome != y.outcome) return badness(x.outcome) > badness(y.outcome);
    if (x.finding.topic != y.finding.topic) return x.finding.topic < y.finding.topic;
    if (x.rule != y.rule) return x.rule < y.rule;
    return x.authority < y.authority;
  });
  std::set<std::string> lists;
  for (const auto& entry : entries) {
    const auto& asked = entry.finding.to_decide;
    if (entry.finding.unfinished && !asked.empty() && !lists.insert(asked.front().fact).second) continue;
    ++out.totals[static_cast<std::size_t>(entry.outcome)];
  }
  gather_questions(entries, out.next);
  for (auto& entry : entries) out.findings.push_back(std::move(entry.finding));
  if (side_by_side)
    out.differences = differences(authorities);
  else
    out.contradictions = contradictions(authorities);
  add_unfinished(site, *authorities.front().book->vocabulary, out);
  return out;
}

}  // namespace headgate::explain
