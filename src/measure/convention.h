// convention.h -- how lumber is counted for a price or a report: which thickness, which rounding, which unit.
// A convention is part of the price and is printed in words on the paper. Pure arithmetic; prices are in
// price/.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "measure/size.h"

namespace kerfbook::measure {

enum class ThicknessRule : std::uint8_t {
  as_cut,        ///< 1-1/8 counts as 1-1/8
  next_quarter,  ///< 1-1/8 counts as 1-1/4
  next_inch,     ///< 1-1/8 counts as 2
};
enum class WidthRule : std::uint8_t {
  as_cut,
  surface_measure,  ///< board by board: width x length / 12 to the nearest whole square foot, then x
                    ///< thickness
};
enum class BillRounding : std::uint8_t {
  total_hundredths,  ///< exact to the total, then hundredths of a bf
  total_whole,       ///< exact to the total, then whole bf
  line_hundredths,   ///< each line to hundredths, the total adds the lines
  line_whole,        ///< each line to whole bf
};
enum class LengthRule : std::uint8_t {
  as_written,
  whole_foot_down,  ///< hardwood: a fraction of a foot is dropped
  even_foot_down,
};

struct Convention {
  ThicknessRule thickness = ThicknessRule::as_cut;
  bool under_inch_as_inch = false;  ///< 3/4 counts as 1
  WidthRule width = WidthRule::as_cut;
  LengthRule length = LengthRule::as_written;
  BillRounding rounding = BillRounding::total_hundredths;
  bool operator==(const Convention&) const = default;
};

/// So many equal pieces of one size and length.
struct Pieces {
  Size size;
  Length length;
  std::int64_t count = 0;
};

/// The thickness that counts. Inch system only changes; metric thickness is always as cut.
Length counted_thickness(Length thickness, const Convention& by);

/// The length that counts. Inch system only changes.
Length counted_length(Length length, const Convention& by);

/// Board feet of one tally line before any rounding of the line. Exact.
Rational counted_bf(const Pieces& pieces, const Convention& by);

/// Surface measure of one board in whole square feet: width (in, with fractions) x length (whole feet,
/// fraction dropped) / 12, to the nearest foot, an exact half up. Source: NHLA Rules Book 2015 p. 7 para. 16;
/// AHEC measurement page. (Halves: AHEC gives them alternately up and down over a bundle;
/// `alternate_half_down` asks for the downward one.)
std::int64_t surface_measure(Length width, Length length, bool alternate_half_down = false);

/// The lines' counts in the convention's rounding, and their total: {lines, total}, decimals with the places
/// of the rounding. With total rounding the lines are shown to hundredths and the total is rounded from
/// exact.
struct Counted {
  std::vector<Decimal> lines;
  Decimal total;
};
Counted count(const std::vector<Pieces>& lines, const Convention& by);

Rational lineal_feet(const Pieces& pieces);  ///< length x count, in feet

/// The convention in the words that are printed on a paper: "nominal thickness and width, lengths as written;
/// ...".
std::string in_words(const Convention& by);
/// The same for lumber counted by its length: "lengths as written; only the total is rounded, to the whole foot".
std::string in_words_of_length(const Convention& by, std::string_view unit);
/// The words a mill file uses: `as-cut`, `next-quarter`, `next-inch`; `total-whole`...; nullopt when unknown.
std::optional<ThicknessRule> read_thickness_rule(std::string_view word);
std::optional<BillRounding> read_bill_rounding(std::string_view word);
std::optional<LengthRule> read_length_rule(std::string_view word);
/// The words, each list in the order of its enum.
const std::vector<std::string>& thickness_rule_words();
const std::vector<std::string>& bill_rounding_words();
const std::vector<std::string>& length_rule_words();

}  // namespace kerfbook::measure
