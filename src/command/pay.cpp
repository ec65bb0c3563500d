// pay.cpp -- `kerfbook pay SUM`: money that comes in, or a refund.
#include <ostream>

#include "base/error.h"
#include "command/commands.h"
#include "command/sums.h"

namespace kerfbook::command {
namespace {

struct PayAsk {
  std::string sum;
  std::string day;
  std::string invoice;
  bool refund = false;
  billing::PaymentAsk ask;
  Output output;
};

void answer(const PayAsk& asked, const Session& session) {
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
  out.give_posted(book, paper, (asked.refund ? "refund " : "receipt ") + number + " posted",
                  (asked.refund ? "paper refund " : "paper payment ") + number);
}

}  // namespace

Form pay_form() {
  auto asked = std::make_shared<PayAsk>();
  return {
      .rows = Rows{{"SUM", &asked->sum, "how much, as 1482.31"},
                   {"--invoice NUMBER", &asked->invoice, "for this invoice"},
                   {"--job JOB", &asked->ask.job, "a deposit held for this job's invoices"},
                   {"--customer CUSTOMER", &asked->ask.customer, "for this customer's oldest open invoices"},
                   {"--by HOW", &asked->ask.method, "how it was paid (cash)"},
                   {"--note TEXT", &asked->ask.note, "what else is to be kept with it"},
                   {"--day DAY", &asked->day, "when (today)"},
                   {"--refund", &asked->refund, "a refund: of a deposit, or of credit on account"},
                   again_row(asked->ask.again)} +
              output_rows(asked->output),
      .footer =
          "  kerfbook -b mill.book pay 400 --job TER --by \"check 88\"\n"
          "  kerfbook -b mill.book pay 1482.31 --invoice 1 -o receipt.html",
      .deed = [asked](const Session& session) { answer(*asked, session); },
      .changes = true};
}

}  // namespace kerfbook::command
