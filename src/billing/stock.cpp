// stock.cpp -- own lumber: sawn for the mill, come from shares, sold.
#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "base/settle.h"
#include "base/text.h"
#include "billing/bundle.h"
#include "billing/letter.h"
#include "billing/office.h"
#include "book/store.h"

namespace kerfbook::billing {

namespace {

using Key = std::tuple<std::string, std::string, Size, Length>;
using Lines = std::map<Key, StockLine>;

Key key_of(const StockLine& line) {
  Size size = line.size;
  size.quarters = false;  // 5/4x6 and 1-1/4x6 lie in one stack
  return {lower(line.species), lower(line.grade), size, line.length};
}

StockLine& place(Lines& lines, const StockLine& line) {
  return lines.emplace(key_of(line), line).first->second;
}

StockLine& line_of(Lines& lines, const BundleLine& of) {
  StockLine line;
  line.species = of.species;
  line.grade = of.grade;
  line.size = of.size;
  line.length = of.length;
  return place(lines, line);
}

/// species, grade, size, metric, length from column `first` on.
StockLine& line_of(Lines& lines, const book::Row& row, int first, bool lineal) {
  const bool metric = row.number(first + 3) != 0;
  const auto size = measure::read_size(row.text(first + 2), metric);
  StockLine line;
  line.species = row.text(first);
  line.grade = row.text(first + 1);
  if (size) line.size = *size;
  line.length = {lineal ? 0 : row.number(first + 4),
                 metric ? measure::System::metric : measure::System::inch};
  return place(lines, line);
}

std::string along_words(std::int64_t count, const StockLine& line) {
  const Length length{count, line.size.thickness.system};
  const bool metric = length.system == measure::System::metric;
  return plain(shortest(metric ? in_metres(length) : in_feet(length), 0, 2)) + (metric ? " lm" : " lf");
}

std::string words(const StockLine& line) {
  return write_size(line.size) + (line.lineal() ? "" : "x" + measure::write_feet(line.length)) +
         (line.species.empty() ? "" : " " + line.species) + (line.grade.empty() ? "" : " " + line.grade);
}

/// Rows of `sql` (species, grade, size, metric, length, pieces, form): lineal feet count by their length.
void read_lines(book::Store& store, Lines& lines, std::string_view sql, std::int64_t StockLine::*figure,
                Day to) {
  store.each(
      sql,
      [&](const book::Row& row) {
        const bool lineal = row.text(6) == "lineal";
        line_of(lines, row, 0, lineal).*figure += lineal ? row.number(4) * row.number(5) : row.number(5);
      },
      to);
}

/// Board feet by the house's way of counting; lineal feet have no board to round.
Rational bf_of(const StockLine& line, measure::Convention by) {
  if (line.lineal()) {
    by.length = measure::LengthRule::as_written;
    by.width = measure::WidthRule::as_cut;
  }
  return counted_bf(line.all(), by);
}

}  // namespace

std::vector<StockLine> stock(const book::Book& book, Day to) {
  Lines lines;
  book::Store store(book.database());
  read_lines(
      store, lines,
      "SELECT species, grade, size, metric, length, CASE form WHEN 'lineal' THEN CASE sense WHEN 'sawn' "
      "THEN 1 ELSE -1 END ELSE pieces END, form FROM v_tally WHERE owner = 'own' AND day <= ? "
      "ORDER BY day, shift, number",
      &StockLine::sawn, to);
  // what shares gave of lineal feet stands as a count of length, with no length of a board
  store.each(
      "SELECT species, grade, size, metric, length, to_mill FROM v_paper_share WHERE day <= ? ORDER BY "
      "number, line",
      [&](const book::Row& row) { line_of(lines, row, 0, false).shares += row.number(5); }, to);
  read_lines(store, lines,
             "SELECT species, grade, size, metric, length, CASE form WHEN 'lineal' THEN 1 ELSE pieces END, "
             "form FROM v_sold WHERE day <= ? "
             "ORDER BY day, shift, number",
             &StockLine::sold, to);
  for (const SoldBundle& sold : sold_bundles(book, to))
    for (const BundleLine& of : sold.lines) line_of(lines, of).sold += of.count;
  std::vector<StockLine> all;
  for (auto& [key, line] : lines) all.push_back(line);
  return all;
}

namespace {

/// One table of the stock: of boards, or of what was counted by its length.
class StockTable {
 public:
  StockTable(const book::Mill& mill, bool lineal) : mill_(mill), lineal_(lineal) {
    const bool metric = mill.units == measure::System::metric;
    const std::string unit = metric ? "m" : "ft";
    table_.name = lineal ? "lineal_stock" : "stock";
    if (lineal) table_.title = metric ? "Counted in lineal metres" : "Counted in lineal feet";
    table_.columns = {text_column("species", "Species"), text_column("grade", "Grade"),
                      text_column("size", "Size")};
    if (!lineal) table_.columns.push_back(decimal_column("length_ft", "Length", unit, 0));
    const auto figure = [&](const std::string& name, const std::string& heading) {
      table_.columns.push_back(lineal ? decimal_column(name, heading, unit, 2)
                                      : summed(count_column(name, heading)));
    };
    figure("sawn", "Sawn");
    figure("shares", "From shares");
    figure("sold", "Sold");
    figure("pieces", "In stock");
    table_.columns.push_back(summed(decimal_column("bf", "Board feet", "bf", 2)));
  }

