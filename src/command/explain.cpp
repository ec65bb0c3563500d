// explain.cpp -- `kerfbook explain JOB SIZExLENGTH`: which price holds for a piece, and why that one.
#include <CLI/CLI.hpp>
#include <ostream>

#include "base/error.h"
#include "base/text.h"
#include "billing/office.h"
#include "billing/price.h"
#include "command/commands.h"
#include "command/period.h"

namespace kerfbook::command {
namespace {

struct Asked {
  std::string job;
  std::string piece;
  std::string species;
  std::string grade;
  std::string day;
  bool sale = false;
};

void answer(const Asked& asked, const Session& session) {
  const book::Book book = session.open_book(true);
  const bool metric = book.mill().units == measure::System::metric;
  const auto piece = measure::read_piece(asked.piece, metric);
  if (!piece) throw WrongUsage(piece.slip().what + "; " + piece.slip().instead);
  const billing::Terms terms = billing::terms_of(book.mill());
  const billing::JobTerms job = billing::job_terms(book.mill(), asked.job);
  billing::Question question{job.job,
                             job.customer,
                             asked.species,
                             asked.grade,
                             piece->size,
                             piece->length,
                             asked.day.empty() ? session.today() : read_bound(asked.day, "--day")};
  const billing::Agreement* agreement = billing::find_agreement(terms, job.job);
  if (agreement != nullptr && agreement->agreed) {
    question.day = *agreement->agreed;
    session.out() << "job " << job.job << " keeps the prices of " << write_day(question.day)
                  << ", when it was agreed\n";
  }
  for (const std::string& line : billing::explain_price(terms, question, asked.sale))
    session.out() << line << "\n";
}

}  // namespace

void add_explain(CLI::App& app, Session& session) {
  auto asked = std::make_shared<Asked>();
  app.add_option("JOB", asked->job, "for which job; own with --sale")->required();
  app.add_option("PIECE", asked->piece, "as 4x6x16")->required();
  app.add_option("--species", asked->species, "of this species")->type_name("SPECIES");
  app.add_option("--grade", asked->grade, "of this grade")->type_name("GRADE");
  app.add_option("--day", asked->day, "sawn on this day (today)")->type_name("DAY");
  app.add_flag("--sale", asked->sale, "the price of own lumber sold");
  app.footer("  kerfbook -b mill.book explain TER 4x6x16 --species DF");
  app.callback([asked, &session] { session.deed = [asked, &session] { answer(*asked, session); }; });
}

}  // namespace kerfbook::command
