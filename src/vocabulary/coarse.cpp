#include "vocabulary/coarse.hpp"

#include "quantity/coarse.hpp"

namespace headgate::vocabulary {
namespace {

using document::Node;
using quantity::Dimension;
using quantity::Interval;

bool blank(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }

std::optional<double> read_exact(const Node& node, Stretch s, const Dimension& dimension, text::Diagnostics& found) {
  const auto read = quantity::read_quantity(text_of(node, s), dimension);
  if (const auto* amount = std::get_if<quantity::Quantity>(&read)) return amount->si;
  found.push_back(say_problem(node, s, std::get<quantity::Problem>(read)));
  return std::nullopt;
}

}  // namespace

Stretch trimmed(const Node& node, Stretch s) {
  while (s.length > 0 && blank(node.scalar[s.begin])) ++s.begin, --s.length;
  while (s.length > 0 && blank(node.scalar[s.begin + s.length - 1])) --s.length;
  return s;
}

Stretch whole(const Node& node) { return trimmed(node, {0, node.scalar.size()}); }

std::string_view text_of(const Node& node, Stretch s) {
  return std::string_view(node.scalar).substr(s.begin, s.length);
}

text::Diagnostic say_problem(const Node& node, Stretch s, const quantity::Problem& problem) {
  return text::say(problem.id, node.range_of(s.begin + problem.offset, problem.length), problem.arguments);
}

std::optional<Amount> read_amount(const Node& node, Stretch s, const Dimension& dimension, text::Diagnostics& found) {
  const auto read = quantity::read_coarse(text_of(node, s), dimension);
  if (const auto* coarse = std::get_if<quantity::Coarse>(&read)) return Amount{coarse->value, coarse->unit};
  found.push_back(say_problem(node, s, std::get<quantity::Problem>(read)));
  return std::nullopt;
}

std::optional<Interval> read_days(const Node& node, Stretch s, text::Diagnostics& found) {
  const auto read = quantity::read_coarse_date(text_of(node, s));
  if (const auto* days = std::get_if<Interval>(&read)) return *days;
  found.push_back(say_problem(node, s, std::get<quantity::Problem>(read)));
  return std::nullopt;
}

std::optional<double> read_tolerance(const Node& node, Stretch s, const Dimension& dimension,
                                     text::Diagnostics& found) {
  Dimension difference = dimension;
  difference.absolute = false;
  const auto amount = read_exact(node, s, difference, found);
  if (!amount || *amount >= 0) return amount;
  found.push_back(
      text::say("coarse-margin-negative", node.range_of(s.begin, s.length), {std::string(text_of(node, s))}));
  return std::nullopt;
}

std::optional<Interval> read_span_of_amounts(const Node& node, const Dimension& dimension, text::Diagnostics& found) {
  const std::size_t joint = node.is_scalar() ? node.scalar.find(" to ") : std::string::npos;
  if (joint == std::string::npos) {
    found.push_back(text::say("plausible-form", node.range));
    return std::nullopt;
  }
  const auto low = read_exact(node, trimmed(node, {0, joint}), dimension, found);
  const auto high = read_exact(node, trimmed(node, {joint + 4, node.scalar.size() - joint - 4}), dimension, found);
  if (!low || !high) return std::nullopt;
  if (*low <= *high) return Interval{*low, *high};
  found.push_back(text::say("plausible-form", node.range));
  return std::nullopt;
}

}  // namespace headgate::vocabulary
