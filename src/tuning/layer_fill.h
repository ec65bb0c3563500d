// layer_fill.h -- the best boards for one layer of a log: a block of boards of one length in the middle and shorter ones,
// out of the taper, outside of it on either side.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "tuning/sawing.h"
#include "tuning/width_fill.h"

namespace kerfbook::tuning {

/// A length boards can have, and how far along the log it goes. Longest first wherever several stand together.
struct LengthTier {
  measure::Length length;
  Fine along = 0;
};

/// What may lie in a layer of one thickness (or one width: LayersBy) and what it is worth in each length.
struct LayerKind {
  Fine down = 0;
  std::vector<std::size_t> products;  ///< items: places in the mill's list
  std::vector<Fine> across;           ///< of each item
  /// Of each tier and item: the worth of the best length of the size that is no longer than the tier; 0 = there is none.
  std::vector<std::vector<std::int64_t>> worth;
  std::vector<std::vector<measure::Length>> length;  ///< that best length
  std::vector<WidthFill> fills;                      ///< of each tier
};
/// The mill's list as layers, sizes it cannot cut left out. `tiers` are all lengths on the list.
struct LayerList {
  std::vector<LengthTier> tiers;
  std::vector<LayerKind> kinds;
  Fine between_layers = 0;  ///< the kerf there
  Fine between_boards = 0;
};
LayerList layer_list(const SawMill& mill, Fine most_diameter);

/// The log's radius where a board of some length begins that ends at the butt.
struct Ring {
  std::size_t tier = 0;
  Fine radius = 0;
};
/// Longest board (least radius) first. A length that has no more room than a longer one is left out; none = the log is
/// shorter than any board.
std::vector<Ring> rings_of(const SawLog& log, const std::vector<LengthTier>& tiers);

/// Where a layer lies: how far its two faces are from the centre, and where it begins if it does not reach across.
struct LayerPlace {
  Fine far = 0;
  Fine near = 0;             ///< 0 when the centre is in the layer
  std::optional<Fine> wall;  ///< boards lie to the right of this only
};

struct LaidBoard {
  std::size_t item = 0;
  std::size_t tier = 0;
  Fine left = 0;
};

/// Finds the best layer of one log. Keeps room between calls, so one belongs to one thread.
class LayerFinder {
 public:
  LayerFinder(const LayerList& list, std::vector<Ring> rings, Fine wane);

  /// Worth of the best boards of this kind there. Never more when `far` grows.
  std::int64_t worth(const LayerKind& kind, const LayerPlace& place);
  /// Those boards, left to right.
  std::vector<LaidBoard> boards(const LayerKind& kind, const LayerPlace& place);
  [[nodiscard]] const std::vector<Ring>& rings() const { return rings_; }

 private:
  /// So much room is left for what lies farther in, when boards out of the taper stand outside of it.
  struct Side {
    Fine limit;
    std::int64_t worth;
    std::size_t ring;  ///< of the innermost of them; the number of rings when there is none
    std::size_t item;
    std::size_t outer;  ///< the side without it
    double gain;        ///< worth against the room it takes, for one block's length
  };
  struct Choice {
    std::int64_t worth = 0;
    std::size_t ring = 0;  ///< of the block in the middle
    std::size_t left = 0;
    std::size_t right = 0;
    Fine left_limit = 0;
    Fine right_limit = 0;
  };
  using Sides = std::vector<Side>;
  Choice choose(const LayerKind& kind, const LayerPlace& place);
  void half_chords(const LayerPlace& place);
  void find_sides(const LayerKind& kind, const std::vector<Fine>& halves, Sides& sides) const;
  void try_block(const LayerKind& kind, std::size_t ring, bool walled, Choice& best);
  void lay_chain(const LayerKind& kind, const Sides& sides, std::size_t side, Fine from, int way,
                 std::vector<LaidBoard>& boards) const;

  const LayerList& list_;
  std::vector<Ring> rings_;
  Fine wane_;
  std::vector<Fine>
      halves_;  ///< of each ring: the room from the centre to the right; kOutside = it does not reach here
  std::vector<Fine> lefts_;  ///< the same to the left, where a wall may stand
  Sides right_;
  Sides left_;                            ///< only with a wall; without one the two are alike
  std::vector<std::size_t> right_order_;  ///< sides that go with a block, the best gain first
  std::vector<std::size_t> left_order_;
};

}  // namespace kerfbook::tuning
