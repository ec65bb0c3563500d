#include "base/day.h"

#include <array>
#include <charconv>
#include <chrono>

#include "base/exact.h"
#include "base/text.h"

namespace kerfbook {
namespace {

using std::chrono::days;
using std::chrono::sys_days;
using std::chrono::year_month_day;

year_month_day calendar(Day day) {
  return year_month_day{sys_days{days{day.number}}};
}

/// Digits only, of between `least` and `most` characters.
std::optional<int> digits(std::string_view text, std::size_t least, std::size_t most) {
  if (text.size() < least || text.size() > most) return std::nullopt;
  int value = 0;
  for (const char c : text) {
    if (c < '0' || c > '9') return std::nullopt;
    value = value * 10 + (c - '0');
  }
  return value;
}

/// Hours, or minutes when `unit` is 60 to 1, to the nearest minute; a day and a half is the longest believed.
std::optional<int> scaled(std::string_view number, int minutes_each) {
  const auto value = read_decimal(trim(number), 3);
  constexpr std::int64_t kMost = 100 * 60;
  if (!value || value->is_negative() || *value > Rational(kMost)) return std::nullopt;
  const std::int64_t minutes = (*value * Rational(minutes_each)).rounded(0);
  return minutes > kMost ? std::nullopt : std::optional(static_cast<int>(minutes));
}

/// `7:15`, `7h15` and `7h` in their two numbers; neither when one of them is none.
struct HoursAndMinutes {
  bool parted = false;  ///< by a colon or an h
  std::optional<int> hours;
  std::optional<int> minutes;
};
HoursAndMinutes hours_and_minutes(std::string_view text, std::size_t most_digits) {
  HoursAndMinutes parts;
  const std::size_t mark = text.find_first_of(":hH");
  if (mark == std::string_view::npos) return parts;
  parts.parted = true;
  parts.hours = digits(text.substr(0, mark), 1, most_digits);
  const std::string_view after = text.substr(mark + 1);
  parts.minutes = after.empty() && text[mark] != ':' ? std::optional(0) : digits(after, 2, 2);
  return parts;
}

}  // namespace

bool day_exists(int year, int month, int day) {
  if (year < 1900 || year > 2199 || month < 1 || month > 12 || day < 1 || day > 31) return false;
  return year_month_day{std::chrono::year{year}, std::chrono::month{static_cast<unsigned>(month)},
                        std::chrono::day{static_cast<unsigned>(day)}}
      .ok();
}

Day make_day(int year, int month, int day) {
  const year_month_day date{std::chrono::year{year}, std::chrono::month{static_cast<unsigned>(month)},
                            std::chrono::day{static_cast<unsigned>(day)}};
  return {static_cast<std::int32_t>(sys_days{date}.time_since_epoch().count())};
}

YearMonthDay parts(Day day) {
  const auto date = calendar(day);
  return {static_cast<int>(date.year()), static_cast<int>(static_cast<unsigned>(date.month())),
          static_cast<int>(static_cast<unsigned>(date.day()))};
}

int weekday(Day day) {
  return static_cast<int>(std::chrono::weekday{sys_days{days{day.number}}}.iso_encoding());
}

Day first_of_iso_week(int year, int week) {
  const Day fourth = make_day(year, 1, 4);  // always in week 1
  return fourth - (weekday(fourth) - 1) + 7 * (week - 1);
}

int iso_weeks_in(int year) {
  return (first_of_iso_week(year + 1, 1) - first_of_iso_week(year, 1)) / 7;
}

IsoWeek iso_week(Day day) {
  const Day thursday = day - (weekday(day) - 1) + 3;
  const int year = parts(thursday).year;
  return {year, (thursday - first_of_iso_week(year, 1)) / 7 + 1};
}

std::optional<Day> read_day(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
  const auto year = digits(text.substr(0, 4), 4, 4);
  const auto month = digits(text.substr(5, 2), 2, 2);
  const auto day = digits(text.substr(8, 2), 2, 2);
  if (!year || !month || !day || !day_exists(*year, *month, *day)) return std::nullopt;
  return make_day(*year, *month, *day);
}

std::string write_day(Day day) {
  const auto [year, month, number] = parts(day);
  const auto two = [](int n) { return (n < 10 ? "0" : "") + std::to_string(n); };
  return std::to_string(year) + "-" + two(month) + "-" + two(number);
}

std::string weekday_name(Day day) {
  static constexpr std::array kNames{"Monday", "Tuesday",  "Wednesday", "Thursday",
                                     "Friday", "Saturday", "Sunday"};
  return kNames.at(static_cast<std::size_t>(weekday(day) - 1));
}

std::string month_name(int month) {
  static constexpr std::array kNames{"January", "February", "March",     "April",   "May",      "June",
                                     "July",    "August",   "September", "October", "November", "December"};
  return kNames.at(static_cast<std::size_t>(month - 1));
}

std::optional<int> read_clock(std::string_view text) {
  const auto parts = hours_and_minutes(text, 2);
  std::optional<int> hour = parts.hours;
  std::optional<int> minute = parts.minutes;
  if (text.size() == 4 && !parts.parted) {  // 0715
    hour = digits(text.substr(0, 2), 2, 2);
    minute = digits(text.substr(2), 2, 2);
  }
  if (!hour || !minute || *minute > 59 || *hour > 24 || (*hour == 24 && *minute > 0)) return std::nullopt;
  return *hour * 60 + *minute;
}

std::string write_clock(int minutes) {
  return std::to_string(minutes / 60) + (minutes % 60 < 10 ? ":0" : ":") + std::to_string(minutes % 60);
}

std::optional<Span> read_span(std::string_view text) {
  const std::size_t dash = text.find('-');
  if (dash == std::string_view::npos) return std::nullopt;
  const auto from = read_clock(trim(text.substr(0, dash)));
  const auto to = read_clock(trim(text.substr(dash + 1)));
  if (!from || !to || *from == *to || *from == 1440) return std::nullopt;
  return Span{*from, *to};
}

std::string write_span(Span span) {
  return write_clock(span.from) + "-" + write_clock(span.to);
}

std::optional<int> read_duration(std::string_view text) {
  const auto parts = hours_and_minutes(text, 3);
  if (parts.hours && parts.minutes) {
    if (*parts.minutes > 59 || *parts.hours > 100) return std::nullopt;
    return *parts.hours * 60 + *parts.minutes;
  }
  const std::string folded = lower(text);
  const std::string_view word = folded;
  for (const std::string_view unit : {"min", "m"}) {
    if (word.ends_with(unit)) return scaled(word.substr(0, word.size() - unit.size()), 1);
  }
  if (word.ends_with("h")) return scaled(word.substr(0, word.size() - 1), 60);
  return scaled(word, 60);
}
std::string write_duration(int minutes) {
  return write_clock(minutes);
}

}  // namespace kerfbook
