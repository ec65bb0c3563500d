// price.h -- which price holds for a thing, and why that one. Pure.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "price/billable.h"
#include "price/terms.h"

namespace kerfbook::billing {

/// What a price is asked for. A condition on something that is not known here does not fit.
struct Question {
  std::string job;
  std::string customer;
  std::string species;
  std::string grade;
  std::optional<Size> size;
  std::optional<Length> length;  ///< of a piece or of a log
  Day day;                       ///< whose prices hold: the agreed day of the job, else the day of the sheet
  std::optional<Length> diameter = {};  ///< of a log: the mean of its small end
};

bool fits(const Conditions& when, const Question& asked);

/// How particular conditions are, the weightiest first: naming the job, naming the customer, the number of other
/// conditions, then the later day in force. Equal ones are decided by the later place in the mill file.
struct Particular {
  bool job = false;
  bool customer = false;
  int others = 0;
  Day from;
  int line = 0;
  auto operator<=>(const Particular&) const = default;
};
Particular particular(const Conditions& when, int line);

/// Of the prices for sawing (or, with `own_lumber`, for own lumber sold) the most particular that fits; nullptr: none does.
const Price* find_price(const Terms& terms, const Question& asked, bool own_lumber = false);

struct Choice {
  const Price* price = nullptr;  ///< nullptr: none fits
  std::string why;               ///< one sentence: why this one, or why none
};
/// The same with the reason.
Choice choose_price(const Terms& terms, const Question& asked, bool own_lumber = false);

/// Every price in turn, whether it fits and which conditions keep it from fitting, the chosen one first.
std::vector<std::string> explain_price(const Terms& terms, const Question& asked, bool own_lumber = false);

/// The same of the charges of one name.
std::vector<std::string> explain_charge(const Terms& terms, std::string_view name, const Question& asked);

/// The most particular charge of that name that fits; nullptr when there is none.
const ChargeTerm* find_charge(const Terms& terms, std::string_view name, const Question& asked);
const ShareTerm* find_share(const Terms& terms, const Question& asked);

/// Conditions in words: "4 in and thicker, longer than 16 ft, DF"; empty when there are none. `for_paper` leaves
/// out job, customer and days, which the paper says elsewhere.
std::string condition_words(const Conditions& when, bool for_paper);
/// The name the paper gives a price: its own, or "Sawing, 4 in and thicker".
std::string price_title(const Price& price);
/// "a board foot", "an hour": after a rate.
std::string_view unit_after_rate(Basis basis);

}  // namespace kerfbook::billing
