#include "report/views.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <map>
#include <string>

#include "base/text.h"
#include "book/schema.h"

namespace kerfbook::report {
namespace {

/// Columns whose unit a reader could not guess; the kind of column that shows it stands in brackets.
const std::map<std::string, std::string>& units() {
  static const std::map<std::string, std::string> kUnits{
      {"day", "days since 1970-01-01 (day)"},
      {"lumber", "nominal volume of the book (lumber)"},
      {"wood", "volume of the wood really cut (cubic)"},
      {"gross", "millionths of the practice's unit (scale)"},
      {"deduction", "millionths of the practice's unit (scale)"},
      {"net", "millionths of the practice's unit (scale)"},
      {"content", "millionths of a cubic foot of log, inside bark (ft3)"},
      {"length", "counts of 1/64 in, or of 1/10 mm where metric = 1 (feet)"},
      {"thickness", "counts of 1/64 in, or of 1/10 mm where metric = 1 (inches)"},
      {"width", "counts of 1/64 in, or of 1/10 mm where metric = 1 (inches)"},
      {"diameter", "counts of 1/64 in, or of 1/10 mm where metric = 1 (inches)"},
      {"minutes", "minutes (hours, minutes)"},
      {"minutes_micro", "millionths of a minute (fine-hours)"},
      {"lineal", "length of all boards end to end, in 1/320 mm (lineal)"},
      {"sawing_minutes", "minutes (hours, minutes)"},
      {"stop_minutes", "minutes (hours, minutes)"},
      {"crew_minutes", "minutes (hours, minutes)"},
      {"charge_minutes", "minutes of stops marked charge (hours, minutes)"},
      {"from_minute", "minutes since midnight"},
      {"tenths", "tenths of an engine hour (tenths)"},
      {"since_tenths", "tenths of an engine hour (tenths)"},
      {"quantity_micro", "millionths (micro)"},
      {"distance_micro", "millionths (micro)"},
      {"price_minor", "minor units of the currency (money)"},
      {"mils", "thousandths of an inch, or hundredths of a mm (mils)"},
      {"kerf_mils", "thousandths of an inch, or hundredths of a mm (mils)"},
      {"over_mils", "thousandths of an inch, or hundredths of a mm (mils)"},
      {"number", "place in the order of the day: line x 1000 + item"},
      {"metric", "1 = measured in metric"},
      {"scaled", "1 = some of the run's logs have a scale"},
      {"counted", "1 = overrun and recovery count the run: all its logs have a scale and it has lumber"},
      {"unit", "what the quantity is counted in"},
      {"scale_unit", "unit of gross and net: bf, ft3, m3"}};
  return kUnits;
}

/// `CREATE VIEW v_run AS  -- one row a run`: the words after the dashes, by view. They go on in the remarks that stand
/// under them, away from the left edge.
std::map<std::string, std::string> comments() {
  std::map<std::string, std::string> out;
  for (const auto& view : book::program_views()) {
    std::string& words = out[view.name];
    for (const auto line : split_lines(view.sql)) {
      const std::size_t dashes = line.find("--");
      if (dashes == 0 || dashes == std::string_view::npos) break;
      words += (words.empty() ? "" : " ") + std::string(trim(line.substr(dashes + 2)));
    }
  }
  return out;
}

render::Cell said(const std::map<std::string, std::string>& words, const std::string& key) {
  const auto found = words.find(key);
  return found == words.end() ? render::Cell{} : render::Cell{found->second};
}

}  // namespace

render::Document views_document(const book::Book& book, const render::Style& style, Day today) {
  render::Document document;
  document.name = "views";
  document.title = "Views and their columns";
  document.meaning =
      "What a report may read, from the schema of this book. A whole number's unit is given with the kind "
      "of column that shows it.";
  document.style = style;
  document.made_on = write_day(today);
  const auto about = comments();
  SQLite::Statement select(book.database(),
                           "SELECT v.name, c.name FROM sqlite_schema v, pragma_table_info(v.name) c "
                           "WHERE v.type = 'view' AND v.name GLOB 'v_*' ORDER BY v.name, c.cid");
  while (select.executeStep()) {
    const std::string view = select.getColumn(0).getString();
    const std::string column = select.getColumn(1).getString();
    if (document.tables.empty() || document.tables.back().name != view) {
      render::Table table;
      table.name = view;
      table.title = about.contains(view) ? view + ": " + about.at(view) : view;
      table.columns = {{.name = "column", .heading = "Column"}, {.name = "unit", .heading = "Unit"}};
      document.tables.push_back(std::move(table));
    }
    document.tables.back().rows.push_back({{column, said(units(), column)}});
  }
  return document;
}

}  // namespace kerfbook::report
