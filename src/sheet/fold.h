// fold.h -- one typed line cut into words, with typographic characters turned into what they mean, and for every
// byte of a word the place where it was typed. Knows nothing of what the words say.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace kerfbook::sheet {

/// A word as the reader sees it (`7+1/2`, `16'6"`, `2x6`), and where its bytes were typed (`7½`, `16′6″`, `2×6`).
struct Word {
  std::string text;
  std::vector<std::uint32_t> from;  ///< for each byte of `text`, a byte of the typed line
  std::uint32_t end = 0;            ///< past the last typed byte
};

struct FoldedLine {
  std::string_view typed;
  std::vector<Word> words;  ///< up to the `;`
  std::string remark;       ///< what stood after the `;`, as typed, trimmed
};

/// ′ ’ become ', ″ ” become ", × becomes x, ½ becomes 1/2 (7½ becomes 7+1/2), all dashes become -, all blanks and
/// tabs part words; characters that show nothing are dropped. Other text is left as it is.
FoldedLine fold(std::string_view typed);

/// What was typed for this word, runs of blanks in it made one.
std::string typed_text(const FoldedLine& line, const Word& word);

/// How words may be written apart, by the kind of line.
enum class Joining : std::uint8_t {
  none,
  tally,  ///< as sizes; and a comma or colon after a size, its grade or an item says nothing
  sizes,  ///< `2 x 6`, `24 / 16`, `6x8 * 3`, `1 1/8x4` are one word each
  spans,  ///< `7:15 - 10:20` is one word; a comma is a word of its own
};
void join_words(FoldedLine& line, Joining how);

/// "ft", "mm", "lf", "pcs": a unit that a tally line may have apart from its number, in capitals or small.
bool is_unit(std::string_view word);

}  // namespace kerfbook::sheet
