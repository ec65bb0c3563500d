// read_report.cpp -- reads the header of a report file (the grammar stands in report.h) and cuts the file into tables.
// Whether its SQL is any good is check.cpp's question.
#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "base/text.h"
#include "report/header_words.h"
#include "report/report.h"

namespace kerfbook::report {
namespace {

constexpr std::size_t kMostTables = 50;
const std::vector<std::string> kFilters{"from",    "to",   "job",   "customer",
                                        "species", "site", "setup", "against"};

class Reader {
 public:
  Reader(std::string_view text, std::string_view path) {
    out_.text = text;
    out_.path = path;
    if (text.size() > kReportLimit.most) {
      complain(0, "longer than a report may be, " + shown_bytes(kReportLimit.most),
               std::string(kReportLimit.instead));
      return;
    }
    for (const auto line : split_lines(text)) {
      ++line_;
      refuse_unfit(line);
      take_line(line);
    }
    end_fact();
    check_whole();
  }
  ReportFile take() { return std::move(out_); }

 private:
  /// It would stand in every answer.
  void refuse_unfit(std::string_view line) {
    const std::size_t at = find_unfit(line);
    if (at == std::string_view::npos) return;
    const Place place{line_, characters_before(line, at) + 1};
    if (is_utf8(line))
      out_.faults.push_back({Severity::error, place, "a character that cannot be printed", "delete it"});
    else
      out_.faults.push_back(
          {Severity::error, place, "bytes that are no UTF-8 text", "save the file as UTF-8"});
  }

  void take_line(std::string_view line) {
    auto fact = line.starts_with("--") ? fact_in(line, line_) : std::nullopt;
    if (!fact && !fact_.word.empty() && line.starts_with("--   ")) {
      fact_.rest += fact_.rest.empty() ? "" : " ";
      fact_.rest += trim(line.substr(2));
    } else {
      end_fact();
      if (fact) fact_ = std::move(*fact);
    }
    if (sql_ != nullptr) {
      *sql_ += std::string(line) + "\n";
    } else if (!line.starts_with("--") && !trim(line).empty()) {
      complain(line_, in_quotes(trim(line).substr(0, 30)) + ": of no table and no input",
               "a line of the header begins with --; a SELECT stands under a table or an input");
    }
  }

  void complain(int line, std::string what, std::string instead) {
    out_.faults.push_back({Severity::error, {line, 0}, std::move(what), std::move(instead)});
  }

  // Table of header words: each with what reads it.
  struct Word {
    std::string_view name;
    void (Reader::*read)(const Fact&);
  };
  static constexpr std::size_t kWords = 17;
  static const std::array<Word, kWords>& words() {
    static constexpr std::array<Word, kWords> kTable{{{"report", &Reader::read_name},
                                                      {"title", &Reader::read_title},
                                                      {"meaning", &Reader::read_meaning},
                                                      {"takes", &Reader::read_filters},
                                                      {"needs", &Reader::read_needs},
                                                      {"example", &Reader::read_example},
                                                      {"worksheets", &Reader::read_worksheets},
                                                      {"table", &Reader::read_table},
                                                      {"shows", &Reader::read_column},
                                                      {"grid", &Reader::read_grid},
                                                      {"picture", &Reader::read_chart},
                                                      {"note", &Reader::read_note},
                                                      {"empty", &Reader::read_empty},
                                                      {"notes", &Reader::read_notes},
                                                      {"foot", &Reader::read_foot},
                                                      {"worked", &Reader::read_worked},
                                                      {"input", &Reader::read_input}}};
    return kTable;
  }

  void end_fact() {
    if (fact_.word.empty()) return;
    const Fact fact = std::exchange(fact_, {});
    const auto& table = words();
    const auto* word =
        std::find_if(table.begin(), table.end(), [&](const Word& w) { return w.name == fact.word; });
    if (word != table.end()) return (this->*word->read)(fact);
    std::vector<std::string> known;
    for (const auto& w : table) known.emplace_back(w.name);
    complain(fact.line, fmt::format("'{}:' is not a word of a report's header", fact.word),
             either(now_called(fact.word, known), known, ":"));
  }

