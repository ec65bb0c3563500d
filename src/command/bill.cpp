// bill.cpp -- `kerfbook bill [JOB]`: what waits to be billed, or one draft. Nothing is issued.
#include <ostream>

#include "base/error.h"
#include "book/under.h"
#include "command/commands.h"
#include "command/sums.h"
#include "office/under_no_job.h"

namespace kerfbook::command {
namespace {

struct BillAsk {
  Whose whose;
  Output output;
};

/// As it is to be typed: a buyer of two words stands in quotes.
std::string typed(const std::string& name) {
  return name.find(' ') == std::string::npos ? name : "\"" + name + "\"";
}

/// What is to be typed next. A job on shares may have charges to bill as well.
std::string next_step(const billing::Waiting& one) {
  const std::string name = one.job.empty() ? "--sale " + typed(one.customer) : one.job;
  if (one.problems > 0) return "bill " + name + " (" + std::to_string(one.problems) + " to clear up)";
  if (one.shares) return "divide " + name + (one.lines > 0 ? ", issue " + name : "");
  return one.lines > 0 ? "issue " + name : "bill " + name + " (to look at)";
}

/// What stands under no job and is not let go; what was let go lately below it.
render::Table no_job_table(const book::Book& book, Day to) {
  constexpr int kLately = 31;
  render::Table table;
  table.name = "under_no_job";
  table.title = "Under no job: billed to nobody";
  const auto text = [](const char* name, const char* heading) {
    render::Column one;
    one.name = name;
    one.heading = heading;
    return one;
  };
  table.columns = {text("day", "Sheet"), text("lines", "Lines"), text("what", "What"), text("is", "It is")};
  table.columns[0].kind = render::ColumnKind::day;
  std::vector<std::string> gone;
  for (const billing::UnderNoJob& one : billing::under_no_job(book, to)) {
    const std::string shift = one.shift > 1 ? "shift " + std::to_string(one.shift) + ": " : "";
    if (one.let_go.empty())
      table.rows.push_back({{one.day, book::line_ranges(one.lines), one.what, shift + one.words}});
    else if (to - one.day <= kLately)
      gone.push_back("Let go: " + write_day(one.day) + " " + one.what + " (" + shift + one.words +
                     "): " + one.let_go);
  }
  if (!table.rows.empty())
    table.notes.push_back(
        "Correct the sheet so that each stands under its job's line, or ends in , job CODE; or let it go: "
        "waive no-job DAY WHAT --why \"...\"");
  table.notes.insert(table.notes.end(), gone.begin(), gone.end());
  table.when_empty = "";
  return table;
}

render::Document list(const book::Book& book, Day to, const Session& session) {
  render::Document document;
  document.name = "to-bill";
  document.title = "To bill";
  document.subtitle = book.mill().name + "; up to " + write_day(to);
  document.style = session.style(book.mill());
  document.made_on = write_day(session.today());
  render::Table table;
  table.name = "to_bill";
  const auto column = [&](const char* name, const char* heading, render::ColumnKind kind) {
    render::Column one;
    one.name = name;
    one.heading = heading;
    one.kind = kind;
    one.places = kind == render::ColumnKind::money ? book.mill().currency.places : 0;
    table.columns.push_back(one);
  };
  column("job", "Job", render::ColumnKind::text);
  column("customer", "Customer", render::ColumnKind::text);
  column("total", "Draft total", render::ColumnKind::money);
  column("next", "Next", render::ColumnKind::text);
  for (const billing::Waiting& one : billing::waiting(book, to, session.today())) {
    table.rows.push_back(
        {{one.job, one.customer, Decimal{one.total.minor, book.mill().currency.places}, next_step(one)}});
  }
  table.when_empty = "everything is billed";
  document.tables.push_back(std::move(table));
  render::Table no_job = no_job_table(book, to);
  if (!no_job.rows.empty() || !no_job.notes.empty()) document.tables.push_back(std::move(no_job));
  return document;
}

void answer(const BillAsk& asked, const Session& session) {
  const book::Book book = session.open_book(true);
  const auto& [job, buyer, until] = asked.whose;
  const Day to = day_or_today(until, "--to", session);
  if (!job.empty() && !buyer.empty()) throw WrongUsage("give a job, or --sale BUYER; not both");
  if (!buyer.empty())
    return write_document(billing::draft_ticket(book, buyer, to, session.today()), asked.output, session);
  if (!job.empty())
    return write_document(billing::draft_paper(book, job, to, session.today()), asked.output, session);
  write_document(list(book, to, session), asked.output, session);
}

}  // namespace

Form bill_form() {
  auto asked = std::make_shared<BillAsk>();
  return {.rows = whose_rows(asked->whose, "the job; without it, everything that waits is listed",
                             "own lumber sold to this buyer") +
                  output_rows(asked->output),
          .footer =
              "  kerfbook -b mill.book bill\n"
              "  kerfbook -b mill.book bill TER -o ter-draft.html",
          .deed = [asked](const Session& session) { answer(*asked, session); }};
}

}  // namespace kerfbook::command
