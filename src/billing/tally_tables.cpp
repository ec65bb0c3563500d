// tally_tables.cpp -- a job's tally as tables.
#include "billing/tally_tables.h"

#include <algorithm>
#include <map>
#include <set>

#include "base/settle.h"
#include "base/text.h"
#include "billing/letter.h"
#include "billing/sheet_items.h"
#include "book/log_spec.h"
#include "book/store.h"

namespace kerfbook::billing {

namespace {

using render::Cell;
using render::Table;

bool is_lumber(const Fact& fact) {
  return fact.kind == FactKind::pieces || fact.kind == FactKind::lineal;
}

Rational bf_of(const Fact& fact, const measure::Convention& by) {
  return counted_bf(pieces_of(fact), counting(fact, by));
}

Cell length_cell(const Length& length) {
  const bool metric = length.system == measure::System::metric;
  return shortest(metric ? in_metres(length) : in_feet(length), 0, metric ? 3 : 4);
}

/// Rows of one species: largest key first is not wanted here; sizes stand in the order of a tally sheet.
using SizeKey = std::tuple<Size, std::string>;
struct Cut {
  std::int64_t pieces = 0;
  Rational bf;
};
using Cuts = std::map<SizeKey, std::map<Length, Cut>>;

Table size_table(const Cuts& cuts, const std::string& title, bool metric) {
  Table table;
  table.name = "tally";
  table.title = title;
  table.columns = {text_column("size", "Size"), text_column("grade", "Grade"),
                   decimal_column(metric ? "length_m" : "length_ft", "Length", metric ? "m" : "ft", 0),
                   summed(count_column("pieces", "Pieces")),
                   summed(decimal_column("bf", "Board feet", "bf", 2))};
  std::vector<Rational> exact;
  std::vector<std::size_t> group;
  std::int64_t pieces = 0;
  std::size_t number = 0;
  for (const auto& [key, lengths] : cuts) {
    for (const auto& [length, cut] : lengths) {
      table.rows.push_back(
          {{write_size(std::get<0>(key)), std::get<1>(key), length_cell(length), cut.pieces, Decimal{}}});
      exact.push_back(cut.bf);
      group.push_back(number);
      pieces += cut.pieces;
    }
    ++number;
  }
  const std::int64_t total = rounded_total(exact, 2);
  const std::vector<std::int64_t> settled = settle_in_groups(exact, group, 2, total);
  for (std::size_t i = 0; i < settled.size(); ++i) table.rows[i].cells[4] = Decimal{settled[i], 2};
  table.totals = {std::monostate{}, std::monostate{}, std::monostate{}, pieces, Decimal{total, 2}};
  table.grid = render::Grid{{0, 1}, 2, 3, {3, 4}};
  return table;
}

struct DaySum {
  std::int64_t pieces = 0;
  Rational bf;
  std::int64_t logs = 0;
  std::int64_t minutes = 0;
};

}  // namespace

std::vector<Fact> within(const std::vector<Fact>& facts, Day from, Day to) {
  std::vector<Fact> some;
  for (const Fact& fact : facts)
    if (fact.kind != FactKind::once && from <= fact.sheet.day && fact.sheet.day <= to) some.push_back(fact);
  return some;
}

Rational lumber_bf(const std::vector<Fact>& facts, const measure::Convention& by) {
  Rational sum;
  for (const Fact& fact : facts)
    if (is_lumber(fact)) sum = sum + bf_of(fact, by);
  return sum;
}

std::vector<Table> size_tables(const book::Mill& mill, const measure::Convention& by,
                               const std::vector<Fact>& facts) {
  std::map<std::pair<std::string, bool>, Cuts> species;
  for (const Fact& fact : facts) {
    if (fact.kind != FactKind::pieces) continue;
    const bool metric = fact.length.system == measure::System::metric;
    Cut& cut = species[{fact.species, metric}][{fact.size, fact.grade}][fact.length];
    cut.pieces += fact.count;
    cut.bf = cut.bf + bf_of(fact, by);
  }
  std::vector<Table> tables;
  for (const auto& [what, cuts] : species) {
    const std::string name = species_words(mill, what.first);
    tables.push_back(size_table(cuts, name.empty() ? "Tally" : "Tally: " + name, what.second));
  }
  return tables;
}

Table lineal_table(const book::Mill& mill, const measure::Convention& by, const std::vector<Fact>& facts) {
  Table table;
  table.name = "lineal";
  table.title = "Counted in lineal feet";
  table.columns = {text_column("species", "Species"), text_column("size", "Size"),
                   text_column("grade", "Grade"), decimal_column("lineal_ft", "Length", "ft", 2),
                   summed(decimal_column("bf", "Board feet", "bf", 2))};
  std::vector<Rational> exact;
  for (const Fact& fact : facts) {
    if (fact.kind != FactKind::lineal) continue;
    exact.push_back(bf_of(fact, by));
    table.rows.push_back({{species_words(mill, fact.species), write_size(fact.size), fact.grade,
                           shown(measure::in_feet({fact.count, fact.length.system}), 2), Decimal{}}});
  }
  const std::int64_t total = rounded_total(exact, 2);
  const std::vector<std::int64_t> settled = settle(exact, 2, total);
  for (std::size_t i = 0; i < settled.size(); ++i) table.rows[i].cells[4] = Decimal{settled[i], 2};
  if (!table.rows.empty())
    table.totals = {std::monostate{}, std::monostate{}, std::monostate{}, std::monostate{},
                    Decimal{total, 2}};
  return table;
}

namespace {

/// Sums as rows under the heading cells that are their keys, settled to the total.
Table sums_table(const std::vector<render::Column>& keys, const std::map<Day, std::vector<Cell>>& headed,
                 const std::map<Day, DaySum>& sums) {
  Table table;
  table.columns = keys;
  for (const render::Column& column :
       {count_column("pieces", "Pieces"), decimal_column("bf", "Board feet", "bf", 2),
        count_column("logs", "Logs"), decimal_column("sawing_hours", "Sawing", "h", 2)})
    table.columns.push_back(summed(column));
  std::vector<Rational> bf;
  std::vector<Rational> time;
  DaySum all;
  for (const auto& [day, sum] : sums) {
    bf.push_back(sum.bf);
    time.push_back(Rational(sum.minutes, 60));
    all.pieces += sum.pieces;
    all.logs += sum.logs;
  }
  const Decimal total_bf{rounded_total(bf, 2), 2};
  const Decimal total_time{rounded_total(time, 2), 2};
  const std::vector<std::int64_t> settled_bf = settle(bf, 2, total_bf.units);
  const std::vector<std::int64_t> settled_time = settle(time, 2, total_time.units);
  std::size_t i = 0;
  for (const auto& [day, sum] : sums) {
    render::Row row{headed.at(day)};
    for (const Cell& cell : std::initializer_list<Cell>{sum.pieces, Decimal{settled_bf[i], 2}, sum.logs,
                                                        Decimal{settled_time[i], 2}})
      row.cells.push_back(cell);
    table.rows.push_back(std::move(row));
    ++i;
  }
  table.totals.assign(keys.size(), std::monostate{});
  table.totals.front() = std::monostate{};
  for (const Cell& cell : std::initializer_list<Cell>{all.pieces, total_bf, all.logs, total_time})
    table.totals.push_back(cell);
  return table;
}

}  // namespace

std::vector<Table> day_tables(const measure::Convention& by, const std::vector<Fact>& facts, int week_start) {
  std::map<Day, DaySum> days;
  std::map<Day, DaySum> weeks;  // by their first day
  std::map<Day, std::vector<Cell>> day_heads;
  std::map<Day, std::vector<Cell>> week_heads;
  for (const Fact& fact : facts) {
    const Day day = fact.sheet.day;
    const Day first = day - (weekday(day) - week_start + 7) % 7;
    day_heads[day] = {day, weekday_name(day)};
    week_heads[first] = {first};
    for (DaySum* sum : {&days[day], &weeks[first]}) {
      if (fact.kind == FactKind::pieces) sum->pieces += fact.count;
      if (is_lumber(fact)) sum->bf = sum->bf + bf_of(fact, by);
      if (fact.kind == FactKind::log) ++sum->logs;
      if (fact.kind == FactKind::sawing) sum->minutes += fact.count;
    }
  }
  std::vector<Table> tables;
  tables.push_back(
      sums_table({day_column("day", "Day"), text_column("weekday", "Weekday")}, day_heads, days));
  tables.back().name = "days";
  tables.back().title = "By day";
  if (weeks.size() < 2) return tables;
  tables.push_back(sums_table({day_column("week", "Week from")}, week_heads, weeks));
  tables.back().name = "weeks";
  tables.back().title = "By week";
  return tables;
}

namespace {

struct Scaled {
  std::int64_t logs = 0;
  std::int64_t unscaled = 0;
  std::int64_t gross = 0;
  std::int64_t net = 0;
  std::set<std::string> rules;
};

std::string yield_line(const Scaled& sum, const Rational& lumber, const std::string& unit) {
  std::string line = std::to_string(sum.logs) + (sum.logs == 1 ? " log" : " logs");
  if (sum.net == 0) return line + ", no scale; tally " + grouped(shown(lumber, 2)) + " bf";
  const Rational net(sum.net, scaling::kPerUnit);
  line += ", net scale " + grouped(shortest(net, 0, 2)) + " " + unit + " by " +
          join(std::vector<std::string>(sum.rules.begin(), sum.rules.end()), ", ");
  if (sum.unscaled > 0) line += " (" + std::to_string(sum.unscaled) + " not measured)";
  line += "; tally " + grouped(shown(lumber, 2)) + " bf";
  if (unit != "bf" || sum.unscaled > 0) return line;
  const Rational over = Rational(100) * (lumber - net) / net;
  return line + "; " + (over.is_negative() ? "underrun " : "overrun ") +
         plain(shown(over.is_negative() ? -over : over, 1)) + " %";
}

}  // namespace

namespace {

/// A log's scale as the paper gives it, millionths.
struct OnPaper {
  std::int64_t gross = 0;
  std::int64_t deduction = 0;
  std::int64_t net = 0;
  std::string rule;
};

/// By the rule the job is billed by, where it is; else as the sheet was scaled. `row` is that of log_table.
std::optional<OnPaper> scale_on_paper(const book::Row& row, const JobTerms& job) {
  if (!job.billed_by) {
    if (row.is_null(7)) return std::nullopt;
    return OnPaper{row.number(4), row.number(5), row.number(7), row.text(8)};
  }
  if (row.is_null(3)) return std::nullopt;
  const auto spec = book::read_spec(row.text(3), row.number(9) != 0);
  const auto scaled = spec ? book::scaled(*spec, *job.billed_by, job.system) : std::nullopt;
  if (!scaled) return std::nullopt;
  return OnPaper{scaled->gross, scaled->deduction, scaled->net, job.billed_by->name};
}

}  // namespace

Table log_table(const book::Book& book, const JobTerms& job, Day from, Day to,
                const Rational& lumber_bf_exact) {
  Table table;
  table.name = "logs";
  table.title = "Logs sawn";
  const scaling::Practice& practice = job.billed_by ? *job.billed_by : job.practice;
  const std::string unit(scaling::unit_word(book::unit_in(practice, job.system)));
  table.columns = {day_column("day", "Day"),
                   text_column("log", "Log"),
                   text_column("species", "Species"),
                   text_column("measure", "Measure"),
                   summed(decimal_column("gross", "Gross", unit, 0)),
                   summed(decimal_column("deduction", "Deduction", unit, 0)),
                   text_column("defect", "Defect"),
                   summed(decimal_column("net", "Net", unit, 0))};
  Scaled sum;
  book::Store store(book.database());
  const auto scale = [](std::int64_t millionths) {
    return shortest(Rational(millionths, scaling::kPerUnit), 0, 3);
  };
  store.each(
      "SELECT day, tag, species, spec, gross, deduction, defect, net, rule, metric FROM v_log WHERE state = "
      "'sawn' AND job = ? COLLATE NOCASE AND day BETWEEN ? AND ? ORDER BY day, shift, number",
      [&](const book::Row& row) {
        ++sum.logs;
        const std::optional<OnPaper> log = scale_on_paper(row, job);
        if (!log) {
          ++sum.unscaled;
        } else {
          sum.gross += log->gross;
          sum.net += log->net;
          sum.rules.insert(log->rule);
        }
        const std::string spec = row.text(3);
        const auto cell = [&](std::int64_t OnPaper::*figure) {
          return log ? Cell(scale((*log).*figure)) : Cell();
        };
        table.rows.push_back({{Day{static_cast<std::int32_t>(row.number(0))}, row.text(1), row.text(2),
                               spec.substr(0, spec.find(" defect")), cell(&OnPaper::gross),
                               cell(&OnPaper::deduction), row.text(6), cell(&OnPaper::net)}});
      },
      job.job, from, to);
  if (sum.logs > 0)
    table.totals = {std::monostate{}, std::monostate{},           std::monostate{}, std::monostate{},
                    scale(sum.gross), scale(sum.gross - sum.net), std::monostate{}, scale(sum.net)};
  table.notes.push_back(yield_line(sum, lumber_bf_exact, unit));
  table.when_empty = "no logs written down";
  return table;
}

Table struck_table(const book::Book& book, const std::string& job, Day from, Day to) {
  Table table;
  table.name = "struck";
  table.title = "Struck lines";
  table.columns = {day_column("day", "Day"), text_column("line", "Line as it was written"),
                   count_column("pieces", "Pieces"), decimal_column("bf", "Board feet", "bf", 2),
                   text_column("why", "Why")};
  book::Store store(book.database());
  store.each(
      "SELECT day, text, pieces, lumber, why FROM v_struck WHERE job = ? COLLATE NOCASE AND kind = 'tally' "
      "AND "
      "day BETWEEN ? AND ? ORDER BY day, shift, revision, number",
      [&](const book::Row& row) {
        const measure::Volume lumber{row.maybe(3).value_or(0), book.mill().units};
        table.rows.push_back({{Day{static_cast<std::int32_t>(row.number(0))}, row.text(1),
                               row.maybe(2).value_or(0), shown(board_feet(lumber), 2), row.text(4)},
                              true});
      },
      job, from, to);
  return table;
}

}  // namespace kerfbook::billing
