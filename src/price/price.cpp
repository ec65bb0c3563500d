// price.cpp -- choosing the most particular of the prices that fit, and saying why.
#include "price/price.h"

#include <algorithm>
#include <cctype>

#include "base/text.h"

namespace kerfbook::billing {

namespace {

bool among(const std::vector<std::string>& words, const std::string& word) {
  if (words.empty()) return true;
  return std::any_of(words.begin(), words.end(),
                     [&](const std::string& one) { return same_word(one, word); });
}

/// Two lengths of different systems cannot be told apart by counts; they are compared exactly, in inches.
std::strong_ordering compare(const Length& a, const Length& b) {
  return in_inches(a) <=> in_inches(b);
}

bool within(const std::optional<Length>& value, const std::optional<Length>& from,
            const std::optional<Length>& to) {
  if (!from && !to) return true;
  if (!value) return false;
  return (!from || compare(*value, *from) >= 0) && (!to || compare(*value, *to) <= 0);
}

bool size_among(const std::vector<Size>& sizes, const std::optional<Size>& size) {
  if (sizes.empty()) return true;
  if (!size) return false;
  return std::any_of(sizes.begin(), sizes.end(), [&](const Size& one) {
    return one.thickness == size->thickness && one.width == size->width;
  });
}

/// Goes through the conditions. For each that keeps it from fitting, `tell` is handed a function that makes a few
/// words of it, and says whether to go on.
template <class Tell>
void obstacles(const Conditions& when, const Question& asked, Tell&& tell) {
  const std::optional<Length> thickness = asked.size ? std::optional(asked.size->thickness) : std::nullopt;
  const std::optional<Length> width = asked.size ? std::optional(asked.size->width) : std::nullopt;
  const auto named = [&](const std::vector<std::string>& words, const std::string& word, const char* what) {
    return among(words, word) ||
           tell([&] { return "is for " + std::string(what) + " " + join(words, ", "); });
  };
  const auto check = [&](bool fit, auto words) { return fit || tell(words); };
  const bool over = !when.length_over || (asked.length && compare(*asked.length, *when.length_over) > 0);
  static_cast<void>(
      named(when.job, asked.job, "job") && named(when.customer, asked.customer, "customer") &&
      named(when.species, asked.species, "species") && named(when.grade, asked.grade, "grade") &&
      check(size_among(when.size, asked.size), [] { return std::string("is for other sizes"); }) &&
      check(within(thickness, when.thickness_from, when.thickness_to),
            [] { return std::string("is for another thickness"); }) &&
      check(within(width, when.width_from, when.width_to),
            [] { return std::string("is for another width"); }) &&
      check(within(asked.diameter, when.diameter_from, when.diameter_to),
            [] { return std::string("is for logs of another diameter"); }) &&
      check(over && within(asked.length, std::nullopt, when.length_to),
            [] { return std::string("is for other lengths"); }) &&
      check(!when.from || *when.from <= asked.day,
            [&] { return "is in force from " + write_day(*when.from); }) &&
      check(!when.until || asked.day <= *when.until,
            [&] { return "was in force until " + write_day(*when.until); }));
}

/// The conditions that keep it from fitting, each in a few words; empty = it fits.
std::vector<std::string> in_the_way(const Conditions& when, const Question& asked) {
  std::vector<std::string> no;
  obstacles(when, asked, [&](const auto& words) {
    no.push_back(words());
    return true;
  });
  return no;
}

/// With two decimals, or as many more as it has.
std::string digits(const Rational& rate) {
  std::string all = plain(shown(rate, 6));
  while (all.ends_with('0') && all[all.size() - 3] != '.') all.pop_back();
  return all;
}

std::string money_words(const Price& price) {
  if (price.basis == Basis::shares) return "shares";
  return digits(price.rate) + " " + std::string(unit_after_rate(price.basis));
}

std::string called(const Price& price) {
  return "'" + price_title(price) + "' (line " + std::to_string(price.line) + ", " + money_words(price) + ")";
}

std::string called(const ChargeTerm& charge) {
  std::string sums = charge.flat.is_zero() ? "" : digits(charge.flat) + " flat";
  if (!charge.rate.is_zero())
    sums += (sums.empty() ? "" : " and ") + digits(charge.rate) + " per " + std::string(word_of(charge.per));
  return "'" + charge.title + "' (line " + std::to_string(charge.line) + ", " + sums + ")";
}

/// Why `won` goes before `lost`, both fitting.
std::string advantage(const Particular& won, const Particular& lost) {
  if (won.job != lost.job) return "it names the job";
  if (won.customer != lost.customer) return "it names the customer";
  if (won.others != lost.others) return "more conditions match";
  if (won.from != lost.from) return "it came into force later";
  return "it stands later in the mill file";
}

template <class Term, class Fits>
const Term* most_particular(const std::vector<Term>& terms, Fits fits_too) {
  const Term* best = nullptr;
  for (const Term& one : terms) {
    if (!fits_too(one)) continue;
    if (best == nullptr || particular(best->when, best->line) < particular(one.when, one.line)) best = &one;
  }
  return best;
}

int plain_conditions(const Conditions& w) {
  const bool any_size = !w.size.empty();
  return static_cast<int>(!w.species.empty()) + static_cast<int>(!w.grade.empty()) +
         4 * static_cast<int>(any_size) + static_cast<int>(w.thickness_from.has_value()) +
         static_cast<int>(w.thickness_to.has_value()) + static_cast<int>(w.width_from.has_value()) +
         static_cast<int>(w.width_to.has_value()) + static_cast<int>(w.length_over.has_value()) +
         static_cast<int>(w.length_to.has_value()) + static_cast<int>(w.diameter_from.has_value()) +
         static_cast<int>(w.diameter_to.has_value());
}

std::string spoken_section(const Length& length) {
  if (length.system == measure::System::inch) return write_inches(length) + " in";
  const std::string millimetres = write_inches(length);
  return millimetres.substr(0, millimetres.size() - 2) + " mm";
}

/// A log's diameter, in inches or centimetres.
std::string spoken_diameter(const Length& diameter) {
  return diameter.system == measure::System::inch
             ? spoken_section(diameter)
             : plain(shown(in_metres(diameter) * Rational(100), 0)) + " cm";
}

void add_range(std::vector<std::string>& words, const std::optional<Length>& from,
               const std::optional<Length>& to, const std::string& way, const std::string& more) {
  if (from && to)
    words.push_back(spoken_section(*from) + " to " + spoken_section(*to) + " " + way);
  else if (from)
    words.push_back(spoken_section(*from) + " and " + more);
  else if (to)
    words.push_back("up to " + spoken_section(*to) + " " + way);
}

}  // namespace

bool fits(const Conditions& when, const Question& asked) {
  bool fit = true;
  obstacles(when, asked, [&](const auto&) { return fit = false; });
  return fit;
}

Particular particular(const Conditions& when, int line) {
  return {!when.job.empty(), !when.customer.empty(), plain_conditions(when), when.from.value_or(Day{}), line};
}

const Price* find_price(const Terms& terms, const Question& asked, bool own_lumber) {
  return most_particular(terms.prices,
                         [&](const Price& p) { return p.own_lumber == own_lumber && fits(p.when, asked); });
}

namespace {

/// The choice among the terms `of` lets through, and then every other one: why it does not fit or is passed over.
template <class Term, class Of>
std::vector<std::string> explained(const std::vector<Term>& terms, const Question& asked, const char* what,
                                   Of of) {
  const auto fit = [&](const Term& one) { return of(one) && fits(one.when, asked); };
  const Term* best = most_particular(terms, fit);
  std::vector<std::string> lines;
  const auto before = [&](const Term& other) {
    return advantage(particular(best->when, best->line), particular(other.when, other.line));
  };
  if (best == nullptr) {
    lines.push_back("no " + std::string(what) + " fits");
  } else {
    const Term* second = most_particular(terms, [&](const Term& one) { return &one != best && fit(one); });
    lines.push_back(second == nullptr
                        ? called(*best) + " is the only " + what + " that fits"
                        : called(*best) + " is used, not " + called(*second) + ": " + before(*second));
  }
  for (const Term& one : terms) {
    if (!of(one) || &one == best) continue;
    const std::vector<std::string> no = in_the_way(one.when, asked);
    lines.push_back(no.empty() ? called(one) + " fits, but " + called(*best) + " is used: " + before(one)
                               : called(one) + " does not fit: it " + join(no, "; "));
  }
  return lines;
}

}  // namespace

Choice choose_price(const Terms& terms, const Question& asked, bool own_lumber) {
  return {find_price(terms, asked, own_lumber), explain_price(terms, asked, own_lumber).front()};
}

std::vector<std::string> explain_price(const Terms& terms, const Question& asked, bool own_lumber) {
  return explained(terms.prices, asked, "price",
                   [&](const Price& one) { return one.own_lumber == own_lumber; });
}

std::vector<std::string> explain_charge(const Terms& terms, std::string_view name, const Question& asked) {
  return explained(terms.charges, asked, "charge",
                   [&](const ChargeTerm& one) { return same_word(one.name, name); });
}

const ChargeTerm* find_charge(const Terms& terms, std::string_view name, const Question& asked) {
  return most_particular(terms.charges,
                         [&](const ChargeTerm& c) { return same_word(c.name, name) && fits(c.when, asked); });
}

const ShareTerm* find_share(const Terms& terms, const Question& asked) {
  return most_particular(terms.shares, [&](const ShareTerm& s) { return fits(s.when, asked); });
}

std::string condition_words(const Conditions& when, bool for_paper) {
  std::vector<std::string> words;
  if (!for_paper && !when.job.empty()) words.push_back("job " + join(when.job, ", "));
  if (!for_paper && !when.customer.empty()) words.push_back("customer " + join(when.customer, ", "));
  std::vector<std::string> sizes;
  for (const Size& size : when.size) sizes.push_back(write_size(size));
  if (!sizes.empty()) words.push_back(join(sizes, ", "));
  add_range(words, when.thickness_from, when.thickness_to, "thick", "thicker");
  add_range(words, when.width_from, when.width_to, "wide", "wider");
  if (when.diameter_from && when.diameter_to)
    words.push_back("logs " + spoken_diameter(*when.diameter_from) + " to " +
                    spoken_diameter(*when.diameter_to) + " thick");
  else if (when.diameter_from)
    words.push_back("logs " + spoken_diameter(*when.diameter_from) + " and thicker");
  else if (when.diameter_to)
    words.push_back("logs up to " + spoken_diameter(*when.diameter_to) + " thick");
  if (when.length_over) words.push_back("longer than " + spoken_length(*when.length_over));
  if (when.length_to) words.push_back("up to " + spoken_length(*when.length_to));
  const auto& species = for_paper ? when.species_names : when.species;
  const auto& grade = for_paper ? when.grade_names : when.grade;
  if (!species.empty()) words.push_back(join(species, ", "));
  if (!grade.empty()) words.push_back("grade " + join(grade, ", "));
  if (!for_paper && when.from) words.push_back("from " + write_day(*when.from));
  if (!for_paper && when.until) words.push_back("until " + write_day(*when.until));
  return join(words, ", ");
}

std::string price_title(const Price& price) {
  std::string what = price.own_lumber ? "Lumber" : "Sawing";
  if (price.name.empty() && price.own_lumber) return what;  // a line of a sale says which lumber by itself
  if (price.name.empty()) {
    const std::string conditions = condition_words(price.when, true);
    return conditions.empty() ? what : what + ", " + conditions;
  }
  // A name that begins with a measure says which sawing: "4 in and thicker".
  const auto first = static_cast<unsigned char>(price.name.front());
  return std::isdigit(first) != 0 ? what + ", " + price.name : price.name;
}

std::string_view unit_after_rate(Basis basis) {
  switch (basis) {
    case Basis::bf:
      return "a board foot";
    case Basis::mbf:
      return "a thousand board feet";
    case Basis::log_scale:
      return "a unit of net log scale";
    case Basis::log_mbf:
      return "a thousand board feet of net log scale";
    case Basis::log:
      return "a log";
    case Basis::m3_log:
      return "a cubic metre of log";
    case Basis::m3_sawn:
      return "a cubic metre sawn";
    case Basis::piece:
      return "a piece";
    case Basis::lineal_foot:
      return "a lineal foot";
    case Basis::lineal_metre:
      return "a lineal metre";
    case Basis::hour:
      return "an hour";
    case Basis::day:
      return "a day";
    case Basis::shares:
      return "in lumber";
  }
  return "";
}

}  // namespace kerfbook::billing
