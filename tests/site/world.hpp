// A small vocabulary and site files in memory.
#pragma once

#include <string>

#include "site/site.hpp"
#include "vocabulary/world.hpp"

namespace headgate::test {

inline const char* const site_vocabulary = R"(format: vocabulary/1
stages: {entry: the water entry}
roles: {water-superintendent: water superintendent}
marks: {finished-grade: {title: finished grade, spellings: [grade]}, ground-at-house: ground at the house}
choices:
  pipe-material: {members: [k-copper, l-copper, hdpe, polybutylene]}
  housing: {members: [pit, indoors]}
  stone: {members: [fieldstone, concrete]}
  hole: {members: [cored, broken]}
  faces: {members: [both-faces, one-face]}
  laying: {members: [open-trench, pulled-through-old-pipe]}
  valve-type: {members: [ball, gate]}
  house-kind: {members: [one-family, two-family]}
groups: {valve: valve, preventer: backflow preventer, paper: paper}
records:
  site:
    facts:
      name: text
      place: text
      stage: stage
      describes: text
      permit-applied-on: date
      checked-on: date
      house: {type: record house}
      pressure: {type: record pressure}
      old-line: {type: record old-line}
      line: {type: list, of: [pipe, meter, wall, valve, strainer, gauge, pressure-reducer, preventer, branch], walk: yes}
      branches: {type: list, of: branch, named: yes}
      all-lines: {type: list, union: [line, branches.line]}
      tests: {type: list, of: test}
      papers: {type: list, of: paper}
      confirmed: answers
  house:
    facts: {kind: house-kind, full-baths: number, kitchens: number, laundries: number, hose-bibbs: number}
  pressure: {facts: {highest-static: {type: pressure, plausible: 20 psi to 200 psi}}}
  old-line: {facts: {material: pipe-material, size: size}}
  sleeve: {short: size, facts: {size: size, material: pipe-material}}
kinds:
  pipe:
    passive: yes
    short: size
    facts:
      material: pipe-material
      size: size
      length: length
      utility: yes-no
      least-cover: {type: depth, mark: finished-grade}
      laid: laying
      near: {type: list, of: sewer}
      bore: {type: length}
  meter: {facts: {size: size, housed: housing, one-way: yes-no}}
  wall:
    passive: yes
    facts:
      material: stone
      hole: hole
      sleeve: {type: record sleeve}
      sealed: faces
      pipe: nearest pipe upstream
      valve-after: nearest valve downstream
  shutoff: {groups: [valve], facts: {type: valve-type, size: size, pipe: nearest pipe upstream}}
  drain-cock: {groups: [valve]}
  strainer: {}
  gauge: {short: reads, facts: {reads: pressure}}
  pressure-reducer: {short: set-to, facts: {set-to: pressure}}
  pressure-vacuum-breaker: {groups: [preventer], facts: {height: {type: height, title: height}, pipe: nearest pipe upstream}}
  branch:
    defined-in: branches
    facts:
      feeds: text
      injects-chemicals: yes-no
      line: {type: list, of: [pipe, valve, preventer, branch], walk: yes}
  sewer: {short: beside, facts: {beside: length}}
  test: {short: kind, facts: {kind: text, passed: yes-no}}
  order: {title: order, groups: [paper], facts: {by: text}}
  approval: {groups: [paper], facts: {for: text, by: role, dated: date, number: text, at: element}}
  permit: {groups: [paper], facts: {number: text}}
derived: {pipe: {bore: pipe.length * 1, weight: pipe.length * 2}}
)";

struct SiteWorld : World {
  site::Site site;

  // The value at an address, as people read it; "" when there is no such place.
  std::string at(const std::string& address) {
    text::Diagnostics missing;
    const auto target = site::find(site, vocabulary, address, {}, missing);
    if (!target || target->field == vocabulary::no_id) return "";
    const auto& slot = site.slot(target->element, target->field);
    const auto& field = vocabulary.shapes[site.elements[target->element].shape].fields[target->field];
    const bool element = field.type.kind == vocabulary::Type::Kind::element;
    const bool present = slot.value.presence == vocabulary::Presence::present;
    if (element && present) return site::address(site, vocabulary, slot.value.id);
    if (field.type.kind == vocabulary::Type::Kind::level && present) {
      return show(site.levels[slot.value.id], field, slot.value.unit, vocabulary);
    }
    return show(slot.value, field.type, vocabulary);
  }
  const site::Slot& slot(const std::string& address) {
    text::Diagnostics missing;
    const auto target = site::find(site, vocabulary, address, {}, missing);
    return site.slot(target->element, target->field);
  }
  const site::List& list(const std::string& address) { return site.lists[slot(address).value.id]; }
};

inline SiteWorld load_site(const std::string& text) {
  SiteWorld world;
  world.vocabulary = vocabulary::load({world.read("vocabulary.yaml", site_vocabulary)}, world.found);
  if (const auto* tree = world.read("site.yaml", text)) world.site = site::load(*tree, world.vocabulary, world.found);
  return world;
}

}  // namespace headgate::test
