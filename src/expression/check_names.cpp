// Paths, marks and the variables of quantifiers.
#include <algorithm>

#include "expression/check.hpp"
#include "expression/functions.hpp"
#include "vocabulary/names.hpp"

namespace headgate::expression {

namespace {

using vocabulary::Field;
using vocabulary::ShapeSet;

ShapeSet only(std::size_t shape) {
  ShapeSet set;
  set.set(shape);
  return set;
}

vocabulary::Type element_of(const ShapeSet& shapes) {
  auto type = of_kind(vocabulary::Type::Kind::element);
  type.shapes = shapes;
  return type;
}

std::vector<std::string> field_names(const ShapeSet& shapes, const vocabulary::Vocabulary& vocabulary) {
  std::vector<std::string> names;
  for (std::size_t i = 0; i < vocabulary.shapes.size(); ++i) {
    if (!shapes.test(i)) continue;
    for (const Field& field : vocabulary.shapes[i].fields) names.push_back(field.name);
  }
  return names;
}

// Without its last names.
void cut_path(Node& path, std::size_t names) {
  path.steps.resize(path.steps.size() - names);
  for (; names > 0; --names) path.name.resize(path.name.rfind('.'));
}

ShapeSet with_field(std::string_view name, const ShapeSet& among, const vocabulary::Vocabulary& vocabulary) {
  ShapeSet having;
  for (std::size_t i = 0; i < vocabulary.shapes.size(); ++i) {
    if (among.test(i) && vocabulary.shapes[i].field(name)) having.set(i);
  }
  return having;
}

}  // namespace

// Takes the first name off the steps: a variable, `site`, or nothing when it is a field of the root.
std::optional<Checker::Type> Checker::start(NodeId id) {
  Node& at = node(id);
  const std::string& first = at.steps[0].name;
  if (const Visible* variable = visible(first)) {
    at.variable = variable->index;
    at.steps.erase(at.steps.begin());
    return element_of(variable->shapes);
  }
  const auto& root = vocabulary_.shapes[0];
  if (first == root.name && !root.field(first)) {
    at.steps.erase(at.steps.begin());
    return element_of(only(0));
  }
  if (root.field(first)) return element_of(only(0));
  return std::nullopt;
}

Checker::Type Checker::unknown_start(NodeId id) {
  const Step& first = node(id).steps[0];
  if (vocabulary_.kinds(first.name).any()) {
    return bad("kind-not-in-hand", first.range, {first.name, "some " + first.name + " in …"});
  }
  for (const LimitSignature& limit : limits_) {
    if (limit.name == first.name) return bad("unknown-name", first.range, {first.name, "limit." + first.name});
  }
  for (const auto& choice : vocabulary_.choices) {
    const auto member = choice.member(first.name);
    if (!member || node(id).steps.size() > 1) continue;
    return bad("member-without-is", first.range, {first.name, choice.name, "… is " + choice.members[*member].name});
  }
  std::vector<std::string> candidates;
  for (const Visible& variable : visible_) candidates.push_back(variable.name);
  for (const Field& field : vocabulary_.shapes[0].fields) candidates.push_back(field.name);
  candidates.push_back(vocabulary_.shapes[0].name);
  if (node(id).steps.size() == 1) {
    for (const LimitSignature& limit : limits_) candidates.push_back("limit." + limit.name);
  }
  if (node(id).steps.size() > 1) candidates.emplace_back("limit");
  std::string near = text::nearest(first.name, candidates).value_or("");
  const std::size_t hyphen = first.name.find('-');
  if (near.empty() && hyphen != std::string::npos) {
    const std::string before = first.name.substr(0, hyphen);
    if (std::find(candidates.begin(), candidates.end(), before) != candidates.end()) {
      near = before + " - " + first.name.substr(hyphen + 1) + ", with blanks round the minus";
    }
  }
  return bad("unknown-name", first.range, {first.name, near});
}

Checker::Type Checker::path(NodeId id) {
  const text::Range first = node(id).steps[0].range;
  const auto from = start(id);
  return from ? walk(id, *from, first) : unknown_start(id);
}

Checker::Type Checker::walk(NodeId id, Type at, const text::Range& first) {
  const std::vector<Step> steps = node(id).steps;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const std::string so_far = i == 0 ? node(id).name.substr(0, node(id).name.find('.')) : steps[i - 1].name;
    switch (at.kind) {
      case Kind::element: {
        const Field* found = field(at, steps[i]);
        if (found == nullptr) return {};
        if (found->type.kind == Kind::nothing) return bad("derived-type-unknown", steps[i].range, {steps[i].name});
        at = found->type;
        fields_[id] = found;
        break;
      }
      case Kind::choice: {
        const auto property = property_of(at, steps[i]);
        if (!property) return {};
        if (node(id).op == Op::path) cut_path(node(id), steps.size() - i);
        wrap_property(id, *property, steps[i].name, at);
        at = node(id).type;
        break;
      }
      case Kind::list: return bad("step-into-list", steps[i].range, {so_far, steps[i].name});
      case Kind::answers: return bad("step-into-answers", text::join(first, steps[i].range), {steps[i].name});
      default: return bad("step-past-value", steps[i].range, {so_far, described(at), steps[i].name});
    }
  }
  return at;
}

