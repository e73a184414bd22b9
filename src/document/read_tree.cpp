#include "document/read_tree.hpp"

#include <algorithm>
#include <exception>
#include <sstream>
#include <string>
#include <utility>

#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/mark.h>
#include <yaml-cpp/parser.h>

#include "document/read_bytes.hpp"
#include "document/read_frame.hpp"
#include "document/read_scalar.hpp"
#include "document/read_syntax.hpp"

namespace headgate::document {

namespace {

struct Stop {};  // thrown through yaml-cpp when a cap is reached; caught below

// YAML's words for nothing, which here are text like any other; 0 when none stands at `at`.
Offset null_word(std::string_view text, Offset at) {
  for (const std::string_view word : {"null", "Null", "NULL", "~"}) {
    const auto end = at + static_cast<Offset>(word.size());
    const char next = at_or_end(text, end);
    const bool ends = is_space(next) || next == ',' || next == ':' || next == ']' || next == '}';
    if (text.substr(at, word.size()) == word && ends) return static_cast<Offset>(word.size());
  }
  return 0;
}

bool is_key_colon(std::string_view text, Offset at) {
  return at_or_end(text, at) == ':' && is_space(at_or_end(text, at + 1));
}

// Past the more indented lines below a block's header.
Offset skip_block(std::string_view text, Offset header) {
  const Offset own = line_begin(text, header);
  const Offset indent = skip_blanks(text, own) - own;
  Offset after = line_end(text, header);
  for (std::size_t feed = text.find('\n', after); feed < text.size(); feed = text.find('\n', feed + 1)) {
    const auto line = static_cast<Offset>(feed + 1);
    const Offset content = skip_blanks(text, line);
    const bool blank = is_line_end(at_or_end(text, content));
    if (!blank && content - line <= indent) break;
    if (!blank) after = line_end(text, line);
  }
  return after;
}

// The inheritance is yaml-cpp's demand. Its marks count bytes.
class TreeReader final : public YAML::EventHandler {
 public:
  TreeReader(std::string_view text, const Caps& caps, Findings& found) : text_(text), caps_(caps), found_(found) {}

  std::optional<Node> read();

  void OnDocumentStart(const YAML::Mark& /*mark*/) override {}
  void OnDocumentEnd() override {}
  void OnNull(const YAML::Mark& mark, YAML::anchor_t anchor) override;
  void OnAlias(const YAML::Mark& mark, YAML::anchor_t anchor) override;
  void OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                const std::string& value) override;
  void OnSequenceStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                       YAML::EmitterStyle::value style) override;
  void OnSequenceEnd() override { close(true); }
  void OnMapStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                  YAML::EmitterStyle::value style) override;
  void OnMapEnd() override { close(true); }

 private:
  void read_events();
  Offset place(const YAML::Mark& mark) const;
  Offset refuse_properties(Offset at);
  void count_node(Offset at);
  bool expects_key() const { return !frames_.empty() && frames_.back().node.is_map() && !frames_.back().waiting; }

  void open(Node::Kind kind, Offset at, bool flow);
  void close(bool complete);
  bool pass_closer(char closer);
  void add_scalar(Offset begin, std::string_view value);
  void put(Node node, const Token& token);
  void miss(Offset at, Offset gap);

  Node scalar_node(Offset begin, std::string_view value);
  void check_scalar(const Node& node, const ScalarText& where, Offset begin);
  void check_rest_of_line(const Node& node, Offset after);

  void check_left_over();

  std::string_view text_;

  Offset cursor_ = 0;  // first byte after everything taken so far
  const Caps& caps_;
  Findings& found_;
  std::vector<Frame> frames_;
  std::optional<Node> root_;
  std::size_t nodes_ = 0;
};

std::optional<Node> TreeReader::read() {
  try {
    read_events();
    check_left_over();
  } catch (const Stop&) {
  } catch (const YAML::Exception& problem) {
    Syntax syntax{text_, place(problem.mark), cursor_, frames_};
    explain_syntax(syntax, problem.msg, found_);
  } catch (const std::exception&) {
    found_.add("yaml-syntax", cursor_, cursor_);
  }
  while (!frames_.empty()) close(false);
  return std::move(root_);
}

void TreeReader::read_events() {
  const Offset first = skip_gap(text_, 0);
  if (text_.substr(first, 3) == "---") cursor_ = first + 3;
  std::istringstream stream{std::string(text_)};
  YAML::Parser parser(stream);
  parser.HandleNextDocument(*this);
}

Offset TreeReader::place(const YAML::Mark& mark) const {
  if (mark.pos < 0) return cursor_;
  return static_cast<Offset>(std::min(static_cast<std::size_t>(mark.pos), text_.size()));
}

