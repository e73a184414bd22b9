// The shipped rulebook and the example house, loaded once for a benchmark.
#pragma once

#include <algorithm>
#include <deque>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "document/read.hpp"
#include "rulebook/load.hpp"
#include "site/site.hpp"

namespace headgate::bench {

struct Files {
  text::Sources sources;
  std::deque<document::Node> trees;
  text::Diagnostics found;

  const document::Node& read(const std::filesystem::path& path) {
    std::ifstream stream(path, std::ios::binary);
    std::ostringstream text;
    text << stream.rdbuf();
    return parse(path.string(), text.str());
  }
  const document::Node& parse(const std::string& name, const std::string& text) {
    const auto file = sources.add(name, text);
    trees.push_back(*document::read(sources, file, {}, found));
    return trees.back();
  }
};

inline std::vector<std::filesystem::path> rule_files() {
  std::vector<std::filesystem::path> paths;
  for (const auto& at : std::filesystem::recursive_directory_iterator(HEADGATE_SOURCE_DIR "/rules")) {
    if (at.path().extension() == ".yaml") paths.push_back(at.path());
  }
  std::sort(paths.begin(), paths.end());
  return paths;
}

// Everything from YAML text to a resolved rulebook and a loaded site.
struct House {
  Files files;
  rulebook::Library library;
  std::optional<rulebook::Place> place;
  vocabulary::Vocabulary vocabulary;
  rulebook::Rulebook book;
  site::Site site;

  House() {
    for (const auto& path : rule_files()) rulebook::add(library, files.read(path), files.found);
    place = rulebook::read_place(files.read(HEADGATE_SOURCE_DIR "/jurisdictions/fennick-ferry.yaml"), files.found);
    vocabulary = rulebook::read_vocabulary(library, {&*place}, files.found);
    book = rulebook::resolve(library, vocabulary, *place, quantity::day_of({2026, 9, 14}), files.found);
    site = site::load(files.read(HEADGATE_SOURCE_DIR "/examples/halyard/as-built.yaml"), vocabulary, files.found);
  }
};

}  // namespace headgate::bench
