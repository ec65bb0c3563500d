#include "sheet/fold.h"

#include <algorithm>
#include <array>
#include <cctype>

#include "base/text.h"
#include "measure/notation.h"

namespace kerfbook::sheet {
namespace {

bool ends_number(char c) {
  return is_digit(c) || c == '\'' || c == '"';
}

struct Folding {
  std::string text;
  std::vector<std::uint32_t> from;

  /// A fraction is led by a plus after a digit: 7½ is 7-1/2 and nothing else, while 7-1/2 might be feet and inches or
  /// two ends of a log.
  void append(std::string_view meant, std::size_t at) {
    const bool fraction = meant.size() == 3;
    if (fraction && !text.empty() && is_digit(text.back())) put('+', at);
    for (const char c : meant) put(c, at);
  }
  void put(char c, std::size_t at) {
    text += c;
    from.push_back(static_cast<std::uint32_t>(at));
  }
};

Folding fold_text(std::string_view typed) {
  Folding folded;
  for (std::size_t at = 0; at < typed.size();) {
    const char c = typed[at];
    const bool plain = c != '\t' && static_cast<unsigned char>(c) < 0x80;
    const measure::Mark* mark = plain ? nullptr : measure::mark_at(typed.substr(at));
    if (mark == nullptr) {
      folded.put(c, at++);
    } else {
      folded.append(mark->plain, at);
      at += mark->typed.size();
    }
  }
  folded.from.push_back(static_cast<std::uint32_t>(typed.size()));  // one past the end
  return folded;
}

Word cut(const Folding& folded, std::size_t from, std::size_t to) {
  const auto at = [&](std::size_t i) { return folded.from.begin() + static_cast<std::ptrdiff_t>(i); };
  return {folded.text.substr(from, to - from), {at(from), at(to)}, folded.from[to]};
}

std::vector<Word> cut_words(const Folding& folded, std::size_t end) {
  std::vector<Word> words;
  for (std::size_t at = 0; at < end;) {
    const std::size_t from = std::min(folded.text.find_first_not_of(' ', at), end);
    const std::size_t to = std::min(folded.text.find(' ', from), end);
    if (from < to) words.push_back(cut(folded, from, to));
    at = to;
  }
  return words;
}

std::string cut_remark(std::string_view typed, const Folding& folded, std::size_t semicolon) {
  const std::size_t first = folded.text.find_first_not_of(' ', semicolon + 1);
  if (first == std::string::npos) return {};
  const std::size_t last = folded.text.find_last_not_of(' ');
  return std::string(typed.substr(folded.from[first], folded.from[last + 1] - folded.from[first]));
}

void append(Word& word, const Word& next) {
  word.text += next.text;
  word.from.insert(word.from.end(), next.from.begin(), next.from.end());
  word.end = next.end;
}

bool is_one_of(char c, std::string_view set) {
  return set.find(c) != std::string_view::npos;
}

/// `2` `x6`, `2x` `6`, and, once `2` `x` has become `2x`, the rest of `2` `x` `6`. `after` is what follows `next`.
bool belongs_to(const Word& word, const Word& next, const Word* after, std::string_view operators) {
  const std::string& a = word.text;
  const std::string& b = next.text;
  if (!is_digit(a.front()) && a.front() != '.') return false;
  if (a.size() > 1 && is_one_of(a.back(), operators) && ends_number(a[a.size() - 2])) {
    return is_digit(b.front()) || b.front() == '.';
  }
  if (!ends_number(a.back()) || !is_one_of(b.front(), operators)) return false;
  return b.size() > 1 ? is_digit(b[1]) : after != nullptr && is_digit(after->text.front());
}

/// `16'` `6"`: feet and inches written apart. `3/12"` are pieces again.
bool are_feet_and_inches(const Word& word, const Word& next) {
  const std::string& inches = next.text;
  const bool alone = inches.find('/') == std::string::npos || inches.find('/') > inches.find_first_of("-+");
  return word.text.ends_with('\'') && is_digit(word.text.front()) && is_digit(inches.front()) &&
         inches.ends_with('"') && inches.find_first_of("xX'") == std::string::npos && alone;
}

/// `1` `1/8x4`: a whole number before a fraction that heads a size.
bool leads_fraction(const Word& word, const Word& next) {
  if (!std::all_of(word.text.begin(), word.text.end(), is_digit)) return false;
  const std::size_t slash = next.text.find('/');
  const std::size_t x = next.text.find_first_of("xX", slash);
  if (slash == 0 || slash == std::string::npos || x == std::string::npos || x == slash + 1) return false;
  const auto digits = [&](std::size_t from, std::size_t to) {
    return std::all_of(next.text.begin() + static_cast<std::ptrdiff_t>(from),
                       next.text.begin() + static_cast<std::ptrdiff_t>(to), is_digit);
  };
  return digits(0, slash) && digits(slash + 1, x);
}

void join_operators(std::vector<Word>& words, std::string_view operators) {
  std::vector<Word> joined;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const Word* after = i + 1 < words.size() ? &words[i + 1] : nullptr;
    if (!joined.empty() && (belongs_to(joined.back(), words[i], after, operators) ||
                            are_feet_and_inches(joined.back(), words[i]))) {
      append(joined.back(), words[i]);
    } else {
      joined.push_back(words[i]);
    }
  }
  words = std::move(joined);
}

void join_fractions(std::vector<Word>& words) {
  std::vector<Word> joined;
  for (const Word& word : words) {
    if (!joined.empty() && leads_fraction(joined.back(), word)) {
      joined.back().text += '+';
      joined.back().from.push_back(word.from.front());
      append(joined.back(), word);
    } else {
      joined.push_back(word);
    }
  }
  words = std::move(joined);
}

Word part(const Word& word, std::size_t from, std::size_t to) {
  const auto at = [&](std::size_t i) { return word.from.begin() + static_cast<std::ptrdiff_t>(i); };
  return {word.text.substr(from, to - from),
          {at(from), at(to)},
          to < word.text.size() ? word.from[to] : word.end};
}

std::vector<Word> parted_at_commas(const std::vector<Word>& words) {
  std::vector<Word> parts;
  for (const Word& word : words) {
    for (std::size_t at = 0; at < word.text.size();) {
      std::size_t end = std::min(word.text.find(',', at), word.text.size());
      if (end == at) ++end;  // the comma itself
      parts.push_back(part(word, at, end));
      at = end;
    }
  }
  return parts;
}

/// A word of a tally line that is no count, yet no word of a reason either: a unit, a mark set apart, `rw`.
bool goes_on(const std::string& text) {
  const auto first = static_cast<unsigned char>(text.front());
  if (first < 0x80 && std::isalpha(first) == 0) return true;
  const std::string word = text.back() == ',' ? text.substr(0, text.size() - 1) : text;
  return is_unit(word) || same_word(word, "rw") || same_word(word, "x");
}

/// `2x6: No2, 24/16, 3/12` without its marks. Only what is counted, and the grade behind the size: a reason keeps its
/// commas.
void drop_marks(std::vector<Word>& words) {
  std::size_t size = 0;
  while (size < words.size() && !is_digit(words[size].text.front())) ++size;
  const bool random = size + 1 < words.size() && same_word(words[size + 1].text, "rw");
  const std::size_t grade = size + (random ? 2 : 1);
  for (std::size_t i = size; i < words.size(); ++i) {
    std::string& text = words[i].text;
    const bool counted = is_digit(text.front());
    const bool is_grade = i == grade && i + 1 < words.size() && is_digit(words[i + 1].text.front());
    if (!counted && !is_grade) {
      if (!goes_on(text)) return;  // a reason begins
      continue;
    }
    if (text.size() < 2 || (text.back() != ',' && text.back() != ':')) continue;
    text.pop_back();
    words[i].end = words[i].from.back();
    words[i].from.pop_back();
  }
}

}  // namespace

