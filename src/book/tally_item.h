// tally_item.h -- one tally item of a sheet, whatever way it was written, and its volumes. Pure: no store.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "mill/mill.h"
#include "sheet/facts.h"

namespace kerfbook::book {

/// How much over nominal boards are cut under a set-up; the unit is that of the book it was written in.
struct Over {
  std::int64_t mils = 0;  ///< thousandths of an inch; hundredths of a millimetre when metric
  bool metric = false;
};

enum class TallyForm : std::uint8_t { piece, lineal, random };
std::string_view word_of(TallyForm form);

struct TallyItem {
  TallyForm form = TallyForm::piece;
  sheet::Sense sense = sheet::Sense::sawn;
  measure::Size size;
  measure::Length length;   ///< of a piece; of all pieces end to end for lineal feet
  std::int64_t pieces = 0;  ///< as written, never negative; 0 for lineal feet
  std::string grade;
  std::string reason;
  /// +1 sawn, -1 for `less` and `resaw`, which count against the tally.
  [[nodiscard]] int sign() const { return sense == sheet::Sense::sawn ? 1 : -1; }
};

/// nullopt when the fact is no tally line.
std::optional<TallyItem> tally_item(const sheet::DatedFact& fact);

/// The volume billed, nominal size, with its sign, counted as the book counts. Throws std::overflow_error.
measure::Volume lumber_of(const TallyItem& item, measure::System book);
/// The volume of wood really cut: the target size, else nominal and the set-up's oversize, else nominal.
measure::Volume wood_of(const TallyItem& item, const std::optional<measure::Size>& target,
                        const std::optional<Over>& over, measure::System book);

/// The item alone as a sheet would have it, for showing it struck: "2x4 sel 32/16".
std::string written(const TallyItem& item);

}  // namespace kerfbook::book
