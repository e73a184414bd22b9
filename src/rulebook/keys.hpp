// What the readers of sources, tables, rules and places share: keys, texts, names and dates, each
// problem said at its place. Not for other layers.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "document/node.hpp"
#include "quantity/calendar.hpp"
#include "text/diagnostic.hpp"

namespace headgate::rulebook {

using Names = std::vector<std::string>;

// `what` as in "A limit": the sentence begins with it.
bool expect_map(const document::Node& node, std::string_view what, text::Diagnostics& found);
void expect_keys(const document::Node& map, const Names& keys, std::string_view what, text::Diagnostics& found);
bool expect_name(const document::Entry& entry, text::Diagnostics& found);

// The map under a key; nullptr when there is none, or it is no map (which is said).
const document::Node* map_of(const document::Node& map, std::string_view key, text::Diagnostics& found);
// The scalar under a key; "" when there is none, or it is no scalar (which is said).
std::string text_of(const document::Node& map, std::string_view key, text::Diagnostics& found);
// The scalars of a list, or a single one.
std::vector<const document::Node*> words_of(const document::Node& node, text::Diagnostics& found);

std::optional<quantity::Day> day_of(const document::Node& map, std::string_view key, text::Diagnostics& found);

// The index of a word among those allowed; what is none of them is said with id, word, and the nearest or, while there
// are at most `most`, all of them.
std::optional<std::size_t> one_of(const document::Node& word, const Names& allowed, std::string_view id,
                                  text::Diagnostics& found, std::size_t most = 16);

// A scalar node that is part of another one, with its own range.
document::Node piece(const document::Node& whole, std::size_t offset, std::size_t length);

std::string join(const Names& names, std::string_view between = ", ");

}  // namespace headgate::rulebook
