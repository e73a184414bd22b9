// What the README shows is what happens.
#include <gtest/gtest.h>

#include "app/run.hpp"

namespace headgate::test {
namespace {

namespace fs = std::filesystem;

const fs::path home = HEADGATE_SOURCE_DIR;

// The README's blocks of one language, indent taken off: ```yaml … ```.
std::vector<std::string> blocks(const std::string& language) {
  std::vector<std::string> found;
  std::istringstream lines(read_text(home / "README.md"));
  bool inside = false;
  bool wanted = false;
  std::size_t indent = 0;
  for (std::string line; std::getline(lines, line);) {
    const std::size_t fence = line.find("```");
    if (fence != std::string::npos && line.find_first_not_of(' ') == fence) {
      inside = !inside;
      wanted = inside && line.substr(fence + 3) == language;
      indent = fence;
      if (wanted) found.emplace_back();
    } else if (wanted) {
      found.back() += (line.size() > indent ? line.substr(indent) : "") + "\n";
    }
  }
  return found;
}

std::string block_with(const std::string& language, const std::string& part) {
  for (const auto& block : blocks(language)) {
    if (has(block, part)) return block;
  }
  ADD_FAILURE() << "no block with " << part;
  return "";
}

TEST(Readme, ItsCommandsRunAsPrinted) {
  const Scratch scratch;
  const std::string site = scratch.file("quay.yaml", block_with("yaml", "format: site/1"));
  std::size_t tried = 0;
  for (const auto& block : blocks("sh")) {
    std::istringstream lines(block);
    for (std::string line; std::getline(lines, line);) {
      if (line.rfind("./headgate ", 0) != 0) continue;
      auto arguments = words_of(line);
      for (auto& argument : arguments) {
        if (argument == "quay.yaml") argument = site;
      }
      const Ran ran = run(arguments);
      EXPECT_NE(ran.status, 2) << line << "\n" << ran.err;
      EXPECT_LT(ran.status, 128) << line;
      EXPECT_FALSE(ran.out.empty()) << line;
      ++tried;
    }
  }
  EXPECT_GE(tried, 6U);
}

TEST(Readme, ItsFindingIsTheExamplesOwn) {
  const std::string report = run({"check", "examples/halyard/as-found.yaml"}).out;
  for (const auto* first : {"FAIL  ", "UNDECIDED  "}) {
    std::istringstream lines(block_with("", first));
    for (std::string line; std::getline(lines, line);) EXPECT_TRUE(has(report, line + "\n")) << line;
  }
}

TEST(Readme, ItsTownWorksAsWritten) {
  const Scratch scratch;
  fs::copy(home / "rules", scratch.at("rules"), fs::copy_options::recursive);
  fs::copy(home / "jurisdictions", scratch.at("jurisdictions"), fs::copy_options::recursive);
  fs::create_directory(scratch.at("examples"));
  fs::copy(home / "examples/halyard", scratch.at("examples/halyard"));
  scratch.file("jurisdictions/quarry-bend.yaml",
               block_with("yaml", "id: quarry-bend") + block_with("yaml", "\n  - title: Ordinance 27-3"));
  const std::string trials =
      scratch.file("tests/trials/quarry-bend.yaml", block_with("yaml", "place: quarry-bend\ntrials:"));
  const Ran ran = run({"trials", trials, "--rules", scratch.at("rules")});
  EXPECT_EQ(ran.status, 0) << ran.out << ran.err;
  EXPECT_TRUE(has(ran.out, "\n2 passed, 0 failed\n")) << ran.out;
  const auto limits_on = [&](const std::string& day) {
    return run({"limits", "--place", "quarry-bend", "--on", day, "--rules", scratch.at("rules")}).out;
  };
  const std::string title = "static-pressure-max  Highest static pressure without a pressure reducing valve\n";
  EXPECT_TRUE(has(limits_on("2026-12-31"), title + "  value    80 psi\n")) << limits_on("2026-12-31");
  EXPECT_TRUE(has(limits_on("2027-01-01"), title + "  value    75 psi\n")) << limits_on("2027-01-01");
}

}  // namespace
}  // namespace headgate::test
