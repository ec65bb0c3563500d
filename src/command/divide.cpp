// divide.cpp -- `kerfbook divide JOB`: lumber sawn on shares is divided, to the board.
#include <CLI/CLI.hpp>
#include <ostream>

#include "command/commands.h"
#include "command/money.h"

namespace kerfbook::command {
namespace {

struct Asked {
  std::string job;
  std::string to;
  Output output;
};

void answer(const Asked& asked, const Session& session) {
  Answer out(asked.output, session);
  book::Book book = session.open_book(false);
  const Day to = day_or_today(asked.to, "--to", session);
  const billing::Paper paper = billing::divide_lumber(book, asked.job, to, session.today());
  const std::string number = std::to_string(paper.number);
  out.give_posted(paper.document, "division " + number + " issued", "paper division " + number);
}

}  // namespace

void add_divide(CLI::App& app, Session& session) {
  auto asked = std::make_shared<Asked>();
  app.add_option("JOB", asked->job, "the job on shares")->required();
  add_up_to(app, asked->to);
  add_output_options(app, asked->output);
  app.footer("  kerfbook -b mill.book divide MUM -o mumbrey.html");
  app.callback([asked, &session] { session.deed = [asked, &session] { answer(*asked, session); }; });
}

}  // namespace kerfbook::command
