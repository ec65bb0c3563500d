#include "tuning/residue.h"

#include <algorithm>
#include <array>

namespace kerfbook::tuning {

namespace {

template <std::size_t N>
bool among(std::string_view kind, const std::array<std::string_view, N>& kinds) {
  return std::find(kinds.begin(), kinds.end(), kind) != kinds.end();
}

constexpr std::array<std::string_view, 3> kStacked{"slabs", "edgings", "trim"};
constexpr std::array<std::string_view, 4> kLoose{"sawdust", "chips", "bark", "shavings"};

}  // namespace

std::optional<Rational> solid_share(std::string_view kind) {
  if (among(kind, kStacked)) return Rational(75, 128);
  if (among(kind, kLoose)) return Rational(2, 5);
  return std::nullopt;
}

OutOf out_of(std::string_view kind) {
  if (kind == "sawdust") return OutOf::sawdust;
  return among(kind, kStacked) || kind == "chips" ? OutOf::rest : OutOf::none;
}

}  // namespace kerfbook::tuning
