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
  NodeId id = left;
  if (comparing(now()))
    id = comparison(left);
  else if (is("is"))
    id = is_relation(left);
  else if (is("comes"))
    id = comes(left);
  const bool another = comparing(now()) || is("is") || is("comes");
  return !failed_ && another ? fail("two-relations", range(now()), {now().text}) : id;
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
    return id;
  }
  const Token second = now();
  if (upward(first) != upward(second)) {
    found_.push_back(text::say("comparison-chain-mixed", range(second), {first.text, second.text}, range(first),
                               "\"" + first.text + "\" stands here"));
    failed_ = true;
    return no_node;
  }
  ++at_;
  const NodeId right = sum();
  if (failed_) return no_node;
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
  if (refuse_relation_word()) return no_node;
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
  if (now().kind != Token::Kind::word || is_grammar_word(now().text))
    return unexpected("the thing it comes before or after");
  const NodeId other = path();
  if (failed_) return no_node;
  const NodeId id = add(Op::comes, spans_[left].begin, spans_[other].end, {left, other});
  if (failed_) return no_node;
  node(id).mark = range(word);
  node(id).before = before;
  node(id).right = right;
  return id;
}

namespace {

enum class Before : std::uint8_t { anything, value, second };  // what must follow for the word to be one of these

struct SpokenRelation {
  std::string_view first, second, right;
  Before before = Before::anything;
};

constexpr std::string_view same = "`is`, or `is same as` between two values";
constexpr std::string_view bounded = "`lowest <= value <= highest`";

// Behind `is`. Words that may be members as well are told by what follows them.
constexpr std::array<SpokenRelation, 15> behind_is = {{{"equal", "to", same, Before::second},
                                                       {"greater", "than", "`>`", Before::second},
                                                       {"more", "than", "`>`", Before::second},
                                                       {"larger", "than", "`>`", Before::second},
                                                       {"less", "than", "`<`", Before::second},
                                                       {"smaller", "than", "`<`", Before::second},
                                                       {"at", "least", "`>=`", Before::second},
                                                       {"at", "most", "`<=`", Before::second},
                                                       {"over", "", "`>`", Before::value},
                                                       {"above", "", "`>`", Before::value},
                                                       {"under", "", "`<`", Before::value},
                                                       {"below", "", "`<`", Before::value},
                                                       {"between", "", bounded, Before::value},
                                                       {"any", "of", "`is one of (…)`", Before::second},
                                                       {"unknown", "", "`is not recorded`"}}};

// Behind a value.
constexpr std::array<SpokenRelation, 11> behind_value = {{{"between", "", bounded},
                                                          {"contains", "", "`some … in …`, or `is one of (…)`"},
                                                          {"includes", "", "`some … in …`, or `is one of (…)`"},
                                                          {"equals", "", same},
                                                          {"exceeds", "", "`>`"},
                                                          {"matches", "", "`is one of (…)`"},
                                                          {"has", "", "`some … in … has …`, or a path with a dot"},
                                                          {"xor", "", "`is not same as`"},
                                                          {"gt", "", "`>`"},
                                                          {"lt", "", "`<`"},
                                                          {"in", "", "`is in`, or `some … in …`"}}};

}  // namespace

// Words of spoken comparisons, where only a relation or an item can stand.
bool Parser::refuse_relation_word() {
  if (now().kind != Token::Kind::word || at_ == 0) return false;
  const bool not_before = tokens_[at_ - 1].is("not") && at_ > 1;
  const Token& is_word = tokens_[at_ - (not_before ? 2 : 1)];
  const bool after_is = is_word.is("is");
  const SpokenRelation* first = after_is ? behind_is.data() : behind_value.data();
  const std::size_t count = after_is ? behind_is.size() : behind_value.size();
  const Token& next = ahead(1);
  const bool value_follows = next.kind == Token::Kind::number || next.is("(") ||
                             (next.kind == Token::Kind::word && !is_grammar_word(next.text));
  for (const SpokenRelation* word = first; word != first + count; ++word) {
    if (now().text != word->first || (word->before == Before::second && !next.is(word->second)) ||
        (word->before == Before::value && !value_follows)) {
      continue;
    }
    const std::size_t begin = after_is ? is_word.begin : now().begin;
    const std::size_t end = word->before == Before::second ? next.end : now().end;
    fail("refused-spelling", range(begin, end), {source_.scalar.substr(begin, end - begin), std::string(word->right)});
    return true;
  }
  return false;
}

}  // namespace headgate::expression
