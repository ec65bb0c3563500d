// log_tables.cpp -- what a tally says of the logs it came from, and of the lines that corrections struck.
#include <map>
#include <set>

#include "base/text.h"
#include "book/store.h"
#include "paper/layout.h"
#include "paper/mill_words.h"
#include "paper/paper_words.h"
#include "paper/tally_tables.h"
#include "sheet/raw_log.h"

namespace kerfbook::billing {

namespace {

using render::Cell;
using render::Table;

/// A run of a sheet: the least of which both the logs in and the boards out are known.
using RunKey = std::pair<SheetKey, std::int64_t>;

/// A log as the book has it; figures in millionths.
struct LogRow {
  Day day;
  RunKey run;
  std::string tag;
  std::string species;
  std::string spec;
  std::string defect;
  std::optional<std::int64_t> gross;
  std::int64_t net = 0;
  std::string rule;
  std::optional<std::int64_t> content;  ///< of cubic feet
};

/// The log scaled again, by the rule its job is billed by.
void scale_by(const scaling::Practice& practice, measure::System system, bool metric, LogRow& log) {
  log.gross.reset();
  log.net = 0;
  const auto spec = book::read_spec(log.spec, metric);
  const auto scaled = spec ? book::scaled(*spec, practice, system) : std::nullopt;
  if (!scaled) return;
  log.gross = scaled->gross;
  log.net = scaled->net;
  log.rule = practice.name;
}

/// What the log holds by its measures as they were written.
std::optional<std::int64_t> held(const std::string& written, bool metric, const JobTerms& job) {
  const auto spec = book::read_spec(written, metric);
  if (!spec) return std::nullopt;
  return scaling::content(spec->measure, measured_taper(job)).cubic_feet;
}

SheetKey sheet_in(const book::Row& row, int day) {
  return {Day{static_cast<std::int32_t>(row.number(day))}, static_cast<int>(row.number(day + 1))};
}

std::vector<LogRow> logs_sawn(const book::Book& book, const JobTerms& job, const SheetsSince& sheets) {
  std::vector<LogRow> logs;
  if (sheets.empty()) return logs;
  book::Store store(book.database());
  store.each(
      "SELECT day, shift, run, tag, species, spec, defect, gross, net, rule, metric FROM v_log "
      "WHERE state = 'sawn' AND job = ? COLLATE NOCASE AND day BETWEEN ? AND ? ORDER BY day, shift, number",
      [&](const book::Row& row) {
        const SheetKey sheet = sheet_in(row, 0);
        if (sheets.count(sheet) == 0) return;
        const bool metric = row.number(10) != 0;
        LogRow log{sheet.first,  {sheet, row.number(2)},
                   row.text(3),  row.text(4),
                   row.text(5),  row.text(6),
                   row.maybe(7), row.maybe(8).value_or(0),
                   row.text(9),  held(row.text(5), metric, job)};
        if (job.billed_by) scale_by(*job.billed_by, job.system, metric, log);
        logs.push_back(std::move(log));
      },
      job.job, sheets.begin()->first.first, sheets.rbegin()->first.first);
  return logs;
}

/// The runs of which every log has the figure, as the report of overrun counts them: what they gave and what it was of.
struct Counted {
  Rational lumber;          ///< nominal, in the mill's unit
  std::int64_t figure = 0;  ///< of their logs, millionths
  bool all_lumber = true;   ///< nothing was sawn besides
};

Counted counted_runs(const book::Book& book, const JobTerms& job, const SheetsSince& sheets,
                     const std::map<RunKey, std::optional<std::int64_t>>& of_run) {
  Counted sum;
  if (sheets.empty()) return sum;
  const LumberUnit unit(book.mill());
  book::Store store(book.database());
  store.each(
      "SELECT day, shift, run, lumber FROM v_run WHERE job = ? COLLATE NOCASE AND day BETWEEN ? AND ? AND "
      "lumber > 0",
      [&](const book::Row& row) {
        const SheetKey sheet = sheet_in(row, 0);
        if (sheets.count(sheet) == 0) return;
        const auto at = of_run.find({sheet, row.number(2)});
        if (at == of_run.end() || !at->second) {
          sum.all_lumber = false;
          return;
        }
        sum.lumber = sum.lumber + unit.of(measure::Volume{row.number(3), book.mill().units});
        sum.figure += *at->second;
      },
      job.job, sheets.begin()->first.first, sheets.rbegin()->first.first);
  return sum;
}

/// The logs' figure of each run; none where a log lacks it.
template <class Figure>
std::map<RunKey, std::optional<std::int64_t>> by_run(const std::vector<LogRow>& logs, Figure&& figure) {
  std::map<RunKey, std::optional<std::int64_t>> all;
  for (const LogRow& log : logs) {
    auto& sum = all.emplace(log.run, 0).first->second;
    const std::optional<std::int64_t> one = figure(log);
    if (sum && one)
      *sum += *one;
    else
      sum.reset();
  }
  return all;
}

/// As many decimals as the scale of any log needs, up to three.
int places_of(const std::vector<LogRow>& logs, int least) {
  int places = least;
  for (const LogRow& log : logs)
    for (const std::int64_t figure : {log.gross.value_or(0), log.net})
      places = shortest(Rational(figure, scaling::kPerUnit), places, 3).places;
  return places;
}

/// The columns every list of logs begins with.
Table begun(const book::Mill& mill, const std::vector<LogRow>& logs) {
  Table table;
  table.name = "logs";
  table.title = "Logs sawn";
  std::vector<std::string> specs;
  for (const LogRow& log : logs) specs.push_back(log.spec);
  const LogMeasures measures = log_measures(specs, mill);
  table.columns = {day_column("day", "Day"), text_column("log", "Log"), text_column("species", "Species"),
                   text_column("measure", "Measure")};
  table.columns.back().unit = measures.unit;
  for (std::size_t i = 0; i < logs.size(); ++i)
    table.rows.push_back(
        {{logs[i].day, logs[i].tag, species_words(mill, logs[i].species), measures.shown[i]}});
  table.when_empty = "no logs written down";
  return table;
}

std::string counted_logs(std::size_t logs) {
  return std::to_string(logs) + (logs == 1 ? " log" : " logs");
}

/// What the logs scale together.
struct Scaled {
  std::size_t logs = 0;
  std::size_t unscaled = 0;
  std::int64_t net = 0;
  std::set<std::string> rules;
};

Scaled scaled(const book::Mill& mill, const std::vector<LogRow>& logs) {
  Scaled sum;
  sum.logs = logs.size();
  for (const LogRow& log : logs) {
    sum.net += log.net;
    if (log.gross)
      sum.rules.insert(rule_words(log.rule, mill));
    else
      ++sum.unscaled;
  }
  return sum;
}

std::string tally_words(const book::Mill& mill, const Rational& lumber) {
  const LumberUnit unit(mill);
  return "tally " + number_words(shown(lumber, unit.places()), mill) + " " + unit.unit();
}

/// Which work a percentage is of, where it is not all of it.
std::string counted_words(const book::Mill& mill, const Counted& counted, const Rational& of,
                          const std::string& unit) {
  if (counted.all_lumber) return "";
  const LumberUnit lumber(mill);
  return " (" + number_words(shown(counted.lumber, lumber.places()), mill) + " " + lumber.unit() + " from " +
         number_words(shortest(of, 0, 3), mill) + " " + unit +
         ": only work of which every log was measured counts)";
}

/// Overrun is of board feet over board feet; of cubic metres the trade says how much of the log became lumber.
std::string yield_line(const book::Mill& mill, const Scaled& sum, const Rational& lumber,
                       const Counted& counted, const std::string& unit) {
  std::string line = counted_logs(sum.logs);
  if (sum.net == 0) return line + ", no scale; " + tally_words(mill, lumber);
  const Rational net(sum.net, scaling::kPerUnit);
  line += ", net scale " + number_words(shortest(net, 0, 3), mill) + " " + unit + " by " +
          join(std::vector<std::string>(sum.rules.begin(), sum.rules.end()), ", ");
  if (sum.unscaled > 0) line += " (" + std::to_string(sum.unscaled) + " not measured)";
  line += "; " + tally_words(mill, lumber);
  if (unit != LumberUnit(mill).unit() || counted.figure == 0) return line;
  const Rational scale(counted.figure, scaling::kPerUnit);
  const std::string of = counted_words(mill, counted, scale, unit);
  if (LumberUnit(mill).metric())
    return line + ", " + number_words(shown(Rational(100) * counted.lumber / scale, 1), mill) +
           " % of the scale" + of;
  const Rational over = Rational(100) * (counted.lumber - scale) / scale;
  return line + "; " + (over.is_negative() ? "underrun " : "overrun ") +
         number_words(shown(over.is_negative() ? -over : over, 1), mill) + " %" + of;
}

Table scale_table(const book::Mill& mill, const JobTerms& job, const std::vector<LogRow>& logs,
                  const Rational& lumber, const Counted& counted) {
  Table table = begun(mill, logs);
  const scaling::Practice& practice = job.billed_by ? *job.billed_by : job.practice;
  const std::string unit = unit_words(std::string(scaling::unit_word(book::unit_in(practice, job.system))));
  const int places = places_of(logs, unit == "m³" ? 3 : 0);
  for (const render::Column& column :
       {summed(decimal_column("gross", "Gross scale", unit, places)),
        summed(decimal_column("deduction", "Deduction", unit, places)), text_column("defect", "Defect"),
        summed(decimal_column("net", "Net scale", unit, places))})
    table.columns.push_back(column);
  const auto scale = [&](std::int64_t millionths) {
    return Cell(render::Figure(millionths, scaling::kPerUnit, places));
  };
  for (std::size_t i = 0; i < logs.size(); ++i) {
    const LogRow& log = logs[i];
    std::vector<Cell> cells{{}, {}, log.defect, {}};
    if (log.gross) cells = {scale(*log.gross), scale(*log.gross - log.net), log.defect, scale(log.net)};
    for (Cell& cell : cells) table.rows[i].cells.push_back(std::move(cell));
  }
  foot(table, mill);
  if (!logs.empty()) {
    table.notes.push_back(yield_line(mill, scaled(mill, logs), lumber, counted, unit));
    table.notes.emplace_back(job.billed_by ? kBilledScaleCaution : kScaleCaution);
  }
  drop_empty(table, 6);
  return table;
}

/// Where no scale means anything to the customer: what the logs hold, as recovery is worked out.
Table content_table(const book::Mill& mill, const std::vector<LogRow>& logs, const Rational& lumber,
                    const Counted& counted) {
  Table table = begun(mill, logs);
  table.columns.push_back(text_column("defect", "Defect"));
  table.columns.push_back(summed(decimal_column("content", "Log volume", "m³", 3)));
  for (std::size_t i = 0; i < logs.size(); ++i) {
    const auto& content = logs[i].content;
    const Rational one = Rational(content.value_or(0), scaling::kPerUnit) * measure::kCubicMetresPerCubicFoot;
    table.rows[i].cells.emplace_back(logs[i].defect);
    table.rows[i].cells.push_back(content ? Cell(render::Figure(one, 3)) : Cell());
  }
  foot(table, mill);
  if (!logs.empty()) {
    std::string line = counted_logs(logs.size()) + "; " + tally_words(mill, lumber);
    const Rational held = Rational(counted.figure, scaling::kPerUnit) * measure::kCubicMetresPerCubicFoot;
    if (!held.is_zero())
      line += ", " + number_words(shown(Rational(100) * counted.lumber / held, 1), mill) +
              " % of the logs' volume" + counted_words(mill, counted, held, "m³");
    table.notes.push_back(line + ".");
    table.notes.emplace_back(
        "Log volume is worked out from the measured ends and length; where only the small end was measured, "
        "with the mill's usual taper.");
  }
  drop_empty(table, 4);
  return table;
}

}  // namespace

bool scale_is_shown(const book::Mill& mill, const JobTerms& job) {
  const bool usual = job.practice == book::usual_practice();
  return job.billed_by || mill.units == measure::System::inch || !usual;
}

Table log_table(const book::Book& book, const JobTerms& job, const SheetsSince& sheets,
                const Rational& lumber) {
  const std::vector<LogRow> logs = logs_sawn(book, job, sheets);
  if (!scale_is_shown(book.mill(), job)) {
    const auto content = by_run(logs, [](const LogRow& log) { return log.content; });
    return content_table(book.mill(), logs, lumber, counted_runs(book, job, sheets, content));
  }
  const auto net =
      by_run(logs, [](const LogRow& log) { return log.gross ? std::optional(log.net) : std::nullopt; });
  return scale_table(book.mill(), job, logs, lumber, counted_runs(book, job, sheets, net));
}

Table struck_table(const book::Book& book, const std::string& job, const SheetsSince& sheets) {
  const LumberUnit unit(book.mill());
  Table table;
  table.name = "struck";
  table.title = "Struck lines";
  table.columns = {day_column("day", "Day"), text_column("line", "Line as written"),
                   count_column("pieces", "Pieces"), unit.column(), text_column("why", "Why")};
  if (sheets.empty()) return table;
  book::Store store(book.database());
  store.each(
      "SELECT day, text, pieces, lumber, why, shift, revision FROM v_struck WHERE job = ? COLLATE NOCASE AND "
      "kind = 'tally' "
      "AND day BETWEEN ? AND ? ORDER BY day, shift, revision, number",
      [&](const book::Row& row) {
        const auto at =
            sheets.find({Day{static_cast<std::int32_t>(row.number(0))}, static_cast<int>(row.number(5))});
        if (at == sheets.end() || row.number(6) < at->second) return;
        const measure::Volume lumber{row.maybe(3).value_or(0), book.mill().units};
        table.rows.push_back(
            {{Day{static_cast<std::int32_t>(row.number(0))}, join(split_words(row.text(1)), " "),
              row.maybe(2).value_or(0), unit.cell(unit.of(lumber)), row.text(4)},
             true});
      },
      job, sheets.begin()->first.first, sheets.rbegin()->first.first);
  return table;
}

}  // namespace kerfbook::billing
