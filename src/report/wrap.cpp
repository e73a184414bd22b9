#include <algorithm>

#include "report/report.hpp"
#include "text/diagnostic.hpp"

namespace headgate::report {

namespace {

std::size_t columns(std::string_view text) {
  std::size_t count = 0;
  for (const char c : text) count += (static_cast<unsigned char>(c) & 0xC0U) != 0x80U ? 1 : 0;
  return count;
}

}  // namespace

std::string wrapped(const std::string& first, const std::string& words, std::size_t indent, std::size_t width) {
  std::string out = text::printable(first);
  std::size_t at = columns(out);
  bool fresh = true;  // nothing but the indent on this line yet
  std::size_t from = 0;
  while (from < words.size()) {
    const std::size_t end = std::min(words.find_first_of(" \n", from), words.size());
    const std::string word = text::printable(words.substr(from, end - from));
    from = end + 1;
    if (word.empty()) continue;
    const std::size_t wide = columns(word);
    if (!fresh && at + 1 + wide > width) {
      out += '\n' + std::string(indent, ' ');
      at = indent;
      fresh = true;
    }
    if (!fresh) {
      out += ' ';
      ++at;
    }
    out += word;
    at += wide;
    fresh = false;
  }
  return out + '\n';
}

}  // namespace headgate::report
