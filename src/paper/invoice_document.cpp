// invoice_document.cpp -- an invoice, a draft of one, a sale ticket; and the weekly tally that is attached to them.
#include <algorithm>
#include <set>

#include "base/text.h"
#include "paper/documents.h"
#include "paper/layout.h"
#include "paper/mill_words.h"
#include "paper/paper_words.h"
#include "paper/tally_tables.h"
#include "price/job_terms.h"
#include "price/price.h"

namespace kerfbook::billing {

namespace {

using render::Cell;
using render::Document;
using render::Table;

/// Volumes keep all their decimals, so that they line up; what is counted or timed has as many as it needs.
Cell quantity_cell(const BillLine& line) {
  if (line.kind == LineKind::minimum) return {};
  if (line.timed) return render::Figure::time(line.quantity.units);
  const bool volume = line.unit.find("m3") != std::string::npos || line.unit.find("bf") != std::string::npos;
  if (volume) return line.quantity;
  return shortest(quantity_of(line), 0, line.quantity.places);
}

std::string described(const BillLine& line, const book::Mill& mill) {
  std::string words = line.description;
  if (line.kind != LineKind::adjustment && line.pieces != 0 && line.unit != "pc")
    words += " (" + number_words({line.pieces, 0}, mill) + (line.pieces == 1 ? " piece)" : " pieces)");
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
  for (const BillLine& line : draft.lines) {
    std::vector<Cell> cells{line.day ? Cell(*line.day) : Cell(std::string()), described(line, mill),
                            quantity_cell(line), unit_words(line.unit, quantity_of(line)),
                            line.rate ? rate_cell(*line.rate, mill) : Cell()};
    if (taxes) cells.emplace_back(line.taxed ? "yes" : "no");
    cells.push_back(line.kind == LineKind::unpriced ? Cell() : money_cell(line.amount, mill));
    table.rows.push_back({std::move(cells)});
  }
  table.when_empty = "nothing to bill";
  return table;
}

/// Taxes that are added stand above the total, those already in the amounts below it: down to the total the sums add up.
class Sums {
 public:
  Sums(Table& table, const book::Mill& mill) : table_(table), mill_(mill) {}

  void add(const std::string& label, Money sum, bool strong = false) {
    table_.sums.push_back({label, money_cell(sum, mill_), strong});
  }
  void taxes(const Draft& draft, bool above_total) {
    for (const TaxRow& tax : draft.taxes)
      if (above_total != (tax.included && tax.excused.empty())) add(words(tax), sum_of(tax));
  }

 private:
  [[nodiscard]] std::string words(const TaxRow& tax) const {
    const std::string name = tax.name + " " + percent_words(tax.percent, mill_) + " on ";
    if (!tax.excused.empty())
      return name + money_words(tax.base, mill_) +
             (tax.included ? ", taken off: certificate " : ": not charged, certificate ") + tax.excused;
    return tax.included ? "of which " + name + money_words(tax.base - tax.amount, mill_)
                        : name + money_words(tax.base, mill_);
  }
  [[nodiscard]] static Money sum_of(const TaxRow& tax) {
    return tax.excused.empty() ? tax.amount : Money{tax.added};
  }

