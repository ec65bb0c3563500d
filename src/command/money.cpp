#include "command/money.h"

#include <CLI/CLI.hpp>

#include "base/error.h"
#include "command/period.h"

namespace kerfbook::command {

namespace {

struct TakeOffAsk {
  std::string invoice;
  std::string sum;
  std::string why;
  Output output;
};

void answer(const TakeOffAsk& asked, TakeOff deed, const Session& session) {
  Answer out(asked.output, session);
  book::Book book = session.open_book(false);
  std::optional<measure::Money> amount;
  if (!asked.sum.empty()) amount = sum_of(asked.sum, book);
  const billing::Paper paper =
      deed(book, billing::invoice_called(book, asked.invoice), amount, asked.why, session.today());
  const std::string number = std::to_string(paper.number);
  if (paper.kind == billing::PaperKind::credit)
    out.give_posted(paper.document, "credit note " + number + " posted", "paper credit " + number);
  else
    out.give_posted(paper.document, "write-off " + number + " posted", "");
}

}  // namespace

void add_up_to(CLI::App& app, std::string& to, const char* help) {
  app.add_option("--to", to, help)->type_name("DAY");
}

void add_whose(CLI::App& app, Whose& whose, const char* job_help, const char* sale_help) {
  app.add_option("JOB", whose.job, job_help);
  app.add_option("--sale", whose.buyer, sale_help)->type_name("BUYER");
  add_up_to(app, whose.to);
}

Day day_or_today(const std::string& text, const char* option, const Session& session) {
  return text.empty() ? session.today() : read_bound(text, option);
}

measure::Money sum_of(const std::string& text, const book::Book& book) {
  const auto sum = measure::read_money(text, book.mill().currency.places);
  if (!sum) throw WrongUsage(sum.slip().what + "; " + sum.slip().instead);
  return *sum;
}

void add_take_off(CLI::App& app, Session& session, TakeOff deed, const char* sum_help, const char* footer) {
  auto asked = std::make_shared<TakeOffAsk>();
  app.add_option("INVOICE", asked->invoice, "its number")->required();
  app.add_option("SUM", asked->sum, sum_help);
  app.add_option("--why", asked->why, "the reason; it is kept and printed")->type_name("TEXT")->required();
  add_output_options(app, asked->output);
  app.footer(footer);
  app.callback(
      [asked, deed, &session] { session.deed = [asked, deed, &session] { answer(*asked, deed, session); }; });
}

}  // namespace kerfbook::command
