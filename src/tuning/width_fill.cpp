#include "tuning/width_fill.h"

#include <algorithm>
#include <queue>

namespace kerfbook::tuning {

namespace {

struct Try {
  Fine taken;
  std::int64_t worth;
  std::size_t before;
  std::size_t item;
};
/// Least room first; of equal room the one worth most, then the first of the list, so that the answer is always the same.
struct Later {
  bool operator()(const Try& a, const Try& b) const {
    if (a.taken != b.taken) return a.taken > b.taken;
    if (a.worth != b.worth) return a.worth < b.worth;
    return a.item > b.item;
  }
};

}  // namespace

WidthFill::WidthFill(const std::vector<FillItem>& items, Fine kerf, Fine most_room) : kerf_(kerf) {
  std::priority_queue<Try, std::vector<Try>, Later> open;
  stairs_.push_back({0, 0, 0, 0});
  const auto go_on = [&](std::size_t from) {
    for (std::size_t i = 0; i < items.size(); ++i) {
      const Fine taken = stairs_[from].taken + items[i].across + kerf;
      if (taken <= most_room + kerf) open.push({taken, stairs_[from].worth + items[i].worth, from, i});
    }
  };
  go_on(0);
  while (!open.empty()) {
    const Try next = open.top();
    open.pop();
    if (next.worth <= stairs_.back().worth) continue;  // a smaller room gives as much
    stairs_.push_back({next.taken, next.worth, next.before, next.item});
    go_on(stairs_.size() - 1);
  }
  for (const auto& item : items)
    density_ = std::max(density_, static_cast<double>(item.worth) / static_cast<double>(item.across + kerf));
}

std::size_t WidthFill::at(Fine room) const {
  const auto above = std::upper_bound(stairs_.begin() + 1, stairs_.end(), room + kerf_,
                                      [](Fine taken, const Stair& stair) { return taken < stair.taken; });
  return static_cast<std::size_t>(above - stairs_.begin()) - 1;
}

std::vector<std::size_t> WidthFill::pieces(Fine room) const {
  std::vector<std::size_t> found;
  for (std::size_t i = at(room); i != 0; i = stairs_[i].before) found.push_back(stairs_[i].item);
  return found;
}

}  // namespace kerfbook::tuning
