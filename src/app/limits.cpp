// `headgate limits --place P [--on D]`: each limit with its value, who set it, since when, what it replaced.
#include <set>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "app/commands.hpp"
#include "explain/collect.hpp"
#include "report/report.hpp"

namespace headgate::app {

namespace {

using rulebook::Limit;
using rulebook::LimitValue;
using rulebook::Rulebook;

std::string row_name(const Rulebook& book, const Limit& limit, std::size_t key) {
  const auto& vocabulary = *book.vocabulary;
  const auto choice = limit.signature.by_choice;
  if (choice != vocabulary::no_id) return vocabulary.choices[choice].members[key].name;
  return vocabulary.shapes[key].name;
}

std::string row_words(const Rulebook& book, const Limit& limit, std::size_t key, const expression::Tree& tree) {
  const auto& root = tree.nodes[tree.root];
  return row_name(book, limit, key) + " " + (root.written.empty() ? "by formula" : root.written);
}

// A row each where the limit has rows, else one value; whether a stronger layer has replaced it.
struct Line {
  std::string words;
  const LimitValue* value = nullptr;
  bool replaced = false;
};

std::vector<Line> lines_of(const Rulebook& book, const Limit& limit) {
  std::vector<Line> lines;
  std::set<std::size_t> known;
  bool whole = false;  // a value for every row stands above
  for (const auto& value : limit.chain) {
    if (value.form != LimitValue::Form::rows) {
      lines.push_back({value.form == LimitValue::Form::unknown ? "unknown" : value.written, &value, whole});
      whole = true;
    }
    for (const auto& [key, tree] : value.rows)
      lines.push_back({row_words(book, limit, key, tree), &value, whole || !known.insert(key).second});
  }
  return lines;
}

std::string source_words(const LimitValue& value) {
  std::string words = value.citation.words();
  if (value.citation.document != "practice") words += fmt::format(", seen: {}", rulebook::words(value.citation.seen));
  if (!value.citation.where.empty()) words += " (" + value.citation.where + ")";
  if (!value.citation.carried_from.empty()) words += ", carried from " + value.citation.carried_from;
  if (!value.doubt.empty()) words += "; doubtful: " + value.doubt;
  return words;
}

void add_limit(const Rulebook& book, const Limit& limit, std::string& out) {
  if (limit.chain.empty()) return;
  const auto line = [&](const char* label, const std::string& words) {
    out += report::wrapped(fmt::format("  {:<9}", label), words, 11, 80);
  };
  out += report::wrapped(limit.signature.name + "  ", limit.title, 4, 80);
  for (const auto& one : lines_of(book, limit)) {
    line(one.replaced ? "replaces" : "value", one.words);
    line("", "set by " + explain::layer_words(one.value->layer) + ": " + source_words(*one.value));
  }
  out += '\n';
}

nlohmann::ordered_json as_json(const Rulebook& book, const Limit& limit) {
  nlohmann::ordered_json out{{"limit", limit.signature.name},
                             {"title", limit.title},
                             {"values", nlohmann::ordered_json::array()},
                             {"replaces", nlohmann::ordered_json::array()}};
  for (const auto& one : lines_of(book, limit)) {
    const auto& value = *one.value;
    out[one.replaced ? "replaces" : "values"].push_back(
        {{"value", one.words},
         {"layer", explain::layer_words(value.layer)},
         {"since", value.layer.from ? quantity::show_date(*value.layer.from) : ""},
         {"citation", value.citation.words()},
         {"seen", std::string(rulebook::words(value.citation.seen))},
         {"doubt", value.doubt}});
  }
  return out;
}

std::string day_words(const Rulebook& book) {
  return book.day ? "as the law stands from " + quantity::show_date(*book.day) : "at all times";
}

}  // namespace

int limits(World& world, const Output& output) {
  const auto asked = world::asked(world.options.places);
  if (asked.empty()) world.found.push_back(text::say("limits-no-place", {}, {}));
  if (asked.empty()) return unusable(world);
  Law* law = law_of(world, asked);
  if (law == nullptr) return unusable(world);
  const auto days = day_asked(world);
  if (!world.sound()) return unusable(world);
  std::string out;
  auto places = nlohmann::ordered_json::array();
  for (std::size_t place = 0; place < law->places.size(); ++place) {
    // Without a day: the law as it stands after the last change.
    const Rulebook& book = *books(world, *law, place, days).back();
    if (!world.sound()) return unusable(world);
    const std::string when = world.options.on.empty() ? day_words(book) : "on " + world.options.on;
    out += report::wrapped("", fmt::format("Limits of {} ({}), {}", book.title, book.place, when), 2, 80) + "\n";
    auto list = nlohmann::ordered_json::array();
    for (const auto& limit : book.limits) {
      add_limit(book, limit, out);
      if (!limit.chain.empty()) list.push_back(as_json(book, limit));
    }
    places.push_back({{"place", book.place},
                      {"title", book.title},
                      {"day", book.day ? quantity::show_date(*book.day) : ""},
                      {"limits", list}});
  }
  const std::string text = output.format == Format::json ? report::written({{"places", places}}) : out;
  return write(world, output, text) ? exit_fine : unusable(world);
}

}  // namespace headgate::app
