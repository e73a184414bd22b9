#include "document/read.hpp"

#include <iterator>
#include <string>

#include "document/read_bytes.hpp"
#include "document/read_lines.hpp"
#include "document/read_tree.hpp"

namespace headgate::document {

namespace {

std::optional<Node> read_text(std::string_view written, const Caps& caps, Findings& found) {
  if (written.size() > caps.file_bytes || written.size() >= text::no_file) {
    found.add("yaml-file-too-long", 0, 0, {std::to_string(written.size()), std::to_string(caps.file_bytes)});
    return std::nullopt;
  }
  std::string text(written);
  if (!check_bytes(text, found)) return std::nullopt;
  const std::optional<Offset> end = check_lines(text, caps, found);
  if (!end) return std::nullopt;
  text.resize(*end);
  return read_tree(text, caps, found);
}

}  // namespace

std::optional<Node> read(const text::Sources& sources, text::FileId file, const Caps& caps, text::Diagnostics& found) {
  Findings findings;
  findings.file = file;
  findings.cap = caps.diagnostics;
  const std::string_view written = sources.text(file);
  std::optional<Node> tree = read_text(written, caps, findings);

  text::settle(findings.list);
  if (findings.unlisted > 0) {
    const auto end = static_cast<Offset>(written.size());
    findings.list.push_back(
        text::say("yaml-more-problems", findings.range(end, end), {std::to_string(findings.unlisted)}));
  }
  found.insert(found.end(), std::make_move_iterator(findings.list.begin()),
               std::make_move_iterator(findings.list.end()));
  return tree;
}

}  // namespace headgate::document
