// tally_words.cpp -- sizes, grades, pieces and lengths as the tally lines write them.
#include "sheet/tally_words.h"

#include <algorithm>
#include <cctype>

#include "base/text.h"

namespace kerfbook::sheet {
namespace {

constexpr std::int64_t kMostPieces = 9'999;  // of an item; with the longest and widest, volumes stay exact
constexpr Length kLongest = measure::feet(200);

/// Complains of a size past what can be counted.
bool sane_size(LineReader& line, const Word& word, const Size& size) {
  if (!beyond(size.thickness, kWidest) && !beyond(size.width, kWidest)) return true;
  line.error(word, in_quotes(line.typed(word)) + ": wider than any board", "write thickness x width, as 2x6");
  return false;
}

/// `24@16`, `24-16`, `24x16`, `16:24`: two numbers with something other than a stroke between, told as pieces/length.
std::string with_stroke(const Word& word) {
  const std::size_t mark = word.text.find_first_of("@-xX*:\\|=");
  if (mark == std::string::npos) return {};
  const std::string pieces = word.text.substr(0, mark);
  const std::string length = word.text.substr(mark + 1);
  return all_digits(pieces) && measure::read_feet(length) ? pieces + "/" + length : std::string();
}

/// A bare number among the items: pieces that lack a length, or a length that lacks pieces.
void bare_number(LineReader& line, const Word& word, const Word& size, const std::string& grade,
                 const std::string& more) {
  const std::string typed = line.typed(word);
  const std::string sized = line.typed(size);
  if (same_word(grade, "no") || grade == "#") {
    line.error(word, in_quotes(grade + " " + typed) + ": a grade is one word", "write " + grade + typed);
  } else if (all_digits(word.text) && is_item(line.peek()) &&
             line.peek().find('/') == std::string_view::npos) {
    const std::string length(line.peek());
    line.error(word, in_quotes(typed + " " + length) + ": pieces and length stand apart",
               "write " + typed + "/" + length);
    line.take();
  } else if (all_digits(word.text)) {
    line.error(word, in_quotes(sized + " " + typed) + ": pieces without a length",
               "write " + typed + "/16, or " + sized + "x16 " + typed);
  } else if (const std::string meant = with_stroke(word); !meant.empty()) {
    line.error(word, in_quotes(typed) + ": pieces and length want a / between them", "write " + meant);
  } else {
    line.error(word, in_quotes(typed) + ": a length without pieces", "write 24/" + typed + more);
  }
}

/// The slash that was typed as one, not that of a ½.
std::size_t find_slash(const Word& word) {
  for (std::size_t i = 0; i < word.text.size(); ++i) {
    const bool of_fraction = i > 0 && word.from[i] == word.from[i - 1];
    if (word.text[i] == '/' && !of_fraction) return i;
  }
  return std::string::npos;
}

}  // namespace

bool told_as_several(LineReader& line, const Word& word) {
  const std::size_t comma = word.text.find(',');
  if (comma == std::string::npos || comma == 0 || comma + 1 == word.text.size()) return false;
  const std::string_view after = std::string_view(word.text).substr(comma + 1);
  if (after.find_first_of("/xX") == std::string_view::npos) return false;  // 12/8,5: a decimal, told as one
  std::string apart = line.typed(word);
  std::replace(apart.begin(), apart.end(), ',', ' ');
  line.error(word, in_quotes(line.typed(word)) + ": several in one word", "write " + apart);
  return true;
}

namespace {

/// PIECES/LENGTH... up to the first word that cannot be meant as one.
std::vector<Tally::Item> take_items(LineReader& line, const Word& size_word, const Size& size,
                                    const std::string& grade, const std::string& more) {
  std::vector<Tally::Item> items;
  while (is_item(line.peek())) {
    const Word& word = line.take();
    const std::size_t slash = find_slash(word);
    if (slash == std::string::npos) {
      bare_number(line, word, size_word, grade, more);
      continue;
    }
    if (told_as_several(line, word)) continue;
    const auto pieces = read_pieces(line, word, 0, slash);
    const auto length = measure::read_length(std::string_view(word.text).substr(slash + 1), is_metric(size));
    if (!length) {
      line.slip(word, slash + 1, length.slip());
    } else if (length->system != size.thickness.system) {
      line.error(word,
                 in_quotes(line.typed(word)) + ": a length in " + (is_metric(size) ? "feet" : "metres") +
                     " for a size in " + (is_metric(size) ? "millimetres" : "inches"),
                 "write both in one of them");
    } else if (sane_length(line, word, slash + 1, *length) && pieces) {
      items.push_back({*pieces, *length});
    }
    if (same_word(line.peek(), is_metric(size) ? "m" : "ft")) line.take();  // 24/16 ft
  }
  return items;
}

/// `15x12` alone may be a log that lacks its word: few boards are so thick.
bool is_log_like(const Size& size) {
  constexpr Length kLeast = measure::inches(8);
  return !is_metric(size) && !beyond(kLeast, size.thickness);
}

/// `sel24/16` with a blank after the grade; empty when the word is no such thing.
std::string grade_and_item(std::string_view word) {
  const std::size_t digit = word.find_first_of("0123456789");
  if (digit == std::string_view::npos || digit == 0 || word.find('/') == std::string_view::npos) return {};
  return std::string(word.substr(0, digit)) + " " + std::string(word.substr(digit));
}

/// `2x8x16 4`: one length for all.
void take_one_length(LineReader& line, const Word& word, SizedTally& out) {
  const auto piece = measure::read_piece(word.text, line.metric());
  if (!piece) return line.slip(word, 0, piece.slip());
  out.size = piece->size;
  out.grade = take_grade(line);
  const std::size_t last = word.text.find_last_of("xX") + 1;
  if (!sane_size(line, word, out.size) || !sane_length(line, word, last, piece->length)) return;
  const std::string typed = line.typed(word);
  if (line.done()) return line.missing(in_quotes(typed) + " without pieces", "write " + typed + " 4");
  const Word& count = line.take();
  if (count.text.find('/') != std::string::npos) {
    return line.error(count, in_quotes(line.typed(count)) + ": a second length for " + in_quotes(typed),
                      "write the pieces alone, as " + typed + " 4");
  }
  if (const auto pieces = read_pieces(line, count, 0, count.text.size()))
    out.items.push_back({*pieces, piece->length});
}

}  // namespace

bool is_metric(const Size& size) {
  return size.thickness.system == measure::System::metric;
}

bool beyond(Length length, Length most) {
  return measure::in_inches(length) > measure::in_inches(most);
}

std::ptrdiff_t count_x(std::string_view text) {
  return std::count_if(text.begin(), text.end(), [](char c) { return c == 'x' || c == 'X'; });
}

bool looks_like_grade(std::string_view text) {
  if (text.empty() || text.front() == '-' || same_word(text, "lf") || same_word(text, "lm") ||
      text.find('/') != std::string_view::npos)
    return false;
  if (!starts_with_digit(text))
    return text.front() != '.' && text.front() != '\'' && text.front() != '"' && text.front() != '*';
  const std::size_t letters = text.find_first_not_of("0123456789");
  if (letters > 2) return false;  // npos too: a bare number
  const std::string rest = lower(text.substr(letters));
  const bool all_letters = std::all_of(rest.begin(), rest.end(), [](char c) { return c >= 'a' && c <= 'z'; });
  return all_letters && rest.front() != 'x' && !is_unit(rest);
}

std::string take_grade(LineReader& line) {
  return looks_like_grade(line.peek()) ? line.take_typed() : std::string();
}

bool is_item(std::string_view text) {
  if (text.starts_with("//")) return false;  // a remark, to some
  if (text.starts_with('-')) text.remove_prefix(1);
  return starts_with_digit(text) || text.starts_with('/') || text.starts_with('.');
}

std::optional<Size> read_size_word(LineReader& line, const Word& word) {
  const auto size = measure::read_size(word.text, line.metric());
  if (!size) {
    line.slip(word, 0, size.slip());
    return std::nullopt;
  }
  if (!sane_size(line, word, *size)) return std::nullopt;
  return *size;
}

bool sane_length(LineReader& line, const Word& word, std::size_t at, const Length& length) {
  const std::string typed = word.text.substr(at);
  if (length.is_zero()) {
    line.slip(word, at, {"a length of zero", "write it in feet, as 16 or 16'6\"", 0});
  } else if (beyond(length, kLongest)) {
    line.slip(
        word, at,
        {in_quotes(typed) + ": longer than any board", "the lumber trade writes pieces/length, as 24/16", 0});
  } else {
    return true;
  }
  return false;
}

std::optional<std::int64_t> read_pieces(LineReader& line, const Word& word, std::size_t from,
                                        std::size_t to) {
  const std::string text = word.text.substr(from, to - from);
  const auto pieces = whole_number(text);
  if (pieces && *pieces >= 1 && *pieces <= kMostPieces) return pieces;
  if (pieces && *pieces == 0) {
    line.slip(word, from, {in_quotes(line.typed(word)) + ": no pieces", "leave it out", 0});
  } else if (pieces) {
    line.slip(word, from,
              {in_quotes(text) + ": more pieces than a day holds", "write pieces/length, as 24/16", 0});
  } else if (text.starts_with('-') && all_digits(std::string_view(text).substr(1))) {
    line.slip(word, from,
              {in_quotes(line.typed(word)) + ": pieces are never less than nothing",
               "what comes off the tally is written less 2x6 " + line.typed(word).substr(1), 0});
  } else {
    const std::size_t letters = std::min(text.find_first_not_of("0123456789"), text.size());
    const bool counted = letters > 0 && letters < text.size() &&
                         std::isalpha(static_cast<unsigned char>(text[letters])) != 0;  // 24pcs
    line.slip(word, from,
              {in_quotes(line.typed(word)) + ": not a number of pieces",
               counted ? "write " + text.substr(0, letters) + word.text.substr(to)
                       : "write pieces/length, as 24/16",
               0});
  }
  return std::nullopt;
}

SizedTally take_sized(LineReader& line, const Word& word, const std::string& more) {
  SizedTally out;
  if (count_x(word.text) >= 2) {
    take_one_length(line, word, out);
    return out;
  }
  if (const std::size_t blank = line.typed(word).find(" /"); blank != std::string::npos) {
    const std::string typed = line.typed(word);
    line.error(word, in_quotes(typed) + ": a length without pieces",
               "write " + typed.substr(0, blank) + " 24" + typed.substr(blank + 1));
    line.take_rest();
    return out;
  }
  const auto size = read_size_word(line, word);
  if (!size) {
    line.take_rest();
    return out;
  }
  out.size = *size;
  out.grade = take_grade(line);
  out.items = take_items(line, word, *size, out.grade, more);
  if (out.items.empty() && !line.failed()) {
    const std::string typed = line.typed(word);
    const std::string what = in_quotes(typed) + " without pieces";
    std::string instead = "write pieces/length, as " + typed + " 24/16 3/12";
    if (is_log_like(out.size)) instead += "; a log is written log " + typed;
    if (const std::string parted = grade_and_item(line.peek()); !parted.empty())
      instead = "write " + typed + " " + parted;
    line.done() ? line.missing(what, instead) : line.error(line.take(), what, instead);
  }
  return out;
}

namespace {

bool ends_lineal(std::string_view text) {
  const std::string folded = lower(text);
  return starts_with_digit(text) && (folded.ends_with("lf") || folded.ends_with("lm"));
}

}  // namespace

bool at_lineal(const LineReader& line) {
  const std::size_t grade = looks_like_grade(line.peek()) ? 1 : 0;
  const std::string_view next = line.peek(grade + 1);
  const std::string_view first = line.peek(grade);
  if (same_word(first, "lf") || same_word(first, "lm")) return true;  // its number is missing
  return ends_lineal(first) || (starts_with_digit(first) && (same_word(next, "lf") || same_word(next, "lm")));
}

std::optional<SizedLength> take_lineal(LineReader& line, const Word& word) {
  SizedLength sized;
  const auto size = read_size_word(line, word);
  if (!size) return std::nullopt;
  sized.size = *size;
  sized.grade = take_grade(line);
  const Word& total = line.take();
  if (!has_digit(total.text)) {
    line.error(total, in_quotes(line.typed(total)) + " without a length", "write it as 212lf");
    return std::nullopt;
  }
  std::string text = total.text;
  if (!ends_lineal(text)) text += line.take().text;
  const bool metres = text.back() == 'm' || text.back() == 'M';
  text.resize(text.size() - 2);
  const auto length = metres ? measure::read_metres(text) : measure::read_feet(text);
  if (!length) {
    line.slip(total, 0, length.slip());
  } else if (length->system != size->thickness.system) {
    line.error(total,
               in_quotes(line.typed(total)) + ": lineal " + (metres ? "metres" : "feet") + " of a size in " +
                   (metres ? "inches" : "millimetres"),
               "write both in one of them");
  } else if (length->is_zero()) {
    line.error(total, in_quotes(line.typed(total)) + ": a length of zero", "leave the line out");
  } else {
    sized.total = *length;
  }
  if (line.failed()) return std::nullopt;
  return sized;
}

}  // namespace kerfbook::sheet
