#include "rulebook/place.hpp"

#include <algorithm>

#include "rulebook/keys.hpp"

namespace headgate::rulebook {

using document::Entry;
using document::Node;
using quantity::Day;
using text::Diagnostics;
using text::say;

namespace {

// A change may say these; a place may say them outside its changes too, and there they hold always.
const Names lawful = {"adopts", "given", "tables", "limits", "drop", "change", "add"};

Names with(Names names, const Names& more) {
  names.insert(names.end(), more.begin(), more.end());
  return names;
}

Change read_change(const Node& node, const std::string& place, Diagnostics& found) {
  Change change;
  change.node = &node;
  change.layer.place = place;
  change.layer.range = node.range;
  expect_keys(node, with({"title", "from", "until"}, lawful), "A change", found);
  change.layer.title = text_of(node, "title", found);
  if (change.layer.title.empty()) found.push_back(say("change-without-title", node.range));
  if (const Entry* title = node.entry("title")) change.layer.range = title->value.range;
  change.layer.from = day_of(node, "from", found);
  change.layer.until = day_of(node, "until", found);
  if (change.layer.from && change.layer.until && *change.layer.until <= *change.layer.from) {
    found.push_back(
        say("change-ends-first", node.find("until")->range, {}, node.find("from")->range, "it begins here"));
  }
  return change;
}

void read_changes(Place& place, const Node& tree, Diagnostics& found) {
  Change always;
  always.node = &tree;
  always.layer.place = place.id;
  always.layer.range = tree.range;
  place.changes.push_back(always);
  const Node* changes = tree.find("changes");
  if (!changes) return;
  if (!changes->is_list()) {
    found.push_back(say("changes-no-list", changes->range));
    return;
  }
  for (const Node& node : changes->items) {
    if (expect_map(node, "A change", found)) place.changes.push_back(read_change(node, place.id, found));
  }
  const std::size_t days = segments(place).size();
  if (days + 1 > most_segments) {
    found.push_back(say("too-many-changes", changes->range, {std::to_string(days), std::to_string(most_segments)}));
  }
}

std::string read_id(const Node& tree, std::string_view key, Diagnostics& found) {
  const std::string id = text_of(tree, key, found);
  if (!id.empty() && !document::is_name(id)) found.push_back(say("rulebook-name", tree.find(key)->range, {id}));
  return id;
}

// The changes must have the maps that the steps of resolving walk; those say what is inside.
void check_parts(const Node& node, Diagnostics& found) {
  for (const char* key : {"given", "tables", "limits", "change", "add"}) map_of(node, key, found);
}

}  // namespace

std::optional<Place> read_place(const Node& tree, Diagnostics& found) {
  if (!expect_map(tree, "A place file", found)) return std::nullopt;
  const Node* format = tree.find("format");
  if (!format || format->scalar != "place/1") {
    found.push_back(say("place-format", format ? format->range : tree.range, {format ? format->scalar : ""}));
    return std::nullopt;
  }
  expect_keys(
      tree,
      with({"format", "id", "title", "country", "also", "sources", "vocabulary", "closed-days", "changes"}, lawful),
      "A place file", found);
  Place place;
  place.node = &tree;
  place.id = read_id(tree, "id", found);
  place.title = text_of(tree, "title", found);
  place.also = read_id(tree, "also", found);
  place.country = read_id(tree, "country", found);
  place.vocabulary = map_of(tree, "vocabulary", found);
  for (const char* key : {"id", "title"}) {
    if (!tree.find(key)) found.push_back(say("place-needs", tree.range, {key}));
  }
  if (const Node* adopts = tree.find("adopts")) place.adopts = adopted_ids(*adopts, found);
  if (!tree.find("adopts")) found.push_back(say("place-needs", tree.range, {"adopts"}));
  if (!place.also.empty() && place.also == place.id) found.push_back(say("also-itself", tree.find("also")->range));
  read_changes(place, tree, found);
  for (const Change& change : place.changes) check_parts(*change.node, found);
  return place;
}

std::vector<std::string> adopted_ids(const Node& adopts, Diagnostics& found) {
  std::vector<std::string> ids;
  for (const Node* word : words_of(adopts, found)) ids.push_back(word->scalar);
  if (adopts.is_scalar() && adopts.scalar == "nothing") ids.clear();
  return ids;
}

std::vector<Day> segments(const Place& place) {
  std::vector<Day> days;
  for (const Change& change : place.changes) {
    if (change.layer.from) days.push_back(*change.layer.from);
    if (change.layer.until) days.push_back(*change.layer.until);
  }
  std::sort(days.begin(), days.end());
  days.erase(std::unique(days.begin(), days.end()), days.end());
  return days;
}

bool in_force(const Layer& layer, std::optional<Day> day) {
  if (!day) return !layer.from;
  return (!layer.from || *layer.from <= *day) && (!layer.until || *day < *layer.until);
}

std::vector<std::size_t> changes_in_force(const Place& place, std::optional<Day> day) {
  std::vector<std::size_t> changes;
  for (std::size_t i = 0; i < place.changes.size(); ++i) {
    if (in_force(place.changes[i].layer, day)) changes.push_back(i);
  }
  const auto begins = [&](std::size_t i) { return place.changes[i].layer.from; };
  std::stable_sort(changes.begin(), changes.end(), [&](std::size_t a, std::size_t b) { return begins(a) < begins(b); });
  return changes;
}

quantity::ClosedDays read_closed_days(const Place& place, Diagnostics& found) {
  quantity::ClosedDays closed;
  const Node* node = map_of(*place.node, "closed-days", found);
  if (!node) return closed;
  expect_keys(*node, {"from", "until", "days"}, "\"closed-days\"", found);
  const auto from = day_of(*node, "from", found);
  const auto until = day_of(*node, "until", found);
  for (const char* key : {"from", "until"}) {
    if (!node->find(key)) found.push_back(say("closed-days-need", node->range, {key}));
  }
  if (!from || !until) return closed;
  closed.from = *from;
  closed.until = *until;
  if (*until < *from) found.push_back(say("closed-days-backwards", node->find("until")->range));
  const Node* days = node->find("days");
  if (!days) return closed;
  for (const Node* word : words_of(*days, found)) {
    const auto read = quantity::read_date(word->scalar);
    if (const auto* problem = std::get_if<quantity::Problem>(&read)) {
      found.push_back(quantity::told(*problem, word->range));
      continue;
    }
    const Day day = std::get<Day>(read);
    if (day < *from || day > *until) found.push_back(say("closed-day-outside", word->range, {word->scalar}));
    closed.days.push_back(day);
  }
  std::sort(closed.days.begin(), closed.days.end());
  closed.days.erase(std::unique(closed.days.begin(), closed.days.end()), closed.days.end());
  return closed;
}

}  // namespace headgate::rulebook
