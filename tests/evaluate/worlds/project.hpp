// The project's own rules, a place and a site of the examples, read from disk.
//
//   Project project("fennick-ferry", {"examples/halyard/as-found.yaml"});
//   project.said()            "" when all could be read
//   evaluate::judge(project.book(), project.site(0), {});
#pragma once

#include <algorithm>
#include <deque>
#include <filesystem>
#include <fstream>
#include <optional>
#include <sstream>
#include <string>
#include <vector>

#include "document/read.hpp"
#include "evaluate/judge.hpp"
#include "rulebook/load.hpp"
#include "site/site.hpp"

namespace headgate::test {

inline std::string text_of_file(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

class Project {
 public:
  Project(const std::string& place, const std::vector<std::string>& sites) {
    namespace fs = std::filesystem;
    const fs::path root = HEADGATE_SOURCE_DIR;
    std::vector<fs::path> files;
    for (const auto& entry : fs::recursive_directory_iterator(root / "rules")) {
      if (entry.path().extension() == ".yaml") files.push_back(entry.path());
    }
    std::sort(files.begin(), files.end());
    for (const auto& file : files) {
      if (const auto* tree = read(file)) rulebook::add(library_, *tree, found_);
    }
    const auto* place_tree = read(root / "jurisdictions" / (place + ".yaml"));
    if (place_tree != nullptr) place_ = rulebook::read_place(*place_tree, found_);
    if (!place_ || text::has_errors(found_)) return;
    vocabulary_ = rulebook::read_vocabulary(library_, {&*place_}, found_);
    book_ = rulebook::resolve(library_, vocabulary_, *place_,
                              std::get<quantity::Day>(quantity::read_date("2026-09-14")), found_);
    for (const auto& site : sites) {
      if (const auto* tree = read(root / site)) sites_.push_back(site::load(*tree, vocabulary_, found_));
    }
  }
  Project(const Project&) = delete;
  Project& operator=(const Project&) = delete;

  const rulebook::Rulebook& book() const { return book_; }
  const site::Site& site(std::size_t index) const { return sites_[index]; }
  const text::Sources& sources() const { return sources_; }
  std::string said() const {
    std::string all;
    for (const auto& one : found_) {
      if (one.severity == text::Severity::error) all += one.id + ": " + one.sentence + "\n";
    }
    return all;
  }

 private:
  const document::Node* read(const std::filesystem::path& path) {
    const auto file = sources_.add(path.string(), text_of_file(path));
    auto tree = document::read(sources_, file, {}, found_);
    return tree ? &trees_.emplace_back(std::move(*tree)) : nullptr;
  }

  text::Sources sources_;
  text::Diagnostics found_;
  std::deque<document::Node> trees_;
  rulebook::Library library_;
  std::optional<rulebook::Place> place_;
  vocabulary::Vocabulary vocabulary_;
  rulebook::Rulebook book_;
  std::deque<site::Site> sites_;
};

}  // namespace headgate::test
