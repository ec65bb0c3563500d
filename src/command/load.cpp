// load.cpp -- `kerfbook load JOB [BUNDLE...]`: a load slip to be signed by who takes the lumber; or one taken back.
#include <ostream>

#include "base/error.h"
#include "base/text.h"
#include "command/commands.h"
#include "command/period.h"
#include "office/office.h"

namespace kerfbook::command {
namespace {

struct LoadSlipAsk {
  billing::LoadAsk ask;
  std::int64_t back = 0;
  std::string why;
  Output output;
};

void take_back(const LoadSlipAsk& asked, const Session& session) {
  if (!asked.ask.job.empty())
    throw WrongUsage("give a job to load, or --take-back with the number of a slip; not both");
  Answer out(asked.output, session);
  book::Book book = session.open_book(false);
  const billing::Paper paper = billing::take_back_load(book, asked.back, asked.why, session.today());
  out.give_posted(book, paper,
                  "load slip " + std::to_string(asked.back) + " is taken back, its lumber lies here again",
                  "paper " + std::string(billing::word_of(paper.kind)) + " " + std::to_string(paper.number));
}

void answer(const LoadSlipAsk& asked, const Session& session) {
  if (asked.back != 0) return take_back(asked, session);
  if (asked.ask.job.empty())
    throw WrongUsage("say whose lumber: a job, or --take-back with the number of a slip");
  Answer out(asked.output, session);
  book::Book book = session.open_book(false);
  const auto [paper, left_out] = billing::load(book, asked.ask, session.today());
  for (const std::string& one : left_out) session.err() << "note: not on the slip: " << one << "\n";
  const std::string number = std::to_string(paper.number);
  out.give_posted(book, paper, "load slip " + number + " issued", "paper load " + number);
}

}  // namespace

Form load_form() {
  auto asked = std::make_shared<LoadSlipAsk>();
  return {
      .rows =
          Rows{{"[JOB]", &asked->ask.job, "whose lumber"},
               {"[BUNDLE...]", &asked->ask.bundles, "which bundles; without one, all that is the customer's"},
               {"--deliver-to TEXT", &asked->ask.consignee, "where to, if not the customer's address"},
               {"--vehicle TEXT", &asked->ask.vehicle, "what carries it"},
               {"--driver NAME", &asked->ask.driver, "who drives"},
               {"--take-back NUMBER", &asked->back,
                "the load slip with this number did not leave, or came back"},
               {"--why TEXT", &asked->why, "with --take-back: the reason; it is kept and printed"}} +
          output_rows(asked->output),
      .footer =
          "  kerfbook -b mill.book load QHH B1 B2 --driver Bess -o load.html\n"
          "  kerfbook -b mill.book load --take-back 1 --why \"the truck broke down\"",
      .deed = [asked](const Session& session) { answer(*asked, session); },
      .changes = true};
}

}  // namespace kerfbook::command
