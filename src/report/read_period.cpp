// read_period.cpp -- the words people say for a stretch of days.
#include <fmt/format.h>

#include <charconv>

#include "base/error.h"
#include "base/text.h"
#include "report/report.h"

namespace kerfbook::report {
namespace {

const std::vector<std::string> kWords{"today",       "yesterday",   "this week", "last week",
                                      "this month",  "last month",  "this year", "last year",
                                      "this season", "last season", "season"};

std::optional<int> number_in(std::string_view text) {
  int value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (text.empty() || error != std::errc{} || end != text.data() + text.size() || value < 0)
    return std::nullopt;
  return value;
}

class Calendar {
 public:
  Calendar(Day today, int week_start, int season_month, int season_day)
      : today_(today), week_start_(week_start), season_month_(season_month), season_day_(season_day) {}

  std::optional<Period> read(const std::string& words) const {
    if (auto named = read_named(words)) return named;
    if (const auto day = read_day(words)) return Period{*day, *day, written(*day)};
    if (const std::size_t dots = words.find(".."); dots != std::string::npos) return read_span(words, dots);
    return read_year_part(words);
  }

 private:
  static std::string written(Day day) { return weekday_name(day) + " " + write_day(day); }

  static Period month(int year, int number) {
    const Day first = make_day(year, number, 1);
    const Day next = number == 12 ? make_day(year + 1, 1, 1) : make_day(year, number + 1, 1);
    return {first, next - 1, fmt::format("{} {}", month_name(number), year)};
  }

  static Period year(int number) {
    return {make_day(number, 1, 1), make_day(number, 12, 31), std::to_string(number)};
  }

  Period week(Day within, const char* words) const {
    const int since_start = (weekday(within) - week_start_ + 7) % 7;
    const Day first = within - since_start;
    return {first, first + 6, words};
  }

  /// The season that begins in `year`. A start of 29 February is 1 March in other years.
  Day season_start(int year) const {
    if (day_exists(year, season_month_, season_day_)) return make_day(year, season_month_, season_day_);
    return season_month_ == 12 ? make_day(year + 1, 1, 1) : make_day(year, season_month_ + 1, 1);
  }

  Period season(int back) const {
    int begun = parts(today_).year;
    if (today_ < season_start(begun)) --begun;
    begun -= back;
    const Day first = season_start(begun);
    return {first, season_start(begun + 1) - 1, fmt::format("season from {}", write_day(first))};
  }

  Period months_back(int back) const {
    const auto now = parts(today_);
    const int months = now.year * 12 + now.month - 1 - back;
    return month(months / 12, months % 12 + 1);
  }

  std::optional<Period> read_named(const std::string& words) const {
    if (words == "today") return Period{today_, today_, "today, " + written(today_)};
    if (words == "yesterday") return Period{today_ - 1, today_ - 1, "yesterday, " + written(today_ - 1)};
    if (words == "this week") return week(today_, "this week");
    if (words == "last week") return week(today_ - 7, "last week");
    if (words == "this month") return months_back(0);
    if (words == "last month") return months_back(1);
    if (words == "this year") return year(parts(today_).year);
    if (words == "last year") return year(parts(today_).year - 1);
    if (words == "season" || words == "this season") return season(0);
    if (words == "last season") return season(1);
    return std::nullopt;
  }

  std::optional<Period> read_span(const std::string& words, std::size_t dots) const {
    const auto from = read(std::string(trim(std::string_view(words).substr(0, dots))));
    const auto to = read(std::string(trim(std::string_view(words).substr(dots + 2))));
    if (!from || !to) return std::nullopt;
    if (to->to < from->from) {
      throw WrongUsage(
          fmt::format("period '{}': {} is before {}", words, write_day(to->to), write_day(from->from)));
    }
    return Period{from->from, to->to, ""};
  }

  /// `2026`, `2026-05`, `2026-w19`.
  std::optional<Period> read_year_part(const std::string& words) const {
    const auto in_year = number_in(std::string_view(words).substr(0, std::min<std::size_t>(4, words.size())));
    if (!in_year || words.size() < 4 || *in_year < 1900 || *in_year > 2198) return std::nullopt;
    if (words.size() == 4) return year(*in_year);
    if (words[4] != '-') return std::nullopt;
    const std::string_view rest = std::string_view(words).substr(5);
    if (rest.starts_with('w')) return iso(*in_year, number_in(rest.substr(1)), words);
    const auto number = number_in(rest);
    if (!number || rest.size() != 2 || *number < 1 || *number > 12) return std::nullopt;
    return month(*in_year, *number);
  }

  std::optional<Period> iso(int year_number, std::optional<int> number, const std::string& words) const {
    if (!number || *number < 1) return std::nullopt;
    if (*number > iso_weeks_in(year_number)) {
      throw WrongUsage(
          fmt::format("period '{}': {} has {} weeks", words, year_number, iso_weeks_in(year_number)));
    }
    const Day thursday = first_of_iso_week(year_number, *number) + 3;
    return week(thursday, fmt::format("week {} of {}", *number, year_number).c_str());
  }

  Day today_;
  int week_start_;
  int season_month_;
  int season_day_;
};

}  // namespace

Period read_period(std::string_view words, Day today, int week_start, int season_month, int season_day) {
  const std::string asked = lower(join(split_words(words), " "));
  const auto period = Calendar(today, week_start, season_month, season_day).read(asked);
  if (period) return *period;
  const std::string near = nearest(asked, kWords);
  throw WrongUsage(
      fmt::format("period '{}' is not one; {}", words,
                  near.empty() ? "write a day (2026-05-05), a month (2026-05), a week (2026-w19), a year, "
                                 "FROM..TO, or one of: " +
                                     join(kWords, ", ")
                               : "did you mean " + near + "?"));
}

}  // namespace kerfbook::report
