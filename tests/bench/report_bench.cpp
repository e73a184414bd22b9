// From decisions to words: the findings of one site, and the JSON report of them.
#include <benchmark/benchmark.h>

#include "evaluate/worlds/project.hpp"
#include "explain/explain.hpp"
#include "report/report.hpp"

namespace headgate::test {
namespace {

const char* const example = "examples/halyard/as-found.yaml";

std::vector<explain::Authority> judged(const Project& project) {
  std::vector<explain::Authority> authorities(1);
  authorities[0].book = &project.book();
  authorities[0].judgements.push_back(evaluate::judge(project.book(), project.site(0), {}));
  return authorities;
}

void word_the_findings(benchmark::State& state) {
  const Project project("fennick-ferry", {example});
  const auto authorities = judged(project);
  for (auto _ : state)
    benchmark::DoNotOptimize(explain::report(project.sources(), project.site(0), authorities, example));
}
BENCHMARK(word_the_findings)->Unit(benchmark::kMicrosecond);

void write_the_json_report(benchmark::State& state) {
  const Project project("fennick-ferry", {example});
  const auto report = explain::report(project.sources(), project.site(0), judged(project), example);
  std::size_t bytes = 0;
  for (auto _ : state) bytes = report::json(report).size();
  state.counters["bytes"] = static_cast<double>(bytes);
}
BENCHMARK(write_the_json_report)->Unit(benchmark::kMicrosecond);

}  // namespace
}  // namespace headgate::test
