// ledger.cpp -- playing the papers: what each does to invoices, deposits and credit on account.
#include "paper/ledger.h"

#include <algorithm>
#include <set>

#include "base/text.h"

namespace kerfbook::billing {

namespace {

Money least(Money a, Money b) {
  return a < b ? a : b;
}

/// Customers and jobs are told apart without regard to the case of letters, as everywhere in the book.
std::string fold(const std::string& word) {
  return lower(word);
}

InvoiceState* find(Ledger& ledger, std::int64_t number) {
  const auto at = ledger.invoices.find(number);
  return at == ledger.invoices.end() ? nullptr : &at->second;
}

/// Credit on account pays what is open, the oldest invoice first.
void spread(Ledger& ledger, const std::string& customer) {
  Money& credit = ledger.on_account[fold(customer)];
  for (auto& [number, invoice] : ledger.invoices) {
    if (credit.minor <= 0) return;
    if (!same_word(invoice.customer, customer) || invoice.open().minor <= 0) continue;
    const Money part = least(credit, invoice.open());
    invoice.paid = invoice.paid + part;
    credit = credit - part;
  }
}

void to_account(Ledger& ledger, const std::string& customer, Money sum) {
  ledger.on_account[fold(customer)] = ledger.on_account[fold(customer)] + sum;
  spread(ledger, customer);
}

/// What is more than paid goes back to the account.
void give_back_surplus(Ledger& ledger, InvoiceState& invoice) {
  if (invoice.open().minor >= 0) return;
  const Money surplus = Money{} - invoice.open();
  invoice.paid = invoice.paid - surplus;
  to_account(ledger, invoice.customer, surplus);
}

void play_invoice(Ledger& ledger, const Paper& paper) {
  InvoiceState invoice;
  invoice.number = paper.number;
  invoice.called = paper.called;
  invoice.day = paper.day;
  invoice.due = paper.due;
  invoice.job = paper.job;
  invoice.customer = paper.customer;
  invoice.total = paper.amount;
  InvoiceState& kept = ledger.invoices[paper.number] = invoice;
  Money& deposit = ledger.deposits[fold(paper.job)];
  if (!paper.job.empty() && kept.open().minor > 0) {
    const Money part = least(deposit, kept.open());
    kept.paid = kept.paid + part;
    deposit = deposit - part;
  }
  give_back_surplus(ledger, kept);  // a bill below nothing is money to come
  spread(ledger, paper.customer);
}

void play_payment(Ledger& ledger, const Paper& paper) {
  if (InvoiceState* invoice = find(ledger, paper.invoice)) {
    invoice->paid = invoice->paid + paper.amount;
    give_back_surplus(ledger, *invoice);
  } else if (!paper.job.empty()) {
    ledger.deposits[fold(paper.job)] = ledger.deposits[fold(paper.job)] + paper.amount;
    ledger.depositor[fold(paper.job)] = paper.customer;
  } else {
    to_account(ledger, paper.customer, paper.amount);
  }
}

void play_refund(Ledger& ledger, const Paper& paper) {
  Money& from =
      paper.job.empty() ? ledger.on_account[fold(paper.customer)] : ledger.deposits[fold(paper.job)];
  from = from - paper.amount;
}

std::string words_of_movement(const Paper& paper) {
  switch (paper.kind) {
    case PaperKind::invoice:
      return "Invoice " + paper.called;
    case PaperKind::payment:
      return (paper.job.empty() || paper.invoice != 0 ? "Payment, " : "Deposit, ") + paper.method;
    case PaperKind::refund:
      return "Refund, " + paper.method;
    case PaperKind::credit:
      return "Credit note " + std::to_string(paper.number) + ": " + paper.note;
    case PaperKind::write_off:
      return "Written off: " + paper.note;
    default:
      return "";
  }
}

}  // namespace

void play(Ledger& ledger, const Paper& paper) {
  Money change;
  switch (paper.kind) {
    case PaperKind::invoice:
      play_invoice(ledger, paper);
      change = paper.amount;
      break;
    case PaperKind::payment:
      play_payment(ledger, paper);
      change = Money{} - paper.amount;
      break;
    case PaperKind::refund:
      play_refund(ledger, paper);
      change = paper.amount;
      break;
    case PaperKind::credit:
      if (InvoiceState* invoice = find(ledger, paper.invoice)) {
        invoice->credited = invoice->credited + paper.amount;
        invoice->cancelled = invoice->cancelled || paper.cancels;
        give_back_surplus(ledger, *invoice);
        spread(ledger, paper.customer);  // an adjustment below nothing that is cancelled is owed again
      }
      change = Money{} - paper.amount;
      break;
    case PaperKind::write_off:
      if (InvoiceState* invoice = find(ledger, paper.invoice))
        invoice->written_off = invoice->written_off + paper.amount;
      change = Money{} - paper.amount;
      break;
    case PaperKind::division:
    case PaperKind::waiver:
    case PaperKind::load:
    case PaperKind::take_back:
      return;
  }
  ledger.movements.push_back({paper.day, words_of_movement(paper), change, paper.customer});
}

Ledger play(const std::vector<Paper>& papers) {
  Ledger ledger;
  for (const Paper& paper : papers) play(ledger, paper);
  return ledger;
}

Money Ledger::credit_of(const std::string& customer) const {
  const auto at = on_account.find(fold(customer));
  return at == on_account.end() ? Money{} : at->second;
}

Money Ledger::deposit_of(const std::string& job) const {
  const auto at = deposits.find(fold(job));
  return job.empty() || at == deposits.end() ? Money{} : at->second;
}

Money Ledger::balance(const std::string& customer) const {
  Money sum = Money{} - credit_of(customer);
  for (const auto& [number, invoice] : invoices)
    if (same_word(invoice.customer, customer)) sum = sum + invoice.open();
  for (const auto& [job, held] : deposits) {
    const auto by = depositor.find(job);
    if (by != depositor.end() && same_word(by->second, customer)) sum = sum - held;
  }
  return sum;
}

std::vector<std::string> Ledger::customers() const {
  std::vector<std::string> all;
  std::set<std::string> met;
  for (const Movement& one : movements)
    if (met.insert(fold(one.customer)).second) all.push_back(one.customer);
  return all;
}

Money settled_at_issue(const Ledger& ledger, const std::string& job, const std::string& customer,
                       Money total) {
  if (total.minor <= 0) return {};
  return least(total, ledger.deposit_of(job) + ledger.credit_of(customer));
}

std::string why_not(const Ledger& ledger, const Paper& paper) {
  const auto at = ledger.invoices.find(paper.invoice);
  const bool known = at != ledger.invoices.end();
  if (paper.invoice != 0 && !known) return "there is no invoice " + std::to_string(paper.invoice);
  const bool money = paper.kind == PaperKind::payment || paper.kind == PaperKind::refund ||
                     paper.kind == PaperKind::write_off || paper.kind == PaperKind::credit;
  const bool nothing =
      paper.kind == PaperKind::credit && paper.cancels;  // an invoice of nothing can be cancelled
  if (known && paper.kind == PaperKind::write_off && at->second.open().minor <= 0)
    return "nothing is open on invoice " + at->second.called;
  if (money && !nothing && paper.amount.minor <= 0) return "the sum must be more than zero";
  switch (paper.kind) {
    case PaperKind::credit:
      if (!known) return "a credit note belongs to an invoice; name it";
      if (at->second.cancelled) return "invoice " + at->second.called + " is cancelled already";
      if (!paper.cancels && at->second.total - at->second.credited - at->second.written_off < paper.amount)
        return "the credit is more than invoice " + at->second.called + " bills";
      return "";
    case PaperKind::write_off:
      if (!known) return "name the invoice to write off";
      if (at->second.open() < paper.amount) return "more than is open on invoice " + at->second.called;
      return "";
    case PaperKind::refund:
      if (paper.job.empty() && ledger.credit_of(paper.customer) < paper.amount)
        return "the customer has less than that on account";
      if (!paper.job.empty() && ledger.deposit_of(paper.job) < paper.amount)
        return "less than that is held for the job";
      return "";
    default:
      return "";
  }
}

Ageing ageing(const Ledger& ledger, const std::string& customer, Day today) {
  Ageing aged;
  for (const auto& [number, invoice] : ledger.invoices) {
    if (!same_word(invoice.customer, customer)) continue;
    const int days = today - invoice.day;
    const std::size_t place = days <= 30 ? 0 : days <= 60 ? 1 : days <= 90 ? 2 : 3;
    aged.open[place] = aged.open[place] + invoice.open();
  }
  return aged;
}

std::vector<TaxRow> credited_taxes(const Paper& invoice, const std::vector<Paper>& credits_before,
                                   Money amount) {
  Money left = invoice.amount;
  for (const Paper& credit : credits_before) left = left - credit.amount;
  std::vector<TaxRow> rows;
  for (const TaxRow& tax : invoice.taxes) {
    TaxRow row = tax;
    for (const Paper& credit : credits_before)
      for (const TaxRow& before : credit.taxes)
        if (before.name == tax.name) {
          row.amount = row.amount - before.amount;
          row.base = row.base - before.base;
        }
    if (amount != left && invoice.amount.minor != 0) {
      const Rational part(amount.minor, invoice.amount.minor);
      row.amount = {(Rational(tax.amount.minor) * part).rounded(0)};
      row.base = {(Rational(tax.base.minor) * part).rounded(0)};
    }
    rows.push_back(std::move(row));
  }
  return rows;
}

}  // namespace kerfbook::billing
