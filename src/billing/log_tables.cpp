// log_tables.cpp -- what a tally says of the logs it came from, and of the lines that corrections struck.
#include <set>

#include "base/settle.h"
#include "base/text.h"
#include "billing/letter.h"
#include "billing/paper_words.h"
#include "billing/tally_tables.h"
#include "book/log_spec.h"
#include "book/store.h"

namespace kerfbook::billing {

namespace {

using render::Cell;
using render::Table;

/// A log as the book has it; figures in millionths.
struct LogRow {
  Day day;
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

std::vector<LogRow> logs_sawn(const book::Book& book, const JobTerms& job, Day from, Day to) {
  std::vector<LogRow> logs;
  book::Store store(book.database());
  store.each(
      "SELECT day, tag, species, spec, defect, gross, net, rule, content, metric FROM v_log "
      "WHERE state = 'sawn' AND job = ? COLLATE NOCASE AND day BETWEEN ? AND ? ORDER BY day, shift, number",
      [&](const book::Row& row) {
        LogRow log{Day{static_cast<std::int32_t>(row.number(0))},
                   row.text(1),
                   row.text(2),
                   row.text(3),
                   row.text(4),
                   row.maybe(5),
                   row.maybe(6).value_or(0),
                   row.text(7),
                   row.maybe(8)};
        if (job.billed_by) scale_by(*job.billed_by, job.system, row.number(9) != 0, log);
        logs.push_back(std::move(log));
      },
      job.job, from, to);
  return logs;
}

/// As many decimals as the scale of any log needs, up to three.
int places_of(const std::vector<LogRow>& logs, int least) {
  int places = least;
  for (const LogRow& log : logs)
    for (const std::int64_t figure : {log.gross.value_or(0), log.net})
      places = shortest(Rational(figure, scaling::kPerUnit), places, 3).places;
  return places;
}

/// A column of scales as it is shown, adding up to its last figure, the total.
std::vector<Decimal> settled_scale(const std::vector<std::int64_t>& millionths, int places) {
  std::vector<Rational> exact;
  for (const std::int64_t figure : millionths) exact.emplace_back(figure, scaling::kPerUnit);
  const std::int64_t total = rounded_total(exact, places);
  std::vector<Decimal> figures;
  for (const std::int64_t units : settle(exact, places, total)) figures.push_back({units, places});
  figures.push_back({total, places});
  return figures;
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

/// What the logs scale together, and the columns as shown; each of these ends with its total.
struct Scaled {
  std::size_t logs = 0;
  std::size_t unscaled = 0;
  std::int64_t net = 0;
  std::set<std::string> rules;
  std::vector<Decimal> gross_shown;
  std::vector<Decimal> net_shown;
};

Scaled scaled(const book::Mill& mill, const std::vector<LogRow>& logs, int places) {
  Scaled sum;
  sum.logs = logs.size();
  std::vector<std::int64_t> gross;
  std::vector<std::int64_t> net;
  for (const LogRow& log : logs) {
    gross.push_back(log.gross.value_or(0));
    net.push_back(log.net);
    sum.net += log.net;
    if (log.gross)
      sum.rules.insert(rule_words(log.rule, mill));
    else
      ++sum.unscaled;
  }
  sum.gross_shown = settled_scale(gross, places);
  sum.net_shown = settled_scale(net, places);
  return sum;
}

std::string tally_words(const book::Mill& mill, const Rational& lumber) {
  const LumberUnit unit(mill);
  return "tally " + number_words(shown(lumber, unit.places()), mill) + " " + unit.unit();
}

/// Overrun is of board feet over board feet; of cubic metres the trade says how much of the log became lumber.
std::string yield_line(const book::Mill& mill, const Scaled& sum, const Rational& lumber,
                       const std::string& unit) {
  std::string line = counted_logs(sum.logs);
  if (sum.net == 0) return line + ", no scale; " + tally_words(mill, lumber);
  const Rational net(sum.net, scaling::kPerUnit);
  line += ", net scale " + number_words(shortest(net, 0, 3), mill) + " " + unit + " by " +
          join(std::vector<std::string>(sum.rules.begin(), sum.rules.end()), ", ");
  if (sum.unscaled > 0) line += " (" + std::to_string(sum.unscaled) + " not measured)";
  line += "; " + tally_words(mill, lumber);
  if (unit != LumberUnit(mill).unit() || sum.unscaled > 0) return line;
  if (LumberUnit(mill).metric())
    return line + ", " + number_words(shown(Rational(100) * lumber / net, 1), mill) + " % of the scale";
  const Rational over = Rational(100) * (lumber - net) / net;
  return line + "; " + (over.is_negative() ? "underrun " : "overrun ") +
         number_words(shown(over.is_negative() ? -over : over, 1), mill) + " %";
}

Table scale_table(const book::Mill& mill, const JobTerms& job, const std::vector<LogRow>& logs,
                  const Rational& lumber) {
  Table table = begun(mill, logs);
  const scaling::Practice& practice = job.billed_by ? *job.billed_by : job.practice;
  const std::string unit = unit_words(std::string(scaling::unit_word(book::unit_in(practice, job.system))));
  const int places = places_of(logs, unit == "m³" ? 3 : 0);
  for (const render::Column& column :
       {summed(decimal_column("gross", "Gross", unit, places)),
        summed(decimal_column("deduction", "Deduction", unit, places)), text_column("defect", "Defect"),
        summed(decimal_column("net", "Net", unit, places))})
    table.columns.push_back(column);
  const Scaled sum = scaled(mill, logs, places);
  const auto cells = [&](std::size_t i, const std::string& defect, bool has_scale) {
    if (!has_scale) return std::vector<Cell>{{}, {}, defect, {}};
    const Decimal off{sum.gross_shown[i].units - sum.net_shown[i].units, places};
    return std::vector<Cell>{sum.gross_shown[i], off, defect, sum.net_shown[i]};
  };
  for (std::size_t i = 0; i < logs.size(); ++i)
    for (Cell& cell : cells(i, logs[i].defect, logs[i].gross.has_value()))
      table.rows[i].cells.push_back(std::move(cell));
  if (sum.logs > 0) {
    table.totals = {{}, {}, {}, {}};
    for (Cell& cell : cells(logs.size(), "", true)) table.totals.push_back(std::move(cell));
    table.totals[6] = {};
    table.notes.push_back(yield_line(mill, sum, lumber, unit));
    table.notes.emplace_back(job.billed_by ? kBilledScaleCaution : kScaleCaution);
  }
  drop_empty(table, 6);
  return table;
}

/// Where no scale means anything to the customer: what the logs hold, as recovery is worked out.
Table content_table(const book::Mill& mill, const std::vector<LogRow>& logs, const Rational& lumber) {
  Table table = begun(mill, logs);
  table.columns.push_back(text_column("defect", "Defect"));
  table.columns.push_back(summed(decimal_column("content", "Content", "m³", 3)));
  std::vector<Rational> exact;
  for (const LogRow& log : logs)
    exact.push_back(Rational(log.content.value_or(0), scaling::kPerUnit) * measure::kCubicMetresPerCubicFoot);
  const std::int64_t total = rounded_total(exact, 3);
  const std::vector<std::int64_t> settled = settle(exact, 3, total);
  bool all_measured = true;
  Rational content;
  for (const Rational& one : exact) content = content + one;
  for (std::size_t i = 0; i < logs.size(); ++i) {
    all_measured = all_measured && logs[i].content.has_value();
    table.rows[i].cells.emplace_back(logs[i].defect);
    table.rows[i].cells.push_back(logs[i].content ? Cell(Decimal{settled[i], 3}) : Cell());
  }
  if (!logs.empty()) {
    table.totals = {{}, {}, {}, {}, {}, Decimal{total, 3}};
    std::string line = counted_logs(logs.size()) + "; " + tally_words(mill, lumber);
    if (all_measured && total > 0)
      line +=
          ", " + number_words(shown(Rational(100) * lumber / content, 1), mill) + " % of the logs' content";
    table.notes.push_back(line + ".");
    table.notes.emplace_back(
        "Content is worked out from the measured ends and length; where only the small end was measured, "
        "with "
        "the mill's usual taper.");
  }
  drop_empty(table, 4);
  return table;
}

}  // namespace

bool scale_is_shown(const book::Mill& mill, const JobTerms& job) {
  const bool usual = job.practice == book::usual_practice();
  return job.billed_by || mill.units == measure::System::inch || !usual;
}

Table log_table(const book::Book& book, const JobTerms& job, Day from, Day to, const Rational& lumber) {
  const std::vector<LogRow> logs = logs_sawn(book, job, from, to);
  return scale_is_shown(book.mill(), job) ? scale_table(book.mill(), job, logs, lumber)
                                          : content_table(book.mill(), logs, lumber);
}

Table struck_table(const book::Book& book, const std::string& job, Day from, Day to) {
  const LumberUnit unit(book.mill());
  Table table;
  table.name = "struck";
  table.title = "Struck lines";
  table.columns = {day_column("day", "Day"), text_column("line", "Line as written"),
                   count_column("pieces", "Pieces"), unit.column(), text_column("why", "Why")};
  book::Store store(book.database());
  store.each(
      "SELECT day, text, pieces, lumber, why FROM v_struck WHERE job = ? COLLATE NOCASE AND kind = 'tally' "
      "AND day BETWEEN ? AND ? ORDER BY day, shift, revision, number",
      [&](const book::Row& row) {
        const measure::Volume lumber{row.maybe(3).value_or(0), book.mill().units};
        table.rows.push_back(
            {{Day{static_cast<std::int32_t>(row.number(0))}, join(split_words(row.text(1)), " "),
              row.maybe(2).value_or(0), shown(unit.of(lumber), unit.places()), row.text(4)},
             true});
      },
      job, from, to);
  return table;
}

}  // namespace kerfbook::billing
