// sawing.h -- what the sawing model is told and what it answers: a log, a mill with its list of sizes, and a pattern of
// boards on the log's end. How the pattern is found stands in sawing_model.h.
#pragma once

#include <cstdint>
#include <vector>

#include "measure/size.h"

namespace kerfbook::tuning {

/// A distance in 1/8000 inch, in which a 64th (125) and a thousandth (8) are both whole.
using Fine = std::int64_t;
constexpr Fine kFineInch = 8000;
constexpr Fine kFineFoot = 12 * kFineInch;
constexpr Fine kFineMil = 8;
/// Exact for the inch system; of the metric system the nearest.
Fine fine(measure::Length length);
constexpr Fine fine_mils(std::int64_t mils) {
  return mils * kFineMil;
}

/// A round, straight and sound log, whose diameter grows evenly from end to end. All inside bark.
struct SawLog {
  Fine small_end = 0;  ///< diameter
  Fine large_end = 0;  ///< diameter; less than the small end is taken for the small end
  Fine length = 0;     ///< the whole of it, trim included
  Fine trim = 0;       ///< what a board is cut longer than it is counted
  auto operator<=>(const SawLog&) const = default;
};

/// A size on the list. What it is worth is what it counts for (board feet) or what is paid for it.
struct SawProduct {
  measure::Size nominal;                 ///< by which it is counted
  Fine thickness = 0;                    ///< as cut, green
  Fine width = 0;                        ///< as cut, green
  std::vector<measure::Length> lengths;  ///< it may be cut to, as counted
  std::int64_t per_mbf = 0;              ///< minor units of money a thousand board feet
  std::int64_t per_piece = 0;  ///< minor units of money a piece, whatever its length; added to per_mbf
};

enum class LayersBy : std::uint8_t {
  thickness,  ///< boards of one thickness side by side lie in a layer, the head saw parts the layers
  width,      ///< boards of one width stand side by side in a layer, the edger saw parts the layers
};
enum class TurnLog : std::uint8_t {
  never,  ///< one stack of layers across the whole end
  quarter,  ///< once if it pays: layers down to some height, then what is left is turned by a quarter and sawn in layers
  ///< that stand across the others
};
enum class WorthBy : std::uint8_t { board_feet, money };

struct SawMill {
  Fine head_kerf = 0;       ///< the head saw cuts the wide faces
  Fine edger_kerf = 0;      ///< the edger saw cuts the narrow ones
  Fine most_thickness = 0;  ///< thickest board it can free in a pass, as cut; 0 = no limit
  Fine most_width = 0;      ///< widest board; 0 = no limit
  Fine least_width = 0;     ///< narrower sizes of the list are left out
  /// What may be missing of the outermost boards of a layer at either edge, measured along the layer, on the face that
  /// lies farther out; the other face is always full.
  Fine wane = 0;
  LayersBy layers = LayersBy::thickness;
  TurnLog turn = TurnLog::never;
  WorthBy worth = WorthBy::board_feet;
  Fine step = kFineMil;  ///< layers begin at multiples of this; a coarser one is quicker and never gives more
  std::vector<SawProduct> products;
};

/// A board where it lies on the log's end, the centre being 0, 0; x to the right, y down.
struct PlacedBoard {
  std::size_t product = 0;  ///< its place in the mill's list
  measure::Length length;   ///< as counted
  Fine left = 0;
  Fine top = 0;
  Fine across = 0;  ///< along x
  Fine down = 0;    ///< along y
  bool whole_length =
      false;  ///< as long as any board of this log can be; otherwise it lies partly in the taper
};

/// The best pattern of one log. Volumes are cubic inches, and doubles: nothing of this is stored or billed.
struct Pattern {
  SawLog log;
  std::vector<PlacedBoard> boards;
  std::int64_t bf_counts = 0;  ///< nominal board feet, in measure::kCountsPerBoardFoot
  std::int64_t worth = 0;      ///< bf_counts, or thousandths of a minor unit of money
  double log_in3 = 0;          ///< of the cone's frustum
  double lumber_in3 = 0;       ///< as cut and green, without trim
  /// Each board costs a cut of either saw: length x (width x head kerf + thickness x edger kerf + both kerfs), the length
  /// with its trim. The cut that opens a layer or the log is in the rest.
  double sawdust_in3 = 0;
  double rest_in3 = 0;  ///< slabs, edgings, trim; what is left of the log
  Fine turned_at = 0;   ///< where the log was turned, along y; only if `turned`
  bool turned = false;
};

}  // namespace kerfbook::tuning
