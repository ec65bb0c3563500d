// run_report.cpp -- a report file run against a book: filters, the logs scaled again when asked, table by table, a Document.
#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>

#include <algorithm>
#include <chrono>

#include "base/error.h"
#include "base/text.h"
#include "base/too_large.h"
#include "render/footing.h"
#include "report/filters.h"
#include "report/guard.h"
#include "report/rescale.h"
#include "report/rows.h"
#include "report/scale_notes.h"
#include "report/table.h"
#include "report/workers.h"

namespace kerfbook::report {
namespace {

int line_in_file(std::string_view sql, int first_line, int at) {
  if (at < 0) return first_line;
  const auto end = sql.begin() + std::min<std::ptrdiff_t>(at, std::ssize(sql));
  return first_line + static_cast<int>(std::count(sql.begin(), end, '\n'));
}

[[noreturn]] void fail(const ReportFile& report, int line, const std::string& what) {
  if (is_overflow(what))
    throw Refused(fmt::format("{}:{}: report {}: {}", report.path, line, report.name, kTooLarge));
  throw Failed(fmt::format("{}:{}: report {}: {}", report.path, line, report.name, what));
}

void refuse_faulty(const ReportFile& report, const std::vector<Diagnostic>& faults) {
  if (!faults.empty()) throw Failed(std::string(trim(show_all(faults, report.path, report.text))));
}

class Runner {
 public:
  Runner(const ReportFile& report, const book::Book& book, const Filtered& filters,
         const render::Style& style)
      : report_(report),
        mill_(book.mill()),
        db_(book.database().getHandle()),
        filters_(filters),
        style_(style) {
    setting_.metric_book = book.mill().units == measure::System::metric;
    setting_.money_places = book.mill().currency.places;
    setting_.money_sign = book.mill().currency.sign;
  }

  /// Hands the inputs of a worked report to its worker.
  void work(Day today) {
    if (report_.worker.empty()) return;
    refuse_faulty(report_, check_worker(report_));
    Given given{{}, setting_, mill_, filters_.ask, today, style_};
    int line = report_.worker_line;
    try {
      for (const auto& input : report_.inputs) {
        line = input.sql_line;
        given.inputs.emplace(input.name, InputRows(rows_of(input)));
      }
      worked_ = find_worker(report_.worker)->work(given);
    } catch (const SqlFault& fault) {
      fail(report_, line, fault.what());
    }
  }
  [[nodiscard]] const Worked& worked() const { return worked_; }

  render::Table run(const TableSpec& spec) {
    render::Table table;
    try {
      table = make_table(spec, spec.worked ? worked_rows(spec) : selected_rows(spec), setting_);
    } catch (const SqlFault& fault) {
      fail(report_, line_in_file(spec.sql, spec.sql_line, fault.at()), fault.what());
    }
    if (spec.worked) {
      auto& notes = worked_.tables[spec.name].notes;
      table.notes.insert(table.notes.end(), notes.begin(), notes.end());
      table.log_end = worked_.tables[spec.name].log_end;
    }
    render::note_rounding(table, style_);
    if (!spec.notes_sql.empty()) add_notes(spec, table);
    return table;
  }

 private:
  /// Of the patience with the whole report.
  [[nodiscard]] std::chrono::milliseconds left() const {
    const auto now = std::chrono::steady_clock::now();
    return std::chrono::duration_cast<std::chrono::milliseconds>(std::max(until_ - now, {}));
  }

  [[nodiscard]] Raw selected_rows(const TableSpec& spec) const {
    Query query(db_, fitted(spec.sql, filters_.parameters), {.time = left()});
    refuse_faulty(report_, check_columns(spec, query.columns()));
    return read_rows(query, filters_.parameters);
  }

  Raw worked_rows(const TableSpec& spec) {
    const auto names = columns_given(report_, spec.name);
    refuse_faulty(report_, check_columns(spec, names));
    return {names, worked_.tables[spec.name].rows};
  }

  [[nodiscard]] Raw rows_of(const InputSpec& input) const {
    try {
      Query query(db_, fitted(input.sql, filters_.parameters), {.time = left()});
      refuse_faulty(report_, check_input(report_, input, query.columns()));
      return read_rows(query, filters_.parameters);
    } catch (const SqlFault& fault) {
      fail(report_, line_in_file(input.sql, input.sql_line, fault.at()), fault.what());
    }
  }

  void add_notes(const TableSpec& spec, render::Table& table) const {
    try {
      Query query(db_, fitted(spec.notes_sql, filters_.parameters), {.time = left()});
      const Raw raw = read_rows(query, filters_.parameters);
      for (std::size_t r = 0; r < raw.rows(); ++r) {
        const View note = raw.at(r, 0);
        if (const auto* text = std::get_if<std::string_view>(&note)) table.notes.emplace_back(*text);
      }
    } catch (const SqlFault& fault) {
      fail(report_, line_in_file(spec.notes_sql, spec.notes_line, fault.at()), fault.what());
    }
  }

