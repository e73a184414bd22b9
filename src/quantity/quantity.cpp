// Reads a quantity: a number, its unit, and where feet and inches go together a second of both.
#include <algorithm>

#include "quantity/scan.hpp"
#include "quantity/unit.hpp"

namespace headgate::quantity {

namespace {

std::size_t skip_spaces(std::string_view text, std::size_t at) {
  while (begins(text, at, " ")) ++at;
  return at;
}

// Bytes of the mark that begins at `at`: marks stand directly after their number and end by themselves.
std::size_t mark_length(std::string_view text, std::size_t at) {
  for (const std::string_view mark : {"\"", "'", "″", "′", "”", "’", "%"}) {
    if (begins(text, at, mark)) return mark.size();
  }
  return 0;
}

std::size_t unit_end(std::string_view text, std::size_t at) {
  const std::size_t mark = mark_length(text, at);
  // Two apostrophes are someone's inch mark: kept together, so that the answer is about both.
  if (begins(text, at, "''")) return at + 2;
  return mark > 0 ? at + mark : std::min(text.find(' ', at), text.size());
}

// A number and its unit, in text[begin, end); without a unit `unit` is nullptr.
struct Part {
  double value = 0;
  const Unit* unit = nullptr;
  std::size_t begin = 0;
  std::size_t number_end = 0;
  std::size_t end = 0;
};

std::string copy(std::string_view text, std::size_t begin, std::size_t end) {
  return std::string(text.substr(begin, end - begin));
}

// The number as its writer would have it without the spaces: `3 / 4`, `1 1/2`, `1 - 1/2`, `1 000`; "" when none fits.
std::string closed_up(std::string_view written) {
  std::string tight;
  std::string dashed;
  for (std::size_t at = 0; at < written.size(); ++at) {
    const char c = written[at];
    if (c != ' ') {
      tight += c;
      dashed += c;
    } else if (at > 0 && digit_at(written, at - 1) && digit_at(written, at + 1)) {
      dashed += '-';
    }
  }
  const auto whole = [](const std::string& text) {
    const Read<Number> read = read_number(text);
    const Number* number = std::get_if<Number>(&read);
    return number != nullptr && number->used == text.size();
  };
  if (whole(dashed)) return dashed;
  return whole(tight) ? tight : "";
}

// A number that goes on after a space.
std::optional<Problem> spaced_number(std::string_view text, std::size_t begin, std::size_t number_end) {
  const std::size_t next = skip_spaces(text, number_end);
  const bool goes_on =
      next > number_end && (digit_at(text, next) || begins(text, next, "/") || begins(text, next, "-"));
  if (!goes_on) return std::nullopt;
  std::size_t end = std::min(text.find_first_not_of("0123456789/-. ", begin), text.size());
  while (text[end - 1] == ' ') --end;
  return Problem{
      "number-spaced", begin, end - begin, {copy(text, begin, end), closed_up(text.substr(begin, end - begin))}};
}

std::optional<Problem> decimal_comma(std::string_view text, std::size_t begin, std::size_t number_end) {
  if (!begins(text, number_end, ",") || !digit_at(text, number_end + 1)) return std::nullopt;
  std::size_t end = number_end + 1;
  while (digit_at(text, end)) ++end;
  std::string right = copy(text, begin, end);
  const bool one_comma = right.find('.') == std::string::npos;
  right.replace(number_end - begin, 1, one_comma ? "." : "");
  return Problem{"number-comma", number_end, 1, {copy(text, begin, end), std::move(right)}};
}

std::string nearest_unit(std::string_view written, const std::optional<Dimension>& wanted) {
  std::vector<std::string> fitting;
  const std::vector<std::string> all = unit_spellings();
  for (const std::string& spelling : all) {
    if (wanted && unit_of(spelling, *wanted)->dimension == *wanted) fitting.push_back(spelling);
  }
  if (const auto near = text::nearest(written, fitting)) return *near;
  return text::nearest(written, all).value_or("");
}

Problem unknown_unit(std::string_view written, std::size_t at, const std::optional<Dimension>& wanted) {
  if (written == "''") return {"unknown-unit", at, written.size(), {"''", "\""}};
  for (const std::string_view span :
       {"day", "days", "week", "weeks", "month", "months", "year", "years", "business-days"}) {
    if (written == span) return {"span-as-quantity", at, written.size(), {std::string(span)}};
  }
  return {"unknown-unit", at, written.size(), {std::string(written), nearest_unit(written, wanted)}};
}

Read<Part> read_part(std::string_view text, std::size_t begin, const std::optional<Dimension>& wanted) {
  Read<Number> read = read_number(text.substr(begin));
  if (Problem* problem = std::get_if<Problem>(&read)) {
    problem->offset += begin;
    return std::move(*problem);
  }
  const Number& number = std::get<Number>(read);
  Part part{number.value, nullptr, begin, begin + number.used, begin + number.used};
  if (auto found = spaced_number(text, begin, part.number_end)) return *found;
  if (auto found = decimal_comma(text, begin, part.number_end)) return *found;

  const std::size_t unit_begin = skip_spaces(text, part.number_end);
  if (unit_begin == text.size()) return part;
  part.end = unit_end(text, unit_begin);
  const std::string_view written = text.substr(unit_begin, part.end - unit_begin);
  part.unit = wanted ? unit_of(written, *wanted) : unit(written);
  if (part.unit == nullptr) return unknown_unit(written, unit_begin, wanted);
  const bool direct = mark_length(text, unit_begin) > 0 || begins(written, 0, "°");
  if (unit_begin == part.number_end && !direct) {
    return Problem{"unit-needs-space",
                   begin,
                   part.end - begin,
                   {copy(text, begin, part.end), copy(text, begin, unit_begin) + " " + std::string(written)}};
  }
  return part;
}

std::string spelling_for(const Dimension& wanted) {
  const Unit* shown = customary(wanted);
  return shown == nullptr ? "" : std::string(shown->spelling);
}

Problem needs_unit(std::string_view text, const Part& part, const Dimension& wanted) {
  const std::string number = copy(text, part.begin, part.number_end);
  const std::string spelling = spelling_for(wanted);
  return {"number-needs-unit",
          part.begin,
          part.end - part.begin,
          {number, name_of(wanted), spelling.empty() ? "" : number + " " + spelling}};
}

std::optional<Problem> unwanted(std::string_view text, const Part& first, std::size_t end,
                                const std::optional<Dimension>& wanted) {
  if (!wanted) return std::nullopt;
  if (first.unit == nullptr) {
    if (wanted->plain()) return std::nullopt;
    return needs_unit(text, first, *wanted);
  }
  if (first.unit->dimension == *wanted) return std::nullopt;
  return Problem{
      "wrong-dimension",
      first.begin,
      end - first.begin,
      {copy(text, first.begin, end), name_of(first.unit->dimension), name_of(*wanted), spelling_for(*wanted)}};
}

// `5 ft 6 in`: the second goes on with the first in a smaller unit, and stays below one of the larger.
bool goes_together(std::string_view text, const Part& first, const Part& second) {
  if (first.unit == nullptr || second.unit == nullptr) return false;
  const Dimension& dimension = first.unit->dimension;
  if (dimension != second.unit->dimension) return false;
  if (dimension != dimensions::length && dimension != dimensions::time) return false;
  const bool whole =
      text.substr(first.begin, first.number_end - first.begin).find_first_of("./") == std::string_view::npos;
  return whole && !begins(text, second.begin, "-") &&
         snap(second.value * second.unit->factor, grid(dimension)) < snap(first.unit->factor, grid(dimension));
}

Read<Quantity> read_compound(std::string_view text, const Part& first, std::size_t begin,
                             const std::optional<Dimension>& wanted) {
  Read<Part> read = read_part(text, begin, wanted);
  if (Problem* problem = std::get_if<Problem>(&read)) return std::move(*problem);
  const Part& second = std::get<Part>(read);
  if (second.unit == nullptr) {
    return needs_unit(text, second, first.unit->dimension);
  }
  const std::size_t rest = skip_spaces(text, second.end);
  if (rest < text.size())
    return Problem{"text-after-quantity", rest, text.size() - rest, {copy(text, rest, text.size())}};
  if (!goes_together(text, first, second)) {
    return Problem{"compound-unfit", first.begin, second.end - first.begin, {copy(text, first.begin, second.end)}};
  }
  if (auto found = unwanted(text, first, second.end, wanted)) return *found;
  const double sign = begins(text, first.begin, "-") ? -1 : 1;
  const double si = first.value * first.unit->factor + sign * second.value * second.unit->factor;
  return Quantity{si, first.unit->dimension, first.unit};
}

}  // namespace

Read<Quantity> read_quantity(std::string_view text, std::optional<Dimension> wanted) {
  const std::size_t begin = skip_spaces(text, 0);
  while (text.size() > begin && text.back() == ' ') text.remove_suffix(1);
  if (begin >= text.size()) return Problem{"quantity-empty", text.size(), 0, {}};

  Read<Part> read = read_part(text, begin, wanted);
  if (Problem* problem = std::get_if<Problem>(&read)) return std::move(*problem);
  const Part& first = std::get<Part>(read);
  const std::size_t rest = skip_spaces(text, first.end);
  if (rest < text.size()) {
    if (digit_at(text, rest)) return read_compound(text, first, rest, wanted);
    if (begins(text, rest, "-") && digit_at(text, rest + 1)) {  // 5'-6" as drawings have it
      return Problem{
          "compound-dash",
          begin,
          text.size() - begin,
          {copy(text, begin, text.size()), copy(text, begin, rest) + " " + copy(text, rest + 1, text.size())}};
    }
    return Problem{"text-after-quantity", rest, text.size() - rest, {copy(text, rest, text.size())}};
  }
  if (auto found = unwanted(text, first, first.end, wanted)) return *found;
  if (first.unit == nullptr) return Quantity{first.value, dimensions::none, nullptr};
  return Quantity{first.value * first.unit->factor + first.unit->offset, first.unit->dimension, first.unit};
}

}  // namespace headgate::quantity
