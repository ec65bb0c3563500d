// office.cpp -- issuing papers: each is made from the book as it stands, frozen, and appended in one transaction.
#include "office/office.h"

#include <algorithm>

#include "base/error.h"
#include "base/text.h"
#include "book/store.h"
#include "office/draft_work.h"
#include "paper/layout.h"
#include "paper/mill_words.h"

namespace kerfbook::billing {

namespace {

Day due_day(const Terms& terms, const std::string& job, Day day) {
  const Agreement* agreement = find_agreement(terms, job);
  return day + (agreement != nullptr && agreement->due_days ? *agreement->due_days : terms.invoice.due_days);
}

InvoiceHead head_of(const Ledger& ledger, const Draft& draft, Day today) {
  InvoiceHead head;
  head.day = today;
  if (draft.total.minor <= 0) return head;
  const Money deposit = ledger.deposit_of(draft.job);
  head.deposit = deposit < draft.total ? deposit : draft.total;
  head.credit = settled_at_issue(ledger, draft.job, draft.customer, draft.total) - head.deposit;
  return head;
}

/// Number, due day and what is set against it; the document is the caller's.
InvoiceHead number_it(const Terms& terms, const Ledger& ledger, const Draft& draft, Paper& paper, Day today) {
  InvoiceHead head = head_of(ledger, draft, today);
  paper.called = terms.invoice.prefix + std::to_string(paper.number);
  paper.due = due_day(terms, draft.job, today);
  paper.settled = head.deposit + head.credit;
  head.called = paper.called;
  head.due = paper.due;
  return head;
}

std::int64_t next_number(const std::vector<Paper>& papers, PaperKind kind, std::int64_t first) {
  std::int64_t last = 0;
  for (const Paper& paper : papers)
    if (paper.kind == kind) last = std::max(last, paper.number);
  return last == 0 ? first : last + 1;
}

/// The job as its tally is attached: the logs by the rule they are billed by, so that the list adds up to the line.
JobTerms on_tally(const Deal& deal, const Draft& draft) {
  JobTerms job = deal.job;
  for (const Price& price : deal.terms->prices) {
    const bool scaled = price.basis == Basis::log_scale || price.basis == Basis::log_mbf;
    const bool used = scaled && std::any_of(draft.items.begin(), draft.items.end(), [&](const Item& item) {
                        return item.role == Role::price && item.rate.order == price.line;
                      });
    if (used) job.billed_by = billed_practice(deal.job, price);
  }
  return job;
}

/// Where the job was billed before: how all of it together differs from one bill, and why.
void add_difference(render::Document& paper, const book::Mill& mill, const Work& work, const Draft& draft,
                    Day today) {
  const JobTerms& of = work.deal.job;
  std::vector<Draft> parts = drafts_of(work.about, of.job, of.customer);
  if (parts.empty()) return;
  parts.push_back(draft);
  const Draft at_once =
      make_draft(*work.deal.terms, of, work.facts, {}, waivers_of(work.about, of.job), today);
  for (const Difference& one : explain_difference(at_once, parts))
    paper.foot.push_back("Against one bill for the whole job, " +
                         money_words(one.more.minor < 0 ? Money{} - one.more : one.more, mill) +
                         (one.more.minor < 0 ? " less: " : " more: ") + one.words + ".");
}

}  // namespace

Work work_of_job(const book::Book& book, const std::string& job, Day to) {
  Work work;
  Deals deals(book);
  work.deal = deals.of_job(known_job(book, job));
  work.facts = job_facts(book, work.deal.job.job, to);
  work.about = papers_about(book, work.deal.job.job, work.deal.job.customer);
  work.before = billed_before(deals, work.deal, work.about);
  return work;
}

Work work_of_sale(const book::Book& book, const std::string& buyer, Day to) {
  Work work;
  Deals deals(book);
  work.deal = deals.of_sale(buyer);
  work.facts = sale_facts(book, buyer, to);
  work.about = papers_about(book, "", work.deal.job.customer);
  work.before = billed_before(deals, work.deal, work.about);
  return work;
}

Draft draft_with(const Work& work, Day today, bool division) {
  return draft_with(work.deal, work.before, work.about, work.facts, today, division);
}

void refuse_problems(const Draft& draft) {
  if (draft.problems.empty()) return;
  throw Refused("not issued: " + draft.problems.front() +
                (draft.problems.size() > 1
                     ? " (and " + std::to_string(draft.problems.size() - 1) + " more; see the draft)"
                     : ""));
}

void take_over(const Draft& draft, Paper& paper) {
  paper.job = draft.job;
  paper.customer = draft.customer;
  paper.amount = draft.total;
  paper.from = draft.from;
  paper.to = draft.to;
  paper.sawing = draft.sawing;
  paper.minimum = draft.minimum;
  paper.lines = draft.lines;
  paper.taxes = draft.taxes;
  paper.sheets = draft.sheets;
  paper.items = draft.items;
}

Draft draft_with(const Deal& deal, const std::vector<Billed>& before, const std::vector<Paper>& about,
                 const JobFacts& facts, Day today, bool division) {
  return make_draft(*deal.terms, deal.job, facts, before, waivers_of(about, deal.job.job), today, division);
}

std::vector<Billed> billed_before(Deals& deals, const Deal& deal, const std::vector<Paper>& about) {
  std::vector<Billed> before = billed_of(about, deal.job.job, deal.job.customer);
  deals.add_prices(deal, before);
  return before;
}

Paper begun(const std::vector<Paper>& papers, PaperKind kind, Day day, std::int64_t first) {
  Paper paper;
  paper.kind = kind;
  paper.day = day;
  paper.number = next_number(papers, kind, first);
  paper.after = static_cast<std::int64_t>(papers.size());
  return paper;
}

void post(book::Book& book, Paper& paper) {
  paper.mark = book.post_paper(subject_of(paper), write_paper(paper), paper.note);
}

void check(const Ledger& ledger, const Paper& paper) {
  const std::string no = why_not(ledger, paper);
  if (!no.empty()) throw Refused(std::string(word_of(paper.kind)) + ": " + no + "; nothing was changed");
}

std::string known_job(const book::Book& book, const std::string& job) {
  if (same_word(job, "own")) throw Refused("job own is the mill's own work and is not billed");
  const book::JobEntry* entry = find_job(book.mill(), job);
  if (entry != nullptr && entry->owner == "own")
    throw Refused("job " + entry->code + " is the mill's own work and is not billed");
  if (entry != nullptr) return entry->code;
  std::vector<std::string> known;
  std::string found;
  book::Store store(book.database());
  store.each("SELECT code FROM v_job ORDER BY code", [&](const book::Row& row) {
    known.push_back(row.text(0));
    if (same_word(row.text(0), job)) found = row.text(0);
  });
  if (!found.empty()) return found;
  const std::string near = nearest(job, known);
  throw Refused("no job is called '" + job + "'; " +
                (near.empty() ? "the jobs are " + join(known, ", ") : "did you mean '" + near + "'?"));
}

Paper find_paper(const book::Book& book, PaperKind kind, std::int64_t number) {
  Paper wanted;
  wanted.kind = kind;
  wanted.number = number;
  const std::optional<book::Entry> entry = book.current(subject_of(wanted));
  if (!entry) throw Refused("there is no " + subject_of(wanted));
  Paper paper = read_paper(entry->body);
  paper.mark = {entry->number, entry->digest};
  return paper;
}

Draft draft_job(const book::Book& book, const std::string& job, Day to, Day today) {
  return draft_with(work_of_job(book, job, to), today);
}

Draft draft_sale(const book::Book& book, const std::string& buyer, Day to, Day today) {
  return draft_with(work_of_sale(book, buyer, to), today);
}

render::Document draft_paper(const book::Book& book, const std::string& job, Day to, Day today) {
  const Work work = work_of_job(book, job, to);
  const Draft draft = draft_with(work, today);
  const InvoiceHead head = head_of(play(papers_of(book)), draft, today);
  render::Document paper = invoice_document(*work.deal.mill, *work.deal.terms, draft, head);
  add_tally(paper, book, on_tally(work.deal, draft), work.facts.facts, draft);
  add_difference(paper, *work.deal.mill, work, draft, today);
  return paper;
}

render::Document draft_ticket(const book::Book& book, const std::string& buyer, Day to, Day today) {
  const Work work = work_of_sale(book, buyer, to);
  const Draft draft = draft_with(work, today);
  return sale_document(book.mill(), *work.deal.terms, draft, head_of(play(papers_of(book)), draft, today));
}

Paper issue_invoice(book::Book& book, const std::string& job, Day to, Day today) {
  book::Turn turn(book);
  const Work work = work_of_job(book, job, to);
  const Terms& terms = *work.deal.terms;
  const JobTerms& of = work.deal.job;
  const std::vector<Paper> papers = papers_of(book);
  const Draft draft = draft_with(work, today);
  refuse_problems(draft);
  if (draft.lines.empty())
    throw Refused("job " + of.job + ": nothing is left to bill up to " + write_day(to));
  Paper paper = begun(papers, PaperKind::invoice, today, terms.invoice.first);
  take_over(draft, paper);
  paper.revision = work.deal.revision;
  const InvoiceHead head = number_it(terms, play(papers), draft, paper, today);
  paper.document = invoice_document(*work.deal.mill, terms, draft, head);
  add_tally(paper.document, book, on_tally(work.deal, draft), work.facts.facts, draft);
  post(book, paper);
  turn.commit();
  return paper;
}

Paper issue_sale(book::Book& book, const std::string& buyer, Day to, Day today, const std::string& method) {
  book::Turn turn(book);
  const Work work = work_of_sale(book, buyer, to);
  const Terms& terms = *work.deal.terms;
  const std::vector<Paper> papers = papers_of(book);
  const Draft draft = draft_with(work, today);
  refuse_problems(draft);
  if (draft.lines.empty())
    throw Refused("nothing sold to '" + buyer + "' up to " + write_day(to) + " is left to bill");
  Paper paper = begun(papers, PaperKind::invoice, today, terms.invoice.first);
  take_over(draft, paper);
  paper.revision = work.deal.revision;
  InvoiceHead head = number_it(terms, play(papers), draft, paper, today);
  head.paid = method;
  paper.document = sale_document(book.mill(), terms, draft, head);
  post(book, paper);
  const Money left = paper.amount - paper.settled;
  if (!method.empty() && left.minor > 0)
    paper.with = take_payment(book, {"", "", paper.number, left, method, ""}, today).mark;
  turn.commit();
  return paper;
}

render::Document tally_paper(const book::Book& book, const Deal& deal, Day from, Day to, Day today) {
  return tally_document(book, deal, job_facts(book, deal.job.job, to), from, to, today);
}

}  // namespace kerfbook::billing
