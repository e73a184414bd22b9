// The sheet a plumber takes along: what the inspector looks for at one stage, what is shown to be met, what to have in
// hand, and what comes next. Judged at that stage: what binds later is not asked for yet.
//
//   checklist(report, {stages, on_file}, 80)
//     "[x] The pipe is deep enough.  (line[4] pipe)"   met; [ ] to put right, [?] to find out, [!] to mind
//   a stage at which nothing binds says so
#pragma once

#include <string>
#include <vector>

#include "headgate/finding.hpp"

namespace headgate::report {

struct ChecklistSheet {
  std::vector<std::pair<std::string, std::string>> stages;  // name and title, in their order
  // What is on file, by list: "papers", {"permit P-26-0817, 2026-09-16"}.
  std::vector<std::pair<std::string, std::vector<std::string>>> on_file;
};

std::string checklist(const Report& report, const ChecklistSheet& sheet, std::size_t width);
std::string checklist_json(const Report& report, const ChecklistSheet& sheet);

}  // namespace headgate::report
