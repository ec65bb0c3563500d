// credit.cpp -- `kerfbook credit INVOICE [SUM]`: credit an invoice in part, or without a sum cancel it: its work can then be billed anew.
#include <CLI/CLI.hpp>
#include <ostream>

#include "base/error.h"
#include "base/text.h"
#include "billing/office.h"
#include "command/commands.h"
#include "command/period.h"

namespace kerfbook::command {
namespace {

struct Asked {
  std::int64_t invoice = 0;
  std::string sum;
  std::string why;
  Output output;
};

void answer(const Asked& asked, const Session& session) {
  book::Book book = session.open_book(false);
  std::optional<measure::Money> amount;
  if (!asked.sum.empty()) {
    const auto sum = measure::read_money(asked.sum, book.mill().currency.places);
    if (!sum) throw WrongUsage(sum.slip().what + "; " + sum.slip().instead);
    amount = *sum;
  }
  const billing::Paper paper =
      billing::credit_invoice(book, asked.invoice, amount, asked.why, session.today());
  write_document(paper.document, asked.output, session);
}

}  // namespace

void add_credit(CLI::App& app, Session& session) {
  auto asked = std::make_shared<Asked>();
  app.add_option("INVOICE", asked->invoice, "its number, without the prefix")->required();
  app.add_option("SUM", asked->sum, "how much; without it the whole invoice is cancelled");
  app.add_option("--why", asked->why, "the reason; it is kept and printed")->type_name("TEXT")->required();
  add_output_options(app, asked->output);
  app.footer(
      "  kerfbook -b mill.book credit 2 25.00 --why \"short by two boards\"\n"
      "  kerfbook -b mill.book credit 2 --why \"billed twice\"");
  app.callback([asked, &session] { session.deed = [asked, &session] { answer(*asked, session); }; });
}

}  // namespace kerfbook::command
