// explain.cpp -- `kerfbook explain JOB SIZExLENGTH`: which price holds for a piece, a log, an hour, or which charge of a
// name, and why that one.
#include <ostream>

#include "base/error.h"
#include "command/commands.h"
#include "command/sums.h"
#include "office/agreed_terms.h"
#include "price/price.h"
#include "sheet/raw_log.h"

namespace kerfbook::command {
namespace {

struct ExplainAsk {
  std::string job;
  std::string piece;
  std::string log;
  std::string charge;
  std::string species;
  std::string grade;
  std::string day;
  bool time = false;
  bool sale = false;
};

void set_piece(const ExplainAsk& asked, bool metric, billing::Question& question) {
  const auto piece = measure::read_piece(asked.piece, metric);
  if (piece) {
    question.size = piece->size;
    question.length = piece->length;
    return;
  }
  const auto size = measure::read_size(asked.piece, metric);  // counted by its length, it has none of its own
  if (!size) throw WrongUsage(piece.slip().what + "; " + piece.slip().instead);
  question.size = *size;
}

void set_log(const ExplainAsk& asked, bool metric, billing::Question& question) {
  const auto log = scaling::read_log_spec(asked.log, metric);
  if (!log) throw WrongUsage(log.slip().what + "; " + log.slip().instead);
  question.length = log->length;
  question.diameter = book::mean_small_end(*log);
}

/// Whose prices, of which day, and under which mill file; told where it is not the newest.
billing::Deal deal_for(const ExplainAsk& asked, const book::Book& book, const Session& session,
                       billing::Question& question) {
  billing::Deals deals(book);
  billing::Deal deal = asked.sale ? deals.of_sale(asked.job) : deals.of_job(asked.job);
  question.job = deal.job.job;
  question.customer = deal.job.customer;
  question.day = day_or_today(asked.day, "--day", session);
  const billing::Agreement* agreement = find_agreement(*deal.terms, deal.job.job);
  if (agreement != nullptr && agreement->agreed && !asked.sale) {
    question.day = *agreement->agreed;
    session.out() << "job " << deal.job.job << " keeps the prices of " << write_day(question.day)
                  << ", when it was agreed\n";
  }
  if (!deal.newest)
    session.out() << "they are those of the mill file as posted " << deal.posted << " (revision "
                  << deal.revision << "), whose lines are meant here\n";
  return deal;
}

/// A price that fits, but by which nothing of the kind is counted.
std::string not_counted(const billing::Price* price, const ExplainAsk& asked) {
  if (price == nullptr || asked.sale) return "";
  using billing::Basis;
  const bool by_time = price->basis == Basis::hour || price->basis == Basis::day;
  const bool by_log = price->basis == Basis::log_scale || price->basis == Basis::log_mbf ||
                      price->basis == Basis::log || price->basis == Basis::m3_log;
  if (asked.time) return by_time ? "" : "so sawing time is not charged by itself";
  if (!asked.log.empty()) return by_log ? "" : "so logs are not charged by themselves";
  return by_time || by_log ? "so lumber is not charged by itself" : "";
}

void answer(const ExplainAsk& asked, const Session& session) {
  const int said = static_cast<int>(!asked.piece.empty()) + static_cast<int>(!asked.log.empty()) +
                   static_cast<int>(asked.time) + static_cast<int>(!asked.charge.empty());
  if (said != 1)
    throw WrongUsage("say what the price is for: a piece as 4x6x16, --log 15x12, --time, or --charge NAME");
  const book::Book book = session.open_book(true);
  const bool metric = book.mill().units == measure::System::metric;
  billing::Question question;
  question.species = asked.species;
  question.grade = asked.grade;
  if (!asked.piece.empty()) set_piece(asked, metric, question);
  if (!asked.log.empty()) set_log(asked, metric, question);
  const billing::Deal deal = deal_for(asked, book, session, question);
  const std::vector<std::string> lines = asked.charge.empty()
                                             ? explain_price(*deal.terms, question, asked.sale)
                                             : explain_charge(*deal.terms, asked.charge, question);
  for (const std::string& line : lines) {
    session.out() << line << "\n";
    if (&line != &lines.front() || !asked.charge.empty()) continue;
    const std::string but = not_counted(find_price(*deal.terms, question, asked.sale), asked);
    if (!but.empty()) session.out() << but << "\n";
  }
}

}  // namespace

Form explain_form() {
  auto asked = std::make_shared<ExplainAsk>();
  return {.rows = Rows{{"JOB", &asked->job, "for which job; with --sale, for which buyer"},
                       {"[PIECE]", &asked->piece, "as 4x6x16; 1x3 where the length is counted"},
                       {"--log SPEC", &asked->log, "a log, as 15x12"},
                       {"--time", &asked->time, "hours and days of sawing"},
                       {"--charge NAME", &asked->charge, "the charge of this name"},
                       {"--species SPECIES", &asked->species, "of this species"},
                       {"--grade GRADE", &asked->grade, "of this grade"},
                       {"--day DAY", &asked->day, "sawn on this day (today)"},
                       {"--sale", &asked->sale, "the price of own lumber sold"}},
          .footer =
              "  kerfbook -b mill.book explain TER 4x6x16 --species DF\n"
              "  kerfbook -b mill.book explain TER --charge travel\n"
              "  kerfbook -b mill.book explain cash 2x6x16 --species DF --grade No2 --sale",
          .deed = [asked](const Session& session) { answer(*asked, session); }};
}

}  // namespace kerfbook::command
