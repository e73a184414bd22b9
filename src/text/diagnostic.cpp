#include "text/diagnostic.hpp"

#include <algorithm>
#include <tuple>

#include "text/utf8.hpp"

namespace headgate::text {

namespace {

// A whole paragraph of the file as an argument would drown the sentence.
constexpr std::size_t argument_characters = 300;

std::string shortened(const std::string& argument) {
  const std::string_view head = first_characters(argument, argument_characters);
  return head.size() == argument.size() ? argument : std::string(head) + "…";
}

struct Filled {
  std::string text;
  bool complete = true;  // no {n} without an argument, or with an empty one
};

Filled fill(std::string_view pattern, const std::vector<std::string>& arguments) {
  Filled filled;
  for (std::size_t at = 0; at < pattern.size(); ++at) {
    const bool slot = pattern[at] == '{' && at + 2 < pattern.size() && pattern[at + 1] >= '0' &&
                      pattern[at + 1] <= '9' && pattern[at + 2] == '}';
    if (!slot) {
      filled.text += pattern[at];
      continue;
    }
    const auto index = static_cast<std::size_t>(pattern[at + 1] - '0');
    const bool given = index < arguments.size();
    filled.text += given ? shortened(arguments[index]) : std::string(pattern.substr(at, 3));
    filled.complete = filled.complete && given && !arguments[index].empty();
    at += 2;
  }
  return filled;
}

const Message* find(std::string_view id) {
  const std::vector<Message>& all = catalogue();
  const auto found = std::find_if(all.begin(), all.end(), [&](const Message& m) { return m.id == id; });
  return found == all.end() ? nullptr : &*found;
}

std::string bare(std::string_view id, const std::vector<std::string>& arguments) {
  std::string text(id);
  for (std::size_t i = 0; i < arguments.size(); ++i) text += (i == 0 ? ": " : ", ") + shortened(arguments[i]);
  return text;
}

template <typename FileOrder>
void settle_by(Diagnostics& found, const FileOrder& file_order) {
  const auto key = [&](const Diagnostic& d) {
    return std::make_tuple(!d.range.known(), file_order(d.range.file), d.range.file, d.range.begin, d.range.end,
                           std::string_view(d.id), std::string_view(d.sentence), std::string_view(d.hint), d.other.file,
                           d.other.begin, d.other.end);
  };
  std::stable_sort(found.begin(), found.end(),
                   [&](const Diagnostic& a, const Diagnostic& b) { return key(a) < key(b); });
  const auto repeats = std::unique(found.begin(), found.end(), [&](const Diagnostic& a, const Diagnostic& b) {
    return key(a) == key(b) && a.severity == b.severity && a.other_says == b.other_says;
  });
  found.erase(repeats, found.end());
}

}  // namespace

Diagnostic say(std::string_view id, const Range& range, const std::vector<std::string>& arguments) {
  Diagnostic diagnostic;
  diagnostic.id = id;
  diagnostic.range = range;
  const Message* message = find(id);
  if (message == nullptr) {
    diagnostic.sentence = bare(id, arguments);
    return diagnostic;
  }
  diagnostic.severity = message->severity;
  diagnostic.sentence = fill(message->sentence, arguments).text;
  Filled hint = fill(message->hint, arguments);
  if (hint.complete) diagnostic.hint = std::move(hint.text);
  return diagnostic;
}

Diagnostic say(std::string_view id, const Range& range, const std::vector<std::string>& arguments, const Range& other,
               std::string other_says) {
  Diagnostic diagnostic = say(id, range, arguments);
  diagnostic.other = other;
  diagnostic.other_says = std::move(other_says);
  return diagnostic;
}

bool has_errors(const Diagnostics& found) {
  return std::any_of(found.begin(), found.end(), [](const Diagnostic& d) { return d.severity == Severity::error; });
}

void settle(Diagnostics& found) {
  settle_by(found, [](FileId file) { return file; });
}

void settle(Diagnostics& found, const Sources& sources) {
  settle_by(found, [&](FileId file) { return sources.name(file); });
}

}  // namespace headgate::text
