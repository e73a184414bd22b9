// Literals, sums and products, with the algebra of their dimensions.
#include <cstdlib>

#include "expression/check.hpp"
#include "expression/functions.hpp"
#include "quantity/calendar.hpp"

namespace headgate::expression {

namespace {

namespace d = quantity::dimensions;

constexpr int highest_power = 12;  // of a base amount: beyond it no formula of the trade goes

bool too_high(const quantity::Dimension& dimension) {
  const auto over = [](int power) { return std::abs(power) > highest_power; };
  return over(dimension.length) || over(dimension.mass) || over(dimension.time) || over(dimension.warming) ||
         over(dimension.size);
}

bool is_number(const vocabulary::Type& type) { return type.kind == vocabulary::Type::Kind::number; }
bool is_size(const vocabulary::Type& type) { return is_number(type) && type.dimension == d::size; }

}  // namespace

Checker::Type Checker::literal(NodeId id, const Wanted& wanted) {
  const std::string written = node(id).written;
  if (written == "yes" || written == "no") {
    node(id).value = vocabulary::of_truth(quantity::truth(written == "yes"));
    return of_kind(Kind::truth);
  }
  const auto plain = quantity::read_number(written);
  const auto* number = std::get_if<quantity::Number>(&plain);
  const bool bare = number != nullptr && number->used == written.size();
  if (!bare) {
    const auto span = quantity::read_span(written);
    if (const auto* read = std::get_if<quantity::Span>(&span)) {
      node(id).value = vocabulary::of_number(quantity::exactly(read->count));
      node(id).value.span_unit = read->unit;
      return of_kind(Kind::span);
    }
  }
  std::optional<quantity::Dimension> dimension;
  if (wanted && wanted->kind == Kind::number) dimension = wanted->dimension;
  if (bare && (!dimension || dimension->plain())) {
    node(id).value = vocabulary::of_number(quantity::exactly(number->value));
    return number_of(d::none);
  }
  auto read = quantity::read_quantity(written, dimension);
  // Of another dimension than its place demands: what uses it says so, naming both sides.
  const auto* first = std::get_if<quantity::Problem>(&read);
  if (first != nullptr && first->id == "wrong-dimension") read = quantity::read_quantity(written);
  if (const auto* wrong = std::get_if<quantity::Problem>(&read)) {
    return bad(wrong->id, text::part(node(id).mark, wrong->offset, wrong->length), wrong->arguments);
  }
  const auto& quantity = std::get<quantity::Quantity>(read);
  node(id).value = vocabulary::of_number(quantity::exactly(quantity.si), quantity.unit);
  const bool metric = quantity.unit != nullptr && quantity.unit->spelling == "mm";
  if (quantity.dimension == d::size && metric) node(id).value.ladder = vocabulary::Ladder::metric;
  return number_of(quantity.dimension);
}

// date +- span, moment +- time.
Checker::Type Checker::step_date(NodeId id, const Type& from, const Type& by) {
  const auto ids = kids(id);
  const bool adds = node(id).op == Op::add;
  const auto calendar = [](const Type& type) { return type.kind == Kind::date || type.kind == Kind::moment; };
  if (calendar(from) && calendar(by)) {
    return bad(adds ? "date-sum" : "date-difference", node(id).range, {written(ids[1]), written(ids[0])});
  }
  if (from.kind == Kind::date && by.kind == Kind::span) return from;
  if (from.kind == Kind::moment && is_number(by) && by.dimension == d::time) return from;
  if (from.kind == Kind::date && is_number(by))
    return bad("date-step", node(ids[1]).range, {written(ids[1]), "days, months, years or business-days"});
  if (from.kind == Kind::moment) return bad("moment-step", node(ids[1]).range, {written(ids[1]), "s, min or h"});
  if (calendar(by))
    return bad("date-goes-first", node(id).range, {adds ? written(ids[1]) + " + " + written(ids[0]) : ""});
  return bad("span-without-date", node(id).range, {written(from.kind == Kind::span ? ids[0] : ids[1])});
}

Checker::Type Checker::add_numbers(NodeId id, const Type& a, const Type& b) {
  const auto ids = kids(id);
  const bool adds = node(id).op == Op::add;
  if (is_size(a) || is_size(b)) {
    const std::string size = written(is_size(a) ? ids[0] : ids[1]);
    return bad("size-arithmetic", node(id).range, {size, "sizes-up(" + size + ", 1)"});
  }
  if (a.dimension == d::temperature || b.dimension == d::temperature) {
    if (!adds && a.dimension == b.dimension) return number_of(d::warming);
    if (a.dimension == d::temperature && b.dimension == d::warming) return a;
    if (adds && a.dimension == d::warming && b.dimension == d::temperature) return b;
  }
  if (a.dimension == b.dimension && a.dimension != d::temperature) return a;
  return bad(adds ? "sum-of-two-dimensions" : "difference-of-two-dimensions", node(id).range,
             {written(ids[0]), described(a), written(ids[1]), described(b)});
}

// What a literal beside a value of type `other` should be: alike, except that it is a warming beside a temperature,
// unless it is subtracted and nobody wants a temperature (`water.temperature - 40 F`).
Checker::Wanted Checker::beside(const Type& other, bool adds, const Wanted& wanted) const {
  if (other.kind == Kind::nothing) return wanted && wanted->kind == Kind::number ? wanted : std::nullopt;
  if (other.kind != Kind::number) return std::nullopt;
  const bool temperature_wanted = wanted && wanted->dimension == d::temperature;
  if (other.dimension == d::temperature && (adds || temperature_wanted)) return number_of(d::warming);
  return other;
}

Checker::Type Checker::add(NodeId id, const Wanted& wanted) {
  const auto ids = kids(id);
  const bool adds = node(id).op == Op::add;
  const std::size_t first = loose(ids[0]) && !loose(ids[1]) ? 1 : 0;
  std::vector<Type> types(2);
  types[first] = value(ids[first], beside({}, adds, wanted));
  types[1 - first] = value(ids[1 - first], beside(types[first], adds, wanted));
  const Type& a = types[0];
  const Type& b = types[1];
  if (a.kind == Kind::nothing || b.kind == Kind::nothing) return {};
  if (is_number(a) && is_number(b)) return add_numbers(id, a, b);
  const auto steps = [](const Type& type) {
    return type.kind == Kind::date || type.kind == Kind::moment || type.kind == Kind::span;
  };
  if (steps(a) || steps(b)) return step_date(id, a, b);
  const bool left = !is_number(a);
  return bad("not-a-number-value", node(ids[left ? 0 : 1]).range,
             {written(ids[left ? 0 : 1]), described(left ? a : b)});
}

// A factor stands by itself, but `pipe.size / 3/4 in` divides sizes, and 10 F times something is a warming.
Checker::Type Checker::factor(NodeId id, const Wanted& wanted) {
  const bool literal = node(id).op == Op::literal;
  const bool unit = node(id).written.find_first_not_of("-./0123456789") != std::string::npos;
  const Type type = value(id, literal && unit ? wanted : std::nullopt);
  if (!literal || !is_number(type) || type.dimension != d::temperature) return type;
  return type_of(id, number_of(d::warming));
}

Checker::Type Checker::multiply(NodeId id) {
  const auto ids = kids(id);
  const bool divides = node(id).op == Op::divide;
  const std::size_t first = loose(ids[0]) && !loose(ids[1]) ? 1 : 0;
  std::vector<Type> types(2);
  types[first] = factor(ids[first], std::nullopt);
  types[1 - first] = factor(ids[1 - first], divides && is_size(types[first]) ? Wanted(types[first]) : std::nullopt);
  for (std::size_t i = 0; i < 2; ++i) {
    if (types[i].kind == Kind::nothing) return {};
    if (!is_number(types[i]))
      return bad("not-a-number-value", node(ids[i]).range, {written(ids[i]), described(types[i])});
    if (types[i].dimension.absolute) return bad("temperature-product", node(ids[i]).range, {written(ids[i])});
  }
  if (is_size(types[0]) || is_size(types[1])) {
    if (divides && is_size(types[0]) && is_size(types[1])) return number_of(d::none);
    const std::size_t at = is_size(types[0]) ? 0 : 1;
    const bool by_length = divides && is_number(types[1 - at]) && types[1 - at].dimension == d::length;
    if (by_length) return clash(node(id).range, ids[0], types[0], ids[1], types[1]);
    return bad("size-arithmetic", node(id).range, {written(ids[at]), "sizes-up(" + written(ids[at]) + ", 1)"});
  }
  const auto result = divides ? quantity::quotient(types[0].dimension, types[1].dimension)
                              : quantity::product(types[0].dimension, types[1].dimension);
  if (too_high(result)) return bad("dimension-too-high", node(id).range, {std::to_string(highest_power)});
  return number_of(result);
}

// least(a, b, …), greatest(a, b, …)
Checker::Type Checker::extreme(NodeId id, const Wanted& wanted) {
  const auto ids = kids(id);
  const auto types = together(ids, wanted);
  if (!types) return {};
  for (std::size_t i = 0; i < ids.size(); ++i) {
    const Kind kind = (*types)[i].kind;
    if (kind != Kind::number && kind != Kind::date && kind != Kind::moment) {
      return bad("no-order", node(ids[i]).range, {written(ids[i]), described((*types)[i]), ""});
    }
    if (!alike((*types)[0], (*types)[i])) {
      return clash(text::join(node(ids[0]).range, node(ids[i]).range), ids[0], (*types)[0], ids[i], (*types)[i]);
    }
  }
  return (*types)[0];
}

Checker::Type Checker::choose(NodeId id, const Wanted& wanted) {
  const auto ids = kids(id);
  const bool good = condition(ids[0]);
  const auto types = together({ids[1], ids[2]}, wanted);
  if (!types || !good) return {};
  if (!alike((*types)[0], (*types)[1])) {
    return bad("branches-differ", node(id).range,
               {written(ids[1]), described((*types)[0]), written(ids[2]), described((*types)[1])});
  }
  return (*types)[0];
}

Checker::Type Checker::call(NodeId id) {
  const auto ids = kids(id);
  const std::string name = node(id).name;
  const auto index = find_function(name);
  if (!index) {
    std::vector<std::string> names;
    for (const Function& function : functions()) names.emplace_back(function.name);
    for (const char* built_in : {"count", "sum", "least", "greatest"}) names.emplace_back(built_in);
    std::string near = text::nearest(name, names).value_or("");
    if (name == "min" || name == "minimum") near = "least";
    if (name == "max" || name == "maximum") near = "greatest";
    return bad("unknown-function", node(id).mark, {name, near});
  }
  const Function& function = functions()[*index];
  node(id).index = *index;
  std::vector<std::string> names;
  for (const Parameter& parameter : function.parameters) names.emplace_back(parameter.name);
  if (ids.size() != function.parameters.size()) {
    return bad("wrong-argument-count", node(id).range,
               {name, counted(function.parameters.size(), "value"), std::to_string(ids.size()),
                name + "(" + listed(names) + ")"});
  }
  bool good = true;
  for (std::size_t i = 0; i < ids.size(); ++i) {
    const Type asked = number_of(function.parameters[i].dimension);
    const Type type = value(ids[i], asked);
    if (type.kind == Kind::nothing) good = false;
    if (type.kind == Kind::nothing || alike(type, asked)) continue;
    bad("wrong-argument", node(ids[i]).range, {names[i], name, described(asked), described(type)});
    good = false;
  }
  return good ? number_of(function.result) : Type{};
}

}  // namespace headgate::expression
