#include "expression/lex.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

#include "quantity/calendar.hpp"
#include "quantity/unit.hpp"
#include "vocabulary/names.hpp"

namespace headgate::expression {
namespace {

bool lower(char c) { return c >= 'a' && c <= 'z'; }
bool upper(char c) { return c >= 'A' && c <= 'Z'; }
bool digit(char c) { return c >= '0' && c <= '9'; }
bool letter(char c) { return lower(c) || upper(c); }
bool blank(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }
bool beyond_ascii(char c) { return static_cast<unsigned char>(c) >= 0x80; }

// What people write who know other notations; longest first. `read_as`: the words or sign meant, "" when none is.
struct Refused {
  std::string_view spelling;
  std::string_view right;
  std::string_view read_as;
};
constexpr std::string_view equals_hint = "`is`, or `is same as` between two values";
constexpr std::string_view differs_hint = "`is not`, or `is not same as` between two values";
constexpr std::array<Refused, 33> refused_signs = {{
    {"===", equals_hint, "is same as"},
    {"!==", differs_hint, "is not same as"},
    {"==", equals_hint, "is same as"},
    {"!=", differs_hint, "is not same as"},
    {"<>", differs_hint, "is not same as"},
    {"=>", "`>=`", ">="},
    {"=<", "`<=`", "<="},
    {"&&", "`and`", "and"},
    {"||", "`or`", "or"},
    {"**", "the product, `a * a`", "*"},
    {"=", equals_hint, "is same as"},
    {"!", "`not`", "not"},
    {"&", "`and`", "and"},
    {"|", "`or`", "or"},
    {"^", "the product, `a * a`", "*"},
    {"\xE2\x89\xA5", "`>=`", ">="},
    {"\xE2\x89\xA4", "`<=`", "<="},
    {"\xE2\x89\xA0", differs_hint, "is not same as"},
    {"\xE2\x88\xA7", "`and`", "and"},
    {"\xE2\x88\xA8", "`or`", "or"},
    {"\xC2\xAC", "`not`", "not"},
    {"\xE2\x88\x92", "` - ` with a blank on both sides", "-"},
    {"\xE2\x80\x93", "` - ` with a blank on both sides", "-"},
    {"\xE2\x80\x94", "` - ` with a blank on both sides", "-"},
    {"\xC3\x97", "` * `", "*"},
    {"\xC2\xB7", "` * `", "*"},
    {"\xC3\xB7", "` / `", "/"},
    {"\xC2\xBD", "`1/2`", ""},
    {"\xC2\xBC", "`1/4`", ""},
    {"\xC2\xBE", "`3/4`", ""},
    {"\xE2\x80\x9C", "names bare, without quotes", ""},
    {"\xE2\x80\x9D", "names bare, without quotes", ""},
    {"%", "`%` right after its number, `2.5 %`", ""},
}};

bool is_span_unit(std::string_view word) {
  return std::holds_alternative<quantity::Span>(quantity::read_span("1 " + std::string(word))) ||
         std::holds_alternative<quantity::Span>(quantity::read_span("2 " + std::string(word)));
}
bool is_unit(std::string_view word) { return quantity::unit(word) != nullptr || is_span_unit(word); }

class Lexer {
 public:
  Lexer(const document::Node& source, text::Diagnostics& found) : source_(source), all_(source.scalar), found_(found) {}

  std::vector<Token> run() {
    skip_blanks();
    while (at_ < all_.size()) {
      next();
      skip_blanks();
    }
    push(Token::Kind::end, "", all_.size(), all_.size());
    return std::move(tokens_);
  }

 private:
  char peek(std::size_t ahead = 0) const { return at_ + ahead < all_.size() ? all_[at_ + ahead] : '\0'; }
  char char_at(std::size_t place) const { return place < all_.size() ? all_[place] : '\0'; }
  bool starts(std::string_view text) const { return all_.substr(at_, text.size()) == text; }
  void skip_blanks() {
    while (at_ < all_.size() && blank(all_[at_])) ++at_;
  }

