#include "render/samples.h"

#include <string>

#include "render/cell.h"
#include "render/footing.h"

namespace kerfbook::render {
namespace {

Column text(std::string name, std::string heading) {
  Column column;
  column.name = std::move(name);
  column.heading = std::move(heading);
  return column;
}

Column number(std::string name, std::string heading, std::string unit, int places,
              TotalKind total = TotalKind::sum) {
  Column column = text(std::move(name), std::move(heading));
  column.unit = std::move(unit);
  column.kind = places == 0 ? ColumnKind::count : ColumnKind::decimal;
  column.places = places;
  column.total = total;
  return column;
}

Column ratio(std::string name, std::string heading, std::string unit, int places, Column::Ratio how) {
  Column column = number(std::move(name), std::move(heading), std::move(unit), places, TotalKind::ratio);
  column.kind = ColumnKind::decimal;
  column.ratio = how;
  return column;
}

Column day_column() {
  Column column = text("day", "Day");
  column.kind = ColumnKind::day;
  return column;
}

Table production_table() {
  Table table;
  table.name = "days";
  table.columns = {day_column(),
                   text("site", "Site"),
                   number("logs", "Logs", "", 0),
                   number("net_scale_bf", "Net scale", "bf", 0),
                   number("lumber_bf", "Lumber", "bf", 2),
                   number("pieces", "Pieces", "", 0),
                   ratio("overrun_percent", "Overrun", "%", 1, {4, 3, 1, true}),
                   number("sawing_hours", "Sawing hours", "h", 2),
                   ratio("bf_per_sawing_hour", "Lumber per sawing hour", "bf/h", 0, {4, 7, 1, false}),
                   number("stop_hours", "Stops", "h", 2),
                   number("log_ft3", "Log volume", "ft³", 2),
                   ratio("lrf", "LRF", "bf/ft³", 2, {4, 10, 1, false})};
  table.columns[10].hidden = true;
  table.chart = Chart{ChartKind::bar, "Board feet a day", 0, {4}, false};
  table.notes = {"Overrun by International 1/4-inch on 54 logs."};
  return table;
}

/// Board feet in twelfths: 1560 2/3 is 18728.
Cell twelfths(std::int64_t count) {
  return Figure(count, 12, 2);
}

/// The exact quotient of two cells.
Cell quotient(const Cell& over, const Cell& under, int places, bool percent_over = false) {
  const Rational top = as_figure(over).exact();
  const Rational bottom = as_figure(under).exact();
  return Figure(percent_over ? Rational(100) * (top - bottom) / bottom : top / bottom, places);
}

void work_out_ratios(std::vector<Cell>& cells) {
  cells[6] = quotient(cells[4], cells[3], 1, true);
  cells[8] = quotient(cells[4], cells[7], 0);
  cells[11] = quotient(cells[4], cells[10], 2);
}

void add_day(Table& table, Day day, const std::string& site, std::int64_t logs, std::int64_t net,
             std::int64_t lumber, std::int64_t pieces, std::int64_t hours, std::int64_t stop,
             std::int64_t ft3) {
  table.rows.push_back({{day,
                         site,
                         logs,
                         net,
                         twelfths(lumber),
                         pieces,
                         {},
                         dec(hours, 2),
                         {},
                         stop == 0 ? Cell() : dec(stop, 2),
                         dec(ft3, 2),
                         {}},
                        false});
  work_out_ratios(table.rows.back().cells);
}

Document mill_document(std::string name, std::string title) {
  Document document;
  document.name = std::move(name);
  document.title = std::move(title);
  document.subtitle = "Q. Hargan, custom sawing; 2026-05-04 to 2026-05-08";
  document.meaning =
      "Lumber is counted by nominal size, lengths as written. A rate's total is total over total.";
  document.foot = {
      "House rule: International 1/4-inch. Lumber: nominal thickness and width, to hundredths of a bf."};
  document.made_on = "2026-05-08";
  return document;
}

Table tally_table() {
  Table table;
  table.name = "tally";
  table.title = "QHH, hemlock, Thursday";
  table.columns = {text("grade", "Grade"), text("size", "Size"),
                   number("length_ft", "Length", "ft", 0, TotalKind::none), number("pieces", "Pieces", "", 0),
                   number("bf", "Lumber", "bf", 2)};
  table.grid = Grid{{0, 1}, 2, 3, {3, 4}};
  const auto line = [&](const std::string& size, std::int64_t length, std::int64_t pieces, std::int64_t bf) {
    table.rows.push_back({{Cell(), size, length, pieces, twelfths(bf)}, false});
  };
  line("2x4", 12, 3, 288);
  line("2x4", 14, 12, 1344);
  line("2x4", 16, 32, 4096);
  table.rows.back().struck = true;
  line("2x4", 16, 23, 2944);
  line("2x6", 12, 1, 144);
  line("2x6", 14, 6, 1008);
  line("2x6", 16, 10, 1920);
  line("2x8", 12, 2, 384);
  line("2x8", 14, 4, 896);
  line("2x8", 16, 7, 1792);
  table.totals = {Cell(), Cell(), Cell(), std::int64_t{68}, twelfths(10720)};
  table.notes = {"2x4 16 ft: 32 was struck on 2026-05-08, \"32 typed, sheet says 23\"."};
  note_rounding(table, {});
  return table;
}

}  // namespace

Cell dec(std::int64_t units, int places) {
  return Decimal{units, places};
}

Document production_week() {
  Document document = mill_document("production", "Production by day");
  Table table = production_table();
  const Day monday = make_day(2026, 5, 4);
  add_day(table, monday, "Tervane farm", 12, 1590, 18728, 109, 625, 50, 23433);
  add_day(table, monday + 1, "Tervane farm", 10, 1160, 13312, 74, 475, 135, 17497);
  add_day(table, monday + 2, "Tervane farm, then the yard at Sallow Fork", 8, 825, 9776, 59, 325, 0, 12789);
  add_day(table, monday + 3, "yard", 13, 1285, 18744, 114, 600, 50, 19797);
  add_day(table, monday + 4, "yard", 11, 1440, 17281, 167, 650, 25, 21023);
  table.totals = {
      Cell(), Cell(),       std::int64_t{54}, std::int64_t{6300}, twelfths(77841), std::int64_t{523},
      Cell(), dec(2675, 2), Cell(),           dec(260, 2),        dec(94539, 2),   Cell()};
  work_out_ratios(table.totals);
  document.tables.push_back(std::move(table));
  return document;
}

Document tally_week() {
  Document document = mill_document("tally", "Tally of Quarrel Hill Hall Committee");
  document.tables.push_back(tally_table());
  Table charges;
  charges.name = "charges";
  charges.title = "Charges";
  charges.columns = {text("what", "What"), number("hours", "Hours", "h", 2), text("rate", "Rate"),
                     text("amount", "Amount")};
  for (const std::size_t i : {2U, 3U}) {
    charges.columns[i].kind = ColumnKind::money;
    charges.columns[i].places = 2;
  }
  charges.columns[3].total = TotalKind::sum;
  charges.rows = {{{std::string("bundling"), dec(200, 2), dec(4500, 2), dec(9000, 2)}, false},
                  {{std::string("sawing, 893 bf"), Cell(), dec(52, 2), dec(46436, 2)}, false}};
  charges.totals = {Cell(), dec(200, 2), Cell(), dec(55436, 2)};
  document.tables.push_back(std::move(charges));
  return document;
}

Document every_cell() {
  Document document = mill_document("cells", "Every kind of cell <&> \"quoted\"");
  document.style.dates = DateOrder::month_day_year;
  Table table;
  table.name = "cells";
  table.columns = {text("words", "Words"), day_column(), number("count", "Count", "", 0),
                   number("size", "Size", "m³", 3)};
  table.columns.push_back(number("sum", "Sum", "", 2));
  table.columns.back().kind = ColumnKind::money;
  table.columns.push_back(ratio("rate", "Rate", "%", 1, {3, 2, 100, false}));
  const Day day = make_day(2026, 12, 31);
  const auto row = [&](std::string words, Cell count, Cell size, Cell sum, bool struck = false) {
    const bool known = is_number(count) && count != Cell(std::int64_t{0});
    const Cell rate = known ? Figure(Rational(100) * as_figure(quotient(size, count, 1)).exact(), 1) : Cell();
    table.rows.push_back(
        {{std::move(words), day, std::move(count), std::move(size), std::move(sum), rate}, struck});
  };
  row("plain", std::int64_t{1}, dec(1500, 3), dec(123456789, 2));
  row("comma, and \"quotes\"", std::int64_t{-2}, dec(-5, 3), dec(-500, 2));
  row("two\nlines", std::int64_t{0}, dec(0, 3), dec(0, 2));
  row("<b>bold & brave</b>", std::int64_t{1'000'000}, dec(7, 3), dec(1, 2));
  row("=1+2", std::int64_t{3}, dec(3000, 3), dec(300, 2));
  row("@sum, +1, -1", std::int64_t{4}, dec(4000, 3), dec(400, 2));
  row("https://example.invalid/page", std::int64_t{5}, dec(5000, 3), dec(500, 2));
  row("Ærøskøbing, Łódź, Ελλάδα, Кедр, 檜 ヒノキ, שקד", std::int64_t{6}, dec(6000, 3), dec(600, 2));
  row(std::string(200, 'n'), std::int64_t{7}, dec(7000, 3), dec(700, 2));
  row("", Cell(), Cell(), Cell());
  table.rows.push_back({{Cell(), Cell(), Cell(), Cell(), Cell(), Cell()}, false});
  row("a struck line", std::int64_t{99}, dec(99000, 3), dec(9900, 2), true);
  table.totals = {Cell(),
                  Cell(),
                  std::int64_t{1'000'024},
                  dec(26502, 3),
                  dec(123458790, 2),
                  Figure(Rational(100) * Rational(26502, 1000) / Rational(1'000'024), 1)};
  document.tables.push_back(std::move(table));
  return document;
}

Document thirds() {
  Document document = mill_document("thirds", "Lines of thirds");
  Table lines;
  lines.name = "lines";
  lines.columns = {text("size", "Size"), number("bf", "Board feet", "bf", 2),
                   number("hours", "Sawing", "h", 2)};
  const auto line = [&](const std::string& size, std::int64_t bf, std::int64_t minutes) {
    lines.rows.push_back({{size, twelfths(bf), Figure(minutes, 60, 2)}, false});
  };
  line("2x4x8", 64, 60);  // 5 1/3
  line("2x4x16", 128, 125);
  line("2x8x16", 256, 175);
  line("1x4x12", 48, 240);
  total_up(lines);
  Table two = lines;
  two.name = "two";
  two.title = "Two columns that miss";
  two.rows.push_back({{std::string("1x6x14"), twelfths(88), Figure(25, 60, 2)}, false});
  two.rows.push_back({{std::string("1x6x10"), twelfths(64), Figure(25, 60, 2)}, false});
  total_up(two);
  Table grid;
  grid.name = "grid";
  grid.title = "Sizes by lengths";
  grid.columns = {text("size", "Size"), number("length_ft", "Length", "ft", 0, TotalKind::none),
                  number("pieces", "Pieces", "", 0), number("bf", "Board feet", "bf", 2)};
  for (const char* size : {"2x4", "2x8", "2x10"})
    for (const std::int64_t length : {8, 10})
      grid.rows.push_back({{std::string(size), length, std::int64_t{1}, twelfths(length * 2 + 1)}, false});
  grid.grid = Grid{{0}, 1, 2, {2, 3}};
  total_up(grid);
  document.tables = {lines, two, grid};
  for (Table& table : document.tables) note_rounding(table, document.style);
  return document;
}

Document no_rows() {
  Document document = mill_document("production", "Production by day");
  document.tables.push_back(production_table());
  return document;
}

Document paper() {
  Document document;
  document.name = "invoice";
  document.title = "Invoice";
  document.parties = {{"", {"Q. Hargan, custom sawing", "Sallow Fork, Tannet County"}},
                      {"Bill to", {"Oda Tervane", "Tervane farm <by the ford> & mill race"}}};
  document.head = {{"Invoice", std::string("H-12"), ColumnKind::text},
                   {"Due", make_day(2026, 5, 22), ColumnKind::day},
                   {"Deposit", dec(40000, 2), ColumnKind::money}};
  document.lead = {"Sawn at Tervane farm, 2026-05-04 to 2026-05-06."};
  document.tables.push_back(tally_week().tables[1]);
  document.tables.front().title.clear();
  document.tables.front().sums = {
      {"Subtotal", dec(55436, 2), false}, {"Deposit", dec(-40000, 2), false}, {"Due", dec(15436, 2), true}};
  Table blank;
  blank.name = "blank";
  blank.title = "Tally to fill in";
  blank.columns = {text("size", "Size"), number("ft8", "8", "ft", 0, TotalKind::none),
                   number("ft10", "10", "ft", 0, TotalKind::none)};
  blank.rows = {{{std::string("2x4"), Cell(), Cell()}, false}, {{std::string("2x6"), Cell(), Cell()}, false}};
  blank.ruled = true;
  blank.new_page = true;
  document.tables.push_back(std::move(blank));
  document.foot = {"Lumber counted: nominal thickness and width, lengths as written."};
  document.signatures = {"Customer"};
  document.made_on = "2026-05-08";
  return document;
}

Document chart_sampler() {
  Document document = mill_document("charts", "One of each chart");
  for (const ChartKind kind : {ChartKind::bar, ChartKind::line, ChartKind::stacked_bar, ChartKind::scatter}) {
    Table table = production_week().tables.front();
    table.name = "chart" + std::to_string(document.tables.size() + 1);
    table.title = "Chart " + std::to_string(document.tables.size() + 1);
    table.chart->kind = kind;
    if (kind == ChartKind::stacked_bar)
      table.chart = Chart{kind, "Hours sawing and stopped", 0, {7, 9}, false};
    if (kind == ChartKind::scatter) table.chart = Chart{kind, "Lumber by net scale", 3, {4}, true};
    if (kind == ChartKind::line) table.chart = Chart{kind, "Overrun a day", 0, {6}, false};
    document.tables.push_back(std::move(table));
  }
  return document;
}

}  // namespace kerfbook::render
