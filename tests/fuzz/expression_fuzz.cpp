// Any bytes as an expression over a small vocabulary. What must hold: every problem has its words and a place within
// the text; what parses prints to text that parses to the same tree; what checks is in evaluation order, typed
// throughout, and prints to text that checks to the same type.
#include <cstdint>
#include <cstdlib>

#include "expression/same_shape.hpp"
#include "expression/small_world.hpp"

using namespace headgate;

namespace {

void require(bool holds) {
  if (!holds) std::abort();
}

document::Node node_of(std::string text) {
  document::Node node;
  node.range = {0, 0, static_cast<std::uint32_t>(text.size())};
  node.scalar = std::move(text);
  return node;
}

void told_well(const text::Diagnostics& found, std::size_t size) {
  for (const text::Diagnostic& one : found) {
    require(one.range.begin <= one.range.end && one.range.end <= size);
    require(!one.sentence.empty() && one.sentence.back() == '.');
  }
}

void in_order(const expression::Tree& tree) {
  require(tree.root == tree.nodes.size() - 1);
  for (expression::NodeId id = 0; id < tree.nodes.size(); ++id) {
    const expression::Node& node = tree.nodes[id];
    require(node.type.kind != vocabulary::Type::Kind::nothing);
    for (const auto kid : node.kids) require(kid == expression::no_node || kid < id);
  }
}

void checked(const document::Node& source, const expression::Scope& scope,
             const std::optional<vocabulary::Type>& wanted) {
  text::Diagnostics found;
  const auto tree = expression::compile(source, scope, wanted, found);
  told_well(found, source.scalar.size());
  require(tree.has_value() == found.empty());
  if (!tree) return;
  in_order(*tree);
  const auto again = expression::compile(node_of(print(*tree)), scope, wanted, found, {65536, 4096, 64, 4});
  require(again.has_value() && expression::alike((*again)[again->root].type, (*tree)[tree->root].type));
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static test::SmallWorld world;
  static const bool handed = (world.hand("wall", "wall"), true);
  static_cast<void>(handed);
  const document::Node source = node_of(std::string(reinterpret_cast<const char*>(data), size));
  text::Diagnostics found;
  const auto tree = expression::parse(source, {}, found);
  told_well(found, size);
  require(tree.has_value() == found.empty());
  if (tree) {
    const auto again = expression::parse(node_of(print(*tree)), {65536, 4096, 64, 4}, found);
    require(again && test::same_shape(*tree, *again));
  }
  vocabulary::Type truth;
  truth.kind = vocabulary::Type::Kind::truth;
  checked(source, world.scope, truth);
  checked(source, world.scope, std::nullopt);
  checked(source, world.scope, world.type("size"));
  text::Diagnostics of_each;
  const auto each = expression::compile_each(source, world.scope, of_each);
  told_well(of_each, size);
  require(each.has_value() == of_each.empty());
  return 0;
}
