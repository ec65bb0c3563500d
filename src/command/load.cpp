// load.cpp -- `kerfbook load JOB [BUNDLE...]`: a load slip to be signed by who takes the lumber.
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
  Output output;
};

void answer(const Asked& asked, const Session& session) {
  book::Book book = session.open_book(false);
  const billing::Paper paper = billing::load(book, asked.ask, session.today());
  session.err() << "load slip " << paper.number << "; print it again with: paper load " << paper.number
                << "\n";
  write_document(paper.document, asked.output, session);
}

}  // namespace

void add_load(CLI::App& app, Session& session) {
  auto asked = std::make_shared<Asked>();
  app.add_option("JOB", asked->ask.job, "whose lumber")->required();
  app.add_option("BUNDLE", asked->ask.bundles, "which bundles; without one, all of the job");
  app.add_option("--deliver-to", asked->ask.consignee, "where to, if not the customer's address")
      ->type_name("TEXT");
  app.add_option("--vehicle", asked->ask.vehicle, "what carries it")->type_name("TEXT");
  app.add_option("--driver", asked->ask.driver, "who drives")->type_name("NAME");
  add_output_options(app, asked->output);
  app.footer("  kerfbook -b mill.book load QHH B1 B2 --driver Bess -o load.html");
  app.callback([asked, &session] { session.deed = [asked, &session] { answer(*asked, session); }; });
}

}  // namespace kerfbook::command
