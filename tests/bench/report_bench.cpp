// report_bench.cpp -- what a report costs on a book of one year and of twenty: day, week and month reports must cost the
// same on both; all-history reports are set against hand-written SQL on the base tables in the same run.
// The books are filled by SQL (230 days a year, 50 tally lines, 12 logs, 2 runs a day), not posted.
#include <fmt/format.h>

#include <SQLiteCpp/SQLiteCpp.h>
#include <algorithm>
#include <chrono>
#include <filesystem>
#include <functional>
#include <vector>

#include "report/report.h"

using namespace kerfbook;

namespace {

constexpr int kDaysAYear = 230;
constexpr int kFirstDay = 13'000;

const char* const kFill = R"~(
INSERT INTO journal VALUES (1, 'sheet', 'bench', 1, '2006-01-01 20:00:00', '', '', printf('%064d', 0));
INSERT INTO site(id, name) VALUES (1, 'yard'), (2, 'farm');
INSERT INTO species(id, code) VALUES (1, 'DF'), (2, 'WH');
INSERT INTO customer(id, code) VALUES (1, 'TER');
INSERT INTO job(id, code, customer, owner) VALUES (1, 'TER', 1, 'customer'), (2, 'own', NULL, 'own');
INSERT INTO setup(id, name) VALUES (1, 'first');
INSERT INTO size(id, label, thickness, width, metric, quarters) VALUES
  (1,'1x4',64,256,0,0), (2,'1x6',64,384,0,0), (3,'2x4',128,256,0,0), (4,'2x6',128,384,0,0), (5,'2x8',128,512,0,0);
CREATE TEMP TABLE d AS WITH RECURSIVE n(i) AS (SELECT 0 UNION ALL SELECT i + 1 FROM n WHERE i + 1 < :days)
  SELECT 13000 + i AS day FROM n;
CREATE TEMP TABLE n50 AS WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 50) SELECT i FROM n;
INSERT INTO sheet SELECT day, 1, 1, 0, 1, 360, 40, 1080, 0 FROM d;
INSERT INTO run SELECT day, 1, r.i, r.i, r.i, r.i, NULL, 'international-quarter', 'bf', 6, 0, 700000000, 700000000,
  100000000, 25, 0, 0, 0 FROM d, (SELECT i FROM n50 WHERE i < 3) r;
INSERT INTO tally SELECT day, 1, (i + 20) * 1000, 1 + i % 2, 1 + (i + day) % 5, NULL, NULL, 'sawn', 'piece', 1 + i % 4,
  768 * (8 + 2 * (i % 5)), 0, 0, 0, NULL FROM d, n50;
UPDATE tally SET lumber = pieces * length * (SELECT thickness * width FROM size WHERE size.id = tally.size), wood = lumber;
UPDATE run SET (pieces, lumber, wood) = (SELECT sum(pieces), sum(lumber), sum(wood) FROM tally t
  WHERE t.day = run.day AND t.shift = run.shift AND t.run = run.run);
INSERT INTO log SELECT day, 1, i * 1000, 1 + i % 2, 'L' || day || '-' || i, 'sawn', '15x12', 0, 960, 9216, 0,
  'international-quarter', 115000000, 0, 115000000, 0, 16000000, NULL, NULL FROM d, n50 WHERE i <= 12;
INSERT INTO sawing SELECT day, 1, 500 + i, i, i, 480 + i * 180, 180 FROM d, n50 WHERE i < 3;
INSERT INTO stop SELECT day, 1, 90000, 1, 1, 600, 40, CASE day % 3 WHEN 0 THEN 'belt' WHEN 1 THEN 'metal' ELSE 'waiting' END,
  '', 0 FROM d;
INSERT INTO crew SELECT day, 1, 600 + i, NULL, CASE i WHEN 1 THEN 'A' ELSE 'B' END, 540, '' FROM d, n50 WHERE i < 3;
ANALYZE;
)~";

book::Book filled(int years) {
  const auto file =
      std::filesystem::temp_directory_path() / fmt::format("kerfbook-report-bench-{}.book", years);
  std::filesystem::remove(file);
  book::OpenOptions options;
  options.now = [] { return std::string("2026-01-01 20:00:00"); };
  auto made = book::Book::create(file, options);
  std::string sql = kFill;
  sql.replace(sql.find(":days"), 5, std::to_string(years * kDaysAYear));
  made.database().exec("BEGIN");
  made.database().exec(sql);
  made.database().exec("COMMIT");
  return made;
}

