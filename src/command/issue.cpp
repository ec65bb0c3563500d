// issue.cpp -- `kerfbook issue JOB`: the draft becomes an invoice, numbered and frozen.
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
  std::string job;
  std::string buyer;
  std::string to;
  std::string paid;
  Output output;
};

void answer(const Asked& asked, const Session& session) {
  if (asked.job.empty() == asked.buyer.empty()) throw WrongUsage("give a job, or --sale BUYER");
  if (!asked.paid.empty() && asked.buyer.empty())
    throw WrongUsage("--paid goes with --sale; take a customer's payment with pay");
  book::Book book = session.open_book(false);
  const Day to = asked.to.empty() ? session.today() : read_bound(asked.to, "--to");
  const billing::Paper paper = asked.buyer.empty()
                                   ? billing::issue_invoice(book, asked.job, to, session.today())
                                   : billing::issue_sale(book, asked.buyer, to, session.today(), asked.paid);
  session.err() << "invoice " << paper.called << " issued; print it again with: paper invoice "
                << paper.number << "\n";
  for (const std::string& warning :
       asked.buyer.empty() ? std::vector<std::string>{} : billing::stock_warnings(book, to))
    session.err() << "warning: " << warning << "\n";
  write_document(paper.document, asked.output, session);
}

}  // namespace

void add_issue(CLI::App& app, Session& session) {
  auto asked = std::make_shared<Asked>();
  app.add_option("JOB", asked->job, "the job to bill");
  app.add_option("--sale", asked->buyer, "own lumber sold to this buyer instead")->type_name("BUYER");
  app.add_option("--paid", asked->paid, "with --sale: paid on the spot, and how")->type_name("HOW");
  app.add_option("--to", asked->to, "only sheets up to this day (today)")->type_name("DAY");
  add_output_options(app, asked->output);
  app.footer(
      "  kerfbook -b mill.book issue TER -o ter.html\n"
      "  kerfbook -b mill.book issue --sale cash --paid cash");
  app.callback([asked, &session] { session.deed = [asked, &session] { answer(*asked, session); }; });
}

}  // namespace kerfbook::command
