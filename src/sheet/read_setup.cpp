// read_setup.cpp -- the line that says how the saws are set: measures with a word in front, then words.
#include <array>

#include "base/text.h"
#include "sheet/kinds.h"

namespace kerfbook::sheet {
namespace {

constexpr std::string_view kExample = "setup 2 kerf 0.26 over 0.05";

/// A measure of a set-up, by the word in front of it.
struct SetupMeasure {
  std::string_view word;
  std::optional<std::int64_t> Setup::*mils;
  bool always;  ///< the word is never one of the remark that may follow
};
constexpr std::array<SetupMeasure, 6> kMeasures{{{"kerf", &Setup::kerf_mils, true},
                                                 {"over", &Setup::over_mils, true},
                                                 {"edger", &Setup::edger_mils, false},
                                                 {"third", &Setup::third_mils, false},
                                                 {"lead", &Setup::lead_mils, false},
                                                 {"zero", &Setup::zero_mils, false}}};

/// "edger squared" and "lead checked" are words; "edger 0.24" is a measure.
bool measure_follows(const LineReader& line) {
  const std::string_view next = line.peek(1);
  return !next.empty() &&
         (is_digit(next.front()) || next.front() == '.' || next.front() == '-' || next.front() == '+') &&
         has_digit(next);
}

/// Less than a hand's breadth. Only the set-works' zero may be below 0.
std::optional<std::int64_t> take_mils(LineReader& line, std::string_view name) {
  constexpr std::int64_t kMostInches = 4;
  constexpr std::int64_t kMostMillimetres = 100;
  const std::string of(name);
  const std::string example = of + (name == "zero"   ? line.metric() ? " 0.8 or -0.8" : " 1/32 or -1/32"
                                    : name == "lead" ? line.metric() ? " 1.5" : " 0.06 or 1/16"
                                    : line.metric()  ? " 7.1"
                                                     : " 0.26 or 1/4");
  if (line.done()) {
    line.missing(in_quotes(of) + " without a measure", "write " + example);
    return std::nullopt;
  }
  const Word& word = line.take();
  std::string_view text = word.text;
  const bool below = name == "zero" && text.starts_with('-');
  if (below || (name == "zero" && text.starts_with('+'))) text.remove_prefix(1);
  const auto mils = measure::read_mils(text, line.metric());
  if (mils && *mils < (line.metric() ? kMostMillimetres * 100 : kMostInches * 1000))
    return below ? -*mils : *mils;
  line.error(word,
             in_quotes(line.typed(word)) + ": not a measure in " +
                 (line.metric() ? "millimetres" : "inches") + " for " + of,
             "write " + example);
  return std::nullopt;
}

std::optional<Rational> take_feed(LineReader& line) {
  constexpr int kPlaces = 6;
  constexpr std::int64_t kMostAMinute = 1'000;
  const Word& word = line.take();
  const auto feed = read_decimal(word.text, kPlaces);
  if (feed && *feed > Rational(0) && *feed < Rational(kMostAMinute)) return *feed;
  line.error(
      word,
      in_quotes(line.typed(word)) + ": not a feed in " + (line.metric() ? "metres" : "feet") + " a minute",
      line.metric() ? "write it as feed 17" : "write it as feed 55");
  return std::nullopt;
}

/// Takes one measure with its word, or the kind of tooth; false when something else comes next, or it complained.
bool take_measure(LineReader& line, Setup& setup) {
  for (const auto& [word, mils, always] : kMeasures) {
    if (setup.*mils || !same_word(line.peek(), word) || !(always || measure_follows(line))) continue;
    line.take();
    setup.*mils = take_mils(line, word);
    return !line.failed();
  }
  if (!setup.feed && same_word(line.peek(), "feed") && measure_follows(line)) {
    line.take();
    setup.feed = take_feed(line);
    return !line.failed();
  }
  if (!setup.tooth.empty() || !line.take_if("tooth")) return false;
  setup.tooth = take_code(line, "'tooth' without a kind", "setup 2 tooth carbide").value_or("");
  return !line.failed();
}

/// What is no remark: a measure's word that was not understood, or one said twice.
bool complains_of_rest(LineReader& line) {
  const auto complain = [&](std::string_view word, std::string_view number) {
    const Word& taken = line.take();
    line.error(taken, in_quotes(line.typed(taken)) + ": not understood in a set-up",
               "write " + std::string(word) + " " + std::string(number) + ", once, with a blank between");
    return true;
  };
  for (const auto& [word, mils, always] : kMeasures) {
    if (always ? lower(line.peek()).starts_with(word) : same_word(line.peek(), word) && measure_follows(line))
      return complain(word, "0.25");
  }
  return same_word(line.peek(), "feed") && measure_follows(line) && complain("feed", "55");
}

}  // namespace

std::optional<Fact> read_setup(LineReader& line) {
  auto name = take_code(line, "'setup' without a name", kExample);
  if (!name) return std::nullopt;
  if (same_word(*name, "kerf") || same_word(*name, "over")) {
    const std::string rest = line.take_rest();
    line.missing("'setup' without a name", "write setup 2 " + *name + (rest.empty() ? " 0.25" : " " + rest));
    return std::nullopt;
  }
  Setup setup;
  setup.name = *name;
  while (take_measure(line, setup)) {
  }
  if (line.failed() || complains_of_rest(line)) return std::nullopt;
  setup.text = line.take_rest();
  return setup;
}

}  // namespace kerfbook::sheet
