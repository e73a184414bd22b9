#include <algorithm>

#include "vocabulary/loading.hpp"
#include "vocabulary/names.hpp"

namespace headgate::vocabulary {
namespace {

using document::Entry;
using document::Node;

void set_title(Loading& at, Choice& choice, const Entry& entry) {
  const Node* title = entry.value.find("title");
  if (!title || !declare(at, "choice-title/" + entry.key, "title of " + entry.key, title->range)) return;
  choice.title = text_of(at, entry.value, "title");
}

void declare_member(Loading& at, ChoiceId id, const Entry& entry) {
  Choice& choice = at.vocabulary.choices[id];
  if (!check_name(at, entry)) return;
  if (!declare(at, "member/" + choice.name + "/" + entry.key, entry.key, entry.key_range)) return;
  if (choice.members.size() == most_members) {
    at.found.push_back(text::say("too-many-members", entry.key_range, {choice.name, std::to_string(most_members)}));
    return;
  }
  Member member;
  member.name = entry.key;
  member.title = entry.value.is_scalar() ? entry.value.scalar : in_words(entry.key);
  choice.members.push_back(member);
  if (!entry.value.is_scalar()) at.members.emplace_back(id, &entry);
}

// `members: [a, b]`: names that say it all.
void declare_listed(Loading& at, ChoiceId id, const Node& list) {
  for (const Node& item : list.items) {
    Entry entry;
    entry.key = item.scalar;
    entry.key_range = item.range;
    entry.value.scalar = in_words(item.scalar);
    if (item.is_scalar()) {
      declare_member(at, id, entry);
    } else {
      at.found.push_back(text::say("vocabulary-words", item.range, {"members"}));
    }
  }
}

void declare_members(Loading& at, ChoiceId id, const Node& members) {
  if (members.is_list()) {
    declare_listed(at, id, members);
  } else if (expect_map(at, members, "members")) {
    for (const Entry& entry : members.entries) declare_member(at, id, entry);
  }
}

ChoiceId begin_choice(Loading& at, const Entry& entry) {
  if (const auto known = at.vocabulary.choice(entry.key)) return *known;
  Choice choice;
  choice.name = entry.key;
  choice.title = in_words(entry.key);
  at.vocabulary.choices.push_back(choice);
  return static_cast<ChoiceId>(at.vocabulary.choices.size() - 1);
}

// A spelling may stand for one member of its choice only.
void check_spelling(Loading& at, const Choice& choice, const Member& member, const Node& node) {
  const std::string wanted = folded(node.scalar);
  for (const Member& other : choice.members) {
    if (&other == &member) continue;
    const bool clash =
        folded(other.name) == wanted || std::any_of(other.spellings.begin(), other.spellings.end(),
                                                    [&](const std::string& each) { return folded(each) == wanted; });
    if (clash) at.found.push_back(text::say("spelling-clash", node.range, {node.scalar, member.name, other.name}));
  }
}

void read_member(Loading& at, Choice& choice, const Entry& entry) {
  if (!expect_map(at, entry.value, entry.key)) return;
  Member& member = choice.members[*choice.member(entry.key)];
  std::vector<std::string> keys = {"title", "spellings"};
  for (const Property& property : choice.properties) keys.push_back(property.name);
  check_keys(at, entry.value, keys, "a member of " + choice.name);
  if (const std::string title = text_of(at, entry.value, "title"); !title.empty()) member.title = title;
  for (const Node* spelling : words_of(at, entry.value, "spellings")) {
    check_spelling(at, choice, member, *spelling);
    member.spellings.push_back(spelling->scalar);
  }
  for (std::size_t i = 0; i < choice.properties.size(); ++i) {
    const Node* node = entry.value.find(choice.properties[i].name);
    if (!node) continue;
    member.properties[i] = read_value(*node, choice.properties[i].type, nullptr, at.vocabulary, nullptr, at.found);
  }
}

bool may_be_property(const Declared& declared) {
  const auto kind = declared.type.kind;
  return declared.holds == Field::Holds::fact && kind != Type::Kind::level;
}

void read_property(Loading& at, Choice& choice, const Entry& entry) {
  if (!check_name(at, entry, true)) return;
  if (!declare(at, "property/" + choice.name + "/" + entry.key, entry.key, entry.key_range)) return;
  const Node* type = entry.value.is_map() ? entry.value.find("type") : &entry.value;
  if (entry.value.is_map()) check_keys(at, entry.value, {"type", "title"}, "a property");
  if (type == nullptr) {
    at.found.push_back(text::say("fact-without-type", entry.key_range, {entry.key}));
    return;
  }
  const auto declared = read_type(at, *type);
  if (!declared) return;
  if (!may_be_property(*declared)) {
    at.found.push_back(text::say("property-type", entry.value.range, {entry.key}));
    return;
  }
  std::string title = entry.value.is_map() ? text_of(at, entry.value, "title") : "";
  if (title.empty()) title = in_words(entry.key);
  choice.properties.push_back({entry.key, std::move(title), declared->type});
}

}  // namespace

void declare_choices(Loading& at, const Node& choices) {
  if (!expect_map(at, choices, "choices")) return;
  for (const Entry& entry : choices.entries) {
    if (!check_name(at, entry) || !expect_map(at, entry.value, entry.key)) continue;
    if (is_type_name(entry.key)) {
      at.found.push_back(text::say("choice-name-taken", entry.key_range, {entry.key}));
      continue;
    }
    check_keys(at, entry.value, {"title", "properties", "members"}, "a choice");
    const ChoiceId id = begin_choice(at, entry);
    set_title(at, at.vocabulary.choices[id], entry);
    if (const Node* members = entry.value.find("members")) declare_members(at, id, *members);
  }
}

void read_properties(Loading& at, const Node& choices) {
  for (const Entry& entry : choices.entries) {
    const Node* properties = entry.value.find("properties");
    const auto id = at.vocabulary.choice(entry.key);
    if (!properties || !id || !expect_map(at, *properties, "properties")) continue;
    for (const Entry& property : properties->entries) read_property(at, at.vocabulary.choices[*id], property);
  }
}

void read_members(Loading& at) {
  for (Choice& choice : at.vocabulary.choices) {
    for (Member& member : choice.members) member.properties.resize(choice.properties.size());
  }
  for (const auto& [id, entry] : at.members) read_member(at, at.vocabulary.choices[id], *entry);
}

}  // namespace headgate::vocabulary
