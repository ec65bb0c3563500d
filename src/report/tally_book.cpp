#include "report/tally_book.h"

#include "measure/convention.h"

namespace kerfbook::report {
namespace {

constexpr int kMostDays = 31;

bool has_rows(const render::Document& document) {
  for (const auto& table : document.tables) {
    if (!table.rows.empty()) return true;
  }
  return false;
}

/// The tally of one stretch as tables for one worksheet: the grid under `title`, struck lines below it when there are.
void add_sheet(render::Document& out, render::Document part, const std::string& title) {
  bool first = true;
  for (auto& table : part.tables) {
    if (!first && table.rows.empty()) continue;
    if (first) table.title = title;
    table.follows = !first;
    first = false;
    out.tables.push_back(std::move(table));
  }
}

std::string title_of(Day day) {
  return weekday_name(day).substr(0, 3) + " " + write_day(day);
}

/// The figures of a tally are exact nominal measure; a bill may count otherwise, by the job's convention or the house's.
std::string convention_words(const book::Mill& mill, const std::string& job) {
  const auto* entry = job.empty() ? nullptr : book::find_job(mill, job);
  const bool own = entry != nullptr && entry->convention.has_value();
  return "Board feet here are nominal thickness x width x length, exact. " +
         std::string(own ? "This job is billed by: " : "Unless a price says otherwise, a bill counts by: ") +
         measure::in_words(own ? *entry->convention : mill.convention) + ".";
}

}  // namespace

render::Document tally_book(const ReportFile& tally, const book::Book& book, const Ask& ask,
                            const render::Style& style, Day today) {
  render::Document whole = run_report(tally, book, ask, style, today);
  render::Document out = whole;
  out.tables.clear();
  const std::string title = ask.from && ask.to && *ask.to - *ask.from == 6 ? "Week" : "All days";
  add_sheet(out, std::move(whole), title);
  std::vector<Day> days;
  for (const Day day : book.days()) {
    if ((!ask.from || *ask.from <= day) && (!ask.to || day <= *ask.to)) days.push_back(day);
  }
  if (days.size() > kMostDays) {
    out.foot.emplace_back("More than a month is asked for, so there is no sheet for each day.");
    days.clear();
  }
  for (const Day day : days) {
    Ask one = ask;
    one.from = day;
    one.to = day;
    auto part = run_report(tally, book, one, style, today);
    if (has_rows(part)) add_sheet(out, std::move(part), title_of(day));
  }
  out.foot.push_back(convention_words(book.mill(), ask.job));
  return out;
}

}  // namespace kerfbook::report
