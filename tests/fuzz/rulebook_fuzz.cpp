// Reads arbitrary bytes as a rules file, a tables file, a sources file and a place beside a small project, and resolves
// the place before, on and without a day. Whatever they are: nothing crashes, every diagnostic is of the catalogue,
// chains and standings hold together, and a second reading says the same.
#include <cstdint>
#include <cstdlib>
#include <string>

#include "rulebook/world.hpp"

namespace {

using namespace headgate;

void require(bool holds) {
  if (!holds) std::abort();
}

bool is_known(std::string_view id) {
  for (const text::Message& message : text::catalogue()) {
    if (message.id == id) return true;
  }
  return false;
}

const char* const project = R"(format: rules/1
topic: t
limits:
  max: {values: {code-18 A1: 80 psi, other 1: 90 psi}}
  rise: {by: preventer, values: {code-18 A1: {breaker: 6 in}}}
rules:
  deep:
    title: t
    source: code-18 A1
    each: preventer in line
    require: preventer.height above floor >= limit.rise[preventer]
  high:
    title: t
    source: other 1
    require: pressure.highest-static <= limit.max
)";

void check(const rulebook::Rulebook& book) {
  for (const auto& limit : book.limits) {
    for (const auto& value : limit.chain) {
      using Form = rulebook::LimitValue::Form;
      require(value.form != Form::expression || value.tree);
      require(value.form != Form::table || value.table < book.tables.size());
    }
  }
  for (const auto& rule : book.rules) {
    require(rule.standing == rulebook::Standing::in_force || !rule.standing_says.empty());
    for (const auto limit : rule.limits) require(limit < book.limits.size());
  }
  for (const auto& table : book.tables) {
    for (const auto& row : table.rows) require(row.keys.size() == table.signature.keys.size());
  }
}

std::string read_once(const std::string& text) {
  test::World world;
  world.file("project", project);
  const bool place = text.rfind("format: place/1", 0) == 0;
  document::Caps caps;
  caps.file_bytes = 1U << 14U;
  caps.nodes = 400;
  text::Diagnostics found;
  auto tree = document::read(world.sources, world.sources.add("fuzz", text), caps, found);
  if (tree && !text::has_errors(found)) {
    world.trees.push_back(std::move(*tree));
    if (place)
      world.place = rulebook::read_place(world.trees.back(), world.found);
    else
      rulebook::add(world.library, world.trees.back(), world.found);
    for (const char* day : {"", "2026-06-30", "2026-07-01"}) check(world.resolve(day));
  }
  std::string said;
  for (const auto& each : world.found) {
    require(is_known(each.id) && !each.sentence.empty());
    require(!each.range.known() || each.range.end <= world.sources.text(each.range.file).size());
    said += text::draw(each, world.sources);
  }
  return said;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string text(reinterpret_cast<const char*>(data), size);
  require(read_once(text) == read_once(text));
  return 0;
}
