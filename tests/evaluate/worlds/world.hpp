// A whole world in memory: vocabulary, tables, sources, rules, a place and a site as people write them,
// through the real readers, judged by the evaluator and by the reference, which must agree.
//
//   World world({.rules = rule("deep", "each: pipe in line\nrequire: pipe.length >= 1 ft"),
//                .site = "line: [pipe: {length: 2 ft}, pipe: {}]"});
//   world.outcomes("deep")                         "line[1]: pass; line[2]: undecided"
//   world.value("sum(pipe.length for pipe in line)")   "unknown"
#pragma once

#include <deque>
#include <memory>
#include <string>
#include <vector>

#include "document/read.hpp"
#include "evaluate/judge.hpp"
#include "evaluate/occasion.hpp"
#include "evaluate/papers.hpp"
#include "evaluate/reference/agree.hpp"
#include "rulebook/load.hpp"
#include "site/site.hpp"

namespace headgate::test {

struct Written {
  std::string vocabulary = {};  // added to the small one below
  std::string tables = {};      // below `tables:`
  std::string limits = {};      // below `limits:`
  std::string rules = {};       // below `rules:`
  std::string place = {};       // keys beside id, title; "adopts: code-a" when empty
  std::string site = {};        // below `format:`
  std::string also = {};        // a second place, likewise
  std::string day = {};         // "2026-05-01"; of the rulebook
  evaluate::Options options = {};
  bool alone = false;  // the reference is not asked: it is slow on a long line
};

// A rule with the keys nobody here cares for filled in; `body` without indent.
std::string rule(const std::string& id, const std::string& body, const std::string& source = "code-a 1");

// Every line moved in.
std::string indented(const std::string& text, std::size_t blanks);

class World {
 public:
  explicit World(const Written& written);
  World(const World&) = delete;
  World& operator=(const World&) = delete;

  // What was said while loading, errors only; "" when all is fine.
  std::string said() const;

  // The decisions of one rule: "pass", or by element "line[1]: pass; line[2]: fail; line open: undecided".
  std::string outcomes(const std::string& rule) const;
  std::string outcomes_of_second(const std::string& rule) const;  // by the second place
  const evaluate::Decision& decision(const std::string& rule) const;

  // One expression by itself, as people read it: "yes", "undecided", "24 ft or more".
  std::string value(const std::string& expression);

  // The first difference between evaluator and reference; "" when there is none.
  std::string disagreement() const { return disagreement_; }

  const rulebook::Rulebook& book() const { return books_.front(); }
  const site::Site& site() const { return site_; }
  const evaluate::Judgement& judgement() const { return judgements_.front(); }
  const vocabulary::Vocabulary& vocabulary() const { return vocabulary_; }

 private:
  const document::Node* read(const std::string& name, const std::string& text);
  void resolve_again(const std::vector<const rulebook::Place*>& places, std::optional<quantity::Day> day,
                     const evaluate::Options& options);
  void judge(const Written& written);
  std::string outcomes(const evaluate::Judgement& judgement, const std::string& rule) const;

  text::Sources sources_;
  text::Diagnostics found_;
  std::deque<document::Node> trees_;
  rulebook::Library library_;
  std::deque<rulebook::Place> places_;
  vocabulary::Vocabulary vocabulary_;
  std::deque<std::vector<rulebook::Order>> orders_;
  std::deque<rulebook::Rulebook> books_;
  site::Site site_;
  std::deque<evaluate::Judgement> judgements_;
  std::string disagreement_;
  std::deque<expression::Tree> expressions_;
};

// One expression, and the outcomes of one rule for each of what `binders` walk, in a world of their own.
std::string in(const std::string& site, const std::string& expression);
std::string each(const std::string& binders, const std::string& require, const std::string& site);

// Many rulebooks and many sites over one vocabulary, each to be judged with each.
class Shelf {
 public:
  explicit Shelf(const std::string& vocabulary);

  std::vector<const rulebook::Rulebook*> add_books(const Written& written);  // of the place, and of the second one
  const site::Site* add_site(const std::string& text);
  std::string said() const;  // errors; "" when there are none

 private:
  text::Sources sources_;
  text::Diagnostics found_;
  std::deque<document::Node> trees_;
  vocabulary::Vocabulary vocabulary_;
  const document::Node* added_ = nullptr;  // to the small vocabulary
  std::deque<rulebook::Place> places_;
  std::deque<rulebook::Rulebook> books_;
  std::deque<site::Site> sites_;
};

extern const char* const small_vocabulary;
extern const char* const small_sources;
extern const char* const small_tables;  // the ladders of sizes

}  // namespace headgate::test