  void add(const StockLine& line) {
    exact_.push_back(bf_of(line, mill_.convention));
    render::Row row{{line.species, line.grade, write_size(line.size)}};
    if (!lineal_) row.cells.emplace_back(shortest(long_in(line.length), 0, 4));
    for (const std::int64_t figure : {line.sawn, line.shares, line.sold, line.pieces()})
      row.cells.push_back(lineal_ ? render::Cell(shown(long_in({figure, line.size.thickness.system}), 2))
                                  : render::Cell(figure));
    row.cells.emplace_back(Decimal{});
    table_.rows.push_back(std::move(row));
    sum_.sawn += line.sawn;
    sum_.shares += line.shares;
    sum_.sold += line.sold;
  }

  render::Table made() {
    if (table_.rows.empty()) return std::move(table_);
    const std::int64_t total = rounded_total(exact_, 2);
    const std::vector<std::int64_t> settled = settle(exact_, 2, total);
    for (std::size_t i = 0; i < settled.size(); ++i) table_.rows[i].cells.back() = Decimal{settled[i], 2};
    table_.totals.assign(table_.columns.size(), std::monostate{});
    table_.totals.back() = Decimal{total, 2};
    if (!lineal_) {
      std::size_t at = table_.columns.size() - 5;
      for (const std::int64_t figure : {sum_.sawn, sum_.shares, sum_.sold, sum_.pieces()})
        table_.totals[at++] = figure;
    }
    return std::move(table_);
  }

 private:
  static Rational long_in(const Length& length) {
    return length.system == measure::System::metric ? in_metres(length) : in_feet(length);
  }

  const book::Mill& mill_;
  bool lineal_;
  render::Table table_;
  std::vector<Rational> exact_;
  StockLine sum_;
};

}  // namespace

render::Document stock_document(const book::Book& book, Day to, Day today) {
  const book::Mill& mill = book.mill();
  render::Document paper;
  paper.name = "stock";
  paper.title = "Own stock";
  paper.subtitle = mill.name + "; up to " + day_words(to, mill);
  paper.meaning =
      "Own lumber: sawn for the mill's own account and its part of share settlements, less what was sold.";
  paper.style = paper_style(mill);
  paper.made_on = write_day(today);
  StockTable boards(mill, false);
  StockTable feet(mill, true);
  for (const StockLine& line : stock(book, to)) (line.lineal() ? feet : boards).add(line);
  render::Table table = boards.made();
  table.notes = stock_warnings(book, to);
  table.when_empty = "no own lumber";
  paper.tables.push_back(std::move(table));
  render::Table lineal = feet.made();
  if (!lineal.rows.empty()) paper.tables.push_back(std::move(lineal));
  paper.foot.emplace_back(kGradeCaution);
  return paper;
}

namespace {

/// What a sheet sold by the piece or by the foot.
std::set<Key> sold_on_sheet(const book::Book& book, const SheetKey& sheet) {
  Lines lines;
  book::Store store(book.database());
  store.each(
      "SELECT species, grade, size, metric, length, form FROM v_sold WHERE day = ? AND shift = ?",
      [&](const book::Row& row) { line_of(lines, row, 0, row.text(5) == "lineal"); }, sheet.first,
      sheet.second);
  std::set<Key> keys;
  for (const auto& [key, line] : lines) keys.insert(key);
  return keys;
}

}  // namespace

std::vector<std::string> stock_warnings(const book::Book& book, Day to,
                                        const std::optional<SheetKey>& sold_on) {
  std::vector<std::string> all;
  for (const SoldBundle& sold : sold_bundles(book, to))
    if (sold.lines.empty() && (!sold_on || *sold_on == SheetKey{sold.day, sold.shift}))
      all.push_back("Sold a bundle with nothing in it: " + sold.tag + ", " + write_day(sold.day) + ".");
  std::set<Key> only;
  if (sold_on) only = sold_on_sheet(book, *sold_on);
  if (sold_on && only.empty()) return all;
  for (const StockLine& line : stock(book, to)) {
    if (line.pieces() >= 0 || (sold_on && only.count(key_of(line)) == 0)) continue;
    const auto many = [&](std::int64_t figure) {
      return line.lineal() ? along_words(figure, line) : std::to_string(figure);
    };
    all.push_back("Sold more than is there: " + words(line) + ", " + many(line.sold) + " sold of " +
                  many(line.sawn + line.shares) + ".");
  }
  return all;
}

}  // namespace kerfbook::billing
