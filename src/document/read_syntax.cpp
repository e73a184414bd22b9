#include "document/read_syntax.hpp"

#include <algorithm>
#include <initializer_list>

#include <yaml-cpp/exceptions.h>

namespace headgate::document {

namespace {

bool is_one_of(const std::string& message, std::initializer_list<const char*> known) {
  return std::any_of(known.begin(), known.end(), [&](const char* each) { return message == each; });
}

bool starts_with(const std::string& message, const char* head) { return message.rfind(head, 0) == 0; }

Offset one_more(const Syntax& s, Offset at) { return std::min(at + 1, static_cast<Offset>(s.text.size())); }

std::string character_at(const Syntax& s, Offset at) {
  const std::string_view rest = s.text.substr(at, 4);
  std::size_t length = 1;
  while (length < rest.size() && (static_cast<unsigned char>(rest[length]) & 0xC0U) == 0x80U) ++length;
  return std::string(rest.substr(0, length));
}

bool was_reported(const Findings& found, std::string_view id, Offset from) {
  return std::any_of(found.list.begin(), found.list.end(),
                     [&](const text::Diagnostic& d) { return d.id == id && d.range.begin >= from; });
}

// What was said about the same place before reading broke off there, and is less to the point.
bool forget(Findings& found, std::string_view id, Offset from) {
  const auto stale = std::remove_if(found.list.begin(), found.list.end(),
                                    [&](const text::Diagnostic& d) { return d.id == id && d.range.end > from; });
  const bool any = stale != found.list.end();
  found.list.erase(stale, found.list.end());
  return any;
}

// A `#12}` after the last token hides what should have come: the brace is missing because of it.
bool explain_by_comment(const Syntax& s, Offset from, Findings& found) {
  if (was_reported(found, "yaml-comment-cuts", from)) return true;
  for (Offset at = s.cursor; at < s.at; ++at) {
    if (s.text[at] != '#') continue;
    const Offset end = line_end(s.text, at);
    const bool alone = skip_blanks(s.text, line_begin(s.text, at)) == at;
    if (!alone && !is_plain_comment(s.text, at)) {
      refuse_comment(s.text, at, true, "", found);
      return true;
    }
    at = end;
  }
  return false;
}

// The token before stands on the same line and was complete: a quote or brace closed it.
bool explain_by_closed_value(const Syntax& s, Findings& found) {
  if (s.cursor == 0 || s.cursor >= s.text.size()) return false;
  const char last = s.text[s.cursor - 1];
  const bool closed = last == '"' || last == '\'' || last == '}' || last == ']';
  const Offset next = skip_blanks(s.text, s.cursor);
  if (!closed || next >= s.text.size() || is_space(s.text[next]) || s.text[next] == '#') return false;
  const bool quote = last == '"' || last == '\'';
  found.add(quote ? "yaml-text-after-quote" : "yaml-text-after-brace", next, line_end(s.text, next),
            {std::string(1, last)});
  return true;
}

// `{pipe:{size: 1 in}}`: the colon has become part of the word.
void explain_glued_brace(const Syntax& s, Offset colon, Findings& found) {
  forget(found, "yaml-empty-value", colon);
  Offset begin = colon;
  while (begin > 0 && !is_space(s.text[begin - 1]) && !is_flow_indicator(s.text[begin - 1])) --begin;
  const std::string name(s.text.substr(begin, colon - begin));
  const std::string rest(s.text.substr(colon + 1, line_end(s.text, colon) - colon - 1));
  found.add("yaml-colon-needs-space", colon, colon + 1, {shortened(name), shortened(name + ": " + rest)});
}

void explain_flow_end(const Syntax& s, Findings& found) {
  const auto opened = std::find_if(s.frames.rbegin(), s.frames.rend(), [](const Frame& f) { return f.closer != 0; });
  const Offset opener = opened == s.frames.rend() ? s.cursor : opened->node.range.begin;
  if (was_reported(found, "yaml-unclosed-quote", opener) || explain_by_comment(s, opener, found)) return;
  const bool spread = forget(found, "yaml-spread-text", opener);
  const bool at_end = skip_gap(s.text, s.at) >= s.text.size();
  // A word at the very end might still become a key, and yaml-cpp gives it out as one.
  if (at_end && s.cursor > 0) forget(found, "yaml-empty-value", s.cursor - 1);

  if (!at_end && !spread && explain_by_closed_value(s, found)) return;
  if (!at_end && !spread && s.cursor > 0 && s.text[s.cursor - 1] == ':') {
    explain_glued_brace(s, s.cursor - 1, found);
  } else if (!at_end && !spread && s.text[s.at] == ':') {
    found.add("yaml-colon-in-value", s.at, one_more(s, s.at));
  } else if (!at_end && !spread) {
    found.add("yaml-brace-content", s.at, line_end(s.text, s.at));
  } else if (opened == s.frames.rend()) {
    found.add("yaml-syntax", s.at, one_more(s, s.at));
  } else {
    found.add("yaml-unclosed-brace", opener, one_more(s, opener),
              {character_at(s, opener), std::string(1, opened->closer)});
  }
}

// A quote that begins a token: after a blank or an indicator.
Offset find_quote(const Syntax& s) {
  for (Offset at = s.cursor; at < s.text.size(); ++at) {
    if (s.text[at] != '"' && s.text[at] != '\'') continue;
    const char before = at == 0 ? ' ' : s.text[at - 1];
    if (is_space(before) || std::string_view(",:[{").find(before) != std::string_view::npos) return at;
  }
  return s.cursor;
}

void explain_open_quote(const Syntax& s, Findings& found) {
  if (explain_by_closed_value(s, found)) return;
  const Offset quote = find_quote(s);
  found.add("yaml-unclosed-quote", quote, line_end(s.text, quote), {character_at(s, quote)});
}

// `a: b: c`, unless the colon is the first of its line: then the line stands where no key can.
void explain_colon(const Syntax& s, Findings& found) {
  const Offset line = line_begin(s.text, s.at);
  const std::string_view before = s.text.substr(line, s.at - line);
  if (was_reported(found, "yaml-colon-needs-space", line)) return;
  if (before.find(": ") == std::string_view::npos) {
    const Offset before_line = line == 0 ? 0 : line_begin(s.text, line - 1);
    forget(found, "yaml-spread-text", before_line);
    const Offset content = skip_blanks(s.text, line);
    found.add("yaml-indent", content, line_end(s.text, line));
  } else {
    found.add("yaml-colon-in-value", s.at, one_more(s, s.at));
  }
}

void explain_first_character(const Syntax& s, Offset at, Findings& found) {
  found.add("yaml-reserved-character", at, one_more(s, at),
            {character_at(s, at), in_quotes(s.text.substr(at, line_end(s.text, at) - at))});
}

void explain_indent(const Syntax& s, Findings& found) {
  const Offset line = line_begin(s.text, s.at);
  if (was_reported(found, "yaml-colon-needs-space", line) || explain_by_closed_value(s, found)) return;
  const Offset next = skip_blanks(s.text, s.cursor);
  if (is_flow_indicator(at_or_end(s.text, next))) {
    forget(found, "yaml-empty-value", line);
    explain_first_character(s, next, found);
    return;
  }
  const Offset content = skip_blanks(s.text, line);
  found.add("yaml-indent", content, line_end(s.text, content));
}

// yaml-cpp reports these behind the sign that begins them.
bool explain_sign(const Syntax& s, char sign, std::string_view id, Findings& found) {
  const Offset line = line_begin(s.text, s.at);
  const std::size_t last = s.text.substr(0, one_more(s, s.at)).rfind(sign);
  if (last == std::string_view::npos || last < line) return false;
  const auto at = static_cast<Offset>(last);
  const Offset end = skip_word(s.text, at);
  const std::string_view word = s.text.substr(at, end - at);
  found.add(id, at, end, {shortened(word), in_quotes(word)});
  return true;
}

bool explain_property(const Syntax& s, const std::string& message, Findings& found) {
  using namespace YAML::ErrorMsg;
  if (is_one_of(message, {UNKNOWN_ANCHOR, ALIAS_NOT_FOUND, CHAR_IN_ALIAS, ALIAS_CONTENT, MULTIPLE_ALIASES})) {
    return explain_sign(s, '*', "yaml-alias", found);
  }
  if (is_one_of(message, {ANCHOR_NOT_FOUND, CHAR_IN_ANCHOR, MULTIPLE_ANCHORS})) {
    return explain_sign(s, '&', "yaml-anchor", found);
  }
  if (is_one_of(message, {CHAR_IN_TAG_HANDLE, TAG_WITH_NO_SUFFIX, END_OF_VERBATIM_TAG, MULTIPLE_TAGS})) {
    return explain_sign(s, '!', "yaml-tag", found);
  }
  return false;
}

bool explain_token(const Syntax& s, const std::string& message, Findings& found) {
  using namespace YAML::ErrorMsg;
  const Offset end = one_more(s, s.at);
  if (message == BLOCK_ENTRY) {
    found.add("yaml-dash", s.at, end);
  } else if (message == FLOW_END) {
    found.add("yaml-stray-closer", s.at, end, {character_at(s, s.at)});
  } else if (message == MAP_KEY) {
    found.add("yaml-complex-key", s.at, end);
  } else if (is_one_of(message, {CHAR_IN_BLOCK, ZERO_INDENT_IN_BLOCK})) {
    const std::size_t bar = s.text.substr(0, s.at).rfind('|');
    const Offset begin = bar == std::string_view::npos ? s.at : static_cast<Offset>(bar);
    found.add("yaml-block-header", begin, line_end(s.text, begin));
  } else if (message == TAB_IN_INDENTATION) {
    found.add("yaml-tab", s.at, end);
  } else if (message == INVALID_HEX || starts_with(message, INVALID_UNICODE) || starts_with(message, INVALID_ESCAPE)) {
    const std::size_t slash = s.text.substr(0, s.at).rfind('\\');
    const Offset begin = slash == std::string_view::npos ? s.at : static_cast<Offset>(slash);
    found.add("yaml-bad-escape", begin, std::max(s.at, begin));
  } else if (message == UNKNOWN_TOKEN && s.at < s.text.size()) {
    explain_first_character(s, s.at, found);
  } else {
    return false;
  }
  return true;
}

}  // namespace

void explain_syntax(const Syntax& syntax, const std::string& message, Findings& found) {
  using namespace YAML::ErrorMsg;
  if (explain_property(syntax, message, found) || explain_token(syntax, message, found)) return;
  if (is_one_of(message, {END_OF_MAP_FLOW, END_OF_SEQ_FLOW})) {
    explain_flow_end(syntax, found);
  } else if (is_one_of(message, {EOF_IN_SCALAR, DOC_IN_SCALAR})) {
    explain_open_quote(syntax, found);
  } else if (message == MAP_VALUE) {
    explain_colon(syntax, found);
  } else if (is_one_of(message, {END_OF_MAP, END_OF_SEQ})) {
    explain_indent(syntax, found);
  } else {
    found.add("yaml-syntax", syntax.at, one_more(syntax, syntax.at));
  }
}

}  // namespace headgate::document
