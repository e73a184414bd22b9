// Any bytes, read as a site file with a small vocabulary. Every slot's address leads back to it, and an
// address among the bytes (a `name` that begins with `line`) may be set.
#include <cstdint>
#include <cstdlib>
#include <string>

#include "site/world.hpp"

namespace headgate {
namespace {

const test::World& known() {
  static const test::World world = test::load_vocabulary({test::site_vocabulary});
  return world;
}

void check(bool holds) {
  if (!holds) std::abort();
}

void check_addresses(const site::Site& site, const vocabulary::Vocabulary& vocabulary) {
  constexpr std::size_t enough = 64;  // of each file: every address walks the whole way
  for (site::ElementId element = 0; element < site.elements.size() && element < enough; ++element) {
    const std::size_t fields = vocabulary.shapes[site.elements[element].shape].fields.size();
    for (std::size_t id = 0; id < fields; ++id) {
      const auto field = static_cast<site::FieldId>(id);
      text::Diagnostics missing;
      const auto target = find(site, vocabulary, address(site, vocabulary, element, field), {}, missing);
      check(target && target->element == element && target->field == field);
    }
  }
}

void check_site(const site::Site& site, const vocabulary::Vocabulary& vocabulary) {
  for (const site::List& list : site.lists) {
    for (const site::ElementId item : list.items) check(item < site.elements.size());
  }
  for (const site::ElementId element : site.downstream_order) check(site.elements[element].walk != site::nowhere);
  check_addresses(site, vocabulary);
}

void set_named(document::Node& tree, const vocabulary::Vocabulary& vocabulary) {
  const document::Node* address = tree.find("name");
  const document::Node* value = tree.find("place");
  if (!address || !value || !address->is_scalar()) return;
  text::Diagnostics found;
  const std::string written = address->scalar;
  const document::Node copy = *value;
  site::set(tree, written, {}, copy, vocabulary, found);
}

}  // namespace
}  // namespace headgate

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace headgate;
  if (size > 16384) return 0;
  text::Sources sources;
  text::Diagnostics found;
  const auto file = sources.add("site.yaml", std::string(reinterpret_cast<const char*>(data), size));
  auto tree = document::read(sources, file, {}, found);
  if (!tree) return 0;
  check_site(site::load(*tree, known().vocabulary, found), known().vocabulary);
  set_named(*tree, known().vocabulary);
  const site::Site site = site::load(*tree, known().vocabulary, found);
  check_site(site, known().vocabulary);
  for (const text::Diagnostic& d : found) check(!text::draw(d, sources).empty());
  return 0;
}
