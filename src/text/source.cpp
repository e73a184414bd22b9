#include "text/source.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "text/utf8.hpp"

namespace headgate::text {

namespace {

constexpr std::string_view byte_order_mark = "\xef\xbb\xbf";

std::vector<std::uint32_t> starts_of_lines(std::string_view text) {
  // An editor does not count a byte order mark as a column, so the first line begins after it.
  std::vector<std::uint32_t> starts{text.substr(0, byte_order_mark.size()) == byte_order_mark ? std::uint32_t{3}
                                                                                              : std::uint32_t{0}};
  for (std::size_t at = text.find('\n'); at != std::string_view::npos; at = text.find('\n', at + 1)) {
    starts.push_back(static_cast<std::uint32_t>(at + 1));
  }
  return starts;
}

}  // namespace

Range part(const Range& outer, std::size_t offset, std::size_t length) {
  const std::size_t size = outer.end > outer.begin ? outer.end - outer.begin : 0;
  const std::size_t begin = std::min(offset, size);
  const std::size_t end = begin + std::min(length, size - begin);
  return {outer.file, static_cast<std::uint32_t>(outer.begin + begin), static_cast<std::uint32_t>(outer.begin + end)};
}

Range join(const Range& first, const Range& last) {
  if (!first.known() || first.file != last.file) return first;
  return {first.file, std::min(first.begin, last.begin), std::max(first.end, last.end)};
}

FileId Sources::add(std::string name, std::string text) {
  std::vector<std::uint32_t> starts = starts_of_lines(text);
  files_.push_back({std::move(name), std::move(text), std::move(starts)});
  return static_cast<FileId>(files_.size() - 1);
}

Range Sources::add_whole(std::string name, const std::string& text) {
  return {add(std::move(name), text), 0, static_cast<std::uint32_t>(text.size())};
}

std::string_view Sources::name(FileId file) const {
  return file < files_.size() ? std::string_view(files_[file].name) : std::string_view();
}

std::string_view Sources::text(FileId file) const {
  return file < files_.size() ? std::string_view(files_[file].text) : std::string_view();
}

std::string_view Sources::text(const Range& range) const {
  const std::string_view whole = text(range.file);
  const std::size_t begin = std::min<std::size_t>(range.begin, whole.size());
  const std::size_t end = std::min<std::size_t>(range.end, whole.size());
  return end > begin ? whole.substr(begin, end - begin) : whole.substr(begin, 0);
}

Position Sources::position(const Range& range) const {
  if (range.file >= files_.size()) return {};
  const File& file = files_[range.file];
  const auto at = static_cast<std::uint32_t>(std::min<std::size_t>(range.begin, file.text.size()));
  const auto after = std::upper_bound(file.line_starts.begin(), file.line_starts.end(), at);
  const auto index = after == file.line_starts.begin() ? 0 : after - file.line_starts.begin() - 1;
  const std::uint32_t start = file.line_starts[static_cast<std::size_t>(index)];
  const std::string_view before =
      at > start ? std::string_view(file.text).substr(start, at - start) : std::string_view();
  return {static_cast<std::uint32_t>(index + 1), static_cast<std::uint32_t>(count_characters(before) + 1)};
}

std::string Sources::place(const Range& range) const {
  if (range.file >= files_.size()) return "";
  const Position at = position(range);
  return fmt::format("{}:{}:{}", files_[range.file].name, at.line, at.column);
}

std::string_view Sources::line(FileId file, std::uint32_t line) const {
  if (file >= files_.size() || line == 0 || line > files_[file].line_starts.size()) return {};
  const std::string_view whole = files_[file].text;
  const std::size_t begin = files_[file].line_starts[line - 1];
  std::string_view rest = whole.substr(std::min(begin, whole.size()));
  rest = rest.substr(0, rest.find('\n'));
  if (!rest.empty() && rest.back() == '\r') rest.remove_suffix(1);
  return rest;
}

std::size_t Sources::line_begin(FileId file, std::uint32_t line) const {
  if (file >= files_.size() || line == 0 || line > files_[file].line_starts.size()) return 0;
  return files_[file].line_starts[line - 1];
}

}  // namespace headgate::text
