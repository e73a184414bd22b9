#include <algorithm>

#include <gtest/gtest.h>

#include "site/world.hpp"

namespace headgate {
namespace {

using test::load_site;

test::SiteWorld with_line(const std::string& line, const std::string& rest = "") {
  return load_site("format: site/1\nline: " + line + "\n" + rest);
}

TEST(References, TheNearestUpstreamIsMeant) {
  auto world = with_line("[pipe, meter, pipe, wall, pipe, shutoff]");
  ASSERT_EQ(world.said(), "");
  EXPECT_EQ(world.at("line.wall.pipe"), "line[3] pipe");
  EXPECT_EQ(world.at("line.wall.valve-after"), "line[6] shutoff");
  EXPECT_EQ(world.at("line[1].previous"), "none");
  EXPECT_EQ(world.at("line[2].previous"), "line[1] pipe");
  EXPECT_EQ(world.at("line[5].next"), "line[6] shutoff");
  EXPECT_EQ(world.at("line[6].next"), "none");
}

TEST(References, NoneWhenTheWalkIsKnown) { EXPECT_EQ(with_line("[meter, wall]").at("line.wall.pipe"), "none"); }

TEST(References, AnUnfinishedListMayHideElements) {
  auto world = with_line("[pipe, wall, more]");
  EXPECT_EQ(world.at("line.wall.pipe"), "unknown");
  EXPECT_EQ(world.at("line.wall.previous"), "unknown");
  EXPECT_EQ(world.at("line.wall.next"), "unknown");
}

TEST(References, ButNotWhatItSaysThereIsNoMoreOf) {
  auto world = with_line("[pipe, wall, more: {except: [pipe]}]");
  EXPECT_EQ(world.at("line.wall.pipe"), "line[1] pipe");
  EXPECT_EQ(world.at("line.wall.previous"), "unknown");
  EXPECT_EQ(world.at("line.wall.valve-after"), "unknown");
}

TEST(References, AStatedOneCounts) {
  auto world = with_line("[pipe, pipe, wall: {pipe: 'line[1]', valve-after: none}, more]");
  ASSERT_EQ(world.said(), "");
  EXPECT_EQ(world.at("line.wall.pipe"), "line[1] pipe");
  EXPECT_EQ(world.slot("line.wall.pipe").origin, site::Origin::stated);
  EXPECT_EQ(world.at("line.wall.valve-after"), "none");
  EXPECT_EQ(load_site("format: site/1\nline: [pipe]\npapers: [approval: {at: line.pipe}]\n").at("papers[1].at"),
            "line[1] pipe");
}

TEST(References, ABranchContinuesTheTrunkUpstream) {
  auto world =
      with_line("[meter, pipe, branch: lawn, gauge]", "branches: {lawn: {line: [pressure-vacuum-breaker, pipe]}}\n");
  EXPECT_EQ(world.at("branches.lawn.line[1].pipe"), "line[2] pipe");
  EXPECT_EQ(world.at("branches.lawn.line[1].previous"), "branches.lawn");
  EXPECT_EQ(world.at("branches.lawn.previous"), "line[2] pipe");
  EXPECT_EQ(world.at("branches.lawn.next"), "line[4] gauge");
  EXPECT_EQ(world.at("branches.lawn.line[2].next"), "none");
  EXPECT_EQ(world.at("line[4].previous"), "branches.lawn")
      << "the gauge stands after the point where the branch leaves";
}

TEST(References, ATrunkThatHidesThingsHidesThemFromABranch) {
  auto world = with_line("[pipe, branch: lawn, more]", "branches: {lawn: {line: [shutoff, pipe, shutoff]}}\n");
  EXPECT_EQ(world.at("branches.lawn.line[1].pipe"), "unknown");
  EXPECT_EQ(world.at("branches.lawn.line[3].pipe"), "branches.lawn.line[2] pipe") << "nearer than all that is hidden";
}

TEST(References, ABranchThatLeavesNowhereHasAnUnknownUpstream) {
  auto world = load_site("format: site/1\nline: [pipe]\nbranches: {lawn: {line: [shutoff, pipe]}}\n");
  EXPECT_EQ(world.at("branches.lawn.line[1].pipe"), "unknown");
  EXPECT_EQ(world.at("branches.lawn.line[1].previous"), "unknown");
  EXPECT_EQ(world.at("branches.lawn.line[2].previous"), "branches.lawn.line[1] shutoff");
}

TEST(References, DownstreamOrderPutsEveryPreviousFirst) {
  auto world = load_site(R"(format: site/1
branches: {lawn: {line: [branch: drip, pipe]}, drip: {line: [shutoff]}}
line: [pipe, branch: lawn, gauge]
)");
  const auto& order = world.site.downstream_order;
  EXPECT_EQ(order.size(), 6U);
  for (const auto element : order) {
    const auto& shape = world.vocabulary.shapes[world.site.elements[element].shape];
    const auto& previous = world.site.slot(element, *shape.field("previous")).value;
    if (previous.presence != vocabulary::Presence::present) continue;
    EXPECT_LT(std::find(order.begin(), order.end(), previous.id), std::find(order.begin(), order.end(), element));
  }
}

}  // namespace
}  // namespace headgate
