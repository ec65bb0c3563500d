// report.h -- a report is one .sql file: a header in comments over SELECTs on the views. The engine runs it behind
// a guard and makes a Document of typed cells. No report repeats arithmetic: units, rates and totals are declared.
//
// The header, as the engine reads it (one fact a line, `-- word: ...`, before the SELECT it belongs to):
//
//   -- report:  production                                  the name; once, first
//   -- title:   Production by day
//   -- meaning: one or more sentences (further lines begin `--          `): what the figures mean, how worked out
//   -- filters: from to job customer species site           which of them the SELECT uses, bound as :from, :job ...
//                                                           (:from and :to are day numbers and always bound;
//                                                           the others are NULL when not asked for)
//   -- needs:   day                                         a filter that must be given (else the newest day is taken)
//   -- table:   name | Title                                begins a table: one SELECT follows its lines
//   -- column:  net_scale_bf scale  "Net scale" total=sum   name, kind, heading, options
//   -- column:  overrun_percent percent-over:1 "Overrun" of=lumber_bf/net_scale_bf
//   -- grid:    rows=size,grade column=length_ft cell=pieces sums=pieces,bf
//   -- chart:   bar x=day y=lumber_bf title="Board feet a day"
//   -- note:    words under the table
//   -- foot:    words under everything
//
// Column kinds (what SQL gives -> what is shown):
//   text; day (day number); count; money (minor units)
//   lumber[:p]   volume of the book    -> bf with p places (2); in a metric book m3, and `_bf` in the name is `_m3`
//   scale[:p]    millionths            -> the practice's unit (its word as unit), 0 places when all are whole
//   ft3[:p]      millionths            -> ft3
//   hours[:p]    minutes               -> h (2)        minutes  minutes -> min, count
//   feet[:p]     length counts         -> ft, fewest places that are exact up to 2; metric rows: m
//   inches[:p]   length counts         -> in
//   micro[:p]    millionths            -> plain number with a unit=WORD option
//   tenths       tenths                -> one place
//   ratio[:p]    of=A/B                -> worked out by the engine from two other columns, for rows and for totals alike
//   percent[:p]  of=A/B                -> 100 A/B
//   percent-over[:p] of=A/B            -> 100 (A-B)/B
// Options: total=sum  of=A/B  unit=WORD  hidden  width=N.  A ratio's total is total over total; a mean of ratios
// cannot be written. In a ratio, lumber counts as bf, ft3 as ft3, minutes and hours as hours, micro as units.
// A ratio whose under is zero or absent is absent.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/day.h"
#include "base/diagnostic.h"
#include "book/book.h"
#include "render/document.h"

namespace kerfbook::report {

/// What a person asked to see. Unset = everything.
struct Ask {
  std::optional<Day> from;
  std::optional<Day> to;  ///< last day included
  std::string job;
  std::string customer;
  std::string species;
  std::string site;
  std::string rule;       ///< re-scale under this practice
};

struct ColumnSpec {
  std::string name;
  std::string kind;
  int places = -1;        ///< -1 = the kind's own
  std::string heading;
  std::string unit;
  bool total_sum = false;
  bool hidden = false;
  int width = 0;
  std::string over;       ///< ratio: names of columns
  std::string under;
};

struct TableSpec {
  std::string name;
  std::string title;
  std::vector<ColumnSpec> columns;
  std::string sql;
  int sql_line = 1;       ///< where the SELECT begins in the file
  std::string grid;       ///< as written; read into indices by the engine
  std::string chart;
  std::vector<std::string> notes;
};

struct ReportFile {
  std::string name;
  std::string title;
  std::string meaning;
  std::vector<std::string> filters;
  std::string needs;
  std::vector<TableSpec> tables;
  std::vector<std::string> foot;
  std::string path;       ///< for messages
  std::string text;       ///< the whole file: a user may always see it
};

struct ReadReport {
  ReportFile report;
  std::vector<Diagnostic> found;
};

/// Reads a report file's header and cuts it into tables. Nothing is run.
ReadReport read_report(std::string_view text, std::string_view path);

/// Every built-in report, by name; then those of the user's folder when one is given.
std::vector<ReportFile> all_reports(const std::string& own_folder);
/// WrongUsage naming the nearest when there is none.
const ReportFile& find_report(const std::vector<ReportFile>& reports, std::string_view name);

/// Prepares every SELECT behind the guard without running it: column names against the header, one statement,
/// views only. What is wrong, with lines of the file; empty = good.
std::vector<Diagnostic> check_report(const ReportFile& report, const book::Book& book);

/// Runs a report. Throws Refused for a filter that names nothing known (with the nearest), Failed with the SQL
/// for a fault in the report.
render::Document run_report(const ReportFile& report, const book::Book& book, const Ask& ask, const render::Style& style,
                            Day today);

/// Period words: `2026-05-05`, `today`, `yesterday`, `this week`, `last week`, `this month`, `last month`, `2026-05`,
/// `2026-w19`, `2026`, `this year`, `last year`, `season`, `FROM..TO`. First and last day, both included.
struct Period {
  Day from;
  Day to;
  std::string words;  ///< as a heading shows it
};
/// Throws WrongUsage with what would be right.
Period read_period(std::string_view words, Day today, int week_start, int season_month, int season_day);

}  // namespace kerfbook::report
