// report.cpp -- `kerfbook report NAME`: one question, answered in the form asked for. `kerfbook packet`: the week's set.
#include <algorithm>
#include <ostream>

#include "base/error.h"
#include "base/text.h"
#include "command/ask.h"
#include "command/commands.h"
#include "office/unbilled.h"
#include "render/renderer.h"
#include "report/packet.h"
#include "report/report.h"
#include "report/tally_book.h"
#include "report/views.h"

namespace kerfbook::command {
namespace {

struct ReportAsk {
  std::string name;
  bool sql = false;
  bool views = false;
  AskOptions options;
  Output output;
};

void list_reports(const std::vector<report::ReportFile>& reports, const Session& session) {
  std::size_t widest = 0;
  for (const auto& one : reports) widest = std::max(widest, one.name.size());
  for (const auto& one : reports) {
    session.out() << pad_right(one.name, static_cast<int>(widest) + 2) << one.title
                  << (one.own ? "   (your own)" : "") << "\n";
    if (!one.faults.empty()) session.err() << show_all(one.faults, one.path, one.text);
  }
}

/// One line of the command a built-in report.
std::string examples() {
  std::string out;
  for (const auto& one : report::all_reports("")) out += "  kerfbook report " + one.example + "\n";
  return out;
}

std::vector<std::string> report_names() {
  std::vector<std::string> names;
  for (const auto& one : report::all_reports("")) names.push_back(one.name);
  return names;
}

/// Drafts are worked out for those reports alone that ask for them.
bool speaks_of_bills(const report::ReportFile& report) {
  return report.text.find("unbilled(") != std::string::npos;
}

void answer(const ReportAsk& asked, const Session& session) {
  if (asked.views) {
    const book::Book open = session.open_book(true);
    return write_document(report::views_document(open, session.style(open.mill()), session.today()),
                          asked.output, session);
  }
  const std::string folder = own_reports(asked.options, session);
  if (asked.name.empty()) return list_reports(report::all_reports(folder), session);
  const report::ReportFile wanted = report::report_named(folder, asked.name);
  if (asked.sql) {
    session.out() << wanted.text;
    return;
  }
  const book::Book open = session.open_book(true);
  if (speaks_of_bills(wanted)) billing::register_unbilled(open, session.today());
  const auto ask = asked_for(asked.options, open.mill(), session);
  const auto style = session.style(open.mill());
  const bool as_book = wanted.name == "tally" && chosen_format(asked.output).name == "xlsx";
  const auto document = as_book ? report::tally_book(wanted, open, ask, style, session.today())
                                : report::run_report(wanted, open, ask, style, session.today());
  write_document(document, asked.output, session);
}

void answer_packet(const ReportAsk& asked, const Session& session) {
  const book::Book open = session.open_book(true);
  const book::Still still(open);
  const auto reports = report::all_reports(own_reports(asked.options, session));
  const auto names = report::packet_reports(open.mill());
  const bool bills = std::any_of(names.begin(), names.end(), [&](const std::string& name) {
    return speaks_of_bills(report::find_report(reports, name));
  });
  if (bills) billing::register_unbilled(open, session.today());
  const auto document = report::packet(reports, names, open, asked_for(asked.options, open.mill(), session),
                                       session.style(open.mill()), session.today());
  write_document(with_mark(document, open), asked.output, session);
}

}  // namespace

Form report_form() {
  auto asked = std::make_shared<ReportAsk>();
  return {.rows = Rows{one_of({"[NAME]", &asked->name, "which report; without it they are listed"},
                              report_names)} +
                  ask_rows(asked->options) +
                  Rows{{"--sql", &asked->sql, "print the report's own file instead of running it"},
                       {"--views", &asked->views, "list what a report of your own may read"}} +
                  output_rows(asked->output),
          .footer = "The reports, an example of each (give -b, or set KERFBOOK_BOOK):\n",
          .more = examples,
          .deed = [asked](const Session& session) { answer(*asked, session); }};
}

Form packet_form() {
  auto asked = std::make_shared<ReportAsk>();
  return {.rows = ask_rows(asked->options) + output_rows(asked->output),
          .footer =
              "The set is named in the mill file ([packet] reports = [...]).\n\n"
              "  kerfbook -b mill.book packet --period \"last week\" -o week.xlsx\n"
              "  kerfbook -b mill.book packet --period \"last week\" -o week.html",
          .deed = [asked](const Session& session) { answer_packet(*asked, session); }};
}

}  // namespace kerfbook::command
