// What may be said: the records and kinds of thing an installation is made of, their facts with type
// and question, the choices, marks, roles and stages. All of it comes from files `format: vocabulary/1`.
//
//   records:
//     site:                                   # the root: top-level keys of a site file
//       facts:
//         pressure: {type: record pressure}
//         line: {type: list, of: [pipe, meter, wall, valve], walk: yes}
//         fixtures: {type: list, of: [fixture]}
//         branches: {type: list, of: [branch], named: yes}      # a map: name -> branch
//     pressure:
//       title: pressure
//       facts:
//         highest-static:
//           type: pressure                    # a dimension, or yes-no, text, date, moment, clock, season, span,
//                                             # size, depth, height, a choice's name, `record NAME`, list, answers,
//                                             # `nearest KIND upstream`, `nearest KIND downstream`, `holding KIND`
//                                             # (the branch in whose line it stands), or `element`:
//                                             # any element, named by its address (`line[3]`)
//           ask: What is the highest static pressure?
//           hint: Read a gauge on a hose bibb with no water running, over a night if you can.
//           plausible: 20 psi to 200 psi      # outside it a load warns, nothing more
//           at: hose-bibb                     # the stop of the walk where it is asked
//           cost: measure                     # know, look, measure, dig
//   kinds:
//     pipe: {title: pipe, groups: [], passive: yes, short: size, facts: {…}}
//     branch:                                 # `- branch: lawn` in a walk is the element `lawn` of `branches`
//       defined-in: branches
//       facts: {feeds: {type: text}, line: {type: list, of: [pipe, valve], walk: yes}}
//   groups:
//     valve: {title: valve, facts: {works: {type: yes-no}}}   # a fact of every kind of it that does not say its own
//     part: {title: part of the line, of: [pipe, valve]}      # every kind of these
//   marks: {finished-grade: {title: finished grade, spellings: [grade]}}
//   roles: {building-official: {title: building official}}
//   stages: {entry: {title: the water entry}}
//   stops: {hose-bibb: {title: at the hose bibb}}
//   choices:
//     pipe-material:
//       properties: {metal: yes-no, roughness: number}          # or {type: yes-no, title: one that …}
//       members: {k-copper: {title: type K copper, spellings: [K copper], metal: yes, roughness: 140}}
//   derived:
//     pipe:
//       inside-diameter: {type: length, is: pipe-dimensions[pipe.series, pipe.size].inside-diameter}
//       weight: pipe.length * 2                # no type: the rulebook sets it when it has read the formula
//     valve:                                   # a group: every kind of it that neither says its own nor has it said
//                                              # by a group inside this one
//       loss: {type: pressure, is: 0 psi}      # the formula calls the thing `valve`
//
//   works: {type: yes-no, ask: Does the valve shut off fully?, says: shuts off fully}     # of a yes-no: what is so of its
//                                              # thing when yes, as it follows its name; begun with is, was, has or can
//                                              # it can be denied too. Needed where the question does not ask after the
//                                              # thing itself (`Is it …?`, `Was this pipe …?`)
//   sizing:                                   # what `worksheet --size` tries
//     pipe: {when: sized, fact: size, sizes: pipe-dimensions}    # of which pipes which fact, and the table of its values
//     meter: {when: sized, fact: size, sizes: meter-capacity}
//     topics: [size]                          # the rules that judge them
//     where-it-differs: [pressure]            # of these topics only rules that the sizes tried change
//     left: pressure.worst-outlet             # told beside each
// Other keys of a fact: title, mark (of a depth or height), never-negative, and of a list: of, named, walk,
// `union: [line, branches.line]` (computed: the elements of those lists), `left-out: none` (a list nobody
// wrote is empty and complete; `papers` always is) and `on-file: yes` (what it holds is part of the job's file: a
// checklist names it). A fact, stage, mark, group or member may be cut to its one
// line: `housed: housing` is the type, `entry: the water entry` the title. A kind that stands in a walk has
// `previous` and `next` without being told. `stage` and `role` are choices of the declared stages and roles.
//
// Several files are one vocabulary: a later file may add facts to a kind, record or group, members to a choice, groups
// to a kind; what is said twice is a diagnostic with both places.
// A type nobody declared (`type: presure`) is a diagnostic at its place, with the nearest name.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "document/node.hpp"
#include "text/diagnostic.hpp"
#include "vocabulary/value.hpp"

