// The strict tree of one YAML or JSON file: maps, lists and scalars, every one with its range.
// Nothing is typed here: every scalar is text (`no`, `1e3`, `3/4 in` stay what was written).
//
//   name: Quay House          map {"name": scalar "Quay House"}
//   line: [strainer]          list of one scalar
//
//   gauge: gauge #12       no tree: YAML would drop "#12", so the reader refuses it (read.hpp)
//
// The tree holds no duplicate keys, anchors, aliases or tags; after a read without errors no empty
// values either.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "text/source.hpp"

namespace headgate::document {

struct Entry;

struct Node {
  enum class Kind { scalar, map, list };
  enum class Style { plain, quoted, block };  // block: a literal `|` scalar

  Kind kind = Kind::scalar;
  Style style = Style::plain;
  bool in_braces = false;  // stands inside { } or [ ]: no place for an expression
  // Of a scalar: its text without quotes; of a block: its first line's first character to its last
  // line's end; of a map or list: first to last character, braces included.
  text::Range range;
  std::string scalar;                       // decoded text; of a block: lines joined by \n as YAML gives them
  std::vector<Entry> entries;               // of a map, in written order
  std::vector<Node> items;                  // of a list, in written order
  std::vector<std::uint32_t> line_offsets;  // of a block: file offset of each line's first character

  // Where bytes [offset, offset + length) of `scalar` stand in the file, never outside `range`. Exact
  // but for quoted text with escapes in it, which are longer in the file than in `scalar`.
  text::Range range_of(std::size_t offset, std::size_t length) const;

  bool is_scalar() const { return kind == Kind::scalar; }
  bool is_map() const { return kind == Kind::map; }
  bool is_list() const { return kind == Kind::list; }
  const Node* find(std::string_view key) const;    // of a map; nullptr when it has no such key
  const Entry* entry(std::string_view key) const;  // likewise, with the key's range
};

struct Entry {
  std::string key;
  text::Range key_range;
  Node value;
};

// Lower case, digits and single hyphens, from a letter on: how keys, names and members are written.
// "least-cover" is one; "Least cover", "least--cover" and "3/4 in" are not. The reader keeps every
// key as written; the layer that knows what may stand there asks.
bool is_name(std::string_view key);

}  // namespace headgate::document
