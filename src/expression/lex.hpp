// Words, numbers and signs of an expression, each with its bytes. A path is one word; a quantity is
// one number; spellings people know from elsewhere are reported and read as what was meant, so that
// one run shows every problem.
//
//   12 in <= wall.hole.width    number `12 in`, sign `<=`, word `wall.hole.width`
//   a && b                      diagnostic "refused-spelling" at `&&`, hint `and`; read as word `and`
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "document/node.hpp"
#include "text/diagnostic.hpp"

namespace headgate::expression {

struct Token {
  enum class Kind : std::uint8_t {
    word,        // a grammar word, or names joined by dots
    number,      // a number, quantity or span as written
    sign,        // ( ) [ ] , < <= > >= + - * /
    column,      // `.flow` right after `]`; text without the dot
    unreadable,  // reported, and not read as anything
    end,
  };
  Kind kind = Kind::end;
  std::string text;
  std::size_t begin = 0;  // bytes of the source's scalar
  std::size_t end = 0;
  bool blank_before = true;
  bool blank_after = true;

  bool is(std::string_view word_or_sign) const {
    return (kind == Kind::word || kind == Kind::sign) && text == word_or_sign;
  }
};

// The last token is always `end`.
std::vector<Token> lex(const document::Node& source, text::Diagnostics& found);

// The words of the grammar (vocabulary/names.hpp) and `base`. They are no names, but may follow a dot.
bool is_grammar_word(std::string_view word);

}  // namespace headgate::expression
