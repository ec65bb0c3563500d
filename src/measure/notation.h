// notation.h -- the marks the trade writes numbers with, made plain and scanned: 7-1/2, 7½, 5/4, 16'6", 47.5
// mm. What a number with its unit means as a length or a size stands in length.h and size.h.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "base/exact.h"
#include "base/result.h"

namespace kerfbook::measure {

/// A typographic mark, and what it means in plain ASCII.
struct Mark {
  std::string_view typed;
  std::string_view plain;  ///< may be empty: a character that shows nothing
};
const Mark* mark_at(
    std::string_view text);  ///< the one the text begins with; nullptr when it begins with none

/// A typed text in plain ASCII marks, lower case: ′ ’ become ', ″ ” become ", × becomes x, ½ becomes 1/2
/// (`7½` is `7+1/2`), dashes become -, every kind of blank a blank. What is not known stays as it is.
struct PlainText {
  std::string text;
  std::vector<int> at;  ///< for each byte of `text` and for its end: characters before it in what was typed
};
PlainText plain_notation(std::string_view typed);

enum class Unit : std::uint8_t { none, inch, foot, millimetre, centimetre, metre };

/// A number as it was typed.
struct Number {
  Rational value;
  bool whole = true;      ///< digits only
  bool decimal = false;   ///< has a point
  bool fraction = false;  ///< has a /
  char joiner = 0;        ///< between whole and fraction: '-', ' ' or '+' (typed as ½); 0 = no such pair
  std::int64_t over = 1;  ///< the denominator as typed: 4 in 8/4
};

/// Walks one text (or a part of it) from left to right.
class Scanner {
 public:
  explicit Scanner(std::string_view typed);
  /// Only the part [from, to) of the plain text, keeping the places of the whole.
  Scanner(const PlainText& plain, std::size_t from, std::size_t to);

  [[nodiscard]] bool done();           ///< nothing but blanks is left
  [[nodiscard]] bool next_is(char c);  ///< after blanks
  bool take(char c);                   ///< after blanks; false and unmoved when something else stands there
  /// Digits, a decimal, a fraction, or a whole with a fraction. Never negative. Unmoved on a Slip.
  Result<Number> number();
  Unit
  unit();  ///< `"` '' in inch inches ' ft foot feet mm cm m; Unit::none and unmoved when none stands there
  [[nodiscard]] int at() const;            ///< characters from the start of what was typed to here
  [[nodiscard]] std::string part() const;  ///< what is being scanned, as plain text, trimmed

 private:
  void skip_blanks();
  [[nodiscard]] char peek() const { return here_ < end_ ? plain_.text[here_] : '\0'; }
  std::string digits();
  bool fraction_follows();
  Result<Number> decimal(const std::string& before);
  Result<Number> fraction_after(const std::string& above);
  Slip slip(std::string what, std::string instead) const;

  PlainText plain_;
  std::size_t begin_ = 0;
  std::size_t here_ = 0;
  std::size_t end_ = 0;
};

}  // namespace kerfbook::measure
