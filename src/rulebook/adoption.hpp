// Which documents bind in a place on a day, and in which order. Not for other layers.
#pragma once

#include <string>
#include <vector>

#include "rulebook/documents.hpp"

namespace headgate::rulebook {

struct Adoption {
  const Documents* documents = nullptr;
  std::string place;                // its own documents bind without being adopted
  std::vector<std::string> adopts;  // first binds first
  std::string country;              // what `binds-in` it is law here without being adopted; "" for none

  // How strongly a citation binds, least first, and how it reads there; nullopt when it does not bind.
  struct Bound {
    std::size_t rank = 0;
    Citation citation;
  };
  std::optional<Bound> bound(const Citation& citation) const;

  // Those that bind, as they read here, each once.
  std::vector<Citation> binding(const std::vector<Citation>& citations) const;
};

}  // namespace headgate::rulebook
