#include "measure/convention.h"

#include "base/text.h"

namespace kerfbook::measure {
namespace {

std::int64_t up_to(std::int64_t count, std::int64_t step) {
  return (count + step - 1) / step * step;
}
std::int64_t down_to(std::int64_t count, std::int64_t step) {
  return count / step * step;
}

bool by_whole_feet(BillRounding rounding) {
  return rounding == BillRounding::total_whole || rounding == BillRounding::line_whole;
}
bool by_line(BillRounding rounding) {
  return rounding == BillRounding::line_hundredths || rounding == BillRounding::line_whole;
}

/// `Next_Quarter` and `next quarter` are next-quarter too.
std::optional<std::size_t> place_of(std::string_view typed, const std::vector<std::string>& words) {
  std::string word(trim(typed));
  for (char& c : word) {
    if (c == '_' || c == ' ') c = '-';
  }
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (same_word(word, words[i])) return i;
  }
  return std::nullopt;
}

template <class Rule>
std::optional<Rule> read_rule(std::string_view word, const std::vector<std::string>& words) {
  const auto place = place_of(word, words);
  if (!place) return std::nullopt;
  return static_cast<Rule>(*place);
}

std::string thickness_in_words(const Convention& by) {
  std::string words;
  switch (by.thickness) {
    case ThicknessRule::as_cut:
      words = "nominal thickness";
      break;
    case ThicknessRule::next_quarter:
      words = "thickness up to the next quarter inch";
      break;
    case ThicknessRule::next_inch:
      words = "thickness up to the next whole inch";
      break;
  }
  return words + (by.under_inch_as_inch ? ", under 1 inch counted as 1 inch" : "");
}

std::string width_in_words(WidthRule rule) {
  if (rule == WidthRule::as_cut) return "nominal width";
  return "surface measure of each board to the nearest square foot";
}

std::string length_in_words(LengthRule rule) {
  switch (rule) {
    case LengthRule::as_written:
      break;
    case LengthRule::whole_foot_down:
      return "lengths down to the whole foot";
    case LengthRule::even_foot_down:
      return "lengths down to the even foot";
  }
  return "lengths as written";
}

std::string rounding_in_words(BillRounding rounding, std::string_view unit) {
  const std::string to = (by_whole_feet(rounding) ? "the whole " : "hundredths of a ") + std::string(unit);
  return by_line(rounding) ? "each line rounded to " + to + ", the total adds the lines"
                           : "only the total is rounded, to " + to;
}

}  // namespace

Length counted_thickness(Length thickness, const Convention& by) {
  if (thickness.system != System::inch) return thickness;
  std::int64_t count = thickness.count;
  if (by.under_inch_as_inch && count < kPerInch) count = kPerInch;
  switch (by.thickness) {
    case ThicknessRule::as_cut:
      break;
    case ThicknessRule::next_quarter:
      count = up_to(count, kPerInch / 4);
      break;
    case ThicknessRule::next_inch:
      count = up_to(count, kPerInch);
      break;
  }
  return {count, thickness.system};
}

Length counted_length(Length length, const Convention& by) {
  if (length.system != System::inch || by.length == LengthRule::as_written) return length;
  return {down_to(length.count, by.length == LengthRule::whole_foot_down ? kPerFoot : 2 * kPerFoot),
          length.system};
}

Rational counted_bf(const Pieces& pieces, const Convention& by) {
  const Length thickness = counted_thickness(pieces.size.thickness, by);
  const Length length = counted_length(pieces.length, by);
  if (by.width == WidthRule::surface_measure && thickness.system == System::inch) {
    const std::int64_t feet_square = surface_measure(pieces.size.width, length);
    return in_inches(thickness) * Rational(feet_square) * Rational(pieces.count);
  }
  const Size counted{thickness, pieces.size.width, pieces.size.quarters};
  return board_feet(volume(counted, length, pieces.count));
}

std::int64_t surface_measure(Length width, Length length, bool alternate_half_down) {
  const Rational long_feet = in_feet(length);
  const auto whole_feet = static_cast<std::int64_t>(long_feet.num() / long_feet.den());
  const Rational exact = in_inches(width) * Rational(whole_feet, 12);
  const std::int64_t nearest_foot = exact.rounded(0);
  const bool half = Rational(nearest_foot) - exact == Rational(1, 2);
  return half && alternate_half_down ? nearest_foot - 1 : nearest_foot;
}

Counted count(const std::vector<Pieces>& lines, const Convention& by) {
  const int places = by_whole_feet(by.rounding) ? 0 : 2;
  const int line_places = by_line(by.rounding) ? places : 2;
  Counted out;
  Rational exact;
  std::int64_t added = 0;
  for (const Pieces& line : lines) {
    const Rational bf = counted_bf(line, by);
    out.lines.push_back(shown(bf, line_places));
    added += out.lines.back().units;
    exact = exact + bf;
  }
  out.total = by_line(by.rounding) ? Decimal{added, places} : shown(exact, places);
  return out;
}

Rational lineal_feet(const Pieces& pieces) {
  return in_feet(pieces.length) * Rational(pieces.count);
}

std::string in_words(const Convention& by) {
  const bool all_nominal =
      by.thickness == ThicknessRule::as_cut && !by.under_inch_as_inch && by.width == WidthRule::as_cut;
  const std::string section =
      all_nominal ? "nominal thickness and width" : thickness_in_words(by) + ", " + width_in_words(by.width);
  return section + ", " + length_in_words(by.length) + "; " + rounding_in_words(by.rounding, "board foot");
}

std::string in_words_of_length(const Convention& by, std::string_view unit) {
  return length_in_words(by.length) + "; " + rounding_in_words(by.rounding, unit);
}

const std::vector<std::string>& thickness_rule_words() {
  static const std::vector<std::string> words{"as-cut", "next-quarter", "next-inch"};
  return words;
}
const std::vector<std::string>& bill_rounding_words() {
  static const std::vector<std::string> words{"total-hundredths", "total-whole", "line-hundredths",
                                              "line-whole"};
  return words;
}
const std::vector<std::string>& length_rule_words() {
  static const std::vector<std::string> words{"as-written", "whole-foot-down", "even-foot-down"};
  return words;
}

std::optional<ThicknessRule> read_thickness_rule(std::string_view word) {
  return read_rule<ThicknessRule>(word, thickness_rule_words());
}
std::optional<BillRounding> read_bill_rounding(std::string_view word) {
  return read_rule<BillRounding>(word, bill_rounding_words());
}
std::optional<LengthRule> read_length_rule(std::string_view word) {
  return read_rule<LengthRule>(word, length_rule_words());
}

}  // namespace kerfbook::measure
