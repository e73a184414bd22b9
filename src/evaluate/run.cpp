// Deciding: every step of a plan, in order. Nothing here allocates.
#include <algorithm>
#include <array>
#include <cmath>

#include "evaluate/look_up.hpp"
#include "evaluate/plan.hpp"
#include "expression/functions.hpp"

namespace headgate::evaluate {

using quantity::Interval;
using vocabulary::Presence;
using vocabulary::Value;
using Kind = vocabulary::Type::Kind;

Cell cell_of(const Value& value, Why why) {
  Cell cell;
  cell.lo = value.number.lo;
  cell.hi = value.number.hi;
  cell.members = value.members;
  cell.id = value.id;
  cell.presence = value.presence;
  cell.truth = value.truth;
  cell.why = why;
  cell.extra =
      static_cast<std::uint8_t>(static_cast<unsigned>(value.ladder) << 4U | static_cast<unsigned>(value.span_unit));
  return cell;
}

Value value_of(const Cell& cell) {
  Value value;
  value.number = {cell.lo, cell.hi};
  value.members = cell.members;
  value.id = cell.id;
  value.presence = cell.presence;
  value.truth = cell.truth;
  value.ladder = static_cast<vocabulary::Ladder>(cell.extra >> 4U);
  value.span_unit = static_cast<quantity::Span::Unit>(cell.extra & 15U);
  return value;
}

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr std::size_t most_operands = 64;  // of a look-up or call; trees are bounded far below

Interval number(const Cell& cell) { return {cell.lo, cell.hi}; }
bool there(const Cell& cell) { return cell.presence == Presence::present; }

void set_truth(Cell& out, Truth truth, Why why) {
  out.presence = Presence::present;
  out.truth = truth;
  out.why = truth == Truth::undecided ? (why == Why::known ? Why::parts : why) : Why::known;
}

void set_unknown(Cell& out, Why why) {
  out = Cell{};
  out.why = why == Why::known ? Why::parts : why;
}

void set_number(Cell& out, Interval value) {
  out = Cell{};
  out.presence = Presence::present;
  out.lo = value.lo;
  out.hi = value.hi;
}

// Beyond two steps of the grid, which coarsens with the value, no snapping can change which is less.
Truth below(double a, double b, double grid, bool or_equal) {
  constexpr double coarsest = 1.0 / static_cast<double>(std::int64_t{1} << 49U);
  const double margin = 2 * std::max(grid, coarsest * std::max(std::fabs(a), std::fabs(b)));
  if (a + margin < b) return Truth::yes;
  if (b + margin < a) return Truth::no;
  const double x = quantity::snap(a, grid);
  const double y = quantity::snap(b, grid);
  return quantity::truth(or_equal ? x <= y : x < y);
}

Truth compare(const Cell& a, const Cell& b, double grid, bool or_equal) {
  if (below(a.hi, b.lo, grid, or_equal) == Truth::yes) return Truth::yes;
  return below(a.lo, b.hi, grid, or_equal) == Truth::no ? Truth::no : Truth::undecided;
}

struct Runner {
  const Plan& plan;
  Cell* cells;

  const Cell& in(const Step& step, std::size_t i) const { return cells[plan.operands[step.first + i]]; }
  const rulebook::Rulebook& book() const { return *plan.book; }
  const expression::Node& node(const Step& step) const {
    return plan.nodes[step.node].tree->nodes[plan.nodes[step.node].node];
  }
  const vocabulary::Type& kid_type(const Step& step, std::size_t kid) const {
    const auto& of = plan.nodes[step.node];
    return of.tree->nodes[node(step).kids[kid]].type;
  }

  void junction(const Step& step, Cell& out) const {
    const bool all = step.code == Code::all_of;
    Truth result = all ? Truth::yes : Truth::no;
    for (std::size_t i = 0; i < step.count; ++i) {
      result = all ? quantity::both(result, in(step, i).truth) : quantity::either(result, in(step, i).truth);
    }
    set_truth(out, result, Why::parts);
  }

