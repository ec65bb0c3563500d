// width_fill.h -- the best set of boards for a straight stretch of wood: which pieces side by side, with a saw's kerf
// between them, are worth the most in so much room. Exact.
#pragma once

#include <cstdint>
#include <vector>

#include "tuning/sawing.h"

namespace kerfbook::tuning {

/// A piece that may be laid into the stretch, as often as there is room.
struct FillItem {
  Fine across = 0;  ///< over 0
  std::int64_t worth = 0;
};

/// For every room up to a most one, the best filling: a stair of rooms, each worth more than the one before.
class WidthFill {
 public:
  WidthFill(const std::vector<FillItem>& items, Fine kerf, Fine most_room);

  /// Worth of the best set in `room`, kerfs between the pieces and none outside. Nothing fits: 0.
  [[nodiscard]] std::int64_t worth(Fine room) const { return stairs_[at(room)].worth; }
  /// Places of the pieces in the list, as they are laid down.
  [[nodiscard]] std::vector<std::size_t> pieces(Fine room) const;
  /// No room gives more than this for each unit of (room + kerf).
  [[nodiscard]] double most_per_room() const { return density_; }

 private:
  struct Stair {
    Fine taken;  ///< pieces with a kerf after each
    std::int64_t worth;
    std::size_t before;  ///< the stair without the last piece
    std::size_t item;
  };
  [[nodiscard]] std::size_t at(Fine room) const;

  Fine kerf_;
  double density_ = 0;
  std::vector<Stair> stairs_;
};

}  // namespace kerfbook::tuning
