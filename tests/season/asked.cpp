#include "asked.h"

#include <cstdlib>
#include <set>

namespace reckoning {
namespace {

/// What these say is being mended; they are asked as soon as it is.
const std::set<std::string> kLater{"production",
                                   "production-week",
                                   "production-month",
                                   "production-year",
                                   "overrun-by-diameter",
                                   "rates",
                                   "fuel",
                                   "downtime",
                                   "teeth",
                                   "moves"};

class Asker {
 public:
  Asker(const Desk& desk, const Period& period) : desk_(desk) {
    dates_ = {"--from", text_of(period.from), "--to", text_of(period.to)};
  }

  void ask(const std::string& report, const std::vector<Table>& expected,
           const std::vector<std::string>& more = {}) {
    if (kLater.count(report) != 0 && std::getenv("KERFBOOK_ALL") == nullptr) return;
    std::vector<std::string> words{"report", report};
    words.insert(words.end(), dates_.begin(), dates_.end());
    words.insert(words.end(), more.begin(), more.end());
    std::string called = report;
    for (const auto& word : more) called += " " + word;
    const Json answer = desk_.answer(words);
    for (const auto& table : expected)
      for (const auto& one : differences(table, answer))
        found_.push_back("report " + called + " " + dates_[1] + " " + dates_[3] +
                         (table.name.empty() ? "" : ", table " + table.name) + ": " + one);
  }

  [[nodiscard]] std::vector<std::string> found() const { return found_; }

 private:
  const Desk& desk_;
  std::vector<std::string> dates_;
  std::vector<std::string> found_;
};

}  // namespace

std::vector<std::string> reports_that_differ(const Desk& desk, const Reckoning& book, const Period& period) {
  Asker asker(desk, period);
  asker.ask("production", {book.production(By::day, period)});
  asker.ask("production-week", {book.production(By::week, period)});
  asker.ask("production-month", {book.production(By::month, period)});
  asker.ask("production-year", {book.production(By::year, period)});
  asker.ask("overrun", {book.overrun(Cut::run, period)});
  asker.ask("overrun-by-job", {book.overrun(Cut::job, period)});
  asker.ask("overrun-by-species", {book.overrun(Cut::species, period)});
  asker.ask("overrun-by-setup", {book.overrun(Cut::setup, period)});
  asker.ask("overrun-by-diameter", book.overrun_by_diameter(period));
  asker.ask("tally", {book.tally(period)});
  asker.ask("cut-list", book.cut_list(period));
  asker.ask("deck", book.deck(period, date_of(desk.today())));
  asker.ask("stock", book.stock(period));
  asker.ask("rates", {book.rates(period)});
  asker.ask("cost", book.cost(period));
  asker.ask("fuel", {book.fuel(period)});
  asker.ask("downtime", book.downtime(period));
  asker.ask("teeth", book.teeth(period));
  asker.ask("crew", book.crew(period));
  asker.ask("moves", book.moves(period));
  asker.ask("year", book.year(period));
  asker.ask("ownership", book.ownership(period));
  return asker.found();
}

}  // namespace reckoning
