// The recursive descent behind parse() and compile_each(): shape and ranges only, no names, no types.
//
//   Parser(source, bounds, found).expression()   -> Tree; nullopt after the first place that fits no shape
//   Parser(source, bounds, found).each()         -> the binders of an `each:`
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "document/node.hpp"
#include "expression/lex.hpp"
#include "expression/parse.hpp"

namespace headgate::expression {

using document::is_name;

class Parser {
 public:
  Parser(const document::Node& source, const Bounds& bounds, text::Diagnostics& found);

  std::optional<Tree> expression();
  std::optional<Each> each();

 private:
  struct Built {
    std::size_t begin = 0;  // bytes of the scalar
    std::size_t end = 0;
    std::size_t quantifiers = 0;  // inside one another
  };
  enum class Where { open, in_where };  // in_where: a quantifier needs brackets

  // Tokens.
  const Token& now() const { return tokens_[at_]; }
  const Token& ahead(std::size_t count) const { return tokens_[std::min(at_ + count, tokens_.size() - 1)]; }
  bool is(std::string_view what) const { return now().is(what); }
  bool take(std::string_view what);
  bool expect(std::string_view what, std::string_view why);
  bool close(std::string_view bracket, const Token& opened);
  text::Range range(std::size_t begin, std::size_t end) const { return source_.range_of(begin, end - begin); }
  text::Range range(const Token& token) const { return range(token.begin, token.end); }

  // Failing: the first shape error ends the parse of this expression.
  NodeId fail(std::string_view id, const text::Range& where, const std::vector<std::string>& arguments);
  NodeId unexpected(std::string_view expected);
  bool deeper(const Token& at);

  // Building.
  NodeId add(Op op, std::size_t begin, std::size_t end, std::vector<NodeId> kids = {});
  Node& node(NodeId id) { return tree_.nodes[id]; }

  // Grammar, one function a line of it.
  NodeId expr();
  NodeId joined(NodeId first, std::string_view word, Op op);
  NodeId conj(Where where);
  NodeId test(Where where);
  NodeId body(Where where);
  NodeId quantifier();
  bool binder(Binder& into);
  NodeId paper();
  NodeId confirmed();
  NodeId relation(NodeId left);
  NodeId comparison(NodeId left);
  NodeId is_relation(NodeId left);
  NodeId is_one_of(NodeId left);
  NodeId is_in(NodeId left);
  NodeId comes(NodeId left);
  NodeId item();
  NodeId sum();
  NodeId product();
  NodeId atom();
  NodeId bracketed();
  NodeId path_or_call();
  NodeId path();
  NodeId with_mark(NodeId path);
  NodeId limit();
  NodeId keyed(Op op, const std::string& name);
  bool keys(std::vector<NodeId>& into);
  NodeId call();
  NodeId choose();
  NodeId fold();
  NodeId count();
  NodeId fold_tail(Op op, const Token& word, const Token& open, NodeId value);
  bool optional_where(NodeId& into, Where where);
  NodeId number();
  NodeId list_path();

  bool binary_sign(std::string_view sign);
  bool refuse_blank_fraction(NodeId left, NodeId right);
  bool refuse_relation_word();
  bool refuse_quantifier_word();

  std::optional<Tree> finish(NodeId root);
  std::optional<Tree> piece(NodeId root);
  void start();

  const document::Node& source_;
  const Bounds& bounds_;
  text::Diagnostics& found_;
  std::vector<Token> tokens_;
  std::size_t at_ = 0;
  std::size_t depth_ = 0;
  std::size_t said_before_ = 0;
  bool failed_ = false;
  Tree tree_;
  std::vector<Built> spans_;  // of each node
};

}  // namespace headgate::expression
