// Reads arbitrary bytes as a file. Whatever they are: every range lies inside the text and inside its
// parent's, what was accepted stands in the file as the tree says, nothing of it is swallowed but
// comments, and a second read says the same.
#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "document/read.hpp"

namespace {

using namespace headgate;
using document::Node;

void require(bool holds) {
  if (!holds) std::abort();
}

bool inside(const text::Range& inner, const text::Range& outer) {
  return inner.file == outer.file && outer.begin <= inner.begin && inner.begin <= inner.end && inner.end <= outer.end;
}

std::string lines_in_file(const Node& node, std::string_view text) {
  std::string lines;
  std::size_t offset = 0;
  for (const std::uint32_t line : node.line_offsets) {
    const std::size_t length = node.scalar.find('\n', offset) - offset;
    lines += text.substr(line, length < node.scalar.size() ? length : node.scalar.size() - offset);
    if (length < node.scalar.size()) lines += '\n';
    offset += length + 1;
  }
  return lines;
}

void check_scalar(const Node& node, std::string_view text, bool sound) {
  for (std::size_t at = 0; at <= node.scalar.size(); at += 1 + node.scalar.size() / 7) {
    require(inside(node.range_of(at, 3), node.range));
  }
  if (!sound) return;
  const std::string_view written = text.substr(node.range.begin, node.range.end - node.range.begin);
  if (node.style == Node::Style::plain) require(written == node.scalar && !node.scalar.empty());
  const bool escaped = written.find_first_of("\\'") != std::string_view::npos;
  if (node.style == Node::Style::quoted && !escaped) require(written == node.scalar);
  if (node.style == Node::Style::block) require(lines_in_file(node, text) == node.scalar);
}

void check(const Node& node, std::string_view text, bool sound, std::string& dump) {
  require(node.range.begin <= node.range.end && node.range.end <= text.size());
  dump += static_cast<char>('0' + static_cast<int>(node.kind));
  dump += std::to_string(node.range.begin) + "-" + std::to_string(node.range.end) + node.scalar + "\n";
  if (node.is_scalar()) check_scalar(node, text, sound);
  std::uint32_t last = node.range.begin;
  const auto follows = [&](const text::Range& next) {
    require(next.begin <= next.end && next.end <= text.size());
    if (sound) require(inside(next, node.range) && next.begin >= last);
    last = next.end;
  };
  for (const document::Entry& entry : node.entries) {
    follows(entry.key_range);
    follows(entry.value.range);
    require(node.find(entry.key) == &entry.value);
    dump += entry.key + ": ";
    check(entry.value, text, sound, dump);
  }
  for (const Node& item : node.items) {
    follows(item.range);
    check(item, text, sound, dump);
  }
}

void cover(const Node& node, std::string& text) {
  const auto blank = [&](const text::Range& range) {
    for (std::uint32_t at = range.begin; at < range.end; ++at) text[at] = ' ';
  };
  for (const document::Entry& entry : node.entries) {
    blank(entry.key_range);
    cover(entry.value, text);
  }
  for (const Node& item : node.items) cover(item, text);
  if (node.is_scalar()) blank(node.range);
}

// What no scalar covers is blank, a comment or an indicator.
void check_nothing_swallowed(const Node& tree, std::string text) {
  cover(tree, text);
  if (text.substr(0, 3) == "\xEF\xBB\xBF") text.replace(0, 3, "   ");
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (text[at] == '#') at = text.find('\n', at);
    if (at == std::string::npos) break;
    require(std::string_view(" \t\r\n#-:,[]{}|+0123456789\"'").find(text[at]) != std::string_view::npos);
  }
}

bool is_known(std::string_view id) {
  for (const text::Message& message : text::catalogue()) {
    if (message.id == id) return true;
  }
  return false;
}

std::string read_once(const text::Sources& sources, text::FileId file) {
  document::Caps caps;
  caps.file_bytes = 1U << 16U;
  caps.depth = 8;
  caps.scalar_bytes = 400;
  caps.nodes = 300;
  caps.diagnostics = 20;
  text::Diagnostics found;
  const std::optional<Node> tree = document::read(sources, file, caps, found);
  std::string dump;
  for (const text::Diagnostic& each : found) {
    require(is_known(each.id) && each.range.file == file && each.range.begin <= each.range.end);
    require(each.range.end <= sources.text(file).size() && !each.sentence.empty() && !each.hint.empty());
    dump += text::draw(each, sources);
  }
  require(tree || text::has_errors(found));
  if (!tree) return dump;
  check(*tree, sources.text(file), !text::has_errors(found), dump);
  if (!text::has_errors(found)) check_nothing_swallowed(*tree, std::string(sources.text(file)));
  return dump;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  text::Sources sources;
  const text::FileId file = sources.add("fuzz.yaml", std::string(reinterpret_cast<const char*>(data), size));
  require(read_once(sources, file) == read_once(sources, file));
  return 0;
}
