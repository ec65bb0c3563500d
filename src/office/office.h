// office.h -- Friday's deeds on a book: drafts, issuing, payments, credits, waivers. Each deed appends one frozen paper
// to the journal, or changes nothing and throws Refused with the reason.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "book/book.h"
#include "office/load_billable.h"
#include "paper/documents.h"
#include "paper/ledger.h"
#include "paper/paper.h"

namespace kerfbook::billing {

/// Every paper of the book, in the order issued: who, when and how much, without lines, items and document. Enough
/// for the ledger, and quick after many years.
std::vector<Paper> papers_of(const book::Book& book);
/// Who owes what at the end of a day: the papers up to that day, played. Statements and lists of debts are made of it.
Ledger ledger_on(const book::Book& book, Day day);
/// A customer's code, by code or by name, or a buyer there are sales or papers of. Refused, with the nearest, for anyone
/// else: a slip of the pen must not open an account.
std::string known_customer(const book::Book& book, const std::string& asked);
/// A job's (or, without one, a buyer's) invoices, divisions, credits and waivers with everything but the document.
std::vector<Paper> papers_about(const book::Book& book, const std::string& job, const std::string& customer);
/// Refused, naming what there is, when it is not there.
Paper find_paper(const book::Book& book, PaperKind kind, std::int64_t number);
/// The number of an invoice named as it is printed ("K-12") or by its number. Refused when there is none.
std::int64_t invoice_called(const book::Book& book, const std::string& called);

/// What the job would be billed now for everything up to `to`. Refused for own work and jobs nobody has heard of.
Draft draft_job(const book::Book& book, const std::string& job, Day to, Day today);
/// The same for own lumber sold to a buyer.
Draft draft_sale(const book::Book& book, const std::string& buyer, Day to, Day today);
render::Document draft_paper(const book::Book& book, const std::string& job, Day to, Day today);
render::Document draft_ticket(const book::Book& book, const std::string& buyer, Day to, Day today);
/// Jobs and buyers with something to bill, to divide, or to look at.
struct Waiting {
  std::string job;  ///< empty for a sale
  std::string customer;
  Money total;
  std::size_t problems = 0;
  std::size_t lines = 0;  ///< of the draft; none: it is only to be looked at
  bool shares = false;    ///< lumber to divide
  Money before_tax;
};
std::vector<Waiting> waiting(const book::Book& book, Day to, Day today);

Paper issue_invoice(book::Book& book, const std::string& job, Day to, Day today);
/// `method` empty: on account; else paid on the spot, and a payment follows the ticket.
Paper issue_sale(book::Book& book, const std::string& buyer, Day to, Day today, const std::string& method);
Paper divide_lumber(book::Book& book, const std::string& job, Day to, Day today);

struct PaymentAsk {
  std::string customer;  ///< or by job or invoice
  std::string job;       ///< a deposit
  std::int64_t invoice = 0;
  Money amount;
  std::string method;  ///< "cash", "check 1204"
  std::string note;
  bool again = false;  ///< one more like the one posted just before, and no slip
};
/// Refused, naming the paper, when the same was posted less than a minute before and `again` does not say that this is one
/// more; so are the next three.
Paper take_payment(book::Book& book, const PaymentAsk& ask, Day day);
Paper refund(book::Book& book, const PaymentAsk& ask, Day day);
/// Without a sum the whole invoice is cancelled and its work can be billed anew.
Paper credit_invoice(book::Book& book, std::int64_t invoice, std::optional<Money> amount,
                     const std::string& why, Day day, bool again = false);
/// Without a sum everything still open.
Paper write_off(book::Book& book, std::int64_t invoice, std::optional<Money> amount, const std::string& why,
                Day day, bool again = false);
/// Lets a charge of a sheet (or of the job itself) go before it is billed, or asks for it after all.
Paper waive(book::Book& book, const std::string& job, const Waiver& waiver, Day day);

/// A load slip, and what was asked for and is not on it, a sentence each.
struct Loading {
  Paper paper;
  std::vector<std::string> left_out;
};
/// Refused, with what stands in the way, when nothing can be loaded.
Loading load(book::Book& book, const LoadAsk& ask, Day day);
/// The lumber lies here again; the slip stays in the journal. Refused when it was taken back before.
Paper take_back_load(book::Book& book, std::int64_t slip, const std::string& why, Day day);
/// The week's tally of a job, by what the book says of it.
render::Document tally_paper(const book::Book& book, const Deal& deal, Day from, Day to, Day today);
/// The paper as it is handed over, and every time it is printed again: its last line names its entry in the journal. On
/// a load slip that was taken back it says so first.
render::Document printed(const book::Book& book, const Paper& paper);

/// Sales of what is not there, a sentence each: of own lumber of which less than nothing is left at the end of a day, and
/// of bundles with nothing in them.
std::vector<std::string> stock_warnings(const book::Book& book, Day to);
/// The same of what was sold on each of these sheets; sheets without any are not in it.
std::map<SheetKey, std::vector<std::string>> stock_warnings(const book::Book& book,
                                                            std::vector<SheetKey> sold_on);

/// For the bookkeeper, each a plain table: invoices (a row an invoice), invoice lines, payments and other movements,
/// taxes by rate. `what` is one of export_names().
render::Document export_document(const book::Book& book, const std::string& what, Day from, Day to,
                                 Day today);
const std::vector<std::string>& export_names();
/// The columns of each export and what they hold, for help.
std::string export_header_words();

}  // namespace kerfbook::billing
