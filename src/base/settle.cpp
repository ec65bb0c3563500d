#include "base/settle.h"

#include <algorithm>
#include <numeric>
#include <stdexcept>

namespace kerfbook {
namespace {

Rational in_units(const Rational& value, int places) {
  std::int64_t power = 1;
  for (int i = 0; i < places; ++i) power *= 10;
  return value * Rational(power);
}

Rational sum(const std::vector<Rational>& values) {
  return std::accumulate(values.begin(), values.end(), Rational(0));
}

struct Line {
  std::size_t at;
  Rational lost;  ///< exact less rounded, in units of the last place
};

}  // namespace

std::int64_t rounded_total(const std::vector<Rational>& exact, int places) {
  return sum(exact).rounded(places);
}

std::vector<std::int64_t> settle(const std::vector<Rational>& exact, int places, std::int64_t total) {
  std::vector<std::int64_t> rounded;
  rounded.reserve(exact.size());
  std::vector<Line> lines;
  std::int64_t missing = total;
  for (const auto& value : exact) {
    const std::int64_t units = value.rounded(places);
    missing -= units;
    lines.push_back({rounded.size(), in_units(value, places) - Rational(units)});
    rounded.push_back(units);
  }
  if (missing == 0) return rounded;
  const bool up = missing > 0;
  std::erase_if(lines,
                [up](const Line& line) { return line.lost.is_zero() || line.lost.is_negative() == up; });
  std::stable_sort(lines.begin(), lines.end(),
                   [up](const Line& a, const Line& b) { return up ? b.lost < a.lost : a.lost < b.lost; });
  const std::size_t moves = static_cast<std::size_t>(up ? missing : -missing);
  if (moves > lines.size()) throw std::logic_error("settle: the total is not that of these lines");
  for (std::size_t i = 0; i < moves; ++i) rounded[lines[i].at] += up ? 1 : -1;
  return rounded;
}

std::vector<std::int64_t> settle_in_groups(const std::vector<Rational>& exact,
                                           const std::vector<std::size_t>& group, int places,
                                           std::int64_t total) {
  std::size_t groups = 0;
  for (const std::size_t g : group) groups = std::max(groups, g + 1);
  std::vector<std::vector<Rational>> members(groups);
  for (std::size_t i = 0; i < exact.size(); ++i) members[group[i]].push_back(exact[i]);
  std::vector<Rational> sums;
  sums.reserve(groups);
  for (const auto& lines : members) sums.push_back(sum(lines));
  const auto settled_sums = settle(sums, places, total);
  std::vector<std::vector<std::int64_t>> settled(groups);
  for (std::size_t g = 0; g < groups; ++g) settled[g] = settle(members[g], places, settled_sums[g]);
  std::vector<std::int64_t> rounded(exact.size());
  std::vector<std::size_t> next(groups, 0);
  for (std::size_t i = 0; i < exact.size(); ++i) rounded[i] = settled[group[i]][next[group[i]]++];
  return rounded;
}

}  // namespace kerfbook
