// paper.cpp -- `kerfbook paper KIND`: papers that change nothing: made afresh, or an issued one printed again.
#include <algorithm>
#include <array>
#include <ostream>

#include "base/error.h"
#include "base/text.h"
#include "command/commands.h"
#include "command/period.h"
#include "office/agreed_terms.h"
#include "office/office.h"

namespace kerfbook::command {
namespace {

struct PaperAsk {
  std::string kind;
  std::string of;
  PeriodOptions days;
  Output output;
};

/// Without days, the week of today as the mill counts weeks.
std::pair<Day, Day> week_of(const Days& days, const book::Mill& mill, const Session& session) {
  const Day today = session.today();
  const Day first = today - (weekday(today) - mill.week_start + 7) % 7;
  return {days.from.value_or(days.to ? *days.to - 6 : first),
          days.to.value_or(days.from ? today : first + 6)};
}

using Made = render::Document (*)(const book::Book&, const std::string&, const Days&, const Session&);

render::Document tally(const book::Book& book, const std::string& job, const Days& days,
                       const Session& session) {
  const auto [from, to] = week_of(days, book.mill(), session);
  return billing::tally_paper(book, billing::deal_of(book, job), from, to, session.today());
}
render::Document statement(const book::Book& book, const std::string& customer, const Days& days,
                           const Session& session) {
  const Day today = session.today();
  const Day to = std::min(days.to.value_or(today), today);  // nobody knows what will stand on a later day
  const Day from = days.from.value_or(to - (parts(to).day - 1));
  if (to < from)
    throw WrongUsage("a statement ends today at the latest, " + write_day(to) + "; it cannot begin on " +
                     write_day(from));
  return billing::statement_document(book.mill(), billing::ledger_on(book, to),
                                     billing::known_customer(book, customer), from, to);
}
render::Document agreement(const book::Book& book, const std::string& job, const Days&,
                           const Session& session) {
  return billing::agreement_document(billing::deal_of(book, job), session.today());
}
render::Document quote(const book::Book& book, const std::string& job, const Days&, const Session& session) {
  return billing::quote_document(book.mill(), billing::terms_of(book.mill()), job, session.today());
}
render::Document sheet(const book::Book& book, const std::string& job, const Days&, const Session& session) {
  return billing::blank_sheet_document(book.mill(), job, session.today());
}

struct Kind {
  std::string_view name;
  Made make;
  bool tells = true;  ///< something that the book holds; a blank sheet does not
};
constexpr std::array<Kind, 5> kMade{{{"tally", tally},
                                     {"statement", statement},
                                     {"agreement", agreement},
                                     {"quote", quote},
                                     {"sheet", sheet, false}}};
constexpr std::array kIssued{billing::PaperKind::invoice, billing::PaperKind::division,
                             billing::PaperKind::payment, billing::PaperKind::refund,
                             billing::PaperKind::credit,  billing::PaperKind::write_off,
                             billing::PaperKind::load,    billing::PaperKind::take_back};

std::vector<std::string> kind_names() {
  std::vector<std::string> names;
  for (const Kind& one : kMade) names.emplace_back(one.name);
  for (const billing::PaperKind one : kIssued) names.emplace_back(billing::word_of(one));
  return names;
}

std::int64_t read_number(const std::string& text) {
  const auto number = read_decimal(text, 0);
  if (!number) throw WrongUsage("an issued paper is named by its number, as 12, not '" + text + "'");
  return number->rounded(0);
}

void answer(const PaperAsk& asked, const Session& session) {
  const book::Book book = session.open_book(true);
  const book::Still still(book);  // what the paper says and the entry it names are of one moment
  const Days days = days_of(asked.days, book.mill(), session);
  for (const Kind& one : kMade)
    if (same_word(one.name, asked.kind)) {
      const render::Document made = one.make(book, asked.of, days, session);
      return write_document(one.tells ? with_mark(made, book) : made, asked.output, session);
    }
  for (const billing::PaperKind one : kIssued)
    if (same_word(billing::word_of(one), asked.kind))
      return write_document(billing::printed(book, billing::find_paper(book, one, read_number(asked.of))),
                            asked.output, session);
  const std::string best = nearest(asked.kind, kind_names());
  throw WrongUsage("no paper is called '" + asked.kind + "'; " +
                   (best.empty() ? "one of " + join(kind_names(), ", ") : "did you mean " + best + "?"));
}

}  // namespace

Form paper_form() {
  auto asked = std::make_shared<PaperAsk>();
  return {.rows = Rows{one_of({"KIND", &asked->kind, join(kind_names(), ", ")}, kind_names),
                       {"OF", &asked->of,
                        "a job, for a statement a customer, or the number of an issued paper"}} +
                  period_rows(asked->days) + output_rows(asked->output),
          .footer =
              "  kerfbook -b mill.book paper tally TER --period 2026-w19 -o ter.html\n"
              "  kerfbook -b mill.book paper statement TER --period 2026-05\n"
              "  kerfbook -b mill.book paper invoice 1 -o invoice-1.xlsx",
          .deed = [asked](const Session& session) { answer(*asked, session); }};
}

}  // namespace kerfbook::command
