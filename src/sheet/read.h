// read.h -- the text of a day sheet becomes a Sheet, or every reason why it cannot.
#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "base/input.h"
#include "sheet/sheet.h"

namespace kerfbook::sheet {

/// What a reader or writer must know of the mill: only what plain numbers mean.
struct ReadOptions {
  bool metric = false;   ///< plain sizes are mm, lengths m, log diameters cm
  int money_places = 2;  ///< minor units in a unit of the currency: 10^places
};

struct ReadSheet {
  Sheet sheet;                    ///< the lines that could be read; whole only when no error was found
  std::vector<Diagnostic> found;  ///< every one at once, in order of place
};

/// More than a person writes down of a day; what is longer is another file taken for a sheet. The time to read grows with
/// the text and no faster because of them.
constexpr InputLimit kSheetLimit{"a day sheet", 1 << 20, "post each day as a sheet of its own"};
constexpr std::size_t kLongestLine = 2000;  ///< bytes
constexpr std::size_t kMostLines = 20'000;
constexpr std::size_t kMostErrors = 200;  ///< then the rest is not read

/// Never throws on any bytes. Reads CRLF, tabs, a byte-order mark, any case of the words, and typographic
/// ′ ″ × ½ ¼ ¾ ⅛ … as they are meant.
ReadSheet read(std::string_view text, const ReadOptions& options = {});

/// A way a line is written: the words in capitals stand for what is meant, [in brackets] may be left out.
struct LineForm {
  std::string_view written;
  std::string_view example;  ///< a whole line that is right
};
/// A kind of line, for help pages.
struct KindOfLine {
  std::string_view word;  ///< empty for a tally line, which begins with its size
  std::string_view meaning;
  std::span<const LineForm> forms;
};
std::vector<KindOfLine> kinds_of_line();

/// Only the first line that is not blank or a remark: is this text a day sheet at all, and of which day?
std::optional<Day> peek_day(std::string_view text);

}  // namespace kerfbook::sheet
