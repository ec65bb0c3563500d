// outputs.h -- what was rendered, read back: the figures of every table as each form shows them, in one shape, so that
// the forms can be held against one another. Reads only what the renderers write of a report; knows of a document no
// more than its columns, titles and words, and none of its figures.
#pragma once

#include <filesystem>
#include <map>
#include <string>
#include <vector>

#include "base/exact.h"
#include "render/document.h"

namespace kerfbook::render {

/// Every cell in one form: digits with a point and no needless zeros, YYYY-MM-DD, words with single blanks; absent "".
struct Figures {
  std::vector<std::string> headings;           ///< for people: with the unit; csv and json: names
  std::vector<std::vector<std::string>> rows;  ///< as printed: a grid's lines, or the table's rows
  std::vector<bool> struck;
  std::vector<std::vector<std::string>> feet;  ///< one when anything is totalled; a grid's: one a figure
  /// The totals of the columns that are totalled, in their order; others "".
  [[nodiscard]] std::vector<std::string> totals() const;
};

/// A cell as shown, in the one form. `style`: the marks in which people's forms write numbers.
std::string canonical(const std::string& shown, const Column& column, const Style& style = {});
/// The same where the column is not known: numbers and days are told by their looks.
std::string canonical(const std::string& shown, const Style& style = {});
/// The headings of a grid, "7.0 ft" and the like, with their numbers in the one form.
std::vector<std::string> canonical_heads(std::vector<std::string> headings, const Style& style);
/// The exact number of a cell in the one form; nothing is 0.
Rational number_of(const std::string& cell);
/// What people read over a column: its heading, and its unit.
std::string heading_words(const Column& column);

/// What a table holds, without any renderer: what csv and json must agree with, row for row.
Figures figures_of(const Table& table);
/// What people must find printed of it, worked out from the exact figures and not by the renderers' own rounding and
/// layout: every number the nearest one of its places; the long form under headings for people, or the grid, sizes down,
/// lengths across, footed both ways with the exact sums.
Figures printed_of(const Table& table);
/// Of a grid.
Figures crossed(const Table& table);

/// The figures of every table, in the document's order. Throws std::runtime_error where the output has not the shape
/// that its form has.
std::vector<Figures> from_text(const std::string& text, const Document& document);
std::vector<Figures> from_csv(const std::string& csv, const Document& document);
std::vector<Figures> from_json(const std::string& json, const Document& document);
std::vector<Figures> from_html(const std::string& html, const Document& document);

/// A page without its style: headings, paragraphs, rows of tables and the words of charts, one a line.
std::string words_of_page(const std::string& html);

/// A cell of a worksheet as it is stored.
struct SheetCell {
  std::string value;    ///< the number or the text
  std::string formula;  ///< empty when there is none
  std::string format;   ///< its number format
  bool text = false;
  bool struck = false;
};
struct Sheet {
  std::string name;
  std::string xml;
  std::map<std::pair<int, int>, SheetCell> cells;  ///< by row and column from 0
  [[nodiscard]] const SheetCell& at(int row, int column) const;
  /// The row whose first cell says `words`; -1 when none does.
  [[nodiscard]] int row_of(const std::string& words) const;
  /// The cells of a row that hold anything, by column.
  [[nodiscard]] std::map<int, SheetCell> row(int at) const;
};
/// Of a workbook of ours: fails where a strict reader would refuse it, and keeps it for check_second_reader().
std::vector<Sheet> read_workbook(const std::string& bytes);
/// What a strict reader asks of a workbook with these sheets: the order and the counts of its elements, no cell merged
/// twice, every part there, the value of every formula.
void check_strict(const std::string& bytes, const std::vector<Sheet>& sheets);
/// Every workbook read so far is opened by a second reader (openpyxl), which finds the same figures, words and formulas.
void check_second_reader();
void keep_for_second_reader(const std::string& bytes);
/// Of one that another program wrote.
std::vector<Sheet> read_any_workbook(const std::string& bytes);
/// Every cell of every sheet, one a line: its place, value, format and formula.
std::string listing(const std::vector<Sheet>& sheets);
/// A number of a worksheet in the one form; and as the cell's format shows it.
std::string number_in_sheet(const std::string& stored);
std::string shown_in_sheet(const SheetCell& cell);
/// As near as two ways of working a sum out with binary fractions come.
bool near(const Rational& a, const Rational& b);
/// Such a number as a number.
double drawn(const Rational& value);

/// Where a table of a report stands in its workbook.
struct Place {
  const Sheet* sheet = nullptr;
  int head = -1;            ///< the row of its headings; -1: the table has no rows
  std::vector<int> across;  ///< the column of every printed heading
  std::vector<int> of;      ///< the column of every column of the Table, also of hidden ones; -1: not there
  std::vector<int> rows;
  std::vector<int> feet;
};
std::vector<Place> places_in(const std::vector<Sheet>& sheets, const Document& document);
Figures from_sheet(const Place& place, const Table& table, const Style& style);

/// A formula worked out from the cells it names; of +, -, *, /, SUM and ROUND.
Rational worked_out(const std::string& formula, const Sheet& sheet);
/// The cells a formula names, as row and column.
std::vector<std::pair<int, int>> named_in(const std::string& formula);
/// "C12" is row 11, column 2.
std::pair<int, int> cell_of(const std::string& name);

/// An element of a page as a browser finds it.
struct Element {
  std::string name;
  std::map<std::string, std::string> attributes;
};
/// All of them, in their order, and the words between them.
std::vector<Element> elements_of(const std::string& html);
std::string words_of(const std::string& html);

std::vector<std::vector<std::string>> read_csv(const std::string& csv);

/// Output of a program; empty when it could not be run.
std::string output_of(const std::string& command);

/// A part of a workbook, or of any zip file.
struct ZipPart {
  std::string name;
  std::string bytes;
};
/// All of them, as the directory lists them. Throws std::runtime_error where anything of the file is not whole.
std::vector<ZipPart> zip_parts(const std::string& zip);
/// The bytes of one; empty when there is none of that name.
std::string part_of(const std::vector<ZipPart>& parts, const std::string& name);
std::string part_of(const std::string& zip, const std::string& name);

/// A folder of its own, gone again at the end.
class Folder {
 public:
  Folder();
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  ~Folder();
  [[nodiscard]] std::string operator/(const std::string& name) const { return (path_ / name).string(); }

 private:
  std::filesystem::path path_;
};

void write_file(const std::string& path, const std::string& bytes);
std::string read_file(const std::string& path);

/// Workbooks of the folder, opened by LibreOffice with every formula worked out again, and written in another format to
/// the folder "calculated" in it. Fails when it is not installed or trusts the stored values.
void convert_recalculated(const Folder& folder, const std::string& format,
                          const std::vector<std::string>& names);

}  // namespace kerfbook::render
