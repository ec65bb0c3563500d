// layer_list.cpp -- the mill's list of sizes as layers, and the log as circles.
#include <algorithm>
#include <map>

#include "tuning/layer_fill.h"

namespace kerfbook::tuning {

namespace {

/// Nominal volume in counts of the inch system, whatever the size was written in.
std::int64_t counts_of(const SawProduct& product, measure::Length length) {
  return measure::converted(measure::volume(product.nominal, length, 1), measure::System::inch).count;
}

std::int64_t worth_of(const SawProduct& product, measure::Length length, WorthBy by) {
  const std::int64_t counts = counts_of(product, length);
  if (by == WorthBy::board_feet) return counts;
  // Minor units per 1000 bf are thousandths of a minor unit per board foot.
  const Rational by_volume = measure::board_feet({counts, measure::System::inch}) * Rational(product.per_mbf);
  return by_volume.rounded(0) + product.per_piece * 1000;
}

bool can_be_cut(const SawProduct& product, const SawMill& mill) {
  return product.thickness > 0 && product.width > 0 && product.width >= mill.least_width &&
         (mill.most_thickness == 0 || product.thickness <= mill.most_thickness) &&
         (mill.most_width == 0 || product.width <= mill.most_width);
}

std::vector<LengthTier> tiers_of(const SawMill& mill) {
  std::vector<LengthTier> tiers;
  for (const auto& product : mill.products) {
    if (!can_be_cut(product, mill)) continue;
    for (const auto& length : product.lengths) tiers.push_back({length, fine(length)});
  }
  std::stable_sort(tiers.begin(), tiers.end(),
                   [](const LengthTier& a, const LengthTier& b) { return a.along > b.along; });
  const auto same = [](const LengthTier& a, const LengthTier& b) { return a.along == b.along; };
  tiers.erase(std::unique(tiers.begin(), tiers.end(), same), tiers.end());
  return tiers;
}

void price(LayerKind& kind, const SawMill& mill, const LayerList& list, Fine most_diameter) {
  for (const auto& tier : list.tiers) {
    std::vector<std::int64_t> worth(kind.products.size(), 0);
    std::vector<measure::Length> chosen(kind.products.size());
    std::vector<FillItem> items;
    for (std::size_t i = 0; i < kind.products.size(); ++i) {
      const auto& product = mill.products[kind.products[i]];
      for (const auto& length : product.lengths) {
        if (fine(length) > tier.along) continue;
        const std::int64_t here = worth_of(product, length, mill.worth);
        const bool longer = here == worth[i] && fine(length) > fine(chosen[i]);
        if (here > worth[i] || (here > 0 && longer)) {
          worth[i] = here;
          chosen[i] = length;
        }
      }
      items.push_back({kind.across[i], worth[i]});
    }
    kind.fills.emplace_back(items, list.between_boards, most_diameter);
    kind.worth.push_back(std::move(worth));
    kind.length.push_back(std::move(chosen));
  }
}

}  // namespace

Fine fine(measure::Length length) {
  if (length.system == measure::System::inch) return length.count * (kFineInch / measure::kPerInch);
  return (measure::in_inches(length) * Rational(kFineInch)).rounded(0);
}

LayerList layer_list(const SawMill& mill, Fine most_diameter) {
  LayerList list;
  const bool flat = mill.layers == LayersBy::thickness;
  list.between_layers = flat ? mill.head_kerf : mill.edger_kerf;
  list.between_boards = flat ? mill.edger_kerf : mill.head_kerf;
  list.tiers = tiers_of(mill);
  std::map<Fine, LayerKind> kinds;
  for (std::size_t i = 0; i < mill.products.size(); ++i) {
    const auto& product = mill.products[i];
    if (!can_be_cut(product, mill)) continue;
    LayerKind& kind = kinds[flat ? product.thickness : product.width];
    kind.down = flat ? product.thickness : product.width;
    kind.products.push_back(i);
    kind.across.push_back(flat ? product.width : product.thickness);
  }
  for (auto& [down, kind] : kinds) {
    price(kind, mill, list, most_diameter);
    list.kinds.push_back(std::move(kind));
  }
  return list;
}

std::vector<Ring> rings_of(const SawLog& log, const std::vector<LengthTier>& tiers) {
  std::vector<Ring> rings;
  const Fine growth = std::max<Fine>(log.large_end - log.small_end, 0);
  for (std::size_t i = 0; i < tiers.size(); ++i) {
    const Fine from = log.length - log.trim - tiers[i].along;  // where its thin end is, from the small end
    if (from < 0 || log.length <= 0) continue;
    const Fine radius = (log.small_end + growth * from / log.length) / 2;
    if (rings.empty() || radius > rings.back().radius) rings.push_back({i, radius});
  }
  return rings;
}

}  // namespace kerfbook::tuning
