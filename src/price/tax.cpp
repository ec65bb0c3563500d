// tax.cpp -- taxes on the lines of a paper: each rounded once on the sum it falls on; exclusive or included.
#include <algorithm>

#include "base/text.h"
#include "price/bill.h"

namespace kerfbook::billing {

namespace {

bool in_force(const Tax& tax, Day day) {
  return (!tax.from || *tax.from <= day) && (!tax.until || day <= *tax.until);
}

bool falls_on(const Tax& tax, const BillLine& line) {
  return std::any_of(tax.on.begin(), tax.on.end(),
                     [&](const std::string& kind) { return same_word(kind, line.tax); });
}

/// Per cent of all included taxes that fall on the line: its amount is 100 + so much per cent of the sum without.
Rational included_percent(const std::vector<const Tax*>& taxes, const BillLine& line) {
  Rational sum;
  for (const Tax* tax : taxes)
    if (tax->included && falls_on(*tax, line)) sum = sum + tax->percent;
  return sum;
}

}  // namespace

Taxed add_taxes(const std::vector<Tax>& taxes, std::vector<BillLine>& lines, const std::string& certificate,
                Day day) {
  std::vector<const Tax*> now;
  for (const Tax& tax : taxes)
    if (in_force(tax, day)) now.push_back(&tax);
  Taxed out;
  for (const BillLine& line : lines) out.total = out.total + line.amount;
  for (const Tax* tax : now) {
    TaxRow row;
    row.name = tax->name;
    row.percent = tax->percent;
    row.included = tax->included;
    if (tax->certificate) row.excused = certificate;
    Rational exact;  // of minor units
    bool any = false;
    for (BillLine& line : lines) {
      if (!falls_on(*tax, line)) continue;
      any = true;
      line.taxed = line.taxed || row.excused.empty();
      row.base = row.base + line.amount;
      const Rational whole = tax->included ? Rational(100) + included_percent(now, line) : Rational(100);
      exact = exact + Rational(line.amount.minor) * tax->percent / whole;
    }
    if (!any) continue;
    row.amount = {exact.rounded(0)};
    if (row.excused.empty())
      row.added = row.included ? 0 : row.amount.minor;
    else
      row.added = row.included ? -row.amount.minor : 0;
    out.total = out.total + Money{row.added};
    out.rows.push_back(std::move(row));
  }
  return out;
}

}  // namespace kerfbook::billing
