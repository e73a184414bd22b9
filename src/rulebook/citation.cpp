#include "rulebook/citation.hpp"

#include "rulebook/documents.hpp"
#include "rulebook/keys.hpp"
#include "vocabulary/names.hpp"

namespace headgate::rulebook {

using text::Diagnostics;
using text::Range;
using text::say;

std::string_view words(Seen seen) {
  switch (seen) {
    case Seen::adopted_text: return "adopted text";
    case Seen::other_edition: return "other edition";
    case Seen::secondary: return "secondary";
    case Seen::from_memory: return "from memory";
    case Seen::practice: return "common practice";
  }
  return "";
}

std::string Citation::words() const {
  if (document == "practice") return "common practice, no published source";
  if (document.empty()) return "";  // of a paper
  return document + " " + section;
}

std::string words_of(const std::vector<Citation>& citations) {
  std::string words;
  for (const Citation& each : citations) words += (words.empty() ? "" : ", ") + each.words();
  return words;
}

const SourceDocument* Documents::find(std::string_view id) const {
  for (const SourceDocument& each : all_) {
    if (each.id == id) return &each;
  }
  return nullptr;
}

std::vector<std::string> Documents::ids() const {
  std::vector<std::string> ids{"practice"};
  for (const SourceDocument& each : all_) ids.push_back(each.id);
  return ids;
}

Documents::Listed Documents::section(const SourceDocument& document, std::string_view name) const {
  const SourceDocument* at = &document;
  // A circle of `carries` was said when the documents were read; here it only must not be walked for ever.
  for (std::size_t steps = 0; at && steps <= all_.size(); ++steps) {
    const auto listed = at->sections.find(std::string(name));
    if (listed != at->sections.end()) return {at, &listed->second};
    at = find(at->carries);
  }
  return {};
}

namespace {

Names sections_of(const Documents& documents, const SourceDocument& document) {
  Names names;
  const SourceDocument* at = &document;
  for (std::size_t steps = 0; at && steps <= documents.all().size(); ++steps) {
    for (const auto& [name, section] : at->sections) names.push_back(name);
    at = documents.find(at->carries);
  }
  return names;
}

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && (text.front() == ' ' || text.front() == '\n')) text.remove_prefix(1);
  while (!text.empty() && (text.back() == ' ' || text.back() == '\n')) text.remove_suffix(1);
  return text;
}

void fill(Citation& citation, const SourceDocument& document, const SourceDocument& lists, const Section& section) {
  citation.document = document.id;
  citation.carried_from = lists.id == document.id ? "" : lists.id;
  citation.seen = section.seen;
  citation.where = section.where;
  citation.doubt = section.doubt;
}

}  // namespace

std::optional<Citation> Documents::cite_one(std::string_view words, const Range& range, Diagnostics& found) const {
  Citation citation;
  citation.range = range;
  const std::size_t space = words.find(' ');
  const std::string_view id = words.substr(0, space);
  if (id == "practice") {
    citation.document = "practice";
    if (space == std::string_view::npos) return citation;
    found.push_back(say("practice-section", range));
    return std::nullopt;
  }
  const SourceDocument* document = find(id);
  if (!document) {
    found.push_back(
        say("unknown-document", text::part(range, 0, id.size()), {std::string(id), vocabulary::offer(id, ids(), 0)}));
    return std::nullopt;
  }
  if (space == std::string_view::npos) {
    found.push_back(say("citation-without-section", range, {std::string(id)}));
    return std::nullopt;
  }
  citation.section = trimmed(words.substr(space));
  const Listed listed = section(*document, citation.section);
  if (!listed.section) {
    found.push_back(
        say("unknown-section", text::part(range, words.size() - citation.section.size(), citation.section.size()),
            {std::string(id), citation.section, vocabulary::offer(citation.section, sections_of(*this, *document), 6)},
            document->range, "the document is declared here"));
    return std::nullopt;
  }
  fill(citation, *document, *listed.document, *listed.section);
  return citation;
}

std::vector<Citation> Documents::cite(std::string_view words, const Range& range, Diagnostics& found) const {
  std::vector<Citation> citations;
  std::size_t begin = 0;
  while (begin <= words.size()) {
    std::size_t end = words.find(',', begin);
    if (end == std::string_view::npos) end = words.size();
    const std::string_view one = trimmed(words.substr(begin, end - begin));
    if (one.empty()) {
      found.push_back(say("citation-empty", range));
    } else {
      const auto offset = static_cast<std::size_t>(one.data() - words.data());
      if (auto citation = cite_one(one, text::part(range, offset, one.size()), found)) citations.push_back(*citation);
    }
    begin = end + 1;
  }
  return citations;
}

std::vector<Citation> Documents::cite(const document::Node& node, Diagnostics& found) const {
  if (node.is_scalar()) return cite(node.scalar, node.range, found);
  std::vector<Citation> citations;
  for (const document::Node* word : words_of(node, found)) {
    for (Citation& each : cite(word->scalar, word->range, found)) citations.push_back(std::move(each));
  }
  return citations;
}

bool Documents::carries(const SourceDocument& document, std::string_view earlier) const {
  const SourceDocument* at = &document;
  for (std::size_t steps = 0; at && steps <= all_.size(); ++steps) {
    if (at->id == earlier) return true;
    at = find(at->carries);
  }
  return false;
}

std::optional<Citation> Documents::under(const Citation& citation, std::string_view document) const {
  if (citation.document == document) return citation;
  const SourceDocument* at = find(document);
  const SourceDocument* cited = find(citation.document);
  if (!at || !cited || !carries(*at, citation.document)) return std::nullopt;
  const Listed listed = section(*at, citation.section);
  if (!listed.section || section(*cited, citation.section).section != listed.section) return std::nullopt;
  Citation carried = citation;
  fill(carried, *at, *listed.document, *listed.section);
  return carried;
}

}  // namespace headgate::rulebook
