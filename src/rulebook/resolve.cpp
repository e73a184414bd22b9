#include <algorithm>
#include <set>

#include "rulebook/chains.hpp"
#include "rulebook/given.hpp"
#include "rulebook/keys.hpp"
#include "rulebook/order.hpp"
#include "rulebook/place.hpp"
#include "rulebook/rules.hpp"
#include "rulebook/standing.hpp"
#include "rulebook/tables.hpp"
#include "vocabulary/names.hpp"

namespace headgate::rulebook {

using document::Node;
using quantity::Day;
using text::Diagnostics;
using text::say;
using vocabulary::Vocabulary;

namespace {

// The last change in force that says what is adopted.
Adoption adoption_of(const Place& place, const std::vector<std::size_t>& in_force, const Documents& documents,
                     Diagnostics& found) {
  Adoption adoption{&documents, place.id, {}, place.country};
  if (const Node* country = place.node->find("country")) {
    std::vector<std::string> known;
    for (const SourceDocument& each : documents.all()) {
      const bool fresh = std::find(known.begin(), known.end(), each.binds_in) == known.end();
      if (!each.binds_in.empty() && fresh) known.push_back(each.binds_in);
    }
    one_of(*country, known, "place-country", found);
  }
  for (const Change& change : place.changes) {
    const Node* adopts = change.node->find("adopts");
    if (!adopts || (adopts->is_scalar() && adopts->scalar == "nothing")) continue;
    for (const Node* word : words_of(*adopts, found)) one_of(*word, documents.ids(), "unknown-document", found, 0);
  }
  Diagnostics said;
  for (const std::size_t i : in_force) {
    if (const Node* adopts = place.changes[i].node->find("adopts")) adoption.adopts = adopted_ids(*adopts, said);
  }
  return adoption;
}

// Formulas that another place added are no business of this one.
bool ours(const vocabulary::Field& field, const Library& library, const Place& place) {
  const text::FileId file = field.formula->range.file;
  if (file == place.node->range.file) return true;
  return std::any_of(library.vocabulary.begin(), library.vocabulary.end(),
                     [&](const Node* each) { return each->range.file == file; });
}

void compile_derived(Rulebook& book, const Declarations& all, const Library& library, const Place& place,
                     Diagnostics& found) {
  const Vocabulary& vocabulary = *book.vocabulary;
  std::set<const Node*> said;  // a formula of a group is wrong once, not for each of its kinds
  for (std::size_t s = 0; s < vocabulary.shapes.size(); ++s) {
    const auto shape = static_cast<vocabulary::ShapeId>(s);
    const auto& fields = vocabulary.shapes[s].fields;
    for (std::size_t f = 0; f < fields.size(); ++f) {
      if (!fields[f].formula || !ours(fields[f], library, place)) continue;
      const auto& type = fields[f].type;
      const auto wanted = type.kind == vocabulary::Type::Kind::nothing ? std::nullopt : std::optional(type);
      const std::size_t before = found.size();
      auto tree = expression::compile(*fields[f].formula, scope_of(all, vocabulary, shape, fields[f]), wanted, found);
      if (found.size() > before && !said.insert(fields[f].formula).second) {
        found.erase(found.begin() + static_cast<std::ptrdiff_t>(before), found.end());
      }
      if (tree) book.derived.push_back({shape, static_cast<vocabulary::FieldId>(f), std::move(*tree)});
    }
  }
}

// Derived values so that each comes after what it needs.
void put_in_order(Rulebook& book, Diagnostics& found) {
  const std::vector<std::size_t> order = Needs(book).order(found);
  std::vector<Derived> derived;
  for (const std::size_t i : order) derived.push_back(std::move(book.derived[i]));
  book.derived = std::move(derived);
}

Layer layer_of(std::size_t change, const Place& place, const text::Range& range) {
  if (change != of_project) return place.changes[change].layer;
  Layer layer;
  layer.range = range;
  return layer;
}

// The rules, and what each reads before anything of it is left out.
std::vector<std::vector<Use>> read_rules(Rulebook& book, const std::vector<WrittenRule>& written, const Place& place,
                                         const Needs& needs, const RuleReader& reader) {
  const std::vector<bool> without = valueless(book.limits, reader.vocabulary);
  std::vector<std::vector<Use>> uses;
  for (const WrittenRule& each : written) {
    Rule rule = read_rule(each, reader);
    uses.push_back(uses_of(rule, reader.vocabulary));
    rule.layers.push_back(layer_of(each.change, place, rule.range));
    for (const std::size_t change : each.changed_by) rule.layers.push_back(layer_of(change, place, {}));
    if (each.dropped) rule.layers.push_back(layer_of(each.dropped_by, place, {}));
    leave_out_exceptions(rule, each, reader.adoption);
    if (touched_at(each) && rule.adopted.empty() && !rule.sources.empty()) {
      reader.found.push_back(
          say("change-without-effect", touched_at(each)->key_range, {each.id, words_of(rule.sources)}));
    }
    set_standing(rule, each, place, book.day, without, reader.all, reader.vocabulary);
    rule.limits = needs.limits_behind(uses_of(rule, reader.vocabulary), true);
    book.rules.push_back(std::move(rule));
  }
  return uses;
}

}  // namespace

Rulebook resolve(const Library& library, const Vocabulary& vocabulary, const Place& place, std::optional<Day> day,
                 Diagnostics& found, const std::vector<Order>& orders) {
  const std::size_t before = found.size();
  const std::vector<std::size_t> in_force = changes_in_force(place, day);
  const Documents documents = read_documents(library.sources, place.node->find("sources"), place.id, found);
  const Adoption adoption = adoption_of(place, in_force, documents, found);

  Rulebook book;
  book.vocabulary = &vocabulary;
  book.place = place.id;
  book.title = place.title;
  book.also = place.also;
  book.day = day;
  book.adopts = adoption.adopts;
  book.documents = documents.all();
  book.given = read_given(place, in_force, vocabulary, found);
  book.closed = read_closed_days(place, found);

  const auto limits = collect_limits(library, &place, found);
  std::vector<Table> tables = read_tables(table_files(library, &place, in_force, found), documents, vocabulary, found);
  Declarations all = declare(limits, std::move(tables), vocabulary, nullptr, found);
  fill_chains(all, limits, place, in_force, adoption, vocabulary, orders, found);
  book.limits = all.limits;
  book.tables = all.tables;
  book.ladders = book.table("size-ladder");
  book.size_match = book.table("size-equivalence");
  compile_derived(book, all, library, place, found);
  put_in_order(book, found);

  const Needs needs(book);
  const RuleReader reader{all, vocabulary, documents, adoption, found};
  const auto rules = collect_rules(library, place, in_force, documents, found);
  const auto uses = read_rules(book, rules, place, needs, reader);
  forget_echoes(found, before);
  // What a broken expression would have used is not known.
  if (!text::has_errors(found)) say_unused(book, rules, uses, needs, reader);
  return book;
}

void say_unknown_limits(const std::vector<Order>& orders, const std::vector<const Rulebook*>& books,
                        Diagnostics& found) {
  for (const Order& order : orders) {
    const std::string& name = order.limit.scalar;
    if (std::any_of(books.begin(), books.end(), [&](const Rulebook* book) { return book->limit(name).has_value(); }))
      continue;
    std::vector<std::string> known;
    for (const Rulebook* book : books) {
      for (const Limit& limit : book->limits) known.push_back(limit.signature.name);
    }
    found.push_back(say("no-such-limit", order.limit.range, {name, vocabulary::offer(name, known, 0)}));
  }
}

std::optional<expression::Tree> compile(const Rulebook& book, const document::Node& written, text::Diagnostics& found) {
  std::vector<expression::LimitSignature> limits;
  std::vector<expression::TableSignature> tables;
  for (const auto& limit : book.limits) limits.push_back(limit.signature);
  for (const auto& table : book.tables) tables.push_back(table.signature);
  expression::Scope scope;
  scope.vocabulary = book.vocabulary;
  scope.limits = &limits;
  scope.tables = &tables;
  return expression::compile(written, scope, std::nullopt, found);
}

}  // namespace headgate::rulebook
