// pay.cpp -- `kerfbook pay SUM`: money that comes in, or a refund.
#include <CLI/CLI.hpp>
#include <ostream>

#include "base/error.h"
#include "command/commands.h"
#include "command/money.h"

namespace kerfbook::command {
namespace {

struct Asked {
  std::string sum;
  std::string day;
  std::string invoice;
  bool refund = false;
  billing::PaymentAsk ask;
  Output output;
};

void answer(const Asked& asked, const Session& session) {
  Answer out(asked.output, session);
  book::Book book = session.open_book(false);
  billing::PaymentAsk ask = asked.ask;
  ask.amount = sum_of(asked.sum, book);
  if (asked.refund && !asked.invoice.empty())
    throw WrongUsage(
        "a refund is of what a customer has on account (--customer) or of a job's deposit (--job), not of an "
        "invoice; credit the invoice first");
  if (!asked.invoice.empty()) ask.invoice = billing::invoice_called(book, asked.invoice);
  const Day day = day_or_today(asked.day, "--day", session);
  const billing::Paper paper =
      asked.refund ? billing::refund(book, ask, day) : billing::take_payment(book, ask, day);
  const std::string number = std::to_string(paper.number);
  out.give_posted(paper.document, (asked.refund ? "refund " : "receipt ") + number + " posted",
                  (asked.refund ? "paper refund " : "paper payment ") + number);
}

}  // namespace

void add_pay(CLI::App& app, Session& session) {
  auto asked = std::make_shared<Asked>();
  app.add_option("SUM", asked->sum, "how much, as 1482.31")->required();
  app.add_option("--invoice", asked->invoice, "for this invoice")->type_name("NUMBER");
  app.add_option("--job", asked->ask.job, "a deposit held for this job's invoices")->type_name("JOB");
  app.add_option("--customer", asked->ask.customer, "for this customer's oldest open invoices")
      ->type_name("CUSTOMER");
  app.add_option("--by", asked->ask.method, "how it was paid (cash)")->type_name("HOW");
  app.add_option("--note", asked->ask.note, "what else is to be kept with it")->type_name("TEXT");
  app.add_option("--day", asked->day, "when (today)")->type_name("DAY");
  app.add_flag("--refund", asked->refund, "a refund: of a deposit, or of credit on account");
  add_output_options(app, asked->output);
  app.footer(
      "  kerfbook -b mill.book pay 400 --job TER --by \"check 88\"\n"
      "  kerfbook -b mill.book pay 1482.31 --invoice 1 -o receipt.html");
  app.callback([asked, &session] { session.deed = [asked, &session] { answer(*asked, session); }; });
}

}  // namespace kerfbook::command
