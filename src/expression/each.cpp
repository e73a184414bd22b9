// The other two places where expressions stand: the binders of `each:` and paths in texts.
#include "expression/check.hpp"
#include "expression/lex.hpp"
#include "expression/parser.hpp"

namespace headgate::expression {

std::optional<Each> compile_each(const document::Node& source, const Scope& scope, text::Diagnostics& found) {
  auto each = Parser(source, Bounds{}, found).each();
  if (!each) return std::nullopt;
  Scope so_far = scope;
  bool good = true;
  for (EachBinder& one : each->binders) {
    good = Checker(one.list, so_far, found).bind(one.binder) && good;
    so_far.variables.push_back({one.binder.name, one.binder.shapes});
    vocabulary::Type truth;
    truth.kind = vocabulary::Type::Kind::truth;
    if (good && one.where) good = check(*one.where, so_far, truth, found);
  }
  return good ? std::move(each) : std::nullopt;
}

std::optional<Tree> compile_path(std::string_view path, const text::Range& range, const Scope& scope,
                                 text::Diagnostics& found) {
  document::Node source;
  source.range = range;
  source.scalar = path;
  const std::size_t before = found.size();
  auto tree = parse(source, Bounds{}, found);
  if (tree && tree->nodes[tree->root].op != Op::path) {
    found.push_back(text::say("path-wanted", range, {std::string(path)}));
    return std::nullopt;
  }
  if (!tree || found.size() != before || !Checker(*tree, scope, found).run_path()) return std::nullopt;
  return tree;
}

}  // namespace headgate::expression