namespace headgate::vocabulary {

struct Member {
  std::string name;
  std::string title;
  std::vector<std::string> spellings;  // what the trade writes; matched without regard to case
  std::vector<Value> properties;       // by Choice::properties; unknown where the member does not say
};

struct Property {
  std::string name;
  std::string title;  // as it follows "is": "metal", "one that stores hot water"
  Type type;
};

struct Choice {
  std::string name;
  std::string title;
  std::vector<Property> properties;
  std::vector<Member> members;                                        // at most most_members
  std::optional<std::size_t> member(std::string_view written) const;  // by name or spelling
};

// Depths and heights are measured from a mark. Marks may also be fixed against one another by the site.
struct Mark {
  std::string name;
  std::string title;
  std::vector<std::string> spellings;
};

struct Role {
  std::string name, title;
  std::vector<std::string> spellings;
};
struct Stage {
  std::string name, title;
};
struct Stop {
  std::string name, title;
};  // of the walk: truck, hose-bibb, meter, …
enum class Cost : std::uint8_t { know, look, measure, dig };

// Where the element a reference means is looked for; `stated`: only where the site says; `holding`: it is the one
// in whose list the thing stands.
enum class Direction : std::uint8_t { upstream, downstream, stated, holding };

struct Field {
  enum class Holds : std::uint8_t { fact, record, list, reference, derived, answers };
  std::string name;
  std::string title;
  Holds holds = Holds::fact;
  Type type;
  std::string ask, hint, stop;
  std::string says;  // of a yes-no: "is new in this job", what the thing is when yes
  Cost cost = Cost::look;
  std::optional<quantity::Interval> plausible;  // SI
  std::string usual;                            // `plausible` as written
  bool never_negative = false;                  // so an unfinished list's sum has a lower bound
  bool depth = false;                           // a level shown as depth (below) rather than height (above)
  MarkId mark = no_id;                          // of a level: the mark meant where none is written
  bool named = false;                           // of a list: written as a map of names
  bool walk = false;                            // of a list: its order is the order the water meets things
  bool left_out_none = false;                   // of a list: left out, it is empty and complete
  bool on_file = false;                         // of a list: what it holds is part of the job's file
  std::vector<std::string> union_of;            // of a computed list: "line", "branches.line"
  Direction direction = Direction::upstream;    // of a reference
  const document::Node* formula = nullptr;      // of a derived value; alive as long as the files' trees are
  std::string self;                             // of a derived value: what its formula calls the thing it is of
  text::Range range;
};

// A record, or a kind of thing that stands in lists.
struct Shape {
  std::string name;
  std::string title;
  bool kind = false;     // stands in lists under its own key
  bool passive = false;  // `comes right` looks through it (pipes and walls are)
  std::vector<std::string> groups;
  FieldId short_field = no_id;  // what `kind: value` and `record: value` state
  FieldId defined_in = no_id;   // of a kind: the root's named list that holds its elements; a walk only names them
  std::vector<Field> fields;
  text::Range range;
  std::optional<FieldId> field(std::string_view name) const;
};

// What is tried to find the smallest that passes, by which rules, and what is told of each try.
struct Sizing {
  struct Part {
    ShapeId shape = no_id;
    FieldId when = no_id;  // the computed yes-no that says whose size is tried
    FieldId fact = no_id;
    std::string sizes;  // the table whose last key lists what is tried
  };
  Part pipe, meter;
  std::vector<std::string> topics, where_it_differs;
  std::string left;  // a computed fact: "pressure.worst-outlet"
};

struct Vocabulary {
  std::vector<Shape> shapes;  // shapes[0] is the record `site`
  std::vector<Choice> choices;
  std::vector<Mark> marks;
  std::vector<Role> roles;
  std::vector<Stage> stages;  // in order
  std::vector<Stop> stops;    // in walking order
  std::map<std::string, ShapeSet> groups;
  std::map<std::string, std::string> group_titles;
  std::optional<Sizing> sizing;

  std::optional<ShapeId> shape(std::string_view name) const;
  std::optional<ChoiceId> choice(std::string_view name) const;
  std::optional<MarkId> mark(std::string_view written) const;       // by name or spelling
  std::optional<std::size_t> role(std::string_view written) const;  // by name, spelling or title
  std::optional<std::size_t> stage(std::string_view name) const;
  ShapeSet kinds(std::string_view kind_or_group) const;  // empty when there is no such
  // The field every shape of the set has under this name, with one type; nullptr otherwise.
  const Field* common_field(const ShapeSet& shapes, std::string_view name) const;
  std::vector<std::string> names() const;  // of kinds, groups and records: one name space
};

// The files' root record, where the walk and the papers are.
inline constexpr ShapeId root_shape = 0;
inline constexpr std::size_t most_fields = 256;  // of one shape, records inside it counted with theirs

// Reads the vocabulary files together, in the order given; what is wrong goes to `found`.
// The nodes must outlive the vocabulary (formulas point into them).
Vocabulary load(const std::vector<const document::Node*>& files, text::Diagnostics& found);

// One fact's text as a value of its type: coarse values, `unknown`, `none`, spellings, readings.
// A level may be a list of readings. Used for facts, limits, table cells and `--set` alike; elements, lists and
// answers are the site's. A text value's view points into the node's scalar, which must outlive it.
Value read_value(const document::Node& node, const Type& type, const Field* field, const Vocabulary& vocabulary,
                 std::vector<Reading>* readings, text::Diagnostics& found);

// `good-to: 2 psi`: the value, and each of its readings, give or take as much.
void widen(Value& value, std::vector<Reading>* readings, const document::Node& good_to, const Type& type,
           text::Diagnostics& found);

// As people read it: "86 psi", "type K copper", "one of type K copper, type L copper", "unknown", "none".
std::string show(const Value& value, const Type& type, const Vocabulary& vocabulary);
// A level: "40 in below finished grade, 38 in below ground at the house".
std::string show(const std::vector<Reading>& readings, const Field& field, const quantity::Unit* unit,
                 const Vocabulary& vocabulary);

}  // namespace headgate::vocabulary
