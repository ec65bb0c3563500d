#include "report/column_kinds.h"

#include <algorithm>
#include <array>
#include <stdexcept>

#include "base/text.h"
#include "measure/size.h"
#include "render/cell.h"

namespace kerfbook::report {
namespace {

// kind, word, places, places where metric, fewest, unit, unit where metric, what SQL gives
constexpr std::array kKinds{
    KindRow{Kind::text, "text", 0, 0, false, "", "", "text"},
    KindRow{Kind::day, "day", 0, 0, false, "", "", "a day number"},
    KindRow{Kind::count, "count", 0, 0, false, "", "", "a whole number"},
    KindRow{Kind::money, "money", 2, 2, false, "", "", "minor units of the currency"},
    KindRow{Kind::lumber, "lumber", 2, 3, false, "bf", "m3", "a volume of the book, nominal size"},
    KindRow{Kind::cubic, "cubic", 1, 3, false, "ft3", "m3", "a volume of the book, of wood really cut"},
    KindRow{Kind::scale, "scale", 2, 3, true, "bf", "m3", "millionths of the scaling practice's unit"},
    KindRow{Kind::ft3, "ft3", 1, 3, false, "ft3", "m3", "millionths of a cubic foot"},
    KindRow{Kind::hours, "hours", 2, 2, false, "h", "h", "minutes"},
    KindRow{Kind::fine_hours, "fine-hours", 2, 2, false, "h", "h", "millionths of a minute"},
    KindRow{Kind::minutes, "minutes", 0, 0, false, "min", "min", "minutes"},
    KindRow{Kind::feet, "feet", 2, 2, true, "ft", "m", "a length of the book"},
    KindRow{Kind::lineal, "lineal", 2, 2, true, "ft", "m", "a length counted in 1/320 mm"},
    KindRow{Kind::inches, "inches", 3, 1, true, "in", "cm", "a length of the book"},
    KindRow{Kind::micro, "micro", 3, 3, true, "", "", "millionths"},
    KindRow{Kind::tenths, "tenths", 1, 1, false, "", "", "tenths"},
    KindRow{Kind::mils, "mils", 3, 2, false, "in", "mm", "thousandths of an inch, or hundredths of a mm"},
    KindRow{Kind::ratio, "ratio", 2, 2, false, "", "", "nothing: worked out by the engine"},
    KindRow{Kind::percent, "percent", 1, 1, false, "%", "%", "nothing: worked out by the engine"},
    KindRow{Kind::percent_over, "percent-over", 1, 1, false, "%", "%", "nothing: worked out by the engine"},
};

constexpr std::int64_t kMillion = 1'000'000;
constexpr std::int64_t kLinealPerMetre = 320'000;
constexpr std::int64_t kCountsPerCubicFoot = std::int64_t{1728} * 64 * 64 * 64;

Rational power_of_ten(int places) {
  std::int64_t power = 1;
  for (int i = 0; i < places; ++i) power *= 10;
  return power;
}

std::string metric_word(std::string_view word) {
  if (word == "bf" || word == "ft3" || word == "ft³" || word == "mbf" || word == "MBF") return "m3";
  if (word == "ft") return "m";
  if (word == "in") return "cm";
  return std::string(word);
}

std::string words_changed(std::string_view text, char between) {
  std::string out;
  while (true) {
    const std::size_t end = text.find(between);
    out += metric_word(text.substr(0, end));
    if (end == std::string_view::npos) return out;
    out += between;
    text.remove_prefix(end + 1);
  }
}

}  // namespace

std::span<const KindRow> kinds() {
  return kKinds;
}

const KindRow& row_of(Kind kind) {
  const auto* row =
      std::find_if(kKinds.begin(), kKinds.end(), [kind](const KindRow& r) { return r.kind == kind; });
  return *row;
}

std::optional<Kind> find_kind(std::string_view word) {
  const auto* row =
      std::find_if(kKinds.begin(), kKinds.end(), [word](const KindRow& r) { return r.word == word; });
  if (row == kKinds.end()) return std::nullopt;
  return row->kind;
}

bool is_ratio(Kind kind) {
  return kind == Kind::ratio || kind == Kind::percent || kind == Kind::percent_over;
}

bool is_volume(Kind kind) {
  return kind == Kind::lumber || kind == Kind::cubic || kind == Kind::scale || kind == Kind::ft3;
}

bool is_number(Kind kind) {
  return kind != Kind::text && kind != Kind::day;
}

render::ColumnKind shown_kind(Kind kind, int places) {
  switch (kind) {
    case Kind::text:
      return render::ColumnKind::text;
    case Kind::day:
      return render::ColumnKind::day;
    case Kind::money:
      return render::ColumnKind::money;
    default:
      return places == 0 ? render::ColumnKind::count : render::ColumnKind::decimal;
  }
}

std::optional<Rational> per_board_foot(std::string_view unit, bool metric_book) {
  const Rational cubic_metre(measure::kMetricCountsPerBoardFoot, measure::kMetricCountsPerCubicMetre);
  if (metric_book) {
    if (unit == "m3") return Rational(1);
    if (unit == "bf") return Rational(1) / cubic_metre;
    if (unit == "ft3") return Rational(1, 12) / cubic_metre;
    return std::nullopt;
  }
  if (unit == "bf") return Rational(1);
  if (unit == "ft3") return Rational(1, 12);
  if (unit == "m3") return cubic_metre;
  return std::nullopt;
}

Rational exact_value(Kind kind, std::int64_t from_sql, const Measured& measured) {
  switch (kind) {
    case Kind::money:
      return Rational(from_sql) / power_of_ten(measured.money_places);
    case Kind::lumber:
      return {from_sql,
              measured.metric_book ? measure::kMetricCountsPerCubicMetre : measure::kCountsPerBoardFoot};
    case Kind::cubic:
      return {from_sql, measured.metric_book ? measure::kMetricCountsPerCubicMetre : kCountsPerCubicFoot};
    case Kind::ft3:
      if (measured.metric_book) return Rational(from_sql, kMillion) * measure::kCubicMetresPerCubicFoot;
      return {from_sql, kMillion};
    case Kind::scale:
    case Kind::micro:
      return {from_sql, kMillion};
    case Kind::hours:
      return {from_sql, 60};
    case Kind::fine_hours:
      return {from_sql, 60 * kMillion};
    case Kind::lineal:
      return {from_sql, measured.metric_book ? kLinealPerMetre : kLinealPerFoot};
    case Kind::feet:
      return {from_sql, measured.metric_row ? measure::kPerMetre : measure::kPerFoot};
    case Kind::inches:
      return {from_sql, measured.metric_row ? measure::kPerCentimetre : measure::kPerInch};
    case Kind::tenths:
      return {from_sql, 10};
    case Kind::mils:
      return {from_sql, measured.metric_book ? 100 : 1000};
    case Kind::count:
    case Kind::minutes:
      return from_sql;
    case Kind::text:
    case Kind::day:
    case Kind::ratio:
    case Kind::percent:
    case Kind::percent_over:
      break;
  }
  throw std::logic_error("exact_value: not a number kind");
}

std::string metric_name(std::string_view name) {
  return words_changed(name, '_');
}

std::string metric_heading(std::string_view heading) {
  return render::printed_unit(words_changed(heading, ' '));
}

}  // namespace kerfbook::report
