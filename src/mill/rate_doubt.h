// rate_doubt.h -- prices in a mill file that nobody would pay: a rate for a thousand board feet written down for one.
// The limits are wide round numbers of our own; beyond them a file is warned of, never refused.
#pragma once

#include <string>
#include <string_view>

#include "base/exact.h"
#include "mill/toml_table.h"

namespace kerfbook::book {

/// In dollars, pounds or euros; measure::money_scale() brings them to the book's money.
struct RateRange {
  Rational least;  ///< 0 = none
  Rational most;
};

/// Warns at `key` of a rate outside the range. `unit`: "a board foot"; `instead`: what was perhaps meant. A rate of zero,
/// and the sign, say nothing.
void doubt_rate(TomlTable& table, std::string_view key, const Rational& rate, const RateRange& range,
                std::int64_t money_scale, std::string_view unit, std::string_view instead = "");

}  // namespace kerfbook::book