// Anchors and tags stand before a node, as part of it. Returns where the node itself begins.
Offset TreeReader::refuse_properties(Offset at) {
  for (char first = at_or_end(text_, at); first == '&' || first == '!'; first = at_or_end(text_, at)) {
    const Offset end = skip_word(text_, at);
    found_.add(first == '&' ? "yaml-anchor" : "yaml-tag", at, end, {shortened(text_.substr(at, end - at))});
    cursor_ = std::max(cursor_, end);
    at = skip_gap(text_, end);
  }
  return at;
}

void TreeReader::count_node(Offset at) {
  if (++nodes_ <= caps_.nodes) return;
  found_.add("yaml-too-many-nodes", at, at, {std::to_string(caps_.nodes)});
  throw Stop{};
}

void TreeReader::OnNull(const YAML::Mark& mark, YAML::anchor_t /*anchor*/) {
  const Offset at = place(mark);
  const Offset word = null_word(text_, at);
  const bool is_next_key = is_key_colon(text_, skip_blanks(text_, at + word));
  if (word > 0 && (expects_key() || !is_next_key)) {
    add_scalar(at, text_.substr(at, word));
  } else {
    const Offset gap = cursor_;
    miss(refuse_properties(at), gap);
  }
}

void TreeReader::OnAlias(const YAML::Mark& mark, YAML::anchor_t /*anchor*/) {
  const Offset at = place(mark);
  const Offset end = skip_word(text_, at);
  const std::string_view alias = text_.substr(at, end - at);
  found_.add("yaml-alias", at, end, {shortened(alias), in_quotes(alias)});
  add_scalar(at, alias);
}

void TreeReader::OnScalar(const YAML::Mark& mark, const std::string& /*tag*/, YAML::anchor_t /*anchor*/,
                          const std::string& value) {
  const Offset gap = cursor_;
  const Offset begin = refuse_properties(place(mark));
  const char first = at_or_end(text_, begin);
  const bool is_there = !value.empty() || first == '"' || first == '\'' || first == '|' || first == '>';
  if (is_there) {
    add_scalar(begin, value);
  } else {
    miss(begin, gap);
  }
}

void TreeReader::OnSequenceStart(const YAML::Mark& mark, const std::string& /*tag*/, YAML::anchor_t /*anchor*/,
                                 YAML::EmitterStyle::value style) {
  open(Node::Kind::list, refuse_properties(place(mark)), style == YAML::EmitterStyle::Flow);
}

void TreeReader::OnMapStart(const YAML::Mark& mark, const std::string& /*tag*/, YAML::anchor_t /*anchor*/,
                            YAML::EmitterStyle::value style) {
  open(Node::Kind::map, refuse_properties(place(mark)), style == YAML::EmitterStyle::Flow);
}

// yaml-cpp calls itself once a level, after this: stopping here bounds its stack as well as ours.
void TreeReader::open(Node::Kind kind, Offset at, bool flow) {
  if (frames_.size() >= caps_.depth) {
    found_.add("yaml-too-deep", at, at, {std::to_string(caps_.depth)});
    throw Stop{};
  }
  count_node(at);
  Frame frame;
  frame.is_key = expects_key();
  cursor_ = at;

  frame.node.kind = kind;
  frame.node.in_braces = !frames_.empty() && frames_.back().flow;
  frame.node.range = found_.range(at, at);
  frame.flow = flow || frame.node.in_braces;
  if (!frame.flow) frame.column = column(text_, at);
  const char opener = at_or_end(text_, at);
  if (frame.flow && (opener == '{' || opener == '[')) {
    frame.closer = opener == '{' ? '}' : ']';
    ++cursor_;
  }
  frames_.push_back(std::move(frame));
}

void TreeReader::close(bool complete) {
  Frame frame = std::move(frames_.back());
  frames_.pop_back();
  finish(frame, text_, found_);
  if (complete && frame.closer != 0 && !pass_closer(frame.closer) && !text::has_errors(found_.list)) {
    const Offset opener = frame.node.range.begin;
    found_.add("yaml-unclosed-brace", opener, opener + 1,
               {std::string(1, text_[opener]), std::string(1, frame.closer)});
  }
  const Offset begin = frame.node.range.begin;
  frame.node.range.end = std::max(begin, cursor_);
  if (frame.is_key) {
    if (complete) found_.add("yaml-key-not-text", begin, frame.node.range.end);
    frames_.back().waiting = frames_.back().dropped = true;
    frames_.back().key_after = cursor_;
  } else if (complete || frames_.empty() || !expects_key()) {
    put(std::move(frame.node), {begin, begin, cursor_});
  }
}

