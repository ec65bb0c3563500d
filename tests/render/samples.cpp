#include "render/samples.h"

#include <string>

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
                   number("log_ft3", "Log volume", "ft3", 2),
                   ratio("lrf", "LRF", "bf/ft3", 2, {4, 10, 1, false})};
  table.columns[10].hidden = true;
  table.chart = Chart{ChartKind::bar, "Board feet a day", 0, {4}, false};
  table.notes = {"Overrun by International 1/4-inch on 54 logs."};
  return table;
}

void add_day(Table& table, Day day, const std::string& site, std::int64_t logs, std::int64_t net,
             std::int64_t bf, std::int64_t pieces, std::int64_t over, std::int64_t hours, std::int64_t rate,
             std::int64_t stop, std::int64_t ft3, std::int64_t lrf) {
  table.rows.push_back({{day, site, logs, net, dec(bf, 2), pieces, dec(over, 1), dec(hours, 2), dec(rate, 0),
                         stop == 0 ? Cell() : dec(stop, 2), dec(ft3, 2), dec(lrf, 2)},
                        false});
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
    table.rows.push_back({{Cell(), size, length, pieces, dec(bf, 2)}, false});
  };
  line("2x4", 12, 3, 2400);
  line("2x4", 14, 12, 11200);
  line("2x4", 16, 32, 34133);
  table.rows.back().struck = true;
  line("2x4", 16, 23, 24533);
  line("2x6", 12, 1, 1200);
  line("2x6", 14, 6, 8400);
  line("2x6", 16, 10, 16000);
  line("2x8", 12, 2, 3200);
  line("2x8", 14, 4, 7467);
  line("2x8", 16, 7, 14933);
  table.totals = {Cell(), Cell(), Cell(), std::int64_t{68}, dec(89333, 2)};
  table.notes = {"2x4 16 ft: 32 was struck on 2026-05-08, \"32 typed, sheet says 23\"."};
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
  add_day(table, monday, "Tervane farm", 12, 1590, 156067, 109, -18, 625, 250, 50, 23433, 666);
  add_day(table, monday + 1, "Tervane farm", 10, 1160, 110933, 74, -44, 475, 234, 135, 17497, 634);
  add_day(table, monday + 2, "Tervane farm, then the yard at Sallow Fork", 8, 825, 81467, 59, -13, 325, 251,
          0, 12789, 637);
  add_day(table, monday + 3, "yard", 13, 1285, 156200, 114, 216, 600, 260, 50, 19797, 789);
  add_day(table, monday + 4, "yard", 11, 1440, 144008, 167, 0, 650, 222, 25, 21023, 685);
  table.totals = {
      Cell(),     Cell(),       std::int64_t{54}, std::int64_t{6300}, dec(648675, 2), std::int64_t{523},
      dec(30, 1), dec(2675, 2), dec(242, 0),      dec(260, 2),        dec(94539, 2),  dec(686, 2)};
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
                   number("size", "Size", "m3", 3)};
  table.columns.push_back(number("sum", "Sum", "", 2));
  table.columns.back().kind = ColumnKind::money;
  table.columns.push_back(ratio("rate", "Rate", "%", 1, {3, 2, 100, false}));
  const Day day = make_day(2026, 12, 31);
  const auto row = [&](std::string words, Cell count, Cell size, Cell sum, Cell rate, bool struck = false) {
    table.rows.push_back(
        {{std::move(words), day, std::move(count), std::move(size), std::move(sum), std::move(rate)},
         struck});
  };
  row("plain", std::int64_t{1}, dec(1500, 3), dec(123456789, 2), dec(1500, 1));
  row("comma, and \"quotes\"", std::int64_t{-2}, dec(-5, 3), dec(-500, 2), dec(3, 1));
  row("two\nlines", std::int64_t{0}, dec(0, 3), dec(0, 2), Cell());
  row("<b>bold & brave</b>", std::int64_t{1'000'000}, dec(7, 3), dec(1, 2), dec(0, 1));
  row("=1+2", std::int64_t{3}, dec(3000, 3), dec(300, 2), dec(1000, 1));
  row("@sum, +1, -1", std::int64_t{4}, dec(4000, 3), dec(400, 2), dec(1000, 1));
  row("https://example.invalid/page", std::int64_t{5}, dec(5000, 3), dec(500, 2), dec(1000, 1));
  row("Ærøskøbing, Łódź, Ελλάδα, Кедр, 檜 ヒノキ, שקד", std::int64_t{6}, dec(6000, 3), dec(600, 2),
      dec(1000, 1));
  row(std::string(200, 'n'), std::int64_t{7}, dec(7000, 3), dec(700, 2), dec(1000, 1));
  row("", Cell(), Cell(), Cell(), Cell());
  table.rows.push_back({{Cell(), Cell(), Cell(), Cell(), Cell(), Cell()}, false});
  row("a struck line", std::int64_t{99}, dec(99000, 3), dec(9900, 2), dec(1000, 1), true);
  table.totals = {Cell(), Cell(), std::int64_t{1'000'024}, dec(26502, 3), dec(123458790, 2), dec(0, 1)};
  document.tables.push_back(std::move(table));
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
