#include "base/settle.h"

#include <algorithm>
#include <numeric>
#include <stdexcept>

namespace kerfbook {
namespace {

std::int64_t power_of_ten(int places) {
  std::int64_t power = 1;
  for (int i = 0; i < places; ++i) power *= 10;
  return power;
}

Rational sum(const std::vector<Rational>& values) {
  return std::accumulate(values.begin(), values.end(), Rational(0));
}

Wide sum(const std::vector<Wide>& values) {
  Wide total = 0;
  for (const Wide value : values) {
    if (__builtin_add_overflow(total, value, &total))
      throw std::overflow_error("a number grew past 127 bits");
  }
  return total;
}

Wide times_power(Wide value, int places) {
  Wide product = 0;
  if (__builtin_mul_overflow(value, Wide{power_of_ten(places)}, &product)) {
    throw std::overflow_error("a number grew past 127 bits");
  }
  return product;
}

/// A line that may move, and what it lost by rounding: exact less rounded.
template <class Lost>
struct Line {
  std::size_t at;
  Lost lost;
};

/// Moves the lines that lost most by a unit each until they add to `total`. `lost_by(i, units)` is what line i loses
/// when it is shown as so many units, in any unit as long as it is the same for all.
template <class LostBy>
void move_lines(std::vector<std::int64_t>& rounded, std::int64_t total, const LostBy& lost_by) {
  using Lost = decltype(lost_by(0, 0));
  const std::int64_t missing = total - std::accumulate(rounded.begin(), rounded.end(), std::int64_t{0});
  if (missing == 0) return;
  const bool up = missing > 0;
  const Lost nothing(0);
  std::vector<Line<Lost>> lines;
  for (std::size_t i = 0; i < rounded.size(); ++i) {
    Lost lost = lost_by(i, rounded[i]);
    if (up ? nothing < lost : lost < nothing) lines.push_back({i, lost});
  }
  const auto moves = static_cast<std::size_t>(up ? missing : -missing);
  if (moves > lines.size()) throw std::logic_error("settle: the total is not that of these lines");
  const auto last = lines.begin() + static_cast<std::ptrdiff_t>(moves);
  std::nth_element(lines.begin(), last, lines.end(), [up](const Line<Lost>& a, const Line<Lost>& b) {
    if (a.lost == b.lost) return a.at < b.at;
    return up ? b.lost < a.lost : a.lost < b.lost;
  });
  std::for_each(lines.begin(), last, [&](const Line<Lost>& line) { rounded[line.at] += up ? 1 : -1; });
}

/// `settle_one(values, total)` settles some of the values; first the sums of the groups, then each group.
template <class Value, class SettleOne>
std::vector<std::int64_t> in_groups(const std::vector<Value>& values, const std::vector<std::size_t>& group,
                                    std::int64_t total, const SettleOne& settle_one) {
  std::size_t groups = 0;
  for (const std::size_t g : group) groups = std::max(groups, g + 1);
  std::vector<std::vector<Value>> members(groups);
  for (std::size_t i = 0; i < values.size(); ++i) members[group[i]].push_back(values[i]);
  std::vector<Value> sums;
  sums.reserve(groups);
  for (const auto& lines : members) sums.push_back(sum(lines));
  const auto settled_sums = settle_one(sums, total);
  std::vector<std::vector<std::int64_t>> settled(groups);
  for (std::size_t g = 0; g < groups; ++g) settled[g] = settle_one(members[g], settled_sums[g]);
  std::vector<std::int64_t> rounded(values.size());
  std::vector<std::size_t> next(groups, 0);
  for (std::size_t i = 0; i < values.size(); ++i) rounded[i] = settled[group[i]][next[group[i]]++];
  return rounded;
}

}  // namespace

std::int64_t rounded_total(const std::vector<Rational>& exact, int places) {
  return sum(exact).rounded(places);
}

std::vector<std::int64_t> settle(const std::vector<Rational>& exact, int places, std::int64_t total) {
  std::vector<std::int64_t> rounded;
  rounded.reserve(exact.size());
  for (const auto& value : exact) rounded.push_back(value.rounded(places));
  const Rational power(power_of_ten(places));
  move_lines(rounded, total,
             [&](std::size_t i, std::int64_t units) { return exact[i] * power - Rational(units); });
  return rounded;
}

std::vector<std::int64_t> settle(const std::vector<Wide>& tops, Wide under, int places, std::int64_t total) {
  std::vector<std::int64_t> rounded;
  rounded.reserve(tops.size());
  for (const Wide top : tops) rounded.push_back(round_half_up(times_power(top, places), under));
  move_lines(rounded, total,
             [&](std::size_t i, std::int64_t units) { return times_power(tops[i], places) - units * under; });
  return rounded;
}

std::vector<std::int64_t> settle_in_groups(const std::vector<Rational>& exact,
                                           const std::vector<std::size_t>& group, int places,
                                           std::int64_t total) {
  return in_groups(exact, group, total,
                   [places](const std::vector<Rational>& some, std::int64_t their_total) {
                     return settle(some, places, their_total);
                   });
}

std::vector<std::int64_t> settle_in_groups(const std::vector<Wide>& tops, Wide under,
                                           const std::vector<std::size_t>& group, int places,
                                           std::int64_t total) {
  return in_groups(tops, group, total, [&](const std::vector<Wide>& some, std::int64_t their_total) {
    return settle(some, under, places, their_total);
  });
}

}  // namespace kerfbook
