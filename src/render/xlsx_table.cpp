// xlsx_table.cpp -- a table on a worksheet: typed cells, totals as live formulas, struck rows, a native chart.
#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "render/cell.h"
#include "render/footing.h"
#include "render/renderer.h"
#include "render/xlsx_book.h"

namespace kerfbook::render {
namespace {

constexpr std::size_t kFilterFrom = 12;  ///< rows from which a filter over the heading is of use
constexpr double kForAPencil = 1.5;      ///< lines: the height of a row to be filled in by hand

/// Which of the sheet's columns (with a plan: of the plan's, then of those beyond it) each column of the Table is; a
/// hidden one only when a shown ratio is made of it.
class Places {
 public:
  explicit Places(const Table& table) : at_(table.columns.size(), -1) {
    for (const std::size_t column : shown_columns(table)) at_[column] = next_++;
    shown_ = next_;
    for (const auto& column : table.columns) {
      if (column.hidden || !column.ratio) continue;
      for (const std::size_t part : {column.ratio->over, column.ratio->under}) {
        if (at_[part] < 0) at_[part] = next_++;
      }
    }
  }
  [[nodiscard]] bool has(std::size_t column) const { return at_[column] >= 0; }
  [[nodiscard]] SheetColumn of(std::size_t column) const { return static_cast<SheetColumn>(at_[column]); }
  [[nodiscard]] bool is_shown(std::size_t column) const { return at_[column] >= 0 && at_[column] < shown_; }
  [[nodiscard]] SheetColumn last() const { return static_cast<SheetColumn>(shown_ - 1); }
  [[nodiscard]] std::size_t all() const { return static_cast<std::size_t>(next_); }

 private:
  std::vector<int> at_;
  int next_ = 0;
  int shown_ = 0;
};

/// Text after a number would touch it.
bool follows_number(const Table& table, std::size_t column) {
  while (column > 0 && table.columns[column - 1].hidden) --column;
  return column > 0 && stands_right(table.columns[column - 1]);
}

Look look_of(const Table& table, std::size_t column, const Style& style) {
  const Column& one = table.columns[column];
  const bool right = stands_right(one);
  return {
      .number = number_format(one, style), .right = right, .indent = !right && follows_number(table, column)};
}

std::string heading_with_unit(const Column& column) {
  const std::string& heading = heading_of(column);
  return column.unit.empty() ? heading : heading + "\n" + column.unit;
}

/// Lines a heading takes in a column so wide, its words kept whole, and the unit below.
int lines_of(const Column& column, int width) {
  int lines = 1;
  int used = 0;
  for (const auto& word : split_words(heading_of(column))) {
    const int more = screen_width(word);
    if (used > 0 && used + 1 + more > width) {
      ++lines;
      used = more;
    } else {
      used += more + (used > 0 ? 1 : 0);
    }
  }
  return lines + (column.unit.empty() ? 0 : 1);
}

}  // namespace

int heading_width(const Column& column) {
  constexpr int kMost = 14;
  int width = screen_width(column.unit);
  for (const auto& word : split_words(heading_of(column))) width = std::max(width, screen_width(word));
  const int unit = column.unit.empty() ? 0 : 1;
  while (width < kMost && lines_of(column, width) - unit > 2) ++width;
  const bool several = screen_width(heading_of(column)) > width;
  return width + (several ? 4 : 3);  // broken where it may, a heading still keeps off its neighbour
}

namespace {

void write_headings(Cursor& cursor, const Table& table, const Places& places) {
  int lines = 1;
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    if (!places.has(i)) continue;
    const Column& column = table.columns[i];
    const bool right = stands_right(column);
    cursor.widen(places.of(i), heading_width(column));
    cursor.put_text(places.of(i), heading_with_unit(column),
                    {.right = right,
                     .indent = !right && follows_number(table, i),
                     .wrap = true,
                     .head = true,
                     .boxed = table.ruled});
    const int width = cursor.planned() ? cursor.places()[places.of(i)].width : heading_width(column) - 4;
    lines = std::max(lines, lines_of(column, width));
    if (!places.is_shown(i)) cursor.hide(places.of(i));
  }
  cursor.set_height(lines);
  ++cursor.row;
}

/// A column as its cells are written: where, and how when counted and when struck.
struct Pen {
  std::size_t column;
  SheetColumn at;
  Look looks[2];
  lxw_format* formats[2];
};

std::vector<Pen> pens(Cursor& cursor, const Table& table, const Places& places) {
  std::vector<Pen> out;
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    if (!places.has(i)) continue;
    Look look = look_of(table, i, cursor.book().document().style);
    look.boxed = table.ruled;
    Look struck = look;
    struck.struck = true;
    out.push_back({i, places.of(i), {look, struck}, {cursor.book().format(look), nullptr}});
    if (has_struck(table)) out.back().formats[1] = cursor.book().format(struck);
  }
  return out;
}

