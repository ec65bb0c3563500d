// waive.cpp -- `kerfbook waive JOB DAY CHARGE`: a charge that a sheet calls for is let go, or work under no job.
#include <ostream>

#include "base/error.h"
#include "base/text.h"
#include "command/commands.h"
#include "command/period.h"
#include "office/office.h"
#include "office/under_no_job.h"

namespace kerfbook::command {
namespace {

struct WaiveAsk {
  std::string job;
  std::string day;
  std::string charge;
  std::string why;
  int shift = 1;
  bool back = false;
};

/// Work that stands under no job on its sheet.
void answer_no_job(book::Book& book, const billing::Waiver& waiver, const Session& session) {
  for (const auto& [words, mark] : billing::let_go(book, waiver, session.today()))
    session.out() << (waiver.back ? "listed again: " : "let go: ") << words << ", of "
                  << write_day(waiver.day) << "; " << book::mark_words(mark) << "\n";
}

void answer(const WaiveAsk& asked, const Session& session) {
  book::Book book = session.open_book(false);
  billing::Waiver waiver{{}, 0, asked.charge, asked.why, asked.back};
  const bool no_job = same_word(asked.job, billing::kNoJob);
  if (no_job || !same_word(asked.day, "job")) {
    waiver.day = read_bound(asked.day, "waive");
    waiver.shift = asked.shift;
  }
  if (no_job) return answer_no_job(book, waiver, session);
  const billing::Paper paper = billing::waive(book, asked.job, waiver, session.today());
  session.out() << (asked.back ? "charged after all: " : "waived: ") << asked.charge
                << (waiver.shift == 0 ? "" : " of " + write_day(waiver.day)) << ", job " << asked.job << "; "
                << book::mark_words(paper.mark) << "\n";
}

}  // namespace

Form waive_form() {
  auto asked = std::make_shared<WaiveAsk>();
  return {
      .rows =
          Rows{{"JOB", &asked->job, "the job; no-job for work that stands under none"},
               {"DAY", &asked->day, "the sheet's day; 'job' for a charge once a job"},
               {"CHARGE", &asked->charge,
                "the charge's name in the mill file, as waiting; or the cause of a stop that has no charge; "
                "under no-job what bill lists there, as sawing, or all"},
               {"--shift N", &asked->shift, "of a second sheet of that day"},
               must({"--why TEXT", &asked->why, "the note; it stands on the invoice"}),
               {"--back", &asked->back, "waived by mistake: charge it after all"}},
      .footer =
          "  kerfbook -b mill.book waive TER 2026-05-05 waiting --why \"the lane was soft\"\n"
          "  kerfbook -b mill.book waive TER job set-up --why \"promised on the telephone\"\n"
          "  kerfbook -b mill.book waive no-job 2026-05-05 sawing --why \"a trial cut\"",
      .deed = [asked](const Session& session) { answer(*asked, session); },
      .changes = true};
}

}  // namespace kerfbook::command
