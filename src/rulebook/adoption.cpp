#include "rulebook/adoption.hpp"

#include <algorithm>

namespace headgate::rulebook {

std::optional<Adoption::Bound> Adoption::bound(const Citation& citation) const {
  // Own documents, then the adopted in order (what a document lists itself before what it carries), then what is law in
  // the whole country, then practice.
  if (citation.document == "practice") return Bound{2 * adopts.size() + 2, citation};
  const SourceDocument* document = documents->find(citation.document);
  if (document && !document->place.empty() && document->place == place) return Bound{0, citation};
  for (std::size_t i = 0; i < adopts.size(); ++i) {
    const auto under = documents->under(citation, adopts[i]);
    if (under) return Bound{2 * i + (under->carried_from.empty() ? 1 : 2), *under};
  }
  const bool law = document && !document->binds_in.empty() && document->binds_in == country;
  return law ? std::optional<Bound>(Bound{2 * adopts.size() + 1, citation}) : std::nullopt;
}

std::vector<Citation> Adoption::binding(const std::vector<Citation>& citations) const {
  std::vector<Citation> result;
  for (const Citation& each : citations) {
    const auto here = bound(each);
    if (!here) continue;
    const auto same = [&](const Citation& other) {
      return other.document == here->citation.document && other.section == here->citation.section;
    };
    if (std::none_of(result.begin(), result.end(), same)) result.push_back(here->citation);
  }
  return result;
}

}  // namespace headgate::rulebook
