// tally_tables.cpp -- a job's tally as tables.
#include "paper/tally_tables.h"

#include <algorithm>
#include <map>

#include "base/text.h"
#include "paper/layout.h"
#include "paper/mill_words.h"
#include "paper/paper_words.h"
#include "price/sheet_items.h"

namespace kerfbook::billing {

namespace {

using render::Cell;
using render::Table;

bool is_lumber(const Fact& fact) {
  return fact.kind == FactKind::pieces || fact.kind == FactKind::lineal;
}

Rational counted_lumber(const LumberUnit& unit, const Fact& fact, const measure::Convention& by) {
  return unit.of(pieces_of(fact), counting(fact, by));
}

Cell length_cell(const Length& length) {
  const bool metric = length.system == measure::System::metric;
  const Rational exact = metric ? in_metres(length) : in_feet(length);
  return render::Figure(exact, shortest(exact, 0, metric ? 3 : 4).places);
}

/// Rows of one species: largest key first is not wanted here; sizes stand in the order of a tally sheet.
using SizeKey = std::tuple<Size, std::string>;
struct Cut {
  std::int64_t pieces = 0;
  Rational lumber;
};
using Cuts = std::map<SizeKey, std::map<Length, Cut>>;

Table size_table(const book::Mill& mill, const Cuts& cuts, const std::string& title, bool metric) {
  const LumberUnit unit(mill);
  Table table;
  table.name = "tally";
  table.title = title;
  table.columns = {text_column("size", "Size"), text_column("grade", "Grade"),
                   decimal_column(metric ? "length_m" : "length_ft", "Length", metric ? "m" : "ft", 0),
                   summed(count_column("pieces", "Pieces")), summed(unit.column())};
  for (const auto& [key, lengths] : cuts) {
    const auto& [size, grade] = key;
    for (const auto& [length, cut] : lengths)
      table.rows.push_back({{size_words(size, mill), grade_words(mill, grade), length_cell(length),
                             cut.pieces, unit.cell(cut.lumber)}});
  }
  table.grid = render::Grid{{0, 1}, 2, 3, {3, 4}};
  foot(table, mill);
  return table;
}

struct DaySum {
  std::int64_t pieces = 0;
  Rational lumber;
  std::int64_t logs = 0;
  std::int64_t minutes = 0;
};

}  // namespace

std::vector<Fact> of_sheets(const std::vector<Fact>& facts, const SheetsSince& sheets) {
  std::vector<Fact> some;
  for (const Fact& fact : facts)
    if (fact.kind != FactKind::once && sheets.count(key_of(fact.sheet)) != 0) some.push_back(fact);
  return some;
}

Rational counted_lumber(const book::Mill& mill, const std::vector<Fact>& facts,
                        const measure::Convention& by) {
  const LumberUnit unit(mill);
  Rational sum;
  for (const Fact& fact : facts)
    if (is_lumber(fact)) sum = sum + counted_lumber(unit, fact, by);
  return sum;
}

std::vector<Table> size_tables(const book::Mill& mill, const measure::Convention& by,
                               const std::vector<Fact>& facts, const std::string& title) {
  const LumberUnit unit(mill);
  std::map<std::pair<std::string, bool>, Cuts> species;
  for (const Fact& fact : facts) {
    if (fact.kind != FactKind::pieces) continue;
    const bool metric = fact.length.system == measure::System::metric;
    Cut& cut = species[{fact.species, metric}][{fact.size, fact.grade}][fact.length];
    cut.pieces += fact.count;
    cut.lumber = cut.lumber + counted_lumber(unit, fact, by);
  }
  std::vector<Table> tables;
  for (const auto& [what, cuts] : species) {
    const std::string name = species_words(mill, what.first);
    tables.push_back(size_table(mill, cuts, name.empty() ? title : title + ": " + name, what.second));
  }
  return tables;
}

std::vector<Table> size_tables_by_day(const book::Mill& mill, const measure::Convention& by,
                                      const std::vector<Fact>& facts) {
  std::map<Day, std::vector<Fact>> days;
  for (const Fact& fact : facts)
    if (fact.kind == FactKind::pieces) days[fact.sheet.day].push_back(fact);
  std::vector<Table> tables;
  if (days.size() < 2) return tables;
  for (const auto& [day, own] : days)
    for (Table& table : size_tables(mill, by, own, weekday_name(day) + " " + day_words(day, mill)))
      tables.push_back(std::move(table));
  return tables;
}

Table lineal_table(const book::Mill& mill, const measure::Convention& by, const std::vector<Fact>& facts) {
  const LumberUnit unit(mill);
  Table table;
  table.name = "lineal";
  table.title = unit.metric() ? "Counted in lineal metres" : "Counted in lineal feet";
  table.columns = {text_column("species", "Species"), text_column("size", "Size"),
                   text_column("grade", "Grade"),
                   unit.metric() ? decimal_column("lineal_m", "Length", "m", 2)
                                 : decimal_column("lineal_ft", "Length", "ft", 2),
                   summed(unit.column())};
  for (const Fact& fact : facts) {
    if (fact.kind != FactKind::lineal) continue;
    const Length length{fact.count, fact.length.system};
    table.rows.push_back(
        {{species_words(mill, fact.species), size_words(fact.size, mill), grade_words(mill, fact.grade),
          render::Figure(unit.metric() ? in_metres(length) : in_feet(length), 2),
          unit.cell(counted_lumber(unit, fact, by))}});
  }
  foot(table, mill);
  drop_empty(table, 2);
  return table;
}

namespace {

/// Sums as rows under the heading cells that are their keys.
Table sums_table(const book::Mill& mill, const std::vector<render::Column>& keys,
                 const std::map<Day, std::vector<Cell>>& headed, const std::map<Day, DaySum>& sums) {
  const LumberUnit unit(mill);
  Table table;
  table.columns = keys;
  for (const render::Column& column :
       {count_column("pieces", "Pieces"), unit.column(), count_column("logs", "Logs"),
        decimal_column("sawing_hours", "Sawing", "h", 2)})
    table.columns.push_back(summed(column));
  for (const auto& [day, sum] : sums) {
    render::Row row{headed.at(day)};
    const Cell hours = sum.minutes == 0 ? Cell() : Cell(render::Figure::time(sum.minutes));
    for (const Cell& cell : std::initializer_list<Cell>{sum.pieces, unit.cell(sum.lumber), sum.logs, hours})
      row.cells.push_back(cell);
    table.rows.push_back(std::move(row));
  }
  foot(table, mill);
  return table;
}

}  // namespace

std::vector<Table> day_tables(const book::Mill& mill, const measure::Convention& by,
                              const std::vector<Fact>& facts) {
  const LumberUnit unit(mill);
  std::map<Day, DaySum> days;
  std::map<Day, DaySum> weeks;  // by their first day
  std::map<Day, std::vector<Cell>> day_heads;
  std::map<Day, std::vector<Cell>> week_heads;
  for (const Fact& fact : facts) {
    const Day day = fact.sheet.day;
    const Day first = day - (weekday(day) - mill.week_start + 7) % 7;
    day_heads[day] = {day, weekday_name(day)};
    week_heads[first] = {first};
    for (DaySum* sum : {&days[day], &weeks[first]}) {
      if (fact.kind == FactKind::pieces) sum->pieces += fact.count;
      if (is_lumber(fact)) sum->lumber = sum->lumber + counted_lumber(unit, fact, by);
      if (fact.kind == FactKind::log) ++sum->logs;
      if (fact.kind == FactKind::sawing) sum->minutes += fact.count;
    }
  }
  std::vector<Table> tables;
  tables.push_back(
      sums_table(mill, {day_column("day", "Day"), text_column("weekday", "Weekday")}, day_heads, days));
  tables.back().name = "days";
  tables.back().title = "By day";
  if (weeks.size() < 2) return tables;
  tables.push_back(sums_table(mill, {day_column("week", "Week from")}, week_heads, weeks));
  tables.back().name = "weeks";
  tables.back().title = "By week";
  return tables;
}

}  // namespace kerfbook::billing
