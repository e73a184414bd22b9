#include "expression/parser.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace headgate::expression {

namespace {

std::string shown(const Token& token) {
  if (token.kind == Token::Kind::end) return "the end";
  if (token.kind == Token::Kind::column) return "`." + token.text + "`";
  return "`" + token.text + "`";
}

bool walks_list(Op op) {
  return op == Op::some || op == Op::no || op == Op::every || op == Op::count || op == Op::sum || op == Op::least_of ||
         op == Op::greatest_of;
}

}  // namespace

Parser::Parser(const document::Node& source, const Bounds& bounds, text::Diagnostics& found)
    : source_(source), bounds_(bounds), found_(found), said_before_(found.size()) {
  start();
}

// Lexes, unless the text cannot be an expression at all.
void Parser::start() {
  tree_.range = source_.range;
  const auto refuse = [&](std::string_view id, const std::vector<std::string>& arguments) {
    fail(id, source_.range, arguments);
    tokens_.emplace_back();
  };
  if (!source_.is_scalar()) return refuse("expression-wanted", {source_.is_map() ? "a map" : "a list"});
  if (source_.style == document::Node::Style::quoted) return refuse("expression-place", {"in quotes"});
  if (source_.scalar.size() > bounds_.bytes) {
    return refuse("expression-too-long", {std::to_string(source_.scalar.size()), std::to_string(bounds_.bytes)});
  }
  tokens_ = lex(source_, found_);
  // What could not be read as anything has been said; the shape of the rest would only repeat it.
  failed_ =
      std::any_of(tokens_.begin(), tokens_.end(), [](const Token& one) { return one.kind == Token::Kind::unreadable; });
  if (tokens_.size() == 1 && found_.size() == said_before_) fail("expression-empty", source_.range, {});
}

bool Parser::take(std::string_view what) {
  if (!is(what)) return false;
  ++at_;
  return true;
}

bool Parser::expect(std::string_view what, std::string_view why) {
  if (take(what)) return true;
  unexpected("`" + std::string(what) + "`" + std::string(why));
  return false;
}

bool Parser::close(std::string_view bracket, const Token& opened) {
  if (take(bracket)) return true;
  if (failed_) return false;
  if (now().kind == Token::Kind::end) {
    fail("bracket-open", range(opened), {opened.text, std::string(bracket)});
  } else if (is("and") || is("or")) {
    fail("and-or-needs-brackets", range(now()), {now().text});
  } else {
    unexpected("`" + std::string(bracket) + "`");
  }
  return false;
}

NodeId Parser::fail(std::string_view id, const text::Range& where, const std::vector<std::string>& arguments) {
  if (!failed_) found_.push_back(text::say(id, where, arguments));
  failed_ = true;
  return no_node;
}

NodeId Parser::unexpected(std::string_view expected) {
  const Token& token = now();
  if (token.is("-") && !(token.blank_before && token.blank_after)) return binary_sign("-"), no_node;
  return fail("unexpected", range(token), {std::string(expected), shown(token)});
}

bool Parser::deeper(const Token& at) {
  if (++depth_ <= bounds_.depth) return true;
  fail("expression-too-deep", range(at), {std::to_string(bounds_.depth)});
  return false;
}

NodeId Parser::add(Op op, std::size_t begin, std::size_t end, std::vector<NodeId> kids) {
  if (failed_) return no_node;
  if (tree_.nodes.size() >= bounds_.nodes) {
    return fail("expression-too-big", source_.range, {std::to_string(bounds_.nodes)});
  }
  std::size_t inner = walks_list(op) ? 1 : 0;
  for (const NodeId kid : kids) {
    if (kid != no_node) inner = std::max(inner, spans_[kid].quantifiers + (walks_list(op) ? 1 : 0));
  }
  if (inner > bounds_.quantifiers) {
    return fail("quantifiers-too-deep", range(begin, end), {std::to_string(bounds_.quantifiers)});
  }
  Node made;
  made.op = op;
  made.range = range(begin, end);
  made.mark = made.range;
  made.kids = std::move(kids);
  tree_.nodes.push_back(std::move(made));
  spans_.push_back({begin, end, inner});
  return static_cast<NodeId>(tree_.nodes.size() - 1);
}

std::optional<Tree> Parser::piece(NodeId root) {
  if (failed_ || root == no_node) return std::nullopt;
  Tree done = std::move(tree_);
  done.root = root;
  done.range = done.nodes[root].range;
  tree_ = {};
  spans_.clear();
  return done;
}

