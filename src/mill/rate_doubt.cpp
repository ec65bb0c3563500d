#include "mill/rate_doubt.h"

namespace kerfbook::book {
namespace {

std::string digits(const Rational& value) {
  constexpr int kPlaces = 6;
  return shortest(shown(value, kPlaces));
}

}  // namespace

void doubt_rate(TomlTable& table, std::string_view key, const Rational& rate, const RateRange& range,
                std::int64_t money_scale, std::string_view unit, std::string_view instead) {
  const Rational size = rate.is_negative() ? -rate : rate;
  const Rational most = range.most * Rational(money_scale);
  if (size.is_zero() || (range.least <= size && size <= most)) return;
  const std::string beyond = size < range.least ? "under " + digits(range.least) : "over " + digits(most);
  table.doubtful_at(key,
                    digits(rate) + (unit.empty() ? "" : " ") + std::string(unit) + ": " + beyond +
                        ", which such a price seldom is",
                    std::string(instead));
}

}  // namespace kerfbook::book
