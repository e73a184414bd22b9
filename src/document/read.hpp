// Reads one YAML (or JSON) file into the strict tree, and says everything that is wrong with it.
// The only header through which yaml-cpp is reached, and it does not show.
//
//   Diagnostics found;
//   auto tree = read(sources, file, {}, found);   // "name: Quay House" -> a map
//   read of "gauge: gauge #12" -> a diagnostic `yaml-comment-cuts` at the `#`, with the advice to quote it
#pragma once

#include <optional>

#include "document/node.hpp"
#include "text/diagnostic.hpp"

namespace headgate::document {

// Caps on what a file may hold. Real files are a few kilobytes and five levels deep; past these a
// file is a mistake or an attack, and reading on would cost memory and time without use.
struct Caps {
  std::size_t file_bytes = 4U << 20U;     // 4 MiB
  std::size_t depth = 32;                 // maps and lists inside one another
  std::size_t line_bytes = 64U << 10U;    // 64 KiB: YAML reads a long line again and again
  std::size_t scalar_bytes = 64U << 10U;  // 64 KiB
  std::size_t nodes = 200'000;
  std::size_t diagnostics = 50;  // further ones are counted, not listed
};

// nullopt only when nothing could be read; the tree is meant for use only while `found` has no errors,
// but is returned as far as it goes so that later layers can report their own findings together.
std::optional<Node> read(const text::Sources& sources, text::FileId file, const Caps& caps, text::Diagnostics& found);

}  // namespace headgate::document
