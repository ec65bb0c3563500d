// read_time.cpp -- the lines that say where the time went: crew, sawing, stops.
#include <algorithm>

#include "base/text.h"
#include "sheet/guess.h"
#include "sheet/kinds.h"

namespace kerfbook::sheet {
namespace {

/// Meant as a time, right or wrong: begins with a digit, as nobody's name does.
bool looks_like_time(std::string_view text) {
  return starts_with_digit(text);
}

void take_spans(LineReader& line, std::vector<Span>& spans) {
  while (!line.done() && read_span(line.peek())) spans.push_back(*read_span(line.take().text));
}

int total_minutes(const std::vector<Span>& spans) {
  int minutes = 0;
  for (const Span& span : spans) minutes += span.minutes();
  return minutes;
}

/// `Quill 7:00-12:00, 13:00-16:30`: times after a comma go on with the hand before them.
bool goes_on(const LineReader& line, const std::vector<Hand>& hands) {
  return !hands.empty() && !hands.back().spans.empty() && hands.back().activity.empty() &&
         read_span(line.peek());
}

std::string take_name(LineReader& line) {
  std::string name;
  while (!line.done() && line.peek() != "," && !looks_like_time(line.peek())) {
    if (!name.empty()) name += ' ';
    name += line.take_typed();
  }
  return name;
}

void take_time(LineReader& line, Hand& hand) {
  if (read_span(line.peek())) {
    take_spans(line, hand.spans);
    hand.minutes = total_minutes(hand.spans);
  } else {
    hand.minutes = take_minutes(line).value_or(0);
  }
}

void read_hand(LineReader& line, std::vector<Hand>& hands) {
  Hand hand;
  hand.name = take_name(line);
  if (line.done() || line.peek() == ",") {
    const std::string what =
        hand.name.empty() ? "a hand is missing" : in_quotes(hand.name) + ": a name without a time";
    const std::string instead = "write " + (hand.name.empty() ? "Bess" : hand.name) + " 9, or " +
                                (hand.name.empty() ? "Bess" : hand.name) + " 7:00-12:00 13:00-16:30";
    line.done() ? line.missing(what, instead) : line.error(line.take(), what, instead);
    return;
  }
  if (hand.name.empty()) {
    const Word& word = line.take();
    line.error(word, in_quotes(line.typed(word)) + ": a time without a name",
               "write Bess " + line.typed(word));
  } else {
    take_time(line, hand);
  }
  while (!line.done() && line.peek() != ",") {
    const Word& word = line.take();
    if (looks_like_time(word.text)) {
      const std::string next =
          hand.activity.empty() ? "" : ", as " + hand.name + " 9, " + hand.activity + " 9";
      line.error(word, in_quotes(line.typed(word)) + ": a second time for one hand",
                 "part the hands by a comma" + next);
    }
    hand.activity += (hand.activity.empty() ? "" : " ") + line.typed(word);
  }
  if (!line.done()) {
    const Word& comma = line.take();
    if (line.done())
      line.error(comma, "nobody after the comma", "write one more hand, or leave the comma out");
  }
  hands.push_back(std::move(hand));
}

struct ChargeMark {
  bool charge = false;
  std::string job;
};

std::string joined(const LineReader& line, const std::vector<const Word*>& words, bool drop_comma) {
  std::string out;
  for (const Word* word : words) out += (out.empty() ? "" : " ") + line.typed(*word);
  if (drop_comma && out.ends_with(',')) out.pop_back();
  return std::string(trim(out));
}

/// One word without the commas behind it.
std::string without_commas(const LineReader& line, const Word& word) {
  std::string out = line.typed(word);
  while (out.ends_with(',')) out.pop_back();
  return out;
}

/// `..., job TER` before the charge: taken off too.
std::string take_job_before(LineReader& line, std::vector<const Word*>& words) {
  const std::size_t count = words.size();
  if (count < 3 || !same_word(words[count - 2]->text, "job") || !words[count - 3]->text.ends_with(','))
    return {};
  const std::string code = job_code(without_commas(line, *words.back()));
  words.resize(count - 2);
  return code;
}

/// Splits `..., charge [JOB]` off the words of a stop.
ChargeMark take_charge_mark(LineReader& line, std::vector<const Word*>& words) {
  for (std::size_t i = words.size(); i-- > 0;) {
    const std::string& text = words[i]->text;
    const bool own_comma = same_word(text, ",charge");
    const bool after_comma = i > 0 && words[i - 1]->text.ends_with(',') && same_word(text, "charge");
    if (!own_comma && !after_comma) continue;
    if (words.size() > i + 2) {
      line.error(*words[i + 2],
                 in_quotes(line.typed(*words[i + 2])) + ": nothing more is read after the job charged",
                 "write , charge or , charge, job TER at the end");
    }
    ChargeMark mark{true, words.size() > i + 1 ? job_code(without_commas(line, *words[i + 1])) : ""};
    words.resize(i);
    if (mark.job.empty()) mark.job = take_job_before(line, words);
    return mark;
  }
  return {};
}

/// The time a stop took. A bare number over half a day was meant as minutes by anyone who typed it.
bool take_stop_time(LineReader& line, Stop& stop) {
  constexpr int kMostBareHours = 12;
  const Word& word = line.peek_word();
  std::string_view text = word.text;
  if (text.ends_with(',')) text.remove_suffix(1);
  if ((stop.span = read_span(text))) {
    stop.minutes = stop.span->minutes();
    line.take();
    return true;
  }
  if (likely_time(text).empty() && line.left() > 1 && looks_like_time(line.peek(1))) {
    line.error(word, in_quotes(line.typed(word)) + ": not a time",
               "the time comes first, as stop " + std::string(line.peek(1)) + " " + line.typed(word));
    return false;
  }
  const std::size_t before = line.left();
  const auto minutes = take_minutes(line);
  if (!minutes) return false;
  const bool bare = all_digits(text) && before == line.left() + 1;
  if (bare && *minutes > kMostBareHours * 60) {
    const std::string typed = line.typed(word);
    line.error(word, in_quotes(typed) + ": a bare number is hours, and this stop is longer than a day's work",
               "write " + typed + "min" + (typed.size() < 3 && *minutes < 3600 ? " or 0:" + typed : ""));
    return false;
  }
  stop.minutes = *minutes;
  return true;
}

/// `7:15 to 10:20`, `7:15 10:20`, `7:15-`: what was meant as one stretch, from its first word; empty when none was.
std::string likely_stretch(LineReader& line, const Word& first) {
  const std::string from = likely_clock(std::string_view(first.text).substr(0, first.text.find('-')));
  if (from.empty()) return {};
  static const std::vector<std::string> kBetween{"to", "till", "until", "-"};
  const bool between = std::any_of(kBetween.begin(), kBetween.end(),
                                   [&](const std::string& word) { return same_word(word, line.peek()); });
  const std::string to = likely_clock(line.peek(between ? 1 : 0));
  if (to.empty()) return {};
  line.take_typed_words(between ? 2 : 1);
  return from + "-" + to;
}

}  // namespace

std::optional<Fact> read_crew(LineReader& line) {
  if (line.done()) {
    line.missing("'crew' without anybody", "write crew Quill 9, Bess 8:30");
    return std::nullopt;
  }
  Crew crew;
  while (!line.done()) {
    if (goes_on(line, crew.hands)) {
      Hand& hand = crew.hands.back();
      take_spans(line, hand.spans);
      hand.minutes = total_minutes(hand.spans);
      if (!line.done() && line.peek() == ",") line.take();
    } else {
      read_hand(line, crew.hands);
    }
  }
  if (line.failed()) return std::nullopt;
  return crew;
}

std::optional<Fact> read_sawing(LineReader& line) {
  if (line.done()) {
    line.missing("'sawing' without a time", "write sawing 7:15-10:20 10:56-13:30");
    return std::nullopt;
  }
  Sawing sawing;
  while (!line.done()) {
    const Word& word = line.take();
    if (word.text == ",") continue;
    if (const auto span = read_span(word.text)) {
      sawing.spans.push_back(*span);
    } else {
      std::string likely = likely_stretch(line, word);
      if (likely.empty() && word.text.find('-') != std::string::npos) likely = likely_time(word.text);
      line.error(word, in_quotes(line.typed(word)) + ": not a stretch of sawing",
                 likely.empty() ? "write when it began and ended, as 7:15-10:20" : "write " + likely);
    }
  }
  if (line.failed()) return std::nullopt;
  return sawing;
}

std::optional<Fact> read_stop(LineReader& line) {
  if (line.done()) {
    line.missing("'stop' without a time", "write stop 0:36 metal, or stop 14:05-14:35 belt");
    return std::nullopt;
  }
  Stop stop;
  if (!take_stop_time(line, stop)) return std::nullopt;
  std::vector<const Word*> words;
  while (!line.done()) words.push_back(&line.take());
  const ChargeMark mark = take_charge_mark(line, words);
  stop.charge = mark.charge;
  stop.job = mark.job;
  if (words.empty() || same_word(words.front()->text, "charge")) {
    line.missing("'stop' without a cause", "write a word for it, as waiting, belt, metal, weather");
    return std::nullopt;
  }
  stop.cause = without_commas(line, *words.front());
  if (stop.cause.empty() || looks_like_time(stop.cause)) {
    line.error(*words.front(), in_quotes(line.typed(*words.front())) + ": not a cause",
               "write a word for it, as waiting, belt, metal, weather");
  }
  words.erase(words.begin());
  stop.text = joined(line, words, stop.charge);
  if (line.failed()) return std::nullopt;
  return stop;
}

}  // namespace kerfbook::sheet
