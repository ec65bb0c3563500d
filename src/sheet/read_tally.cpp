// read_tally.cpp -- the lines that begin with a size, and those that hold one: less, resaw, thick.
#include <algorithm>

#include "base/text.h"
#include "sheet/kinds.h"
#include "sheet/tally_words.h"

namespace kerfbook::sheet {
namespace {

std::optional<Fact> take_lineal_line(LineReader& line, const Word& word, Sense sense) {
  const std::optional<SizedLength> sized = take_lineal(line, word);
  if (!sized) return std::nullopt;
  LinealTally tally{sense, sized->size, sized->grade, sized->total, ""};
  if (sense == Sense::less) tally.reason = line.take_rest();
  line.expect_end("the lineal length");
  if (line.failed()) return std::nullopt;
  return tally;
}

/// WIDTHxLENGTH[*PIECES]
std::optional<RandomTally::Board> read_board(LineReader& line, const Word& word, const Length& thickness) {
  const std::string_view text = word.text;
  const std::size_t star = std::min(text.find('*'), text.size());
  const std::size_t x = text.find_first_of("xX");
  const bool in_metric = thickness.system == measure::System::metric;
  if (told_as_several(line, word)) return std::nullopt;
  if (x == std::string_view::npos || x > star) {
    line.error(word, in_quotes(line.typed(word)) + ": not a random-width board",
               "write width x length, as 7-1/2x8 or 6x8*3");
    return std::nullopt;
  }
  RandomTally::Board board;
  const auto width =
      in_metric ? measure::read_millimetres(text.substr(0, x)) : measure::read_inches(text.substr(0, x));
  const auto length = measure::read_length(text.substr(x + 1, star - x - 1), in_metric);
  if (!width) line.slip(word, 0, width.slip());
  if (!length) line.slip(word, x + 1, length.slip());
  if (star < text.size()) board.pieces = read_pieces(line, word, star + 1, text.size()).value_or(0);
  if (!width || !length || board.pieces == 0) return std::nullopt;
  board.width = *width;
  board.length = *length;
  if (width->system != thickness.system || length->system != thickness.system) {
    line.error(word, in_quotes(line.typed(word)) + ": inches and millimetres in one board",
               "write all in one of them");
  } else if (width->is_zero() || beyond(*width, kWidest)) {
    line.error(word, in_quotes(line.typed(word)) + ": no such width",
               "write width in inches x length in feet, as 7-1/2x8");
  } else if (sane_length(line, word, x + 1, *length)) {
    return board;
  }
  return std::nullopt;
}

std::optional<Fact> take_random(LineReader& line, const Word& word, Sense sense) {
  RandomTally tally;
  tally.sense = sense;
  const bool plain = word.text.find_first_not_of("0123456789.") == std::string::npos;
  const auto thickness =
      line.metric() && plain ? measure::read_millimetres(word.text) : measure::read_inches(word.text);
  if (!thickness) {
    line.slip(word, 0, thickness.slip());
  } else if (thickness->is_zero() || beyond(*thickness, kWidest)) {
    line.error(word, in_quotes(line.typed(word)) + ": no such thickness", "write it in inches, as 5/4");
  } else {
    tally.thickness = *thickness;
  }
  tally.quarters = word.text.ends_with("/4") && word.text.find_first_of("+-") == std::string::npos &&
                   thickness && thickness->count >= measure::kPerInch;
  line.take();  // rw
  tally.grade = take_grade(line);
  while (is_item(line.peek())) {
    const Word& item = line.take();
    if (const auto board = read_board(line, item, tally.thickness)) tally.boards.push_back(*board);
  }
  if (tally.boards.empty() && !line.failed()) {
    line.missing("'rw' without boards",
                 "write width x length for each, as " + line.typed(word) + " rw 7-1/2x8 6x8*3");
  }
  if (sense == Sense::less) tally.reason = line.take_rest();
  line.expect_end("the boards");
  if (line.failed()) return std::nullopt;
  return tally;
}

std::optional<Fact> take_pieces(LineReader& line, const Word& word, Sense sense) {
  Tally tally;
  tally.sense = sense;
  SizedTally sized = take_sized(line, word);
  if (line.failed()) return std::nullopt;
  tally.size = sized.size;
  tally.grade = std::move(sized.grade);
  tally.items = std::move(sized.items);
  if (sense == Sense::less) tally.reason = line.take_rest();
  if (tally.grade.empty() && line.left() == 1 && looks_like_grade(line.peek())) {
    const Word& grade = line.take();
    line.error(grade, in_quotes(line.typed(grade)) + ": a word after the pieces",
               "a grade stands before them, as " + line.typed(word) + " " + line.typed(grade) +
                   " 24/16; put a remark after ';'");
  }
  line.expect_end("the pieces");
  if (line.failed()) return std::nullopt;
  return tally;
}

/// Where a size is wanted: `24 2x6x16` and `24/16` are pieces, `5/4` is a thickness.
void no_size(LineReader& line, const Word& word) {
  const std::string typed = line.typed(word);
  const auto thickness = measure::read_inches(word.text);
  constexpr Length kThickest = measure::inches(12);
  const bool pieces = all_digits(word.text) && count_x(line.peek()) > 0;
  if (pieces) {
    const std::string size(line.peek());
    const std::string length = count_x(size) > 1 ? "" : line.left() > 1 ? std::string(line.peek(1)) : "16";
    line.error(word, in_quotes(typed) + ": the size comes first",
               "write " + size + " " + typed + (length.empty() ? "" : "/" + length));
  } else if (word.text.find('/') != std::string::npos && (!thickness || !word.text.ends_with("/4"))) {
    line.error(word, in_quotes(typed) + ": pieces without a size", "write 2x6 " + typed);
  } else if (!thickness || beyond(*thickness, kThickest)) {
    line.error(word, in_quotes(typed) + ": a line of lumber begins with its size", "write 2x6 24/16");
  } else {
    line.error(word, in_quotes(typed) + ": a thickness without a width",
               "write " + typed + "x6 24/16, or " + typed + " rw for random widths");
  }
  line.take_rest();
}

std::optional<Fact> read_any(LineReader& line, Sense sense, const char* example) {
  if (!starts_with_digit(line.peek()) && !line.peek().starts_with('.')) {
    const std::string what = "a size is missing";
    const std::string instead = std::string("write ") + example;
    line.done() ? line.missing(what, instead) : line.error(line.take(), what, instead);
    return std::nullopt;
  }
  const Word& word = line.take();
  if (same_word(line.peek(), "rw")) return take_random(line, word, sense);
  if (count_x(word.text) == 0) {
    no_size(line, word);
    return std::nullopt;
  }
  if (count_x(word.text) == 1 && at_lineal(line)) return take_lineal_line(line, word, sense);
  return take_pieces(line, word, sense);
}

}  // namespace

std::optional<Fact> read_sawn(LineReader& line) {
  return read_any(line, Sense::sawn, "2x6 24/16");
}
std::optional<Fact> read_less(LineReader& line) {
  return read_any(line, Sense::less, "less 2x6 1/16 split");
}
std::optional<Fact> read_resaw(LineReader& line) {
  return read_any(line, Sense::resaw, "resaw 4x6 2/12");
}

std::optional<Fact> read_thick(LineReader& line) {
  if (line.done()) {
    line.missing("'thick' without a size", "write thick 2x6 2.02 2.00 1.98");
    return std::nullopt;
  }
  const Word& word = line.take();
  const auto size = read_size_word(line, word);
  if (!size) return std::nullopt;
  Thick thick{*size, {}};
  const std::int64_t most = is_metric(*size) ? 122'000 : 48'000;
  while (!line.done()) {
    const Word& reading = line.take();
    const auto mils = measure::read_mils(reading.text, is_metric(*size));
    if (mils && *mils > 0 && *mils < most) {
      thick.readings.push_back(*mils);
    } else {
      line.error(
          reading, in_quotes(line.typed(reading)) + ": not a caliper reading",
          is_metric(*size) ? "write millimetres, as 50.8" : "write inches to the thousandth, as 2.015");
    }
  }
  if (!line.failed() && thick.readings.size() < 2) {
    line.missing("a single reading says nothing of how even a board is",
                 "write at least two, along the board");
  }
  if (line.failed()) return std::nullopt;
  return thick;
}

}  // namespace kerfbook::sheet
