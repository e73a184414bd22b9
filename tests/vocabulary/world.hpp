// A few files in memory, loaded as a vocabulary, and what was said about them in short:
// "2:10 unknown-type: \"presure\" is not a type. (did you mean pressure?)", one a line.
#pragma once

#include <deque>
#include <optional>
#include <string>
#include <vector>

#include "document/read.hpp"
#include "vocabulary/vocabulary.hpp"

namespace headgate::test {

inline std::string in_short(const text::Diagnostic& d, const text::Sources& sources) {
  const auto at = [&](const text::Range& range) {
    const text::Position position = sources.position(range);
    const std::string file = range.file == 0 ? "" : std::string(sources.name(range.file)) + ":";
    return file + std::to_string(position.line) + ":" + std::to_string(position.column);
  };
  std::string line = at(d.range) + " " + d.id + ": " + d.sentence;
  if (!d.hint.empty()) line += " (" + d.hint + ")";
  if (d.other.known()) line += " [" + at(d.other) + ": " + d.other_says + "]";
  return line;
}

inline std::string in_short(text::Diagnostics found, const text::Sources& sources) {
  text::settle(found);
  std::string lines;
  for (const text::Diagnostic& d : found) lines += in_short(d, sources) + "\n";
  return lines;
}

struct World {
  text::Sources sources;
  text::Diagnostics found;
  std::deque<document::Node> trees;  // stay where they are: formulas and texts point into them
  vocabulary::Vocabulary vocabulary;

  const document::Node* read(const std::string& name, const std::string& text) {
    auto tree = document::read(sources, sources.add(name, text), {}, found);
    if (!tree) return nullptr;
    trees.push_back(std::move(*tree));
    return &trees.back();
  }
  std::string said() const { return in_short(found, sources); }
};

inline World load_vocabulary(const std::vector<std::string>& files) {
  World world;
  std::vector<const document::Node*> nodes;
  for (std::size_t i = 0; i < files.size(); ++i) {
    const auto* node = world.read(i == 0 ? "vocabulary.yaml" : "more-" + std::to_string(i) + ".yaml", files[i]);
    if (node) nodes.push_back(node);
  }
  world.vocabulary = vocabulary::load(nodes, world.found);
  return world;
}

}  // namespace headgate::test
