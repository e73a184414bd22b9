// For the reader alone: a map or list that is still being read, and what is refused about its keys.
#pragma once

#include <string_view>

#include "document/node.hpp"
#include "document/read_text.hpp"

namespace headgate::document {

// In `{length: 5 ft, 6 in}` the comma ends the value and leaves a key that has none.
struct CommaSplit {
  Offset value_begin = 0;  // of the plain value before the comma
  bool after_plain = false;
  Offset left_over = 0;  // the first key without a value
  Offset end = 0;        // of the last such key; 0: nothing is left over
};

struct Frame {
  Node node;
  char closer = 0;      // the brace that ends it; 0 when none was opened
  bool flow = false;    // its children stand inside braces
  bool is_key = false;  // stands where a key should
  Offset column = 0;    // of a block: where its keys or dashes stand

  // Of a map.
  bool waiting = false;  // a key waits for its value
  bool dropped = false;  // that key was refused, and its value goes with it
  Entry pending;
  Offset key_after = 0;  // first byte after the key
  CommaSplit split;
};

// Where a node stands: from its first character, quote or brace to the first byte after it, and where
// the token before it ended.
struct Token {
  Offset gap = 0;
  Offset begin = 0;
  Offset after = 0;
};

void take_key(Frame& frame, Node key, const Token& token, std::string_view text, Findings& found);
void take_value(Frame& frame, Node value, const Token& token, std::string_view text, Findings& found);
void take_item(Frame& frame, Node item, const Token& token, std::string_view text, Findings& found);

// A key without a value, an item without anything in it. Both return the first byte not yet looked at.
Offset miss_value(Frame& frame, std::string_view text, Findings& found);
Offset miss_item(Frame& frame, Offset at, Offset seen_to, std::string_view text, Findings& found);

// Says what can only be said at the end of a map or list: commas that split, keys that stand twice.
void finish(Frame& frame, std::string_view text, Findings& found);

// A forgotten space after the colon of a scalar that stands alone; true when it was.
bool refuse_glued_colon(const Node& scalar, std::string_view text, Findings& found);

}  // namespace headgate::document
