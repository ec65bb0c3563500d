// day.h -- calendar days and clock times as the mill writes them. Local by nature: no time zone ever shifts them.
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace kerfbook {

/// A calendar day, as the count of days since 1970-01-01 (which is also how the book stores it).
struct Day {
  std::int32_t number = 0;
  auto operator<=>(const Day&) const = default;
  Day operator+(int days) const { return {number + days}; }
  Day operator-(int days) const { return {number - days}; }
  int operator-(Day other) const { return number - other.number; }
};

struct YearMonthDay {
  int year = 1970;
  int month = 1;
  int day = 1;
};

Day make_day(int year, int month, int day);     ///< the date must exist
bool day_exists(int year, int month, int day);  ///< years 1900 to 2199: a log book's, not an almanac's
YearMonthDay parts(Day day);
int weekday(Day day);  ///< 1 = Monday ... 7 = Sunday (ISO 8601)
struct IsoWeek {
  int year = 1970;  ///< the year the week belongs to, which near New Year is not always the day's own
  int week = 1;
  bool operator==(const IsoWeek&) const = default;
};
IsoWeek iso_week(Day day);
Day first_of_iso_week(int year, int week);  ///< its Monday
int iso_weeks_in(int year);                 ///< 52 or 53

/// "2026-05-05"; nullopt for anything else, also for a day that does not exist.
std::optional<Day> read_day(std::string_view text);
std::string write_day(Day day);     ///< "2026-05-05"
std::string weekday_name(Day day);  ///< "Tuesday"
std::string month_name(int month);  ///< "May"

/// Minutes since midnight, 0 to 1439; 1440 ("24:00") is read as an end.
std::optional<int> read_clock(std::string_view text);  ///< "7:15", "07:15", "0715", "7h15", "7h", "24:00"
std::string write_clock(int minutes);                  ///< "7:15"

/// Two clock times. An end at or before the start lies on the next day.
struct Span {
  int from = 0;
  int to = 0;
  bool operator==(const Span&) const = default;
  [[nodiscard]] int minutes() const { return to > from ? to - from : to - from + 1440; }
};
std::optional<Span> read_span(std::string_view text);  ///< "7:15-10:20"
std::string write_span(Span span);

/// A length of time in whole minutes: "0:36", "3:45", "9", "9.5", "1.25h", "1h30", "90min", "90m"; nullopt when it is
/// not one.
/// Plain numbers are hours.
std::optional<int> read_duration(std::string_view text);
std::string write_duration(int minutes);  ///< "3:45"

}  // namespace kerfbook
