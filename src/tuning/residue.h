// residue.h -- how much solid wood there is in slabs and dust as they lie, and what of a log they are. For a check of the
// balance (balance.h), not for a bill: heaps differ.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

#include "base/exact.h"

namespace kerfbook::tuning {

/// The part of a log's balance that residue came out of.
enum class OutOf : std::uint8_t {
  sawdust,
  rest,  ///< slabs, edgings, trim; chips are made of them
  none   ///< bark, which no log volume counts, and shavings, which come off boards afterwards
};

/// Solid cubic feet in a cubic foot of heap. Slabs, edgings and trim, stacked: 75 of the 128 in a cord; sawdust, loose: 1 in
/// 2.5 (both: Sawmill Residue in the Prince George Area of British Columbia, Canada Forestry Branch, about 1951); chips,
/// bark and shavings as sawdust (common practice, no source). nullopt of any other word.
std::optional<Rational> solid_share(std::string_view kind);

/// none of any other word.
OutOf out_of(std::string_view kind);

}  // namespace kerfbook::tuning
