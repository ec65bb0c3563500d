// sheet_items.h -- the facts of one sheet under the prices and charges that hold for them. Private to itemise.cpp
// (prices of lumber and time), log_items.cpp (of logs), charge_items.cpp (charges) and overlooked.cpp.
#pragma once

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "base/text.h"
#include "price/bill.h"
#include "price/price.h"

namespace kerfbook::billing {

inline bool one_of(const std::vector<std::string>& words, const std::string& word) {
  return std::any_of(words.begin(), words.end(),
                     [&](const std::string& one) { return same_word(one, word); });
}
inline bool whole_feet(measure::BillRounding r) {
  return r == measure::BillRounding::total_whole || r == measure::BillRounding::line_whole;
}
inline bool each_line(measure::BillRounding r) {
  return r == measure::BillRounding::line_hundredths || r == measure::BillRounding::line_whole;
}
/// Pieces for board measure; lineal feet are one long piece as far as volume goes.
measure::Pieces pieces_of(const Fact& fact);
/// A convention as it holds for the fact: lineal feet have no single length or width of board to round.
measure::Convention counting(const Fact& fact, measure::Convention by);
/// Feet or metres end to end.
Rational lineal(const Fact& fact, const measure::Convention& by, bool metres);
/// ", a log counted as at least 12x8"; empty without a minimum log.
std::string minimum_words(const Price& price);

/// The facts of one sheet, worked through together: a charge line on it goes before what would come by itself.
class SheetItems {
 public:
  SheetItems(const Terms& terms, const JobTerms& job, const std::vector<Waiver>& waivers, Itemised& out)
      : terms_(terms), job_(job), waivers_(waivers), out_(out) {
    const Agreement* agreement = find_agreement(terms, job.job);
    if (agreement != nullptr) agreed_ = agreement->agreed;
  }

  void add(const std::vector<const Fact*>& facts, bool first_of_day);

 private:
  Question question(const Fact& fact) const;
  void lumber(const Fact& fact);
  void sold(const Fact& fact);
  void bundle(const Fact& fact);
  void by_price(const Fact& fact, const Price& price);
  void log(const Fact& fact);
  void by_scale(const Fact& fact, const Price& price);
  void by_content(const Fact& fact, const Price& price);
  template <class Measure>
  Rational at_least_minimum(const Fact& fact, const Price& price, const Rational& plain, Measure&& measure);
  void sawing(const Fact& fact);
  void day(const SheetRef& sheet);
  void overlooked(const std::vector<const Fact*>& facts);
  void stop(const Fact& fact);
  void charge_line(const Fact& fact);
  std::string no_such_charge(const Fact& fact) const;
  void move(const Fact& fact);
  void strikes(const std::vector<const Fact*>& facts);
  void surcharges(const Fact& fact);
  void once(const Fact& fact);

  bool written(const std::string& charge) const { return written_.count(lower(charge)) != 0; }
  Item item(const Fact& fact, Role role) const;
  const Rate& rate_of(const Price& price);
  Item& price_item(const Fact& fact, const Price& price, Rational quantity, std::string unit);
  /// A thing no charge is for: it stands on the draft without a price, and keeps it from being issued until waived.
  void unpriced(const Fact& fact, const Rational& quantity, const std::string& unit, const std::string& what);
  void charge_items(const Fact& fact, const ChargeTerm& charge, const Rational& times,
                    const Rational& quantity, const std::string& note);
  void push_charge(Item item, const ChargeTerm& charge);
  void take_waiver(Item& item, const std::string& charge) const;
  std::string where(const Fact& fact) const;  ///< "2026-05-05, job TER"
  void problem(const Fact& fact, const std::string& what);
  /// Every charge that fits the fact and `wanted`, one of each name.
  template <class Wanted>
  std::vector<const ChargeTerm*> charges_for(const Fact& fact, Wanted&& wanted) const;

  const Terms& terms_;
  const JobTerms& job_;
  const std::vector<Waiver>& waivers_;
  Itemised& out_;
  std::optional<Day> agreed_;
  std::map<int, Rate> rates_;      ///< by the price's line; 0 = made for one sale
  std::string note_;               ///< of the log in hand
  std::set<std::string> written_;  ///< names of the sheet's charge lines, lower case
};

}  // namespace kerfbook::billing
