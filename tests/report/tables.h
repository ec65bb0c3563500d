// tables.h -- small books made in a test, and a report's tables as text: cells as shown, hidden columns left out.
#pragma once

#include <string>
#include <vector>

#include "demo.h"
#include "render/cell.h"
#include "render/renderer.h"

namespace kerfbook::report {

inline book::Book small_book(const std::string& mill, const std::vector<std::string>& sheets) {
  auto book = book::Book::create(fresh_file("small.book"), on_friday());
  if (!mill.empty()) book.post_mill(mill, "");
  for (const auto& sheet : sheets) book.post_sheet(sheet, "");
  billing::register_unbilled(book, kToday);
  return book;
}

inline render::Document answer(const book::Book& book, const std::string& name, const Ask& ask = {}) {
  render::Style style;
  style.currency = book.mill().currency;
  return run_report(find_report(all_reports(""), name), book, ask, style, kToday);
}

inline std::string shown_rows(const render::Document& document, std::size_t at = 0) {
  const auto& table = document.tables.at(at);
  std::string out;
  const auto show = [&](const std::vector<render::Cell>& cells, bool total) {
    std::string row;
    for (std::size_t c = 0; c < table.columns.size(); ++c) {
      if (table.columns[c].hidden) continue;
      const bool blank = total && std::holds_alternative<std::monostate>(cells.at(c));
      row += "|" + (blank ? "" : render::shown_cell(cells.at(c), table.columns[c], document.style));
    }
    out += row + "|\n";
  };
  for (const auto& row : table.rows) show(row.cells, false);
  if (!table.totals.empty()) show(table.totals, true);
  return out;
}

inline std::size_t column_at(const render::Table& table, const std::string& column) {
  for (std::size_t c = 0; c < table.columns.size(); ++c) {
    if (table.columns[c].name == column) return c;
  }
  return table.columns.size();
}

/// A cell of a row as shown; the row after the last is that of the totals. "none" for a column that is not there.
inline std::string cell_of(const render::Document& document, const std::string& column, std::size_t row,
                           std::size_t at = 0) {
  const auto& table = document.tables.at(at);
  const std::size_t c = column_at(table, column);
  if (c == table.columns.size()) return "none";
  const auto& cells = row < table.rows.size() ? table.rows[row].cells : table.totals;
  return c < cells.size() ? render::shown_cell(cells[c], table.columns[c], document.style) : "none";
}

/// What stands under a column as its total.
inline std::string total_of(const render::Document& document, const std::string& column, std::size_t at = 0) {
  return cell_of(document, column, document.tables.at(at).rows.size(), at);
}

/// The cells of one column, blank between them.
inline std::string column_of(const render::Document& document, const std::string& column,
                             std::size_t at = 0) {
  std::string out;
  for (std::size_t r = 0; r < document.tables.at(at).rows.size(); ++r)
    out += (r == 0 ? "" : " ") + cell_of(document, column, r, at);
  return out;
}

inline Ask days(Day from, Day to) {
  Ask ask;
  ask.from = from;
  ask.to = to;
  return ask;
}

}  // namespace kerfbook::report
