#include "render/cell.h"

#include <algorithm>
#include <stdexcept>

#include "base/text.h"
#include "render/renderer.h"

namespace kerfbook::render {
namespace {

/// Rates of money may have more places than the currency: $0.4850.
std::string shown_money(const Decimal& value, measure::Currency currency) {
  currency.places = value.places;
  return measure::write_money({value.units}, currency);
}

bool is_letter_or_digit(char c) {
  return is_digit(c) || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

std::string ungrouped_when_asked(std::string number) {
  std::erase(number, '\0');  // '\0' as the thousands mark asks for none
  return number;
}

std::string two_digits(int number) {
  return (number < 10 ? "0" : "") + std::to_string(number);
}

/// "1:20", "-0:05".
std::string shown_time(const Figure& hours) {
  const std::int64_t minutes = (hours.exact() * Rational(60)).rounded(0);
  const std::int64_t all = minutes < 0 ? -minutes : minutes;
  return (minutes < 0 ? "-" : "") + std::to_string(all / 60) + ":" + two_digits(static_cast<int>(all % 60));
}

std::string shown_day(Day day, DateOrder order) {
  const YearMonthDay date = parts(day);
  switch (order) {
    case DateOrder::month_day_year:
      return two_digits(date.month) + "/" + two_digits(date.day) + "/" + std::to_string(date.year);
    case DateOrder::day_month_year:
      return two_digits(date.day) + "." + two_digits(date.month) + "." + std::to_string(date.year);
    case DateOrder::year_month_day:
      break;
  }
  return write_day(day);
}

}  // namespace

bool is_absent(const Cell& cell) {
  return std::holds_alternative<std::monostate>(cell);
}

bool is_number(const Cell& cell) {
  return std::holds_alternative<std::int64_t>(cell) || std::holds_alternative<Figure>(cell);
}

bool stands_right(const Column& column) {
  return column.kind != ColumnKind::text && column.kind != ColumnKind::day;
}

std::string plain_cell(const Cell& cell) {
  if (is_absent(cell)) return "";
  if (const auto* day = std::get_if<Day>(&cell)) return write_day(*day);
  if (const auto* text = std::get_if<std::string>(&cell)) return *text;
  return plain(as_figure(cell).fine());
}

Figure as_figure(const Cell& cell) {
  if (const auto* count = std::get_if<std::int64_t>(&cell)) return Decimal{*count, 0};
  if (const auto* figure = std::get_if<Figure>(&cell)) return *figure;
  throw std::invalid_argument("only numbers can be added");
}

Cell added(const Cell& a, const Cell& b) {
  if (is_absent(a)) return b;
  if (is_absent(b)) return a;
  const auto* left = std::get_if<std::int64_t>(&a);
  const auto* right = std::get_if<std::int64_t>(&b);
  if (left == nullptr || right == nullptr) return as_figure(a) + as_figure(b);
  std::int64_t sum = 0;
  if (__builtin_add_overflow(*left, *right, &sum)) throw std::overflow_error("a sum grew past 63 bits");
  return sum;
}

std::optional<double> drawn(const Cell& cell) {
  if (const auto* day = std::get_if<Day>(&cell)) return day->number;
  if (!is_number(cell)) return std::nullopt;
  return as_figure(cell).nearest();
}

std::string printed_unit(std::string unit) {
  for (std::size_t at = unit.find('3'); at != std::string::npos; at = unit.find('3', at + 1)) {
    const std::string_view before = std::string_view(unit).substr(0, at);
    const bool ends = at + 1 == unit.size() || !is_letter_or_digit(unit[at + 1]);
    if (ends && (before.ends_with("m") || before.ends_with("ft"))) unit.replace(at, 1, "³");
  }
  return unit;
}

std::string plain_unit(std::string unit) {
  constexpr std::string_view kCubic = "³";
  for (std::size_t at = unit.find(kCubic); at != std::string::npos; at = unit.find(kCubic, at))
    unit.replace(at, kCubic.size(), "3");
  return unit;
}

const std::string& heading_of(const Column& column) {
  return column.heading.empty() ? column.name : column.heading;
}

std::string one_line(const std::string& text) {
  std::string line = fit_to_print(text);
  for (char& c : line)
    if (c == '\n' || c == '\t') c = ' ';
  return line;
}

bool has_struck(const Table& table) {
  return std::any_of(table.rows.begin(), table.rows.end(), [](const Row& row) { return row.struck; });
}

std::string in_one_line(const Table& table, const Row& row, const Style& style) {
  std::string words;
  for (const std::size_t i : shown_columns(table)) {
    const Column& column = table.columns[i];
    if (is_absent(row.cells[i]) || plain_cell(row.cells[i]).empty()) continue;
    words += (words.empty() ? "" : "   ") + one_line(shown_cell(row.cells[i], column, style));
    if (is_number(row.cells[i])) words += " " + (column.unit.empty() ? heading_of(column) : column.unit);
  }
  return words;
}

std::vector<std::size_t> shown_columns(const Table& table) {
  std::vector<std::size_t> shown;
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    if (!table.columns[i].hidden) shown.push_back(i);
  }
  return shown;
}

std::string shown_cell(const Cell& cell, const Column& column, const Style& style) {
  if (is_absent(cell)) return "-";
  if (const auto* day = std::get_if<Day>(&cell)) return shown_day(*day, style.dates);
  if (const auto* text = std::get_if<std::string>(&cell))
    return holds_units(column) ? printed_unit(*text) : *text;
  const Figure figure = as_figure(cell);
  if (figure.is_time()) return shown_time(figure);
  const Decimal value = figure.shown();
  if (column.kind == ColumnKind::money) return shown_money(value, style.currency);
  const std::string number =
      ungrouped_when_asked(grouped(value, style.currency.thousands, style.currency.decimal_mark));
  const bool over = column.ratio && column.ratio->percent_over;
  return over && value.units > 0 ? "+" + number : number;
}

}  // namespace kerfbook::render
