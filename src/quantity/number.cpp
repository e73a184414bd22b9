// Reads a plain number. Half of it is what people write instead, so that the answer can be the right spelling.
#include <algorithm>
#include <array>
#include <cstdlib>

#include <fmt/format.h>

#include "quantity/scan.hpp"
#include "quantity/unit.hpp"

namespace headgate::quantity {

namespace {

constexpr std::size_t longest_number = 40;

std::size_t digits_end(std::string_view text, std::size_t at) {
  while (digit_at(text, at)) ++at;
  return at;
}

std::string_view word_at_start(std::string_view text) { return text.substr(0, text.find(' ')); }

Problem problem(std::string id, std::size_t offset, std::size_t length, std::vector<std::string> arguments) {
  return {std::move(id), offset, length, std::move(arguments)};
}

// About a whole word, with the right spelling of it ("" when there is none to offer).
Problem misspelt(std::string id, std::string_view word, std::string right) {
  return problem(std::move(id), 0, word.size(), {std::string(word), std::move(right)});
}

constexpr std::array<double, 23> powers_of_ten{1e0,  1e1,  1e2,  1e3,  1e4,  1e5,  1e6,  1e7,  1e8,  1e9,  1e10, 1e11,
                                               1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22};

// Correctly rounded. Up to 15 digits the number and the power of ten are exact, so one division rounds once; past that
// strtod reads digits and an exponent, which leaves no decimal point for a locale to spell.
double decimal(std::string_view whole, std::string_view after_point) {
  std::array<char, longest_number + 8> digits{};
  std::size_t count = 0;
  for (const std::string_view part : {whole, after_point}) {
    for (const char c : part) {
      if (count > 0 || c != '0') digits[count++] = c;
    }
  }
  if (count <= 15 && after_point.size() < powers_of_ten.size()) {
    std::uint64_t value = 0;
    for (std::size_t i = 0; i < count; ++i) value = value * 10 + static_cast<std::uint64_t>(digits[i] - '0');
    return static_cast<double>(value) / powers_of_ten[after_point.size()];
  }
  fmt::format_to(digits.data() + count, "e-{}", after_point.size());
  return std::strtod(digits.data(), nullptr);
}

struct Glyph {
  std::string_view glyph;
  std::string_view fraction;
};
constexpr std::array<Glyph, 9> fraction_glyphs{{{"½", "1/2"},
                                                {"¼", "1/4"},
                                                {"¾", "3/4"},
                                                {"⅛", "1/8"},
                                                {"⅜", "3/8"},
                                                {"⅝", "5/8"},
                                                {"⅞", "7/8"},
                                                {"⅓", "1/3"},
                                                {"⅔", "2/3"}}};

// `½`, `1½`, `1 ½`: the digits before it end at `at`.
std::optional<Problem> fraction_glyph(std::string_view text, std::size_t at) {
  const std::string whole(text.substr(0, at));
  const std::size_t place = at > 0 && begins(text, at, " ") ? at + 1 : at;
  for (const Glyph& entry : fraction_glyphs) {
    if (!begins(text, place, entry.glyph)) continue;
    const std::string right = whole + (whole.empty() ? "" : "-") + std::string(entry.fraction);
    return problem("number-fraction-glyph", 0, place + entry.glyph.size(),
                   {std::string(text.substr(0, place + entry.glyph.size())), right});
  }
  return std::nullopt;
}

// A dash of another kind than the hyphen: minus sign, en dash.
std::optional<Problem> other_dash(std::string_view text, std::size_t at) {
  for (const std::string_view dash : {"−", "–", "—"}) {
    if (!begins(text, at, dash) || !digit_at(text, at + dash.size())) continue;
    const std::string_view word = word_at_start(text);
    std::string right(word);
    right.replace(at, dash.size(), "-");
    return problem("number-dash", at, dash.size(), {std::string(word), right});
  }
  return std::nullopt;
}

bool is_not_finite(std::string_view word) {
  std::string lower(word.substr(0, 10));
  for (char& c : lower) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  if (!lower.empty() && lower[0] == '-') lower.erase(0, 1);
  return lower == "nan" || lower == "inf" || lower == "infinity" || lower == "∞";
}

// What stands where a number should begin.
Problem no_number(std::string_view text) {
  const std::string_view word = word_at_start(text);
  if (auto found = fraction_glyph(text, 0)) return *found;
  if (auto found = other_dash(text, 0)) return *found;
  if (begins(text, 0, "+") && digit_at(text, 1)) return misspelt("number-plus", word, std::string(word.substr(1)));
  if (begins(text, 0, ".") && digit_at(text, 1)) return misspelt("number-point", word, "0" + std::string(word));
  if (begins(text, 0, "-.") && digit_at(text, 2)) {
    return misspelt("number-point", word, "-0" + std::string(word.substr(1)));
  }
  if (is_not_finite(word)) return problem("number-not-finite", 0, word.size(), {std::string(word)});
  return problem("number-expected", 0, word.size(), {std::string(word)});
}

// `1,000` or `1_000`: groups of three digits.
std::optional<Problem> thousands(std::string_view text, std::size_t at) {
  const std::size_t comma = at;
  while (at < text.size() && (text[at] == ',' || text[at] == '_')) {
    if (digits_end(text, at + 1) != at + 4) break;
    at += 4;
  }
  if (at == comma) return std::nullopt;
  std::string right(text.substr(0, at));
  right.erase(std::remove_if(right.begin(), right.end(), [](char c) { return c == ',' || c == '_'; }), right.end());
  return problem("number-thousands", comma, 1, {std::string(text.substr(0, at)), right});
}

// `1e3`: the digits before the e end at `at`.
std::optional<Problem> exponent(std::string_view text, std::size_t at) {
  if (at >= text.size() || (text[at] != 'e' && text[at] != 'E')) return std::nullopt;
  std::size_t first = at + 1;
  const bool negative = begins(text, first, "-");
  if (negative || begins(text, first, "+")) ++first;
  const std::size_t end = digits_end(text, first);
  if (end == first) return std::nullopt;
  const bool whole = text.substr(0, at).find('.') == std::string_view::npos && !negative && end - first == 1;
  std::string right = "its digits";
  if (whole) right = std::string(text.substr(0, at)) + std::string(static_cast<std::size_t>(text[first] - '0'), '0');
  return problem("number-exponent", 0, end, {std::string(text.substr(0, end)), right});
}

struct Fraction {
  std::string_view whole;  // empty in 3/4
  std::string_view above;
  std::string_view below;
};

// `3/4` or `1-1/2` in all of text[0, end); every part short enough that whole * below + above is exact.
Read<Number> fraction(std::string_view text, std::size_t end, bool negative, const Fraction& parts) {
  const std::string_view written = text.substr(0, end);
  if (parts.whole.size() > 6 || parts.above.size() > 9 || parts.below.size() > 9) {
    return problem("number-too-long", 0, end, {std::string(written)});
  }
  const double whole = decimal(parts.whole, "");
  const double above = decimal(parts.above, "");
  const double below = decimal(parts.below, "");
  if (below == 0) return problem("number-zero-below", 0, end, {std::string(written)});
  const double value = (whole * below + above) / below;
  if (negative) return misspelt("number-negative-fraction", written, fmt::format("{:.12g}", -value));
  if (!parts.whole.empty() && above >= below) {
    return misspelt("number-improper", written, fmt::format("{:.12g}", value));
  }
  return Number{value, end};
}

// After a number nothing may go on as if it were one: `1.2.3`, `1/2/3`, `2.5-1`.
std::optional<Problem> runs_on(std::string_view text, std::size_t end) {
  const bool goes_on =
      end < text.size() && std::string_view(".-/").find(text[end]) != std::string_view::npos && digit_at(text, end + 1);
  if (!goes_on) return std::nullopt;
  const std::string_view word = word_at_start(text);
  return problem("not-a-number", 0, word.size(), {std::string(word)});
}

Read<Number> checked(std::string_view text, Read<Number> read) {
  const Number* number = std::get_if<Number>(&read);
  if (number == nullptr) return read;
  if (number->used > longest_number) {
    return problem("number-too-long", 0, number->used, {std::string(text.substr(0, number->used))});
  }
  if (auto found = runs_on(text, number->used)) return *found;
  return read;
}

Read<Number> decimal_number(std::string_view text, std::size_t begin, std::size_t point) {
  const std::size_t end = digits_end(text, point + 1);
  if (end == point + 1) return misspelt("number-point", text.substr(0, end), std::string(text.substr(0, point)));
  if (auto found = exponent(text, end)) return *found;
  if (end > longest_number) return problem("number-too-long", 0, end, {std::string(text.substr(0, end))});
  const double value = decimal(text.substr(begin, point - begin), text.substr(point + 1, end - point - 1));
  return Number{begin > 0 && value != 0 ? -value : value, end};
}

Read<Number> whole_number(std::string_view text, std::size_t begin, std::size_t end) {
  if (end > longest_number) return problem("number-too-long", 0, end, {std::string(text.substr(0, end))});
  const double value = decimal(text.substr(begin, end - begin), "");
  return Number{begin > 0 && value != 0 ? -value : value, end};
}

// `1-1/2`; the whole number ends at `dash`.
Read<Number> mixed_number(std::string_view text, std::size_t begin, std::size_t dash) {
  const std::size_t slash = digits_end(text, dash + 1);
  const std::size_t end = digits_end(text, slash + 1);
  if (!begins(text, slash, "/") || end == slash + 1) {
    return problem("number-whole-dash", 0, slash, {std::string(text.substr(0, slash))});
  }
  return fraction(text, end, begin > 0,
                  {text.substr(begin, dash - begin), text.substr(dash + 1, slash - dash - 1),
                   text.substr(slash + 1, end - slash - 1)});
}

Read<Number> number_at_digits(std::string_view text, std::size_t begin) {
  const std::size_t end = digits_end(text, begin);
  const bool hexadecimal = end == begin + 1 && text[begin] == '0' && end < text.size() && (text[end] | 0x20) == 'x';
  if (hexadecimal)
    return problem("number-hexadecimal", 0, word_at_start(text).size(), {std::string(word_at_start(text))});
  if (auto found = thousands(text, end)) return *found;
  if (auto found = exponent(text, end)) return *found;
  if (auto found = fraction_glyph(text, end)) return *found;
  if (auto found = other_dash(text, end)) return *found;
  if (begins(text, end, ".")) return decimal_number(text, begin, end);
  if (begins(text, end, "-") && digit_at(text, end + 1)) return mixed_number(text, begin, end);
  if (begins(text, end, "/") && digit_at(text, end + 1)) {
    const std::size_t last = digits_end(text, end + 1);
    return fraction(text, last, begin > 0, {{}, text.substr(begin, end - begin), text.substr(end + 1, last - end - 1)});
  }
  return whole_number(text, begin, end);
}

}  // namespace

Read<Number> read_number(std::string_view text) {
  const std::size_t begin = begins(text, 0, "-") ? 1 : 0;
  if (!digit_at(text, begin)) return no_number(text);
  return checked(text, number_at_digits(text, begin));
}

}  // namespace headgate::quantity
