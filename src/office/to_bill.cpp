// to_bill.cpp -- everything that waits to be billed, settled or cleared up.
#include <algorithm>
#include <set>

#include "base/text.h"
#include "book/store.h"
#include "office/draft_work.h"
#include "office/office.h"

namespace kerfbook::billing {

namespace {

constexpr std::size_t kAtOnce = 100;  ///< jobs looked at together: their facts are all in memory

/// Sheets that no standing invoice covers as they are now, in a WITH before the question. `covered.who` is the job,
/// or for a sale the buyer.
constexpr std::string_view kCovered =
    "WITH covered AS (SELECT CASE p.job WHEN '' THEN p.customer ELSE p.job END AS who, p.job = '' AS sale, "
    "s.day, s.shift, s.revision FROM paper_sheet s JOIN paper p ON p.entry = s.entry "
    "WHERE p.kind = 'invoice' AND NOT EXISTS "
    "(SELECT 1 FROM paper c WHERE c.kind = 'credit' AND c.cancels = 1 AND c.invoice = p.number)) ";

/// Jobs billed for a sheet that was corrected since, though it may not name them any more.
constexpr std::string_view kCorrected =
    "SELECT who FROM covered JOIN sheet USING (day, shift) WHERE NOT sale AND "
    "(lower(who), day, shift, sheet.revision) NOT IN "
    "(SELECT lower(who), day, shift, revision FROM covered WHERE NOT sale)";

/// Jobs billed for a log by its tag, when the sheet that has its measure was corrected since.
constexpr std::string_view kMeasuredAgain =
    "SELECT j.code FROM sheet s JOIN log source ON source.day = s.day AND source.shift = s.shift "
    "JOIN log l ON l.tag = source.tag AND l.borrowed = 1 AND l.state = 'sawn' "
    "AND (l.day, l.shift) > (source.day, source.shift) "
    "JOIN run r ON r.day = l.day AND r.shift = l.shift AND r.run = l.run JOIN job j ON j.id = r.job "
    "WHERE s.revision > 1 AND source.state <> 'sawn' AND s.entry > (SELECT max(p.entry) FROM paper_sheet c "
    "JOIN paper p ON p.entry = c.entry WHERE p.kind = 'invoice' AND j.code = p.job AND c.day = l.day "
    "AND c.shift = l.shift)";

/// After many years these are a few of very many.
std::vector<std::string> jobs_to_look_at(const book::Book& book) {
  static const std::string kSql =
      std::string(kCovered) +
      ", said AS (SELECT job, day, shift FROM run UNION SELECT job, day, shift FROM sawing UNION "
      "SELECT job, day, shift FROM stop UNION SELECT job, day, shift FROM charge UNION "
      "SELECT job, day, shift FROM move UNION SELECT job, day, shift FROM tooth_work), "
      "looked AS (SELECT job.code FROM said JOIN job ON job.id = said.job "
      "JOIN sheet ON sheet.day = said.day AND sheet.shift = said.shift "
      "WHERE (lower(job.code), said.day, said.shift, sheet.revision) NOT IN "
      "(SELECT lower(who), day, shift, revision FROM covered WHERE NOT sale) "
      "UNION SELECT job FROM paper WHERE kind = 'credit' AND cancels = 1 UNION " +
      std::string(kCorrected) + " UNION " + std::string(kMeasuredAgain) +
      ") SELECT DISTINCT job.code FROM looked JOIN job ON job.code = looked.code "
      "WHERE job.owner <> 'own' AND job.code <> 'own' COLLATE NOCASE ORDER BY job.code";
  std::vector<std::string> jobs;
  book::Store store(book.database());
  store.each(kSql, [&](const book::Row& row) { jobs.push_back(row.text(0)); });
  return jobs;
}

std::vector<std::string> buyers_to_look_at(const book::Book& book) {
  static const std::string kSql =
      std::string(kCovered) +
      ", all_sold AS (SELECT buyer, day, shift, number FROM sold UNION ALL "
      "SELECT buyer, day, shift, number FROM sold_bundle) "
      "SELECT sold.buyer FROM all_sold sold "
      "JOIN sheet ON sheet.day = sold.day AND sheet.shift = sold.shift "
      "WHERE (lower(sold.buyer), sold.day, sold.shift, sheet.revision) NOT IN "
      "(SELECT lower(who), day, shift, revision FROM covered WHERE sale) "
      "OR sold.buyer COLLATE NOCASE IN (SELECT customer FROM paper WHERE kind = 'credit' AND cancels = 1) "
      "ORDER BY sold.day, sold.shift, sold.number";
  std::vector<std::string> buyers;
  std::set<std::string> met;
  book::Store store(book.database());
  store.each(kSql, [&](const book::Row& row) {
    if (met.insert(lower(row.text(0))).second) buyers.push_back(row.text(0));
  });
  return buyers;
}

/// Who has papers at all: most of what waits has none, and none need be looked for.
std::set<std::string> with_papers(const book::Book& book) {
  std::set<std::string> all;
  book::Store store(book.database());
  store.each("SELECT DISTINCT CASE job WHEN '' THEN customer ELSE job END FROM paper",
             [&](const book::Row& row) { all.insert(lower(row.text(0))); });
  return all;
}

bool on_shares(const Terms& terms) {
  return std::any_of(terms.prices.begin(), terms.prices.end(),
                     [](const Price& price) { return price.basis == Basis::shares; });
}

Money before_tax(const Draft& draft) {
  Money sum = draft.total;
  for (const TaxRow& tax : draft.taxes)
    if (tax.excused.empty()) sum = sum - tax.amount;
  return sum;
}

/// Drafts of many jobs, or of many buyers' sales, one after another.
class Waiters {
 public:
  Waiters(const book::Book& book, Day to, Day today)
      : book_(book), to_(to), today_(today), deals_(book), papers_(with_papers(book)) {}

