// stock.cpp -- own lumber: sawn for the mill, come from shares, sold.
#include <algorithm>
#include <map>
#include <tuple>

#include "base/settle.h"
#include "base/text.h"
#include "billing/letter.h"
#include "billing/office.h"
#include "book/store.h"

namespace kerfbook::billing {

namespace {

using Key = std::tuple<std::string, std::string, Size, Length>;
using Lines = std::map<Key, StockLine>;

/// species, grade, size, metric, length from column `first` on.
StockLine& line_of(Lines& lines, const book::Row& row, int first) {
  const bool metric = row.number(first + 3) != 0;
  const auto size = measure::read_size(row.text(first + 2), metric);
  StockLine line;
  line.species = row.text(first);
  line.grade = row.text(first + 1);
  if (size) line.size = *size;
  line.length = {row.number(first + 4), metric ? measure::System::metric : measure::System::inch};
  return lines.emplace(Key{lower(line.species), lower(line.grade), line.size, line.length}, line)
      .first->second;
}

std::string words(const StockLine& line) {
  return write_size(line.size) + "x" + measure::write_feet(line.length) +
         (line.species.empty() ? "" : " " + line.species) + (line.grade.empty() ? "" : " " + line.grade);
}

}  // namespace

std::vector<StockLine> stock(const book::Book& book, Day to) {
  Lines lines;
  book::Store store(book.database());
  store.each(
      "SELECT species, grade, size, metric, length, pieces FROM v_tally WHERE owner = 'own' AND form <> "
      "'lineal' "
      "AND day <= ? ORDER BY day, shift, number",
      [&](const book::Row& row) { line_of(lines, row, 0).sawn += row.number(5); }, to);
  store.each(
      "SELECT species, grade, size, metric, length, to_mill FROM v_paper_share WHERE day <= ? ORDER BY "
      "number, line",
      [&](const book::Row& row) { line_of(lines, row, 0).shares += row.number(5); }, to);
  store.each(
      "SELECT species, grade, size, metric, length, pieces FROM v_sold WHERE day <= ? ORDER BY day, shift, "
      "number",
      [&](const book::Row& row) { line_of(lines, row, 0).sold += row.number(5); }, to);
  std::vector<StockLine> all;
  for (auto& [key, line] : lines) all.push_back(line);
  return all;
}

render::Document stock_document(const book::Book& book, Day to, Day today) {
  const book::Mill& mill = book.mill();
  render::Document paper;
  paper.name = "stock";
  paper.title = "Own stock";
  paper.subtitle = mill.name + "; up to " + day_words(to, mill);
  paper.meaning =
      "Own lumber by piece count: sawn for the mill's own account and its part of share settlements, less "
      "what "
      "was sold. Lineal counts are not in it.";
  paper.style = paper_style(mill);
  paper.made_on = write_day(today);
  render::Table table;
  table.name = "stock";
  table.columns = {
      text_column("species", "Species"),
      text_column("grade", "Grade"),
      text_column("size", "Size"),
      decimal_column("length_ft", "Length", mill.units == measure::System::metric ? "m" : "ft", 0),
      summed(count_column("sawn", "Sawn")),
      summed(count_column("shares", "From shares")),
      summed(count_column("sold", "Sold")),
      summed(count_column("pieces", "In stock")),
      summed(decimal_column("bf", "Board feet", "bf", 2))};
  std::vector<Rational> exact;
  StockLine sum;
  for (const StockLine& line : stock(book, to)) {
    exact.push_back(measure::counted_bf({line.size, line.length, line.pieces()}, mill.convention));
    const Rational along =
        line.length.system == measure::System::metric ? in_metres(line.length) : in_feet(line.length);
    table.rows.push_back({{line.species, line.grade, write_size(line.size), shortest(along, 0, 4), line.sawn,
                           line.shares, line.sold, line.pieces(), Decimal{}}});
    sum.sawn += line.sawn;
    sum.shares += line.shares;
    sum.sold += line.sold;
  }
  const std::int64_t total = rounded_total(exact, 2);
  const std::vector<std::int64_t> settled = settle(exact, 2, total);
  for (std::size_t i = 0; i < settled.size(); ++i) table.rows[i].cells[8] = Decimal{settled[i], 2};
  if (!table.rows.empty())
    table.totals = {std::monostate{}, {}, {}, {}, sum.sawn, sum.shares, sum.sold, sum.pieces(),
                    Decimal{total, 2}};
  table.notes = stock_warnings(book, to);
  table.when_empty = "no own lumber";
  paper.tables.push_back(std::move(table));
  paper.foot.emplace_back(kGradeCaution);
  return paper;
}

std::vector<std::string> stock_warnings(const book::Book& book, Day to) {
  std::vector<std::string> all;
  for (const StockLine& line : stock(book, to))
    if (line.pieces() < 0)
      all.push_back("Sold more than is there: " + words(line) + ", " + std::to_string(line.sold) +
                    " sold of " + std::to_string(line.sawn + line.shares) + ".");
  return all;
}

}  // namespace kerfbook::billing
