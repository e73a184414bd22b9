// What stands between two values: comparisons, `is`, `comes`.
#include <array>
#include <utility>

#include "expression/parser.hpp"

namespace headgate::expression {

namespace {

bool comparing(const Token& token) {
  return token.kind == Token::Kind::sign && (token.text[0] == '<' || token.text[0] == '>');
}

Relation relation_of(const Token& token) {
  if (token.is("<")) return Relation::less;
  if (token.is("<=")) return Relation::less_or_equal;
  return token.is(">") ? Relation::greater : Relation::greater_or_equal;
}

bool upward(const Token& token) { return token.text[0] == '<'; }

}  // namespace

NodeId Parser::relation(NodeId left) {
  if (comparing(now())) return comparison(left);
  if (is("is")) return is_relation(left);
  if (is("comes")) return comes(left);
  return left;
}

// cmp sum [ cmp sum ]
NodeId Parser::comparison(NodeId left) {
  const Token first = now();
  ++at_;
  const NodeId middle = sum();
  if (failed_) return no_node;
  if (!comparing(now())) {
    const NodeId id = add(Op::compare, spans_[left].begin, spans_[middle].end, {left, middle});
    if (failed_) return no_node;
    node(id).mark = range(first);
    node(id).relation = relation_of(first);
    if (is("is") || is("comes")) return fail("two-relations", range(now()), {now().text});
    return id;
  }
  const Token second = now();
  if (upward(first) != upward(second)) {
    found_.push_back(text::say("comparison-chain-mixed", range(second), {first.text, second.text}, range(first), "the other one"));
    failed_ = true;
    return no_node;
  }
  ++at_;
  const NodeId right = sum();
  if (failed_) return no_node;
  if (comparing(now()) || is("is") || is("comes")) return fail("two-relations", range(now()), {now().text});
  const NodeId id = add(Op::between, spans_[left].begin, spans_[right].end, {left, middle, right});
  if (failed_) return no_node;
  node(id).mark = range(first);
  node(id).relation = relation_of(first);
  node(id).second = relation_of(second);
  return id;
}

NodeId Parser::is_relation(NodeId left) {
  const Token word = now();
  ++at_;
  const bool negated = take("not");
  NodeId id = no_node;
  if (is("none") || is("fitted") || is("recorded")) {
    const Op op = is("none") ? Op::is_none : is("fitted") ? Op::fitted : Op::recorded;
    id = add(op, spans_[left].begin, now().end, {left});
    ++at_;
  } else if (is("same")) {
    ++at_;
    if (!expect("as", " and a value")) return no_node;
    const NodeId right = sum();
    if (failed_) return no_node;
    id = add(Op::same, spans_[left].begin, spans_[right].end, {left, right});
  } else if (is("one")) {
    id = is_one_of(left);
  } else if (is("in")) {
    id = is_in(left);
  } else {
    const NodeId right = item();
    if (failed_) return no_node;
    id = add(Op::is_item, spans_[left].begin, spans_[right].end, {left, right});
  }
  if (failed_) return no_node;
  node(id).mark = range(word);
  node(id).negated = negated;
  if (comparing(now()) || is("is") || is("comes")) return fail("two-relations", range(now()), {now().text});
  return id;
}

// "one" "of" ( "(" item {"," item} ")" | limit )
NodeId Parser::is_one_of(NodeId left) {
  ++at_;
  if (!expect("of", "")) return no_node;
  if (!is("(")) return is_in(left);
  const Token open = now();
  ++at_;
  std::vector<NodeId> kids{left};
  do {
    kids.push_back(item());
    if (failed_) return no_node;
  } while (take(","));
  if (is("or") || is("and")) return unexpected("`,` or `)`");
  if (!close(")", open)) return no_node;
  return add(Op::one_of, spans_[left].begin, tokens_[at_ - 1].end, std::move(kids));
}

// `is in limit.x`, `is one of limit.x`
NodeId Parser::is_in(NodeId left) {
  const bool in = take("in");
  if (now().kind != Token::Kind::word || now().text.compare(0, 6, "limit.") != 0) {
    return unexpected(in ? "a limit that holds a list or a season" : "`(` and a list, or a limit that holds one");
  }
  const NodeId right = limit();
  if (failed_) return no_node;
  const NodeId id = add(Op::in_list, spans_[left].begin, spans_[right].end, {left, right});
  if (!failed_) node(id).before = in;
  return id;
}

// item := member | kind | number | quantity | "yes" | "no"
NodeId Parser::item() {
  const Token token = now();
  if (token.kind == Token::Kind::number) return number();
  if (token.is("yes") || token.is("no")) return atom();
  if (token.kind == Token::Kind::word && refuse_relation_word() == no_node && failed_) return no_node;
  if (token.kind == Token::Kind::word && is_name(token.text) && !is_grammar_word(token.text)) {
    const NodeId id = add(Op::word, token.begin, token.end);
    if (failed_) return no_node;
    node(id).name = token.text;
    ++at_;
    return id;
  }
  if (token.kind == Token::Kind::word && token.text.find('.') != std::string::npos) {
    return fail("is-with-path", range(token), {token.text});
  }
  return unexpected("a member, a kind, a number, `yes` or `no`");
}

// "comes" ["right"] ("before" | "after") path
NodeId Parser::comes(NodeId left) {
  const Token word = now();
  ++at_;
  const bool right = take("right");
  const bool before = is("before");
  if (!before && !is("after")) return unexpected("`before` or `after`");
  ++at_;
  if (now().kind != Token::Kind::word || is_grammar_word(now().text)) return unexpected("the thing it comes before or after");
  const NodeId other = path();
  if (failed_) return no_node;
  const NodeId id = add(Op::comes, spans_[left].begin, spans_[other].end, {left, other});
  if (failed_) return no_node;
  node(id).mark = range(word);
  node(id).before = before;
  node(id).right = right;
  return id;
}

// Words from spoken comparisons. Behind `is` (item) or behind a whole value (finish), where only a relation could stand.
NodeId Parser::refuse_relation_word() {
  struct Word {
    std::string_view first, second, right;
    bool after_is;
  };
  constexpr std::string_view same = "`is`, or `is same as` between two values";
  constexpr std::string_view between = "`lowest <= value <= highest`";
  constexpr std::array<Word, 25> words = {{{"equal", "to", same, true},
                                           {"greater", "than", "`>`", true},
                                           {"more", "than", "`>`", true},
                                           {"larger", "than", "`>`", true},
                                           {"over", "", "`>`", true},
                                           {"less", "than", "`<`", true},
                                           {"smaller", "than", "`<`", true},
                                           {"under", "", "`<`", true},
                                           {"at", "least", "`>=`", true},
                                           {"at", "most", "`<=`", true},
                                           {"between", "", between, true},
                                           {"inside", "", "`is in` a limit that holds a list or a season", true},
                                           {"above", "", "`>`", true},
                                           {"below", "", "`<`", true},
                                           {"between", "", between, false},
                                           {"contains", "", "`some … in …`, or `is one of (…)`", false},
                                           {"includes", "", "`some … in …`, or `is one of (…)`", false},
                                           {"equals", "", same, false},
                                           {"exceeds", "", "`>`", false},
                                           {"matches", "", "`is one of (…)`", false},
                                           {"has", "", "`some … in … has …`, or a path with a dot", false},
                                           {"xor", "", "`is not same as`", false},
                                           {"gt", "", "`>`", false},
                                           {"lt", "", "`<`", false},
                                           {"in", "", "`is in`, or `some … in …`", false}}};
  const bool after_is = at_ > 0 && (tokens_[at_ - 1].is("is") || (tokens_[at_ - 1].is("not") && at_ > 1 && tokens_[at_ - 2].is("is")));
  for (const Word& word : words) {
    if (now().kind != Token::Kind::word || now().text != word.first || word.after_is != after_is) continue;
    // `is over (…)` says more than a member called `over` could.
    const Token& next = ahead(1);
    const bool value_follows = next.kind == Token::Kind::number || next.is("(") ||
                               (next.kind == Token::Kind::word && !is_grammar_word(next.text));
    if (word.second.empty() ? after_is && !value_follows : !next.is(word.second)) continue;
    const text::Range place = word.second.empty() ? range(now()) : range(now().begin, next.end);
    std::string written = after_is ? "is " + now().text : now().text;
    if (!word.second.empty()) written += " " + next.text;
    return fail("refused-spelling", place, {written, std::string(word.right)});
  }
  if (after_is) return no_node;
  return unexpected("`and`, `or`, a comparison or the end");
}

}  // namespace headgate::expression
