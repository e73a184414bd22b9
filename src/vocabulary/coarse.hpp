// Amounts and days inside a node's text, with what is wrong said at its place in the file.
//
//   read_amount("at least 44 in", length)  -> [1.1176, inf]
//   read_amount("40 in to 46 in", length)  -> nothing, and diagnostic "coarse-range"
#pragma once

#include <optional>
#include <string_view>

#include "document/node.hpp"
#include "quantity/unit.hpp"
#include "text/diagnostic.hpp"

namespace headgate::vocabulary {

struct Amount {
  quantity::Interval value;
  const quantity::Unit* unit = nullptr;
};

// A stretch of a node's scalar.
struct Stretch {
  std::size_t begin = 0;
  std::size_t length = 0;
};
Stretch whole(const document::Node& node);  // without blanks at either end
Stretch trimmed(const document::Node& node, Stretch stretch);
std::string_view text_of(const document::Node& node, Stretch stretch);

std::optional<Amount> read_amount(const document::Node& node, Stretch stretch, const quantity::Dimension& dimension,
                                  text::Diagnostics& found);

// `2026-10-02`, `2026-10`, `1989`, `before 1989`, `after 2026-03-01`: days.
std::optional<quantity::Interval> read_days(const document::Node& node, Stretch stretch, text::Diagnostics& found);

// How far off a value may be: never negative, a difference where the value is a temperature.
std::optional<double> read_tolerance(const document::Node& node, Stretch stretch, const quantity::Dimension& dimension,
                                     text::Diagnostics& found);

// `20 psi to 200 psi`, for `plausible`.
std::optional<quantity::Interval> read_span_of_amounts(const document::Node& node, const quantity::Dimension& dimension,
                                                       text::Diagnostics& found);

text::Diagnostic say_problem(const document::Node& node, Stretch stretch, const quantity::Problem& problem);

}  // namespace headgate::vocabulary
