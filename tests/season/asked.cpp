#include "asked.h"

#include <map>

namespace reckoning {
namespace {

/// Where a total is printed.
struct Total {
  std::string report;
  std::string table;  ///< empty = the first
  std::string column;
};

class Asker {
 public:
  Asker(const Desk& desk, const Period& period) : desk_(desk) {
    dates_ = {"--from", text_of(period.from), "--to", text_of(period.to)};
  }

  void ask(const std::string& report, const std::vector<Table>& expected,
           const std::vector<std::string>& more = {}) {
    std::vector<std::string> words{"report", report};
    words.insert(words.end(), dates_.begin(), dates_.end());
    words.insert(words.end(), more.begin(), more.end());
    std::string called = report;
    for (const auto& word : more) called += " " + word;
    const Json answer = desk_.answer(words);
    answers_[report] = answer;
    for (const auto& table : expected)
      for (const auto& one : differences(table, answer))
        found_.push_back("report " + called + " " + dates_[1] + " " + dates_[3] +
                         (table.name.empty() ? "" : ", table " + table.name) + ": " + one);
  }

  /// Reports that print one thing of one period print one figure: the totals of these columns.
  void same(const std::string& what, const std::vector<Total>& totals) {
    std::string first, where;
    for (const auto& [report, table, column] : totals) {
      const auto answer = answers_.find(report);
      if (answer == answers_.end()) continue;
      const std::string figure = printed(answer->second, table, column);
      if (figure.empty()) continue;  // nothing of it in this period, or a table without a total
      if (first.empty()) {
        first = figure;
        where = report;
      }
      if (!(fraction_of(figure) == fraction_of(first)))
        found_.push_back(what + ": " + report + " says " + figure + ", " + where + " " + first);
    }
  }

  [[nodiscard]] std::vector<std::string> found() const { return found_; }