  TableSpec* table_for(const Fact& fact) {
    if (in_input_) {
      complain(fact.line, fmt::format("'{}:' in an input, which is no table", fact.word),
               "its rows go to the worker; what is shown stands under the tables");
      return nullptr;
    }
    if (!out_.tables.empty()) return &out_.tables.back();
    complain(fact.line, fmt::format("'{}:' before any table", fact.word),
             "begin a table first: -- table: name | Title");
    return nullptr;
  }

  void read_name(const Fact& fact) {
    if (!out_.name.empty()) return complain(fact.line, "a second 'report:'", "one report a file");
    if (!is_name(fact.rest)) {
      return complain(fact.line, fmt::format("'{}' cannot be the name of a report", fact.rest),
                      "small letters, digits and -, as mill-week");
    }
    out_.name = fact.rest;
  }
  void read_title(const Fact& fact) { out_.title = fact.rest; }
  void read_meaning(const Fact& fact) { out_.meaning = fact.rest; }
  void read_foot(const Fact& fact) { out_.foot.push_back(fact.rest); }

  void read_filters(const Fact& fact) {
    for (const auto& word : split_words(fact.rest)) {
      if (std::find(kFilters.begin(), kFilters.end(), word) == kFilters.end()) {
        complain(fact.line, fmt::format("'{}' is nothing a report is asked by", word),
                 either(nearest(word, kFilters), kFilters));
      } else {
        out_.filters.push_back(word);
      }
    }
  }

  void read_needs(const Fact& fact) {
    if (fact.rest != "day") return complain(fact.line, fmt::format("needs '{}'", fact.rest), "needs: day");
    out_.needs = fact.rest;
  }

  void read_example(const Fact& fact) { out_.example = fact.rest; }

  void read_worksheets(const Fact& fact) {
    if (fact.rest != "one")
      return complain(fact.line, fmt::format("worksheets '{}'", fact.rest), "worksheets: one");
    out_.one_worksheet = true;
  }

  void read_table(const Fact& fact) {
    const std::size_t bar = fact.rest.find('|');
    TableSpec table;
    table.name = trim(std::string_view(fact.rest).substr(0, bar));
    if (bar != std::string::npos) table.title = trim(std::string_view(fact.rest).substr(bar + 1));
    if (!is_name(table.name)) {
      complain(fact.line, fmt::format("'{}' cannot be the name of a table", table.name),
               "-- table: name | Title");
    }
    if (out_.tables.size() == kMostTables)
      complain(fact.line, fmt::format("more than {} tables", kMostTables), "make a second report");
    table.sql_line = line_;
    out_.tables.push_back(std::move(table));
    sql_ = &out_.tables.back().sql;
    in_input_ = false;
  }

  void read_worked(const Fact& fact) {
    if (!out_.worker.empty()) return complain(fact.line, "a second 'worked:'", "one worker a report");
    if (!is_name(fact.rest)) {
      return complain(fact.line, fmt::format("'{}' cannot be the name of a worker", fact.rest),
                      "-- worked: name");
    }
    out_.worker = fact.rest;
    out_.worker_line = fact.line;
  }

  void read_input(const Fact& fact) {
    if (!is_name(fact.rest)) {
      complain(fact.line, fmt::format("'{}' cannot be the name of an input", fact.rest), "-- input: name");
    }
    if (out_.inputs.size() == kMostTables)
      complain(fact.line, fmt::format("more than {} inputs", kMostTables), "make a second report");
    out_.inputs.push_back({fact.rest, {}, line_});
    sql_ = &out_.inputs.back().sql;
    in_input_ = true;
  }

  void read_notes(const Fact& fact) {
    TableSpec* table = table_for(fact);
    if (table == nullptr) return;
    if (table->notes_line != 0)
      return complain(fact.line, "a second 'notes:' in one table", "one SELECT of notes");
    table->notes_line = line_;
    sql_ = &table->notes_sql;
  }

  void read_column(const Fact& fact) {
    TableSpec* table = table_for(fact);
    if (table == nullptr) return;
    const auto parts = split_quoted(fact.rest);
    if (parts.size() < 2)
      return complain(fact.line, "a column needs a name and a kind", "-- shows: logs count \"Logs\"");
    ColumnSpec column;
    column.line = fact.line;
    column.name = parts[0];
    if (!is_name(column.name)) {
      complain(fact.line, fmt::format("'{}' cannot be the name of a column", column.name),
               "small letters, digits and _");
    }
    read_kind(fact, parts[1], column);
    std::size_t next = 2;
    if (next < parts.size() && fact.rest.find('"') != std::string::npos) column.heading = parts[next++];
    for (; next < parts.size(); ++next) read_option(fact, parts[next], column);
    if (is_ratio(column.kind) && column.over.empty()) {
      complain(fact.line, fmt::format("column {} says of no two columns", column.name), "of=A/B");
    }
    table->columns.push_back(std::move(column));
  }

