#include "tuning/layer_fill.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace kerfbook::tuning {

namespace {

constexpr Fine kNoLimit = std::numeric_limits<Fine>::max() / 4;
constexpr Fine kOutside = -kNoLimit;

/// Half the chord of a circle so far from its centre, whole units, never too long.
Fine half_chord(Fine radius, Fine distance) {
  if (distance > radius) return kOutside;
  const Fine square = radius * radius - distance * distance;
  auto root = static_cast<Fine>(std::sqrt(static_cast<double>(square)));
  while (root * root > square) --root;
  while ((root + 1) * (root + 1) <= square) ++root;
  return root;
}

/// Puts the sides that go with a block of this ring in the order of what they gain over the room they take, at the best
/// rate a block can have.
void put_in_order(auto& sides, std::size_t ring, Fine half, double rate, std::vector<std::size_t>& order) {
  order.clear();
  for (std::size_t i = 0; i < sides.size(); ++i) {
    if (sides[i].ring <= ring) continue;
    sides[i].gain = static_cast<double>(sides[i].worth) -
                    rate * static_cast<double>(half - std::min(sides[i].limit, half));
    order.push_back(i);
  }
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return sides[a].gain != sides[b].gain ? sides[a].gain > sides[b].gain : a < b;
  });
}

}  // namespace

LayerFinder::LayerFinder(const LayerList& list, std::vector<Ring> rings, Fine wane)
    : list_(list), rings_(std::move(rings)), wane_(wane), halves_(rings_.size()), lefts_(rings_.size()) {}

/// Wane widens the room at the far face, but never past the near one.
void LayerFinder::half_chords(const LayerPlace& place) {
  for (std::size_t i = 0; i < rings_.size(); ++i) {
    Fine half = half_chord(rings_[i].radius, place.far);
    if (wane_ > 0 && half != kOutside)
      half = std::min(half + wane_, half_chord(rings_[i].radius, place.near));
    halves_[i] = half;
    lefts_[i] = half == kOutside || !place.wall ? half : std::min(half, -*place.wall);
  }
}

/// All rows of boards out of the taper that can stand on one side, built from the outside inwards. A board belongs to a
/// ring only if it reaches out of the next longer one's: else it would be as good there.
void LayerFinder::find_sides(const LayerKind& kind, const std::vector<Fine>& halves, Sides& sides) const {
  sides.assign(1, {kNoLimit, 0, rings_.size(), 0, 0, 0});
  const Fine kerf = list_.between_boards;
  for (std::size_t done = 0; done < sides.size(); ++done) {
    for (std::size_t ring = std::min(sides[done].ring, rings_.size() - 1); ring > 0; --ring) {
      const Fine edge = std::min(sides[done].limit, halves[ring]);
      if (halves[ring] == kOutside || edge <= halves[ring - 1]) continue;
      const auto& worth = kind.worth[rings_[ring].tier];
      for (std::size_t i = 0; i < worth.size(); ++i) {
        const Fine limit = edge - kind.across[i] - kerf;
        if (worth[i] > 0 && limit + kerf >= -halves_[ring])
          sides.push_back({limit, sides[done].worth + worth[i], ring, i, done, 0});
      }
    }
  }
}

/// The block's own length is that of `ring`; beside it stand only shorter boards. What a block can be worth at most, and
/// the gains of two sides, bound what they give together, so most pairs need not be looked at.
void LayerFinder::try_block(const LayerKind& kind, std::size_t ring, bool walled, Choice& best) {
  const WidthFill& fill = kind.fills[rings_[ring].tier];
  const double rate = fill.most_per_room();
  const Fine kerf = list_.between_boards;
  put_in_order(right_, ring, halves_[ring], rate, right_order_);
  if (walled) put_in_order(left_, ring, lefts_[ring], rate, left_order_);
  const auto& lefts = walled ? left_ : right_;
  const auto& left_order = walled ? left_order_ : right_order_;
  const double base = rate * static_cast<double>(halves_[ring] + lefts_[ring] + kerf) * (1 + 1e-12);
  const auto bound = [&](const Side& a, const Side& b) { return base + a.gain + b.gain; };
  for (std::size_t a = 0; a < right_order_.size(); ++a) {
    const Side& right = right_[right_order_[a]];
    const std::size_t first = walled ? 0 : a;
    if (bound(right, lefts[left_order[first]]) < static_cast<double>(best.worth)) return;
    for (std::size_t b = first; b < left_order.size(); ++b) {
      const Side& left = lefts[left_order[b]];
      if (bound(right, left) < static_cast<double>(best.worth)) break;
      const Fine from = std::min(left.limit, lefts_[ring]);
      const Fine to = std::min(right.limit, halves_[ring]);
      if (from + to + kerf < 0) continue;
      const std::int64_t worth = fill.worth(from + to) + left.worth + right.worth;
      if (worth > best.worth) best = {worth, ring, left_order[b], right_order_[a], from, to};
    }
  }
}

LayerFinder::Choice LayerFinder::choose(const LayerKind& kind, const LayerPlace& place) {
  Choice best;
  if (rings_.empty() || place.far > rings_.back().radius) return best;
  half_chords(place);
  find_sides(kind, halves_, right_);
  if (place.wall) find_sides(kind, lefts_, left_);
  for (std::size_t ring = 0; ring < rings_.size(); ++ring)
    if (halves_[ring] != kOutside) try_block(kind, ring, place.wall.has_value(), best);
  return best;
}

std::int64_t LayerFinder::worth(const LayerKind& kind, const LayerPlace& place) {
  return choose(kind, place).worth;
}

/// `way`: -1 to the left of `from`, 1 to the right. The innermost board comes first.
void LayerFinder::lay_chain(const LayerKind& kind, const Sides& sides, std::size_t side, Fine from, int way,
                            std::vector<LaidBoard>& boards) const {
  for (; side != 0; side = sides[side].outer) {
    const Fine across = kind.across[sides[side].item];
    boards.push_back({sides[side].item, rings_[sides[side].ring].tier, way < 0 ? from - across : from});
    from += way * (across + list_.between_boards);
  }
}

std::vector<LaidBoard> LayerFinder::boards(const LayerKind& kind, const LayerPlace& place) {
  std::vector<LaidBoard> laid;
  const Choice choice = choose(kind, place);
  if (choice.worth == 0) return laid;
  const Fine kerf = list_.between_boards;
  const std::size_t tier = rings_[choice.ring].tier;
  const auto block = kind.fills[tier].pieces(choice.left_limit + choice.right_limit);
  Fine size = -kerf;  // no block: one kerf parts the two sides
  for (const auto item : block) size += kind.across[item] + kerf;
  const Fine start = std::max(-choice.left_limit, std::min(choice.right_limit - size, -size / 2));
  lay_chain(kind, place.wall ? left_ : right_, choice.left, start - kerf, -1, laid);
  std::reverse(laid.begin(), laid.end());
  Fine at = start;
  for (const auto item : block) {
    laid.push_back({item, tier, at});
    at += kind.across[item] + kerf;
  }
  lay_chain(kind, right_, choice.right, start + size + kerf, 1, laid);
  return laid;
}

}  // namespace kerfbook::tuning
