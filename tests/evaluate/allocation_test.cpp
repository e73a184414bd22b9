// Deciding takes no memory: everything is reserved when a judgement is prepared.
#include <cstdlib>
#include <new>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "evaluate/worlds/generate.hpp"
#include "evaluate/worlds/project.hpp"

namespace {

std::size_t taken = 0;  // how often memory was asked for, by the whole program

void* take(std::size_t bytes) {
  ++taken;
  void* memory = std::malloc(bytes == 0 ? 1 : bytes);
  if (memory == nullptr) throw std::bad_alloc();
  return memory;
}

}  // namespace

void* operator new(std::size_t bytes) { return take(bytes); }
void* operator new[](std::size_t bytes) { return take(bytes); }
// The forms that do not throw too: a temporary buffer of the standard library takes its memory so.
void* operator new(std::size_t bytes, const std::nothrow_t&) noexcept {
  ++taken;
  return std::malloc(bytes == 0 ? 1 : bytes);
}
void* operator new[](std::size_t bytes, const std::nothrow_t& nothrow) noexcept { return operator new(bytes, nothrow); }
void operator delete(void* memory) noexcept { std::free(memory); }
void operator delete[](void* memory) noexcept { std::free(memory); }
void operator delete(void* memory, std::size_t) noexcept { std::free(memory); }
void operator delete[](void* memory, std::size_t) noexcept { std::free(memory); }

namespace headgate::test {
namespace {

std::size_t taken_by_deciding(const rulebook::Rulebook& book, const site::Site& site) {
  auto judgement = evaluate::prepare(book, site, {});
  const std::size_t before = taken;
  evaluate::decide(judgement);
  const std::size_t first = taken - before;
  evaluate::decide(judgement);
  return first + (taken - before);
}

TEST(Allocation, ThisTestCounts) {
  const std::size_t before = taken;
  const auto* one = new std::string(100, 'x');
  EXPECT_EQ(taken - before, 2U);
  delete one;
}

TEST(Allocation, NoneWhileDecidingTheExample) {
  const Project project("fennick-ferry", {"examples/halyard/as-found.yaml", "examples/halyard/as-planned.yaml",
                                          "examples/halyard/as-built.yaml"});
  ASSERT_EQ(project.said(), "");
  for (std::size_t site = 0; site < 3; ++site) {
    EXPECT_EQ(taken_by_deciding(project.book(), project.site(site)), 0U);
    EXPECT_GT(evaluate::judge(project.book(), project.site(site), {}).decisions.size(), 50U);
  }
}

TEST(Allocation, NoneOnGeneratedWorlds) {
  for (std::uint64_t seed = 1; seed <= 3; ++seed) {
    Random random(seed);
    Shelf shelf(generated_vocabulary(random));
    const auto books = shelf.add_books(generated_book(random, {}));
    for (int i = 0; i < 20; ++i) {
      const auto* site = shelf.add_site(written(generated_site(random, {}), random, Detail::some));
      EXPECT_EQ(taken_by_deciding(*books[0], *site), 0U) << "seed " << seed << ", site " << i;
    }
  }
}

}  // namespace
}  // namespace headgate::test
