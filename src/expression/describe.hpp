// Types and alternatives in the words of a sentence.
//
//   describe({number, pressure})       "a pressure"
//   describe({choice, pipe-material})  "a pipe-material"
//   listed({"pipe", "wall", "meter"})  "pipe, wall, meter"
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "vocabulary/vocabulary.hpp"

namespace headgate::expression {

std::string describe(const vocabulary::Type& type, const vocabulary::Vocabulary& vocabulary);
std::string with_article(std::string_view noun);                                  // "an area"
std::string listed(const std::vector<std::string>& names, std::size_t most = 8);  // with "…" when there are more
std::string counted(std::size_t count, std::string_view noun);                    // "1 key", "2 keys"
std::vector<std::string> names_of(const vocabulary::ShapeSet& shapes, const vocabulary::Vocabulary& vocabulary);

// Whether a value of one type may stand where the other is asked: kind, dimension, choice.
bool alike(const vocabulary::Type& a, const vocabulary::Type& b);

}  // namespace headgate::expression
