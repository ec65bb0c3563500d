// text.h -- small work on words and lines: folding what people type, the nearest word, widths on a screen.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

namespace kerfbook {

std::string_view trim(std::string_view text);
std::string lower(std::string_view text);  ///< ASCII letters only; other letters stay as they are
bool same_word(std::string_view a, std::string_view b);       ///< equal but for the case of ASCII letters
bool is_digit(char c);                                        ///< 0 to 9
bool all_digits(std::string_view text);                       ///< and not empty
std::vector<std::string> split_words(std::string_view text);  ///< at blanks and tabs
std::vector<std::string_view> split_lines(std::string_view text);  ///< LF or CRLF; no empty last line
std::string join(const std::vector<std::string>& words, std::string_view between);

/// 'text': how a message shows what was typed. What would be right stands bare beside it, ready to be typed.
std::string in_quotes(std::string_view text);

/// The known word nearest to `typed` (letters changed, added, left out or two swapped: at most a third
/// of its length, at least 1); empty if none is.
std::string nearest(std::string_view typed, const std::vector<std::string>& known);

/// Columns the text takes on a screen: characters, wide ones counted twice, combining marks not at all.
int screen_width(std::string_view utf8);
std::string pad_right(std::string_view utf8, int width);  ///< text first, blanks after
std::string pad_left(std::string_view utf8, int width);   ///< blanks first, text after
/// Cut to `width` columns with an ellipsis when longer.
std::string clip(std::string_view utf8, int width);

bool is_utf8(std::string_view bytes);
/// Text fit to be shown anywhere: without control characters (line ends and tabs stay), without the marks that turn the
/// writing of what comes after them round, and without what is no character; a byte that is no UTF-8 becomes U+FFFD.
std::string fit_to_print(std::string_view text);
/// Where the first byte stands that fit_to_print() would change; npos when it would change none.
std::size_t find_unfit(std::string_view text);
/// The same text for a message: what fit_to_print() would leave out or change is written out, as \x1B or \u202E. Line
/// ends of either kind stay, and a byte-order mark at the very beginning.
std::string written_out(std::string_view text);
/// A line to point at: as many characters as before, a blank for a tab and a question mark for what is not fit to print.
std::string in_columns(std::string_view line);
/// Number of characters (code points) before byte `at`.
int characters_before(std::string_view utf8, std::size_t at);
/// The byte where the character begins that so many stand before; the text's size when it has no more.
std::size_t byte_of_character(std::string_view utf8, int before);

}  // namespace kerfbook
