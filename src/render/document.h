// document.h -- what a renderer is given: tables of typed cells, with everything needed to show them, and no book.
// Numbers arrive exact, with the places they are printed with, and totals worked out; a renderer adds and divides nothing
// but what a grid is made of.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "base/day.h"
#include "measure/money.h"
#include "render/figure.h"
#include "render/log_end.h"

namespace kerfbook::render {

/// Absent (shown as a dash in print, empty in csv, null in json), count, number with decimals, day or text. Print shows
/// a number rounded to its places; csv and json carry up to six decimals of it; a workbook holds it as near as it can,
/// and shows it rounded.
using Cell = std::variant<std::monostate, std::int64_t, Figure, Day, std::string>;

enum class ColumnKind : std::uint8_t {
  text,
  day,
  count,    ///< whole number
  decimal,  ///< with `places`
  money,    ///< decimal with the currency's places and sign in print
};

/// How the total under a column comes about, so that a workbook can work it out live.
enum class TotalKind : std::uint8_t { none, sum, ratio };

struct Column {
  std::string name;       ///< stable, for json and csv: `net_scale_bf`
  std::string heading;    ///< for people: "Net scale"
  std::string unit = {};  ///< "bf", "%", "h", "" : shown under or beside the heading
  ColumnKind kind = ColumnKind::text;
  int places = 0;
  TotalKind total = TotalKind::none;
  /// A ratio: value = scale x (sum of `over` terms) / (sum of `under` terms), or for `percent_over`
  /// 100 x (over - under) / under; each index is a column of the same table (perhaps a hidden one).
  struct Ratio {
    std::size_t over = 0;
    std::size_t under = 0;
    std::int64_t scale = 1;
    bool percent_over = false;  ///< 100 x (over - under) / under
  };
  std::optional<Ratio> ratio = std::nullopt;
  bool hidden =
      false;  ///< carries figures for a ratio; shown by no renderer (a workbook may keep it in a hidden column)
  int width_hint = 0;  ///< characters; 0 = by content
  /// What a person reads for the word that a text cell keeps: "Int. 1/4" for international-quarter. csv and json write
  /// the word kept. nullptr: the same for both.
  std::string (*words)(std::string_view kept) = nullptr;
};

struct Row {
  std::vector<Cell> cells;
  bool struck = false;  ///< shown struck through; its figures are in no total
};

/// Rows by columns as the trade writes a tally: one row a size, one column a length, pieces in the cells,
/// and beside each row its pieces and board feet, under each column its pieces. Indices into Table::columns.
/// The rows of the Table stay in long form (csv and json print them so).
struct Grid {
  std::vector<std::size_t> row_keys;  ///< text columns that head a row: size, grade
  std::size_t column_key = 0;         ///< the column whose values become columns: length
  std::size_t cell = 0;               ///< counted in the cells: pieces
  std::vector<std::size_t> row_sums;  ///< summed per row at the right: pieces, bf
};

enum class ChartKind : std::uint8_t { bar, line, stacked_bar, scatter };
struct Chart {
  ChartKind kind = ChartKind::bar;
  std::string title;
  std::size_t x = 0;           ///< a column
  std::vector<std::size_t> y;  ///< columns
  bool trend = false;          ///< scatter: draw the least-squares line
};

/// A line of the sums below a table: "Subtotal", "Sales tax 5 %", "Due". The value stands under the last column.
struct SumLine {
  std::string label;
  Cell value;           ///< money, with the currency's places
  bool strong = false;  ///< the line the eye should find
};

struct Table {
  std::string name;   ///< stable, for json: "logs"
  std::string title;  ///< "Logs"; empty when the document's title says it
  std::vector<Column> columns;
  std::vector<Row> rows;
  std::vector<Cell> totals;  ///< one a column, or empty when nothing is totalled
  std::optional<Grid> grid;
  std::optional<Chart> chart;
  std::optional<LogEnd> log_end;  ///< drawn instead of a chart
  std::vector<SumLine> sums;      ///< papers: below the rows and totals, above the notes
  bool ruled = false;     ///< every cell is drawn, tall enough to be filled in by hand (a blank tally sheet)
  bool follows = false;   ///< in a workbook, stands on the worksheet of the table before it
  bool new_page = false;  ///< begins a page of its own when printed
  std::vector<std::string> notes;  ///< in words, under the table
  std::string when_empty = "nothing in this period";
};

enum class PaperSize : std::uint8_t { letter, a4 };
enum class DateOrder : std::uint8_t { year_month_day, month_day_year, day_month_year };

/// How this book's owner wants things written; from the mill file.
struct Style {
  measure::Currency currency;
  PaperSize paper = PaperSize::letter;
  DateOrder dates = DateOrder::year_month_day;
  int width = 0;        ///< columns of the terminal; 0 = as wide as needed
  bool colour = false;  ///< a terminal that wants it
};

/// A block of address lines under a small heading: "Bill to".
struct Party {
  std::string heading;
  std::vector<std::string> lines;
};

/// One fact of a paper's head: "Invoice" "K-12", "Due" 2026-05-22. The cell is shown as a column of its kind would be.
struct HeadFact {
  std::string label;
  Cell value;
  ColumnKind kind = ColumnKind::text;
};

struct Document {
  std::string name;      ///< the report's name: "production"
  std::string title;     ///< "Production by day"
  std::string subtitle;  ///< mill, period, filters: "Q. Hargan, custom sawing; 2026-05-04 to 2026-05-08"
  std::string meaning;   ///< a sentence: what the figures mean and how they are worked out
  // Papers that leave the house. All empty for a report, but that a worked one leads with what it found.
  std::string logo;            ///< an image file to stand beside the mill's name; a missing one is left out
  std::vector<Party> parties;  ///< side by side above everything: the mill, the customer
  std::vector<HeadFact> head;  ///< beside or below the parties
  std::vector<std::string> lead;  ///< paragraphs above the tables
  std::vector<Table> tables;
  std::vector<std::string> foot;  ///< conventions in words, cautions
  bool one_page = false;          ///< to be pinned up: printed on one sheet of paper, smaller if need be
  std::vector<std::string> signatures;  ///< a line to sign and date for each: "Customer", "Received by"
  Style style;
  std::string
      made_on;  ///< the day it was made, as text; also the creation day of a workbook, so files repeat
};

}  // namespace kerfbook::render
