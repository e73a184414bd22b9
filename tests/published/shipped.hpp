// The rules as shipped, and a site written in a test computed by them.
#pragma once

#include <algorithm>
#include <deque>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

#include <gtest/gtest.h>

#include "document/read.hpp"
#include "evaluate/work_out.hpp"
#include "explain/worksheet.hpp"
#include "rulebook/load.hpp"

namespace headgate::published {

// One derived value of one element: [lo, hi] in SI, or not known.
struct Computed {
  bool known = false;
  double lo = 0, hi = 0;
  double middle() const { return (lo + hi) / 2; }
};

class ShippedRules {
 public:
  explicit ShippedRules(const std::string& model) {
    std::vector<std::filesystem::path> paths;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(root_ / "rules")) {
      if (entry.path().extension() == ".yaml") paths.push_back(entry.path());
    }
    std::sort(paths.begin(), paths.end());
    for (const auto& path : paths) rulebook::add(library_, read_file(path), found_);
    vocabulary_ = rulebook::read_vocabulary(library_, {}, found_);
    place_ = rulebook::read_place(read_file(root_ / "jurisdictions" / "models" / (model + ".yaml")), found_);
    book_ = rulebook::resolve(library_, vocabulary_, *place_, std::nullopt, found_);
    EXPECT_FALSE(text::has_errors(found_)) << words(found_);
  }

  const rulebook::Rulebook& book() const { return book_; }
  const vocabulary::Vocabulary& vocabulary() const { return vocabulary_; }

  // A site from its text, or from a file below the project.
  site::Site site(const std::string& text) {
    text::Diagnostics found;
    auto loaded = site::load(read_text("site.yaml", "format: site/1\n" + text), vocabulary_, found);
    EXPECT_FALSE(text::has_errors(found)) << words(found);
    return loaded;
  }
  site::Site site_file(const std::string& path) {
    text::Diagnostics found;
    auto loaded = site::load(read_file(root_ / path), vocabulary_, found);
    EXPECT_FALSE(text::has_errors(found)) << words(found);
    return loaded;
  }

  // What the formula gives, whatever the site states.
  Computed value(const site::Site& site, const std::string& address) const {
    const auto worked = evaluate::work_out(book_, site);
    for (const auto& each : worked.values) {
      if (site::address(site, vocabulary_, each.element, each.derivation->field) != address) continue;
      const auto& cell = worked.cells[worked.plan.nodes[each.formula].cell];
      const bool known =
          cell.presence == vocabulary::Presence::present && std::isfinite(cell.lo) && std::isfinite(cell.hi);
      return {known, cell.lo, cell.hi};
    }
    ADD_FAILURE() << "nothing derived at " << address;
    return {};
  }

  explain::Worksheet worksheet(const site::Site& site) const {
    const explain::Context context{&sources_, &book_, &site};
    return explain::worksheet(context, evaluate::work_out(book_, site));
  }

  // An expression of the language, as `calc` would read it.
  Computed calc(const std::string& expression) {
    text::Diagnostics found;
    document::Node node;
    node.scalar = expression;
    node.range = {sources_.add("calc", expression), 0, static_cast<std::uint32_t>(expression.size())};
    const auto tree = rulebook::compile(book_, node, found);
    EXPECT_TRUE(tree && !text::has_errors(found)) << words(found);
    if (!tree) return {};
    const auto empty = site("name: nothing\n");
    const auto result = evaluate::evaluate(*tree, book_, empty).value;
    const bool known = result.presence == vocabulary::Presence::present && std::isfinite(result.number.lo);
    return {known, result.number.lo, result.number.hi};
  }

 private:
  std::string words(const text::Diagnostics& found) const {
    std::string all;
    for (const auto& each : found) all += text::draw(each, sources_);
    return all;
  }
  const document::Node& read_text(const std::string& name, const std::string& text) {
    text::Diagnostics found;
    auto tree = document::read(sources_, sources_.add(name, text), {}, found);
    EXPECT_TRUE(tree.has_value()) << words(found);
    trees_.push_back(tree ? std::move(*tree) : document::Node{});
    return trees_.back();
  }
  const document::Node& read_file(const std::filesystem::path& path) {
    std::ifstream in(path, std::ios::binary);
    return read_text(path.string(), std::string{std::istreambuf_iterator<char>(in), {}});
  }

  const std::filesystem::path root_{HEADGATE_SOURCE_DIR};
  text::Sources sources_;
  text::Diagnostics found_;
  std::deque<document::Node> trees_;
  rulebook::Library library_;
  vocabulary::Vocabulary vocabulary_;
  std::optional<rulebook::Place> place_;
  rulebook::Rulebook book_;
};

inline double si(const char* unit) { return quantity::unit(unit)->factor; }

}  // namespace headgate::published
