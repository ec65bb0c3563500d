// table.h -- rows as SQL gave them become a table of typed cells: units, ratios, totals.
// Inside the room; knows no database. The rules are those of report.h's header comment.
#pragma once

#include <string>
#include <vector>

#include "base/diagnostic.h"
#include "render/document.h"
#include "report/report.h"
#include "report/rows.h"

namespace kerfbook::report {

/// What the engine needs to know of the book beside its rows.
struct Setting {
  bool metric_book = false;
  int money_places = 2;
  std::string money_sign = "$";
};

/// What is wrong between a table's header and the columns its SELECT gives; places are lines of the file.
std::vector<Diagnostic> check_columns(const TableSpec& spec, const std::vector<std::string>& names);

/// Throws SqlFault when a row does not hold what its column's kind needs. The header must have passed
/// check_columns().
render::Table make_table(const TableSpec& spec, Raw raw, const Setting& setting);

/// Grid and chart as the header writes them, against the table's columns. Throws SqlFault.
render::Grid read_grid(const TableSpec& spec, const render::Table& table);
render::Chart read_chart(const TableSpec& spec);

}  // namespace kerfbook::report