  Compared relate(const Step& step, const Cell& a, const Cell& b, bool or_equal) const {
    if (!there(a) || !there(b)) {
      const bool none = a.presence == Presence::none || b.presence == Presence::none;
      return {Truth::undecided, none ? Why::of_none : Why::parts};
    }
    if (step.sizes && a.extra >> 4U != b.extra >> 4U) {
      Value x = value_of(a);
      Value y = value_of(b);
      if (!same_ladder(x, y, book())) return {Truth::undecided, Why::two_ladders};
      return settled(compare(cell_of(x, Why::known), cell_of(y, Why::known), step.grid, or_equal));
    }
    return settled(compare(a, b, step.grid, or_equal));
  }
  static Compared settled(Truth truth) { return {truth, truth == Truth::undecided ? Why::too_close : Why::known}; }

  void between(const Step& step, Cell& out) const {
    const auto& of = node(step);
    const auto side = [&](std::size_t i, expression::Relation relation) {
      const bool swaps =
          relation == expression::Relation::greater || relation == expression::Relation::greater_or_equal;
      const bool or_equal =
          relation == expression::Relation::less_or_equal || relation == expression::Relation::greater_or_equal;
      return swaps ? relate(step, in(step, i + 1), in(step, i), or_equal)
                   : relate(step, in(step, i), in(step, i + 1), or_equal);
    };
    const Compared first = side(0, of.relation);
    const Compared second = side(1, of.second);
    set_truth(out, quantity::both(first.truth, second.truth), first.truth == Truth::undecided ? first.why : second.why);
  }

  Compared alike(const Step& step, const Value& a, const Value& b) const {
    return evaluate::same(a, b, kid_type(step, 0), book());
  }

  void same(const Step& step, Cell& out) const {
    const Compared result = alike(step, value_of(in(step, 0)), value_of(in(step, 1)));
    set_truth(out, step.negated ? quantity::opposite(result.truth) : result.truth, result.why);
  }

  // A choice known to be one of several, all of them in the list, is in it although no single member is certain.
  void choice_in(const Step& step, std::uint64_t listed, Compared& any) const {
    const Cell& subject = in(step, 0);
    if (any.truth != Truth::undecided || kid_type(step, 0).kind != Kind::choice || !there(subject)) return;
    if ((subject.members & ~listed) == 0) any = {Truth::yes, Why::known};
  }

  void one_of(const Step& step, Cell& out) const {
    const bool choice = kid_type(step, 0).kind == Kind::choice;
    const Cell& subject = in(step, 0);
    Compared any{Truth::no, Why::known};
    std::uint64_t listed = 0;
    for (std::size_t i = 1; i < step.count; ++i) {
      listed |= in(step, i).members;
      const Compared one = alike(step, value_of(subject), value_of(in(step, i)));
      if (one.truth == Truth::undecided) any.why = one.why;
      any.truth = quantity::either(any.truth, one.truth);
    }
    if (choice) choice_in(step, listed, any);
    set_truth(out, step.negated ? quantity::opposite(any.truth) : any.truth, any.why);
  }

  Compared of_kind(const Value& element, const Value& kind) const {
    if (!usable(element)) return {Truth::undecided, element.presence == Presence::none ? Why::of_none : Why::parts};
    return {quantity::truth(plan.site->elements[element.id].shape == kind.id), Why::known};
  }

  void in_list(const Step& step, Cell& out) const {
    const auto& list =
        book()
            .limits[static_cast<std::size_t>(plan.nodes[plan.kids[plan.nodes[step.node].first_kid + 1]].limit)]
            .chain[0]
            .list;
    const Value subject = value_of(in(step, 0));
    Compared any{Truth::no, Why::known};
    std::uint64_t listed = 0;
    for (const auto& value : list) {
      listed |= value.members;
      const Compared one =
          kid_type(step, 0).kind == Kind::element ? of_kind(subject, value) : alike(step, subject, value);
      any.truth = quantity::either(any.truth, one.truth);
      if (one.truth == Truth::undecided) any.why = one.why;
    }
    if (!list.empty()) choice_in(step, listed, any);
    set_truth(out, step.negated ? quantity::opposite(any.truth) : any.truth, any.why);
  }