/// A figure with other decimals than its column (0.75 h under 1,911 bf) is shown with its own, as in every other form.
void put_cell(Cursor& cursor, const Table& table, const Pen& pen, const Cell& cell, std::size_t how) {
  const auto* figure = std::get_if<Figure>(&cell);
  const Column& column = table.columns[pen.column];
  if (const auto* text = std::get_if<std::string>(&cell); text != nullptr && holds_units(column))
    return cursor.put(pen.at, printed_unit(*text), pen.looks[how], pen.formats[how]);
  if (figure == nullptr || figure->places() == column.places || column.kind == ColumnKind::count) {
    cursor.put(pen.at, cell, pen.looks[how], pen.formats[how]);
    return;
  }
  Column own = column;
  own.places = figure->places();
  Look look = pen.looks[how];
  look.number = number_format(own, cursor.book().document().style);
  cursor.put(pen.at, cell, look);
}

std::vector<SheetRow> write_rows(Cursor& cursor, const Table& table, const Places& places) {
  const std::vector<Pen> columns = pens(cursor, table, places);
  std::vector<SheetRow> counted;
  for (const Row& row : table.rows) {
    if (!row.struck) counted.push_back(cursor.row);
    if (table.ruled) cursor.set_height(kForAPencil);
    for (const Pen& pen : columns) put_cell(cursor, table, pen, row.cells[pen.column], row.struck ? 1 : 0);
    ++cursor.row;
  }
  return counted;
}

/// What works the totals of a table out live, on the row of the totals.
class Totals {
 public:
  Totals(const Cursor& cursor, const Table& table, const Places& places, const std::vector<SheetRow>& counted)
      : cursor_(cursor), table_(table), places_(places), counted_(counted) {}

  /// Empty when nothing does.
  [[nodiscard]] std::string formula(std::size_t column) const {
    if (table_.columns[column].total == TotalKind::sum && is_number(table_.totals[column]))
      return sum(column);
    if (!table_.columns[column].ratio) return "";
    const std::string rate = ratio(column);
    return rate.empty() ? parts(column) : rate;
  }

 private:
  [[nodiscard]] SheetColumn at(std::size_t column) const { return cursor_.at(places_.of(column)); }
  [[nodiscard]] std::string sum(std::size_t column) const { return sum_of_rows(counted_, at(column)); }

  /// A ratio of two totals as a formula, where the totals give it; else nothing, and the total stands as a figure.
  [[nodiscard]] std::string ratio(std::size_t column) const {
    const auto& ratio = *table_.columns[column].ratio;
    const Cell& total = table_.totals[column];
    const Cell& over = table_.totals[ratio.over];
    const Cell& under = table_.totals[ratio.under];
    if (!is_number(total) || !is_number(over) || !is_number(under)) return "";
    const Rational top = as_figure(over).exact();
    const Rational bottom = as_figure(under).exact();
    if (bottom.is_zero()) return "";
    const Rational value =
        ratio.percent_over ? Rational(100) * (top - bottom) / bottom : Rational(ratio.scale) * top / bottom;
    if (value != as_figure(total).exact()) return "";
    const std::string a = cell_name(cursor_.row, at(ratio.over));
    const std::string b = cell_name(cursor_.row, at(ratio.under));
    if (ratio.percent_over) return "100*(" + a + "-" + b + ")/" + b;
    return (ratio.scale == 1 ? "" : std::to_string(ratio.scale) + "*") + a + "/" + b;
  }

