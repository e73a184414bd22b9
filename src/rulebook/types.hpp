// The types a limit, a table's key or a column may say. Not for other layers.
//
//   read_type(node "list of pipe-material", …)   -> {choice pipe-material}, list
//   read_type(node "presure", …)                 -> nothing, and "type-unknown" with the nearest
#pragma once

#include <optional>

#include "document/node.hpp"
#include "text/diagnostic.hpp"
#include "vocabulary/vocabulary.hpp"

namespace headgate::rulebook {

struct StatedType {
  vocabulary::Type type;
  bool list = false;
};

// `mark` is {level}: its values carry a MarkId. A kind's or group's name is {kind} over its kinds.
std::optional<StatedType> read_type(const document::Node& node, const vocabulary::Vocabulary& vocabulary,
                                    text::Diagnostics& found);

// One value that is no expression: read_value, and marks and kinds besides. Present, none or unknown.
vocabulary::Value read_plain(const document::Node& node, const vocabulary::Type& type,
                             const vocabulary::Vocabulary& vocabulary, text::Diagnostics& found);

// A month as 30, a year as 365: only to tell a plausible span from a slip.
double days_in(quantity::Span::Unit unit);

// `1 to 2`, `101 and up`, `up to 3`, both ends in; or one value. Spans in days.
vocabulary::Value read_range(const document::Node& node, const vocabulary::Type& type,
                             const vocabulary::Vocabulary& vocabulary, text::Diagnostics& found);

}  // namespace headgate::rulebook
