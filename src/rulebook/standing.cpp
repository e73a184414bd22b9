#include "rulebook/standing.hpp"

#include <algorithm>

#include "rulebook/place.hpp"

namespace headgate::rulebook {

using text::Diagnostics;
using text::say;
using vocabulary::Vocabulary;

namespace {

void say_standing(Rule& rule, Standing standing, const std::string& words) {
  rule.standing = standing;
  rule.standing_says = words;
}

std::string named(const Layer& layer) { return layer.title.empty() ? layer.place : layer.title; }

std::string dropped_words(const WrittenRule& written, const Layer& layer) {
  const document::Node& source = written.dropped->value;
  return "dropped by " + named(layer) + (source.is_scalar() ? " (" + source.scalar + ")" : "");
}

bool begun(const Layer& layer, std::optional<quantity::Day> day) { return !layer.from || (day && *layer.from <= *day); }

}  // namespace

const document::Entry* touched_at(const WrittenRule& written) {
  return written.dropped ? written.dropped : written.changed;
}

void set_standing(Rule& rule, const WrittenRule& written, const Place& place, std::optional<quantity::Day> day,
                  const std::vector<bool>& valueless, const Declarations& all, const Vocabulary& vocabulary) {
  if (written.change != of_project) {
    const Layer& layer = place.changes[written.change].layer;
    if (!begun(layer, day)) {
      return say_standing(rule, Standing::not_begun,
                          "begins " + quantity::show_date(*layer.from) + " by " + named(layer));
    }
    if (!in_force(layer, day)) {
      return say_standing(rule, Standing::ended, "ended " + quantity::show_date(*layer.until) + ", by " + named(layer));
    }
  }
  if (written.dropped) {
    return say_standing(rule, Standing::dropped, dropped_words(written, place.changes[written.dropped_by].layer));
  }
  if (rule.adopted.empty()) {
    return say_standing(rule, Standing::not_adopted, "not adopted: " + words_of(rule.sources));
  }
  if (const auto limit = drop_valueless(rule, valueless, vocabulary)) {
    say_standing(rule, Standing::no_limit, "no adopted source gives limit." + all.limits[*limit].signature.name);
  }
}

namespace {

std::vector<bool> marked(std::size_t size, const std::vector<std::uint32_t>& limits) {
  std::vector<bool> marks(size, false);
  for (const std::uint32_t each : limits) marks[each] = true;
  return marks;
}

// Uses of the derived values: the worksheet shows them whether or not a rule does.
std::vector<Use> worksheet_uses(const Rulebook& book) {
  std::vector<Use> uses;
  for (const Derived& derived : book.derived) uses.push_back({false, 0, derived.shape, derived.field, Reach::same, {}});
  return uses;
}

void append(std::vector<Use>& to, const std::vector<Use>& more) { to.insert(to.end(), more.begin(), more.end()); }

}  // namespace

void say_unused(const Rulebook& book, const std::vector<WrittenRule>& written,
                const std::vector<std::vector<Use>>& uses, const Needs& needs, const RuleReader& reader) {
  std::vector<Use> now = worksheet_uses(book);
  std::vector<Use> before = now;
  std::vector<std::vector<std::uint32_t>> touched(written.size());
  Diagnostics quiet;
  const RuleReader quietly{reader.all, reader.vocabulary, reader.documents, reader.adoption, quiet};
  for (std::size_t i = 0; i < written.size(); ++i) {
    if (!written[i].dropped) append(now, uses[i]);
    append(before, uses[i]);
    if (!written[i].dropped && written[i].changed_by.empty()) continue;
    const std::vector<Use> old = uses_of(read_rule(unchanged(written[i]), quietly), reader.vocabulary);
    append(before, old);
    touched[i] = needs.limits_behind(old, true);
  }
  const std::vector<bool> used = marked(book.limits.size(), needs.limits_behind(now, true));
  const std::vector<bool> was_used = marked(book.limits.size(), needs.limits_behind(before, true));
  for (std::size_t limit = 0; limit < book.limits.size(); ++limit) {
    const std::string& name = book.limits[limit].signature.name;
    if (used[limit]) continue;
    if (!was_used[limit]) {
      reader.found.push_back(say("limit-unused", book.limits[limit].range, {name}));
      continue;
    }
    for (std::size_t i = 0; i < written.size(); ++i) {
      if (!std::binary_search(touched[i].begin(), touched[i].end(), limit)) continue;
      reader.found.push_back(
          say("limit-lost-use", touched_at(written[i])->key_range, {name}, book.limits[limit].range, "the limit"));
    }
  }
}

}  // namespace headgate::rulebook
