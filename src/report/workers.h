// workers.h -- what a worked report leaves to C++: arithmetic of the pure rooms that SQL must not repeat. Its .sql file names a
// worker (`-- worked:`), whose function is given the rows of the inputs and makes those of the tables. Names, kinds, units,
// headings, totals and pictures stay in the file's header, as of any report (report.h).
// Inside the room; a worker knows no database, and looks at no screen.
#pragma once

#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <tuple>
#include <vector>

#include "mill/mill.h"
#include "render/log_end.h"
#include "report/report.h"
#include "report/rows.h"
#include "report/table.h"

namespace kerfbook::report {

/// The rows of one input, looked up by the names of its columns.
class InputRows {
 public:
  explicit InputRows(Raw raw) : raw_(std::move(raw)) {}
  [[nodiscard]] std::size_t size() const { return raw_.rows(); }
  /// nullopt for nothing. Throws SqlFault for a text, std::logic_error for a column that is not there.
  [[nodiscard]] std::optional<std::int64_t> number(std::size_t row, std::string_view column) const;
  /// "" for nothing and for a number.
  [[nodiscard]] std::string text(std::size_t row, std::string_view column) const;

 private:
  [[nodiscard]] std::size_t column_of(std::string_view name) const;
  Raw raw_;
};

/// All that a worker is given.
struct Given {
  std::map<std::string, InputRows, std::less<>> inputs;
  Setting setting;  ///< metric book, currency
  const book::Mill& mill;
  Ask ask;  ///< what was asked, in the book's own spelling
  Day today;
  const render::Style& style;  ///< how days are written

  [[nodiscard]] const InputRows& rows(std::string_view input) const { return inputs.find(input)->second; }
};

/// One table: a row has a cell for each column the worker gives of it, in that order and in the column's own whole units.
struct WorkedTable {
  std::vector<std::vector<Value>> rows;
  std::optional<render::LogEnd> log_end;  ///< drawn above the table, where the output can
  std::vector<std::string> notes;
};

/// All that a worker gives back.
struct Worked {
  std::vector<std::string> finding;  ///< sentences above the figures: what they come to
  std::map<std::string, WorkedTable, std::less<>> tables;
  std::vector<std::string> foot;
};

/// A name and its columns: of an input what is read, of a table what is given.
struct Columns {
  std::string name;
  std::vector<std::string> columns;
};

struct Worker {
  std::string name;
  std::vector<Columns> reads;
  std::vector<Columns> gives;  ///< a report may leave tables out
  Worked (*work)(const Given&) = nullptr;
};

/// Every worker there is; nullptr for a name of none.
std::span<const Worker> workers();
const Worker* find_worker(std::string_view name);

/// What is wrong between a worked report's header and its worker: no such worker, an input that it reads and is not given,
/// a table that it does not make. Of columns: those the SELECT of an input gives, and those a worked table shows.
std::vector<Diagnostic> check_worker(const ReportFile& report);
std::vector<Diagnostic> check_input(const ReportFile& report, const InputSpec& input,
                                    const std::vector<std::string>& given);
/// The columns that the worker gives of a table; empty when it does not make it.
std::vector<std::string> columns_given(const ReportFile& report, std::string_view table);

/// A run's name in the book: day, shift and number, of an input with these columns.
using RunKey = std::tuple<std::int64_t, std::int64_t, std::int64_t>;
RunKey run_key(const InputRows& rows, std::size_t r);

/// A number of statistics as a column of kind micro takes it; nothing when it is absent, not finite or past what fits.
Value micro(const std::optional<double>& number);
/// The nearest whole number; nothing likewise.
Value whole(const std::optional<double>& number);

/// A number in a sentence: so many places, with the marks of the book's currency.
std::string words_of(const Rational& number, int places, const Given& given);
std::string words_of(double number, int places, const Given& given);
/// A day, in the mill's order of year, month and day.
std::string day_words(std::int64_t day, const Given& given);

// Lumber. The book counts it in cubic 1/64 in, or cubic 1/10 mm; statistics reckon in board feet; told is bf, or m3 in a
// metric book.
double board_feet_of(std::int64_t counts, const Given& given);
double cubic_feet_of(std::int64_t counts, const Given& given);
Value lumber_of(const std::optional<double>& bf,
                const Given& given);  ///< as columns of kinds lumber and cubic take it
double told_lumber(double bf, const Given& given);
std::string lumber_words(double bf, const Given& given);  ///< "1,280 bf", "2.9 m3"

/// Thousandths of an inch, or hundredths of a millimetre, in inches.
double inches_of_mils(std::int64_t mils, bool metric);

/// A length of boards end to end, in 1/320 mm, as feet; and as columns of kind lineal take it.
double lineal_feet_of(std::int64_t counts);
Value lineal_of(const std::optional<double>& feet);
/// A sum in the book's currency, for a sentence: "$12.50".
std::string money_words(double sum, const Given& given);

/// The input of reports/parts/lumber-price.sql, and what a board foot brought by it, in whole money, what was sold by the
/// thousand or the m3 too; nullopt when none was invoiced.
Columns lumber_price_input();
std::optional<double> price_of_lumber(const Given& given);

// Each stands in a file of its own.
Worker straight_line();    ///< a line through points: work_line.cpp
Worker saw_speed();        ///< rim speed, bite and time in wood: work_saw_speed.cpp
Worker setups_compared();  ///< two set-ups like for like: work_setups.cpp
Worker size_control();     ///< caliper readings: spread, what to set, control chart: work_size_control.cpp
Worker tooth_life();       ///< lives of sharpenings and sets, and the pace: work_tooth_life.cpp
Worker where_wood_went();  ///< lumber, sawdust and the rest: work_wood.cpp
Worker yield_of_logs();    ///< runs against the best pattern of their logs: work_yield.cpp

}  // namespace kerfbook::report
