// A report as text for a terminal, or as JSON for another program. Both are the same from run to run,
// whatever the locale or the order of files.
//
//   text(report, {})            "FAIL  fennick-ferry/reducer-above-static-limit …", at most 80 columns wide
//   json(report)                report/1 as of include/headgate/report.schema.json
//   an empty report             still ends with its totals and the closing statement
#pragma once

#include <string>

#include <nlohmann/json_fwd.hpp>

#include "headgate/finding.hpp"

namespace headgate::report {

struct TextOptions {
  std::size_t width = 80;  // columns; long addresses are never cut, so a line may be wider when one word is
  bool all = false;        // passes, not applicable and not in force too, one line each
};

std::string text(const Report& report, const TextOptions& options);
std::string json(const Report& report);

// How every JSON of headgate is written: indented, in ASCII; a byte that is no UTF-8 (of a file's name) as U+FFFD.
std::string written(const nlohmann::ordered_json& json);

// Words put into lines of at most `width`, the first after `first`, the others indented by `indent` blanks. What a
// terminal would act on is shown as \xNN.
std::string wrapped(const std::string& first, const std::string& words, std::size_t indent, std::size_t width);

}  // namespace headgate::report