  void push(Token::Kind kind, std::string text, std::size_t begin, std::size_t end) {
    Token token;
    token.kind = kind;
    token.text = std::move(text);
    token.begin = begin;
    token.end = end;
    token.blank_before = begin == 0 || blank(char_at(begin - 1));
    token.blank_after = end >= all_.size() || blank(char_at(end));
    tokens_.push_back(std::move(token));
  }

  void complain(std::string_view id, std::size_t begin, std::size_t end, const std::vector<std::string>& arguments) {
    found_.push_back(text::say(id, source_.range_of(begin, end - begin), arguments));
  }

  // A minus after one of these joins two values; anywhere else it belongs to the number behind it.
  bool after_value() const {
    if (tokens_.empty()) return false;
    const Token& last = tokens_.back();
    if (last.kind == Token::Kind::word) return !is_grammar_word(last.text) || last.text == "base";
    return last.kind != Token::Kind::sign || last.text == ")" || last.text == "]";
  }

  void next() {
    const char c = peek();
    if (letter(c)) return word();
    if (digit(c) || (c == '-' && digit(peek(1)) && !after_value())) return number();
    if (c == '.' && lower(peek(1)) && !tokens_.empty() && tokens_.back().is("]") && tokens_.back().end == at_) {
      return column();
    }
    for (std::string_view sign : {"<=", ">="}) {
      if (starts(sign)) return sign_of(sign);
    }
    if (refused_sign()) return;
    for (std::string_view sign : {"(", ")", "[", "]", ",", "<", ">", "+", "-", "*", "/"}) {
      if (starts(sign)) return sign_of(sign);
    }
    stray();
  }

  void sign_of(std::string_view sign) {
    push(Token::Kind::sign, std::string(sign), at_, at_ + sign.size());
    at_ += sign.size();
  }

  bool refused_sign() {
    for (const Refused& refused : refused_signs) {
      if (!starts(refused.spelling)) continue;
      const std::size_t end = at_ + refused.spelling.size();
      complain("refused-spelling", at_, end, {std::string(refused.spelling), std::string(refused.right)});
      push_as(refused.read_as, at_, end);
      if (refused.read_as.empty()) push(Token::Kind::unreadable, "", at_, end);
      at_ = end;
      return true;
    }
    return false;
  }

  // The words or the sign meant, all at the place of what was written.
  void push_as(std::string_view meant, std::size_t begin, std::size_t end) {
    while (!meant.empty()) {
      const std::size_t cut = std::min(meant.find(' '), meant.size());
      push(letter(meant.front()) ? Token::Kind::word : Token::Kind::sign, std::string(meant.substr(0, cut)), begin,
           end);
      tokens_.back().blank_before = tokens_.back().blank_after = true;
      meant.remove_prefix(std::min(cut + 1, meant.size()));
    }
  }

  void stray() {
    std::size_t end = at_ + 1;
    while (end < all_.size() && (static_cast<unsigned char>(all_[end]) & 0xC0U) == 0x80U) ++end;
    const std::string what(all_.substr(at_, end - at_));
    std::string hint;
    if (what == ".") hint = "a path is one word without blanks, `wall.sleeve.size`";
    if (what == "\"" || what == "'" || what == "`") hint = "names stand bare, without quotes";
    if (what == "{" || what == "}") hint = "brackets are ( ) and, for keys, [ ]";
    if (what == "?" || what == ":") hint = "a choice between two values is `if … then … else …`";
    complain("bad-character", at_, end, {what, hint});
    push(Token::Kind::unreadable, "", at_, end);
    at_ = end;
  }

  void column() {
    const std::size_t begin = at_;
    ++at_;
    const std::size_t name = at_;
    while (lower(peek()) || digit(peek()) || (peek() == '-' && (lower(peek(1)) || digit(peek(1))))) ++at_;
    push(Token::Kind::column, std::string(all_.substr(name, at_ - name)), begin, at_);
  }

