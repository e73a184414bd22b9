// Deciding, every result kept. "ns a rule" is for one rule about one element; the aim is 12 ns for a rule of
// four comparisons.
#include <benchmark/benchmark.h>

#include "evaluate/worlds/generate.hpp"
#include "evaluate/worlds/project.hpp"

namespace headgate::test {
namespace {

using benchmark::Counter;
using evaluate::Code;

bool compares(Code code) {
  return code == Code::compare_less || code == Code::compare_less_or_equal || code == Code::between ||
         code == Code::same || code == Code::one_of;
}

void decide(benchmark::State& state, evaluate::Judgement judgement) {
  for (auto _ : state) {
    evaluate::decide(judgement);
    benchmark::DoNotOptimize(judgement.decisions.data());
    benchmark::ClobberMemory();
  }
  double comparisons = 0;
  for (const auto& step : judgement.plan.steps) comparisons += compares(step.code) ? 1 : 0;
  const auto decisions = static_cast<double>(judgement.decisions.size());
  const auto rate = [&](double count) {
    return Counter(count * 1e-9, Counter::kIsIterationInvariantRate | Counter::kInvert);
  };
  state.counters["decisions"] = decisions;
  state.counters["steps"] = static_cast<double>(judgement.plan.steps.size());
  state.counters["ns_a_rule"] = rate(decisions);
  state.counters["ns_a_comparison"] = rate(comparisons);
  state.counters["ns_a_step"] = rate(static_cast<double>(judgement.plan.steps.size()));
}

void decide_the_example(benchmark::State& state) {
  const Project project("fennick-ferry", {"examples/halyard/as-found.yaml"});
  decide(state, evaluate::prepare(project.book(), project.site(0), {}));
}
BENCHMARK(decide_the_example)->Unit(benchmark::kMicrosecond);

// Rules of four comparisons of stated facts with limits, about the whole site.
void decide_rules_of_four_comparisons(benchmark::State& state) {
  Written text;
  text.limits =
      "  top: {title: Top, values: {code-a 1: 80 psi}}\n  low: {title: Low, values: {code-a 1: 30 psi}}\n  deep: "
      "{title: Deep, values: {code-a 1: 3 ft}}\n";
  for (int i = 0; i < 200; ++i) {
    text.rules += rule("four-" + std::to_string(i),
                       "require: pressure.highest-static <= limit.top and pressure.lowest-static >= limit.low and "
                       "frost-depth < limit.deep and "
                       "pressure.highest-static > pressure.lowest-static");
  }
  text.site = "stage: entry\nfrost-depth: 2 ft\npressure: {highest-static: 70 psi +/- 2 psi, lowest-static: 40 psi}";
  const World world(text);
  if (!world.said().empty()) return state.SkipWithError(world.said().c_str());
  decide(state, evaluate::prepare(world.book(), world.site(), {}));
}
BENCHMARK(decide_rules_of_four_comparisons)->Unit(benchmark::kMicrosecond);

}  // namespace
}  // namespace headgate::test