  void read_kind(const Fact& fact, std::string_view written, ColumnSpec& column) {
    const std::size_t colon = written.find(':');
    const auto word = written.substr(0, colon);
    if (const auto kind = find_kind(word)) {
      column.kind = *kind;
    } else {
      std::vector<std::string> known;
      for (const auto& row : kinds()) known.emplace_back(row.word);
      complain(fact.line, fmt::format("'{}' is not a kind of column", word),
               either(nearest(word, known), known));
    }
    if (colon == std::string_view::npos) return;
    const auto places = small_number(written.substr(colon + 1));
    if (!places || *places > 6) {
      return complain(fact.line, fmt::format("'{}' is not a number of places", written.substr(colon + 1)),
                      "0 to 6");
    }
    column.places = *places;
  }

  void read_option(const Fact& fact, std::string_view written, ColumnSpec& column) {
    const std::size_t equals = written.find('=');
    const auto key = written.substr(0, equals);
    const std::string value(equals == std::string_view::npos ? "" : written.substr(equals + 1));
    if (written == "hidden") {
      column.hidden = true;
    } else if (written == "strikes") {
      column.strikes = column.hidden = true;
    } else if (written == "total=sum") {
      column.total = Totalled::sum;
    } else if (written == "total=none") {
      column.total = Totalled::none;
    } else if (written == "once") {
      column.under_once = true;
    } else if (written == "per=mbf") {
      column.per_mbf = true;
    } else if (key == "unit") {
      column.unit = value;
    } else if (key == "unit-from") {
      column.unit_from = value;
    } else if (key == "metric-from") {
      column.metric_from = value;
    } else if (key == "width" && small_number(value)) {
      column.width = *small_number(value);
    } else if (key == "of" && value.find('/') != std::string::npos) {
      column.over = value.substr(0, value.find('/'));
      column.under = value.substr(value.find('/') + 1);
    } else {
      complain(fact.line, fmt::format("'{}' says nothing about a column", written),
               "total=sum, total=none, of=A/B, once, per=mbf, unit=WORD, unit-from=COLUMN, "
               "metric-from=COLUMN, hidden, "
               "strikes, width=N");
    }
  }

  void read_grid(const Fact& fact) {
    if (TableSpec* table = table_for(fact)) {
      table->grid = fact.rest;
      table->grid_line = fact.line;
    }
  }
  void read_chart(const Fact& fact) {
    if (TableSpec* table = table_for(fact)) {
      table->chart = fact.rest;
      table->chart_line = fact.line;
    }
  }
  void read_note(const Fact& fact) {
    if (TableSpec* table = table_for(fact)) table->notes.push_back(fact.rest);
  }
  void read_empty(const Fact& fact) {
    if (TableSpec* table = table_for(fact)) table->when_empty = fact.rest;
  }

  /// A table of a worked report without a SELECT gets its rows from the worker.
  void find_worked() {
    for (auto& table : out_.tables) table.worked = !out_.worker.empty() && !has_select(table.sql);
    if (out_.worker.empty() && !out_.inputs.empty())
      complain(out_.inputs.front().sql_line, "an input, and no worker to read it", "-- worked: name");
  }

  void check_whole() {
    find_worked();
    if (out_.name.empty()) complain(1, "the report has no name", "-- report: name");
    if (out_.title.empty()) complain(1, "the report has no title", "-- title: words");
    if (out_.meaning.empty()) {
      complain(1, "the report does not say what it means",
               "-- meaning: what the figures are, how worked out");
    }
    if (out_.tables.empty()) complain(1, "the report has no table", "-- table: name | Title");
    sort_by_place(out_.faults);
  }

  ReportFile out_;
  Fact fact_;
  std::string* sql_ = nullptr;
  bool in_input_ = false;
  int line_ = 0;  ///< the one being taken: where the SQL of a table or notes just begun starts
};

}  // namespace

ReportFile read_report(std::string_view text, std::string_view path) {
  return Reader(text, path).take();
}

}  // namespace kerfbook::report
