// An address in steps: `line[3].near[1].beside` is line 3, near 1, beside. Not for other layers.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "site/site.hpp"

namespace headgate::site {

struct AddressStep {
  std::string name;
  std::optional<std::uint32_t> number;  // from 1
  text::Range range;
};

// nullopt, with a diagnostic, when it is no address. A leading `site` is dropped: it is where addresses begin.
std::optional<std::vector<AddressStep>> read_steps(std::string_view address, const text::Range& range,
                                                   const vocabulary::Vocabulary& vocabulary, text::Diagnostics& found);

std::string show(const std::vector<AddressStep>& steps, std::size_t count);  // the first `count` of them

// The field a step names, or a diagnostic.
std::optional<FieldId> field_of_step(const vocabulary::Vocabulary& vocabulary, ShapeId shape, const AddressStep& step,
                                     text::Diagnostics& found);

}  // namespace headgate::site
