#include "measures.h"

#include <algorithm>
#include <stdexcept>

namespace reckoning {
namespace {

constexpr std::int64_t kMillion = 1'000'000;
/// Cubic 1/64 inches in a board foot: 144 x 64^3.
constexpr std::int64_t kFineInBoardFoot = 37'748'736;
const Fraction kMillimetresInInch(254, 10);
const Fraction kInchesInFoot(12);
const Fraction kPi(3'141'592'653'589'793, 1'000'000'000'000'000);

/// Section x length in board feet, of the count the book keeps.
Fraction board_feet(const Fraction& thick, const Fraction& wide, const Fraction& length, bool metric,
                    std::int64_t pieces) {
  const Fraction section = metric ? thick * wide / (kMillimetresInInch * kMillimetresInInch) : thick * wide;
  return (section * in_feet(length, metric) / kInchesInFoot * Fraction(pieces)).nearest(kFineInBoardFoot);
}

std::int64_t counted(const Boards& boards) {
  return boards.lineal ? boards.sign() : boards.pieces;
}

Fraction inches(const Fraction& diameter, bool metric) {
  return metric ? diameter * 10 / kMillimetresInInch : diameter;
}

Fraction mean(const std::vector<Fraction>& readings) {
  Fraction sum;
  for (const auto& reading : readings) sum += reading;
  return sum / Fraction(static_cast<std::int64_t>(readings.size()));
}

Fraction international_quarter(const Fraction& small, const Fraction& feet) {
  if (small < Fraction(4)) return 0;
  Fraction sum;
  Fraction d = small;
  for (Fraction left = feet; !left.is_zero() && !left.is_negative(); left = left - 4, d += Fraction(1, 2)) {
    const Fraction section = d * d * Fraction(22, 100) - d * Fraction(71, 100);
    sum += left < Fraction(4) ? section * left / 4 : section;
  }
  return (sum * Fraction(905, 1000) / 5).nearest(1) * 5;
}

Fraction doyle(const Fraction& small, const Fraction& feet) {
  if (small < Fraction(4)) return 0;
  const Fraction side = (small - 4) / 4;
  return (side * side * feet).nearest(kMillion);
}

Fraction scribner_formula(const Fraction& small, const Fraction& feet) {
  const Fraction square = small * small * Fraction(79, 100) - small * 2 - 4;
  return square.is_negative() ? Fraction(0) : (square * feet / 16).nearest(kMillion);
}

}  // namespace

Fraction in_feet(const Fraction& length, bool metric) {
  return metric ? length * 1000 / kMillimetresInInch / kInchesInFoot : length;
}

Fraction small_end(const Measure& measure) {
  return mean(measure.small);
}

std::optional<Scale> scale_of(const Log& log, const std::string& rule) {
  if (!log.measure) return std::nullopt;
  const Fraction small = inches(small_end(*log.measure), log.measure->metric);
  const Fraction feet = in_feet(log.measure->length, log.measure->metric).whole();
  Scale scale;
  const bool whole = rule == "international-quarter";
  if (whole)
    scale.gross = international_quarter(small, feet);
  else if (rule == "doyle")
    scale.gross = doyle(small, feet);
  else if (rule == "scribner-formula")
    scale.gross = scribner_formula(small, feet);
  else
    throw std::runtime_error("the reckoning has no rule " + rule);
  for (const auto& defect : log.defects)
    scale.deduction += defect.percent ? scale.gross * defect.amount / 100 : defect.amount;
  scale.deduction = scale.deduction.nearest(whole ? 1 : kMillion);
  if (scale.gross < scale.deduction) scale.deduction = scale.gross;
  scale.net = scale.gross - scale.deduction;
  return scale;
}

Fraction content_of(const Measure& measure, const Fraction& trim) {
  const Fraction small = inches(small_end(measure), measure.metric);
  const Fraction nominal = in_feet(measure.length, measure.metric);
  const Fraction taper =
      measure.metric ? measure.length * Fraction(1042, 100) / kMillimetresInInch : nominal / 8;
  const Fraction large = measure.large.empty() ? small + taper : inches(mean(measure.large), measure.metric);
  const Fraction areas = (small * small + large * large) / 144;
  return (kPi * areas / 8 * (nominal + trim / kInchesInFoot)).nearest(kMillion);
}

Fraction lumber_of(const Boards& boards) {
  return board_feet(boards.section.thick, boards.section.wide, boards.length, boards.section.metric,
                    counted(boards));
}

Fraction wood_of(const Boards& boards, const std::optional<Fraction>& over,
                 const std::optional<Section>& target) {
  const Section& cut = target ? *target : boards.section;
  Fraction more = over && !target ? *over : Fraction(0);
  // an oversize said in thousandths of an inch is kept for a metric board in hundredths of a millimetre
  if (boards.section.metric) more = (more * kMillimetresInInch).nearest(100);
  return board_feet(cut.thick + more, cut.wide + more, boards.length, boards.section.metric,
                    counted(boards)) /
         12;
}

Fraction feet_of(const Boards& boards) {
  return in_feet(boards.length, boards.section.metric) * Fraction(counted(boards));
}

}  // namespace reckoning
