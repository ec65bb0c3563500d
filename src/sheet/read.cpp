// read.cpp -- cuts the text into lines, finds each line's kind and has it read; the `sheet` line is read here.
#include "sheet/read.h"

#include <algorithm>

#include "base/text.h"
#include "sheet/facts.h"
#include "sheet/guess.h"
#include "sheet/job_mark.h"
#include "sheet/kinds.h"
#include "sheet/tally_words.h"

namespace kerfbook::sheet {
namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
static_assert(kLongestLine / 4 <= kMostItems);  // an item of lumber is 1/9 and a blank, or longer
constexpr int kMostShifts = 9;
constexpr std::int64_t kMostBoardFeet = 1'000'000;
constexpr std::int64_t kMostMinutes = 1'000'000;

std::string_view without_mark(std::string_view text) {
  if (text.starts_with(kByteOrderMark)) text.remove_prefix(kByteOrderMark.size());
  return text;
}

bool is_tally(std::string_view word) {
  return starts_with_digit(word) || (word.starts_with('.') && has_digit(word));
}

std::vector<std::string> known_words() {
  std::vector<std::string> words;
  for (const LineKind& kind : line_kinds()) {
    if (!kind.word.empty()) words.emplace_back(kind.word);
  }
  return words;
}

class SheetReader {
 public:
  SheetReader(const ReadOptions& options, ReadSheet& out) : options_(options), out_(out) {}

  void read(std::string_view text) {
    if (refused_whole(text)) return;
    for (const std::string_view line : split_lines(text)) {
      ++number_;
      if (!too_long(line) && !unreadable(line)) read_line(fold(line));
      if (too_many_errors()) break;
    }
    refuse_too_much_lumber();
    refuse_too_much_time();
    if (!first_line_ && !has_error(out_.found))
      tell({}, "no sheet: nothing in it", "begin with sheet and the day, as sheet 2026-05-05");
    sort_by_place(out_.found);
  }

 private:
  bool refused_whole(std::string_view text) {
    if (text.find('\0') != std::string_view::npos) {
      tell({}, "this is not text", "save the sheet as plain UTF-8 text");
    } else if (text.size() > kSheetLimit.most) {
      tell({}, "longer than a day sheet may be, " + shown_bytes(kSheetLimit.most),
           std::string(kSheetLimit.instead));
    } else if (std::count(text.begin(), text.end(), '\n') > static_cast<std::ptrdiff_t>(kMostLines)) {
      tell({}, "more lines than a day sheet may have, " + grouped({kMostLines, 0}),
           std::string(kSheetLimit.instead));
    }
    return has_error(out_.found);
  }

  /// Lumber past anything a mill saws is a slip of the pen; up to this the sums of many years are still exact.
  void refuse_too_much_lumber() {
    Wide inch = 0;
    Wide metric = 0;
    Wide most = 0;
    const Line* largest = nullptr;
    const auto add = [&](const Line& line, const Size& size, Length length, std::int64_t pieces) {
      const Wide volume = Wide{size.thickness.count} * size.width.count * length.count * pieces;
      const bool of_metric = size.thickness.system == measure::System::metric;
      (of_metric ? metric : inch) += volume;
      const Wide weight =
          volume / (of_metric ? measure::kMetricCountsPerBoardFoot : measure::kCountsPerBoardFoot);
      if (largest != nullptr && weight <= most) return;
      most = weight;
      largest = &line;
    };
    for (const Line& line : out_.sheet.lines) {
      if (const auto* tally = std::get_if<Tally>(&line.fact)) {
        for (const auto& item : tally->items) add(line, tally->size, item.length, item.pieces);
      } else if (const auto* lineal = std::get_if<LinealTally>(&line.fact)) {
        add(line, lineal->size, lineal->total, 1);
      } else if (const auto* random = std::get_if<RandomTally>(&line.fact)) {
        for (const auto& one : random->boards)
          add(line, {random->thickness, one.width, false}, one.length, one.pieces);
      } else if (const auto* sold = std::get_if<Sold>(&line.fact)) {
        for (const auto& item : sold->items) add(line, sold->size, item.length, item.pieces);
        if (sold->lineal) add(line, sold->size, *sold->lineal, 1);
      }
    }
    const Wide board_feet = inch / measure::kCountsPerBoardFoot + metric / measure::kMetricCountsPerBoardFoot;
    if (largest == nullptr || board_feet <= kMostBoardFeet) return;
    tell(largest->place, "with this line the sheet has more lumber than a sheet holds, over 1,000,000 bf",
         "look at its sizes, lengths and pieces");
  }

