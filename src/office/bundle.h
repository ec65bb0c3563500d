// bundle.h -- what is in a bundle of own lumber when it is sold whole.
#pragma once

#include <string>
#include <vector>

#include "book/book.h"
#include "price/billable.h"

namespace kerfbook::billing {

struct BundleLine {
  std::string species;
  std::string grade;
  Size size;
  Length length;  ///< none: counted by its length, `count` is of length
  std::int64_t count = 0;
};

/// A bundle sold whole, and what own lumber had been tallied under its tag since it was last sold whole, less what was
/// sold out of it by the piece. Empty when nothing is left.
struct SoldBundle {
  Day day;
  int shift = 1;
  std::string buyer;
  std::string tag;
  std::optional<Rational> price;  ///< of all of it; absent = by the price list
  std::vector<BundleLine> lines;
  [[nodiscard]] std::string words(
      const book::Mill& mill) const;  ///< "40 2x6x16 Douglas-fir No2, 12 2x6x12 ..."
};
/// In the order of the sheets, from the first or from a day on.
std::vector<SoldBundle> sold_bundles(const book::Book& book, Day to, std::optional<Day> from = {});

}  // namespace kerfbook::billing
