// Reads a text as a file of its own and shows what came of it, for the tests.
//
//   Reading reading("gauge: gauge #12");
//   reading.problems()   // {"1:14 [#12] yaml-comment-cuts: YAML takes … -> put the value in quotes: …"}
//   reading.at("line")   // the value of a key of the top map
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "document/read.hpp"

namespace headgate::document {

struct Reading {
  text::Sources sources;
  text::FileId file = 0;
  text::Diagnostics found;
  std::optional<Node> tree;

  explicit Reading(std::string text, const Caps& caps = {}) {
    file = sources.add("f", std::move(text));
    tree = read(sources, file, caps, found);
  }

  // line:column [text of the range] id: sentence -> hint
  std::vector<std::string> problems() const {
    std::vector<std::string> lines;
    for (const text::Diagnostic& each : found) {
      std::string line = sources.place(each.range).substr(2) + " [" + text::printable(sources.text(each.range)) + "] " +
                         each.id + ": " + each.sentence + " -> " + each.hint;
      if (each.other.known()) line += " | " + sources.place(each.other).substr(2) + " " + each.other_says;
      lines.push_back(std::move(line));
    }
    return lines;
  }

  std::vector<std::string> ids() const {
    std::vector<std::string> ids;
    for (const text::Diagnostic& each : found) ids.push_back(each.id);
    return ids;
  }

  const Node& at(std::string_view key) const {
    static const Node nothing;
    const Node* node = tree ? tree->find(key) : nullptr;
    return node == nullptr ? nothing : *node;
  }

  std::string text_of(const Node& node) const { return std::string(sources.text(node.range)); }
  std::string text_of(const text::Range& range) const { return std::string(sources.text(range)); }
};

}  // namespace headgate::document