  void refuse_too_much_time() {
    std::int64_t minutes = 0;
    for (const Line& line : out_.sheet.lines) {
      const std::int64_t before = minutes;
      if (const auto* crew = std::get_if<Crew>(&line.fact)) {
        for (const Hand& hand : crew->hands) minutes += hand.minutes;
      } else if (const auto* sawing = std::get_if<Sawing>(&line.fact)) {
        for (const Span& span : sawing->spans) minutes += span.minutes();
      } else if (const auto* stop = std::get_if<Stop>(&line.fact)) {
        minutes += stop->minutes;
      }
      if (before > kMostMinutes || minutes <= kMostMinutes) continue;
      tell(line.place, "with this line the sheet has more hours than a sheet holds", "look at its times");
    }
  }

  void tell(Place place, std::string what, std::string instead) {
    out_.found.push_back({Severity::error, place, std::move(what), std::move(instead)});
  }

  bool too_long(std::string_view line) {
    if (line.size() <= kLongestLine) return false;
    if (!first_line_) first_line_ = number_;
    tell({number_, 0},
         "a line of " + std::to_string(line.size()) + " bytes, where " + std::to_string(kLongestLine) +
             " is the most",
         "write it on several lines");
    return true;
  }

  bool too_many_errors() {
    for (; counted_ < out_.found.size(); ++counted_)
      if (out_.found[counted_].severity == Severity::error) ++errors_;
    if (errors_ < kMostErrors) return false;
    tell({number_ + 1, 0}, "too many errors; from here on the sheet was not read",
         "mend the first ones and check it again");
    return true;
  }

  bool unreadable(std::string_view line) {
    const std::size_t at = find_unfit(line);
    if (at == std::string_view::npos) return false;
    const Place place{number_, characters_before(line, at) + 1};
    if (is_utf8(line)) {
      tell(place, "a character that cannot be printed", "delete it");
    } else {
      tell(place, "bytes that are no UTF-8 text", "save the sheet as plain UTF-8 text");
    }
    return true;
  }

  void read_line(FoldedLine line) {
    if (line.words.empty()) {
      keep(Remark{}, line, 0);
      return;
    }
    const Word& first = line.words.front();
    const int column = characters_before(line.typed, first.from.front()) + 1;
    if (same_word(first.text, "sheet")) return read_sheet_line(line, column);
    if (!first_line_) begin_without_sheet(first.text, column);
    if (first_line_ == number_ && !likely_day(first.text).empty()) return;  // told just now
    const bool tally = is_tally(first.text);
    const LineKind* kind = tally ? &tally_kind() : find_kind(first.text);
    if (kind == nullptr) return unknown(line, column);
    const std::string job = kind->names_job == NamesJob::no ? "" : take_job_mark(line, 1, kind->names_job);
    join_words(line, kind->joining);
    read_kind(line, tally ? 0 : 1, kind->read, column, job);
  }

  /// `job`: what the line's end says, which its own words know nothing of.
  void read_kind(const FoldedLine& line, std::size_t head, ReadLine how, int column,
                 const std::string& job = {}) {
    LineReader reader(line, head, number_, options_, out_.found);
    auto fact = how(reader);
    if (!fact) return;
    if (!job.empty() && !take_job(*fact, job)) {
      return tell({number_, column}, "charged to " + *job_named_at_end(*fact) + " and named as job " + job,
                  "name one job, as , charge, job " + job);
    }
    keep(std::move(*fact), line, column);
  }

  /// False when the fact has another already, as a stop from its `charge TER`.
  static bool take_job(Fact& fact, const std::string& job) {
    std::string& of = *job_named_at_end(fact);
    if (!of.empty() && !same_word(of, job)) return false;
    of = job;
    return true;
  }

  void keep(Fact fact, const FoldedLine& line, int column) {
    out_.sheet.lines.push_back({std::move(fact), line.remark, {number_, column}});
  }

  /// Says once that the day is missing, and reads on for what else is wrong.
  void begin_without_sheet(const std::string& word, int column) {
    first_line_ = number_;
    const std::string likely = likely_day(word);
    if (!likely.empty()) {
      tell({number_, column}, in_quotes(word) + ": a day without 'sheet'", "write sheet " + likely);
    } else if (word_meant(word) != "sheet") {  // which is told of the word itself
      tell({number_, column}, "the first fact must be the day",
           "write sheet 2026-05-05, the day it was, before all else");
    }
  }

