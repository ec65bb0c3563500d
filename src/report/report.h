// report.h -- a report is one .sql file: a header in comments over SELECTs on the views. The engine runs it behind
// a guard and makes a Document of typed cells. No report repeats arithmetic: units, rates and totals are declared.
//
// The header, as the engine reads it (one fact a line, `-- word: ...`, before the SELECT it belongs to; a line that
// begins with `--` and at least three blanks goes on with the line before; other comments are left alone):
//
//   -- report:  production                                  the name; once, first
//   -- title:   Production by day
//   -- meaning: one or more sentences: what the figures mean, how they are worked out
//   -- takes:   from to job customer species site           (and setup, against: two set-ups to compare) which of them the SELECTs use, bound as :from, :job ...
//                                                           (:from and :to are day numbers and always bound;
//                                                           the others are NULL when not asked for; :today,
//                                                           :week_start, 1 = Monday, and :few_logs, under which
//                                                           logs are too few to tell by, need no filter; :job_id and
//                                                           its like are the numbers that views named v_..._id go by)
//   -- needs:   day                                         without a period, take the newest day of the book
//   -- example: production --period "this week"             what follows 'report' on the line that shows it, for --help
//   -- worksheets: one                                      in a workbook all tables stand on one worksheet
//   -- table:   name | Title                                begins a table: one SELECT follows its lines
//   -- shows:   net_scale_bf scale  "Net scale" total=sum   name, kind, heading, options
//   -- shows:   overrun_percent percent-over:1 "Overrun" of=lumber_bf/net_scale_bf
//   -- grid:    rows=job?,size,grade? column=length_ft cell=pieces sums=pieces,bf      `?`: only when it varies; of a sum,
//                                                           only when a row has it
//   -- picture: bar across=day up=lumber_bf title="Board feet a day"       bar, line, stacked-bar, scatter; `trend`
//   -- note:    words under the table
//   -- empty:   words in place of the table when it has no rows
//   -- notes:                                               begins a SELECT of one column; each row that is not NULL
//                                                           is a note under the table before it
//   -- foot:    words under everything
//   -- worked:  NAME                                        a report with arithmetic that SQL must not repeat: a worker
//                                                           (workers.h) makes the rows of every table that has no SELECT
//   -- input:   name                                        begins a SELECT that is no table: its rows go to the worker
//
// A text column called `rule` is read by people as rule_words() has it ("Int. 1/4"); csv and json keep the rule's name.
//
// Column kinds (what SQL gives -> what is shown) stand in one table, kinds.h. In short:
//   text  day  count  money  lumber  cubic  scale  ft3  hours  fine-hours  minutes  feet  lineal  inches  micro  tenths  mils
//   ratio[:p]         of=A/B    worked out by the engine from two other columns, for rows and for totals alike
//   percent[:p]       of=A/B    100 A/B
//   percent-over[:p]  of=A/B    100 (A-B)/B
// Options:
//   total=sum | total=none      a sum under the column; `none` keeps a ratio from being totalled
//   of=A/B                      the two columns of a ratio
//   once                        a ratio whose under is the same whole in every row (all lumber of the period): it
//                               counts once in the total
//   per=mbf                     a ratio is per thousand board feet (in a metric book: per m3)
//   unit=WORD                   the unit shown; unit=money: the book's currency, with its places (micro:4: up to four
//                               where a rate needs them)
//   unit-from=COLUMN            scale, micro: the column that says the unit of each row (bf, ft3, m3; gal)
//   metric-from=COLUMN          feet, inches: the column that says whether the row was measured in metric
//   hidden                      carries figures for a ratio and is not shown
//   strikes                     count: a row where it is not 0 is struck, and counts in no total
//   width=N                     characters on paper
// Where a log scale is shown the engine itself says by which rules the logs were scaled, when there are several or the
// mill file has another by now (scale_notes.h).
// Every figure is exact and is printed as the nearest; a total is the exact sum, and where the printed lines do not add
// to it a note says so. A ratio's total is total over total, of the very sums that are printed under its two columns: a
// row that lacks one side counts with the other. Where both sides are hidden their sums are not printed, and only the
// rows that have both count; so a SELECT that must leave rows out of a rate gives it hidden sides of its own. A mean of
// ratios cannot be written. A ratio whose under is zero or absent is absent.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/day.h"
#include "base/diagnostic.h"
#include "base/input.h"
#include "book/book.h"
#include "render/document.h"
#include "report/column_kinds.h"