std::optional<Tree> Parser::finish(NodeId root) {
  if (!failed_ && now().kind != Token::Kind::end) {
    refuse_relation_word();
    unexpected("`and`, `or`, a comparison or the end");
  }
  auto done = piece(root);
  // A number alone is a value like any other and may stand in braces.
  if (done && source_.in_braces && done->nodes[done->root].op != Op::literal) {
    fail("expression-place", source_.range, {"in braces or square brackets"});
  }
  if (found_.size() != said_before_) return std::nullopt;
  return done;
}

std::optional<Tree> Parser::expression() { return finish(failed_ ? no_node : expr()); }

// expr := conj ( {"and" conj} | {"or" conj} )
NodeId Parser::expr() {
  const NodeId first = conj(Where::open);
  if (failed_) return no_node;
  if (is("and")) return joined(first, "and", Op::both);
  if (is("or")) return joined(first, "or", Op::either);
  return first;
}

NodeId Parser::joined(NodeId first, std::string_view word, Op op) {
  const Token opening = now();
  std::vector<NodeId> kids{first};
  NodeId last = first;
  while (is("and") || is("or")) {
    if (!is(word)) {
      if (!failed_) {
        found_.push_back(
            text::say("and-or-mixed", range(now()), {}, range(opening), "\"" + opening.text + "\" stands here"));
      }
      failed_ = true;
      return no_node;
    }
    ++at_;
    last = conj(Where::open);
    if (failed_) return no_node;
    kids.push_back(last);
  }
  const std::size_t begin = spans_[first].begin;
  const std::size_t end = spans_[last].end;
  const NodeId id = add(op, begin, end, std::move(kids));
  if (failed_) return no_node;
  node(id).mark = range(opening);
  return id;
}

// conj := "not" conj | test
NodeId Parser::conj(Where where) {
  if (!is("not")) return test(where);
  const Token word = now();
  if (!deeper(word)) return no_node;
  ++at_;
  const NodeId inner = conj(where);
  --depth_;
  if (failed_) return no_node;
  const NodeId id = add(Op::opposite, word.begin, spans_[inner].end, {inner});
  if (failed_) return no_node;
  node(id).mark = range(word);
  return id;
}

// test := quant | paper | sum [ relation ]
NodeId Parser::test(Where where) {
  if (failed_) return no_node;
  const bool a_thing_follows = ahead(1).kind == Token::Kind::word && !is_grammar_word(ahead(1).text);
  if (is("some") || is("every") || (is("no") && a_thing_follows)) {
    if (where == Where::in_where) return fail("where-quantifier", range(now()), {now().text});
    return quantifier();
  }
  if (is("approved") || is("ordered")) return paper();
  if (is("confirmed")) return confirmed();
  if (refuse_quantifier_word()) return no_node;
  const NodeId left = sum();
  return failed_ ? no_node : relation(left);
}

// `any pipe in line`, `exists pipe in line`
bool Parser::refuse_quantifier_word() {
  struct Word {
    std::string_view written, right;
  };
  constexpr std::array<Word, 8> words = {{{"any", "some"},
                                          {"exists", "some"},
                                          {"exist", "some"},
                                          {"there", "some"},
                                          {"all", "every"},
                                          {"each", "every"},
                                          {"forall", "every"},
                                          {"a", "some"}}};
  if (now().kind != Token::Kind::word) return false;
  const Token& next = ahead(1);
  const bool a_thing_follows = (next.kind == Token::Kind::word && !is_grammar_word(next.text)) ||
                               (next.is("(") && now().text != "a") || (now().text == "there" && next.is("is"));
  for (const Word& word : words) {
    if (now().text != word.written || !a_thing_follows) continue;
    if (word.written == "a" && !ahead(2).is("in") && !ahead(2).is("as")) continue;
    fail("refused-spelling", range(now()), {now().text, "`" + std::string(word.right) + "`"});
    return true;
  }
  return false;
}

// body := "not" body | test; an and/or behind it could belong inside or outside
NodeId Parser::body(Where where) {
  const Token opened = now();
  if (!deeper(opened)) return no_node;
  const NodeId id = conj(where);
  --depth_;
  if (failed_) return no_node;
  if (is("and") || is("or")) return fail("body-and-or", range(now()), {now().text});
  return id;
}

