#include "evaluate/papers.hpp"

#include <algorithm>
#include <limits>
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

Part plain_part(bool yes) { return {quantity::truth(yes)}; }

class PaperReader {
 public:
  PaperReader(const site::Site& site, const vocabulary::Vocabulary& vocabulary,
              const std::optional<quantity::Interval>& checked_on)
      : site_(site), vocabulary_(vocabulary), checked_on_(checked_on) {}

  // Left out, an approval is for nothing that is asked here.
  Part is_for(site::ElementId paper, std::string_view wanted) const {
    const auto field = field_of(paper, "for");
    if (!field) return plain_part(false);
    const auto& slot = site_.slot(paper, *field);
    if (slot.asked_not) return open(paper, *field);
    if (slot.value.presence != Presence::present) return plain_part(false);
    std::string_view subject = slot.value.text;
    if (const auto slash = subject.find('/'); slash != std::string_view::npos)
      subject = subject.substr(slash + 1);  // authority/rule
    return plain_part(subject == wanted);
  }

  Part is_by(site::ElementId paper, std::size_t role) const {
    const auto field = field_of(paper, "by");
    if (!field) return plain_part(false);
    const auto& slot = site_.slot(paper, *field);
    if (slot.value.presence == Presence::unknown) return open(paper, *field);
    if (slot.value.presence == Presence::none) return plain_part(false);
    const auto named = vocabulary_.role(slot.value.text);
    return plain_part(named && *named == role);
  }

  // For one element by its address, or as a reference to it; else for all.
  Part lies_at(site::ElementId paper, const std::vector<site::ElementId>& elements) const {
    const auto field = field_of(paper, "at");
    if (!field || elements.empty()) return plain_part(true);
    const auto& at = site_.slot(paper, *field);
    if (at.value.presence == Presence::unknown && at.asked_not) return open(paper, *field);
    if (at.value.presence != Presence::present) return plain_part(at.origin == site::Origin::left_out);
    if (field_type(paper, *field).kind == vocabulary::Type::Kind::element) {
      return plain_part(std::find(elements.begin(), elements.end(), at.value.id) != elements.end());
    }
    return plain_part(std::any_of(elements.begin(), elements.end(), [&](site::ElementId element) {
      const std::string address = site::address(site_, vocabulary_, element);
      return at.value.text == address || at.value.text == address.substr(0, address.find(' '));
    }));
  }

  Part still_counts(site::ElementId paper) const {
    constexpr double a_day = 1.0;
    const auto field = field_of(paper, "until");
    if (!field) return plain_part(true);
    const auto& until = site_.slot(paper, *field);
    if (until.origin == site::Origin::left_out || until.value.presence == Presence::none) return plain_part(true);
    if (until.value.presence == Presence::unknown) return open(paper, *field);
    if (!checked_on_) return day_not_known(paper, *field);
    const Truth in_time = quantity::less_or_equal(*checked_on_, until.value.number, a_day);
    if (in_time == Truth::undecided) return {Truth::undecided, Why::too_close, paper, *field};
    return plain_part(in_time == Truth::yes);
  }

  // Nobody the vocabulary knows gives nothing.
  Part is_by_somebody(site::ElementId paper) const {
    const auto field = field_of(paper, "by");
    if (!field) return plain_part(false);
    const auto& by = site_.slot(paper, *field).value;
    if (by.presence == Presence::unknown) return open(paper, *field);
    return plain_part(by.presence == Presence::present && vocabulary_.role(by.text).has_value());
  }

  const site::Slot* slot(site::ElementId paper, std::string_view name) const {
    const auto field = field_of(paper, name);
    return field ? &site_.slot(paper, *field) : nullptr;
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

bool present(const site::Slot* slot) { return slot != nullptr && slot->value.presence == Presence::present; }

document::Node text_node(const site::Slot& slot) {
  document::Node node;
  node.scalar = std::string(slot.value.text);
  node.range = slot.range;
  return node;
}

// "order of water-superintendent, 2026-09-01, number X"
std::string order_title(const PaperReader& reader, const vocabulary::Vocabulary& vocabulary, site::ElementId paper) {
  std::string title = "order";
  if (const auto* by = reader.slot(paper, "by"); present(by)) {
    const auto role = vocabulary.role(by->value.text);
    title += " of " + (role ? vocabulary.roles[*role].name : std::string(by->value.text));
  }
  if (const auto* dated = reader.slot(paper, "dated"); present(dated)) title += ", " + dated->written;
  if (const auto* number = reader.slot(paper, "number"); present(number))
    title += ", number " + std::string(number->value.text);
  return title;
}

// Why it cannot be said whether the order counts, or for what; "" when it does.
std::string order_doubt(const PaperReader& reader, site::ElementId paper, const std::string& address) {
  if (!present(reader.slot(paper, "value"))) return "to what value the order " + address + " sets it is not stated";
  if (reader.is_by_somebody(paper).truth == Truth::undecided) return "who gave the order " + address + " is not stated";
  if (const auto* at = reader.slot(paper, "at"); at != nullptr && at->asked_not)
    return "for which part the order " + address + " is meant is not known";
  if (reader.still_counts(paper).truth == Truth::undecided)
    return "whether the order " + address + " still counts is not known";
  return "";
}

struct Dated {
  rulebook::Order order;
  double day = -std::numeric_limits<double>::infinity();
};

Dated read_order(const site::Site& site, const vocabulary::Vocabulary& vocabulary, const PaperReader& reader,
                 site::ElementId paper) {
  Dated out;
  const auto* value = reader.slot(paper, "value");
  out.order.limit = text_node(*reader.slot(paper, "limit"));
  out.order.value = text_node(present(value) ? *value : *reader.slot(paper, "limit"));
  if (!present(value)) out.order.value.scalar = "unknown";
  out.order.layer.title = order_title(reader, vocabulary, paper);
  out.order.layer.range = site.elements[paper].range;
  const std::string address = site::address(site, vocabulary, paper);
  out.order.doubt = order_doubt(reader, paper, address.substr(0, address.find(' ')));
  const auto* at = reader.slot(paper, "at");
  if (present(at)) out.order.at = at->value.id;
  if (const auto* dated = reader.slot(paper, "dated"); present(dated)) out.day = dated->value.number.hi;
  return out;
}

}  // namespace

std::vector<rulebook::Order> orders(const site::Site& site, const vocabulary::Vocabulary& vocabulary,
                                    const std::optional<quantity::Interval>& checked_on) {
  std::vector<Dated> found;
  const auto field = vocabulary.shapes[vocabulary::root_shape].field("papers");
  const auto kind = vocabulary.shape("order");
  if (!field || !kind || site.slot(0, *field).value.id == site::nowhere) return {};
  const PaperReader reader(site, vocabulary, checked_on);
  const auto& items = site.lists[site.slot(0, *field).value.id].items;
  for (auto paper = items.rbegin(); paper != items.rend(); ++paper) {
    if (site.elements[*paper].shape != *kind || !present(reader.slot(*paper, "limit"))) continue;
    if (and_then(reader.is_by_somebody(*paper), reader.still_counts(*paper)).truth == Truth::no) continue;
    found.push_back(read_order(site, vocabulary, reader, *paper));
  }
  std::stable_sort(found.begin(), found.end(), [](const Dated& a, const Dated& b) { return a.day > b.day; });
  std::vector<rulebook::Order> result;
  for (auto& each : found) result.push_back(std::move(each.order));
  return result;
}

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
