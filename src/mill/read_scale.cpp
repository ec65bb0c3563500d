// read_scale.cpp -- what the mill file says of measuring: log rules and scaling practices, log content, counting.
#include <algorithm>

#include "base/text.h"
#include "measure/notation.h"
#include "mill/mill_tables.h"
#include "mill/spellings.h"

namespace kerfbook::book {
namespace {

using measure::Length;
using scaling::Practice;

/// 1 in per ft is 25.4 mm in 0.3048 m, so a thousandth per foot is 100/12 hundredths of a mm per metre.
std::int64_t per_metre(std::int64_t mils_per_foot) {
  return round_half_up(Wide{mils_per_foot} * 100, 12);
}
std::int64_t per_foot(std::int64_t hundredths_per_metre) {
  return round_half_up(Wide{hundredths_per_metre} * 12, 100);
}

/// Taper in thousandths of an inch per foot, or hundredths of a millimetre per metre: no log narrows by more than 12 in
/// in a foot.
Result<std::int64_t> read_taper(std::string_view text, bool metric) {
  const auto mils = measure::read_mils(text, metric);
  if (mils && *mils > (metric ? 100'000 : 12'000))
    return Slip{in_quotes(text) + " is more taper than a log has",
                metric ? "write mm per m, as 10" : "write inches per foot, as 1/8", 0};
  return mils;
}

template <class T>
void set(T& field, std::optional<T> got) {
  if (got) field = std::move(*got);
}

/// A share written as 50, 33.3 or 33-1/3.
Result<Rational> read_percent(std::string_view text) {
  measure::Scanner scan(text);
  const auto number = scan.number();
  if (number && scan.done() && number->value <= Rational(100)) return number->value;
  return Slip{in_quotes(text) + " is no percentage", "write it as 50 or 33-1/3", 0};
}

/// The conventions of a practice that a table may change. Returns whether it changed any.
void read_conventions(TomlTable& table, bool metric, Practice& practice) {
  const auto length = [metric](std::string_view t) { return measure::read_length(t, metric); };
  const auto trim_length = metric ? measure::read_millimetres : measure::read_inches;
  const auto diameter = [metric](std::string_view t) { return read_log_diameter(t, metric); };
  set(practice.diameter, table.read<scaling::DiameterRounding>("diameter", read_diameter_word));
  set(practice.readings, table.read<scaling::ReadingsJoin>("readings", read_readings_word));
  set(practice.length_step, table.read<Length>("length_step", length));
  set(practice.trim, table.read<Length>("trim", trim_length));
  set(practice.longest_segment, table.read<Length>("longest_segment", length));
  set(practice.taper, table.read<scaling::TaperShare>("taper_share", read_taper_word));
  const auto taper =
      table.read<std::int64_t>("taper", [metric](std::string_view t) { return read_taper(t, metric); });
  if (taper) practice.taper_mils_per_foot = metric ? per_foot(*taper) : *taper;
  set(practice.minimum_top, table.read<Length>("minimum_top", diameter));
  set(practice.minimum_length, table.read<Length>("minimum_length", length));
  set(practice.merchantable_percent, table.read<Rational>("merchantable_percent", read_percent));
  set(practice.result, table.read<scaling::ResultRounding>("round_to", read_result_word));
  set(practice.squared_divisor, table.whole("squared_divisor", 1, 1000));
}

Slip no_such_rule(std::string_view name, const Mill& mill) {
  std::vector<std::string> own;
  for (const auto& practice : mill.practices) own.push_back(practice.name);
  const std::string near = nearest(name, own);
  if (!near.empty()) return {in_quotes(name) + " is no log rule here", "did you mean " + near + "?", 0};
  return {scaling::why_not(name), "", 0};
}

/// The built-in practice that a table's `rule` names.
std::optional<Practice> built_in(TomlTable& table, const Mill& mill) {
  return table.read<Practice>("rule", [&](std::string_view name) -> Result<Practice> {
    if (auto found = scaling::find_practice(lower(name))) return *found;
    return no_such_rule(name, mill);
  });
}

void read_practice(TomlTable& table, Mill& mill) {
  Practice practice = built_in(table, mill).value_or(mill.house);
  practice.name = table.text("name");
  if (!table.has("rule"))
    table.wrong_at("rule", "a [[practice]] without a rule", "write rule = \"scribner-c\", or another rule");
  if (practice.name.empty()) {
    table.wrong_at("name", "a [[practice]] without a name", "write name = \"our-scribner\"");
  } else if (scaling::find_practice(practice.name)) {
    table.wrong_at("name", in_quotes(practice.name) + " is the name of a built-in practice",
                   "choose another");
  }
  const auto same = [&](const Practice& other) { return same_word(other.name, practice.name); };
  if (std::any_of(mill.practices.begin(), mill.practices.end(), same)) {
    table.wrong_at("name", "a second practice called " + in_quotes(practice.name), "choose another name");
  }
  read_conventions(table, mill.units == measure::System::metric, practice);
  table.finish();
  mill.practices.push_back(std::move(practice));
}

}  // namespace

void read_scale(TomlTable& root, Mill& mill) {
  for (auto& table : root.tables("practice")) read_practice(table, mill);
  auto table = root.table("scale");
  if (!table) return;
  const auto rule = table->read<Practice>("rule", [&](std::string_view name) -> Result<Practice> {
    if (auto found = practice_named(mill, name)) return *found;
    return no_such_rule(name, mill);
  });
  if (rule) mill.house = *rule;
  const Practice published = mill.house;
  read_conventions(*table, mill.units == measure::System::metric, mill.house);
  // A rule with conventions of the house's own is not the published one, and must not be called so.
  if (mill.house != published) mill.house.name += "-house";
  const std::string name = table->text("name");
  if (!name.empty() && scaling::find_practice(name)) {
    table->wrong_at("name", in_quotes(name) + " is the name of a built-in practice", "choose another");
  } else if (!name.empty()) {
    mill.house.name = name;
  }
  table->finish();
}

void read_recovery(TomlTable& root, Mill& mill) {
  auto table = root.table("recovery");
  if (!table) return;
  const bool metric = mill.units == measure::System::metric;
  const auto taper =
      table->read<std::int64_t>("taper", [metric](std::string_view t) { return read_taper(t, metric); });
  if (taper) {
    mill.taper.per_foot_mils = metric ? per_foot(*taper) : *taper;
    mill.taper.per_metre = metric ? *taper : per_metre(*taper);
  }
  set(mill.taper.trim,
      table->read<Length>("trim", metric ? measure::read_millimetres : measure::read_inches));
  table->finish();
}

void read_count(TomlTable& holder, measure::Convention& convention) {
  auto table = holder.table("count");
  if (!table) return;
  set(convention.thickness, table->read<measure::ThicknessRule>("thickness", read_thickness_word));
  set(convention.under_inch_as_inch, table->flag("under_inch_as_inch"));
  if (const auto surface = table->flag("surface_measure")) {
    convention.width = *surface ? measure::WidthRule::surface_measure : measure::WidthRule::as_cut;
  }
  set(convention.length, table->read<measure::LengthRule>("length", read_length_word));
  set(convention.rounding, table->read<measure::BillRounding>("rounding", read_rounding_word));
  table->finish();
}

}  // namespace kerfbook::book
