// Load the rules, judge a site, read the findings: all that another program needs of headgate. Texts are handed in and
// nothing is read from disk, printed or kept outside `Rules`. Link `headgate::headgate`.
//
//   Problems problems;
//   auto rules = Rules::load(rule_files, place_files, problems);          // the texts of rules/ and jurisdictions/
//   auto report = rules->judge({"quay.yaml", text_of_the_site}, {}, problems);
//   for (const auto& finding : report->findings) …                        // finding.hpp
//   a site without `place:`, and none asked for: report is nullopt, and problems[0] is "no-place" at "quay.yaml:1:1"
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "headgate/finding.hpp"

namespace headgate {

// A text and the name it goes by: what stands before line and column where a finding or a problem shows its place. A
// place is found by its file's name without folder and `.yaml`: "jurisdictions/fennick-ferry.yaml" is fennick-ferry.
struct File {
  std::string name;
  std::string text;
};

// What is wrong with a file, or (a warning) looks as if it were.
struct Problem {
  std::string id;  // "unknown-unit"
  bool error = true;
  std::string at;        // "site.yaml:4:31", "" when it is of no file
  std::string sentence;  // ends with its full stop
  std::string hint;      // "" when there is none
  std::string drawn;     // all of it with the line it stands in, several lines
};
using Problems = std::vector<Problem>;

// What stands in the site file, replaced for one judgement. Left empty, the site's own counts.
struct Asking {
  std::vector<std::string> places;  // judged by these, side by side; each with its second authority
  std::string stage;                // "entry"
  std::string checked_on;           // the day deadlines are judged on, "2026-10-02"
  std::vector<std::string> sets;    // what if: "pressure.highest-static=80 psi", in order
};

// The project's rules and the places that may be asked for. Not for two threads at once: the law of a place is worked
// out when it is first asked for, and kept.
class Rules {
 public:
  // nullopt, with at least one error among `problems`, when the rules cannot be used. Warnings go there too. A place is
  // looked at only when a site is judged by it.
  static std::optional<Rules> load(std::vector<File> rules, std::vector<File> places, Problems& problems);

  // nullopt, with at least one error among `problems`, when the site or its place cannot be used.
  std::optional<Report> judge(const File& site, const Asking& asking, Problems& problems);

  Rules(Rules&& other) noexcept;
  Rules& operator=(Rules&& other) noexcept;
  ~Rules();

 private:
  struct Held;
  explicit Rules(std::unique_ptr<Held> held);
  std::unique_ptr<Held> held_;
};

// The report as JSON, as report.schema.json beside this header describes it.
std::string json(const Report& report);

}  // namespace headgate
