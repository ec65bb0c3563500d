// sawing_model.h -- the most that a head saw and an edger saw, which free one board a pass, can get out of a log.
//
// The model. The log is a straight frustum. It is sawn in layers that lie across its end one upon the other, a kerf
// between them; a layer has one thickness (or one width: LayersBy) and goes from edge to edge of the log; in it boards lie
// side by side, a kerf between them. A board of full length has to be within the small end's circle, a shorter one, cut
// from the butt, within the circle where it begins. Outermost boards may have wane (SawMill::wane). Which layers, where,
// and which boards in each is found by dynamic programming: down the log's end, at every SawMill::step, the best of all
// that can lie above; and for a layer the best of all sets of boards, exactly (layer_fill.h). So the answer is the best
// there is but for layers that could begin between two steps.
// What it leaves out: defect, sweep, an oval end, bark, the bed's and the dogs' reach, grade, and the sawyer's time.
// It is a yardstick: a mill comes near to it, and does not reach it.
// Source of the geometry: that of the diagram rules, common practice, no source.
#pragma once

#include "tuning/layer_fill.h"
#include "tuning/sawing.h"

namespace kerfbook::tuning {

constexpr Fine kMostModelled = 72 * kFineInch;  ///< of a log's larger end, where nothing else is said

class SawingModel {
 public:
  /// Logs up to `most_diameter` can be asked for. Throws std::invalid_argument of a negative kerf or wane, a step under 1.
  explicit SawingModel(SawMill mill, Fine most_diameter = kMostModelled);

  /// The best pattern; no boards when nothing on the list comes out of the log. The same log gives the same pattern, and
  /// several threads may ask at once. Throws std::invalid_argument of a log over the most diameter, at its larger end.
  [[nodiscard]] Pattern best(const SawLog& log) const;
  [[nodiscard]] const SawMill& mill() const { return mill_; }

 private:
  SawMill mill_;
  Fine most_diameter_;
  LayerList list_;
};

}  // namespace kerfbook::tuning
