// outputs.h -- what was rendered, read back: the figures of a table as each format shows them, in one shape, so that
// the formats can be held against one another. Reads only what the renderers write.
#pragma once

#include <filesystem>
#include <map>
#include <string>
#include <vector>

#include "render/document.h"

namespace kerfbook::render {

/// Every cell in one form: digits with a point and no needless zeros, YYYY-MM-DD, words with single blanks; absent "".
struct Figures {
  std::vector<std::vector<std::string>> rows;
  std::vector<bool> struck;
  std::vector<std::string> totals;  ///< of the columns that are totalled, in their order; others ""
};

/// A cell as shown, in the one form.
std::string canonical(const std::string& shown, const Column& column);

/// What the table holds, without any renderer: what all formats must agree with.
Figures figures_of(const Table& table);

Figures from_text(const std::string& text, const Table& table);
Figures from_csv(const std::string& csv, const Table& table);
Figures from_json(const std::string& json, const Table& table);
Figures from_html(const std::string& html, const Table& table);

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
};
std::vector<Sheet> read_workbook(const std::string& bytes);
/// Every cell of every sheet, one a line: its place, value, format and formula.
std::string listing(const std::vector<Sheet>& sheets);
Figures from_sheet(const Sheet& sheet, const Table& table);

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

}  // namespace kerfbook::render
