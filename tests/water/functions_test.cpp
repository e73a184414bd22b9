#include "water/functions.hpp"

#include <cmath>
#include <initializer_list>
#include <limits>
#include <random>
#include <set>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include "water/trade_units.hpp"

namespace headgate::water {
namespace {

using namespace trade;

const Function& function(std::string_view name) { return *find(name); }

Evaluated at(std::string_view name, std::vector<double> point) { return evaluate(function(name), point, point); }

double value(const Evaluated& evaluated) { return std::get<Interval>(evaluated).lo; }

Refusal refusal(const Evaluated& evaluated) { return std::get<Refusal>(evaluated); }

TEST(Functions, AreTheElevenOfTheManualWithTheirArguments) {
  std::string all;
  for (const Function& f : functions()) {
    all += std::string(f.name) + "(";
    for (std::size_t i = 0; i < f.inputs.size(); ++i) all += (i ? ", " : "") + std::string(f.inputs[i].name);
    all += ")\n";
  }
  EXPECT_EQ(all,
            "hazen-williams(flow, c, inside-diameter, length)\n"
            "velocity(flow, inside-diameter)\n"
            "darcy(flow, roughness, inside-diameter, length, temperature)\n"
            "colebrook(reynolds, relative-roughness)\n"
            "water-density(temperature)\n"
            "expanded-volume(volume, cold, hot)\n"
            "tank-volume(expanded, precharge, highest)\n"
            "wave-speed(inside-diameter, wall, modulus)\n"
            "surge(velocity-change, wave-speed)\n"
            "pull-limit(outside-diameter, dimension-ratio, yield, time-factor, safety-factor)\n"
            "binomial-demand(count, probability, percentile)\n");
}

TEST(Functions, EachSaysWhatItIsAndWhereItComesFrom) {
  for (const Function& f : functions()) {
    EXPECT_EQ(find(f.name), &f);
    EXPECT_FALSE(f.meaning.empty() || f.formula.empty() || f.source.empty() || f.check.empty()) << f.name;
    EXPECT_NE(f.compute, nullptr) << f.name;
    EXPECT_LE(f.inputs.size(), most_inputs) << f.name;
    bool moves_either_way = false;
    for (const Input& input : f.inputs) {
      EXPECT_LT(input.lowest, input.highest) << f.name << ' ' << input.name;
      moves_either_way |= input.direction == Direction::neither;
    }
    EXPECT_EQ(f.bound != nullptr, moves_either_way) << f.name;
  }
}

TEST(Functions, UnknownNamesAreNotFound) {
  EXPECT_EQ(find("manning"), nullptr);
  EXPECT_EQ(find(""), nullptr);
  EXPECT_EQ(find("Velocity"), nullptr);
}

TEST(Functions, PullLimitSaysItIsBorrowed) {
  EXPECT_NE(function("pull-limit").source.find("borrowed from gas pipe practice"), std::string_view::npos);
}

TEST(Evaluate, PublishedCheckThroughTheRegistry) {
  EXPECT_NEAR(in_psi(value(at("hazen-williams", {gpm(5), 140, inches(0.785), feet(100)}))), 3.1, 0.031);
}

TEST(Functions, TheHeadersExamplesHold) {
  EXPECT_NEAR(value(at("hazen-williams", {3.1545e-4, 140, 0.019939, 30.48})), 21300.9, 0.05);
  const Refusal rough = refusal(at("hazen-williams", {3.1545e-4, 20, 0.019939, 30.48}));
  EXPECT_EQ(rough.input, 1);
  EXPECT_EQ(rough.reason, Reason::below);
  EXPECT_EQ(rough.value, 20);
}

TEST(Evaluate, APointGivesOneValue) {
  const Interval loss = std::get<Interval>(at("darcy", {gpm(5), 1.5e-6, inches(0.785), feet(100), celsius(10)}));
  EXPECT_EQ(loss.lo, loss.hi);
}

TEST(Evaluate, RefusesTheInputThatLiesOutsideAndSaysItsRange) {
  const Refusal smooth = refusal(at("hazen-williams", {gpm(5), 161, inches(0.785), feet(100)}));
  EXPECT_EQ(smooth.input, 1);
  EXPECT_EQ(smooth.reason, Reason::above);
  EXPECT_EQ(smooth.value, 161);
  EXPECT_EQ(smooth.lowest, 60);
  EXPECT_EQ(smooth.highest, 160);
  EXPECT_EQ(smooth.narrowed_by, -1);

  const Refusal ice = refusal(at("water-density", {celsius(-1)}));
  EXPECT_EQ(ice.reason, Reason::below);
  EXPECT_EQ(ice.lowest, 273.15);
}

TEST(Evaluate, BothEndsOfARangeAreInside) {
  EXPECT_NO_THROW(value(at("water-density", {273.15})));
  EXPECT_NO_THROW(value(at("water-density", {373.15})));
  EXPECT_EQ(refusal(at("water-density", {373.1501})).reason, Reason::above);
}

TEST(Evaluate, WhatOnlyRoundingPutsOutsideIsTheEndOfTheRange) {
  const double under = std::nextafter(273.15, 0.0);
  EXPECT_EQ(value(at("water-density", {under})), value(at("water-density", {273.15})));
  EXPECT_EQ(value(at("water-density", {fahrenheit(32)})), value(at("water-density", {273.15})));
  EXPECT_EQ(value(at("water-density", {fahrenheit(212)})), value(at("water-density", {373.15})));
  EXPECT_EQ(value(at("velocity", {-1e-18, 0.02})), 0.0);
  EXPECT_EQ(value(at("binomial-demand", {10, std::nextafter(1.0, 2.0), 0.99})), 10);
}

TEST(Evaluate, RefusesAnIntervalThatReachesOutside) {
  const std::vector<double> lo{0, 140, inches(0.785), feet(100)};
  const std::vector<double> hi{std::numeric_limits<double>::infinity(), 140, inches(0.785), feet(100)};
  const Refusal unknown = refusal(evaluate(function("hazen-williams"), lo, hi));
  EXPECT_EQ(unknown.input, 0);
  EXPECT_EQ(unknown.reason, Reason::above);
  EXPECT_EQ(unknown.highest, 0.1);
}

TEST(Evaluate, RefusesWhatIsNoNumberOrCrossed) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_EQ(refusal(at("velocity", {nan, 0.02})).reason, Reason::not_known);
  EXPECT_EQ(refusal(at("velocity", {1e-4, nan})).input, 1);
  const std::vector<double> lo{2e-4, 0.02};
  const std::vector<double> hi{1e-4, 0.02};
  EXPECT_EQ(refusal(evaluate(function("velocity"), lo, hi)).reason, Reason::not_known);
}

TEST(Evaluate, RefusesNegativeFlowAndEmptyBore) {
  EXPECT_EQ(refusal(at("velocity", {-1e-9, 0.02})).reason, Reason::below);
  EXPECT_EQ(refusal(at("velocity", {1e-4, 0})).input, 1);
  EXPECT_EQ(refusal(at("hazen-williams", {1e-4, 140, 0, 30})).input, 2);
}

TEST(Evaluate, RefusesAVelocityNoHouseHasAndNamesTheBoreThatSetsIt) {
  const Refusal fast = refusal(at("hazen-williams", {gpm(60), 140, inches(0.545), feet(100)}));
  EXPECT_EQ(fast.input, 0);
  EXPECT_EQ(fast.reason, Reason::above);
  EXPECT_EQ(fast.narrowed_by, 2);
  EXPECT_NEAR(in_gpm(fast.highest), 23.9, 0.1);
  EXPECT_EQ(refusal(at("darcy", {gpm(60), 0, inches(0.545), feet(100), celsius(10)})).narrowed_by, 2);
}

TEST(Evaluate, RefusesARoughnessBeyondTheMoodyChart) {
  const Refusal rough = refusal(at("darcy", {gpm(5), 0.0011, 0.020, 30, celsius(10)}));
  EXPECT_EQ(rough.input, 1);
  EXPECT_EQ(rough.narrowed_by, 2);
  EXPECT_NEAR(rough.highest, 0.001, 1e-15);
}

TEST(Evaluate, ColebrookIsForTurbulentFlow) {
  EXPECT_EQ(refusal(at("colebrook", {3999, 0.001})).lowest, 4000);
  EXPECT_EQ(refusal(at("colebrook", {1e5, 0.051})).input, 1);
}

TEST(Evaluate, RefusesATankChargedToItsHighestPressure) {
  const Refusal full = refusal(at("tank-volume", {gallons(0.5), psi(80), psi(80)}));
  EXPECT_EQ(full.input, 2);
  EXPECT_EQ(full.reason, Reason::below);
  EXPECT_EQ(full.narrowed_by, 1);
  EXPECT_EQ(full.lowest, psi(80));

  EXPECT_EQ(at("tank-volume", {gallons(0.5), psi(80), psi(80) + 1e-4}).index(), 1u) << "80 psi in another spelling";

  const std::vector<double> lo{gallons(0.5), psi(70), psi(78)};
  const std::vector<double> hi{gallons(0.5), psi(80), psi(150)};
  EXPECT_EQ(refusal(evaluate(function("tank-volume"), lo, hi)).narrowed_by, 1) << "ranges that overlap";
}

TEST(Evaluate, RefusesAThickWall) {
  const Refusal thick = refusal(at("wave-speed", {0.020, 0.005, 1e9}));
  EXPECT_EQ(thick.input, 1);
  EXPECT_EQ(thick.narrowed_by, 0);
  EXPECT_EQ(at("wave-speed", {inches(0.5), inches(0.7 / 7), 1e9}).index(), 0u) << "DR 7";
}

TEST(Evaluate, RefusesHalfAFixture) {
  EXPECT_EQ(refusal(at("binomial-demand", {2.5, 0.2, 0.99})).reason, Reason::not_whole);
  EXPECT_EQ(refusal(at("binomial-demand", {10, 0.2, 1.0})).input, 2);
}

TEST(Evaluate, PullLimitHoldsToItsRanges) {
  EXPECT_EQ(refusal(at("pull-limit", {inches(1.375), 5, psi(3500), 0.95, 0.4})).input, 1);
  EXPECT_EQ(refusal(at("pull-limit", {inches(1.375), 9, psi(3500), 1.05, 0.4})).input, 3);
  EXPECT_EQ(refusal(at("pull-limit", {inches(1.375), 9, psi(3500), 0.95, 40})).input, 4);
}

TEST(Evaluate, SurgeHoldsToItsRanges) {
  EXPECT_EQ(refusal(at("surge", {11, 1200})).input, 0);
  EXPECT_EQ(refusal(at("surge", {2, 1700})).input, 1);
}

TEST(Evaluate, DensityAcrossFourDegreesReachesThePeak) {
  const std::vector<double> lo{celsius(1)};
  const std::vector<double> hi{celsius(8)};
  const Interval density = std::get<Interval>(evaluate(function("water-density"), lo, hi));
  EXPECT_NEAR(density.hi, 999.972, 0.0005);
  EXPECT_NEAR(density.lo, 999.848, 0.0005);
}

TEST(Evaluate, FlowThatMayBeNoneMayLoseNothing) {
  const std::vector<double> lo{0, 140, inches(0.785), feet(100)};
  const std::vector<double> hi{gpm(5), 140, inches(0.785), feet(100)};
  const Interval loss = std::get<Interval>(evaluate(function("hazen-williams"), lo, hi));
  EXPECT_EQ(loss.lo, 0.0);
  EXPECT_NEAR(in_psi(loss.hi), 3.09, 0.01);
}

TEST(Evaluate, CountsStayWhole) {
  const std::vector<double> lo{10, 0.03, 0.99};
  const std::vector<double> hi{100, 0.03, 0.99};
  const Interval running = std::get<Interval>(evaluate(function("binomial-demand"), lo, hi));
  EXPECT_EQ(running.lo, 2);
  EXPECT_EQ(running.hi, 8);
}

// Boxes and points, the same on every machine: the standard's distributions are not.
class Dice {
 public:
  double roll() { return static_cast<double>(engine_() >> 11) * 0x1p-53; }

