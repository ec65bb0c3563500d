// invoice_document.cpp -- an invoice, a draft of one, a sale ticket; and the weekly tally that is attached to them.
#include <algorithm>
#include <set>

#include "base/text.h"
#include "billing/documents.h"
#include "billing/job_facts.h"
#include "billing/letter.h"
#include "billing/price.h"
#include "billing/tally_tables.h"

namespace kerfbook::billing {

namespace {

using render::Cell;
using render::Document;
using render::Table;

std::string percent_words(const Rational& percent) {
  return plain(shortest(percent, 0, 4)) + " %";
}

Cell quantity_cell(const Line& line) {
  if (line.kind == LineKind::minimum) return {};
  const Rational exact = [&] {
    Rational value(line.quantity.units);
    for (int i = 0; i < line.quantity.places; ++i) value = value / Rational(10);
    return value;
  }();
  return shortest(exact, 0, line.quantity.places);
}

std::string described(const Line& line) {
  std::string words = line.description;
  if (line.kind != LineKind::adjustment && line.pieces != 0 && line.unit != "pc")
    words += " (" + std::to_string(line.pieces) + (line.pieces == 1 ? " piece)" : " pieces)");
  return words;
}

Table lines_table(const book::Mill& mill, const Draft& draft) {
  Table table;
  table.name = "lines";
  const bool taxes = !draft.taxes.empty();
  table.columns = {day_column("day", "Date"), text_column("description", "Description"),
                   decimal_column("quantity", "Quantity", "", 2), text_column("unit", "Unit"),
                   money_column("rate", "Rate", mill)};
  if (taxes) table.columns.push_back(text_column("taxed", "Tax"));
  table.columns.push_back(money_column("amount", "Amount", mill));
  for (const Line& line : draft.lines) {
    std::vector<Cell> cells{line.day ? Cell(*line.day) : Cell(std::string()), described(line),
                            quantity_cell(line), line.unit, line.rate ? rate_cell(*line.rate, mill) : Cell()};
    if (taxes) cells.emplace_back(line.taxed ? "yes" : "no");
    cells.push_back(line.kind == LineKind::unpriced ? Cell() : money_cell(line.amount, mill));
    table.rows.push_back({std::move(cells)});
  }
  table.when_empty = "nothing to bill";
  return table;
}

void add_sums(Table& table, const book::Mill& mill, const Draft& draft, const InvoiceHead& head) {
  const auto add = [&](const std::string& label, Money sum, bool strong) {
    table.sums.push_back({label, money_cell(sum, mill), strong});
  };
  if (!draft.taxes.empty()) add("Subtotal", draft.subtotal, false);
  for (const TaxRow& tax : draft.taxes) {
    const std::string name =
        tax.name + " " + percent_words(tax.percent) + " on " + money_words(tax.base, mill);
    if (!tax.excused.empty())
      add(name + (tax.included ? ", taken off: certificate " : ": not charged, certificate ") + tax.excused,
          {tax.added}, false);
    else
      add(name + (tax.included ? ", included above" : ""), tax.amount, false);
  }
  add("Total", draft.total, true);
  if (head.deposit.minor != 0) add("Deposit received", Money{} - head.deposit, false);
  if (head.credit.minor != 0) add("Credit on account", Money{} - head.credit, false);
  const Money due = draft.total - head.deposit - head.credit;
  if (!head.paid.empty()) {
    add("Paid, " + head.paid, Money{} - due, false);
    add("Due", {}, true);
  } else if (head.deposit.minor != 0 || head.credit.minor != 0) {
    add(due.minor < 0 ? "To your credit" : "Due", due.minor < 0 ? Money{} - due : due, true);
  }
}

/// "Sawing: 0.48 a board foot" is on the line; what is said here is how the feet were counted.
void add_basis(Table& table, const Draft& draft) {
  std::vector<std::string> said;
  for (const std::string& counted : draft.counted) {
    std::vector<std::string> titles;
    for (const Line& line : draft.lines)
      if (line.counted == counted && std::find(titles.begin(), titles.end(), line.title) == titles.end())
        titles.push_back(line.title);
    const std::string of = draft.counted.size() > 1 ? " (" + titles.front() + ")" : "";
    table.notes.push_back("Quantities" + of + ": " + counted + ".");
  }
}

/// Terms stand under the sums, on the page that is paid from; not after the tally.
void add_terms(Table& table, const book::Mill& mill, const Terms& terms, const Draft& draft, bool issued) {
  for (const std::string& note : draft.notes) table.notes.push_back(note + ".");
  for (const std::string& problem : draft.problems)
    table.notes.push_back("To be settled before it is issued: " + problem + ".");
  if (!issued)
    for (const std::string& remark : draft.remarks) table.notes.push_back("To look at: " + remark + ".");
  table.notes.insert(table.notes.end(), terms.invoice.say.begin(), terms.invoice.say.end());
  table.notes.insert(table.notes.end(), mill.terms.begin(), mill.terms.end());
  if (!draft.taxes.empty()) table.notes.emplace_back(kTaxCaution);
}

Document begun(const book::Mill& mill, const Draft& draft, const InvoiceHead& head, const std::string& name,
               const std::string& title) {
  Document paper = letter(mill, name, title, head.day);
  add_party(paper, mill, draft.customer, draft.job.empty() ? "Sold to" : "Bill to");
  if (!head.called.empty()) add_head(paper, "Number", head.called);
  add_head(paper, "Date", head.day, render::ColumnKind::day);
  if (head.due && head.paid.empty()) add_head(paper, "Due", *head.due, render::ColumnKind::day);
  if (!draft.job.empty()) add_head(paper, "Job", job_words(mill, draft.job));
  if (draft.from && draft.to) add_head(paper, "Work of", period_words(*draft.from, *draft.to, mill));
  return paper;
}

}  // namespace

Document invoice_document(const book::Mill& mill, const Terms& terms, const Draft& draft,
                          const InvoiceHead& head) {
  const bool issued = !head.called.empty();
  Document paper =
      begun(mill, draft, head, "invoice", issued ? "Invoice " + head.called : "Draft of an invoice");
  if (!issued) paper.lead.emplace_back("Not issued: worked out afresh each time from the day sheets.");
  Table table = lines_table(mill, draft);
  add_sums(table, mill, draft, head);
  add_basis(table, draft);
  add_terms(table, mill, terms, draft, !head.called.empty());
  paper.tables.push_back(std::move(table));
  return paper;
}

Document sale_document(const book::Mill& mill, const Terms& terms, const Draft& draft,
                       const InvoiceHead& head) {
  Document paper = begun(mill, draft, head, "ticket",
                         head.called.empty() ? "Sale ticket, draft" : "Sale ticket " + head.called);
  Table table = lines_table(mill, draft);
  add_sums(table, mill, draft, head);
  add_basis(table, draft);
  add_terms(table, mill, terms, draft, !head.called.empty());
  paper.tables.push_back(std::move(table));
  paper.foot.emplace_back(kGradeCaution);
  return paper;
}

void add_tally(Document& paper, const book::Book& book, const JobTerms& job, const std::vector<Fact>& facts,
               Day from, Day to) {
  const book::Mill& mill = book.mill();
  const std::vector<Fact> some = within(facts, from, to);
  std::vector<Table> tables = size_tables(mill, job.convention, some);
  Table lineal = lineal_table(mill, job.convention, some);
  if (!lineal.rows.empty()) tables.push_back(std::move(lineal));
  if (!tables.empty()) tables.front().new_page = !paper.tables.empty();
  for (Table& table : day_tables(job.convention, some, mill.week_start)) tables.push_back(std::move(table));
  tables.push_back(log_table(book, job, from, to, lumber_bf(some, job.convention)));
  Table struck = struck_table(book, job.job, from, to);
  if (!struck.rows.empty()) tables.push_back(std::move(struck));
  std::move(tables.begin(), tables.end(), std::back_inserter(paper.tables));
  paper.foot.emplace_back(kScaleCaution);
  const bool graded =
      std::any_of(some.begin(), some.end(), [](const Fact& fact) { return !fact.grade.empty(); });
  if (graded) paper.foot.emplace_back(kGradeCaution);
}

Document tally_document(const book::Book& book, const Terms& terms, const std::string& job_code, Day from,
                        Day to, Day today) {
  const book::Mill& mill = book.mill();
  const JobTerms job = job_terms(mill, job_code);
  const JobFacts facts = job_facts(book, job.job, to);
  Document paper = letter(mill, "weekly-tally", "Tally", today);
  add_party(paper, mill, job.customer, "Customer");
  add_head(paper, "Job", job_words(mill, job.job));
  add_head(paper, "Period", period_words(from, to, mill));
  std::set<std::string> sites;
  for (const Fact& fact : within(facts.facts, from, to))
    if (!fact.site.empty()) sites.insert(fact.site);
  if (!sites.empty()) add_head(paper, "Sites", join({sites.begin(), sites.end()}, ", "));
  add_tally(paper, book, job, facts.facts, from, to);

  JobFacts some;
  some.facts = within(facts.facts, from, to);
  some.sheets = facts.sheets;
  const Draft draft = make_draft(terms, job, some, {}, {}, today);
  Table charges;
  charges.name = "charges";
  charges.title = "Charges noted";
  charges.columns = {day_column("day", "Day"), text_column("what", "What"),
                     decimal_column("quantity", "Quantity", "", 2), text_column("unit", "Unit")};
  for (const Line& line : draft.lines)
    if (line.day && !line.sawing)
      charges.rows.push_back({{*line.day, line.description, quantity_cell(line), line.unit}});
  if (!charges.rows.empty()) paper.tables.push_back(std::move(charges));
  paper.foot.insert(paper.foot.begin(), "Board feet: " + in_words(job.convention) + ".");
  paper.signatures = {"Customer", signer(mill)};
  return paper;
}

}  // namespace kerfbook::billing
