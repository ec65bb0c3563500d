// formats.cpp -- the table of output formats. A new format is one file and one line here.
#include <algorithm>

#include "render/renderer.h"

namespace kerfbook::render {
namespace {

bool has_words(const Document& document) {
  return std::any_of(document.tables.begin(), document.tables.end(), [](const Table& table) {
    return std::any_of(table.columns.begin(), table.columns.end(),
                       [](const Column& column) { return column.words != nullptr; });
  });
}

void put_words(Table& table) {
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    const auto words = table.columns[i].words;
    if (words == nullptr) continue;
    for (Row& row : table.rows) {
      if (auto* kept = std::get_if<std::string>(&row.cells[i])) *kept = words(*kept);
    }
  }
}

/// A form that people read: the words of Column::words stand in the cells, whatever the form.
template <std::string (*kRender)(const Document&)>
std::string for_people(const Document& document) {
  if (!has_words(document)) return kRender(document);
  Document worded = document;
  for (Table& table : worded.tables) put_words(table);
  return kRender(worded);
}

constexpr Format kFormats[] = {
    {"text", ".txt", "for the screen: aligned, totals ruled off", false, for_people<render_text>},
    {"csv", ".csv", "for scripts and spreadsheets: a header line and the rows, no totals", false, render_csv},
    {"json", ".json", "for scripts: columns with units, rows, totals", false, render_json},
    {"xlsx", ".xlsx", "a workbook: live totals, ready to print", true, for_people<render_xlsx>},
    {"html", ".html", "a page that needs nothing else, with charts", false, for_people<render_html>},
};

}  // namespace

std::span<const Format> formats() {
  return kFormats;
}

const Format* find_format(std::string_view name) {
  const auto* const found = std::find_if(std::begin(kFormats), std::end(kFormats),
                                         [&](const Format& format) { return format.name == name; });
  return found == std::end(kFormats) ? nullptr : found;
}

}  // namespace kerfbook::render
