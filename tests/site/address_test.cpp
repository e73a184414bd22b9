#include <gtest/gtest.h>

#include "site/world.hpp"

namespace headgate {
namespace {

using test::load_site;

const std::string small = R"(format: site/1
line: [pipe: {near: [7']}, meter, wall: {sleeve: 2"}, pipe, branch: lawn]
branches: {lawn: {line: [pipe]}}
tests: [pressure-test]
)";

TEST(Address, OfEverySlotLeadsBackToIt) {
  auto world = load_site(small);
  ASSERT_EQ(world.said(), "");
  for (site::ElementId element = 0; element < world.site.elements.size(); ++element) {
    const auto& shape = world.vocabulary.shapes[world.site.elements[element].shape];
    for (std::size_t id = 0; id < shape.fields.size(); ++id) {
      const auto field = static_cast<site::FieldId>(id);
      const std::string address = site::address(world.site, world.vocabulary, element, field);
      const auto target = site::find(world.site, world.vocabulary, address, {}, world.found);
      ASSERT_TRUE(target) << address;
      EXPECT_EQ(target->element, element) << address;
      EXPECT_EQ(target->field, field) << address;
    }
  }
}

TEST(Address, OfElements) {
  auto world = load_site(small);
  const auto shown = [&](const std::string& address) {
    const auto target = site::find(world.site, world.vocabulary, address, {}, world.found);
    return site::address(world.site, world.vocabulary, target->element);
  };
  EXPECT_EQ(shown("line[2]"), "line[2] meter");
  EXPECT_EQ(shown("line.meter"), "line[2] meter");
  EXPECT_EQ(shown("site.line.meter"), "line[2] meter");
  EXPECT_EQ(shown("line[5]"), "branches.lawn");
  EXPECT_EQ(shown("branches.lawn"), "branches.lawn");
  EXPECT_EQ(shown("line[1].near[1]"), "line[1].near[1]") << "a list of one kind does not say it again";
  EXPECT_EQ(shown("line[3].sleeve.size"), "line[3].sleeve");
  EXPECT_EQ(site::address(world.site, world.vocabulary, 0), "site");
}

struct WrongAddress {
  const char* address;
  const char* said;
};

class BadAddress : public testing::TestWithParam<WrongAddress> {};

TEST_P(BadAddress, IsSaid) {
  auto world = load_site(small);
  const std::string address = GetParam().address;
  const auto file = world.sources.add("at", address);
  const text::Range range{file, 0, static_cast<std::uint32_t>(address.size())};
  EXPECT_FALSE(site::find(world.site, world.vocabulary, address, range, world.found));
  EXPECT_EQ(world.said(), GetParam().said);
}

INSTANTIATE_TEST_SUITE_P(
    Address, BadAddress,
    testing::Values(
        WrongAddress{"line.pipe.size",
                     "at:1:6 several-of-kind: There is more than one pipe in line. (say which: line[1], "
                     "line[4])\n"},
        WrongAddress{"line.gauge.reads", "at:1:6 none-of-kind: There is no gauge in line.\n"},
        WrongAddress{"line.gage",
                     "at:1:6 unknown-kind: \"gage\" is nothing that stands in line. (did you mean gauge?)\n"},
        WrongAddress{"line[6].size",
                     "at:1:1 no-such-number: \"line\" holds 5 things. (count from 1 in written order)\n"},
        WrongAddress{"line[0]",
                     "at:1:1 address-form: \"line[0]\" is not the address of a fact. (write it as in "
                     "pressure.highest-static, line[3].size or line.meter.size)\n"},
        WrongAddress{"line[99999999]",
                     "at:1:1 address-form: \"line[99999999]\" is not the address of a fact. (write it as in "
                     "pressure.highest-static, line[3].size or line.meter.size)\n"},
        WrongAddress{"line..size",
                     "at:1:1 address-form: \"line..size\" is not the address of a fact. (write it as in "
                     "pressure.highest-static, line[3].size or line.meter.size)\n"},
        WrongAddress{"",
                     "at:1:1 address-form: \"\" is not the address of a fact. (write it as in pressure.highest-static, "
                     "line[3].size or line.meter.size)\n"},
        WrongAddress{"pressure[1].highest-static",
                     "at:1:1 address-not-list: \"pressure\" is not a list, so nothing in it has a "
                     "number.\n"},
        WrongAddress{"pressure.highest-static.more",
                     "at:1:25 address-past-value: \"highest-static\" is one value and holds "
                     "nothing below it.\n"},
        WrongAddress{"branches.lown.feeds", "at:1:10 no-such-named: There is no \"lown\". (did you mean lawn?)\n"},
        WrongAddress{"line[2].siz", "at:1:9 unknown-fact: \"siz\" is not a fact of meter. (did you mean size?)\n"}));

}  // namespace
}  // namespace headgate
