// rate_checks.h -- warnings of prices, charges and taxes that nobody would ask. Internal to the reading of terms.
#pragma once

#include "mill/toml_table.h"
#include "price/terms.h"

namespace kerfbook::billing {

void doubt_price(book::TomlTable& table, const Price& price, const TermsOptions& options);
void doubt_charge(book::TomlTable& table, const ChargeTerm& charge, const TermsOptions& options);
void doubt_tax(book::TomlTable& table, const Tax& tax);
void doubt_share(book::TomlTable& table, const ShareTerm& share);
/// A sum for a whole job: a deposit, a least sum.
void doubt_sum(book::TomlTable& table, std::string_view key, const std::optional<Money>& sum,
               const TermsOptions& options);

}  // namespace kerfbook::billing
