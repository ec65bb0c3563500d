// saw_by_hand.h -- mills and logs for the tests of the sawing model, and two slower ways to saw a log: every way there is,
// and the simplest there is.
#pragma once

#include <algorithm>
#include <cmath>
#include <map>
#include <vector>

#include "tuning/sawing_model.h"

namespace kerfbook::tuning::test {

inline double bf_of(const Pattern& pattern) {
  return static_cast<double>(pattern.bf_counts) / static_cast<double>(measure::kCountsPerBoardFoot);
}

/// A size that is cut `over` wider and thicker than it is called.
inline SawProduct size(std::int64_t thickness_64ths, std::int64_t width_64ths, Fine over,
                       const std::vector<std::int64_t>& feet) {
  SawProduct product;
  product.nominal = {{thickness_64ths, measure::System::inch}, {width_64ths, measure::System::inch}};
  product.thickness = fine(product.nominal.thickness) + over;
  product.width = fine(product.nominal.width) + over;
  for (const auto foot : feet) product.lengths.push_back(measure::feet(foot));
  return product;
}
inline SawProduct inches_of(std::int64_t thickness, std::int64_t width, Fine over,
                            const std::vector<std::int64_t>& feet) {
  return size(thickness * 64, width * 64, over, feet);
}
/// 1x4 to 1x12, 2x4 to 2x12, 4x4, 4x6; 8 to 16 ft, even feet.
inline SawMill usual_mill(Fine kerf, Fine over) {
  SawMill mill;
  mill.head_kerf = mill.edger_kerf = kerf;
  const std::vector<std::int64_t> feet{8, 10, 12, 14, 16};
  for (const std::int64_t thickness : {1, 2})
    for (const std::int64_t width : {4, 6, 8, 10, 12})
      mill.products.push_back(inches_of(thickness, width, over, feet));
  mill.products.push_back(inches_of(4, 4, over, feet));
  mill.products.push_back(inches_of(4, 6, over, feet));
  return mill;
}
inline SawLog log_of(double small_inches, std::int64_t feet, double taper_per_foot = 0.125, Fine trim = 0) {
  const auto small = static_cast<Fine>(std::llround(small_inches * kFineInch));
  const Fine length = feet * kFineFoot + trim;
  const double growth = taper_per_foot * static_cast<double>(length) / kFineFoot * kFineInch;
  return {small, small + static_cast<Fine>(std::llround(growth)), length, trim};
}

/// Tries every layer at every step and every row of boards, each in every length. For small logs only.
class EveryWay {
 public:
  EveryWay(const SawMill& mill, const SawLog& log) : mill_(mill), log_(log) {
    flat_ = mill.layers == LayersBy::thickness;
    for (std::size_t i = 0; i < mill.products.size(); ++i) {
      for (const auto& length : mill.products[i].lengths) {
        if (fine(length) + log.trim > log.length || mill.products[i].width < mill.least_width) continue;
        pieces_.push_back({i, length, worth_of(mill.products[i], length), radius(length)});
      }
    }
    top_ = -(widest() + mill.step - 1) / mill.step * mill.step;
  }

  std::int64_t most() { return from(top_); }