  /// Parts of a whole that no row adds to (every row says all of it) are themselves added up, where they meet the total.
  [[nodiscard]] std::string parts(std::size_t column) const {
    const Cell& total = table_.totals[column];
    if (!is_number(total) || !is_part_of_whole(table_, table_.columns[column])) return "";
    Cell sum_of;
    for (const Row& row : table_.rows) {
      if (!row.struck) sum_of = added(sum_of, row.cells[column]);
    }
    return is_number(sum_of) && as_figure(sum_of).exact() == as_figure(total).exact() ? sum(column) : "";
  }

  const Cursor& cursor_;
  const Table& table_;
  const Places& places_;
  const std::vector<SheetRow>& counted_;
};

void write_totals(Cursor& cursor, const Table& table, const Places& places,
                  const std::vector<SheetRow>& counted) {
  const Style& style = cursor.book().document().style;
  const Totals totals(cursor, table, places, counted);
  bool named = false;
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    if (!places.has(i)) continue;
    const Column& column = table.columns[i];
    Look look = look_of(table, i, style);
    look.bold = true;
    look.ruled_above = true;
    const Cell& total = table.totals[i];
    if (const auto formula = totals.formula(i); !formula.empty()) {
      cursor.put_formula(places.of(i), formula, total, look);
    } else if (!named && is_absent(total) && !stands_right(column)) {
      cursor.put_text(places.of(i), "Total", {.bold = true, .ruled_above = true});
      named = true;
    } else {
      cursor.put(places.of(i), total, look);
    }
  }
  ++cursor.row;
}

lxw_chart_type native(ChartKind kind) {
  switch (kind) {
    case ChartKind::bar:
      return LXW_CHART_COLUMN;
    case ChartKind::line:
      return LXW_CHART_LINE;
    case ChartKind::stacked_bar:
      return LXW_CHART_COLUMN_STACKED;
    case ChartKind::scatter:
      return LXW_CHART_SCATTER;
  }
  return LXW_CHART_COLUMN;
}

/// Whether any figure drawn is so large: then an axis without decimals still tells its ticks apart.
bool reaches(const Table& table, const std::vector<std::size_t>& columns, double least) {
  return std::any_of(table.rows.begin(), table.rows.end(), [&](const Row& row) {
    return std::any_of(columns.begin(), columns.end(),
                       [&](std::size_t i) { return std::abs(drawn(row.cells[i]).value_or(0)) >= least; });
  });
}

/// Bars are read by their length, so they stand on nought unless some hang below it.
bool goes_below_nought(const Table& table, const std::vector<std::size_t>& columns) {
  return std::any_of(table.rows.begin(), table.rows.end(), [&](const Row& row) {
    return std::any_of(columns.begin(), columns.end(),
                       [&](std::size_t i) { return drawn(row.cells[i]).value_or(0) < 0; });
  });
}

constexpr lxw_color_t kColours[] = {0x8A5A2B, 0x3F6F63, 0xB58A3C, 0x6A5A83, 0x94504C};  ///< as on a page

void paint(lxw_chart_series* series, ChartKind kind, std::size_t which) {
  const lxw_color_t colour = kColours[which % std::size(kColours)];
  lxw_chart_fill fill{};
  fill.color = colour;
  if (kind == ChartKind::line) {
    lxw_chart_line line{};
    line.color = colour;
    chart_series_set_line(series, &line);
    chart_series_set_marker_type(series, LXW_CHART_MARKER_CIRCLE);
    chart_series_set_marker_fill(series, &fill);
  } else if (kind == ChartKind::scatter) {
    chart_series_set_marker_type(series, LXW_CHART_MARKER_CIRCLE);
    chart_series_set_marker_fill(series, &fill);
  } else {
    chart_series_set_fill(series, &fill);
  }
}

}  // namespace

