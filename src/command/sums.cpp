#include "command/sums.h"

#include "base/error.h"
#include "command/period.h"

namespace kerfbook::command {

namespace {

struct TakeOffAsk {
  std::string invoice;
  std::string sum;
  std::string why;
  bool again = false;
  Output output;
};

void answer(const TakeOffAsk& asked, TakeOff deed, const Session& session) {
  Answer out(asked.output, session);
  book::Book book = session.open_book(false);
  std::optional<measure::Money> amount;
  if (!asked.sum.empty()) amount = sum_of(asked.sum, book);
  const billing::Paper paper = deed(book, billing::invoice_called(book, asked.invoice), amount, asked.why,
                                    session.today(), asked.again);
  const std::string number = std::to_string(paper.number);
  if (paper.kind == billing::PaperKind::credit)
    out.give_posted(book, paper, "credit note " + number + " posted", "paper credit " + number);
  else
    out.give_posted(book, paper, "write-off " + number + " posted", "paper write-off " + number);
}

}  // namespace

Row up_to_row(std::string& to) {
  return {"--to DAY", &to, "only sheets up to this day (today)"};
}

Rows whose_rows(Whose& whose, const char* job_meaning, const char* sale_meaning) {
  return {
      {"[JOB]", &whose.job, job_meaning}, {"--sale BUYER", &whose.buyer, sale_meaning}, up_to_row(whose.to)};
}

Row again_row(bool& again) {
  return {"--again", &again, "one more, though the same was posted less than a minute ago"};
}

Day day_or_today(const std::string& text, const char* option, const Session& session) {
  return text.empty() ? session.today() : read_bound(text, option);
}

measure::Money sum_of(const std::string& text, const book::Book& book) {
  const auto sum = measure::read_money(text, book.mill().currency.places);
  if (!sum) throw WrongUsage(sum.slip().what + "; " + sum.slip().instead);
  return *sum;
}

Form take_off_form(TakeOff deed, const char* sum_meaning, const char* footer) {
  auto asked = std::make_shared<TakeOffAsk>();
  return {.rows = Rows{{"INVOICE", &asked->invoice, "its number"},
                       {"[SUM]", &asked->sum, sum_meaning},
                       must({"--why TEXT", &asked->why, "the reason; it is kept and printed"}),
                       again_row(asked->again)} +
                  output_rows(asked->output),
          .footer = footer,
          .deed = [asked, deed](const Session& session) { answer(*asked, deed, session); },
          .changes = true};
}

}  // namespace kerfbook::command