 private:
  struct Piece {
    std::size_t product;
    measure::Length length;
    std::int64_t worth;
    Fine radius;
  };
  std::int64_t worth_of(const SawProduct& product, measure::Length length) const {
    const std::int64_t counts = product.nominal.thickness.count * product.nominal.width.count * length.count;
    if (mill_.worth == WorthBy::board_feet) return counts;
    const auto paid = static_cast<double>(counts) * static_cast<double>(product.per_mbf) /
                      static_cast<double>(measure::kCountsPerBoardFoot);
    return std::llround(paid) + product.per_piece * 1000;
  }
  Fine radius(measure::Length length) const {
    const Fine from = log_.length - log_.trim - fine(length);
    return (log_.small_end + (log_.large_end - log_.small_end) * from / log_.length) / 2;
  }
  Fine widest() const {
    Fine most = 0;
    for (const auto& piece : pieces_) most = std::max(most, piece.radius);
    return most;
  }
  Fine down(const Piece& piece) const {
    return flat_ ? mill_.products[piece.product].thickness : mill_.products[piece.product].width;
  }
  Fine across(const Piece& piece) const {
    return flat_ ? mill_.products[piece.product].width : mill_.products[piece.product].thickness;
  }
  /// The most that can lie at or below `top`: one layer there, or none.
  std::int64_t from(Fine top) {
    if (top > -top_) return 0;
    std::int64_t most = from(top + mill_.step);
    std::vector<Fine> tried;
    for (const auto& piece : pieces_) {
      const Fine thick = down(piece);
      if (std::find(tried.begin(), tried.end(), thick) != tried.end()) continue;
      tried.push_back(thick);
      const std::int64_t here = layer(thick, top);
      if (here == 0) continue;
      const Fine pitch = thick + (flat_ ? mill_.head_kerf : mill_.edger_kerf);
      most = std::max(most, here + from(top + (pitch + mill_.step - 1) / mill_.step * mill_.step));
    }
    return most;
  }
  std::int64_t layer(Fine thick, Fine top) {
    const auto known = layers_.find({thick, top});
    if (known != layers_.end()) return known->second;
    const Fine far = std::max(-top, top + thick);
    const Fine near = top < 0 && top + thick > 0 ? 0 : far - thick;
    const std::int64_t most = row(thick, far, near, 0, -1e18, 1e18);
    layers_[{thick, top}] = most;
    return most;
  }
  /// Boards from left to right: the first may begin anywhere between `least` and `last`, the next is `along` from it.
  std::int64_t row(Fine thick, Fine far, Fine near, Fine along, double least, double last) const {
    std::int64_t most = 0;
    for (const auto& piece : pieces_) {
      if (down(piece) != thick || far > piece.radius) continue;
      const double half = room(piece.radius, far, near);
      const double from = std::max(least, -half - static_cast<double>(along));
      const double to = std::min(last, half - static_cast<double>(along + across(piece)));
      if (from > to) continue;
      const Fine next = along + across(piece) + (flat_ ? mill_.edger_kerf : mill_.head_kerf);
      most = std::max(most, piece.worth + row(thick, far, near, next, from, to));
    }
    return most;
  }
  double room(Fine radius, Fine far, Fine near) const {
    const auto half = [&](Fine at) {
      return std::floor(std::sqrt(static_cast<double>(radius * radius - at * at)));
    };
    return mill_.wane == 0 ? half(far) : std::min(half(far) + static_cast<double>(mill_.wane), half(near));
  }

  const SawMill& mill_;
  SawLog log_;
  bool flat_ = true;
  std::vector<Piece> pieces_;
  Fine top_ = 0;
  std::map<std::pair<Fine, Fine>, std::int64_t> layers_;
};

/// Through and through: boards of one thickness, the first layer's lower face on the centre or its middle there, in each
/// layer the widest board of full length that goes in, then the widest in what is left. Board feet.
inline double live_sawn(const SawMill& mill, const SawLog& log, std::int64_t thickness, bool centred) {
  std::vector<const SawProduct*> widths;
  for (const auto& product : mill.products)
    if (product.nominal.thickness == measure::inches(thickness)) widths.push_back(&product);
  std::sort(widths.begin(), widths.end(), [](auto* a, auto* b) { return a->width > b->width; });
  const measure::Length length = widths.front()->lengths.back();
  const double radius = static_cast<double>(log.small_end) / 2;
  const auto thick = static_cast<double>(widths.front()->thickness);
  const double pitch = thick + static_cast<double>(mill.head_kerf);
  double bf = 0;
  for (int layer = -60; layer <= 60; ++layer) {
    const double top = layer * pitch - (centred ? thick / 2 : 0);
    const double far = std::max(-top, top + thick);
    if (far >= radius) continue;
    double left = 2 * std::sqrt(radius * radius - far * far);
    for (const auto* product : widths) {
      for (; static_cast<double>(product->width) <= left;
           left -= static_cast<double>(product->width + mill.edger_kerf))
        bf += static_cast<double>(thickness * product->nominal.width.count / 64) *
              static_cast<double>(length.count) / 768 / 12;
    }
  }
  return bf;
}

}  // namespace kerfbook::tuning::test
