#include "vocabulary/names.hpp"

#include <algorithm>
#include <iterator>

#include "text/diagnostic.hpp"

namespace headgate::vocabulary {
namespace {

bool between_words(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == '-'; }

constexpr std::string_view grammar_words[] = {
    "above", "after", "and", "approved", "as", "base", "before", "below", "by", "comes", "confirmed", "count", "else",
    "every", "fitted", "for", "greatest", "has", "if", "in", "is", "least", "limit", "no", "none", "not", "of", "one",
    "or", "ordered", "recorded", "right", "same", "some", "sum", "then", "where", "yes",
    // Not of the grammar, but of the files: a list's end and a fact nobody knows.
    "more", "unknown"};

}  // namespace

bool is_grammar_word(std::string_view text) {
  return std::find(std::begin(grammar_words), std::end(grammar_words), text) != std::end(grammar_words);
}

std::string folded(std::string_view text) {
  std::string result;
  for (const char c : text) {
    if (!between_words(c)) {
      result += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    } else if (!result.empty() && result.back() != ' ') {
      result += ' ';
    }
  }
  if (!result.empty() && result.back() == ' ') result.pop_back();
  return result;
}

std::string in_words(std::string_view name) {
  std::string result(name);
  std::replace(result.begin(), result.end(), '-', ' ');
  return result;
}

std::string join(const std::vector<std::string>& words, std::string_view between) {
  std::string result;
  for (const std::string& word : words) {
    if (!result.empty()) result += between;
    result += word;
  }
  return result;
}

std::string offer(std::string_view word, const std::vector<std::string>& candidates, std::size_t most) {
  if (const auto near = text::nearest(word, candidates)) return *near;
  if (candidates.empty() || candidates.size() > most) return "";
  return candidates.size() == 1 ? candidates.front() : "one of " + join(candidates);
}

}  // namespace headgate::vocabulary
