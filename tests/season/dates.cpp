// dates.cpp -- days of the calendar, and sheets in their order.
#include <algorithm>
#include <map>
#include <tuple>

#include "days.h"

namespace reckoning {

Date date_of(const std::string& text) {
  return {std::stoi(text.substr(0, 4)), std::stoi(text.substr(5, 2)), std::stoi(text.substr(8, 2))};
}

std::string text_of(const Date& date) {
  const auto two = [](int n) { return (n < 10 ? "-0" : "-") + std::to_string(n); };
  return std::to_string(date.year) + two(date.month) + two(date.day);
}

/// Counted year by year and month by month: slow, and plainly right.
std::int64_t number_of(const Date& date) {
  const auto leap = [](int year) { return year % 4 == 0 && (year % 100 != 0 || year % 400 == 0); };
  static constexpr int kDays[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  std::int64_t number = date.day;
  for (int year = 2000; year < date.year; ++year) number += leap(year) ? 366 : 365;
  for (int month = 1; month < date.month; ++month)
    number += kDays[month - 1] + (month == 2 && leap(date.year) ? 1 : 0);
  return number;
}

Date date_of_number(std::int64_t number) {
  Date date{2000, 1, 1};
  while (number_of({date.year + 1, 1, 1}) <= number) ++date.year;
  while (date.month < 12 && number_of({date.year, date.month + 1, 1}) <= number) ++date.month;
  date.day = static_cast<int>(number - number_of({date.year, date.month, 1})) + 1;
  return date;
}

Date monday_of(const Date& date) {
  // 2000-01-03 was a Monday
  const std::int64_t number = number_of(date);
  return date_of_number(number - (number - number_of({2000, 1, 3})) % 7);
}

void put(std::vector<Sheet>& sheets, Sheet sheet) {
  const auto key = [](const Sheet& one) { return std::tie(one.day, one.shift); };
  const auto at = std::lower_bound(sheets.begin(), sheets.end(), sheet,
                                   [&](const Sheet& a, const Sheet& b) { return key(a) < key(b); });
  if (at != sheets.end() && key(*at) == key(sheet))
    *at = std::move(sheet);
  else
    sheets.insert(at, std::move(sheet));
}

void lend_measures(std::vector<Sheet>& sheets) {
  std::map<std::string, const Log*> known;
  for (auto& sheet : sheets) {
    for (auto& log : sheet.logs) {
      if (!log.measure && known.count(log.tag) != 0) {
        const Log& before = *known[log.tag];
        log.measure = before.measure;
        log.defects.insert(log.defects.begin(), before.defects.begin(), before.defects.end());
        log.borrowed = true;
      }
      if (log.measure && !log.tag.empty() && log.state != Log::State::sawn) known[log.tag] = &log;
    }
  }
}

}  // namespace reckoning
