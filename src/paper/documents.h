// documents.h -- the papers as documents: what stands on each, in which words. Issuing and freezing is in office.h.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "book/book.h"
#include "paper/ledger.h"
#include "price/bill.h"
#include "price/job_terms.h"
#include "price/share.h"
#include "render/document.h"

namespace kerfbook::billing {

/// What an invoice says besides its draft.
struct InvoiceHead {
  std::string called;  ///< its number; empty = a draft
  Day day;
  std::optional<Day> due;
  Money deposit;     ///< of the job, set against it
  Money credit;      ///< on account, set against it
  std::string paid;  ///< how it was paid on the spot; empty = not
  std::string certificate;
};
/// Lines, sums, the price basis in words, the mill's terms. The tally is added by add_tally.
render::Document invoice_document(const book::Mill& mill, const Terms& terms, const Draft& draft,
                                  const InvoiceHead& head);
/// The same for own lumber sold at the yard: a ticket.
render::Document sale_document(const book::Mill& mill, const Terms& terms, const Draft& draft,
                               const InvoiceHead& head);
/// The job's tally, logs and struck lines, as further pages: of just the sheets the draft bills, and of those that were
/// billed before how they differ.
void add_tally(render::Document& paper, const book::Book& book, const JobTerms& job,
               const std::vector<Fact>& facts, const Draft& draft);

/// The week's tally to be checked against the stack and signed.
render::Document tally_document(const book::Book& book, const Deal& deal, const JobFacts& facts, Day from,
                                Day to, Day today);

/// Movements from `from` to `to`, opening and closing balance, ageing.
render::Document statement_document(const book::Mill& mill, const Ledger& ledger, const std::string& customer,
                                    Day from, Day to);
/// Every customer with something open or on account, with ageing: who owes what, since when.
render::Document receivables_document(const book::Mill& mill, const Ledger& ledger, Day today);

/// For a payment, deposit or refund.
render::Document receipt_document(const book::Mill& mill, const Paper& paper, const Ledger& after);
render::Document credit_document(const book::Mill& mill, const Paper& credit, const Paper& invoice);
/// For the mill's own files: what will not be paid of an invoice, and what stays open of it.
render::Document write_off_document(const book::Mill& mill, const Paper& off, const Paper& invoice,
                                    Money open);
render::Document division_document(const book::Mill& mill, const Paper& division, const ShareTerm& rule);

/// Half a page: what was agreed, with prices and conventions in words.
render::Document agreement_document(const Deal& deal, Day today);
/// What the job's cut list would come to.
render::Document quote_document(const book::Mill& mill, const Terms& terms, const std::string& job,
                                Day today);
/// A blank tally sheet with the rows and columns of the job's cut list (or of the mill's sizes), to be filled in by hand.
render::Document blank_sheet_document(const book::Mill& mill, const std::string& job, Day today);

}  // namespace kerfbook::billing