const Field* Checker::field(const Type& of, const Step& step) {
  const Field* found = vocabulary_.common_field(of.shapes, step.name);
  if (found == nullptr) no_such_field(of.shapes, step);
  return found;
}

Checker::Type Checker::no_such_field(const ShapeSet& shapes, const Step& step) {
  const ShapeSet having = with_field(step.name, shapes, vocabulary_);
  if (having == shapes)
    return bad("field-types-differ", step.range, {step.name, listed(names_of(shapes, vocabulary_))});
  if (having.any()) {
    return bad("field-not-in-all", step.range,
               {step.name, listed(names_of(shapes & ~having, vocabulary_)), listed(names_of(having, vocabulary_))});
  }
  const std::string holder = described(element_of(shapes));
  const auto near = text::nearest(step.name, field_names(shapes, vocabulary_));
  if (near) return bad("unknown-field", step.range, {holder, step.name, "did you mean " + *near + "?"});
  ShapeSet all;
  all.set();
  const auto elsewhere = names_of(with_field(step.name, all, vocabulary_), vocabulary_);
  std::string where = elsewhere.empty() ? "" : step.name + " belongs to " + listed(elsewhere, 4);
  for (std::size_t hyphen = step.name.find('-'); where.empty() && hyphen != std::string::npos;
       hyphen = step.name.find('-', hyphen + 1)) {
    const std::string before = step.name.substr(0, hyphen);
    if (vocabulary_.common_field(shapes, before) != nullptr) where = "a minus has blanks: " + before + " - …";
  }
  return bad("unknown-field", step.range, {holder, step.name, where});
}

std::optional<std::uint32_t> Checker::property_of(const Type& choice, const Step& step) {
  const auto& declared = vocabulary_.choices[choice.choice];
  std::vector<std::string> names;
  for (std::uint32_t i = 0; i < declared.properties.size(); ++i) {
    if (declared.properties[i].name == step.name) return i;
    names.push_back(declared.properties[i].name);
  }
  bad("unknown-property", step.range, {declared.name, step.name, vocabulary::offer(step.name, names)});
  return std::nullopt;
}

// The node becomes the property, what it was its only kid.
void Checker::wrap_property(NodeId id, std::uint32_t property, const std::string& name, const Type& path_type) {
  Node inner = node(id);
  inner.type = path_type;
  const Type type = vocabulary_.choices[path_type.choice].properties[property].type;
  const NodeId kid = append(std::move(inner));
  Node& made = node(id);
  made.op = Op::property;
  made.kids = {kid};
  made.steps.clear();
  made.variable = no_node;
  made.index = property;
  made.name = name;
  made.type = type;
}

// A level whose fact declares a mark is read from it.
void Checker::wrap_mark(NodeId id, const Field& field) {
  Node inner = node(id);
  Node mark;
  mark.op = Op::literal;
  mark.range = inner.range;
  mark.type = of_kind(Kind::level);
  mark.written = vocabulary_.marks[field.mark].name;
  mark.value.presence = vocabulary::Presence::present;
  mark.value.id = field.mark;
  const NodeId level = append(std::move(inner));
  const NodeId from = append(std::move(mark));
  Node& made = node(id);
  made.op = Op::at_mark;
  made.kids = {level, from};
  made.steps.clear();
  made.name.clear();
  made.variable = no_node;
  made.before = field.depth;
  made.type = number_of(quantity::dimensions::length);
}

Checker::Type Checker::at_mark(NodeId id) {
  const auto ids = kids(id);
  const Type type = type_of(ids[0]);
  const bool marked = mark(ids[1]);
  if (type.kind == Kind::nothing || !marked) return {};
  if (type.kind != Kind::level)
    return bad("mark-without-level", node(ids[0]).range, {written(ids[0]), described(type)});
  return number_of(quantity::dimensions::length);
}

