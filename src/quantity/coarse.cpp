#include "quantity/coarse.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "quantity/scan.hpp"

namespace headgate::quantity {

namespace {

constexpr std::size_t none = std::string_view::npos;

// A stretch of the text being read, that knows where in it it stands.
struct Piece {
  std::string_view text;
  std::size_t offset = 0;

  Piece from(std::size_t at) const { return trimmed({text.substr(at), offset + at}); }
  Piece until(std::size_t at) const { return trimmed({text.substr(0, at), offset}); }

  static Piece trimmed(Piece piece) {
    while (begins(piece.text, " ")) piece = {piece.text.substr(1), piece.offset + 1};
    while (!piece.text.empty() && piece.text.back() == ' ') piece.text.remove_suffix(1);
    return piece;
  }
};

Problem about(std::string id, const Piece& piece, std::vector<std::string> arguments) {
  return {std::move(id), piece.offset, piece.text.size(), std::move(arguments)};
}

Read<Quantity> read_at(const Piece& piece, const std::optional<Dimension>& wanted) {
  Read<Quantity> read = read_quantity(piece.text, wanted);
  if (Problem* problem = std::get_if<Problem>(&read)) problem->offset += piece.offset;
  return read;
}

enum class Bound { at_least, more_than, at_most, less_than };

struct Word {
  std::string_view written;
  Bound bound;
};

constexpr std::array<Word, 4> words{{{"at least ", Bound::at_least},
                                     {"more than ", Bound::more_than},
                                     {"at most ", Bound::at_most},
                                     {"less than ", Bound::less_than}}};

// What else people write for them; each is answered with the word to use.
constexpr std::array<Word, 23> other_words{{
    {">=", Bound::at_least},
    {"≥", Bound::at_least},
    {"<=", Bound::at_most},
    {"≤", Bound::at_most},
    {">", Bound::more_than},
    {"<", Bound::less_than},
    {"over ", Bound::more_than},
    {"above ", Bound::more_than},
    {"greater than ", Bound::more_than},
    {"under ", Bound::less_than},
    {"below ", Bound::less_than},
    {"fewer than ", Bound::less_than},
    {"up to ", Bound::at_most},
    {"no more than ", Bound::at_most},
    {"not more than ", Bound::at_most},
    {"maximum ", Bound::at_most},
    {"max ", Bound::at_most},
    {"max. ", Bound::at_most},
    {"no less than ", Bound::at_least},
    {"not less than ", Bound::at_least},
    {"minimum ", Bound::at_least},
    {"min ", Bound::at_least},
    {"min. ", Bound::at_least},
}};

constexpr std::array<std::string_view, 10> vague_words{
    {"about ", "around ", "roughly ", "approximately ", "approx ", "approx. ", "circa ", "ca. ", "~", "≈"}};

std::string_view word_for(Bound bound) {
  for (const Word& word : words) {
    if (word.bound == bound) return word.written;
  }
  return "";
}

std::string without_blank(std::string_view word) { return std::string(word.substr(0, word.find_last_not_of(' ') + 1)); }

Interval bounded(double value, Bound bound, double grid_step) {
  Interval interval;
  switch (bound) {
    case Bound::at_least: interval.lo = value; break;
    case Bound::more_than: interval.lo = value + grid_step; break;
    case Bound::at_most: interval.hi = value; break;
    case Bound::less_than: interval.hi = value - grid_step; break;
  }
  return interval;
}

Read<Coarse> read_bound(const Piece& rest, Bound bound, const std::optional<Dimension>& wanted) {
  Read<Quantity> read = read_at(rest, wanted);
  if (Problem* problem = std::get_if<Problem>(&read)) return std::move(*problem);
  const Quantity& quantity = std::get<Quantity>(read);
  return Coarse{bounded(quantity.si, bound, grid(quantity.dimension)), quantity.dimension, quantity.unit};
}

std::optional<Problem> misworded(const Piece& piece) {
  for (const Word& word : other_words) {
    if (!begins(piece.text, word.written)) continue;
    const std::string right = fmt::format("{}{}", word_for(word.bound), piece.from(word.written.size()).text);
    return about("coarse-word", {piece.text.substr(0, without_blank(word.written).size()), piece.offset},
                 {without_blank(word.written), right});
  }
  for (const std::string_view word : vague_words) {
    if (!begins(piece.text, word)) continue;
    return about("coarse-vague", {piece.text.substr(0, without_blank(word).size()), piece.offset},
                 {without_blank(word), fmt::format("{}", piece.from(word.size()).text)});
  }
  if (begins(piece.text, "one of")) return about("coarse-one-of", piece, {});
  return std::nullopt;
}

// The middle and half of what two ends span, as `43 in +/- 3 in`; "" when they are no two values of one dimension.
std::string middle(const Piece& low, const Piece& high, const std::optional<Dimension>& wanted) {
  const Read<Quantity> second = read_at(high, wanted);
  const Quantity* hi = std::get_if<Quantity>(&second);
  if (hi == nullptr) return "";
  // `40 to 46 in`: the unit stands only once.
  const std::string with_unit = fmt::format("{} {}", low.text, hi->unit == nullptr ? "" : hi->unit->spelling);
  Read<Quantity> first = read_at(low, hi->dimension);
  if (std::get_if<Quantity>(&first) == nullptr) first = read_quantity(with_unit, hi->dimension);
  const Quantity* lo = std::get_if<Quantity>(&first);
  if (lo == nullptr || lo->si > hi->si) return "";
  const bool absolute = hi->dimension.absolute;
  const Dimension margin = absolute ? dimensions::warming : hi->dimension;
  const Unit* margin_unit = absolute && hi->unit != nullptr ? difference_unit(hi->unit->spelling) : hi->unit;
  return fmt::format("{} +/- {}", show(lo->si + (hi->si - lo->si) / 2, hi->dimension, hi->unit),
                     show((hi->si - lo->si) / 2, margin, margin_unit));
}

std::optional<Problem> range(const Piece& piece, const std::optional<Dimension>& wanted) {
  const bool between = begins(piece.text, "between ");
  const Piece ends = between ? piece.from(8) : piece;
  const std::string_view joint = between ? " and " : " to ";
  const std::size_t at = ends.text.find(joint);
  if (at == none || std::holds_alternative<Problem>(read_number(ends.text))) return std::nullopt;
  return about("coarse-range", piece,
               {std::string(piece.text), middle(ends.until(at), ends.from(at + joint.size()), wanted)});
}

struct Joint {
  std::size_t at = none;
  std::size_t length = 0;
};

Joint margin_sign(std::string_view text) {
  for (const std::string_view sign : {"+/-", "±"}) {
    const std::size_t at = text.find(sign);
    if (at != none) return {at, sign.size()};
  }
  return {};
}

// `86 +/- 2 psi`: the answer to the bare number is the unit its margin has.
std::optional<Problem> unit_only_on_margin(const Piece& value, const Piece& margin) {
  const Read<Quantity> read = read_quantity(margin.text);
  const Quantity* quantity = std::get_if<Quantity>(&read);
  if (quantity == nullptr || quantity->unit == nullptr) return std::nullopt;
  return about("number-needs-unit", value,
               {std::string(value.text), name_of(quantity->dimension),
                fmt::format("{} {}", value.text, quantity->unit->spelling)});
}

Read<Coarse> read_margin(const Piece& piece, const Joint& joint, const std::optional<Dimension>& wanted) {
  Read<Quantity> read = read_at(piece.until(joint.at), wanted);
  if (Problem* problem = std::get_if<Problem>(&read)) return std::move(*problem);
  const Quantity& value = std::get<Quantity>(read);

  const Piece written = piece.from(joint.at + joint.length);
  if (value.unit == nullptr) {
    if (auto found = unit_only_on_margin(piece.until(joint.at), written)) return *found;
  }
  Read<Quantity> read_second = read_at(written, value.dimension.absolute ? dimensions::warming : value.dimension);
  if (Problem* problem = std::get_if<Problem>(&read_second)) {
    const bool bare = problem->id == "number-needs-unit" && value.unit != nullptr;
    if (bare) problem->arguments[2] = fmt::format("{} {}", problem->arguments[0], value.unit->spelling);
    return std::move(*problem);
  }
  const double margin = std::get<Quantity>(read_second).si;
  if (margin < 0) return about("coarse-margin-negative", written, {std::string(written.text)});
  return Coarse{{value.si - margin, value.si + margin}, value.dimension, value.unit};
}

// The days of a year, a month or a date.
Read<Interval> read_period(const Piece& piece) {
  const std::string text(piece.text);
  const bool digits = text.find_first_not_of("0123456789-") == std::string::npos;
  const bool year = digits && text.size() == 4 && text.find('-') == std::string::npos;
  const bool month = digits && text.size() == 7 && text.find('-') == 4 && text.rfind('-') == 4;
  Read<Day> first = read_date(year ? text + "-01-01" : month ? text + "-01" : text);
  if (Problem* problem = std::get_if<Problem>(&first)) {
    return about(problem->id == "date-shape" ? "coarse-date-shape" : problem->id, piece,
                 {text, problem->arguments.at(1)});
  }
  const Day day = std::get<Day>(first);
  if (!year && !month) return exactly(day);
  const Civil from = civil(day);
  const bool last_month = year || from.month == 12;
  const Day next = last_month ? day_of({from.year + 1, 1, 1}) : day_of({from.year, from.month + 1, 1});
  return Interval{static_cast<double>(day), static_cast<double>(next - 1)};
}

constexpr std::array<std::string_view, 20> date_misworded{
    {"at least ", "at most ", "more than ", "less than ", "since ", "from ", "until ", "till ",  "by ",    "between ",
     "about ",    "around ",  "circa ",     "ca. ",       "~",      "<",     ">",      "up to ", "one of", "in "}};

}  // namespace

Read<Coarse> read_coarse(std::string_view text, std::optional<Dimension> wanted) {
  const Piece piece = Piece::trimmed({text, 0});
  for (const Word& word : words) {
    if (begins(piece.text, word.written)) return read_bound(piece.from(word.written.size()), word.bound, wanted);
  }
  if (auto found = misworded(piece)) return *found;
  if (const std::size_t sign = piece.text.find("+-"); sign != none) {
    return Problem{"coarse-sign", piece.offset + sign, 2, {"+-"}};
  }
  if (const Joint joint = margin_sign(piece.text); joint.at != none) return read_margin(piece, joint, wanted);
  if (auto found = range(piece, wanted)) return *found;

  Read<Quantity> read = read_at(piece, wanted);
  if (Problem* problem = std::get_if<Problem>(&read)) return std::move(*problem);
  const Quantity& quantity = std::get<Quantity>(read);
  return Coarse{exactly(quantity.si), quantity.dimension, quantity.unit};
}

Read<Interval> read_coarse_date(std::string_view text) {
  const Piece piece = Piece::trimmed({text, 0});
  const bool before = begins(piece.text, "before ");
  const bool after = begins(piece.text, "after ");
  for (const std::string_view word : date_misworded) {
    if (!begins(piece.text, word)) continue;
    const std::string written = without_blank(word);
    return about("coarse-date-word", {piece.text.substr(0, written.size()), piece.offset}, {written});
  }
  Read<Interval> period = read_period(before ? piece.from(7) : after ? piece.from(6) : piece);
  if (Interval* days = std::get_if<Interval>(&period)) {
    if (before) *days = Interval{Interval{}.lo, days->lo - 1};
    if (after) *days = Interval{days->hi + 1, Interval{}.hi};
  }
  return period;
}

}  // namespace headgate::quantity
