// Knowing more settles what was undecided and turns nothing round: of one installation described twice, what is
// decided while some is not known stays so when all is. Left out are the stated exceptions (`recorded`, papers,
// stated values of computed facts) and what the tables and ladders of sizes do not promise.
#include <map>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "evaluate/worlds/generate.hpp"

namespace headgate::test {
namespace {

using evaluate::Decision;
using evaluate::Judgement;
using evaluate::Outcome;
using evaluate::Truth;

// Decisions by rule and elements, with the places of `line` as they are when all of it is written.
std::map<std::string, Decision> by_place(const Judgement& judgement, const std::vector<std::size_t>& kept) {
  std::map<std::string, Decision> result;
  for (const auto& decision : judgement.decisions) {
    if (decision.unfinished != site::nowhere) continue;
    std::string name = judgement.book->rules[decision.rule].id;
    for (const auto element : evaluate::elements(judgement, decision)) {
      std::string address = site::address(*judgement.site, *judgement.book->vocabulary, element);
      address = address.substr(0, address.find(' '));
      if (address.rfind("line[", 0) == 0) {
        const std::size_t end = address.find(']');
        const std::size_t at = std::stoul(address.substr(5, end - 5)) - 1;
        address = "line[" + std::to_string(kept[at] + 1) + address.substr(end);
      }
      name += " " + address;
    }
    result[name] = decision;
  }
  return result;
}

bool settles(Truth before, Truth after) { return before == Truth::undecided || before == after; }

// What it may become when more is known: nothing at all (it turned out not to apply), or what is listed.
bool may_become(const Decision& before, const Decision* after) {
  if (before.would_be == Outcome::undecided) return true;
  const bool whether_or_not = before.applies != Truth::yes;
  if (after == nullptr) return whether_or_not || before.would_be == Outcome::not_applicable;
  if (!settles(before.applies, after->applies) || !settles(before.require, after->require)) return false;
  if (after->would_be == before.would_be) return true;
  if (after->would_be == Outcome::not_applicable) return whether_or_not;
  return before.would_be == Outcome::accepted && after->would_be == Outcome::pass;
}

TEST(Monotony, KnowingMoreOnlySettles) {
  constexpr Kept kept{true};
  std::size_t decided = 0;
  std::size_t settled = 0;
  for (std::uint64_t seed = 100; seed < 112; ++seed) {
    Random random(seed);
    Shelf shelf(generated_vocabulary(random));
    const Written text = generated_book(random, kept);
    const auto books = shelf.add_books(text);
    ASSERT_EQ(shelf.said(), "") << "seed " << seed;
    for (int i = 0; i < 40; ++i) {
      const SiteModel model = generated_site(random, kept);
      std::vector<std::size_t> all_kept;
      std::vector<std::size_t> some_kept;
      const std::string all_text = written(model, random, Detail::all, &all_kept);
      const std::string some_text = written(model, random, Detail::some, &some_kept);
      const auto* all = shelf.add_site(all_text);
      const auto* some = shelf.add_site(some_text);
      ASSERT_EQ(shelf.said(), "") << "seed " << seed << "\n" << some_text;
      for (const auto* book : books) {
        const auto known = by_place(evaluate::judge(*book, *all, {}), all_kept);
        for (const auto& [name, before] : by_place(evaluate::judge(*book, *some, {}), some_kept)) {
          const auto after = known.find(name);
          const Decision* now = after == known.end() ? nullptr : &after->second;
          decided += before.would_be != Outcome::undecided ? 1 : 0;
          settled +=
              now != nullptr && before.would_be == Outcome::undecided && now->would_be != Outcome::undecided ? 1 : 0;
          ASSERT_TRUE(may_become(before, now))
              << "seed " << seed << ", " << name << ": " << evaluate::words(before.would_be) << " became "
              << (now != nullptr ? evaluate::words(now->would_be) : "nothing") << "\n"
              << text.place << text.limits << text.rules.substr(text.rules.find("  " + name.substr(0, 6)), 2500) << "\n"
              << some_text << "\nall of it:\n"
              << all_text;
        }
      }
    }
  }
  EXPECT_GT(decided, 2000U);
  EXPECT_GT(settled, 500U);
}

}  // namespace
}  // namespace headgate::test
