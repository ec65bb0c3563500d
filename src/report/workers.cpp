#include "report/workers.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "base/text.h"
#include "report/column_kinds.h"
#include "report/filters.h"
#include "tuning/numbers.h"
#include "tuning/what_if.h"

namespace kerfbook::report {
namespace {

Diagnostic fault(int line, std::string what, std::string instead) {
  return {Severity::error, {line, 0}, std::move(what), std::move(instead)};
}

bool has(const std::vector<std::string>& names, const std::string& name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

std::string did_you_mean(std::string_view name, const std::vector<std::string>& known) {
  const std::string near = nearest(name, known);
  return near.empty() ? "one of " + join(known, ", ") : "did you mean " + near + "?";
}

const Columns* find_columns(const std::vector<Columns>& all, std::string_view name) {
  const auto found = std::find_if(all.begin(), all.end(), [&](const Columns& c) { return c.name == name; });
  return found == all.end() ? nullptr : &*found;
}

std::vector<std::string> names_of(const std::vector<Columns>& all) {
  std::vector<std::string> names;
  for (const auto& one : all) names.push_back(one.name);
  return names;
}

}  // namespace

std::span<const Worker> workers() {
  static const std::vector<Worker> kWorkers{
      straight_line(), saw_speed(),       setups_compared(), size_control(),
      tooth_life(),    where_wood_went(), yield_of_logs(),
  };
  return kWorkers;
}

const Worker* find_worker(std::string_view name) {
  const auto all = workers();
  const auto found = std::find_if(all.begin(), all.end(), [&](const Worker& w) { return w.name == name; });
  return found == all.end() ? nullptr : &*found;
}

std::size_t InputRows::column_of(std::string_view name) const {
  const auto found = std::find(raw_.names.begin(), raw_.names.end(), name);
  if (found == raw_.names.end()) throw std::logic_error("a worker reads no column " + std::string(name));
  return static_cast<std::size_t>(found - raw_.names.begin());
}

std::optional<std::int64_t> InputRows::number(std::size_t row, std::string_view column) const {
  const View value = raw_.at(row, column_of(column));
  if (const auto* whole = std::get_if<std::int64_t>(&value)) return *whole;
  if (const auto* text = std::get_if<std::string_view>(&value))
    throw SqlFault(fmt::format("column {} takes whole numbers, not {}", column, in_quotes(*text)), -1);
  return std::nullopt;
}

std::string InputRows::text(std::size_t row, std::string_view column) const {
  const View value = raw_.at(row, column_of(column));
  const auto* text = std::get_if<std::string_view>(&value);
  return text == nullptr ? std::string() : std::string(*text);
}

std::vector<Diagnostic> check_worker(const ReportFile& report) {
  if (report.worker.empty()) return {};
  const Worker* worker = find_worker(report.worker);
  if (worker == nullptr) {
    std::vector<std::string> known;
    for (const auto& one : workers()) known.push_back(one.name);
    return {fault(report.worker_line, fmt::format("there is no worker '{}'", report.worker),
                  did_you_mean(report.worker, known))};
  }
  std::vector<Diagnostic> found;
  std::vector<std::string> inputs;
  for (const auto& input : report.inputs) {
    if (has(inputs, input.name))
      found.push_back(fault(input.sql_line, fmt::format("a second input {}", input.name), "one of each"));
    inputs.push_back(input.name);
    if (find_columns(worker->reads, input.name) == nullptr) {
      found.push_back(fault(input.sql_line, fmt::format("{} reads no input {}", worker->name, input.name),
                            did_you_mean(input.name, names_of(worker->reads))));
    }
  }
  for (const auto& read : worker->reads) {
    if (has(inputs, read.name)) continue;
    found.push_back(
        fault(report.worker_line, fmt::format("{} reads an input {}", worker->name, read.name),
              fmt::format("-- input: {}, and a SELECT of {}", read.name, join(read.columns, ", "))));
  }
  for (const auto& table : report.tables) {
    if (!table.worked || find_columns(worker->gives, table.name) != nullptr) continue;
    found.push_back(fault(table.sql_line, fmt::format("{} makes no table {}", worker->name, table.name),
                          "give it a SELECT, or " + did_you_mean(table.name, names_of(worker->gives))));
  }
  return found;
}

std::vector<Diagnostic> check_input(const ReportFile& report, const InputSpec& input,
                                    const std::vector<std::string>& given) {
  const Worker* worker = find_worker(report.worker);
  const Columns* reads = worker == nullptr ? nullptr : find_columns(worker->reads, input.name);
  if (reads == nullptr) return {};  // check_worker() says so
  std::vector<Diagnostic> found;
  for (const auto& name : reads->columns) {
    if (has(given, name)) continue;
    found.push_back(fault(input.sql_line, fmt::format("the SELECT gives no column {}", name),
                          fmt::format("{} reads {} of it", worker->name, join(reads->columns, ", "))));
  }
  for (const auto& name : given) {
    if (has(reads->columns, name)) continue;
    found.push_back(
        fault(input.sql_line,
              fmt::format("the SELECT gives a column {}, which {} does not read", name, worker->name),
              did_you_mean(name, reads->columns)));
  }
  return found;
}

std::vector<std::string> columns_given(const ReportFile& report, std::string_view table) {
  const Worker* worker = find_worker(report.worker);
  const Columns* gives = worker == nullptr ? nullptr : find_columns(worker->gives, table);
  return gives == nullptr ? std::vector<std::string>() : gives->columns;
}

std::string words_of(const Rational& number, int places, const Given& given) {
  const auto& marks = given.mill.currency;
  return grouped(shown(number, places), marks.thousands, marks.decimal_mark);
}

std::string words_of(double number, int places, const Given& given) {
  return words_of(Rational(std::llround(number * 1e6), 1'000'000), places, given);
}

std::string day_words(std::int64_t day, const Given& given) {
  return day_words(Day{static_cast<std::int32_t>(day)}, given.style);
}

RunKey run_key(const InputRows& rows, std::size_t r) {
  return {rows.number(r, "day").value_or(0), rows.number(r, "shift").value_or(0),
          rows.number(r, "run").value_or(0)};
}

Value whole(const std::optional<double>& number) {
  constexpr double kMost = 9e18;  // fits into 63 bits
  if (!number || !(std::abs(*number) < kMost)) return {};
  return static_cast<std::int64_t>(std::llround(*number));
}

Value micro(const std::optional<double>& number) {
  return number ? whole(*number * 1e6) : Value{};
}

double board_feet_of(std::int64_t counts, const Given& given) {
  const auto a_foot =
      given.setting.metric_book ? measure::kMetricCountsPerBoardFoot : measure::kCountsPerBoardFoot;
  return static_cast<double>(counts) / static_cast<double>(a_foot);
}

double cubic_feet_of(std::int64_t counts, const Given& given) {
  return board_feet_of(counts, given) / 12;
}

Value lumber_of(const std::optional<double>& bf, const Given& given) {
  const auto a_foot =
      given.setting.metric_book ? measure::kMetricCountsPerBoardFoot : measure::kCountsPerBoardFoot;
  return bf ? whole(*bf * static_cast<double>(a_foot)) : Value{};
}

double told_lumber(double bf, const Given& given) {
  return given.setting.metric_book ? bf * tuning::as_double(*per_board_foot("m3", false)) : bf;
}

std::string lumber_words(double bf, const Given& given) {
  const bool metric = given.setting.metric_book;
  return words_of(told_lumber(bf, given), metric ? 1 : 0, given) + (metric ? " m3" : " bf");
}

double inches_of_mils(std::int64_t mils, bool metric) {
  return static_cast<double>(mils) / (metric ? 2540 : 1000);
}

double lineal_feet_of(std::int64_t counts) {
  return static_cast<double>(counts) / static_cast<double>(kLinealPerFoot);
}

Value lineal_of(const std::optional<double>& feet) {
  return feet ? whole(*feet * static_cast<double>(kLinealPerFoot)) : Value{};
}

std::string money_words(double sum, const Given& given) {
  const auto& currency = given.mill.currency;
  return measure::write_money({std::llround(sum * std::pow(10, currency.places))}, currency);
}

Columns lumber_price_input() {
  return {"price", {"unit", "amount", "quantity_micro"}};
}

std::optional<double> price_of_lumber(const Given& given) {
  const auto& rows = given.rows("price");
  std::vector<tuning::Billed> billed;
  for (std::size_t r = 0; r < rows.size(); ++r) {
    const std::string unit = rows.text(r, "unit");
    const auto a_foot = unit == "MBF" ? Rational(1, 1000) : per_board_foot(unit, false);
    if (!a_foot) continue;
    const double bf =
        static_cast<double>(rows.number(r, "quantity_micro").value_or(0)) / 1e6 / tuning::as_double(*a_foot);
    billed.push_back(
        {static_cast<double>(rows.number(r, "amount").value_or(0)) / std::pow(10, given.setting.money_places),
         bf});
  }
  return tuning::mean_price(billed);
}

}  // namespace kerfbook::report
