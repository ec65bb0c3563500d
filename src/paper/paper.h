// paper.h -- what billing keeps for ever: an issued invoice, a payment, a credit. Each is one text in the journal,
// JSON with every figure and every word of it, and is never changed after. Putting them into the book is in office.h.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "book/digest.h"
#include "paper/load_slip.h"
#include "price/bill.h"
#include "price/share.h"
#include "render/document.h"

namespace kerfbook::billing {

enum class PaperKind : std::uint8_t {
  invoice,
  division,  ///< of shares
  payment,   ///< its number is the receipt's; with a job and no invoice it is a deposit
  refund,    ///< a refund
  credit,    ///< a credit note on an invoice, in part or (then the work can be billed anew) as a whole
  write_off,
  waiver,     ///< a charge let go before it is billed
  load,       ///< a load slip
  take_back,  ///< of a load slip
};
std::string_view word_of(PaperKind kind);
std::optional<PaperKind> read_paper_kind(std::string_view word);
constexpr int kPaperKinds = 9;

struct Paper {
  PaperKind kind = PaperKind::invoice;
  std::int64_t number = 0;  ///< of its kind, counts from the first without a gap
  std::int64_t after = 0;   ///< how many papers were in the book when this one was made
  Day day;
  std::string job;       ///< may be empty: a sale, a payment on account
  std::string customer;  ///< a customer's code, or the name of a buyer
  Money amount;          ///< invoice: its total; else the sum paid, credited, written off
  std::string note;      ///< reason, or how it was paid

  // invoice and division
  std::string called;  ///< its number as printed, with the prefix
  std::optional<Day> due;
  std::optional<Day> from;
  std::optional<Day> to;
  Money sawing;
  Money minimum;
  int revision = 0;  ///< of the mill file whose prices held; 0 = a book without one
  Money settled;     ///< deposit and credit on account set against it when it was issued
  std::vector<BillLine> lines;
  std::vector<TaxRow> taxes;  ///< credit: what of the credit is tax
  std::vector<SheetRef> sheets;
  std::vector<Item> items;
  std::optional<Split> split;  ///< division

  // others
  std::int64_t invoice = 0;  ///< payment, credit, write-off: the invoice it belongs to; 0 = none
  bool cancels = false;      ///< credit: the whole invoice
  std::string method;        ///< payment, refund
  std::optional<Waiver> waiver;
  std::vector<LoadLine> load;  ///< load slip: what it took away
  std::int64_t slip = 0;       ///< take-back: the load slip it takes back

  render::Document document;  ///< the paper as it was handed over, without the line that names its entry
  // Not in the frozen text, but where it stands.
  book::Mark mark;                 ///< the journal's entry; entry 0 = not posted yet
  std::optional<book::Mark> with;  ///< a ticket paid on the spot: the entry of its payment, when it is issued
};

/// "invoice 12": the subject under which the journal keeps it.
std::string subject_of(const Paper& paper);

/// The frozen text; reading it back gives the same paper. Throws Failed for a text that is not one.
std::string write_paper(const Paper& paper);
Paper read_paper(std::string_view json);

/// Every invoice and division of a job (of a buyer, when `job` is empty), as a draft needs them.
std::vector<Billed> billed_of(const std::vector<Paper>& papers, const std::string& job,
                              const std::string& customer);
/// The lines and sums of those invoices that stand, to be held against one bill for the whole job.
std::vector<Draft> drafts_of(const std::vector<Paper>& papers, const std::string& job,
                             const std::string& customer);
std::vector<Waiver> waivers_of(const std::vector<Paper>& papers, const std::string& job);

}  // namespace kerfbook::billing
