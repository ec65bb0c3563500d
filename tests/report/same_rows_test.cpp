// Days without sawing, hours under no job, weeks with a gap: every report of one period counts the same rows.
#include <doctest/doctest.h>

#include "tables.h"

using namespace kerfbook;
using namespace kerfbook::report;

namespace {

/// Two weeks, the first sawn, the second spent on repairs, then a move; figures worked by hand.
book::Book with_idle_days() {
  return small_book(
      "[[job]]\ncode = \"TER\"\n[[cost]]\nname = \"Wages\"\nrate = 20\nper = \"crew-hour\"\n",
      {"sheet 2026-04-27\nsite Tervane\njob TER\nspecies DF\ncrew Quill 24\nsawing 7:00-9:00\nlog 15x16\n"
       "2x12x10 10\nfuel 5 gal\nmeter 12.0\nteeth head replaced 2 metal\n",
       "sheet 2026-05-04\nsite yard\ncrew Quill 40\nstop 8:00 hydraulics\nfuel 14 gal\nmeter 20.0\n"
       "teeth head full-set 22 wear\n",
       "sheet 2026-05-06\nsawing 8:00-9:30\nmove yard to Tervane 12 mi 1:00\n"});
}

}  // namespace

TEST_CASE("a week of repairs keeps its crew hours, stops, fuel, engine hours and teeth") {
  const auto book = with_idle_days();
  CHECK(shown_rows(answer(book, "fuel")) ==
        "|2026-04-27|200.00|5.0|25.00|-|-|-|2|10.00|-|\n"
        "|2026-05-04|-|14.0|-|8.0|-|1.75|22|-|-|\n"
        "||200.00|19.0|95.00|8.0|40.00|2.38|24|120.00||\n");
}

TEST_CASE("production by week, month and year has the hours of production by day, sawn or not") {
  const auto book = with_idle_days();
  const auto day = answer(book, "production");
  for (const char* by : {"production-week", "production-month", "production-year"}) {
    const auto report = answer(book, by);
    for (const char* column : {"logs", "net_scale_bf", "lumber_bf", "pieces", "sawing_hours",
                               "bf_per_sawing_hour", "stop_hours", "crew_hours", "bf_per_crew_hour"}) {
      CHECK_MESSAGE(total_of(report, column) == total_of(day, column), by, " ", column);
    }
  }
  CHECK(total_of(day, "crew_hours") == "64.00");
  CHECK(total_of(day, "stop_hours") == "8.00");
  CHECK(column_of(answer(book, "production-week"), "crew_hours") == "24.00 40.00");
  CHECK(column_of(answer(book, "production-week"), "lumber_bf") == "200.00 -");
  CHECK(column_of(answer(book, "production-week"), "days") == "1 0");
}

TEST_CASE("pace, crew, moves and cost count the hours, lumber and days of production") {
  const auto book = with_idle_days();
  const auto pace = answer(book, "pace");
  CHECK(shown_rows(pace).starts_with("|-|0|-|-|1.50|-|40.00|-|-|\n|TER|1|200.00|10|2.00|100|24.00|8|5|\n"));
  CHECK(total_of(pace, "sawing_hours") == "3.50");
  CHECK(total_of(pace, "bf_per_sawing_hour") == "57");
  CHECK(total_of(pace, "crew_hours") == "64.00");
  CHECK(total_of(answer(book, "crew"), "hours") == "64.00");
  CHECK(total_of(answer(book, "moves"), "sawing_hours", 1) == "3.50");
  CHECK(total_of(answer(book, "moves"), "lumber_bf", 1) == "200.00");
  const auto cost = answer(book, "cost");  // 64 h at 20 over 200 bf
  CHECK(total_of(cost, "cost") == "$1,280.00");
  CHECK(total_of(cost, "per_mbf") == "$6,400.00");
  CHECK(total_of(cost, "cost", 1) == "$1,280.00");
  CHECK(total_of(cost, "lumber_bf", 1) == "200.00");
}

TEST_CASE("a month with lumber and no cost counts in the cost per MBF of all months") {
  const auto book =
      small_book("[[cost]]\nname = \"Hire\"\nrate = 20\nper = \"sawing-hour\"\n",
                 {"sheet 2026-03-02\n2x12x10 50\n", "sheet 2026-04-02\nsawing 7:00-8:00\n2x12x10 50\n"});
  const auto cost = answer(book, "cost");
  CHECK(shown_rows(cost, 1) ==
        "|2026-03|1,000.00|-|-|\n"
        "|2026-04|1,000.00|$20.00|$20.00|\n"
        "||2,000.00|$20.00|$10.00|\n");
  CHECK(total_of(cost, "per_mbf") == total_of(cost, "per_mbf", 1));
}

