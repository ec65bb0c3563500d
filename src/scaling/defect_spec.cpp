// defect_spec.cpp -- a defect as a sheet writes it after the word `defect`, read and printed.
#include <array>
#include <string>

#include "base/text.h"
#include "measure/notation.h"
#include "scaling/scaling.h"
#include "scaling/tape.h"

namespace kerfbook::scaling {
namespace {

const char* const kForms =
    "write 15bf, 10%, 2' (length), 1\" (diameter), 7x7x16 (squared) or 90degx8 (sector)";

constexpr std::int64_t kMostAmount = 1'000'000;
constexpr std::int64_t kMostInches = 240;
constexpr std::int64_t kMostFeet = 400;

struct UnitEnding {
  std::string_view ending;
  VolumeUnit unit;
};
constexpr std::array kUnitEndings{
    UnitEnding{"bf", VolumeUnit::board_foot}, UnitEnding{"ft3", VolumeUnit::cubic_foot},
    UnitEnding{"m3", VolumeUnit::cubic_metre}, UnitEnding{"hft", VolumeUnit::hoppus_foot}};

std::string_view ending_of(VolumeUnit unit) {
  for (const UnitEnding& known : kUnitEndings) {
    if (known.unit == unit) return known.ending;
  }
  return "";
}

Slip not_read(std::string_view text) {
  return {in_quotes(text) + " is no defect", kForms, 0};
}

Slip bigger_than_a_log(std::string_view text) {
  return {in_quotes(text) + " is bigger than any log", kForms, 0};
}

/// The positive number before a word: "15" of "15bf".
Result<Rational> number_before(const std::string& text, std::size_t end) {
  const std::string figures(trim(std::string_view(text).substr(0, end)));
  auto number = read_decimal(figures, 6);
  if (!number) return number.slip();
  if (number->is_negative() || number->is_zero())
    return Slip{in_quotes(text) + " takes nothing off", kForms, 0};
  if (*number > Rational(kMostAmount)) return Slip{in_quotes(text) + " is more than any log", kForms, 0};
  return number;
}

bool has_letters(std::string_view text) {
  return text.find_first_of("cmfint'\"") != std::string_view::npos;
}

Result<Length> cross_size(const std::string& text, bool metric) {
  if (!metric) return read_tape(text);
  return measure::read_millimetres(has_letters(text) ? text : text + "cm");
}

Result<Length> along(const std::string& text, bool metric) {
  return metric ? measure::read_metres(text) : measure::read_feet(text);
}

Result<Defect> positive(Defect defect, Length which, std::string_view text) {
  if (which.is_zero()) return Slip{in_quotes(text) + " takes nothing off", kForms, 0};
  return defect;
}

Result<Defect> read_percent(const std::string& text) {
  const auto share = number_before(text, text.size() - 1);
  if (!share) return share.slip();
  if (*share > Rational(100)) return Slip{in_quotes(text) + " is more than the log", "write at most 100%", 0};
  Defect defect;
  defect.kind = DefectKind::percent;
  defect.amount = *share;
  return defect;
}

Result<Defect> read_sector(const std::string& text, std::size_t word, std::size_t word_size, bool metric) {
  const auto degrees = number_before(text, word);
  if (!degrees) return degrees.slip();
  if (*degrees > Rational(360))
    return Slip{in_quotes(text) + " is more than a full circle", "write at most 360deg", 0};
  Defect defect;
  defect.kind = DefectKind::sector;
  defect.amount = *degrees;
  std::string rest(trim(std::string_view(text).substr(word + word_size)));
  if (rest.empty()) return defect;
  if (rest.front() != 'x')
    return Slip{in_quotes(text) + " goes on after the degrees", "write 90degx8 for 8 ft of the length", 0};
  const auto length = along(rest.substr(1), metric);
  if (!length) return length.slip();
  if (measure::in_feet(*length) > Rational(kMostFeet)) return bigger_than_a_log(text);
  defect.length = *length;
  return positive(defect, defect.length, text);
}

Result<Defect> read_squared(const std::string& text, bool metric) {
  const auto first = text.find('x');
  const auto second = text.find('x', first + 1);
  if (second == std::string::npos || text.find('x', second + 1) != std::string::npos) return not_read(text);
  const auto width = cross_size(text.substr(0, first), metric);
  if (!width) return width.slip();
  const auto height = cross_size(text.substr(first + 1, second - first - 1), metric);
  if (!height) return height.slip();
  const auto length = along(text.substr(second + 1), metric);
  if (!length) return length.slip();
  if (width->system != height->system || width->system != length->system)
    return Slip{in_quotes(text) + " mixes inches and metric", "measure a defect in one system", 0};
  Defect defect;
  defect.kind = DefectKind::squared;
  defect.width = *width;
  defect.height = *height;
  defect.length = *length;
  const Rational across(kMostInches);
  if (measure::in_inches(*width) > across || measure::in_inches(*height) > across ||
      measure::in_feet(*length) > Rational(kMostFeet)) {
    return bigger_than_a_log(text);
  }
  const bool none = width->is_zero() || height->is_zero();
  return positive(defect, none ? Length{} : defect.length, text);
}

/// `2'`, `2ft`, `0.6m` shorten the log; `1"`, `1in`, `3cm` thin it.
Result<Defect> read_shrinkage(const std::string& text) {
  Defect defect;
  const bool feet = text.find('\'') != std::string::npos || text.find('f') != std::string::npos;
  const bool metres = text.ends_with("m") && !text.ends_with("cm") && !text.ends_with("mm");
  if (feet || metres) {
    const auto length = measure::read_feet(text);
    if (!length) return length.slip();
    if (measure::in_feet(*length) > Rational(kMostFeet)) return bigger_than_a_log(text);
    defect.kind = DefectKind::length;
    defect.length = *length;
    return positive(defect, defect.length, text);
  }
  const auto diameter = read_tape(text);
  if (!diameter) return diameter.slip();
  if (measure::in_inches(*diameter) > Rational(kMostInches)) return bigger_than_a_log(text);
  defect.kind = DefectKind::diameter;
  defect.diameter = *diameter;
  return positive(defect, defect.diameter, text);
}

std::string plain_number(const Rational& value) {
  return shortest(shown(value, 9));
}

std::string side_text(Length length, bool with_mark) {
  return write_diameter(length) + (with_mark && length.system == System::inch ? "\"" : "");
}

/// ³ and ° as plain letters, then the marks of measure/.
std::string plain_defect(std::string_view typed) {
  std::string text(trim(typed));
  for (const auto& [mark, letters] : {std::pair{"³", "3"}, std::pair{"°", "deg"}}) {
    for (auto at = text.find(mark); at != std::string::npos; at = text.find(mark)) {
      text.replace(at, std::string_view(mark).size(), letters);
    }
  }
  return measure::plain_notation(text).text;
}

}  // namespace

Result<Defect> read_defect(std::string_view typed, bool metric_book) {
  const std::string text = plain_defect(typed);
  if (text.empty()) return Slip{"a defect is missing", kForms, 0};
  if (text.ends_with('%')) return read_percent(text);
  for (const UnitEnding& known : kUnitEndings) {
    if (!text.ends_with(known.ending)) continue;
    const auto volume = number_before(text, text.size() - known.ending.size());
    if (!volume) return volume.slip();
    Defect defect;
    defect.amount = *volume;
    defect.unit = known.unit;
    return defect;
  }
  const bool inches = text.find_first_of("'\"") != std::string::npos ||
                      text.find("ft") != std::string::npos || text.find("in") != std::string::npos;
  const bool metric = text.find('m') != std::string::npos || (metric_book && !inches);
  if (const auto word = text.find("deg"); word != std::string::npos)
    return read_sector(text, word, 3, metric);
  if (text.find('x') != std::string::npos) return read_squared(text, metric);
  if (!has_letters(text)) {
    if (!read_decimal(text)) return not_read(typed);
    return Slip{in_quotes(text) + " of what?",
                "write " + text + "bf, " + text + "%, " + text + "' or " + text + "\"", 0};
  }
  auto read = read_shrinkage(text);
  if (!read && text.find_first_of("0123456789") != 0) return not_read(typed);
  return read;
}

std::string write_defect(const Defect& defect, bool metric_book) {
  switch (defect.kind) {
    case DefectKind::percent:
      return plain_number(defect.amount) + "%";
    case DefectKind::volume:
      return plain_number(defect.amount) + std::string(ending_of(defect.unit));
    case DefectKind::length:
      return write_long_tape(defect.length, true);
    case DefectKind::diameter:
      return side_text(defect.diameter, true);
    case DefectKind::sector: {
      const std::string degrees = plain_number(defect.amount) + "deg";
      return defect.length.is_zero() ? degrees : degrees + "x" + write_long_tape(defect.length, metric_book);
    }
    case DefectKind::squared:
      return side_text(defect.width, metric_book) + "x" + side_text(defect.height, metric_book) + "x" +
             write_long_tape(defect.length, metric_book);
  }
  return "";
}

}  // namespace kerfbook::scaling
