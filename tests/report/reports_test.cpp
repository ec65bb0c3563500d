// Every built-in report on the demo week and on an empty book: whole text against golden files, totals against lines.
// KERFBOOK_UPDATE_GOLDEN=1 writes the goldens anew; read them before they are committed.
#include <doctest/doctest.h>

#include <cstdlib>

#include "base/error.h"
#include "demo.h"
#include "render/renderer.h"

using namespace kerfbook;
using namespace kerfbook::report;

namespace {

void check_golden(const std::string& name, const std::string& made) {
  const std::string path = std::string(KERFBOOK_ROOT) + "/tests/report/golden/" + name;
  if (std::getenv("KERFBOOK_UPDATE_GOLDEN") != nullptr) std::ofstream(path, std::ios::binary) << made;
  CHECK_MESSAGE(file_text(path) == made, "differs from " << path);
}

std::int64_t units(const render::Cell& cell) {
  if (const auto* count = std::get_if<std::int64_t>(&cell)) return *count;
  if (const auto* decimal = std::get_if<Decimal>(&cell)) return decimal->units;
  return 0;
}

void check_totals(const render::Table& table, const std::string& where) {
  for (std::size_t c = 0; c < table.totals.size(); ++c) {
    if (table.columns[c].total != render::TotalKind::sum) continue;
    std::int64_t sum = 0;
    for (const auto& row : table.rows) sum += row.struck ? 0 : units(row.cells[c]);
    CHECK_MESSAGE(sum == units(table.totals[c]), where << "." << table.columns[c].name);
  }
}

const render::Table& first(const render::Document& document) {
  return document.tables.front();
}

std::string total(const render::Table& table, const std::string& column) {
  for (std::size_t c = 0; c < table.columns.size(); ++c) {
    if (table.columns[c].name != column) continue;
    const auto& cell = table.totals.at(c);
    if (const auto* count = std::get_if<std::int64_t>(&cell)) return std::to_string(*count);
    if (const auto* decimal = std::get_if<Decimal>(&cell)) return plain(*decimal);
  }
  return "";
}

render::Document run(const book::Book& book, const std::string& name, const Ask& ask = {}) {
  return run_report(find_report(all_reports(""), name), book, ask, {}, kToday);
}

}  // namespace

TEST_CASE("every built-in report passes its own check, and says what its figures mean") {
  const auto book = empty_book();
  for (const auto& report : all_reports("")) {
    const auto found = check_report(report, book);
    CHECK_MESSAGE(found.empty(), show_all(found, report.path, report.text));
    CHECK_MESSAGE(report.meaning.size() > 60, report.name);
  }
}

TEST_CASE("every report on the demo week and on an empty book is what its golden file says") {
  const auto full = demo_week();
  const auto empty = empty_book();
  for (const auto& report : all_reports("")) {
    check_golden(report.name + ".full.txt", render::render_text(run_report(report, full, {}, {}, kToday)));
    check_golden(report.name + ".empty.txt", render::render_text(run_report(report, empty, {}, {}, kToday)));
  }
}

TEST_CASE("every footed total equals the sum of the lines printed above it") {
  const auto book = demo_week();
  for (const auto& report : all_reports("")) {
    const auto document = run_report(report, book, {}, {}, kToday);
    for (const auto& table : document.tables) check_totals(table, report.name + "." + table.name);
    Ask rescaled;
    rescaled.rule = "doyle";
    const auto again = run_report(report, book, rescaled, {}, kToday);
    for (const auto& table : again.tables) check_totals(table, report.name + " by doyle." + table.name);
  }
}

TEST_CASE("the demo week's production is the week it was invented to be") {
  const auto document = run(demo_week(), "production");
  const auto& week = first(document);
  CHECK(week.rows.size() == 5);
  CHECK(total(week, "logs") == "54");
  CHECK(total(week, "pieces") == "523");
  CHECK(total(week, "lumber_bf") == "6486.75");
  CHECK(total(week, "net_scale_bf") == "6300");
  CHECK(total(week, "overrun_percent") == "3.0");
  CHECK(total(week, "sawing_hours") == "26.75");
  CHECK(total(week, "bf_per_sawing_hour") == "242");
  CHECK(total(week, "crew_hours") == "91.00");
}

TEST_CASE("under a job, production counts that job's own logs, lumber and sawing spans") {
  Ask ask;
  ask.job = "ter";
  const auto document = run(demo_week(), "production", ask);
  CHECK(total(first(document), "logs") == "26");
  CHECK(total(first(document), "lumber_bf") == "3043.33");
  CHECK(total(first(document), "net_scale_bf") == "3155");
  CHECK(total(first(document), "overrun_percent") == "-3.5");
  CHECK(total(first(document), "sawing_hours") == "12.50");
}

TEST_CASE("a struck line is in sight and in no total") {
  Ask ask;
  ask.job = "QHH";
  const auto document = run(demo_week(), "tally", ask);
  CHECK(total(first(document), "pieces") == "68");
  CHECK(total(first(document), "bf") == "893.33");
  const auto& struck = document.tables.back();
  REQUIRE(struck.rows.size() == 1);
  CHECK(struck.rows.front().struck);
  CHECK(struck.totals.empty());
}

TEST_CASE("another rule scales the logs anew and leaves the book as it is") {
  const auto book = demo_week();
  Ask ask;
  ask.rule = "doyle";
  const auto doyle = run(book, "overrun", ask);
  CHECK(total(first(doyle), "logs") == "54");
  CHECK(total(first(doyle), "lumber_bf") == "6486.75");
  CHECK(total(first(doyle), "net_scale_bf") != "6300");
  CHECK(total(first(run(book, "overrun")), "net_scale_bf") == "6300");
  ask.rule = "doile";
  CHECK_THROWS_WITH_AS(run(book, "overrun", ask), "rule 'doile' is not known; did you mean doyle?", Refused);
}

TEST_CASE("a filter that names nothing of the book is refused with the nearest") {
  const auto book = demo_week();
  Ask ask;
  ask.job = "TERR";
  CHECK_THROWS_WITH_AS(run(book, "production", ask), "job 'TERR' is not in the book; did you mean TER?",
                       Refused);
  Ask species;
  species.species = "DF";
  CHECK_THROWS_AS(run(book, "downtime", species), WrongUsage);
  CHECK_THROWS_AS(find_report(all_reports(""), "produktion"), WrongUsage);
}
