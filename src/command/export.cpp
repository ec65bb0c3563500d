// export.cpp -- `kerfbook export WHAT`: one plain table for the bookkeeper, csv unless asked otherwise.
#include <ostream>

#include "base/error.h"
#include "base/text.h"
#include "command/commands.h"
#include "command/period.h"
#include "office/office.h"

namespace kerfbook::command {
namespace {

struct ExportAsk {
  std::string what;
  PeriodOptions days;
  Output output;
};

void answer(const ExportAsk& asked, const Session& session) {
  const book::Book book = session.open_book(true);
  const Days days = days_of(asked.days, book.mill(), session);
  Output output = asked.output;
  if (output.format.empty() && output.file.empty()) output.format = "csv";
  const Day first = days.from.value_or(make_day(1900, 1, 1));
  write_document(
      billing::export_document(book, asked.what, first, days.to.value_or(session.today()), session.today()),
      output, session);
}

}  // namespace

Form export_form() {
  auto asked = std::make_shared<ExportAsk>();
  return {.rows = Rows{one_of({"WHAT", &asked->what, join(billing::export_names(), ", ")},
                              [] { return billing::export_names(); })} +
                  period_rows(asked->days) + output_rows(asked->output),
          .footer = billing::export_header_words() +
                    "\n\n  kerfbook -b mill.book export invoices --period 2026-05 -o may.csv\n"
                    "  kerfbook -b mill.book export taxes --period 2026",
          .deed = [asked](const Session& session) { answer(*asked, session); }};
}

}  // namespace kerfbook::command
