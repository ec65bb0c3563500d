// agreed_terms.h -- under which mill file a job is billed: the one it was agreed under, the last that names it, or the newest.
//
// A job with an [[agreement]] that says the day it was agreed keeps the prices, charges, shares and ways of counting
// and scaling of the mill file it was agreed under: the first that has this agreement with this day, or a later one
// posted the same day or up to the agreed day (a slip mended the same evening counts). To agree anew, change the day.
// A job without one goes by the newest mill file; a job the newest no longer names, by the last that named it.
// Taxes, numbering and the customer's certificate are the newest mill file's always.
#pragma once

#include <map>
#include <memory>
#include <string>
#include <vector>

#include "book/book.h"
#include "price/job_terms.h"

namespace kerfbook::billing {

/// Reads the mill files of a book, each once and only when it is asked for.
class Deals {
 public:
  explicit Deals(const book::Book& book) : book_(book) {}

  /// Throws Refused when the newest mill file's money tables have errors.
  Deal of_job(const std::string& job);
  Deal of_sale(const std::string& buyer);
  /// Hands each paper that was priced by another mill file than the deal's the prices it was made by.
  void add_prices(const Deal& deal, std::vector<Billed>& before);

 private:
  struct Revision {
    int number = 0;
    Day made;  ///< day of posting
    book::Mill mill;
    Terms terms;
    std::shared_ptr<const Terms> joined;  ///< with what is the newest mill file's always
    [[nodiscard]] bool names(const std::string& job) const;
    [[nodiscard]] bool agreed(const std::string& job, Day day) const;
  };
  void read_all();
  Revision& newest();
  std::size_t place_of(const std::string& job);
  std::shared_ptr<const Terms> terms_at(std::size_t place);
  Priced priced_at(std::size_t place, const Deal& deal);
  std::shared_ptr<const book::Mill> mill_with(const std::string& job, const book::Mill& then);

  const book::Book& book_;
  std::vector<Revision> revisions_;  ///< the newest alone until an older one is needed
  bool all_read_ = false;
};

inline Deal deal_of(const book::Book& book, const std::string& job) {
  return Deals(book).of_job(job);
}

}  // namespace kerfbook::billing
