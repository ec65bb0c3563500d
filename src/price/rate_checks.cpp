#include "price/rate_checks.h"

#include "base/text.h"
#include "mill/rate_doubt.h"
#include "price/price.h"

namespace kerfbook::billing {
namespace {

using book::doubt_rate;
using book::RateRange;

const RateRange kBoardFoot{{1, 100}, 20};
const RateRange kThousand{10, 20'000};
const RateRange kCubicMetre{1, 5'000};
const RateRange kCubicFoot{{1, 20}, 200};
const RateRange kLog{{1, 10}, 2'000};
const RateRange kPiece{{1, 100}, 2'000};
const RateRange kLinealFoot{{1, 100}, 100};
const RateRange kLinealMetre{{1, 50}, 300};
const RateRange kHour{1, 2'000};
const RateRange kDay{10, 20'000};
const RateRange kWay{{1, 20}, 100};
const RateRange kTooth{{1, 10}, 1'000};
const RateRange kBundle{{1, 2}, 2'000};
const RateRange kSum{0, 200'000};

RateRange of_log_scale(scaling::VolumeUnit unit) {
  switch (unit) {
    case scaling::VolumeUnit::board_foot:
      return kBoardFoot;
    case scaling::VolumeUnit::cubic_metre:
      return kCubicMetre;
    case scaling::VolumeUnit::cubic_foot:
    case scaling::VolumeUnit::hoppus_foot:
      return kCubicFoot;
  }
  return kBoardFoot;
}

RateRange range_of(Basis basis, scaling::VolumeUnit log_unit) {
  switch (basis) {
    case Basis::bf:
      return kBoardFoot;
    case Basis::log_scale:
      return of_log_scale(log_unit);
    case Basis::mbf:
    case Basis::log_mbf:
      return kThousand;
    case Basis::log:
      return kLog;
    case Basis::m3_log:
    case Basis::m3_sawn:
      return kCubicMetre;
    case Basis::piece:
      return kPiece;
    case Basis::lineal_foot:
      return kLinealFoot;
    case Basis::lineal_metre:
      return kLinealMetre;
    case Basis::hour:
      return kHour;
    case Basis::day:
      return kDay;
    case Basis::shares:
      return kSum;
  }
  return kSum;
}

/// The other basis that a rate far off was perhaps meant for.
std::string other_basis(const Price& price) {
  const bool dear = price.rate > Rational(20);
  if (price.basis == Basis::bf && dear) return "a price for a thousand board feet has basis = \"mbf\"";
  if (price.basis == Basis::log_scale && dear)
    return "a price for a thousand board feet of log scale has basis = \"log-mbf\"";
  if (price.basis == Basis::mbf && !dear) return "a price for one board foot has basis = \"bf\"";
  if (price.basis == Basis::log_mbf && !dear)
    return "a price for one board foot of log scale has basis = \"log-scale\"";
  return "look at rate and basis again";
}

std::optional<RateRange> range_of(Per per) {
  switch (per) {
    case Per::each:
      return kSum;
    case Per::hour:
      return kHour;
    case Per::day:
      return RateRange{{1, 10}, 20'000};  // of storage too, which is little
    case Per::mile:
    case Per::km:
      return kWay;
    case Per::tooth:
      return kTooth;
    case Per::bf:
      return RateRange{{1, 1000}, 20};
    case Per::mbf:
      return RateRange{1, 20'000};
    case Per::piece:
      return kPiece;
    case Per::lineal_foot:
      return kLinealFoot;
    case Per::lineal_metre:
      return kLinealMetre;
    case Per::log:
      return kLog;
    case Per::bundle:
      return kBundle;
    case Per::percent:
      return std::nullopt;
  }
  return std::nullopt;
}

}  // namespace

void doubt_price(book::TomlTable& table, const Price& price, const TermsOptions& options) {
  if (price.basis == Basis::shares) return;
  const std::string job = price.when.job.size() == 1 ? price.when.job.front() : std::string();
  const auto unit = options.log_unit(price.rule, job);
  std::string words(unit_after_rate(price.basis));
  if (price.basis == Basis::log_scale)
    words = "a " + std::string(scaling::unit_word(unit)) + " of net log scale";
  doubt_rate(table, "rate", price.rate, range_of(price.basis, unit), options.money_scale, words,
             other_basis(price));
  doubt_sum(table, "minimum_job", price.minimum_job, options);
}

void doubt_charge(book::TomlTable& table, const ChargeTerm& charge, const TermsOptions& options) {
  doubt_rate(table, "flat", charge.flat, {0, 20'000}, options.money_scale, "each time");
  if (const auto range = range_of(charge.per)) {
    doubt_rate(table, "rate", charge.rate, *range, options.money_scale,
               "per " + std::string(word_of(charge.per)), "look at rate and per again");
  } else {
    doubt_rate(table, "rate", charge.rate, {{1, 10}, 100}, 1, "percent", "5 % is written rate = 5");
  }
}

void doubt_tax(book::TomlTable& table, const Tax& tax) {
  doubt_rate(table, "rate", tax.percent, {{1, 10}, 50}, 1, "percent", "a tax of 5 % is written rate = 5");
}

void doubt_share(book::TomlTable& table, const ShareTerm& share) {
  doubt_rate(table, "percent", share.percent, {1, 100}, 1, "percent", "a half is written percent = 50");
}

void doubt_sum(book::TomlTable& table, std::string_view key, const std::optional<Money>& sum,
               const TermsOptions& options) {
  if (!sum) return;
  Rational whole(sum->minor);
  for (int i = 0; i < options.money_places; ++i) whole = whole / Rational(10);
  doubt_rate(table, key, whole, kSum, options.money_scale, "for a job");
}

}  // namespace kerfbook::billing
