// xlsx_book.h -- a workbook being written: its formats, its sheets' names, and a cursor that goes down one sheet.
// What a table or grid looks like is in xlsx_table.cpp and xlsx_grid.cpp. Part of the workbook module only.
#pragma once

#include <xlsxwriter.h>

#include <map>
#include <set>
#include <string>
#include <vector>

#include "render/document.h"

namespace kerfbook::render {

using SheetRow = lxw_row_t;
using SheetColumn = lxw_col_t;

/// How a cell looks. Each distinct look becomes one format of the workbook.
struct Look {
  std::string number = {};  ///< number format; empty = general
  bool bold = false;
  bool struck = false;
  bool right = false;
  bool indent = false;  ///< text beside a column of numbers keeps off it
  bool wrap = false;
  bool ruled_above = false;  ///< a total
  bool head = false;         ///< column heading: ruled below
  bool boxed = false;        ///< every edge drawn: to be filled in by hand
  bool quiet = false;        ///< notes: smaller
  bool line_below = false;   ///< to be filled in or signed on
  int points = 0;            ///< 0 = the usual size
  auto operator<=>(const Look&) const = default;
};

/// The number format of a column: "#,##0.00", with the currency's sign for money, a sign for an overrun.
std::string number_format(const Column& column, const Style& style);

class Workbook {
 public:
  Workbook(const std::string& file, const Document& document, bool constant_memory);
  Workbook(const Workbook&) = delete;
  Workbook& operator=(const Workbook&) = delete;
  ~Workbook();

  lxw_format* format(const Look& look);  ///< nullptr: the cell needs none
  /// A worksheet by that title, made fit for a sheet name and told from those before it.
  lxw_worksheet* add_sheet(const std::string& title);
  lxw_workbook* raw() { return book_; }
  [[nodiscard]] const Document& document() const { return document_; }
  /// Writes the file. What went wrong, in words; empty when nothing did.
  std::string close();

 private:
  lxw_workbook* book_;
  const Document& document_;
  std::map<Look, lxw_format*> formats_;
  std::set<std::string> names_;
};

/// Where a column of a table stands on its worksheet: over one of the worksheet's columns, or over several.
struct Place {
  SheetColumn first = 0;
  SheetColumn last = 0;
  int width = 0;  ///< characters
};

/// How wide a heading asks its column to be: room for its longest word, and for all of it on two lines if that is not
/// too wide.
int heading_width(const Column& column);

class Plan;

/// Goes down a worksheet row by row. Remembers how wide each column must be; or, with a plan of the tables that share
/// the sheet, keeps to it: then a column may lie over several of the worksheet, whose cells become one.
class Cursor {
 public:
  Cursor(Workbook& book, const std::string& title);
  Cursor(Workbook& book, const std::string& title, const Plan& plan);

  SheetRow row = 0;

  /// From here on columns are those of the plan's `table`-th table.
  void take_table(std::size_t table);
  /// Makes places for columns beyond those of the plan's table, until there are so many: to the right of all tables, and
  /// hidden.
  void keep_hidden(std::size_t places);
  /// Where a column stands on the worksheet, for formulas.
  [[nodiscard]] SheetColumn at(SheetColumn column) const {
    return places_.empty() ? column : places_[column].first;
  }
  [[nodiscard]] const std::vector<Place>& places() const { return places_; }
  [[nodiscard]] bool planned() const { return plan_ != nullptr; }
  /// Writes to a place of its own, broken over lines where it must be.
  void put_at(const Place& place, const Cell& cell, const Look& look);

  /// Text, count, decimal or day; absent leaves the cell empty but formatted. Text is never a formula or a link.
  void put(SheetColumn column, const Cell& cell, const Look& look);
  /// The same, the look's format looked up beforehand: once a column, not once a cell.
  void put(SheetColumn column, const Cell& cell, const Look& look, lxw_format* format);
  void put_text(SheetColumn column, const std::string& text, const Look& look);
  /// Text that runs on over the empty cells beside it and so makes no column wider: a title.
  void put_free(SheetColumn column, const std::string& text, const Look& look);
  /// The row's height in lines of text.
  void set_height(double lines);
  /// A live formula with its value stored beside, for viewers that do not calculate.
  void put_formula(SheetColumn column, const std::string& formula, const Cell& value, const Look& look);
  /// A paragraph across the sheet, as high as its lines need.
  void put_words(const std::string& words, const Look& look);

  void widen(SheetColumn column, int characters);
  void hide(SheetColumn column);
  /// Sets column widths and print set-up. After it nothing is written. `head` is the heading row to repeat when
  /// printed, or -1. `one_page`: printed on one page, as small as that needs.
  void finish(int head, bool one_page = false);
  lxw_worksheet* raw() { return sheet_; }
  Workbook& book() { return book_; }
  [[nodiscard]] const Workbook& book() const { return book_; }
  [[nodiscard]] int total_width() const;

 private:
  struct Words {
    SheetRow row;
    std::string text;
  };
  void write_text(SheetColumn column, const std::string& text, const Look& look, lxw_format* format);
  void merge(const Place& place, lxw_format* format);
  void set_widths();
  void lay_words_across();

  Workbook& book_;
  lxw_worksheet* sheet_;
  const Plan* plan_ = nullptr;
  std::vector<Place> places_;  ///< of the table being written; empty without a plan
  std::vector<int> widths_;
  SheetRow tall_row_ = 0;  ///< the row made higher for its text, and by how many lines
  double tallest_ = 1;
  std::set<SheetColumn> hidden_;
  std::vector<Words> words_;
  std::vector<std::pair<SheetColumn, SheetColumn>> merged_;  ///< in merged_row_: first and last column
  SheetRow merged_row_ = 0;
};

std::string cell_name(SheetRow row, SheetColumn column);
/// "SUM(C5:C9,C11:C20)" over the given rows of one column; "0" when there are none.
std::string sum_of_rows(const std::vector<SheetRow>& rows, SheetColumn column);

/// The value of a number or day as a spreadsheet holds it: the exact one as near as a double comes to it.
double spreadsheet_number(const Cell& cell);

/// Writes a table (or its grid) at the cursor. Returns its heading row.
SheetRow write_table(Cursor& cursor, const Table& table);
SheetRow write_grid(Cursor& cursor, const Table& table);
/// Below everything on the sheet, when the table declares a chart.
void write_chart(Cursor& cursor, const Table& table, SheetRow head, SheetRow last);

}  // namespace kerfbook::render
