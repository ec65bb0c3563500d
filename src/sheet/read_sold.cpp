// read_sold.cpp -- own stock sold at the yard: pieces, a length, or a whole bundle; at a price said there, or not.
#include "base/text.h"
#include "measure/money.h"
#include "sheet/kinds.h"
#include "sheet/tally_words.h"

namespace kerfbook::sheet {
namespace {

constexpr const char* kExample = "write sold cash 2x6 No2 6/16 at 1.05";

/// `at 1.05`; `example` is a price and what it is for.
std::optional<Rational> take_price(LineReader& line, const char* example) {
  constexpr int kMostPlaces = 6;
  if (line.done()) {
    line.missing("'at' without a price", std::string("write at ") + example);
    return std::nullopt;
  }
  const Word& word = line.take();
  const std::string_view text = word.text;
  const std::size_t sign = text.starts_with('$') ? 1 : 0;
  const auto price = read_decimal(text.substr(sign), kMostPlaces);
  if (price && *price > Rational(measure::kDearest)) {
    line.error(word, in_quotes(line.typed(word)) + ": a price dearer than any",
               std::string("write it as ") + example);
    return std::nullopt;
  }
  if (price && !price->is_negative()) return *price;
  line.error(word, in_quotes(line.typed(word)) + ": not a price", std::string("write it as ") + example);
  return std::nullopt;
}

/// What a price is for, when it is not a board foot.
void take_unit(LineReader& line, Sold& sold) {
  if (line.done()) return;
  const Word& word = line.take();
  if (same_word(word.text, "each") && !sold.lineal)
    sold.by = SoldBy::piece;
  else if (same_word(word.text, "lf"))
    sold.by = SoldBy::lineal_foot;
  else if (same_word(word.text, "lm"))
    sold.by = SoldBy::lineal_metre;
  else
    line.error(word, in_quotes(line.typed(word)) + ": not what a price is for",
               sold.lineal
                   ? "a price alone is for a board foot; write lf or lm after it for a length"
                   : "a price alone is for a board foot; write each after it for a piece, lf or lm for a "
                     "length");
}

bool at_size(const LineReader& line) {
  return starts_with_digit(line.peek()) && count_x(line.peek()) > 0;
}

std::string take_buyer(LineReader& line) {
  std::string buyer;
  while (!line.done() && !at_size(line) && (buyer.empty() || !same_word(line.peek(), "bundle")))
    buyer += (buyer.empty() ? "" : " ") + line.take_typed();
  return buyer;
}

std::optional<Fact> take_bundle(LineReader& line, Sold sold) {
  line.take();
  if (line.done() || same_word(line.peek(), "at")) {
    const std::string what = "'bundle' without its tag";
    const std::string instead = "write sold cash bundle B7 at 240";
    line.done() ? line.missing(what, instead) : line.error(line.take(), what, instead);
    return std::nullopt;
  }
  sold.bundle = line.take_typed();
  if (line.take_if("at")) sold.price = take_price(line, "240, for all of it");
  if (line.failed()) return std::nullopt;
  line.expect_end("the bundle");
  if (line.failed()) return std::nullopt;
  return sold;
}

/// `for 1.05`, `@ 1.05`: meant as a price.
void price_in_other_words(LineReader& line) {
  if (!same_word(line.peek(), "for") && line.peek() != "@") return;
  const Word& word = line.take();
  line.error(word, in_quotes(line.typed(word)) + ": not understood after what was sold",
             "write at " + (line.done() ? "1.05" : std::string(line.peek())) + ", the price of a board foot");
  line.take_rest();
}

/// What was sold, up to its price. False when it cannot be read.
bool take_lumber(LineReader& line, Sold& sold) {
  const Word& word = line.take();
  if (count_x(word.text) == 1 && at_lineal(line)) {
    const std::optional<SizedLength> sized = take_lineal(line, word);
    if (!sized) return false;
    sold.size = sized->size;
    sold.grade = sized->grade;
    sold.lineal = sized->total;
    return true;
  }
  SizedTally sized = take_sized(line, word, "; a price is written at 1.05");
  sold.size = sized.size;
  sold.grade = std::move(sized.grade);
  sold.items = std::move(sized.items);
  return true;
}

}  // namespace

std::optional<Fact> read_sold(LineReader& line) {
  Sold sold;
  sold.buyer = take_buyer(line);
  if (sold.buyer.empty() || line.done()) {
    const std::string what = sold.buyer.empty() ? "'sold' without a buyer" : "'sold' without a size";
    line.done() ? line.missing(what, kExample) : line.error(line.take(), what, kExample);
    return std::nullopt;
  }
  if (!at_size(line)) return take_bundle(line, std::move(sold));
  if (all_digits(sold.buyer.substr(sold.buyer.rfind(' ') + 1))) {
    line.error(line.peek_word(), "the pieces stand before the size",
               "write them after it, as sold cash " + std::string(line.peek()) + " 6/16 at 1.05");
    return std::nullopt;
  }
  if (!take_lumber(line, sold)) return std::nullopt;
  price_in_other_words(line);
  if (line.take_if("at")) {
    sold.price = take_price(line, "1.05, for a board foot");
    if (sold.price) take_unit(line, sold);
  }
  if (line.failed()) return std::nullopt;
  line.expect_end("what was sold");
  if (line.failed()) return std::nullopt;
  return sold;
}

}  // namespace kerfbook::sheet
