// Demand by each family's table: fixture units, groups, curves and how each is read between its rows.
#include <gtest/gtest.h>

#include "shipped.hpp"

namespace headgate::published {
namespace {

const std::string house =
    "house: {full-baths: 2, half-baths: 1, kitchens: 1, laundries: 1, hose-bibbs: 2}\nbranches: none\n";
const std::string room =
    "fixtures: [water-closet: {count: 1, flushometer: no}, lavatory: 1, bathtub: 1]\nbranches: none\n";

double units(const std::string& model, const std::string& site) {
  ShippedRules rules(model);
  return rules.value(rules.site(site), "demand.fixture-units").middle();
}

// Groups: 2 x 3.6 + 2.6 + 2.5 + 2.5 and two hose bibbs at 2.5 (residential code, from memory but for the bath group).
TEST(PublishedDemand, UnitsByRooms) {
  EXPECT_NEAR(units("irc-2018", house), 7.2 + 2.6 + 2.5 + 2.5 + 5, 1e-9);
  EXPECT_NEAR(units("ipc-2018", house), 7.2 + 2.9 + 2.8 + 2.8 + 5, 1e-9);
  // The Uniform code adds up fixtures; of hose bibbs the first counts 2.5, each further 1.
  EXPECT_NEAR(units("upc-2024", house), 2 * 7.5 + 3.5 + 3 + 5.5 + 3.5, 1e-9);
}

// One bathroom fixture by fixture: a Washington city's form of the Uniform code's 2015 table, and the plumbing code's
// page image with its lower rows from memory. A group is worth less than its parts in the International codes.
TEST(PublishedDemand, UnitsByFixtures) {
  EXPECT_NEAR(units("upc-2024", room), 2.5 + 1 + 4, 1e-9);
  EXPECT_NEAR(units("ipc-2018", room), 2.2 + 0.7 + 1.4, 1e-9);
  EXPECT_NEAR(units("irc-2018", room), 2.2 + 0.7 + 1.4, 1e-9);
}

// A worksheet of a city in California: 2 toilets 5, 2 lavatories 2, 2 tubs 8, kitchen 1.5, washer 4, laundry 1.5: 22.
TEST(PublishedDemand, CityFormAddsUpTo22) {
  EXPECT_NEAR(units("upc-2024",
                    "fixtures: [water-closet: {count: 2, flushometer: no}, lavatory: 2, bathtub: 2, kitchen-sink: 1, "
                    "clothes-washer: 1, laundry-tub: 1]\nbranches: none\n"),
              22, 1e-9);
}

double flow(ShippedRules& rules, const std::string& curve, const std::string& at) {
  return rules.calc("limit." + curve + "[" + at + "].flow").middle() / si("gpm");
}

// Seven points of the International curve for tanks as engineering tables print them.
TEST(PublishedDemand, TankCurveOfTheInternationalCodes) {
  for (const char* model : {"irc-2018", "ipc-2018"}) {
    ShippedRules rules(model);
    struct Point {
      const char* units;
      double gpm;
    };
    for (const Point at : {Point{"1", 3}, {"2", 5}, {"4", 8}, {"8", 12.8}, {"15", 17.5}, {"30", 23.3}, {"50", 29.1}}) {
      EXPECT_NEAR(flow(rules, "demand-curve", at.units), at.gpm, 1e-9) << model << ' ' << at.units;
    }
  }
}

// The plumbing code's own example reads the valve column at the next row up: 288, 264, 132, 24 and 12 units.
TEST(PublishedDemand, ValveCurveIsReadAtTheNextRowUp) {
  ShippedRules rules("ipc-2018");
  struct Point {
    const char* units;
    double gpm;
  };
  for (const Point at : {Point{"288", 108}, {"264", 104.5}, {"132", 77}, {"24", 38}, {"12", 28.6}}) {
    EXPECT_NEAR(flow(rules, "demand-curve-valves", at.units), at.gpm, 1e-9) << at.units;
  }
}

// A Wisconsin form: 22 units are 15.2 gpm, on the straight line between 20 and 25 of Hunter's curve.
TEST(PublishedDemand, UniformCurveIsReadBetweenItsRows) {
  ShippedRules rules("upc-2024");
  EXPECT_NEAR(flow(rules, "demand-curve", "22"), 15.2, 1e-9);
}

// At 20 units the families differ by 40 %: 19.6 and 14 gpm. Neither is extrapolated past its end.
TEST(PublishedDemand, FamiliesDifferAndEnd) {
  ShippedRules plumbing("ipc-2018");
  ShippedRules uniform("upc-2024");
  EXPECT_NEAR(flow(plumbing, "demand-curve", "20") / flow(uniform, "demand-curve", "20"), 1.40, 0.001);
  EXPECT_TRUE(plumbing.calc("limit.demand-curve[1000].flow").known);
  EXPECT_FALSE(plumbing.calc("limit.demand-curve[1001].flow").known);
  EXPECT_FALSE(uniform.calc("limit.demand-curve[1.9].flow").known);
}

// 80 % of a setting of 80 psi is 64 psi on a city form; its climb costs half a psi a foot. What the street has at the
// reducer counts where it is less, and a climb ahead of the reducer only there.
TEST(PublishedDemand, SupplyTableBeginsAtTheReducer) {
  ShippedRules rules("upc-2024");
  const auto entered = [&](const std::string& street) {
    const auto site =
        rules.site("pressure: {at-main: " + street +
                   "}\nbranches: none\nline: [pipe: {rise: 4'}, pressure-reducer: {set-to: 80 psi}, pipe: "
                   "{rise: 10'}]\n");
    return rules.value(site, "demand.supply-pressure").middle() / si("psi");
  };
  EXPECT_NEAR(entered("90 psi"), 64 - 5, 1e-9);
  EXPECT_NEAR(entered("60 psi"), 60 - 2 - 5, 1e-9);
}

struct SupplyRow {
  const char* meter;
  const char* supply;
  int units[3][6];  // by pressure group, then 40, 60, 80, 100, 150, 200 ft
};
// An engineering reference's print of the Uniform code's table.
constexpr SupplyRow supply[] = {
    {"3/4 in", "1/2 in", {{6, 5, 4, 3, 2, 1}, {7, 7, 6, 5, 4, 3}, {7, 7, 7, 6, 5, 4}}},
    {"3/4 in", "3/4 in", {{16, 16, 14, 12, 9, 6}, {20, 20, 19, 17, 14, 11}, {20, 20, 20, 20, 17, 13}}},
    {"3/4 in", "1 in", {{29, 25, 23, 21, 17, 15}, {39, 39, 36, 33, 28, 23}, {39, 39, 39, 39, 35, 30}}},
    {"1 in", "1 in", {{36, 31, 27, 25, 20, 17}, {39, 39, 39, 36, 30, 25}, {39, 39, 39, 39, 38, 32}}},
    {"1 in", "1-1/4 in", {{54, 47, 42, 38, 32, 28}, {78, 78, 76, 67, 52, 44}, {78, 78, 78, 78, 74, 62}}}};

TEST(PublishedDemand, SupplyTableOfTheUniformCode) {
  ShippedRules rules("upc-2024");
  constexpr const char* pressures[] = {"45 psi", "46 psi", "61 psi"};
  constexpr int lengths[] = {40, 60, 80, 100, 150, 200};
  for (const auto& row : supply) {
    for (int p = 0; p < 3; ++p) {
      for (int l = 0; l < 6; ++l) {
        const auto at = rules.calc(std::string("limit.supply-table[") + pressures[p] + ", " + row.meter + ", " +
                                   row.supply + ", " + std::to_string(lengths[l]) + " ft].units");
        EXPECT_EQ(at.middle(), row.units[p][l])
            << row.meter << ' ' << row.supply << ' ' << pressures[p] << ' ' << lengths[l];
      }
    }
  }
  // The groups are printed in whole psi; a fraction belongs to the lower one.
  EXPECT_EQ(rules.calc("limit.supply-table[45.995 psi, 1 in, 1 in, 40 ft].units").middle(), 36);
  EXPECT_EQ(rules.calc("limit.supply-table[46 psi, 1 in, 1 in, 40 ft].units").middle(), 39);
  EXPECT_EQ(rules.calc("limit.supply-table[60 psi, 1 in, 1 in, 100 ft].units").middle(), 36);
  EXPECT_EQ(rules.calc("limit.supply-table[60.005 psi, 1 in, 1 in, 100 ft].units").middle(), 39);
  // A length between two columns takes the longer; nothing past 200 ft or below 30 psi.
  EXPECT_EQ(rules.calc("limit.supply-table[50 psi, 3/4 in, 1 in, 81 ft].units").middle(), 33);
  EXPECT_FALSE(rules.calc("limit.supply-table[50 psi, 3/4 in, 1 in, 201 ft].units").known);
  EXPECT_FALSE(rules.calc("limit.supply-table[29 psi, 3/4 in, 1 in, 80 ft].units").known);
}

}  // namespace
}  // namespace headgate::published
