#include "measure/heap.h"

#include <array>

#include "base/text.h"

namespace kerfbook::measure {

std::string_view word_of(HeapUnit unit) {
  switch (unit) {
    case HeapUnit::cubic_foot:
      return "ft3";
    case HeapUnit::cubic_yard:
      return "yd3";
    case HeapUnit::cubic_metre:
      return "m3";
    case HeapUnit::cord:
      return "cord";
  }
  return "";
}

std::optional<HeapUnit> heap_unit(std::string_view word) {
  static constexpr std::array<std::pair<std::string_view, HeapUnit>, 9> kWords{
      {{"ft3", HeapUnit::cubic_foot},
       {"cuft", HeapUnit::cubic_foot},
       {"yd3", HeapUnit::cubic_yard},
       {"cuyd", HeapUnit::cubic_yard},
       {"yard", HeapUnit::cubic_yard},
       {"yards", HeapUnit::cubic_yard},
       {"m3", HeapUnit::cubic_metre},
       {"cord", HeapUnit::cord},
       {"cords", HeapUnit::cord}}};
  for (const auto& [known, unit] : kWords) {
    if (same_word(known, word)) return unit;
  }
  return std::nullopt;
}

Rational heap_feet3(const Rational& quantity, HeapUnit unit) {
  switch (unit) {
    case HeapUnit::cubic_foot:
      return quantity;
    case HeapUnit::cubic_yard:
      return quantity * 27;
    case HeapUnit::cubic_metre: {
      const Rational foot(3048, 10'000);  // in metres
      return quantity / (foot * foot * foot);
    }
    case HeapUnit::cord:
      return quantity * 128;
  }
  return quantity;
}

}  // namespace kerfbook::measure
