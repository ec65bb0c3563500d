// A report of the user's own: read from a folder, checked with file, line and reason, in the list whatever is wrong.
#include <doctest/doctest.h>

#include "base/error.h"
#include "demo.h"
#include "render/renderer.h"

using namespace kerfbook;
using namespace kerfbook::report;

namespace {

constexpr const char* kHead =
    "-- report:  mine\n-- title:   Mine\n-- meaning: What it means,\n--          over two lines.\n-- "
    "takes:   from to\n";

std::string folder_with(const std::string& name,
                        const std::vector<std::pair<std::string, std::string>>& files) {
  const auto folder = fresh_file(name + ".d");
  std::filesystem::remove_all(folder);
  std::filesystem::create_directories(folder);
  for (const auto& [file, text] : files) std::ofstream(folder / file) << text;
  return folder.string();
}

}  // namespace

TEST_CASE("a good report has no fault, and its words run on over lines") {
  const std::string text =
      std::string(kHead) +
      "-- table:   days | Days\n-- shows:   day day \"Day\"\n-- shows:   bf lumber \"Lumber\" total=sum\n"
      "SELECT day, sum(lumber) AS bf FROM v_run WHERE day BETWEEN :from AND :to GROUP BY day;\n";
  CHECK(faults(text).empty());
  CHECK(read_report(text, "mine.sql").meaning == "What it means, over two lines.");
}

TEST_CASE("each fault of a report is told with its line and what would be right") {
  const std::string table = "-- table:   days | Days\n";
  using Faults = std::vector<std::string>;
  CHECK(faults(std::string(kHead) + "-- column: x\n" + table + "SELECT 1 AS x;\n").front() ==
        "6: 'column:' is not a word of a report's header; did you mean shows:?");
  CHECK(faults(std::string(kHead) + table + "-- shows:   day dya \"Day\"\nSELECT day FROM v_run;\n") ==
        Faults{"7: 'dya' is not a kind of column; did you mean day?"});
  CHECK(faults(std::string(kHead) + table + "-- shows:   day day \"Day\"\nSELECT day, job FROM v_run;\n") ==
        Faults{"7: the SELECT gives a column job that has no line; -- shows: job KIND \"Heading\""});
  CHECK(
      faults(std::string(kHead) + table + "-- shows:   dey day \"Day\"\nSELECT day FROM v_run;\n").front() ==
      "7: the SELECT gives no column dey; did you mean day?");
  CHECK(faults(std::string(kHead) + table + "-- shows:   x count \"X\"\nSELECT 1 AS x\nFROM nowhere;\n") ==
        Faults{"7: no such table: nowhere"});
  CHECK(
      faults(std::string(kHead) + table + "-- shows:   x count \"X\"\n\nSELECT 1 AS x,\n  y FROM v_run;\n") ==
      Faults{"10: no such column: y"});
  CHECK(faults(std::string(kHead) + table + "-- shows:   r ratio \"R\"\nSELECT 1 AS x;\n").front() ==
        "7: column r says of no two columns; of=A/B");
  CHECK(faults(std::string(kHead) + table + "-- shows:   x count \"X\"\nSELECT :jbo AS x;\n") ==
        Faults{"7: 'jbo' is not a parameter; one of :from, :to, :today, :week_start, :few_logs, :job, "
               ":customer, :species, :site, :setup, :against, :job_id, :customer_id, :species_id, :site_id, "
               ":setup_id, :against_id"});
  CHECK(faults(std::string(kHead) + table +
               "-- picture: bar across=day\n-- shows:   x count \"X\"\nSELECT 1 AS x;\n")
            .size() == 1);
  CHECK(faults("SELECT 1;\n").size() == 5);  // no name, no title, no meaning, no table, and not under one
  CHECK(
      faults("-- report: mine\n-- title: Mine\n-- meaning: What it means,\n         over two lines.\n" +
             table + "-- shows: x count \"X\"\nSELECT 1 AS x;\n") ==
      Faults{"4: 'over two lines.': of no table and no input; a line of the header begins with --; a SELECT "
             "stands under a table or an input"});
}

TEST_CASE("own reports join the list, one takes a built-in's place, and a bad one hides no other") {
  const std::string good = std::string(kHead) + "-- table: t |\n-- shows:  x count \"X\"\nSELECT 7 AS x;\n";
  const std::string mine =
      "-- report: production\n-- title: Own\n-- meaning: Own.\n-- table: t |\n-- shows:  x count \"X\"\n"
      "SELECT 7 AS x;\n";
  const auto reports = all_reports(folder_with(
      "own", {{"a.sql", good}, {"b.sql", "-- report: bad\n"}, {"c.sql", mine}, {"d.txt", "not one"}}));
  CHECK(reports.size() == all_reports("").size() + 2);
  CHECK(find_report(reports, "production").title == "Own");
  const auto& bad = find_report(reports, "bad");
  CHECK(bad.faults.size() == 3);
  const auto book = empty_book();
  CHECK_THROWS_AS(run_report(bad, book, {}, {}, kToday), Failed);
  const auto document = run_report(find_report(reports, "mine"), book, {}, {}, kToday);
  CHECK(document.tables.front().rows.front().cells.front() == render::Cell(std::int64_t{7}));
  CHECK_THROWS_AS(all_reports("/no/such/folder"), Refused);
}
