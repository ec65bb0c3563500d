// read_log.cpp -- the lines about logs: sawn today, received, or left half-sawn on the mill.
// What a spec like 12/13-15x16'6" says is read in scaling/.
#include <algorithm>
#include <array>

#include "base/text.h"
#include "sheet/facts.h"
#include "sheet/joined_tag.h"
#include "sheet/kinds.h"
#include "sheet/tally_words.h"

namespace kerfbook::sheet {
namespace {

const Length kThickest = measure::feet(20);  // past this a slip of the pen, not a log
const Length kLongest = measure::feet(200);
const Length kLongestGirth = measure::feet(63);  // of a log so thick

/// `15x12`, `12/13-15x16'6"`, `30cmx4.8m`: a digit first, and an x before a digit.
bool is_spec(std::string_view text) {
  if (!starts_with_digit(text) && !text.starts_with('.')) return false;
  const std::size_t x = text.find_first_of("xX");
  return x != std::string_view::npos;
}

bool is_number(std::string_view text) {
  return !text.empty() && text.find_first_not_of("0123456789.") == std::string_view::npos && has_digit(text);
}

/// `left on the mill`, `left on mill` stand next and end the line.
bool at_left_on_mill(const LineReader& line) {
  if (!same_word(line.peek(), "left") || !same_word(line.peek(1), "on")) return false;
  const std::size_t the = same_word(line.peek(2), "the") ? 1 : 0;
  return same_word(line.peek(2 + the), "mill") && line.left() == 3 + the;
}

/// Words that begin the next part of a log line; a reason or an origin ends before them.
bool at_keyword(const LineReader& line) {
  const std::string_view next = line.peek();
  const bool measured = starts_with_digit(line.peek(1));
  if (same_word(next, "defect")) return true;
  if (measured && (same_word(next, "mid") || same_word(next, "girth") || same_word(next, "segments")))
    return true;
  return at_left_on_mill(line);
}

void check_spec(LineReader& line, const Word& word, const scaling::LogMeasure& log) {
  if (beyond(log.length, kLongest)) {
    line.error(word, in_quotes(line.typed(word)) + ": longer than any log",
               "write diameter x length, as 15x12");
  }
}

void take_spec(LineReader& line, LogLine& log) {
  const Word& word = line.take();
  const auto measure = scaling::read_log_spec(word.text, line.metric());
  if (measure) {
    log.measure = *measure;
    check_spec(line, word, *measure);
  } else {
    line.slip(word, 0, measure.slip());
  }
}

/// A tag and two readings that were joined to one word like a fraction. False when the word is a measure and no more.
bool take_tag_and_readings(LineReader& line, LogLine& log) {
  const std::optional<JoinedTag> joined = joined_tag(line);
  if (!joined) return false;
  const Word& word = line.take();
  log.tags.push_back(joined->tag);
  if (const auto measure = scaling::read_log_spec(joined->spec, line.metric())) {
    log.measure = *measure;
    check_spec(line, word, *measure);
  } else {
    line.slip(word, joined->tag.size() + 1, measure.slip());
  }
  return true;
}

/// Part of a word, as a log's diameter or girth is written; `most` of it.
std::optional<Length> read_diameter_word(LineReader& line, const Word& word, std::size_t from, std::size_t to,
                                         Length most = kThickest) {
  const std::string text = word.text.substr(from, to - from);
  const auto length = scaling::read_diameter(text, line.metric());
  if (length && !beyond(*length, most)) return *length;
  line.slip(
      word, from,
      length ? Slip{in_quotes(text) + ": larger than any log", "write what was measured", 0} : length.slip());
  return std::nullopt;
}

/// Measures parted by `between` in one word: 13/14, 12,14.
void split_measures(LineReader& line, const Word& word, char between, std::vector<Length>& out) {
  const std::size_t size = word.text.ends_with(',') ? word.text.size() - 1 : word.text.size();
  for (std::size_t at = 0; at <= size;) {
    const std::size_t end = std::min(word.text.find(between, at), size);
    if (const auto length = read_diameter_word(line, word, at, end)) out.push_back(*length);
    at = end + 1;
  }
}

void missing_measure(LineReader& line, const std::string& word, const std::string& example) {
  if (!line.done() && is_digit(line.peek(1).empty() ? ' ' : line.peek(1).front())) {
    const Word& first = line.take();
    line.error(first, in_quotes(line.typed(first)) + " stands before the measure",
               "write " + word + " " + std::string(line.peek()) + " " + line.typed(first));
    line.take_rest();
    return;
  }
  const std::string what = in_quotes(word) + " without a measure";
  line.done() ? line.missing(what, "write " + example) : line.error(line.take(), what, "write " + example);
}

void take_mid(LineReader& line, LogLine& log) {
  if (!starts_with_digit(line.peek())) return missing_measure(line, "mid", "mid 13.5, or mid 13/14");
  const Word& word = line.take();
  const bool fraction =
      word.text.find_first_of("+-") != std::string::npos;  // 13-1/2 is one reading, 13/14 are two
  if (!fraction) return split_measures(line, word, '/', log.measure->mid);
  if (const auto length = read_diameter_word(line, word, 0, word.text.size()))
    log.measure->mid.push_back(*length);
}

void take_girth(LineReader& line, LogLine& log) {
  if (!starts_with_digit(line.peek())) return missing_measure(line, "girth", "girth 48");
  const Word& word = line.take();
  log.measure->girth = read_diameter_word(line, word, 0, word.text.size(), kLongestGirth);
}

void take_segments(LineReader& line, LogLine& log) {
  if (!starts_with_digit(line.peek())) return missing_measure(line, "segments", "segments 12,14");
  bool more = true;
  while (more && starts_with_digit(line.peek())) {
    const Word& word = line.take();
    more = word.text.ends_with(',');
    split_measures(line, word, ',', log.measure->segments);
  }
}

/// `defect 15 bf`: an amount written apart from its unit.
bool is_defect_unit(std::string_view text) {
  static constexpr std::array kUnits{"bf", "%", "ft", "'", "in", "\"", "deg", "ft3", "m3"};
  return std::any_of(kUnits.begin(), kUnits.end(),
                     [&](std::string_view unit) { return same_word(unit, text); });
}

void take_defect(LineReader& line, LogLine& log, bool received) {
  if (!starts_with_digit(line.peek()) && !line.peek().starts_with('.')) {
    return missing_measure(line, "defect", "defect 15bf, 10%, 2ft, 1in or 7x7x16");
  }
  const Word& word = line.take();
  std::string text = word.text;
  if (is_number(text) && is_defect_unit(line.peek())) text += line.take().text;
  auto defect = scaling::read_defect(text, line.metric());
  if (!defect) {
    line.slip(word, 0, defect.slip());
    line.take_rest();
    return;
  }
  while (!line.done() && !at_keyword(line) && !(received && same_word(line.peek(), "from"))) {
    defect->reason += (defect->reason.empty() ? "" : " ") + line.take_typed();
  }
  log.defects.push_back(*defect);
}

void not_understood(LineReader& line, bool received) {
  const Word& word = line.take();
  if (word.text.size() > 1 && word.text.front() == '-' && is_digit(word.text[1])) {  // 155-10, as on paper
    const std::string amount = word.text.substr(1);
    return line.error(word, in_quotes(line.typed(word)) + ": a deduction without its word",
                      "write defect " + amount + "bf, or defect " + amount + "%");
  }
  const std::string typed = in_quotes(line.typed(word));
  if (is_spec(word.text) || is_spec(line.peek())) {
    return line.error(word, typed + ": a second log on the line", "give each measured log a line of its own");
  }
  std::vector<std::string> words{"mid", "girth", "segments", "defect"};
  if (received) words.emplace_back("from");
  const std::string near = nearest(word.text, words);
  line.error(word, typed + ": not understood in a log line",
             near.empty() ? "after the measure come " + join(words, ", ") +
                                (received ? "" : ", left on the mill") + "; put a remark after ';'"
                          : "did you mean " + near + "?");
}

void take_parts(LineReader& line, LogLine& log) {
  while (!line.done()) {
    if (at_left_on_mill(line)) {
      log.left_on_mill = true;
      line.take_rest();
    } else if (log.measure->mid.empty() && line.take_if("mid")) {
      take_mid(line, log);
    } else if (!log.measure->girth && line.take_if("girth")) {
      take_girth(line, log);
    } else if (log.measure->segments.empty() && line.take_if("segments")) {
      take_segments(line, log);
    } else if (line.take_if("defect")) {
      take_defect(line, log, log.received);
    } else if (log.received && line.take_if("from")) {
      log.origin = line.take_rest();
      if (log.origin.empty())
        line.missing("'from' without a place", "write from the creek lot, or leave it out");
    } else {
      not_understood(line, log.received);
      line.take_rest();
    }
  }
}

void bad_range(LineReader& line, const Word& word) {
  line.error(word, in_quotes(line.typed(word)) + ": not a range of tags",
             "write a range as T13-T22, at most 200 logs");
}

/// A word that has its own meaning where tags stand.
bool means_something_else(std::string_view word) {
  constexpr std::array kWords{"-", "to", "defect", "mid", "girth", "segments", "left", "from"};
  return std::any_of(kWords.begin(), kWords.end(), [&](const char* one) { return same_word(word, one); });
}

/// Without the commas and colons behind it, which mean nothing between tags.
std::string_view bare(std::string_view word) {
  while (word.size() > 1 && (word.back() == ',' || word.back() == ':')) word.remove_suffix(1);
  return word;
}

/// A tag without the comma or colon behind it. Empty once it has complained of several tags in one word.
std::string tag_typed(LineReader& line, const Word& word) {
  std::string typed = line.typed(word);
  const std::size_t as_typed = typed.size();
  typed = std::string(bare(typed));
  if (typed.size() < as_typed && means_something_else(typed)) {  // `to,`: without its comma it is no tag
    line.error(word, in_quotes(line.typed(word)) + ": no tag", "write tags as T13 T22, a range as T13-T22");
    return {};
  }
  if (typed.find(',') == std::string::npos) return typed;
  std::string apart = typed;
  std::replace(apart.begin(), apart.end(), ',', ' ');
  line.error(word, in_quotes(typed) + ": several tags in one word", "write " + apart);
  return {};
}

/// The tag of a log that is measured here: one, not a range.
void take_tag(LineReader& line, LogLine& log) {
  const Word& word = line.take();
  const std::string typed = tag_typed(line, word);
  if (typed.empty()) return;
  const auto spread = spread_tags(typed);
  if (spread.empty()) bad_range(line, word);
  if (spread.size() > 1) {
    const bool letters_twice = !is_digit(typed[typed.rfind('-') + 1]);
    line.error(word, in_quotes(typed) + ": several tags with one measure",
               std::string("give each measured log a line of its own") +
                   (letters_twice ? "" : "; the tag of one log is written without a dash"));
  }
  log.tags.push_back(typed);
}

/// What stands for the dash of a range, or is no tag at all: `T1 - T5`, `T1 to T5`, `T1..T5`.
bool told_as_range(LineReader& line, const LogLine& log) {
  const std::string_view next = line.peek();
  const std::size_t dots = next.find("..");
  const std::size_t after = dots == std::string_view::npos ? dots : next.find_first_not_of('.', dots);
  if (after != std::string_view::npos && dots > 0) {
    const Word& word = line.take();
    const std::string to = word.text.substr(after);
    line.error(word, in_quotes(line.typed(word)) + ": no tag",
               "write a range as " + word.text.substr(0, dots) + "-" + to);
    return true;
  }
  if (log.tags.empty() || line.left() < 2 || !(next == "-" || same_word(next, "to"))) return false;
  const Word& word = line.take();
  line.error(word, in_quotes(line.typed(word)) + ": no tag",
             "write a range as " + log.tags.back() + "-" + std::string(line.peek()));
  line.take();
  return true;
}

/// 15y12, 15*12: the x was missed, beside it on the keys or in the head.
bool is_mistyped_spec(std::string_view text, bool after_tag) {
  const std::size_t mark = text.find_first_not_of("0123456789");
  return mark != std::string_view::npos && mark > 0 &&
         std::string_view(after_tag ? "yzcsYZCS*/@" : "yzcsYZCS*").find(text[mark]) !=
             std::string_view::npos &&
         all_digits(text.substr(mark + 1));
}

/// `T5 15-12`: after a tag two numbers that are no range are more likely a measure than one more tag.
void told_as_measure(LineReader& line, const Word& word, const std::string& typed) {
  const std::size_t dash = typed.find('-');
  if (dash == std::string::npos || typed.front() == '0') return;
  const std::string before = typed.substr(0, dash);
  const std::string after = typed.substr(dash + 1);
  if (!all_digits(before) || !all_digits(after)) return;
  line.error(word, in_quotes(typed) + ": not a range of tags",
             "a log's measure is written " + before + "x" + after + "; a range of tags T13-T22");
}

/// Tags of known logs, up to what may be said of them. A tag is one word, a range two with a dash between.
void take_tags(LineReader& line, LogLine& log) {
  std::size_t count = 0;
  while (!line.done() && !at_keyword(line)) {
    if (told_as_range(line, log)) continue;
    const Word& word = line.take();
    const std::string typed = tag_typed(line, word);
    if (typed.empty()) continue;
    const auto spread = spread_tags(typed);
    if (spread.empty()) bad_range(line, word);
    if (!log.tags.empty() && spread.size() == 1) told_as_measure(line, word, typed);
    if (is_mistyped_spec(bare(word.text), !log.tags.empty())) {
      const std::size_t mark = typed.find_first_not_of("0123456789");
      line.error(word, in_quotes(typed) + ": not a measure",
                 "write diameter x length, as " + typed.substr(0, mark) + "x" + typed.substr(mark + 1));
    }
    log.tags.push_back(typed);
    count += spread.size();
    if (count > kMostItems) {
      line.error(word, "more logs than a line holds", "write the rest on another line");
      line.take_rest();
    }
  }
}

/// Known logs, and of one of them what was found in sawing.
void take_known(LineReader& line, LogLine& log) {
  take_tags(line, log);
  const std::string tag = log.tags.empty() ? "T13" : log.tags.front();
  if (log.tags.empty() && !line.failed()) {
    const std::string what = in_quotes("log") + " without a tag";
    const std::string instead = at_left_on_mill(line)
                                    ? "write log T22 left on the mill"
                                    : "write log T13 and what was found, as log T13 defect 15bf rot";
    return line.done() ? line.missing(what, instead) : line.error(line.take(), what, instead);
  }
  if (same_word(line.peek(), "defect") && (log.tags.size() > 1 || spread_tags(tag).size() != 1)) {
    line.error(line.take(), "a defect of several logs", "give the log that has it a line of its own");
  }
  while (!line.done() && !line.failed()) {
    if (at_left_on_mill(line)) {
      log.left_on_mill = true;
      line.take_rest();
    } else if (line.take_if("defect")) {
      take_defect(line, log, false);
    } else {
      const Word& word = line.take();
      line.error(
          word, in_quotes(line.typed(word)) + " without the log's diameter and length",
          "write all of them, as log " + tag + " 15x12 " + line.typed(word) + " " + std::string(line.peek()));
    }
  }
  line.take_rest();
}

/// Where a measure is wanted and other words stand: says what they look like.
void no_measure(LineReader& line, const Word& tag, bool received) {
  const std::string typed = line.typed(tag);
  if (line.done()) {
    const std::string first = spread_tags(typed).size() > 1 ? spread_tags(typed).front() : typed;
    line.missing(
        in_quotes(typed) + (first == typed ? ": a log without a measure" : ": logs without a measure"),
        "write " + std::string(received ? "in " : "log ") + first + " 15x12, diameter x length" +
            (first == typed ? "" : ", each on a line of its own"));
    return;
  }
  const Word& word = line.take();
  const std::string next = line.typed(word);
  if (received && same_word(next, "defect")) {
    line.error(word, "a defect without the log's measure", "give both, as in " + typed + " 15x12 defect 10%");
  } else if (is_number(word.text) && is_number(line.peek())) {
    line.error(word, in_quotes(next + " " + std::string(line.peek())) + ": not a measure",
               "write " + next + "x" + std::string(line.peek()));
  } else {
    line.error(word, in_quotes(next) + ": not a measure", "write diameter x length, as 15x12");
  }
  line.take_rest();
}

std::optional<Fact> read_any(LineReader& line, bool received) {
  const std::string word = received ? "in" : "log";
  LogLine log;
  log.received = received;
  if (line.done()) {
    line.missing(in_quotes(word) + " without a log", "write " + word + " T13 15x12, diameter x length");
    return std::nullopt;
  }
  const bool tagged = !is_spec(line.peek());
  if (!tagged && take_tag_and_readings(line, log)) {
    if (log.measure) take_parts(line, log);
  } else if (!tagged || is_spec(line.peek(1))) {
    if (tagged) take_tag(line, log);
    take_spec(line, log);
    if (log.measure) take_parts(line, log);
  } else if (received || (!is_number(bare(line.peek())) && is_number(bare(line.peek(1))))) {
    no_measure(line, line.take(), received);
  } else {
    take_known(line, log);
  }
  if (line.failed()) return std::nullopt;
  return log;
}

}  // namespace

std::optional<Fact> read_log(LineReader& line) {
  return read_any(line, false);
}

std::optional<Fact> read_in(LineReader& line) {
  return read_any(line, true);
}

}  // namespace kerfbook::sheet
