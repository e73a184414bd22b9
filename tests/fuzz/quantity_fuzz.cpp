// Every reader of numbers, quantities, dates and spans on the input as it is. What must hold for any text: a problem
// lies within the text and has its words; a value is finite and comes back from what is shown of it.
#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <iterator>

#include "quantity/coarse.hpp"

using namespace headgate;
using namespace headgate::quantity;

namespace {

void require(bool holds) {
  if (!holds) std::abort();
}

template <typename T>
const T* checked(std::string_view text, const Read<T>& read) {
  const Problem* problem = std::get_if<Problem>(&read);
  if (problem == nullptr) return &std::get<T>(read);
  require(problem->offset <= text.size() && problem->length <= text.size() - problem->offset);
  text::Sources sources;
  const text::FileId file = sources.add("input", std::string(text));
  const text::Diagnostic diagnostic = told(*problem, {file, 0, static_cast<std::uint32_t>(text.size())});
  require(diagnostic.sentence.back() == '.');  // what the catalogue does not have is said without one
  require(!text::draw(diagnostic, sources).empty());
  return nullptr;
}

void number(std::string_view text) {
  const Read<Number> read = read_number(text);
  if (const Number* number = checked(text, read)) {
    require(number->used > 0 && number->used <= text.size() && std::isfinite(number->value));
    require(number->value != 0 || !std::signbit(number->value));
  }
}

void quantity_of(std::string_view text, std::optional<Dimension> wanted) {
  const Read<Quantity> read = read_quantity(text, wanted);
  const Quantity* quantity = checked(text, read);
  if (quantity == nullptr) return;
  require(std::isfinite(quantity->si));
  require(quantity->unit == nullptr || quantity->unit->dimension == quantity->dimension);
  require(!wanted || *wanted == quantity->dimension);

  const std::string shown = show(quantity->si, quantity->dimension, quantity->unit);
  if (shown.find("e+") != std::string::npos) return;  // past 1e21 nothing is read back
  const Read<Quantity> again = read_quantity(shown, quantity->dimension);
  const Quantity* back = checked(std::string_view(shown), again);
  require(back != nullptr && back->unit == quantity->unit);
  require(show(back->si, back->dimension, back->unit) == shown);
  // Twelve digits are shown; where more were written the last of them go.
  const double step = grid(quantity->dimension);
  require(std::fabs(back->si - quantity->si) <= std::fmax(1.001 * step, 1e-11 * std::fabs(quantity->si)));
}

void coarse_of(std::string_view text, std::optional<Dimension> wanted) {
  const Read<Coarse> read = read_coarse(text, wanted);
  if (const Coarse* coarse = checked(text, read)) {
    require(coarse->value.lo <= coarse->value.hi);
    require(!show(coarse->value, coarse->dimension, coarse->unit).empty());
  }
}

void calendar(std::string_view text) {
  const Read<Day> date = read_date(text);
  if (const Day* day = checked(text, date)) require(show_date(*day) == text);
  const Read<double> moment = read_moment(text);
  if (const double* seconds = checked(text, moment)) require(show_moment(*seconds) == text);
  const Read<double> clock = read_clock(text);
  if (const double* seconds = checked(text, clock)) require(show_clock(*seconds) == text);
  const Read<Interval> days = read_coarse_date(text);
  if (const Interval* interval = checked(text, days)) require(interval->lo <= interval->hi);
}

void spans(std::string_view text) {
  const Read<Season> season = read_season(text);
  if (const Season* found = checked(text, season)) {
    const std::string shown = show(*found);
    const Read<Season> again = read_season(shown);
    require(std::holds_alternative<Season>(again) && show(std::get<Season>(again)) == shown);
    require(holds(*found, day_of({2024, found->from_month, found->from_day})));
  }
  const Read<Span> span = read_span(text);
  if (const Span* found = checked(text, span)) {
    const std::string shown = show(*found);
    const Read<Span> again = read_span(shown);
    require(std::holds_alternative<Span>(again) && show(std::get<Span>(again)) == shown);
    static_cast<void>(step(0, *found, 1, nullptr));
    static_cast<void>(step(0, *found, -1, nullptr));
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  namespace d = dimensions;
  constexpr Dimension asked[] = {d::none, d::length, d::size, d::pressure, d::warming, d::density};
  const Dimension wanted = asked[size % std::size(asked)];  // all of them for each input would be slow

  number(text);
  quantity_of(text, std::nullopt);
  quantity_of(text, wanted);
  coarse_of(text, std::nullopt);
  coarse_of(text, wanted);
  calendar(text);
  spans(text);
  return 0;
}