  Table& table_;
  const book::Mill& mill_;
};

void add_sums(Table& table, const book::Mill& mill, const Draft& draft, const InvoiceHead& head) {
  Sums sums(table, mill);
  const bool added = std::any_of(draft.taxes.begin(), draft.taxes.end(),
                                 [](const TaxRow& tax) { return !tax.included || !tax.excused.empty(); });
  if (added) sums.add("Subtotal", draft.subtotal);
  sums.taxes(draft, true);
  sums.add("Total", draft.total, true);
  sums.taxes(draft, false);
  if (head.deposit.minor != 0) sums.add("Deposit received", Money{} - head.deposit);
  if (head.credit.minor != 0) sums.add("Credit on account", Money{} - head.credit);
  const Money due = draft.total - head.deposit - head.credit;
  if (!head.paid.empty()) {
    sums.add("Paid, " + head.paid, Money{} - due);
    sums.add("Balance due", {}, true);
  } else if (head.deposit.minor != 0 || head.credit.minor != 0) {
    sums.add(due.minor < 0 ? "Credit on account" : "Balance due", due.minor < 0 ? Money{} - due : due, true);
  }
}

/// What a quantity that was counted this way is called.
std::string quantity_words(const BillLine& line, const book::Mill& mill) {
  constexpr std::string_view kScale = "net log scale by ";
  if (line.counted.starts_with(kScale))
    return "Log scale: net, by " + rule_words(line.counted.substr(kScale.size()), mill) + ".";
  const bool feet = line.unit == "bf" || line.unit == "MBF";
  return (feet ? "Board feet: " : line.unit == "m3" ? "Cubic metres: " : "Quantities: ") + line.counted + ".";
}

/// The rate is on the line; what is said here is how the quantity came about: once, when all of a kind were counted
/// alike, else for each price.
void add_basis(Table& table, const book::Mill& mill, const Draft& draft) {
  if (std::any_of(draft.lines.begin(), draft.lines.end(), [](const BillLine& line) { return line.timed; }))
    table.notes.emplace_back("Time is billed to the minute.");
  for (const std::string& counted : draft.counted) {
    const auto first = std::find_if(draft.lines.begin(), draft.lines.end(),
                                    [&](const BillLine& line) { return line.counted == counted; });
    if (first == draft.lines.end()) continue;
    const bool others = std::any_of(draft.lines.begin(), draft.lines.end(), [&](const BillLine& line) {
      return line.unit == first->unit && !line.counted.empty() && line.counted != counted;
    });
    table.notes.push_back((others ? first->title + ". " : "") + quantity_words(*first, mill));
  }
}

/// Terms stand under the sums, on the page that is paid from; not after the tally. The caution about taxes is for the
/// mill, which reads the draft.
void add_terms(Table& table, const book::Mill& mill, const Terms& terms, const Draft& draft, bool issued) {
  constexpr std::size_t kMostProblems = 8;
  for (const std::string& note : draft.notes) table.notes.push_back(note + ".");
  for (std::size_t i = 0; i < std::min(draft.problems.size(), kMostProblems); ++i)
    table.notes.push_back("To clear up before it is issued: " + draft.problems[i] + ".");
  if (draft.problems.size() > kMostProblems)
    table.notes.push_back("And " + std::to_string(draft.problems.size() - kMostProblems) +
                          " more like these.");
  table.notes.insert(table.notes.end(), terms.invoice.say.begin(), terms.invoice.say.end());
  table.notes.insert(table.notes.end(), mill.terms.begin(), mill.terms.end());
  if (!issued && !draft.taxes.empty()) table.notes.emplace_back(kTaxCaution);
}

Document begun(const book::Mill& mill, const Draft& draft, const InvoiceHead& head, const std::string& name,
               const std::string& title) {
  Document paper = letter(mill, name, title, head.day);
  const bool sale = draft.job.empty();
  add_party(paper, mill, draft.customer, sale ? "Sold to" : "Bill to", true);
  if (!head.called.empty()) add_head(paper, "Number", head.called);
  add_head(paper, "Date", head.day, render::ColumnKind::day);
  if (head.due && head.paid.empty()) add_head(paper, "Due date", *head.due, render::ColumnKind::day);
  if (!sale) add_head(paper, "Job", job_words(mill, draft.job));
  if (!sale && draft.from && draft.to) add_head(paper, "Work of", period_words(*draft.from, *draft.to, mill));
  return paper;
}

}  // namespace

Document invoice_document(const book::Mill& mill, const Terms& terms, const Draft& draft,
                          const InvoiceHead& head) {
  const bool issued = !head.called.empty();
  Document paper =
      begun(mill, draft, head, "invoice", issued ? "Invoice " + head.called : "Draft of an invoice");
  if (!issued) paper.lead.emplace_back("Draft; changes with the day sheets.");
  Table table = lines_table(mill, draft);
  add_sums(table, mill, draft, head);
  add_basis(table, mill, draft);
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
  add_basis(table, mill, draft);
  add_terms(table, mill, terms, draft, !head.called.empty());
  table.notes.emplace_back(kGradeCaution);
  paper.tables.push_back(std::move(table));
  return paper;
}

namespace {

/// Sizes by lengths, what was counted end to end, and what is said of them.
void add_sizes(Document& paper, const book::Mill& mill, const JobTerms& job, const std::vector<Fact>& facts) {
  std::vector<Table> tables = size_tables(mill, job.convention, facts);
  Table lineal = lineal_table(mill, job.convention, facts);
  if (!lineal.rows.empty()) tables.push_back(std::move(lineal));
  if (tables.empty()) return;
  tables.front().new_page = !paper.tables.empty();
  const bool graded =
      std::any_of(facts.begin(), facts.end(), [](const Fact& fact) { return !fact.grade.empty(); });
  if (graded) tables.back().notes.emplace_back(kGradeCaution);
  std::move(tables.begin(), tables.end(), std::back_inserter(paper.tables));
}

/// What became of the sheets: days and logs.
void add_days(Document& paper, const book::Book& book, const JobTerms& job, const std::vector<Fact>& facts,
              const SheetsSince& sheets) {
  const book::Mill& mill = book.mill();
  for (Table& table : day_tables(mill, job.convention, facts)) paper.tables.push_back(std::move(table));
  paper.tables.push_back(log_table(book, job, sheets, counted_lumber(mill, facts, job.convention)));
}

void add_struck(Document& paper, const book::Book& book, const JobTerms& job, const SheetsSince& sheets) {
  Table struck = struck_table(book, job.job, sheets);
  if (!struck.rows.empty()) paper.tables.push_back(std::move(struck));
}

/// By how much lumber the sheets that were billed before differ from what was billed of them.
Table corrections_table(const book::Mill& mill, const Draft& draft) {
  const LumberUnit unit(mill);
  Table table;
  table.name = "corrections";
  table.title = "Corrected since it was billed";
  table.columns = {day_column("day", "Day"), text_column("what", "What"),
                   summed(count_column("pieces", "Pieces")), summed(unit.column())};
  for (const Item& item : draft.items) {
    const bool feet = item.rate.unit == "bf" || item.rate.unit == "MBF";
    const bool metres = item.rate.unit == "m3" && unit.metric();
    if (draft.corrected.count(key_of(item.sheet)) == 0 || item.role != Role::price) continue;
    if (item.pieces == 0 && !feet) continue;  // time, logs
    const Rational some = feet ? unit.from_bf(item.quantity) : metres ? item.quantity : Rational(0);
    table.rows.push_back({{item.sheet.day, item.words, item.pieces == 0 ? Cell() : Cell(item.pieces),
                           feet || metres ? unit.cell(some) : Cell()}});
  }
  foot(table, mill);
  return table;
}

/// What the sheets noted to be charged, without sums: those stand on the invoice.
Table charges_table(const Draft& draft) {
  Table charges;
  charges.name = "charges";
  charges.title = "Charges noted";
  charges.columns = {day_column("day", "Day"), text_column("what", "What"),
                     decimal_column("quantity", "Quantity", "", 2), text_column("unit", "Unit")};
  for (const BillLine& line : draft.lines)
    if (line.day && !line.sawing)
      charges.rows.push_back(
          {{*line.day, line.description, quantity_cell(line), unit_words(line.unit, quantity_of(line))}});
  return charges;
}

}  // namespace

void add_tally(Document& paper, const book::Book& book, const JobTerms& job, const std::vector<Fact>& facts,
               const Draft& draft) {
  SheetsSince fresh;
  SheetsSince told = draft.corrected;
  for (const SheetRef& sheet : draft.sheets)
    if (sheet.shift != 0 && draft.corrected.count(key_of(sheet)) == 0) fresh.emplace(key_of(sheet), 1);
  told.insert(fresh.begin(), fresh.end());
  const std::vector<Fact> some = of_sheets(facts, fresh);
  add_sizes(paper, book.mill(), job, some);
  if (!fresh.empty()) add_days(paper, book, job, some, fresh);
  Table corrections = corrections_table(book.mill(), draft);
  if (!corrections.rows.empty()) paper.tables.push_back(std::move(corrections));
  add_struck(paper, book, job, told);
}

Document tally_document(const book::Book& book, const Deal& deal, const JobFacts& facts, Day from, Day to,
                        Day today) {
  const book::Mill& mill = *deal.mill;
  const JobTerms& job = deal.job;
  Document paper = letter(mill, "weekly-tally", "Tally", today);
  add_party(paper, mill, job.customer, "Customer");
  add_head(paper, "Job", job_words(mill, job.job));
  add_head(paper, "Period", period_words(from, to, mill));
  SheetsSince sheets;
  for (const auto& [key, sheet] : *facts.sheets)
    if (from <= key.first && key.first <= to) sheets.emplace(key, 1);
  const std::vector<Fact> some = of_sheets(facts.facts, sheets);
  std::set<std::string> sites;
  for (const Fact& fact : some)
    if (!fact.site.empty()) sites.insert(fact.site);
  if (!sites.empty())
    add_head(paper, sites.size() == 1 ? "Site" : "Sites", join({sites.begin(), sites.end()}, ", "));
  add_head(paper, "Date", today, render::ColumnKind::day);
  add_sizes(paper, mill, job, some);
  if (!paper.tables.empty()) {
    auto& notes = paper.tables.back().notes;
    notes.insert(notes.begin(), LumberUnit(mill).how_counted(job.convention));
  }
  for (Table& table : size_tables_by_day(mill, job.convention, some))
    paper.tables.push_back(std::move(table));
  add_days(paper, book, job, some, sheets);
  add_struck(paper, book, job, sheets);

  JobFacts own;
  own.facts = some;
  own.sheets = facts.sheets;
  Table charges = charges_table(make_draft(*deal.terms, job, own, {}, {}, today));
  if (!charges.rows.empty()) paper.tables.push_back(std::move(charges));
  paper.signatures = {"Customer", signer(mill)};
  return paper;
}

}  // namespace kerfbook::billing
