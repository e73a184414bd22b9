#include <set>

#include "rulebook/documents.hpp"
#include "rulebook/keys.hpp"

namespace headgate::rulebook {

using document::Entry;
using document::Node;
using text::Diagnostics;
using text::say;

namespace {

const Names kinds = {
    "model code", "statute", "ordinance", "utility rules", "standard", "handbook", "manufacturer's instructions",
    "practice"};
// In the order of Seen.
const Names ways_seen = {"adopted text", "other edition", "secondary", "from memory"};

Seen read_seen(const Node& map, Seen otherwise, Diagnostics& found) {
  const Node* node = map.find("seen");
  if (!node) return otherwise;
  const auto seen = one_of(*node, ways_seen, "seen-unknown", found);
  return seen ? static_cast<Seen>(*seen) : otherwise;
}

Section read_section(const Entry& entry, Seen seen, Diagnostics& found) {
  Section section;
  section.seen = seen;
  section.range = entry.key_range;
  if (entry.value.is_scalar()) {
    section.about = entry.value.scalar;
    return section;
  }
  if (!expect_map(entry.value, "A section", found)) return section;
  expect_keys(entry.value, {"about", "seen", "where", "doubt"}, "A section", found);
  section.about = text_of(entry.value, "about", found);
  section.where = text_of(entry.value, "where", found);
  section.doubt = text_of(entry.value, "doubt", found);
  section.seen = read_seen(entry.value, seen, found);
  return section;
}

void check_section_name(const std::string& name, const text::Range& range, Diagnostics& found) {
  if (name.find(',') != std::string::npos || name.empty()) found.push_back(say("section-name", range, {name}));
}

// A map section -> what is known of it, or a plain list of sections.
void read_sections(SourceDocument& document, const Node& node, Seen seen, Diagnostics& found) {
  if (node.is_map()) {
    for (const Entry& entry : node.entries) {
      check_section_name(entry.key, entry.key_range, found);
      document.sections.emplace(entry.key, read_section(entry, seen, found));
    }
    return;
  }
  for (const Node* word : words_of(node, found)) {
    check_section_name(word->scalar, word->range, found);
    Section section;
    section.seen = seen;
    section.range = word->range;
    const auto [before, fresh] = document.sections.emplace(word->scalar, section);
    if (!fresh) {
      found.push_back(
          say("section-twice", word->range, {document.id, word->scalar}, before->second.range, "listed here before"));
    }
  }
}

SourceDocument read_document(const Entry& entry, std::string_view place, Diagnostics& found) {
  SourceDocument document;
  document.id = entry.key;
  document.place = place;
  document.range = entry.key_range;
  if (!expect_map(entry.value, "A document", found)) return document;
  const Node& node = entry.value;
  expect_keys(node, {"title", "publisher", "edition", "kind", "binds-in", "carries", "seen", "sections"}, "A document",
              found);
  document.title = text_of(node, "title", found);
  document.publisher = text_of(node, "publisher", found);
  document.edition = text_of(node, "edition", found);
  document.kind = text_of(node, "kind", found);
  document.carries = text_of(node, "carries", found);
  document.binds_in = text_of(node, "binds-in", found);
  if (!document.binds_in.empty() && !document::is_name(document.binds_in))
    found.push_back(say("rulebook-name", node.find("binds-in")->range, {document.binds_in}));
  if (document.title.empty()) found.push_back(say("document-needs", entry.key_range, {entry.key, "title"}));
  if (const Node* kind = node.find("kind")) {
    one_of(*kind, kinds, "document-kind", found);
  } else {
    found.push_back(say("document-needs", entry.key_range, {entry.key, "kind"}));
  }
  const Seen seen = read_seen(node, Seen::from_memory, found);
  if (const Node* sections = node.find("sections")) read_sections(document, *sections, seen, found);
  return document;
}

class ReadingDocuments {
 public:
  explicit ReadingDocuments(Diagnostics& found) : found_(found) {}

  void read(const Node& documents, std::string_view place) {
    for (const Entry& entry : documents.entries) {
      if (!expect_name(entry, found_)) continue;
      SourceDocument document = read_document(entry, place, found_);
      if (document.id == "practice") continue;  // only its title is ours to read
      if (const SourceDocument* before = find(document.id)) {
        found_.push_back(say("document-twice", entry.key_range, {document.id}, before->range, "declared here before"));
        continue;
      }
      carries_.push_back(entry.value.is_map() ? entry.value.find("carries") : nullptr);
      all_.push_back(std::move(document));
    }
  }

  std::vector<SourceDocument> finish() {
    for (std::size_t i = 0; i < all_.size(); ++i) check_carries(all_[i], carries_[i]);
    return std::move(all_);
  }

 private:
  SourceDocument* find(std::string_view id) {
    for (SourceDocument& each : all_) {
      if (each.id == id) return &each;
    }
    return nullptr;
  }

  void check_carries(SourceDocument& document, const Node* node) {
    if (document.carries.empty() || !node) return;
    if (!find(document.carries)) {
      one_of(*node, ids(), "unknown-document", found_, 0);
      document.carries.clear();
      return;
    }
    std::string path = document.id;
    std::set<std::string> met{document.id};
    for (const SourceDocument* at = find(document.carries); at; at = find(at->carries)) {
      path += " -> " + at->id;
      if (at->id == document.id) {
        found_.push_back(say("carries-circle", node->range, {path}));
        document.carries.clear();
        return;
      }
      if (!met.insert(at->id).second) return;  // a circle further on is said there
    }
  }

  Names ids() const {
    Names ids;
    for (const SourceDocument& each : all_) ids.push_back(each.id);
    return ids;
  }

  Diagnostics& found_;
  std::vector<SourceDocument> all_;
  std::vector<const Node*> carries_;
};

}  // namespace

Documents read_documents(const std::vector<const Node*>& files, const Node* of_place, std::string_view place,
                         Diagnostics& found) {
  ReadingDocuments reading(found);
  for (const Node* file : files) {
    if (!expect_map(*file, "A sources file", found)) continue;
    expect_keys(*file, {"format", "documents"}, "A sources file", found);
    if (const Node* documents = map_of(*file, "documents", found)) reading.read(*documents, "");
  }
  if (of_place && expect_map(*of_place, "\"sources\"", found)) reading.read(*of_place, place);
  return Documents(reading.finish());
}

}  // namespace headgate::rulebook
