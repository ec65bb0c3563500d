// column_kinds.h -- the kinds of column a report may declare: what whole number SQL gives, what exact number it stands for,
// how it is shown. One row of one table (kinds.cpp) a kind.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "base/exact.h"
#include "render/document.h"

namespace kerfbook::report {

enum class Kind : std::uint8_t {
  text,
  day,         ///< day number
  count,       ///< whole number
  money,       ///< minor units of the book's currency
  lumber,      ///< volume of the book -> bf; in a metric book m3
  cubic,       ///< volume of the book (the wood really cut) -> ft3; in a metric book m3
  scale,       ///< millionths of the practice's unit -> that unit
  ft3,         ///< millionths of a cubic foot -> ft3; in a metric book m3
  hours,       ///< minutes -> h
  fine_hours,  ///< millionths of a minute -> h
  minutes,     ///< minutes -> min
  feet,        ///< length counts -> ft; where measured in metric, m
  lineal,      ///< 1/320 mm, in which 1/64 in and 1/10 mm are whole -> ft; in a metric book m
  inches,      ///< length counts -> in; where measured in metric, cm
  micro,       ///< millionths -> a plain number
  tenths,      ///< tenths -> one place
  mils,        ///< thousandths of an inch -> in; in a metric book hundredths of a mm -> mm
  ratio,
  percent,
  percent_over,
};

constexpr std::int64_t kLinealPerFoot = std::int64_t{12} * 64 * 127;  ///< 1/320 mm, of which 1/64 in has 127

/// What a row needs to know beside its number.
struct Measured {
  bool metric_book = false;
  bool metric_row = false;  ///< feet, inches
  int money_places = 2;
};

struct KindRow {
  Kind kind;
  std::string_view word;         ///< as the header writes it
  int places;                    ///< shown, unless the column says otherwise
  int metric_places;             ///< the same where metric
  bool fewest;                   ///< fewer places when those show every row exactly
  std::string_view unit;         ///< inch book
  std::string_view metric_unit;  ///< metric book (feet, inches: metric rows)
  std::string_view what_sql_gives;
};

std::span<const KindRow> kinds();
const KindRow& row_of(Kind kind);
std::optional<Kind> find_kind(std::string_view word);

bool is_ratio(Kind kind);   ///< worked out by the engine, never by SQL
bool is_volume(Kind kind);  ///< board feet, cubic feet or metres, log scale
bool is_number(Kind kind);  ///< has an exact value that can be summed
render::ColumnKind shown_kind(Kind kind, int places);

/// The exact number, in the unit shown, that a whole number from SQL stands for.
Rational exact_value(Kind kind, std::int64_t from_sql, const Measured& measured);

/// Board feet in one of a scaling practice's units; absent for a unit that lumber is not counted in.
std::optional<Rational> per_board_foot(std::string_view unit, bool metric_book);

/// `lumber_bf` -> `lumber_m3`, `bf_per_sawing_hour` -> `m3_per_sawing_hour`; words of `_` separated names and of
/// headings that name an inch unit, changed to the metric one.
std::string metric_name(std::string_view name);
std::string metric_heading(std::string_view heading);

}  // namespace kerfbook::report