bool TreeReader::pass_closer(char closer) {
  for (Offset at = skip_gap(text_, cursor_); at < text_.size(); at = skip_gap(text_, at + 1)) {
    if (text_[at] == closer) {
      cursor_ = at + 1;
      return true;
    }
    if (text_[at] != ',' && text_[at] != ':' && text_[at] != '?') break;
  }
  return false;
}

void TreeReader::add_scalar(Offset begin, std::string_view value) {
  count_node(begin);
  Token token;
  token.gap = cursor_;
  token.begin = begin;
  Node node = scalar_node(begin, value);
  token.after = cursor_;
  put(std::move(node), token);
}

void TreeReader::put(Node node, const Token& token) {
  if (frames_.empty()) {
    refuse_glued_colon(node, text_, found_);
    root_ = std::move(node);
  } else if (frames_.back().node.is_list()) {
    take_item(frames_.back(), std::move(node), token, text_, found_);
  } else if (frames_.back().waiting) {
    take_value(frames_.back(), std::move(node), token, text_, found_);
  } else {
    take_key(frames_.back(), std::move(node), token, text_, found_);
  }
}

void TreeReader::miss(Offset at, Offset gap) {
  count_node(at);
  if (frames_.empty()) {
    found_.add("yaml-empty-file", at, at);
  } else if (frames_.back().node.is_list()) {
    cursor_ = std::max(cursor_, miss_item(frames_.back(), at, gap, text_, found_));
  } else if (frames_.back().waiting) {
    cursor_ = std::max(cursor_, miss_value(frames_.back(), text_, found_));
  } else {
    found_.add("yaml-empty-key", at, std::min(at + 1, static_cast<Offset>(text_.size())));
    frames_.back().waiting = frames_.back().dropped = true;
    frames_.back().key_after = at;
  }
}

Node TreeReader::scalar_node(Offset begin, std::string_view value) {
  const char first = at_or_end(text_, begin);
  Node node;
  ScalarText where;
  if (first == '"' || first == '\'') {
    node.style = Node::Style::quoted;
    where = quoted_text(text_, begin);
  } else if (first == '|' || first == '>') {
    node.style = Node::Style::block;
    where = block_text(text_, begin, first == '|' ? value : std::string_view());
    if (first == '>') where.after = skip_block(text_, begin);
  } else {
    where = plain_text(text_, begin, value);
  }
  node.in_braces = !frames_.empty() && frames_.back().flow;
  node.scalar = value;
  node.range = found_.range(where.begin, where.end);
  check_scalar(node, where, begin);
  node.line_offsets = std::move(where.line_offsets);
  cursor_ = where.after;
  return node;
}

void TreeReader::check_scalar(const Node& node, const ScalarText& where, Offset begin) {
  if (node.scalar.size() > caps_.scalar_bytes) {
    found_.add("yaml-text-too-long", begin, begin,
               {std::to_string(node.scalar.size()), std::to_string(caps_.scalar_bytes)});
  }
  if (!where.closed) {
    found_.add("yaml-unclosed-quote", begin, line_end(text_, begin), {std::string(1, text_[begin])});
  } else if (where.spread)
    found_.add("yaml-spread-text", where.begin, where.end);
  if (at_or_end(text_, begin) == '>') found_.add("yaml-folded-block", begin, begin + 1);
  if (node.style == Node::Style::block && node.scalar.empty()) found_.add("yaml-empty-block", begin, begin + 1);
  if (node.style == Node::Style::quoted && holds_invisible(node.scalar)) {
    found_.add("yaml-control-escape", where.begin, where.end);
  }
  if (node.style != Node::Style::block) check_rest_of_line(node, where.after);
}

void TreeReader::check_rest_of_line(const Node& node, Offset after) {
  const Offset hash = skip_blanks(text_, after);
  if (at_or_end(text_, hash) != '#' || is_plain_comment(text_, hash)) return;
  refuse_comment(text_, hash, node.in_braces, node.scalar + std::string(text_.substr(after, hash - after)), found_);
}

void TreeReader::check_left_over() {
  const Offset at = skip_gap(text_, cursor_);
  if (at >= text_.size() || !root_) return;
  if (text_[at] == ':' && root_->is_scalar()) {
    const std::string rest(text_.substr(at + 1, line_end(text_, at) - at - 1));
    found_.add("yaml-colon-needs-space", at, at + 1,
               {shortened(root_->scalar), shortened(in_quotes(root_->scalar) + ": " + rest)});
    return;
  }
  const Offset end = line_end(text_, at);
  found_.add("yaml-left-over", at, end, {shortened(text_.substr(at, end - at))});
}

}  // namespace

std::optional<Node> read_tree(std::string_view text, const Caps& caps, Findings& found) {
  return TreeReader(text, caps, found).read();
}

}  // namespace headgate::document