  // Somewhere in the input's range, small values as likely as large ones.
  double in(const Input& input) {
    const double skew = roll() < 0.5 ? 1.0 : 4.0;
    return settled(input, input.lowest + std::pow(roll(), skew) * (input.highest - input.lowest));
  }

  double between(const Input& input, double lo, double hi) { return settled(input, lo + roll() * (hi - lo)); }

 private:
  static double settled(const Input& input, double x) {
    const double inside = std::fmin(std::fmax(x, input.lowest), input.highest);
    return input.whole ? std::floor(inside) : inside;
  }

  std::mt19937_64 engine_{20260401};
};

struct Box {
  std::vector<double> lo, hi;
};

Box any_box(const Function& f, Dice& dice) {
  Box box;
  for (const Input& input : f.inputs) {
    const double from = dice.in(input);
    const double reach = dice.roll() < 0.2 ? 0.0 : std::pow(dice.roll(), 3.0);
    box.lo.push_back(from);
    box.hi.push_back(dice.between(input, from, from + reach * (input.highest - from)));
  }
  return box;
}

std::vector<double> any_point(const Function& f, const Box& box, Dice& dice) {
  std::vector<double> point;
  for (std::size_t i = 0; i < f.inputs.size(); ++i) {
    const double corner = dice.roll();
    if (corner < 0.1) {
      point.push_back(box.lo[i]);
    } else if (corner > 0.9) {
      point.push_back(box.hi[i]);
    } else {
      point.push_back(dice.between(f.inputs[i], box.lo[i], box.hi[i]));
    }
  }
  return point;
}

TEST(Evaluate, IntervalsHoldEverySampledPoint) {
  Dice dice;
  for (const Function& f : functions()) {
    int sampled = 0;
    for (int attempt = 0; sampled < 100000; ++attempt) {
      ASSERT_LT(attempt, 200000) << f.name << ": hardly any box is in range";
      const Box box = any_box(f, dice);
      const Evaluated evaluated = evaluate(f, box.lo, box.hi);
      if (evaluated.index() != 0) continue;
      const Interval interval = std::get<Interval>(evaluated);
      ASSERT_LE(interval.lo, interval.hi) << f.name;
      for (int i = 0; i < 100; ++i, ++sampled) {
        const std::vector<double> point = any_point(f, box, dice);
        const double sample = f.compute(point.data());
        ASSERT_GE(sample, interval.lo) << f.name << " attempt " << attempt;
        ASSERT_LE(sample, interval.hi) << f.name << " attempt " << attempt;
      }
    }
  }
}

TEST(Evaluate, EveryPointOfARefusedBoxIsNotRefused) {
  // A refusal is for the box: a box that crosses an end holds good points, and those are answered.
  const std::vector<double> lo{celsius(-5)};
  const std::vector<double> hi{celsius(50)};
  EXPECT_EQ(evaluate(function("water-density"), lo, hi).index(), 1u);
  EXPECT_EQ(at("water-density", {celsius(20)}).index(), 0u);
}

TEST(Functions, MoveTheWayTheyDeclare) {
  Dice dice;
  for (const Function& f : functions()) {
    std::vector<int> moved(f.inputs.size());
    for (int attempt = 0; attempt < 4000; ++attempt) {
      const Box box = any_box(f, dice);
      if (evaluate(f, box.lo, box.hi).index() != 0) continue;
      for (std::size_t i = 0; i < f.inputs.size(); ++i) {
        const Direction direction = f.inputs[i].direction;
        if (direction == Direction::neither || box.lo[i] == box.hi[i]) continue;
        std::vector<double> more = box.lo;
        more[i] = box.hi[i];
        const double sign = direction == Direction::rises ? 1.0 : -1.0;
        const double before = f.compute(box.lo.data());
        const double change = sign * (f.compute(more.data()) - before);
        ASSERT_GE(change, -1e-13 * std::fabs(before)) << f.name << ' ' << f.inputs[i].name;
        moved[i] += change > 0.0;
      }
    }
    for (std::size_t i = 0; i < f.inputs.size(); ++i) {
      if (f.inputs[i].direction == Direction::neither) continue;
      EXPECT_GT(moved[i], 100) << f.name << ' ' << f.inputs[i].name << " hardly ever matters";
    }
  }
}

TEST(Functions, NeitherInputsReallyMoveBothWays) {
  EXPECT_LT(value(at("water-density", {celsius(0)})), value(at("water-density", {celsius(4)})));
  EXPECT_GT(value(at("water-density", {celsius(4)})), value(at("water-density", {celsius(60)})));
  const auto loss = [](double c) { return value(at("darcy", {4.7e-5, 1.5e-6, 0.02, 30, celsius(c)})); };
  EXPECT_GT(loss(1), loss(8)) << "laminar: warmer water runs easier";
  EXPECT_LT(loss(12), loss(35)) << "it becomes turbulent";
}

TEST(Measure, HasItsSiUnit) {
  EXPECT_EQ(si_unit(Measure::flow), "m3/s");
  EXPECT_EQ(si_unit(Measure::number), "");
  EXPECT_EQ(si_unit(Measure::temperature), "K");
}

}  // namespace
}  // namespace headgate::water
