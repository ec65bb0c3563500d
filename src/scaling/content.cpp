// content.cpp -- the wood in a log, for recovery: whatever was measured decides the method, and the method is named.
#include <fmt/core.h>

#include "scaling/pieces.h"
#include "scaling/rules.h"

namespace kerfbook::scaling {
namespace {

Ticks mean(const std::vector<Length>& readings) {
  if (readings.empty()) return 0;
  Ticks sum = 0;
  for (const Length reading : readings) sum += ticks(reading);
  return sum / static_cast<Ticks>(readings.size());
}

Content by_rule(std::string_view rule, const Piece& piece, std::string method) {
  const Exact exact = find_rule(rule)->scale(piece);
  return {round_half_up(exact.num, exact.den), std::move(method)};
}

/// "1/8" where it is a sixty-fourth of an inch, else "0.1".
std::string taper_words(std::int64_t mils) {
  if (mils * measure::kPerInch % 1000 == 0) {
    return measure::write_inches({mils * measure::kPerInch / 1000, System::inch});
  }
  return plain(shown(Rational(mils, 1000), 3));
}

Content by_taper(Piece piece, const LogMeasure& log, const Taper& taper) {
  if (log.length.system == System::inch) {
    piece.large = piece.small + ticks(log.length) * taper.per_foot_mils / 12'000;
    return by_rule(
        "smalian", piece,
        fmt::format("Smalian, small end and taper {} in per ft", taper_words(taper.per_foot_mils)));
  }
  piece.large = piece.small + ticks(log.length) * taper.per_metre / 100'000;
  return by_rule("smalian", piece,
                 fmt::format("Smalian, small end and taper {} mm per m",
                             plain(shown(Rational(taper.per_metre, 100), 2))));
}

}  // namespace

Content content(const LogMeasure& log, const Taper& taper) {
  Piece piece;
  piece.small = mean(log.small);
  piece.large = mean(log.large);
  piece.mid = mean(log.mid);
  piece.girth = log.girth ? ticks(*log.girth) : 0;
  piece.length = ticks(log.length) + ticks(taper.trim);
  const bool middle = piece.mid > 0 || piece.girth > 0;
  if (piece.small > 0 && piece.large > 0 && middle)
    return by_rule("newton", piece, "Newton, both ends and middle");
  if (piece.small > 0 && piece.large > 0) return by_rule("smalian", piece, "Smalian, both ends");
  if (piece.mid > 0) return by_rule("huber", piece, "Huber, middle diameter");
  if (piece.girth > 0) return by_rule("huber", piece, "Huber, middle girth");
  return by_taper(piece, log, taper);
}

}  // namespace kerfbook::scaling
