// The evaluator and the reference on generated rulebooks and sites: outcomes, every clause, every value. More of
// them when HEADGATE_THOROUGH is set; fewer where the compiler was not asked to optimise.
#include <cstdio>
#include <cstdlib>
#include <deque>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "evaluate/worlds/generate.hpp"

namespace headgate::test {
namespace {

struct Round {
  std::size_t vocabularies, books, sites;  // of each vocabulary; a place and its second authority count as one book
};

Round how_many() {
  if (std::getenv("HEADGATE_THOROUGH") != nullptr) return {40, 25, 500};
#ifdef NDEBUG
  return {10, 25, 210};
#else
  return {4, 20, 65};
#endif
}

// What a person needs to see why: the one rule, and the site.
std::string dump(const Written& book, const rulebook::Rule& rule, const std::string& site, std::uint64_t seed) {
  const std::size_t begin = book.rules.find("  " + rule.id + ":\n");
  const std::size_t end = book.rules.find("\n  rule-", begin + 1);
  return "seed " + std::to_string(seed) + ", " + book.day + "\n" + book.place + "\nlimits:\n" + book.limits + "\n" +
         book.rules.substr(begin, end - begin) + "\n\n" + site;
}

class Comparing {
 public:
  explicit Comparing(std::uint64_t seed) : seed_(seed), random_(seed) {}

  void run(const Round& round) {
    const std::string vocabulary = generated_vocabulary(random_);
    Shelf shelf(vocabulary);
    std::vector<const site::Site*> sites;
    std::vector<std::string> texts;
    for (std::size_t i = 0; i < round.sites; ++i) {
      texts.push_back(written(generated_site(random_, {}), random_, Detail::some));
      sites.push_back(shelf.add_site(texts.back()));
    }
    for (std::size_t i = 0; i < round.books && !failed_; ++i) {
      const Written book = generated_book(random_, {});
      const auto books = shelf.add_books(book);
      ASSERT_EQ(shelf.said(), "") << "seed " << seed_ << "\n" << vocabulary << book.limits << book.rules << book.place;
      for (std::size_t s = 0; s < sites.size() && !failed_; ++s) {
        for (const auto* one : books) compare(*one, *sites[s], book, texts[s]);
      }
    }
  }

  std::size_t pairs() const { return pairs_; }
  std::size_t decisions(evaluate::Outcome outcome) const { return decided_[static_cast<std::size_t>(outcome)]; }
  bool failed() const { return failed_; }

 private:
  void compare(const rulebook::Rulebook& book, const site::Site& site, const Written& text,
               const std::string& site_text) {
    const auto judgement = evaluate::judge(book, site, {});
    const auto findings = reference::judge(book, site, {});
    const std::string found = reference::difference(judgement, findings);
    ++pairs_;
    for (const auto& finding : findings) ++decided_[static_cast<std::size_t>(finding.decision.outcome)];
    if (found.empty()) return explain(judgement, findings);
    failed_ = true;
    const std::string id = found.substr(0, found.find_first_of(" :"));
    const auto rule = book.rule(id);
    ADD_FAILURE() << found << "\n" << (rule ? dump(text, book.rules[*rule], site_text, seed_) : "");
  }

  // An explanation is read off the same places: now and then all of it is drawn, and its clauses compared.
  void explain(const evaluate::Judgement& judgement, const std::vector<reference::Finding>& findings) {
    if (pairs_ % 50 != 0) return;
    for (std::size_t i = 0; i < findings.size(); ++i) {
      const auto trace = evaluate::explain(judgement, judgement.decisions[i]);
      ASSERT_EQ(trace.require.has_value(), findings[i].require.has_value());
      if (trace.require) {
        ASSERT_EQ(trace.require->truth, findings[i].require->truth);
        ASSERT_EQ(trace.require->by_approval, findings[i].require->by_approval);
      }
      if (trace.when) {
        ASSERT_EQ(trace.when->truth, findings[i].when->truth);
      }
      ASSERT_EQ(trace.where.size(), findings[i].where.size());
      ASSERT_EQ(trace.unless.size(), findings[i].unless.size());
    }
  }

  std::uint64_t seed_;
  Random random_;
  std::size_t pairs_ = 0;
  std::size_t decided_[evaluate::outcome_count] = {};
  bool failed_ = false;
};

TEST(Agreement, OfEvaluatorAndReference) {
  const Round round = how_many();
  std::size_t pairs = 0;
  std::size_t decided[evaluate::outcome_count] = {};
  for (std::uint64_t seed = 1; seed <= round.vocabularies; ++seed) {
    Comparing comparing(seed);
    comparing.run(round);
    pairs += comparing.pairs();
    for (std::size_t i = 0; i < evaluate::outcome_count; ++i)
      decided[i] += comparing.decisions(static_cast<evaluate::Outcome>(i));
    if (comparing.failed() || HasFatalFailure()) return;
  }
  EXPECT_EQ(pairs, 2 * round.vocabularies * round.books * round.sites);
  // The worlds are awkward enough to meet every outcome often.
  std::size_t all = 0;
  for (const std::size_t count : decided) all += count;
  for (std::size_t i = 0; i < evaluate::outcome_count; ++i) {
    const auto outcome = static_cast<evaluate::Outcome>(i);
    RecordProperty(std::string(evaluate::words(outcome)), std::to_string(decided[i]));
    EXPECT_GT(decided[i] * 5000, all) << evaluate::words(outcome) << ": " << decided[i] << " of " << all;
  }
}

}  // namespace
}  // namespace headgate::test
