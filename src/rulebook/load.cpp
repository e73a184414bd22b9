#include "rulebook/load.hpp"

#include "rulebook/keys.hpp"
#include "rulebook/limits.hpp"
#include "rulebook/tables.hpp"

namespace headgate::rulebook {

using document::Node;
using text::Diagnostics;
using text::say;

namespace {

// In the order of the members of Library.
const Names formats = {"vocabulary/1", "sources/1", "tables/1", "rules/1"};

}  // namespace

bool add(Library& library, const Node& tree, Diagnostics& found) {
  const Node* format = tree.is_map() ? tree.find("format") : nullptr;
  if (!format) {
    found.push_back(say("format-missing", tree.range, {join(formats)}));
    return false;
  }
  const auto which = one_of(*format, formats, "format-unknown", found);
  if (!which) return false;
  std::vector<const Node*>* const files[] = {&library.vocabulary, &library.sources, &library.tables, &library.rules};
  files[*which]->push_back(&tree);
  return true;
}

// Derived values without a stated type need the limits' and tables' types, those the vocabulary's names: what is wrong
// with limits and tables is said when a place is resolved.
vocabulary::Vocabulary read_vocabulary(const Library& library, const std::vector<const Place*>& places,
                                       Diagnostics& found) {
  std::vector<const Node*> files = library.vocabulary;
  for (const Place* place : places) {
    if (place->vocabulary) files.push_back(place->vocabulary);
  }
  vocabulary::Vocabulary vocabulary = vocabulary::load(files, found);
  for (std::size_t i = 0; i < places.size() + 1; ++i) {
    const Place* place = i < places.size() ? places[i] : nullptr;
    if (!place && !places.empty()) break;
    Diagnostics quiet;
    const Documents documents =
        read_documents(library.sources, place ? place->node->find("sources") : nullptr, place ? place->id : "", quiet);
    std::vector<Table> tables = read_tables(table_files(library, place, {}, quiet), documents, vocabulary, quiet);
    const auto written = collect_limits(library, place, quiet);
    const bool last = i + 1 >= places.size();
    Diagnostics problems;
    declare(written, std::move(tables), vocabulary, &vocabulary, problems);
    for (const auto& each : problems) {
      if (last && each.id == "derived-needs-type") found.push_back(each);
    }
  }
  return vocabulary;
}

}  // namespace headgate::rulebook
