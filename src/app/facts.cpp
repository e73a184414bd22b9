// `headgate facts WORD`: what can be stated, how it is spelled, where it is found.
#include <algorithm>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "app/commands.hpp"
#include "report/report.hpp"

namespace headgate::app {

namespace {

using vocabulary::Field;
using vocabulary::Shape;
using vocabulary::Type;
using vocabulary::Vocabulary;

std::string lower(std::string word) {
  std::transform(word.begin(), word.end(), word.begin(),
                 [](unsigned char c) { return c < 0x80 ? static_cast<char>(std::tolower(c)) : static_cast<char>(c); });
  return word;
}

bool mentions(const std::string& text, const std::string& word) { return lower(text).find(word) != std::string::npos; }

std::string names_of(const Vocabulary& vocabulary, const vocabulary::ShapeSet& shapes) {
  std::string names;
  for (std::size_t i = 0; i < vocabulary.shapes.size(); ++i) {
    if (shapes.test(i)) names += (names.empty() ? "" : ", ") + vocabulary.shapes[i].name;
  }
  return names;
}

std::string type_words(const Vocabulary& vocabulary, const Field& field) {
  switch (field.type.kind) {
    case Type::Kind::truth: return "yes or no";
    case Type::Kind::number: return field.type.dimension.plain() ? "number" : quantity::name_of(field.type.dimension);
    case Type::Kind::level: return field.depth ? "depth below a mark" : "height above a mark";
    case Type::Kind::choice: return "one of the choices of " + vocabulary.choices[field.type.choice].name;
    case Type::Kind::date: return "date, as 2026-10-02";
    case Type::Kind::moment: return "day and time, as 2026-10-02 11:00";
    case Type::Kind::clock: return "time of day, as 11:00";
    case Type::Kind::season: return "season, as Nov 1 to Apr 1";
    case Type::Kind::span: return "span, as 3 months or 10 business-days";
    case Type::Kind::text: return "text";
    case Type::Kind::element: return "record of " + names_of(vocabulary, field.type.shapes);
    case Type::Kind::list: return "list of " + names_of(vocabulary, field.type.shapes);
    case Type::Kind::answers: return "yes or no, by name";
    case Type::Kind::kind:
    case Type::Kind::nothing: break;
  }
  return "computed";
}

// How the fact is addressed: a record's by its way from the root, a kind's by the kind.
std::string address_of(const Vocabulary& vocabulary, const Shape& shape, const Field& field) {
  const auto id = vocabulary.shape(shape.name);
  for (const auto& root : vocabulary.shapes[0].fields) {
    if (root.holds == Field::Holds::record && id && root.type.shapes.test(*id)) return root.name + "." + field.name;
  }
  return &shape == &vocabulary.shapes[0] ? field.name : shape.name + "." + field.name;
}

void add_fact(const Vocabulary& vocabulary, const Shape& shape, const Field& field, std::string& out) {
  constexpr std::array<const char*, 4> costs = {"known beforehand", "found by looking", "measured", "found by digging"};
  out += address_of(vocabulary, shape, field) + "\n";
  const auto line = [&](const char* label, const std::string& words) {
    if (!words.empty()) out += report::wrapped(fmt::format("  {:<9}", label), words, 11, 80);
  };
  line("is", type_words(vocabulary, field) + (field.title.empty() ? "" : "; " + field.title));
  line("ask", field.ask);
  line("hint", field.hint);
  line("usual", field.usual);
  if (!field.stop.empty()) {
    std::string stop = field.stop;
    for (const auto& at : vocabulary.stops) {
      if (at.name == field.stop) stop = at.title;
    }
    line("found", stop + ", " + costs[static_cast<std::size_t>(field.cost)]);
  }
  out += '\n';
}

void add_choice(const vocabulary::Choice& choice, std::string& out) {
  out += choice.name + "  (choices)\n";
  for (const auto& member : choice.members) {
    std::string words = member.title.empty() ? "" : member.title;
    for (std::size_t i = 0; i < member.spellings.size(); ++i)
      words += (i == 0 ? "; also written " : ", ") + member.spellings[i];
    out += report::wrapped("  " + member.name + "  ", words, 6, 80);
  }
  out += '\n';
}

bool matches(const Vocabulary& vocabulary, const Shape& shape, const Field& field, const std::string& word) {
  const std::string address = address_of(vocabulary, shape, field);
  return mentions(address, word) || mentions(shape.name + "." + field.name, word) || mentions(field.title, word) ||
         mentions(field.ask, word);
}

bool matches(const vocabulary::Choice& choice, const std::string& word) {
  if (mentions(choice.name, word) || mentions(choice.title, word)) return true;
  return std::any_of(choice.members.begin(), choice.members.end(), [&](const vocabulary::Member& member) {
    return mentions(member.name, word) || mentions(member.title, word) ||
           std::any_of(member.spellings.begin(), member.spellings.end(),
                       [&](const std::string& s) { return mentions(s, word); });
  });
}

// What a word finds: facts with the shape they belong to, and choices.
struct Found {
  std::vector<std::pair<const Shape*, const Field*>> facts;
  std::vector<const vocabulary::Choice*> choices;
};

Found found_by(const Vocabulary& vocabulary, const std::string& word) {
  Found found;
  for (const auto& shape : vocabulary.shapes) {
    for (const auto& field : shape.fields) {
      if (field.name != "previous" && field.name != "next" && matches(vocabulary, shape, field, word))
        found.facts.emplace_back(&shape, &field);
    }
  }
  for (const auto& choice : vocabulary.choices) {
    if (matches(choice, word)) found.choices.push_back(&choice);
  }
  return found;
}

std::string as_json(const Vocabulary& vocabulary, const Found& found) {
  auto facts = nlohmann::ordered_json::array();
  for (const auto& [shape, field] : found.facts) {
    facts.push_back({{"fact", address_of(vocabulary, *shape, *field)},
                     {"type", type_words(vocabulary, *field)},
                     {"title", field->title},
                     {"ask", field->ask},
                     {"hint", field->hint},
                     {"stop", field->stop}});
  }
  auto choices = nlohmann::ordered_json::array();
  for (const auto* choice : found.choices) {
    auto members = nlohmann::ordered_json::array();
    for (const auto& member : choice->members)
      members.push_back({{"member", member.name}, {"title", member.title}, {"spellings", member.spellings}});
    choices.push_back({{"choice", choice->name}, {"members", members}});
  }
  return report::written({{"facts", facts}, {"choices", choices}});
}

std::string as_text(const Vocabulary& vocabulary, const Found& found) {
  std::string out;
  for (const auto& [shape, field] : found.facts) add_fact(vocabulary, *shape, *field, out);
  for (const auto* choice : found.choices) add_choice(*choice, out);
  return out;
}

}  // namespace

int facts(World& world, const std::string& asked, const Output& output) {
  const Law* law = law_of(world, world::asked(world.options.places));
  if (law == nullptr) return unusable(world);
  const Vocabulary& vocabulary = law->vocabulary;
  const std::string word = lower(asked);
  const Found found = found_by(vocabulary, word);
  if (found.facts.empty() && found.choices.empty()) {
    const auto near = text::nearest(word, vocabulary.names());
    world.found.push_back(
        text::say("no-such-fact", {},
                  {asked, near ? "did you mean " + *near + "?" : "try one word, such as pressure, meter or sleeve"}));
    return unusable(world);
  }
  const std::string text = output.format == Format::json ? as_json(vocabulary, found) : as_text(vocabulary, found);
  return write(world, output, text) ? exit_fine : unusable(world);
}

}  // namespace headgate::app
