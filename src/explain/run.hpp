// Values handed down the line, step by step. Used by worksheet() only.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "explain/worksheet.hpp"

namespace headgate::explain {

class Runs {
 public:
  explicit Runs(const Context& context) : context_(context) {}

  // Takes a value with its formula when it is handed down the line; the values of a line come from the main on.
  bool take(const evaluate::WorkedValue& at, const evaluate::Evaluated& formula);

  std::vector<Run> finish() const;

 private:
  struct Term {
    double sign = 1;
    quantity::Interval value;
    std::string title;
  };
  struct Step {
    std::string element;
    std::vector<Term> terms;
    std::string reset;
    quantity::Interval after;
  };
  struct Followed {
    std::string name;
    std::string title;
    vocabulary::Type type;
    quantity::Interval start;
    std::vector<Step> steps;
    bool broken = false;  // a value on the way is not known
  };

  struct Digits;

  static std::vector<std::optional<std::int64_t>> changes(const Step& step, bool least, const Digits& digits,
                                                          std::optional<std::int64_t> sum_to);
  static Run shown(const Followed& of, bool least, bool exact);

  const Context& context_;
  std::vector<Followed> followed_;
};

}  // namespace headgate::explain
