#include <algorithm>

#include "vocabulary/loading.hpp"
#include "vocabulary/names.hpp"

namespace headgate::vocabulary {
namespace {

using document::Entry;
using document::Node;

const std::vector<std::string> file_keys = {"format", "stages",  "stops", "roles",   "marks", "choices",
                                            "groups", "records", "kinds", "derived", "sizing"};

struct Words {
  std::string title;
  std::vector<std::string> spellings;
};

// {title: …, spellings: […]}, or the title alone.
Words read_words(Loading& at, const Entry& entry, bool spelled, std::string_view what) {
  Words words;
  words.title = in_words(entry.key);
  if (entry.value.is_scalar()) {
    words.title = entry.value.scalar;
    return words;
  }
  if (!expect_map(at, entry.value, entry.key)) return words;
  check_keys(at, entry.value,
             spelled ? std::vector<std::string>{"title", "spellings"} : std::vector<std::string>{"title"}, what);
  if (const std::string title = text_of(at, entry.value, "title"); !title.empty()) words.title = title;
  if (!spelled) return words;
  for (const Node* spelling : words_of(at, entry.value, "spellings")) words.spellings.push_back(spelling->scalar);
  return words;
}

// The entries of a section that can be declared, each declared.
template <typename Take>
void each_declared(Loading& at, const Node* section, std::string_view space, Take take) {
  if (!section || !expect_map(at, *section, space)) return;
  for (const Entry& entry : section->entries) {
    if (!check_name(at, entry)) continue;
    if (declare(at, std::string(space) + "/" + entry.key, entry.key, entry.key_range)) take(entry);
  }
}

template <typename Item>
void check_spellings(Loading& at, const std::vector<Item>& items, const Entry& entry, const Words& words) {
  for (const std::string& spelling : words.spellings) {
    for (const Item& other : items) {
      const auto same = [&](const std::string& each) { return folded(each) == folded(spelling); };
      const bool clash =
          folded(other.name) == folded(spelling) || std::any_of(other.spellings.begin(), other.spellings.end(), same);
      if (clash) at.found.push_back(text::say("spelling-clash", entry.key_range, {spelling, entry.key, other.name}));
    }
  }
}

void declare_words(Loading& at, const Node& file) {
  Vocabulary& v = at.vocabulary;
  each_declared(at, file.find("stages"), "stage", [&](const Entry& entry) {
    v.stages.push_back({entry.key, read_words(at, entry, false, "a stage").title});
  });
  each_declared(at, file.find("stops"), "stop", [&](const Entry& entry) {
    v.stops.push_back({entry.key, read_words(at, entry, false, "a stop").title});
  });
  each_declared(at, file.find("roles"), "role", [&](const Entry& entry) {
    const Words words = read_words(at, entry, true, "a role");
    check_spellings(at, v.roles, entry, words);
    v.roles.push_back({entry.key, words.title, words.spellings});
  });
  each_declared(at, file.find("marks"), "mark", [&](const Entry& entry) {
    const Words words = read_words(at, entry, true, "a mark");
    check_spellings(at, v.marks, entry, words);
    v.marks.push_back({entry.key, words.title, words.spellings});
  });
}

// Another file may give a group more facts, as it may a kind; its title is said once.
void declare_group(Loading& at, const Entry& entry) {
  Vocabulary& v = at.vocabulary;
  const bool map = entry.value.is_map();
  if (!map && !entry.value.is_scalar()) {
    expect_map(at, entry.value, entry.key);
    return;
  }
  const Node* facts = map ? entry.value.find("facts") : nullptr;
  const std::string title = map ? text_of(at, entry.value, "title") : entry.value.scalar;
  if (map) check_keys(at, entry.value, {"title", "of", "facts"}, "a group");
  if (v.groups.count(entry.key) == 0) {
    if (!check_name(at, entry) || !declare(at, "name/" + entry.key, entry.key, entry.key_range)) return;
    v.groups.emplace(entry.key, ShapeSet{});
    v.group_titles.emplace(entry.key, in_words(entry.key));
  }
  if (map && entry.value.find("of") != nullptr) at.group_parts.emplace_back(entry.key, &entry.value);
  if (!title.empty() || facts == nullptr) {
    if (!declare(at, "group-title/" + entry.key, entry.key, entry.key_range)) return;
    if (!title.empty()) v.group_titles[entry.key] = title;
  }
  if (facts == nullptr || !expect_map(at, *facts, "facts")) return;
  for (const Entry& fact : facts->entries) at.group_facts.emplace_back(entry.key, &fact);
}

// A group of groups holds every kind of each, however deep they lie.
void join_group_parts(Loading& at) {
  auto& groups = at.vocabulary.groups;
  bool grows = true;
  bool first = true;
  while (grows) {
    grows = false;
    for (const auto& [group, map] : at.group_parts) {
      const auto said = at.found.size();
      const ShapeSet kinds = groups[group] | read_kinds(at, words_of(at, *map, "of"));
      if (!first) at.found.resize(said);  // said in the first round
      grows = grows || kinds != groups[group];
      groups[group] = kinds;
    }
    first = false;
  }
}

void declare_groups(Loading& at, const Node& file) {
  const Node* groups = file.find("groups");
  if (!groups || !expect_map(at, *groups, "name")) return;
  for (const Entry& entry : groups->entries) declare_group(at, entry);
}

void note_derived(Loading& at, const Node& file) {
  const Node* derived = file.find("derived");
  if (!derived || !expect_map(at, *derived, "derived")) return;
  for (const Entry& shape : derived->entries) {
    if (!expect_map(at, shape.value, shape.key)) continue;
    const ShapeSet kinds = at.vocabulary.kinds(shape.key);
    const auto one = at.vocabulary.shape(shape.key);
    if (!one && kinds.none()) {
      at.found.push_back(
          text::say("no-such-shape", shape.key_range, {shape.key, offer(shape.key, at.vocabulary.names())}));
      continue;
    }
    for (const Entry& entry : shape.value.entries) {
      if (one) at.derived.push_back({shape.key, *one, false, &entry});
      for (std::size_t id = 0; id < at.vocabulary.shapes.size() && !one; ++id) {
        if (kinds.test(id)) at.derived.push_back({shape.key, static_cast<ShapeId>(id), true, &entry});
      }
    }
  }
}

// Stages and roles are choices too, so that a fact can be one of them.
template <typename Item>
void offer_as_choice(Loading& at, const std::string& name, const std::vector<Item>& items) {
  if (items.empty() || at.vocabulary.choice(name) || items.size() > most_members) return;
  Choice choice;
  choice.name = choice.title = name;
  for (const Item& item : items) {
    Member member;
    member.name = item.name;
    member.title = item.title;
    if constexpr (std::is_same_v<Item, Role>) member.spellings = item.spellings;
    choice.members.push_back(member);
  }
  at.vocabulary.choices.push_back(choice);
}

void check_file(Loading& at, const Node& file) {
  check_keys(at, file, file_keys, "a vocabulary file");
  const Node* format = file.find("format");
  if (!format || (format->is_scalar() && format->scalar == "vocabulary/1")) return;
  at.found.push_back(text::say("vocabulary-format", format->range, {format->scalar}));
}

std::vector<const Node*> usable(Loading& at, const std::vector<const Node*>& files) {
  std::vector<const Node*> result;
  for (const Node* file : files) {
    if (!expect_map(at, *file, "a vocabulary file")) continue;
    check_file(at, *file);
    result.push_back(file);
  }
  return result;
}

void begin_root(Vocabulary& vocabulary) {
  Shape root;
  root.name = root.title = "site";
  vocabulary.shapes.push_back(root);
}

}  // namespace

// Names first, in every file, then what refers to them: the order of files and sections does not matter.
Vocabulary load(const std::vector<const Node*>& files, text::Diagnostics& found) {
  Vocabulary vocabulary;
  Loading at{vocabulary, found};
  begin_root(vocabulary);
  const std::vector<const Node*> maps = usable(at, files);
  for (const Node* file : maps) {
    declare_words(at, *file);
    declare_groups(at, *file);
  }
  for (const Node* file : maps) {
    if (const Node* choices = file->find("choices")) declare_choices(at, *choices);
    if (const Node* records = file->find("records")) declare_shapes(at, *records, false);
    if (const Node* kinds = file->find("kinds")) declare_shapes(at, *kinds, true);
  }
  join_group_parts(at);
  offer_as_choice(at, "stage", vocabulary.stages);
  offer_as_choice(at, "role", vocabulary.roles);
  for (const Node* file : maps) {
    if (const Node* choices = file->find("choices")) read_properties(at, *choices);
    note_derived(at, *file);
  }
  read_members(at);
  read_shape_facts(at);
  read_derived(at);
  complete_shapes(at);
  for (const Node* file : maps) read_sizing(at, *file);
  if (!maps.empty() && at.seen.count("name/site") == 0) found.push_back(text::say("no-site-record", maps[0]->range));
  return vocabulary;
}

}  // namespace headgate::vocabulary
