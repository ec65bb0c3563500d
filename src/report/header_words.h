// header_words.h -- the small things of a report's header: one fact of it, its words, its names, its numbers. What each fact
// says is read_report.cpp's.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace kerfbook::report {

/// `-- word: rest` of a header.
struct Fact {
  std::string word;
  std::string rest;
  int line = 0;
};
/// The fact that a line which begins with `--` holds; nullopt for any other remark.
std::optional<Fact> fact_in(std::string_view line, int number);

bool is_name(std::string_view text);  ///< of a report, table, column, worker
/// Words at blanks; a word may hold "quoted text", whose quotes are dropped: title="Board feet".
std::vector<std::string> split_quoted(std::string_view text);
std::optional<int> small_number(std::string_view text);  ///< 0 to 99
/// "did you mean WORD?", or all there are when none is near.
std::string either(const std::string& near, const std::vector<std::string>& known,
                   std::string_view after = {});
/// The nearest word of a header, or what a word of older report files is called now; empty when there is neither.
std::string now_called(const std::string& word, const std::vector<std::string>& known);
/// Anything but remarks and blank lines.
bool has_select(std::string_view sql);

}  // namespace kerfbook::report
