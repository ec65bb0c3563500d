// sheet_items.h -- the facts of one sheet under the prices and charges that hold for them. Private to itemise.cpp
// (prices) and charge_items.cpp (charges).
#pragma once

#include <algorithm>
#include <set>
#include <string>
#include <vector>

#include "base/text.h"
#include "billing/bill.h"
#include "billing/price.h"

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

/// The facts of one sheet, worked through together: a charge line on it goes before what would come unasked.
class SheetItems {
 public:
  SheetItems(const Terms& terms, const JobTerms& job, const std::vector<Waiver>& waivers, Itemised& out)
      : terms_(terms), job_(job), waivers_(waivers), out_(out) {}

  void add(const std::vector<const Fact*>& facts, bool first_of_day);

 private:
  Question question(const Fact& fact) const;
  void lumber(const Fact& fact);
  void sold(const Fact& fact);
  void by_price(const Fact& fact, const Price& price);
  void log(const Fact& fact);
  void sawing(const Fact& fact, bool first_of_day);
  void stop(const Fact& fact);
  void charge_line(const Fact& fact);
  void move(const Fact& fact);
  void strikes(const std::vector<const Fact*>& facts);
  void surcharges(const Fact& fact);
  void once(const Fact& fact);

  bool written(const std::string& charge) const { return written_.count(lower(charge)) != 0; }
  Item item(const Fact& fact, Role role) const;
  void price_item(const Fact& fact, const Price& price, Rational quantity, std::string unit, int places);
  void charge_items(const Fact& fact, const ChargeTerm& charge, const Rational& times,
                    const Rational& quantity, const std::string& note);
  void push_charge(Item item, const ChargeTerm& charge);
  void problem(const Fact& fact, const std::string& what);
  std::vector<const ChargeTerm*> charges_for(const Fact& fact) const;

  const Terms& terms_;
  const JobTerms& job_;
  const std::vector<Waiver>& waivers_;
  Itemised& out_;
  std::set<std::string> written_;  ///< names of the sheet's charge lines, lower case
};

}  // namespace kerfbook::billing