  void read_sheet_line(const FoldedLine& line, int column) {
    LineReader reader(line, 1, number_, options_, out_.found);
    if (has_day_) {
      tell({number_, column}, "a second 'sheet' line; the first is line " + std::to_string(*first_line_),
           "post each day as a sheet of its own");
      return;
    }
    if (first_line_) return;  // it comes late, which was said where the first fact stands
    first_line_ = number_;
    has_day_ = true;
    take_day(reader);
    if (!reader.failed() && !reader.done()) take_shift(reader);
    out_.sheet.remark = line.remark;
  }

  void take_day(LineReader& line) {
    const std::string form = "write the day as year-month-day, as 2026-05-05";
    if (line.done()) return line.missing("'sheet' without a day", form);
    const Word& word = line.take();
    std::string likely = likely_day(word.text);
    while (likely.empty() && !read_day(word.text) && !line.done()) likely = likely_day(line.take().text);
    const std::string instead = likely.empty() ? form : "write sheet " + likely;
    if (const auto day = read_day(word.text)) {
      out_.sheet.day = *day;
    } else if (word.text.size() == 10 && word.text[4] == '-' && word.text[7] == '-' && has_digit(word.text)) {
      line.error(word, in_quotes(line.typed(word)) + ": no such day", instead);
    } else {
      line.error(word, in_quotes(line.typed(word)) + ": not a day", instead);
    }
  }

  void take_shift(LineReader& line) {
    if (!line.take_if("shift")) return line.expect_end("the day but shift 2");
    const auto number = whole_number(line.peek());
    if (!number || *number < 1 || *number > kMostShifts) {
      const std::string what = "'shift' without a number from 1 to 9";
      return line.done() ? line.missing(what, "write shift 2")
                         : line.error(line.take(), what, "write shift 2");
    }
    line.take();
    out_.sheet.shift = static_cast<int>(*number);
    line.expect_end("the shift");
  }

  void unknown(const FoldedLine& line, int column) {
    const std::string typed = typed_text(line, line.words.front());
    tell({number_, column}, in_quotes(typed) + ": not a kind of line", meant_by(line, typed));
  }

  static std::string meant_by(const FoldedLine& line, const std::string& typed) {
    const std::string next = line.words.size() > 1 ? typed_text(line, line.words[1]) : std::string();
    if (const std::string near = nearest(typed, known_words()); !near.empty()) {
      return "did you mean " + near + "?";
    }
    if (const std::string_view word = word_meant(typed); !word.empty()) {
      const LineKind* kind = find_kind(word);
      return "did you mean " + std::string(word) + "? It is written " + std::string(kind->example());
    }
    if (typed.size() > 1 && typed.front() == '-' && is_digit(typed[1])) {
      return "what comes off the tally is written less " + typed.substr(1) + (next.empty() ? "" : " " + next);
    }
    if (looks_like_log(next)) return "a log's line begins with log: log " + typed + " " + next;
    std::string whole;
    for (const Word& word : line.words) whole += " " + typed_text(line, word);
    return "write note" + whole + " if it is to be remembered; else begin with a size, or with one of " +
           join(known_words(), ", ");
  }

  static bool looks_like_log(std::string_view word) {
    return starts_with_digit(word) && word.find_first_of("xX") != std::string_view::npos;
  }

  const ReadOptions& options_;
  ReadSheet& out_;
  int number_ = 0;
  std::size_t counted_ = 0;  ///< of what was found, how much has been counted
  std::size_t errors_ = 0;
  std::optional<int> first_line_;  ///< of the first fact, `sheet` or not
  bool has_day_ = false;
};

}  // namespace

ReadSheet read(std::string_view text, const ReadOptions& options) {
  ReadSheet out;
  SheetReader(options, out).read(without_mark(text));
  return out;
}

std::vector<KindOfLine> kinds_of_line() {
  std::vector<KindOfLine> kinds;
  for (const LineKind& kind : line_kinds()) kinds.push_back({kind.word, kind.meaning, kind.forms});
  return kinds;
}

std::optional<Day> peek_day(std::string_view text) {
  for (const std::string_view line : split_lines(without_mark(text))) {
    const FoldedLine folded = fold(line);
    if (folded.words.empty()) continue;
    if (folded.words.size() < 2 || !same_word(folded.words[0].text, "sheet")) return std::nullopt;
    return read_day(folded.words[1].text);
  }
  return std::nullopt;
}

}  // namespace kerfbook::sheet