  void in_season(const Step& step, Cell& out) const {
    const Compared result = evaluate::in_season(value_of(in(step, 0)), value_of(in(step, 1)));
    set_truth(out, step.negated ? quantity::opposite(result.truth) : result.truth, result.why);
  }

  void presence(const Step& step, Cell& out) const {
    const Cell& subject = in(step, 0);
    Truth result = Truth::undecided;
    if (step.code == Code::recorded)
      result = quantity::truth(subject.presence != Presence::unknown);
    else if (subject.presence != Presence::unknown)
      result = quantity::truth((subject.presence == Presence::none) == (step.code == Code::is_none));
    set_truth(out, step.negated ? quantity::opposite(result) : result, subject.why);
  }

  void quantifier(const Step& step, Cell& out) const {
    const bool every = step.code == Code::every;
    Truth result = every ? Truth::yes : Truth::no;
    for (std::size_t i = 0; i < step.count; i += 2) {
      const Truth where = in(step, i).truth;
      const Truth has = in(step, i + 1).truth;
      result = every ? quantity::both(result, quantity::either(quantity::opposite(where), has))
                     : quantity::either(result, quantity::both(where, has));
    }
    Why why = Why::parts;
    if (!step.finished && result == (every ? Truth::yes : Truth::no)) {
      result = Truth::undecided;
      why = Why::unfinished;
    }
    set_truth(out, step.code == Code::none_of ? quantity::opposite(result) : result, why);
  }

  static Interval counted(const Cell& cell) { return there(cell) ? number(cell) : Interval{}; }

  void total(const Step& step, Cell& out) const {
    Interval total = quantity::exactly(0);
    Why why = Why::known;
    for (std::size_t i = 0; i < step.count; i += 2) {
      const Truth where = in(step, i).truth;
      if (where == Truth::no) continue;
      const Interval value = counted(in(step, i + 1));
      if (where == Truth::undecided || value.everything()) why = Why::parts;
      total = quantity::add(total, where == Truth::yes ? value : quantity::hull(value, quantity::exactly(0)));
    }
    if (!step.finished) {
      why = Why::unfinished;
      total = step.grows ? Interval{total.lo, infinity} : Interval{};
    }
    set_number(out, total);
    out.why = why;
  }

  // Sizes are compared on the inch ladder, unless all that are known stand on the metric one.
  bool all_metric(const Step& step) const {
    bool some = false;
    for (std::size_t i = 0; i < step.count; i += 2) {
      if (in(step, i).truth == Truth::no || counted(in(step, i + 1)).everything()) continue;
      if (in(step, i + 1).extra >> 4U == static_cast<unsigned>(vocabulary::Ladder::inch)) return false;
      some = true;
    }
    return some;
  }
  bool to_inch(Cell& size) const {
    Value value = value_of(size);
    Value inch;
    if (!same_ladder(value, inch, book())) return false;
    size = cell_of(value, Why::known);
    return true;
  }

  // Of nothing there is no least; while none is certain to count, there may be nothing.
  void extreme_of(const Step& step, Cell& out) const {
    const bool least = step.code == Code::least_of;
    const bool metric = step.sizes && all_metric(step);
    double lo = infinity;  // of the greatest: of the negated values
    double hi = infinity;
    bool any = false;
    bool certain = false;
    Why why = Why::known;
    for (std::size_t i = 0; i < step.count; i += 2) {
      const Truth where = in(step, i).truth;
      if (where == Truth::no) continue;
      Cell cell = in(step, i + 1);
      const bool converts = step.sizes && !metric && cell.extra >> 4U != 0 && !counted(cell).everything();
      if (converts && !to_inch(cell)) return set_unknown(out, Why::two_ladders);
      const Interval value = least ? counted(cell) : quantity::negate(counted(cell));
      if (where == Truth::undecided || value.everything()) why = Why::parts;
      any = true;
      certain = certain || where == Truth::yes;
      lo = std::min(lo, value.lo);
      if (where == Truth::yes) hi = std::min(hi, value.hi);
    }
    if (!step.finished) why = Why::unfinished;
    if (!certain) return set_unknown(out, any ? Why::parts : step.finished ? Why::empty : why);
    if (!step.finished) lo = -infinity;
    set_number(out, least ? Interval{lo, hi} : Interval{-hi, -lo});
    if (metric) out.extra = static_cast<std::uint8_t>(static_cast<unsigned>(vocabulary::Ladder::metric) << 4U);
    out.why = why;
  }

