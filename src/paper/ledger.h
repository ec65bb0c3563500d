// ledger.h -- who owes what: the papers played in order. Pure; nothing here is stored.
//
// Where money goes: a payment goes to the invoice it names; a deposit is held for its job; anything else, and whatever
// is left over, is credit on the customer's account. An invoice takes up its job's deposit when it is issued. Credit
// on account pays the customer's open invoices, the oldest first, at once.
#pragma once

#include <array>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "paper/paper.h"

namespace kerfbook::billing {

struct InvoiceState {
  std::int64_t number = 0;
  std::string called;
  Day day;
  std::optional<Day> due;
  std::string job;
  std::string customer;
  Money total;
  Money paid;  ///< payments, deposits and credit on account set against it
  Money credited;
  Money written_off;
  bool cancelled = false;
  [[nodiscard]] Money open() const { return total - paid - credited - written_off; }
};

/// A line of a statement. `amount` > 0 raises what the customer owes.
struct Movement {
  Day day;
  std::string what;
  Money amount;
  std::string customer;
};

struct Ledger {
  std::map<std::int64_t, InvoiceState> invoices;
  std::map<std::string, Money> on_account;       ///< by customer: credit not used yet
  std::map<std::string, Money> deposits;         ///< by job: held for its invoices
  std::map<std::string, std::string> depositor;  ///< job -> customer
  std::vector<Movement> movements;

  /// What the customer owes in all: open invoices less credit and deposits. Negative: he has money to come.
  [[nodiscard]] Money balance(const std::string& customer) const;
  [[nodiscard]] Money credit_of(const std::string& customer) const;
  [[nodiscard]] Money deposit_of(const std::string& job) const;
  [[nodiscard]] std::vector<std::string> customers() const;
};

Ledger play(const std::vector<Paper>& papers);
/// One more paper.
void play(Ledger& ledger, const Paper& paper);

/// What an invoice of that total would take up of the job's deposit and the customer's credit.
Money settled_at_issue(const Ledger& ledger, const std::string& job, const std::string& customer,
                       Money total);

/// Why the paper cannot follow on what is there (a write-off above what is open); empty = it can.
std::string why_not(const Ledger& ledger, const Paper& paper);

/// Open sums by the days since the invoice: 0 to 30, 31 to 60, 61 to 90, over 90.
struct Ageing {
  std::array<Money, 4> open{};
  [[nodiscard]] Money sum() const { return open[0] + open[1] + open[2] + open[3]; }
};
Ageing ageing(const Ledger& ledger, const std::string& customer, Day today);

/// The part of a credit that is tax, in proportion to the invoice's own taxes, each rounded once; a whole credit
/// takes what the part credits before it have left.
std::vector<TaxRow> credited_taxes(const Paper& invoice, const std::vector<Paper>& credits_before,
                                   Money amount);

}  // namespace kerfbook::billing
