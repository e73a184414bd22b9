// What the steps of loading a vocabulary share. Not for other layers.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "vocabulary/vocabulary.hpp"

namespace headgate::vocabulary {

// A derived value as written: under a shape, or under a group of them.
struct WrittenDerived {
  std::string of;
  ShapeId shape = 0;
  bool by_group = false;
  const document::Entry* entry = nullptr;
};

struct Loading {
  Vocabulary& vocabulary;
  text::Diagnostics& found;
  std::map<std::string, text::Range> seen = {};  // "choice/pipe-material" -> where it was declared
  std::vector<std::pair<ShapeId, const document::Entry*>> facts = {};            // not read until every name is known
  std::vector<std::pair<std::string, const document::Entry*>> group_facts = {};  // likewise, of every kind in a group
  std::vector<std::pair<std::string, const document::Node*>> group_parts = {};   // a group that holds others
  std::vector<WrittenDerived> derived = {};
  std::vector<std::pair<ChoiceId, const document::Entry*>> members = {};
  std::vector<std::pair<ShapeId, const document::Node*>> shorts = {};
  std::vector<std::pair<ShapeId, const document::Node*>> definitions = {};
};

// Notes that `what` ("mark/floor") is declared at `range`; false, with a diagnostic of both places, when it was before.
bool declare(Loading& at, const std::string& what, std::string_view name, const text::Range& range);

// A name that can be declared: well formed, and no grammar word unless it only ever follows a dot.
bool check_name(Loading& at, const document::Entry& entry, bool follows_dot = false);

bool check_keys(Loading& at, const document::Node& map, const std::vector<std::string>& keys, std::string_view of_what);
bool expect_map(Loading& at, const document::Node& node, std::string_view what);
// The scalar under a key; "" when there is none or it is no scalar (which is said).
std::string text_of(Loading& at, const document::Node& map, std::string_view key);
bool flag_of(Loading& at, const document::Node& map, std::string_view key);
// The scalars of a list, or a single one.
std::vector<const document::Node*> words_of(Loading& at, const document::Node& map, std::string_view key);

void declare_choices(Loading& at, const document::Node& choices);
void declare_shapes(Loading& at, const document::Node& shapes, bool kinds);
void read_properties(Loading& at, const document::Node& choices);
void read_members(Loading& at);
void read_shape_facts(Loading& at);
void read_derived(Loading& at);
void complete_shapes(Loading& at);  // short forms, definitions, previous and next, unions, caps

void read_sizing(Loading& at, const document::Node& file);

struct Declared {
  Type type;
  Field::Holds holds = Field::Holds::fact;
  Direction direction = Direction::upstream;
  bool depth = false;
};
std::optional<Declared> read_type(Loading& at, const document::Node& node);
bool is_type_name(const std::string& name);  // of a type that is there without a vocabulary: "date", "pressure"
// Kinds or groups, as a set; each unknown one is said.
ShapeSet read_kinds(Loading& at, const std::vector<const document::Node*>& names);

}  // namespace headgate::vocabulary
