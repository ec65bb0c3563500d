#include "tuning/sawing_model.h"

#include <algorithm>
#include <numbers>
#include <stdexcept>

#include "tuning/layer_stack.h"

namespace kerfbook::tuning {

namespace {

constexpr Fine kTurnStep = kFineInch / 64;  ///< how finely it is tried where to turn

double cube_inches(Fine a, Fine b, Fine c) {
  constexpr double kUnit = kFineInch;
  return static_cast<double>(a) / kUnit * (static_cast<double>(b) / kUnit) * (static_cast<double>(c) / kUnit);
}

double frustum(const SawLog& log) {
  const Fine large = std::max(log.small_end, log.large_end);
  const double squares = cube_inches(log.small_end, log.small_end, log.length) +
                         cube_inches(log.small_end, large, log.length) +
                         cube_inches(large, large, log.length);
  return std::numbers::pi / 12 * squares;
}

/// What one log is sawn into, layer by layer.
class Sawyer {
 public:
  Sawyer(const SawMill& mill, const LayerList& list, const SawLog& log)
      : mill_(mill), list_(list), finder_(list, rings_of(log, list.tiers), mill.wane) {
    pattern_.log = log;
    pattern_.log_in3 = frustum(log);
  }

  Pattern saw() {
    if (!finder_.rings().empty() && !list_.kinds.empty()) {
      const LayerStack whole(finder_, list_, mill_.step);
      if (mill_.turn == TurnLog::never || !turned(whole)) put(whole, whole.layers(), false);
    }
    pattern_.rest_in3 = pattern_.log_in3 - pattern_.lumber_in3 - pattern_.sawdust_in3;
    return std::move(pattern_);
  }

 private:
  /// The best height to turn at, if any is better than not to turn: where the stack above has just got its last layer.
  bool turned(const LayerStack& whole) {
    std::int64_t most = whole.worth();
    std::size_t best = 0;
    const Fine coarse = std::max(mill_.step, kTurnStep);
    const Fine radius = finder_.rings().back().radius;
    for (std::size_t i = 1; i < whole.places(); ++i) {
      if (whole.worth_above(i) == whole.worth_above(i - 1) || whole.at(i) > radius / 2) continue;
      const LayerStack across(finder_, list_, coarse, whole.at(i));
      if (whole.worth_above(i) + across.worth() <= most) continue;
      most = whole.worth_above(i) + across.worth();
      best = i;
    }
    if (best == 0) return false;
    const LayerStack across(finder_, list_, coarse, whole.at(best));
    put(whole, whole.layers_above(best), false);
    put(across, across.layers(), true);
    pattern_.turned = true;
    pattern_.turned_at = whole.at(best);
    return true;
  }

  void put(const LayerStack& stack, const std::vector<StackedLayer>& layers, bool turned) {
    for (const auto& layer : layers) {
      const LayerKind& kind = list_.kinds[layer.kind];
      for (const auto& laid : finder_.boards(kind, stack.place_of(kind, layer.top))) {
        PlacedBoard board;
        board.product = kind.products[laid.item];
        board.length = kind.length[laid.tier][laid.item];
        board.whole_length = fine(board.length) == list_.tiers[finder_.rings().front().tier].along;
        board.left = turned ? layer.top : laid.left;
        board.top = turned ? laid.left : layer.top;
        board.across = turned ? kind.down : kind.across[laid.item];
        board.down = turned ? kind.across[laid.item] : kind.down;
        count(board, kind.worth[laid.tier][laid.item]);
        pattern_.boards.push_back(board);
      }
    }
  }

  void count(const PlacedBoard& board, std::int64_t worth) {
    const SawProduct& size = mill_.products[board.product];
    const auto nominal =
        measure::converted(measure::volume(size.nominal, board.length, 1), measure::System::inch);
    pattern_.worth += worth;
    pattern_.bf_counts += nominal.count;
    const Fine along = fine(board.length);
    pattern_.lumber_in3 += cube_inches(size.width, size.thickness, along);
    const Fine cut = along + pattern_.log.trim;
    pattern_.sawdust_in3 += cube_inches(size.width, mill_.head_kerf, cut) +
                            cube_inches(size.thickness, mill_.edger_kerf, cut) +
                            cube_inches(mill_.head_kerf, mill_.edger_kerf, cut);
  }

  const SawMill& mill_;
  const LayerList& list_;
  LayerFinder finder_;
  Pattern pattern_;
};

}  // namespace

SawingModel::SawingModel(SawMill mill, Fine most_diameter)
    : mill_(std::move(mill)), most_diameter_(most_diameter), list_() {
  if (mill_.head_kerf < 0 || mill_.edger_kerf < 0 || mill_.wane < 0 || mill_.step < 1)
    throw std::invalid_argument("a sawing model's kerf or wane is below 0, or its step below 1");
  list_ = layer_list(mill_, most_diameter);
}

Pattern SawingModel::best(const SawLog& log) const {
  if (std::max(log.small_end, log.large_end) > most_diameter_)
    throw std::invalid_argument("a log is larger than the sawing model was made for");
  return Sawyer(mill_, list_, log).saw();
}

}  // namespace kerfbook::tuning