// binder := kind ["as" name] "in" path
bool Parser::binder(Binder& into) {
  const auto bare_name = [&](std::string_view expected) {
    if (now().kind == Token::Kind::word && is_name(now().text) && !is_grammar_word(now().text)) return true;
    unexpected(expected);
    return false;
  };
  if (!bare_name("a kind of thing")) return false;
  into.kind_name = into.name = now().text;
  into.kind_range = into.name_range = range(now());
  ++at_;
  if (take("as")) {
    if (!bare_name("a name")) return false;
    into.name = now().text;
    into.name_range = range(now());
    ++at_;
  }
  if (!expect("in", " and the list to look in")) return false;
  into.list = list_path();
  return !failed_;
}

NodeId Parser::list_path() {
  if (now().kind != Token::Kind::word || is_grammar_word(now().text)) return unexpected("the name of a list");
  return path();
}

bool Parser::optional_where(NodeId& into, Where where) {
  into = no_node;
  if (take("where")) into = body(where);
  return !failed_;
}

NodeId Parser::quantifier() {
  const Token word = now();
  if (!deeper(word)) return no_node;
  ++at_;
  Binder over;
  NodeId where = no_node;
  NodeId has = no_node;
  if (!binder(over) || !optional_where(where, Where::in_where)) return no_node;
  std::size_t end = where != no_node ? spans_[where].end : spans_[over.list].end;
  if (take("has")) {
    has = body(Where::open);
    if (failed_) return no_node;
    end = spans_[has].end;
  } else if (word.is("every")) {
    return unexpected("`has` and what every one has");
  }
  --depth_;
  const NodeId id = add(word.is("every") ? Op::every
                        : word.is("no")  ? Op::no
                                         : Op::some,
                        word.begin, end, {where, has});
  if (failed_) return no_node;
  node(id).mark = range(word);
  node(id).binder = std::move(over);
  return id;
}

// ("approved" | "ordered") "by" role ["for" name]
NodeId Parser::paper() {
  const Token word = now();
  ++at_;
  if (!expect("by", " and a role")) return no_node;
  const auto name = [&](std::string_view expected) -> std::string {
    if (now().kind == Token::Kind::word && is_name(now().text)) return now().text;
    unexpected(expected);
    return "";
  };
  const std::string role = name("a role");
  if (failed_) return no_node;
  const Token role_token = now();
  std::size_t end = now().end;
  ++at_;
  std::string subject;
  text::Range subject_range;
  if (take("for")) {
    subject = name("a name");
    if (failed_) return no_node;
    subject_range = range(now());
    end = now().end;
    ++at_;
  }
  const NodeId id = add(Op::paper, word.begin, end);
  if (failed_) return no_node;
  Node& made = node(id);
  made.mark = range(role_token);
  made.index = word.is("ordered") ? 1 : 0;
  made.written = role;
  made.name = subject;
  if (!subject.empty()) made.steps.push_back({subject, subject_range});
  return id;
}

// "confirmed" "as" name
NodeId Parser::confirmed() {
  const Token word = now();
  ++at_;
  if (!expect("as", " and a name")) return no_node;
  if (now().kind != Token::Kind::word || !is_name(now().text)) return unexpected("a name");
  const NodeId id = add(Op::confirmed, word.begin, now().end);
  if (failed_) return no_node;
  node(id).name = now().text;
  node(id).mark = range(now());
  ++at_;
  return id;
}

// each := binder ["where" body] {"," binder ["where" body]}
std::optional<Each> Parser::each() {
  Each result;
  while (!failed_) {
    EachBinder one;
    if (!binder(one.binder)) break;
    auto list = piece(one.binder.list);
    one.binder.list = no_node;
    if (!list) break;
    one.list = std::move(*list);
    if (take("where")) {
      const NodeId where = body(Where::open);
      if (failed_) break;
      one.where = piece(where);
    }
    result.binders.push_back(std::move(one));
    if (!take(",")) break;
  }
  if (!failed_ && now().kind != Token::Kind::end) unexpected("`,` and a further kind, or the end");
  if (found_.size() != said_before_) return std::nullopt;
  return result;
}

std::optional<Tree> parse(const document::Node& source, const Bounds& bounds, text::Diagnostics& found) {
  return Parser(source, bounds, found).expression();
}

}  // namespace headgate::expression
