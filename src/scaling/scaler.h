// scaler.h -- a practice made ready to scale many logs: the rule is looked up once, and figures can be had without
// building a sentence for each log. scale() of scaling.h is a Scaler used once.
#pragma once

#include <optional>
#include <vector>

#include "scaling/practice.h"
#include "scaling/rules.h"

namespace kerfbook::scaling {

/// A Scale without its words, in millionths of `unit`.
struct Amounts {
  std::int64_t gross = 0;
  std::int64_t deduction = 0;
  std::int64_t net = 0;
  VolumeUnit unit = VolumeUnit::board_foot;
  bool cull = false;
};

class Scaler {
 public:
  /// A Slip when the practice's rule is not in the table.
  static Result<Scaler> make(const Practice& practice);

  /// As scaling::scale().
  [[nodiscard]] Result<Scale> scale(const LogMeasure& log, const std::vector<Defect>& defects) const;
  /// The same figures; nullopt where scale() gives a Slip.
  [[nodiscard]] std::optional<Amounts> amounts(const LogMeasure& log,
                                               const std::vector<Defect>& defects) const;

  [[nodiscard]] const Rule& rule() const { return *rule_; }
  [[nodiscard]] const Practice& practice() const { return practice_; }

 private:
  Scaler(const Practice& practice, const Rule& rule);
  Practice practice_;
  const Rule* rule_;  ///< in the table, which outlives every Scaler
};

}  // namespace kerfbook::scaling