/// Milliseconds, the best of several.
double best(int times, const std::function<void()>& deed) {
  double least = 1e9;
  for (int i = 0; i < times; ++i) {
    const auto begun = std::chrono::steady_clock::now();
    deed();
    least = std::min(
        least, std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - begun).count());
  }
  return least;
}

double run(const book::Book& book, const std::string& name, int from, int to) {
  static const auto reports = report::all_reports("");
  report::Ask ask;
  if (from != 0) ask.from = Day{from};
  if (to != 0) ask.to = Day{to};
  return best(7,
              [&] { report::run_report(report::find_report(reports, name), book, ask, {}, Day{kFirstDay}); });
}

double by_hand(const book::Book& book, const char* sql) {
  return best(7, [&] {
    SQLite::Statement select(book.database(), sql);
    while (select.executeStep()) {
    }
  });
}

void line(const char* what, double mine, double floor) {
  fmt::print("{:<44} {:>9.3f} ms {:>9.3f} ms   ratio {:.2f}\n", what, mine, floor, mine / floor);
}

}  // namespace

int main() {
  const auto one = filled(1);
  const auto twenty = filled(20);
  const int end1 = kFirstDay + kDaysAYear - 1;
  const int end20 = kFirstDay + 20 * kDaysAYear - 1;
  fmt::print("on a book of                                     20 years        1 year\n");
  line("day, the newest day", run(twenty, "day", end20, end20), run(one, "day", end1, end1));
  line("production, a week", run(twenty, "production", end20 - 6, end20),
       run(one, "production", end1 - 6, end1));
  line("overrun, a month", run(twenty, "overrun", end20 - 29, end20), run(one, "overrun", end1 - 29, end1));
  line("tally, a month", run(twenty, "tally", end20 - 29, end20), run(one, "tally", end1 - 29, end1));
  line("downtime, a month", run(twenty, "downtime", end20 - 29, end20),
       run(one, "downtime", end1 - 29, end1));

  fmt::print("\nall twenty years                                 report        by hand on the base tables\n");
  line("production-year", run(twenty, "production-year", 0, 0),
       by_hand(
           twenty,
           "SELECT strftime('%Y', t.day * 86400, 'unixepoch') AS y, sum(t.lumber), sum(t.pieces), "
           "(SELECT sum(net) FROM log l WHERE l.state = 'sawn' AND l.day BETWEEN min(t.day) AND max(t.day)) "
           "FROM tally t GROUP BY y"));
  line("production-month", run(twenty, "production-month", 0, 0),
       by_hand(
           twenty,
           "SELECT strftime('%Y-%m', t.day * 86400, 'unixepoch') AS m, sum(t.lumber), sum(t.pieces), "
           "(SELECT sum(net) FROM log l WHERE l.state = 'sawn' AND l.day BETWEEN min(t.day) AND max(t.day)) "
           "FROM tally t GROUP BY m"));
  line(
      "overrun-by-species", run(twenty, "overrun-by-species", 0, 0),
      by_hand(
          twenty,
          "SELECT r.species, sum(t.lumber), (SELECT sum(l.net) FROM log l JOIN run q USING (day, shift, run) "
          "WHERE q.species = r.species) FROM tally t JOIN run r USING (day, shift, run) GROUP BY r.species"));
  line("downtime", run(twenty, "downtime", 0, 0),
       by_hand(
           twenty,
           "SELECT cause, count(*), sum(minutes), (SELECT sum(lumber) FROM tally) FROM stop GROUP BY cause"));
  line(
      "tally", run(twenty, "tally", 0, 0),
      by_hand(twenty,
              "SELECT r.job, r.species, t.size, t.grade, t.length, sum(t.pieces), sum(t.lumber) FROM tally t "
              "JOIN run r USING (day, shift, run) GROUP BY 1, 2, 3, 4, 5 ORDER BY 1, 2, 3, 4, 5"));
  line("production (4,600 days)", run(twenty, "production", 0, 0),
       by_hand(
           twenty,
           "SELECT t.day, sum(t.lumber), sum(t.pieces), (SELECT sum(net) FROM log l WHERE l.day = t.day AND "
           "state = 'sawn') FROM tally t GROUP BY t.day"));
  return 0;
}
