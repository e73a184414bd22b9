#include "site/steps.hpp"

#include <algorithm>

#include "vocabulary/names.hpp"

namespace headgate::site {
namespace {

constexpr std::size_t most_digits = 7;

bool is_number(std::string_view text) {
  const bool digits = std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
  return digits && !text.empty() && text.size() <= most_digits && text.front() != '0';
}

// `line[3]`
std::optional<AddressStep> read_step(std::string_view written, const text::Range& range) {
  AddressStep step;
  step.range = range;
  const std::size_t open = written.find('[');
  step.name = written.substr(0, open);
  if (!document::is_name(step.name)) return std::nullopt;
  if (open == std::string_view::npos) return step;
  if (written.back() != ']') return std::nullopt;
  const std::string number(written.substr(open + 1, written.size() - open - 2));
  if (!is_number(number)) return std::nullopt;
  step.number = static_cast<std::uint32_t>(std::stoul(number));
  return step;
}

}  // namespace

std::optional<std::vector<AddressStep>> read_steps(std::string_view address, const text::Range& range,
                                                   const vocabulary::Vocabulary& vocabulary, text::Diagnostics& found) {
  std::vector<AddressStep> steps;
  for (std::size_t begin = 0; begin <= address.size();) {
    const std::size_t end = std::min(address.find('.', begin), address.size());
    const auto step = read_step(address.substr(begin, end - begin), text::part(range, begin, end - begin));
    if (!step) {
      found.push_back(text::say("address-form", range, {std::string(address)}));
      return std::nullopt;
    }
    steps.push_back(*step);
    begin = end + 1;
  }
  const vocabulary::Shape& root = vocabulary.shapes[vocabulary::root_shape];
  const bool from_root = steps.size() > 1 && steps[0].name == root.name && !steps[0].number && !root.field(root.name);
  if (from_root) steps.erase(steps.begin());
  return steps;
}

std::string show(const std::vector<AddressStep>& steps, std::size_t count) {
  std::string result;
  for (std::size_t i = 0; i < count && i < steps.size(); ++i) {
    if (i > 0) result += '.';
    result += steps[i].name;
    if (steps[i].number) result += "[" + std::to_string(*steps[i].number) + "]";
  }
  return result;
}

std::optional<FieldId> field_of_step(const vocabulary::Vocabulary& vocabulary, ShapeId shape, const AddressStep& step,
                                     text::Diagnostics& found) {
  const vocabulary::Shape& here = vocabulary.shapes[shape];
  const auto field = here.field(step.name);
  if (!field) {
    std::vector<std::string> known;
    for (const vocabulary::Field& each : here.fields) known.push_back(each.name);
    found.push_back(
        text::say("unknown-fact", step.range, {step.name, here.title, vocabulary::offer(step.name, known, 20)}));
  } else if (step.number && here.fields[*field].holds != vocabulary::Field::Holds::list) {
    found.push_back(text::say("address-not-list", step.range, {step.name}));
    return std::nullopt;
  }
  return field;
}

}  // namespace headgate::site
