// A worked report: its inputs go to a worker in C++, whose rows become tables in every form; what is wrong between header
// and worker is told with its line.
#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "base/error.h"
#include "render/golden.h"
#include "render/outputs.h"
#include "render/outputs_check.h"
#include "report/packet.h"
#include "report/workers.h"
#include "tables.h"

using namespace kerfbook;
using namespace kerfbook::report;

namespace {

constexpr const char* kHead =
    "-- report:  slowing\n-- title:   Slowing\n-- meaning: Board feet by logs, and the line through them.\n"
    "-- takes:   from to\n-- worked:  straight-line\n";
constexpr const char* kPoints = "-- input:   points\nSELECT logs AS x, logs * 3 + 4 AS y FROM v_sheet;\n";
constexpr const char* kTables =
    "-- table:   line | The line\n-- shows:   points count \"Days\"\n-- shows:   at_zero micro:2 \"At "
    "nothing\" "
    "unit=bf\n-- shows:   slope micro:3 \"A log\" unit=bf\n-- shows:   slope_lower micro:3 \"From\"\n"
    "-- shows:   slope_upper micro:3 \"To\"\n"
    "-- table:   days | Days\n-- shows:   day day \"Day\"\n-- shows:   logs count \"Logs\" total=sum\n"
    "SELECT day, logs FROM v_sheet ORDER BY day;\n";

render::Document run(const book::Book& book) {
  return run_report(read_report(std::string(kHead) + kPoints + kTables, "mine.sql"), book, {}, {}, kToday);
}

}  // namespace

TEST_CASE("a worker's rows fill the table that has no SELECT, its finding stands above, its note below") {
  const auto document = run(demo_week());
  CHECK(document.lead == std::vector<std::string>{"The line rises."});
  CHECK(shown_rows(document) == "|5|4.00|3.000|3.000|3.000|\n");  // y was made of x so
  CHECK(document.tables.at(0).notes.at(0).starts_with("Least squares"));
  CHECK(total_of(document, "logs", 1) == "54");  // a table of SQL stands beside it
}

TEST_CASE("a worked report has the same figures and its finding in every form, full and empty") {
  const auto full = run(demo_week());
  render::check_forms(full, "a worked report");
  render::check_forms(run(empty_book()), "a worked report of nothing");
  CHECK(run(empty_book()).lead == std::vector<std::string>{"Too few points for a line."});
  CHECK(render::render_text(full).find("The line rises.") != std::string::npos);
  CHECK(render::render_html(full).find("The line rises.") != std::string::npos);
  CHECK(render::listing(render::read_workbook(render::render_xlsx(full))).find("The line rises.") !=
        std::string::npos);
  CHECK(nlohmann::json::parse(render::render_json(full)).at("lead").at(0) == "The line rises.");
}

TEST_CASE("in a packet a worked report keeps its finding, under its first table") {
  const auto report = read_report(std::string(kHead) + kPoints + kTables, "mine.sql");
  const auto whole = packet({report}, {"slowing"}, demo_week(), {}, {}, kToday);
  CHECK(whole.tables.at(0).name == "slowing.line");
  CHECK(std::count(whole.tables.at(0).notes.begin(), whole.tables.at(0).notes.end(), "The line rises.") == 1);
}

TEST_CASE("what is wrong between a worked report's header and its worker is told with its line") {
  using Faults = std::vector<std::string>;
  const std::string head = kHead;
  CHECK(faults(head + kPoints + kTables).empty());
  CHECK(faults("-- report: a\n-- title: A\n-- meaning: M.\n-- worked: strait-line\n" + std::string(kPoints) +
               kTables) == Faults{"4: there is no worker 'strait-line'; did you mean straight-line?"});
  CHECK(faults(head + kTables) ==
        Faults{"5: straight-line reads an input points; -- input: points, and a SELECT of x, y"});
  CHECK(faults(head + "-- input: points\nSELECT logs AS x, logs AS z FROM v_sheet;\n" + kTables) ==
        Faults{"7: the SELECT gives no column y; straight-line reads x, y of it",
               "7: the SELECT gives a column z, which straight-line does not read; one of x, y"});
  CHECK(faults(head + kPoints + "-- table: lines |\n-- shows: points count \"Days\"\n") ==
        Faults{"9: straight-line makes no table lines; give it a SELECT, or did you mean line?"});
  CHECK(faults(head + kPoints +
               "-- table: line |\n-- shows: points count \"Days\"\n-- shows: at_zero micro "
               "\"A\"\n-- shows: slope micro \"B\"\n-- shows: slope_lower micro \"C\"\n") ==
        Faults{"9: the worker gives a column slope_upper that has no line; -- shows: slope_upper KIND "
               "\"Heading\""});
  CHECK(faults(head + "-- input: points\n-- shows: x count \"X\"\nSELECT 1 AS x, 2 AS y;\n" + kTables) ==
        Faults{"7: 'shows:' in an input, which is no table; its rows go to the worker; what is shown stands "
               "under the tables"});
  CHECK(faults(head + "-- input: points\nSELECT 1 AS x, 2 AS y FROM mill;\n" + kTables)
            .front()
            .starts_with("7: "));  // behind the guard as every SELECT is
  CHECK(faults("-- report: a\n-- title: A\n-- meaning: M.\n" + std::string(kPoints) +
               "-- table: t |\n-- shows: x count \"X\"\nSELECT 1 AS x;\n") ==
        Faults{"5: an input, and no worker to read it; -- worked: name"});
}

TEST_CASE(
    "a report that is wrong for its worker is refused when it is run, and a text for a number with its "
    "line") {
  const auto book = demo_week();
  const auto said = [&](const std::string& text) {
    try {
      run_report(read_report(text, "mine.sql"), book, {}, {}, kToday);
    } catch (const Failed& failed) {
      return std::string(failed.what());
    }
    return std::string("nothing");
  };
  CHECK(said(std::string(kHead) + kTables).find("straight-line reads an input points") != std::string::npos);
  CHECK(said(std::string(kHead) + "-- input: points\nSELECT 'ten' AS x, 2 AS y FROM v_sheet;\n" + kTables) ==
        "mine.sql:7: report slowing: column x takes whole numbers, not 'ten'");
}

TEST_CASE("a built-in worked report names a worker there is, and every worker's columns are its own") {
  for (const auto& worker : workers()) {
    CHECK(find_worker(worker.name) == &worker);
    CHECK((worker.work != nullptr));
    CHECK(!worker.gives.empty());
  }
  CHECK(find_worker("nobody") == nullptr);
}
