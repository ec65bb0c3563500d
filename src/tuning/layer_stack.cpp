#include "tuning/layer_stack.h"

#include <algorithm>

namespace kerfbook::tuning {

namespace {

Fine steps_over(Fine length, Fine step) {
  return (length + step - 1) / step;
}

}  // namespace

LayerStack::LayerStack(LayerFinder& finder, const LayerList& list, Fine step, std::optional<Fine> wall)
    : list_(list), step_(step), wall_(wall) {
  const Fine radius = finder.rings().empty() ? 0 : finder.rings().back().radius;
  top_ = -steps_over(radius, step) * step;
  std::vector<std::vector<std::int64_t>> worth;
  worth.reserve(list.kinds.size());
  for (const auto& kind : list.kinds) worth.push_back(worths(finder, kind));
  stack(worth);
}

/// A layer's farther face is taken to the step outside of it, so that all layers are looked at once.
LayerPlace LayerStack::place_of(const LayerKind& kind, Fine top) const {
  const Fine far = steps_over(std::max(-top, top + kind.down), step_) * step_;
  return {far, std::max<Fine>(far - kind.down, 0), wall_};
}

/// By steps of the farther face's distance. It never grows outwards: where two places give the same, so does all between.
std::vector<std::int64_t> LayerStack::worths(LayerFinder& finder, const LayerKind& kind) const {
  const auto most = static_cast<std::size_t>(-top_ / step_);
  const auto least =
      static_cast<std::size_t>(std::min(steps_over((kind.down + 1) / 2, step_), -top_ / step_));
  std::vector<std::int64_t> worth(most + 1, 0);
  const auto ask = [&](std::size_t i) {
    const Fine far = static_cast<Fine>(i) * step_;
    worth[i] = finder.worth(kind, {far, std::max<Fine>(far - kind.down, 0), wall_});
  };
  ask(least);
  ask(most);
  std::vector<std::pair<std::size_t, std::size_t>> open{{least, most}};
  while (!open.empty()) {
    const auto [from, to] = open.back();
    open.pop_back();
    if (worth[from] == worth[to]) {
      std::fill(worth.begin() + static_cast<std::ptrdiff_t>(from),
                worth.begin() + static_cast<std::ptrdiff_t>(to), worth[to]);
    } else if (to - from > 1) {
      const std::size_t middle = from + (to - from) / 2;
      ask(middle);
      open.emplace_back(from, middle);
      open.emplace_back(middle, to);
    }
  }
  return worth;
}

void LayerStack::stack(const std::vector<std::vector<std::int64_t>>& worth) {
  struct Way {
    std::size_t pitch;
    Fine down;
  };
  std::vector<Way> ways;
  for (const auto& kind : list_.kinds)
    ways.push_back(
        {static_cast<std::size_t>(steps_over(kind.down + list_.between_layers, step_)), kind.down});
  const auto places = static_cast<std::size_t>(-2 * top_ / step_ + steps_over(list_.between_layers, step_));
  best_.assign(places + 1, 0);
  kind_.assign(places + 1, -1);
  for (std::size_t i = 1; i <= places; ++i) {
    best_[i] = best_[i - 1];
    for (std::size_t k = 0; k < ways.size(); ++k) {
      if (i < ways[k].pitch) continue;
      const Fine top = at(i - ways[k].pitch);
      const Fine far = std::max(-top, top + ways[k].down);
      const auto cell = static_cast<std::size_t>(steps_over(far, step_));
      if (cell >= worth[k].size() || worth[k][cell] == 0) continue;
      const std::int64_t with = best_[i - ways[k].pitch] + worth[k][cell];
      if (with <= best_[i]) continue;
      best_[i] = with;
      kind_[i] = static_cast<std::int16_t>(k);
    }
  }
}

std::vector<StackedLayer> LayerStack::layers_above(std::size_t place) const {
  std::vector<StackedLayer> found;
  while (place > 0) {
    if (kind_[place] < 0) {
      --place;
      continue;
    }
    const auto kind = static_cast<std::size_t>(kind_[place]);
    place -= static_cast<std::size_t>(steps_over(list_.kinds[kind].down + list_.between_layers, step_));
    found.push_back({kind, at(place)});
  }
  std::reverse(found.begin(), found.end());
  return found;
}

}  // namespace kerfbook::tuning
