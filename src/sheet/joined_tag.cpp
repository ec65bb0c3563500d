#include "sheet/joined_tag.h"

#include <algorithm>

#include "base/text.h"
#include "measure/length.h"

namespace kerfbook::sheet {
namespace {

/// Two numbers in inches that may be the readings of one end: thick enough for a log, and not far from one another.
bool could_be_readings(std::int64_t one, std::int64_t other) {
  constexpr std::int64_t kThinnest = 4;
  return std::min(one, other) >= kThinnest && 2 * std::max(one, other) <= 3 * std::min(one, other);
}

/// `1 15/16x12`, joined to one word because of its fraction: is it log 1 with two readings, or a log of 1-15/16 in?
enum class Joined { fraction, readings, fraction_rather, readings_rather };

Joined what_is_joined(const LineReader& line, const Word& word, std::size_t plus) {
  const std::size_t slash = word.text.find('/', plus);
  const std::size_t x = word.text.find_first_of("xX", plus);
  if (slash == std::string::npos || x == std::string::npos || slash > x) return Joined::fraction;
  const auto whole = whole_number(std::string_view(word.text).substr(0, plus));
  const auto above = whole_number(std::string_view(word.text).substr(plus + 1, slash - plus - 1));
  const auto below = whole_number(std::string_view(word.text).substr(slash + 1, x - slash - 1));
  if (!whole || !above || !below) return Joined::fraction;
  const bool inches = word.text.find_first_of("\"'", x) != std::string::npos;
  const bool of_an_inch =
      *below == 2 || *below == 4 || *below == 8 || *below == 16 || *below == 32 || *below == 64;
  if ((line.metric() && !inches) || !of_an_inch || *above >= *below) return Joined::readings;
  if (!could_be_readings(*above, *below)) return Joined::fraction;
  constexpr std::int64_t kThin = 5;    // no log of a tally
  constexpr std::int64_t kCoarse = 8;  // a tape is not read closer for a log
  return *whole < kThin || *below > kCoarse ? Joined::readings_rather : Joined::fraction_rather;
}

/// 1-15/16 as 1.9375: beside a dash 15/16 would be two readings of the large end.
std::string as_decimal(const std::string& fraction) {
  constexpr int kPlaces = 6;
  const auto inches = measure::read_inches(fraction);
  return inches ? shortest(shown(measure::in_inches(*inches), kPlaces)) : fraction;
}

}  // namespace

std::optional<JoinedTag> joined_tag(LineReader& line) {
  if (line.done()) return std::nullopt;
  const Word& word = line.peek_word();
  const std::size_t plus = word.text.find('+');
  if (plus == std::string::npos || line.typed(word).find(' ') == std::string::npos) return std::nullopt;
  const Joined joined = what_is_joined(line, word, plus);
  const std::string tag = word.text.substr(0, plus);
  const std::string rest = word.text.substr(plus + 1);
  const std::size_t x = rest.find_first_of("xX");
  const std::string fraction = tag + "-" + rest.substr(0, x);
  if (joined == Joined::fraction_rather) {
    line.warn(word, in_quotes(line.typed(word)) + " is taken as a log of " + fraction + " in, without a tag",
              "log " + tag + " with two readings is written " + tag + ": " + rest);
  }
  if (joined == Joined::fraction || joined == Joined::fraction_rather) return std::nullopt;
  if (joined == Joined::readings_rather) {
    line.warn(word, in_quotes(line.typed(word)) + " is taken as log " + tag + " with two readings of one end",
              "one of " + fraction + " in is written " + as_decimal(fraction) + rest.substr(x) +
                  "; to be sure of the tag write " + tag + ": " + rest);
  }
  return JoinedTag{tag, rest};
}

}  // namespace kerfbook::sheet
