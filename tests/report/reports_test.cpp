// The built-in reports: that each is sound, that the demo week comes out as it was invented, that filters and rules do
// what they say. Whole outputs are in golden_test.cpp, the forms against one another in forms_test.cpp.
#include <doctest/doctest.h>

#include <SQLiteCpp/SQLiteCpp.h>

#include <algorithm>

#include "base/error.h"
#include "demo.h"

using namespace kerfbook;
using namespace kerfbook::report;

namespace {

const render::Table& first(const render::Document& document) {
  return document.tables.front();
}

std::string total(const render::Table& table, const std::string& column) {
  for (std::size_t c = 0; c < table.columns.size(); ++c) {
    if (table.columns[c].name != column) continue;
    const auto& cell = table.totals.at(c);
    if (const auto* count = std::get_if<std::int64_t>(&cell)) return std::to_string(*count);
    if (const auto* figure = std::get_if<render::Figure>(&cell)) return plain(figure->shown());
  }
  return "";
}

render::Document run(const book::Book& book, const std::string& name, const Ask& ask = {}) {
  return run_report(find_report(all_reports(""), name), book, ask, {}, kToday);
}

std::string capital(std::string word) {
  word.front() = static_cast<char>(word.front() - 'a' + 'A');
  return word;
}

}  // namespace

TEST_CASE("a built-in report is found by its file, by whatever case it is typed in; a part is no report") {
  for (const auto& report : all_reports("")) {
    const ReportFile one = report_named("", capital(report.name));
    CHECK(one.name == report.name);
    CHECK(one.text == report.text);
  }
  CHECK_THROWS_AS(report_named("", "parts/production-by"), WrongUsage);
}

TEST_CASE("every built-in report passes its own check, and says what its figures mean") {
  const auto book = empty_book();
  for (const auto& report : all_reports("")) {
    const auto found = check_report(report, book);
    CHECK_MESSAGE(found.empty(), show_all(found, report.path, report.text));
    CHECK_MESSAGE(report.meaning.size() > 60, report.name);
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

TEST_CASE("a day that was sawn and gave no lumber counts in the rate of the period as it does in its hours") {
  auto book = empty_book();
  book.post_sheet("sheet 2026-05-04\nrun 7:00-17:00\n2x6 20/16\n", "");
  book.post_sheet("sheet 2026-05-05\nrun 7:00-9:00\n", "");
  const auto document = run(book, "production");
  CHECK(total(first(document), "lumber_bf") == "320.00");
  CHECK(total(first(document), "sawing_hours") == "12.00");
  CHECK(total(first(document), "bf_per_sawing_hour") == "27");  // 320 / 12; 32 is the rate of one of the days
}

TEST_CASE("a period's lines are the nearest figures, and where they miss the total the foot says so") {
  auto book = empty_book();
  for (const char* day : {"04", "05", "06"})
    book.post_sheet("sheet 2026-05-" + std::string(day) + "\nrun 7:00-8:00\n2x4 1/8\n", "");
  const auto document = run(book, "production");
  const auto& days = first(document);
  CHECK(total(days, "lumber_bf") == "16.00");  // 3 x 5 1/3
  CHECK(std::count(
            days.notes.begin(), days.notes.end(),
            "Lumber: the lines as printed add to 15.99; the total is the exact sum, rounded: 16.00.") == 1);
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

TEST_CASE("under another rule a book with doctored views gives what the same book without them gives") {
  Ask ask;
  ask.rule = "doyle";
  const auto file = demo_week().file();
  const auto of = [&](const Ask& asked) {
    auto options = on_friday();
    options.read_only = true;
    const auto book = book::Book::open(file, options);
    billing::register_unbilled(book);
    std::string all;
    for (const Ask& one : {asked, Ask{}}) {  // and afterwards under the rules the logs were posted by
      const auto document = run(book, "overrun", one);
      for (const char* column : {"logs", "net_scale_bf", "lumber_bf", "overrun_percent"})
        all += total(first(document), column) + " ";
      all += std::to_string(first(document).rows.size()) + "\n";
    }
    return all;
  };
  const std::string before = of(ask);
  SQLite::Database(file.string(), SQLite::OPEN_READWRITE)
      .exec(
          "DROP VIEW v_log_id; DROP VIEW v_log; DROP VIEW v_run_id;"
          "CREATE VIEW v_log_id AS SELECT 1 AS \"a, (SELECT 7) FROM journal; --\", 2 AS day;"
          "CREATE VIEW v_log AS SELECT * FROM v_log; CREATE VIEW v_run_id AS SELECT 'x' AS \"y\"\"z\"");
  CHECK(of(ask) == before);
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