  std::size_t word_end(std::size_t place) const {
    const auto inside = [](char c) { return letter(c) || digit(c) || c == '_'; };
    while (inside(char_at(place)) || (char_at(place) == '-' && inside(char_at(place + 1))) ||
           (char_at(place) == '.' && letter(char_at(place + 1)))) {
      ++place;
    }
    return place;
  }

  void word() {
    const std::size_t begin = at_;
    at_ = word_end(at_);
    std::string text(all_.substr(begin, at_ - begin));
    if (peek() == '\'' && letter(peek(1))) return contraction(begin);
    std::string right = text;
    for (char& c : right) {
      if (upper(c)) c = static_cast<char>(c - 'A' + 'a');
      if (c == '_') c = '-';
    }
    if (right != text) complain("word-case", begin, at_, {text, right});
    push(Token::Kind::word, right, begin, at_);
  }

  // isn't, doesn't
  void contraction(std::size_t begin) {
    ++at_;
    while (letter(peek())) ++at_;
    const std::string text(all_.substr(begin, at_ - begin));
    const bool negative = text.size() > 3 && text.substr(text.size() - 3) == "n't";
    complain("refused-spelling", begin, at_, {text, negative ? "`is not`" : ""});
    if (negative)
      push_as("is not", begin, at_);
    else
      push(Token::Kind::unreadable, "", begin, at_);
  }

  // 3, 2.5, 3/4, 1-1/2 and what people write instead: 1,000, 2-1, 2026-10-02.
  std::size_t number_end(std::size_t place) const {
    if (char_at(place) == '-') ++place;
    while (true) {
      while (digit(char_at(place))) ++place;
      const char c = char_at(place);
      const bool joins = (c == '.' || c == '/' || c == '-') && digit(char_at(place + 1));
      if (!joins && !(c == ',' && thousands(place))) return place;
      ++place;
    }
  }
  bool thousands(std::size_t comma) const {
    return digit(char_at(comma + 1)) && digit(char_at(comma + 2)) && digit(char_at(comma + 3)) &&
           !digit(char_at(comma + 4));
  }

  // End of the unit that begins at `place`; `place` when none does. An unknown word there is taken for a
  // unit written wrongly, since a value can be followed by grammar words only.
  std::size_t unit_end(std::size_t place) const {
    const char c = char_at(place);
    if (c == '\'' || c == '"' || c == '%') return place + 1;
    if (!letter(c) && !beyond_ascii(c)) return place;
    std::size_t end = place;
    while (letter(char_at(end)) || digit(char_at(end)) || beyond_ascii(char_at(end)) ||
           ((char_at(end) == '/' || char_at(end) == '-' || char_at(end) == '^') && letter_or_digit(end + 1))) {
      ++end;
    }
    if (char_at(end) == '.' && is_unit(all_.substr(place, end + 1 - place))) return end + 1;
    for (std::size_t cut = end; cut > place; cut = cut_before(place, cut)) {
      if (is_unit(all_.substr(place, cut - place))) return cut;
    }
    std::size_t first = place;
    while (letter(char_at(first)) || (char_at(first) == '-' && letter(char_at(first + 1)))) ++first;
    if (is_grammar_word(all_.substr(place, first - place)) || first == place) return place;
    return end;
  }
  bool letter_or_digit(std::size_t place) const { return letter(char_at(place)) || digit(char_at(place)); }
  // The next shorter end of a unit: `ft` of `ft/2` and of `ft6in`.
  std::size_t cut_before(std::size_t begin, std::size_t end) const {
    for (--end; end > begin; --end) {
      const char c = char_at(end);
      if (c == '/' || c == '-' || (digit(c) && letter(char_at(end - 1)))) return end;
    }
    return begin;
  }

  // The end of a unit directly at `place` or one blank behind it.
  std::size_t unit_behind(std::size_t place) const {
    const std::size_t direct = unit_end(place);
    if (direct != place || char_at(place) != ' ') return direct;
    const std::size_t spaced = unit_end(place + 1);
    return spaced == place + 1 ? place : spaced;
  }

