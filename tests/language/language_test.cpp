// The files a newcomer learns the language from, in this folder: a site, the rules it is judged by, derived
// values with two small tables, a place with an ordinance. They load under the project's own vocabulary and
// mean what their readers expect.
#include <algorithm>
#include <deque>
#include <filesystem>
#include <fstream>
#include <iterator>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "document/read.hpp"
#include "evaluate/judge.hpp"
#include "language/roughness.hpp"
#include "rulebook/load.hpp"
#include "site/site.hpp"

namespace headgate {
namespace {

namespace fs = std::filesystem;
using evaluate::Outcome;

// A house for the derived values: 100 ft of 3/4 in type L fed by 7.2 fixture units.
const char* const sized_house = R"(format: site/1
line:
  - pipe: {material: l-copper, series: type-l, size: 3/4", developed-length: 100 ft}
fixtures: [water-closet: 2, lavatory: 2, bathtub: 1]
)";

class World {
 public:
  World() {
    const fs::path root{HEADGATE_SOURCE_DIR};
    std::vector<fs::path> paths;
    for (const auto& entry : fs::directory_iterator(root / "rules" / "vocabulary")) {
      if (entry.path().stem() != "derived") paths.push_back(entry.path());  // the example has formulas of its own
    }
    std::sort(paths.begin(), paths.end());
    paths.push_back(root / "rules" / "sources.yaml");
    paths.push_back(root / "rules" / "tables" / "sizes.yaml");
    for (const char* own : {"vocabulary.yaml", "tables.yaml", "rules.yaml"}) paths.push_back(here() / own);
    for (const auto& path : paths) {
      const std::string text = path.stem() == "choices" ? test::with_roughness(text_of(path)) : text_of(path);
      rulebook::add(library_, tree(path.string(), text), found_);
    }
    place_ = rulebook::read_place(tree("place.yaml", text_of(here() / "place.yaml")), found_);
    vocabulary_ = rulebook::read_vocabulary(library_, {&*place_}, found_);
  }

  // Judges a site as the law stands on a day, with what the place gives filled in beforehand.
  void judge(const std::string& site, const std::string& day) {
    const auto when = std::get<quantity::Day>(quantity::read_date(day));
    book_ = rulebook::resolve(library_, vocabulary_, *place_, when, found_);
    document::Node written = tree("site.yaml", site);
    for (const auto& given : book_.given) {
      const std::size_t dot = given.address.find('.');
      site::set(written, given.address.substr(dot + 1), given.address_range, *given.value, vocabulary_, found_);
    }
    trees_.push_back(std::move(written));
    site_ = site::load(trees_.back(), vocabulary_, found_);
    judgement_ = evaluate::judge(book_, site_, {});
  }
  void judge(const std::string& day) { judge(text_of(here() / "site.yaml"), day); }

  std::vector<std::string> outcomes(const std::string& rule) const {
    std::vector<std::string> all;
    for (const auto& each : judgement_.decisions) {
      if (book_.rules[each.rule].id == rule) all.emplace_back(evaluate::words(each.outcome));
    }
    return all;
  }

  quantity::Interval value(const std::string& expression) {
    const auto& node = tree("expression", "it: " + expression);
    const auto compiled = rulebook::compile(book_, *node.find("it"), found_);
    return compiled ? evaluate::evaluate(*compiled, book_, site_).value.number : quantity::Interval{};
  }

  std::string said() const {
    std::string all;
    for (const auto& each : found_) {
      if (each.severity == text::Severity::error) all += text::draw(each, sources_);
    }
    return all;
  }

  const rulebook::Rulebook& book() const { return book_; }

 private:
  static fs::path here() { return fs::path{HEADGATE_SOURCE_DIR} / "tests" / "language"; }
  static std::string text_of(const fs::path& path) {
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
  }
  document::Node& tree(const std::string& name, const std::string& text) {
    auto read = document::read(sources_, sources_.add(name, text), {}, found_);
    trees_.push_back(read ? std::move(*read) : document::Node{});
    return trees_.back();
  }

  text::Sources sources_;
  text::Diagnostics found_;
  std::deque<document::Node> trees_;
  rulebook::Library library_;
  std::optional<rulebook::Place> place_;
  vocabulary::Vocabulary vocabulary_;
  rulebook::Rulebook book_;
  site::Site site_;
  evaluate::Judgement judgement_;
};

using ::testing::Contains;
using ::testing::ElementsAre;

TEST(Language, TheSiteAndTheRulesLoadWithoutAnError) {
  World world;
  world.judge("2026-09-14");
  EXPECT_EQ(world.said(), "");
}

TEST(Language, TheRulesDoWhatTheySay) {
  World world;
  world.judge("2026-09-14");
  EXPECT_THAT(world.outcomes("reducer-above-static-limit"), ElementsAre("pass"));
  EXPECT_THAT(world.outcomes("sleeve-or-arch"), Contains("pass"));
  // The line ends in `more`, so a pipe nobody wrote may stand between the wall and the one written before it.
  EXPECT_THAT(world.outcomes("sleeve-ratio"), Contains("undecided"));
  EXPECT_THAT(world.outcomes("sleeve-two-sizes"), ElementsAre("not in force"));  // the ordinance drops it
  EXPECT_THAT(world.outcomes("cover-deep-enough"), Contains("pass"));            // 40 in, frost given as 30 in
  // 22 in above the ground says nothing about the highest outlet: another mark is undecided, never a fail.
  EXPECT_THAT(world.outcomes("breaker-high-enough"), Contains("undecided"));
  EXPECT_THAT(world.outcomes("reducer-proven"), Contains("later"));  // it binds in service
}

TEST(Language, TheOrdinanceCountsFromItsDay) {
  World world;
  world.judge("2026-06-30");
  EXPECT_EQ(world.value("limit.static-pressure-max").hi,
            std::get<quantity::Quantity>(quantity::read_quantity("80 psi")).si);
  EXPECT_THAT(world.outcomes("sleeve-two-sizes"), Contains("undecided"));
  world.judge("2026-07-01");
  EXPECT_EQ(world.value("limit.static-pressure-max").hi,
            std::get<quantity::Quantity>(quantity::read_quantity("70 psi")).si);
  EXPECT_EQ(world.said(), "");
}

// 2 x 2.2 + 2 x 0.7 + 1.4 = 7.2 units; between 4 units at 8 gpm and 8 at 12.8 that is 11.84 gpm. The published form
// 4.52 Q^1.85 / (C^1.85 d^4.87) psi a foot gives 15.2 psi for 100 ft of 0.785 in at C 140; exponents differ by 0.1 %.
TEST(Language, TheDerivedValuesFollowTheirFormulas) {
  World world;
  world.judge(sized_house, "2026-09-14");
  EXPECT_NEAR(world.value("demand.fixture-units").lo, 7.2, 1e-9);
  EXPECT_NEAR(world.value("demand.flow").lo * 15850.323, 11.84, 1e-3);
  EXPECT_NEAR(world.value("sum(pipe.friction-loss for pipe in line)").lo / 6894.757, 15.2, 0.15);
  EXPECT_EQ(world.said(), "");
}

}  // namespace
}  // namespace headgate