FoldedLine fold(std::string_view typed) {
  const Folding folded = fold_text(typed);
  const std::size_t semicolon = folded.text.find(';');
  FoldedLine line{typed, cut_words(folded, std::min(semicolon, folded.text.size())), {}};
  if (semicolon != std::string::npos) line.remark = cut_remark(typed, folded, semicolon);
  return line;
}

std::string typed_text(const FoldedLine& line, const Word& word) {
  std::string out;
  bool blank = false;
  for (const char c : line.typed.substr(word.from.front(), word.end - word.from.front())) {
    if (c == ' ' || c == '\t') {
      blank = true;
      continue;
    }
    if (blank && !out.empty()) out += ' ';
    blank = false;
    out += c;
  }
  return out;
}

bool is_unit(std::string_view word) {
  constexpr std::array<std::string_view, 10> kUnits{"ft", "m",  "mm", "cm", "in",
                                                    "lf", "lm", "bf", "pc", "pcs"};
  return std::any_of(kUnits.begin(), kUnits.end(),
                     [&](std::string_view unit) { return same_word(word, unit); });
}

void join_words(FoldedLine& line, Joining how) {
  if (how == Joining::tally) drop_marks(line.words);
  if (how == Joining::sizes || how == Joining::tally) {
    join_operators(line.words, "xX*/");
    join_fractions(line.words);
  } else if (how == Joining::spans) {
    line.words = parted_at_commas(line.words);
    join_operators(line.words, "-");
  }
}

}  // namespace kerfbook::sheet
