// day_test.cpp -- calendar days, ISO weeks, clock times and lengths of time.
#include "base/day.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <string>

namespace {

using namespace kerfbook;

TEST_CASE("a day is the count of days since 1970-01-01") {
  CHECK(make_day(1970, 1, 1).number == 0);
  CHECK(make_day(1970, 1, 2).number == 1);
  CHECK(make_day(2000, 3, 1).number == 11'017);  // 30 x 365 + 7 leap days + 31 + 29
  CHECK(make_day(1969, 12, 31).number == -1);
}

TEST_CASE("only days that exist are read, and only in one form") {
  CHECK(read_day("2026-05-05") == make_day(2026, 5, 5));
  CHECK(read_day("2024-02-29") == make_day(2024, 2, 29));
  for (const char* text :
       {"2026-02-29", "2100-02-29", "2026-04-31", "2026-13-01", "2026-00-10", "2026-05-00", "1899-12-31",
        "2200-01-01", "2026-5-5", "26-05-05", "2026/05/05", "05-05-2026", "2026-05-05 ", "", "2026-0a-05"}) {
    CAPTURE(text);
    CHECK_FALSE(read_day(text));
  }
  CHECK(read_day("1900-01-01"));
  CHECK(read_day("2199-12-31"));
}

TEST_CASE("days are written, named and counted") {
  CHECK(write_day(make_day(2026, 5, 5)) == "2026-05-05");
  CHECK(weekday_name(make_day(2026, 5, 5)) == "Tuesday");
  CHECK(weekday(make_day(2026, 5, 4)) == 1);
  CHECK(weekday(make_day(2026, 5, 10)) == 7);
  CHECK(month_name(1) == "January");
  CHECK(month_name(12) == "December");
  CHECK(make_day(2026, 3, 1) - make_day(2026, 2, 28) == 1);
  CHECK(make_day(2024, 3, 1) - make_day(2024, 2, 28) == 2);
  CHECK(make_day(2025, 12, 31) + 1 == make_day(2026, 1, 1));
  CHECK(make_day(2026, 1, 1) - 1 == make_day(2025, 12, 31));
}

// ISO 8601: weeks begin on Monday; week 1 is the week with the year's first Thursday.
TEST_CASE("a year has 53 weeks when it begins on a Thursday, or on a Wednesday in a leap year (ISO 8601)") {
  CHECK(iso_weeks_in(2026) == 53);  // begins on a Thursday
  CHECK(iso_weeks_in(2020) == 53);  // a leap year that begins on a Wednesday
  CHECK(iso_weeks_in(2015) == 53);
  CHECK(iso_weeks_in(2025) == 52);
  CHECK(iso_weeks_in(2027) == 52);
  for (int year = 1901; year < 2199; ++year) {
    CAPTURE(year);
    const int first = weekday(make_day(year, 1, 1));
    const bool leap = day_exists(year, 2, 29);
    CHECK((iso_weeks_in(year) == 53) == (first == 4 || (leap && first == 3)));
  }
}

TEST_CASE("the week across New Year belongs to the year that has its Thursday (ISO 8601)") {
  CHECK(iso_week(make_day(2026, 12, 28)) == IsoWeek{2026, 53});
  CHECK(iso_week(make_day(2027, 1, 1)) == IsoWeek{2026, 53});
  CHECK(iso_week(make_day(2027, 1, 3)) == IsoWeek{2026, 53});
  CHECK(iso_week(make_day(2027, 1, 4)) == IsoWeek{2027, 1});
  CHECK(iso_week(make_day(2025, 12, 29)) == IsoWeek{2026, 1});
  CHECK(iso_week(make_day(2026, 1, 4)) == IsoWeek{2026, 1});
  CHECK(iso_week(make_day(2021, 1, 3)) == IsoWeek{2020, 53});
  CHECK(first_of_iso_week(2026, 1) == make_day(2025, 12, 29));
  CHECK(first_of_iso_week(2026, 53) == make_day(2026, 12, 28));
}

TEST_CASE("every day is written and read back the same, and lies in its own week") {
  CHECK(rc::check("days from 1901 to 2198", [](std::uint32_t any) {
    const Day first = make_day(1901, 1, 1);
    const Day day = first + static_cast<int>(any % static_cast<unsigned>(make_day(2198, 12, 31) - first));
    RC_ASSERT(read_day(write_day(day)) == day);
    const auto [year, month, number] = parts(day);
    RC_ASSERT(make_day(year, month, number) == day);
    const IsoWeek week = iso_week(day);
    RC_ASSERT(week.week >= 1);
    RC_ASSERT(week.week <= iso_weeks_in(week.year));
    RC_ASSERT(first_of_iso_week(week.year, week.week) + (weekday(day) - 1) == day);
  }));
}

TEST_CASE("clock times are read from 0:00 to 24:00") {
  CHECK(read_clock("7:15") == 435);
  CHECK(read_clock("07:15") == 435);
  CHECK(read_clock("0:00") == 0);
  CHECK(read_clock("23:59") == 1439);
  CHECK(read_clock("24:00") == 1440);
  CHECK(read_clock("0715") == 435);
  CHECK(read_clock("2400") == 1440);
  CHECK(read_clock("7h15") == 435);
  CHECK(read_clock("7h") == 420);
  for (const char* text : {"24:01", "25:00", "7:60", "7:5", "7", "7.15", ":15", "7:", "-7:15", "7:15am",
                           "715", "0760", "2500", "7h5", "h15", ""}) {
    CAPTURE(text);
    CHECK_FALSE(read_clock(text));
  }
  CHECK(write_clock(435) == "7:15");
  CHECK(write_clock(600) == "10:00");
  CHECK(write_clock(5) == "0:05");
}

TEST_CASE("a span that ends before it begins goes past midnight") {
  CHECK(read_span("7:15-10:20")->minutes() == 185);
  CHECK(read_span("22:00-2:30")->minutes() == 270);
  CHECK(read_span("0:00-24:00")->minutes() == 1440);
  CHECK(read_span("16:00 - 16:40")->minutes() == 40);
  for (const char* text : {"7:15", "7:15-", "-7:15", "7:15-7:15", "24:00-1:00", "7-9", ""}) {
    CAPTURE(text);
    CHECK_FALSE(read_span(text));
  }
  CHECK(write_span({435, 620}) == "7:15-10:20");
}

TEST_CASE("a length of time is read as hours and minutes, hours, or minutes") {
  CHECK(read_duration("0:36") == 36);
  CHECK(read_duration("3:45") == 225);
  CHECK(read_duration("9") == 540);
  CHECK(read_duration("9.5") == 570);
  CHECK(read_duration("1.25h") == 75);
  CHECK(read_duration("1.25 H") == 75);
  CHECK(read_duration("90min") == 90);
  CHECK(read_duration("45 min") == 45);
  CHECK(read_duration("0.9") == 54);
  CHECK(read_duration("1h30") == 90);
  CHECK(read_duration("1h") == 60);
  CHECK(read_duration("36m") == 36);
  for (const char* text : {"999999999999999999", "99999999999999999h", "", "h", "min", "0:60", "1:5", "-1",
                           "1:30h", "1h3", "1h60", "0715", "200", "half"}) {
    CAPTURE(text);
    CHECK_FALSE(read_duration(text));
  }
  CHECK(write_duration(225) == "3:45");
}

TEST_CASE("a length of time is written so that it is read back the same") {
  CHECK(rc::check("durations", [](std::uint16_t any) {
    const int minutes = any % 6000;
    RC_ASSERT(read_duration(write_duration(minutes)) == minutes);
  }));
}

}  // namespace
