#include "quantity/calendar.hpp"

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>

#include <fmt/format.h>

#include "quantity/scan.hpp"

namespace headgate::quantity {

namespace {

namespace chrono = std::chrono;

constexpr int first_year = 1800;
constexpr int last_year = 2300;
constexpr double day_s = 86400;

constexpr std::array<std::string_view, 12> month_names{"January",   "February", "March",    "April",
                                                       "May",       "June",     "July",     "August",
                                                       "September", "October",  "November", "December"};

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

// The digits of text[at, at + count) as a number; nothing when there are fewer.
std::optional<int> fixed_digits(std::string_view text, std::size_t at, std::size_t count) {
  int value = 0;
  for (std::size_t i = at; i < at + count; ++i) {
    if (!digit_at(text, i)) return std::nullopt;
    value = value * 10 + (text[i] - '0');
  }
  return value;
}

// One to `most` digits from `at` on, which is moved past them.
std::optional<int> some_digits(std::string_view text, std::size_t& at, std::size_t most) {
  std::size_t end = at;
  while (digit_at(text, end)) ++end;
  const auto value = end > at && end - at <= most ? fixed_digits(text, at, end - at) : std::nullopt;
  at = end;
  return value;
}

Problem about(std::string id, std::string_view text, std::string right) {
  return {std::move(id), 0, text.size(), {std::string(text), std::move(right)}};
}

int days_in(int year, int month) {
  const chrono::year_month_day_last last{chrono::year{year},
                                         chrono::month_day_last{chrono::month(static_cast<unsigned>(month))}};
  return static_cast<int>(static_cast<unsigned>(last.day()));
}

// `2026-1-2`, `2026/01/02`, `2026.01.02`: clear enough to answer with the right spelling.
std::string date_meant(std::string_view text) {
  std::size_t at = 0;
  const auto year = some_digits(text, at, 4);
  if (!year || at != 4 || at >= text.size() || std::string_view("-/.").find(text[at]) == std::string_view::npos)
    return "";
  const char separator = text[at++];
  const auto month = some_digits(text, at, 2);
  if (!month || at >= text.size() || text[at++] != separator) return "";
  const auto day = some_digits(text, at, 2);
  if (!day || at != text.size()) return "";
  return fmt::format("{:04}-{:02}-{:02}", *year, *month, *day);
}

std::optional<Civil> date_at_start(std::string_view text) {
  const auto year = fixed_digits(text, 0, 4);
  const auto month = fixed_digits(text, 5, 2);
  const auto day = fixed_digits(text, 8, 2);
  if (!year || !month || !day || text[4] != '-' || text[7] != '-') return std::nullopt;
  return Civil{*year, *month, *day};
}

std::string length_of_month(const Civil& date) {
  if (date.month < 1 || date.month > 12 || date.day < 1) return "";
  return fmt::format("{} {} has {} days", month_names[static_cast<std::size_t>(date.month - 1)], date.year,
                     days_in(date.year, date.month));
}

Read<Day> checked(std::string_view text, const Civil& date) {
  if (date.month < 1 || date.month > 12 || date.day < 1 || date.day > days_in(date.year, date.month)) {
    return about("no-such-date", text, length_of_month(date));
  }
  if (date.year < first_year || date.year > last_year) {
    return about("date-outside", text, fmt::format("{} to {}", first_year, last_year));
  }
  return day_of(date);
}

// `7:10`, `1 pm`, `11:00 am`: clear enough to answer with the right spelling.
std::string time_meant(std::string_view text) {
  std::size_t at = 0;
  auto hour = some_digits(text, at, 2);
  int minute = 0;
  if (!hour) return "";
  if (at < text.size() && text[at] == ':') {
    ++at;
    const auto written = some_digits(text, at, 2);
    if (!written) return "";
    minute = *written;
  }
  const std::string_view half = trimmed(text.substr(std::min(at, text.size())));
  const bool morning = half == "am" || half == "AM" || half == "a.m.";
  const bool afternoon = half == "pm" || half == "PM" || half == "p.m.";
  if (!half.empty() && !morning && !afternoon) return "";
  if ((morning || afternoon) && (*hour < 1 || *hour > 12)) return "";
  if (morning || afternoon) *hour = *hour % 12 + (afternoon ? 12 : 0);
  return *hour < 24 && minute < 60 && at > 2 - (half.empty() ? 0 : 2) ? fmt::format("{:02}:{:02}", *hour, minute) : "";
}

struct MonthDay {
  int month = 0;
  int day = 0;
};

// 0 when it is no month's name.
int month_named(std::string_view word) {
  for (std::size_t i = 0; i < month_names.size(); ++i) {
    if (word == month_names[i] || word == month_names[i].substr(0, 3)) return static_cast<int>(i + 1);
  }
  return 0;
}

std::optional<MonthDay> read_month_day(std::string_view text) {
  const std::size_t space = text.find(' ');
  if (space == std::string_view::npos) return std::nullopt;
  const int month = month_named(text.substr(0, space));
  std::size_t at = space + 1;
  const auto day = some_digits(text, at, 2);
  if (month == 0 || !day || at != text.size()) return std::nullopt;
  return MonthDay{month, *day};
}

std::optional<Problem> unfit(std::string_view text, const MonthDay& end) {
  constexpr int leap_year = 2024;  // Feb 29 is a day a season may end on
  if (end.day >= 1 && end.day <= days_in(leap_year, end.month)) return std::nullopt;
  return about("no-such-season-day", text,
               fmt::format("{} {}", month_names[static_cast<std::size_t>(end.month - 1)].substr(0, 3), end.day));
}

struct SpanWord {
  std::string_view one;
  std::string_view many;
  Span::Unit unit;
};
constexpr std::array<SpanWord, 5> span_words{{{"day", "days", Span::Unit::days},
                                              {"week", "weeks", Span::Unit::weeks},
                                              {"month", "months", Span::Unit::months},
                                              {"year", "years", Span::Unit::years},
                                              {"business-day", "business-days", Span::Unit::business_days}}};

Problem no_span(std::string_view text, std::string_view count, std::string_view word) {
  if (word == "business days" || word == "business day" || word == "working days") {
    return about("span-shape", text, fmt::format("{} business-days", count));
  }
  const Unit* quantity_unit = unit(word);
  if (quantity_unit != nullptr && quantity_unit->dimension == dimensions::time) {
    return about("quantity-as-span", text, "");
  }
  std::vector<std::string> words;
  for (const SpanWord& entry : span_words) words.insert(words.end(), {std::string(entry.one), std::string(entry.many)});
  const auto near = count.empty() ? std::nullopt : text::nearest(word, words);
  return about("span-shape", text,
               near ? fmt::format("{} {}", count, *near)
                    : "a count and days, weeks, months, years or business-days, as in 3 months");
}

std::optional<Day> in_calendar(long long day) {
  static const Day first = day_of({first_year, 1, 1});
  static const Day last = day_of({last_year, 12, 31});
  return day >= first && day <= last ? std::optional<Day>(static_cast<Day>(day)) : std::nullopt;
}

std::optional<Day> step_months(Day date, long long months) {
  const Civil from = civil(date);
  const long long total = from.year * 12LL + from.month - 1 + months;
  if (total < first_year * 12LL || total >= (last_year + 1) * 12LL) return std::nullopt;
  const int year = static_cast<int>(total / 12);
  const int month = static_cast<int>(total % 12) + 1;
  return day_of({year, month, std::min(from.day, days_in(year, month))});
}

std::optional<Day> step_business_days(Day date, long long count, int direction, const ClosedDays* closed) {
  if (closed == nullptr) return std::nullopt;
  Day day = date;
  while (count > 0) {
    day += direction;
    if (day < closed->from || day > closed->until) return std::nullopt;
    const int of_week = weekday(day);
    const bool open =
        of_week != 0 && of_week != 6 && !std::binary_search(closed->days.begin(), closed->days.end(), day);
    if (open) --count;
  }
  return day;
}

}  // namespace

Day day_of(Civil date) {
  const chrono::year_month_day ymd{chrono::year{date.year}, chrono::month(static_cast<unsigned>(date.month)),
                                   chrono::day(static_cast<unsigned>(date.day))};
  return static_cast<Day>(chrono::sys_days(ymd).time_since_epoch().count());
}

Civil civil(Day day) {
  const chrono::year_month_day ymd{chrono::sys_days(chrono::days(day))};
  return {static_cast<int>(ymd.year()), static_cast<int>(static_cast<unsigned>(ymd.month())),
          static_cast<int>(static_cast<unsigned>(ymd.day()))};
}

int weekday(Day day) { return static_cast<int>(chrono::weekday(chrono::sys_days(chrono::days(day))).c_encoding()); }

Read<Day> read_date(std::string_view text) {
  const auto date = text.size() == 10 ? date_at_start(text) : std::nullopt;
  if (date) return checked(text, *date);
  const std::string meant = date_meant(text);
  return about("date-shape", text, meant.empty() ? "year, month and day, as in 2026-10-02" : meant);
}

Read<double> read_clock(std::string_view text) {
  const auto hour = fixed_digits(text, 0, 2);
  const auto minute = fixed_digits(text, 3, 2);
  if (text.size() != 5 || !hour || !minute || text[2] != ':') {
    const std::string meant = time_meant(text);
    return about("clock-shape", text, meant.empty() ? "hours and minutes, as in 07:10" : meant);
  }
  if (*hour > 23 || *minute > 59) return about("no-such-time", text, "");
  return *hour * 3600.0 + *minute * 60.0;
}

Read<double> read_moment(std::string_view text) {
  const bool shaped = text.size() > 11 && text[10] == ' ' && date_at_start(text);
  if (!shaped) {
    const bool letter = text.size() == 16 && text[10] == 'T' && date_at_start(text);
    return about(
        "moment-shape", text,
        letter ? fmt::format("{} {}", text.substr(0, 10), text.substr(11)) : "date and time, as in 2026-10-02 11:00");
  }
  Read<Day> day = read_date(text.substr(0, 10));
  if (Problem* problem = std::get_if<Problem>(&day)) return std::move(*problem);
  Read<double> time = read_clock(text.substr(11));
  if (Problem* problem = std::get_if<Problem>(&time)) {
    problem->offset += 11;
    return std::move(*problem);
  }
  return std::get<Day>(day) * day_s + std::get<double>(time);
}

std::string show_date(Day day) {
  const Civil date = civil(day);
  return fmt::format("{:04}-{:02}-{:02}", date.year, date.month, date.day);
}

std::string show_moment(double seconds) {
  const double day = std::floor(seconds / day_s);
  return fmt::format("{} {}", show_date(static_cast<Day>(day)), show_clock(seconds - day * day_s));
}

std::string show_clock(double seconds) {
  const int minutes = static_cast<int>(std::floor(seconds / 60));
  return fmt::format("{:02}:{:02}", minutes / 60, minutes % 60);
}

Read<Season> read_season(std::string_view text) {
  const std::size_t to = text.find(" to ");
  if (to != std::string_view::npos) {
    const auto from = read_month_day(text.substr(0, to));
    const auto until = read_month_day(text.substr(to + 4));
    if (from && until) {
      if (auto found = unfit(text, *from)) return *found;
      if (auto found = unfit(text, *until)) return *found;
      return Season{from->month, from->day, until->month, until->day};
    }
  }
  return about("season-shape", text, "month and day twice, as in Nov 1 to Apr 1");
}

bool holds(const Season& season, Day day) {
  const Civil date = civil(day);
  const int from = season.from_month * 32 + season.from_day;
  const int to = season.to_month * 32 + season.to_day;
  const int at = date.month * 32 + date.day;
  return from <= to ? from <= at && at <= to : at >= from || at <= to;
}

std::string show(const Season& season) {
  const auto name = [](int month) { return month_names[static_cast<std::size_t>(month - 1)].substr(0, 3); };
  return fmt::format("{} {} to {} {}", name(season.from_month), season.from_day, name(season.to_month), season.to_day);
}

Read<Span> read_span(std::string_view text) {
  constexpr std::size_t most_digits = 5;  // 99999 days are 273 years
  std::size_t at = 0;
  const auto count = some_digits(text, at, most_digits);
  const std::string_view written = text.substr(0, at);
  if (at > most_digits) return about("span-too-long", text, "");
  const std::string_view word = trimmed(text.substr(at));
  if (!count) return no_span(text, "", word);
  if (!word.empty() && (word[0] == '.' || word[0] == '/' || word[0] == '-')) return about("span-whole", text, "");
  for (const SpanWord& entry : span_words) {
    if (word != entry.one && word != entry.many) continue;
    if (at == text.size() || text[at] != ' ') return about("span-shape", text, fmt::format("{} {}", written, word));
    return Span{static_cast<double>(*count), entry.unit};
  }
  return no_span(text, written, word);
}

std::string show(const Span& span) {
  for (const SpanWord& entry : span_words) {
    if (entry.unit == span.unit) return fmt::format("{:.0f} {}", span.count, span.count == 1 ? entry.one : entry.many);
  }
  return "";
}

std::optional<Day> step(Day date, const Span& span, int sign, const ClosedDays* closed) {
  if (!(std::fabs(span.count) < 1e6)) return std::nullopt;
  const auto count = static_cast<long long>(span.count) * (sign < 0 ? -1 : 1);
  switch (span.unit) {
    case Span::Unit::days: return in_calendar(date + count);
    case Span::Unit::weeks: return in_calendar(date + 7 * count);
    case Span::Unit::months: return step_months(date, count);
    case Span::Unit::years: return step_months(date, 12 * count);
    case Span::Unit::business_days: break;
  }
  return step_business_days(date, std::abs(count), count < 0 ? -1 : 1, closed);
}

}  // namespace headgate::quantity
