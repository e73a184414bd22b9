// The documents that can be cited, by the project and by a place, and what a citation means in them.
// Not for other layers.
//
//   documents.cite(node "irc-2018 P2903.3.1, upc-2024 608.2", found)   -> two citations
//   documents.cite(node "irc-2018 P2903.33.1", found)                  -> none, and "unknown-section"
//   documents.under(citation of irc-2018, irc-2021 which carries it) -> "irc-2021 P2903.3.1", carried from irc-2018
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "rulebook/citation.hpp"

namespace headgate::rulebook {

class Documents {
 public:
  explicit Documents(std::vector<SourceDocument> all) : all_(std::move(all)) {}

  const std::vector<SourceDocument>& all() const { return all_; }
  const SourceDocument* find(std::string_view id) const;

  // `DOCUMENT SECTION`, several separated by commas; `practice` alone. Those that cannot be found are said and left out.
  std::vector<Citation> cite(const document::Node& node, text::Diagnostics& found) const;
  std::vector<Citation> cite(std::string_view words, const text::Range& range, text::Diagnostics& found) const;

  // The citation as it stands under an adopted document, its own or one that carries it without listing the
  // section itself; nullopt when `document` does not take it in.
  std::optional<Citation> under(const Citation& citation, std::string_view document) const;

  // Documents and practice, to find the nearest.
  std::vector<std::string> ids() const;

 private:
  struct Listed {
    const SourceDocument* document = nullptr;
    const Section* section = nullptr;
  };
  bool carries(const SourceDocument& document, std::string_view earlier) const;
  Listed section(const SourceDocument& document, std::string_view name) const;
  std::optional<Citation> cite_one(std::string_view words, const text::Range& range, text::Diagnostics& found) const;

  std::vector<SourceDocument> all_;
};

// The files `sources/1`, then the place's own `sources` (may be nullptr).
Documents read_documents(const std::vector<const document::Node*>& files, const document::Node* of_place,
                         std::string_view place, text::Diagnostics& found);

}  // namespace headgate::rulebook
