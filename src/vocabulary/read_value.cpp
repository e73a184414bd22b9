#include <algorithm>

#include "vocabulary/coarse.hpp"
#include "vocabulary/names.hpp"
#include "vocabulary/vocabulary.hpp"

namespace headgate::vocabulary {
namespace {

using document::Node;
using Kind = Type::Kind;

constexpr double seconds_of_day = 86400;

// What one call reads with.
struct Reader {
  const Node& node;
  const Type& type;
  const Field* field;
  const Vocabulary& vocabulary;
  text::Diagnostics& found;

  std::string_view text() const { return text_of(node, whole(node)); }
  void say(std::string_view id, const std::vector<std::string>& arguments) const {
    const Stretch s = whole(node);
    found.push_back(text::say(id, node.range_of(s.begin, s.length), arguments));
  }
  void say(const quantity::Problem& problem) const { found.push_back(say_problem(node, whole(node), problem)); }
};

void warn_if_implausible(const Reader& r, quantity::Interval value, const quantity::Unit* unit) {
  if (!r.field || !r.field->plausible) return;
  const quantity::Interval usual = *r.field->plausible;
  if (value.hi >= usual.lo && value.lo <= usual.hi) return;
  r.say("implausible-value",
        {std::string(r.text()), r.field->title,
         quantity::show(usual.lo, r.type.dimension, unit) + " to " + quantity::show(usual.hi, r.type.dimension, unit)});
}

bool negative(const Reader& r, quantity::Interval& value) {
  if (!r.field || !r.field->never_negative) return false;
  if (value.hi < 0) {
    r.say("negative-value", {r.field->title, std::string(r.text())});
    return true;
  }
  value.lo = std::max(value.lo, 0.0);
  return false;
}

Value read_number_value(const Reader& r) {
  auto amount = read_amount(r.node, whole(r.node), r.type.dimension, r.found);
  if (!amount || negative(r, amount->value)) return unknown();
  warn_if_implausible(r, amount->value, amount->unit);
  Value value = of_number(amount->value, amount->unit);
  const bool millimetres = amount->unit && amount->unit->spelling == "mm";
  value.ladder = millimetres ? Ladder::metric : Ladder::inch;
  return value;
}

Value read_truth(const Reader& r) {
  if (r.text() == "yes") return of_truth(quantity::Truth::yes);
  if (r.text() == "no") return of_truth(quantity::Truth::no);
  const std::string word = folded(r.text());
  const bool yes = word == "yes" || word == "true" || word == "y" || word == "on" || word == "1";
  const bool no = word == "no" || word == "false" || word == "n" || word == "off" || word == "0";
  r.say("not-yes-or-no", {std::string(r.text()), yes ? "yes" : no ? "no" : ""});
  return unknown();
}

std::vector<std::string> spellings(const Choice& choice) {
  std::vector<std::string> result;
  for (const Member& member : choice.members) {
    result.push_back(member.name);
    result.insert(result.end(), member.spellings.begin(), member.spellings.end());
  }
  return result;
}

std::string offer_member(const Choice& choice, std::string_view word) {
  const auto near = text::nearest(word, spellings(choice));
  const auto member = near ? choice.member(*near) : std::nullopt;
  if (member) return choice.members[*member].name;
  std::vector<std::string> names;
  for (const Member& each : choice.members) names.push_back(each.name);
  return offer("", names);
}

std::uint64_t read_member(const Reader& r, Stretch s) {
  const Choice& choice = r.vocabulary.choices[r.type.choice];
  const std::string_view word = text_of(r.node, s);
  if (const auto member = choice.member(word)) return std::uint64_t{1} << *member;
  r.found.push_back(text::say("unknown-member", r.node.range_of(s.begin, s.length),
                              {std::string(word), choice.title, offer_member(choice, word)}));
  return 0;
}

Stretch trim(const Node& node, std::size_t begin, std::size_t end) { return trimmed(node, {begin, end - begin}); }

// `one of (k-copper, l-copper)`
Value read_one_of(const Reader& r) {
  const Stretch s = whole(r.node);
  const std::size_t open = r.node.scalar.find('(', s.begin);
  const std::size_t close = s.begin + s.length - 1;
  if (open == std::string::npos || r.node.scalar[close] != ')' || trim(r.node, s.begin + 6, open).length > 0) {
    r.say("one-of-form", {std::string(r.text())});
    return unknown();
  }
  std::uint64_t members = 0;
  bool good = true;
  for (std::size_t begin = open + 1; begin <= close;) {
    const std::size_t end = std::min(r.node.scalar.find(',', begin), close);
    const std::uint64_t member = read_member(r, trim(r.node, begin, end));
    good = good && member != 0;
    members |= member;
    begin = end + 1;
  }
  return good ? of_members(members) : unknown();
}

Value read_choice(const Reader& r) {
  if (r.type.choice >= r.vocabulary.choices.size()) return unknown();
  if (r.text().substr(0, 6) == "one of") return read_one_of(r);
  const Choice& choice = r.vocabulary.choices[r.type.choice];
  if (const std::size_t place = r.text().find(" or "); place != std::string_view::npos) {
    const auto left = choice.member(r.text().substr(0, place));
    const auto right = choice.member(r.text().substr(place + 4));
    if (left && right) {
      r.say("or-of-members", {std::string(r.text()), choice.members[*left].name, choice.members[*right].name});
      return unknown();
    }
  }
  const std::uint64_t member = read_member(r, whole(r.node));
  return member != 0 ? of_members(member) : unknown();
}

Value read_date_value(const Reader& r) {
  const auto days = read_days(r.node, whole(r.node), r.found);
  return days ? of_number(*days) : unknown();
}

// A day without a time of day is any moment of it.
Value read_moment_value(const Reader& r) {
  const auto read = quantity::read_moment(r.text());
  if (const auto* moment = std::get_if<double>(&read)) return of_number(quantity::exactly(*moment));
  if (r.text().find(':') != std::string_view::npos) {
    r.say(std::get<quantity::Problem>(read));
    return unknown();
  }
  const auto days = read_days(r.node, whole(r.node), r.found);
  if (!days) return unknown();
  return of_number({days->lo * seconds_of_day, days->hi * seconds_of_day + seconds_of_day - 1});
}

Value read_clock_value(const Reader& r) {
  const auto read = quantity::read_clock(r.text());
  if (const auto* clock = std::get_if<double>(&read)) return of_number(quantity::exactly(*clock));
  r.say(std::get<quantity::Problem>(read));
  return unknown();
}

Value read_season_value(const Reader& r) {
  const auto read = quantity::read_season(r.text());
  if (const auto* season = std::get_if<quantity::Season>(&read)) {
    return of_number({season->from_month * 100.0 + season->from_day, season->to_month * 100.0 + season->to_day});
  }
  r.say(std::get<quantity::Problem>(read));
  return unknown();
}

Value read_span_value(const Reader& r) {
  const auto read = quantity::read_span(r.text());
  if (const auto* span = std::get_if<quantity::Span>(&read)) {
    Value value = of_number(quantity::exactly(span->count));
    value.span_unit = span->unit;
    return value;
  }
  r.say(std::get<quantity::Problem>(read));
  return unknown();
}

Value read_kind(const Reader& r) {
  const auto shape = r.vocabulary.shape(r.text());
  if (shape && r.vocabulary.shapes[*shape].kind && (r.type.shapes.none() || r.type.shapes.test(*shape))) {
    Value value;
    value.presence = Presence::present;
    value.id = *shape;
    return value;
  }
  std::vector<std::string> known;
  for (std::size_t id = 0; id < r.vocabulary.shapes.size(); ++id) {
    const bool fits = r.type.shapes.none() ? r.vocabulary.shapes[id].kind : r.type.shapes.test(id);
    if (fits) known.push_back(r.vocabulary.shapes[id].name);
  }
  r.say("not-a-kind", {std::string(r.text()), offer(r.text(), known)});
  return unknown();
}

Value read_text(const Reader& r) {
  Value value;
  value.presence = Presence::present;
  value.text = r.node.scalar;
  return value;
}

// The direction word of a level: ` below ` or ` above `, the last one.
struct Side {
  std::size_t place = std::string::npos;
  bool below = false;
};

Side find_side(std::string_view text) {
  const std::size_t below = text.rfind(" below");
  const std::size_t above = text.rfind(" above");
  if (below == std::string_view::npos) return {above, false};
  if (above == std::string_view::npos || below > above) return {below, true};
  return {above, false};
}

std::optional<MarkId> read_mark(const Reader& r, Stretch s) {
  const std::string_view word = text_of(r.node, s);
  if (const auto mark = r.vocabulary.mark(word)) return mark;
  std::vector<std::string> known;
  for (const Mark& each : r.vocabulary.marks) {
    known.push_back(each.name);
    known.insert(known.end(), each.spellings.begin(), each.spellings.end());
  }
  r.found.push_back(
      text::say("unknown-mark", r.node.range_of(s.begin, s.length), {std::string(word), offer(word, known)}));
  return std::nullopt;
}

struct Measured {
  Reading reading;
  const quantity::Unit* unit = nullptr;
};

// `40 in below finished-grade`. What is read is how far; below the mark it is turned over to a height,
// and `at least` of a depth becomes at most of a height.
std::optional<Measured> read_reading(const Reader& r) {
  const Stretch s = whole(r.node);
  const Side side = find_side(r.text());
  const bool said = side.place != std::string::npos;
  const std::size_t end = s.begin + (said ? side.place : s.length);
  const auto amount = read_amount(r.node, trim(r.node, s.begin, end), quantity::dimensions::length, r.found);
  Reading reading;
  if (r.field) reading.mark = r.field->mark;
  if (said) {
    const Stretch mark = trim(r.node, end + 6, s.begin + s.length);
    if (mark.length == 0) {
      r.say("side-without-mark", {std::string(r.text().substr(side.place + 1)), std::string(r.text())});
      return std::nullopt;
    }
    const auto id = read_mark(r, mark);
    if (!id) return std::nullopt;
    reading.mark = *id;
  }
  if (!amount) return std::nullopt;
  const bool depth = r.field && r.field->depth;
  const bool below = said ? side.below : depth;
  reading.height_m = below ? quantity::negate(amount->value) : amount->value;
  quantity::Interval shown = depth ? quantity::negate(reading.height_m) : reading.height_m;
  if (negative(r, shown)) return std::nullopt;
  if (r.field && r.field->never_negative) reading.height_m = depth ? quantity::negate(shown) : shown;
  warn_if_implausible(r, shown, amount->unit);
  return Measured{reading, amount->unit};
}

Value read_level(const Reader& r, std::vector<Reading>* readings) {
  std::vector<const Node*> nodes;
  if (r.node.is_list()) {
    for (const Node& item : r.node.items) nodes.push_back(&item);
  } else {
    nodes.push_back(&r.node);
  }
  Value value;
  for (const Node* node : nodes) {
    if (!node->is_scalar()) {
      r.found.push_back(text::say("one-value-expected", node->range, {r.field ? r.field->title : ""}));
      return unknown();
    }
    const auto measured = read_reading({*node, r.type, r.field, r.vocabulary, r.found});
    if (!measured) return unknown();
    if (value.presence == Presence::unknown) value = of_number(measured->reading.height_m, measured->unit);
    if (readings) readings->push_back(measured->reading);
  }
  return value;
}

Value read_scalar(const Reader& r) {
  switch (r.type.kind) {
    case Kind::truth: return read_truth(r);
    case Kind::number: return read_number_value(r);
    case Kind::choice: return read_choice(r);
    case Kind::date: return read_date_value(r);
    case Kind::moment: return read_moment_value(r);
    case Kind::clock: return read_clock_value(r);
    case Kind::season: return read_season_value(r);
    case Kind::span: return read_span_value(r);
    case Kind::text: return read_text(r);
    case Kind::kind: return read_kind(r);
    case Kind::nothing:
    case Kind::level:
    case Kind::element:
    case Kind::list:
    case Kind::answers: break;
  }
  return unknown();
}

}  // namespace

Value read_value(const Node& node, const Type& type, const Field* field, const Vocabulary& vocabulary,
                 std::vector<Reading>* readings, text::Diagnostics& found) {
  const Reader reader{node, type, field, vocabulary, found};
  if (node.is_scalar() && reader.text() == "unknown") return unknown();
  if (node.is_scalar() && reader.text() == "none") return nothing();
  if (type.kind == Kind::level && !node.is_map()) return read_level(reader, readings);
  if (node.is_scalar()) return read_scalar(reader);
  found.push_back(text::say("one-value-expected", node.range, {field ? field->title : ""}));
  return unknown();
}

void widen(Value& value, std::vector<Reading>* readings, const Node& good_to, const Type& type,
           text::Diagnostics& found) {
  const bool measured = type.kind == Kind::number || type.kind == Kind::level;
  if (!good_to.is_scalar() || !measured) {
    found.push_back(text::say("good-to-measured", good_to.range));
    return;
  }
  const auto tolerance = read_tolerance(good_to, whole(good_to), type.dimension, found);
  if (!tolerance || value.presence != Presence::present) return;
  const quantity::Interval about{-*tolerance, *tolerance};
  value.number = quantity::add(value.number, about);
  if (!readings) return;
  for (Reading& reading : *readings) reading.height_m = quantity::add(reading.height_m, about);
}

}  // namespace headgate::vocabulary
