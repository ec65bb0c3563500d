// mill_words.h -- days, sums and names as this mill writes them on its papers.
#pragma once

#include <string>

#include "base/day.h"
#include "base/exact.h"
#include "measure/money.h"
#include "mill/mill.h"
#include "render/document.h"

namespace kerfbook::billing {

render::Style paper_style(const book::Mill& mill);
std::string money_words(measure::Money sum, const book::Mill& mill);
std::string day_words(Day day, const book::Mill& mill);
std::string period_words(Day from, Day to, const book::Mill& mill);
/// "Douglas-fir", or the code when the mill file has no name for it.
std::string species_words(const book::Mill& mill, const std::string& code);
/// "Number 2", or the code when the mill file has no name for it.
std::string grade_words(const book::Mill& mill, const std::string& code);
std::string job_words(const book::Mill& mill, const std::string& job);  ///< "TER, Barn at Tervane farm"
std::string signer(const book::Mill& mill);                             ///< who signs for the mill
std::string customer_words(const book::Mill& mill, const std::string& customer);
/// A number with as few decimals as it needs, at least `least`.
Decimal shortest(const Rational& value, int least, int most);

}  // namespace kerfbook::billing
