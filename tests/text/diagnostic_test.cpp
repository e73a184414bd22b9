#include "text/diagnostic.hpp"

#include <algorithm>
#include <set>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace headgate::text {
namespace {

using testing::ElementsAre;

TEST(Say, FillsSentenceAndHint) {
  const Diagnostic diagnostic = say("unknown-unit", Range{0, 1, 4}, {"psy", "psi"});
  EXPECT_EQ(diagnostic.sentence, "\"psy\" is not a unit.");
  EXPECT_EQ(diagnostic.hint, "did you mean psi?");
  EXPECT_EQ(diagnostic.severity, Severity::error);
  EXPECT_EQ(diagnostic.range, (Range{0, 1, 4}));
  EXPECT_FALSE(diagnostic.other.known());
}

TEST(Say, LeavesOutAHintWithNothingToOffer) {
  EXPECT_EQ(say("unknown-unit", {}, {"furlong", ""}).hint, "");
  EXPECT_EQ(say("unknown-unit", {}, {"furlong"}).hint, "");
}

TEST(Say, ShowsASlotWithoutAnArgument) { EXPECT_EQ(say("unknown-unit", {}, {}).sentence, "\"{0}\" is not a unit."); }

TEST(Say, DoesNotFillWhatAnArgumentHolds) {
  EXPECT_EQ(say("unknown-unit", {}, {"{1}", "psi"}).sentence, "\"{1}\" is not a unit.");
}

TEST(Say, CutsAVeryLongArgument) {
  const Diagnostic diagnostic = say("unknown-unit", {}, {std::string(5000, 'p'), ""});
  EXPECT_EQ(diagnostic.sentence, "\"" + std::string(300, 'p') + "…\" is not a unit.");
}

TEST(Say, LosesNothingOfAnIdNobodyKnows) {
  EXPECT_EQ(say("no-such-id", {}, {"one", "two"}).sentence, "no-such-id: one, two");
  EXPECT_EQ(say("no-such-id", {}).sentence, "no-such-id");
  EXPECT_EQ(say("no-such-id", {}).severity, Severity::error);
}

TEST(Say, KeepsTheSecondPlace) {
  const Diagnostic diagnostic = say("unknown-unit", {0, 5, 6}, {"a", ""}, {0, 1, 2}, "first here");
  EXPECT_EQ(diagnostic.other, (Range{0, 1, 2}));
  EXPECT_EQ(diagnostic.other_says, "first here");
}

// What the words of a catalogue owe the people who read them, whoever wrote them.
TEST(Catalogue, IsInOrder) {
  std::set<std::string_view> ids;
  for (const Message& message : catalogue()) {
    SCOPED_TRACE(message.id);
    EXPECT_TRUE(ids.insert(message.id).second) << "twice";
    EXPECT_EQ(message.id.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-"), std::string_view::npos);
    ASSERT_FALSE(message.sentence.empty());
    EXPECT_EQ(message.sentence.back(), '.');
    EXPECT_EQ(message.sentence.find('\n'), std::string_view::npos);
    EXPECT_EQ(message.hint.find('\n'), std::string_view::npos);
    EXPECT_TRUE(message.hint.empty() || message.hint.back() != '.');
  }
}

Diagnostic at(std::string id, FileId file, std::uint32_t begin) {
  Diagnostic diagnostic;
  diagnostic.id = std::move(id);
  diagnostic.range = {file, begin, begin + 1};
  return diagnostic;
}

std::vector<std::string> ids(const Diagnostics& found) {
  std::vector<std::string> all;
  for (const Diagnostic& diagnostic : found) all.push_back(diagnostic.id);
  return all;
}

TEST(Settle, SortsByPlaceThenIdAndDropsRepeats) {
  Diagnostics found{at("c", 0, 9), at("b", 0, 4), at("a", 0, 4), at("b", 0, 4), at("d", 0, 1)};
  settle(found);
  EXPECT_THAT(ids(found), ElementsAre("d", "a", "b", "c"));
}

TEST(Settle, KeepsWhatDiffersOnlyInItsWordsOrSeverity) {
  Diagnostics found{at("a", 0, 4), at("a", 0, 4), at("a", 0, 4)};
  found[1].sentence = "other";
  found[2].severity = Severity::warning;
  settle(found);
  EXPECT_EQ(found.size(), 3U);
}

TEST(Settle, OrdersFilesByNameNotByWhenTheyWereRead) {
  Sources sources;
  const FileId late = sources.add("z.yaml", "one\n");
  const FileId early = sources.add("a.yaml", "one\n");
  Diagnostics found{at("in-z", late, 0), Diagnostic{}, at("in-a", early, 2)};
  found[1].id = "nowhere";
  settle(found, sources);
  EXPECT_THAT(ids(found), ElementsAre("in-a", "in-z", "nowhere"));
}

TEST(HasErrors, DoesNotCountWarnings) {
  Diagnostic warning;
  warning.severity = Severity::warning;
  EXPECT_FALSE(has_errors({}));
  EXPECT_FALSE(has_errors({warning}));
  EXPECT_TRUE(has_errors({warning, Diagnostic{}}));
}

TEST(Nearest, FindsTheSlip) {
  const std::vector<std::string> units{"psi", "kPa", "gpm", "ft", "in"};
  EXPECT_EQ(nearest("psy", units), "psi");
  EXPECT_EQ(nearest("gmp", units), "gpm");
  EXPECT_EQ(nearest("PSI", units), "psi");
  EXPECT_EQ(nearest("fr", units), "ft");
  EXPECT_EQ(nearest("presure", {"pipe", "pressure"}), "pressure");
  EXPECT_EQ(nearest("highest_static", {"highest-static"}), "highest-static");
}

TEST(Nearest, OffersNothingFarOff) {
  const std::vector<std::string> units{"psi", "kPa", "gpm", "ft", "in"};
  EXPECT_EQ(nearest("furlong", units), std::nullopt);
  EXPECT_EQ(nearest("xy", units), std::nullopt);
  EXPECT_EQ(nearest("x", units), std::nullopt);
  EXPECT_EQ(nearest("", units), std::nullopt);
  EXPECT_EQ(nearest("psi", {}), std::nullopt);
  EXPECT_EQ(nearest("psi", {""}), std::nullopt);
  EXPECT_EQ(nearest(std::string(100000, 'p'), {std::string(100000, 'p')}), std::nullopt);
}

TEST(Nearest, DoesNotDependOnTheOrderOfCandidates) {
  std::vector<std::string> candidates{"pipa", "pipc", "pipb", "pipd"};
  std::sort(candidates.begin(), candidates.end());
  do {
    EXPECT_EQ(nearest("pipe", candidates), "pipa");
  } while (std::next_permutation(candidates.begin(), candidates.end()));
}

}  // namespace
}  // namespace headgate::text
