// check_prices.cpp -- rules about money on a sheet: a sale or a fill of fuel at a price nobody would pay. The limits are
// wide round numbers of our own.
#include "sheet/check_rules.h"

namespace kerfbook::sheet {
namespace {

struct Believed {
  Rational most;
  std::string_view unit;
};

Believed believed(const Sold& sold) {
  if (!sold.bundle.empty()) return {20'000, "a bundle"};
  switch (sold.by) {
    case SoldBy::board_foot:
      return {50, "a board foot"};
    case SoldBy::piece:
      return {2'000, "a piece"};
    case SoldBy::lineal_foot:
      return {100, "a lineal foot"};
    case SoldBy::lineal_metre:
      return {300, "a lineal metre"};
  }
  return {50, "a board foot"};
}

std::string money_text(const Rational& value) {
  return grouped(shown(value, value.den() == 1 ? 0 : 2));
}

void check_sale(Review& review, const Line& line, const Sold& sold) {
  if (!sold.price) return;
  const Believed limit = believed(sold);
  if (*sold.price <= limit.most * Rational(review.known.money_scale)) return;
  const bool plain = sold.bundle.empty() && sold.by == SoldBy::board_foot;
  review.warn(
      line, "sold at " + money_text(*sold.price) + " " + std::string(limit.unit) + ": dearer than lumber is",
      plain ? "a price alone is for a board foot; write each after it for a piece"
            : "look at the price again");
}

/// What was paid is for all of it: 3.89 beside 7.3 gal is the price of one.
void check_fuel(Review& review, const Line& line, const Fuel& fuel) {
  if (!fuel.price_minor || *fuel.price_minor == 0) return;
  const bool gallons = fuel.unit == FuelUnit::gallon;
  const Rational most = gallons ? 50 : 12;
  const Rational least = gallons ? Rational(3, 4) : Rational(1, 5);
  const Rational each = Rational(*fuel.price_minor, review.known.minor_units) / fuel.quantity;
  if (each <= most * Rational(review.known.money_scale) && least <= each) return;
  review.warn(line,
              "fuel at " + money_text(each) + (gallons ? " a gallon" : " a litre") + ": " +
                  (each < least ? "cheaper" : "dearer") + " than fuel is",
              "the price on the line is what was paid for all of it");
}

}  // namespace

void check_prices(Review& review) {
  for (const Line& line : review.sheet.lines) {
    if (const auto* sold = std::get_if<Sold>(&line.fact)) check_sale(review, line, *sold);
    if (const auto* fuel = std::get_if<Fuel>(&line.fact)) check_fuel(review, line, *fuel);
  }
}

}  // namespace kerfbook::sheet
