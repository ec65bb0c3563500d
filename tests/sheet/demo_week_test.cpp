// demo_week_test.cpp -- the demo week's sheets say what the demo week says: counted by hand, here counted again.
#include <doctest/doctest.h>

#include <map>

#include "scaling/practice.h"
#include "sheet/facts.h"
#include "sheet/read.h"
#include "sheet/support.h"

using namespace kerfbook;
using namespace kerfbook::sheet;

namespace {

struct DayFigures {
  int logs = 0;
  int lines = 0;
  std::int64_t pieces = 0;
  Rational bf;
  std::int64_t gross = 0;  ///< International 1/4, each log to the nearest 5 bf
  std::int64_t deducted = 0;
  int sawing_minutes = 0;
  int crew_minutes = 0;
  std::map<std::string, Rational> bf_of_job;
  std::int64_t last_meter = 0;
  Rational fuel;
};

std::int64_t gross_of(const LogLine& log) {
  scaling::Practice house = *scaling::find_practice("international-quarter");
  house.result = scaling::ResultRounding::nearest_5;
  return scaling::scale(*log.measure, {}, house)->gross / scaling::kPerUnit;
}

DayFigures count(const std::string& file) {
  const ReadSheet got = read(read_file("demo_data/" + file));
  REQUIRE_MESSAGE(got.found.empty(), show_all(got.found, file, read_file("demo_data/" + file)));
  DayFigures out;
  for (const DatedFact& fact : facts(got.sheet)) {
    if (const auto* log = std::get_if<LogLine>(&fact.line->fact)) {
      ++out.logs;
      out.gross += gross_of(*log);
      for (const auto& defect : log->defects) out.deducted += defect.amount.rounded(0);
    } else if (const auto* tally = std::get_if<Tally>(&fact.line->fact)) {
      const auto& item = tally->items[fact.item];
      const Rational bf = measure::board_feet(measure::volume(tally->size, item.length, item.pieces));
      ++out.lines;
      out.pieces += item.pieces;
      out.bf = out.bf + bf;
      out.bf_of_job[fact.context.job] = out.bf_of_job[fact.context.job] + bf;
    } else if (const auto* run = std::get_if<Sawing>(&fact.line->fact)) {
      for (const Span& span : run->spans) out.sawing_minutes += span.minutes();
    } else if (const auto* crew = std::get_if<Crew>(&fact.line->fact)) {
      out.crew_minutes += crew->hands[fact.item].minutes;
    } else if (const auto* meter = std::get_if<Meter>(&fact.line->fact)) {
      out.last_meter = meter->tenths;
    } else if (const auto* fuel = std::get_if<Fuel>(&fact.line->fact)) {
      out.fuel = out.fuel + fuel->quantity;
    }
  }
  return out;
}

std::int64_t cents(const Rational& bf) {
  return bf.rounded(2);
}

}  // namespace

TEST_CASE("each day of the demo week counts the logs, lines, pieces, board feet and hours of its row") {
  struct Row {
    const char* file;
    int logs, lines;
    std::int64_t pieces, bf_hundredths, net;
    int sawing_minutes, crew_minutes;
    std::int64_t meter, fuel_tenths;
  };
  // counted from the week's table by hand
  for (const Row& row : {Row{"2026-05-04.sheet", 12, 32, 109, 156067, 1590, 375, 1080, 18494, 94},
                         Row{"2026-05-05.sheet", 10, 21, 74, 110933, 1160, 285, 1080, 18546, 73},
                         Row{"2026-05-06.sheet", 8, 37, 59, 81467, 825, 195, 1080, 18582, 51},
                         Row{"2026-05-07.sheet", 13, 27, 123, 165800, 1285, 360, 1140, 18648, 92},
                         Row{"corrections/2026-05-07.sheet", 13, 27, 114, 156200, 1285, 360, 1140, 18648, 92},
                         Row{"2026-05-08.sheet", 11, 37, 167, 144008, 1440, 390, 1080, 18719, 98}}) {
    CAPTURE(row.file);
    const DayFigures day = count(row.file);
    CHECK(day.logs == row.logs);
    CHECK(day.lines == row.lines);
    CHECK(day.pieces == row.pieces);
    CHECK(cents(day.bf) == row.bf_hundredths);
    CHECK(day.gross - day.deducted == row.net);
    CHECK(day.sawing_minutes == row.sawing_minutes);
    CHECK(day.crew_minutes == row.crew_minutes);
    CHECK(day.last_meter == row.meter);
    CHECK(day.fuel.rounded(1) == row.fuel_tenths);
  }
}

TEST_CASE(
    "the demo week as corrected is 54 logs, 154 tally lines, 523 pieces and 6,486.75 bf on 6,300 bf net") {
  DayFigures week;
  for (const char* file : {"2026-05-04.sheet", "2026-05-05.sheet", "2026-05-06.sheet",
                           "corrections/2026-05-07.sheet", "2026-05-08.sheet"}) {
    const DayFigures day = count(file);
    week.logs += day.logs;
    week.lines += day.lines;
    week.pieces += day.pieces;
    week.bf = week.bf + day.bf;
    week.gross += day.gross;
    week.deducted += day.deducted;
    week.sawing_minutes += day.sawing_minutes;
    for (const auto& [job, bf] : day.bf_of_job) week.bf_of_job[job] = week.bf_of_job[job] + bf;
  }
  CHECK(week.logs == 54);
  CHECK(week.lines == 154);
  CHECK(week.pieces == 523);
  CHECK(week.bf == Rational(648675, 100));
  CHECK(week.gross == 6375);
  CHECK(week.deducted == 75);
  CHECK(week.sawing_minutes == 26 * 60 + 45);
  CHECK(cents(week.bf_of_job["TER"]) == 304333);
  CHECK(cents(week.bf_of_job["QHH"]) == 89333);
  CHECK(cents(week.bf_of_job["MUM"]) == 95842);
  CHECK(cents(week.bf_of_job["own"]) == 159167);
}

TEST_CASE("Thursday's correction changes one tally line and nothing else") {
  const Sheet first = read(read_file("demo_data/2026-05-07.sheet")).sheet;
  const Sheet second = read(read_file("demo_data/corrections/2026-05-07.sheet")).sheet;
  REQUIRE(first.lines.size() == second.lines.size());
  int changed = 0;
  for (std::size_t i = 0; i < first.lines.size(); ++i) changed += first.lines[i] == second.lines[i] ? 0 : 1;
  CHECK(changed == 1);
  CHECK(count("2026-05-07.sheet").bf_of_job["QHH"] - count("corrections/2026-05-07.sheet").bf_of_job["QHH"] ==
        Rational(96));
}
