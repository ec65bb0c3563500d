#include "scaling/deduction.h"

#include <algorithm>
#include <numeric>
#include <stdexcept>

#include "scaling/arithmetic.h"

namespace kerfbook::scaling {
namespace {

constexpr std::int64_t kHalfTurn = 180;
constexpr std::int64_t kBiggestScale = 1'000'000'000'000;  ///< millionths; no log comes near a million units

/// Cubic feet in one of the unit, exact but for pi (15 figures).
Rational cubic_feet_in(VolumeUnit unit) {
  switch (unit) {
    case VolumeUnit::board_foot:
      return {1, 12};
    case VolumeUnit::cubic_foot:
      return 1;
    case VolumeUnit::cubic_metre:
      return {Wide{10'000} * 10'000 * 10'000, Wide{3'048} * 3'048 * 3'048};
    case VolumeUnit::hoppus_foot:
      return {4 * kPiDen, kPiNum};
  }
  return 1;
}

/// Width x height x length of the box round the defect: over the divisor for board feet, whole for a cubic unit.
Rational squared(const Sound& log, const Defect& defect) {
  const Rational box =
      measure::in_inches(defect.width) * measure::in_inches(defect.height) * measure::in_feet(defect.length);
  if (log.unit == VolumeUnit::board_foot)
    return box * 1'000'000 / std::max<std::int64_t>(1, log.practice.squared_divisor);
  return in_unit(box / 144, VolumeUnit::cubic_foot, log.unit) * 1'000'000;
}

/// The sector's share of the affected length, of the gross.
Rational sector(const Sound& log, const Defect& defect) {
  if (log.pieces.length == 0) return 0;
  const Ticks whole = log.pieces.length;
  const Ticks affected = defect.length.is_zero() ? whole : std::min(ticks(defect.length), whole);
  return Rational(log.gross) * defect.amount / (2 * kHalfTurn) * Rational(affected, whole);
}

/// The amounts of all length defects and then of all diameter defects, shared out in proportion to what was written.
struct Shrinkage {
  Ticks length = 0;
  Ticks diameter = 0;
  std::int64_t by_length = 0;
  std::int64_t by_diameter = 0;
};

Shrinkage shrinkage(const Sound& log, const std::vector<Defect>& defects) {
  Shrinkage off;
  for (const Defect& defect : defects) {
    if (defect.kind == DefectKind::length) off.length += ticks(defect.length);
    if (defect.kind == DefectKind::diameter) off.diameter += ticks(defect.diameter);
  }
  if (off.length == 0 && off.diameter == 0) return off;
  const auto scale_of = [&log](Ticks length, Ticks diameter) {
    const Pieces left = shrunk(log.pieces, length, diameter, log.rule, log.practice, log.system);
    return whole_scale(left, log.rule, log.practice, log.unit);
  };
  const std::int64_t shorter = off.length == 0 ? log.gross : std::min(log.gross, scale_of(off.length, 0));
  off.by_length = log.gross - shorter;
  if (off.diameter > 0)
    off.by_diameter = std::max<std::int64_t>(0, shorter - scale_of(off.length, off.diameter));
  return off;
}

Rational one(const Sound& log, const Defect& defect, const Shrinkage& off) {
  switch (defect.kind) {
    case DefectKind::percent:
      return Rational(log.gross) * defect.amount / 100;
    case DefectKind::volume:
      return in_unit(defect.amount, defect.unit, log.unit) * 1'000'000;
    case DefectKind::length:
      return off.length == 0 ? Rational(0)
                             : Rational(off.by_length) * Rational(ticks(defect.length), off.length);
    case DefectKind::diameter:
      return off.diameter == 0 ? Rational(0)
                               : Rational(off.by_diameter) * Rational(ticks(defect.diameter), off.diameter);
    case DefectKind::squared:
      return squared(log, defect);
    case DefectKind::sector:
      return sector(log, defect);
  }
  return 0;
}

}  // namespace

std::int64_t result_step(ResultRounding how) {
  switch (how) {
    case ResultRounding::none:
      return 1;
    case ResultRounding::thousandth:
      return 1'000;
    case ResultRounding::hundredth:
      return 10'000;
    case ResultRounding::nearest_1:
      return 1'000'000;
    case ResultRounding::nearest_5:
      return 5'000'000;
    case ResultRounding::nearest_10:
      return 10'000'000;
  }
  return 1;
}

std::int64_t piece_scale(const Piece& piece, const Rule& rule, const Practice& practice, VolumeUnit unit) {
  if (piece.length < rule.least_length || piece.length == 0) return 0;
  if (rule.needs == Needs::small_end && piece.small < rule.least_diameter) return 0;
  const auto function =
      rule.answers == Answers::cubic && unit == VolumeUnit::cubic_metre ? rule.scale_metric : rule.scale;
  const Exact exact = function(piece);
  const std::int64_t step = result_step(practice.result);
  return round_half_up(exact.num, exact.den * step) * step;
}

std::int64_t whole_scale(const Pieces& pieces, const Rule& rule, const Practice& practice, VolumeUnit unit) {
  std::int64_t sum = 0;
  for (std::size_t i = 0; i < pieces.count; ++i) sum += piece_scale(pieces.piece[i], rule, practice, unit);
  return sum;
}

std::vector<Rational> taken_off(const Sound& log, const std::vector<Defect>& defects) {
  const Shrinkage off = shrinkage(log, defects);
  std::vector<Rational> taken;
  taken.reserve(defects.size());
  for (const Defect& defect : defects) taken.push_back(one(log, defect, off));
  return taken;
}

std::int64_t rounded_deduction(const Sound& log, const std::vector<Rational>& taken) {
  const std::int64_t of_result = std::min<std::int64_t>(result_step(log.practice.result), 1'000'000);
  const std::int64_t step = std::max(log.rule.deduction_step, of_result);
  const auto rounded = [&log, step](const Rational& sum) {
    if (sum >= Rational(log.gross)) return log.gross;
    return std::min(log.gross, (sum / step).rounded(0) * step);
  };
  try {  // exact: of thirds and sixths that come to a half, every one counts
    return rounded(std::accumulate(taken.begin(), taken.end(), Rational(0)));
  } catch (
      const std::overflow_error&) {  // too many unlike fractions for that; a billionth of the unit must do
    const auto billionths = [](std::int64_t so_far, const Rational& one) {
      return so_far + std::min(one, Rational(kBiggestScale)).rounded(3);
    };
    return rounded({std::accumulate(taken.begin(), taken.end(), std::int64_t{0}, billionths), 1000});
  }
}

Rational in_unit(const Rational& amount, VolumeUnit from, VolumeUnit to) {
  if (from == to) return amount;
  return amount * cubic_feet_in(from) / cubic_feet_in(to);
}

}  // namespace kerfbook::scaling
