// Which limits and derived values an expression reads, and through which elements. Not for other layers.
//
//   of pipe:  limit.a[pipe] + pipe.previous.loss   -> limit a (same), pipe.loss (upstream)
#pragma once

#include <vector>

#include "expression/tree.hpp"
#include "vocabulary/vocabulary.hpp"

namespace headgate::rulebook {

// How far the element that is read lies from the one in hand. `other`: it may be any.
enum class Reach : std::uint8_t { same, upstream, other };

struct Use {
  bool limit = false;
  std::uint32_t index = 0;        // of a limit
  vocabulary::ShapeId shape = 0;  // of a derived value
  vocabulary::FieldId field = 0;
  Reach reach = Reach::same;
  text::Range range;
};

// `handed`: what the variables the expression is handed may be.
std::vector<Use> uses_of(const expression::Tree& tree, const std::vector<vocabulary::ShapeSet>& handed,
                         const vocabulary::Vocabulary& vocabulary);

}  // namespace headgate::rulebook
