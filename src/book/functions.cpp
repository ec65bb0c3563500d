#include "book/functions.h"
#include "base/text.h"

#include <SQLiteCpp/Exception.h>
#include <sqlite3.h>

#include <array>
#include <stdexcept>
#include <tuple>

#include "base/exact.h"
#include "book/watch.h"
#include "sheet/raw_log.h"

namespace kerfbook::book {
namespace {

std::string text_of(sqlite3_value* value) {
  const auto* text = reinterpret_cast<const char*>(sqlite3_value_text(value));
  return text == nullptr ? std::string()
                         : std::string(text, static_cast<std::size_t>(sqlite3_value_bytes(value)));
}

Projector& projector_of(sqlite3_context* context) {
  return *static_cast<Projector*>(sqlite3_user_data(context));
}

scaling::Practice practice_of(sqlite3_context* context, sqlite3_value* name) {
  const std::string word = text_of(name);
  const auto practice = practice_named(projector_of(context).mill(), word);
  if (!practice) throw std::invalid_argument("no log rule is called " + in_quotes(word));
  return *practice;
}

/// Hands a deed's fault to SQLite: an exception must not pass through it.
template <class Deed>
void answered(sqlite3_context* context, Deed&& deed) {
  try {
    deed();
  } catch (const std::exception& fault) {
    sqlite3_result_error(context, fault.what(), -1);
  }
}

template <std::int64_t scaling::Scale::*kFigure>
void scale_figure(sqlite3_context* context, int count, sqlite3_value** values) {
  answered(context, [&] {
    const auto practice = practice_of(context, values[0]);
    if (sqlite3_value_type(values[1]) == SQLITE_NULL) return sqlite3_result_null(context);
    const bool metric = count > 2 && sqlite3_value_int(values[2]) != 0;
    const auto spec = read_spec(text_of(values[1]), metric);
    if (!spec) throw std::invalid_argument("'" + text_of(values[1]) + "' is no log; a log is written 15x12");
    const auto scale = scaled(*spec, practice, projector_of(context).mill().units);
    if (!scale) return sqlite3_result_null(context);
    sqlite3_result_int64(context, (*scale).*kFigure);
  });
}

/// A log without a scale has no rule, and so no unit.
void scale_unit(sqlite3_context* context, int, sqlite3_value** values) {
  answered(context, [&] {
    if (sqlite3_value_type(values[0]) == SQLITE_NULL) return sqlite3_result_null(context);
    const auto book = projector_of(context).mill().units;
    const auto word = scaling::unit_word(unit_in(practice_of(context, values[0]), book));
    sqlite3_result_text(context, word.data(), static_cast<int>(word.size()), SQLITE_TRANSIENT);
  });
}

/// What a person reads for a rule's kept name, or for several with commas between them.
void rule_words(sqlite3_context* context, int, sqlite3_value** values) {
  answered(context, [&] {
    if (sqlite3_value_type(values[0]) == SQLITE_NULL) return sqlite3_result_null(context);
    const std::string words = scaling::rule_words(text_of(values[0]));
    sqlite3_result_text(context, words.data(), static_cast<int>(words.size()), SQLITE_TRANSIENT);
  });
}

void times_over(sqlite3_context* context, int count, sqlite3_value** values) {
  answered(context, [&] {
    std::array<std::int64_t, 3> number{};
    for (int i = 0; i < count; ++i) {
      if (sqlite3_value_type(values[i]) == SQLITE_NULL) return sqlite3_result_null(context);
      number.at(static_cast<std::size_t>(i)) = sqlite3_value_int64(values[i]);
    }
    const auto [a, b, over] = number;
    if (over == 0) return sqlite3_result_null(context);
    sqlite3_result_int64(context, Rational(static_cast<Wide>(a) * b, over).rounded(0));
  });
}

void lumber_of_board(sqlite3_context* context, int, sqlite3_value** values) {
  answered(context, [&] {
    for (int i = 0; i < 4; ++i) {
      if (sqlite3_value_type(values[i]) == SQLITE_NULL) return sqlite3_result_null(context);
    }
    const auto system = sqlite3_value_int(values[3]) != 0 ? measure::System::metric : measure::System::inch;
    const auto along = [&](int i) { return measure::Length{sqlite3_value_int64(values[i]), system}; };
    const auto lumber = measure::volume({along(0), along(1), false}, along(2), 1);
    sqlite3_result_int64(context, measure::converted(lumber, projector_of(context).mill().units).count);
  });
}

void money_micro(sqlite3_context* context, int, sqlite3_value** values) {
  answered(context, [&] {
    if (sqlite3_value_type(values[0]) == SQLITE_NULL) return sqlite3_result_null(context);
    Wide micro = sqlite3_value_int64(values[0]);
    for (int i = projector_of(context).mill().currency.places; i < 6; ++i) micro *= 10;
    sqlite3_result_int64(context, round_half_up(micro, 1));
  });
}

}  // namespace

void register_functions(SQLite::Database& database, Projector& projector) {
  for (const auto& [name, values, work_out] :
       {std::tuple{"net_scale", 2, &scale_figure<&scaling::Scale::net>},
        {"net_scale", 3, &scale_figure<&scaling::Scale::net>},
        {"gross_scale", 2, &scale_figure<&scaling::Scale::gross>},
        {"gross_scale", 3, &scale_figure<&scaling::Scale::gross>},
        {"scale_unit", 1, &scale_unit},
        {"rule_words", 1, &rule_words},
        {"times_over", 3, &times_over},
        {"lumber_of", 4, &lumber_of_board},
        {"money_micro", 1, &money_micro}}) {
    add_function(database, {name, values, work_out, &projector, nullptr, SQLITE_DETERMINISTIC});
  }
}

}  // namespace kerfbook::book
