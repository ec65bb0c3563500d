// csv.cpp -- csv for scripts and spreadsheets, by RFC 4180: comma, CRLF, quotes doubled; UTF-8 without a
// mark. The first line names the columns; each row follows. There is no total line, so that adding a column
// up gives its total (numbers have up to six decimals) (json and the workbook carry the totals). Several tables follow one another: a line with
// the table's name, its header and rows, then an empty line. Absent is nothing between the commas; an empty
// text is "". A table with struck rows ends in a column `struck` that says `struck` beside them. Text is
// written as it is, but for one thing: before text that a spreadsheet would take for a formula stands an apostrophe.
#include <string>

#include "base/text.h"
#include "render/cell.h"
#include "render/renderer.h"

namespace kerfbook::render {
namespace {

/// Typed text that begins as a formula does would be worked out where the file is opened, and can then call programs
/// (OWASP, CSV injection).
bool looks_like_formula(const std::string& text) {
  return text.size() > 1 && std::string_view("=+-@\t\r").find(text.front()) != std::string_view::npos;
}

std::string field(const std::string& typed) {
  const std::string text = fit_to_print(typed);
  if (!text.empty() && text.find_first_of("\",\r\n") == std::string::npos) return text;
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"') out += '"';
    out += c;
  }
  return out + "\"";
}

std::string field(const Cell& cell) {
  if (is_absent(cell)) return "";
  const auto* text = std::get_if<std::string>(&cell);
  return text != nullptr ? field(looks_like_formula(*text) ? "'" + *text : *text) : plain_cell(cell);
}

void write_table(const Table& table, std::string& out) {
  const auto columns = shown_columns(table);
  const bool struck = has_struck(table);
  std::string line;
  for (const std::size_t i : columns) line += (line.empty() ? "" : ",") + field(table.columns[i].name);
  out += line + (struck ? ",struck\r\n" : "\r\n");
  for (const Row& row : table.rows) {
    for (std::size_t i = 0; i < columns.size(); ++i) {
      if (i > 0) out += ',';
      out += field(row.cells[columns[i]]);
    }
    if (struck) out += row.struck ? ",struck" : ",";
    out += "\r\n";
  }
}

}  // namespace

std::string render_csv(const Document& document) {
  std::string out;
  for (const Table& table : document.tables) {
    if (!out.empty()) out += "\r\n";
    if (document.tables.size() > 1) out += field(table.name) + "\r\n";
    write_table(table, out);
  }
  return out;
}

}  // namespace kerfbook::render
