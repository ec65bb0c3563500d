// deal.h -- under which mill file a job is billed: the one it was agreed under, the last that names it, or the newest.
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

#include "billing/job_facts.h"

namespace kerfbook::billing {

struct Deal {
  std::shared_ptr<const Terms> terms;
  JobTerms job;
  /// The newest mill file; with a dropped job and its customer put back as they were last known.
  std::shared_ptr<const book::Mill> mill;
  int revision = 0;    ///< of the mill file whose prices hold
  bool newest = true;  ///< that is the newest
  std::string posted;  ///< its day of posting
};

/// Reads the mill files of a book, each once and only when it is asked for.
class Deals {
 public:
  explicit Deals(const book::Book& book) : book_(book) {}

  /// Throws Refused when the newest mill file's money tables have errors.
  Deal of_job(const std::string& job);
  Deal of_sale(const std::string& buyer);

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
  std::shared_ptr<const book::Mill> mill_with(const std::string& job, const book::Mill& then);

  const book::Book& book_;
  std::vector<Revision> revisions_;  ///< the newest alone until an older one is needed
  bool all_read_ = false;
};

inline Deal deal_of(const book::Book& book, const std::string& job) {
  return Deals(book).of_job(job);
}

}  // namespace kerfbook::billing
