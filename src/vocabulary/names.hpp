// Which names are taken by the grammar, and how loosely trade spellings are matched.
//
//   is_grammar_word("before")    true: no kind, member or limit may be called so
//   folded("  Type  K-Copper ")  "type k copper": so `both faces` is the member both-faces
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace headgate::vocabulary {

bool is_grammar_word(std::string_view text);  // and, or, some, before, … : may only stand after a dot
std::string folded(std::string_view text);    // lower case, trimmed, one blank for blanks and hyphens
std::string in_words(std::string_view name);  // "finished-grade" -> "finished grade"
std::string join(const std::vector<std::string>& words, std::string_view between = ", ");

// What a hint offers for a mistyped word: the nearest candidate, else "one of a, b, c" while there are
// at most `most`, else "".
std::string offer(std::string_view word, const std::vector<std::string>& candidates, std::size_t most = 12);

}  // namespace headgate::vocabulary
