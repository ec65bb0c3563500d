// office.cpp -- issuing papers: each is made from the book as it stands, frozen, and appended in one transaction.
#include "billing/office.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "base/error.h"
#include "base/text.h"
#include "billing/letter.h"
#include "billing/office_work.h"
#include "billing/price.h"
#include "book/store.h"

namespace kerfbook::billing {

namespace {

Draft draft_with(const Terms& terms, const std::vector<Paper>& about, const JobTerms& job,
                 const JobFacts& facts, Day today, bool settlement) {
  return make_draft(terms, job, facts, billed_of(about, job.job, job.customer), waivers_of(about, job.job),
                    today, settlement);
}

/// The same with the mill file and the papers of the book as they are.
Draft draft_with(const book::Book& book, const JobTerms& job, const JobFacts& facts, Day today,
                 bool settlement) {
  return draft_with(terms_of(book.mill()), papers_about(book, job.job, job.customer), job, facts, today,
                    settlement);
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

/// Where the job was billed before: how all of it together differs from one bill, and why.
void add_difference(render::Document& paper, const book::Book& book, const JobTerms& of,
                    const JobFacts& facts, const Draft& draft, Day today) {
  const std::vector<Paper> papers = papers_about(book, of.job, of.customer);
  std::vector<Draft> parts = drafts_of(papers, of.job, of.customer);
  if (parts.empty()) return;
  parts.push_back(draft);
  const Draft at_once = make_draft(terms_of(book.mill()), of, facts, {}, waivers_of(papers, of.job), today);
  for (const Difference& one : explain_difference(at_once, parts))
    paper.foot.push_back("Against one bill for the whole job, " +
                         money_words(one.more.minor < 0 ? Money{} - one.more : one.more, book.mill()) +
                         (one.more.minor < 0 ? " less: " : " more: ") + one.words + ".");
}

}  // namespace

Paper begun(const std::vector<Paper>& papers, PaperKind kind, Day day, std::int64_t first) {
  Paper paper;
  paper.kind = kind;
  paper.day = day;
  paper.number = next_number(papers, kind, first);
  paper.after = static_cast<std::int64_t>(papers.size());
  return paper;
}

void post(book::Book& book, const Paper& paper) {
  book.post_paper(subject_of(paper), write_paper(paper), paper.note);
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
                (near.empty() ? "the jobs are " + join(known, ", ") : "did you mean " + near + "?"));
}

Paper find_paper(const book::Book& book, PaperKind kind, std::int64_t number) {
  Paper wanted;
  wanted.kind = kind;
  wanted.number = number;
  const std::optional<book::Entry> entry = book.current(subject_of(wanted));
  if (entry) return read_paper(entry->body);
  throw Refused("there is no " + subject_of(wanted));
}

Draft draft_job(const book::Book& book, const std::string& job, Day to, Day today) {
  const JobTerms terms = job_terms(book.mill(), known_job(book, job));
  return draft_with(book, terms, job_facts(book, terms.job, to), today, false);
}

Draft draft_sale(const book::Book& book, const std::string& buyer, Day to, Day today) {
  const JobTerms terms = sale_terms(book.mill(), buyer);
  return draft_with(book, terms, sale_facts(book, buyer, to), today, false);
}

render::Document draft_paper(const book::Book& book, const std::string& job, Day to, Day today) {
  const std::vector<Paper> papers = papers_of(book);
  const JobTerms of = job_terms(book.mill(), known_job(book, job));
  const JobFacts facts = job_facts(book, of.job, to);
  const Draft draft = draft_with(book, of, facts, today, false);
  InvoiceHead head = head_of(play(papers), draft, today);
  render::Document paper = invoice_document(book.mill(), terms_of(book.mill()), draft, head);
  if (draft.from && draft.to) add_tally(paper, book, of, facts.facts, *draft.from, *draft.to);
  add_difference(paper, book, of, facts, draft, today);
  return paper;
}

render::Document draft_ticket(const book::Book& book, const std::string& buyer, Day to, Day today) {
  const Draft draft = draft_sale(book, buyer, to, today);
  return sale_document(book.mill(), terms_of(book.mill()), draft,
                       head_of(play(papers_of(book)), draft, today));
}

namespace {

/// Jobs with a sheet that no standing invoice covers as it is now: after many years a few of very many.
std::vector<std::string> jobs_to_look_at(const book::Book& book) {
  std::vector<std::string> jobs;
  book::Store store(book.database());
  store.each(
      "WITH said AS (SELECT job, day, shift FROM run UNION SELECT job, day, shift FROM sawing UNION "
      "SELECT job, day, shift FROM stop UNION SELECT job, day, shift FROM charge UNION "
      "SELECT job, day, shift FROM move UNION SELECT job, day, shift FROM tooth_work), "
      "covered AS (SELECT p.job, s.day, s.shift, s.revision FROM paper_sheet s JOIN paper p ON p.entry = "
      "s.entry "
      "WHERE p.kind = 'invoice' AND NOT EXISTS "
      "(SELECT 1 FROM paper c WHERE c.kind = 'credit' AND c.cancels = 1 AND c.invoice = p.number)) "
      "SELECT DISTINCT job.code FROM said JOIN job ON job.id = said.job "
      "JOIN sheet ON sheet.day = said.day AND sheet.shift = said.shift "
      "WHERE job.owner <> 'own' AND job.code <> 'own' COLLATE NOCASE "
      "AND ((job.code, said.day, said.shift, sheet.revision) NOT IN (SELECT job, day, shift, revision FROM "
      "covered) "
      "OR job.code IN (SELECT job FROM paper WHERE kind = 'credit' AND cancels = 1)) ORDER BY job.code",
      [&](const book::Row& row) { jobs.push_back(row.text(0)); });
  return jobs;
}

Money before_tax(const Draft& draft) {
  Money sum = draft.total;
  for (const TaxRow& tax : draft.taxes)
    if (tax.excused.empty()) sum = sum - tax.amount;
  return sum;
}

}  // namespace

std::vector<Waiting> waiting(const book::Book& book, Day to, Day today) {
  const Terms terms = terms_of(book.mill());
  std::vector<Waiting> all;
  const auto add = [&](const JobTerms& of, const JobFacts& facts) {
    const std::vector<Paper> about = papers_about(book, of.job, of.customer);
    const Draft draft = draft_with(terms, about, of, facts, today, false);
    const Draft shares = draft_with(terms, about, of, facts, today, true);
    if (draft.lines.empty() && draft.problems.empty() && shares.items.empty()) return;
    all.push_back(
        {of.job, of.customer, draft.total, draft.problems.size(), !shares.items.empty(), before_tax(draft)});
  };
  for (const std::string& job : jobs_to_look_at(book))
    add(job_terms(book.mill(), job), job_facts(book, job, to));
  for (const std::string& buyer : buyers(book))
    add(sale_terms(book.mill(), buyer), sale_facts(book, buyer, to));
  return all;
}

Paper issue_invoice(book::Book& book, const std::string& job, Day to, Day today) {
  const Terms terms = terms_of(book.mill());
  const std::vector<Paper> papers = papers_of(book);
  const JobTerms of = job_terms(book.mill(), known_job(book, job));
  const JobFacts facts = job_facts(book, of.job, to);
  const Draft draft = draft_with(book, of, facts, today, false);
  refuse_problems(draft);
  if (draft.lines.empty())
    throw Refused("job " + of.job + ": nothing is left to bill up to " + write_day(to));
  Paper paper = begun(papers, PaperKind::invoice, today, terms.invoice.first);
  take_over(draft, paper);
  const InvoiceHead head = number_it(terms, play(papers), draft, paper, today);
  paper.document = invoice_document(book.mill(), terms, draft, head);
  if (draft.from && draft.to) add_tally(paper.document, book, of, facts.facts, *draft.from, *draft.to);
  post(book, paper);
  return paper;
}

Paper issue_sale(book::Book& book, const std::string& buyer, Day to, Day today, const std::string& method) {
  const Terms terms = terms_of(book.mill());
  const std::vector<Paper> papers = papers_of(book);
  const Draft draft = draft_sale(book, buyer, to, today);
  refuse_problems(draft);
  if (draft.lines.empty())
    throw Refused("nothing sold to '" + buyer + "' up to " + write_day(to) + " is left to bill");
  Paper paper = begun(papers, PaperKind::invoice, today, terms.invoice.first);
  take_over(draft, paper);
  InvoiceHead head = number_it(terms, play(papers), draft, paper, today);
  head.paid = method;
  paper.document = sale_document(book.mill(), terms, draft, head);
  post(book, paper);
  const Money left = paper.amount - paper.settled;
  if (!method.empty() && left.minor > 0) take_payment(book, {"", "", paper.number, left, method, ""}, today);
  return paper;
}

Paper settle_shares(book::Book& book, const std::string& job, Day to, Day today) {
  const Terms terms = terms_of(book.mill());
  const std::vector<Paper> papers = papers_of(book);
  const JobTerms of = job_terms(book.mill(), known_job(book, job));
  const Draft draft = draft_with(book, of, job_facts(book, of.job, to), today, true);
  refuse_problems(draft);
  if (draft.items.empty())
    throw Refused("job " + of.job + ": no lumber is left to divide up to " + write_day(to));
  const ShareTerm* rule = find_share(terms, {of.job, of.customer, "", "", std::nullopt, std::nullopt, today});
  const ShareTerm halves;
  std::map<std::tuple<std::string, std::string, Size, Length>, ShareLine> lines;
  for (const Item& item : draft.items) {
    const Fact& fact = *item.fact;
    if (fact.kind == FactKind::lineal)
      throw Refused("job " + of.job + ": " + item.words +
                    " was counted in lineal feet and cannot be divided by the board");
    ShareLine& line = lines[{fact.species, fact.grade, fact.size, fact.length}];
    line.species = fact.species;
    line.grade = fact.grade;
    line.size = fact.size;
    line.length = fact.length;
    line.pieces += item.count;
    if (item.count != 0) line.bf_each = item.quantity / Rational(item.count);
  }
  std::vector<ShareLine> all;
  for (auto& [key, line] : lines)
    if (line.pieces != 0) all.push_back(line);
  Rational carried;
  for (const Paper& before : papers_about(book, of.job, of.customer))
    if (before.kind == PaperKind::settlement && same_word(before.job, of.job))
      carried = before.split->carried;
  Paper paper = begun(papers, PaperKind::settlement, today);
  take_over(draft, paper);
  paper.amount = {};
  const ShareTerm& used = rule == nullptr ? halves : *rule;
  paper.split = divide(std::move(all), used.rule, used.percent, carried);
  paper.document = settlement_document(book.mill(), paper, used);
  post(book, paper);
  return paper;
}

}  // namespace kerfbook::billing
