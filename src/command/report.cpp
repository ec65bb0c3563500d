// report.cpp -- `kerfbook report NAME`: one question, answered in the form asked for.
#include <CLI/CLI.hpp>
#include <ostream>

#include "base/error.h"
#include "base/text.h"
#include "command/commands.h"
#include "command/period.h"
#include "render/renderer.h"
#include "report/report.h"
#include "report/tally_book.h"

namespace kerfbook::command {
namespace {

struct Asked {
  std::string name;
  PeriodOptions days;
  std::string own_folder;
  bool sql = false;
  report::Ask ask;
  Output output;
};

report::Ask asked_for(const Asked& asked, const book::Mill& mill, const Session& session) {
  report::Ask ask = asked.ask;
  const Days days = days_of(asked.days, mill, session);
  ask.from = days.from;
  ask.to = days.to;
  return ask;
}

void list_reports(const std::vector<report::ReportFile>& reports, const Session& session) {
  std::size_t widest = 0;
  for (const auto& one : reports) widest = std::max(widest, one.name.size());
  for (const auto& one : reports) {
    session.out() << pad_right(one.name, static_cast<int>(widest) + 2) << one.title << "\n";
  }
}

void answer(const Asked& asked, const Session& session) {
  const auto folder = session.context().environment("KERFBOOK_REPORTS");
  const auto reports =
      report::all_reports(!asked.own_folder.empty() ? asked.own_folder : folder.value_or(""));
  if (asked.name.empty()) return list_reports(reports, session);
  const auto& wanted = report::find_report(reports, asked.name);
  if (asked.sql) {
    session.out() << wanted.text;
    return;
  }
  const book::Book open = session.open_book(true);
  const auto ask = asked_for(asked, open.mill(), session);
  const auto style = session.style(open.mill());
  const bool as_book = wanted.name == "tally" && chosen_format(asked.output).name == "xlsx";
  const auto document = as_book ? report::tally_book(wanted, open, ask, style, session.today())
                                : report::run_report(wanted, open, ask, style, session.today());
  write_document(document, asked.output, session);
}

}  // namespace

void add_report(CLI::App& app, Session& session) {
  auto asked = std::make_shared<Asked>();
  app.add_option("NAME", asked->name, "which report; without it they are listed");
  add_period_options(app, asked->days);
  app.add_option("--job", asked->ask.job, "only this job")->type_name("JOB");
  app.add_option("--customer", asked->ask.customer, "only this customer's jobs")->type_name("CUSTOMER");
  app.add_option("--species", asked->ask.species, "only this species")->type_name("SPECIES");
  app.add_option("--site", asked->ask.site, "only what was sawn there")->type_name("SITE");
  app.add_option("--rule", asked->ask.rule, "scale the logs again under this rule; what was posted stays")
      ->type_name("RULE");
  app.add_option("--reports", asked->own_folder, "a folder with reports of your own (or KERFBOOK_REPORTS)")
      ->type_name("FOLDER");
  app.add_flag("--sql", asked->sql, "print the report's own file instead of running it");
  add_output_options(app, asked->output);
  app.footer(
      "  kerfbook -b mill.book report day\n"
      "  kerfbook -b mill.book report production --period \"this week\"\n"
      "  kerfbook -b mill.book report tally --job TER --period 2026-w19 -o ter-week.xlsx");
  app.callback([asked, &session] { session.deed = [asked, &session] { answer(*asked, session); }; });
}

}  // namespace kerfbook::command
