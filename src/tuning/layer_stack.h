// layer_stack.h -- layers one upon the other across a log's end: the best stack of them, by dynamic programming.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "tuning/layer_fill.h"

namespace kerfbook::tuning {

/// A layer of a stack: its kind and where its upper face is.
struct StackedLayer {
  std::size_t kind = 0;
  Fine top = 0;
};

/// The best stacks that end at or above each place from -radius to radius.
class LayerStack {
 public:
  /// `wall`: only what lies to the right of it (LayerPlace::wall).
  LayerStack(LayerFinder& finder, const LayerList& list, Fine step, std::optional<Fine> wall = std::nullopt);

  [[nodiscard]] std::int64_t worth() const { return best_.back(); }
  [[nodiscard]] std::vector<StackedLayer> layers() const { return layers_above(best_.size() - 1); }

  /// Places are counted in steps from the top; at a place a next layer, or what is turned, may begin.
  [[nodiscard]] std::size_t places() const { return best_.size(); }
  [[nodiscard]] Fine at(std::size_t place) const { return top_ + static_cast<Fine>(place) * step_; }
  [[nodiscard]] std::int64_t worth_above(std::size_t place) const { return best_[place]; }
  [[nodiscard]] std::vector<StackedLayer> layers_above(std::size_t place) const;
  /// How the layer lies whose upper face is there.
  [[nodiscard]] LayerPlace place_of(const LayerKind& kind, Fine top) const;

 private:
  std::vector<std::int64_t> worths(LayerFinder& finder, const LayerKind& kind) const;
  void stack(const std::vector<std::vector<std::int64_t>>& worth);

  const LayerList& list_;
  Fine step_;
  Fine top_ = 0;  ///< a multiple of the step, at or outside of the widest circle
  std::optional<Fine> wall_;
  std::vector<std::int64_t> best_;
  std::vector<std::int16_t> kind_;  ///< of the layer whose kerf ends at a place; -1 = none does
};

}  // namespace kerfbook::tuning
