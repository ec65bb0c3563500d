// What stands under a table's lines: exact totals, and the words where the printed lines miss them: render/footing.h.
#include "render/footing.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <string>

#include "render/cell.h"
#include "render/renderer.h"
#include "render/samples.h"

namespace kerfbook::render {
namespace {

Column summed(const std::string& heading, int places) {
  Column column;
  column.name = heading;
  column.heading = heading;
  column.kind = ColumnKind::decimal;
  column.places = places;
  column.total = TotalKind::sum;
  return column;
}

Table footed(const std::vector<Rational>& lines) {
  Table table;
  table.columns = {summed("Board feet", 2)};
  for (const Rational& line : lines) table.rows.push_back({{Figure(line, 2)}, false});
  total_up(table);
  note_rounding(table, {});
  return table;
}

}  // namespace

TEST_CASE("every figure is the nearest one, a half going up, whatever its neighbours need to add up") {
  CHECK(plain(Figure(Rational(1, 3), 2).shown()) == "0.33");
  CHECK(plain(Figure(Rational(1, 8), 2).shown()) == "0.13");
  CHECK(plain(Figure(Rational(-1, 8), 2).shown()) == "-0.13");
  CHECK(plain(Figure(Rational(2'000'001, 16'000'000), 2).shown()) == "0.13");
  CHECK(plain(Figure(Rational(1'999'999, 16'000'000), 2).shown()) == "0.12");  // not by way of 0.125000
}

TEST_CASE("for machines a figure has up to six decimals, and no more than it needs") {
  CHECK(plain(Figure(Rational(806, 3), 2).fine()) == "268.666667");
  CHECK(plain(Figure(Rational(19, 4), 2).fine()) == "4.75");
  CHECK(plain(Figure(Rational(19, 4), 0).fine()) == "4.75");
  CHECK(plain(Figure(Rational(18), 2).fine()) == "18.00");
  CHECK(plain(Figure(Rational(1, 3'000'000'000), 2).fine()) == "0.00");
  CHECK(plain(Figure(Rational(Wide{10'000'000'000'000'000} * 3 + 1, 3), 2).fine()) == "10000000000000000.33");
}

TEST_CASE(
    "a total is the exact sum rounded; where the printed lines miss it the foot says what they add to") {
  const Table thirds = footed({Rational(100, 3), Rational(100, 3), Rational(100, 3)});
  CHECK(plain(as_figure(thirds.rows[0].cells[0]).shown()) == "33.33");
  CHECK(plain(as_figure(thirds.totals[0]).shown()) == "100.00");
  REQUIRE(thirds.notes.size() == 1);
  CHECK(thirds.notes[0] ==
        "Board feet: the lines as printed add to 99.99; the total is the exact sum, rounded: 100.00.");
  CHECK(footed({Rational(1, 4), Rational(3, 4)}).notes.empty());
  CHECK(footed({}).notes.empty());
}

TEST_CASE("struck lines are in no total and no note") {
  Table table = footed({Rational(1, 3), Rational(1, 3)});
  table.notes.clear();
  table.rows.push_back({{Figure(Rational(1, 3), 2)}, true});
  total_up(table);
  note_rounding(table, {});
  CHECK(as_figure(table.totals[0]).exact() == Rational(2, 3));
  REQUIRE(table.notes.size() == 1);
  CHECK(table.notes[0].find("add to 0.66;") != std::string::npos);
}

TEST_CASE("several columns that miss their totals share one note, each with its difference") {
  const Table two = thirds().tables[1];
  REQUIRE(two.notes.size() == 1);
  CHECK(two.notes[0] ==
        "The lines as printed do not add to the totals, which are the exact sums, rounded: Board feet 53.99 "
        "(0.01 less), Sawing 10.84 (0.01 more).");
}

TEST_CASE("of a grid the note tells what its lines and its figures by length add to as printed") {
  const Table grid = thirds().tables[2];
  REQUIRE(grid.notes.size() == 1);
  CHECK(grid.notes[0].find("Board feet: the lines as printed add to ") == 0);
}

TEST_CASE("a note is there exactly when the printed lines do not add to the printed total") {
  CHECK(rc::check("notes", [] {
    std::vector<Rational> lines;
    for (const auto& [num, den] : *rc::gen::container<std::vector<std::pair<std::int64_t, std::int64_t>>>(
             rc::gen::pair(rc::gen::inRange<std::int64_t>(-100'000, 100'000),
                           rc::gen::element<std::int64_t>(1, 3, 12, 60, 96, 1000))))
      lines.emplace_back(num, den);
    Rational exact;
    Rational printed;
    for (const Rational& line : lines) {
      exact = exact + line;
      printed = printed + Rational(line.rounded(2), 100);
    }
    const Table table = footed(lines);
    if (lines.empty()) RC_DISCARD("no lines");
    RC_ASSERT(as_figure(table.totals[0]).exact() == exact);
    RC_ASSERT(table.notes.empty() == (printed == Rational(exact.rounded(2), 100)));
  }));
}

}  // namespace kerfbook::render
