// A question turned into what it asks after: "Was this pipe ever kinked?" -> "was ever kinked".
#include <algorithm>
#include <array>

#include "explain/words.hpp"

namespace headgate::explain {

namespace {

constexpr std::array<std::string_view, 10> deniable = {"is",    "was", "are",  "were", "can",
                                                       "could", "may", "must", "will", "should"};

bool one_of(std::string_view word, const std::array<std::string_view, 10>& words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

bool begins(std::string_view text, std::string_view with) { return text.substr(0, with.size()) == with; }

std::string_view first_word(std::string_view text) { return text.substr(0, text.find(' ')); }

// "lie in a street" -> "lies in a street"
std::string third_person(std::string_view rest) {
  const std::string verb(first_word(rest));
  const std::string after(rest.substr(verb.size()));
  if (verb == "have") return "has" + after;
  const auto ends = [&](std::string_view with) {
    return verb.size() > with.size() && verb.compare(verb.size() - with.size(), with.size(), with) == 0;
  };
  const bool vowel_before_y = ends("ay") || ends("ey") || ends("oy") || ends("uy");
  if (ends("y") && !vowel_before_y) return verb.substr(0, verb.size() - 1) + "ies" + after;
  const bool hisses = ends("s") || ends("x") || ends("z") || ends("ch") || ends("sh") || ends("o");
  return verb + (hisses ? "es" : "s") + after;
}

// Takes "this pipe ", "it ", "the valve " off the front, where it is the thing itself; false where it is another.
bool take_thing(std::string_view& text, const std::string& title) {
  if (begins(text, "it ")) {
    text.remove_prefix(3);
    return true;
  }
  const bool named = begins(text, "this ") || begins(text, "the ");
  if (!named) return false;
  std::string_view rest = text.substr(text.find(' ') + 1);
  // Its whole title, or the end of it: a shutoff valve is "the valve".
  for (std::size_t from = 0; from != std::string::npos;) {
    const std::string_view name = std::string_view(title).substr(from);
    if (begins(rest, name) && rest.size() > name.size() && rest[name.size()] == ' ') {
      text = rest.substr(name.size() + 1);
      return true;
    }
    from = title.find(' ', from);
    if (from != std::string::npos) ++from;
  }
  return false;
}

Predicate stated(const std::string& says) {
  Predicate out;
  out.yes = says;
  const std::string verb(first_word(says));
  const std::string rest = says.substr(verb.size());
  if (one_of(verb, deniable) || begins(says, "has been ")) out.no = verb + " not" + rest;
  if (begins(says, "has a ")) out.no = "has no " + says.substr(6);
  if (begins(says, "has an ")) out.no = "has no " + says.substr(7);
  return out;
}

}  // namespace

Predicate predicate(const vocabulary::Field& field, const vocabulary::Shape& shape) {
  if (!field.says.empty()) return stated(field.says);
  if (field.ask.empty() || field.ask.back() != '?') return {};
  std::string_view text(field.ask);
  text.remove_suffix(1);
  std::string verb(first_word(text));
  if (verb.empty() || verb.size() == text.size()) return {};
  verb[0] = verb[0] >= 'A' && verb[0] <= 'Z' ? static_cast<char>(verb[0] - 'A' + 'a') : verb[0];
  text.remove_prefix(verb.size() + 1);
  if (!take_thing(text, shape.title.empty() ? spaced(shape.name) : shape.title) || text.empty()) return {};
  const std::string rest(text);
  if (verb == "does") return {third_person(rest), "does not " + rest};
  if (verb == "did" || one_of(verb, deniable)) return {verb + " " + rest, verb + " not " + rest};
  if (verb == "has") return stated("has " + rest);
  return {};
}

}  // namespace headgate::explain
