// log_items.cpp -- logs under prices by what they scale, hold or are: with a minimum log, and by the price's own rule.
#include "price/sheet_items.h"
#include "sheet/raw_log.h"

namespace kerfbook::billing {

namespace {

bool counts_logs(Basis basis) {
  return basis == Basis::log_scale || basis == Basis::log_mbf || basis == Basis::log ||
         basis == Basis::m3_log;
}

scaling::LogMeasure at_least(scaling::LogMeasure log, const MinimumLog& minimum) {
  for (Length& reading : log.small)
    if (in_inches(reading) < in_inches(minimum.diameter)) reading = minimum.diameter;
  if (in_inches(log.length) < in_inches(minimum.length)) log.length = minimum.length;
  return log;
}

scaling::LogMeasure least_log(const MinimumLog& minimum) {
  scaling::LogMeasure log;
  log.small = {minimum.diameter};
  log.length = minimum.length;
  return log;
}

}  // namespace

scaling::Taper measured_taper(const JobTerms& job) {
  scaling::Taper taper = job.taper;
  taper.trim = {};
  return taper;
}

std::optional<scaling::Practice> billed_practice(const JobTerms& job, const Price& price) {
  if (price.rule.empty()) return job.practice;
  for (const scaling::Practice& one : job.practices)
    if (same_word(one.name, price.rule)) return one;
  return scaling::find_practice(price.rule);
}

std::string minimum_words(const Price& price) {
  if (!price.minimum_log) return "";
  return ", a log counted as at least " + scaling::write_log_spec(least_log(*price.minimum_log));
}

/// What `measure` says of the log, raised to the minimum log, but never less than the minimum log itself.
template <class Measure>
Rational SheetItems::at_least_minimum(const Fact& fact, const Price& price, const Rational& plain,
                                      Measure&& measure) {
  if (!price.minimum_log) return plain;
  const scaling::LogMeasure raised = at_least(fact.log, *price.minimum_log);
  Rational most = plain;
  for (const std::optional<Rational>& one :
       {measure(raised, fact.defects),
        measure(least_log(*price.minimum_log), std::vector<scaling::Defect>())})
    if (one && most < *one) most = *one;
  if (plain < most)
    note_ = "Charged as the minimum log: " + words_of(fact) + ", " + scaling::write_log_spec(fact.log);
  return most;
}

void SheetItems::log(const Fact& fact) {
  const Price* price = find_price(terms_, question(fact));
  if (price == nullptr || !counts_logs(price->basis)) return;
  if (price->basis == Basis::log) {
    price_item(fact, *price, Rational(1), "logs").rate.places = 0;
    return;
  }
  if (!fact.measured) {
    problem(fact, words_of(fact) + " was not measured and its price is by what it measures");
    return;
  }
  note_.clear();
  if (price->basis == Basis::m3_log)
    by_content(fact, *price);
  else
    by_scale(fact, *price);
}

void SheetItems::by_content(const Fact& fact, const Price& price) {
  const scaling::Taper taper = measured_taper(job_);
  const auto content = [&](const scaling::LogMeasure& log, const auto&) {
    return std::optional(Rational(scaling::content(log, taper).cubic_feet, scaling::kPerUnit));
  };
  const Rational feet = at_least_minimum(fact, price, *content(fact.log, fact.defects), content);
  price_item(fact, price, feet * measure::kCubicMetresPerCubicFoot, "m3").note = note_;
}

void SheetItems::by_scale(const Fact& fact, const Price& price) {
  const std::optional<scaling::Practice> practice = billed_practice(job_, price);
  if (!practice) {
    problem(fact, "the price at line " + std::to_string(price.line) + " names the log rule '" + price.rule +
                      "', which is not known");
    return;
  }
  const auto net = [&](const scaling::LogMeasure& log,
                       const std::vector<scaling::Defect>& defects) -> std::optional<Rational> {
    const auto scaled = book::scaled({log, defects}, *practice, job_.system);
    if (!scaled) return std::nullopt;
    return Rational(scaled->net, scaling::kPerUnit);
  };
  const std::optional<Rational> plain = net(fact.log, fact.defects);
  if (!plain) {
    problem(fact, words_of(fact) + " cannot be scaled by " + scaling::rule_words(practice->name) +
                      " from what was measured");
    return;
  }
  const Rational charged = at_least_minimum(fact, price, *plain, net);
  const std::string unit(scaling::unit_word(book::unit_in(*practice, job_.system)));
  Item& made =
      price_item(fact, price, charged, price.basis == Basis::log_mbf ? "MBF scale" : unit + " scale");
  const measure::BillRounding rounding = joined(job_.convention, price.count).rounding;
  made.rate.each_line = each_line(rounding);
  if (unit != "bf") made.rate.places = 3;
  made.rate.counted = "net log scale by " + practice->name + minimum_words(price);
  made.note = note_;
}

}  // namespace kerfbook::billing
