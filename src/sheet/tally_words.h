// tally_words.h -- what the lines that hold a size share: the size, its grade, its pieces and lengths.
// Internal to this room.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sheet/line_reader.h"
#include "sheet/sheet.h"

namespace kerfbook::sheet {

/// Items of a line are numbered below 1000 (facts.h).
constexpr std::size_t kMostItems = 900;
/// Past these sides a section is a slip of the pen, not wood.
constexpr Length kWidest = measure::inches(48);

bool is_metric(const Size& size);
bool beyond(Length length, Length most);  ///< across systems
std::ptrdiff_t count_x(std::string_view text);

/// May this word be a grade? Any word that begins with a letter, and 2A: a digit or two and letters that are no unit.
bool looks_like_grade(std::string_view text);
std::string take_grade(LineReader& line);  ///< empty when none stands next
/// Meant as pieces, lengths or boards, right or wrong.
bool is_item(std::string_view text);

/// These complain and come back empty or false.
std::optional<Size> read_size_word(LineReader& line, const Word& word);
bool sane_length(LineReader& line, const Word& word, std::size_t at, const Length& length);
std::optional<std::int64_t> read_pieces(LineReader& line, const Word& word, std::size_t from, std::size_t to);

/// `12/8,14/10`, `7x8,6x8`: complains of a comma where a blank is wanted.
bool told_as_several(LineReader& line, const Word& word);

struct SizedTally {
  Size size;
  std::string grade;
  std::vector<Tally::Item> items;
};
/// SIZE [GRADE] PIECES/LENGTH..., or SIZExLENGTH [GRADE] PIECES; `word` is the size, taken already.
/// `more` is added to what is said of a number that is no item.
SizedTally take_sized(LineReader& line, const Word& word, const std::string& more = {});

struct SizedLength {
  Size size;
  std::string grade;
  Length total;
};
/// [GRADE] LENGTHlf: true when that stands here, after a size.
bool at_lineal(const LineReader& line);
/// SIZE [GRADE] LENGTHlf; `word` is the size, taken already. Complains and comes back empty.
std::optional<SizedLength> take_lineal(LineReader& line, const Word& word);

}  // namespace kerfbook::sheet