  const ReportFile& report_;
  const book::Mill& mill_;
  sqlite3* db_;
  const Filtered& filters_;
  const render::Style& style_;
  Setting setting_;
  Worked worked_;
  std::chrono::steady_clock::time_point until_ = std::chrono::steady_clock::now() + kPatience;
};

/// Under the first table that shows a log scale, in every report alike. Logs scaled again are scaled by one rule.
void add_scale_notes(const ReportFile& report, const book::Book& book, const Filtered& filters,
                     render::Document& document) {
  if (!filters.ask.rule.empty()) return;
  for (std::size_t t = 0; t < report.tables.size(); ++t) {
    const auto& columns = report.tables[t].columns;
    const bool scale = std::any_of(columns.begin(), columns.end(),
                                   [](const ColumnSpec& c) { return c.kind == Kind::scale && !c.hidden; });
    if (!scale || document.tables[t].rows.empty()) continue;
    auto& notes = document.tables[t].notes;
    for (auto& note : scale_notes(book, filters.parameters)) notes.push_back(std::move(note));
    return;
  }
}

/// The faults of one SELECT, found without running it.
std::vector<Diagnostic> check_select(sqlite3* db, const std::string& sql, int first_line,
                                     std::vector<std::string>& columns) {
  static const std::vector<std::string> kParameters{
      "from",  "to",      "today",  "week_start",  "few_logs",   "job",     "customer", "species",   "site",
      "setup", "against", "job_id", "customer_id", "species_id", "site_id", "setup_id", "against_id"};
  std::vector<Diagnostic> found;
  try {
    const Query query(db, sql);
    columns = query.columns();
    for (const auto& name : query.parameters()) {
      if (std::find(kParameters.begin(), kParameters.end(), name) != kParameters.end()) continue;
      found.push_back({Severity::error,
                       {first_line, 0},
                       fmt::format("'{}' is not a parameter", name),
                       "one of :" + join(kParameters, ", :")});
    }
  } catch (const SqlFault& fault) {
    found.push_back({Severity::error, {line_in_file(sql, first_line, fault.at()), 0}, fault.what(), ""});
  }
  return found;
}

/// `given`: what the worker gives of a worked table.
void check_table(const TableSpec& spec, sqlite3* db, const std::vector<std::string>& given,
                 std::vector<Diagnostic>& found) {
  std::vector<std::string> columns;
  const auto add = [&found](const std::vector<Diagnostic>& more) {
    found.insert(found.end(), more.begin(), more.end());
  };
  if (spec.worked) {
    if (!given.empty()) add(check_columns(spec, given));
  } else {
    const auto faults = check_select(db, spec.sql, spec.sql_line, columns);
    add(faults);
    if (faults.empty()) add(check_columns(spec, columns));
  }
  try {
    if (!spec.grid.empty()) read_grid(spec, {});
  } catch (const SqlFault& fault) {
    found.push_back({Severity::error, {spec.grid_line, 0}, fault.what(), ""});
  }
  try {
    if (!spec.chart.empty()) read_chart(spec);
  } catch (const SqlFault& fault) {
    found.push_back({Severity::error, {spec.chart_line, 0}, fault.what(), ""});
  }
  if (spec.notes_sql.empty()) return;
  add(check_select(db, spec.notes_sql, spec.notes_line, columns));
}

}  // namespace

std::vector<Diagnostic> check_report(const ReportFile& report, const book::Book& book) {
  std::vector<Diagnostic> found = report.faults;
  if (!found.empty()) return found;
  sqlite3* db = book.database().getHandle();
  found = check_worker(report);
  for (const auto& input : report.inputs) {
    std::vector<std::string> columns;
    auto faults = check_select(db, input.sql, input.sql_line, columns);
    if (faults.empty()) faults = check_input(report, input, columns);
    found.insert(found.end(), faults.begin(), faults.end());
  }
  for (const auto& table : report.tables) {
    check_table(table, db, columns_given(report, table.name), found);
  }
  sort_by_place(found);
  return found;
}

render::Document run_report(const ReportFile& report, const book::Book& book, const Ask& ask,
                            const render::Style& style, Day today) {
  refuse_faulty(report, report.faults);
  const book::Still still(book);  // its tables agree, whatever is posted meanwhile
  Filtered filters = filtered(report, book, ask, style, today);
  const auto day = [&](const char* name) { return std::get<std::int64_t>(filters.parameters.at(name)); };
  const Rescaled rescaled(book, ask.rule, day("from"), day("to"));
  if (!ask.rule.empty()) filters.words.push_back("logs scaled again by " + rescaled.rule());
  Runner runner(report, book, filters, style);
  runner.work(today);
  render::Document document;
  document.name = report.name;
  document.title = report.title;
  document.subtitle = book.mill().name + (filters.words.empty() ? "" : "; " + join(filters.words, "; "));
  document.meaning = report.meaning;
  document.lead = runner.worked().finding;
  for (const auto& spec : report.tables) {
    document.tables.push_back(runner.run(spec));
    document.tables.back().follows = report.one_worksheet && document.tables.size() > 1;
  }
  add_scale_notes(report, book, filters, document);
  document.foot = report.foot;
  const auto& more = runner.worked().foot;
  document.foot.insert(document.foot.end(), more.begin(), more.end());
  document.style = style;
  document.made_on = write_day(today);
  return document;
}

}  // namespace kerfbook::report
