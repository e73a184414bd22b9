// Which known word a slip was meant to be.
#include <algorithm>

#include "text/diagnostic.hpp"

namespace headgate::text {

namespace {

constexpr std::size_t longest_word = 64;  // nobody mistypes a paragraph, and the distance costs length squared

std::string folded(std::string_view word) {
  std::string lower(word);
  for (char& c : lower) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return lower;
}

std::size_t slips_allowed(std::size_t length) {
  if (length < 4) return length / 2;
  return std::max<std::size_t>(2, length / 3);
}

// Edit distance in which two neighbours that changed places count once.
std::size_t distance(const std::string& a, const std::string& b) {
  std::vector<std::size_t> before(b.size() + 1);
  std::vector<std::size_t> above(b.size() + 1);
  std::vector<std::size_t> row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) above[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t changed = above[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({changed, above[j] + 1, row[j - 1] + 1});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) row[j] = std::min(row[j], before[j - 2] + 1);
    }
    before.swap(above);
    above.swap(row);
  }
  return above[b.size()];
}

}  // namespace

std::optional<std::string> nearest(std::string_view word, const std::vector<std::string>& candidates) {
  if (word.empty() || word.size() > longest_word) return std::nullopt;
  const std::string wanted = folded(word);
  std::size_t best = slips_allowed(word.size());
  const std::string* found = nullptr;
  for (const std::string& candidate : candidates) {
    const std::size_t gap = std::max(candidate.size(), word.size()) - std::min(candidate.size(), word.size());
    if (candidate.empty() || gap > best) continue;
    const std::size_t slips = distance(wanted, folded(candidate));
    const bool first_of_equals = slips == best && (found == nullptr || candidate < *found);
    if (slips < best || first_of_equals) {
      best = slips;
      found = &candidate;
    }
  }
  return found == nullptr ? std::nullopt : std::optional<std::string>(*found);
}

}  // namespace headgate::text
