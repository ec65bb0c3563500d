// term_checks.h -- what cannot be meant in the money tables: conditions a thing never has, charges that never come.
// Private to the reading of terms.
#pragma once

#include "mill/toml_table.h"
#include "price/terms.h"

namespace kerfbook::billing {

void check_price(book::TomlTable& table, const Price& price);
void check_charge(book::TomlTable& table, const ChargeTerm& charge);
/// A kind of line that no price and no charge has would leave the tax on nothing; `terms` has both already.
void check_tax(book::TomlTable& table, const Tax& tax, const Terms& terms);

}  // namespace kerfbook::billing
