#include "measure/notation.h"

#include <algorithm>
#include <array>

#include "base/text.h"

namespace kerfbook::measure {
namespace {

constexpr std::array kMarks{
    Mark{"\t", " "},     Mark{"\u00A0", " "}, Mark{"\u2007", " "}, Mark{"\u2009", " "}, Mark{"\u202F", " "},
    Mark{"\u3000", " "}, Mark{"′", "'"},      Mark{"’", "'"},      Mark{"‘", "'"},      Mark{"´", "'"},
    Mark{"″", "\""},     Mark{"”", "\""},     Mark{"“", "\""},     Mark{"„", "\""},     Mark{"×", "x"},
    Mark{"✕", "x"},      Mark{"–", "-"},      Mark{"—", "-"},      Mark{"−", "-"},      Mark{"‐", "-"},
    Mark{"‑", "-"},      Mark{"‒", "-"},      Mark{"⁄", "/"},      Mark{"∕", "/"},      Mark{"½", "1/2"},
    Mark{"¼", "1/4"},    Mark{"¾", "3/4"},    Mark{"⅛", "1/8"},    Mark{"⅜", "3/8"},    Mark{"⅝", "5/8"},
    Mark{"⅞", "7/8"},    Mark{"⅓", "1/3"},    Mark{"⅔", "2/3"},    Mark{"\u200B", ""},  Mark{"\uFEFF", ""},
    Mark{"\u00AD", ""},
};

bool is_letter(char c) {
  return c >= 'a' && c <= 'z';
}

/// Bytes of the character that starts with `first`; 1 for a byte that starts none.
std::size_t bytes_of(char first) {
  const auto byte = static_cast<unsigned char>(first);
  return byte >= 0xF0 ? 4 : byte >= 0xE0 ? 3 : byte >= 0xC0 ? 2 : 1;
}

struct UnitWord {
  std::string_view word;
  Unit unit;
};
constexpr std::array kUnitWords{
    // longer words before the words they begin with
    UnitWord{"''", Unit::inch},       UnitWord{"\"", Unit::inch},   UnitWord{"inches", Unit::inch},
    UnitWord{"inch", Unit::inch},     UnitWord{"in.", Unit::inch},  UnitWord{"in", Unit::inch},
    UnitWord{"'", Unit::foot},        UnitWord{"feet", Unit::foot}, UnitWord{"foot", Unit::foot},
    UnitWord{"ft.", Unit::foot},      UnitWord{"ft", Unit::foot},   UnitWord{"mm", Unit::millimetre},
    UnitWord{"cm", Unit::centimetre}, UnitWord{"m", Unit::metre},
};

constexpr std::size_t kMostDigits = 8;  ///< of a whole number: 30480000 mm is the longest length believed
constexpr std::size_t kMostDecimals = 6;

}  // namespace

const Mark* mark_at(std::string_view text) {
  // Nearly every byte that is typed is plain; of those only the tab is a mark.
  if (text.empty() || (static_cast<unsigned char>(text[0]) < 0x80 && text[0] != '\t')) return nullptr;
  const auto* at = std::find_if(kMarks.begin(), kMarks.end(),
                                [&](const Mark& mark) { return text.starts_with(mark.typed); });
  return at == kMarks.end() ? nullptr : at;
}

PlainText plain_notation(std::string_view typed) {
  PlainText out;
  int character = 0;
  const auto add = [&](std::string_view plain) {
    out.text += plain;
    out.at.insert(out.at.end(), plain.size(), character);
  };
  for (std::size_t i = 0; i < typed.size(); ++character) {
    if (const Mark* mark = mark_at(typed.substr(i))) {
      const bool fraction = mark->plain.size() == 3;
      if (fraction && !out.text.empty() && is_digit(out.text.back())) add("+");
      add(mark->plain);
      i += mark->typed.size();
    } else {
      const std::size_t bytes = bytes_of(typed[i]);
      add(lower(typed.substr(i, bytes)));
      i += bytes;
    }
  }
  out.at.push_back(character);
  return out;
}

Scanner::Scanner(std::string_view typed) : plain_(plain_notation(typed)), end_(plain_.text.size()) {
  skip_blanks();
}

Scanner::Scanner(const PlainText& plain, std::size_t from, std::size_t to)
    : plain_(plain), begin_(from), here_(from), end_(to) {
  skip_blanks();
}

void Scanner::skip_blanks() {
  while (peek() == ' ') ++here_;
}

bool Scanner::done() {
  skip_blanks();
  return here_ == end_;
}

bool Scanner::next_is(char c) {
  skip_blanks();
  return here_ < end_ && peek() == c;
}

bool Scanner::take(char c) {
  if (!next_is(c)) return false;
  ++here_;
  return true;
}

int Scanner::at() const {
  return plain_.at[here_];
}

std::string Scanner::part() const {
  return std::string(trim(std::string_view(plain_.text).substr(begin_, end_ - begin_)));
}

std::string Scanner::digits() {
  const std::size_t from = here_;
  while (is_digit(peek())) ++here_;
  return plain_.text.substr(from, here_ - from);
}

Slip Scanner::slip(std::string what, std::string instead) const {
  return {std::move(what), std::move(instead), at()};
}

/// Stands on a blank, - or + after a whole number: is a fraction next? Unmoved.
bool Scanner::fraction_follows() {
  std::size_t look = here_ + 1;
  const std::size_t first = look;
  while (look < end_ && is_digit(plain_.text[look])) ++look;
  return look > first && look + 1 < end_ && plain_.text[look] == '/' && is_digit(plain_.text[look + 1]);
}

Result<Number> Scanner::decimal(const std::string& before) {
  ++here_;  // the point
  const std::string after = digits();
  if (before.empty() && after.empty())
    return slip(in_quotes(part()) + " is not a number", "write digits, as 7.5");
  if (after.size() > kMostDecimals) return slip("too many decimals", "write at most 6");
  Number number;
  number.value = *read_decimal(before + "." + after, static_cast<int>(kMostDecimals));
  number.whole = false;
  number.decimal = true;
  return number;
}

/// Stands on the / after `above`.
Result<Number> Scanner::fraction_after(const std::string& above) {
  ++here_;  // the stroke
  const std::string below = digits();
  if (below.empty()) return slip("a fraction without its lower number", "write it as 1/2");
  if (below.size() > 3 || std::stoi(below) == 0)
    return slip("'/" + below + "' is no part of an inch", "write it as 1/2");
  Number number;
  number.over = std::stoi(below);
  number.value = Rational(std::stoll(above), number.over);
  number.whole = false;
  number.fraction = true;
  return number;
}

Result<Number> Scanner::number() {
  skip_blanks();
  const std::size_t start = here_;
  const auto back = [&](Slip slip) {
    here_ = start;
    return slip;
  };
  if (peek() == '-') return back(slip("a measure is never less than nothing", "leave the minus sign out"));
  const std::string first = digits();
  if (first.empty() && peek() != '.') return back(slip(in_quotes(part()) + " is not a number", ""));
  if (first.size() > kMostDigits) return back(slip(in_quotes(first) + " is more than a mill ever saws", ""));
  if (peek() == '.') return decimal(first);
  if (peek() == '/') return fraction_after(first);
  Number number;
  number.value = std::stoll(first);
  const char joiner = peek();
  if ((joiner != '-' && joiner != ' ' && joiner != '+') || !fraction_follows()) return number;
  const std::size_t from = ++here_;
  const std::string above = digits();
  if (above.size() > 3) {
    here_ = from;
    return back(slip(in_quotes(above) + " is too much above a fraction's stroke", ""));
  }
  auto rest = fraction_after(above);
  if (!rest) return back(rest.slip());
  if (rest->value >= Rational(1)) {
    return back(slip("the fraction in " + in_quotes(part()) + " is a whole or more", "write it as 7-1/2"));
  }
  rest->value = rest->value + number.value;
  rest->joiner = joiner;
  return rest;
}

Unit Scanner::unit() {
  skip_blanks();
  const auto rest = std::string_view(plain_.text).substr(here_, end_ - here_);
  for (const UnitWord& known : kUnitWords) {
    if (!rest.starts_with(known.word)) continue;
    const bool goes_on =
        rest.size() > known.word.size() && is_letter(known.word.back()) && is_letter(rest[known.word.size()]);
    if (goes_on) continue;
    here_ += known.word.size();
    return known.unit;
  }
  return Unit::none;
}

}  // namespace kerfbook::measure
