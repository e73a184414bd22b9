#include "evaluate/occasion.hpp"

namespace headgate::evaluate {

using vocabulary::Presence;
using vocabulary::Value;

namespace {

// The stage is stated as text, or as a member of a choice whose members are named like the stages.
std::optional<std::size_t> stage_of(const vocabulary::Vocabulary& vocabulary, const vocabulary::Type& type,
                                    const Value& value) {
  if (value.presence != Presence::present) return std::nullopt;
  if (type.kind != vocabulary::Type::Kind::choice) return vocabulary.stage(value.text);
  const auto& members = vocabulary.choices[type.choice].members;
  for (std::size_t m = 0; m < members.size(); ++m) {
    if (value.members == std::uint64_t{1} << m) return vocabulary.stage(members[m].name);
  }
  return std::nullopt;
}

}  // namespace

Occasion occasion(const rulebook::Rulebook& book, const site::Site& site, const Options& options) {
  Occasion result;
  const auto& root = book.vocabulary->shapes[0];
  result.stage = options.stage;
  if (const auto field = root.field("stage"); field && !result.stage) {
    result.stage = stage_of(*book.vocabulary, root.fields[*field].type, site.slot(0, *field).value);
  }
  if (options.checked_on)
    result.checked_on = quantity::exactly(*options.checked_on);
  else if (const auto field = root.field("checked-on")) {
    const auto& value = site.slot(0, *field).value;
    if (value.presence == Presence::present) result.checked_on = value.number;
  }
  return result;
}

Duty judge_duty(const Value& due, const Value* done, const Occasion& when) {
  constexpr double a_day = 1.0;
  Duty duty;
  const bool known = due.presence == Presence::present;
  if (done != nullptr && done->presence == Presence::present) {
    if (known) duty.met = quantity::less_or_equal(done->number, due.number, a_day);
    duty.done_late = duty.met == Truth::no;
    return duty;
  }
  if (!known || !when.checked_on) return duty;
  const Truth past = quantity::less(due.number, *when.checked_on, a_day);
  duty.open = past == Truth::no;
  if (done != nullptr && done->presence == Presence::none && past == Truth::yes) duty.met = Truth::no;
  return duty;
}

void settle(Decision& decision, const rulebook::Rule& rule, const Occasion& when) {
  const bool has_require = rule.require.has_value() || rule.due.has_value();
  decision.applies = quantity::both(decision.when, quantity::opposite(decision.exception));
  decision.outcome = judge_row(rule.level, decision.applies, decision.require, has_require, decision.by_approval);
  decision.would_be = decision.outcome;
  if (decision.applies == Truth::no) return;
  decision.stage_unknown = !when.stage.has_value();
  const bool duty_waits = decision.duty_open && decision.require == Truth::undecided;
  if (duty_waits || (when.stage && rule.stage > *when.stage)) decision.outcome = Outcome::later;
}

}  // namespace headgate::evaluate