// The mark behind `below`: its name, or a limit whose type is a level and whose value is a mark.
bool Checker::mark(NodeId id) {
  if (node(id).op == Op::limit) {
    const Type type = type_of(id);
    if (type.kind == Kind::level || type.kind == Kind::nothing) return type.kind == Kind::level;
    bad("limit-is-no-mark", node(id).range, {written(id), described(type)});
    return false;
  }
  const std::string name = node(id).name;
  const auto found = vocabulary_.mark(name);
  if (!found || vocabulary_.marks[*found].name != name) {
    std::vector<std::string> names;
    for (const auto& mark : vocabulary_.marks) names.push_back(mark.name);
    bad("unknown-mark", node(id).range,
        {name, found ? vocabulary_.marks[*found].name : vocabulary::offer(name, names)});
    return false;
  }
  Node& made = node(id);
  made.op = Op::literal;
  made.type = of_kind(Kind::level);
  made.written = name;
  made.value.presence = vocabulary::Presence::present;
  made.value.id = *found;
  return true;
}

std::vector<std::string> Checker::kind_names() const {
  std::vector<std::string> names = vocabulary_.names();
  names.erase(
      std::remove_if(names.begin(), names.end(), [this](const auto& name) { return vocabulary_.kinds(name).none(); }),
      names.end());
  return names;
}

// A variable may bear the name of its own kind and no other name that means something already.
bool Checker::name_taken(const Binder& binder) {
  std::string means;
  if (visible(binder.name) != nullptr) {
    means = "another thing in hand";
  } else if (binder.name != binder.kind_name) {
    const auto names = vocabulary_.names();
    if (std::find(names.begin(), names.end(), binder.name) != names.end()) means = "a kind, group or record";
    if (vocabulary_.shapes[0].field(binder.name)) means = "a fact of the site";
    if (find_function(binder.name)) means = "a function";
    for (const TableSignature& table : tables_) {
      if (table.name == binder.name) means = "a table";
    }
  }
  if (means.empty()) return false;
  bad("name-taken", binder.name_range, {binder.name, means, binder.kind_name + " as other-" + binder.kind_name});
  return true;
}

bool Checker::open_binder(Binder& binder, NodeId list_id, bool named) {
  const Type list = type_of(list_id);
  bool good = list.kind == Kind::list;
  if (!good && list.kind != Kind::nothing) bad("not-a-list", node(list_id).range, {written(list_id), described(list)});
  binder.shapes = vocabulary_.kinds(binder.kind_name);
  if (binder.shapes.none()) {
    const auto near = text::nearest(binder.kind_name, kind_names());
    bad("no-such-kind", binder.kind_range, {binder.kind_name, near.value_or("")});
    good = false;
  } else if (list.kind == Kind::list) {
    binder.shapes &= list.shapes;
    if (binder.shapes.none()) {
      bad("kind-not-in-list", binder.kind_range,
          {written(list_id), binder.kind_name, listed(names_of(list.shapes, vocabulary_))});
      good = false;
    }
  }
  good = (!named || !name_taken(binder)) && good;
  binder.variable = next_variable_;
  visible_.push_back({binder.name, good ? binder.shapes : ShapeSet{}, next_variable_++});
  return good;
}

Checker::Type Checker::quantifier(NodeId id) {
  const auto ids = kids(id);
  Binder binder = node(id).binder;
  const bool named = std::any_of(ids.begin(), ids.end(), [](NodeId kid) { return kid != no_node; });
  bool good = open_binder(binder, binder.list, named);
  node(id).binder = binder;
  for (const NodeId kid : ids) {
    if (good && kid != no_node) good = condition(kid) && good;
  }
  close_binder();
  return good ? of_kind(Kind::truth) : Type{};
}

// count, and sum, least and greatest for each
Checker::Type Checker::fold(NodeId id, const Wanted& wanted) {
  const auto ids = kids(id);
  const Op op = node(id).op;
  Binder binder = node(id).binder;
  const bool named = std::any_of(ids.begin(), ids.end(), [](NodeId kid) { return kid != no_node; });
  bool good = open_binder(binder, binder.list, named);
  node(id).binder = binder;
  Type type = number_of(quantity::dimensions::none);
  if (good && op != Op::count) {
    type = value(ids[0], wanted);
    good = type.kind != Kind::nothing;
  }
  if (node(id).kids.back() != no_node && visible_.back().shapes.any()) good = condition(ids.back()) && good;
  close_binder();
  if (!good) return {};
  const bool ordered =
      type.kind == Kind::number || (op != Op::sum && (type.kind == Kind::date || type.kind == Kind::moment));
  if (!ordered)
    return bad(op == Op::sum ? "not-a-number-value" : "no-order", node(ids[0]).range,
               {written(ids[0]), described(type), ""});
  if (op == Op::sum && type.dimension == quantity::dimensions::size) {
    return bad("size-arithmetic", node(ids[0]).range, {written(ids[0]), ""});
  }
  if (op == Op::sum && type.dimension.absolute)
    return bad("temperature-product", node(ids[0]).range, {written(ids[0])});
  return type;
}

}  // namespace headgate::expression