  bool all_there(const Step& step) const {
    for (std::size_t i = 0; i < step.count; ++i) {
      if (!there(in(step, i))) return false;
    }
    return true;
  }

  void arithmetic(const Step& step, Cell& out) const {
    if (!all_there(step)) return set_unknown(out, Why::parts);
    if (step.sizes && step.code != Code::negate) return of_sizes(step, out);
    Interval result = number(in(step, 0));
    if (step.code == Code::negate) result = quantity::negate(result);
    for (std::size_t i = 1; i < step.count; ++i) result = joined(step.code, result, number(in(step, i)));
    set_number(out, result);
    out.extra = step.code == Code::divide || step.code == Code::multiply ? 0 : in(step, 0).extra;
  }
  static Interval joined(Code code, Interval a, Interval b) {
    switch (code) {
      case Code::add: return quantity::add(a, b);
      case Code::subtract: return quantity::subtract(a, b);
      case Code::multiply: return quantity::multiply(a, b);
      case Code::divide: return quantity::divide(a, b);
      case Code::least: return quantity::least(a, b);
      default: return quantity::greatest(a, b);
    }
  }

  // Nominal sizes divide, and take their least and greatest, on one ladder.
  void of_sizes(const Step& step, Cell& out) const {
    Value best = value_of(in(step, 0));
    for (std::size_t i = 1; i < step.count; ++i) {
      Value next = value_of(in(step, i));
      if (!same_ladder(best, next, book())) return set_unknown(out, Why::two_ladders);
      best.number = joined(step.code, best.number, next.number);
    }
    set_number(out, best.number);
    if (step.code != Code::divide) out.extra = cell_of(best, Why::known).extra;
  }

  // A day so many spans on; an open end stays open. Nothing past what the calendar or the closed days cover.
  std::optional<double> stepped(double day, double count, quantity::Span::Unit unit, int sign) const {
    if (std::isinf(day)) return day;
    const auto there = quantity::step(static_cast<quantity::Day>(day), {count, unit}, sign, &book().closed);
    return there ? std::optional<double>(*there) : std::nullopt;
  }
  void date_step(const Step& step, Cell& out) const {
    if (!all_there(step)) return set_unknown(out, Why::parts);
    const Interval from = number(in(step, 0));
    const Value by = value_of(in(step, 1));
    const auto lo = stepped(from.lo, step.negated ? by.number.hi : by.number.lo, by.span_unit, step.negated ? -1 : 1);
    const auto hi = stepped(from.hi, step.negated ? by.number.lo : by.number.hi, by.span_unit, step.negated ? -1 : 1);
    if (!lo || !hi) return set_unknown(out, Why::no_closed_days);
    set_number(out, {*lo, *hi});
  }

  void property(const Step& step, Cell& out) const {
    const Cell& subject = in(step, 0);
    if (!there(subject)) return set_unknown(out, subject.presence == Presence::none ? Why::of_none : Why::parts);
    const auto& choice = book().vocabulary->choices[kid_type(step, 0).choice];
    const auto& type = node(step).type;
    Value value;
    bool any = false;
    for (std::size_t m = 0; m < choice.members.size(); ++m) {
      if ((subject.members >> m & 1U) == 0) continue;
      const Value& one = choice.members[m].properties[node(step).index];
      value = any ? hull(value, one, type, book()) : one;
      any = true;
    }
    out = cell_of(value, Why::known);
    if (!usable(value) || (type.kind == Kind::truth && value.truth == Truth::undecided)) out.why = Why::parts;
  }

  void reading(const Step& step, Cell& out) const {
    const Cell& level = in(step, 0);
    if (!there(level)) return set_unknown(out, level.presence == Presence::none ? Why::of_none : level.why);
    for (const auto& reading : plan.site->levels[level.id]) {
      if (reading.mark != in(step, 1).id) continue;
      return set_number(out, step.negated ? quantity::negate(reading.height_m) : reading.height_m);
    }
    set_unknown(out, Why::no_reading);
  }