  std::vector<Waiting> all() {
    terms_of(book_.mill());  // a mill file with errors is told also when nothing waits
    each(jobs_to_look_at(book_), [&](const std::vector<std::string>& some) {
      const std::vector<JobFacts> facts = job_facts(book_, some, to_);
      for (std::size_t i = 0; i < some.size(); ++i) add(some[i], deals_.of_job(some[i]), facts[i]);
    });
    each(buyers_to_look_at(book_), [&](const std::vector<std::string>& some) {
      const std::vector<JobFacts> facts = sale_facts(book_, some, to_);
      for (std::size_t i = 0; i < some.size(); ++i) add(some[i], deals_.of_sale(some[i]), facts[i]);
    });
    return std::move(out_);
  }

 private:
  template <class Take>
  static void each(const std::vector<std::string>& all, Take&& take) {
    for (std::size_t i = 0; i < all.size(); i += kAtOnce) {
      const std::size_t end = std::min(all.size(), i + kAtOnce);
      take(std::vector<std::string>(all.begin() + static_cast<std::ptrdiff_t>(i),
                                    all.begin() + static_cast<std::ptrdiff_t>(end)));
    }
  }

  void add(const std::string& who, const Deal& deal, const JobFacts& facts) {
    const JobTerms& of = deal.job;
    std::vector<Paper> about;
    if (papers_.count(lower(who)) != 0) about = papers_about(book_, of.job, of.customer);
    const std::vector<Billed> before = billed_before(deals_, deal, about);
    const Draft draft = draft_with(deal, before, about, facts, today_, false);
    const bool shares =
        on_shares(*deal.terms) && !draft_with(deal, before, about, facts, today_, true).items.empty();
    if (draft.lines.empty() && draft.problems.empty() && draft.remarks.empty() && !shares) return;
    out_.push_back({of.job, of.customer, draft.total, draft.problems.size(), draft.lines.size(), shares,
                    before_tax(draft)});
  }

  const book::Book& book_;
  Day to_;
  Day today_;
  Deals deals_;
  std::set<std::string> papers_;
  std::vector<Waiting> out_;
};

}  // namespace

std::vector<Waiting> waiting(const book::Book& book, Day to, Day today) {
  return Waiters(book, to, today).all();
}

}  // namespace kerfbook::billing
