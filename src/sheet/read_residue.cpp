// read_residue.cpp -- the line for what else came out of the logs: slabs, edgings, dust.
#include <array>

#include "base/text.h"
#include "sheet/amount.h"
#include "sheet/kinds.h"
#include "sheet/write.h"

namespace kerfbook::sheet {
namespace {

constexpr std::string_view kExample = "residue sawdust 2.5 yd3, or residue slabs 1 cord";

/// One of the kinds, spelled as they are.
std::optional<std::string> take_kind(LineReader& line) {
  static constexpr std::array<std::pair<std::string_view, std::string_view>, 6> kAlso{
      {{"slab", "slabs"},
       {"edging", "edgings"},
       {"trimmings", "trim"},
       {"chip", "chips"},
       {"dust", "sawdust"},
       {"shaving", "shavings"}}};
  if (line.done()) {
    line.missing("'residue' without what it is", "write " + std::string(kExample));
    return std::nullopt;
  }
  const Word& word = line.take();
  for (const std::string_view kind : residue_kinds()) {
    if (same_word(kind, word.text)) return std::string(kind);
  }
  for (const auto& [other, kind] : kAlso) {
    if (same_word(other, word.text)) return std::string(kind);
  }
  std::vector<std::string> kinds(residue_kinds().begin(), residue_kinds().end());
  const std::string near = nearest(word.text, kinds);
  line.error(word, in_quotes(line.typed(word)) + ": not a kind of residue",
             near.empty() ? "one of " + join(kinds, ", ") : "did you mean " + near + "?");
  return std::nullopt;
}

}  // namespace

std::optional<Fact> read_residue(LineReader& line) {
  auto kind = take_kind(line);
  if (!kind) return std::nullopt;
  if (line.done()) {
    line.missing("'residue' without how much", "write " + std::string(kExample));
    return std::nullopt;
  }
  const Word& word = line.peek_word();
  const Amount amount = take_amount(line);
  const auto quantity = read_quantity(amount.number);
  if (!quantity) {
    line.error(word, in_quotes(line.typed(word)) + ": " + not_read_because(amount.number, "not a quantity"),
               "write " + std::string(kExample));
    return std::nullopt;
  }
  const auto unit = measure::heap_unit(amount.unit);
  if (!unit) {
    line.error(*amount.unit_word,
               amount.unit.empty() ? in_quotes(amount.number) + ": residue without a unit"
                                   : in_quotes(amount.unit) + ": not ft3, yd3, m3 or cord",
               "write " + std::string(kExample));
    return std::nullopt;
  }
  return Residue{std::move(*kind), *quantity, *unit, line.take_rest()};
}

}  // namespace kerfbook::sheet
