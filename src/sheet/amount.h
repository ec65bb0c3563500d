// amount.h -- a number that counts something, with its unit: 7.3 gal, 46mi, 2.5 yd3. Internal to this room.
#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "base/exact.h"
#include "base/text.h"
#include "sheet/line_reader.h"

namespace kerfbook::sheet {

/// A number that counts something: over 0, at most a million, to the millionth.
std::optional<Rational> read_quantity(std::string_view text);
/// "not a quantity", or that it is too large for one: what is wrong with a text that read_quantity() does not take.
std::string not_read_because(std::string_view text, const char* what);

struct Amount {
  std::string number;
  std::string unit;                 ///< in small letters; empty when there is none
  const Word* unit_word = nullptr;  ///< the word the unit stands in
};
/// Splits `7.3gal` into number and unit; the unit may be the next word. Not at the end of the line.
Amount take_amount(LineReader& line);

template <class Unit>
std::optional<Unit> find_unit(std::string_view word,
                              std::initializer_list<std::pair<std::string_view, Unit>> known) {
  for (const auto& [name, unit] : known) {
    if (same_word(name, word)) return unit;
  }
  return std::nullopt;
}

}  // namespace kerfbook::sheet