TEST_CASE("crew time under no job is divided by the day's sawing time, without a minute more or less") {
  const auto book = small_book("[[job]]\ncode = \"A\"\n[[job]]\ncode = \"B\"\n[[job]]\ncode = \"C\"\n",
                               {"sheet 2026-05-04\ncrew Quill 10, Bess 10\njob A\nsawing 7:00-8:00\n2x12x10 "
                                "1\njob B\nsawing 8:00-9:00\n"
                                "2x12x10 1\njob C\nsawing 9:00-10:00\n2x12x10 1\n"});
  const auto pace = answer(book, "pace");
  CHECK(column_of(pace, "crew_hours") == "6.67 6.67 6.67");
  CHECK(total_of(pace, "crew_hours") == "20.00");
  Ask one;
  one.job = "B";
  for (const char* name : {"pace", "production", "production-week", "production-month", "production-year"})
    CHECK_MESSAGE(total_of(answer(book, name, one), "crew_hours") == "6.67", name);
  CHECK(total_of(answer(book, "crew", one), "hours") == "6.67");
  CHECK(total_of(answer(book, "crew", one), "hours", 1) == "6.67");
  for (const char* name : {"production", "production-week", "production-month", "production-year"})
    CHECK_MESSAGE(total_of(answer(book, name, one), "sawing_hours") == "1.00", name);
}

TEST_CASE(
    "litres filled beside gallons are counted with them: 1 gal = 3.785411784 l (NIST Handbook 44, appendix "
    "C)") {
  const auto book = small_book("", {"sheet 2026-05-04\nfuel 10 gal\nfuel 38 l\n2x12x10 50\n",
                                    "sheet 2026-05-12\nfuel 3.8 l\n2x12x10 50\n"});
  const auto fuel = answer(book, "fuel");
  CHECK(column_of(fuel, "fuel") == "20.0 1.0");
  CHECK(total_of(fuel, "fuel") == "21.0");
  CHECK(total_of(fuel, "fuel_per_mbf") == "10.52");  // 10 + 41.8 / 3.785411784 = 21.0424 gal over 2 MBF
  const auto litres = answer(small_book("", {"sheet 2026-05-04\nfuel 30 l\n2x12x10 50\n"}), "fuel");
  CHECK(litres.tables[0].columns[column_at(litres.tables[0], "fuel")].unit == "l");
}

TEST_CASE("engine hours of a period that begins within a week are those of its own readings") {
  const auto book =
      small_book("[[cost]]\nname = \"Wear\"\nrate = 1\nper = \"engine-hour\"\n",
                 {"sheet 2026-05-04\nmeter 100.0\n2x12x10 1\n", "sheet 2026-05-05\nmeter 106.0\n2x12x10 1\n",
                  "sheet 2026-05-07\nmeter 109.0\n2x12x10 1\n"});
  const auto rest = days(make_day(2026, 5, 6), make_day(2026, 5, 8));
  CHECK(total_of(answer(book, "fuel", rest), "engine_hours") == "3.0");
  CHECK(cell_of(answer(book, "cost", rest), "quantity", 0) == "3.00");
  CHECK(total_of(answer(book, "fuel"), "engine_hours") == "9.0");
}

TEST_CASE("a rolling mean goes by the calendar: a gap is left out, and what lies before the period counts") {
  // 100, 200, nothing, nothing, 400, 500 bf in the weeks from 2026-03-02 on
  const auto sheet = [](const char* day, int boards) {
    return std::string("sheet ") + day + "\n2x12x10 " + std::to_string(boards) + "\n";
  };
  const auto book =
      small_book("", {sheet("2026-03-02", 5), sheet("2026-03-11", 10), "sheet 2026-03-18\ncrew Quill 8\n",
                      sheet("2026-03-31", 20), sheet("2026-04-06", 25)});
  // 100; 150; 150 with the week of crew time alone left out; (200 + 400) / 2; (400 + 500) / 2: the gap reaches no further
  CHECK(column_of(answer(book, "production-week"), "mean_bf") == "100 150 150 300 450");
  CHECK(column_of(answer(book, "production-week", days(make_day(2026, 4, 1), make_day(2026, 4, 30))),
                  "mean_bf") == "450");
  CHECK(column_of(answer(book, "production-week", days(make_day(2026, 3, 31), make_day(2026, 4, 30))),
                  "mean_bf") == "300 450");
  CHECK(column_of(answer(book, "production-month"), "mean_bf") == "700 600");
  CHECK(column_of(answer(book, "production-month", days(make_day(2026, 4, 1), make_day(2026, 4, 30))),
                  "mean_bf") == "600");
  const auto years =
      small_book("", {sheet("2022-03-02", 5), sheet("2025-03-11", 10), sheet("2026-03-31", 20)});
  CHECK(column_of(answer(years, "production-year"), "mean_bf") == "100 200 300");
  CHECK(column_of(answer(years, "production-year", days(make_day(2026, 1, 1), make_day(2026, 12, 31))),
                  "mean_bf") == "300");
}
