#include "evaluate/walk.hpp"

#include <algorithm>

namespace headgate::evaluate {

namespace {

struct Standing {
  site::ListId list;
  std::size_t index;  // in the list's items
};

std::optional<Standing> stands(const site::Site& site, site::ElementId element) {
  const auto& at = site.elements[element];
  if (at.walk == site::nowhere) return std::nullopt;
  return Standing{at.walk, at.place - 1};
}

// The way from the main down to an element: for each walk list on it, where it is left.
std::vector<Standing> way(const site::Site& site, site::ElementId element) {
  std::vector<Standing> result;
  while (element != site::nowhere) {
    if (const auto here = stands(site, element)) {
      result.insert(result.begin(), *here);
      element = site.lists[here->list].owner;
    } else {
      element = site.elements[element].parent;
    }
  }
  return result;
}

// Whether what stands from the place `first` to just before `to` is all passive.
bool only_passive(const site::Site& site, const vocabulary::Vocabulary& vocabulary, std::size_t first,
                  const Standing& to) {
  for (std::size_t i = first; i < to.index; ++i) {
    const auto element = site.lists[to.list].items[i];
    if (!vocabulary.shapes[site.elements[element].shape].passive) return false;
  }
  return true;
}

}  // namespace

Compared comes(const site::Site& site, const vocabulary::Vocabulary& vocabulary, site::ElementId a, site::ElementId b,
               bool before, bool right) {
  if (!before) std::swap(a, b);
  const auto way_a = way(site, a);
  const auto way_b = way(site, b);
  if (way_a.empty() || way_b.empty()) return {Truth::undecided, Why::missing};
  const Standing& end = way_a.back();
  const auto meets = std::find_if(way_b.begin(), way_b.end(), [&](const Standing& s) { return s.list == end.list; });
  if (meets == way_b.end()) {
    // Neither way runs through the other's list: certain only when both start from one trunk.
    return {way_a.front().list == way_b.front().list ? Truth::no : Truth::undecided,
            way_a.front().list == way_b.front().list ? Why::known : Why::missing};
  }
  const bool goes_on = &*meets != &way_b.back();  // b lies on a branch that leaves at `meets`
  const bool ahead = end.index < meets->index || (goes_on && end.index == meets->index && a != b);
  if (!ahead || !right) return {quantity::truth(ahead), Why::known};
  if (goes_on && (end.index != meets->index || !only_passive(site, vocabulary, 0, way_b.back())))
    return {Truth::no, Why::known};
  if (!only_passive(site, vocabulary, end.index + 1, *meets)) return {Truth::no, Why::known};
  const bool finished = site.lists[way_b.back().list].complete && site.lists[end.list].complete;
  return finished ? Compared{Truth::yes, Why::known} : Compared{Truth::undecided, Why::unfinished};
}

}  // namespace headgate::evaluate
