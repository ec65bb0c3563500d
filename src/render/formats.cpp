// formats.cpp -- the table of output formats. A new format is one file and one line here.
#include <algorithm>

#include "render/renderer.h"

namespace kerfbook::render {
namespace {

constexpr Format kFormats[] = {
    {"text", ".txt", "for the screen: aligned, totals ruled off", false, render_text},
    {"csv", ".csv", "for scripts and spreadsheets: a header line and the rows, no totals", false, render_csv},
    {"json", ".json", "for scripts: columns with units, rows, totals", false, render_json},
    {"xlsx", ".xlsx", "a workbook: live totals, ready to print", true, render_xlsx},
    {"html", ".html", "a page that needs nothing else, with charts", false, render_html},
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