  // `1 1/2 in`: the end of the fraction one blank behind a whole number.
  std::size_t blank_fraction_end(std::size_t place) const {
    if (char_at(place) != ' ' || !digit(char_at(place + 1))) return place;
    std::size_t end = place + 1;
    while (digit(char_at(end))) ++end;
    if (char_at(end) != '/' || !digit(char_at(end + 1))) return place;
    ++end;
    while (digit(char_at(end))) ++end;
    return end;
  }

  void number() {
    const std::size_t begin = at_;
    std::size_t end = number_end(begin);
    const std::size_t mixed = blank_fraction_end(end);
    if (mixed != end) {
      const std::size_t unit = unit_behind(mixed);
      std::string right(all_.substr(begin, unit - begin));
      right[end - begin] = '-';
      complain("number-spaced", begin, unit, {std::string(all_.substr(begin, unit - begin)), right});
      push(Token::Kind::number, right, begin, unit);
      at_ = unit;
      return;
    }
    const std::size_t unit = unit_behind(end);
    const bool has_unit = unit != end;
    end = has_unit ? compound_end(unit) : end;
    at_ = end;
    const std::string text(all_.substr(begin, end - begin));
    check_number(text, begin, has_unit);
    push(Token::Kind::number, text, begin, end);
  }

  // Behind the unit of `5 ft`: the end of ` 6 in`, when that is there.
  std::size_t compound_end(std::size_t place) const {
    std::size_t number = place;
    if (char_at(number) == ' ') ++number;
    if (!digit(char_at(number))) return place;
    const std::size_t end = number_end(number);
    const std::size_t unit = unit_behind(end);
    return unit == end ? place : unit;
  }

  void check_number(const std::string& text, std::size_t begin, bool has_unit) {
    if (looks_like_date(text)) return complain("date-in-expression", begin, begin + text.size(), {text});
    if (has_unit && std::holds_alternative<quantity::Span>(quantity::read_span(text))) return;
    std::optional<quantity::Problem> problem;
    if (has_unit) {
      auto read = quantity::read_quantity(text);
      if (auto* wrong = std::get_if<quantity::Problem>(&read)) problem = std::move(*wrong);
    } else {
      auto read = quantity::read_number(text);
      if (auto* wrong = std::get_if<quantity::Problem>(&read)) {
        problem = std::move(*wrong);
      } else if (std::get<quantity::Number>(read).used != text.size()) {
        return complain("not-a-number", begin, begin + text.size(), {text});
      }
    }
    if (!problem) return;
    if (problem->id == "unknown-unit") offer_span(problem->arguments);
    const std::size_t from = begin + std::min(problem->offset, text.size());
    const std::size_t to = std::min(from + std::max<std::size_t>(problem->length, 1), begin + text.size());
    complain(problem->id, from, std::max(to, from), problem->arguments);
  }

  // `3 mnths`: the nearest unit may be one of the calendar.
  static void offer_span(std::vector<std::string>& arguments) {
    if (arguments.size() < 2) return;
    const auto span = text::nearest(arguments[0], {"days", "weeks", "months", "years", "business-days"});
    if (span && arguments[1].size() != arguments[0].size()) arguments[1] = *span;
  }

  static bool looks_like_date(std::string_view text) {
    return text.size() >= 10 && text[4] == '-' && text[7] == '-' &&
           std::all_of(text.begin(), text.begin() + 4, digit) && digit(text[5]) && digit(text[6]) && digit(text[8]);
  }

  const document::Node& source_;
  std::string_view all_;
  text::Diagnostics& found_;
  std::vector<Token> tokens_;
  std::size_t at_ = 0;
};

}  // namespace

bool is_grammar_word(std::string_view word) { return word == "base" || vocabulary::is_grammar_word(word); }

std::vector<Token> lex(const document::Node& source, text::Diagnostics& found) { return Lexer(source, found).run(); }

}  // namespace headgate::expression
