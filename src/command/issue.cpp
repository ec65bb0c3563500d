// issue.cpp -- `kerfbook issue JOB`: the draft becomes an invoice, numbered and frozen.
#include <ostream>

#include "base/error.h"
#include "command/commands.h"
#include "command/sums.h"

namespace kerfbook::command {
namespace {

struct IssueAsk {
  Whose whose;
  std::string paid;
  Output output;
};

void answer(const IssueAsk& asked, const Session& session) {
  const auto& [job, buyer, until] = asked.whose;
  if (job.empty() == buyer.empty()) throw WrongUsage("give a job, or --sale BUYER");
  if (!asked.paid.empty() && buyer.empty())
    throw WrongUsage("--paid goes with --sale; take a customer's payment with pay");
  Answer out(asked.output, session);
  book::Book book = session.open_book(false);
  const Day to = day_or_today(until, "--to", session);
  const billing::Paper paper = buyer.empty()
                                   ? billing::issue_invoice(book, job, to, session.today())
                                   : billing::issue_sale(book, buyer, to, session.today(), asked.paid);
  for (const std::string& warning :
       buyer.empty() ? std::vector<std::string>{} : billing::stock_warnings(book, to))
    session.err() << "warning: " << warning << "\n";
  out.give_posted(book, paper, "invoice " + paper.called + " issued",
                  "paper invoice " + std::to_string(paper.number));
}

}  // namespace

Form issue_form() {
  auto asked = std::make_shared<IssueAsk>();
  return {.rows = whose_rows(asked->whose, "the job to bill", "own lumber sold to this buyer instead") +
                  Rows{{"--paid HOW", &asked->paid, "with --sale: paid on the spot, and how"}} +
                  output_rows(asked->output),
          .footer =
              "  kerfbook -b mill.book issue TER -o ter.html\n"
              "  kerfbook -b mill.book issue --sale cash --paid cash",
          .deed = [asked](const Session& session) { answer(*asked, session); },
          .changes = true};
}

}  // namespace kerfbook::command
