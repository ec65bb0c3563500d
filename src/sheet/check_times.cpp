// check_times.cpp -- rules about time: hours that do not fit in the day, sawing times that overlap, stops inside them.
#include <algorithm>
#include <cstdlib>
#include <map>

#include "base/text.h"
#include "sheet/check_rules.h"
#include "sheet/line_reader.h"

namespace kerfbook::sheet {
namespace {

constexpr int kMinutesInADay = 24 * 60;
constexpr int kNoon = 12 * 60;

struct PlacedSpan {
  const Line* line;
  Span span;
};

std::vector<PlacedSpan> sawing_spans(const Sheet& sheet) {
  std::vector<PlacedSpan> spans;
  for (const Line& line : sheet.lines) {
    const auto* sawing = std::get_if<Sawing>(&line.fact);
    if (sawing == nullptr) continue;
    for (const Span& span : sawing->spans) spans.push_back({&line, span});
  }
  return spans;
}

/// Do they share a minute of the clock? A span that crosses midnight goes on past 24:00.
bool overlap(Span a, Span b) {
  const int a_end = a.from + a.minutes();
  const int b_end = b.from + b.minutes();
  return std::max(a.from, b.from) < std::min(a_end, b_end);
}

/// 1:00-3:30 after a span of the morning: the afternoon, written by a clock of twelve hours.
bool is_afternoon_by_twelve(Span before, Span span) {
  return span.from < before.from && before.from >= 5 * 60 && before.from < 13 * 60 && span.to <= 11 * 60 &&
         span.from < span.to && span.from + kNoon >= before.to;
}

Span plus_noon(Span span) {
  return {span.from + kNoon, span.to + kNoon};
}

/// A word of charging in what was written beside a stop, unless with no or not before it.
std::string charge_word(const std::string& text) {
  std::string before;
  for (const std::string& word : split_words(text)) {
    const bool denied = same_word(before, "no") || same_word(before, "not");
    if (lower(word).starts_with("charg") && !denied) return word;
    before = word;
  }
  return {};
}

int longest_hand(const Sheet& sheet) {
  std::map<std::string, int> minutes;
  for (const Line& line : sheet.lines) {
    const auto* crew = std::get_if<Crew>(&line.fact);
    if (crew == nullptr) continue;
    for (const Hand& hand : crew->hands) minutes[lower(hand.name)] += hand.minutes;
  }
  int most = 0;
  for (const auto& [name, sum] : minutes) most = std::max(most, sum);
  return most;
}

void check_sum(Review& review, const std::vector<PlacedSpan>& spans) {
  int total = 0;
  const PlacedSpan* longest = nullptr;
  for (const PlacedSpan& one : spans) {
    total += one.span.minutes();
    if (longest == nullptr || one.span.minutes() > longest->span.minutes()) longest = &one;
  }
  const int crew = longest_hand(review.sheet);
  if (longest == nullptr || crew == 0 || total <= crew) return;
  review.warn(
      *longest->line,
      "sawing adds up to " + write_duration(total) + ", more than anyone's hours, " + write_duration(crew),
      "look again at " + write_span(longest->span));
}

}  // namespace

/// A day still to come; or, among sheets of another year alone, one that would fit in with them in the year it is not
/// of; or far from today and from every other sheet.
void check_day(Review& review) {
  constexpr int kMuch = 300;
  constexpr int kClose = 31;
  const Day day = review.sheet.day;
  const Known& known = review.known;
  if (known.today && day > *known.today) {
    review.found.push_back({Severity::warning,
                            {},
                            write_day(day) + ": a day still to come, today is " + write_day(*known.today),
                            "look at the day again"});
    return;
  }
  const auto far = [&](const std::optional<Day>& from) { return !from || std::abs(*from - day) >= kMuch; };
  if (!known.newest_day && known.today && far(known.today)) {
    review.found.push_back({Severity::warning,
                            {},
                            write_day(day) + ": far from today, " + write_day(*known.today) +
                                ", and the first sheet of the book",
                            "look at its year again"});
    return;
  }
  if (!known.newest_day || known.has_neighbours || !far(known.newest_day)) return;
  const YearMonthDay at = parts(day);
  for (const int year : {parts(*known.newest_day).year, parts(*known.newest_day).year - 1}) {
    if (year == at.year || !day_exists(year, at.month, at.day)) continue;
    const Day meant = make_day(year, at.month, at.day);
    if (std::abs(*known.newest_day - meant) > kClose) continue;
    review.found.push_back({Severity::warning,
                            {},
                            write_day(day) + ": far from every other sheet of the book",
                            "was " + write_day(meant) + " meant?"});
    return;
  }
  if (!known.today || !far(known.today)) return;
  review.found.push_back({Severity::warning,
                          {},
                          write_day(day) + ": far from every other sheet of the book and from today",
                          "look at its year again"});
}

/// Nobody works more than 24 hours in a day.
void check_crew(Review& review) {
  std::map<std::string, int> minutes;
  for (const DatedFact& fact : review.facts) {
    const auto* crew = std::get_if<Crew>(&fact.line->fact);
    if (crew == nullptr) continue;
    const Hand& hand = crew->hands[fact.item];
    int& sum = minutes[lower(hand.name)];
    if (sum <= kMinutesInADay && sum + hand.minutes > kMinutesInADay) {
      review.warn(*fact.line, hand.name + " has " + write_duration(sum + hand.minutes) + " hours on one day",
                  "half hours are written 9:30 or 9.5");
    }
    sum += hand.minutes;
  }
}

/// Sawing times do not overlap, follow one another, and fit into somebody's hours.
void check_sawing_times(Review& review) {
  const auto spans = sawing_spans(review.sheet);
  bool doubted = false;
  for (std::size_t i = 0; i < spans.size(); ++i) {
    if (i > 0 && is_afternoon_by_twelve(spans[i - 1].span, spans[i].span)) {
      review.warn(*spans[i].line,
                  in_quotes(write_span(spans[i].span)) + " stands after " + write_span(spans[i - 1].span),
                  "the afternoon is written " + write_span(plus_noon(spans[i].span)));
      doubted = true;
      continue;
    }
    for (std::size_t j = 0; j < i; ++j) {
      if (!overlap(spans[j].span, spans[i].span)) continue;
      review.warn(*spans[i].line,
                  in_quotes(write_span(spans[i].span)) + " overlaps " + write_span(spans[j].span),
                  "sawing time would count twice");
      doubted = true;
      break;
    }
  }
  if (!doubted) check_sum(review, spans);
}

/// A stop that was to be charged says so at its end, after a comma; anywhere else the word is text, and nothing is billed.
void check_charged_stops(Review& review) {
  for (const Line& line : review.sheet.lines) {
    const auto* stop = std::get_if<Stop>(&line.fact);
    if (stop == nullptr || stop->charge) continue;
    const std::string word = charge_word(stop->text + " ; " + line.remark);
    if (word.empty()) continue;
    review.warn(line, in_quotes(word) + " is read as part of the text, and the stop is not charged",
                "write , charge at its end, before any ';', if it is to be charged");
  }
}

/// A stop is not inside sawing time, and all of them with the sawing fit into a day.
void check_stops(Review& review) {
  const auto spans = sawing_spans(review.sheet);
  int total = 0;
  for (const PlacedSpan& one : spans) total += one.span.minutes();
  for (const Line& line : review.sheet.lines) {
    const auto* stop = std::get_if<Stop>(&line.fact);
    if (stop == nullptr) continue;
    total += stop->minutes;
    if (total > kMinutesInADay) {
      review.warn(line, "stops and sawing add up to more than a day");
      return;
    }
    for (const PlacedSpan& one : spans) {
      if (!stop->span || !overlap(*stop->span, one.span)) continue;
      review.warn(
          line,
          "the stop " + write_span(*stop->span) + " lies within the sawing time " + write_span(one.span),
          "sawing time counts it too; part it there");
      break;
    }
  }
}

/// Sawing is billed by the hour as its times are written, and a stop is not taken off them. A stop given by its length
/// belongs between two of them; where no room is left there it was most likely within one.
void check_stops_by_length(Review& review) {
  auto spans = sawing_spans(review.sheet);
  if (spans.empty()) return;
  std::sort(spans.begin(), spans.end(),
            [](const auto& a, const auto& b) { return a.span.from < b.span.from; });
  int room = 0;
  int end = spans.front().span.from;
  for (const PlacedSpan& one : spans) {
    room += std::max(0, one.span.from - end);
    end = std::max(end, one.span.from + one.span.minutes());
  }
  const int first = spans.front().span.from;
  int needed = 0;
  const Line* longest = nullptr;
  int most = 0;
  for (const Line& line : review.sheet.lines) {
    const auto* stop = std::get_if<Stop>(&line.fact);
    if (stop == nullptr) continue;
    if (stop->span) {
      if (stop->span->from >= first && stop->span->from + stop->span->minutes() <= end)
        room -= stop->minutes;  // within a sawing time it was told already
      continue;
    }
    needed += stop->minutes;
    if (stop->minutes <= most) continue;
    most = stop->minutes;
    longest = &line;
  }
  room = std::max(0, room);
  if (longest == nullptr || needed <= room) return;
  review.warn(
      *longest,
      "stops of " + write_duration(needed) + " by their length, and " +
          (room == 0 ? std::string("no time") : "only " + write_duration(room)) + " between the sawing times",
      "sawing by the hour is billed as its times are written; part them where the saw stood, or write the "
      "stop's clock times");
}

/// Engine hours only rise, and by no more than 24 in a sheet.
void check_meter(Review& review) {
  constexpr std::int64_t kMostTenths = 240;
  std::optional<std::int64_t> before;
  for (const Line& line : review.sheet.lines) {
    const auto* meter = std::get_if<Meter>(&line.fact);
    if (meter == nullptr) continue;
    if (before && (meter->tenths < *before || meter->tenths - *before > kMostTenths)) {
      review.warn(line, "the meter reads " + plain(Decimal{meter->tenths, 1}) + " after " +
                            plain(Decimal{*before, 1}));
    }
    before = meter->tenths;
  }
}

}  // namespace kerfbook::sheet
