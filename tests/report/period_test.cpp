// Words people say for a stretch of days: weeks across New Year, 53-week years, seasons.
#include <doctest/doctest.h>

#include "base/error.h"
#include "report/report.h"

using namespace kerfbook;
using kerfbook::report::read_period;

namespace {

std::string days(std::string_view words, const char* today = "2026-05-08", int week_start = 1,
                 int season_month = 3, int season_day = 1) {
  const auto period = read_period(words, *read_day(today), week_start, season_month, season_day);
  return write_day(period.from) + ".." + write_day(period.to);
}

}  // namespace

TEST_CASE("period words of a plain week in May") {
  CHECK(days("2026-05-05") == "2026-05-05..2026-05-05");
  CHECK(days("today") == "2026-05-08..2026-05-08");
  CHECK(days("Yesterday") == "2026-05-07..2026-05-07");
  CHECK(days("this  week") == "2026-05-04..2026-05-10");
  CHECK(days("last week") == "2026-04-27..2026-05-03");
  CHECK(days("this month") == "2026-05-01..2026-05-31");
  CHECK(days("last month") == "2026-04-01..2026-04-30");
  CHECK(days("2026-02") == "2026-02-01..2026-02-28");
  CHECK(days("2024-02") == "2024-02-01..2024-02-29");
  CHECK(days("2026-w19") == "2026-05-04..2026-05-10");
  CHECK(days("2026-W19") == "2026-05-04..2026-05-10");
  CHECK(days("2026") == "2026-01-01..2026-12-31");
  CHECK(days("last year") == "2025-01-01..2025-12-31");
  CHECK(days("2026-05-04..2026-05-06") == "2026-05-04..2026-05-06");
  CHECK(days("2026-04..2026-05-06") == "2026-04-01..2026-05-06");
}

TEST_CASE("a week begins on the day the mill says") {
  CHECK(days("this week", "2026-05-08", 7) == "2026-05-03..2026-05-09");
  CHECK(days("this week", "2026-05-10", 7) == "2026-05-10..2026-05-16");
  CHECK(days("last week", "2026-05-08", 6) == "2026-04-25..2026-05-01");
}

TEST_CASE("a week across New Year is one week, asked for by either side") {
  CHECK(days("this week", "2027-01-01") == "2026-12-28..2027-01-03");
  CHECK(days("this week", "2026-12-31") == "2026-12-28..2027-01-03");
  CHECK(days("last month", "2027-01-15") == "2026-12-01..2026-12-31");
}

TEST_CASE("a year of 53 weeks has its last week, one of 52 has none") {
  // ISO 8601: a year has 53 weeks when 1 January is a Thursday, or a Wednesday of a leap year. 2026-01-01 is a Thursday.
  CHECK(days("2026-w53") == "2026-12-28..2027-01-03");
  CHECK(days("2020-w53") == "2020-12-28..2021-01-03");
  CHECK(days("2027-w01") == "2027-01-04..2027-01-10");
  CHECK_THROWS_WITH_AS(days("2025-w53"), "period '2025-w53': 2025 has 52 weeks", WrongUsage);
}

TEST_CASE("the season begins when the mill says and reaches over New Year") {
  CHECK(days("season") == "2026-03-01..2027-02-28");
  CHECK(days("season", "2026-02-28") == "2025-03-01..2026-02-28");
  CHECK(days("last season") == "2025-03-01..2026-02-28");
  CHECK(days("season", "2026-05-08", 1, 10, 15) == "2025-10-15..2026-10-14");
  CHECK(days("season", "2026-05-08", 1, 2, 29) == "2026-03-01..2027-02-28");
}

TEST_CASE("what is no period is refused with what would be right") {
  CHECK_THROWS_WITH_AS(days("lats week"), "period 'lats week' is not one; did you mean last week?",
                       WrongUsage);
  CHECK_THROWS_AS(days("2026-13"), WrongUsage);
  CHECK_THROWS_AS(days("2026-02-30"), WrongUsage);
  CHECK_THROWS_AS(days(""), WrongUsage);
  CHECK_THROWS_AS(days("2026-w0"), WrongUsage);
  CHECK_THROWS_WITH_AS(days("2026-05-08..2026-05-01"),
                       "period '2026-05-08..2026-05-01': 2026-05-01 is before 2026-05-08", WrongUsage);
}
