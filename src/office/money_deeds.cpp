// money_deeds.cpp -- payments, refunds, credit notes, write-offs and waivers.
#include <algorithm>

#include "base/error.h"
#include "base/text.h"
#include "book/store.h"
#include "office/draft_work.h"
#include "office/office.h"
#include "paper/layout.h"
#include "paper/mill_words.h"

namespace kerfbook::billing {

std::string known_customer(const book::Book& book, const std::string& asked) {
  const book::Customer* known = find_customer(book.mill(), asked);
  if (known != nullptr) return known->code;
  std::vector<std::string> names;
  for (const book::Customer& one : book.mill().customers) {
    if (same_word(one.name, asked)) return one.code;
    names.push_back(one.code);
    if (!one.name.empty()) names.push_back(one.name);
  }
  std::string found;
  book::Store store(book.database());
  store.each("SELECT customer FROM paper UNION SELECT buyer FROM sold UNION SELECT buyer FROM sold_bundle",
             [&](const book::Row& row) {
               names.push_back(row.text(0));
               if (same_word(row.text(0), asked)) found = row.text(0);
             });
  if (!found.empty()) return found;
  const std::string near = nearest(asked, names);
  throw Refused("no customer and no buyer is called '" + asked + "'; " +
                (near.empty() ? "add the customer to the mill file" : "did you mean '" + near + "'?"));
}

namespace {

/// Whose money it is: the invoice's customer, the job's, or the one named.
void set_customer(const book::Book& book, const Ledger& ledger, const PaymentAsk& ask, Paper& paper) {
  paper.amount = ask.amount;
  paper.method = ask.method.empty() ? "cash" : ask.method;
  paper.note = ask.note;
  paper.invoice = ask.invoice;
  const auto invoice = ledger.invoices.find(ask.invoice);
  if (invoice != ledger.invoices.end()) {
    paper.customer = invoice->second.customer;
    paper.job = invoice->second.job;
  } else if (ask.invoice != 0) {
    throw Refused("there is no invoice " + std::to_string(ask.invoice));
  } else if (!ask.job.empty()) {
    const JobTerms job = deal_of(book, known_job(book, ask.job)).job;
    paper.job = job.job;
    paper.customer = job.customer;
  } else {
    if (ask.customer.empty()) throw WrongUsage("say whose money it is: a customer, a job or an invoice");
    paper.customer = known_customer(book, ask.customer);
  }
}

/// When a paper was posted, as the journal keeps it: "2026-05-05 20:14:07".
struct PostedAt {
  Day day;
  std::int64_t seconds = 0;  ///< since the beginning of day 0
};
/// nullopt for a text that is no such time.
std::optional<PostedAt> read_posted_at(std::string_view at) {
  const auto day = read_day(at.substr(0, 10));
  if (!day || at.size() != 19) return std::nullopt;
  const auto two = [&](std::size_t from) { return (at[from] - '0') * 10 + (at[from + 1] - '0'); };
  return PostedAt{*day, std::int64_t{day->number} * 86'400 + two(11) * 3600 + two(14) * 60 + two(17)};
}

/// The word for what was posted, as the command says it.
std::string called(PaperKind kind, std::int64_t number) {
  const std::string word = kind == PaperKind::payment  ? "receipt"
                           : kind == PaperKind::credit ? "credit note"
                                                       : std::string(word_of(kind));
  return word + " " + std::to_string(number);
}

/// A key pressed twice, or a command called up again by mistake: the same paper within a minute is refused. Inside the
/// deed's turn, so that it holds between programs too.
void refuse_twice(const book::Book& book, const Paper& paper, bool again) {
  constexpr std::int64_t kSoon = 60;
  const auto now = read_posted_at(book.now());
  if (again || !now) return;
  const auto same_slip = [&](Day day, const PostedAt& at) {
    const bool both_of_their_day = day == at.day && paper.day == now->day;  // midnight may lie between them
    return (day == paper.day || both_of_their_day) && at.seconds <= now->seconds &&
           now->seconds - at.seconds < kSoon;
  };
  book::Store store(book.database());
  store.each(
      "SELECT number, day, at FROM paper JOIN journal USING (entry) WHERE paper.kind = ? AND amount = ? AND "
      "job = ? "
      "AND customer = ? AND coalesce(invoice, 0) = ? AND cancels = ? AND method = ? AND note = ? ORDER BY "
      "entry DESC",
      [&](const book::Row& row) {
        const auto at = read_posted_at(row.text(2));
        if (!at || !same_slip({static_cast<std::int32_t>(row.number(1))}, *at)) return;
        throw Refused(
            called(paper.kind, row.number(0)) + ", posted at " + row.text(2).substr(11) +
            ", less than a minute ago, is the same; nothing was changed. If this is one more, add --again");
      },
      word_of(paper.kind), paper.amount.minor, paper.job, paper.customer, paper.invoice, paper.cancels,
      paper.method, paper.note);
}

Paper money_paper(book::Book& book, PaperKind kind, const PaymentAsk& ask, Day day) {
  book::Turn turn(book);
  const std::vector<Paper> papers = papers_of(book);
  Ledger ledger = play(papers);
  Paper paper = begun(papers, kind, day);
  set_customer(book, ledger, ask, paper);
  refuse_twice(book, paper, ask.again);
  check(ledger, paper);
  play(ledger, paper);
  paper.document = receipt_document(book.mill(), paper, ledger);
  post(book, paper);
  turn.commit();
  return paper;
}

const Paper& invoice_in(const std::vector<Paper>& papers, std::int64_t number) {
  for (const Paper& paper : papers)
    if (paper.kind == PaperKind::invoice && paper.number == number) return paper;
  throw Refused("there is no invoice " + std::to_string(number));
}

}  // namespace

void need_reason(const std::string& why) {
  if (trim(why).empty()) throw Refused("say why: a reason is kept with it and printed");
}

std::int64_t invoice_called(const book::Book& book, const std::string& called) {
  std::int64_t found = 0;
  for (const Paper& paper : papers_of(book)) {
    if (paper.kind != PaperKind::invoice) continue;
    if (same_word(paper.called, called)) return paper.number;
    if (std::to_string(paper.number) == called) found = paper.number;
  }
  if (found == 0) throw Refused("there is no invoice " + called);
  return found;
}

Paper take_payment(book::Book& book, const PaymentAsk& ask, Day day) {
  return money_paper(book, PaperKind::payment, ask, day);
}
Paper refund(book::Book& book, const PaymentAsk& ask, Day day) {
  return money_paper(book, PaperKind::refund, ask, day);
}

Paper credit_invoice(book::Book& book, std::int64_t number, std::optional<Money> amount,
                     const std::string& why, Day day, bool again) {
  need_reason(why);
  book::Turn turn(book);
  const std::vector<Paper> papers = papers_of(book);
  const Paper& invoice = invoice_in(papers, number);
  const Ledger ledger = play(papers);
  const InvoiceState& state = ledger.invoices.at(number);
  Paper paper = begun(papers, PaperKind::credit, day);
  paper.invoice = number;
  paper.job = invoice.job;
  paper.customer = invoice.customer;
  paper.cancels = !amount;
  paper.amount = amount.value_or(state.total - state.credited - state.written_off);
  paper.note = why;
  refuse_twice(book, paper, again);
  check(ledger, paper);
  std::vector<Paper> before;
  const std::vector<Paper> about = papers_about(book, invoice.job, invoice.customer);
  for (const Paper& one : about)
    if (one.kind == PaperKind::credit && one.invoice == number) before.push_back(one);
  paper.taxes = credited_taxes(invoice_in(about, number), before, paper.amount);
  paper.document = credit_document(book.mill(), paper, invoice);
  post(book, paper);
  turn.commit();
  return paper;
}

Paper write_off(book::Book& book, std::int64_t number, std::optional<Money> amount, const std::string& why,
                Day day, bool again) {
  need_reason(why);
  book::Turn turn(book);
  const std::vector<Paper> papers = papers_of(book);
  const Paper& invoice = invoice_in(papers, number);
  const Ledger ledger = play(papers);
  Paper paper = begun(papers, PaperKind::write_off, day);
  paper.invoice = number;
  paper.job = invoice.job;
  paper.customer = invoice.customer;
  const Money open = ledger.invoices.at(number).open();
  paper.amount = amount.value_or(open);
  paper.note = why;
  refuse_twice(book, paper, again);
  check(ledger, paper);
  paper.document = write_off_document(book.mill(), paper, invoice, open - paper.amount);
  post(book, paper);
  turn.commit();
  return paper;
}

namespace {

/// "the sheet of 2026-05-05", or the job itself.
std::string words_of_place(const Waiver& waiver) {
  if (waiver.shift == 0) return "the job itself";
  return "the sheet of " + write_day(waiver.day) +
         (waiver.shift > 1 ? " shift " + std::to_string(waiver.shift) : "");
}

void check_called_for(const Work& work, const Waiver& waiver) {
  const Itemised all = itemise(*work.deal.terms, work.deal.job, work.facts.facts, {});
  const bool there = std::any_of(all.items.begin(), all.items.end(), [&](const Item& item) {
    return item.sheet.day == waiver.day && item.sheet.shift == waiver.shift &&
           same_word(item.charge, waiver.charge);
  });
  if (!there)
    throw Refused("job " + work.deal.job.job + ": " + words_of_place(waiver) + " calls for no charge '" +
                  waiver.charge + "'");
}

void check_not_billed(const Work& work, const Waiver& waiver) {
  for (const Billed& paper : work.before)
    for (const SheetRef& sheet : paper.sheets)
      if (!paper.division && !paper.cancelled && sheet.day == waiver.day && sheet.shift == waiver.shift)
        throw Refused(words_of_place(waiver) + " is billed by " + paper.paper +
                      " already; write a credit note instead");
}

}  // namespace

Paper waive(book::Book& book, const std::string& job, const Waiver& waiver, Day day) {
  need_reason(waiver.note);
  book::Turn turn(book);
  const std::vector<Paper> papers = papers_of(book);
  const Work work = work_of_job(book, job, waiver.shift == 0 ? day : waiver.day);
  check_called_for(work, waiver);
  check_not_billed(work, waiver);
  const std::vector<Waiver> before = waivers_of(work.about, work.deal.job.job);
  const bool waived =
      std::any_of(before.begin(), before.end(), [&](const Waiver& one) { return one.same_charge(waiver); });
  if (waived != waiver.back)
    throw Refused("'" + waiver.charge + "' of " + words_of_place(waiver) +
                  (waived ? " is waived already" : " is not waived"));
  Paper paper = begun(papers, PaperKind::waiver, day);
  paper.job = work.deal.job.job;
  paper.customer = work.deal.job.customer;
  paper.note = waiver.note;
  paper.waiver = waiver;
  post(book, paper);
  turn.commit();
  return paper;
}

}  // namespace kerfbook::billing
