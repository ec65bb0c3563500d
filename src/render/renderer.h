// renderer.h -- the table of output formats, and the one way to turn a Document into one of them.
#pragma once

#include <iosfwd>
#include <span>
#include <string>
#include <string_view>

#include "render/document.h"

namespace kerfbook::render {

struct Format {
  std::string_view name;                   ///< what --as takes
  std::string_view suffix;                 ///< of a file: ".txt"
  std::string_view what;                   ///< one line for help
  bool binary = false;                     ///< not for a terminal
  std::string (*render)(const Document&);  ///< the whole file's bytes
};

/// text, csv, json, xlsx, html: in this order. Help, checks and the "one of" message read this table.
std::span<const Format> formats();
const Format* find_format(std::string_view name);  ///< nullptr when there is none

std::string render_text(const Document& document);
std::string render_csv(const Document& document);
std::string render_json(const Document& document);
std::string render_html(const Document& document);
/// Loads the workbook writer (kerfbook_xlsx.so beside the program or in ../lib/kerfbook) the first time it is
/// used. Throws Failed when it cannot be found or the file cannot be written.
std::string render_xlsx(const Document& document);

/// The cell as print shows it: grouped, dash for absent, money with its sign, dates in the style's order.
std::string shown_cell(const Cell& cell, const Column& column, const Style& style);

}  // namespace kerfbook::render
