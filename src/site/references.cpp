#include <algorithm>
#include <limits>

#include "site/loading.hpp"
#include "vocabulary/names.hpp"

namespace headgate::site {
namespace {

using vocabulary::Direction;
using vocabulary::Field;
using vocabulary::Presence;
using vocabulary::Shape;
using vocabulary::ShapeSet;
using vocabulary::Value;

constexpr std::uint32_t until_here = std::numeric_limits<std::uint32_t>::max();

// What lies upstream of a point, shape by shape. Things are numbered from the main on; 0 is nothing.
struct Upstream {
  explicit Upstream(std::size_t shapes) : last(shapes, 0), element(shapes, nowhere), hidden_until(shapes, 0) {}
  std::uint32_t count = 1;
  std::vector<std::uint32_t> last;          // number of the nearest one
  std::vector<ElementId> element;           // which that is
  std::vector<std::uint32_t> hidden_until;  // an unlisted one may stand anywhere up to this number
};

Value found_element(ElementId element) {
  Value value;
  value.presence = Presence::present;
  value.id = element;
  return value;
}

Value nearest_upstream(const Upstream& upstream, const ShapeSet& wanted) {
  std::uint32_t best = 0;
  std::uint32_t hidden = 0;
  ElementId element = nowhere;
  for (std::size_t shape = 0; shape < upstream.last.size(); ++shape) {
    if (!wanted.test(shape)) continue;
    hidden = std::max(hidden, upstream.hidden_until[shape]);
    if (upstream.last[shape] <= best) continue;
    best = upstream.last[shape];
    element = upstream.element[shape];
  }
  if (best > hidden) return found_element(element);
  return hidden > 0 ? vocabulary::unknown() : vocabulary::nothing();
}

void set_references(Loading& at, ElementId element, Direction direction, const Upstream& seen) {
  const Shape& shape = at.shape(element);
  for (std::size_t id = 0; id < shape.fields.size(); ++id) {
    const Field& field = shape.fields[id];
    if (field.holds != Field::Holds::reference || field.direction != direction) continue;
    Slot& slot = at.site.slot(element, static_cast<FieldId>(id));
    if (slot.origin == Origin::left_out) slot.value = nearest_upstream(seen, field.type.shapes);
  }
}

void pass(const Loading& at, Upstream& seen, ElementId element) {
  const ShapeId shape = at.site.elements[element].shape;
  seen.last[shape] = ++seen.count;
  seen.element[shape] = element;
}

void enter(Upstream& seen, const List& list) {
  for (std::size_t shape = 0; shape < seen.last.size(); ++shape) {
    if (!list.closed.test(shape)) seen.hidden_until[shape] = until_here;
  }
}

// Where a branch leaves, an unfinished trunk hides nothing beyond.
Upstream leaving(const Upstream& seen) {
  Upstream result = seen;
  for (std::uint32_t& until : result.hidden_until) {
    if (until == until_here) until = seen.count;
  }
  return result;
}

// Nobody has said where it leaves from: anything may lie upstream.
Upstream from_anywhere(std::size_t shapes) {
  Upstream result(shapes);
  std::fill(result.hidden_until.begin(), result.hidden_until.end(), result.count);
  return result;
}

struct Walk {
  ListId list = nowhere;
  Upstream upstream;
};

// The walks that leave from each element: a branch's `line` from the branch.
struct Hanging {
  std::vector<std::pair<ElementId, ListId>> from;  // sorted
  std::vector<bool> visited;                       // by ListId
};

// The element of a list, or the root, that a list belongs to, records passed over.
ElementId anchor(const Site& site, const List& list) {
  ElementId element = list.owner;
  while (element != 0 && site.elements[element].list == nowhere) element = site.elements[element].parent;
  return element;
}

bool is_walk(const Loading& at, const List& list) { return at.field(list.owner, list.field).walk; }

void go_down(Loading& at, Walk& walk, const Hanging& hanging, std::vector<Walk>& queue) {
  enter(walk.upstream, at.site.lists[walk.list]);
  for (const ElementId item : at.site.lists[walk.list].items) {
    if (at.site.elements[item].walk != walk.list) continue;
    at.site.downstream_order.push_back(item);
    set_references(at, item, Direction::upstream, walk.upstream);
    pass(at, walk.upstream, item);
    auto next = std::lower_bound(hanging.from.begin(), hanging.from.end(), std::make_pair(item, ListId{0}));
    for (; next != hanging.from.end() && next->first == item; ++next) {
      queue.push_back({next->second, leaving(walk.upstream)});
    }
  }
}

// The same, seen from the end of the list: nothing continues beyond it.
void go_up(Loading& at, ListId id) {
  Upstream seen(at.vocabulary.shapes.size());
  enter(seen, at.site.lists[id]);
  const std::vector<ElementId>& items = at.site.lists[id].items;
  for (auto item = items.rbegin(); item != items.rend(); ++item) {
    if (at.site.elements[*item].walk != id) continue;
    set_references(at, *item, Direction::downstream, seen);
    pass(at, seen, *item);
  }
}

void follow(Loading& at, Walk first, Hanging& hanging) {
  std::vector<Walk> queue;
  queue.push_back(std::move(first));
  for (std::size_t i = 0; i < queue.size(); ++i) {
    Walk walk = std::move(queue[i]);
    if (hanging.visited[walk.list]) continue;
    hanging.visited[walk.list] = true;
    go_down(at, walk, hanging, queue);
    go_up(at, walk.list);
  }
}

Hanging hang(const Loading& at) {
  Hanging hanging;
  hanging.visited.assign(at.site.lists.size(), false);
  for (ListId id = 0; id < at.site.lists.size(); ++id) {
    if (is_walk(at, at.site.lists[id])) hanging.from.emplace_back(anchor(at.site, at.site.lists[id]), id);
  }
  std::sort(hanging.from.begin(), hanging.from.end());
  return hanging;
}

}  // namespace

void resolve_stated(Loading& at) {
  for (const StatedReference& reference : at.references) {
    const auto target = find(at.site, at.vocabulary, reference.address->scalar, reference.address->range, at.found);
    if (!target) continue;
    const Field& field = at.field(reference.element, reference.field);
    const bool fits =
        target->field == vocabulary::no_id && field.type.shapes.test(at.site.elements[target->element].shape);
    if (fits) {
      at.site.slot(reference.element, reference.field).value = found_element(target->element);
    } else {
      at.found.push_back(text::say(
          "reference-kind", reference.address->range,
          {reference.address->scalar, field.title, vocabulary::join(names(at.vocabulary, field.type.shapes))}));
    }
  }
}

namespace {

// The thing of the wanted kind in whose list the element stands, however deep.
Value holder(const Site& site, ElementId element, const ShapeSet& wanted) {
  for (element = site.elements[element].parent; element != nowhere; element = site.elements[element].parent) {
    if (wanted.test(site.elements[element].shape)) return found_element(element);
  }
  return vocabulary::nothing();
}

void resolve_holding(Loading& at) {
  for (ElementId element = 0; element < at.site.elements.size(); ++element) {
    const Shape& shape = at.shape(element);
    for (std::size_t id = 0; id < shape.fields.size(); ++id) {
      const Field& field = shape.fields[id];
      if (field.holds != Field::Holds::reference || field.direction != Direction::holding) continue;
      Slot& slot = at.site.slot(element, static_cast<FieldId>(id));
      if (slot.origin == Origin::left_out) slot.value = holder(at.site, element, field.type.shapes);
    }
  }
}

}  // namespace

void resolve_nearest(Loading& at) {
  resolve_holding(at);
  const std::size_t shapes = at.vocabulary.shapes.size();
  Hanging hanging = hang(at);
  const auto follow_all = [&](auto starts, const Upstream& upstream) {
    for (std::size_t i = 0; i < hanging.from.size(); ++i) {
      const auto [from, list] = hanging.from[i];
      if (!hanging.visited[list] && starts(from)) follow(at, {list, upstream}, hanging);
    }
  };
  follow_all([](ElementId from) { return from == 0; }, Upstream(shapes));
  follow_all([&](ElementId from) { return at.site.elements[from].walk == nowhere; }, from_anywhere(shapes));
  for (std::size_t i = 0; i < hanging.from.size(); ++i) {
    const auto [from, list] = hanging.from[i];
    if (hanging.visited[list]) continue;
    at.found.push_back(text::say("branch-loop", at.site.elements[from].range, {at.site.elements[from].name}));
    follow(at, {list, from_anywhere(shapes)}, hanging);
  }
}

}  // namespace headgate::site
