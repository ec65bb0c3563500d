// load.cpp -- `kerfbook load JOB [BUNDLE...]`: a load slip to be signed by who takes the lumber; or one taken back.
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
  billing::LoadAsk ask;
  std::int64_t back = 0;
  std::string why;
  Output output;
};

void take_back(const Asked& asked, const Session& session) {
  if (!asked.ask.job.empty())
    throw WrongUsage("give a job to load, or --take-back with the number of a slip; not both");
  Answer out(asked.output, session);
  book::Book book = session.open_book(false);
  const billing::Paper paper = billing::take_back_load(book, asked.back, asked.why, session.today());
  out.give_posted(paper.document,
                  "load slip " + std::to_string(asked.back) + " is taken back, its lumber lies here again",
                  "paper " + std::string(billing::word_of(paper.kind)) + " " + std::to_string(paper.number));
}

void answer(const Asked& asked, const Session& session) {
  if (asked.back != 0) return take_back(asked, session);
  if (asked.ask.job.empty())
    throw WrongUsage("say whose lumber: a job, or --take-back with the number of a slip");
  Answer out(asked.output, session);
  book::Book book = session.open_book(false);
  const auto [paper, left_out] = billing::load(book, asked.ask, session.today());
  for (const std::string& one : left_out) session.err() << "note: not on the slip: " << one << "\n";
  const std::string number = std::to_string(paper.number);
  out.give_posted(paper.document, "load slip " + number + " issued", "paper load " + number);
}

}  // namespace

void add_load(CLI::App& app, Session& session) {
  auto asked = std::make_shared<Asked>();
  app.add_option("JOB", asked->ask.job, "whose lumber");
  app.add_option("BUNDLE", asked->ask.bundles, "which bundles; without one, all that is the customer's");
  app.add_option("--deliver-to", asked->ask.consignee, "where to, if not the customer's address")
      ->type_name("TEXT");
  app.add_option("--vehicle", asked->ask.vehicle, "what carries it")->type_name("TEXT");
  app.add_option("--driver", asked->ask.driver, "who drives")->type_name("NAME");
  app.add_option("--take-back", asked->back, "the load slip with this number did not leave, or came back")
      ->type_name("NUMBER")
      ->check(CLI::PositiveNumber);
  app.add_option("--why", asked->why, "with --take-back: the reason; it is kept and printed")
      ->type_name("TEXT");
  add_output_options(app, asked->output);
  app.footer(
      "  kerfbook -b mill.book load QHH B1 B2 --driver Bess -o load.html\n"
      "  kerfbook -b mill.book load --take-back 1 --why \"the truck broke down\"");
  app.callback([asked, &session] { session.deed = [asked, &session] { answer(*asked, session); }; });
}

}  // namespace kerfbook::command
