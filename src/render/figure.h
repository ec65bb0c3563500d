// figure.h -- a number with decimals in a cell: exact, with the places it is printed with. It is rounded where it is
// printed and nowhere else, by the one rule of base/exact.h, so a printed figure is always the nearest one.
#pragma once

#include "base/exact.h"

namespace kerfbook::render {

class Figure {
 public:
  Figure() = default;
  Figure(const Decimal& value);  // NOLINT(google-explicit-constructor): a decimal is exact as it stands
  Figure(const Rational& exact, int places) : top_(exact.num()), under_(exact.den()), places_(places) {}
  /// top / under, `under` > 0. Kept as given: thousands of cells over one denominator need no fraction reduced.
  Figure(Wide top, Wide under, int places) : top_(top), under_(under), places_(places) {}

  /// Hours, from their minutes: printed as a clock has them, "1:20"; to machines a number of hours.
  static Figure time(std::int64_t minutes);

  [[nodiscard]] bool is_time() const { return time_; }
  [[nodiscard]] int places() const { return places_; }
  [[nodiscard]] Rational exact() const { return {top_, under_}; }
  [[nodiscard]] bool is_whole() const { return under_ == 1 || top_ % under_ == 0; }
  /// As it is printed. Throws std::overflow_error past 63 bits.
  [[nodiscard]] Decimal shown() const;
  /// For machines: as printed when that is the exact number, else the nearest with up to six decimals.
  [[nodiscard]] Decimal fine() const;
  /// The nearest a spreadsheet or a drawing can hold.
  [[nodiscard]] double nearest() const;

  /// The exact sum, with the places of the finer one.
  friend Figure operator+(const Figure& a, const Figure& b);
  friend bool operator==(const Figure& a, const Figure& b);

 private:
  Wide top_ = 0;
  Wide under_ = 1;
  int places_ = 0;
  bool time_ = false;
};

}  // namespace kerfbook::render