namespace kerfbook::report {

/// What a person asked to see. Unset = everything.
struct Ask {
  std::optional<Day> from;
  std::optional<Day> to;  ///< last day included
  std::string job;
  std::string customer;
  std::string species;
  std::string site;
  std::string setup;         ///< where set-ups are compared: the later one
  std::string against;       ///< and the one it is held against
  std::string rule;          ///< re-scale under this practice
  std::string period_words;  ///< how the period was asked for ("last week"); only for the heading
};

enum class Totalled : std::uint8_t { by_kind, sum, none };

struct ColumnSpec {
  std::string name;
  Kind kind = Kind::text;
  int places = -1;  ///< -1 = the kind's own
  std::string heading;
  std::string unit;
  std::string unit_from;    ///< scale, micro: column with the unit of the row
  std::string metric_from;  ///< feet, inches: column that is not 0 when the row is metric
  Totalled total = Totalled::by_kind;
  bool hidden = false;
  bool strikes = false;
  bool per_mbf = false;
  bool under_once = false;
  int width = 0;
  std::string over;  ///< ratio: names of columns
  std::string under;
  int line = 0;  ///< of the file, for messages
};

/// A SELECT whose rows are handed to the report's worker.
struct InputSpec {
  std::string name;
  std::string sql;
  int sql_line = 1;
};

struct TableSpec {
  std::string name;
  std::string title;
  std::vector<ColumnSpec> columns;
  std::string sql;
  int sql_line = 1;       ///< where `sql` begins in the file
  bool worked = false;    ///< it has no SELECT: the report's worker makes its rows
  std::string notes_sql;  ///< of `-- notes:`; empty = none
  int notes_line = 0;
  std::string grid;  ///< as written; read into indices by the engine
  int grid_line = 0;
  std::string chart;
  int chart_line = 0;
  std::vector<std::string> notes;
  std::string when_empty;
};

struct ReportFile {
  std::string name;
  std::string title;
  std::string meaning;
  std::vector<std::string> filters;
  std::string needs;
  std::string example;         ///< what stands behind `report` on a command line
  bool one_worksheet = false;  ///< in a workbook, all tables on one
  std::string worker;          ///< of `-- worked:`; empty = SQL says all
  int worker_line = 0;
  std::vector<InputSpec> inputs;
  std::vector<TableSpec> tables;
  std::vector<std::string> foot;
  std::string path;                ///< for messages
  std::string text;                ///< the whole file: a user may always see it
  bool own = false;                ///< from the user's folder
  std::vector<Diagnostic> faults;  ///< of its header; such a report is not run
};

constexpr InputLimit kReportLimit{"a report", 256 << 10, "is it the right file?"};

/// Reads a report file's header and cuts it into tables; what is wrong is in `faults`. Nothing is run.
ReportFile read_report(std::string_view text, std::string_view path);

/// Every built-in report, by name; then those of the user's folder when one is given. A file there with the name of
/// a built-in report takes its place. A file with a fault in its header stays in the list with what is wrong
/// (`faults`), and run_report() refuses it with that; one bad file never hides the others.
std::vector<ReportFile> all_reports(const std::string& own_folder);
/// WrongUsage naming the nearest when there is none.
const ReportFile& find_report(const std::vector<ReportFile>& reports, std::string_view name);
/// The same of all_reports(own_folder), but a built-in report's file alone is read where there is no folder of the
/// user's: each evening's question should not cost the reading of them all.
ReportFile report_named(const std::string& own_folder, std::string_view name);

/// Prepares every SELECT behind the guard without running it: column names against the header, one statement,
/// views only; of a worked report also that its worker is there and is given what it reads. What is wrong, with lines of
/// the file; empty = good.
std::vector<Diagnostic> check_report(const ReportFile& report, const book::Book& book);

/// Runs a report. Throws Refused for a filter that names nothing known (with the nearest), WrongUsage for a filter
/// the report does not take, Failed with file, line and reason for a fault in the report.
render::Document run_report(const ReportFile& report, const book::Book& book, const Ask& ask,
                            const render::Style& style, Day today);

/// Period words: `2026-05-05`, `today`, `yesterday`, `this week`, `last week`, `this month`, `last month`, `2026-05`,
/// `2026-w19`, `2026`, `this year`, `last year`, `season`, `last season`, `FROM..TO`. First and last day, both
/// included.
struct Period {
  Day from;
  Day to;
  std::string words;  ///< as a heading shows it
};
/// Throws WrongUsage with what would be right. `week_start`: 1 = Monday ... 7 = Sunday; `2026-w19` is the ISO week,
/// moved to begin on the book's own first day of the week (the one that holds the ISO week's Thursday).
Period read_period(std::string_view words, Day today, int week_start, int season_month, int season_day);

}  // namespace kerfbook::report
