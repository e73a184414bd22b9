#include "vocabulary/names.hpp"
#include "vocabulary/vocabulary.hpp"

namespace headgate::vocabulary {
namespace {

using Kind = Type::Kind;

std::string show_truth(quantity::Truth truth) {
  switch (truth) {
    case quantity::Truth::no: return "no";
    case quantity::Truth::yes: return "yes";
    case quantity::Truth::undecided: break;
  }
  return "unknown";
}

std::string show_members(std::uint64_t members, const Choice& choice) {
  std::vector<std::string> titles;
  for (std::size_t i = 0; i < choice.members.size(); ++i) {
    if ((members >> i & 1U) != 0) titles.push_back(choice.members[i].title);
  }
  if (titles.size() == choice.members.size() && titles.size() > 1) return "unknown";
  return titles.size() == 1 ? titles.front() : "one of " + join(titles);
}

// Days or seconds, an end at a time, so that open ends read `before` and `after`.
template <typename Show>
std::string show_times(quantity::Interval value, Show one) {
  const bool begins = value.lo > -1e15;
  const bool ends = value.hi < 1e15;
  if (value.exact()) return one(value.lo);
  if (begins && ends) return one(value.lo) + " to " + one(value.hi);
  if (begins) return one(value.lo) + " or later";
  return ends ? one(value.hi) + " or earlier" : "unknown";
}

std::string show_season(quantity::Interval value) {
  const int from = static_cast<int>(value.lo);
  const int to = static_cast<int>(value.hi);
  return quantity::show(quantity::Season{from / 100, from % 100, to / 100, to % 100});
}

std::string show_present(const Value& value, const Type& type, const Vocabulary& vocabulary) {
  switch (type.kind) {
    case Kind::truth: return show_truth(value.truth);
    case Kind::number:
    case Kind::level: return quantity::show(value.number, type.dimension, value.unit);
    case Kind::choice:
      return type.choice < vocabulary.choices.size() ? show_members(value.members, vocabulary.choices[type.choice])
                                                     : "";
    case Kind::date:
      return show_times(value.number, [](double day) { return quantity::show_date(static_cast<quantity::Day>(day)); });
    case Kind::moment: return show_times(value.number, quantity::show_moment);
    case Kind::clock: return show_times(value.number, quantity::show_clock);
    case Kind::season: return show_season(value.number);
    case Kind::span: return quantity::show(quantity::Span{value.number.lo, value.span_unit});
    case Kind::text: return std::string(value.text);
    case Kind::kind: return value.id < vocabulary.shapes.size() ? vocabulary.shapes[value.id].title : "";
    case Kind::nothing:
    case Kind::element:
    case Kind::list:
    case Kind::answers: break;
  }
  return "present";
}

}  // namespace

std::string show(const Value& value, const Type& type, const Vocabulary& vocabulary) {
  if (value.presence == Presence::unknown) return "unknown";
  if (value.presence == Presence::none) return "none";
  return show_present(value, type, vocabulary);
}

std::string show(const std::vector<Reading>& readings, const Field& field, const quantity::Unit* unit,
                 const Vocabulary& vocabulary) {
  std::vector<std::string> words;
  for (const Reading& reading : readings) {
    const quantity::Interval far = field.depth ? quantity::negate(reading.height_m) : reading.height_m;
    std::string one = quantity::show(far, field.type.dimension, unit);
    if (reading.mark < vocabulary.marks.size()) {
      one += (field.depth ? " below " : " above ") + vocabulary.marks[reading.mark].title;
    }
    words.push_back(one);
  }
  return words.empty() ? "unknown" : join(words);
}

}  // namespace headgate::vocabulary
