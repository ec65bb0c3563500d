// rescale.h -- a report under another log rule: for as long as it lasts, the views of logs, runs and sheets stand for
// ones whose scales are worked out again from the logs' raw measures. No report knows of it; what is in the book stays.
#pragma once

#include <cstdint>
#include <string>

#include "book/book.h"

namespace kerfbook::report {

class Rescaled {
 public:
  /// An empty rule leaves the views alone. Throws Refused for a practice that is not known, naming the nearest. What
  /// lies outside the days `from` to `to` is right too, only slower.
  Rescaled(const book::Book& book, const std::string& rule, std::int64_t from, std::int64_t to);
  Rescaled(const Rescaled&) = delete;
  Rescaled& operator=(const Rescaled&) = delete;
  ~Rescaled();

  [[nodiscard]] const std::string& rule() const noexcept { return rule_; }

 private:
  const book::Book& book_;
  std::string rule_;
  bool others_ = false;  ///< the file has views that are not this program's
};

}  // namespace kerfbook::report
