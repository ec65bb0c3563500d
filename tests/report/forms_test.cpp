// Every built-in report in every form: the same figures, sums that add up from what is printed, nothing for what is not
// known. Over the whole catalogue, so a new report is in it unasked.
#include <doctest/doctest.h>

#include <algorithm>

#include "demo.h"
#include "render/outputs_check.h"
#include "render/renderer.h"
#include "report/packet.h"
#include "report/tally_book.h"

using namespace kerfbook;
using namespace kerfbook::report;

namespace {

bool takes(const ReportFile& report, const std::string& filter) {
  return std::find(report.filters.begin(), report.filters.end(), filter) != report.filters.end();
}

render::Style style_of(const book::Book& book) {
  render::Style style;
  style.currency = book.mill().currency;
  if (book.mill().units == measure::System::metric) style.dates = render::DateOrder::day_month_year;
  return style;
}

/// Every report that takes `filter`, asked so; `filter` empty: all of them.
void check_reports(const book::Book& book, const Ask& ask, const std::string& filter,
                   const std::string& how) {
  int checked = 0;
  for (const auto& report : all_reports("")) {
    if (!filter.empty() && !takes(report, filter)) continue;
    render::check_forms(run_report(report, book, ask, style_of(book), kToday), report.name + how);
    ++checked;
  }
  CHECK_MESSAGE(checked > 5, "hardly any report takes " << filter);
}

Ask day_of(Day day) {
  Ask ask;
  ask.from = ask.to = day;
  return ask;
}

}  // namespace

TEST_CASE("every report on the demo week has the same figures in five forms, and its sums add up in each") {
  check_reports(demo_week(), {}, "", "");
}

TEST_CASE("so has every report on an empty book") {
  check_reports(empty_book(), {}, "", " of nothing");
}

TEST_CASE("so has every report that takes a job, for each job") {
  const auto book = demo_week();
  for (const char* job : {"TER", "QHH", "MUM", "own"}) {
    Ask ask;
    ask.job = job;
    check_reports(book, ask, "job", " of " + ask.job);
  }
}

TEST_CASE("so has every report that takes a customer, a species or a site") {
  const auto book = demo_week();
  Ask customer;
  customer.customer = "TER";
  check_reports(book, customer, "customer", " of a customer");
  Ask species;
  species.species = "DF";
  check_reports(book, species, "species", " of fir");
  Ask site;
  site.site = "yard";
  check_reports(book, site, "site", " at the yard");
}

TEST_CASE("so has every report that takes a period, for a day of two jobs and for a day without a sheet") {
  const auto book = demo_week();
  check_reports(book, day_of(make_day(2026, 5, 6)), "from", " on Wednesday");
  check_reports(book, day_of(make_day(2026, 5, 3)), "from", " on the Sunday before");
}

TEST_CASE("so has every report with its logs scaled again, by a board foot rule and by a cubic one") {
  const auto book = demo_week();
  for (const char* rule : {"doyle", "smalian"}) {
    Ask ask;
    ask.rule = rule;
    check_reports(book, ask, "", " by " + ask.rule);
  }
}

TEST_CASE("so have the packet, several reports to a worksheet, and the tally's workbook of a sheet a day") {
  const auto book = demo_week();
  const auto reports = all_reports("");
  Ask week;
  week.from = make_day(2026, 5, 4);
  week.to = make_day(2026, 5, 10);
  std::vector<std::string> names;
  for (const auto& report : reports) names.push_back(report.name);
  render::check_forms(packet(reports, names, book, week, {}, kToday), "packet");
  render::check_forms(tally_book(find_report(reports, "tally"), book, week, {}, kToday), "tally book");
}

TEST_CASE(
    "so has every report on odd days: thirds, lineal feet, two rules, unscaled logs, words full of marks") {
  const auto book = odd_days();
  check_reports(book, {}, "", " of odd days");
  for (const char* job : {"A&B", "CUBE", "HALF", "own"}) {
    Ask ask;
    ask.job = job;
    check_reports(book, ask, "job", " of odd " + ask.job);
  }
  check_reports(book, day_of(make_day(2026, 1, 1)), "from", " on New Year's day");
}

TEST_CASE("so has every report in a metric book with decimal commas") {
  check_reports(metric_days(), {}, "", " of metric days");
}

TEST_CASE(
    "every formula of every report's workbook, of the packet and of the tally's is what LibreOffice makes of "
    "it") {
  const auto reports = all_reports("");
  std::map<std::string, std::string> workbooks;
  const auto take = [&](const book::Book& book, const std::string& which) {
    for (const auto& report : reports) {
      workbooks[report.name + "-" + which] =
          render::render_xlsx(run_report(report, book, {}, style_of(book), kToday));
    }
  };
  take(demo_week(), "demo");
  take(odd_days(), "odd");
  take(metric_days(), "metric");
  const auto book = demo_week();
  Ask week;
  week.from = make_day(2026, 5, 4);
  week.to = make_day(2026, 5, 10);
  std::vector<std::string> names;
  for (const auto& report : reports) names.push_back(report.name);
  workbooks["packet"] = render::render_xlsx(packet(reports, names, book, week, {}, kToday));
  workbooks["tally-book"] =
      render::render_xlsx(tally_book(find_report(reports, "tally"), book, week, {}, kToday));
  render::check_recalculated(workbooks);
}