  void choose(const Step& step, Cell& out) const {
    const Truth which = in(step, 0).truth;
    if (which != Truth::undecided) {
      out = in(step, which == Truth::yes ? 1 : 2);
      if (out.why != Why::known) out.why = Why::parts;
    } else {
      out = cell_of(hull(value_of(in(step, 1)), value_of(in(step, 2)), node(step).type, book()), Why::known);
    }
    if (out.presence == Presence::unknown) out.why = Why::parts;
  }

  void select_row(const Step& step, Cell& out) const {
    const Cell& key = in(step, 0);
    if (!there(key)) return set_unknown(out, key.presence == Presence::none ? Why::of_none : Why::parts);
    Value value;
    Why why = Why::no_row;
    bool any = false;
    for (std::size_t m = 0; m + 1 < step.count; ++m) {
      if ((key.members >> m & 1U) == 0) continue;
      const Cell& row = in(step, m + 1);
      value = any ? hull(value, value_of(row), node(step).type, book()) : value_of(row);
      why = any && (usable(value) || row.why == Why::known) ? why : row.why;
      any = true;
    }
    out = cell_of(any ? value : vocabulary::unknown(), why);
  }

  template <typename Compute>
  void with_values(const Step& step, Cell& out, Compute compute) const {
    std::array<Value, most_operands> values;
    const std::size_t count = std::min<std::size_t>(step.count, most_operands);
    for (std::size_t i = 0; i < count; ++i) values[i] = value_of(in(step, i));
    const Found found = compute(std::span<const Value>(values).first(count));
    out = cell_of(found.value, found.why);
  }

  void look_up(const Step& step, Cell& out) const {
    const auto& table = book().tables[static_cast<std::size_t>(plan.nodes[step.node].table)];
    with_values(step, out,
                [&](std::span<const Value> keys) { return evaluate::look_up(table, keys, node(step).column, book()); });
  }

  void call(const Step& step, Cell& out) const {
    if (!all_there(step)) return set_unknown(out, Why::parts);
    with_values(step, out,
                [&](std::span<const Value> inputs) { return call_function(node(step).index, inputs, book()); });
  }

  void one(const Step& step) const {
    Cell& out = cells[step.out];
    switch (step.code) {
      case Code::all_of:
      case Code::any_of: return junction(step, out);
      case Code::invert: return set_truth(out, quantity::opposite(in(step, 0).truth), Why::parts);
      case Code::compare_less:
      case Code::compare_less_or_equal: {
        const Compared result = relate(step, in(step, 0), in(step, 1), step.code == Code::compare_less_or_equal);
        return set_truth(out, result.truth, result.why);
      }
      case Code::between: return between(step, out);
      case Code::same: return same(step, out);
      case Code::one_of: return one_of(step, out);
      case Code::in_list: return in_list(step, out);
      case Code::in_season: return in_season(step, out);
      case Code::is_none:
      case Code::fitted:
      case Code::recorded: return presence(step, out);
      case Code::some:
      case Code::every:
      case Code::none_of: return quantifier(step, out);
      case Code::count:
      case Code::sum: return total(step, out);
      case Code::least_of:
      case Code::greatest_of: return extreme_of(step, out);
      case Code::add:
      case Code::subtract:
      case Code::multiply:
      case Code::divide:
      case Code::negate:
      case Code::least:
      case Code::greatest: return arithmetic(step, out);
      case Code::date_step: return date_step(step, out);
      case Code::property: return property(step, out);
      case Code::reading: return reading(step, out);
      case Code::choose: return choose(step, out);
      case Code::look_up: return look_up(step, out);
      case Code::call: return call(step, out);
      case Code::select_row: return select_row(step, out);
      case Code::copy:
        out = in(step, 0);
        if (out.why != Why::known) out.why = Why::parts;
        return;
    }
  }
};

}  // namespace

void run(const Plan& plan, std::vector<Cell>& cells) {
  const Runner runner{plan, cells.data()};
  for (const auto& step : plan.steps) runner.one(step);
}

}  // namespace headgate::evaluate