 private:
  const Desk& desk_;
  std::vector<std::string> dates_;
  std::map<std::string, Json> answers_;
  std::vector<std::string> found_;
};

/// One column of every report that has it.
std::vector<Total> of_all(const std::vector<std::string>& reports, const std::string& column,
                          std::vector<Total> more = {}) {
  for (const auto& report : reports) more.push_back({report, "", column});
  return more;
}

void ask_for_one_figure_each(Asker& asker) {
  const std::vector<std::string> by_time{"production", "production-week", "production-month",
                                         "production-year"};
  std::vector<std::string> by_run = by_time;
  by_run.insert(by_run.end(), {"overrun", "overrun-by-job", "overrun-by-species", "overrun-by-setup"});
  asker.same("sawing hours", of_all(by_time, "sawing_hours",
                                    {{"pace", "", "sawing_hours"}, {"moves", "sites", "sawing_hours"}}));
  asker.same("stop hours", of_all(by_time, "stop_hours"));
  asker.same("crew hours",
             of_all(by_time, "crew_hours",
                    {{"pace", "", "crew_hours"}, {"crew", "crew", "hours"}, {"crew", "hands", "hours"}}));
  asker.same("lumber", of_all(by_run, "lumber_bf",
                              {{"tally", "tally", "bf"},
                               {"pace", "", "lumber_bf"},
                               {"fuel", "", "lumber_bf"},
                               {"moves", "sites", "lumber_bf"},
                               {"year", "lumber", "lumber_bf"},
                               {"cost", "months", "lumber_bf"},
                               {"ownership", "ownership", "lumber_bf"},
                               {"ownership", "jobs", "lumber_bf"}}));
  asker.same("pieces", of_all(by_time, "pieces",
                              {{"tally", "tally", "pieces"},
                               {"pace", "", "pieces"},
                               {"year", "lumber", "pieces"},
                               {"ownership", "ownership", "pieces"}}));
  asker.same("logs", of_all(by_run, "logs",
                            {{"moves", "sites", "logs"},
                             {"year", "logs", "logs"},
                             {"deck", "deck", "sawn"},
                             {"ownership", "ownership", "logs"}}));
  asker.same("net scale",
             of_all(by_run, "net_scale_bf", {{"year", "logs", "net_bf"}, {"deck", "deck", "sawn_bf"}}));
  asker.same("log content", of_all({"overrun", "overrun-by-job", "overrun-by-species", "overrun-by-setup"},
                                   "log_ft3", {{"year", "logs", "log_ft3"}}));
  asker.same("overrun", of_all(by_run, "overrun_percent"));
  asker.same("LRF", of_all({"overrun", "overrun-by-job", "overrun-by-species", "overrun-by-setup"}, "lrf"));
  asker.same("board feet a sawing hour",
             of_all(by_time, "bf_per_sawing_hour",
                    {{"pace", "", "bf_per_sawing_hour"}, {"moves", "sites", "bf_per_sawing_hour"}}));
  asker.same("board feet a crew hour",
             of_all(by_time, "bf_per_crew_hour", {{"pace", "", "bf_per_crew_hour"}}));
}

}  // namespace

std::vector<std::string> reports_that_differ(const Desk& desk, const Reckoning& book, const Period& period,
                                             std::optional<int> turn) {
  Asker asker(desk, period);
  asker.ask("production", {book.production(By::day, period)});
  asker.ask("production-week", {book.production(By::week, period)});
  asker.ask("production-month", {book.production(By::month, period)});
  asker.ask("overrun", {book.overrun(Cut::run, period)});
  asker.ask("tally", {book.tally(period)});
  asker.ask("pace", {book.rates(period)});
  asker.ask("cost", book.cost(period));
  asker.ask("fuel", {book.fuel(period)});
  asker.ask("downtime", book.downtime(period));
  const auto has_turn = [&](int which) { return !turn || *turn == which; };
  if (has_turn(0)) {
    asker.ask("production-year", {book.production(By::year, period)});
    asker.ask("overrun-by-job", {book.overrun(Cut::job, period)});
    asker.ask("crew", book.crew(period));
    asker.ask("deck", book.deck(period, date_of(desk.today())));
  }
  if (has_turn(1)) {
    asker.ask("overrun-by-species", {book.overrun(Cut::species, period)});
    asker.ask("overrun-by-diameter", book.overrun_by_diameter(period));
    asker.ask("year", book.year(period));
    asker.ask("ownership", book.ownership(period));
  }
  if (has_turn(2)) {
    asker.ask("overrun-by-setup", {book.overrun(Cut::setup, period)});
    asker.ask("moves", book.moves(period));
    asker.ask("teeth", book.teeth(period));
    asker.ask("stock", book.stock(period));
  }
  if (!turn) asker.ask("cut-list", book.cut_list(period));
  ask_for_one_figure_each(asker);
  return asker.found();
}

std::vector<std::string> day_that_differs(const Desk& desk, const Reckoning& book, const Date& day) {
  Asker asker(desk, {day, day});
  asker.ask("day", book.day(day));
  return asker.found();
}

std::vector<std::string> narrowed_that_differ(const Desk& desk, const Reckoning& book, const Period& period,
                                              const Filter& filter) {
  Asker asker(desk, period);
  std::vector<std::string> words;
  const auto narrow = [&](const char* option, const std::string& value) {
    if (!value.empty()) words.insert(words.end(), {option, value});
  };
  narrow("--job", filter.job);
  narrow("--customer", filter.customer);
  narrow("--species", filter.species);
  narrow("--site", filter.site);
  asker.ask("production", {book.production(By::day, period, filter)}, words);
  asker.ask("production-week", {book.production(By::week, period, filter)}, words);
  asker.ask("production-month", {book.production(By::month, period, filter)}, words);
  asker.ask("overrun", {book.overrun(Cut::run, period, filter)}, words);
  asker.ask("overrun-by-job", {book.overrun(Cut::job, period, filter)}, words);
  asker.ask("overrun-by-species", {book.overrun(Cut::species, period, filter)}, words);
  asker.ask("tally", {book.tally(period, filter)}, words);
  return asker.found();
}

std::vector<std::string> rescaled_that_differ(const Desk& desk, const Reckoning& book, const Period& period,
                                              const std::string& rule) {
  Asker asker(desk, period);
  const std::vector<std::string> words{"--rule", rule};
  asker.ask("production", {book.production(By::day, period)}, words);
  asker.ask("production-week", {book.production(By::week, period)}, words);
  asker.ask("overrun", {book.overrun(Cut::run, period)}, words);
  asker.ask("overrun-by-job", {book.overrun(Cut::job, period)}, words);
  asker.ask("overrun-by-setup", {book.overrun(Cut::setup, period)}, words);
  asker.ask("overrun-by-species", {book.overrun(Cut::species, period)}, words);
  asker.ask("overrun-by-diameter", book.overrun_by_diameter(period), words);
  return asker.found();
}

}  // namespace reckoning
