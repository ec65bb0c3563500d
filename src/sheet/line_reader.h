// line_reader.h -- hands the words of one line to the function that reads its kind, and takes its complaints.
// Also the small readings several kinds share. Internal to this room.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/day.h"
#include "base/diagnostic.h"
#include "base/exact.h"
#include "base/result.h"
#include "base/text.h"
#include "sheet/fold.h"
#include "sheet/read.h"

namespace kerfbook::sheet {

class LineReader {
 public:
  /// `head` words of the line are taken already (the word that says its kind).
  LineReader(const FoldedLine& line, std::size_t head, int number, const ReadOptions& options,
             std::vector<Diagnostic>& found)
      : line_(line), at_(head), number_(number), options_(options), found_(found) {}

  [[nodiscard]] bool done() const { return at_ >= line_.words.size(); }
  [[nodiscard]] std::size_t left() const { return line_.words.size() - at_; }
  /// The next word's text, or the one so many words on; empty past the end.
  [[nodiscard]] std::string_view peek(std::size_t ahead = 0) const;
  [[nodiscard]] const Word& peek_word() const { return line_.words[at_]; }  ///< not when done()
  const Word& take() { return line_.words[at_++]; }
  bool take_if(std::string_view word);  ///< the next word, when it is this one in any case

  /// As typed, words parted by one blank.
  std::string take_typed() { return typed(take()); }
  std::string take_rest() { return take_typed_words(left()); }
  std::string take_typed_words(std::size_t count);
  [[nodiscard]] std::string typed(const Word& word) const { return typed_text(line_, word); }

  /// Complaints: about a word, about the character so far into it, or about what is missing at the end of the line.
  void error(const Word& word, std::string what, std::string instead = {}) {
    tell(word, 0, std::move(what), std::move(instead));
  }
  void slip(const Word& word, std::size_t offset, const Slip& slip);
  void missing(std::string what, std::string instead);
  void warn(const Word& word, std::string what, std::string instead);
  /// Complains of the next word when anything is left on the line.
  void expect_end(std::string_view after);

  [[nodiscard]] bool failed() const noexcept { return failed_; }
  [[nodiscard]] bool metric() const noexcept { return options_.metric; }
  [[nodiscard]] const ReadOptions& options() const noexcept { return options_; }
  [[nodiscard]] int column_of(const Word& word, std::size_t offset = 0) const;

 private:
  void tell(const Word& word, std::size_t offset, std::string what, std::string instead);

  const FoldedLine& line_;
  std::size_t at_;
  int number_;
  const ReadOptions& options_;
  std::vector<Diagnostic>& found_;
  bool failed_ = false;
};

bool starts_with_digit(std::string_view text);
bool has_digit(std::string_view text);
/// A whole number of at most nine digits.
std::optional<std::int64_t> whole_number(std::string_view text);

/// One word that is a code, tag, name ...; complains with `missing_what` and `example` when there is none.
std::optional<std::string> take_code(LineReader& line, std::string_view missing_what,
                                     std::string_view example);
}  // namespace kerfbook::sheet
