// difference.cpp -- why several papers do not add up to what one bill for the whole job would be.
#include <algorithm>
#include <map>

#include "price/bill.h"

namespace kerfbook::billing {

namespace {

/// All lines (or the tax) of one name on one paper.
struct Part {
  Rational quantity;
  Money amount;
  int places = 0;
  std::string unit;
};

using Parts = std::map<std::string, Part>;

Parts parts_of(const Draft& draft) {
  Parts parts;
  for (const BillLine& line : draft.lines) {
    Part& part = parts[line.title];
    part.quantity = part.quantity + quantity_of(line);
    part.places = std::max(part.places, line.timed ? 2 : line.quantity.places);
    part.amount = part.amount + line.amount;
    if (part.unit.empty()) part.unit = line.unit;
  }
  for (const TaxRow& tax : draft.taxes) {
    Part& part = parts[tax.name];
    part.amount = part.amount + Money{tax.added};
  }
  return parts;
}

std::string words_of(const std::string& name, const Part& once, const std::vector<Part>& several) {
  std::vector<std::string> counts;
  Rational sum;
  int places = once.places;
  for (const Part& part : several) places = std::max(places, part.places);
  for (const Part& part : several) {
    counts.push_back(grouped(shown(part.quantity, places)));
    sum = sum + part.quantity;
  }
  if (sum == once.quantity)
    return name + ": the sum is rounded to the smallest coin on each of " + std::to_string(several.size()) +
           " papers";
  std::string added;
  for (const std::string& count : counts) added += (added.empty() ? "" : " + ") + count;
  const std::string unit = once.unit.empty() ? several.front().unit : once.unit;
  return name + ": " + grouped(shown(once.quantity, places)) + " " + unit + " on one bill, " + added + " = " +
         grouped(shown(sum, places)) + " as billed; each paper rounds its own quantity";
}

}  // namespace

std::vector<Difference> explain_difference(const Draft& at_once, const std::vector<Draft>& parts) {
  const Parts once = parts_of(at_once);
  std::map<std::string, std::vector<Part>> several;
  for (const Draft& paper : parts)
    for (const auto& [name, part] : parts_of(paper)) several[name].push_back(part);
  for (const auto& [name, part] : once) several[name];  // on none of the papers
  std::vector<Difference> found;
  for (const auto& [name, all] : several) {
    const auto at = once.find(name);
    const Part whole = at == once.end() ? Part{} : at->second;
    Money more = Money{} - whole.amount;
    for (const Part& part : all) more = more + part.amount;
    if (more.minor == 0) continue;
    found.push_back({all.empty() ? name + ": on no paper" : words_of(name, whole, all), more});
  }
  return found;
}

}  // namespace kerfbook::billing
