// paper_words.h -- how a paper of this mill says sizes, lengths, volumes and log rules: board feet, feet and inches, or
// cubic metres and metres with the mill's decimal mark, in words a customer knows.
#pragma once

#include <string>
#include <vector>

#include "base/exact.h"
#include "measure/convention.h"
#include "mill/mill.h"
#include "render/document.h"

namespace kerfbook::billing {

/// What lumber is counted in on the mill's papers, exact until the last figure shown.
class LumberUnit {
 public:
  explicit LumberUnit(const book::Mill& mill) : metric_(mill.units == measure::System::metric) {}
  [[nodiscard]] bool metric() const { return metric_; }
  [[nodiscard]] int places() const { return metric_ ? 3 : 2; }
  [[nodiscard]] std::string unit() const { return metric_ ? "m³" : "bf"; }
  [[nodiscard]] render::Column column() const;
  /// Metric lumber is counted as its nominal size is: the conventions of board measure do not touch it.
  [[nodiscard]] Rational of(const measure::Pieces& pieces, const measure::Convention& by) const;
  [[nodiscard]] Rational of(const measure::Volume& volume) const;
  [[nodiscard]] Rational from_bf(const Rational& bf) const;
  /// Exact, shown with the unit's places.
  [[nodiscard]] render::Cell cell(const Rational& lumber) const { return render::Figure(lumber, places()); }
  /// "Board feet: nominal thickness and width, ...": how the figures of a tally came about.
  [[nodiscard]] std::string how_counted(const measure::Convention& by) const;

 private:
  bool metric_;
};

/// A number in the marks of the mill, for words: "3,155", "1.882,31".
std::string number_words(const Decimal& value, const book::Mill& mill);
std::string percent_words(const Rational& percent, const book::Mill& mill);
std::string length_words(const measure::Length& length, const book::Mill& mill);  ///< "16 ft", "4,8 m"
std::string diameter_words(const measure::Length& across,
                           const book::Mill& mill);  ///< of a log: "12 in", "15 cm"
std::string size_words(const measure::Size& size, const book::Mill& mill);
/// A unit as it is printed after so many of it: "m³" where the book says m3, "tooth" after 1 where it says teeth.
std::string unit_words(const std::string& unit, const Rational& quantity = Rational(2));
/// "International 1/4-inch": what the trade calls a rule; a practice of the mill's own by its name and its rule's.
std::string rule_words(const std::string& practice, const book::Mill& mill);

/// A log's measure, and what its figures are in: "in x ft" or "cm x m", empty when they say so themselves.
struct LogMeasures {
  std::string unit;
  std::vector<std::string> shown;
};
LogMeasures log_measures(const std::vector<std::string>& specs, const book::Mill& mill);

}  // namespace kerfbook::billing
