// Sums, products and what they are made of.
#include <utility>

#include "expression/parser.hpp"

namespace headgate::expression {

namespace {

bool whole(std::string_view text) {
  return !text.empty() && text.find_first_not_of("0123456789") == std::string_view::npos;
}

}  // namespace

// Takes the sign when it stands with a blank on both sides, else says so.
bool Parser::binary_sign(std::string_view sign) {
  if (!is(sign)) return false;
  const Token& token = now();
  if (token.blank_before && token.blank_after) {
    ++at_;
    return true;
  }
  const std::string left = at_ > 0 ? tokens_[at_ - 1].text : "a";
  const bool value_follows = ahead(1).kind == Token::Kind::word || ahead(1).kind == Token::Kind::number;
  const std::string right = value_follows ? ahead(1).text : "b";
  const bool begins = at_ == 0 || tokens_[at_ - 1].kind == Token::Kind::sign;
  if (begins && sign == "-") {
    fail("minus-before-name", range(token), {});
  } else {
    fail("sign-needs-blanks", range(token), {std::string(sign), left + " " + std::string(sign) + " " + right});
  }
  return false;
}

// sum := product { (" + " | " - ") product }
NodeId Parser::sum() {
  NodeId left = product();
  while (!failed_ && (is("+") || is("-"))) {
    const Token sign = now();
    if (!binary_sign(sign.text)) return no_node;
    const NodeId right = product();
    if (failed_) return no_node;
    left = add(sign.is("+") ? Op::add : Op::subtract, spans_[left].begin, spans_[right].end, {left, right});
    if (!failed_) node(left).mark = range(sign);
  }
  return left;
}

// product := atom { (" * " | " / ") atom }
NodeId Parser::product() {
  NodeId left = atom();
  while (!failed_ && (is("*") || is("/"))) {
    const Token sign = now();
    if (!binary_sign(sign.text)) return no_node;
    const NodeId right = atom();
    if (failed_) return no_node;
    if (sign.is("/") && refuse_blank_fraction(left, right)) return no_node;
    left = add(sign.is("*") ? Op::multiply : Op::divide, spans_[left].begin, spans_[right].end, {left, right});
    if (!failed_) node(left).mark = range(sign);
  }
  return left;
}

// `3 / 4 in` is meant as three quarters of an inch.
bool Parser::refuse_blank_fraction(NodeId left, NodeId right) {
  const Node& above = node(left);
  const Node& below = node(right);
  if (above.op != Op::literal || below.op != Op::literal || !whole(above.written)) return false;
  const std::size_t digits = below.written.find_first_not_of("0123456789");
  if (digits == 0) return false;
  const std::string written = above.written + " / " + below.written;
  fail("number-spaced", text::join(above.range, below.range), {written, above.written + "/" + below.written});
  return true;
}

NodeId Parser::atom() {
  if (failed_) return no_node;
  const Token& token = now();
  if (token.kind == Token::Kind::number) return number();
  if (token.is("(")) return bracketed();
  if (token.kind != Token::Kind::word) {
    if (token.is("-")) return binary_sign("-") ? fail("minus-before-name", range(token), {}) : no_node;
    return unexpected("a value");
  }
  if (token.is("if")) return choose();
  if (token.is("count")) return count();
  if (token.is("sum") || token.is("least") || token.is("greatest")) return fold();
  if (token.is("yes") || token.is("no") || token.is("base")) {
    const NodeId id = add(token.is("base") ? Op::base : Op::literal, token.begin, token.end);
    if (!failed_ && !token.is("base")) node(id).written = token.text;
    ++at_;
    return id;
  }
  if (token.is("some") || token.is("every") || token.is("not")) {
    return fail("needs-brackets", range(token), {token.text});
  }
  if (is_grammar_word(token.text)) return unexpected("a value");
  return path_or_call();
}

NodeId Parser::bracketed() {
  const Token open = now();
  if (!deeper(open)) return no_node;
  ++at_;
  const NodeId inside = expr();
  if (failed_ || !close(")", open)) return no_node;
  --depth_;
  const std::size_t end = tokens_[at_ - 1].end;
  // A bracketed expression is the expression itself, with the brackets in its range.
  spans_[inside].begin = open.begin;
  spans_[inside].end = end;
  node(inside).range = range(open.begin, end);
  return inside;
}

NodeId Parser::number() {
  const NodeId id = add(Op::literal, now().begin, now().end);
  if (failed_) return no_node;
  node(id).written = now().text;
  ++at_;
  return id;
}

NodeId Parser::path_or_call() {
  const bool adjacent = ahead(1).begin == now().end;
  if (now().text.compare(0, 6, "limit.") == 0) return limit();
  if (ahead(1).is("(") && adjacent) return call();
  if (ahead(1).is("[") && adjacent) return keyed(Op::look_up, now().text);
  const NodeId id = path();
  return failed_ ? no_node : with_mark(id);
}

// A path is one word; its names keep their own places.
NodeId Parser::path() {
  const Token word = now();
  const NodeId id = add(Op::path, word.begin, word.end);
  if (failed_) return no_node;
  std::size_t from = 0;
  while (from <= word.text.size()) {
    const std::size_t dot = std::min(word.text.find('.', from), word.text.size());
    const std::string name = word.text.substr(from, dot - from);
    const text::Range place = range(word.begin + from, word.begin + dot);
    if (!is_name(name)) return fail("bad-name", place, {name});
    node(id).steps.push_back({name, place});
    from = dot + 1;
  }
  node(id).name = word.text;
  ++at_;
  return id;
}

// path ("below" | "above") (mark | limit)
NodeId Parser::with_mark(NodeId path) {
  if (!is("below") && !is("above")) return path;
  const Token word = now();
  ++at_;
  if (now().kind != Token::Kind::word || is_grammar_word(now().text)) {
    return unexpected("a mark, as `finished-grade`");
  }
  NodeId mark = no_node;
  if (now().text.compare(0, 6, "limit.") == 0) {
    mark = limit();
  } else {
    mark = add(Op::word, now().begin, now().end);
    if (failed_) return no_node;
    node(mark).name = now().text;
    ++at_;
  }
  if (failed_) return no_node;
  const NodeId id = add(Op::at_mark, spans_[path].begin, spans_[mark].end, {path, mark});
  if (failed_) return no_node;
  node(id).mark = range(word);
  node(id).before = word.is("below");
  return id;
}

// "limit." name [ "[" key {"," key} "]" [ "." column ] ]
NodeId Parser::limit() {
  const std::string name = now().text.substr(6);
  if (!is_name(name)) return fail("limit-name", range(now()), {now().text});
  return keyed(Op::limit, name);
}

// name "[" key {"," key} "]" [ "." column ]; a limit may stand without brackets
NodeId Parser::keyed(Op op, const std::string& name) {
  const Token word = now();
  ++at_;
  std::size_t end = word.end;
  std::vector<NodeId> kids;
  std::vector<Step> column;
  if (is("[") && now().begin == word.end) {
    if (!keys(kids)) return no_node;
    if (now().kind == Token::Kind::column) {
      column.push_back({now().text, range(now().begin + 1, now().end)});
      ++at_;
    }
    end = tokens_[at_ - 1].end;
  }
  const NodeId id = add(op, word.begin, end, std::move(kids));
  if (failed_) return no_node;
  node(id).name = name;
  node(id).mark = range(word);
  node(id).steps = std::move(column);
  return id;
}

bool Parser::keys(std::vector<NodeId>& into) {
  const Token open = now();
  if (!deeper(open)) return false;
  ++at_;
  do {
    into.push_back(sum());
    if (failed_) return false;
  } while (take(","));
  --depth_;
  return close("]", open);
}

NodeId Parser::call() {
  const Token word = now();
  if (!is_name(word.text)) return fail("bad-name", range(word), {word.text});
  ++at_;
  const Token open = now();
  if (!deeper(open)) return no_node;
  ++at_;
  std::vector<NodeId> kids;
  if (!is(")")) {
    do {
      kids.push_back(sum());
      if (failed_) return no_node;
    } while (take(","));
  }
  if (!close(")", open)) return no_node;
  --depth_;
  const NodeId id = add(Op::call, word.begin, tokens_[at_ - 1].end, std::move(kids));
  if (failed_) return no_node;
  node(id).name = word.text;
  node(id).mark = range(word);
  return id;
}

// "if" expr "then" sum "else" sum
NodeId Parser::choose() {
  const Token word = now();
  if (!deeper(word)) return no_node;
  ++at_;
  const NodeId condition = expr();
  if (failed_ || !expect("then", "")) return no_node;
  const NodeId yes = sum();
  if (failed_ || !expect("else", "")) return no_node;
  const NodeId no = sum();
  if (failed_) return no_node;
  --depth_;
  const NodeId id = add(Op::choose, word.begin, spans_[no].end, {condition, yes, no});
  if (!failed_) node(id).mark = range(word);
  return id;
}

// "count" "(" binder ["where" body] ")"
NodeId Parser::count() {
  const Token word = now();
  ++at_;
  const Token open = now();
  if (!expect("(", "")) return no_node;
  return fold_tail(Op::count, word, open, no_node);
}

// "sum" "(" sum "for" binder … ")", and least and greatest, which also take a list of values
NodeId Parser::fold() {
  const Token word = now();
  ++at_;
  const Token open = now();
  if (!expect("(", "") || !deeper(open)) return no_node;
  std::vector<NodeId> values{sum()};
  if (failed_) return no_node;
  if (take("for")) {
    --depth_;
    return fold_tail(word.is("sum")     ? Op::sum
                     : word.is("least") ? Op::least_of
                                        : Op::greatest_of,
                     word, open, values[0]);
  }
  if (word.is("sum")) return unexpected("`for` and what to sum over");
  while (take(",")) {
    values.push_back(sum());
    if (failed_) return no_node;
  }
  if (!close(")", open)) return no_node;
  --depth_;
  const NodeId id =
      add(word.is("least") ? Op::least : Op::greatest, word.begin, tokens_[at_ - 1].end, std::move(values));
  if (!failed_) node(id).mark = range(word);
  return id;
}

NodeId Parser::fold_tail(Op op, const Token& word, const Token& open, NodeId value) {
  if (!deeper(open)) return no_node;
  Binder over;
  NodeId where = no_node;
  if (!binder(over) || !optional_where(where, Where::open) || !close(")", open)) return no_node;
  --depth_;
  std::vector<NodeId> kids;
  if (op != Op::count) kids.push_back(value);
  kids.push_back(where);
  const NodeId id = add(op, word.begin, tokens_[at_ - 1].end, std::move(kids));
  if (failed_) return no_node;
  node(id).mark = range(word);
  node(id).binder = std::move(over);
  return id;
}

}  // namespace headgate::expression
