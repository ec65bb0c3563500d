// settle.h -- the one place where figures of a report or a paper are rounded so that what is printed adds up.
#pragma once

#include <cstdint>
#include <vector>

#include "base/exact.h"

namespace kerfbook {

/// The lines of a column rounded to `places`, as counts of 10^-places, so that they add up to `total` (a count too).
///
/// Why: a person checks a printed column by adding it. The total is the exact total rounded once, which three lines
/// of 33.333 (shown 33.33) miss by a hundredth. Each line is first rounded by the one rule; when the lines do not
/// add to the total, those that lost the most by rounding (largest remainder; among equals the earlier line) move
/// by one unit of the last place. So a line is never further from its exact figure than one unit, a line that
/// needed no rounding never moves, and the same figures always settle the same way.
///
/// `total` must be the exact total rounded up or down to a whole count; settle() cannot make lines meet another
/// one, and throws std::logic_error.
std::vector<std::int64_t> settle(const std::vector<Rational>& exact, int places, std::int64_t total);

/// The same for lines that are whole numbers over one denominator (`under` > 0), which is much quicker.
std::vector<std::int64_t> settle(const std::vector<Wide>& tops, Wide under, int places, std::int64_t total);

/// The exact sum of the lines rounded by the one rule: the total that is printed.
std::int64_t rounded_total(const std::vector<Rational>& exact, int places);

/// As settle(), where the lines stand in groups that are printed with sums of their own (a grid's rows): the sums
/// settle to the total first, then each group's lines to its sum, so both add up. `group[i]` is line i's group,
/// counted from 0.
std::vector<std::int64_t> settle_in_groups(const std::vector<Rational>& exact,
                                           const std::vector<std::size_t>& group, int places,
                                           std::int64_t total);
std::vector<std::int64_t> settle_in_groups(const std::vector<Wide>& tops, Wide under,
                                           const std::vector<std::size_t>& group, int places,
                                           std::int64_t total);

}  // namespace kerfbook
