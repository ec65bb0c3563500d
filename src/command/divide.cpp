// divide.cpp -- `kerfbook divide JOB`: lumber sawn on shares is divided, to the board.
#include <ostream>

#include "command/commands.h"
#include "command/sums.h"

namespace kerfbook::command {
namespace {

struct DivideAsk {
  std::string job;
  std::string to;
  Output output;
};

void answer(const DivideAsk& asked, const Session& session) {
  Answer out(asked.output, session);
  book::Book book = session.open_book(false);
  const Day to = day_or_today(asked.to, "--to", session);
  const billing::Paper paper = billing::divide_lumber(book, asked.job, to, session.today());
  const std::string number = std::to_string(paper.number);
  out.give_posted(book, paper, "division " + number + " issued", "paper division " + number);
}

}  // namespace

Form divide_form() {
  auto asked = std::make_shared<DivideAsk>();
  return {.rows = Rows{{"JOB", &asked->job, "the job on shares"}, up_to_row(asked->to)} +
                  output_rows(asked->output),
          .footer = "  kerfbook -b mill.book divide MUM -o mumbrey.html",
          .deed = [asked](const Session& session) { answer(*asked, session); },
          .changes = true};
}

}  // namespace kerfbook::command
