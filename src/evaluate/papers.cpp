#include "evaluate/papers.hpp"

#include <algorithm>
#include <string_view>

namespace headgate::evaluate {

using vocabulary::Presence;

namespace {

// One thing asked of a paper; while undecided, with the fact that would settle it.
struct Part {
  Truth truth = Truth::yes;
  Why why = Why::known;
  site::ElementId element = site::nowhere;
  site::FieldId field = 0;
};

// Both; of two undecided the first, of two settled the one that says no.
Part and_then(const Part& a, const Part& b) {
  if (a.truth == Truth::no || b.truth == Truth::yes) return a;
  return a.truth == Truth::yes || b.truth == Truth::no ? b : a;
}

Part settled(bool yes) { return {quantity::truth(yes)}; }

class PaperReader {
 public:
  PaperReader(const site::Site& site, const vocabulary::Vocabulary& vocabulary,
              const std::optional<quantity::Interval>& checked_on)
      : site_(site), vocabulary_(vocabulary), checked_on_(checked_on) {}

  // Left out, an approval is for nothing that is asked here.
  Part is_for(site::ElementId paper, std::string_view wanted) const {
    const auto field = field_of(paper, "for");
    if (!field) return settled(false);
    const auto& slot = site_.slot(paper, *field);
    if (slot.asked_not) return open(paper, *field);
    if (slot.value.presence != Presence::present) return settled(false);
    std::string_view subject = slot.value.text;
    if (const auto slash = subject.find('/'); slash != std::string_view::npos)
      subject = subject.substr(slash + 1);  // authority/rule
    return settled(subject == wanted);
  }

  Part is_by(site::ElementId paper, std::size_t role) const {
    const auto field = field_of(paper, "by");
    if (!field) return settled(false);
    const auto& slot = site_.slot(paper, *field);
    if (slot.value.presence == Presence::unknown) return open(paper, *field);
    if (slot.value.presence == Presence::none) return settled(false);
    const auto named = vocabulary_.role(slot.value.text);
    return settled(named && *named == role);
  }

  // For one element by its address, or as a reference to it; else for all.
  Part lies_at(site::ElementId paper, const std::vector<site::ElementId>& elements) const {
    const auto field = field_of(paper, "at");
    if (!field || elements.empty()) return settled(true);
    const auto& at = site_.slot(paper, *field);
    if (at.value.presence == Presence::unknown && at.asked_not) return open(paper, *field);
    if (at.value.presence != Presence::present) return settled(at.origin == site::Origin::left_out);
    if (field_type(paper, *field).kind == vocabulary::Type::Kind::element) {
      return settled(std::find(elements.begin(), elements.end(), at.value.id) != elements.end());
    }
    return settled(std::any_of(elements.begin(), elements.end(), [&](site::ElementId element) {
      const std::string address = site::address(site_, vocabulary_, element);
      return at.value.text == address || at.value.text == address.substr(0, address.find(' '));
    }));
  }

  Part still_counts(site::ElementId paper) const {
    constexpr double a_day = 1.0;
    const auto field = field_of(paper, "until");
    if (!field) return settled(true);
    const auto& until = site_.slot(paper, *field);
    if (until.origin == site::Origin::left_out || until.value.presence == Presence::none) return settled(true);
    if (until.value.presence == Presence::unknown) return open(paper, *field);
    if (!checked_on_) return day_not_known(paper, *field);
    const Truth in_time = quantity::less_or_equal(*checked_on_, until.value.number, a_day);
    if (in_time == Truth::undecided) return {Truth::undecided, Why::too_close, paper, *field};
    return settled(in_time == Truth::yes);
  }

 private:
  std::optional<site::FieldId> field_of(site::ElementId element, std::string_view name) const {
    return vocabulary_.shapes[site_.elements[element].shape].field(name);
  }
  const vocabulary::Type& field_type(site::ElementId element, site::FieldId field) const {
    return vocabulary_.shapes[site_.elements[element].shape].fields[field].type;
  }

  Part open(site::ElementId element, site::FieldId field) const {
    const bool asked_not = site_.slot(element, field).asked_not;
    return {Truth::undecided, asked_not ? Why::asked_not : Why::missing, element, field};
  }
  Part day_not_known(site::ElementId paper, site::FieldId until) const {
    const auto field = vocabulary_.shapes[vocabulary::root_shape].field("checked-on");
    return field ? open(0, *field) : open(paper, until);
  }

  const site::Site& site_;
  const vocabulary::Vocabulary& vocabulary_;
  const std::optional<quantity::Interval>& checked_on_;
};

}  // namespace

PaperFound find_paper(const site::Site& site, const vocabulary::Vocabulary& vocabulary, const expression::Node& node,
                      const rulebook::Rule* rule, const std::vector<site::ElementId>& elements,
                      const std::optional<quantity::Interval>& checked_on) {
  PaperFound found;
  const auto field = vocabulary.shapes[vocabulary::root_shape].field("papers");
  const auto kind = vocabulary.shape(node.index == 0 ? "approval" : "order");
  if (!field || !kind) return {Truth::undecided, -1, Why::missing};
  const auto list_id = site.slot(0, *field).value.id;
  if (list_id == site::nowhere) return found;
  const auto& list = site.lists[list_id];
  const PaperReader reader(site, vocabulary, checked_on);
  const std::string_view wanted = !node.name.empty() ? std::string_view(node.name)
                                  : rule != nullptr  ? std::string_view(rule->id)
                                                     : "";
  for (const auto element : list.items) {
    if (site.elements[element].shape != *kind) continue;
    const Part it = and_then(and_then(reader.is_for(element, wanted), reader.is_by(element, node.column)),
                             reader.lies_at(element, elements));
    const Part counts = and_then(it, reader.still_counts(element));
    const auto paper = static_cast<std::int32_t>(element);
    if (counts.truth == Truth::yes) return {Truth::yes, paper};
    if (counts.truth == Truth::undecided && found.truth == Truth::no)
      found = {Truth::undecided, paper, counts.why, counts.element, counts.field};
    if (it.truth == Truth::yes && found.paper < 0) found.paper = paper;
  }
  const bool may_be_more = list.stated && !list.closed.test(*kind);
  if (may_be_more && found.truth == Truth::no) found = {Truth::undecided, -1, Why::unfinished, 0, 0, list_id};
  return found;
}

}  // namespace headgate::evaluate
