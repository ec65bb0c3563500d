// account_documents.cpp -- statement, receivables, receipt, credit note.
#include <algorithm>
#include <array>

#include "base/text.h"
#include "paper/documents.h"
#include "paper/layout.h"
#include "paper/mill_words.h"
#include "paper/paper_words.h"

namespace kerfbook::billing {

namespace {

using render::Cell;
using render::Document;
using render::Table;

constexpr std::array<const char*, 4> kAges{"0 to 30 days", "31 to 60", "61 to 90", "over 90"};
constexpr const char* kAgeWords = "Age is counted in days from the date of the invoice.";

Table ageing_table(const book::Mill& mill, const Ageing& aged) {
  Table table;
  table.name = "ageing";
  table.title = "Open by age";
  for (std::size_t i = 0; i < kAges.size(); ++i)
    table.columns.push_back(money_column("age_" + std::to_string(i), kAges[i], mill));
  table.columns.push_back(money_column("open", "Open", mill));
  render::Row row;
  for (const Money sum : aged.open) row.cells.push_back(money_cell(sum, mill));
  row.cells.push_back(money_cell(aged.sum(), mill));
  table.rows.push_back(std::move(row));
  table.notes.emplace_back(kAgeWords);
  return table;
}

Table open_invoices(const book::Mill& mill, const Ledger& ledger, const std::string& customer, Day today) {
  Table table;
  table.name = "open";
  table.title = "Open invoices";
  table.columns = {text_column("invoice", "Invoice"),
                   day_column("day", "Date"),
                   day_column("due", "Due date"),
                   summed(money_column("total", "Total", mill)),
                   summed(money_column("open", "Open", mill)),
                   count_column("days", "Days since")};
  Money total;
  Money open;
  for (const auto& [number, invoice] : ledger.invoices) {
    if (!same_word(invoice.customer, customer) || invoice.open().minor == 0) continue;
    total = total + invoice.total;
    open = open + invoice.open();
    table.rows.push_back({{invoice.called, invoice.day, invoice.due ? Cell(*invoice.due) : Cell(),
                           money_cell(invoice.total, mill), money_cell(invoice.open(), mill),
                           static_cast<std::int64_t>(today - invoice.day)}});
  }
  if (!table.rows.empty())
    table.totals = {std::monostate{}, {}, {}, money_cell(total, mill), money_cell(open, mill), {}};
  table.when_empty = "nothing is open";
  return table;
}

/// The head of a paper that changes what is open on an invoice.
void add_invoice_head(Document& document, const book::Mill& mill, const Paper& paper, const Paper& invoice) {
  add_head(document, "Date", paper.day, render::ColumnKind::day);
  add_head(document, "Invoice", invoice.called);
  add_head(document, "Invoice date", invoice.day, render::ColumnKind::day);
  if (!paper.job.empty()) add_head(document, "Job", job_words(mill, paper.job));
}

/// One line: why, and how much.
Table table_of_reason(const std::string& name, const std::string& reason, Money amount,
                      const book::Mill& mill) {
  Table table;
  table.name = name;
  table.columns = {text_column("reason", "Reason"), money_column("amount", "Amount", mill)};
  table.rows.push_back({{reason, money_cell(amount, mill)}});
  return table;
}

}  // namespace

Document statement_document(const book::Mill& mill, const Ledger& ledger, const std::string& customer,
                            Day from, Day to) {
  Document paper = letter(mill, "statement", "Statement", to);
  add_party(paper, mill, customer, "Customer");
  add_head(paper, "Date", to, render::ColumnKind::day);
  add_head(paper, "Period", period_words(from, to, mill));
  Money opening;
  Table table;
  table.name = "movements";
  table.columns = {day_column("day", "Date"), text_column("what", "What"),
                   money_column("amount", "Amount", mill), money_column("balance", "Balance", mill)};
  std::vector<Movement> own;
  for (const Movement& one : ledger.movements)
    if (same_word(one.customer, customer) && one.day <= to) own.push_back(one);
  std::stable_sort(own.begin(), own.end(),
                   [](const Movement& a, const Movement& b) { return a.day < b.day; });
  for (const Movement& one : own)
    if (one.day < from) opening = opening + one.amount;
  Money balance = opening;
  table.rows.push_back({{from, std::string("Brought forward"), {}, money_cell(opening, mill)}});
  for (const Movement& one : own) {
    if (one.day < from) continue;
    balance = balance + one.amount;
    table.rows.push_back({{one.day, one.what, money_cell(one.amount, mill), money_cell(balance, mill)}});
  }
  table.sums.push_back({balance.minor < 0   ? "Credit on account"
                        : balance.minor > 0 ? "Balance due"
                                            : "Balance",
                        money_cell(balance.minor < 0 ? Money{} - balance : balance, mill), true});
  paper.tables.push_back(std::move(table));
  paper.tables.push_back(open_invoices(mill, ledger, customer, to));
  paper.tables.push_back(ageing_table(mill, ageing(ledger, customer, to)));
  const Money credit = ledger.credit_of(customer);
  if (credit.minor != 0)
    paper.tables.back().notes.push_back("On account: " + money_words(credit, mill) + ".");
  return paper;
}

Document receivables_document(const book::Mill& mill, const Ledger& ledger, Day today) {
  Document paper;
  paper.name = "receivables";
  paper.title = "Who owes what";
  paper.subtitle = mill.name + "; " + day_words(today, mill);
  paper.meaning = std::string("Open invoices by age. ") + kAgeWords +
                  " Credit on account and deposits held are taken off to give the balance.";
  paper.style = paper_style(mill);
  paper.made_on = write_day(today);
  Table table;
  table.name = "receivables";
  table.columns = {text_column("customer", "Customer"), text_column("name", "Name"),
                   day_column("since", "Since")};
  for (std::size_t i = 0; i < kAges.size(); ++i)
    table.columns.push_back(summed(money_column("age_" + std::to_string(i), kAges[i], mill)));
  table.columns.push_back(summed(money_column("open", "Open", mill)));
  table.columns.push_back(summed(money_column("on_account", "On account", mill)));
  table.columns.push_back(summed(money_column("balance", "Balance", mill)));
  std::array<Money, 7> totals{};
  for (const std::string& customer : ledger.customers()) {
    const Ageing aged = ageing(ledger, customer, today);
    const Money balance = ledger.balance(customer);
    if (aged.sum().minor == 0 && balance.minor == 0) continue;
    std::optional<Day> since;
    for (const auto& [number, invoice] : ledger.invoices)
      if (same_word(invoice.customer, customer) && invoice.open().minor != 0 &&
          (!since || invoice.day < *since))
        since = invoice.day;
    const std::array<Money, 7> sums{aged.open[0], aged.open[1],         aged.open[2], aged.open[3],
                                    aged.sum(),   aged.sum() - balance, balance};
    render::Row row{{customer, customer_words(mill, customer), since ? Cell(*since) : Cell()}};
    for (std::size_t i = 0; i < sums.size(); ++i) {
      row.cells.push_back(money_cell(sums[i], mill));
      totals[i] = totals[i] + sums[i];
    }
    table.rows.push_back(std::move(row));
  }
  if (!table.rows.empty()) {
    table.totals = {std::monostate{}, {}, {}};
    for (const Money sum : totals) table.totals.push_back(money_cell(sum, mill));
  }
  table.when_empty = "nobody owes anything";
  paper.tables.push_back(std::move(table));
  return paper;
}

Document receipt_document(const book::Mill& mill, const Paper& paper, const Ledger& after) {
  const bool refund = paper.kind == PaperKind::refund;
  const std::string number = std::to_string(paper.number);
  Document receipt = letter(mill, "receipt", refund ? "Refund " + number : "Receipt " + number, paper.day);
  add_party(receipt, mill, paper.customer, refund ? "Paid to" : "Received from");
  add_head(receipt, "Date", paper.day, render::ColumnKind::day);
  if (!paper.job.empty()) add_head(receipt, "Job", job_words(mill, paper.job));
  const auto invoice = after.invoices.find(paper.invoice);
  if (invoice != after.invoices.end()) add_head(receipt, "Invoice", invoice->second.called);
  Table table;
  table.name = "receipt";
  table.columns = {text_column("what", "What"), text_column("how", "How"),
                   money_column("amount", "Amount", mill)};
  const bool deposit = !refund && !paper.job.empty() && paper.invoice == 0;
  const std::string what = refund ? "Refund" : deposit ? "Deposit" : "Payment";
  table.rows.push_back(
      {{what + (paper.note.empty() ? "" : ": " + paper.note), paper.method, money_cell(paper.amount, mill)}});
  table.sums.push_back({refund ? "Refunded" : "Received", money_cell(paper.amount, mill), true});
  if (invoice != after.invoices.end())
    table.sums.push_back(
        {"Still open on invoice " + invoice->second.called, money_cell(invoice->second.open(), mill), false});
  const Money balance = after.balance(paper.customer);
  table.sums.push_back({balance.minor < 0   ? "Credit on account"
                        : balance.minor > 0 ? "Balance due"
                                            : "Balance",
                        money_cell(balance.minor < 0 ? Money{} - balance : balance, mill), false});
  receipt.tables.push_back(std::move(table));
  receipt.signatures = {refund ? "Received by" : signer(mill)};
  return receipt;
}

Document credit_document(const book::Mill& mill, const Paper& credit, const Paper& invoice) {
  Document paper = letter(mill, "credit-note", "Credit note " + std::to_string(credit.number), credit.day);
  add_party(paper, mill, credit.customer, "Credit to");
  add_invoice_head(paper, mill, credit, invoice);
  Table table = table_of_reason(
      "credit", (credit.cancels ? "Invoice " + invoice.called + " is cancelled: " : "") + credit.note,
      credit.amount, mill);
  for (const TaxRow& tax : credit.taxes)
    if (tax.excused.empty())
      table.sums.push_back({"of which " + tax.name + " " + percent_words(tax.percent, mill),
                            money_cell(tax.amount, mill), false});
  table.sums.push_back({"Credited", money_cell(credit.amount, mill), true});
  if (credit.cancels)
    table.notes.push_back("Invoice " + invoice.called + " is void. The work on it can be billed again.");
  paper.tables.push_back(std::move(table));
  return paper;
}

Document write_off_document(const book::Mill& mill, const Paper& off, const Paper& invoice, Money open) {
  Document paper = letter(mill, "write-off", "Write-off " + std::to_string(off.number), off.day);
  add_party(paper, mill, off.customer, "Owed by");
  add_invoice_head(paper, mill, off, invoice);
  Table table = table_of_reason("write-off", off.note, off.amount, mill);
  table.sums.push_back({"Written off", money_cell(off.amount, mill), true});
  table.sums.push_back({"Still open on invoice " + invoice.called, money_cell(open, mill), false});
  paper.tables.push_back(std::move(table));
  return paper;
}

}  // namespace kerfbook::billing
