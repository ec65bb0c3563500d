// deduction.h -- from defects to what is taken off a gross scale. The methods are those of FSH 2409.11 ch. 20: squared
// defect, pie cut, length deduction, diameter deduction; and percent or volume as the scaler judged it.
#pragma once

#include <cstdint>
#include <vector>

#include "scaling/pieces.h"
#include "scaling/rules.h"

namespace kerfbook::scaling {

/// A log that is being scaled: what its defects are measured against.
struct Sound {
  const Rule& rule;
  const Practice& practice;
  const Pieces& pieces;
  std::int64_t gross = 0;  ///< millionths
  VolumeUnit unit = VolumeUnit::board_foot;
  System system = System::inch;
};

/// Millionths of the unit that one piece scales, rounded as the practice says.
std::int64_t piece_scale(const Piece& piece, const Rule& rule, const Practice& practice, VolumeUnit unit);
/// The same for all pieces together.
std::int64_t whole_scale(const Pieces& pieces, const Rule& rule, const Practice& practice, VolumeUnit unit);

/// What each defect takes off, exact, in millionths; never negative. One entry a defect, in their order.
std::vector<Rational> taken_off(const Sound& log, const std::vector<Defect>& defects);
/// The sum, rounded once, never above the gross.
std::int64_t rounded_deduction(const Sound& log, const std::vector<Rational>& taken);

/// Millionths that a result is rounded to; 1 when it is not.
std::int64_t result_step(ResultRounding how);

/// `amount` of one unit in another: cubic units exactly (a hoppus foot is 4/pi ft3), board feet as solid wood, 12 to
/// the cubic foot.
Rational in_unit(const Rational& amount, VolumeUnit from, VolumeUnit to);

}  // namespace kerfbook::scaling
