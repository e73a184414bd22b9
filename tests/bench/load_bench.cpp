// From YAML to something that can be judged: the whole rulebook, one site.
#include <benchmark/benchmark.h>

#include "evaluate/worlds/project.hpp"

namespace headgate::test {
namespace {

const char* const example = "examples/halyard/as-found.yaml";

void read_and_resolve_the_rulebook(benchmark::State& state) {
  std::size_t rules = 0;
  for (auto _ : state) {
    const Project project("fennick-ferry", {});
    rules = project.book().rules.size();
    if (!project.said().empty()) state.SkipWithError("the rules cannot be read");
  }
  state.counters["rules"] = static_cast<double>(rules);
}
BENCHMARK(read_and_resolve_the_rulebook)->Unit(benchmark::kMillisecond);

void prepare_one_site(benchmark::State& state) {
  const Project project("fennick-ferry", {example});
  std::size_t steps = 0;
  for (auto _ : state) {
    const auto judgement = evaluate::prepare(project.book(), project.site(0), {});
    steps = judgement.plan.steps.size();
    benchmark::DoNotOptimize(judgement.cells.data());
  }
  state.counters["steps"] = static_cast<double>(steps);
}
BENCHMARK(prepare_one_site)->Unit(benchmark::kMicrosecond);

}  // namespace
}  // namespace headgate::test
