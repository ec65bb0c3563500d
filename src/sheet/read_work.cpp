// read_work.cpp -- the lines about the machine and its errands: teeth and blades, charges, engine hours, fuel, moves.
#include "base/text.h"
#include "measure/money.h"
#include "sheet/amount.h"
#include "sheet/kinds.h"
#include "sheet/write.h"

namespace kerfbook::sheet {
namespace {

/// A kind of work on a saw, and the other words it is read by; its own word is the one written back.
struct Work {
  ToothAction action;
  std::vector<std::string_view> also;
};

const std::vector<Work>& works() {
  static const std::vector<Work> kWorks{
      {ToothAction::touched_up, {"sharpened", "filed"}},
      {ToothAction::replaced, {}},
      {ToothAction::full_set, {}},
      {ToothAction::shanks, {}},
      {ToothAction::swaged, {}},
      {ToothAction::changed, {"swapped"}},
      {ToothAction::tensioned, {"hammered"}},
  };
  return kWorks;
}

std::vector<std::string> words_of(bool blade) {
  std::vector<std::string> words;
  for (const Work& work : works()) {
    if (is_blade_work(work.action) != blade) continue;
    words.emplace_back(word_of(work.action));
    for (const std::string_view other : work.also) words.emplace_back(other);
  }
  return words;
}

/// The nearest word, or what other words for the work come to; empty when there is none.
std::string work_meant(const std::string& typed) {
  if (std::string near = nearest(typed, words_of(false)); !near.empty()) return near;
  using Words = std::vector<std::string_view>;
  static const std::vector<std::pair<ToothAction, Words>> kOthers{
      {ToothAction::touched_up, {"ground", "touched", "dressed"}},
      {ToothAction::replaced, {"new", "broken", "broke", "lost"}},
      {ToothAction::full_set, {"all", "set", "full"}},
      {ToothAction::shanks, {"shank", "holders", "holder"}},
  };
  for (const auto& [action, words] : kOthers) {
    for (const std::string_view word : words) {
      if (same_word(word, typed)) return std::string(word_of(action));
    }
  }
  return {};
}

/// Takes `full-set`, or the same in two words; nullopt, and nothing taken, for any other word.
std::optional<ToothAction> take_known_work(LineReader& line) {
  const std::string two_words = std::string(line.peek()) + "-" + std::string(line.peek(1));
  for (const Work& work : works()) {
    if (line.take_if(word_of(work.action))) return work.action;
    if (same_word(two_words, word_of(work.action))) {
      line.take_typed_words(2);
      return work.action;
    }
    for (const std::string_view other : work.also) {
      if (line.take_if(other)) return work.action;
    }
  }
  return std::nullopt;
}

std::string one_of(std::vector<std::string> words) {
  const std::string last = words.back();
  words.pop_back();
  return join(words, ", ") + " or " + last;
}

/// What was done to the teeth. Work on the blade is read here too, for so it was once written; but a blade `changed` has
/// a line of its own, and teeth changed are replaced.
std::optional<ToothAction> take_tooth_work(LineReader& line, const std::string& saw) {
  const std::string kinds = "after the saw write what was done: " + one_of(words_of(false));
  if (line.done()) {
    line.missing("'teeth' without what was done", kinds);
    return std::nullopt;
  }
  const Word& word = line.peek_word();
  const bool changed = same_word(word.text, word_of(ToothAction::changed));
  if (!changed) {
    if (const auto work = take_known_work(line)) return work;
  }
  const std::string near = work_meant(word.text);
  line.error(word, in_quotes(line.typed(word)) + ": not a kind of work on teeth",
             changed ? "write teeth " + saw + " replaced, or of the whole blade blade " + saw + " changed"
             : near.empty() ? kinds
                            : "did you mean " + near + "?");
  return std::nullopt;
}

std::optional<ToothAction> take_blade_work(LineReader& line, const std::string& saw) {
  const std::string kinds = "after the saw write what was done: " + one_of(words_of(true));
  if (line.done()) {
    line.missing("'blade' without what was done", kinds);
    return std::nullopt;
  }
  const Word& word = line.peek_word();
  const std::string typed = line.typed(word);
  const auto work = take_known_work(line);
  if (work && is_blade_work(*work)) return work;
  if (work == ToothAction::replaced) return ToothAction::changed;
  const std::string near = nearest(typed, words_of(true));
  if (work) {
    line.error(word, in_quotes(typed) + ": that is done to teeth", "write teeth " + saw + " " + typed);
  } else {
    line.error(word, in_quotes(typed) + ": not a kind of work on a blade",
               near.empty() ? kinds : "did you mean " + near + "?");
  }
  return std::nullopt;
}

/// Why, in which log, and what else: what ends both lines.
void take_reason(LineReader& line, Teeth& teeth) {
  if (!line.take_if("-") && !line.done() && !has_digit(line.peek())) teeth.cause = line.take_typed();
  if (!line.take_if("-") && has_digit(line.peek())) teeth.log = line.take_typed();
  teeth.text = line.take_rest();
}

std::optional<FuelUnit> fuel_unit(std::string_view word) {
  using Unit = FuelUnit;
  return find_unit<Unit>(word, {{"gal", Unit::gallon},
                                {"gallon", Unit::gallon},
                                {"gallons", Unit::gallon},
                                {"l", Unit::litre},
                                {"litre", Unit::litre},
                                {"litres", Unit::litre},
                                {"liter", Unit::litre},
                                {"liters", Unit::litre}});
}

std::optional<DistanceUnit> distance_unit(std::string_view word) {
  using Unit = DistanceUnit;
  return find_unit<Unit>(
      word, {{"mi", Unit::mile}, {"mile", Unit::mile}, {"miles", Unit::mile}, {"km", Unit::kilometre}});
}

std::optional<std::int64_t> take_fuel_price(LineReader& line) {
  const Word& word = line.take();
  const auto price = measure::read_money(word.text, line.options().money_places);
  if (!price) {
    line.slip(word, 0, price.slip());
    return std::nullopt;
  }
  if (price->minor >= 0) return price->minor;
  line.error(word, in_quotes(line.typed(word)) + ": a price with a minus",
             "write what was paid for all of it");
  return std::nullopt;
}

/// How many words of a move stand before its distance: the place of the last `46 mi` or `46mi`; npos = none.
std::size_t find_distance(const LineReader& line) {
  for (std::size_t i = line.left(); i-- > 0;) {
    const std::string_view word = line.peek(i);
    const std::size_t unit = word.find_first_not_of("0123456789.");
    if (!starts_with_digit(word)) continue;
    if (unit == std::string_view::npos ? distance_unit(line.peek(i + 1)).has_value()
                                       : distance_unit(word.substr(unit)).has_value()) {
      return i;
    }
  }
  return std::string_view::npos;
}

void move_error(LineReader& line, std::string what) {
  const std::string instead = "write move Tervane farm to yard 46 mi 3:45";
  line.done() ? line.missing(std::move(what), instead) : line.error(line.take(), std::move(what), instead);
}

}  // namespace

std::optional<Fact> read_teeth(LineReader& line) {
  auto saw = take_code(line, "'teeth' without a saw", "teeth head replaced 3 metal T17");
  if (!saw) return std::nullopt;
  const auto work = take_tooth_work(line, *saw);
  if (!work) return std::nullopt;
  Teeth teeth{*saw, *work, {}, {}, {}, {}, {}};
  if (all_digits(line.peek())) {
    const Word& word = line.take();
    const auto count = whole_number(word.text);
    constexpr std::int64_t kMostTeeth = 500;
    if (!count || *count < 1 || *count > kMostTeeth) {
      line.error(word, in_quotes(word.text) + ": no number of teeth", "write how many, or leave it out");
      return std::nullopt;
    }
    if (is_blade_work(*work)) {
      line.warn(word, in_quotes(word.text) + ": the blade has no number of teeth, and it is left out",
                "write blade " + *saw + " " + std::string(word_of(*work)));
    } else {
      teeth.count = static_cast<int>(*count);
    }
  }
  take_reason(line, teeth);
  return teeth;
}

std::optional<Fact> read_blade(LineReader& line) {
  auto saw = take_code(line, "'blade' without a saw", "blade head changed dull");
  if (!saw) return std::nullopt;
  const auto work = take_blade_work(line, *saw);
  if (!work) return std::nullopt;
  if (all_digits(line.peek())) {
    const Word& word = line.take();
    line.error(word, in_quotes(word.text) + ": the blade has no number of teeth",
               "write why, as blade " + *saw + " " + std::string(word_of(*work)) + " dull");
    return std::nullopt;
  }
  Teeth blade{*saw, *work, {}, {}, {}, {}, {}};
  take_reason(line, blade);
  return blade;
}

std::optional<Fact> read_charge(LineReader& line) {
  const std::string example = "charge TER metal-strike 1";
  auto job = take_code(line, "'charge' without a job", example);
  if (!job) return std::nullopt;
  if (starts_with_digit(line.peek()) || line.peek().starts_with('-')) {
    const Word& word = line.take();
    line.error(word, in_quotes(line.typed(word)) + ": not a charge's name", "write " + example);
    return std::nullopt;
  }
  auto name = take_code(line, "'charge' without what is charged", example);
  if (!name) return std::nullopt;
  Charge charge{job_code(*job), *name, 1, {}};
  const std::string_view next = line.peek();
  if (starts_with_digit(next) || next.starts_with('.') || next.starts_with('-')) {
    const Word& word = line.take();
    const auto quantity = read_quantity(word.text);
    if (!quantity) {
      line.error(word, in_quotes(line.typed(word)) + ": " + not_read_because(word.text, "not a quantity"),
                 "write how many, as 1 or 2.5");
      return std::nullopt;
    }
    charge.quantity = *quantity;
  }
  charge.text = line.take_rest();
  return charge;
}

std::optional<Fact> read_meter(LineReader& line) {
  if (line.done()) {
    line.missing("'meter' without a reading", "write meter 1854.6");
    return std::nullopt;
  }
  const Word& word = line.take();
  const auto hours = read_decimal(word.text, 1);
  if (!hours || hours->is_negative() || *hours > Rational(1'000'000)) {
    line.error(word,
               in_quotes(line.typed(word)) + ": " + not_read_because(word.text, "not an engine-hour reading"),
               "write hours and tenths, as 1854.6");
    return std::nullopt;
  }
  line.expect_end("the meter's reading");
  if (line.failed()) return std::nullopt;
  return Meter{hours->rounded(1)};
}

std::optional<Fact> read_fuel(LineReader& line) {
  const std::string instead = "write fuel 7.3 gal, or fuel 27.6 l 41.40 with what was paid";
  if (line.done()) {
    line.missing("'fuel' without a quantity", instead);
    return std::nullopt;
  }
  const Word& word = line.peek_word();
  const Amount amount = take_amount(line);
  const auto quantity = read_quantity(amount.number);
  const auto unit = fuel_unit(amount.unit);
  if (!quantity) {
    line.error(word,
               in_quotes(line.typed(word)) + ": " + not_read_because(amount.number, "not a quantity of fuel"),
               instead);
  } else if (!unit) {
    const std::string what = amount.unit.empty() ? in_quotes(amount.number) + ": fuel without a unit"
                                                 : in_quotes(amount.unit) + ": not gal or l";
    line.error(*amount.unit_word, what, instead);
  }
  if (line.failed()) return std::nullopt;
  Fuel fuel{*quantity, *unit, {}};
  if (!line.done()) fuel.price_minor = take_fuel_price(line);
  line.expect_end("the price");
  if (line.failed()) return std::nullopt;
  return fuel;
}

std::optional<Fact> read_move(LineReader& line) {
  const std::size_t distance = find_distance(line);
  if (distance == std::string_view::npos) {
    line.take_rest();
    move_error(line, "'move' without a distance in mi or km");
    return std::nullopt;
  }
  std::size_t to = 0;
  while (to < distance && !same_word(line.peek(to), "to")) ++to;
  if (to == 0 || to + 1 >= distance) {
    move_error(line, "'move' without the place " + std::string(to == 0 ? "it was from" : "it was to"));
    return std::nullopt;
  }
  Move move;
  move.from = line.take_typed_words(to);
  line.take();  // to
  move.to = line.take_typed_words(distance - to - 1);
  const Word& word = line.peek_word();
  const Amount amount = take_amount(line);
  const auto miles = read_quantity(amount.number);
  if (!miles) {
    line.error(word, in_quotes(line.typed(word)) + ": " + not_read_because(amount.number, "not a distance"),
               "write it as 46 mi");
    return std::nullopt;
  }
  move.distance = *miles;
  move.unit = *distance_unit(amount.unit);
  if (!line.done()) {
    move.minutes = take_minutes(line).value_or(0);
  }
  line.expect_end("the time it took");
  if (line.failed()) return std::nullopt;
  return move;
}

}  // namespace kerfbook::sheet
