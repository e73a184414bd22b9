// How a diagnostic looks: its sentence, the line it is about with the range underlined, its hint.
#include <algorithm>

#include <fmt/format.h>

#include "text/diagnostic.hpp"
#include "text/utf8.hpp"

namespace headgate::text {

namespace {

constexpr std::size_t drawn_columns = 100;
constexpr std::size_t tab_columns = 4;
constexpr std::size_t laid_out_bytes = 4096;

std::string escaped(std::string_view bytes) {
  std::string text;
  for (const char c : bytes) text += fmt::format("\\x{:02x}", static_cast<unsigned char>(c));
  return text;
}

// Characters that a terminal acts on or hides: controls, and the marks that turn the reading direction round, with
// which a line can be made to look like another.
bool acts_on_terminal(std::string_view character) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(character[i]); };
  if (character.size() == 1) return byte(0) < 0x20 || byte(0) == 0x7f;
  if (character.size() == 2) return byte(0) == 0xc2 && byte(1) < 0xa0;
  if (character == "\xef\xbb\xbf") return true;
  if (character.size() != 3 || byte(0) != 0xe2) return false;
  if (byte(1) == 0x80) return (byte(2) >= 0x8b && byte(2) <= 0x8f) || (byte(2) >= 0xa8 && byte(2) <= 0xae);
  return byte(1) == 0x81 && byte(2) >= 0xa0 && byte(2) <= 0xaf;
}

// One character of a drawn line: the bytes it stands for, how it is shown and how wide that is.
struct Cell {
  std::size_t at = 0;
  std::size_t bytes = 1;
  std::string shown;
  std::size_t columns = 1;
};

std::vector<Cell> cells(std::string_view line) {
  std::vector<Cell> all;
  std::size_t column = 0;
  for (std::size_t at = 0; at < line.size();) {
    const std::size_t known = character(line, at);
    const std::string_view bytes = line.substr(at, std::max<std::size_t>(1, known));
    Cell cell{at, bytes.size(), std::string(bytes), 1};
    if (bytes == "\t") {
      cell.columns = tab_columns - column % tab_columns;
      cell.shown = std::string(cell.columns, ' ');
    } else if (known == 0 || acts_on_terminal(bytes)) {
      cell.shown = escaped(bytes);
      cell.columns = cell.shown.size();
    }
    column += cell.columns;
    at += bytes.size();
    all.push_back(std::move(cell));
  }
  return all;
}

// Cells [begin, end) of a line.
struct Stretch {
  std::size_t begin = 0;
  std::size_t end = 0;
};

// The cells that hold bytes [begin, end) of the line; a range that begins inside a character has all of it.
Stretch marked(const std::vector<Cell>& all, std::size_t begin, std::size_t end) {
  const auto first = std::find_if(all.begin(), all.end(), [&](const Cell& c) { return c.at + c.bytes > begin; });
  const auto last = std::find_if(first, all.end(), [&](const Cell& c) { return c.at >= end; });
  return {static_cast<std::size_t>(first - all.begin()), static_cast<std::size_t>(last - all.begin())};
}

// As many cells round the marked ones as fit: a third of the room before them, the rest after.
Stretch window(const std::vector<Cell>& all, Stretch mark) {
  std::size_t columns = 0;
  for (const Cell& cell : all) columns += cell.columns;
  if (columns <= drawn_columns) return {0, all.size()};

  Stretch shown{std::min(mark.begin, all.size()), std::min(mark.begin, all.size())};
  std::size_t used = 0;
  const auto widen_left = [&](std::size_t limit) {
    while (shown.begin > 0 && used + all[shown.begin - 1].columns <= limit) used += all[--shown.begin].columns;
  };
  widen_left(drawn_columns / 3);
  while (shown.end < all.size() && used + all[shown.end].columns <= drawn_columns) used += all[shown.end++].columns;
  widen_left(drawn_columns);
  return shown;
}

std::string excerpt(const Sources& sources, const Range& range) {
  const Position position = sources.position(range);
  if (position.line == 0) return "";
  std::string_view line = sources.line(range.file, position.line);
  const std::size_t start = sources.line_begin(range.file, position.line);
  std::size_t begin = std::min<std::size_t>(range.begin > start ? range.begin - start : 0, line.size());
  std::size_t end = std::min<std::size_t>(range.end > start ? range.end - start : 0, line.size());
  // Of a line of megabytes only the part round the range is laid out.
  std::size_t cut = begin > laid_out_bytes / 2 ? begin - laid_out_bytes / 2 : 0;
  while (cut < begin && (static_cast<unsigned char>(line[cut]) & 0xc0U) == 0x80U) ++cut;
  const bool cut_after = line.size() - cut > laid_out_bytes;
  line = line.substr(cut, laid_out_bytes);
  begin -= cut;
  end = std::min(std::max(end, begin + cut) - cut, line.size());

  const std::vector<Cell> all = cells(line);
  const Stretch mark = marked(all, begin, std::max(begin, end));
  const Stretch shown = window(all, mark);
  const bool more_before = shown.begin > 0 || cut > 0;
  std::string text = more_before ? "…" : "";
  std::string underline(more_before ? 1 : 0, ' ');
  std::size_t carets = 0;
  for (std::size_t i = shown.begin; i < shown.end; ++i) {
    text += all[i].shown;
    if (i < mark.begin) underline.append(all[i].columns, ' ');
    if (i >= mark.begin && i < mark.end) carets += all[i].columns;
  }
  if (shown.end < all.size() || cut_after) text += "…";
  underline.append(std::max<std::size_t>(1, carets), '^');

  const std::string number = std::to_string(position.line);
  return fmt::format("  {} | {}\n  {} | {}\n", number, text, std::string(number.size(), ' '), underline);
}

std::string with_place(const Sources& sources, const Range& range, std::string_view rest) {
  const std::string place = sources.place(range);
  return place.empty() ? fmt::format("{}\n", rest) : fmt::format("{}: {}\n", printable(place), rest);
}

}  // namespace

std::string printable(std::string_view text) {
  std::string safe;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t known = character(text, at);
    const std::string_view bytes = text.substr(at, std::max<std::size_t>(1, known));
    if (known == 0 || acts_on_terminal(bytes)) {
      safe += escaped(bytes);
    } else {
      safe += bytes;
    }
    at += bytes.size();
  }
  return safe;
}

std::string draw(const Diagnostic& diagnostic, const Sources& sources) {
  const std::string_view severity = diagnostic.severity == Severity::error ? "error" : "warning";
  std::string text =
      with_place(sources, diagnostic.range,
                 fmt::format("{}: {} [{}]", severity, printable(diagnostic.sentence), printable(diagnostic.id)));
  text += excerpt(sources, diagnostic.range);
  if (diagnostic.other.known() || !diagnostic.other_says.empty()) {
    text += "  " + with_place(sources, diagnostic.other, printable(diagnostic.other_says));
    text += excerpt(sources, diagnostic.other);
  }
  if (!diagnostic.hint.empty()) text += fmt::format("  hint: {}\n", printable(diagnostic.hint));
  return text;
}

}  // namespace headgate::text
