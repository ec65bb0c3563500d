// figures.h -- the figures of one number column, exact: whole numbers over one denominator, so that adding thousands of
// them needs no fraction to be reduced. Only quotients, which are never added, have a denominator each.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/exact.h"
#include "report/column_kinds.h"

namespace kerfbook::report {

using Exact = std::optional<Rational>;

struct Figures {
  std::vector<Wide> tops;
  std::vector<char> there;   ///< 0 = absent; its top is then 0
  Wide under = 1;            ///< of all tops; > 0
  std::vector<Wide> unders;  ///< of each top, > 0, where they differ: quotients; else empty
  Exact total;
  std::string unit;
  bool one_unit = true;         ///< false: the rows' units differ, so there is nothing to total
  bool two_in_one_row = false;  ///< a row's scale is in two units: absent
  bool metric = false;          ///< shown in metric

  [[nodiscard]] std::size_t size() const { return tops.size(); }
  void resize(std::size_t rows);
  void set(std::size_t row, Wide top);
  void drop(std::size_t row);
  /// A row shown with so many places: a whole number that is shown without any is a count; absent is absent.
  [[nodiscard]] render::Cell cell(std::size_t row, int places) const;
};

/// The rows that count in a total: all but the struck ones.
using Struck = std::vector<char>;  ///< one a row; not 0 = struck

/// nullopt when no row is there.
Exact summed(const Figures& figures, const Struck& struck);

/// The fewest places that show every row exactly, at least `least` and at most `most`.
int places_needed(const Figures& figures, int least, int most);

/// Every row times the factor that `which` names for it.
void multiply(Figures& figures, const std::vector<Rational>& factors, const std::vector<char>& which);

/// A ratio column: `over` / `under` row by row, as a ratio's kind works it out (times `times`). A row without both, or
/// over nothing, is absent.
Figures divided(Kind kind, const Figures& over, const Figures& under, const Rational& times);
Exact divided(Kind kind, const Exact& over, const Exact& under, const Rational& times);

}  // namespace kerfbook::report
