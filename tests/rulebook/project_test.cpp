// The project's own rules and places resolve without a word, on every day their law changes.
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

#include <gtest/gtest.h>

#include "rulebook/world.hpp"

namespace headgate::test {
namespace {

namespace fs = std::filesystem;

std::vector<fs::path> yaml_files(const fs::path& folder) {
  std::vector<fs::path> files;
  for (const auto& each : fs::recursive_directory_iterator(folder)) {
    if (each.path().extension() == ".yaml") files.push_back(each.path());
  }
  std::sort(files.begin(), files.end());
  return files;
}

std::string text_of(const fs::path& path) {
  std::ifstream file(path);
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

TEST(Project, EveryPlaceResolvesOnEveryDay) {
  const fs::path root = HEADGATE_SOURCE_DIR;
  World world;
  world.library = {};
  for (const auto& path : yaml_files(root / "rules")) world.file(path.filename().string(), text_of(path));
  ASSERT_FALSE(world.library.rules.empty());
  std::size_t places = 0;
  for (const auto& path : yaml_files(root / "jurisdictions")) {
    world.whole_place(text_of(path));
    ASSERT_TRUE(world.place) << path << "\n" << world.said();
    std::vector<std::string> days{"2020-01-01", "2026-10-02"};
    for (const auto day : rulebook::segments(*world.place)) days.push_back(quantity::show_date(day));
    for (const std::string& day : days) {
      const auto book = world.resolve(day);
      EXPECT_FALSE(book.rules.empty()) << path;
    }
    ++places;
  }
  EXPECT_GE(places, 1u);
  text::settle(world.found);
  std::string errors;
  for (const auto& each : world.found) {
    if (each.severity == text::Severity::error) errors += in_short(each, world.sources);
  }
  EXPECT_EQ(errors, "");
}

}  // namespace
}  // namespace headgate::test