SheetRow write_table(Cursor& cursor, const Table& table) {
  if (table.rows.empty() && !table.ruled) {
    cursor.put_text(0, table.when_empty, {.wrap = true, .quiet = true});
    cursor.widen(0, screen_width(table.when_empty) + 2);
    return cursor.row++;
  }
  const Places places(table);
  const SheetRow head = cursor.row;
  cursor.keep_hidden(places.all());
  write_headings(cursor, table, places);
  const auto counted = write_rows(cursor, table, places);
  if (table.rows.size() >= kFilterFrom && !table.ruled && cursor.book().document().parties.empty()) {
    worksheet_autofilter(cursor.raw(), head, 0, cursor.row - 1, cursor.at(places.last()));
  }
  if (!table.totals.empty()) write_totals(cursor, table, places, counted);
  return head;
}

void write_chart(Cursor& cursor, const Table& table, SheetRow head, SheetRow last) {
  if (!table.chart || table.rows.empty() || has_struck(table) || cursor.book().raw()->options.constant_memory)
    return;
  const Chart& wanted = *table.chart;
  if (wanted.kind == ChartKind::line && table.rows.size() < 2) return;  // one point is no line
  const Places places(table);
  lxw_chart* const chart =
      workbook_add_chart(cursor.book().raw(), static_cast<std::uint8_t>(native(wanted.kind)));
  const char* const sheet = cursor.raw()->name;
  std::size_t painted = 0;
  for (const std::size_t y : wanted.y) {
    if (!places.has(y) || !places.has(wanted.x)) continue;
    lxw_chart_series* const series = chart_add_series(chart, nullptr, nullptr);
    chart_series_set_categories(series, sheet, head + 1, places.of(wanted.x), last, places.of(wanted.x));
    chart_series_set_values(series, sheet, head + 1, places.of(y), last, places.of(y));
    chart_series_set_name(series, heading_of(table.columns[y]).c_str());
    paint(series, wanted.kind, painted++);
    if (wanted.trend) chart_series_set_trendline(series, LXW_CHART_TRENDLINE_TYPE_LINEAR, 0);
  }
  if (!wanted.title.empty()) chart_title_set_name(chart, wanted.title.c_str());
  if (table.columns[wanted.x].kind == ColumnKind::day) {
    chart_axis_set_num_format(chart->x_axis,
                              number_format(table.columns[wanted.x], cursor.book().document().style).c_str());
  }
  chart_axis_set_name(chart->x_axis, heading_of(table.columns[wanted.x]).c_str());
  if (wanted.y.size() == 1) {
    const Column& column = table.columns[wanted.y.front()];
    chart_axis_set_name(chart->y_axis, (column.unit.empty() ? heading_of(column) : column.unit).c_str());
    chart_legend_set_position(chart, LXW_CHART_LEGEND_NONE);
  }
  const bool bars = wanted.kind == ChartKind::bar || wanted.kind == ChartKind::stacked_bar;
  if (bars && !goes_below_nought(table, wanted.y)) chart_axis_set_min(chart->y_axis, 0);
  if (reaches(table, wanted.y, 10)) chart_axis_set_num_format(chart->y_axis, "#,##0");
  lxw_chart_line faint{};
  faint.color = 0xCFC6B8;
  faint.width = 0.75F;
  chart_axis_major_gridlines_set_line(chart->y_axis, &faint);
  lxw_chart_font small{};
  small.size = 12;
  chart_title_set_name_font(chart, &small);
  lxw_chart_options options{};
  options.x_scale = 1.4;
  worksheet_insert_chart_opt(cursor.raw(), cursor.row + 1, 0, chart, &options);
}

}  // namespace kerfbook::render
