// job_terms.h -- what the mill file says of a job: whose it is, how it is counted and scaled, and under which prices.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "mill/mill.h"
#include "price/bill.h"

namespace kerfbook::billing {

/// Job, customer, certificate, counting and scaling as the newest mill file has them. A job the mill file does not
/// know is its own customer and counts as the house does.
JobTerms job_terms(const book::Mill& mill, const std::string& job);
/// For a sale: no job, the buyer as customer.
JobTerms sale_terms(const book::Mill& mill, const std::string& buyer);

/// The money tables of the book's mill file. Throws Refused, naming the first problem, when they have errors.
Terms terms_of(const book::Mill& mill);
TermsOptions options_of(const book::Mill& mill);
/// What is wrong with the money tables of a mill file's text: for book::OpenOptions::check_money and for `check`.
std::vector<Diagnostic> check_money(std::string_view mill_toml);

/// The terms that hold for a job or a sale; office/agreed_terms.h finds them.
struct Deal {
  std::shared_ptr<const Terms> terms;
  JobTerms job;
  /// The newest mill file; with a dropped job and its customer put back as they were last known.
  std::shared_ptr<const book::Mill> mill;
  int revision = 0;    ///< of the mill file whose prices hold
  bool newest = true;  ///< that is the newest
  std::string posted;  ///< its day of posting
};

}  // namespace kerfbook::billing
